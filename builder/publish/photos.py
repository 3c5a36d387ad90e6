"""Photos for the site: turned upright, in a few widths, as WebP, with nothing in them but what one sees.

Where a photo was taken, by which camera and when, what its author noted in it and the small picture that it
carries along stay in the journal: only pixels are written out, and they are encoded anew.
"""

from __future__ import annotations

import json
import re
import struct
import unicodedata
import warnings
import zlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from builder.publish.photos_header import BadPhoto, Broken, Header, read_header

if TYPE_CHECKING:  # Pillow takes as long to import as all the rest: only a journal with photos pays for it
    from PIL.Image import Image

WIDTHS = (480, 960, 1600)  # pixels
MOST_PIXELS = 70_000_000  # of a JPEG, which can be decoded small: a phone's 64 megapixels pass
MOST_WHOLE = 30_000_000  # of the formats that have to be decoded whole, in 8 bytes of memory a pixel
TALLEST = 16_383  # pixels that WebP takes in either direction (RFC 9649, section 2.6)
FEW_COLOURS = 256  # a drawing or a screenshot has no more
RECIPE = "1"  # of making the bytes; another number makes all photos anew

_ENDINGS = {"JPEG": (".jpg", ".jpeg"), "PNG": (".png",), "WebP": (".webp",), "GIF": (".gif",)}

# What Pillow raises for files that are cut off or damaged, seen while fuzzing it.
_DAMAGED = (OSError, SyntaxError, ValueError, EOFError, IndexError, TypeError, OverflowError, struct.error, zlib.error)


class WrongName(BadPhoto):
    """The name ends as if the file were in another format."""


class TooLarge(BadPhoto):
    """More pixels than is safe to decode."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """Something to tell the author; the photo is shown all the same."""

    found: str
    expected: str
    fix: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rendition:
    """A photo in one width: its path in the site, its size in pixels, the SHA-256 of its bytes, and those."""

    name: str
    width: int
    height: int
    sha256: str
    read: Callable[[], bytes] = field(compare=False, repr=False)

    @property
    def data(self) -> bytes:
        """The bytes of the WebP file; they may have to be fetched."""
        return self.read()


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A photo's own size, upright, its renditions by width, the narrowest first, and SHA-256 of its file."""

    width: int
    height: int
    renditions: tuple[Rendition, ...]
    notes: tuple[Note, ...] = ()
    digest: str = ""


def facts(raw: bytes) -> tuple[int, int]:
    """Width and height in pixels, upright, from the header alone. BadPhoto if it is no picture."""
    return read_header(raw).upright


def prepare(path: Path, raw: bytes, widths: Sequence[int] = WIDTHS) -> Photo:
    """The photo in these widths, and never wider than it is. The same bytes and name give the same photo.

    A width that takes more bytes than a wider one is left out: a drawing is often smallest in its own size.
    `path` gives the name in the site and must end as the format wants. BadPhoto says what is wrong with it.
    """
    header = read_header(raw)
    _check(path, header)
    sizes = _sizes(*header.upright, widths)
    digest = sha256(raw).hexdigest()
    stem = f"photos/{_slug(path.stem)}-{digest[:8]}"
    with _damage_told(header):
        whole, moves = _upright(raw, header, sizes[-1])
        drawn = header.format != "JPEG" and whole.getcolors(FEW_COLOURS) is not None
        renditions = _worthwhile([_rendition(whole, size, stem, drawn=drawn) for size in sizes])
    width, height = header.upright
    notes = _moving(header) if moves else ()
    return Photo(width=width, height=height, renditions=renditions, notes=notes, digest=digest)


