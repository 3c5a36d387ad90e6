"""The level: the bubble is in the middle on plan, and slides to the side that is over."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.pages.level import Level, bubble_place, draw_level
from tests.pages.shapes import at, shape, shapes, texts

MIDDLE = 80
AMOUNTS = st.integers(-(10**9), 10**9)


def level(over: int, plan: int | None = 1000, *, begun: bool = True, labels: tuple[str, str] = ("", "")) -> Level:
    """A level with its reading."""
    return Level(
        key="level-roof",
        title="Level of the roof",
        description="so much over",
        over=over,
        plan=plan,
        begun=begun,
        under_label=labels[0],
        over_label=labels[1],
    )


def bubble(drawing: str) -> Fraction:
    """Where the middle of the bubble is drawn."""
    return at(shape(drawing, "air"), "cx")[0]


def test_on_plan_is_in_the_middle() -> None:
    """Nothing over, nothing under."""
    assert bubble(draw_level(level(0))) == MIDDLE


@pytest.mark.parametrize("amount", [1, 20, 240, 250, 5000])
def test_over_is_right_and_under_is_left(amount: int) -> None:
    """By as much on one side as on the other."""
    over, under = (bubble(draw_level(level(sign * amount))) for sign in (1, -1))
    assert under < MIDDLE < over
    assert over - MIDDLE == MIDDLE - under


def test_the_bubble_moves_with_the_money() -> None:
    """Twice as far over is twice as far from the middle, until the end of the glass."""
    places = [bubble_place(level(over)) for over in (0, 50, 100, 150)]
    steps = {two - one for one, two in pairwise(places) if one is not None and two is not None}
    assert len(steps) == 1


@given(AMOUNTS, st.integers(0, 10**9))
def test_the_bubble_never_leaves_its_glass(over: int, plan: int) -> None:
    """However far over, on a plan of nothing too."""
    drawing = draw_level(level(over, plan))
    half = at(shape(drawing, "air"), "rx")[0]
    left, width = at(shape(drawing, "vial"), "x", "width")
    assert left < bubble(drawing) - half
    assert bubble(drawing) + half < left + width


def test_a_quarter_over_is_as_far_as_it_goes() -> None:
    """The full scale of the level."""
    assert bubble(draw_level(level(240))) < bubble(draw_level(level(250))) == bubble(draw_level(level(900)))


@pytest.mark.parametrize(("over", "between"), [(0, True), (40, True), (-40, True), (70, False), (-70, False)])
def test_near_the_plan_the_bubble_is_between_the_lines(over: int, between: bool) -> None:
    """About a twentieth either way, as one reads a real one."""
    drawing = draw_level(level(over))
    left, right = (at(line, "x1")[0] for line in shapes(drawing, "scribed"))
    half = at(shape(drawing, "air"), "rx")[0]
    assert (left <= bubble(drawing) - half and bubble(drawing) + half <= right) == between


def test_a_phase_not_begun_has_no_bubble() -> None:
    """There is nothing to read yet; the lines show that there is a plan."""
    drawing = draw_level(level(0, begun=False))
    assert (len(shapes(drawing, "air")), len(shapes(drawing, "scribed"))) == (0, 2)


def test_a_phase_without_a_plan_has_no_lines() -> None:
    """Nothing to be between; and so no bubble that would say it is on plan."""
    drawing = draw_level(level(0, plan=None))
    assert shapes(drawing, "air") + shapes(drawing, "scribed") == []


def test_on_a_plan_of_nothing_any_cost_is_over() -> None:
    """All the way to the end, not divided by zero."""
    assert bubble(draw_level(level(1, plan=0))) == bubble(draw_level(level(1000)))
    assert bubble(draw_level(level(0, plan=0))) == MIDDLE


def test_a_level_that_stands_alone_names_its_sides() -> None:
    """A small one in a list has its words beside it."""
    assert texts(draw_level(level(5, labels=("under", "over")))) == ["under", "over"]
    assert texts(draw_level(level(5))) == []
