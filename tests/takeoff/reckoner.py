"""Working out a printed formula by hand: from its text alone, with unit ratios of its own.

It knows nothing of the expressions that printed the text, so that a working cannot agree with itself only.
Numbers are floats here: a printed number has ten digits.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

# In metres and kilograms, by the definitions: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, 1 gal = 231 in3.
_IN, _LB = Fraction("0.0254"), Fraction("0.45359237")
_LENGTH = {"in": _IN, "ft": 12 * _IN, "yd": 36 * _IN, "m": Fraction(1), "mm": Fraction(1, 1000), "cm": Fraction(1, 100)}
RATIOS: dict[str, Fraction] = {
    **_LENGTH,
    **{f"{name}2": ratio**2 for name, ratio in _LENGTH.items()},
    **{f"{name}3": ratio**3 for name, ratio in _LENGTH.items()},
    "gal": 231 * _IN**3, "L": Fraction(1, 1000), "lb": _LB, "ton": 2000 * _LB, "kg": Fraction(1), "t": Fraction(1000),
    "lb/yd3": _LB / (36 * _IN) ** 3, "lb/ft": _LB / (12 * _IN), "kg/m": Fraction(1),
    "ft2/gal": (12 * _IN) ** 2 / (231 * _IN**3), "ft2/roll": (12 * _IN) ** 2, "per ft2": 1 / (12 * _IN) ** 2,
    "per m2": Fraction(1), "%": Fraction(1, 100), "deg": Fraction(1), "": Fraction(1),
}  # fmt: skip
COUNTS = (
    "bag", "bar", "block", "board", "board-foot", "brick", "course", "currency", "cut", "lap", "load", "piece", "roll",
    "space", "square", "stud",
)  # fmt: skip
RATIOS |= dict.fromkeys(COUNTS, Fraction(1))
_TOKEN = re.compile(r"\s*(round up|larger of|square root|tangent|[()+−×÷,²]|[^()+−×÷,²]+)")


def quantity(text: str) -> float:
    """A printed quantity in base units: `9 ft 8 1/2 in`, `5%`, `0.668 lb/ft`."""
    total = 0.0
    parts = re.findall(r"(\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)\s*(per \w+|%|[a-zA-Z][\w/-]*|)\s*", text.strip())
    assert parts, text
    for number, unit in parts:
        total += float(sum(Fraction(each) for each in number.split())) * float(RATIOS[unit])
    return total


def reckon(formula: str) -> float:
    """What a printed formula comes to, in base units."""
    return _Reader(_TOKEN.findall(formula)).sum()


class _Reader:
    def __init__(self, tokens: list[str]) -> None:
        self._tokens = [token.strip() for token in tokens if token.strip()]

    def _next(self) -> str:
        return self._tokens[0] if self._tokens else ""

    def _take(self) -> str:
        return self._tokens.pop(0)

    def sum(self) -> float:
        value = self._product()
        while self._next() in ("+", "−"):
            value = value + self._product() if self._take() == "+" else value - self._product()
        return value

    def _product(self) -> float:
        value = self._squared()
        while self._next() in ("×", "÷"):
            value = value * self._squared() if self._take() == "×" else value / self._squared()
        return value

    def _squared(self) -> float:
        value = self._atom()
        while self._next() == "²":
            self._take()
            value *= value
        return value

    def _atom(self) -> float:
        token = self._take()
        if token == "(":
            value = self.sum()
            assert self._take() == ")"
            return value
        if token in ("round up", "larger of", "square root", "tangent"):
            return self._applied(token)
        return quantity(token)

    def _applied(self, rule: str) -> float:
        assert self._take() == "("
        values = [self.sum()]
        while self._next() == ",":
            self._take()
            values.append(self.sum())
        assert self._take() == ")"
        if rule == "round up":
            # A whole number that was printed with ten digits is still that whole number.
            return math.ceil(values[0] * (1 - 1e-9))
        if rule == "larger of":
            return max(values)
        return math.sqrt(values[0]) if rule == "square root" else math.tan(math.radians(values[0]))
