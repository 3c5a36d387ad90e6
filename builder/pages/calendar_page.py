"""The calendar of a build, drawn and as a table: phases worked and to come, waits, the dates that matter."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from builder.figures.account import Account
from builder.journal.records.plan import Phase
from builder.pages.calendar import Calendar, DateSign, Month, PhaseRow, Sign, Span, Stretch, draw_calendar
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.timewords import months_between, years_among
from builder.pages.wording import Words
from builder.plan.time_records import Finish, PhaseForecast

_DAY = datetime.timedelta(days=1)


def calendar_drawing(account: Account, words: Words) -> str:
    """The drawing; "" when there is nothing to put on it."""
    rows = tuple(_row(phase, account) for phase in account.journal.plan.phases)
    days = [day for row in rows for stretch in row.stretches for day in (stretch.first, stretch.last)]
    days += [day.toordinal() for day, _ in _dates(account)]
    if not days:
        return ""
    months = months_between(datetime.date.fromordinal(min(days)), datetime.date.fromordinal(max(days)))
    years = years_among(months)
    return draw_calendar(
        Calendar(
            key="calendar",
            title=words.say("The phases on the calendar"),
            description=_described(account, words),
            rows=rows,
            signs=tuple(_signs(account, words, year=bool(years))),
            months=tuple(Month(day=month.toordinal(), label=words.month(month)) for month in months),
            years=tuple(Month(day=month.toordinal(), label=words.year(month)) for month in years),
            span_labels=(
                (Span.WORKED, words.say("worked")),
                (Span.AHEAD, words.say("to come, as forecast")),
                (Span.WAIT, words.say("waiting")),
            ),
            worked_label=words.say("days worked on"),
        )
    )


def _row(phase: Phase, account: Account) -> PhaseRow:
    days = worked_days(phase.key, account)
    stretches = []
    if days:
        stretches.append(Stretch(first=days[0].toordinal(), last=days[-1].toordinal(), span=Span.WORKED))
    done = done_on(phase.key, account)
    forecast = forecast_of(phase.key, account)
    if done and phase.wait:
        stretches.append(_wait(done, done + datetime.timedelta(days=int(phase.wait))))
    if forecast is not None:
        stretches.append(Stretch(first=forecast.start.toordinal(), last=forecast.finish.toordinal(), span=Span.AHEAD))
        if forecast.ready > forecast.finish:
            stretches.append(_wait(forecast.finish, forecast.ready))
    return PhaseRow(label=phase.name, stretches=tuple(stretches), worked_on=tuple(day.toordinal() for day in days))


def _wait(after: datetime.date, until: datetime.date) -> Stretch:
    return Stretch(first=(after + _DAY).toordinal(), last=until.toordinal(), span=Span.WAIT)


def worked_days(key: str, account: Account) -> list[datetime.date]:
    """The days of the episodes that belong to a phase or give hours to it, in order."""
    days: set[datetime.date] = set()
    for episode in account.journal.episodes:
        if episode.phase == key or any(told.phase == key for told in episode.hours):
            count = (episode.dates.last - episode.dates.first).days
            days |= {episode.dates.first + datetime.timedelta(days=at) for at in range(min(count, 13) + 1)}
    return sorted(days)


def done_on(key: str, account: Account) -> datetime.date | None:
    """The day a phase was called done."""
    return next((one.date for one in account.journal.episodes if any(told.text == key for told in one.done)), None)


def forecast_of(key: str, account: Account) -> PhaseForecast | None:
    """When an open phase is forecast."""
    timing = account.timing
    if timing is None or not isinstance(timing.finish, Finish):
        return None
    return next((one for one in timing.finish.phases if one.key == key), None)


_SAID = {
    Sign.TODAY: "as of {date}",
    Sign.PROMISED: "promised for {date}",
    Sign.LIKELY: "likely {date}",
    Sign.SAFE: "safe {date}",
}


def _dates(account: Account) -> Iterator[tuple[datetime.date, Sign]]:
    """The dates that matter, as far as they are known."""
    timing, ready_by = account.timing, account.journal.settings.ready_by
    if timing is not None:
        yield timing.as_of, Sign.TODAY
    if ready_by is not None:
        yield ready_by, Sign.PROMISED
    if account.finished is not None:
        yield account.finished, Sign.LIKELY
    elif timing is not None and isinstance(timing.finish, Finish):
        yield timing.finish.p50, Sign.LIKELY
        yield timing.finish.p80, Sign.SAFE


def _signs(account: Account, words: Words, *, year: bool) -> Iterator[DateSign]:
    for day, sign in _dates(account):
        date = words.date(day, "medium") if year else words.month_day(day)
        over = sign is Sign.LIKELY and account.is_over
        label = words.say("finished {date}" if over else _SAID[sign], date=date)
        yield DateSign(day=day.toordinal(), sign=sign, label=label)


def _described(account: Account, words: Words) -> str:
    signs = [sign.label for sign in _signs(account, words, year=False)]
    phases = [phase.name for phase in account.journal.plan.phases]
    told = words.say("{phases}; {dates}.", phases=words.listing(phases), dates=words.listing(signs))
    return told[:-1] if told.endswith("..") else told  # a month may be short for another word, with a point of its own


def calendar_table(account: Account, words: Words) -> Table:
    """The same as a table."""
    rows = []
    for phase in account.journal.plan.phases:
        days, done, forecast = (
            worked_days(phase.key, account),
            done_on(phase.key, account),
            forecast_of(phase.key, account),
        )
        begun = days[0] if days else forecast.start if forecast else None
        end = done or (forecast.finish if forecast else None)
        rows.append(
            Row(
                cells=(
                    Cell(text=phase.name),
                    Cell(
                        text=words.date(begun) if begun else "",
                        small="" if days or not begun else words.say("as forecast"),
                    ),
                    Cell(
                        text=words.date(end) if end else "",
                        small="" if done or not end else words.say("as forecast"),
                    ),
                    Cell(text=words.days(phase.wait) if phase.wait else ""),
                    Cell(text=words.whole(forecast.slack) if forecast else ""),
                    Cell(text=words.percent(forecast.hangs) if forecast else ""),
                )
            )
        )
    return without_empty(
        Table(
            caption=words.say("The calendar as a table"),
            columns=(
                Column(label=words.say("Phase"), role="what"),
                Column(label=words.say("Begun"), role="lead"),
                Column(label=words.say("Done"), role="lead"),
                Column(label=words.say("Wait after it"), role="part"),
                Column(label=words.say("Weekends of slack"), role="part"),
                Column(label=words.say("The finish hangs on it in"), role="part"),
            ),
            rows=tuple(rows),
        ),
        keep=("what",),
    )
