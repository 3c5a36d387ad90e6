"""The figures as a table for the terminal: phases, the build, and what needs saying."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence

from builder.figures.account import Account
from builder.figures.figure import Bound, amount_of, bound_of
from builder.ledger.parts import NOTHING, Parts
from builder.plan.budget_records import PhaseOutlook
from builder.plan.time_records import Finish

_COLUMNS = ("paid", "job_cost", "in_stock", "reusable", "elsewhere", "brought_in")


def tally(account: Account) -> str:
    """A table of phases with their totals, then the sentences that go with it."""
    return "\n".join([*_table(account), "", *_sentences(account)]) + "\n"


def _table(account: Account) -> Iterator[str]:
    head = ["phase", "status", "planned", "forecast", *(key.replace("_", " ") for key in _COLUMNS)]
    rows = [_phase(phase, account) for phase in account.phases]
    whole = account.sums.whole
    outlook = account.outlook
    total = [
        "the build",
        "",
        _told(outlook.planned, account),
        _told(outlook.forecast, account) + ("+" if whole.unpriced and outlook.forecast is not None else ""),
        *_amounts(whole, account),
    ]
    yield from _aligned([head, *rows, total])


def _phase(phase: PhaseOutlook, account: Account) -> list[str]:
    parts = account.sums.by_phase.get(phase.key, NOTHING)
    name = account.phase_name(phase.key) or "no phase"
    return [
        name,
        phase.status.value if phase.key else "",
        _told(phase.planned, account),
        _told(phase.forecast, account) + ("+" if parts.unpriced and phase.forecast is not None else ""),
        *_amounts(parts, account),
    ]


def _amounts(parts: Parts, account: Account) -> list[str]:
    marks = ("+" if bound_of(parts, key) is Bound.AT_LEAST and amount_of(parts, key) else "" for key in _COLUMNS)
    return [
        account.ledger.currency.major(amount_of(parts, key)) + mark for key, mark in zip(_COLUMNS, marks, strict=True)
    ]


def _told(minor: int | None, account: Account) -> str:
    return "" if minor is None else account.ledger.currency.major(minor)


def _aligned(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    widths = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    for number, row in enumerate(rows):
        cells = (
            text.ljust(width) if at < 2 else text.rjust(width)
            for at, (text, width) in enumerate(zip(row, widths, strict=True))
        )
        line = "  ".join(cells).rstrip()
        if number in (1, len(rows) - 1):
            yield "-" * (sum(widths) + 2 * (len(widths) - 1))
        yield line


def _sentences(account: Account) -> Iterator[str]:
    whole, currency = account.sums.whole, account.ledger.currency
    least = "at least " if whole.unpriced else ""
    yield _spent(account)
    if whole.unpriced:
        stand = "line without a price stands" if whole.unpriced == 1 else "lines without a price stand"
        yield f"+ at least: {whole.unpriced} {stand} below this figure"
    if whole.unvalued:
        lines = "line" if whole.unvalued == 1 else "lines"
        yield f"not valued: {whole.unvalued} {lines} whose replacement cost nobody knows"
    yield f"replacement cost: {'at least ' if whole.unvalued else ''}{currency.major(whole.replacement_cost)}"
    if whole.rework:
        lost = any(line.item.rework and line.parts.unpriced for line in account.ledger.lines)
        yield f"rework: {'at least ' if lost else ''}{currency.major(whole.rework)}"
    if whole.estimated:
        yield f"estimated: {least}{currency.major(whole.estimated)}"
    yield from _plan(account)
    yield from _wanted(account)


def _spent(account: Account) -> str:
    """What was spent; where more was taken in than paid, what came back."""
    whole, currency = account.sums.whole, account.ledger.currency
    least, most = ("at least ", "at most ") if whole.unpriced else ("", "")
    if whole.spent >= 0:
        return f"spent so far: {least}{currency.major(whole.spent)} {currency.code}"
    return f"spent so far: nothing, {most}{currency.major(-whole.spent)} {currency.code} more came back than was paid"


def _plan(account: Account) -> Iterator[str]:
    outlook, currency = account.outlook, account.ledger.currency
    least, most = ("at least ", "at most ") if account.sums.whole.unpriced else ("", "")
    if outlook.planned is not None and outlook.forecast is not None:
        difference = outlook.forecast - outlook.planned
        amount = currency.major(abs(difference))
        side = f"{least}{amount} over the plan" if difference >= 0 else f"{most}{amount} under the plan"
        told = side if difference or least else "on plan"
        name = "forecast" if account.finished is None else "came to"
        yield f"{name}: {least}{currency.major(outlook.forecast)}, {told}"
    if outlook.contingency is not None and outlook.left is not None:
        left = (
            f"{most}{currency.major(outlook.left)} left"
            if outlook.left >= 0
            else f"nothing left, {least}{currency.major(-outlook.left)} more than was kept"
        )
        taken = f"{least}{currency.major(outlook.taken)} taken by overruns"
        yield f"contingency: {currency.major(outlook.contingency)}, {taken}, {left}"
    timing = account.timing
    if account.finished is not None:
        yield _finished(account, account.finished)
    elif timing is not None and isinstance(timing.finish, Finish):
        chance = f", chance of {timing.ready_by} {timing.chance_told}" if timing.chance is not None else ""
        yield f"ready: likely {timing.finish.p50}, safe {timing.finish.p80}{chance} (as of {timing.as_of})"


def _finished(account: Account, day: datetime.date) -> str:
    ready_by = account.journal.settings.ready_by
    told = f"finished: {day}" if account.is_over else f"done, and ready {day} when the last wait is over"
    if ready_by is None:
        return told
    days = abs((ready_by - day).days)
    if not days:
        return f"{told}, on the promised day"
    how_many = "1 day" if days == 1 else f"{days} days"
    return f"{told}, {how_many} {'before' if day < ready_by else 'after'} the promise of {ready_by}"


def _wanted(account: Account) -> Iterator[str]:
    """What the plan wants found, not bought, and is not found yet."""
    for phase in account.phases:
        for match in phase.matches:
            for planned in match.planned:
                if planned.to_find and not match.refs:
                    size = f", {planned.item.size.text}" if planned.item.size else ""
                    count = f"{planned.quantity} of " if planned.quantity else ""
                    yield f"still wanted: {count}{planned.item.what}{size} ({phase.key})"
