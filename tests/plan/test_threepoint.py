"""Estimates with three points: means, variances, and the chances the critical path method draws from them."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.threepoint import Moments, ThreePoint, beta_pert, pert, summed, triangular, triangular_share


def points(low: int | str, likely: int | str, high: int | str) -> ThreePoint:
    """An estimate."""
    return ThreePoint(low=Fraction(low), likely=Fraction(likely), high=Fraction(high))


def chance_by(path: Moments, day: float) -> float:
    """z = (T - sum of te) / sqrt(sum of variances), looked up in the normal distribution."""
    return NormalDist(float(path.mean), sqrt(path.variance)).cdf(day)


# A. Kucharski, "CPM and PERT" (2024-01-06), vignette of the R package critpath 0.2.2, pertexample1: a, m, b,
# te, variance.
VIGNETTE = {
    "A": (points(3, 5, 7), 5.0, 0.4444444),
    "B": (points(5, 7, 9), 7.0, 0.4444444),
    "C": (points(5, 5, 8), 5.5, 0.2500000),
    "D": (points(1, 6, 8), 5.5, 1.3611111),
    "E": (points(6, 8, 10), 8.0, 0.4444444),
    "F": (points(2, 6, 7), 5.5, 0.6944444),
    "G": (points(5, 6, 7), 6.0, 0.1111111),
    "H": (points(3, 5, 7), 5.0, 0.4444444),
    "I": (points(4, 6, 8), 6.0, 0.4444444),
}


@pytest.mark.parametrize("key", VIGNETTE)
def test_the_vignettes_means_and_variances(key: str) -> None:
    """te = (a + 4m + b) / 6 and ((b - a) / 6)^2, printed to seven decimals."""
    estimate, mean, variance = VIGNETTE[key]
    found = pert(estimate)
    assert (float(found.mean), round(float(found.variance), 7)) == (mean, variance)


def test_the_vignettes_path_is_normal_31_and_1_490712() -> None:
    """Its critical activities A, B, E, H, I."""
    path = summed(pert(VIGNETTE[key][0]) for key in "ABEHI")
    assert path.mean == 31
    assert round(sqrt(path.variance), 6) == 1.490712


def test_a_management_science_textbooks_chance_by_28() -> None:
    """Activities 1-3-5-7 of a textbook problem reproduced at flylib.com (book 3.287.1, page 117): expected
    24, and 0.9633 from a table read at z = 1.79; with variance 5 unrounded, 0.963181 (worked out here).
    """
    path = summed(map(pert, (points(5, 8, 17), points(3, 5, 7), points(4, 6, 8), points(3, 4, 5))))
    assert (path.mean, path.variance) == (24, 5)
    assert round(NormalDist().cdf(1.79), 4) == 0.9633
    assert round(chance_by(path, 28), 6) == 0.963181


@pytest.mark.parametrize(
    ("means", "variances", "day", "spread", "chance"),
    [
        pytest.param((7, 14, 11, 4), (4, 16, 4, 1), 41, 5, 0.8413, id="lecture notes on PERT, scribd 560744547"),
        pytest.param((3, 8, 6), (1, 4, 4), 20, 3, 0.8413, id="curioustab.com, question on three activities"),
    ],
)
def test_one_standard_deviation_late_is_safe_at_84_in_100(
    means: tuple[int, ...], variances: tuple[int, ...], day: int, spread: int, chance: float
) -> None:
    """Both published with z = 1; the second rounds to 0.84."""
    rows = [Moments(mean=Fraction(m), variance=Fraction(v)) for m, v in zip(means, variances, strict=True)]
    path = summed(rows)
    assert (path.mean, sqrt(path.variance)) == (day - spread, spread)
    assert round(chance_by(path, day), 4) == chance


# A course exercise at coursehero.com (file p2vl9tn): te to two decimals, then three paths with their spread.
EXERCISE = {
    "A": (points(5, 6, 7), 6.0), "B": (points(8, 8, 11), 8.5), "C": (points(6, 8, 11), 8.17),
    "D": (points(9, 12, 15), 12.0), "E": (points(5, 6, 9), 6.33), "F": (points(5, 6, 7), 6.0),
    "G": (points(2, 3, 7), 3.5), "H": (points(4, 4, 5), 4.17), "I": (points(5, 7, 8), 6.83),
}  # fmt: skip


@pytest.mark.parametrize(("path", "mean", "spread"), [("ACE", 20.5, 1.118), ("DFG", 21.5, 1.344), ("BHI", 19.5, 0.726)])
def test_the_exercises_three_competing_paths(path: str, mean: float, spread: float) -> None:
    """The longest path is not the only one that may be late."""
    found = summed(pert(EXERCISE[key][0]) for key in path)
    assert (float(found.mean), round(sqrt(found.variance), 3)) == (mean, spread)


def test_the_exercises_expected_times() -> None:
    """te, to two decimals."""
    assert {key: round(float(pert(told).mean), 2) for key, (told, _) in EXERCISE.items()} == {
        key: te for key, (_, te) in EXERCISE.items()
    }


# United States Government Accountability Office, Cost Estimating and Assessment Guide, GAO-20-195G (2020),
# table 12, "Ranges of Cost by WBS", thousands of dollars per air vehicle: low, most likely, high.
GAO = [
    points(17955, 19645, 21785),
    points(8500, 10553, 13000),
    points(4000, 4306, 5100),
    points(4100, 4305, 4650),
    points(550, 600, 650),
    points(32300, 35547, 52500),
    points(1950, 2136, 2600),
]


def test_the_sum_of_likely_costs_is_not_the_likely_sum() -> None:
    """GAO's lesson: summing the most likely costs gives 77 million a vehicle, 2.47 billion for all 32. The
    mean of the same table is 82,244 (its triangular moments, worked out by hand): 5 million more.
    """
    likely = sum(row.likely for row in GAO)
    assert (likely, likely * 32) == (77092, 2466944)
    assert summed(map(triangular, GAO)).mean == 82244


def test_the_spread_of_gaos_table() -> None:
    """Worked out by hand from the table, the rows independent: triangular 4,599.606, beta with shape four
    3,591.185, and (b - a) / 6 3,515.458.
    """
    spreads = [sqrt(summed(map(kind, GAO)).variance) for kind in (triangular, beta_pert, pert)]
    assert [round(spread, 3) for spread in spreads] == [4599.606, 3591.185, 3515.458]


def test_parts_that_go_together_spread_wider() -> None:
    """P. Govan, paulgovan.github.io/PRA/book, chapter ch-smm: means 10, 15, 20, variances 4, 9, 16,
    correlations .5, .3, .4 give mean 45, variance 49.4, standard deviation 7.03, 95 in 100 within 31.2 to
    58.8.
    """
    parts = [Moments(mean=Fraction(m), variance=Fraction(v)) for m, v in ((10, 4), (15, 9), (20, 16))]
    pairs = Fraction("0.5") * 2 * 3 + Fraction("0.3") * 2 * 4 + Fraction("0.4") * 3 * 4
    found = summed(parts, covariance=pairs)
    assert (found.mean, found.variance) == (45, Fraction("49.4"))
    spread = sqrt(found.variance)
    bounds = [NormalDist(45, spread).inv_cdf(share) for share in (0.025, 0.975)]
    assert (round(spread, 2), [round(bound, 1) for bound in bounds]) == (7.03, [31.2, 58.8])
    assert summed(parts).variance == 29


def test_a_textbook_triangle() -> None:
    """A triangular distribution over 5, 10, 15 has variance 25/6 (from memory)."""
    assert triangular(points(5, 10, 15)) == Moments(mean=Fraction(10), variance=Fraction(25, 6))


@pytest.mark.parametrize("wrong", [(3, 2, 4), (1, 5, 4), (-1, 2, 3)])
def test_low_likely_high_come_in_that_order(wrong: tuple[int, int, int]) -> None:
    """And none is below zero."""
    with pytest.raises(ValueError, match="must rise from zero"):
        points(*wrong)


estimates = st.lists(st.fractions(0, 1000, max_denominator=60), min_size=3, max_size=3).map(
    lambda three: points(*sorted(three))
)


@given(estimate=estimates, value=st.fractions(0, 1000, max_denominator=60), more=st.fractions(0, 100))
def test_a_share_below_grows_from_nothing_to_all(estimate: ThreePoint, value: Fraction, more: Fraction) -> None:
    """It is a distribution: rising, 0 below the low value, 1 from the high one on."""
    below = triangular_share(estimate, value)
    assert 0 <= below <= triangular_share(estimate, value + more) <= 1
    assert below == 0 or value >= estimate.low
    assert below == 1 or value < estimate.high


@given(estimate=estimates)
def test_the_share_below_agrees_with_the_mean(estimate: ThreePoint) -> None:
    """The mean is the low value plus the area above the share curve; Simpson's rule is exact for its two
    parabolas.
    """
    a, m, b = estimate.low, estimate.likely, estimate.high

    def area(start: Fraction, end: Fraction) -> Fraction:
        middle = (start + end) / 2
        left = triangular_share(estimate, start) if start > a else Fraction(0)
        right = triangular_share(estimate, end) if end < b else Fraction(1)
        return (
            (end - start) * (left + 4 * triangular_share(estimate, middle) + right) / 6 if start < end else Fraction(0)
        )

    assert b - area(a, m) - area(m, b) == triangular(estimate).mean


@given(estimate=estimates, factor=st.fractions(0, 10))
def test_scaling_scales_mean_and_spread(estimate: ThreePoint, factor: Fraction) -> None:
    """Mean by the factor, variance by its square, for all three kinds."""
    for kind in (pert, triangular, beta_pert):
        before, after = kind(estimate), kind(estimate.times(factor))
        assert after == Moments(mean=before.mean * factor, variance=before.variance * factor**2)
