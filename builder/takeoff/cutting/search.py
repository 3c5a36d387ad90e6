"""Trying every way to cut inside a box that could still be cheaper, board after board.

The longest piece that is left has to go somewhere: on a board of some stock, filled up so that nothing left
fits any more (moving pieces to it from later boards never costs more), or it is left out. A branch ends when
the bound of relaxation.py says that nothing cheaper can come of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.takeoff.cutting.boards import Boards
from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.packed import ONE
from builder.takeoff.cutting.relaxation import Box, Proof
from builder.takeoff.cutting.task import Packing, Pattern, Task

Taken = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Found:
    """The best packing found below what was asked, or None; and whether everything was tried."""

    packing: Packing | None
    finished: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """What is left of each item, the boards used of each stock, and the last board cut with the state before it.

    `gone` is how much dearer this state is than the bound, in 1/ONE of a cost.
    """

    rest: tuple[int, ...]
    used: tuple[int, ...]
    gone: int
    board: Pattern | None = None
    before: State | None = None


class Search:
    """A search of `box` with the prices of `proof`; `step` is the least difference between two costs."""

    def __init__(self, task: Task, box: Box, proof: Proof, step: int, effort: Effort) -> None:
        self._task, self._box, self._proof, self._step, self._effort = task, box, proof, step, effort
        self._costs = [stock.cost * ONE for stock in task.stocks]
        self._rates = _best_rates(task, proof)
        self._slack = 0

    def below(self, cost: int) -> Found:
        """The cheapest packing that costs less than `cost`."""
        self._slack = (cost - self._step) * ONE - self._proof.bound
        best: Packing | None = None
        seen: dict[tuple[tuple[int, ...], tuple[int, ...]], int] = {}
        stack = [iter([self._start()])]
        while stack and not self._effort.spent:
            state = next(stack[-1], None)
            if state is None:
                stack.pop()
            elif self._is_worth(state, seen):
                stack.append(iter(sorted(self._next(state), key=lambda each: each.gone)))
                if not any(state.rest) and (packing := self._packed(state)) and packing.cost < cost:
                    self._slack -= (cost - packing.cost) * ONE
                    best, cost = packing, packing.cost
        return Found(best, not stack)

    def _start(self) -> State:
        return State(rest=tuple(item.count for item in self._task.items), used=(0,) * len(self._task.stocks), gone=0)

    def _is_worth(self, state: State, seen: dict[tuple[tuple[int, ...], tuple[int, ...]], int]) -> bool:
        key = (state.rest, state.used)
        if state.gone > self._slack or seen.get(key, state.gone + 1) <= state.gone:
            return False
        seen[key] = state.gone
        return True

    def _packed(self, state: State) -> Packing | None:
        boards = Boards(self._task)
        at: State | None = state
        while at is not None:
            if at.board is not None:
                boards.cut(at.board)
            at = at.before
        return boards.packing()

    def _next(self, state: State) -> Iterator[State]:
        first = next((item for item, left in enumerate(state.rest) if left), None)
        if first is None:
            return
        for stock in range(len(self._task.stocks)):
            if state.used[stock] < self._box.most[stock]:
                yield from self._boards(state, first, stock)
        outside = self._task.items[first].outside
        if outside is not None:
            gone = state.gone + state.rest[first] * (outside * ONE - self._proof.prices[first])
            rest = (*state.rest[:first], 0, *state.rest[first + 1 :])
            yield State(rest=rest, used=state.used, gone=gone, before=state)

    def _boards(self, state: State, first: int, stock: int) -> Iterator[State]:
        used, top = state.used[stock], self._proof.tops[stock]
        # The bound has counted a board already where the stock is at its least, or pays for itself.
        counted = used < self._box.least[stock] or top > self._costs[stock]
        gone = state.gone + (top if counted else self._costs[stock])
        now = (*state.used[:stock], used + 1, *state.used[stock + 1 :])
        for taken, value in self._fillings(state.rest, first, stock, gone - self._slack):
            rest = list(state.rest)
            for item, many in taken:
                rest[item] -= many
            yield State(rest=tuple(rest), used=now, gone=gone - value, board=(stock, taken), before=state)

    def _fillings(self, rest: tuple[int, ...], first: int, stock: int, worth: int) -> Iterator[tuple[Taken, int]]:
        """Every full board of `stock` with at least one of item `first` whose value is at least `worth`."""
        items, prices = self._task.items, self._proof.prices
        length = items[first].length
        room = self._task.stocks[stock].length
        stack: list[tuple[int, int, int, Taken]] = [
            (first + 1, room - many * length, many * prices[first], ((first, many),))
            for many in range(1, min(rest[first], room // length) + 1)
        ]
        while stack and not self._effort.spent:
            self._effort.spend(3)
            item, room, value, taken = stack.pop()
            while item < len(rest) and (not rest[item] or items[item].length > room):
                item += 1
            if item == len(rest):
                if value >= worth and self._is_full(rest, room, taken):
                    yield taken, value
                continue
            price, per = self._rates[item]
            if (worth - value) * per > room * price:
                continue
            for many in range(min(rest[item], room // items[item].length) + 1):
                more = (*taken, (item, many)) if many else taken
                stack.append((item + 1, room - many * items[item].length, value + many * prices[item], more))

    def _is_full(self, rest: tuple[int, ...], room: int, taken: Taken) -> bool:
        cut = dict(taken)
        return all(
            item.length > room or left <= cut.get(number, 0)
            for number, (item, left) in enumerate(zip(self._task.items, rest, strict=True))
        )


def _best_rates(task: Task, proof: Proof) -> list[tuple[int, int]]:
    """The best (price, length) among the items from each one on."""
    best, rates = (0, 1), []
    for item, price in zip(reversed(task.items), reversed(proof.prices), strict=True):
        if price * best[1] > best[0] * item.length:
            best = (price, item.length)
        rates.append(best)
    return rates[::-1]
