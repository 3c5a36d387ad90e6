"""One written value of each kind: text to an exact value, or Unreadable with what is wrong and what to write."""

from __future__ import annotations

import re
from collections.abc import Callable
from difflib import get_close_matches

from builder.takeoff.declared import EXAMPLES, Input, Kind
from builder.takeoff.expression import Expression
from builder.takeoff.measures import MONEY, NUMBER, PERCENT, coverage, weight_of_length
from builder.takeoff.reading.slopes import PER, read_rise, read_side_slope, read_slope
from builder.words.misread import clipped
from builder.words.numbers import Unreadable, read_number, read_rate
from builder.words.quantity import Quantity, read_quantity
from builder.words.rounding import significant_text
from builder.words.units import MEASURED, PIECE, unit_named

ScalarValue = Quantity | Expression | bool | str
# Nobody counts further on a building site, and a cutting plan must end.
MOST = 100_000
BARS = ("#3", "#4", "#5", "#6", "#7", "#8")

# What a kind measures, and the units people leave out: in a US and in a metric journal.
_MEASURES: dict[Kind, tuple[str, tuple[str, ...], tuple[str, ...]]] = {
    Kind.LENGTH: ("length", ("ft", "in"), ("m", "mm")),
    Kind.AREA: ("area", ("ft2",), ("m2",)),
    Kind.VOLUME: ("volume", ("ft3",), ("m3",)),
    Kind.WEIGHT: ("mass", ("lb",), ("kg",)),
    Kind.DENSITY: ("density", ("lb/yd3",), ("kg/m3",)),
}
_CALLED = {
    "length": "a length", "area": "an area", "volume": "a volume", "mass": "a weight", "density": "a density",
    "time": "a time", "calendar": "a time",
}  # fmt: skip
_BETWEEN_SIDES = re.compile(r"\s+(?:x|×|by)\s+|\s*×\s*|(?<=[\"'])\s*x\s*")


def read_scalar(text: str, kept: Input, *, metric: bool) -> ScalarValue:
    """The value of an input from its text; Unreadable if it has none. Zero only where the input lets it stand."""
    if kept.kind in _MEASURES:
        value: ScalarValue = _measure(text, kept.kind, metric)
    else:
        value = _READERS[kept.kind](text)
    if isinstance(value, Quantity) and value.value == 0 and not kept.may_be_zero:
        raise Unreadable(f"{clipped(text)} is nothing", EXAMPLES[kept.kind], "give more than zero")
    return value


def sides(text: str) -> list[str]:
    """The parts of `24 in x 48 in`; a single part if nothing is multiplied."""
    return _BETWEEN_SIDES.split(text)


def _measure(text: str, kind: Kind, metric: bool) -> Quantity:
    if kind is Kind.AREA and len(sides(text)) == 2:
        return _product(*(_measure(side, Kind.LENGTH, metric) for side in sides(text)))
    quantity = read_quantity(text, EXAMPLES[kind])
    measure, us, units = _MEASURES[kind]
    if quantity.unit.measure != measure:
        raise _wrong_measure(text, quantity, kind, units if metric else us)
    return quantity


def _wrong_measure(text: str, quantity: Quantity, kind: Kind, likely: tuple[str, ...]) -> Unreadable:
    expected = EXAMPLES[kind]
    if quantity.unit.symbol == PIECE:
        return Unreadable(f"{text} has no unit", expected, f"write {' or '.join(f'{text} {one}' for one in likely)}")
    called = _CALLED.get(quantity.unit.measure, "a count")
    fix = _misspelt(quantity, kind) if quantity.unit.counts else ""
    if quantity.unit.measure == "length" and kind is Kind.AREA:
        fix = f"write the area in {likely[0]}, or both sides, such as {clipped(text)} x {clipped(text)}"
    return Unreadable(f"{clipped(text)} is {called}, where {kind.value} is due", expected, fix)


def _misspelt(quantity: Quantity, kind: Kind) -> str:
    """A likely fix for `14 fet`, whose unit reads as something counted."""
    units = [symbol for symbol, unit in MEASURED.items() if unit.measure == _MEASURES[kind][0]]
    near = get_close_matches(quantity.unit.symbol, units, n=1)
    return f"did you mean {significant_text(quantity.value)} {near[0]}?" if near else ""


