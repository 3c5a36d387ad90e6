"""Photos on the site are pictures and nothing else: no place, no serial number, no words of a camera."""

from __future__ import annotations

import io
import struct
from pathlib import Path

import pytest
from PIL import Image, ImageCms

from builder.publish.pictures import PhotoError, prepare_photos

SECRETS = (b"SERIAL-0815", b"my garden gate", b"GPSLatitude", b"W3C-XMP-SECRET", b"\x00\x32\x00\x01")


def photo(width: int = 800, height: int = 600) -> Image.Image:
    """A picture whose left half is red and whose right half is blue."""
    image = Image.new("RGB", (width, height), "red")
    image.paste("blue", (width // 2, 0, width, height))
    return image


def camera_jpeg() -> bytes:
    """What a telephone writes: turned, with a place, a serial number, a comment and a packet of XMP."""
    exif = Image.Exif()
    exif[0x0112] = 6  # to be turned a quarter to the right
    exif[0xA431] = "SERIAL-0815"
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "N", (50.0, 1.0, 2.0)
    out = io.BytesIO()
    photo().save(
        out, "JPEG", exif=exif, comment=b"my garden gate", xmp=b"<x>W3C-XMP-SECRET</x>",
        icc_profile=ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes(),
    )  # fmt: skip
    return out.getvalue()


def test_place_serial_number_and_comments_stay_behind(tmp_path: Path) -> None:
    """A JPEG that has them all, and files that have none of them."""
    raw = camera_jpeg()
    for secret in (b"SERIAL-0815", b"my garden gate", b"W3C-XMP-SECRET"):
        assert secret in raw
    (tmp_path / "gate.jpg").write_bytes(raw)
    prepared = prepare_photos(("gate.jpg",), tmp_path)
    assert prepared.files
    for content in prepared.files.values():
        assert not [secret for secret in SECRETS if secret in content]
        with Image.open(io.BytesIO(content)) as image:
            image.load()
            assert not image.getexif()
            assert "icc_profile" not in image.info
        chunks = {content[at : at + 4] for at in chunk_places(content)}
        assert chunks <= {b"VP8 ", b"VP8L", b"VP8X", b"ALPH"}


def chunk_places(content: bytes) -> list[int]:
    """Where the chunks of a WebP file begin."""
    places, at = [], 12
    while at < len(content):
        places.append(at)
        size = struct.unpack("<I", content[at + 4 : at + 8])[0]
        at += 8 + size + size % 2
    return places


def test_a_turned_photo_stands_upright(tmp_path: Path) -> None:
    """800 x 600 turned a quarter is 600 x 800, red above blue."""
    (tmp_path / "gate.jpg").write_bytes(camera_jpeg())
    prepared = prepare_photos(("gate.jpg",), tmp_path)
    shown = prepared.photos["gate.jpg"]
    assert (shown.width, shown.height) == (600, 800)
    with Image.open(io.BytesIO(prepared.files["gate-600.webp"])) as image:
        above, below = image.convert("RGB").getpixel((300, 100)), image.convert("RGB").getpixel((300, 700))
    assert isinstance(above, tuple)
    assert isinstance(below, tuple)
    assert above[0] > 200 > 60 > above[2]
    assert below[2] > 200 > 60 > below[0]


def test_a_photo_is_never_made_wider_than_it_is(tmp_path: Path) -> None:
    """And comes in the smaller widths that fit."""
    photo(1000, 500).save(tmp_path / "a.png")
    photo(300, 200).save(tmp_path / "b.png")
    prepared = prepare_photos(("a.png", "b.png"), tmp_path)
    assert [width for _, width in prepared.photos["a.png"].sources] == [480, 960, 1000]
    assert [width for _, width in prepared.photos["b.png"].sources] == [300]


def test_the_same_photo_gives_the_same_bytes(tmp_path: Path) -> None:
    """Twice in one process."""
    photo().save(tmp_path / "a.png")
    assert prepare_photos(("a.png",), tmp_path).files == prepare_photos(("a.png",), tmp_path).files


@pytest.mark.parametrize("mode", ["CMYK", "I;16", "P", "L", "LA", "RGBA", "1", "F"])
def test_pictures_of_every_kind_are_made(tmp_path: Path, mode: str) -> None:
    """Printers' colours, sixteen bits, palettes, grey, transparent."""
    image = (
        Image.new("I;16", (40, 30), 40000) if mode == "I;16" else photo(40, 30).convert("L" if mode == "F" else mode)
    )
    if mode == "F":
        image = image.convert("F")
    image.save(
        tmp_path / "a.png" if mode not in ("CMYK", "F") else tmp_path / "a.jpg",
        "JPEG" if mode == "CMYK" else "PNG" if mode != "F" else "TIFF",
    )
    if mode == "F":
        with pytest.raises(PhotoError):
            prepare_photos(("a.jpg",), tmp_path)
        return
    name = "a.jpg" if mode == "CMYK" else "a.png"
    prepared = prepare_photos((name,), tmp_path)
    with Image.open(io.BytesIO(prepared.files["a-40.webp"])) as made:
        assert made.size == (40, 30)


def test_sixteen_bits_keep_their_brightness(tmp_path: Path) -> None:
    """40000 of 65535 is 155 or 156 of 255."""
    Image.new("I;16", (40, 30), 40000).save(tmp_path / "a.png")
    prepared = prepare_photos(("a.png",), tmp_path)
    with Image.open(io.BytesIO(prepared.files["a-40.webp"])) as made:
        value = made.convert("L").getpixel((20, 15))
    assert isinstance(value, int | float)
    assert 152 <= value <= 159


def test_of_a_moving_picture_the_first_frame_is_shown(tmp_path: Path) -> None:
    """And the file does not move."""
    frames = [Image.new("RGB", (40, 30), colour) for colour in ("red", "blue")]
    frames[0].save(tmp_path / "a.gif", save_all=True, append_images=frames[1:], duration=100)
    prepared = prepare_photos(("a.gif",), tmp_path)
    with Image.open(io.BytesIO(prepared.files["a-40.webp"])) as made:
        assert getattr(made, "n_frames", 1) == 1
        pixel = made.convert("RGB").getpixel((20, 15))
    assert isinstance(pixel, tuple)
    assert pixel[0] > 200


@pytest.mark.parametrize(
    ("content", "found"),
    [
        (b"not a picture", "this is no picture, or a broken one"),
        (b"", "this is no picture, or a broken one"),
        (b"\x89PNG\r\n\x1a\n" + b"\0" * 20, "this is no picture, or a broken one"),
    ],
)
def test_what_is_no_picture_is_refused_with_a_sentence(tmp_path: Path, content: bytes, found: str) -> None:
    """Whatever it is called."""
    (tmp_path / "a.jpg").write_bytes(content)
    with pytest.raises(PhotoError) as refused:
        prepare_photos(("a.jpg",), tmp_path)
    assert (refused.value.path, refused.value.found) == ("a.jpg", found)


def test_a_photo_that_breaks_off_is_refused(tmp_path: Path) -> None:
    """Its head is whole, its picture is not."""
    raw = camera_jpeg()
    (tmp_path / "a.jpg").write_bytes(raw[: len(raw) * 3 // 4])
    with pytest.raises(PhotoError, match="the picture is broken"):
        prepare_photos(("a.jpg",), tmp_path)


def test_a_small_file_with_a_huge_picture_is_refused_before_it_is_opened(tmp_path: Path) -> None:
    """20,000 x 20,000 pixels of one colour in a few kilobytes."""
    Image.new("1", (20_000, 20_000)).save(tmp_path / "a.png")
    with pytest.raises(PhotoError, match="20000 x 20000 pixels"):
        prepare_photos(("a.png",), tmp_path)


def test_what_was_kept_is_not_made_again(tmp_path: Path) -> None:
    """`remember` is asked by content and size."""
    photo().save(tmp_path / "a.png")
    kept: dict[str, bytes] = {}
    first = prepare_photos(("a.png",), tmp_path, lambda key, make: kept.setdefault(key, make()))
    assert len(kept) == 2

    def never() -> bytes:
        raise AssertionError("made again")

    second = prepare_photos(("a.png",), tmp_path, lambda key, make: kept.get(key) or never())
    assert first.files == second.files
