"""The three things that only the system can do: swap two folders, make them last, keep others out.

Linux swaps two folders in one step. Elsewhere it takes two renames, and a process killed between them
leaves the old site under the name OLD on the bench; the next run puts it back before anything else.

Drives: a network drive without locks is refused rather than risked. Where an open file holds its folder
(Windows, some network drives) the swap fails as a whole and the old site stays.
"""

from __future__ import annotations

import ctypes
import errno
import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from builder.publish.folder_errors import InUse, NotWritten

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

OLD = "old"
LOCK = "lock"

_EXCHANGE = 2  # RENAME_EXCHANGE in Linux's <linux/fs.h>
_HERE = -100  # AT_FDCWD in Linux's <fcntl.h>: the paths count from the current folder
_CANNOT = {errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP}
_PAUSE = 0.02  # seconds between two tries for the lock


def _of_linux(name: str) -> Callable[..., int] | None:
    """A function of the C library; None where it has none of that name."""
    if sys.platform != "linux":
        return None
    try:
        found: Callable[..., int] = getattr(ctypes.CDLL(None, use_errno=True), name)
    except (OSError, AttributeError):
        return None
    return found


_renameat2 = _of_linux("renameat2")
_syncfs = _of_linux("syncfs")

# Where one call makes a whole tree last, no file has to be waited for alone.
SYNCS_TREES = _syncfs is not None


def swap(new: Path, site: Path, bench: Path) -> Path | None:
    """Put `new` where `site` is. Gives the path the old site has now; None if there was none."""
    if not site.exists():
        new.rename(site)
        return None
    if _exchange(new, site):
        return new
    old = bench / OLD
    site.rename(old)
    try:
        new.rename(site)
    except BaseException:
        old.rename(site)
        raise
    return old


def _exchange(one: Path, other: Path) -> bool:
    """Swap two folders in one step; False where the system or the disk cannot."""
    if _renameat2 is None:
        return False
    if _renameat2(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0:
        return True
    number = ctypes.get_errno()
    if number in _CANNOT:
        return False
    raise OSError(number, os.strerror(number), str(other))


def sync_tree(folder: Path) -> None:
    """Wait until everything written to the disk of this folder would survive a power cut."""
    if _syncfs is None:
        if sys.platform != "win32":
            os.sync()
        return
    with _opened(folder) as handle:
        if _syncfs(handle) != 0:
            number = ctypes.get_errno()
            raise OSError(number, os.strerror(number), str(folder))


def sync_names(folder: Path) -> None:
    """Wait until the names in this one folder would survive a power cut, where folders can be asked that."""
    if sys.platform == "win32":
        return
    with _opened(folder) as handle:
        try:
            os.fsync(handle)
        except OSError as error:
            if error.errno not in _CANNOT:
                raise


@contextmanager
def _opened(folder: Path) -> Iterator[int]:
    handle = os.open(folder, os.O_RDONLY)
    try:
        yield handle
    finally:
        os.close(handle)


@contextmanager
def locked(bench: Path, site: Path, wait: float) -> Iterator[None]:
    """Make the bench and keep other publishes off it; at the end the bench goes, unless something is left.

    Waits at most `wait` seconds; InUse after that. A killed process loses its lock by dying.
    """
    handle = _lock(bench, site, time.monotonic() + wait)
    try:
        yield
    finally:
        _unlock(handle, bench)


def _lock(bench: Path, site: Path, until: float) -> int:
    while (handle := _try_lock(bench, site)) is None:
        if time.monotonic() > until:
            found = f"another publish is at work on {site}"
            raise InUse(found, "one at a time", "wait until it is done and publish again")
        time.sleep(_PAUSE)
    return handle


def _try_lock(bench: Path, site: Path) -> int | None:
    """The lock's handle; None if somebody has it, or took the bench away while we reached for it."""
    with suppress(FileExistsError):
        bench.mkdir()
    try:
        handle = os.open(bench / LOCK, os.O_RDWR | os.O_CREAT, 0o666)
    except FileNotFoundError:
        return None
    try:
        taken = _take(handle) and os.path.samestat(os.fstat(handle), (bench / LOCK).stat())
    except FileNotFoundError:
        taken = False
    except OSError as error:
        os.close(handle)
        raise NotWritten(
            f"the disk of {site} has no locks ({error.strerror})",
            "a disk where two publishes at once can be told apart",
            "publish to a disk of this computer and copy the site",
        ) from error
    if not taken:
        os.close(handle)
        return None
    return handle


def _take(handle: int) -> bool:
    try:
        if sys.platform == "win32":
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True


def _unlock(handle: int, bench: Path) -> None:
    """Take the lock's file away while we still have it, so that nobody locks a file that is going."""
    if sys.platform == "win32":  # which takes no open file away
        os.close(handle)
    with suppress(OSError):
        (bench / LOCK).unlink()
    with suppress(OSError):
        bench.rmdir()
    if sys.platform != "win32":
        with suppress(OSError):
            os.close(handle)
