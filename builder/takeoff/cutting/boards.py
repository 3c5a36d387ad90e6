"""Boards put together one after another, until nothing is left to cut."""

from __future__ import annotations

from builder.takeoff.cutting.task import Packing, Pattern, Task


class Boards:
    """What is cut so far. `rest` is how many of each item are still to be cut, `used` how many boards of each stock."""

    def __init__(self, task: Task) -> None:
        self._task = task
        self.rest = [item.count for item in task.items]
        self.used = [0] * len(task.stocks)
        self._cut: dict[Pattern, int] = {}

    def copy(self) -> Boards:
        twin = Boards(self._task)
        twin.rest, twin.used, twin._cut = self.rest[:], self.used[:], dict(self._cut)
        return twin

    def may_use(self, stock: int) -> bool:
        """Whether there is another board of it."""
        most = self._task.stocks[stock].most
        return most is None or self.used[stock] < most

    def times(self, pattern: Pattern) -> int:
        """How often the pattern can be cut without cutting more than is needed."""
        stock, taken = pattern
        most = self._task.stocks[stock].most
        left = [] if most is None else [most - self.used[stock]]
        return min([self.rest[item] // many for item, many in taken] + left)

    def cut(self, pattern: Pattern, times: int = 1) -> None:
        """Cut so many boards by `pattern`."""
        stock, taken = pattern
        self._cut[pattern] = self._cut.get(pattern, 0) + times
        self.used[stock] += times
        for item, many in taken:
            self.rest[item] -= many * times

    @property
    def cost(self) -> int:
        """Of the boards so far."""
        return sum(stock.cost * used for stock, used in zip(self._task.stocks, self.used, strict=True))

    def packing(self) -> Packing | None:
        """The packing so far with the rest left out; None if something is left that must not be."""
        outside = 0
        for item, left in zip(self._task.items, self.rest, strict=True):
            if left and item.outside is None:
                return None
            outside += left * (item.outside or 0)
        return Packing(boards=tuple(sorted(self._cut.items())), left=tuple(self.rest), cost=self.cost + outside)
