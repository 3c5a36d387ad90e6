"""The tape: pulled out to what is spent, its case at the plan."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.pages.svg import FINGER, PAGE
from builder.pages.tape import Graduation, Tape, TapeMark, draw_tape, place_of
from tests.pages.shapes import at, shape, shapes, texts

AMOUNTS = st.integers(0, 10**9)


def tape(spent: int, plan: int | None, *running: int, **more: Any) -> Tape:
    """A tape with a mark for each running total."""
    marks = tuple(TapeMark(amount=total, label=str(number)) for number, total in enumerate(running, 1))
    words = {"title": "Tape", "description": "A tape.", "spent_label": "spent", "plan_label": "plan"}
    return Tape(**{"key": "tape", **words, "spent": spent, "plan": plan, "marks": marks, **more})


def blade(drawing: str) -> tuple[Fraction, Fraction]:
    """From where to where the blade is drawn."""
    steps = (shape(drawing, "blade").get("d") or "").split()
    return Fraction(steps[1]), Fraction(steps[4])


def case(drawing: str) -> Fraction:
    """Where the mouth of the case is."""
    return at(shape(drawing, "case"), "x")[0]


@given(AMOUNTS, st.integers(1, 10**9))
def test_the_blade_is_as_far_out_as_the_money(spent: int, plan: int) -> None:
    """Blade to case is as spent to plan, to a hundredth of a unit of the drawing."""
    drawing = draw_tape(tape(spent, plan))
    zero, end = blade(drawing)
    assert abs((end - zero) * plan - (case(drawing) - zero) * spent) <= Fraction(spent + plan, 90)


@given(AMOUNTS, st.one_of(st.none(), AMOUNTS), st.lists(AMOUNTS, max_size=12))
def test_everything_stays_on_the_page(spent: int, plan: int | None, running: list[int]) -> None:
    """Spent over the plan, under it, without one, or less than it once was: blade, case and marks are on the page."""
    one = tape(spent, plan, *running)
    drawing = draw_tape(one)
    assert 0 <= blade(drawing)[1] <= PAGE
    assert 0 <= case(drawing) <= PAGE - at(shape(drawing, "case"), "width")[0]
    assert all(0 <= place_of(one, total) <= PAGE for total in running)


def test_what_is_over_the_plan_is_hatched() -> None:
    """The part of the blade beyond the case has a texture, and only where there is one."""
    over, under = draw_tape(tape(150, 100)), draw_tape(tape(99, 100))
    past = shape(over, "past")
    assert past.get("fill") == "url(#tape-hatch)"
    assert Fraction((past.get("d") or "").split()[1]) == case(over)
    assert shapes(under, "past") == []
    assert shapes(draw_tape(tape(100, 100)), "past") == []


def test_what_is_left_of_the_plan_is_a_broken_line() -> None:
    """From the end of the blade to the case, gone once the plan is used up."""
    drawing = draw_tape(tape(25, 100))
    x, width = at(shape(drawing, "track"), "x", "width")
    assert (x, x + width) == (blade(drawing)[1], case(drawing))
    assert shapes(draw_tape(tape(100, 100)), "track") == []


def test_without_a_plan_the_case_is_at_the_end_of_the_blade() -> None:
    """There is nothing to measure against, so nothing is over and nothing is left."""
    drawing = draw_tape(tape(481_237, None))
    assert blade(drawing)[1] == case(drawing)
    assert not shapes(drawing, "past") + shapes(drawing, "track") + shapes(drawing, "plumb")


@pytest.mark.parametrize(("spent", "plan"), [(0, 100), (0, None), (0, 0), (-500, 100), (-500, None), (300, 0)])
def test_nothing_spent_or_planned_is_drawn_too(spent: int, plan: int | None) -> None:
    """A blade without length at the hook; money that came back more than went out stands there as well."""
    drawing = draw_tape(tape(spent, plan))
    zero, end = blade(drawing)
    assert (end == zero) == (spent <= 0)


def test_at_least_ends_in_a_tear() -> None:
    """A known amount is cut square; one that may be more has teeth."""
    torn = shape(draw_tape(tape(50, 100, at_least=True)), "blade").get("d") or ""
    square = shape(draw_tape(tape(50, 100)), "blade").get("d") or ""
    assert (torn.count("L"), square.count("L")) == (4, 0)


def test_an_episode_stands_at_its_running_total() -> None:
    """A mark is as far from the hook as the total after its episode; a return takes it back."""
    one = tape(300, 600, 100, 400, 300)
    drawing = draw_tape(one)
    first, second, third = (at(label, "x")[0] for label in shapes(drawing, "mark"))
    assert first < third < second
    assert third == place_of(one, 300)


@pytest.mark.parametrize(
    "running",
    [
        pytest.param([step * 16_000 for step in range(1, 41)], id="forty even weekends"),
        pytest.param([600_000 + step for step in range(40)], id="forty in one spot"),
        pytest.param([(step * 7919) % 640_000 for step in range(40)], id="forty up and down"),
    ],
)
def test_forty_episodes_can_still_be_read(running: list[int]) -> None:
    """Numbers keep a finger's breadth between them, and the newest is always there; each has its tick."""
    drawing = draw_tape(tape(running[-1], 640_000, *running))
    places = sorted(at(label, "x")[0] for label in shapes(drawing, "mark"))
    assert all(two - one >= FINGER - Fraction(1, 50) for one, two in pairwise(places))
    assert "40" in texts(drawing)
    ticks = (shape(drawing, "tick").get("d") or "").split("M")[1:]
    assert len(ticks) == len({round(place_of(tape(running[-1], 640_000, *running), total)) for total in running})