def _product(one: Quantity, other: Quantity) -> Quantity:
    area = MEASURED["ft2" if one.unit.symbol in ("ft", "in", "yd", "mi") else "m2"]
    base = one.value * one.unit.ratio * other.value * other.unit.ratio
    return Quantity(base / area.ratio, area)


def _number(text: str, kind: Kind = Kind.NUMBER) -> Quantity:
    quantity = read_quantity(text, EXAMPLES[kind])
    if not quantity.unit.counts:
        called = _CALLED[quantity.unit.measure]
        raise Unreadable(f"{clipped(text)} is {called}, where {kind.value} is due", EXAMPLES[kind])
    return Quantity(quantity.value, NUMBER)


def _count(text: str) -> Quantity:
    quantity = _number(text, Kind.COUNT)
    if quantity.value.denominator != 1:
        raise Unreadable(f"{clipped(text)} is no whole number", EXAMPLES[Kind.COUNT])
    if quantity.value > MOST:
        raise Unreadable(f"{clipped(text)} is more than can be counted here", f"at most {MOST}")
    return quantity


def _rate(text: str) -> Quantity:
    try:
        rate = read_rate(text, EXAMPLES[Kind.RATE])
    except Unreadable as error:
        raise Unreadable(error.found, error.expected, _tenth(text) or error.fix) from None
    return Quantity(rate * 100, PERCENT)


def _tenth(text: str) -> str:
    """A likely fix for `300%`: one nought too many."""
    if not text.endswith("%"):
        return ""
    try:
        value = read_number(text.removesuffix("%").strip()).value / 10
    except Unreadable:
        return ""
    return f"did you mean {significant_text(value)}%?" if value <= 100 else ""


def _coverage(text: str) -> Quantity:
    expected = EXAMPLES[Kind.COVERAGE]
    per = PER.fullmatch(text)
    of = unit_named(per[2]) if per else None
    if per is None or of is None or not (of.counts or of.measure == "volume"):
        raise Unreadable(f"{clipped(text)} does not say how much covers it", expected)
    area = _measure(per[1], Kind.AREA, metric=False)
    return Quantity(area.value, coverage(area.unit.symbol, per[2]))


def _weight_of_length(text: str) -> Quantity:
    expected = EXAMPLES[Kind.WEIGHT_OF_LENGTH]
    per = PER.fullmatch(text)
    of = unit_named(per[2]) if per else None
    if per is None or of is None or of.measure != "length":
        raise Unreadable(f"{clipped(text)} is no weight of a length", expected)
    weight = _measure(per[1], Kind.WEIGHT, metric=False)
    return Quantity(weight.value, weight_of_length(weight.unit.symbol, of.symbol))


def _price(text: str) -> Quantity:
    return Quantity(read_number(text, EXAMPLES[Kind.PRICE]).value, MONEY)


def _yes_no(text: str) -> bool:
    words = {"yes": True, "true": True, "no": False, "false": False}
    if text.lower() not in words:
        raise Unreadable(f"{clipped(text)} is neither yes nor no", EXAMPLES[Kind.YES_NO])
    return words[text.lower()]


def _bar(text: str) -> str:
    number = re.fullmatch(r"(?:#|no\.?|number)?\s*(\d+)", text, re.IGNORECASE)
    if number is None or f"#{number[1]}" not in BARS:
        fix = "for another bar give bar_diameter and weight_per_length instead of bar"
        raise Unreadable(f"{clipped(text)} is no bar size known here", f"one of {', '.join(BARS)}", fix)
    return f"#{number[1]}"


_READERS: dict[Kind, Callable[[str], ScalarValue]] = {
    Kind.COUNT: _count,
    Kind.NUMBER: _number,
    Kind.RATE: _rate,
    Kind.RISE: read_rise,
    Kind.SLOPE: read_slope,
    Kind.SIDE_SLOPE: read_side_slope,
    Kind.COVERAGE: _coverage,
    Kind.WEIGHT_OF_LENGTH: _weight_of_length,
    Kind.PRICE: _price,
    Kind.YES_NO: _yes_no,
    Kind.BAR: _bar,
}
