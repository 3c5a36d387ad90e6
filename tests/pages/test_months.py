"""The months a drawing spans, and under which of them a year is told."""

from __future__ import annotations

from datetime import date

import pytest

from builder.pages.timewords import months_between, years_among


def told(first: date, last: date) -> list[tuple[int, int]]:
    """Year and month of each place where a year is told."""
    return [(month.year, month.month) for month in years_among(months_between(first, last))]


def test_every_first_of_a_month_is_there() -> None:
    """The days at both ends count, if they are firsts."""
    assert months_between(date(2026, 12, 1), date(2027, 2, 1)) == (
        date(2026, 12, 1),
        date(2027, 1, 1),
        date(2027, 2, 1),
    )
    assert months_between(date(2026, 12, 2), date(2026, 12, 31)) == ()
    assert months_between(date(9999, 11, 2), date(9999, 12, 31)) == (date(9999, 12, 1),)


@pytest.mark.parametrize(
    ("first", "last", "where"),
    [
        (date(2026, 1, 1), date(2026, 12, 31), []),
        (date(2026, 11, 5), date(2027, 3, 1), [(2027, 1)]),
        (date(2025, 4, 1), date(2027, 2, 1), [(2025, 4), (2026, 1), (2027, 1)]),
        (date(2026, 1, 1), date(2027, 1, 1), [(2026, 1), (2027, 1)]),
    ],
)
def test_years_are_told_where_there_are_several(first: date, last: date, where: list[tuple[int, int]]) -> None:
    """Under each January, and under the first month where its year goes on for half a year."""
    assert told(first, last) == where
