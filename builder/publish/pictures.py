"""The pictures a journal shows, prepared for the site: upright, in a few widths, without anything but the picture.

Where a photo was taken, with which camera, and what its program wrote into it stay behind; the file of the author
is never copied out. What cannot be read as a picture is refused with a sentence.
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from builder import __version__
from builder.pages.prose import Photo, Remember, make_anew

if TYPE_CHECKING:  # Pillow takes 40 ms to import: only a journal with pictures pays for it
    from PIL.Image import Image

WIDTHS = (480, 960, 1600)
MOST_PIXELS = 120_000_000
MOST_BYTES = 80_000_000
_FORMATS = ("JPEG", "PNG", "WEBP", "GIF")
_FEW_COLOURS = 512

@dataclass
class PhotoError(Exception):
    """A picture that cannot be prepared: which one, what was found, what to do."""

    path: str
    found: str
    fix: str

    def __str__(self) -> str:
        return f"{self.path}: {self.found}; {self.fix}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """Photos by path in the journal, and their files by path in the site."""

    photos: Mapping[str, Photo]
    files: Mapping[str, bytes]


def prepare_photos(paths: tuple[str, ...], folder: Path, remember: Remember = make_anew) -> Prepared:
    """Every picture in a few widths, never wider than it is. `remember` keeps bytes between runs."""
    photos: dict[str, Photo] = {}
    files: dict[str, bytes] = {}
    for path in paths:
        raw = _read(folder, path)
        sizes = sizes_of(path, raw)
        made = _Making(path, raw)
        sources = []
        for width, height in sizes:
            name = f"{path.rpartition('.')[0]}-{width}.webp"
            files[name] = _kept(remember, raw, width, height, made)
            sources.append((name, width))
        photos[path] = Photo(sources=tuple(sources), width=sizes[-1][0], height=sizes[-1][1])
    return Prepared(photos=photos, files=files)


def _read(folder: Path, path: str) -> bytes:
    file = folder / path
    try:
        if file.stat().st_size > MOST_BYTES:
            raise PhotoError(path, "the file is larger than 80 MB", "save the picture smaller")
        return file.read_bytes()
    except OSError as error:
        raise PhotoError(path, f"the file cannot be read ({error.strerror})", "check the file") from None


def _kept(remember: Remember, raw: bytes, width: int, height: int, made: _Making) -> bytes:
    key = f"picture {__version__} {sha256(raw).hexdigest()} {width}x{height}"
    return remember(key, lambda: made.scaled(width, height))


def sizes_of(path: str, raw: bytes) -> list[tuple[int, int]]:
    """Width and height of each picture to make, smallest first, from the file's header alone."""
    from PIL import Image, UnidentifiedImageError  # only a journal with pictures needs it

    Image.MAX_IMAGE_PIXELS = None  # the limit is our own, below, and told in a sentence
    try:
        with Image.open(io.BytesIO(raw), formats=_FORMATS) as image:
            width, height = image.size
            turned = image.getexif().get(0x0112, 1) in (5, 6, 7, 8)
    except (UnidentifiedImageError, OSError, SyntaxError, ValueError):
        raise PhotoError(path, "this is no picture, or a broken one", "save it again as PNG or JPEG") from None
    if width * height > MOST_PIXELS or not width or not height:
        raise PhotoError(path, f"the picture has {width} x {height} pixels", "save it smaller")
    if turned:
        width, height = height, width
    widths = sorted({min(width, wanted) for wanted in WIDTHS})
    return [(wide, max(round(height * wide / width), 1)) for wide in widths]


class _Making:
    """One picture, decoded at most once and only if a width of it has to be made."""

    def __init__(self, path: str, raw: bytes) -> None:
        self._path, self._raw = path, raw
        self._image: Image | None = None

    def scaled(self, width: int, height: int) -> bytes:
        """The picture in one size, as WebP without any other data in the file."""
        from PIL import Image  # only a journal with pictures needs it

        whole = self._upright()
        drawn = whole.getcolors(_FEW_COLOURS) is not None
        sized = whole if whole.size == (width, height) else whole.resize((width, height), Image.Resampling.LANCZOS)
        lossy = _webp(sized, lossless=False)
        return min(lossy, _webp(sized, lossless=True), key=len) if drawn else lossy

    def _upright(self) -> Image:
        if self._image is None:
            self._image = _bare(self._path, self._raw)
        return self._image


def _bare(path: str, raw: bytes) -> Image:
    """The picture's own pixels: its first frame, turned upright, in the colours of screens, and nothing else."""
    from PIL import Image, ImageOps  # only a journal with pictures needs it

    try:
        with Image.open(io.BytesIO(raw), formats=_FORMATS) as opened:
            opened.load()
            upright = ImageOps.exif_transpose(opened)
            pixels = _in_screen_colours(upright)
    except (OSError, SyntaxError, ValueError, EOFError) as error:
        raise PhotoError(path, f"the picture is broken ({error})", "save it again as PNG or JPEG") from None
    clean = Image.new(pixels.mode, pixels.size)
    clean.paste(pixels)
    return clean


def _in_screen_colours(image: Image) -> Image:
    """Eight bits a channel, red green blue, with transparency where the picture has some."""
    if image.mode.startswith("I") or image.mode == "F":
        lowest, highest = image.getextrema()
        top = 65535 if isinstance(highest, int | float) and highest > 255 else 255
        del lowest
        image = image.convert("F").point(lambda value: value * 255 / top).convert("L")
    clear = image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info
    return image.convert("RGBA" if clear else "RGB")


def _webp(image: Image, *, lossless: bool) -> bytes:
    out = io.BytesIO()
    image.save(out, "WEBP", quality=80, method=4, lossless=lossless, exif=b"", icc_profile=b"", xmp=b"")
    return out.getvalue()
