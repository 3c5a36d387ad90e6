"""The plan and the calendar as whole numbers, for the builder to work through."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from builder.plan.network import Step, in_order
from builder.plan.onebuilder import Yard
from builder.plan.orders import finishing_orders
from builder.plan.outcomes import GRID, slice_hours, slice_numbers
from builder.plan.remaining import PhaseWork, Remaining, remaining_hours
from builder.plan.worktime import HORIZON, WorkWeek


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenPhase:
    """A phase still to be finished, and the steps of work it may still need, from the least to the most
    likely.
    """

    phase: PhaseWork
    left: Remaining
    slices: tuple[int, ...]
    numbers: tuple[int, ...]
    """Which of the slices it takes in each outcome."""

    @property
    def by_outcome(self) -> list[int]:
        return [self.slices[number] for number in self.numbers]


def open_phases(phases: Sequence[PhaseWork]) -> tuple[OpenPhase, ...]:
    """Those not done, each after what it comes after. Every one of them has hours."""
    places = {phase.key: place for place, phase in enumerate(phases)}
    ordered = in_order([Step(key=phase.key, after=phase.after) for phase in phases])
    in_turn = (places[step.key] for step in ordered)
    return tuple(_opened(phases[place], place) for place in in_turn if phases[place].done_on is None)


def _opened(phase: PhaseWork, place: int) -> OpenPhase:
    """`place` is that in the whole plan, so that a phase keeps its outcomes when others get done."""
    assert phase.hours is not None
    left = remaining_hours(phase.hours, phase.progress, phase.spent)
    return OpenPhase(phase=phase, left=left, slices=slice_hours(left), numbers=slice_numbers(place))


def wait_days(phase: PhaseWork) -> int:
    """Whole days; part of a day is a day, since nobody comes back the same evening."""
    return ceil(phase.wait)


def lay_out_yard(
    phases: Sequence[PhaseWork], opened: Sequence[OpenPhase], week: WorkWeek, as_of: datetime.date
) -> Yard | None:
    """The yard of the open phases, `week` at the pace really worked; None if the calendar is too short."""
    place = {one.phase.key: number for number, one in enumerate(opened)}
    over = {phase.key: _over(phase, as_of) for phase in phases if phase.done_on is not None}
    waits = {phase.key: wait_days(phase) for phase in phases}
    held = tuple(max((over[key] for key in one.phase.after if key in over), default=0) for one in opened)
    through = _calendar(opened, week, as_of, [*(waits[one.phase.key] for one in opened), *over.values()])
    if through is None:
        return None
    after = tuple(tuple((place[key], waits[key]) for key in one.phase.after if key in place) for one in opened)
    followed = {number for befores in after for number, _ in befores}
    own_waits = tuple(waits[one.phase.key] for one in opened)
    return Yard(
        after=after,
        held=tuple((day, through[day - 1] if day else 0) for day in held),
        waits=own_waits,
        through=through,
        orders=finishing_orders([frozenset(number for number, _ in befores) for befores in after]),
        done=max(over.values(), default=0),
        last_wait=min((wait for number, wait in enumerate(own_waits) if number not in followed), default=0),
    )


def _over(phase: PhaseWork, as_of: datetime.date) -> int:
    """The day, counted from `as_of`, on which a done phase's wait is over; not before day 0."""
    assert phase.done_on is not None
    return max((phase.done_on - as_of).days + wait_days(phase), 0)


def _calendar(
    opened: Sequence[OpenPhase], week: WorkWeek, as_of: datetime.date, waits: Sequence[int]
) -> tuple[int, ...] | None:
    """The steps past at the end of each day from `as_of` on; None if `HORIZON` comes before there are enough.

    Enough is: the worst outcome with the builder idle through every wait, as much again twice over and three
    weeks for looking at how much more a phase could take, and then the days of every wait once more.
    """
    steps = [floor(hours * GRID) for hours in week.hours]
    weeks = 3 * sum(wait // 7 + 1 for wait in waits) + 3
    enough = sum(one.slices[-1] for one in opened) + weeks * sum(steps)
    last = min(as_of.toordinal() + HORIZON, datetime.date.max.toordinal()) - sum(waits)
    through = [0]
    for day in range(as_of.toordinal() + 1, last):
        if through[-1] >= enough:
            return (*through, *[through[-1]] * (sum(waits) + 1))
        date = datetime.date.fromordinal(day)
        away = any(date in span for span in week.away)
        through.append(through[-1] + (0 if away else steps[date.weekday()]))
    return None
