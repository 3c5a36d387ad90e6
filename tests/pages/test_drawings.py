"""What holds for every drawing of the site."""

from __future__ import annotations

import re

import pytest

from builder.pages.svg import PAGE
from tests.pages.shapes import every_drawing, root, texts

HOSTILE = "Windows & <b>\"doors\"</b> 'x' ]]> --> </svg><script>alert(1)</script>"
DRAWINGS = every_drawing("Rails & rafters")
NAMES = [(root(drawing).get("class") or "").removeprefix("drawing ") for drawing in DRAWINGS]

# Presentation attributes that set a colour: SVG 2, section 13 (painting), appendix G (property index).
COLOURS = {"fill", "stroke", "color", "stop-color", "flood-color", "lighting-color", "opacity", "fill-opacity"}


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_a_drawing_has_a_name_and_a_description(drawing: str) -> None:
    """Somebody who cannot see it is told what it is and what it shows."""
    svg = root(drawing)
    title, desc = svg[0], svg[1]
    assert (title.tag, desc.tag) == ("{http://www.w3.org/2000/svg}title", "{http://www.w3.org/2000/svg}desc")
    assert title.text == desc.text == "Rails & rafters"
    assert (svg.get("aria-labelledby"), svg.get("aria-describedby")) == (title.get("id"), desc.get("id"))


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_a_drawing_is_an_image_unless_it_has_links(drawing: str) -> None:
    """WAI-ARIA 1.2: the children of an img are presentational, so a link in one would be lost."""
    svg = root(drawing)
    linked = next(svg.iter("{*}a"), None) is not None
    assert svg.get("role") == ("group" if linked else "img")


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_a_drawing_brings_no_style_and_no_colour(drawing: str) -> None:
    """Light, dark and paper are settled in the style sheet; a fill may name a texture of the drawing."""
    svg = root(drawing)
    ids = {shape.get("id") for shape in svg.iter("{*}*")}
    for shape in svg.iter("{*}*"):
        assert "style" not in shape.attrib
        for name in COLOURS & set(shape.attrib):
            value = shape.get(name) or ""
            assert re.fullmatch(r"url\(#[\w-]+\)", value)
            assert value[5:-1] in ids


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_a_drawing_is_as_wide_as_a_phone(drawing: str) -> None:
    """Words are sized for a drawing that fills a narrow screen; the level is a small thing in a list."""
    x, y, width, height = (root(drawing).get("viewBox") or "").split()
    assert (x, y) == ("0", "0")
    assert float(width) == (160 if "level" in (root(drawing).get("class") or "") else PAGE)
    assert 0 < float(height) < 1000


@pytest.mark.parametrize("drawing", every_drawing(HOSTILE), ids=NAMES)
def test_words_that_look_like_markup_stay_words(drawing: str) -> None:
    """The name comes back as it was written, and nothing of it became an element or a handler."""
    svg = root(drawing)
    assert svg[0].text == svg[1].text == HOSTILE
    tags = {shape.tag.rpartition("}")[2] for shape in svg.iter("{*}*")}
    assert not tags & {"script", "b", "foreignObject", "style"}
    assert not [name for shape in svg.iter("{*}*") for name in shape.attrib if name.startswith("on")]


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_every_drawing_says_something(drawing: str) -> None:
    """The words it was given are on it, if only in part."""
    assert any("Rails" in text for text in texts(drawing))


def test_the_same_input_gives_the_same_bytes() -> None:
    """A drawing depends on what it is given and nothing else."""
    assert every_drawing("twice") == every_drawing("twice")


def test_two_drawings_on_a_page_share_no_id() -> None:
    """Ids hang on the key, so that no texture or name is taken from a neighbour."""
    one, two = (
        {shape.get("id") for drawing in every_drawing("x", key) for shape in root(drawing).iter("{*}*")} - {None}
        for key in ("one", "two")
    )
    assert one
    assert not one & two


@pytest.mark.parametrize("drawing", DRAWINGS, ids=NAMES)
def test_no_number_carries_noise(drawing: str) -> None:
    """No length has more than two decimals."""
    assert not re.search(r"\d\.\d{3}", drawing)
