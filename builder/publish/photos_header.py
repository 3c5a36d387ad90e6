"""What the first bytes of a picture say: its format, its size, which way up. Nothing is decoded for it.

Sources, as remembered: JPEG is ITU-T T.81 annex B, its orientation TIFF 6.0 tag 274 inside Exif 2.3; PNG is
the W3C's third edition; WebP is RFC 9649; GIF is version 89a.
"""

from __future__ import annotations

import struct
from collections.abc import Callable, Iterator
from dataclasses import dataclass


@dataclass(eq=False)  # each raising is its own
class BadPhoto(Exception):
    """A picture that cannot be shown. `found` is a clause, `expected` names what would do, `fix` may be empty."""

    found: str
    expected: str
    fix: str = ""

    def __str__(self) -> str:
        return f"{self.found}; expected {self.expected}" + (f"; {self.fix}" if self.fix else "")


class NoPicture(BadPhoto):
    """The file is something else, or a format that browsers do not all show."""


class Broken(BadPhoto):
    """The file ends too early, or is damaged."""

    @classmethod
    def because(cls, what: str) -> Broken:
        """Damaged in one way or another."""
        return cls(what, "a whole picture", "copy the file again from the camera, or save the picture again")


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """Format, size in pixels as stored, and Exif's orientation: 1 is upright, and from 5 to 8 it lies on its side."""

    format: str
    width: int
    height: int
    orientation: int = 1

    @property
    def upright(self) -> tuple[int, int]:
        """Width and height as it is looked at."""
        return (self.height, self.width) if self.orientation >= 5 else (self.width, self.height)


def read_header(raw: bytes) -> Header:
    """Format, size and orientation. NoPicture for another format, Broken where the header is not whole."""
    for format_, begins, read in _FORMATS:
        if begins(raw):
            try:
                header = read(raw)
            except (struct.error, IndexError):
                header = None
            if header is None or header.width == 0 or header.height == 0:
                raise Broken.because(f"the {format_} picture ends before it says how large it is")
            return header
    raise NoPicture(
        f"the file is {_guess(raw)}", "a picture as JPEG, PNG, WebP or GIF", "save it in one of these and name that"
    )


def _jpeg(raw: bytes) -> Header | None:
    size, orientation = None, 1
    for marker, at, end in _jpeg_segments(raw):
        if size is None and 0xC0 <= marker <= 0xCF and marker not in {0xC4, 0xC8, 0xCC}:  # SOF: the frame's header
            size = struct.unpack_from(">HH", raw, at + 1)
        elif marker == 0xE1 and raw[at : at + 6] == b"Exif\0\0":
            orientation = _orientation(raw[at + 6 : end])
    return Header(format="JPEG", width=size[1], height=size[0], orientation=orientation) if size else None


def _jpeg_segments(raw: bytes) -> Iterator[tuple[int, int, int]]:
    """Marker, begin and end of each segment before the pixels."""
    at = 2
    while raw[at] == 0xFF:
        marker = raw[at + 1]
        if marker == 0xFF:  # filling
            at += 1
        elif marker == 0x01 or 0xD0 <= marker <= 0xD7:  # markers without a segment
            at += 2
        elif marker in {0xD9, 0xDA}:  # the end, or the pixels
            return
        else:
            (length,) = struct.unpack_from(">H", raw, at + 2)
            yield marker, at + 4, at + 2 + length
            at += 2 + max(length, 2)


def _orientation(tiff: bytes) -> int:
    """Tag 274 of the first directory; 1 where there is none, or anything is odd."""
    try:
        order = {b"II": "<", b"MM": ">"}[tiff[:2]]
        (first,) = struct.unpack_from(f"{order}I", tiff, 4)
        (count,) = struct.unpack_from(f"{order}H", tiff, first)
        for number in range(count):
            tag, kind, _, value = struct.unpack_from(f"{order}HHIH", tiff, first + 2 + 12 * number)
            if tag == 0x0112:
                return value if kind == 3 and 1 <= value <= 8 else 1
    except (KeyError, struct.error):
        pass
    return 1


