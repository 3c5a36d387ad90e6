"""The linear relaxation by column generation, and the bound that it proves.

Column generation after P. C. Gilmore and R. E. Gomory (from memory): the linear program over a few patterns
puts a price on each item, a knapsack finds the pattern worth most at those prices, until none is worth its
board. The bound is Lagrange's: for any prices p >= 0 and the most valuable filling K(j) of stock j,

    cost >= sum of count x p  +  sum over stocks of (cost(j) - K(j)) x boards,

with the boards of a stock at their least where the difference is positive and at their most where it is not.
Prices are whole numbers, so the bound is exact whatever rounding went on before.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.knapsack import Filling, best_filling
from builder.takeoff.cutting.master import Column, Entries, Master
from builder.takeoff.cutting.packed import ONE
from builder.takeoff.cutting.task import Pattern, Task

_TINY = ONE >> 22
# An item that may not be left out costs this many of the dearest boards while no pattern holds it.
_DEAR = 1000 * ONE


@dataclass(frozen=True, slots=True)
class Box:
    """The least and the most boards of every stock that are looked at."""

    least: tuple[int, ...]
    most: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Proof:
    """Prices per item, the most valuable filling per stock at those prices, and the bound, all in 1/ONE of a cost.

    No way to cut inside the box costs less than `bound`.
    """

    prices: tuple[int, ...]
    tops: tuple[int, ...]
    bound: int

    def cost(self, step: int) -> int:
        """The bound as a whole cost, rounded up to a multiple of `step`."""
        return -(-self.bound // (ONE * step)) * step


@dataclass(frozen=True, slots=True)
class Relaxation:
    """The best bound found, and the patterns the linear program uses with how often, in 1/ONE."""

    proof: Proof
    levels: tuple[tuple[Pattern, int], ...]


class Pool:
    """The patterns met so far, each once, in the order met."""

    def __init__(self) -> None:
        self._patterns: dict[Pattern, None] = {}

    def add(self, pattern: Pattern) -> None:
        self._patterns[pattern] = None

    def within(self, counts: Sequence[int], box: Box) -> Iterator[Pattern]:
        """Those that cut no more of any item than is needed, from a stock that may be used."""
        for pattern in self._patterns:
            if box.most[pattern[0]] and all(many <= counts[item] for item, many in pattern[1]):
                yield pattern


class Generation:
    """Column generation for cutting `counts` of the items inside `box`; new patterns go into `pool`.

    Inside, costs and prices are in 1/ONE of the dearest board.
    """

    def __init__(self, task: Task, counts: Sequence[int], box: Box, pool: Pool, effort: Effort) -> None:
        self._task, self._counts, self._box, self._pool, self._effort = task, counts, box, pool, effort
        self._dearest = max([*(stock.cost for stock in task.stocks), *(item.outside or 0 for item in task.items), 1])
        self._costs = [stock.cost * ONE // self._dearest for stock in task.stocks]
        self._lengths = [item.length for item in task.items]
        self._items = [item for item, count in enumerate(counts) if count]
        self._row_of = {item: row for row, item in enumerate(self._items)}
        self._stock_rows: list[list[int]] = [[] for _ in task.stocks]
        self._master = self._begun()
        self._patterns: dict[int, Pattern] = {}
        for pattern in pool.within(counts, box):
            self._use(pattern)

    def _begun(self) -> Master:
        needs = [self._counts[item] for item in self._items]
        basis = [Column(self._outside(item), ((row, 1),)) for row, item in enumerate(self._items)]
        spare: list[Entries] = [((row, -1),) for row in range(len(needs))]
        for stock, (least, most) in enumerate(zip(self._box.least, self._box.most, strict=True)):
            if least:
                self._stock_rows[stock].append(len(needs))
                spare.append(((len(needs), -1),))
                basis.append(Column(_DEAR, ((len(needs), 1),)))
                needs.append(least)
            if 0 < most < sum(self._counts):
                self._stock_rows[stock].append(len(needs))
                basis.append(Column(0, ((len(needs), 1),)))
                needs.append(most)
        master = Master(needs, basis)
        for entries in spare:
            master.add(Column(0, entries))
        return master

    def _outside(self, item: int) -> int:
        outside = self._task.items[item].outside
        return _DEAR if outside is None else outside * ONE // self._dearest

    def _use(self, pattern: Pattern) -> None:
        stock, taken = pattern
        entries = [(self._row_of[item], many) for item, many in taken]
        entries += [(row, 1) for row in self._stock_rows[stock]]
        self._patterns[len(self._master.columns)] = pattern
        self._master.add(Column(self._costs[stock], tuple(entries)))

    def run(self, step: int, rounds: int) -> Relaxation:
        """Pivot and price in turn, at most `rounds` times, until no better bound can come of it.

        `step` is the least difference between two costs: a bound that reaches the next one is good enough.
        """
        best, _ = self._priced(self._prices())
        for _ in range(rounds):
            self._pivot()
            best, added = self._round(best)
            if not added or self._effort.spent or best.cost(step) >= self._hoped(step):
                break
        return Relaxation(best, tuple(self._levels()))

    def _pivot(self) -> None:
        while not self._effort.spent and (work := self._master.improve()):
            self._effort.spend(work)

    def _round(self, best: Proof) -> tuple[Proof, bool]:
        """Price between the best prices so far and the present ones, which steadies them; else at the present."""
        prices = self._prices()
        old = [price // self._dearest for price in best.prices]
        between = [(2 * past + now) // 3 for past, now in zip(old, prices, strict=True)]
        for tried in (between, prices):
            proof, fillings = self._priced(tried)
            best = max(best, proof, key=lambda each: each.bound)
            if self._added(fillings):
                return best, True
        return best, False

    def _prices(self) -> list[int]:
        """Prices per item, a shade lower than the simplex has them, so that rounding cannot raise them."""
        prices = [0] * len(self._counts)
        for row, item in enumerate(self._items):
            price = self._master.prices[row]
            prices[item] = max(price - (price >> 32), 0)
        return prices

    def _priced(self, prices: list[int]) -> tuple[Proof, list[Filling]]:
        fillings = [self._filled(stock, prices) for stock in range(len(self._task.stocks))]
        tops = [filling.bound * self._dearest for filling in fillings]
        exact = [price * self._dearest for price in prices]
        return max(self._proofs(exact, tops), key=lambda each: each.bound), fillings

    def _filled(self, stock: int, prices: Sequence[int]) -> Filling:
        if not self._box.most[stock]:
            return Filling(0, (), 0)
        return best_filling(prices, self._lengths, self._counts, self._task.stocks[stock].length, self._effort)

    def _added(self, fillings: Sequence[Filling]) -> bool:
        """Take in each filling that is worth more than its board; whether there was one."""
        before = len(self._patterns)
        for stock, filling in enumerate(fillings):
            pattern = (stock, filling.taken)
            if filling.taken and self._saving(pattern) > _TINY:
                self._pool.add(pattern)
                self._use(pattern)
        return len(self._patterns) > before

    def _saving(self, pattern: Pattern) -> int:
        prices = self._master.prices
        rent = sum(prices[row] for row in self._stock_rows[pattern[0]])
        value = sum(prices[self._row_of[item]] * many for item, many in pattern[1])
        return value + rent - self._costs[pattern[0]]

    def _proofs(self, prices: list[int], tops: list[int]) -> Iterator[Proof]:
        """The bound at these prices, and at prices lowered until no filling is worth more than its board."""
        yield self._proof(prices, tops)
        costs = [stock.cost * ONE for stock in self._task.stocks]
        over = [(cost, top) for cost, top in zip(costs, tops, strict=True) if top > cost]
        if over:
            cost, top = min(over, key=lambda pair: pair[0] * ONE // pair[1])
            lower = [price * cost // top for price in prices]
            yield self._proof(lower, [-(-each * cost // top) for each in tops])

    def _proof(self, prices: list[int], tops: list[int]) -> Proof:
        total = sum(count * price for count, price in zip(self._counts, prices, strict=True))
        for stock, top in enumerate(tops):
            spare = self._task.stocks[stock].cost * ONE - top
            total += spare * (self._box.least[stock] if spare >= 0 else self._box.most[stock])
        return Proof(tuple(prices), tuple(tops), total)

    def _hoped(self, step: int) -> int:
        """The cost of the linear program as it stands: no bound can go above it."""
        cost = self._master.cost() * self._dearest
        return -(-(cost - (cost >> 20)) // (ONE * step)) * step

    def _levels(self) -> Iterator[tuple[Pattern, int]]:
        for column, level in zip(self._master.basis, self._master.levels(), strict=True):
            if column in self._patterns and level > _TINY:
                yield self._patterns[column], level
