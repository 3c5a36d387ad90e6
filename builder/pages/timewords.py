"""The forecast of the finish in words."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.figures.account import Account
from builder.pages.wording import Words
from builder.plan.time_records import Finish, NoFinish, Why
from builder.plan.timing import Timing

_WHY = {
    Why.NO_PHASES: "the plan has no phases",
    Why.FLAWED: "phases wait for each other",
    Why.NO_HOURS: "the plan gives no hours for {phases}",
    Why.NO_TIME: "there are no hours to work in",
    Why.TOO_FAR: "it is too far away to be told",
}


def finished_words(account: Account, words: Words) -> str:
    """When a build was finished, and how that stands to the promise; "" while a phase is open."""
    day, ready_by = account.finished, account.journal.settings.ready_by
    if day is None:
        return ""
    told = words.say(
        "Finished {date}" if account.is_over else "Done, and ready {date} when the last wait is over",
        date=words.date(day),
    )
    if ready_by is None:
        return told
    days = abs((ready_by - day).days)
    if not days:
        return words.say("{finished}, on the promised day", finished=told)
    if day < ready_by:
        return words.count(
            days,
            "{finished}, {n} day before the promise",
            "{finished}, {n} days before the promise",
            finished=told,
        )
    return words.count(
        days, "{finished}, {n} day after the promise", "{finished}, {n} days after the promise", finished=told
    )


def ready_small(account: Account, words: Words) -> str:
    """Likely and safe date, briefly, or when it was finished; "" where there is no forecast."""
    timing = account.timing
    if account.finished is not None:
        return finished_words(account, words)
    if timing is None or not isinstance(timing.finish, Finish):
        return ""
    return words.say(
        "likely {likely}, safe {safe}",
        likely=words.month_day(timing.finish.p50),
        safe=words.month_day(timing.finish.p80),
    )


def months_between(first: datetime.date, last: datetime.date) -> tuple[datetime.date, ...]:
    """The first of every month among the days, both included."""
    return tuple(_months(first, last))


def _months(first: datetime.date, last: datetime.date) -> Iterator[datetime.date]:
    month = first.replace(day=1)
    while month <= last:
        if month >= first:
            yield month
        if (month.year, month.month) == (datetime.MAXYEAR, 12):
            return
        month = (month + datetime.timedelta(days=32)).replace(day=1)


def years_among(months: Sequence[datetime.date]) -> tuple[datetime.date, ...]:
    """Under which months a year's number stands: every January, and the first where its year goes on for long.

    None where all are of one year: a drawing of one year says which nowhere.
    """
    if len({month.year for month in months}) < 2:
        return ()
    return tuple(month for at, month in enumerate(months) if month.month == 1 or (at == 0 and month.month <= 6))


def chance_words(timing: Timing, words: Words) -> str:
    """The chance of being ready by the promised date, in per cent."""
    told = timing.chance_told
    return "" if told is None else words.percent(Fraction(told))


def why_not(finish: NoFinish, names: list[str], words: Words) -> str:
    """Why no date can be told."""
    return words.say(_WHY[finish.why], phases=words.listing(names))
