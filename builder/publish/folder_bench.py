"""The bench: a hidden folder beside a site, there while a publish is at work, where the new tree is made.

    making       an empty tree, not yet named
    new-NUMBER   a tree named for its own inode number. If it still has that number it never was the site.
                 If it has another, the swap took place, and this is the old site.
    old          the old site, on its way out, where a swap takes two renames
    lock         what the publish that is at work holds

Spare folders. Making and removing a folder costs a disk ten times what a second name for a file does, and
a site of a thousand episodes has a thousand folders. So the empty folders of the old site may wait, under
the user's cache, to be the folders of the next one. They hold nothing, and may be deleted at any moment.
"""

from __future__ import annotations

import hashlib
import os
import re
import stat
from contextlib import suppress
from pathlib import Path

from builder.publish.folder_errors import Refused
from builder.publish.folder_system import OLD, sync_names
from builder.publish.folder_tree import Survey, clear, discard, remove_folders, survey

MAKING = "making"
MOST_SPARES = 4

_NEW = re.compile(r"new-(\d+)")
_LONGEST = 200  # bytes of a site's name, so that the bench's name fits a disk too


def bench_of(site: Path) -> Path:
    """The bench's path: the site's own name, hidden, or a digest of it when it is too long."""
    raw = os.fsencode(site.name)
    name = site.name if len(raw) <= _LONGEST else hashlib.sha256(raw).hexdigest()[:32]
    return site.with_name(f".{name}.barrowbook")


def settle(bench: Path, site: Path) -> None:
    """Put right what a killed publish left: the old site back if it is missing, and every stray tree away."""
    if (bench / OLD).exists() and not site.exists():
        (bench / OLD).rename(site)
    for tree in strays(bench):
        with suppress(OSError, Refused):
            _put_away(tree, site)


def strays(bench: Path) -> list[Path]:
    """The trees on the bench."""
    return sorted(tree for tree in bench.iterdir() if tree.name in {MAKING, OLD} or _NEW.fullmatch(tree.name))


def left_on(bench: Path) -> tuple[Path, ...]:
    """The trees on the bench, to be told of; none if that cannot be found out. Never fails, as the site is new."""
    with suppress(OSError):
        return tuple(strays(bench))
    return ()


def _put_away(tree: Path, site: Path) -> None:
    if _never_was_the_site(tree):
        discard(tree)
    else:
        remove_folders(tree, clear(tree, site).folders)


def _never_was_the_site(tree: Path) -> bool:
    named = _NEW.fullmatch(tree.name)
    return named is not None and int(named[1]) == tree.stat().st_ino


def start_tree(bench: Path, site: Path, spare: Path | None) -> tuple[Path, Survey]:
    """A new tree on the bench without any file, and the folders it has already."""
    making = bench / MAKING
    if spare is None or not _moved(spare / _key(site), making):
        making.mkdir()
    new = making.rename(bench / f"new-{making.stat().st_ino}")
    have = survey(new)
    return new, (clear(new, site) if have.files or have.others else have)


def abandon(new: Path) -> None:
    """Take away a new tree that did not become the site. What cannot be taken away stays for the next run."""
    with suppress(OSError):
        if _never_was_the_site(new):
            discard(new)


def put_away(old: Path | None, site: Path, spare: Path | None) -> None:
    """Clear away the old site, now that the new one stands. What will not go stays for the next run."""
    with suppress(OSError, Refused):
        sync_names(site.parent)
        if old is not None:
            left = clear(old, site)
            if spare is None or not _kept(old, spare, site):
                remove_folders(old, left.folders)


def _kept(tree: Path, spare: Path, site: Path) -> bool:
    with suppress(OSError):
        spare.mkdir(mode=0o700, parents=True, exist_ok=True)
    if not _moved(tree, spare / _key(site)):
        return False
    for extra in _oldest_last(spare)[MOST_SPARES:]:
        with suppress(OSError):
            remove_folders(extra, survey(extra).folders)
    return True


def _oldest_last(spare: Path) -> list[Path]:
    return sorted(spare.iterdir(), key=lambda tree: (-tree.stat().st_mtime_ns, tree.name))


def _moved(tree: Path, to: Path) -> bool:
    """Whether it was a folder, and could be moved there: not to another disk, and not over anything."""
    try:
        plain = stat.S_ISDIR(tree.lstat().st_mode)
        if plain:
            tree.rename(to)
    except OSError:
        return False
    return plain


def _key(site: Path) -> str:
    return hashlib.sha256(os.fsencode(site)).hexdigest()[:32]
