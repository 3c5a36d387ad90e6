"""The outcomes a forecast looks at, against closed-form moments and against Python's own random numbers."""

from __future__ import annotations

import random
from bisect import bisect_right
from fractions import Fraction
from itertools import combinations
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.outcomes import BANDS, GRID, MIDDLE, OUTCOMES, slice_hours, slice_numbers
from builder.plan.remaining import Remaining
from builder.plan.threepoint import ThreePoint, summed, triangular, triangular_share

# United States Government Accountability Office, Cost Estimating and Assessment Guide, GAO-20-195G (2020),
# table 12: low, most likely, high.
GAO = [
    (17955, 19645, 21785), (8500, 10553, 13000), (4000, 4306, 5100), (4100, 4305, 4650), (550, 600, 650),
    (32300, 35547, 52500), (1950, 2136, 2600),
]  # fmt: skip

PHASES = [
    (8, 12, 20),
    (16, 21, 40),
    (20, 30, 50),
    (8, 10, 16),
    (10, 14, 24),
    (20, 28, 50),
    (6, 9, 20),
    (10, 15, 30),
]


def three(low: int, likely: int, high: int) -> ThreePoint:
    """An estimate."""
    return ThreePoint(low=Fraction(low), likely=Fraction(likely), high=Fraction(high))


def sums(rows: list[tuple[int, int, int]]) -> list[float]:
    """The sum of all rows in each outcome, in the rows' unit, from the least to the most."""
    columns = [
        [slice_hours(Remaining(whole=three(*row)))[number] for number in slice_numbers(place)]
        for place, row in enumerate(rows)
    ]
    return sorted(sum(outcome) / GRID for outcome in zip(*columns, strict=True))


def spread(values: list[float]) -> float:
    """The standard deviation."""
    mean = sum(values) / len(values)
    return sqrt(sum((value - mean) ** 2 for value in values) / len(values))


def drawn(rows: list[tuple[int, int, int]], count: int = 40000) -> list[float]:
    """The same sums drawn with Python's random.triangular."""
    chance = random.Random(7)
    return sorted(sum(chance.triangular(low, high, likely) for low, likely, high in rows) for _ in range(count))


def share_below(ordered: list[float], value: float) -> float:
    """The share of values at or below this one."""
    return bisect_right(ordered, value) / len(ordered)


@pytest.mark.parametrize("place", [0, 1, 7, 30, 31, 45])
def test_every_phase_meets_every_slice_once(place: int) -> None:
    """So its own mean and spread are as exact as the slices are narrow."""
    assert sorted(slice_numbers(place)) == list(range(OUTCOMES))


def test_any_two_phases_meet_in_every_pair_of_bands_once() -> None:
    """Of all pairs of the 31 bands each is there, for all pairs of the first 31 phases."""
    bands = [[number // BANDS for number in slice_numbers(place)] for place in range(BANDS)]
    for one, other in combinations(bands, 2):
        assert len(set(zip(one, other, strict=True))) == OUTCOMES


def test_the_outcomes_are_the_same_on_every_machine() -> None:
    """Pinned from a run, not published: a change of the generator changes every forecast ever made."""
    assert slice_numbers(0)[:6] == (438, 455, 459, 451, 452, 437)
    assert slice_numbers(1)[:6] == (26, 372, 635, 431, 258, 521)
    assert slice_numbers(35)[:6] == (514, 460, 126, 621, 136, 913)


@given(
    low=st.integers(0, 200),
    likely=st.integers(0, 200),
    high=st.integers(1, 400),
    worked=st.fractions(0, 150, max_denominator=4),
)
def test_a_slice_is_the_triangular_distribution_turned_around(
    low: int, likely: int, high: int, worked: Fraction
) -> None:
    """The share of the estimate below a slice's middle is that of the slice, to the step; given what is
    worked already.
    """
    whole = three(*sorted((low, likely, high)))
    found = slice_hours(Remaining(whole=whole, worked=worked))
    if worked and worked >= whole.high:
        return
    below = triangular_share(whole, worked) if worked else Fraction(0)
    step = Fraction(2, GRID)
    for number in (0, 100, MIDDLE, 700, OUTCOMES - 1):
        share = below + (1 - below) * Fraction(2 * number + 1, 2 * OUTCOMES)
        hours = worked + Fraction(found[number], GRID)
        assert triangular_share(whole, hours - step) <= share <= triangular_share(whole, hours + step)


@pytest.mark.parametrize("rows", [GAO, PHASES, PHASES[:1], PHASES[:2]], ids=["GAO", "8 phases", "1 phase", "2 phases"])
def test_mean_and_spread_of_a_sum_agree_with_the_closed_form(rows: list[tuple[int, int, int]]) -> None:
    """(a + m + b) / 3 and (a2 + m2 + b2 - am - ab - mb) / 18, summed. Measured: means to 3 in a million,
    spreads to 1 in 1000.
    """
    exact = summed(triangular(three(*row)) for row in rows)
    found = sums(rows)
    assert sum(found) / len(found) == pytest.approx(float(exact.mean), rel=1e-5)
    assert spread(found) == pytest.approx(sqrt(exact.variance), rel=2e-3)


def test_gaos_table_has_the_mean_and_spread_of_its_moments() -> None:
    """82,244 and 4,599.6, worked out by hand from table 12; its likely values add to 77,092, and the chance
    of coming in at or under those is about one in eight (0.126 with two million random draws).
    """
    found = sums(GAO)
    assert sum(found) / len(found) == pytest.approx(82244, abs=1)
    assert spread(found) == pytest.approx(4599.6, rel=2e-3)
    assert sum(value <= 77092 for value in found) / len(found) == pytest.approx(0.126, abs=0.01)


@pytest.mark.parametrize("rows", [GAO, PHASES], ids=["GAO", "8 phases"])
def test_shares_of_a_sum_agree_with_random_draws(rows: list[tuple[int, int, int]]) -> None:
    """Forty thousand draws with Python's generator: nowhere further apart than three in a hundred, at the
    median and the four-in-five point a good deal less.
    """
    found, draws = sums(rows), drawn(rows)
    for place, value in enumerate(found):
        assert share_below(draws, value) == pytest.approx((place + 0.5) / len(found), abs=0.03)
    for share in (0.5, 0.8):
        there = found[int(share * len(found))]
        assert share_below(draws, there) == pytest.approx(share, abs=0.015)


def test_a_single_point_is_the_same_in_every_slice() -> None:
    """Nothing is spread that was not."""
    assert set(slice_hours(Remaining(whole=three(12, 12, 12)))) == {12 * GRID}
