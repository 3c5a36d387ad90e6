"""The figures as data: what figures.json and `tally --json` hold.

Amounts are decimal strings in major units; measured values have ten significant digits; keys are the words of
the ledger with underscores. Extended, never bent: outside programs read this.
"""

from __future__ import annotations

import io
import json
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


def figures_data(account: Account) -> Data:
    """Everything, as plain data ready for JSON."""
    journal, currency = account.journal, account.ledger.currency
    return {
        "format": FORMAT,
        "title": journal.settings.title,
        "currency": currency.code,
        "minor_units": currency.digits,
        "totals": _totals(account.sums.whole, currency)
        | {
            "planned": _money(account.outlook.planned, currency),
            "forecast": _money(account.outlook.forecast, currency),
            "contingency": _money(account.outlook.contingency, currency),
            "contingency_taken": _money(account.outlook.taken, currency),
            "contingency_left": _money(account.outlook.left, currency),
        },
        "phases": [_phase(phase, account) for phase in account.phases],
        "episodes": [_episode(episode, account) for episode in journal.episodes],
        "items": [_item(line, account) for line in account.ledger.lines],
        "receipts": [_receipt(receipt, currency) for receipt in account.ledger.receipts],
        "stock": [_left(left, currency) for left in account.ledger.stock],
        "reusable": [_left(left, currency) for left in account.ledger.reusable],
        "from_earlier": [_left(left, currency) for left in account.ledger.from_earlier],
        "variances": [_variance(match, currency) for phase in account.phases for match in phase.matches],
        "takeoff": {takeoff.name: _takeoff(takeoff) for takeoff in account.takeoffs},
        "schedule": _schedule(account),
    }


def data_text(account: Account) -> str:
    """figures.json: the same bytes for the same journal."""
    text = io.StringIO()  # and not a list of a million pieces, which takes ten times the room
    json.dump(figures_data(account), text, ensure_ascii=False, indent=1)
    return text.getvalue() + "\n"


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
    variance = match.variance
    return {
        "key": match.key,
        "phase": match.phase,
        "planned_quantity": _value(match.planned_quantity),
        "quantity": _value(match.quantity),
        "unit": match.planned_quantity.unit.symbol if match.planned_quantity else None,
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
