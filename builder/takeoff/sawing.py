"""From pieces and boards to the task of cutting/, and from its answer to a plan for the saw."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.takeoff.cutting.solve import solve
from builder.takeoff.cutting.task import Item, Pattern, Stock, Task
from builder.takeoff.records import CutBoard, CutPlan, Piece
from builder.takeoff.stock import metres, whole_numbers
from builder.takeoff.values import Lot
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Board:
    """A length that is sold, and what one costs; `cost` is 1 where only the number of boards counts."""

    length: Quantity
    cost: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Sawn:
    """The plan, the boards of each length in the order asked, their cost, and the cost nobody can go below."""

    plan: CutPlan
    boards: tuple[int, ...]
    cost: Fraction
    bound: Fraction

    @property
    def proven(self) -> bool:
        """Whether nothing cheaper exists."""
        return self.bound >= self.cost


def saw(pieces: Sequence[Lot], boards: Sequence[Board], kerf: Quantity) -> Sawn:
    """The cheapest way to cut the pieces; each must fit the longest board."""
    sizes = _merged(pieces)
    lengths, scale = whole_numbers(
        [metres(kerf), *(metres(board.length) for board in boards), *(metres(lot.length) for lot in sizes)]
    )
    cut, stocks, items = lengths[0], lengths[1 : len(boards) + 1], lengths[len(boards) + 1 :]
    prices, price_scale, more = _prices(boards, sum(lot.count for lot in sizes))
    task = Task(
        tuple(Stock(length + cut, price) for length, price in zip(stocks, prices, strict=True)),
        tuple(Item(length + cut, lot.count) for length, lot in zip(items, sizes, strict=True)),
    )
    answer = solve(task)
    used = _on_the_cheapest(task, answer.packing.boards)
    counts = [sum(times for (stock, _), times in used.items() if stock == at) for at in range(len(boards))]
    return Sawn(
        plan=CutPlan(_laid_out(task, used, sizes, boards, scale), kerf),
        boards=tuple(counts),
        cost=sum((board.cost * count for board, count in zip(boards, counts, strict=True)), Fraction(0)),
        bound=Fraction(answer.bound // more, price_scale),
    )


def _prices(boards: Sequence[Board], most: int) -> tuple[list[int], int, int]:
    """Prices in whole numbers, how many make one of the currency, and how many make one of those.

    Where some boards are free, every board costs a little beside its price, so that the fewest are used; the
    little costs of `most` boards come to less than the least price.
    """
    prices, scale = whole_numbers(board.cost for board in boards)
    if all(prices):
        return prices, scale, 1
    return [price * (most + 1) + 1 for price in prices], scale, most + 1


def _merged(pieces: Sequence[Lot]) -> list[Lot]:
    """Pieces of the same length together, the longest first."""
    counts: dict[Fraction, Lot] = {}
    for lot in pieces:
        before = counts.get(metres(lot.length))
        counts[metres(lot.length)] = lot if before is None else Lot(before.length, before.count + lot.count)
    return [counts[length] for length in sorted(counts, reverse=True)]


def _on_the_cheapest(task: Task, boards: Sequence[tuple[Pattern, int]]) -> dict[Pattern, int]:
    """Every board as the cheapest, and then the shortest, that holds its pieces."""
    used: dict[Pattern, int] = {}
    for (_, taken), times in boards:
        length = sum(task.items[item].length * many for item, many in taken)
        holding = [at for at, stock in enumerate(task.stocks) if stock.length >= length]
        best = min(holding, key=lambda at: (task.stocks[at].cost, task.stocks[at].length, at))
        used[best, taken] = used.get((best, taken), 0) + times
    return used


def _laid_out(
    task: Task, used: dict[Pattern, int], sizes: Sequence[Lot], boards: Sequence[Board], scale: int
) -> tuple[CutBoard, ...]:
    """The boards for the saw: the longest first, and on each the longest piece first."""
    order = sorted(used, key=lambda pattern: (-task.stocks[pattern[0]].length, pattern))
    return tuple(_board(task, pattern, used[pattern], sizes, boards[pattern[0]].length, scale) for pattern in order)


def _board(task: Task, pattern: Pattern, times: int, sizes: Sequence[Lot], length: Quantity, scale: int) -> CutBoard:
    stock, taken = pattern
    rest = task.stocks[stock].length - sum(task.items[item].length * many for item, many in taken)
    return CutBoard(
        stock=length,
        pieces=tuple(Piece(sizes[item].length, many) for item, many in taken),
        offcut=Quantity(Fraction(rest, scale) / length.unit.ratio, length.unit),
        count=times,
    )
