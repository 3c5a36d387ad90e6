"""Photos for the site: what is shown, what is left out, what is refused."""

from __future__ import annotations

import itertools
import shutil
import struct
import subprocess
import sys
import zlib
from contextlib import suppress
from io import BytesIO
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from builder.publish.photos import Photo, facts, prepare, prepare_once
from builder.publish.photos_header import BadPhoto
from builder.store.store import Store
from tests.publish.pictures import (
    BLUE,
    CORNERS,
    GREEN,
    RED,
    SECRETS,
    WHITE,
    chunks,
    colours_at_corners,
    corners,
    exif,
    opened,
    photo_like,
    png,
    saved,
    swapping_profile,
    telling_jpeg,
    with_segments,
)

# TIFF 6.0, tag 274: on which visible side the first stored row and the first stored column lie.
SIDES = {
    1: ("top", "left"),
    2: ("top", "right"),
    3: ("bottom", "right"),
    4: ("bottom", "left"),
    5: ("left", "top"),
    6: ("right", "top"),
    7: ("right", "bottom"),
    8: ("left", "bottom"),
}


def stored_as(image: Image.Image, orientation: int) -> Image.Image:
    """The picture as a camera stores it that says this orientation, pixel by pixel after the table."""
    first_row, first_column = SIDES[orientation]
    width, height = image.size
    across = first_row in {"left", "right"}
    stored = Image.new("RGB", (height, width) if across else (width, height))
    for x, y in itertools.product(range(width), range(height)):
        side = {"top": y, "bottom": height - 1 - y, "left": x, "right": width - 1 - x}
        pixel = image.getpixel((x, y))
        assert isinstance(pixel, tuple)
        stored.putpixel((side[first_column], side[first_row]), pixel)
    return stored


def told(path: str, raw: bytes) -> BadPhoto:
    """What is said of a picture that cannot be shown."""
    with pytest.raises(BadPhoto) as refusal:
        prepare(Path(path), raw)
    return refusal.value


