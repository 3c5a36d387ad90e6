"""The figures as data: what figures.json and `tally --json` hold.

Amounts are decimal strings in major units; measured values have ten significant digits; keys are the words of
the ledger with underscores. Extended, never bent: outside programs read this.
"""

from __future__ import annotations

import io
import json
from collections.abc import Iterator
from fractions import Fraction

from builder.figures.account import Account
from builder.figures.figure import MONEY, amount_of
from builder.journal.records.episode import Episode
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.records import CostedReceipt, Left, Line
from builder.plan.budget_records import Match, PhaseOutlook
from builder.plan.time_records import Finish
from builder.takeoff.records import Takeoff
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.rounding import significant_text

FORMAT = 1
Data = dict[str, object]


def data_text(account: Account) -> str:
    """figures.json: the same bytes for the same journal. A line for each key, and for each entry of a list."""
    encode = json.JSONEncoder(ensure_ascii=False).encode
    text = io.StringIO()
    for number, (key, told) in enumerate(_all(account)):
        text.write(f'{"," if number else "{"}\n "{key}": ')
        if isinstance(told, Iterator):  # one by one: all of them as data take ten times the room
            entries = ",\n".join(f"  {encode(entry)}" for entry in told)
            text.write(f"[\n{entries}\n ]" if entries else "[]")
        else:
            text.write(encode(told))
    return text.getvalue() + "\n}\n"


def _all(account: Account) -> Iterator[tuple[str, object]]:
    """Every key with what it holds; a list as an iterator."""
    journal, currency, outlook = account.journal, account.ledger.currency, account.outlook
    yield "format", FORMAT
    yield "title", journal.settings.title
    yield "currency", currency.code
    yield "minor_units", currency.digits
    planned = {
        "planned": _money(outlook.planned, currency),
        "forecast": _money(outlook.forecast, currency),
        "contingency": _money(outlook.contingency, currency),
        "contingency_taken": _money(outlook.taken, currency),
        "contingency_left": _money(outlook.left, currency),
    }
    yield "totals", _totals(account.sums.whole, currency) | planned
    yield "phases", (_phase(phase, account) for phase in account.phases)
    yield "episodes", (_episode(episode, account) for episode in journal.episodes)
    yield "items", (_item(line, account) for line in account.ledger.lines)
    yield "receipts", (_receipt(receipt, currency) for receipt in account.ledger.receipts)
    yield "stock", (_left(left, currency) for left in account.ledger.stock)
    yield "reusable", (_left(left, currency) for left in account.ledger.reusable)
    yield "from_earlier", (_left(left, currency) for left in account.ledger.from_earlier)
    yield "variances", (_variance(match, currency) for phase in account.phases for match in phase.matches)
    yield "takeoff", {takeoff.name: _takeoff(takeoff) for takeoff in account.takeoffs}
    yield "schedule", _schedule(account)


def _money(minor: int | None, currency: Currency) -> str | None:
    return None if minor is None else currency.major(minor)


def number(value: Fraction) -> int | float:
    """A number for JSON that is no amount of money (hours)."""
    return int(value) if value.denominator == 1 else round(value.numerator / value.denominator, 6)


def _totals(parts: Parts, currency: Currency) -> Data:
    amounts: Data = {key: currency.major(amount_of(parts, key)) for key in MONEY}
    counts: Data = {
        "unpriced": parts.unpriced,
        "unvalued": parts.unvalued,
        "hours": number(parts.hours),
    }
    return amounts | counts


def _phase(phase: PhaseOutlook, account: Account) -> Data:
    currency = account.ledger.currency
    return {
        "key": phase.key,
        "name": account.phase_name(phase.key) or "no phase",
        "status": phase.status.value,
        "planned": _money(phase.planned, currency),
        "forecast": _money(phase.forecast, currency),
    } | _totals(account.sums.by_phase.get(phase.key, NOTHING), currency)


def _episode(episode: Episode, account: Account) -> Data:
    currency, sums = account.ledger.currency, account.sums
    return (
        {
            "number": episode.number,
            "slug": episode.slug,
            "title": episode.title,
            "date": episode.date.isoformat(),
            "phase": episode.phase,
        }
        | _totals(sums.by_episode[episode.number], currency)
        | {"running": _totals(sums.running[episode.number], currency)}
    )


def _item(line: Line, account: Account) -> Data:
    item = line.item
    return {
        "id": line.ref,
        "episode": line.episode,
        "kind": item.kind.value,
        "what": item.what,
        "quantity": _value(item.quantity),
        "unit": item.quantity.unit.symbol if item.quantity else None,
        "source": item.source.value,
        "phase": line.phase,
        "receipt": item.receipt,
        "file": item.place.file,
        "line": item.place.line,
    } | _totals(line.parts, account.ledger.currency)


def _value(quantity: Quantity | None) -> str | None:
    return None if quantity is None else significant_text(quantity.value)


def _receipt(receipt: CostedReceipt, currency: Currency) -> Data:
    return {
        "episode": receipt.episode,
        "key": receipt.key,
        "seller": receipt.seller,
        "goods": currency.major(receipt.goods),
        "discount": currency.major(receipt.discount),
        "delivery": currency.major(receipt.delivery),
        "tax": _money(receipt.tax, currency),
        "tax_included": receipt.tax_inside,
        "total": currency.major(receipt.total),
        "checked": receipt.checked,
        "unpriced": receipt.unpriced,
    }


def _left(left: Left, currency: Currency) -> Data:
    return {
        "id": left.ref,
        "material": left.material,
        "quantity": None if left.quantity is None else significant_text(left.quantity),
        "unit": left.unit.symbol if left.unit else None,
        "value": currency.major(left.value),
        "unpriced": left.unpriced,
    }


def _variance(match: Match, currency: Currency) -> Data:
    variance, quantity = match.variance, match.quantity
    if quantity is not None and match.planned_quantity is not None:
        quantity = quantity.to(match.planned_quantity.unit)
    counted = match.planned_quantity or quantity
    return {
        "key": match.key,
        "phase": match.phase,
        "planned_quantity": _value(match.planned_quantity),
        "quantity": _value(quantity),
        "unit": counted.unit.symbol if counted else None,
        "planned": currency.major(match.planned_cost),
        "job_cost": currency.major(match.job_cost),
        "price_variance": _money(variance.price, currency),
        "quantity_variance": _money(variance.quantity, currency),
        "total_variance": currency.major(variance.total),
        "items": list(match.refs),
    }


def _takeoff(takeoff: Takeoff) -> Data:
    return {
        "method": takeoff.method,
        "results": {
            result.key: {
                "value": significant_text(result.quantity.value),
                "unit": result.quantity.unit.symbol,
            }
            for result in takeoff.results
        },
        "proven": takeoff.proven,
        "bound": significant_text(takeoff.bound.quantity.value) if takeoff.bound else None,
    }


def _schedule(account: Account) -> Data | None:
    timing = account.timing
    if timing is None:
        return None
    finish = timing.finish
    return {
        "as_of": timing.as_of.isoformat(),
        "ready_by": timing.ready_by.isoformat() if timing.ready_by else None,
        "finish": {"p50": finish.p50.isoformat(), "p80": finish.p80.isoformat()}
        if isinstance(finish, Finish)
        else None,
        "chance": timing.chance_told,
    }
