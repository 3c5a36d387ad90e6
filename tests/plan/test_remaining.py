"""What a phase still needs. The rules are our own, so the checks are worked out by hand: no source."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.outcomes import GRID, OUTCOMES, slice_hours
from builder.plan.remaining import PhaseWork, Remaining, remaining_hours
from builder.plan.threepoint import ThreePoint, triangular

ESTIMATE = ThreePoint(low=Fraction(20), likely=Fraction(30), high=Fraction(70))  # mean 40


def mean_hours(left: Remaining) -> float:
    """The mean over all slices."""
    return sum(slice_hours(left)) / (OUTCOMES * GRID)


def left(progress: str | None, spent: int | None, estimate: ThreePoint = ESTIMATE) -> float:
    """The mean hours left of an estimate."""
    told = None if progress is None else Fraction(progress)
    return mean_hours(remaining_hours(estimate, told, None if spent is None else Fraction(spent)))


@pytest.mark.parametrize(
    ("progress", "spent", "hours"),
    [
        pytest.param(None, 0, 40, id="not begun: the whole estimate"),
        pytest.param(None, None, 40, id="begun, nothing known: the whole estimate"),
        pytest.param("0", 0, 40, id="no progress, no hours"),
        pytest.param("1/4", None, 30, id="progress and no hours: the estimate for the rest"),
        pytest.param("0", 20, 60, id="hours and nothing done: all of it, and half as much again"),
        pytest.param("1/2", 0, 10, id="half done in no time: half believed"),
        pytest.param("1/2", 20, 20, id="as estimated"),
        pytest.param("1/2", 40, 30, id="twice as slow, half done: half believed"),
        pytest.param("1/10", 8, 39.6, id="twice as slow, hardly begun: hardly believed"),
        pytest.param("9/10", 72, 7.6, id="twice as slow, nearly done: nearly believed"),
        pytest.param("1/2", 10, 15, id="twice as fast"),
        pytest.param("1", 50, 0, id="all of it"),
    ],
)
def test_progress_and_hours_are_weighed_by_how_much_is_done(
    progress: str | None, spent: int | None, hours: float
) -> None:
    """(1 - p) x mean x (1 - p + s / mean), to a thousandth."""
    assert left(progress, spent) == pytest.approx(hours, abs=1e-3)


def test_hours_without_progress_leave_what_can_still_be_true() -> None:
    """From 0 to 30, falling: of X above 12 the rest X - 12 is such a triangle from 0 to 18, with mean 6."""
    assert left(None, 12, ThreePoint(low=Fraction(0), likely=Fraction(0), high=Fraction(30))) == pytest.approx(
        6, abs=1e-3
    )


def test_hours_below_the_low_estimate_come_off_it() -> None:
    """Every X is above them: the mean less the hours."""
    assert left(None, 15) == pytest.approx(25, abs=1e-3)


@pytest.mark.parametrize("spent", [70, 90])
def test_a_phase_that_used_up_its_high_estimate_says_so(spent: int) -> None:
    """What it still needs is unknown, and must not pass for nothing."""
    found = remaining_hours(ESTIMATE, None, Fraction(spent))
    assert found.spent_up
    assert set(slice_hours(found)) == {0}
    assert not remaining_hours(ESTIMATE, Fraction(1, 2), Fraction(spent)).spent_up
    assert not remaining_hours(ESTIMATE, None, Fraction(69)).spent_up


def test_a_short_phase_is_spent_up_within_its_first_hour() -> None:
    """Half an hour at most, and three quarters of one worked."""
    short = ThreePoint(low=Fraction(1, 4), likely=Fraction(1, 4), high=Fraction(1, 2))
    assert remaining_hours(short, None, Fraction(3, 4)).spent_up


def test_nothing_worked_has_spent_up_nothing() -> None:
    """An inspection somebody else comes for is not overdue before it is begun."""
    none = ThreePoint(low=Fraction(0), likely=Fraction(0), high=Fraction(0))
    assert not remaining_hours(none, None, Fraction(0)).spent_up


def test_a_phase_of_no_hours_needs_none() -> None:
    """An inspection somebody else comes for."""
    none = ThreePoint(low=Fraction(0), likely=Fraction(0), high=Fraction(0))
    assert set(slice_hours(remaining_hours(none, None, Fraction(0)))) == {0}
    assert set(slice_hours(remaining_hours(none, Fraction(1, 2), Fraction(3)))) == {0}


@pytest.mark.parametrize(
    "wrong",
    [{"wait": Fraction(-1)}, {"spent": Fraction(-1)}, {"progress": Fraction(2)}, {"progress": Fraction(-1)}],
)
def test_impossible_work_is_refused(wrong: dict[str, Fraction]) -> None:
    """A wait or hours below none, progress outside 0 to 1."""
    with pytest.raises(ValueError, match="roof: a wait or hours below none"):
        PhaseWork(key="roof", **wrong)


estimates = st.lists(st.fractions(0, 200, max_denominator=4), min_size=3, max_size=3).map(
    lambda three: ThreePoint(low=min(three), likely=sorted(three)[1], high=max(three))
)


@given(
    estimate=estimates,
    progress=st.fractions(0, 1, max_denominator=20),
    spent=st.fractions(0, 300, max_denominator=2),
)
def test_the_rule_is_the_formula_it_states(estimate: ThreePoint, progress: Fraction, spent: Fraction) -> None:
    """The weighted whole, less the part done, in exact fractions."""
    whole, mean = remaining_hours(estimate, progress, spent).whole, triangular(estimate).mean
    if mean and progress:
        believed = (1 - progress) * mean + progress * (spent / progress)
        assert triangular(whole).mean == (1 - progress) * believed


@given(
    estimate=estimates,
    spent=st.fractions(0, 300, max_denominator=2),
    more=st.fractions(0, 50, max_denominator=2),
)
def test_hours_worked_never_add_to_what_is_left(estimate: ThreePoint, spent: Fraction, more: Fraction) -> None:
    """In no slice, while progress is not told; to a step for the whole steps."""
    before = slice_hours(remaining_hours(estimate, None, spent))
    after = slice_hours(remaining_hours(estimate, None, spent + more))
    assert all(later <= earlier + 1 for earlier, later in zip(before, after, strict=True))