class TestWhatIsShown:
    def test_a_photo_in_three_widths(self) -> None:
        """Names, sizes and bytes go together."""
        photo = prepare(Path("photos/The pad, cut.JPG"), saved(photo_like(2000, 1500), "JPEG"))
        assert (photo.width, photo.height, photo.notes) == (2000, 1500, ())
        assert [(one.width, one.height) for one in photo.renditions] == [(480, 360), (960, 720), (1600, 1200)]
        for one in photo.renditions:
            image = opened(one.data)
            assert (image.format, image.size) == ("WEBP", (one.width, one.height))
            assert one.name.startswith("photos/the-pad-cut-")
            assert one.name.endswith(f"-{one.width}.webp")

    @pytest.mark.parametrize(
        ("size", "expected"),
        [
            ((300, 200), [(300, 200)]),
            ((480, 100), [(480, 100)]),
            ((1000, 500), [(480, 240), (960, 480), (1000, 500)]),
            ((1, 1), [(1, 1)]),
            ((1001, 333), [(480, 160), (960, 319), (1001, 333)]),  # 319.36 and 159.68, half up
            ((2000, 1), [(480, 1), (960, 1), (1600, 1)]),
            ((100, 20_000), [(81, 16_200)]),  # WebP takes 16383 pixels at most (RFC 9649, section 2.6)
        ],
    )
    def test_never_wider_than_it_is(self, size: tuple[int, int], expected: list[tuple[int, int]]) -> None:
        """And in the same shape, never less than one pixel high. (Left out are sizes that save no bytes.)"""
        photo = prepare(Path("a.jpg"), saved(photo_like(*size), "JPEG"))
        assert (photo.width, photo.height) == size
        made = [(one.width, one.height) for one in photo.renditions]
        assert made == [one for one in expected if one in made]
        assert made[-1] == expected[-1]
        assert len(made) == len(expected) or min(size) == 1

    @pytest.mark.parametrize("orientation", SIDES)
    @pytest.mark.parametrize("order", ["<", ">"], ids=["Intel", "Motorola"])
    @pytest.mark.parametrize("format_", ["JPEG", "PNG", "WEBP"])
    def test_turned_upright(self, orientation: int, order: str, format_: str) -> None:
        """However the camera was held; the size is told as it is looked at."""
        image = stored_as(corners(40, 24), orientation)
        block = exif(orientation, order=order)
        raw = saved(image, format_, **({"quality": 95} if format_ == "JPEG" else {"lossless": True}))
        if format_ == "JPEG":
            raw = with_segments(raw, (0xE1, b"Exif\0\0" + block))
        else:
            raw = saved(image, format_, exif=block, **({"lossless": True} if format_ == "WEBP" else {}))
        photo = prepare(Path(f"a.{format_.lower()}"), raw)
        assert facts(raw) == (photo.width, photo.height) == (40, 24)
        (one,) = photo.renditions
        assert colours_at_corners(opened(one.data)) == CORNERS

    def test_a_large_photo_on_its_side_is_turned_too(self) -> None:
        """Where decoding is cut short for speed, it is cut along the right side."""
        raw = with_segments(
            saved(stored_as(corners(40, 120), 6).resize((3600, 1200)), "JPEG"), (0xE1, b"Exif\0\0" + exif(6))
        )
        photo = prepare(Path("a.jpg"), raw)
        assert [(one.width, one.height) for one in photo.renditions][-1] == (1200, 3600)
        assert all(colours_at_corners(opened(one.data)) == CORNERS for one in photo.renditions)

    def test_markers_without_a_segment_are_stepped_over(self) -> None:
        """ITU-T T.81, B.1.1.2 and B.1.1.3: filling bytes, and markers that stand alone."""
        raw = with_segments(saved(corners(40, 24), "JPEG", quality=95), (0xE1, b"Exif\0\0" + exif(6)))
        assert facts(raw[:2] + b"\xff\xff\xff\x01\xff\xd0" + raw[2:]) == facts(raw) == (24, 40)

    @pytest.mark.parametrize("block", [b"", b"II*\0", b"XX*\0" + bytes(20), b"II*\0\xff\xff\xff\xff", exif(0), exif(9)])
    def test_an_odd_orientation_is_none(self, block: bytes) -> None:
        """Damaged notes in a photo do not spoil the photo."""
        raw = with_segments(saved(corners(40, 24), "JPEG", quality=95), (0xE1, b"Exif\0\0" + block))
        assert colours_at_corners(opened(prepare(Path("a.jpg"), raw).renditions[0].data)) == CORNERS

    def test_the_same_photo_gives_the_same_bytes(self) -> None:
        """In another process too; another photo under the same name gets another one."""
        raw = saved(corners(600, 400), "JPEG")
        code = (
            "import sys; from pathlib import Path; from builder.publish.photos import prepare\n"
            "for one in prepare(Path('a.jpg'), sys.stdin.buffer.read()).renditions: print(one.name, one.sha256)\n"
        )
        run = subprocess.run([sys.executable, "-c", code], input=raw, capture_output=True, check=True)
        here = prepare(Path("elsewhere/a.jpg"), raw).renditions
        assert run.stdout.decode().split("\n")[:-1] == [f"{one.name} {one.sha256}" for one in here]
        other = prepare(Path("a.jpg"), saved(corners(600, 401), "JPEG")).renditions
        assert {one.name for one in here}.isdisjoint(one.name for one in other)

    @pytest.mark.parametrize(
        ("stem", "slug"),
        [
            ("IMG_2041 (2)", "img-2041-2"),
            ("Größe", "grosse"),
            ("сарай", "photo"),
            ("..", "photo"),
            ("-a-", "a"),
            ("x" * 200, "x" * 60),
        ],
    )
    def test_a_name_for_the_web(self, stem: str, slug: str) -> None:
        """Small letters, digits and dashes, whatever the camera or the author called it."""
        name = prepare(Path(f"{stem}.png"), saved(corners(8, 8), "PNG")).renditions[0].name
        assert name.rsplit("-", 2)[0] == f"photos/{slug}"


