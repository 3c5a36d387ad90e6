"""Good ways to cut, quickly: fill one board after another, and learn from it what each item is worth.

Sequential value correction (G. Scheithauer and G. Belov describe it for cutting stock; from memory): every item has
a value, each board takes the longest piece left and the most valuable filling beside it, and the items on
a board that came out dear are worth more in the next round.
"""

from __future__ import annotations

from builder.takeoff.cutting.boards import Boards
from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.knapsack import best_filling
from builder.takeoff.cutting.task import Packing, Pattern, Task

# Values are whole numbers; this many make one of a stock's cost.
_FINE = 1 << 40


class Sequence:
    """The values of the items, corrected by every round."""

    def __init__(self, task: Task, effort: Effort) -> None:
        self._task, self._effort = task, effort
        self._lengths = [item.length for item in task.items]
        self._shares = _shares(task)
        self._values = [
            share if item.outside is None else item.outside
            for item, share in zip(task.items, self._shares, strict=True)
        ]

    def fill(self, begun: Boards) -> Packing | None:
        """Go on from `begun` (which stays as it is); None if what must be cut does not fit."""
        boards = begun.copy()
        while pattern := self._best(boards):
            times = boards.times(pattern)
            boards.cut(pattern, times)
            self._correct(boards, pattern, times)
        return boards.packing()

    def _best(self, boards: Boards) -> Pattern | None:
        """The board with the most value for its cost, or the most value where boards cost nothing."""
        first = next((item for item, left in enumerate(boards.rest) if left and self._must(boards, item)), None)
        best: tuple[int, int] | None = None
        chosen: Pattern | None = None
        for stock in range(len(self._task.stocks)):
            pattern = self._filled(boards, stock, first) if boards.may_use(stock) else None
            if pattern is not None:
                value = sum(self._values[item] * many for item, many in pattern[1])
                rank = (value * _FINE // (self._task.stocks[stock].cost or _FINE), -stock)
                if best is None or rank > best:
                    best, chosen = rank, pattern
        return chosen

    def _must(self, boards: Boards, item: int) -> bool:
        """Whether the longest piece goes first: where everything has to be cut, it is the hardest to place."""
        fits = any(
            boards.may_use(number) and stock.length >= self._lengths[item]
            for number, stock in enumerate(self._task.stocks)
        )
        return fits and self._task.items[item].outside is None

    def _filled(self, boards: Boards, stock: int, first: int | None) -> Pattern | None:
        room, rest = self._task.stocks[stock].length, boards.rest[:]
        if first is not None:
            room -= self._lengths[first]
            rest[first] -= 1
        if room < 0:
            return None
        taken = dict(best_filling(self._values, self._lengths, rest, room, self._effort).taken)
        if first is not None:
            taken[first] = taken.get(first, 0) + 1
        return (stock, tuple(sorted(taken.items()))) if taken else None

    def _correct(self, boards: Boards, pattern: Pattern, times: int) -> None:
        stock, taken = pattern
        cost = self._task.stocks[stock].cost
        total = sum(self._shares[item] * many for item, many in taken)
        for item, many in taken:
            if cost and self._task.items[item].outside is None:
                fair = self._shares[item] * cost * _FINE // total
                weight = (boards.rest[item] + self._task.items[item].count) // (many * times)
                self._values[item] = (weight * self._values[item] + fair) // (weight + 1)


def _shares(task: Task) -> list[int]:
    """What an item may take of a board's cost: its length, and up to a twentieth more for the longest."""
    longest = max(stock.length for stock in task.stocks)
    unit = min((stock.cost * _FINE // stock.length for stock in task.stocks), default=0)
    return [item.length * (20 * longest + item.length) * unit // (21 * longest) + 1 for item in task.items]
