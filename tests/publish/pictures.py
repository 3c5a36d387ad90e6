"""Pictures made for the tests, byte by byte where Pillow cannot make them."""

from __future__ import annotations

import struct
import zlib
from io import BytesIO

from PIL import Image

Colour = tuple[int, int, int]

RED, GREEN, BLUE, WHITE = (255, 0, 0), (0, 255, 0), (0, 0, 255), (255, 255, 255)
CORNERS = [[RED, GREEN], [BLUE, WHITE]]  # top left, top right; bottom left, bottom right

# What a phone or a camera may have written into a photo, to look for in what the site shows.
SECRETS = {
    "place": b"N 51.4779, at the gate",
    "serial number": b"SN-0042-7781-BODY",
    "lens": b"SN-LENS-99123",
    "owner": b"A. N. Owner",
    "date": b"2026:07:04 09:41:00",
    "comment": b"from the house side, gate code 4711",
    "XMP": b"xmp-says-where-we-live",
    "IPTC": b"iptc-city-of-residence",
    "thumbnail": b"uncropped-thumbnail-bytes",
    "trailer": b"a film after the picture",
}


def saved(image: Image.Image, format_: str, **how: object) -> bytes:
    """An image as a file."""
    out = BytesIO()
    image.save(out, format_, **how)
    return out.getvalue()


def opened(raw: bytes) -> Image.Image:
    """A file as an image, decoded."""
    image = Image.open(BytesIO(raw))
    image.load()
    return image


