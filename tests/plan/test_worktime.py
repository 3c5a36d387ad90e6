"""The work week: hours of days, and when so many of them are over. Dates were read off a calendar by hand."""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.worktime import HORIZON, WorkWeek, hours_between, weekends_between, work_week, worked_by
from builder.words.span import Span

SATURDAY, SUNDAY = 5, 6
WEEKEND = work_week({SATURDAY: Fraction(7), SUNDAY: Fraction(5)})


def day(month: int, number: int) -> datetime.date:
    """A day of 2026, whose 1 March is a Sunday."""
    return datetime.date(2026, month, number)


@pytest.mark.parametrize(
    ("hours", "end"),
    [
        (Fraction(0), day(3, 1)),
        (Fraction(1), day(3, 7)),
        (Fraction(7), day(3, 7)),
        (Fraction(71, 10), day(3, 8)),
        (Fraction(12), day(3, 8)),
        (Fraction(13), day(3, 14)),
        (Fraction(120), day(5, 10)),
    ],
)
def test_hours_are_over_on_the_day_that_has_the_last_of_them(hours: Fraction, end: datetime.date) -> None:
    """Seven on a Saturday, five on a Sunday, none on the day it is asked."""
    assert worked_by(WEEKEND, day(3, 1), hours) == end


def test_days_away_have_no_hours() -> None:
    """A holiday over one weekend and a single Saturday."""
    away = (Span(first=day(3, 5), last=day(3, 12)), Span(first=day(3, 14), last=day(3, 14)))
    week = work_week({SATURDAY: Fraction(7), SUNDAY: Fraction(5)}, away=away)
    assert worked_by(week, day(3, 1), Fraction(5)) == day(3, 15)
    assert hours_between(week, day(3, 1), day(3, 15)) == 5
    assert weekends_between(week, day(3, 1), day(3, 31)) == 3


@pytest.mark.parametrize(
    "week",
    [
        pytest.param(work_week({}), id="no hours in the week"),
        pytest.param(
            WorkWeek(hours=WEEKEND.hours, away=(Span(first=datetime.date.min, last=datetime.date.max),)),
            id="away for good",
        ),
    ],
)
def test_work_that_can_never_be_done_has_no_date(week: WorkWeek) -> None:
    """A clear answer, not a search without end."""
    assert worked_by(week, day(3, 1), Fraction(1)) is None


def test_nothing_is_looked_for_beyond_the_horizon() -> None:
    """The last hour within it has a date, one more has none; nor is there a day after the last of the
    calendar.
    """
    within = hours_between(WEEKEND, day(3, 1), day(3, 1) + datetime.timedelta(days=HORIZON))
    assert worked_by(WEEKEND, day(3, 1), within) is not None
    assert worked_by(WEEKEND, day(3, 1), within + 1) is None
    assert worked_by(WEEKEND, datetime.date.max, Fraction(1)) is None


def test_two_weekends_are_counted_once_each() -> None:
    """Saturday and its Sunday are one; a Sunday alone is one as well."""
    assert weekends_between(WEEKEND, day(3, 1), day(3, 8)) == 1
    assert weekends_between(WEEKEND, day(3, 7), day(3, 14)) == 2
    assert weekends_between(WEEKEND, day(3, 8), day(3, 8)) == 0


def test_a_slower_pace_makes_every_hour_count_less() -> None:
    """Half the pace, half the hours."""
    assert WEEKEND.scaled(Fraction(1, 2)).week == 6
    assert worked_by(WEEKEND.scaled(Fraction(1, 2)), day(3, 1), Fraction(12)) == day(3, 15)


@pytest.mark.parametrize("hours", [{7: Fraction(1)}, {-1: Fraction(1)}, {0: Fraction(-1)}])
def test_a_work_week_has_seven_days_and_no_negative_hours(hours: dict[int, Fraction]) -> None:
    """Anything else is refused."""
    with pytest.raises(ValueError, match="week"):
        work_week(hours)


weeks = st.builds(
    work_week,
    st.dictionaries(st.integers(0, 6), st.fractions(0, 12, max_denominator=4)),
    st.lists(
        st.builds(
            lambda start, length: Span(
                first=day(1, 1) + datetime.timedelta(start),
                last=day(1, 1) + datetime.timedelta(start + length),
            ),
            st.integers(0, 200),
            st.integers(0, 20),
        ),
        max_size=3,
    ).map(tuple),
)


@given(week=weeks, hours=st.fractions(min_value=Fraction(1, 8), max_value=300, max_denominator=8))
def test_worked_by_and_hours_between_turn_each_other_around(week: WorkWeek, hours: Fraction) -> None:
    """By the day found the hours are there, and the day before they are not."""
    end = worked_by(week, day(1, 1), hours)
    if end is None:
        assert week.week == 0
    else:
        before = end - datetime.timedelta(days=1)
        assert hours_between(week, day(1, 1), before) < hours <= hours_between(week, day(1, 1), end)
