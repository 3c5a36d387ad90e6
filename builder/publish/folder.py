"""The site folder changes in one step, or not at all.

    look      what stands there, what of it we wrote, and whether anybody touched it since
    build     the new tree on a bench beside the site; what is unchanged gets a second name, not a copy
    swap      one exchange of two names
    put away  the old tree, and never anything that others put there

A process that is killed, a full disk and a failed write leave the site that stood there. Whoever has the
folder itself open (a shell inside it) holds the old one after a swap.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field, replace
from pathlib import Path

from builder.publish.folder_bench import abandon, bench_of, left_on, put_away, settle, start_tree
from builder.publish.folder_errors import NotWritten, SiteError
from builder.publish.folder_marker import Marker
from builder.publish.folder_paths import MARKER, check_paths, folders_of
from builder.publish.folder_refusals import check_room, site_at, wrote
from builder.publish.folder_system import locked, swap, sync_tree
from builder.publish.folder_tree import (
    Survey,
    carry,
    copy_looks,
    file_digest,
    lay_folders,
    survey,
    write_new,
)


@dataclass(frozen=True, slots=True)
class Copy:
    """A file whose digest is known and whose bytes are read only if they have to be written (a photo).

    `sha256` in hexadecimal; `read` gives exactly the bytes of that digest, else nothing is published.
    """

    sha256: str
    read: Callable[[], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """What became of the site's paths, each sorted. Every path is in one of the first four.

    `edited` are files of ours that somebody changed or deleted since they were written: they were written
    again, or are gone with the rest. `left` are trees that could not be put away; the next run tries again.
    `standing` says in short what stands there now, for `stands`.
    """

    added: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    unchanged: tuple[str, ...] = ()
    edited: tuple[str, ...] = ()
    left: tuple[Path, ...] = ()
    standing: str = field(default="", compare=False)


def publish_folder(
    target: Path,
    files: Mapping[str, bytes | Copy],
    *,
    version: str,
    journal: Path | None = None,
    spare: Path | None = None,
    wait: float = 10.0,
) -> Changed:
    """Make `target` hold these files, by path with forward slashes, and what others put there.

    Writes nothing at all if the folder holds them already. `journal` is a folder that the site must not
    be or hold. `spare` is a folder of the user's cache (see folder_bench). `wait` is how many seconds to
    wait for another publish of the same site. Raises a SiteError with the site as it was.
    """
    check_paths(files)
    wanted = Marker(version, {path: digest_of(content) for path, content in files.items()})
    try:
        site = site_at(target, journal)
        before = wrote(site)
        if before == wanted and not bench_of(site).exists() and len(_intact(site, before)) == len(files):
            return Changed(unchanged=tuple(sorted(files)), standing=wanted.digest)
        with _parents(site), locked(bench_of(site), site, wait):
            settle(bench_of(site), site)
            return replace(_replace(site, files, wanted, spare), standing=wanted.digest)
    except OSError as error:
        raise NotWritten.because(error, target) from error


def stands(target: Path, standing: str, journal: Path | None = None) -> bool:
    """Whether exactly what a `Changed` told of stands there, untouched, with nothing left to put away."""
    try:
        site = site_at(target, journal)
        before = wrote(site)
        if before is None or before.digest != standing or bench_of(site).exists():
            return False
        return len(_intact(site, before)) == len(before.files)
    except (OSError, SiteError):
        return False


def standing_at(target: Path, journal: Path | None = None) -> Marker | None:
    """What the site there says of itself, whether or not somebody touched it since; None where there is none."""
    try:
        return wrote(site_at(target, journal))
    except (OSError, SiteError):
        return None


def digest_of(content: bytes | Copy) -> str:
    """SHA-256 of a file's bytes, in hexadecimal."""
    return content.sha256 if isinstance(content, Copy) else hashlib.sha256(content).hexdigest()


def _intact(site: Path, marker: Marker) -> set[str]:
    """The files that still are what we wrote."""
    return {path for path, digest in marker.files.items() if file_digest(f"{site}/{path}") == digest}


