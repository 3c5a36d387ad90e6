"""Units as exact ratios, against pint's definitions and the printed factors of NIST SP 811."""

from __future__ import annotations

from decimal import Context, Decimal
from fractions import Fraction

import pint
import pytest

from builder.words.units import MEASURED, Unit, per, pieces, singular, unit_named

# Our symbol and pint's, and the base unit of the measure in pint's words.
IN_PINT = {
    "in": "inch", "ft": "foot", "yd": "yard", "mi": "mile", "mm": "millimeter", "cm": "centimeter",
    "m": "meter", "km": "kilometer", "in2": "inch**2", "ft2": "foot**2", "yd2": "yard**2",
    "cm2": "centimeter**2", "m2": "meter**2", "in3": "inch**3", "ft3": "foot**3", "yd3": "yard**3",
    "m3": "meter**3", "L": "liter", "gal": "gallon", "lb": "pound", "kg": "kilogram", "ton": "ton",
    "t": "tonne", "lb/yd3": "pound/yard**3", "lb/ft3": "pound/foot**3", "kg/m3": "kilogram/meter**3",
    "hour": "hour", "day": "day", "week": "week", "month": "month", "year": "year",
}  # fmt: skip
BASE = {
    "length": "meter", "area": "meter**2", "volume": "meter**3", "mass": "kilogram",
    "density": "kilogram/meter**3", "time": "hour", "calendar": "month",
}  # fmt: skip

# NIST SP 811 (2008) appendix B.8, seven digits. Where it says so, as quoted by the R package NISTunits
# (R/NISTfactors.R); the others from memory.
NIST = [
    ("in", "2.54E-02", "from memory"),
    ("ft", "3.048E-01", "as quoted by NISTunits"),
    ("yd", "9.144E-01", "from memory"),
    ("in3", "1.638706E-05", "as quoted by NISTunits"),
    ("ft3", "2.831685E-02", "as quoted by NISTunits"),
    ("yd3", "7.645549E-01", "as quoted by NISTunits"),
    ("gal", "3.785412E-03", "as quoted by NISTunits"),
    ("lb", "4.535924E-01", "as quoted by NISTunits"),
    ("ton", "9.071847E+02", "from memory"),
]

# The definitions behind SP 811, exact: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, 1 gal = 231 in3 (NIST SP 811,
# appendix B, footnotes; the same numbers stand in CLDR's units.xml and in pint's definitions).
EXACT = {
    "in": "0.0254", "ft": "0.3048", "yd": "0.9144", "mi": "1609.344", "ft2": "0.09290304",
    "yd2": "0.83612736", "in3": "0.000016387064", "ft3": "0.028316846592", "yd3": "0.764554857984",
    "gal": "0.003785411784", "lb": "0.45359237", "ton": "907.18474",
}  # fmt: skip


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Fraction]:
    """Pint with its definitions read as fractions, so that two ratios are equal or not, and never nearly."""
    return pint.UnitRegistry(non_int_type=Fraction)


def test_the_pint_table_has_every_unit() -> None:
    """A new unit has to be compared too."""
    assert IN_PINT.keys() == MEASURED.keys()


@pytest.mark.parametrize("symbol", MEASURED)
def test_every_ratio_is_pint_s(registry: pint.UnitRegistry[Fraction], symbol: str) -> None:
    """Equal as fractions, without a tolerance."""
    unit = MEASURED[symbol]
    theirs = registry.Quantity(Fraction(1), IN_PINT[symbol]).to(BASE[unit.measure]).magnitude
    assert isinstance(theirs, Fraction)
    assert unit.ratio == theirs


@pytest.mark.parametrize(("symbol", "factor"), EXACT.items())
def test_every_defined_ratio_is_exact(symbol: str, factor: str) -> None:
    """To the last digit of its definition."""
    assert MEASURED[symbol].ratio == Fraction(factor)


@pytest.mark.parametrize(("symbol", "printed", "source"), NIST)
def test_every_printed_factor_of_nist_is_met(symbol: str, printed: str, source: str) -> None:
    """Ours, rounded to the seven digits that are printed, is the printed one."""
    ratio = MEASURED[symbol].ratio
    rounded = Context(prec=7).divide(Decimal(ratio.numerator), Decimal(ratio.denominator))
    assert rounded == Decimal(printed), source


def test_densities_follow_from_mass_and_volume() -> None:
    """1 lb/ft3 is 16.018463373960 kg/m3, 1 lb/yd3 is 0.593276421258: worked out here from the definitions."""
    assert MEASURED["lb/ft3"].ratio == MEASURED["lb"].ratio / MEASURED["ft3"].ratio
    assert MEASURED["lb/yd3"].ratio == MEASURED["lb"].ratio / MEASURED["yd3"].ratio
    assert round(MEASURED["lb/ft3"].ratio, 12) == Fraction("16.018463373960")
    assert round(MEASURED["lb/yd3"].ratio, 12) == Fraction("0.593276421258")


