"""The units that take-off needs beside those of the journal, and what the units of a result are."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.words.units import MEASURED, Unit, per, unit_named

# How a measure is made of lengths, masses and money: (3, 0, 0) is a volume. What counts has (0, 0, 0).
DIMENSIONS: dict[str, tuple[int, int, int]] = {
    "length": (1, 0, 0),
    "area": (2, 0, 0),
    "volume": (3, 0, 0),
    "mass": (0, 1, 0),
    "density": (-3, 1, 0),
    "weight of length": (-1, 1, 0),
    "coverage": (-1, 0, 0),
    "number per area": (-2, 0, 0),
    "area per count": (2, 0, 0),
    "money": (0, 0, 1),
    "ratio": (0, 0, 0),
    "number": (0, 0, 0),
    "angle": (0, 0, 0),
}

NUMBER = Unit("", "number", Fraction(1))
PERCENT = Unit("%", "ratio", Fraction(1, 100))
DEGREE = Unit("deg", "angle", Fraction(1))
# An amount in the journal's currency, in its major unit.
MONEY = Unit("currency", "money", Fraction(1))


def dimension(unit: Unit) -> tuple[int, int, int]:
    """What `unit` is made of; a counting unit is a plain number."""
    return (0, 0, 0) if unit.counts else DIMENSIONS[unit.measure]


def unit(symbol: str) -> Unit:
    """A unit of the journal or a counting word; ValueError for what is neither."""
    found = unit_named(symbol)
    if found is None:
        raise ValueError(f"{symbol!r} is no unit")
    return found


def weight_of_length(mass: str, length: str) -> Unit:
    """A unit such as lb/ft."""
    ratio = MEASURED[mass].ratio / MEASURED[length].ratio
    return Unit(f"{mass}/{length}", "weight of length", ratio)


def coverage(area: str, of: str) -> Unit:
    """A unit such as ft2/gal (an area from a volume), or ft2/roll (an area from something counted)."""
    whole = unit(of)
    measure = "area per count" if whole.counts else "coverage"
    return Unit(f"{area}/{whole.symbol}", measure, MEASURED[area].ratio / whole.ratio)


def per_area(area: str) -> Unit:
    """A unit such as `per ft2`."""
    return Unit(per(MEASURED[area]), "number per area", 1 / MEASURED[area].ratio)


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """The units that results come in: `small_volume` is for steps and mortar, `short` for a fall."""

    length: Unit
    short: Unit
    area: Unit
    small_volume: Unit
    volume: Unit
    liquid: Unit
    weight: Unit
    heavy: Unit


US = Habit(
    length=MEASURED["ft"],
    short=MEASURED["in"],
    area=MEASURED["ft2"],
    small_volume=MEASURED["ft3"],
    volume=MEASURED["yd3"],
    liquid=MEASURED["gal"],
    weight=MEASURED["lb"],
    heavy=MEASURED["ton"],
)
METRIC = Habit(
    length=MEASURED["m"],
    short=MEASURED["mm"],
    area=MEASURED["m2"],
    small_volume=MEASURED["m3"],
    volume=MEASURED["m3"],
    liquid=MEASURED["L"],
    weight=MEASURED["kg"],
    heavy=MEASURED["t"],
)
