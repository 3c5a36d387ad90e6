"""How a quantity is written in a working: exactly, as a builder writes it, where that is possible."""

from __future__ import annotations

from fractions import Fraction

from builder.takeoff.measures import MONEY
from builder.words.quantity import Quantity
from builder.words.rounding import significant_text
from builder.words.units import PIECE

# The finest division of a builder's tape.
_TAPE = 16


def shown(quantity: Quantity) -> str:
    """`9 ft 8 in`, `3 1/2 in`, `5%`, `1.166666667 yd3`, `6`: read back, it is the same to ten digits.

    >>> shown(Quantity.of(Fraction(29, 3), "ft")), shown(Quantity.of(Fraction(7, 2), "in"))
    ('9 ft 8 in', '3 1/2 in')
    """
    symbol = quantity.unit.symbol
    if symbol == "ft" and quantity.value.denominator != 1 and (quantity.value * 12 * _TAPE).denominator == 1:
        return _feet_and_inches(quantity.value)
    if symbol == "in":
        return _inches(quantity.value)
    number = significant_text(quantity.value)
    if symbol in ("", PIECE, MONEY.symbol):
        return number
    return f"{number}{'' if symbol == '%' else ' '}{symbol}"


def _feet_and_inches(value: Fraction) -> str:
    feet = int(value)
    inches = _inches((value - feet) * 12)
    return f"{feet} ft {inches}" if feet else inches


def _inches(value: Fraction) -> str:
    whole, rest = int(value), value - int(value)
    if rest == 0 or _TAPE % rest.denominator:
        return f"{significant_text(value)} in"
    fraction = f"{rest.numerator}/{rest.denominator} in"
    return f"{whole} {fraction}" if whole else fraction
