"""A quantity: an exact number and its unit.

The grammar, as an author writes it:

    quantity = part [part ...]           9 ft 8 in        36 bag        12
    part     = number unit               2.4 m            5-1/4"        1.5 yd3
    number   = digits [. digits] | [digits (space or dash)] digits/digits

Several parts make one length only (`9 ft 8 in`, `9' 8-1/2"`). A bare number counts pieces.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.words.numbers import Unreadable, read_mixed
from builder.words.rounding import significant_text
from builder.words.units import Unit, pieces, unit_named

EXPECTED = "a quantity such as 36 bag, 2.4 m or 9 ft 8 in"
_PART = re.compile(
    r"(?P<number>(?:\d+[ -])?\d+/\d+|\d+(?:\.\d+)?|\.\d+)\s*(?P<unit>\"|'|[^\W\d_][^\s\d]*[23²³]?(?:/[a-z]+[23²³]?)?)?"
    r"\s*(?:-(?=\d))?\s*",
    re.UNICODE,
)


@dataclass
class Mismatch(Exception):
    """Two quantities that cannot be added or compared: feet and bags."""

    one: str
    other: str

    def __str__(self) -> str:
        return f"{self.one} and {self.other} cannot be put together: they measure different things"


@dataclass(frozen=True, slots=True)
class Quantity:
    """`value` of `unit`, zero or more when read; `value` is exact. `9 ft 8 in` is 29/3 ft."""

    value: Fraction
    unit: Unit

    @classmethod
    def of(cls, value: Fraction | int, unit: str) -> Quantity:
        """A quantity of a unit by name; `of(3, "bag")`."""
        found = unit_named(unit)
        if found is None:
            raise ValueError(f"{unit!r} is no unit")
        return cls(Fraction(value), found)

    def to(self, unit: Unit) -> Quantity:
        """The same amount in another unit of the same measure; Mismatch if there is none."""
        if unit.measure != self.unit.measure:
            raise Mismatch(str(self), unit.symbol)
        return Quantity(self.value * self.unit.ratio / unit.ratio, unit)

    def in_unit(self, symbol: str) -> Fraction:
        """Its number in a unit given by symbol (`in_unit("ft3")`)."""
        unit = unit_named(symbol)
        if unit is None:
            raise ValueError(f"{symbol!r} is no unit")
        return self.to(unit).value

    def __add__(self, other: Quantity) -> Quantity:
        return Quantity(self.value + other.to_like(self), self.unit)

    def __sub__(self, other: Quantity) -> Quantity:
        return Quantity(self.value - other.to_like(self), self.unit)

    def to_like(self, other: Quantity) -> Fraction:
        """Its number in the unit of `other`; Mismatch, naming both, if they measure different things."""
        if other.unit.measure != self.unit.measure:
            raise Mismatch(str(other), str(self))
        return self.value * self.unit.ratio / other.unit.ratio

    def like(self, other: Quantity) -> bool:
        """Whether both measure the same thing, so that they add up."""
        return self.unit.measure == other.unit.measure

    def __str__(self) -> str:
        return f"{significant_text(self.value)} {self.unit.symbol}"


def read_quantity(text: str, expected: str = EXPECTED) -> Quantity:
    """The quantity that `text` says; Unreadable if it says none.

    >>> str(read_quantity("9 ft 8 in")), str(read_quantity('5-1/4"')), str(read_quantity("12"))
    ('9.666666667 ft', '5.25 in', '12 piece')
    """
    total: Quantity | None = None
    position = 0
    text = text.strip()
    while position < len(text) or total is None:
        match = _PART.match(text, position)
        if match is None or match.end() == position:
            raise _no_quantity(text, position, expected)
        part = _part(match, text, expected)
        total = part if total is None else _joined(total, part, text, expected)
        position = match.end()
    return total


def _part(match: re.Match[str], text: str, expected: str) -> Quantity:
    value = read_mixed(match["number"], expected)
    if match["unit"] is None:
        return Quantity(value, pieces())
    unit = unit_named(match["unit"])
    if unit is None:
        raise Unreadable(f"{text} has the unit {match['unit']}, which is no word", expected)
    return Quantity(value, unit)


def _joined(total: Quantity, part: Quantity, text: str, expected: str) -> Quantity:
    if {total.unit.measure, part.unit.measure} != {"length"}:
        raise Unreadable(f"{text} is more than one quantity", expected)
    if part.unit.ratio >= total.unit.ratio:
        raise Unreadable(f"{text} does not go from the larger unit to the smaller", expected)
    return total + part


def _no_quantity(text: str, position: int, expected: str) -> Unreadable:
    rest = text[position:]
    if not text:
        return Unreadable("nothing is written here", expected)
    if rest.startswith("-"):
        return Unreadable(f"{text} is negative", expected, f"write {text.replace('-', '', 1).strip()}")
    if re.match(r"\d{1,3},\d{3}", text):
        return Unreadable(f"{text} has a thousands comma", expected, f"write {text.replace(',', '')}")
    if re.match(r"\d+,\d", text):
        return Unreadable(f"{text} has a decimal comma", expected, f"write {text.replace(',', '.')}")
    if len(text) > 60:
        return Unreadable(f"{text[:57]}... is not a quantity", expected)
    return Unreadable(f"{text} is not a quantity", expected)