def prepare_once(
    path: Path,
    raw: bytes,
    remember: Callable[[str, Callable[[], bytes]], bytes],
    widths: Sequence[int] = WIDTHS,
) -> Photo:
    """As `prepare`, but made once: sizes and digests, and each rendition's bytes, are remembered apart.

    So a photo that is known costs no decoding, and its bytes are read only where they have to be written.
    They are made again from the file at `path` if they were forgotten in between.
    """
    digest = sha256(raw).hexdigest()
    key = f"photo {_recipe()} {digest} {_slug(path.stem)} {path.suffix.lower()} {tuple(widths)}"

    def make() -> bytes:
        photo = prepare(path, raw, widths)
        for made in photo.renditions:
            remember(f"{key} {made.width}", made.read)
        return _written(photo)

    def fetch(number: int, width: int) -> Callable[[], bytes]:
        return lambda: remember(
            f"{key} {width}", lambda: prepare(path, path.read_bytes(), widths).renditions[number].data
        )

    return replace(_read_back(remember(key, make), fetch), digest=digest)


def _written(photo: Photo) -> bytes:
    """A photo without its bytes."""
    said = {
        "size": [photo.width, photo.height],
        "renditions": [[made.name, made.width, made.height, made.sha256] for made in photo.renditions],
        "notes": [[note.found, note.expected, note.fix] for note in photo.notes],
    }
    return json.dumps(said).encode()


def _read_back(raw: bytes, fetch: Callable[[int, int], Callable[[], bytes]]) -> Photo:
    said = json.loads(raw)
    return Photo(
        width=said["size"][0],
        height=said["size"][1],
        renditions=tuple(
            Rendition(name=name, width=width, height=height, sha256=digest, read=fetch(number, width))
            for number, (name, width, height, digest) in enumerate(said["renditions"])
        ),
        notes=tuple(Note(found=found, expected=expected, fix=fix) for found, expected, fix in said["notes"]),
    )


def _recipe() -> str:
    """What the bytes depend on besides the photo: how we make them, and who encodes them."""
    import PIL

    return f"{RECIPE} Pillow {PIL.__version__}"


def _check(path: Path, header: Header) -> None:
    endings = _ENDINGS[header.format]
    if path.suffix.lower() not in endings:
        raise WrongName(
            f"the picture is a {header.format}, and its name ends in {path.suffix or 'nothing'}",
            f"a name that ends in {' or '.join(endings)}",
            f"rename the file to {path.stem}{endings[0]}, and name it so in the story",
        )
    if header.width * header.height > _most(header):
        raise TooLarge(
            f"the picture has {header.width} x {header.height} pixels",
            f"at most {_most(header) // 10**6} million pixels",
            "save it smaller; the site shows it 1600 pixels wide",
        )


def _most(header: Header) -> int:
    return MOST_PIXELS if header.format == "JPEG" else MOST_WHOLE