@contextmanager
def _parents(site: Path) -> Iterator[None]:
    """The folders above the site; those that were not there go again if nothing came of it."""
    missing = [folder for folder in site.parents if not folder.exists()]
    site.parent.mkdir(parents=True, exist_ok=True)
    try:
        yield
    except BaseException:
        for folder in missing:
            with suppress(OSError):
                folder.rmdir()
        raise


@dataclass(frozen=True, slots=True, kw_only=True)
class _Standing:
    """The site before: what we wrote in it, all that is in it, and which of our files are untouched."""

    site: Path
    before: Marker
    found: Survey
    kept: frozenset[str]

    @property
    def foreign(self) -> frozenset[str]:
        """Files that others put there."""
        return (self.found.files | self.found.others) - self.before.files.keys() - {MARKER}

    @property
    def foreign_folders(self) -> set[str]:
        """Folders that others made."""
        return self.found.folders.keys() - folders_of(self.before.files)


def _replace(site: Path, files: Mapping[str, bytes | Copy], wanted: Marker, spare: Path | None) -> Changed:
    """What publishing is, with the lock held and the bench in order."""
    standing = _look(site)
    changed = _compare(standing, wanted)
    if standing.before == wanted and not changed.edited:
        return changed
    check_room(standing.found, standing.before.files, wanted.files)
    bench = bench_of(site)
    new, have = start_tree(bench, site, spare)
    try:
        _fill(new, have, standing, wanted, {path: files[path] for path in (*changed.added, *changed.changed)})
        sync_tree(new)
        old = swap(new, site, bench)
    except BaseException:
        abandon(new)
        raise
    put_away(old, site, spare)
    return replace(changed, left=left_on(bench))


def _look(site: Path) -> _Standing:
    before = wrote(site) or Marker("", {})
    found = survey(site) if site.exists() else Survey()
    return _Standing(site=site, before=before, found=found, kept=frozenset(_intact(site, before)))


def _compare(standing: _Standing, wanted: Marker) -> Changed:
    old, new, kept = standing.before.files, wanted.files, standing.kept
    both = sorted(old.keys() & new.keys())
    same = {path for path in both if old[path] == new[path] and path in kept}
    return Changed(
        added=tuple(sorted(new.keys() - old.keys())),
        changed=tuple(path for path in both if path not in same),
        removed=tuple(sorted(old.keys() - new.keys())),
        unchanged=tuple(path for path in both if path in same),
        edited=tuple(sorted(old.keys() - kept)),
    )


def _fill(new: Path, have: Survey, standing: _Standing, wanted: Marker, fresh: Mapping[str, bytes | Copy]) -> None:
    """Everything into the new tree; the marker first, so that it always says what in the tree is ours."""
    site, foreign, folders = standing.site, standing.foreign, standing.foreign_folders
    needed = folders | folders_of(foreign) | folders_of(wanted.files)
    write_new(f"{new}/{MARKER}", wanted.to_bytes())
    lay_folders(new, needed, have)
    for path in [*(wanted.files.keys() - fresh.keys()), *foreign]:
        carry(f"{site}/{path}", f"{new}/{path}")
    for path, content in fresh.items():
        write_new(f"{new}/{path}", _bytes(path, content))
    if site.exists():
        before = standing.found.folders
        copy_looks(site, new, {path: before[path] for path in before.keys() & needed}, folders)


def _bytes(path: str, content: bytes | Copy) -> bytes:
    if not isinstance(content, Copy):
        return content
    try:
        data = content.read()
    except OSError as error:
        raise _lost(path, error.strerror or str(error)) from error
    if hashlib.sha256(data).hexdigest() != content.sha256:
        raise _lost(path, "other bytes came than were promised")
    return data


def _lost(path: str, why: str) -> NotWritten:
    return NotWritten(f"{path} could not be made ({why})", "the bytes it had a moment ago", "publish again")
