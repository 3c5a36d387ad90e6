"""The cheapest way to cut, with the proof: fill, bound, dive, search, and branch on the boards of each stock."""

from __future__ import annotations

from heapq import heappop, heappush
from math import gcd

from builder.takeoff.cutting.boards import Boards
from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.packed import ONE
from builder.takeoff.cutting.relaxation import Box, Generation, Pool, Relaxation
from builder.takeoff.cutting.search import Search
from builder.takeoff.cutting.sequence import Sequence
from builder.takeoff.cutting.task import Answer, Packing, Task

# About a second of work on a laptop.
STEPS = 1_200_000
_FIRST_FILLS, _MORE_FILLS = 3, 12
_ROUNDS, _DIVE_ROUNDS = 10_000, 12
# A box that can be halved gets a small part of the steps to be searched whole, one that cannot a large part, or all
# of them where it is the last.
_SMALL_PART, _LARGE_PART = 150, 3


def solve(task: Task, steps: int = STEPS) -> Answer:
    """The cheapest packing of `task`; ValueError if something must be cut and does not fit.

    Stops after so many `steps`, always at the same spot; the answer then says what bound it has proven.
    """
    return _Solver(task, Effort(steps)).answer()


class _Solver:
    def __init__(self, task: Task, effort: Effort) -> None:
        self._task, self._effort = task, effort
        self._pool, self._sequence = Pool(), Sequence(task, effort)
        outside = [item.outside for item in task.items if item.outside is not None]
        self._step = gcd(*(stock.cost for stock in task.stocks), *outside) or 1
        first = self._sequence.fill(Boards(task))
        if first is None:
            raise ValueError("a piece that must be cut fits no board")
        self._best = first
        self._offer(first)
        self._boxes: list[tuple[int, int, Box]] = []
        self._made = 0
        self._unfinished: list[int] = []

    def answer(self) -> Answer:
        """Look into boxes, the one with the lowest bound first, until none could hold anything cheaper."""
        low = self._by_length()
        self._fill(_FIRST_FILLS, low)
        self._put(self._whole(), low)
        while self._boxes and not self._is_best(self._boxes[0][0]) and not self._effort.spent:
            low, _, box = heappop(self._boxes)
            self._look_into(box, low)
        lows = [low for low, _, _ in self._boxes] + self._unfinished
        return Answer(packing=self._best, bound=min([*lows, self._best.cost]))

    def _look_into(self, box: Box, low: int) -> None:
        counts = [item.count for item in self._task.items]
        relaxation = self._relaxed(counts, box, _ROUNDS)
        low = max(low, relaxation.proof.cost(self._step))
        self._fill(_MORE_FILLS if self._made == 1 else 0, low)
        self._dive(box, relaxation, low)
        if self._is_best(low):
            return
        halves = self._halves(box, relaxation)
        last = 1 if not self._boxes else _LARGE_PART
        if self._is_searched(box, relaxation, _SMALL_PART if halves else last):
            return
        for half in halves:
            self._put(half, low)
        if not halves:
            self._unfinished.append(low)

    def _by_length(self) -> int:
        """A first bound: the whole length of what must be cut, at the cheapest board for its length."""
        length = sum(item.length * item.count for item in self._task.items if item.outside is None)
        costs = [-(-stock.cost * length // stock.length) for stock in self._task.stocks]
        return -(-min(costs) // self._step) * self._step

    def _whole(self) -> Box:
        total = sum(item.count for item in self._task.items)
        most = (total if stock.most is None else min(stock.most, total) for stock in self._task.stocks)
        return Box((0,) * len(self._task.stocks), tuple(most))

    def _put(self, box: Box, low: int) -> None:
        self._made += 1
        heappush(self._boxes, (low, self._made, box))

    def _relaxed(self, counts: list[int], box: Box, rounds: int) -> Relaxation:
        return Generation(self._task, counts, box, self._pool, self._effort).run(self._step, rounds)

    def _is_best(self, low: int) -> bool:
        return self._best.cost <= low

    def _offer(self, packing: Packing | None) -> None:
        if packing is None:
            return
        for pattern, _ in packing.boards:
            self._pool.add(pattern)
        if packing.cost < self._best.cost:
            self._best = packing

    def _fill(self, times: int, low: int) -> None:
        for _ in range(times):
            if self._is_best(low) or self._effort.spent:
                break
            self._offer(self._sequence.fill(Boards(self._task)))

    def _dive(self, box: Box, relaxation: Relaxation, low: int) -> None:
        """Cut what the linear program uses most, look again at what is left, until nothing is."""
        boards = Boards(self._task)
        while not self._is_best(low) and not self._effort.spent and _cut_most(boards, relaxation):
            self._offer(self._sequence.fill(boards))
            most = tuple(most - used for most, used in zip(box.most, boards.used, strict=True))
            rest = Box((0,) * len(most), most)
            relaxation = self._relaxed(boards.rest, rest, _DIVE_ROUNDS)

    def _is_searched(self, box: Box, relaxation: Relaxation, part: int) -> bool:
        """Try everything in the box with a `part`-th of what effort is left; whether that was enough."""
        steps = max(self._effort.left, 0) // part
        effort = Effort(steps)
        search = Search(self._task, box, relaxation.proof, self._step, effort)
        found = search.below(self._best.cost)
        self._effort.spend(steps - effort.left)
        self._offer(found.packing)
        return found.finished

    def _halves(self, box: Box, relaxation: Relaxation) -> tuple[Box, ...]:
        """The box cut in two where the boards of a stock are furthest from a whole number; () if it is a point."""
        boards = [0] * len(self._task.stocks)
        for (stock, _), level in relaxation.levels:
            boards[stock] += level
        wide = [stock for stock in range(len(boards)) if box.least[stock] < box.most[stock]]
        if not wide:
            return ()
        at = max(wide, key=lambda stock: min(boards[stock] % ONE, -boards[stock] % ONE))
        cut = min(max(boards[at] // ONE, box.least[at]), box.most[at] - 1)
        return (
            Box(box.least, (*box.most[:at], cut, *box.most[at + 1 :])),
            Box((*box.least[:at], cut + 1, *box.least[at + 1 :]), box.most),
        )


def _cut_most(boards: Boards, relaxation: Relaxation) -> bool:
    """Cut whole boards of what the linear program uses, and one of what it uses more than half; whether any."""
    before = sum(boards.used)
    for pattern, level in sorted(relaxation.levels, key=lambda each: (-each[1], each[0])):
        whole = level // ONE
        if not whole and sum(boards.used) > before and level < ONE * 3 // 5:
            break
        times = min(boards.times(pattern), max(whole, 1))
        if times:
            boards.cut(pattern, times)
    return sum(boards.used) > before
