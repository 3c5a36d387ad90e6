"""The ways of writing inputs that builders use, and what they come to."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.takeoff.writing import Written, mistakes, number, result, worked

SLAB: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "thickness": "4 in"}


@pytest.mark.parametrize(
    "length", ["9 ft 8 in", "9' 8\"", "9'8\"", "116 in", "9 2/3 ft", "3 yd 8 in", "about 9 ft 8 in"]
)
def test_a_length_in_feet_and_inches(length: str) -> None:
    """All of these are 9 ft 8 in."""
    assert result(worked("slab", **SLAB | {"length": length}), "area", "in2") == 116 * 120


@pytest.mark.parametrize(
    "area", ["120 ft2", "120 sqft", "10 ft x 12 ft", "120 in x 12 ft", "10 ft by 12 ft", "10' x 12'"]
)
def test_an_area_or_its_two_sides(area: str) -> None:
    """All of these are 120 ft2."""
    assert result(worked("finish", area=area, coverage="120 ft2/gal"), "amount", "gal") == 1


@pytest.mark.parametrize("area", ["12 m2", "3 m x 4 m", "300 cm x 4 m"])
def test_a_metric_area(area: str) -> None:
    """All of these are 12 m2."""
    assert result(worked("finish", area=area, coverage="6 m2 per L", metric=True), "amount", "L") == 2


@pytest.mark.parametrize(
    ("slope", "ratio"),
    [
        ("2%", Fraction(1, 50)),
        ("0.02", Fraction(1, 50)),
        ("1:50", Fraction(1, 50)),
        ("1:48", Fraction(1, 48)),
        ("1/4 in per ft", Fraction(1, 48)),
        ("1/4 in/ft", Fraction(1, 48)),
        ('1/4" per foot', Fraction(1, 48)),
        ("20 mm per m", Fraction(1, 50)),
        ("20 mm/m", Fraction(1, 50)),
        ("45 deg", Fraction(1)),
    ],
)
def test_a_drain_s_slope(slope: str, ratio: Fraction) -> None:
    """As plumbers write it, in either system."""
    slope_found = number(worked("drain_run", length="10 ft", slope=slope), "slope") / 100
    assert abs(slope_found - ratio) < Fraction(1, 10**30)


@pytest.mark.parametrize("slope", ["1.5", "1 1/2", "3/2", "1.5:1", "about 1.5"])
def test_a_side_slope(slope: str) -> None:
    """How far out for 1 down: a pit of 1 ft by 1 ft, 1 ft deep, is 4 ft by 4 ft at the top."""
    pit = worked("pit", length="1 ft", width="1 ft", depth="1 ft", side_slope=slope)
    top = next(step for step in pit.steps if step.name.pattern == "area of the top")
    assert top.result.in_unit("ft2") == 16


@pytest.mark.parametrize("bar", ["4", "no. 4", "No.4", "number 4"])
def test_a_bar_size(bar: str) -> None:
    """With or without its word; with its # only in quotes, which the journal's reader takes off."""
    assert result(worked("rebar", bar=bar, runs="10 ft"), "weight", "lb") == Fraction("6.68")


@pytest.mark.parametrize("runs", [["42 ft", "42 ft"], "2 x 42 ft", ["2 × 42 ft"], "84 ft", "2x42 ft"])
def test_a_list_of_lengths(runs: Written) -> None:
    """Each on its own, so many of one, or a single one without a list."""
    assert result(worked("rebar", bar="4", runs=runs), "total_length", "ft") == 84


@pytest.mark.parametrize(
    "openings",
    [[["3 ft", "7 ft"], ["2 ft", "4 ft"]], ["3 ft x 7 ft", "24 in x 48 in"], [["3 ft", "7 ft"], '24" x 48"']],
)
def test_openings_as_pairs_or_as_sizes(openings: Written) -> None:
    """Width first, then height."""
    wall = worked("block_wall", length="20 ft", height="8 ft", openings=openings)
    assert result(wall, "net_area", "ft2") == 160 - 21 - 8


def test_one_size_may_stand_without_a_list() -> None:
    """A single door as `3 ft x 7 ft`."""
    wall = worked("block_wall", length="20 ft", height="8 ft", openings="3 ft x 7 ft")
    assert result(wall, "net_area", "ft2") == 160 - 21


def test_one_row_may_stand_without_a_list() -> None:
    """And a row without a count is one piece."""
    cut = worked("cut_list", pieces={"length": "3 ft"}, stock={"length": "8 ft"})
    assert number(cut, "boards") == 1


@pytest.mark.parametrize("bag", ["60 lb", "60 lbs", "60 pounds", "0.03 ton"])
def test_a_bag_is_known_by_its_weight(bag: str) -> None:
    """However it is written: 0.45 ft3 to a bag of 60 lb."""
    assert number(worked("slab", **SLAB | {"bag": bag}), "bags") == 104


@pytest.mark.parametrize("coverage", ["40 ft2/roll", "40 ft2 per roll", "40 ft2 per rolls", "40 sqft / roll"])
def test_a_coverage_by_the_roll(coverage: str) -> None:
    """Whatever word counts it."""
    assert str(worked("finish", area="400 ft2", coverage=coverage).get("amount")) == "10 roll"


@pytest.mark.parametrize("closed", ["yes", "Yes", "true"])
def test_yes_and_no(closed: str) -> None:
    """As YAML has them."""
    one, other = (worked("studs", length="48 ft", spacing="16 in", closed=word) for word in (closed, "no"))
    assert number(other, "count") - number(one, "count") == 1


def test_a_weight_is_not_taken_for_a_bag_that_is_near() -> None:
    """27 kg is 59.5 lb, and no yield is known for it."""
    assert mistakes("slab", metric=True, **SLAB | {"bag": "27 kg"})[0].found == "no yield is known for a bag of 27 kg"
