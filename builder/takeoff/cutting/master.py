"""The linear program over the patterns known so far: a revised simplex in fixed-point whole numbers.

Numbers are whole multiples of 1/ONE, so every machine takes the same pivots. They are rounded all the same:
nothing here is taken as proven. The bound is worked out from the prices exactly, in relaxation.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.takeoff.cutting.packed import ONE, SHIFT, Places

_TINY = ONE >> 22
# Right-hand sides are moved apart by this much, so that the simplex does not turn in circles.
_NUDGE = ONE >> 26

Entries = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Column:
    """What one unit costs (in 1/ONE) and its whole-number entries as (row, number)."""

    cost: int
    entries: Entries


class Master:
    """Minimise cost over columns x >= 0 whose rows add up to the right-hand sides `needs` (whole, >= 0).

    `prices` are those of the rows, `basis` the column at each place of the basis. The inverse of the basis is
    kept by columns, each packed into one number.
    """

    def __init__(self, needs: Sequence[int], basis: Sequence[Column]) -> None:
        """`basis` has one column for every row: a single 1 in that row."""
        size = len(needs)
        self.columns = list(basis)
        self.basis = list(range(size))
        self.prices = [column.cost for column in basis]
        self._places = Places(size)
        self._inverse = [self._places.pack([0] * row + [ONE]) for row in range(size)]
        self._levels = self._places.pack([need * ONE + (row + 1) * _NUDGE for row, need in enumerate(needs)])
        self._waiting: list[int] = []

    def add(self, column: Column) -> None:
        self.columns.append(column)

    def levels(self) -> list[int]:
        """How much of each column of the basis is used, in 1/ONE."""
        return self._places.unpack(self._levels)

    def cost(self) -> int:
        """What the present levels cost, in 1/ONE."""
        costs = (self.columns[column].cost for column in self.basis)
        return sum(cost * level for cost, level in zip(costs, self.levels(), strict=True)) >> SHIFT

    def reduced(self, column: Column) -> int:
        """What one unit of `column` would change the cost by, at the present prices."""
        prices = self.prices
        return column.cost - sum([prices[row] * number for row, number in column.entries])

    def improve(self) -> int:
        """One pivot on a column that promises to save; gives back the work done, 0 if none promises anything."""
        candidates = self._promising(self._waiting) or self._promising(range(len(self.columns)))
        if not candidates:
            return 0
        saving, entering = min(candidates)
        self._waiting = [column for _, column in sorted(candidates)[1:20]]
        turned = sum(self._inverse[row] * number for row, number in self.columns[entering].entries)
        leaving = self._leaving(self._places.unpack(turned))
        if leaving is None:
            return 0
        self._pivot(entering, leaving, turned, saving)
        return 8 * len(self.prices) + len(self.columns)

    def _promising(self, columns: Sequence[int]) -> list[tuple[int, int]]:
        reduced = [(self.reduced(self.columns[column]), column) for column in columns]
        return [each for each in reduced if each[0] < -_TINY]

    def _leaving(self, turned: list[int]) -> int | None:
        steps = [
            (max(level, 0) * ONE // turn, self.basis[place], place)
            for place, (level, turn) in enumerate(zip(self.levels(), turned, strict=True))
            if turn > _TINY
        ]
        return min(steps)[2] if steps else None

    def _pivot(self, entering: int, leaving: int, turned: int, saving: int) -> None:
        places = self._places
        pivot = places.at(turned, leaving)
        change = turned - places.pack([0] * leaving + [ONE])
        line = [(places.at(column, leaving) << SHIFT) // pivot for column in self._inverse]
        step = (places.at(self._levels, leaving) << SHIFT) // pivot
        self._inverse = [
            column - places.scaled(change, factor) if factor else column
            for column, factor in zip(self._inverse, line, strict=True)
        ]
        self._levels -= places.scaled(change, step)
        self.basis[leaving] = entering
        self.prices = [price + (saving * factor >> SHIFT) for price, factor in zip(self.prices, line, strict=True)]
