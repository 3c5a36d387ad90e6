"""The pictures a journal shows, as pages show them and as files of the site."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from unicodedata import normalize

from builder.pages.prose import Photo
from builder.publish import photos
from builder.publish.folder import Copy
from builder.publish.photos_header import BadPhoto
from builder.words.telling import Tell, each, quiet

MOST_BYTES = 80_000_000
MOST_AT_ONCE = 4  # photos; each takes some 100 MB while it is made

Remember = Callable[[str, Callable[[], bytes]], bytes]


@dataclass
class PhotoError(Exception):
    """A picture that cannot be prepared: which one, what was found, what was expected, what to do."""

    path: str
    found: str
    expected: str
    fix: str

    def __str__(self) -> str:
        expected = f"; expected {self.expected}" if self.expected else ""
        return f"{self.path}: {self.found}{expected}" + (f"; {self.fix}" if self.fix else "")


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """Photos by path in the journal, and their files by path in the site, read only where they are written.

    `notes` are sentences for the author, on photos that are shown and yet not as they are. `digests` are SHA-256 of
    the author's own files as they were read, by path in the journal.
    """

    photos: Mapping[str, Photo]
    files: Mapping[str, Copy]
    notes: tuple[str, ...] = ()
    digests: Mapping[str, str] = field(default_factory=dict)


def prepare_photos(
    paths: tuple[str, ...], folder: Path, remember: Remember, tell: Tell = quiet, album: Album | None = None
) -> Prepared:
    """Every picture in a few widths; `remember` keeps them between runs. PhotoError names the first that is none.

    `tell` hears how many are done. With an `album` a file is not even read where it was seen before.
    """
    shown: dict[str, Photo] = {}
    files: dict[str, Copy] = {}
    notes: list[str] = []
    digests: dict[str, str] = {}
    for path, made in each(_all(paths, folder, remember, album), len(paths), "photos", tell):
        sources = tuple((one.name, one.width) for one in made.renditions)
        shown[path] = Photo(sources=sources, width=made.renditions[-1].width, height=made.renditions[-1].height)
        files |= {one.name: Copy(one.sha256, one.read) for one in made.renditions}
        digests[path] = made.digest
        notes += [f"{path}: {note.found}; {note.fix}." for note in made.notes]
    return Prepared(photos=shown, files=files, notes=tuple(notes), digests=digests)


def _all(
    paths: tuple[str, ...], folder: Path, remember: Remember, album: Album | None
) -> Iterator[tuple[str, photos.Photo]]:
    """Each path with its photo, in order; a few are made at once, as making one takes up to a second."""

    def make(path: str) -> photos.Photo:
        return _prepared(folder, path, remember) if album is None else album.photo(folder, path, remember)

    with ThreadPoolExecutor(min(MOST_AT_ONCE, os.cpu_count() or 1)) as pool:
        try:
            yield from zip(paths, pool.map(make, paths), strict=True)
        finally:
            pool.shutdown(cancel_futures=True)


class Album:
    """Photos seen before in this process, by the name, size and date of their files.

    Only for looking at: publishing goes by what is in a file.
    """

    def __init__(self) -> None:
        self._seen: dict[tuple[str, int, int], photos.Photo] = {}

    def photo(self, folder: Path, path: str, remember: Remember) -> photos.Photo:
        """The photo at a path in the journal."""
        facts = _facts(folder, path)
        key = (path, facts.st_size, facts.st_mtime_ns)
        if key not in self._seen:
            self._seen[key] = _prepared(folder, path, remember)
        return self._seen[key]


def _file(folder: Path, path: str) -> Path:
    """The file at a path, which may have its accents composed or decomposed in any part of its name."""
    file = folder / path
    if file.exists():
        return file
    here = folder
    for name in path.split("/"):
        same = (one for one in here.iterdir() if normalize("NFC", one.name) == name) if here.is_dir() else iter(())
        here = next(same, here / name)
    return here


def _prepared(folder: Path, path: str, remember: Remember) -> photos.Photo:
    try:
        return photos.prepare_once(_file(folder, path), _read(folder, path), remember)
    except BadPhoto as error:
        raise PhotoError(path, error.found, error.expected, error.fix) from None


def _read(folder: Path, path: str) -> bytes:
    if _facts(folder, path).st_size > MOST_BYTES:
        raise PhotoError(path, "the file is larger than 80 MB", "a smaller picture", "save it smaller")
    try:
        return _file(folder, path).read_bytes()
    except OSError as error:
        raise _unreadable(path, error) from None


def _facts(folder: Path, path: str) -> os.stat_result:
    try:
        return _file(folder, path).stat()
    except OSError as error:
        raise _unreadable(path, error) from None


def _unreadable(path: str, error: OSError) -> PhotoError:
    return PhotoError(path, f"the file cannot be read ({error.strerror})", "a readable file", "")
