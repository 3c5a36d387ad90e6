"""Days of the calendar as the journal writes them, and what other ways of writing them meant."""

from __future__ import annotations

import calendar
import datetime
import re

from builder.words.misread import clipped
from builder.words.numbers import Unreadable

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


def read_date(text: str) -> datetime.date:
    """A day of the calendar written as ISO 8601, `2026-04-18`."""
    expected = "a date such as 2026-04-18 (year, month, day)"
    if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII):
        raise Unreadable(f"{clipped(text)} is not a date", expected, _meant(text))
    year, month, day = (int(part) for part in text.split("-"))
    try:
        return datetime.date(year, month, day)
    except ValueError:
        raise Unreadable(f"{text} is a day that no calendar has", expected, _why(year, month)) from None


def _why(year: int, month: int) -> str:
    if not year:
        return "the year comes first"
    if not 1 <= month <= 12:
        return "the month comes second, from 01 to 12"
    return f"that month has {calendar.monthrange(year, month)[1]} days"


def _meant(text: str) -> str:
    """`write 2026-04-18` for 2026-4-18, 18.4.2026 or April 18, 2026.

    No guess where day and month cannot be told apart.
    """
    if len(text) > 40:
        return ""
    numbers = [int(one) for one in re.findall(r"\d{1,4}", text, re.ASCII)]
    word = re.search(r"[a-z]{3,}", text.lower())
    if word is not None and word[0][:3] in _MONTHS and len(numbers) == 2:
        return _write(max(numbers), _MONTHS.index(word[0][:3]) + 1, min(numbers))
    if word is not None or len(numbers) != 3 or re.search(r"\d{5}|[^-\d/. ]", text):
        return ""
    if numbers[0] > 31:
        return _write(*numbers)
    first, second, year = numbers
    if first <= 12 and second <= 12 and first != second:
        return "write the year, the month and the day, in this order"
    return _write(year, min(first, second), max(first, second))


def _write(year: int, month: int, day: int) -> str:
    try:
        return f"write {datetime.date(year, month, day)}" if year > 31 else "write the year with four digits, first"
    except ValueError:
        return ""