def test_a_thousand_episodes_stay_small() -> None:
    """The drawing grows with the page, not with the journal."""
    running = [step * 640 for step in range(1, 1001)]
    assert len(draw_tape(tape(640_000, 640_000, *running))) < 12_000


def test_a_mark_leads_to_its_episode() -> None:
    """The link has a name of its own and room for a finger: 24 CSS pixels at 320 (WCAG 2.2, 2.5.8)."""
    mark = TapeMark(amount=50, label="3", name="Episode 3: Roof", href="episodes/03-roof/")
    drawing = draw_tape(tape(50, 100, marks=(mark,)))
    link = shape(drawing, "target").getparent()
    assert (link.get("href"), link.get("aria-label")) == ("episodes/03-roof/", "Episode 3: Roof")
    width, height = at(shape(drawing, "target"), "width", "height")
    # On a screen of 320 the sheet keeps 16 on each side, the squared paper 4 and its edge 1.
    assert min(width, height) * Fraction(320 - 2 * (16 + 4 + 1), PAGE) >= 24


def test_round_amounts_are_printed_where_they_fit() -> None:
    """As far as the blade is out; a figure without room between two lines is left out."""
    graduations = tuple(Graduation(amount=step * 100, label=f"{step}00") for step in range(1, 7))
    drawing = draw_tape(tape(350, 640, graduations=graduations))
    assert [text for text in texts(drawing) if text.endswith("00")] == ["100", "200", "300"]
    crowded = tuple(Graduation(amount=step * 10, label=f"{step}0,000.00") for step in range(1, 64))
    assert shapes(draw_tape(tape(350, 640, graduations=crowded)), "figure") == []


def test_long_words_for_the_plan_take_more_lines() -> None:
    """Nothing runs off the page, whatever the language needs."""
    short = draw_tape(tape(10, 100, plan_label="plan 6,400.00"))
    long = draw_tape(tape(10, 100, plan_label="geplant für das ganze Bauwerk einschließlich der Wege 6.400,00 €"))
    height = [int((shape(one, "tape").get("viewBox") or "").split()[3]) for one in (short, long)]
    assert height[0] < height[1]
