"""What a plan still lacks after a load that was shared: what went elsewhere has not come to this build.

Four tons are planned at 40.00. Amounts are in minor units, worked out by hand.
"""

from __future__ import annotations

import pytest

from tests.plan.planned import footing, planned, worked

STONE = "key: stone, material: Stone, quantity: 4 ton, unit_cost: 40"
LINE = "material: Stone, quantity: 4 ton, cost: 160"


@pytest.mark.parametrize(
    ("line", "lacking"),
    [
        (LINE, 0),
        (f"{LINE}, share: 50%", 8000),  # two tons came, two are lacking
        (f"{LINE}, share: 120", 4000),  # three quarters of the price
        (f"{LINE}, returned: 2 ton", 8000),  # as if half had gone back
        (f"{LINE}, returned: 2 ton, share: 50%", 12000),  # one ton came
        (f"{LINE}, used: 1 ton", 0),  # three lie in stock, and need not be bought again
        ("material: Stone, quantity: 10 ton, cost: 400, share: 30%", 4000),  # three tons
        ("material: Stone, quantity: 10 ton, cost: 400, share: 90%", 0),  # more than was planned lacks nothing
    ],
)
def test_only_the_part_for_this_build_has_come(line: str, lacking: int) -> None:
    """By the share as a rate or as an amount."""
    (match,) = planned(footing(STONE), worked(line)).matches
    assert match.lacking == lacking


@pytest.mark.parametrize(
    ("line", "lacking", "missing"),
    [
        ("material: Stone, quantity: 4 ton, cost: 160, share: 50%", 0, "0 ton"),  # as planned
        ("material: Stone, quantity: 2 ton, cost: 80, share: 50%", 4000, "2 ton"),  # half of what was to come
        ("material: Stone, quantity: 1 ton, cost: 40", 4000, "2 ton"),  # one ton, and none of it elsewhere
    ],
)
def test_a_load_that_was_planned_to_be_shared(line: str, lacking: int, missing: str) -> None:
    """Two tons of four are for this build, at 80.00; what is missing is told as it is bought."""
    (match,) = planned(footing(f"{STONE}, share: 50%"), worked(line)).matches
    assert (match.planned_cost, match.lacking, str(match.missing)) == (8000, lacking, missing)


@pytest.mark.parametrize(
    ("plan", "line", "lacking"),
    [
        # Two loads at 150.00 of which half is for this build: 150.00. One came, and 75.00 of it is known.
        ("quantity: 2 load, cost: 300, share: 150", "quantity: 1 load, cost: unknown, share: 75", 7500),
        ("quantity: 2 load, cost: 300, share: 150", "quantity: 1 load, cost: 150, share: 75", 7500),
        ("quantity: 2 load, cost: 300", "quantity: 1 load, cost: unknown, share: 75", 22500),
    ],
)
def test_of_a_load_of_unknown_cost_the_known_money_counts(plan: str, line: str, lacking: int) -> None:
    """How much of the load that was, nobody knows."""
    (match,) = planned(footing(f"key: s, material: Sand, {plan}"), worked(f"material: Sand, {line}")).matches
    assert match.lacking == lacking


def test_what_was_bought_is_told_whole() -> None:
    """Four tons stood on the receipt, whoever took them."""
    (match,) = planned(footing(STONE), worked(f"{LINE}, share: 50%")).matches
    assert (str(match.bought), str(match.quantity)) == ("4 ton", "2 ton")
