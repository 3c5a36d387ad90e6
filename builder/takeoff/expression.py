"""Formulas that compute and print: one tree gives the value, the formula, and the formula with its numbers.

Values are exact fractions of base units (metre, kilogram) with their dimension, so feet times inches times
yards come out right, and adding a length to an area is an error. Roots, tangents and the circle's number are
rational numbers right to at least 30 decimals.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import ceil, isqrt

from builder.takeoff.measures import NUMBER, dimension
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.words.quantity import Quantity
from builder.words.units import Unit

_DIGITS = 40
# The circle's number to 40 decimals.
PI = Fraction(31415926535897932384626433832795028841972, 10**40)


@dataclass(frozen=True, slots=True)
class Worth:
    """`value` in base units, and how many lengths, masses and amounts of money it is a product of."""

    value: Fraction
    dimension: tuple[int, int, int]

    def of(self, unit: Unit) -> Quantity:
        """The same in `unit`; ValueError if it measures something else."""
        if dimension(unit) != self.dimension:
            raise ValueError(f"{self} is not measured in {unit.symbol}")
        return Quantity(self.value / unit.ratio, unit)


@dataclass(frozen=True, slots=True)
class Style:
    """How names and quantities are written in a formula; a page hands in its own language."""

    word: Callable[[Text], str] = str
    measure: Callable[[Quantity], str] = shown


PLAIN = Style()


class Expression(ABC):
    """A formula. The signs of arithmetic make larger ones: `length * width`, `1 + waste`."""

    __slots__ = ()

    @abstractmethod
    def worth(self) -> Worth:
        """What it comes to."""

    @abstractmethod
    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        """Its text, with names or with numbers, and how tightly it binds (1 sums, 2 products, 3 the rest)."""

    def formula(self, style: Style = PLAIN) -> str:
        """With names: `length x width`."""
        return self.written(style, numbers=False)[0]

    def with_numbers(self, style: Style = PLAIN) -> str:
        """With the numbers put in: `14 ft x 10 ft`."""
        return self.written(style, numbers=True)[0]

    def __add__(self, other: Expression | int) -> Expression:
        return Binary(Sign.PLUS, self, _expression(other))

    def __radd__(self, other: int) -> Expression:
        return Binary(Sign.PLUS, _expression(other), self)

    def __sub__(self, other: Expression | int) -> Expression:
        return Binary(Sign.MINUS, self, _expression(other))

    def __mul__(self, other: Expression | int) -> Expression:
        return Binary(Sign.TIMES, self, _expression(other))

    def __rmul__(self, other: int) -> Expression:
        return Binary(Sign.TIMES, _expression(other), self)

    def __rtruediv__(self, other: int) -> Expression:
        return Binary(Sign.OVER, _expression(other), self)

    def __truediv__(self, other: Expression | int) -> Expression:
        return Binary(Sign.OVER, self, _expression(other))


def _expression(value: Expression | int) -> Expression:
    return value if isinstance(value, Expression) else Constant(Quantity(Fraction(value), NUMBER))


@dataclass(frozen=True, slots=True)
class Constant(Expression):
    """A number that stands in the formula itself, with its unit if it has one."""

    quantity: Quantity

    def worth(self) -> Worth:
        return Worth(self.quantity.value * self.quantity.unit.ratio, dimension(self.quantity.unit))

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:  # noqa: ARG002 - the same in both
        return style.measure(self.quantity), 3


@dataclass(frozen=True, slots=True)
class Named(Expression):
    """A quantity under its name: an input, a coefficient, or the result of an earlier step."""

    name: Text
    quantity: Quantity

    def worth(self) -> Worth:
        return Worth(self.quantity.value * self.quantity.unit.ratio, dimension(self.quantity.unit))

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        return (style.measure(self.quantity) if numbers else style.word(self.name)), 3


class Sign(Enum):
    """What stands between two parts of a formula."""

    PLUS = "+"
    MINUS = "−"
    TIMES = "×"
    OVER = "÷"


@dataclass(frozen=True, slots=True)
class Binary(Expression):
    """Two formulas with a sign between them."""

    sign: Sign
    left: Expression
    right: Expression

    def worth(self) -> Worth:
        left, right = self.left.worth(), self.right.worth()
        if self.sign in (Sign.PLUS, Sign.MINUS):
            if left.dimension != right.dimension:
                raise ValueError(f"{self.formula()} puts together what measures different things")
            value = left.value + right.value if self.sign is Sign.PLUS else left.value - right.value
            return Worth(value, left.dimension)
        turn = 1 if self.sign is Sign.TIMES else -1
        powers = [one + turn * other for one, other in zip(left.dimension, right.dimension, strict=True)]
        value = left.value * right.value if turn == 1 else left.value / right.value
        return Worth(value, (powers[0], powers[1], powers[2]))

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        binds = 1 if self.sign in (Sign.PLUS, Sign.MINUS) else 2
        strict = self.sign in (Sign.MINUS, Sign.OVER)
        left = self._side(self.left, binds, style, numbers)
        right = self._side(self.right, binds + strict, style, numbers)
        return f"{left} {self.sign.value} {right}", binds

    def _side(self, part: Expression, binds: int, style: Style, numbers: bool) -> str:
        """One side, in brackets where it needs them, and where a difference is added, as handbooks do."""
        text, its = part.written(style, numbers)
        difference = isinstance(part, Binary) and part.sign is Sign.MINUS and self.sign is Sign.PLUS
        return f"({text})" if its < binds or difference else text


@dataclass(frozen=True, slots=True)
class Total(Expression):
    """The sum of a list under one name; with no part it is nothing, in `unit`."""

    name: Text
    parts: tuple[Expression, ...]
    unit: Unit

    def worth(self) -> Worth:
        total = self._sum()
        return Worth(Fraction(0), dimension(self.unit)) if total is None else total.worth()

    def _sum(self) -> Expression | None:
        total: Expression | None = None
        for part in self.parts:
            total = part if total is None else total + part
        return total

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        if not numbers:
            return f"Σ {style.word(self.name)}", 3
        total = self._sum()
        return (style.measure(Quantity(Fraction(0), self.unit)), 3) if total is None else total.written(style, True)


@dataclass(frozen=True, slots=True)
class Squared(Expression):
    """A formula times itself."""

    part: Expression

    def worth(self) -> Worth:
        return (self.part * self.part).worth()

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        text, binds = self.part.written(style, numbers)
        return (f"({text})²" if numbers or binds < 3 else f"{text}²"), 3


class Rule(Enum):
    """What is done to the formulas in brackets behind it; the values are the words of the formula."""

    ROUND_UP = "round up"
    LARGER = "larger of"
    ROOT = "square root"
    TANGENT = "tangent"


@dataclass(frozen=True, slots=True)
class Applied(Expression):
    """A rule applied to plain numbers; `larger of` takes two of any one kind."""

    rule: Rule
    parts: tuple[Expression, ...]

    def worth(self) -> Worth:
        worths = [part.worth() for part in self.parts]
        if len({each.dimension for each in worths}) > 1:
            raise ValueError(f"{self.formula()} compares what measures different things")
        if self.rule is Rule.LARGER:
            return max(worths, key=lambda each: each.value)
        if worths[0].dimension != (0, 0, 0):
            raise ValueError(f"{self.formula()} takes a plain number")
        return Worth(_applied(self.rule, worths[0].value), (0, 0, 0))

    def written(self, style: Style, numbers: bool) -> tuple[str, int]:
        inside = ", ".join(part.written(style, numbers)[0] for part in self.parts)
        return f"{style.word(Text(self.rule.value))}({inside})", 3


def _applied(rule: Rule, value: Fraction) -> Fraction:
    if rule is Rule.ROUND_UP:
        return Fraction(ceil(value))
    return _root(value) if rule is Rule.ROOT else _tangent(value)


def _root(value: Fraction) -> Fraction:
    """The square root, exact where it is rational, else cut after 40 decimals."""
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    if top**2 == value.numerator and bottom**2 == value.denominator:
        return Fraction(top, bottom)
    return Fraction(isqrt(value.numerator * 10 ** (2 * _DIGITS) // value.denominator), 10**_DIGITS)


def _tangent(degrees: Fraction) -> Fraction:
    """The tangent of an angle below 90 degrees, from the series of sine and cosine."""
    angle = _cut(degrees * PI / 180)
    sine = cosine = Fraction(0)
    term = Fraction(1)
    for power in range(60):
        if power % 2 == 0:
            cosine += term if power % 4 == 0 else -term
        else:
            sine += term if power % 4 == 1 else -term
        term = _cut(term * angle / (power + 1))
    return _cut(sine / cosine)


def _cut(value: Fraction) -> Fraction:
    return Fraction(int(value * 10**_DIGITS), 10**_DIGITS)


CIRCLE = Named(Text("π"), Quantity(PI, NUMBER))
