"""The forecast where it is tight: days away, waits that are over in the very hour, weeks of next to no hours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from builder.plan.finish import forecast_finish
from builder.plan.outcomes import BANDS, GRID, slice_numbers
from builder.plan.remaining import PhaseWork
from builder.plan.time_records import Finish, NoFinish, PhaseForecast, Why
from builder.plan.worktime import WorkWeek, work_week
from builder.words.span import Span
from tests.plan.plans import SUNDAY, WEEKEND, day, phase

# As little work a day as is counted at all: one step of 1/3600 hour.
A_STEP_A_DAY = work_week(dict.fromkeys(range(7), Fraction(1, GRID)))


def rows(phases: Sequence[PhaseWork], week: WorkWeek = WEEKEND) -> tuple[PhaseForecast, ...]:
    """The phases' forecasts as of Sunday 1 March 2026."""
    found = forecast_finish(phases, week=week, as_of=SUNDAY)
    assert isinstance(found, Finish)
    return found.phases


def test_nothing_begins_on_a_day_away() -> None:
    """Away from Monday to Friday, and no work then anyway: it begins on Saturday."""
    week = replace(WEEKEND, away=(Span(first=day(3, 2), last=day(3, 6)),))
    (row,) = rows([phase("a", 7)], week)
    assert (row.start, row.finish) == (day(3, 7), day(3, 7))


def test_when_all_is_done_the_date_is_certain() -> None:
    """One outcome, and all of them."""
    done = forecast_finish([phase("a", 7, wait=3, done_on=SUNDAY)], week=WEEKEND, as_of=SUNDAY)
    assert done == Finish(ready_by=((day(3, 4), Fraction(1)),), phases=())


def test_a_week_of_an_hour_has_time_and_gets_there_too_late() -> None:
    """5,000 hours, of which forty years have 2,080."""
    week = work_week({6: Fraction(1)})
    assert forecast_finish([phase("a", 5000)], week=week, as_of=SUNDAY) == NoFinish(why=Why.TOO_FAR)


def test_work_without_a_gap_hangs_also_where_a_wait_ends_within_it() -> None:
    """`a` fills Saturday, and the delivery of Sunday comes just in time for `b`."""
    found = rows([phase("order", 0, wait=7), phase("a", 7), phase("b", 5, "order a")])
    assert [one.finish for one in found] == [SUNDAY, day(3, 7), day(3, 8)]
    assert [one.hangs for one in found[1:]] == [1, 1]


def test_the_finish_hangs_on_a_wait_that_costs_a_single_step() -> None:
    """Two days for the delivery, on the first of which a step could have been worked."""
    found = rows([phase("order", 0, wait=2), phase("b", 1, "order")], A_STEP_A_DAY)
    assert [one.wait_hangs for one in found] == [1, 0]


def test_the_thirty_second_phase_does_not_go_up_and_down_with_another() -> None:
    """Of the 961 pairs of bands two shuffles meet 961 x (1 - 1/e), about 607; two that go together meet 31."""
    one, other = slice_numbers(0), slice_numbers(BANDS)
    pairs = {(first // BANDS, second // BANDS) for first, second in zip(one, other, strict=True)}
    assert 550 < len(pairs) < 660
