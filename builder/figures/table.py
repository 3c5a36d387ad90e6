"""ledger.csv: one row a line item, RFC 4180, UTF-8."""

from __future__ import annotations

import csv
import io

from builder.figures.account import Account
from builder.figures.figure import MONEY, amount_of
from builder.ledger.records import Line
from builder.words.rounding import significant_text

COLUMNS = (
    "id",
    "episode",
    "date",
    "phase",
    "kind",
    "what",
    "quantity",
    "unit",
    "source",
    "receipt",
    *MONEY,
    "unpriced",
    "unvalued",
    "note",
)
# How a formula begins, also in the wide letters of East Asia, which some spreadsheets take for the narrow ones.
_RUNS = ("=", "+", "-", "@", "\t", "\r", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def ledger_csv(account: Account) -> str:
    """The ledger as comma-separated values: CRLF after every record, a header first.

    Words that a spreadsheet would take for a formula are written with an apostrophe before them.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    writer.writerows(_row(line, account) for line in account.ledger.lines)
    return text.getvalue()


def _row(line: Line, account: Account) -> list[str]:
    item, currency = line.item, account.ledger.currency
    words = [
        line.ref,
        str(line.episode),
        line.date.isoformat(),
        line.phase or "",
        item.kind.value,
        item.what,
        significant_text(item.quantity.value) if item.quantity else "",
        item.quantity.unit.symbol if item.quantity else "",
        item.source.value,
        item.receipt or "",
    ]
    amounts = [currency.major(amount_of(line.parts, key)) for key in MONEY]
    counts = [str(line.parts.unpriced), str(line.parts.unvalued)]
    return [*map(_tame, words), *amounts, *counts, _tame(item.note or "")]


def _tame(text: str) -> str:
    return f"'{text}" if text.startswith(_RUNS) else text