class TestWhatIsLeftOut:
    def test_nothing_a_camera_wrote_is_in_the_site(self) -> None:
        """Place, serial numbers, owner, date, comment, XMP, IPTC, small picture, trailing film: none of it."""
        raw = telling_jpeg(stored_as(corners(60, 40), 6).resize((400, 600)), 6)
        assert {what for what, secret in SECRETS.items() if secret not in raw} == set()
        read = Image.open(BytesIO(raw)).getexif()
        assert read.get_ifd(0x8825)[0x001B] == SECRETS["place"]
        assert read.get_ifd(0x8769)[0xA431].encode() == SECRETS["serial number"]
        for one in prepare(Path("a.jpg"), raw).renditions:
            assert {what for what, secret in SECRETS.items() if secret in one.data} == set()
            assert chunks(one.data) == [b"VP8 "]
            assert dict(opened(one.data).getexif()) == {}

    @pytest.mark.parametrize("format_", ["PNG", "WEBP"])
    def test_nor_what_other_formats_carry(self, format_: str) -> None:
        """Exif, XMP, a colour profile, text; a picture with clear parts needs a chunk for these, and no other."""
        image = corners(600, 400)
        image.putalpha(Image.linear_gradient("L").resize((600, 400)))
        how = {"exif": exif(1, secrets=True), "icc_profile": swapping_profile(), "xmp": SECRETS["XMP"]}
        raw = saved(image, format_, **how)
        assert SECRETS["serial number"] in raw
        for one in prepare(Path(f"a.{format_.lower()}"), raw).renditions:
            assert {what for what, secret in SECRETS.items() if secret in one.data} == set()
            assert set(chunks(one.data)) <= {b"VP8X", b"ALPH", b"VP8 ", b"VP8L"}
            if chunks(one.data)[0] == b"VP8X":
                assert one.data[20] == 0x10  # alpha, and neither profile, Exif, XMP nor animation (RFC 9649, 2.7)

    def test_what_lies_under_the_clear_parts_of_a_picture(self) -> None:
        """A painted-over house number is gone, not hidden."""
        image = Image.new("RGBA", (64, 64), (255, 255, 255, 255))
        image.paste((10, 20, 30, 0), (16, 16, 48, 48))
        shown = opened(prepare(Path("a.png"), saved(image, "PNG")).renditions[0].data)
        assert shown.getpixel((32, 32)) != (10, 20, 30, 0)
        assert shown.convert("RGBA").getpixel((32, 32))[3] == 0  # type: ignore[index]


class TestColours:
    def shown(self, raw: bytes, ending: str = "png") -> Image.Image:
        return opened(prepare(Path(f"a.{ending}"), raw).renditions[-1].data)

    @pytest.mark.parametrize("format_", ["JPEG", "PNG", "WEBP"])
    def test_a_colour_profile_is_applied(self, format_: str) -> None:
        """On a screen whose lamps are swapped, what is stored as red is seen as green."""
        raw = saved(corners(40, 24), format_, icc_profile=swapping_profile(), quality=95)
        assert colours_at_corners(self.shown(raw, format_.lower())) == [[GREEN, RED], [BLUE, WHITE]]

    def test_clear_parts_stay_clear_when_a_profile_is_applied(self) -> None:
        """Alpha is not a colour."""
        image = corners(40, 24).convert("RGBA")
        image.putalpha(100)
        shown = self.shown(saved(image, "PNG", icc_profile=swapping_profile()))
        assert shown.convert("RGBA").getchannel("A").getextrema() == (100, 100)
        assert colours_at_corners(shown) == [[GREEN, RED], [BLUE, WHITE]]

    @pytest.mark.parametrize("profile", [b"not a profile", swapping_profile()[:200], swapping_profile()[:-30]])
    def test_a_damaged_profile_is_passed_over(self, profile: bytes) -> None:
        """The photo is shown as it is stored."""
        assert colours_at_corners(self.shown(saved(corners(40, 24), "PNG", icc_profile=profile))) == CORNERS

    def test_the_profile_of_screens_changes_nothing(self) -> None:
        """Most photos say that they are in sRGB; converting those would only round."""
        profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
        image = photo_like(64, 48)
        plain, told = (
            prepare(Path("a.png"), saved(image, "PNG", **how)).renditions[0].data
            for how in ({}, {"icc_profile": profile})
        )
        assert plain == told

    def test_cmyk(self) -> None:
        """What a print shop gives back: full magenta and yellow is red."""
        raw = saved(Image.new("CMYK", (32, 32), (0, 255, 255, 0)), "JPEG", quality=95)
        assert colours_at_corners(self.shown(raw, "jpg")) == [[RED, RED], [RED, RED]]

    @pytest.mark.parametrize("kind", [0, 2], ids=["grey", "colour"])
    def test_sixteen_bits(self, kind: int) -> None:
        """65535 is white, 32896 is middle grey: not cut off at 255."""
        values = [0, 32_896, 65_535]
        row = b"\0" + b"".join(struct.pack(">H", value) * (3 if kind else 1) for value in values for _ in range(8))
        shown = self.shown(png(24, 8, 16, kind, row * 8)).convert("RGB")
        for column, expected in enumerate([0, 128, 255]):
            pixel = shown.getpixel((8 * column + 4, 4))
            assert all(abs(value - expected) <= 2 for value in pixel)  # type: ignore[union-attr]

    @pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA"])
    def test_every_kind_of_png(self, mode: str) -> None:
        """From black and white to colours with clear parts."""
        image = Image.new("L", (40, 24), 255)
        image.paste(0, (0, 0, 20, 24))
        raw = saved(image.convert(mode), "PNG")
        assert colours_at_corners(self.shown(raw)) == [[(0, 0, 0), WHITE], [(0, 0, 0), WHITE]]

    def test_one_colour_that_is_clear(self) -> None:
        """PNG's tRNS chunk."""
        raw = saved(corners(40, 24), "PNG", transparency=RED)
        alpha = self.shown(raw).convert("RGBA").getchannel("A")
        assert (alpha.getpixel((5, 5)), alpha.getpixel((35, 5))) == (0, 255)


