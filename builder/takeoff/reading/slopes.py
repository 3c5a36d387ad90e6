"""Slopes in the ways builders write them, as the formula that gives the ratio of height to run."""

from __future__ import annotations

import re
from fractions import Fraction

from builder.takeoff.declared import EXAMPLES, Kind
from builder.takeoff.expression import Applied, Constant, Expression, Named, Rule
from builder.takeoff.measures import DEGREE, NUMBER, PERCENT
from builder.takeoff.text import Text
from builder.words.misread import clipped
from builder.words.numbers import Unreadable, read_mixed, read_number, read_rate
from builder.words.quantity import Quantity, read_quantity
from builder.words.units import MEASURED, PIECE, unit_named

PER = re.compile(r"(.+?)\s*(?:/|\bper\b)\s*([^\W\d_][^\s\d]*[23]?)")
_RATIO = re.compile(r"(.+):(.+)")
_IN_TWELVE = re.compile(r"([\d.]+)\s*(?:/|\bin\b)\s*12")
_DEGREES = re.compile(r"(.+?)\s*(?:deg|degs|degrees?|°)\.?")
RISE, SLOPE = Text("rise"), Text("slope")


def read_rise(text: str) -> Expression:
    """Rise over run; a bare number, or inches, is the rise in 12 in of run."""
    expected = EXAMPLES[Kind.RISE]
    in_twelve = _IN_TWELVE.fullmatch(text)
    if in_twelve:
        return _ratio(in_twelve[1], "12", expected)
    slope = _as_slope(text, RISE, expected)
    if slope is not None:
        return slope
    quantity = read_quantity(text, expected)
    if quantity.unit.symbol == PIECE:
        quantity = Quantity(quantity.value, MEASURED["in"])
    if quantity.unit.symbol not in ("in", "ft"):
        fix = "write it as a slope, such as 1:2 or 30 deg"
        raise Unreadable(f"{clipped(text)} is no rise in 12 in of run", expected, fix)
    _above_zero(quantity.value, text, expected)
    return Named(RISE, quantity) / Constant(Quantity(Fraction(12), MEASURED["in"]))


def read_slope(text: str) -> Expression:
    """Fall over run: `2%`, `1:48`, `1/4 in per ft`, `10 mm/m`."""
    expected = EXAMPLES[Kind.SLOPE]
    per = PER.fullmatch(text)
    run = unit_named(per[2]) if per else None
    if per and run and run.measure == "length":
        fall = read_quantity(per[1], expected)
        if fall.unit.measure != "length":
            raise Unreadable(f"{clipped(per[1])} is no length", expected)
        _above_zero(fall.value, text, expected)
        return Named(SLOPE, fall) / Constant(Quantity(Fraction(1), run))
    slope = _as_slope(text, SLOPE, expected)
    if slope is not None:
        return slope
    return Named(SLOPE, Quantity(_above_zero(read_rate(text, expected), text, expected) * 100, PERCENT))


def read_side_slope(text: str) -> Quantity:
    """How far out for 1 down: `1.5`, `3/4`, `1.5:1`. Zero is a straight side."""
    expected = EXAMPLES[Kind.SIDE_SLOPE]
    ratio = _RATIO.fullmatch(text)
    if ratio and ratio[2].strip() != "1":
        fix = "write how far out for 1 down, such as 1.5:1"
        raise Unreadable(f"{clipped(text)} does not end in 1", expected, fix)
    return Quantity(read_mixed((ratio[1] if ratio else text).strip(), expected), NUMBER)


def _as_slope(text: str, name: Text, expected: str) -> Expression | None:
    """`1:2`, `30 deg` or `2%`; None if it is none of these."""
    ratio, degrees = _RATIO.fullmatch(text), _DEGREES.fullmatch(text)
    if ratio:
        return _ratio(ratio[1], ratio[2], expected)
    if degrees:
        angle = _above_zero(read_mixed(degrees[1], expected), text, expected)
        if angle >= 90:
            raise Unreadable(f"{clipped(text)} is upright or leans over", expected, "give an angle below 90 deg")
        return Applied(Rule.TANGENT, (Named(name, Quantity(angle, DEGREE)),))
    if text.endswith("%"):
        percent = read_number(text.removesuffix("%").strip(), expected).value
        return Named(name, Quantity(_above_zero(percent, text, expected), PERCENT))
    return None


def _ratio(height: str, run: str, expected: str) -> Expression:
    up, along = (_above_zero(read_mixed(part.strip(), expected), part, expected) for part in (height, run))
    return Constant(Quantity(up, NUMBER)) / Constant(Quantity(along, NUMBER))


def _above_zero(value: Fraction, text: str, expected: str) -> Fraction:
    if value == 0:
        raise Unreadable(f"{clipped(text)} is nothing", expected, "give a slope above zero")
    return value
