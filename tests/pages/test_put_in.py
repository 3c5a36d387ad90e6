"""Numbers put into a formula stand there with the digits they were written with, in every language."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from builder.pages.takeoffs import working
from builder.pages.wording import Words
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.units import Unit
from tests.pages.weekend import weekend

OTHERS = {
    "": Unit("", "number", Fraction(1)),
    "%": Unit("%", "ratio", Fraction(1, 100)),
    "currency": Unit("currency", "money", Fraction(1)),
    "lb/ft": Unit("lb/ft", "weight of length", Fraction(1)),
}

FOOTING = """phases: [{key: ground, name: Ground}]
takeoff:
  strip:
    method: strip_footing
    length: 4 m
    width: 3 m
    footing_width: 40 cm
    thickness: 12.5 cm
    bag: 25 kg
    bag_yield: 0.0125 m3
"""


def steps(folder: Path, language: str) -> list[str]:
    """The numbers of each step and what they come to, without the spaces of a language."""
    told = weekend(folder, plan=FOOTING, more="phase: ground", speaks=language, pays="EUR")
    (strip,) = told.account.takeoffs
    shown = working(told, strip, "").steps
    return [f"{step.numbers} = {step.result}".replace("\u202f", "").replace("\u00a0", " ") for step in shown]


@pytest.mark.parametrize(
    ("language", "volume", "bags"),
    [
        ("en-GB", "12.4 m × 40 cm × 12.5 cm = 0.62 m³", "0.62 m³ ÷ 0.0125 m³ = 49.6 bags"),
        ("de-DE", "12,4 m × 40 cm × 12,5 cm = 0,62 m³", "0,62 m³ ÷ 0,0125 m³ = 49,6 Säcke"),
        ("fr-FR", "12,4 m × 40 cm × 12,5 cm = 0,62 m³", "0,62 m³ ÷ 0,0125 m³ = 49,6 sacs"),
        ("es-ES", "12,4 m × 40 cm × 12,5 cm = 0,62 m³", "0,62 m³ ÷ 0,0125 m³ = 49,6 sacos"),
    ],
)
def test_a_division_on_a_page_is_true(tmp_path: Path, language: str, volume: str, bags: str) -> None:
    """(4 - 0.4) + (3 - 0.4) = 6.2, twice 12.4; times 0.4 times 0.125 is 0.62, and 0.62 over 0.0125 is 49.6."""
    assert {volume, bags} <= set(steps(tmp_path, language))


@pytest.mark.parametrize(
    ("value", "unit", "told"),
    [
        ("0.0125", "m3", "0.0125 m³"),
        ("12.345678", "L", "12.345678 L"),
        ("0.668", "lb/ft", "0.668 lb/ft"),
        ("12.125", "%", "12.125%"),
        ("7.125", "bag", "7.125 bags"),
        ("2.375", "", "2.375"),
        ("1/3", "m", "0.333333 m"),
        ("29/3", "ft", "9 ft 8 in"),
        ("5.05", "ft", "5.05 ft"),
        ("3.5", "in", "3 1/2 in"),
        ("6.10", "currency", "$6.10"),
        ("0.405", "currency", "0.405 USD"),
    ],
)
def test_no_digit_is_rounded_away(value: str, unit: str, told: str) -> None:
    """A tape has sixteenths of an inch and a currency its own digits; a third has no last digit, so six will do."""
    measured = Quantity(Fraction(value), OTHERS.get(unit) or Quantity.of(1, unit).unit)
    assert Words("en-US", Currency.named("USD")).put_in(measured) == told
