"""Digging, stone and drains against worked examples that others have printed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.rounding import decimal_text
from tests.takeoff.writing import number, result, worked


def test_swell_and_loads() -> None:
    """Peterson and Dagostino, Estimating in Building Construction, Ex. 9-2: 1,000 yd3 of dense clay, 30 % swell.

    1,300 yd3 loose, and 186 loads of 7 yd3.
    """
    pit = worked("pit", length="27 ft", width="100 ft", depth="10 ft", swell="30%", truck="7 yd3")
    assert result(pit, "volume", "yd3") == 1000
    assert result(pit, "loose_volume", "yd3") == 1300
    assert number(pit, "loads") == 186


@pytest.mark.parametrize(
    ("bank", "swell", "truck", "loads"),
    [
        # Ex. 9-3 of the same book as far as it could be read: 500 yd3 compacted at 95 % are 526 yd3 in the bank. The
        # loads are our own arithmetic with its 15 % swell.
        ("526 6/19 yd", "15%", "7 yd3", 87),
        # A question from the same book, as quoted by an answers page: 1,490 yd3 at 95 %, 14 % swell, 149 loads.
        ("1568 8/19 yd", "14%", "12 yd3", 149),
    ],
)
def test_shrink_swell_and_loads(bank: str, swell: str, truck: str, loads: int) -> None:
    """The volume in the bank is put in as a pit of one yard by one yard, as deep as there are cubic yards."""
    pit = worked("pit", length="1 yd", width="1 yd", depth=bank, swell=swell, truck=truck)
    assert number(pit, "loads") == loads


def test_levelling_a_small_plot() -> None:
    """Common practice, no source: 16 in of fall over 16 ft slopes 8.33 %; levelling it 12 ft wide cuts 128 ft3."""
    pad = worked("level_pad", length="16 ft", width="12 ft", fall="16 in")
    assert decimal_text(number(pad, "slope"), 2) == "8.33"
    assert result(pad, "cut_volume", "ft3") == 128


def test_a_trench_by_its_average_width() -> None:
    """Course notes CVE 367, at second hand: 306 ft x 6 ft x 20 in is 3,060 ft3, 113 yd3."""
    trench = worked("trench", length="306 ft", width="6 ft", depth="20 in")
    assert result(trench, "volume", "ft3") == 3060
    assert decimal_text(result(trench, "volume", "yd3"), 0) == "113"


def test_stone_round_a_pipe() -> None:
    """Our own arithmetic: 90 ft3 of trench less 5.24 ft3 of a 4 in pipe; no published example was found."""
    trench = worked("trench", length="60 ft", width="18 in", depth="12 in", pipe_diameter="4 in")
    assert result(trench, "volume", "ft3") == 90
    assert decimal_text(90 - result(trench, "stone_volume", "ft3"), 2) == "5.24"


def test_stone_weighs_what_the_tables_say() -> None:
    """EPA, Standard Volume-to-Weight Conversion Factors (2006), as quoted: 2,700 lb/yd3, 1.35 ton to the cubic yard."""
    assert result(worked("gravel_bed", length="9 ft", width="3 ft", depth="1 ft"), "weight", "ton") == Fraction("1.35")
    bed = worked("gravel_bed", length="60 ft", width="18 in", depth="1 ft", density="2700 lb/yd3")
    assert result(bed, "weight", "ton") == Fraction("4.5")


def test_compaction_and_waste_go_on_the_loose_stone() -> None:
    """By arithmetic: 1 yd3 in place is 1.2 loose, 1.26 with waste, and weighs 1.62 and 1.701 ton."""
    bed = worked("gravel_bed", length="9 ft", width="3 ft", depth="1 ft", compaction="20%", waste="5%")
    assert [result(bed, key, "yd3") for key in ("volume", "loose_volume", "loose_volume_with_waste")] == [
        1, Fraction("1.2"), Fraction("1.26"),
    ]  # fmt: skip
    assert result(bed, "weight", "ton") == Fraction("1.62")
    assert result(bed, "weight_with_waste", "ton") == Fraction("1.701")


def test_the_fall_of_a_drain() -> None:
    """Commentary on IRC P3005.3, as quoted by a web page: 10 ft at 1/4 in per ft fall 2.5 in."""
    assert result(worked("drain_run", length="10 ft", slope="1/4 in per ft"), "fall", "in") == Fraction("2.5")


@pytest.mark.parametrize(
    ("slope", "percent", "digits"),
    [("1/4 in per ft", "2", 0), ("1/8 in per ft", "1", 0), ("1/16 in/ft", "0.5", 1)],
)
def test_slopes_that_codes_print_as_percent(slope: str, percent: str, digits: int) -> None:
    """IPC Table 704.1, as adopted by Chicago, has the inches per foot; codes print them as 2, 1 and 0.5 %."""
    drain = worked("drain_run", length="48 ft", slope=slope)
    assert decimal_text(number(drain, "slope"), digits) == percent


def test_ground_that_falls_away_from_a_building() -> None:
    """IRC R401.3 (2006), as quoted by a forum: 6 in in the first 10 ft is 5 %."""
    assert number(worked("drain_run", length="10 ft", fall="6 in"), "slope") == 5


sides = st.integers(1, 400)


@given(sides, sides, st.integers(1, 120), st.fractions(min_value=0, max_value=3, max_denominator=4), st.integers(0, 48))
def test_the_prismoidal_volume_lies_between_the_two_rougher_rules(
    length: int, width: int, depth: int, lean: Fraction, room: int
) -> None:
    """Mean dimensions give too little and average end areas too much, and both are right for straight sides."""
    pit = worked(
        "pit",
        length=f"{length} in",
        width=f"{width} in",
        depth=f"{depth} in",
        side_slope=f"{lean.numerator}/{lean.denominator}",
        workspace=f"{room} in",
    )
    out = lean * depth
    mean = (length + 2 * room + out) * (width + 2 * room + out) * depth
    volume, average = (result(pit, key, "in3") for key in ("volume", "average_end_area_volume"))
    assert mean <= volume <= average
    assert (mean == volume == average) == (lean == 0)


@given(sides, sides, st.integers(1, 120), st.fractions(min_value=0, max_value=3, max_denominator=4))
def test_the_prismoidal_volume_is_that_of_a_truncated_pyramid(
    length: int, width: int, depth: int, lean: Fraction
) -> None:
    """The integral of (L + 2sz)(W + 2sz) over the depth, worked out by hand."""
    pit = worked(
        "pit",
        length=f"{length} in",
        width=f"{width} in",
        depth=f"{depth} in",
        side_slope=f"{lean.numerator}/{lean.denominator}",
    )
    grown = 2 * lean
    exact = length * width * depth + grown * (length + width) * Fraction(depth**2, 2) + grown**2 * Fraction(depth**3, 3)
    assert result(pit, "volume", "in3") == exact
