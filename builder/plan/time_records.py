"""What the plan layer finds about time. Days are dates, work is exact hours, chances are exact shares."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from builder.words.rounding import decimal_text


class Flaw(Enum):
    """What can be wrong with the `after` of a plan."""

    TWICE = "two phases have one key"
    UNKNOWN = "a phase comes after one that is not in the plan"
    CIRCLE = "phases wait for each other in a circle"


@dataclass(frozen=True, slots=True, kw_only=True)
class NetworkFault:
    """One flaw. `keys`: the doubled key; the phase, then the phase it does not find; or the circle in order,
    each after the one that follows it and the last after the first.
    """

    flaw: Flaw
    keys: tuple[str, ...]

    @property
    def phases(self) -> tuple[str, ...]:
        """The keys among `keys` that are phases of the plan."""
        return self.keys[:1] if self.flaw is Flaw.UNKNOWN else self.keys


@dataclass(frozen=True, slots=True, kw_only=True)
class StepTimes:
    """When a step can and must happen, in the unit of the durations, counted from the start of the whole."""

    key: str
    early_start: Fraction
    early_finish: Fraction
    late_start: Fraction
    late_finish: Fraction
    total_float: Fraction
    """How late it may be without making the whole late: LS - ES."""
    free_float: Fraction
    """How late it may be without making the next step late."""

    @property
    def critical(self) -> bool:
        return self.total_float == 0


@dataclass(frozen=True, slots=True, kw_only=True)
class NetworkTimes:
    """The times of every step, in the order they were given, and the length of the whole."""

    steps: tuple[StepTimes, ...]
    length: Fraction

    @property
    def critical(self) -> tuple[str, ...]:
        """The keys without float, in order of their early start."""
        found = sorted((step.early_start, place) for place, step in enumerate(self.steps) if step.critical)
        return tuple(self.steps[place].key for _, place in found)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """Hours really worked for each hour of the work week, and what that rests on.

    `rate` is worked / promised, or None while no week says anything. `weeks` are those it rests on, `idle` of
    them without an episode; `unknown` weeks have an episode that gives no hours and stand outside the rate.
    """

    rate: Fraction | None
    worked: Fraction
    promised: Fraction
    weeks: int
    idle: int
    unknown: int


class Why(Enum):
    """Why there is no finish date."""

    NO_PHASES = "the plan has no phases"
    FLAWED = "phases wait for each other, or for one that is not there"
    NO_HOURS = "phases give no hours"
    NO_TIME = "the work week, the days away or the pace leave no hours to work in"
    TOO_FAR = "the finish lies beyond what a forecast can tell"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoFinish:
    """No date can be told, why, and which phases are to blame (none where no single one is)."""

    why: Why
    keys: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseForecast:
    """An open phase over all outcomes. Dates are medians, each by itself: half the outcomes are no later.

    `ready` is when its wait is over. `hangs` and `wait_hangs` are the shares of outcomes in which the finish
    hangs on its hours, on its wait. `slack` is how many whole weekends more work it could take before the
    likely finish moved; 0 for a phase the finish hangs on.
    """

    key: str
    hours_left: Fraction
    start: datetime.date
    finish: datetime.date
    ready: datetime.date
    hangs: Fraction
    wait_hangs: Fraction
    slack: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """When the build is ready: every outcome's date with the share of outcomes ready by then, rising to 1.

    `spent_up` names open phases that have used more than their high estimate and do not say how far they are:
    what they still need is unknown and counted as nothing, so that dates say "at least", chances "at most".
    """

    ready_by: tuple[tuple[datetime.date, Fraction], ...]
    phases: tuple[PhaseForecast, ...]
    spent_up: tuple[str, ...] = ()

    @property
    def p50(self) -> datetime.date:
        """The likely date: half of all outcomes are ready by then."""
        return self.date_for(Fraction(1, 2))

    @property
    def p80(self) -> datetime.date:
        """The safe date: four outcomes in five are ready by then."""
        return self.date_for(Fraction(4, 5))

    def date_for(self, chance: Fraction) -> datetime.date:
        """The first date by which at least this share of outcomes is ready."""
        return next(date for date, share in self.ready_by if share >= chance)

    def chance(self, by: datetime.date) -> Fraction:
        """The share of outcomes that are ready by the end of that day."""
        return max((share for date, share in self.ready_by if date <= by), default=Fraction(0))

    @staticmethod
    def told(chance: Fraction) -> str:
        """A chance with two decimals, half up; "1.00" and "0.00" only for what is so in every outcome.

        >>> Finish.told(Fraction(5, 6)), Finish.told(Fraction(960, 961)), Finish.told(Fraction(1))
        ('0.83', '0.99', '1.00')
        """
        if 0 < chance < 1:
            chance = min(max(chance, Fraction(1, 100)), Fraction(99, 100))
        return decimal_text(chance, 2)
