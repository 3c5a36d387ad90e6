"""The pace learnt from the episodes: what a week without hours, or without an episode, is taken for."""

from __future__ import annotations

import datetime
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.pace import Worked, learn_pace
from builder.plan.time_records import Pace
from builder.plan.worktime import work_week
from builder.words.span import Span

AWAY = (Span(first=datetime.date(2026, 4, 4), last=datetime.date(2026, 4, 12)),)
WEEK = work_week({5: Fraction(7), 6: Fraction(5)}, away=AWAY)
DAILY = work_week(dict.fromkeys(range(7), Fraction(1)))


def day(month: int, number: int) -> datetime.date:
    """A day of 2026, whose 1 March is a Sunday."""
    return datetime.date(2026, month, number)


def episode(first: datetime.date, hours: int | None, last: datetime.date | None = None) -> Worked:
    """An episode of one day, or several."""
    return Worked(days=Span(first=first, last=last or first), hours=None if hours is None else Fraction(hours))


def pace(as_of: datetime.date, *episodes: Worked, begun: datetime.date | None = None) -> Pace:
    """The pace of a build begun on Monday 2 March 2026 unless told."""
    return learn_pace(WEEK, begun or day(3, 2), as_of, episodes)


def test_half_the_promise_is_half_the_pace() -> None:
    """Two weekends of twelve hours, six worked in each."""
    found = pace(day(3, 15), episode(day(3, 7), 6), episode(day(3, 14), 6))
    assert found == Pace(rate=Fraction(1, 2), worked=Fraction(12), promised=Fraction(24), weeks=2, idle=0, unknown=0)


def test_more_than_the_promise_is_a_pace_above_one() -> None:
    """Evenings and days away count when they were worked."""
    assert pace(day(3, 8), episode(day(3, 4), 3), episode(day(3, 8), 12)).rate == Fraction(15, 12)


@pytest.mark.parametrize("dated", [day(3, 7), day(3, 8), day(3, 9) - datetime.timedelta(days=5)])
def test_an_episode_tells_of_its_whole_week(dated: datetime.date) -> None:
    """Whether the weekend's write-up is dated Saturday or Sunday changes nothing."""
    assert pace(dated, episode(dated, 6)).rate == Fraction(6, 12)


def test_a_week_without_hours_is_unknown_and_not_zero() -> None:
    """The pace rests on the other one."""
    found = pace(day(3, 15), episode(day(3, 7), 6), episode(day(3, 14), None))
    assert (found.rate, found.weeks, found.unknown) == (Fraction(1, 2), 1, 1)


def test_one_silent_episode_makes_its_week_unknown() -> None:
    """Five hours and some are not five hours."""
    found = pace(day(3, 8), episode(day(3, 7), 5), episode(day(3, 8), None))
    assert (found.rate, found.weeks, found.unknown) == (None, 0, 1)


def test_a_week_without_an_episode_is_one_in_which_nothing_was_worked() -> None:
    """It rained: twelve hours in two weekends."""
    found = pace(day(3, 15), episode(day(3, 14), 12))
    assert (found.rate, found.weeks, found.idle) == (Fraction(1, 2), 2, 1)


def test_the_week_that_is_not_over_is_not_held_against_anybody() -> None:
    """Without an episode of its own it counts from its Monday on."""
    assert pace(day(3, 14), episode(day(3, 7), 12)).rate == 1
    assert pace(day(3, 15), episode(day(3, 7), 12)).idle == 1


def test_a_week_away_breaks_no_promise() -> None:
    """Both weekends of the holiday are promised nothing."""
    found = pace(day(4, 19), episode(day(3, 28), 12), episode(day(4, 18), 12), begun=day(3, 28))
    assert (found.rate, found.weeks, found.idle) == (Fraction(1), 2, 0)


def test_nothing_is_promised_before_the_build_began() -> None:
    """Begun on a Sunday: five hours were to be had in that week."""
    assert pace(day(3, 8), episode(day(3, 8), 5), begun=day(3, 8)).rate == 1


