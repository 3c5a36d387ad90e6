"""The pictures a journal shows, prepared for the site."""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from builder.pages.prose import Photo


class PhotoError(Exception):
    """A picture that cannot be prepared."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """Photos by path in the journal, and their files by path in the site."""

    photos: Mapping[str, Photo]
    files: Mapping[str, bytes]


def prepare_photos(paths: tuple[str, ...], folder: Path) -> Prepared:
    """Every picture in a few widths."""
    from PIL import Image

    photos: dict[str, Photo] = {}
    files: dict[str, bytes] = {}
    for path in paths:
        with Image.open(folder / path) as image:
            whole = image.convert("RGB")
        stem = path.rpartition(".")[0]
        sources = []
        for width in sorted({min(width, whole.width) for width in (480, 960, 1600)}):
            size = (width, round(whole.height * width / whole.width))
            out = io.BytesIO()
            whole.resize(size).save(out, "WEBP", quality=80)
            name = f"{stem}-{width}.webp"
            files[name] = out.getvalue()
            sources.append((name, width))
        photos[path] = Photo(sources=tuple(sources), width=whole.width, height=whole.height)
    return Prepared(photos=photos, files=files)