class TestDrawings:
    def drawing(self, size: tuple[int, int] = (900, 600)) -> Image.Image:
        image = Image.new("RGB", size, WHITE)
        for n in range(0, min(size), 12):
            image.paste(RED if n % 36 else BLUE, (n, 0, n + 1, size[1]))
            image.paste((60, 60, 60), (0, n, size[0], n + 1))
        return image

    def test_a_drawing_loses_nothing_where_that_is_smaller(self) -> None:
        """Its own size is shown to the pixel."""
        drawing = self.drawing()
        one = prepare(Path("a.png"), saved(drawing, "PNG")).renditions[-1]
        assert chunks(one.data) == [b"VP8L"]
        assert opened(one.data).convert("RGB").tobytes() == drawing.tobytes()
        assert len(one.data) < len(saved(drawing, "WEBP", quality=80))

    def test_a_photo_saved_as_png_is_a_photo(self) -> None:
        """Many colours: losing none would take ten times the bytes."""
        assert {
            chunks(one.data)[0] for one in prepare(Path("a.png"), saved(photo_like(900, 600), "PNG")).renditions
        } == {b"VP8 "}

    def test_a_width_that_saves_no_bytes_is_left_out(self) -> None:
        """The lines of a drawing blur when it is made smaller, and blur takes bytes."""
        sizes = [len(one.data) for one in prepare(Path("a.png"), saved(self.drawing((1200, 800)), "PNG")).renditions]
        assert sizes == sorted(set(sizes))


class TestMoving:
    @pytest.mark.parametrize("format_", ["GIF", "PNG", "WEBP"])
    def test_the_first_frame_is_shown_and_that_is_said(self, format_: str) -> None:
        """A film belongs elsewhere."""
        frames = [Image.new("RGB", (32, 32), colour) for colour in (RED, GREEN, BLUE)]
        raw = saved(frames[0], format_, save_all=True, append_images=frames[1:], duration=100)
        photo = prepare(Path(f"a.{format_.lower()}"), raw)
        assert colours_at_corners(opened(photo.renditions[0].data)) == [[RED, RED], [RED, RED]]
        (note,) = photo.notes
        assert note.found == f"the {format_.replace('WEBP', 'WebP')} picture moves; the site shows its first frame"

    def test_a_second_picture_in_a_jpeg_is_no_film(self) -> None:
        """Phones put one there for depth or for bright screens; it is not shown, and not mentioned."""
        raw = saved(corners(40, 24), "MPO", save_all=True, append_images=[Image.new("RGB", (40, 24), RED)])
        photo = prepare(Path("a.jpg"), raw)
        assert photo.notes == ()
        assert len(photo.renditions) == 1


