"""The wall: openings placed along it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from builder.pages.svg import PAGE
from builder.pages.wall import Measure, Opening, Wall, draw_wall
from tests.pages.shapes import at, shape, shapes, texts


def wall(*openings: Opening, length: int | Fraction = 168, height: int | None = 84, **more: Any) -> str:
    """A wall with its openings; inches."""
    words = {"title": "Wall", "description": "A wall.", "length_label": "14 ft", "height_label": "7 ft"}
    size = {"length": length, "height": height}
    return draw_wall(Wall(**{"key": "wall", **words, **size, "openings": openings, **more}))


def window(left: int, width: int = 24, sill: int = 34, height: int | None = 30) -> Opening:
    """A window at its place."""
    return Opening(left=left, sill=sill, width=width, height=height, label=f"{width} in")


def test_a_window_is_in_its_place_and_of_its_shape() -> None:
    """24 by 30 at 42 along and 34 up, in the same scale both ways."""
    drawing = wall(window(42))
    left, top, width, height = at(shape(drawing, "wall-face"), "x", "y", "width", "height")
    x, y, across, up = at(shape(drawing, "glass"), "x", "y", "width", "height")
    inches = [round(length * 168 / width) for length in (x - left, across, up, top + height - y - up)]
    assert inches == [42, 24, 30, 34]


@given(st.integers(20, 2000), st.integers(10, 400))
def test_a_wall_is_drawn_to_be_read(length: int, height: int) -> None:
    """As wide as the page, however long; neither a thread nor a tower."""
    drawing = wall(length=length, height=height)
    width, tall = at(shape(drawing, "wall-face"), "width", "height")
    assert PAGE - 20 < width < PAGE
    assert 60 <= tall <= 260


def test_a_height_nobody_gave_has_a_broken_outline() -> None:
    """The drawing is no measure of what is not known."""
    unknown = [wall(window(10, height=None)), wall(window(10), height=None)]
    assert all(len(shapes(drawing, "unmeasured")) == 1 for drawing in unknown)
    assert shapes(wall(window(10)), "unmeasured") == []


def test_measures_stand_under_their_stretches() -> None:
    """With a tick at each end, in rows that do not overlap, none left out."""
    measures = tuple(Measure(start=n * 12, end=n * 12 + 12, label="1 ft 0 in") for n in range(14))
    drawing = wall(measures=measures)
    assert texts(drawing).count("1 ft 0 in") == 14
    assert len(shapes(drawing, "tick")) == 28
    rows = {at(text, "y")[0] for text in shapes(drawing, "label") if text.text == "1 ft 0 in"}
    assert len(rows) > 1


def test_words_too_long_for_a_window_are_left_to_the_table() -> None:
    """On one line, on two, or not at all: no text over the frame."""
    assert "36 in" in texts(wall(window(10, width=36)))
    assert {"24", "in"} <= set(texts(wall(window(10))))
    assert texts(wall(window(10, width=6))) == ["14 ft", "7 ft"]


def test_a_wall_may_be_shorter_than_one_unit() -> None:
    """Lengths in any unit, so a small wall in metres too: a window half as wide is drawn half as wide."""
    half = Opening(left=Fraction(1, 5), width=Fraction(2, 5), label="")
    drawing = wall(half, length=Fraction(4, 5), height=None)
    assert at(shape(drawing, "wall-face"), "width")[0] == 2 * at(shape(drawing, "glass"), "width")[0]