def test_hours_on_every_day_are_promised_from_the_day_the_build_began() -> None:
    """An hour a day, begun on a Wednesday: five were to be had in that week, and seven in the next."""
    found = learn_pace(DAILY, day(3, 4), day(3, 15), ())
    assert (found.promised, found.weeks, found.idle) == (12, 2, 2)


@pytest.mark.parametrize("first", range(2, 16))
def test_a_day_away_in_an_episode_of_two_weeks_is_its_only_hour_less(first: int) -> None:
    """Whichever day it is, the first and the last too, and with another holiday long before."""
    away = tuple(Span(first=one, last=one) for one in (day(1, 5), day(3, first)))
    found = learn_pace(replace(DAILY, away=away), day(3, 2), day(3, 15), [episode(day(3, 2), 6, day(3, 15))])
    assert (found.promised, found.weeks, found.rate) == (13, 2, Fraction(6, 13))


def test_an_episode_of_no_hours_is_known_to_have_none() -> None:
    """It tells of a weekend of rain: nothing worked of twelve hours, and not an hour more."""
    found = pace(day(3, 8), episode(day(3, 7), 0))
    assert (found.worked, found.rate, found.unknown) == (0, 0, 0)


def test_an_episode_before_the_beginning_moves_it() -> None:
    """Work that is told of was part of the build."""
    assert pace(day(3, 15), episode(day(3, 7), 6), episode(day(3, 14), 6), begun=day(3, 14)).promised == 24


def test_an_episode_of_three_weeks_is_taken_with_them() -> None:
    """Eighteen hours in three weekends of twelve, whichever they fell on, and another episode among them."""
    long = episode(day(3, 7), 12, day(3, 22))
    found = pace(day(3, 22), long, episode(day(3, 14), 6))
    assert (found.rate, found.weeks, found.idle) == (Fraction(18, 36), 3, 0)


def test_a_silent_episode_takes_all_its_weeks_out() -> None:
    """And what shares a week with it."""
    silent, beside_it, after = (
        episode(day(3, 7), None, day(3, 15)),
        episode(day(3, 14), 9),
        episode(day(3, 21), 12),
    )
    found = pace(day(3, 22), silent, beside_it, after)
    assert (found.rate, found.weeks, found.idle, found.unknown) == (Fraction(1), 1, 0, 2)


def test_nothing_known_is_no_pace() -> None:
    """Not one, not zero."""
    assert pace(day(3, 4)).rate is None


def test_what_comes_later_is_not_looked_at() -> None:
    """A forecast as of an earlier day knows only what was known."""
    assert pace(day(3, 8), episode(day(3, 7), 6), episode(day(3, 14), 12)).worked == 6


episodes = st.lists(
    st.builds(
        lambda start, length, hours: episode(
            day(3, 2) + datetime.timedelta(start), hours, day(3, 2) + datetime.timedelta(start + length)
        ),
        st.integers(0, 60),
        st.integers(0, 15),
        st.none() | st.integers(0, 20),
    ),
    max_size=8,
)


@given(told=episodes, data=st.data())
def test_the_order_of_episodes_changes_nothing(told: list[Worked], data: st.DataObject) -> None:
    """And weeks never add to more than there were."""
    as_of = day(3, 2) + datetime.timedelta(data.draw(st.integers(0, 90)))
    found = pace(as_of, *told)
    assert pace(as_of, *data.draw(st.permutations(told))) == found
    last = max([as_of, *(one.days.last for one in told if one.days.first <= as_of)])
    assert found.weeks + found.unknown <= (last - day(3, 2)).days // 7 + 1
    assert found.idle <= found.weeks
    assert found.rate is None or found.rate * found.promised == found.worked


@given(told=episodes, more=st.integers(1, 10))
def test_more_hours_worked_never_lower_the_pace(told: list[Worked], more: int) -> None:
    """Each known episode a few hours longer."""
    longer = [one if one.hours is None else Worked(days=one.days, hours=one.hours + more) for one in told]
    before, after = pace(day(5, 31), *told), pace(day(5, 31), *longer)
    assert (before.weeks, before.promised) == (after.weeks, after.promised)
    assert before.rate is None or (after.rate is not None and after.rate >= before.rate)
