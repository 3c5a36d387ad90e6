"""The steps: cost so far against the plan, over the dates."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.pages.steps import Point, Rule, Steps, all_named, draw_steps
from builder.pages.svg import WORDS, breadth
from tests.pages.shapes import at, root, shape, shapes, texts

SO_FAR = (Point(day=100, amount=200), Point(day=110, amount=500), Point(day=120, amount=400))


def steps(**more: Any) -> str:
    """A chart with a cost so far."""
    words = {"title": "Steps", "description": "Cost over time.", "so_far_label": "so far"}
    return draw_steps(Steps(**{"key": "steps", **words, "so_far": SO_FAR, **more}))


def lengths(path: str) -> list[Fraction]:
    """The numbers of a path, in order."""
    return [Fraction(found) for found in re.findall(r"-?\d+(?:\.\d+)?", path)]


def test_money_moves_on_its_date() -> None:
    """Level until the day, then straight up, or down when something went back: no slope between."""
    stair = shapes(steps(), "so-far")[0].get("d") or ""
    assert re.sub(r"[^A-Z]", "", stair) == "MHVHVHV"
    _, floor, _, first, _, second, _, third = lengths(stair)
    assert second < third < first < floor


def test_heights_are_as_the_amounts() -> None:
    """500 stands two and a half times as high as 200."""
    _, floor, _, first, _, second, *_ = lengths(shapes(steps(), "so-far")[0].get("d") or "")
    assert abs((floor - second) * 2 - (floor - first) * 5) < Fraction(1, 5)


def test_a_plan_of_one_number_is_a_level_line() -> None:
    """Over the whole chart, at its height."""
    line = shapes(steps(plan=(Point(day=100, amount=500),), plan_label="plan"), "plan-line")[0]
    x1, x2, y1, y2 = at(line, "x1", "x2", "y1", "y2")
    assert y1 == y2
    assert x2 - x1 > 300


def test_the_forecast_is_where_and_when_it_is_expected() -> None:
    """Beyond the last step, on its day, joined to it by a broken line."""
    drawing = steps(forecast=Point(day=140, amount=600), forecast_label="forecast")
    ring, last = shapes(drawing, "forecast-end")[0], shapes(drawing, "so-far-end")[0]
    assert at(ring, "cx")[0] - at(last, "cx")[0] > at(last, "cx")[0] / 3
    assert at(ring, "cy") < at(last, "cy")
    ahead = shapes(drawing, "ahead")[0]
    assert at(ahead, "x1", "y1") == at(last, "cx", "cy")


@pytest.mark.parametrize(
    "missing",
    [
        {"so_far": ()},
        {"so_far": (), "plan": (Point(day=5, amount=0), Point(day=9, amount=100)), "plan_label": "plan"},
        {"so_far": (), "forecast": Point(day=9, amount=0), "forecast_label": "forecast"},
        {"so_far": (Point(day=7, amount=0),)},
        {"so_far": (Point(day=7, amount=-50), Point(day=8, amount=20))},
    ],
)
def test_what_is_not_there_is_not_drawn(missing: dict[str, Any]) -> None:
    """Nothing yet, no plan, one day, money that came back: a chart all the same, on the page."""
    drawing = steps(**missing)
    assert ("so far" in texts(drawing)) == bool(missing["so_far"])
    assert ("plan" in texts(drawing)) == ("plan" in missing)
    assert all(length >= 0 for path in shapes(drawing, "so-far") for length in lengths(path.get("d") or ""))


def test_names_of_months_keep_clear_of_each_other() -> None:
    """Every first of a month has a tick; of thirty months some have no name."""
    months = tuple(Rule(at=100 + 30 * month, label=f"September {month}") for month in range(30))
    drawing = steps(dates=months)
    named = [text for text in texts(drawing) if text.startswith("September")]
    assert len(shapes(drawing, "tick")) == 30
    assert 1 < len(named) < 10


def test_round_amounts_stand_at_their_height() -> None:
    """A rule at 500 touches the top of the second step."""
    drawing = steps(amounts=(Rule(at=500, label="500"),))
    _, _, _, _, _, second, *_ = lengths(shapes(drawing, "so-far")[0].get("d") or "")
    assert at(shape(drawing, "ruled"), "y1")[0] == second


def drawn_before(drawing: str, one: str, other: str) -> bool:
    """Whether a kind of shape is painted first, so that the other lies on it."""
    kinds = [shape.get("class") or "" for shape in root(drawing).iter("{*}*")]
    return kinds.index(one) < kinds.index(other)


def test_the_plan_and_the_amounts_are_seen_however_far_over_it_is() -> None:
    """Nothing lies under the area but the paper: rules, the plan and its sample come after it."""
    drawing = steps(
        plan=(Point(day=100, amount=50), Point(day=120, amount=50)),
        plan_label="plan",
        amounts=(Rule(at=200, label="2"),),
    )
    assert all(drawn_before(drawing, "under-steps", kind) for kind in ("ruled", "axis", "plan-line", "so-far"))
    assert drawn_before(drawing, "so-far", "plan-line")


@given(st.lists(st.integers(min_value=1, max_value=10**12), min_size=1, max_size=4, unique=True))
def test_no_line_runs_through_an_amount(amounts: list[int]) -> None:
    """Each stands to the left of everything that is drawn, with room for its letters."""
    drawing = steps(amounts=tuple(Rule(at=amount, label=f"{amount:,}") for amount in amounts))
    ends = [at(text, "x")[0] for text in shapes(drawing, "axis")]
    starts = [at(line, "x1")[0] for kind in ("ruled", "ground-line") for line in shapes(drawing, kind)]
    starts += [lengths(shapes(drawing, kind)[0].get("d") or "")[0] for kind in ("so-far", "under-steps")]
    assert [text.get("text-anchor") for text in shapes(drawing, "axis")] == ["end"] * len(amounts)
    assert max(ends) < min(starts)
    assert min(ends) - max(breadth(f"{amount:,}") for amount in amounts) >= 0


def test_years_stand_below_the_months() -> None:
    """On a row of their own, and what the lines mean goes lower for it."""
    months = (Rule(at=100, label="Dec"), Rule(at=131, label="Jan"))
    without = steps(dates=months)
    drawing = steps(dates=months, years=(Rule(at=131, label="2027"),))
    rows = {"".join(text.itertext()): at(text, "y")[0] for text in root(drawing).iter("{*}text")}
    assert rows["2027"] > rows["Jan"] + WORDS
    assert rows["so far"] > rows["2027"] + WORDS
    assert "2027" not in texts(without)


def test_it_is_known_whether_every_date_has_its_name() -> None:
    """So that a page can say what a mark without one is."""
    few, many = (tuple(Rule(at=100 + day, label=str(day)) for day in range(count)) for count in (3, 60))
    words = {"key": "steps", "title": "Steps", "description": "", "so_far": SO_FAR, "so_far_label": "so far"}
    assert all_named(Steps(**words, dates=few))
    assert not all_named(Steps(**words, dates=many))
