"""Units of measure as exact ratios, and words that count things.

Ratios are the exact definitions behind NIST Special Publication 811, appendix B: 1 ft = 0.3048 m,
1 lb = 0.45359237 kg, 1 US gallon = 231 cubic inches, 1 short ton = 2000 lb. A day is 24 hours, a week
7 days, a year 12 months; months have no fixed number of days, so they do not convert to days.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

PIECE = "piece"


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its `symbol`, what it measures, and how many base units make one of it.

    Base units are m, m2, m3, kg, kg/m3, hour, month. A counting unit (`bag`) measures only itself;
    `word` is how the author wrote it.
    """

    symbol: str
    measure: str
    ratio: Fraction

    @property
    def counts(self) -> bool:
        """Whether this counts things (bags, boards, pieces) rather than measuring them."""
        return self.measure.startswith("count ")


_IN, _LB = Fraction("0.0254"), Fraction("0.45359237")
_FT, _YD, _MI = 12 * _IN, 36 * _IN, 63360 * _IN
_TABLE: tuple[tuple[str, str, Fraction, str], ...] = (
    ("in", "length", _IN, 'inch inches "'),
    ("ft", "length", _FT, "foot feet '"),
    ("yd", "length", _YD, "yds yard yards"),
    ("mi", "length", _MI, "mile miles"),
    ("mm", "length", Fraction("0.001"), "millimetre millimetres millimeter millimeters"),
    ("cm", "length", Fraction("0.01"), "centimetre centimetres centimeter centimeters"),
    ("m", "length", Fraction(1), "metre metres meter meters"),
    ("km", "length", Fraction(1000), "kilometre kilometres kilometer kilometers"),
    ("in2", "area", _IN**2, "in² sqin"),
    ("ft2", "area", _FT**2, "ft² sqft"),
    ("yd2", "area", _YD**2, "yd² sqyd"),
    ("cm2", "area", Fraction("0.0001"), "cm²"),
    ("m2", "area", Fraction(1), "m² sqm"),
    ("in3", "volume", _IN**3, "in³"),
    ("ft3", "volume", _FT**3, "ft³"),
    ("yd3", "volume", _YD**3, "yd³"),
    ("m3", "volume", Fraction(1), "m³"),
    ("L", "volume", Fraction("0.001"), "l litre litres liter liters"),
    ("gal", "volume", 231 * _IN**3, "gals gallon gallons"),
    ("lb", "mass", _LB, "lbs pound pounds"),
    ("kg", "mass", Fraction(1), "kilo kilos kilogram kilograms"),
    ("ton", "mass", 2000 * _LB, "tons"),
    ("t", "mass", Fraction(1000), "tonne tonnes"),
    ("lb/yd3", "density", _LB / _YD**3, "lb/yd³"),
    ("lb/ft3", "density", _LB / _FT**3, "lb/ft³"),
    ("kg/m3", "density", Fraction(1), "kg/m³"),
    ("hour", "time", Fraction(1), "hours h hr hrs"),
    ("day", "time", Fraction(24), "days"),
    ("week", "time", Fraction(168), "weeks"),
    ("month", "calendar", Fraction(1), "months"),
    ("year", "calendar", Fraction(12), "years"),
)
MEASURED = {symbol: Unit(symbol, measure, ratio) for symbol, measure, ratio, _ in _TABLE}
_NAMES = {name.lower(): MEASURED[symbol] for symbol, _, _, others in _TABLE for name in (symbol, *others.split(" "))}
_WORD = re.compile(r"[^\W\d_][\w’'.-]*")


def unit_named(name: str) -> Unit | None:
    """The unit of a name or symbol, a counting unit for any other single word, None for what is no word.

    A full stop after an abbreviation (`in.`, `ft.`) says nothing.
    """
    name = name.rstrip(".")
    known = _measured(name) or _measured(singular(name))
    if known is not None:
        return known
    if not _WORD.fullmatch(name) or not name[0].isalpha():
        return None
    one = singular(name)
    return Unit(one, f"count {one.lower()}", Fraction(1))


def _measured(name: str) -> Unit | None:
    return MEASURED.get(name) or _NAMES.get(name.lower())


def pieces() -> Unit:
    """The unit of a bare number: it counts pieces."""
    return Unit(PIECE, f"count {PIECE}", Fraction(1))


def per(unit: Unit) -> str:
    """How a figure divided by one of `unit` is written (`per ft2`)."""
    return f"per {unit.symbol}"


# Words whose f becomes a v in the plural.
_LEAVES = re.compile(r"(?:lea|hal|shel|loa|shea|cal|wol|thie|kni|\bwi|\bli)(ves)$")


def singular(word: str) -> str:
    """An English plural brought back to its singular, so that `bags` and `bag` are one unit.

    >>> [singular(word) for word in ("bags", "boxes", "lorries", "leaves", "glass", "Sack")]
    ['bag', 'box', 'lorry', 'leaf', 'glass', 'Sack']
    """
    low = word.lower()
    if leaf := _LEAVES.search(low):
        return word[: leaf.start(1)] + ("fe" if leaf[0].startswith(("kni", "wi", "li")) else "f")
    if low.endswith("ies") and len(low) > 4:
        return word[:-3] + "y"
    if low.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    if low.endswith("s") and not low.endswith(("ss", "us")) and len(low) > 2:
        return word[:-1]
    return word
