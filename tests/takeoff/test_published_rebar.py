"""Reinforcing bar against the standard's table and laps as they are quoted."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.rounding import decimal_text
from tests.takeoff.writing import number, result, worked

# ASTM A615/A615M Table 1: bar, diameter in inches, lb/ft (as quoted by a trade magazine), kg/m (as quoted by a
# steelmaker's copy; it prints 1.522 for #5, which its own other column makes 1.552).
TABLE = [
    ("#3", "0.375", "0.376", "0.560"),
    ("#4", "0.500", "0.668", "0.994"),
    ("#5", "0.625", "1.043", "1.552"),
    ("#6", "0.750", "1.502", "2.235"),
    ("#7", "0.875", "2.044", "3.042"),
    ("#8", "1.000", "2.670", "3.973"),
]


@pytest.mark.parametrize(("bar", "diameter", "pounds", "kilograms"), TABLE)
def test_a_bar_weighs_what_the_standard_says(bar: str, diameter: str, pounds: str, kilograms: str) -> None:
    """Per foot exactly, per metre within a gram and a half, and by steel of 3.4 lb/ft for a square inch."""
    steel = worked("rebar", bar=bar[1:], runs="100 ft")
    assert result(steel, "weight", "lb") == 100 * Fraction(pounds)
    by_metre = result(worked("rebar", bar=bar[1:], runs="1 m", metric=True), "weight", "kg")
    assert abs(by_metre - Fraction(kilograms)) < Fraction(15, 10_000)
    area = pi / 4 * float(diameter) ** 2
    assert abs(3.4 * area - float(pounds)) < 0.001


def test_four_bars_all_round_a_footing() -> None:
    """Course notes CVE 367, at second hand: four #5 in 318 ft, 10 % for laps and waste: 1,272 ft and 1,459 lb."""
    steel = worked("rebar", bar="#5"[1:], runs="4 x 318 ft", waste="10%")
    assert result(steel, "total_length", "ft") == 1272
    assert decimal_text(result(steel, "weight_with_waste", "lb"), 1) == "1459.4"


@pytest.mark.parametrize(
    ("bar", "lap", "inches"),
    [
        # IRC Table R608.5.4(1), Grade 40: 40 diameters.
        ("4", "40", 20), ("5", "40", 25), ("6", "40", 30),
        # The same, Grade 60: 60 diameters; the table rounds #5 up to 38.
        ("4", "60", 30), ("5", "60", Fraction("37.5")), ("6", "60", 45),
        # Masonry, Grade 60: 48 diameters, ACI 530 as quoted by a trade magazine.
        ("3", "48", 18), ("4", "48", 24), ("5", "48", 30), ("6", "48", 36), ("7", "48", 42), ("8", "48", 48),
    ],
)  # fmt: skip
def test_a_lap_is_as_long_as_the_tables_say(bar: str, lap: str, inches: Fraction | int) -> None:
    """So many bar diameters: a run of a foot more than one bar takes one lap more than its length."""
    steel = worked("rebar", bar=bar, runs="21 ft", lap=lap, stock_length="20 ft")
    assert result(steel, "total_length", "in") == 21 * 12 + inches


def test_forty_diameters_unless_given() -> None:
    """IRC Table R608.5.4(1), Grade 40."""
    steel = worked("rebar", bar="no. 4", runs="21 ft", stock_length="20 ft")
    assert result(steel, "total_length", "in") == 21 * 12 + 20


def test_bars_are_bought_for_pieces_and_not_only_for_length() -> None:
    """Three runs of 12 ft are 36 ft, two bars of 20 ft by length; no two of them come from one bar."""
    steel = worked("rebar", bar="4", runs=["12 ft", "12 ft", "12 ft"], stock_length="20 ft")
    assert number(steel, "bars") == 3


def test_a_bar_of_another_standard_is_given_by_its_diameter_and_weight() -> None:
    """A 12 mm bar of 0.888 kg/m: two runs of 10 m from bars of 6 m with laps of 0.48 m are 20.96 m."""
    steel = worked(
        "rebar",
        bar_diameter="12 mm",
        weight_per_length="0.888 kg/m",
        runs="2 x 10 m",
        lap="40",
        stock_length="6 m",
        metric=True,
    )
    assert result(steel, "total_length", "m") == Fraction("20.96")
    assert result(steel, "weight", "kg") == Fraction("20.96") * Fraction("0.888")
    assert number(steel, "bars") == 4


@given(st.integers(1, 2000), st.integers(60, 480))
def test_a_run_takes_the_fewest_bars_in_a_row(run: int, stock: int) -> None:
    """With n bars and n - 1 laps the run is reached, and with one bar fewer it is not."""
    steel = worked("rebar", bar="4", runs=f"{run} in", stock_length=f"{stock} in")
    laps = (result(steel, "total_length", "in") - run) / 20
    assert laps.denominator == 1
    assert (laps + 1) * stock - laps * 20 >= run
    assert laps == 0 or laps * stock - (laps - 1) * 20 < run
    assert number(steel, "bars") == laps + 1
