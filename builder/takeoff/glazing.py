"""From walls and windows to the task of cutting/, and from its answer to a layout: the most glass placed.

A wall is a board, a window a piece, the least post the kerf: n windows need n + 1 posts, so a wall has room for its
clear length less one post, and each window takes a post with it. Leaving a window out costs its glass.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.takeoff.cutting.solve import solve
from builder.takeoff.cutting.task import Answer, Item, Stock, Task
from builder.takeoff.records import LeftUnit, PlacedUnit, Wall, WallLayout
from builder.takeoff.stock import metres, whole_numbers
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Windows or doors of one size; `height` is None where only widths are known."""

    width: Quantity
    height: Quantity | None
    count: int
    what: str = ""
    line: str = ""

    @property
    def glass(self) -> Fraction:
        """What one of them is worth placing: its area in m2, or its width in m."""
        return metres(self.width) * (metres(self.height) if self.height else 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """The layout, the glass placed (m2, or m of width), and the glass that nobody can go beyond."""

    layout: WallLayout
    placed: int
    left: int
    glass: Fraction
    bound: Fraction

    @property
    def proven(self) -> bool:
        """Whether no layout has more glass."""
        return self.bound <= self.glass


def place(walls: Sequence[Quantity], windows: Sequence[Window], post: Quantity) -> Placing:
    """The layout with the most glass."""
    order = sorted(windows, key=lambda window: (-metres(window.width), -window.glass))
    task, kinds = _task(walls, order, metres(post))
    answer = solve(task)
    placed = _placed(answer, [kinds.index(metres(wall)) for wall in walls])
    left = answer.packing.left
    all_glass = sum((window.glass * window.count for window in order), Fraction(0))
    _, scale = whole_numbers(window.glass for window in order)
    return Placing(
        layout=WallLayout(
            tuple(_wall(wall, [order[item] for item in items]) for wall, items in zip(walls, placed, strict=True)),
            tuple(_left(window, count) for window, count in zip(order, left, strict=True) if count),
        ),
        placed=sum(len(items) for items in placed),
        left=sum(left),
        glass=all_glass - Fraction(answer.packing.cost, scale),
        bound=all_glass - Fraction(answer.bound, scale),
    )


def _task(walls: Sequence[Quantity], order: Sequence[Window], post: Fraction) -> tuple[Task, list[Fraction]]:
    """The task, and the clear length of each of its stocks."""
    lengths = [metres(wall) for wall in walls]
    kinds = sorted(set(lengths), reverse=True)
    sizes, _ = whole_numbers([*(kind - post for kind in kinds), *(metres(window.width) + post for window in order)])
    glass, _ = whole_numbers(window.glass for window in order)
    stocks = [Stock(size, 0, lengths.count(kind)) for size, kind in zip(sizes, kinds, strict=False)]
    items = [
        Item(size, window.count, worth) for size, window, worth in zip(sizes[len(kinds) :], order, glass, strict=True)
    ]
    return Task(tuple(stocks), tuple(items)), kinds


def _placed(answer: Answer, walls: Sequence[int]) -> list[list[int]]:
    """The windows of every wall, the widest first; walls of one kind are filled in the order written."""
    waiting: dict[int, list[list[int]]] = {}
    for (stock, taken), times in answer.packing.boards:
        items = [item for item, many in taken for _ in range(many)]
        waiting.setdefault(stock, []).extend([items] * times)
    return [waiting[kind].pop(0) if waiting.get(kind) else [] for kind in walls]


def _wall(clear: Quantity, windows: Sequence[Window]) -> Wall:
    """The windows from left to right, with the room that is left shared evenly between the posts."""
    if not windows:
        return Wall(clear_length=clear, units=(), post=None)
    room = metres(clear) - sum(metres(window.width) for window in windows)
    post, at = room / (len(windows) + 1), Fraction(0)
    units = []
    for window in windows:
        at += post
        units.append(_unit(window, Quantity(at / clear.unit.ratio, clear.unit)))
        at += metres(window.width)
    return Wall(clear_length=clear, units=tuple(units), post=Quantity(post / clear.unit.ratio, clear.unit))


def _unit(window: Window, at: Quantity) -> PlacedUnit:
    return PlacedUnit(width=window.width, height=window.height, at=at, what=window.what, line=window.line)


def _left(window: Window, count: int) -> LeftUnit:
    return LeftUnit(width=window.width, height=window.height, what=window.what, line=window.line, count=count)
