"""The calendar: phases, waits, weekends worked and the dates that matter."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from builder.pages.calendar import Calendar, DateSign, Month, PhaseRow, Sign, Span, Stretch, draw_calendar
from builder.pages.svg import PAGE
from tests.pages.shapes import at, root, shape, shapes, texts


def calendar(*rows: PhaseRow, **more: Any) -> str:
    """A calendar of rows."""
    words = {"title": "Calendar", "description": "When."}
    return draw_calendar(Calendar(**{"key": "calendar", **words, "rows": rows, **more}))


def row(*stretches: tuple[int, int, Span], worked: tuple[int, ...] = ()) -> PhaseRow:
    """A phase with its stretches."""
    spans = tuple(Stretch(first=first, last=last, span=span) for first, last, span in stretches)
    return PhaseRow(label="Footing", stretches=spans, worked_on=worked)


def test_a_day_is_as_long_as_any_other() -> None:
    """A week of work is seven times as long as a day, its last day included."""
    drawing = calendar(row((0, 6, Span.WORKED), (7, 7, Span.WAIT)))
    week, day = (at(bar, "width")[0] for bar in shapes(drawing, "stretch"))
    assert abs(week - 7 * day) < Fraction(1, 10)


def test_a_wait_is_hatched_and_what_is_to_come_is_not() -> None:
    """Done, waiting and still to do differ without colour: plain, hatched, and a broken outline."""
    drawing = calendar(row((0, 2, Span.WORKED), (3, 9, Span.WAIT), (10, 12, Span.AHEAD)))
    assert [bar.get("fill") for bar in shapes(drawing, "stretch")] == [None, "url(#calendar-hatch)", None]
    assert len(shapes(drawing, "to-come")) == 1


def test_every_day_worked_has_one_tick() -> None:
    """Two entries for a day are one day."""
    drawing = calendar(row((0, 9, Span.WORKED), worked=(1, 2, 2, 8)))
    assert (shape(drawing, "worked-tick").get("d") or "").count("M") == 3


def test_dates_stand_in_order() -> None:
    """Promised, likely and safe each at its day, each with a head of another shape."""
    signs = (
        DateSign(day=30, sign=Sign.PROMISED, label="promised"),
        DateSign(day=20, sign=Sign.LIKELY, label="likely"),
        DateSign(day=40, sign=Sign.SAFE, label="safe"),
    )
    drawing = calendar(row((0, 9, Span.WORKED)), signs=signs)
    places = {sign: at(line, "x1")[0] for sign in ("promised", "likely", "safe") for line in shapes(drawing, sign)[:1]}
    assert places["likely"] < places["promised"] < places["safe"]
    assert {"promised", "likely", "safe"} <= set(texts(drawing))


def test_heads_that_would_touch_go_lower() -> None:
    """Two dates a day apart can both be told."""
    near = tuple(DateSign(day=100 + n, sign=sign, label="x") for n, sign in enumerate((Sign.LIKELY, Sign.SAFE)))
    likely, safe = (shapes(calendar(row((0, 9, Span.WORKED)), signs=near), sign)[0] for sign in ("likely", "safe"))
    assert at(likely, "y2")[0] < at(safe, "y2")[0]


@given(st.lists(st.tuples(st.integers(0, 900), st.integers(0, 90)), max_size=8), st.integers(0, 2000))
def test_everything_is_on_the_page(stretches: list[tuple[int, int]], promised: int) -> None:
    """Whatever the dates, nothing is drawn beside the page."""
    spans = [(first, first + days, Span.WORKED) for first, days in stretches]
    signs = (DateSign(day=promised, sign=Sign.PROMISED, label="promised"),)
    drawing = calendar(row(*spans), signs=signs)
    for bar in shapes(drawing, "stretch"):
        x, width = at(bar, "x", "width")
        assert 0 <= x <= x + width <= PAGE
    assert 0 <= at(shapes(drawing, "promised")[0], "x1")[0] <= PAGE


def test_an_empty_calendar_is_one_too() -> None:
    """A plan without hours has no dates."""
    assert texts(calendar()) == []


def test_names_of_months_keep_clear_of_each_other() -> None:
    """Every month has its line; over three years some have no name."""
    months = tuple(Month(day=30 * month, label="September") for month in range(36))
    drawing = calendar(row((0, 1080, Span.AHEAD)), months=months)
    assert len(shapes(drawing, "ruled")) == 36
    assert 1 < texts(drawing).count("September") < 6


SPANS = ((Span.WORKED, "worked"), (Span.AHEAD, "to come"), (Span.WAIT, "waiting"))


def test_only_what_is_drawn_is_explained() -> None:
    """No wait, no word of waiting; nobody at work yet, no word of days worked on."""
    drawing = calendar(row((0, 2, Span.AHEAD)), span_labels=SPANS, worked_label="days worked on")
    assert [text for text in texts(drawing) if text != "Footing"] == ["to come"]
    everything = calendar(
        row((0, 2, Span.WORKED), (3, 5, Span.WAIT), (6, 8, Span.AHEAD), worked=(1,)),
        span_labels=SPANS,
        worked_label="days worked on",
    )
    assert {"worked", "to come", "waiting", "days worked on"} <= set(texts(everything))


def test_no_date_runs_through_a_name() -> None:
    """Names of phases are painted after the lines of dates, on their own rubbed-out edge."""
    drawing = calendar(row((0, 9, Span.WORKED)), signs=(DateSign(day=2, sign=Sign.TODAY, label="today"),))
    kinds = [shape.get("class") or "" for shape in root(drawing).iter("{*}*")]
    assert kinds.index("sign today") < kinds.index("label")


def test_years_of_the_calendar_stand_below_its_months() -> None:
    """On a row of their own, which moves the phases down."""
    months = (Month(day=0, label="Dec"), Month(day=31, label="Jan"))
    drawing = calendar(row((0, 60, Span.AHEAD)), months=months, years=(Month(day=31, label="2027"),))
    rows = {"".join(text.itertext()): at(text, "y")[0] for text in root(drawing).iter("{*}text")}
    assert rows["Dec"] == rows["Jan"] < rows["2027"] < rows["Footing"]
