"""What a take-off comes to: its inputs, coefficients, steps, results, cautions and drawing. Nouns only."""

from __future__ import annotations

from dataclasses import dataclass

from builder.takeoff.expression import PLAIN, Constant, Expression, Style
from builder.takeoff.text import Text
from builder.words.place import Place
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Given:
    """One input as its author wrote it; `about` marks a judgement."""

    key: str
    written: str
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Coefficient:
    """A number the formula needs beside the dimensions, and where it comes from; `given` by the author or not."""

    key: str
    value: Quantity
    source: Text
    given: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the working. Its `expression` computed the result, and prints itself."""

    name: Text
    expression: Expression
    result: Quantity
    note: Text | None = None

    @property
    def is_found(self) -> bool:
        """Whether the number was found by a search or counted, so that there is no formula to show."""
        return isinstance(self.expression, Constant)

    @property
    def formula(self) -> str:
        """With names, in English: `length × width × thickness`."""
        return self.expression.formula(PLAIN)

    @property
    def with_numbers(self) -> str:
        """With the numbers put in, in English: `14 ft × 10 ft × 4 in`."""
        return self.expression.with_numbers(PLAIN)

    def formula_in(self, style: Style) -> str:
        """With names, in the words of `style`."""
        return self.expression.formula(style)

    def with_numbers_in(self, style: Style) -> str:
        """With the numbers put in, in the figures of `style`."""
        return self.expression.with_numbers(style)


@dataclass(frozen=True, slots=True)
class Result:
    """One result under its key (`volume`, `bags`), exact."""

    key: str
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt, or go wrong, and whose rule or finding that is."""

    text: Text
    source: Text


@dataclass(frozen=True, slots=True)
class Suggestion:
    """What a handbook adds for waste, and which one."""

    text: Text
    source: Text


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a cutting plan: its length and how many of it are cut from one board."""

    length: Quantity
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CutBoard:
    """One way of cutting a board of `stock` length, longest piece first, and how many boards are cut so.

    `offcut` is what is left at the end, in the unit of `stock`; the cuts between the pieces are off it already.
    """

    stock: Quantity
    pieces: tuple[Piece, ...]
    offcut: Quantity
    count: int


@dataclass(frozen=True, slots=True)
class CutPlan:
    """Which pieces come from which board, longest board first, and how much the saw takes at each cut."""

    boards: tuple[CutBoard, ...]
    kerf: Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedUnit:
    """A window or door in a wall: how far its left side is from the left end of the clear length.

    `height` is None where only widths are known; `what` and `line` are empty unless it is a found line item.
    """

    width: Quantity
    height: Quantity | None
    at: Quantity
    what: str = ""
    line: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A wall with what is placed in it, from left to right. `post` is the width between and beside units.

    `post` is None where nothing is placed.
    """

    clear_length: Quantity
    units: tuple[PlacedUnit, ...]
    post: Quantity | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftUnit:
    """A window or door that has no place, and how many of it."""

    width: Quantity
    height: Quantity | None
    what: str
    line: str
    count: int


@dataclass(frozen=True, slots=True)
class WallLayout:
    """Every wall in the order written, and what found no place."""

    walls: tuple[Wall, ...]
    left: tuple[LeftUnit, ...]


Drawing = CutPlan | WallLayout


@dataclass(frozen=True, slots=True, kw_only=True)
class Takeoff:
    """One take-off worked out: what went in, how it was reckoned, what came of it.

    `results` are exact and in the order of the method; `proven` says of a search whether nothing better exists
    (None where nothing was searched), else `bound` is what nothing can go beyond.
    """

    name: str
    method: str
    title: Text
    place: Place
    inputs: tuple[Given, ...]
    coefficients: tuple[Coefficient, ...]
    steps: tuple[Step, ...]
    results: tuple[Result, ...]
    cautions: tuple[Caution, ...]
    suggestions: tuple[Suggestion, ...]
    proven: bool | None = None
    bound: Result | None = None
    drawing: Drawing | None = None

    def get(self, key: str) -> Quantity | None:
        """The result of that key, or None."""
        return next((result.quantity for result in self.results if result.key == key), None)
