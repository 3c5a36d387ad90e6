"""The pace: hours really worked against the hours of the work week, learnt from the episodes so far."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.plan.time_records import Pace
from builder.plan.worktime import WorkWeek, monday
from builder.words.span import Span

_WEEK = datetime.timedelta(weeks=1)
_DAY = datetime.timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """An episode's days and the hours worked in them; None when it does not say."""

    days: Span
    hours: Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stretch:
    """Whole weeks, Monday to Sunday, that episodes tell of together, and what they say."""

    days: Span
    told: tuple[Worked, ...]

    @property
    def hours(self) -> Fraction | None:
        known = [worked.hours for worked in self.told if worked.hours is not None]
        return sum(known, Fraction(0)) if len(known) == len(self.told) else None


def learn_pace(week: WorkWeek, begun: datetime.date, as_of: datetime.date, episodes: Sequence[Worked]) -> Pace:
    """Hours worked / hours promised, over the weeks from `begun` (or the first episode) to `as_of`.

    What an honest forecaster takes a week for:

    - A week with an episode tells of the whole week, whatever day it is dated, also the week of `as_of`.
    - Episodes over several weeks are taken with their weeks together: nobody knows what fell on which.
    - Where an episode gives no hours, its weeks are unknown, not zero, and stand outside the rate.
    - A week without an episode, once it is over, is a week in which nothing was worked: rain and family
      visits will come again. A week with no hours to work, because of `away`, promises nothing and breaks no
      promise.
    - Hours on other days than the work week's, or while away, were worked all the same.

    The rate may be above 1. It is None, not 1, while nothing is known.
    """
    told = sorted((worked for worked in episodes if worked.days.first <= as_of), key=lambda worked: worked.days)
    start = min([begun, *(worked.days.first for worked in told)])
    stretches = _stretches(told)
    known = [stretch for stretch in stretches if stretch.hours is not None]
    idle = _idle_weeks(start, as_of, stretches)
    worked = sum((stretch.hours or Fraction(0) for stretch in known), Fraction(0))
    of_known = _promises(week, start, [stretch.days for stretch in known])
    of_idle = _promises(week, start, idle)
    promised = sum(of_known, Fraction(0)) + sum(of_idle, Fraction(0))
    return Pace(
        rate=worked / promised if promised else None,
        worked=worked,
        promised=promised,
        weeks=_kept(of_known) + _kept(of_idle),
        idle=_kept(of_idle),
        unknown=sum(_week_count(stretch.days) for stretch in stretches if stretch.hours is None),
    )


def _stretches(told: Sequence[Worked]) -> list[_Stretch]:
    """Episodes in order of date, those that share a week taken together."""
    stretches: list[_Stretch] = []
    for worked in told:
        first, last = monday(worked.days.first), monday(worked.days.last) + 6 * _DAY
        if stretches and first <= stretches[-1].days.last:
            before = stretches.pop()
            span = Span(first=before.days.first, last=max(last, before.days.last))
            stretches.append(_Stretch(days=span, told=(*before.told, worked)))
        else:
            stretches.append(_Stretch(days=Span(first=first, last=last), told=(worked,)))
    return stretches


def _idle_weeks(start: datetime.date, as_of: datetime.date, told: Sequence[_Stretch]) -> list[Span]:
    """The weeks that are over by `as_of` and of which no episode tells."""
    first = monday(start)
    count = (monday(as_of + _DAY) - first) // _WEEK
    mondays = [first + place * _WEEK for place in range(count)]
    spoken_for = {stretch.days.first + place * _WEEK for stretch in told for place in range(_week_count(stretch.days))}
    return [Span(first=day, last=day + 6 * _DAY) for day in mondays if day not in spoken_for]


def _promises(week: WorkWeek, start: datetime.date, spans: Iterable[Span]) -> list[Fraction]:
    """The hours promised in each week of the spans, nothing before `start`."""
    whole, found = week.week, list[Fraction]()
    for span in spans:
        if span.first >= start and not any(away.first <= span.last and span.first <= away.last for away in week.away):
            found += [whole] * _week_count(span)  # as nearly every week is: a journal may have thousands
        else:
            found += _week_by_week(week, start, span)
    return found


def _week_by_week(week: WorkWeek, start: datetime.date, span: Span) -> list[Fraction]:
    days = [span.first + place * _DAY for place in range((span.last - span.first).days + 1)]
    hours = [week.on(day) if day >= start else Fraction(0) for day in days]
    return [sum(hours[place : place + 7], Fraction(0)) for place in range(0, len(hours), 7)]


def _kept(promises: Sequence[Fraction]) -> int:
    """How many weeks promised anything: those the pace rests on."""
    return sum(1 for hours in promises if hours)


def _week_count(span: Span) -> int:
    return ((span.last - span.first).days + 1) // 7
