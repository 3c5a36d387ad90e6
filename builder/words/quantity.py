"""A quantity: an exact number and its unit.

The grammar, as an author writes it:

    quantity = part [part ...]           9 ft 8 in        36 bag        12
    part     = number unit               2.4 m            5-1/4"        1.5 yd3
    number   = digits [. digits] | [digits (space or dash)] digits/digits

Several parts make one length only (`9 ft 8 in`, `9' 8-1/2"`). A bare number counts pieces. What a phone makes
of these characters (a curly quote for inches, one sign for 1/2) reads the same.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.words.misread import LONGEST_SHOWN, ROUGHLY, VULGAR, clipped
from builder.words.numbers import Unreadable, read_mixed
from builder.words.rounding import significant_text
from builder.words.units import PIECE, Unit, pieces, unit_named

EXPECTED = "a quantity such as 36 bag, 2.4 m or 9 ft 8 in"
_PART = re.compile(
    r"(?P<number>(?:[0-9]+[ -])?[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
    r" ?(?P<unit>[\"']|[^\W\d_][^\s\d,;:()\"]*[23]?(?:/[a-z]+[23]?)?)?(?: ?- ?(?=[0-9]))? ?"
)
_EXPONENT = re.compile(r"[0-9.]+[eE][0-9]")
# What phones and word processors make of the characters of the grammar.
_TYPED = str.maketrans(
    {
        "”": '"',
        "“": '"',
        "″": '"',
        "’": "'",
        "‘": "'",
        "′": "'",
        "⁄": "/",
        "−": "-",
        "–": "-",
        "²": "2",
        "³": "3",
    }
    | {sign: f" {fraction}" for sign, fraction in VULGAR.items()}
)


@dataclass(eq=False)
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
    typed = " ".join(text.translate(_TYPED).split())
    while position < len(typed) or total is None:
        match = _PART.match(typed, position)
        if match is None:
            raise _no_quantity(typed, position, expected)
        part = _part(match, typed, expected)
        total = part if total is None else _joined(total, part, typed, expected)
        position = match.end()
    return total


def _part(match: re.Match[str], text: str, expected: str) -> Quantity:
    value = read_mixed(match["number"], expected)
    if match["unit"] is None:
        return Quantity(value, pieces())
    if _EXPONENT.match(text, match.start()):
        raise _no_quantity(text, match.start(), expected)
    unit = unit_named(match["unit"])
    if unit is None:
        found = f"{clipped(text)} has the unit {clipped(match['unit'])}, which is no word"
        raise Unreadable(found, expected, _instead(text))
    return Quantity(value, unit)


def _joined(total: Quantity, part: Quantity, text: str, expected: str) -> Quantity:
    if {total.unit.measure, part.unit.measure} != {"length"}:
        raise Unreadable(f"{clipped(text)} is more than one quantity", expected, _one_of_two(total, part, text))
    if part.unit.ratio >= total.unit.ratio:
        found = f"{clipped(text)} does not go from the larger unit to the smaller"
        raise Unreadable(found, expected, f"write {part} {total}" if part.unit.ratio > total.unit.ratio else "")
    return total + part


def _one_of_two(total: Quantity, part: Quantity, text: str) -> str:
    if re.match(r"[0-9./]+ ?-", text) and total.unit.symbol == PIECE:
        return "write the likelier of the two numbers, with about before it where that is allowed"
    if re.fullmatch(r"[0-9.]+ ?(?:ft|feet|foot|')\.? ?[0-9./ -]+", text):
        return f"write {text} in"
    return "" if PIECE in (total.unit.symbol, part.unit.symbol) else f"write {total}, or two lines"


def _no_quantity(text: str, position: int, expected: str) -> Unreadable:
    shown, rest = clipped(text), text[position:]
    if not text:
        return Unreadable("nothing is written here", expected)
    if position == 0 and rest.startswith("-"):
        return Unreadable(f"{shown} is negative", expected, f"write {clipped(text[1:].strip())}")
    if re.match(r"[0-9]{1,3},[0-9]{3}", text):
        return Unreadable(f"{shown} has a thousands comma", expected, f"write {shown.replace(',', '')}")
    if re.match(r"[0-9]+,[0-9]", text):
        return Unreadable(f"{shown} has a decimal comma", expected, f"write {shown.replace(',', '.')}")
    if _EXPONENT.match(text):
        return Unreadable(f"{shown} has an exponent", expected, "write all its digits")
    if re.match(r"[0-9./ -]+[a-z]+[23][a-z]", text):
        return Unreadable(f"{shown} has no spaces between its parts", expected, "write them apart, as in 9 ft 2 in")
    if position:
        found = f"{shown} goes on after the quantity with {clipped(rest)}"
        return Unreadable(found, expected, _instead(text) or f"write {clipped(text[:position].strip())}")
    return Unreadable(f"{shown} is not a quantity", expected, _instead(text))


_UNIT_IN_WORDS = re.compile(r"\b(?P<power>sq|square|cu|cubic)\.? (?P<unit>[a-z]+)\b\.?", re.IGNORECASE)
_SPOKEN = {
    "half a": "1/2", "a half": "1/2", "a quarter": "1/4", "a dozen": "12", "a couple of": "2",
    "a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6",
    "seven": "7", "eight": "8", "nine": "9", "ten": "10", "twelve": "12",
}  # fmt: skip


def _instead(text: str) -> str:
    """What to write for a quantity in words: `12 sq ft`, `half a load`, `9 ft, 8 in`, `3 m^2`."""
    if len(text) > LONGEST_SHOWN:
        return ""
    plain = _UNIT_IN_WORDS.sub(_powered, text).replace(",", "").replace("^", "").replace("**", "")
    plain = re.sub(rf"^(?:{ROUGHLY}|some )(?=[0-9.])", "", plain)
    plain = re.sub(r"^([0-9]+)(?:\. |-(?=[a-z]))", r"\1 ", plain)
    for words, number in _SPOKEN.items():
        if plain.lower().startswith(f"{words} "):
            plain = f"{number} {plain[len(words) + 1 :].removeprefix('of ')}"
            break
    if plain.endswith((" few", " lot", " bit", " couple")):
        return ""
    if plain == text:
        return ""
    try:
        read_quantity(plain)
    except Unreadable:
        return ""
    return f"write {plain}"


def _powered(match: re.Match[str]) -> str:
    unit = unit_named(match["unit"])
    power = "2" if match["power"].lower().startswith("sq") else "3"
    return f"{unit.symbol if unit else match['unit']}{power}"
