"""The pictures a journal shows, as pages show them and as files of the site."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from builder.pages.prose import Photo
from builder.publish.folder import Copy
from builder.publish.photos import prepare_once
from builder.publish.photos_header import BadPhoto

MOST_BYTES = 80_000_000

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
    """Photos by path in the journal, and their files by path in the site, read only where they are written."""

    photos: Mapping[str, Photo]
    files: Mapping[str, Copy]


def prepare_photos(paths: tuple[str, ...], folder: Path, remember: Remember) -> Prepared:
    """Every picture in a few widths; `remember` keeps them between runs. PhotoError names the first that is none."""
    photos: dict[str, Photo] = {}
    files: dict[str, Copy] = {}
    for path in paths:
        try:
            made = prepare_once(folder / path, _read(folder, path), remember)
        except BadPhoto as error:
            raise PhotoError(path, error.found, error.expected, error.fix) from None
        sources = tuple((one.name, one.width) for one in made.renditions)
        photos[path] = Photo(sources=sources, width=made.renditions[-1].width, height=made.renditions[-1].height)
        files |= {one.name: Copy(one.sha256, one.read) for one in made.renditions}
    return Prepared(photos=photos, files=files)


def _read(folder: Path, path: str) -> bytes:
    file = folder / path
    try:
        if file.stat().st_size > MOST_BYTES:
            raise PhotoError(path, "the file is larger than 80 MB", "a smaller picture", "save it smaller")
        return file.read_bytes()
    except OSError as error:
        raise PhotoError(path, f"the file cannot be read ({error.strerror})", "a readable file", "") from None