def corners(width: int, height: int) -> Image.Image:
    """A picture with a colour of its own in each quarter."""
    image = Image.new("RGB", (width, height))
    for row, colours in enumerate(CORNERS):
        for column, colour in enumerate(colours):
            at = (column * width // 2, row * height // 2)
            image.paste(colour, (*at, at[0] + (width + 1) // 2, at[1] + (height + 1) // 2))
    return image


def colours_at_corners(image: Image.Image) -> list[list[Colour]]:
    """The colours in the middle of each quarter, each channel rounded to 0, 128 or 255."""

    def near(value: int) -> int:
        return min((0, 128, 255), key=lambda one: abs(one - value))

    def at(column: int, row: int) -> Colour:
        pixel = image.convert("RGB").getpixel(((2 * column + 1) * image.width // 4, (2 * row + 1) * image.height // 4))
        assert isinstance(pixel, tuple)
        return (near(pixel[0]), near(pixel[1]), near(pixel[2]))

    return [[at(0, 0), at(1, 0)], [at(0, 1), at(1, 1)]]


def photo_like(width: int, height: int) -> Image.Image:
    """Many soft colours, as a photo has."""
    noise = [Image.effect_noise((max(width // 8, 1), max(height // 8, 1)), spread) for spread in (40, 60, 80)]
    return Image.merge("RGB", noise).resize((width, height), Image.Resampling.BICUBIC)


def exif(orientation: int, *, secrets: bool = False, order: str = "<") -> bytes:
    """An Exif block (TIFF 6.0, Exif 2.3): orientation, and if wanted owner, date, serial numbers and the place."""
    first = [(0x0112, 3, struct.pack(f"{order}HH", orientation, 0))]
    inner: list[tuple[int, int, bytes]] = []
    place: list[tuple[int, int, bytes]] = []
    if secrets:
        first += [(0x0132, 2, SECRETS["date"] + b"\0"), (0x013B, 2, SECRETS["owner"] + b"\0")]
        inner = [(0xA431, 2, SECRETS["serial number"] + b"\0"), (0xA435, 2, SECRETS["lens"] + b"\0")]
        place = [
            (0x0001, 2, b"N\0"),
            (0x0002, 5, struct.pack(f"{order}6I", 51, 1, 28, 1, 40, 1)),
            (0x001B, 7, SECRETS["place"]),
        ]
    raw = b"II*\0" if order == "<" else b"MM\0*"
    raw += struct.pack(f"{order}I", 8)
    links = (2 if secrets else 0) * 12
    at_inner = 8 + 2 + 12 * len(first) + links + 4 + sum(_outside(data) for *_, data in first)
    at_place = at_inner + _directory_size(inner)
    if secrets:
        first += [
            (0x8769, 4, struct.pack(f"{order}I", at_inner)),
            (0x8825, 4, struct.pack(f"{order}I", at_place)),
        ]
    raw += _directory(8, first, order)
    if secrets:
        raw += _directory(at_inner, inner, order) + _directory(at_place, place, order) + SECRETS["thumbnail"]
    return raw


def _outside(data: bytes) -> int:
    return len(data) if len(data) > 4 else 0


def _directory_size(entries: list[tuple[int, int, bytes]]) -> int:
    return 2 + 12 * len(entries) + 4 + sum(_outside(data) for *_, data in entries)


def _directory(at: int, entries: list[tuple[int, int, bytes]], order: str) -> bytes:
    sizes = {2: 1, 3: 2, 4: 4, 5: 8, 7: 1}
    head, body = struct.pack(f"{order}H", len(entries)), b""
    after = at + 2 + 12 * len(entries) + 4
    for tag, kind, data in entries:
        count = 1 if kind == 3 else len(data) // sizes[kind]
        value = data.ljust(4, b"\0") if len(data) <= 4 else struct.pack(f"{order}I", after + len(body))
        head += struct.pack(f"{order}HHI", tag, kind, count) + value
        body += data if len(data) > 4 else b""
    return head + b"\0\0\0\0" + body


def with_segments(jpeg: bytes, *segments: tuple[int, bytes]) -> bytes:
    """A JPEG with these segments (marker, bytes) put in after its start (ITU-T T.81, B.1.1.4)."""
    put_in = b"".join(struct.pack(">BBH", 0xFF, marker, len(data) + 2) + data for marker, data in segments)
    return jpeg[:2] + put_in + jpeg[2:]


def telling_jpeg(image: Image.Image, orientation: int) -> bytes:
    """A JPEG that says everything a camera or a program may say."""
    jpeg = saved(image, "JPEG", quality=90)
    xmp = b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>" + SECRETS["XMP"] + b"</x:xmpmeta>"
    city = b"\x1c\x02\x5a" + struct.pack(">H", len(SECRETS["IPTC"])) + SECRETS["IPTC"]
    iptc = b"Photoshop 3.0\0" + b"8BIM\x04\x04\0\0" + struct.pack(">I", len(city)) + city
    parts = (0xE1, b"Exif\0\0" + exif(orientation, secrets=True)), (0xE1, xmp), (0xED, iptc), (0xFE, SECRETS["comment"])
    return with_segments(jpeg, *parts) + SECRETS["trailer"]


def png(width: int, height: int, depth: int, kind: int, pixels: bytes, *chunks: tuple[bytes, bytes]) -> bytes:
    """A PNG (third edition, clause 5) of rows that each begin with their filter byte; extra chunks before IDAT."""
    head = struct.pack(">IIBBBBB", width, height, depth, kind, 0, 0, 0)
    parts = [(b"IHDR", head), *chunks, (b"IDAT", zlib.compress(pixels)), (b"IEND", b"")]
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data)) for name, data in parts
    )


def swapping_profile() -> bytes:
    """A colour profile (ICC.1:2022) for a strange screen: its red lamp is green, and its green one red."""

    def xyz(x: float, y: float, z: float) -> bytes:
        return b"XYZ \0\0\0\0" + struct.pack(">3i", *(round(value * 65536) for value in (x, y, z)))

    # The colorants of sRGB, adapted to D50, as most sRGB profiles hold them; red and green in each other's place.
    red, green, blue = xyz(0.43607, 0.22249, 0.01392), xyz(0.38515, 0.71687, 0.09708), xyz(0.14307, 0.06061, 0.71410)
    curve = b"curv\0\0\0\0" + struct.pack(">IH", 1, round(2.2 * 256)) + b"\0\0"
    name = b"swapped lamps\0"
    described = b"desc\0\0\0\0" + struct.pack(">I", len(name)) + name + bytes(78)
    tags = {
        b"desc": described + bytes(-len(described) % 4),
        b"cprt": b"text\0\0\0\0none\0\0\0\0",
        b"wtpt": xyz(0.9642, 1.0, 0.8249),
        b"rXYZ": green,
        b"gXYZ": red,
        b"bXYZ": blue,
        b"rTRC": curve,
        b"gTRC": curve,
        b"bTRC": curve,
    }
    at = 128 + 4 + 12 * len(tags)
    table, body = struct.pack(">I", len(tags)), b""
    for name, data in tags.items():
        table += name + struct.pack(">II", at + len(body), len(data))
        body += data
    size = at + len(body)
    head = struct.pack(">I4sI4s4s4s", size, b"lcms", 0x02400000, b"mntr", b"RGB ", b"XYZ ")
    head += struct.pack(">6H", 2026, 1, 1, 0, 0, 0) + b"acsp" + bytes(4 + 4 + 4 + 4 + 8 + 4)
    head += struct.pack(">3i", 63190, 65536, 54061)  # D50
    return head.ljust(128, b"\0") + table + body


def chunks(webp: bytes) -> list[bytes]:
    """The names of a WebP's chunks (RFC 9649, section 2.3)."""
    names, at = [], 12
    while at < len(webp):
        names.append(webp[at : at + 4])
        size = int.from_bytes(webp[at + 4 : at + 8], "little")
        at += 8 + size + (size & 1)
    return names
