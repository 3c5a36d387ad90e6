"""Trees of files: what stands in one, filling a new one, clearing an old one and losing nothing of others'.

A site has thousands of files, and a Path for each costs more than what is done to it.
"""

# ruff: noqa: PTH101, PTH102, PTH106, PTH108, PTH116
from __future__ import annotations

import hashlib
import os
import shutil
import stat
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from itertools import chain, count
from pathlib import Path

from builder.publish.folder_errors import Refused
from builder.publish.folder_marker import read_marker
from builder.publish.folder_paths import MARKER
from builder.publish.folder_system import SYNCS_TREES

# Never through a link, and never waiting for the other end of a pipe. Windows knows neither.
_READ = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
# Where a second name for a link can only be one for what it leads to, as on Windows, that has to do.
_FOLLOWS = os.link not in os.supports_follow_symlinks
_WRITE = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)


@dataclass(frozen=True, slots=True)
class Survey:
    """Everything in a folder, by path in it: folders, plain files, and what is neither (links, pipes)."""

    folders: Mapping[str, os.stat_result] = field(default_factory=dict)
    files: frozenset[str] = frozenset()
    others: frozenset[str] = frozenset()


def survey(root: Path) -> Survey:
    """What stands in `root`, links not followed. Refused if another disk is mounted inside."""
    folders: dict[str, os.stat_result] = {}
    files: set[str] = set()
    others: set[str] = set()
    device = root.stat().st_dev
    waiting = [""]  # not by calling itself: a folder may be deep
    while waiting:
        inside = waiting.pop()
        with os.scandir(f"{root}/{inside}") as entries:
            for entry in entries:
                path = inside + entry.name
                if entry.is_file(follow_symlinks=False):
                    files.add(path)
                elif entry.is_dir(follow_symlinks=False):
                    folders[path] = entry.stat(follow_symlinks=False)
                    _same_disk(folders[path].st_dev == device, entry.path)
                    waiting.append(f"{path}/")
                else:
                    others.add(path)
    return Survey(folders, frozenset(files), frozenset(others))


def _same_disk(same: bool, path: str) -> None:
    if not same:
        raise Refused(
            f"another disk is mounted at {path}, inside the site",
            "a site that is whole on one disk",
            "unmount it, or publish to another folder",
        )


def file_digest(path: str) -> str | None:
    """The SHA-256 of a file; None if there is no plain file of that name."""
    try:
        handle = os.open(path, _READ)
    except OSError:
        return None
    try:
        facts = os.fstat(handle)
        if not stat.S_ISREG(facts.st_mode):
            return None
        digest = hashlib.sha256()
        while part := os.read(handle, facts.st_size + 1):
            digest.update(part)
            if len(part) == facts.st_size:
                break  # all of it: no need to be told that there is no more
        return digest.hexdigest()
    finally:
        os.close(handle)


def write_new(path: str, data: bytes) -> None:
    """A new file; FileExistsError if there is one (two names that this disk holds to be the same)."""
    handle = os.open(path, _WRITE, 0o666)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]
        if not SYNCS_TREES:
            os.fsync(handle)
    finally:
        os.close(handle)


def carry(old: str, new: str) -> None:
    """The same file under another name: a second name for it, or a copy where the disk has no such thing.

    FileExistsError if there is anything of that name: nothing is written over, and nothing through a link.
    """
    try:
        os.link(old, new, follow_symlinks=_FOLLOWS)
    except FileExistsError:
        raise
    except OSError:
        _copy(old, new)


def _copy(old: str, new: str) -> None:
    if Path(old).is_symlink():
        Path(new).symlink_to(Path(old).readlink())
    else:
        write_new(new, Path(old).read_bytes())
    shutil.copystat(old, new, follow_symlinks=False)


def lay_folders(root: Path, needed: set[str], have: Survey) -> None:
    """Make the folders that are needed, and take away those that are not."""
    for path in sorted(have.folders.keys() - needed, reverse=True):
        os.rmdir(f"{root}/{path}")
    for path in sorted(needed - have.folders.keys()):
        os.mkdir(f"{root}/{path}")


def copy_looks(old: Path, new: Path, folders: Mapping[str, os.stat_result], foreign: set[str]) -> None:
    """Permissions of folders as they were; the dates too of those that are not ours. After all is filled."""
    for path in sorted(folders, reverse=True):
        if path in foreign:
            shutil.copystat(f"{old}/{path}", f"{new}/{path}")
        elif folders[path].st_mode != os.stat(f"{new}/{path}").st_mode:
            os.chmod(f"{new}/{path}", stat.S_IMODE(folders[path].st_mode))
    if new.stat().st_mode != old.stat().st_mode:
        new.chmod(stat.S_IMODE(old.stat().st_mode))


def clear(tree: Path, site: Path) -> Survey:
    """Take every file out of a tree that is no longer the site; gives the folders that are left.

    What we wrote goes. What others put there stands in the site as well, and goes here; if it does not,
    because it came or changed during the swap, it moves to the site. (An empty folder made in those
    milliseconds is the one thing that does not.) The marker goes last, so that a clearing that was cut
    short can be taken up again.
    """
    marker = read_marker(tree)
    ours: Mapping[str, str] = marker.files if marker else {}
    found = survey(tree)
    _open_up(tree, found)
    for path in sorted((found.files | found.others) - {MARKER}):
        if path in ours:
            os.unlink(f"{tree}/{path}")
        else:
            _give_back(tree / path, site / path)
    if marker:
        os.unlink(f"{tree}/{MARKER}")
    return Survey(found.folders)


def _open_up(tree: Path, found: Survey) -> None:
    """A folder that forbids changes cannot be cleared; it keeps that look in the site."""
    for path, facts in found.folders.items():
        if facts.st_mode & stat.S_IRWXU != stat.S_IRWXU:
            os.chmod(f"{tree}/{path}", stat.S_IMODE(facts.st_mode) | stat.S_IRWXU)


def _give_back(old: Path, new: Path) -> None:
    """Drop a foreign file of the old tree if the site has it, else move it there. Nothing is written over."""
    try:
        there = new.lstat()
    except FileNotFoundError:
        new.parent.mkdir(parents=True, exist_ok=True)
        old.rename(new)
        return
    if os.path.samestat(there, old.lstat()) or _alike(old, new):
        old.unlink()
    else:
        old.rename(_free_name(new))


def _alike(one: Path, other: Path) -> bool:
    if one.is_symlink() and other.is_symlink():
        return one.readlink() == other.readlink()
    digest = file_digest(str(one))
    return digest is not None and digest == file_digest(str(other))


def _free_name(path: Path) -> Path:
    """`CNAME.kept`, or `CNAME.kept-2` and so on."""
    numbered = (path.with_name(f"{path.name}.kept-{number}") for number in count(2))
    names = chain([path.with_name(f"{path.name}.kept")], numbered)
    return next(name for name in names if not os.path.lexists(name))


def remove_folders(tree: Path, folders: Mapping[str, object]) -> None:
    """Take away a tree of empty folders. OSError if something turns out to be in one."""
    for path in sorted(folders, reverse=True):
        os.rmdir(f"{tree}/{path}")
    tree.rmdir()


def discard(tree: Path) -> None:
    """Take away a new tree that never was the site: it holds nothing that the site or we do not have."""
    with suppress(FileNotFoundError):
        _open_up(tree, survey(tree))
        shutil.rmtree(tree)
