"""Concrete against worked examples and tables that others have printed."""

from __future__ import annotations

from fractions import Fraction

import pytest

from builder.words.rounding import decimal_text
from tests.takeoff.writing import number, result, worked

FT3_PER_YD3 = 27


def test_the_centre_line_of_a_footing_agrees_with_the_long_wall_short_wall_method() -> None:
    """Course slides "Concrete Structures": 30 ft 10 in x 40 ft 10 in outside, 1.5 ft wide, 1 ft thick.

    The slides print 137 ft 4 in, 206 ft3 and 7.6 yd3, once by the centre line and once by overlapping walls.
    """
    footing = worked(
        "strip_footing", length="40 ft 10 in", width="30 ft 10 in", footing_width="1.5 ft", thickness="1 ft"
    )
    assert result(footing, "centre_line", "ft") == Fraction(412, 3)
    assert result(footing, "volume", "ft3") == 206
    assert decimal_text(result(footing, "volume", "yd3"), 1) == "7.6"


def test_a_cross_wall_adds_its_clear_length() -> None:
    """University course notes CVE 367, at second hand: 82 + 82 + 38 + 38 + 78 = 318 ft of footing, 2 ft x 1 ft.

    The notes print 636 ft3, 667.8 ft3 with 5 % waste, and order 25 yd3 (24.73 unrounded).
    """
    footing = worked(
        "strip_footing",
        length="82 ft",
        width="42 ft",
        footing_width="2 ft",
        thickness="1 ft",
        cross_walls="78 ft",
        waste="5%",
    )
    assert result(footing, "centre_line", "ft") == 318
    assert result(footing, "volume", "ft3") == 636
    assert result(footing, "volume_with_waste", "ft3") == Fraction("667.8")
    assert decimal_text(result(footing, "volume_with_waste", "yd3"), 2) == "24.73"


def test_a_slab_with_waste() -> None:
    """Course notes CVE 367, at second hand: 2,896 ft2, 4 in thick: 965.3 ft3, with 8 % waste 1,042.56 ft3.

    The notes give the area only, so any two sides with that product will do. They multiply the rounded 965.3.
    """
    slab = worked("slab", length="2896 ft", width="1 ft", thickness="4 in", waste="8%")
    assert result(slab, "area", "ft2") == 2896
    assert decimal_text(result(slab, "volume", "ft3"), 1) == "965.3"
    assert abs(result(slab, "volume_with_waste", "ft3") - Fraction("1042.56")) < Fraction(1, 20)


# "Slabs, Columns & Footings", a sheet marked ICC, as quoted by two web pages. It cuts off where it should round.
COLUMNS = {
    8: ".013", 9: ".016", 10: ".020", 11: ".024", 12: ".029", 14: ".040", 15: ".045", 16: ".051", 18: ".065",
    20: ".081", 24: ".116", 30: ".181", 36: ".262", 42: ".356",
}  # fmt: skip
STRIPS = {
    6: (".019", ".023", ".028", ".037"),
    8: (".025", ".031", ".037", ".049"),
    9: (".028", ".035", ".042", ".056"),
    10: (".031", ".039", ".046", ".062"),
    12: (".037", ".046", ".056", ".074"),
    18: (".056", ".069", ".083", ".111"),
    24: (".074", ".093", ".111", ".148"),
}


@pytest.mark.parametrize(("inches", "yards"), list(COLUMNS.items()))
def test_a_round_column_takes_what_the_table_says_for_every_foot(inches: int, yards: str) -> None:
    """Cubic yards per foot of height, by diameter, within the digit that the sheet cuts off."""
    pier = worked("pier", diameter=f"{inches} in", height="1 ft")
    assert abs(result(pier, "volume", "yd3") - Fraction(yards)) < Fraction(1, 1000)


@pytest.mark.parametrize("depth", STRIPS)
@pytest.mark.parametrize(("column", "width"), [(0, 12), (1, 15), (2, 18), (3, 24)])
def test_a_strip_takes_what_the_table_says_for_every_foot(depth: int, column: int, width: int) -> None:
    """Cubic yards per foot of strip, by width and depth in inches."""
    strip = worked("strip_footing", length="60 ft", width="40 ft", footing_width=f"{width} in", thickness=f"{depth} in")
    per_foot = result(strip, "volume", "yd3") / result(strip, "centre_line", "ft")
    assert abs(per_foot - Fraction(STRIPS[depth][column])) < Fraction(1, 1000)


@pytest.mark.parametrize(("bag", "bags"), [("40 lb", 90), ("60 lb", 60), ("80 lb", 45)])
def test_a_cubic_yard_takes_so_many_bags(bag: str, bags: int) -> None:
    """27 ft3 over the yield that how-to pages print; several of them print 45 bags of 80 lb too."""
    slab = worked("slab", length="9 ft", width="3 ft", thickness="12 in", bag=bag)
    assert number(slab, "bags") == bags


def test_another_yield_gives_another_number_of_bags() -> None:
    """A forum has 2/3 ft3 for an 80 lb bag, 40.5 bags to the cubic yard: the yield is the author's to give."""
    slab = worked("slab", length="9 ft", width="3 ft", thickness="12 in", bag="80 lb", bag_yield="2/3 ft3")
    assert number(slab, "bags") == 41
    assert next(step for step in slab.steps if step.name.pattern == "bags before rounding").result.value == Fraction(
        "40.5"
    )


def test_a_small_footing_comes_to_47_bags() -> None:
    """Common practice, no source: 16 in wide, 3 1/2 in thick, 12 ft by 16 ft 6 in outside, 60 lb bags, 5 % waste."""
    footing = worked(
        "strip_footing",
        length="16 ft 6 in",
        width="12 ft",
        footing_width="16 in",
        thickness="3 1/2 in",
        bag="60 lb",
        waste="5%",
    )
    assert result(footing, "centre_line", "in") == 51 * 12 + 8
    assert decimal_text(result(footing, "volume", "ft3"), 2) == "20.09"
    assert decimal_text(result(footing, "volume", "ft3") / Fraction("0.45"), 2) == "44.65"
    assert number(footing, "bags") == 47


def test_forty_bags_are_more_than_a_ton_to_carry() -> None:
    """Common practice, no source: 40 bags of 60 lb weigh 2,400 lb."""
    slab = worked("slab", length="6 ft", width="9 ft", thickness="4 in", bag="60 lb")
    assert number(slab, "bags") == 40
    carried = next(step for step in slab.steps if step.name.pattern == "weight to carry")
    assert carried.result.in_unit("lb") == 2400


def test_the_design_page_s_footing() -> None:
    """Our own example, worked by hand: 42 ft of strip, 31.5 ft3, 33.075 with waste, 55.125 bags."""
    footing = worked(
        "strip_footing",
        length="14 ft",
        width="10 ft",
        footing_width="18 in",
        thickness="6 in",
        bag="80 lb",
        waste="5%",
    )
    assert str(footing.get("volume")) == "1.166666667 yd3"
    assert str(footing.get("bags")) == "56 bag"
    assert [str(step.result) for step in footing.steps] == [
        "42 ft", "31.5 ft3", "1.166666667 yd3", "1.225 yd3", "55.125 bag", "56 bag", "4480 lb",
    ]  # fmt: skip
