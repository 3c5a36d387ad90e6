"""A table of amounts, from a spreadsheet or a bank, to item lines for editing. Nothing is guessed silently."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass

from builder.journal.add_line import NewLine
from builder.words.numbers import Unreadable, read_number


@dataclass
class NotATable(Exception):
    """The text has no such columns; which it has."""

    found: str
    fix: str

    def __str__(self) -> str:
        return f"{self.found}; {self.fix}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Which columns say what it was and what it cost, and which mark stands before the cents."""

    what: str
    amount: str
    decimal: str = "."


def pasted_lines(text: str, columns: Columns) -> Iterator[str]:
    """A line of items for every row; a comment, with the row's number, for each that cannot be read.

    An amount that reads in two ways is told in a comment before its line, and so is one whose sign is not that of most.
    Amounts below zero are written without their sign: banks write what was paid so.
    """
    rows = _rows(text)
    head = [_one_line(name) for name in rows[0]] if rows else []
    at = {name: _column(head, name) for name in (columns.what, columns.amount)}
    odd = _rarer_sign([row[at[columns.amount]] for row in rows[1:] if at[columns.amount] < len(row)])
    for number, row in enumerate(rows[1:], 2):
        if not any(cell.strip() for cell in row):
            continue
        if at[columns.amount] < len(row) and _sign(row[at[columns.amount]]) == odd:
            yield f"# row {number} has the other sign than most: if money came back, write a return or a sale"
        yield from _line(number, row, at[columns.what], at[columns.amount], columns.decimal)


def _sign(cell: str) -> str:
    """`-` or `+` for an amount; "" for a cell that holds none."""
    return ("-" if re.match(r"\s*[-\N{MINUS SIGN}]", cell) else "+") if re.search("[0-9]", cell) else ""


def _rarer_sign(cells: list[str]) -> str | None:
    """The sign that fewer of the amounts have, `+` where as many have either; None where all have one."""
    below, above = ([_sign(cell) for cell in cells].count(sign) for sign in "-+")
    if not (below and above):
        return None
    return "-" if below < above else "+"


def _rows(text: str) -> list[list[str]]:
    """The rows, by the mark between columns that makes most of the heading."""
    text = text.lstrip("\ufeff")
    try:
        mark = max(";\t,", key=lambda one: len(next(csv.reader(io.StringIO(text), delimiter=one), [])))
        return list(csv.reader(io.StringIO(text), delimiter=mark))
    except csv.Error as error:
        raise NotATable(f"the table cannot be read as CSV ({error})", "look for a quote that is not closed") from None


def _one_line(cell: str) -> str:
    """What a cell says; a comment, or the name of a thing, has one line, and a cell may have several."""
    return " ".join(cell.split())


def _column(head: list[str], name: str) -> int:
    found = [at for at, other in enumerate(head) if other.casefold() == _one_line(name).casefold()]
    if len(found) != 1:
        raise NotATable(
            f"the table has {'no' if not found else 'more than one'} column {name}",
            f"its columns are: {', '.join(head) or 'none'}",
        )
    return found[0]


def _line(number: int, row: list[str], what: int, amount: int, decimal: str) -> Iterator[str]:
    if max(what, amount) >= len(row) or not row[what].strip():
        yield f"# row {number} has no name or no amount: {_one_line(' | '.join(row))}"
        return
    name, written = _one_line(row[what]), _one_line(row[amount])
    try:
        cost = _plain(written, decimal)
    except Unreadable as error:
        yield f"# row {number}: {error.found}{error.fix and f'; {error.fix}'}: {name} {written}"
        return
    if _IN_THOUSANDTHS.fullmatch(cost):
        other = _OTHER[decimal]
        yield f"# row {number}: {written} has three digits after its mark; if they are thousands, use --decimal {other}"
    yield from NewLine(kind="material", what=name, values=(("cost", cost),)).written()


def _plain(text: str, decimal: str) -> str:
    """An amount with a point, without sign, spaces and thousands marks; the decimal mark is as told."""
    bare = re.sub(r"\s*([.,])\s*", r"\1", text).lstrip("-+\N{MINUS SIGN} ")
    match = _AMOUNT[decimal].fullmatch(bare)
    if match is None:
        other = _OTHER[decimal]
        fix = f"use --decimal {other}" if _AMOUNT[other].fullmatch(bare) else ""
        if not fix and not re.fullmatch(r"[\d.,\s]+", bare, re.ASCII):
            read_number(bare)  # says what the letter or the sign in it is
        raise Unreadable(f"{text} is no amount with {decimal} before the cents", "an amount", fix)
    plain = f"{re.sub('[^0-9]', '', match['whole'])}{'.' if match['cents'] else ''}{match['cents'] or ''}"
    read_number(plain)
    return plain


def _amount(decimal: str) -> re.Pattern[str]:
    """Digits in one go or in threes with one mark between, the mark before the cents, and digits alone behind it."""
    thousands = re.escape(_OTHER[decimal])
    whole = rf"[0-9]*|[1-9][0-9]{{0,2}}(?P<gap>{thousands}|\s)[0-9]{{3}}(?:(?P=gap)[0-9]{{3}})*"
    return re.compile(rf"(?P<whole>{whole})(?:{re.escape(decimal)}(?P<cents>[0-9]+))?")


_OTHER = {".": ",", ",": "."}
_AMOUNT = {decimal: _amount(decimal) for decimal in _OTHER}
_IN_THOUSANDTHS = re.compile(r"[1-9][0-9]{0,2}\.[0-9]{3}")
