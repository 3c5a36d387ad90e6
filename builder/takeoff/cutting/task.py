"""What is to be cut from what, in whole numbers, and the answer."""

from __future__ import annotations

from dataclasses import dataclass

# A board as it is cut: the stock it comes from, and (item, how many of it), in the order of the items.
Pattern = tuple[int, tuple[tuple[int, int], ...]]


@dataclass(frozen=True, slots=True)
class Stock:
    """Boards of one `length` that cost `cost` each, of which there are at most `most` (None: any number)."""

    length: int
    cost: int
    most: int | None = None


@dataclass(frozen=True, slots=True)
class Item:
    """`count` pieces of one `length`. Leaving one out costs `outside`; None means it may not be left out."""

    length: int
    count: int
    outside: int | None = None


@dataclass(frozen=True, slots=True)
class Task:
    """Cut every item from the stocks, or leave it out where that is allowed, at the least cost.

    Items go from the longest to the shortest. All numbers are whole; the saw's kerf is already added to
    every item and, once, to every stock, which lets it fall between pieces and not after the last.
    """

    stocks: tuple[Stock, ...]
    items: tuple[Item, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Packing:
    """A way to cut: every pattern with how many boards are cut so, and how many of each item are left out."""

    boards: tuple[tuple[Pattern, int], ...]
    left: tuple[int, ...]
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The best packing found, and a cost that no packing can go below. Equal: it is proven the best."""

    packing: Packing
    bound: int

    @property
    def proven(self) -> bool:
        """Whether no packing can be cheaper."""
        return self.bound >= self.packing.cost
