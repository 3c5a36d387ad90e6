"""Will it be ready: the dates and chances of the finish, from the hours that are left, the pace and the
waits.

Every estimate is a triangular distribution (low, likely, high), the widest of the usual readings of three
points, and the estimates do not depend on each other. `builder.plan.outcomes` says which outcomes are looked
at, `builder.plan.remaining` what is left of a phase, `builder.plan.onebuilder` how one builder works through
them. Longer waits, a slower pace or fewer hours in the week never make any date earlier or any chance better:
that holds in every single outcome, and so for every share of them.
"""

from __future__ import annotations

import datetime
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from math import floor

from builder.plan.hanging import hanging
from builder.plan.network import Step, network_faults
from builder.plan.onebuilder import Course, Yard, likely_order_first, soonest_course
from builder.plan.outcomes import A_QUARTER, GRID, MIDDLE, OUTCOMES
from builder.plan.remaining import PhaseWork
from builder.plan.time_records import Finish, NoFinish, PhaseForecast, Why
from builder.plan.worktime import WorkWeek, worked_by
from builder.plan.yard import OpenPhase, lay_out_yard, open_phases, wait_days

_AS_PROMISED = Fraction(1)


def forecast_finish(
    phases: Sequence[PhaseWork],
    *,
    week: WorkWeek,
    as_of: datetime.date,
    pace: Fraction = _AS_PROMISED,
    hands: Fraction = _AS_PROMISED,
) -> Finish | NoFinish:
    """The finish of a plan as it stands at the end of the day `as_of`; work goes on the day after.

    Every hour of the work week counts `pace` x `hands` hours of the estimates: 1 x 1 is the promise kept,
    alone. Waits count whole days from the day a phase is finished: after a wait of 7 days the work finished
    on a Saturday can be built on the next Saturday. The finish is when the last wait is over too. A phase
    that is done counts from the day it was, with its wait from then; if all are, the finish is known, and may
    lie in the past.
    """
    if refused := _refused(phases):
        return refused
    opened = open_phases(phases)
    if not opened:
        return Finish(ready_by=((all_ready(phases), Fraction(1)),), phases=())
    worked = week.scaled(pace * hands)
    yard = lay_out_yard(phases, opened, worked, as_of)
    if yard is None:
        ever = worked_by(worked, as_of, Fraction(1, GRID))
        return NoFinish(why=Why.TOO_FAR if ever else Why.NO_TIME)
    return _finish(yard, opened, as_of, floor(worked.week * GRID))


def chance_text(chance: Fraction) -> str:
    """A chance in words of two decimals: see `Finish.told`."""
    return Finish.told(chance)


def _refused(phases: Sequence[PhaseWork]) -> NoFinish | None:
    """Why the plan has no finish, before anything is computed."""
    if not phases:
        return NoFinish(why=Why.NO_PHASES)
    if faults := network_faults([Step(key=phase.key, after=phase.after) for phase in phases]):
        return NoFinish(why=Why.FLAWED, keys=tuple(dict.fromkeys(key for fault in faults for key in fault.phases)))
    if silent := [phase.key for phase in phases if phase.hours is None and phase.done_on is None]:
        return NoFinish(why=Why.NO_HOURS, keys=tuple(silent))
    return None


def all_ready(phases: Sequence[PhaseWork]) -> datetime.date:
    """The day on which the last wait of phases that are all done is over."""
    return max(phase.done_on + datetime.timedelta(wait_days(phase)) for phase in phases if phase.done_on is not None)


def _finish(yard: Yard, opened: Sequence[OpenPhase], as_of: datetime.date, week: int) -> Finish:
    middle = [one.slices[MIDDLE] for one in opened]
    yard = likely_order_first(yard, middle)
    outcomes = list(zip(*(one.by_outcome for one in opened), strict=True))
    courses = [soonest_course(yard, needed) for needed in outcomes]
    hours, waits = _hanging_shares(yard, [(courses[one], outcomes[one]) for one in A_QUARTER])
    slacks = _slacks(yard, middle, week)
    days = [_median_days(yard, courses, place) for place in range(len(opened))]
    rows = zip(opened, days, hours, waits, slacks, strict=True)
    return Finish(
        ready_by=tuple(_ready_by(sorted(course.ready for course in courses), as_of)),
        phases=tuple(_phase_forecast(*row, as_of) for row in rows),
        spent_up=tuple(one.phase.key for one in opened if one.left.spent_up),
    )


def _ready_by(days: Sequence[int], as_of: datetime.date) -> Iterator[tuple[datetime.date, Fraction]]:
    """Each day on which an outcome is ready, with the share of outcomes ready by then."""
    for place, day in enumerate(days, start=1):
        if place == len(days) or days[place] != day:
            yield _date(as_of, day), Fraction(place, len(days))


def _phase_forecast(
    one: OpenPhase, days: tuple[int, int], hours: Fraction, wait: Fraction, slack: int, as_of: datetime.date
) -> PhaseForecast:
    start, finish = days
    return PhaseForecast(
        key=one.phase.key,
        hours_left=Fraction(sum(one.slices), OUTCOMES * GRID),
        start=_date(as_of, start),
        finish=_date(as_of, finish),
        ready=_date(as_of, finish + wait_days(one.phase)),
        hangs=hours,
        wait_hangs=wait,
        slack=slack,
    )


def _median_days(yard: Yard, courses: Sequence[Course], place: int) -> tuple[int, int]:
    """The days on which half of all courses have begun, and have ended, work on the phase."""
    begun = _median(course.begun[place] for course in courses)
    if begun < 0:
        return (_median(course.days[place] for course in courses),) * 2
    ended = _median(course.ended[place] for course in courses)
    return bisect_right(yard.through, begun), bisect_left(yard.through, ended)


def _hanging_shares(
    yard: Yard, courses: Sequence[tuple[Course, Sequence[int]]]
) -> tuple[list[Fraction], list[Fraction]]:
    """For each phase the share of courses whose finish hangs on its hours, and on its wait."""
    hours, waits = Counter[int](), Counter[int]()
    for course, needed in courses:
        on_hours, on_waits = hanging(yard, course, needed)
        hours.update(on_hours)
        waits.update(on_waits)
    places = range(len(yard.waits))
    return [Fraction(hours[one], len(courses)) for one in places], [
        Fraction(waits[one], len(courses)) for one in places
    ]


def _slacks(yard: Yard, needed: Sequence[int], week: int) -> list[int]:
    """For each phase the whole weeks of work it could take more before the finish of this outcome moved; none
    where a week has no hours.
    """
    if not week:
        return [0] * len(needed)
    ready = soonest_course(yard, needed).ready
    return [_slack(yard, needed, place, week, ready) for place in range(len(needed))]


def _slack(yard: Yard, needed: Sequence[int], place: int, week: int, ready: int) -> int:
    more, weeks = list(needed), 0
    more[place] += week
    while soonest_course(yard, more).ready == ready:
        weeks += 1
        more[place] += week
    return weeks


def _median(values: Iterable[int]) -> int:
    ordered = sorted(values)
    return ordered[(len(ordered) - 1) // 2]


def _date(as_of: datetime.date, day: int) -> datetime.date:
    return as_of + datetime.timedelta(days=day)