def _sizes(width: int, height: int, widths: Sequence[int]) -> list[tuple[int, int]]:
    """Width and height of each rendition, heights rounded half up."""
    widest = max(min(width, TALLEST, width * TALLEST // height), 1)
    wide = sorted({min(wanted, widest) for wanted in widths})
    return [(one, min(max((2 * height * one + width) // (2 * width), 1), TALLEST)) for one in wide]


def _worthwhile(made: Sequence[Rendition]) -> tuple[Rendition, ...]:
    sizes = [len(one.data) for one in made]
    return tuple(one for number, one in enumerate(made) if all(sizes[number] < wider for wider in sizes[number + 1 :]))


def _slug(stem: str) -> str:
    """Small letters, digits and dashes of a name, at most 60; `photo` if none are left."""
    plain = unicodedata.normalize("NFKD", stem.casefold()).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].strip("-") or "photo"


@contextmanager
def _damage_told(header: Header) -> Iterator[None]:
    """Pillow's many ways to stumble over a damaged file are one mistake; what it warns of is no matter."""
    from PIL.Image import DecompressionBombError

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    except (*_DAMAGED, DecompressionBombError) as error:
        raise Broken.because(f"the {header.format} picture is damaged, or ends too early") from error


def _moving(header: Header) -> tuple[Note, ...]:
    return (
        Note(
            found=f"the {header.format} picture moves; the site shows its first frame",
            expected="a picture that stands still",
            fix="link to a film instead",
        ),
    )


def _upright(raw: bytes, header: Header, largest: tuple[int, int]) -> tuple[Image, bool]:
    """The first frame's pixels as RGB or RGBA, upright, at least as large as needed; and whether there are more."""
    from PIL import Image

    with Image.open(BytesIO(raw), formats=[header.format.upper()]) as image:
        if image.width * image.height > _most(header):
            raise ValueError("the header said less")
        # A JPEG may hold a second picture (for depth, or for bright screens), and does not move for it.
        moves = header.format != "JPEG" and bool(getattr(image, "is_animated", False))
        # A JPEG can be decoded at a half, a quarter or an eighth, which saves most of the time.
        image.draft(None, largest if header.orientation < 5 else largest[::-1])
        image.load()
        pixels = _plain(image)
    turn = _TURNS.get(header.orientation)
    return (pixels if turn is None else pixels.transpose(Image.Transpose[turn])), moves


# How to turn a picture of each orientation (TIFF 6.0, tag 274) upright, in Pillow's words.
_TURNS = {
    2: "FLIP_LEFT_RIGHT",
    3: "ROTATE_180",
    4: "FLIP_TOP_BOTTOM",
    5: "TRANSPOSE",
    6: "ROTATE_270",
    7: "TRANSVERSE",
    8: "ROTATE_90",
}


def _plain(image: Image) -> Image:
    """Eight bits each of red, green and blue as screens take them (sRGB), and alpha only if any of it is clear."""
    profile = image.info.get("icc_profile")
    if image.mode.startswith("I"):  # 16 bits of grey, which Pillow would cut off at 255
        image = image.convert("I").point(lambda value: value * (1 / 257)).convert("L")
    clear = image.has_transparency_data
    if image.mode not in {"RGB", "RGBA", "CMYK"}:
        image = image.convert("RGBA" if clear else "RGB")
    elif image.mode == "RGB" and clear:
        image = image.convert("RGBA")
    alpha = image.getchannel("A") if clear else None
    colours = _on_screen(image.convert("RGB") if image.mode == "RGBA" else image, profile)
    if alpha is not None and alpha.getextrema() != (255, 255):
        colours.putalpha(alpha)
    return colours


def _on_screen(image: Image, profile: bytes | None) -> Image:
    """The same colours in sRGB. A profile that is damaged, or is for other colours, is passed over."""
    from PIL import ImageCms

    if profile:
        try:
            theirs = ImageCms.ImageCmsProfile(BytesIO(profile))
            if theirs.profile.xcolor_space.strip() == image.mode and "sRGB" not in _described(theirs):
                ours = ImageCms.createProfile("sRGB")
                converted = ImageCms.profileToProfile(image, theirs, ours, outputMode="RGB")
                return converted or image.convert("RGB")
        except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
            pass
    return image.convert("RGB")


def _described(profile: object) -> str:
    return str(getattr(getattr(profile, "profile", None), "profile_description", "") or "")


def _rendition(whole: Image, size: tuple[int, int], stem: str, *, drawn: bool) -> Rendition:
    from PIL import Image

    image = whole if whole.size == size else whole.resize(size, Image.Resampling.LANCZOS)
    data = _webp(image, lossless=False)
    if drawn:
        data = min(_webp(image, lossless=True), data, key=len)
    width, height = size
    name = f"{stem}-{width}.webp"
    return Rendition(name=name, width=width, height=height, sha256=sha256(data).hexdigest(), read=lambda: data)


def _webp(image: Image, *, lossless: bool) -> bytes:
    """Encoded as WebP. Method 3 takes three quarters of the time of 4, for the same size."""
    out = BytesIO()
    image.save(out, "WEBP", lossless=lossless, quality=80, method=3, exif=b"", icc_profile=b"", xmp=b"")
    return out.getvalue()
