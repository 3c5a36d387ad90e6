"""What the schedule refuses of a caller, in whole words; and what it makes of hours that are no whole steps."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable
from fractions import Fraction

import pytest

from builder.plan.earned import earned_amount
from builder.plan.network import Step, in_order
from builder.plan.outcomes import GRID, slice_hours
from builder.plan.remaining import PhaseWork, Remaining
from builder.plan.threepoint import ThreePoint
from builder.plan.time_records import Finish
from builder.plan.worktime import WorkWeek, work_week, worked_by
from builder.plan.yard import lay_out_yard, open_phases
from tests.plan.plans import SUNDAY, phase
from tests.plan.test_timing import TWELVE, front, timing

OUT_OF_RANGE = "roof: a wait or hours below none, or progress outside 0 to 1"


def of(low: int, likely: int, high: int) -> ThreePoint:
    """An estimate."""
    return ThreePoint(low=Fraction(low), likely=Fraction(likely), high=Fraction(high))


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: of(3, 2, 5), "low, likely, high must rise from zero: 3, 2, 5"),
        (lambda: of(-1, 2, 5), "low, likely, high must rise from zero: -1, 2, 5"),
        (lambda: of(1, 6, 5), "low, likely, high must rise from zero: 1, 6, 5"),
        (lambda: PhaseWork(key="roof", wait=Fraction(-1)), OUT_OF_RANGE),
        (lambda: PhaseWork(key="roof", spent=Fraction(-1)), OUT_OF_RANGE),
        (lambda: PhaseWork(key="roof", progress=Fraction(-1, 9)), OUT_OF_RANGE),
        (lambda: PhaseWork(key="roof", progress=Fraction(10, 9)), OUT_OF_RANGE),
        (lambda: work_week({7: Fraction(1), -1: Fraction(1)}), "weekdays run from 0 to 6, not [-1, 7]"),
        (
            lambda: WorkWeek(hours=(Fraction(1), Fraction(2))),
            "a work week has seven days of no fewer than no hours: (Fraction(1, 1), Fraction(2, 1))",
        ),
        (
            lambda: in_order([Step(key="roof", after=("wall", "base")), Step(key="wall", after=("roof",))]),
            (
                "a phase comes after one that is not in the plan: roof, base; phases wait for each other in a circle: "
                "roof, wall"
            ),
        ),
        (lambda: earned_amount(100, Fraction(-1, 2)), "a share of the work lies between 0 and 1, not -1/2"),
        (lambda: in_order([Step(key="roof"), Step(key="roof")]), "two phases have one key: roof"),
    ],
)  # fmt: skip
def test_a_caller_is_told_what_is_wrong(make: Callable[[], object], message: str) -> None:
    """Whole, with what was handed in."""
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        make()


def test_values_on_the_edge_are_taken() -> None:
    """No hours at all, all three alike, nothing done, all done."""
    assert (of(0, 0, 0).high, of(4, 4, 4).low) == (0, 4)
    assert [PhaseWork(key="roof", progress=Fraction(part)).progress for part in (0, 1)] == [0, 1]
    assert PhaseWork(key="roof", wait=Fraction(0), spent=Fraction(0)).spent == 0


def test_one_silent_episode_makes_the_hours_of_its_phase_unknown() -> None:
    """Three hours and some: nothing is taken off the twelve; beside a phase of which nobody was silent."""
    plan = TWELVE + "  - {key: paint, hours: [6, 6, 6]}\n"
    found = timing(plan, front(4, "hours: {roof: 3, paint: 2}"), front(5), front(11, "hours: 4"))
    assert isinstance(found.finish, Finish)
    assert {one.key: one.hours_left for one in found.finish.phases} == {"roof": 12, "paint": 4}


@pytest.mark.parametrize(("hours", "steps"), [("1", 3600), ("1/3600", 1), ("3/7200", 1), ("1/7", 514), ("7/3", 8400)])
def test_a_part_of_a_step_is_not_worked(hours: str, steps: int) -> None:
    """Every Saturday passes whole steps of a second, rounded down: nobody is promised what there is no time for."""
    assert GRID == 60 * 60
    phases = [phase("roof", 1)]
    week = work_week({5: Fraction(hours)})
    yard = lay_out_yard(phases, open_phases(phases), week, SUNDAY)
    if yard is None:  # at a second a week an hour's work takes longer than anybody looks ahead
        assert steps == 1
        return
    assert yard.through[:8] == (0, 0, 0, 0, 0, 0, steps, steps)


def test_a_wait_runs_from_the_day_a_phase_was_done() -> None:
    """Of five days two are over; a wait that is over already holds nobody."""
    phases = [
        phase("base", 1, wait=5, done_on=SUNDAY - datetime.timedelta(days=2)),
        phase("wall", 1, wait=1, done_on=SUNDAY - datetime.timedelta(days=2)),
        phase("roof", 1, "base wall", 4),
        phase("shed", 1, "wall", 2),
    ]
    yard = lay_out_yard(phases, open_phases(phases), work_week(dict.fromkeys(range(7), Fraction(1))), SUNDAY)
    assert yard is not None
    assert [day for day, _ in yard.held] == [3, 0]
    assert (yard.done, yard.last_wait, yard.waits) == (3, 2, (4, 2))


def test_nobody_looks_further_ahead_than_forty_years() -> None:
    """An hour a day: forty times 365 hours have their date, and one hour more has none."""
    daily = work_week(dict.fromkeys(range(7), Fraction(1)))
    assert worked_by(daily, SUNDAY, Fraction(14_600)) == datetime.date(2066, 2, 19)
    assert worked_by(daily, SUNDAY, Fraction(14_601)) is None


def test_a_phase_that_needs_hardly_any_time_needs_one_step_of_it() -> None:
    """From nothing to a second, half of it worked or not: one step in every outcome. Without hours it needs none."""
    second = ThreePoint(low=Fraction(0), likely=Fraction(0), high=Fraction(1, GRID))
    assert set(slice_hours(Remaining(whole=second))) == {1}
    assert set(slice_hours(Remaining(whole=second, worked=Fraction(1, 2 * GRID)))) == {1}
    assert set(slice_hours(Remaining(whole=of(0, 0, 0)))) == {0}