def _png(raw: bytes) -> Header | None:
    if raw[12:16] != b"IHDR":
        return None
    width, height = struct.unpack_from(">II", raw, 16)
    return Header(
        format="PNG", width=width, height=height, orientation=_chunk_orientation(raw, 8, b"eXIf", ">I", 4, 12)
    )


def _webp(raw: bytes) -> Header | None:
    kind, at = raw[12:16], 20
    if kind == b"VP8X":
        width = int.from_bytes(raw[at + 4 : at + 7], "little") + 1
        height = int.from_bytes(raw[at + 7 : at + 10], "little") + 1
        turned = _chunk_orientation(raw, 12, b"EXIF", "<I", 0, 8)
        return Header(format="WebP", width=width, height=height, orientation=turned) if len(raw) >= 30 else None
    if kind == b"VP8 " and raw[at + 3 : at + 6] == b"\x9d\x01\x2a":
        width, height = struct.unpack_from("<HH", raw, at + 6)
        return Header(format="WebP", width=width & 0x3FFF, height=height & 0x3FFF)
    if kind == b"VP8L" and raw[at] == 0x2F:
        (bits,) = struct.unpack_from("<I", raw, at + 1)
        return Header(format="WebP", width=(bits & 0x3FFF) + 1, height=(bits >> 14 & 0x3FFF) + 1)
    return None


def _chunk_orientation(raw: bytes, at: int, name: bytes, length: str, name_at: int, around: int) -> int:
    """The orientation in a chunk of that name, in a file of chunks with `around` bytes besides their own."""
    while at + 8 <= len(raw):
        (size,) = struct.unpack_from(length, raw, at + 4 - name_at)
        if raw[at + name_at : at + name_at + 4] == name:
            return _orientation(raw[at + 8 : at + 8 + size].removeprefix(b"Exif\0\0"))
        at += around + size + (size & 1 if around == 8 else 0)
    return 1


def _gif(raw: bytes) -> Header:
    width, height = struct.unpack_from("<HH", raw, 6)
    return Header(format="GIF", width=width, height=height)


_FORMATS: tuple[tuple[str, Callable[[bytes], bool], Callable[[bytes], Header | None]], ...] = (
    ("JPEG", lambda raw: raw.startswith(b"\xff\xd8\xff"), _jpeg),
    ("PNG", lambda raw: raw.startswith(b"\x89PNG\r\n\x1a\n"), _png),
    ("WebP", lambda raw: raw[:4] == b"RIFF" and raw[8:12] == b"WEBP", _webp),
    ("GIF", lambda raw: raw[:6] in {b"GIF87a", b"GIF89a"}, _gif),
)

_OTHERS = {
    b"ftypheic": "a HEIC picture, as some phones make them",
    b"ftypheix": "a HEIC picture, as some phones make them",
    b"ftypmif1": "a HEIC picture, as some phones make them",
    b"ftypavif": "an AVIF picture",
    b"ftyp": "a film",
}
_BEGINS = {
    b"II*\0": "a TIFF picture, or a camera's raw one",
    b"MM\0*": "a TIFF picture, or a camera's raw one",
    b"BM": "a BMP picture",
    b"%PDF": "a PDF",
    b"<svg": "an SVG drawing",
    b"<?xml": "an SVG drawing, or other XML",
    b"<!DOCTYPE": "a web page",
    b"<html": "a web page",
}


def _guess(raw: bytes) -> str:
    """What else it may be, for the message."""
    if not raw:
        return "empty"
    later = (words for begin, words in _OTHERS.items() if raw[4:].startswith(begin))
    first = (words for begin, words in _BEGINS.items() if raw.lstrip().startswith(begin))
    return next(later, None) or next(first, "no picture")