def test_a_month_is_no_number_of_days() -> None:
    """Days and months do not convert; a year is twelve months."""
    assert MEASURED["month"].measure != MEASURED["day"].measure
    assert MEASURED["year"].ratio / MEASURED["month"].ratio == 12


@pytest.mark.parametrize(
    ("word", "symbol"),
    [
        ("ft", "ft"), ("ft.", "ft"), ("Feet", "ft"), ("foot", "ft"), ("'", "ft"), ('"', "in"), ("in.", "in"),
        ("inches", "in"), ("yards", "yd"), ("lbs", "lb"), ("lbs.", "lb"), ("LB", "lb"), ("metres", "m"),
        ("meters", "m"), ("sqft", "ft2"), ("m²", "m2"), ("yd³", "yd3"), ("l", "L"), ("litres", "L"),
        ("gallons", "gal"), ("tons", "ton"), ("tonnes", "t"), ("kilos", "kg"), ("hrs", "hour"), ("days", "day"),
        ("lb/yd³", "lb/yd3"), ("lb/ft³", "lb/ft3"), ("kg/m³", "kg/m3"), ("years", "year"), ("months", "month"),
        ("weeks", "week"), ("hours", "hour"), ("h", "hour"), ("hr", "hour"), ("miles", "mi"), ("mile", "mi"),
        ("yds", "yd"), ("yard", "yd"), ("inch", "in"), ("in²", "in2"), ("sqin", "in2"), ("ft²", "ft2"),
        ("yd²", "yd2"), ("sqyd", "yd2"), ("cm²", "cm2"), ("sqm", "m2"), ("in³", "in3"), ("ft³", "ft3"), ("m³", "m3"),
        ("metre", "m"), ("meter", "m"), ("millimetres", "mm"), ("centimeters", "cm"), ("kilometers", "km"),
        ("litre", "L"), ("liters", "L"), ("liter", "L"), ("gals", "gal"), ("gallon", "gal"), ("pound", "lb"),
        ("pounds", "lb"), ("kilo", "kg"), ("kilogram", "kg"), ("kilograms", "kg"), ("tonne", "t"),
    ],
)  # fmt: skip
def test_a_unit_has_its_everyday_names(word: str, symbol: str) -> None:
    """In any case, with or without the full stop of an abbreviation."""
    assert unit_named(word) == MEASURED[symbol]


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("bag", "bags"), ("box", "boxes"), ("bench", "benches"), ("lorry", "lorries"), ("sash", "sashes"),
        ("glass", "glass"), ("Sheet", "sheets"), ("piece", "pieces"), ("pallet", "pallets"), ("pie", "pies"),
        ("mass", "masses"), ("bus", "bus"), ("leaf", "leaves"), ("bookshelf", "bookshelves"), ("knife", "knives"),
    ],
)  # fmt: skip
def test_one_and_many_are_one_unit(one: str, many: str) -> None:
    """A word that counts things measures the same in singular and plural, whatever the case."""
    first, second = unit_named(one), unit_named(many)
    assert first is not None
    assert second is not None
    assert first.measure == second.measure
    assert first.counts
    assert singular(singular(many)) == singular(many)


@pytest.mark.parametrize(
    ("word", "one"),
    [
        ("bus", "bus"),
        ("as", "as"),
        ("ohs", "oh"),
        ("pies", "pie"),
        ("flies", "fly"),
        ("boxes", "box"),
        ("olives", "olive"),
        ("sleeves", "sleeve"),
    ],
)
def test_a_word_is_brought_back_to_its_singular(word: str, one: str) -> None:
    """Short words and those in -us and -ss are left as they are."""
    assert singular(word) == one


def test_words_that_count_measure_only_themselves() -> None:
    """A bag is no box; and neither is a foot."""
    bag, box = unit_named("bag"), unit_named("box")
    assert bag is not None
    assert box is not None
    assert len({bag.measure, box.measure, MEASURED["ft"].measure, pieces().measure}) == 4
    assert not MEASURED["ft"].counts


@pytest.mark.parametrize(("many", "symbol"), [("kgs", "kg"), ("fts.", "ft"), ("KMS", "km"), ("cms", "cm")])
def test_a_symbol_with_an_s_is_the_unit_and_no_word_of_its_own(many: str, symbol: str) -> None:
    """5 kgs are 5 kg, and add up with them."""
    assert unit_named(many) == MEASURED[symbol]


@pytest.mark.parametrize("name", ["", "4", "½", "²", "-", "m^2", "bag(s)", "a b", "...", "m3/h"])
def test_what_is_no_word_is_no_unit(name: str) -> None:
    """Least of all a number in disguise, which would be lost from the quantity."""
    assert unit_named(name) is None


def test_a_figure_per_unit_is_written_with_per() -> None:
    """As `per ft2`."""
    assert per(MEASURED["ft2"]) == "per ft2"
    assert per(Unit("bag", "count bag", Fraction(1))) == "per bag"
