"""The small values that mistakes are told with: where, what, and how it is shown."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.place import Place
from builder.words.problem import Problem, Weight
from builder.words.showing import shown
from builder.words.span import Span

PLACE = Place(file="episodes/01-a.md", line=4, column=7, width=5)


def test_a_place_is_written_as_editors_read_it() -> None:
    """File, line and column, from 1."""
    assert str(PLACE) == "episodes/01-a.md:4:7"


def test_a_place_without_more_is_the_beginning_of_its_file() -> None:
    """The first character of the first line, of no key."""
    place = Place(file="a")
    assert (place.line, place.column, place.width, place.key) == (1, 1, 1, "")


def test_places_stand_in_the_order_of_the_file() -> None:
    """By file, then line as a number, then column."""
    lines = [Place(file="a", line=10), Place(file="a", line=9, column=2), Place(file="a", line=9), Place(file="b")]
    assert [str(one) for one in sorted(lines)] == ["a:9:1", "a:9:2", "a:10:1", "b:1:1"]


@pytest.mark.parametrize(
    ("expected", "fix", "line"),
    [
        ("an amount", "write 5", "episodes/01-a.md:4:7: mistake: cost is odd; expected an amount; write 5"),
        ("an amount", "", "episodes/01-a.md:4:7: mistake: cost is odd; expected an amount"),
        ("", "", "episodes/01-a.md:4:7: mistake: cost is odd"),
    ],
)
def test_a_problem_on_one_line_leaves_out_what_it_does_not_know(expected: str, fix: str, line: str) -> None:
    """No empty "expected"."""
    assert Problem(place=PLACE, found="cost is odd", expected=expected, fix=fix).one_line() == line


def test_only_a_mistake_stops_the_site() -> None:
    """A warning says so on its line."""
    warning = Problem(place=PLACE, found="odd", expected="", weight=Weight.WARNING)
    assert not warning.is_mistake
    assert Problem(place=PLACE, found="odd", expected="").is_mistake
    assert warning.one_line() == "episodes/01-a.md:4:7: warning: odd"


def test_a_problem_is_shown_with_its_line_and_a_mark_under_it() -> None:
    """The mark is as long as the value, and stands under it."""
    problem = Problem(place=PLACE, found="cost is odd", expected="an amount", fix="write 5")
    assert shown(problem, "content", ["---", "title: T", "items:", "cost: 1,250"]) == (
        "content/episodes/01-a.md:4:7: mistake: cost is odd\n"
        "     4 | cost: 1,250\n"
        "               ^^^^^\n"
        "    expected: an amount\n"
        "    so: write 5"
    )


def test_a_problem_without_its_line_is_shown_without_a_mark() -> None:
    """A file that is not there has no lines."""
    problem = Problem(place=Place(file="journal.yaml"), found="there is none", expected="one")
    assert shown(problem, "", []) == "journal.yaml:1:1: mistake: there is none\n    expected: one"


def test_a_place_on_a_line_without_text_is_shown_without_a_mark() -> None:
    """But one on the line after it is marked."""
    at = [Problem(place=Place(file="a", line=line), found="f", expected="") for line in (1, 2, 3)]
    assert [shown(one, "", ["  ", "cost"]) for one in at] == [
        "a:1:1: mistake: f",
        "a:2:1: mistake: f\n     2 | cost\n         ^",
        "a:3:1: mistake: f",
    ]


def test_a_tab_takes_the_place_of_one_character() -> None:
    """So that the mark stands where the value is."""
    problem = Problem(place=Place(file="a", line=1, column=3, width=1), found="f", expected="")
    assert shown(problem, "", ["\t\tx"]).split("\n")[1:] == ["     1 |   x", "           ^"]


@pytest.mark.parametrize(("column", "start"), [(1, 0), (34, 0), (35, 1), (120, 86), (134, 100), (200, 100)])
def test_a_long_line_is_shown_from_a_third_before_the_mark(column: int, start: int) -> None:
    """A hundred characters of it; its beginning where the mark is near that, and its end likewise."""
    line = "".join(chr(ord("a") + at % 26) for at in range(200))
    problem = Problem(place=Place(file="a", line=1, column=column), found="f", expected="")
    _, text, mark = shown(problem, "", [line]).split("\n")
    assert (text, mark) == (f"     1 | {line[start : start + 100]}", " " * (9 + column - 1 - start) + "^")


@given(length=st.integers(101, 400), column=st.integers(1, 400), width=st.integers(1, 400))
def test_a_long_line_is_shown_around_the_mark(length: int, column: int, width: int) -> None:
    """Never more than fits, and the mark never runs over its end."""
    place = Place(file="a", line=1, column=min(column, length), width=width)
    line = "".join(chr(ord("a") + at % 26) for at in range(length))
    _, text, mark = shown(Problem(place=place, found="f", expected=""), "", [line]).split("\n")
    assert len(text) <= 9 + 100
    assert len(mark) <= len(text)
    assert text[mark.index("^")] == line[place.column - 1]


def test_a_span_holds_both_its_days() -> None:
    """From the first to the last, and nothing else."""
    first, last = datetime.date(2026, 7, 4), datetime.date(2026, 7, 12)
    span, day = Span(first, last), datetime.timedelta(days=1)
    assert first in span
    assert last in span
    assert first - day not in span
    assert last + day not in span
    assert "2026-07-04" not in span
