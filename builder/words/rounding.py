"""The one place where a fraction becomes a whole number."""

from __future__ import annotations

from fractions import Fraction


def half_up(value: Fraction | int) -> int:
    """Round to the nearest whole number; an exact half goes away from zero, as a till does.

    TypeError for a float, which is not the number it seems (2.675 is stored as less).

    >>> half_up(Fraction(25, 2)), half_up(Fraction(-25, 2)), half_up(Fraction(249, 20))
    (13, -13, 12)
    """
    if not isinstance(value, int | Fraction):
        raise TypeError(f"only whole numbers and fractions are rounded here, not {value!r}")
    top, bottom = value.numerator, value.denominator
    rounded = (2 * abs(top) + bottom) // (2 * bottom)
    return rounded if top >= 0 else -rounded


def decimal_text(value: Fraction, digits: int) -> str:
    """`value` with exactly `digits` decimals, half up: the digits people read, with a point and no grouping.

    >>> decimal_text(Fraction(1, 3), 2), decimal_text(Fraction(-5, 2), 0), decimal_text(Fraction(7), 0)
    ('0.33', '-3', '7')
    """
    scaled = half_up(value * 10**digits)
    sign, body = ("-" if scaled < 0 else ""), str(abs(scaled)).rjust(digits + 1, "0")
    return f"{sign}{body[:-digits]}.{body[-digits:]}" if digits else sign + body


def significant_text(value: Fraction, digits: int = 10) -> str:
    """`value` to `digits` significant digits, half up, without an exponent or trailing zeros.

    Digits before the point are never rounded away, however many there are.

    >>> significant_text(Fraction(7, 6)), significant_text(Fraction(56)), significant_text(Fraction(0))
    ('1.166666667', '56', '0')
    """
    if value == 0:
        return "0"
    magnitude = len(str(int(abs(value)))) if abs(value) >= 1 else 1 - _leading_zeros(abs(value))
    decimals = max(digits - magnitude, 0)
    text = decimal_text(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _leading_zeros(value: Fraction) -> int:
    """How many zeros stand right of the point before the first digit, plus one (0.02 gives 2)."""
    zeros = 0
    while value < 1:
        value, zeros = value * 10, zeros + 1
    return zeros
