"""A table of amounts, from a spreadsheet or a bank, to item lines for editing. Nothing is guessed silently."""

from __future__ import annotations

import csv
import io
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

    Amounts below zero are written without their sign: banks write what was paid so. Each is told.
    """
    rows = _rows(text)
    head = [_one_line(name) for name in rows[0]] if rows else []
    at = {name: _column(head, name) for name in (columns.what, columns.amount)}
    for number, row in enumerate(rows[1:], 2):
        if not any(cell.strip() for cell in row):
            continue
        yield from _line(number, row, at[columns.what], at[columns.amount], columns.decimal)


def _rows(text: str) -> list[list[str]]:
    """The rows, by the mark between columns that the first line has most of."""
    first = text.lstrip("\ufeff").split("\n", 1)[0]
    mark = max(";\t,", key=first.count)
    try:
        return list(csv.reader(io.StringIO(text.lstrip("\ufeff")), delimiter=mark))
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
        yield f"# row {number}: {error.found}: {name} {written}"
        return
    yield from NewLine(kind="material", what=name, values=(("cost", cost),)).written()


def _plain(text: str, decimal: str) -> str:
    """An amount with a point, without sign, spaces and thousands marks; the decimal mark is as told."""
    thousands = "," if decimal == "." else "."
    bare = text.replace("\N{NO-BREAK SPACE}", "").replace(" ", "").lstrip("-+\N{MINUS SIGN}")
    groups = bare.partition(decimal)[0].split(thousands)
    if len(groups) > 1 and (not all(len(group) == 3 for group in groups[1:]) or not 1 <= len(groups[0]) <= 3):
        raise Unreadable(f"{text} is no amount with {decimal} before the cents", "an amount")
    plain = bare.replace(thousands, "").replace(decimal, ".")
    read_number(plain)
    return plain
