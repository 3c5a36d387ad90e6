"""The work week: which hours of which days can be worked, and when so many of them are over."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.words.span import Span

HORIZON = 40 * 365
"""How many days ahead anything is looked for; what is not over by then has no date."""

_DAY = datetime.timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkWeek:
    """Hours that can be worked on each weekday, Monday first, and the days on which nobody is there."""

    hours: tuple[Fraction, ...]
    away: tuple[Span, ...] = ()

    def __post_init__(self) -> None:
        if len(self.hours) != 7 or any(hours < 0 for hours in self.hours):
            raise ValueError(f"a work week has seven days of no fewer than no hours: {self.hours}")

    @property
    def week(self) -> Fraction:
        """The hours of one week in which nobody is away."""
        return sum(self.hours, Fraction(0))

    def on(self, day: datetime.date) -> Fraction:
        """The hours that can be worked on that day."""
        return Fraction(0) if any(day in span for span in self.away) else self.hours[day.weekday()]

    def scaled(self, rate: Fraction) -> WorkWeek:
        """The same week at another pace, or with more hands: every hour counts `rate` hours."""
        return WorkWeek(hours=tuple(hours * rate for hours in self.hours), away=self.away)


def work_week(hours: Mapping[int, Fraction], away: tuple[Span, ...] = ()) -> WorkWeek:
    """A work week from hours by weekday (0 is Monday, as in `date.weekday`); other days have none."""
    if unknown := set(hours).difference(range(7)):
        raise ValueError(f"weekdays run from 0 to 6, not {sorted(unknown)}")
    return WorkWeek(hours=tuple(hours.get(weekday, Fraction(0)) for weekday in range(7)), away=away)


def worked_by(week: WorkWeek, start: datetime.date, hours: Fraction) -> datetime.date | None:
    """The date on which `hours` more hours have been worked, the first on the day after `start`.

    No hours at all are over on `start` itself. None if that day is not within `HORIZON`, as when no day of
    the week has hours or somebody is away for good.
    """
    if hours <= 0:
        return start
    left = hours
    for day in _days_after(start) if week.week else ():
        left -= week.on(day)
        if left <= 0:
            return day
    return None


def hours_between(week: WorkWeek, start: datetime.date, end: datetime.date) -> Fraction:
    """The hours that can be worked after `start` and up to the end of `end`: `worked_by` turned around."""
    return sum((week.on(day) for day in _days_after(start, (end - start).days)), Fraction(0))


def weekends_between(week: WorkWeek, start: datetime.date, end: datetime.date) -> int:
    """How many weeks, Monday to Sunday, have hours to work after `start` and up to the end of `end`."""
    days = _days_after(start, (end - start).days)
    return len({monday(day) for day in days if week.on(day)})


def monday(day: datetime.date) -> datetime.date:
    """The Monday of the week that holds `day`: it keeps a Saturday and its Sunday together."""
    return day - day.weekday() * _DAY


def _days_after(start: datetime.date, count: int = HORIZON) -> Iterator[datetime.date]:
    last = min(start.toordinal() + count, datetime.date.max.toordinal())
    return (datetime.date.fromordinal(day) for day in range(start.toordinal() + 1, last + 1))
