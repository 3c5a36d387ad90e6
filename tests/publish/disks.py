"""Disks that are small or forbidden: real ones where the tests may mount, else played by a shim of `os`."""

from __future__ import annotations

import ctypes
import errno
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from unittest import mock

READ_ONLY, REMOUNT, BIND = 1, 32, 4096  # MS_RDONLY, MS_REMOUNT, MS_BIND in Linux's <sys/mount.h>


def _call(name: str, *words: object) -> None:
    if getattr(ctypes.CDLL(None, use_errno=True), name)(*words) != 0:
        raise OSError(ctypes.get_errno(), os.strerror(ctypes.get_errno()))


def may_mount(place: Path) -> bool:
    """Whether this process may mount: root on Linux, and not in every container."""
    if sys.platform != "linux" or os.geteuid() != 0:
        return False
    try:
        _call("mount", b"none", os.fsencode(place), b"tmpfs", 0, None)
    except OSError:
        return False
    _call("umount", os.fsencode(place))
    return True


@contextmanager
def small_disk(place: Path, size: int) -> Iterator[Path]:
    """A disk in memory of so many bytes; where the tests may not mount, a folder that takes no more."""
    place.mkdir()
    if not may_mount(place):
        with _written_at_most(size):
            yield place
        return
    _call("mount", b"none", os.fsencode(place), b"tmpfs", 0, f"size={size}".encode())
    try:
        yield place
    finally:
        _call("umount", os.fsencode(place))


@contextmanager
def _written_at_most(size: int) -> Iterator[None]:
    left, write = size, os.write

    def counted(handle: int, data: bytes) -> int:
        nonlocal left
        if len(data) > left:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        left -= len(data)
        return write(handle, data)

    with mock.patch.object(os, "write", counted):
        yield


@contextmanager
def forbidden(folder: Path) -> Iterator[None]:
    """Nothing in the folder may be written: mounted read-only for root, by permissions for others."""
    if os.geteuid() != 0:
        folder.chmod(0o555)
        yield
        folder.chmod(0o755)
        return
    if not may_mount(folder):
        with _refusing("mkdir", "rename", "unlink", "link"):
            yield
        return
    place = os.fsencode(folder)
    _call("mount", place, place, None, BIND, None)
    _call("mount", None, place, None, BIND | REMOUNT | READ_ONLY, None)
    try:
        yield
    finally:
        _call("umount", place)


@contextmanager
def _refusing(*names: str) -> Iterator[None]:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    with mock.patch.multiple(os, **dict.fromkeys(names, refuse)):
        yield


class Fault:
    """Lets the nth call of certain functions of `os` fail, once. `calls` are those made so far."""

    def __init__(self, nth: int, number: int) -> None:
        self.nth, self.number = nth, number
        self.calls: list[str] = []

    def wrap(self, name: str) -> Callable[..., object]:
        """The function, which may fail; `open` only where it makes a file, as reading is another matter."""
        real: Callable[..., object] = getattr(os, name)

        def called(*words: object, **named: object) -> object:
            self.count(name, words)
            return real(*words, **named)

        return called

    def count(self, name: str, words: tuple[object, ...]) -> None:
        """One more call."""
        self.calls.append(f"{name} {words[0] if words else ''}")
        if len(self.calls) == self.nth:
            raise OSError(self.number, os.strerror(self.number), str(words[0]) if words else None)