class TestWhatIsRefused:
    def test_a_name_that_does_not_fit(self) -> None:
        """Browsers go by the name, and so do people."""
        assert str(told("photos/pad.jpg", saved(corners(8, 8), "PNG"))) == (
            "the picture is a PNG, and its name ends in .jpg; expected a name that ends in .png; "
            "rename the file to pad.png, and name it so in the story"
        )
        assert (
            told("photos/pad", saved(corners(8, 8), "JPEG")).found
            == "the picture is a JPEG, and its name ends in nothing"
        )

    @pytest.mark.parametrize(
        ("raw", "guess"),
        [
            (b"", "empty"),
            (b"\0\0\0\x18ftypheic" + bytes(50), "a HEIC picture, as some phones make them"),
            (b"\0\0\0\x18ftypmp42" + bytes(50), "a film"),
            (b"\0\0\0\x18ftypavif" + bytes(50), "an AVIF picture"),
            (b"II*\0" + bytes(50), "a TIFF picture, or a camera's raw one"),
            (b"BM" + bytes(50), "a BMP picture"),
            (b"%PDF-1.7", "a PDF"),
            (b'\n<svg xmlns="http://www.w3.org/2000/svg"/>', "an SVG drawing"),
            (b"<!DOCTYPE html>", "a web page"),
            (b"just words", "no picture"),
        ],
    )
    def test_what_is_no_picture_that_every_browser_shows(self, raw: bytes, guess: str) -> None:
        """With a guess at what it is."""
        assert str(told("a.jpg", raw)) == (
            f"the file is {guess}; expected a picture as JPEG, PNG, WebP or GIF; save it in one of these and name that"
        )

    @pytest.mark.parametrize("format_", ["JPEG", "PNG", "WEBP", "GIF"])
    def test_what_ends_too_early(self, format_: str) -> None:
        """Cut at every sixteenth of the file: a message, or a picture if only its last bytes are gone."""
        raw = saved(photo_like(64, 48), format_)
        for part in range(1, 15):
            refused = told(f"a.{format_.lower()}", raw[: len(raw) * part // 16])
            assert refused.expected == "a whole picture" or part == 1

    def test_a_picture_of_too_many_pixels_before_it_is_decoded(self) -> None:
        """A few bytes that would fill the memory: 30000 x 30000 in a PNG of 100 bytes."""
        raw = png(30_000, 30_000, 8, 2, b"")
        assert str(told("a.png", raw)) == (
            "the picture has 30000 x 30000 pixels; expected at most 30 million pixels; "
            "save it smaller; the site shows it 1600 pixels wide"
        )

    def test_a_jpeg_that_tells_two_sizes(self) -> None:
        """The one that counts is the one that is decoded."""
        small = saved(corners(16, 16), "JPEG")
        large = struct.pack(">BHHB", 8, 60_000, 60_000, 3) + bytes([1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1])
        assert "60000 x 60000" in told("a.jpg", with_segments(small, (0xC0, large))).found

    def test_a_text_in_a_png_that_would_fill_the_memory(self) -> None:
        """Compressed notes are not unpacked without end."""
        note = b"Comment\0\0" + zlib.compress(bytes(80_000_000))
        row = (b"\0" + bytes(24)) * 8
        raw = png(8, 8, 8, 2, row, (b"zTXt", note))
        refused = told("a.png", raw)
        assert refused.expected == "a whole picture"

    @settings(max_examples=300, suppress_health_check=[HealthCheck.function_scoped_fixture])
    @given(
        st.sampled_from(["JPEG", "PNG", "WEBP", "GIF", "TELLING", "MOVING"]),
        st.lists(
            st.tuples(st.integers(0, 3000), st.sampled_from(["set", "cut", "put", "drop"]), st.binary(max_size=6)),
            min_size=1,
            max_size=4,
        ),
    )
    def test_whatever_is_broken_is_a_photo_or_a_message(
        self, format_: str, damage: list[tuple[int, str, bytes]]
    ) -> None:
        """Law: bytes changed, taken out, put in or cut off anywhere raise BadPhoto or nothing, and warn of nothing."""
        raw = SEEDS[format_]
        for place, what, noise in damage:
            at = place % (len(raw) + 1)
            if what == "set":
                raw = raw[:at] + noise + raw[at + len(noise) :]
            elif what == "cut":
                raw = raw[:at]
            elif what == "put":
                raw = raw[:at] + noise + raw[at:]
            else:
                raw = raw[:at] + raw[at + len(noise) :]
        with suppress(BadPhoto):
            photo = prepare(Path(f"a.{ENDINGS[format_]}"), raw)
            assert (photo.width, photo.height) == facts(raw)


SEEDS = {
    "JPEG": saved(photo_like(16, 12), "JPEG"),
    "PNG": saved(corners(16, 12), "PNG", exif=exif(6), icc_profile=swapping_profile()),
    "WEBP": saved(corners(16, 12), "WEBP", exif=exif(6)),
    "GIF": saved(corners(16, 12), "GIF"),
    "TELLING": telling_jpeg(corners(16, 12), 6),
    "MOVING": saved(
        Image.new("RGB", (16, 12), RED), "GIF", save_all=True, append_images=[Image.new("RGB", (16, 12), BLUE)]
    ),
}
ENDINGS = {"JPEG": "jpg", "PNG": "png", "WEBP": "webp", "GIF": "gif", "TELLING": "jpg", "MOVING": "gif"}


@settings(max_examples=80)
@given(
    st.sampled_from(["JPEG", "PNG", "WEBP", "WEBP lossless", "WEBP clear", "GIF"]),
    st.integers(1, 300),
    st.integers(1, 300),
)
def test_the_header_says_what_decoding_says(format_: str, width: int, height: int) -> None:
    """Law: size from the first bytes = size of the decoded picture, for every format and size."""
    image = Image.new(
        "RGBA" if "clear" in format_ else "RGB", (width, height), (*RED, 9) if "clear" in format_ else RED
    )
    raw = saved(image, format_.partition(" ")[0], **({"lossless": True} if "lossless" in format_ else {}))
    assert facts(raw) == opened(raw).size == (width, height)


class TestMadeOnce:
    def published(self, photo: Photo) -> list[tuple[str, int, int, str, bytes]]:
        return [(one.name, one.width, one.height, one.sha256, one.data) for one in photo.renditions]

    def test_a_known_photo_is_not_decoded(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Sizes, digests and notes are there without any bytes, and the bytes are the same."""
        path = tmp_path / "a.gif"
        frames = [Image.new("RGB", (600, 300), colour) for colour in (RED, GREEN)]
        path.write_bytes(saved(frames[0], "GIF", save_all=True, append_images=frames[1:]))
        expected = prepare(path, path.read_bytes())
        with Store(tmp_path / "store") as store:
            assert prepare_once(path, path.read_bytes(), store.remember) == expected
        monkeypatch.setattr("builder.publish.photos.prepare", None)
        with Store(tmp_path / "store") as store:
            known = prepare_once(path, path.read_bytes(), store.remember)
            assert known == expected
            assert self.published(known) == self.published(expected)

    def test_bytes_that_were_forgotten_are_made_again(self, tmp_path: Path) -> None:
        """The store may be emptied between asking for the size and asking for the bytes."""
        path = tmp_path / "a.jpg"
        path.write_bytes(saved(photo_like(600, 300), "JPEG"))
        with Store(tmp_path / "store", 2000) as store:  # room for the sizes, and for no picture
            photo = prepare_once(path, path.read_bytes(), store.remember)
            shutil.rmtree(tmp_path / "store", ignore_errors=True)
            assert self.published(photo) == self.published(prepare(path, path.read_bytes()))

    def test_other_widths_or_another_name_are_another_photo(self, tmp_path: Path) -> None:
        """Everything the outcome depends on is in the key."""
        raw = saved(photo_like(600, 300), "JPEG")
        for name, widths in [("a.jpg", (480,)), ("a.jpg", (100, 200)), ("b.jpg", (480,))]:
            path = tmp_path / name
            path.write_bytes(raw)
            with Store(tmp_path / "store") as store:
                assert prepare_once(path, raw, store.remember, widths) == prepare(path, raw, widths)
        with Store(tmp_path / "store") as store, pytest.raises(BadPhoto):
            prepare_once(tmp_path / "a.png", raw, store.remember, (480,))


def test_sizes_are_read_without_pillow() -> None:
    """Pillow costs as much to import as all the rest: asking for a size, or importing this, does not need it."""
    code = (
        "import sys; from builder.publish.photos import facts\n"
        "assert facts(sys.stdin.buffer.read()) == (12, 16)\n"
        "assert 'PIL' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", code], input=SEEDS["TELLING"], check=True)
