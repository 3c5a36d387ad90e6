"""Earned value. Amounts are cents.

Formulas: United States Department of Defense, Defense Acquisition University, "Earned Value Management Gold
Card". Worked example: R. Darnall and J. Preston, Project Management from Simple to Complex, version 1.1,
section 9.2 "Managing the Budget", figures 9.7 to 9.9 (Saylor copy).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.cost_records import EarnedValue
from builder.plan.earned import build_earned_value, earned_amount, earned_value

# "John's Move", day 6, figure 9.7: what was to be bought by then, how much of that was, its budget, its cost.
# The figure prints 7.00 for the small boxes; its own total 261.65, and 8.50 for five of ten, say 17.00.
JOHNS_MOVE = {
    "lunch": (3, 3, 4500, 3500),
    "small boxes": (10, 5, 1700, 950),
    "medium boxes": (15, 15, 3525, 2800),
    "large boxes": (7, 0, 2100, 0),
    "extra large boxes": (7, 0, 2625, 0),
    "short hanger boxes": (3, 0, 2385, 0),
    "box tape": (2, 2, 770, 550),
    "markers": (2, 2, 300, 200),
    "mattress and spring bags": (2, 2, 590, 750),
    "lift straps per pair": (1, 1, 2495, 3850),
    "bubble wrap": (1, 0, 1995, 0),
    "furniture pads": (4, 4, 3180, 2850),
}
BUDGET = 153400


def johns_move() -> EarnedValue:
    """The sums of the published lines."""
    rows = JOHNS_MOVE.values()
    return earned_value(
        budget=BUDGET,
        earned=sum(earned_amount(planned, Fraction(got, due)) for due, got, planned, _ in rows),
        actual=sum(actual for *_, actual in rows),
        planned=sum(planned for _, _, planned, _ in rows),
    )


def test_the_published_move_adds_up() -> None:
    """Figures 9.7 and 9.8: PV 261.65, EV 162.10, AC 154.50."""
    move = johns_move()
    assert (move.planned, move.earned, move.actual) == (26165, 16210, 15450)


def test_the_published_move_is_late_and_under_its_budget() -> None:
    """SV -99.55, CV 7.60, SPI 0.62, CPI 1.05, ETC 1,371.90, EAC 1,526.40 (section 9.2)."""
    move = johns_move()
    assert (move.schedule_variance, move.cost_variance) == (-9955, 760)
    assert (f"{float(move.schedule_index or 0):.2f}", f"{float(move.cost_index or 0):.2f}") == (
        "0.62",
        "1.05",
    )
    assert move.rest_as_planned is not None
    assert (move.rest_as_planned.to_complete, move.rest_as_planned.at_completion) == (137190, 152640)


def test_the_other_estimates_of_the_published_move() -> None:
    """Not printed there, worked out by hand from its figures: BAC / CPI = 1534.00 x 154.50 / 162.10 =
    1462.08; AC + (BAC - EV) / (CPI x SPI) = 154.50 + 1371.90 / 0.650006 = 2265.10; VAC of AC + BAC - EV is
    7.60.
    """
    move = johns_move()
    assert move.at_this_rate is not None
    assert move.at_cost_and_schedule is not None
    assert move.rest_as_planned is not None
    assert (move.at_this_rate.at_completion, move.at_cost_and_schedule.at_completion) == (146208, 226510)
    assert move.rest_as_planned.variance == 760


def test_an_index_is_not_rounded_before_it_is_used() -> None:
    """Section 9.2, second example: EV 80,000, AC 85,000, BAC 800,000. The book rounds CPI to 0.94 first and
    gets an ETC of "766,000"; exact it is 765,000.
    """
    found = earned_value(budget=80000000, earned=8000000, actual=8500000)
    assert found.at_this_rate is not None
    assert found.at_this_rate.to_complete == 76500000
    assert round((800000 - 80000) / 0.94, -3) == 766000


def test_without_dates_the_schedule_is_left_out() -> None:
    """No planned value: no SV, no SPI and no estimate that needs one; the rest stands."""
    found = earned_value(budget=1000, earned=400, actual=500)
    assert (found.schedule_variance, found.schedule_index, found.at_cost_and_schedule) == (None, None, None)
    assert (found.cost_variance, found.cost_index) == (-100, Fraction(4, 5))
    assert found.at_this_rate is not None
    assert found.at_this_rate.at_completion == 1250


def test_what_nobody_knows_is_not_worked_out() -> None:
    """Costs and no progress: how much was earned is unknown, and so is everything from it."""
    found = earned_value(budget=1000, earned=None, actual=500, planned=300)
    assert found == EarnedValue(budget=1000, earned=None, actual=500, planned=300)


@pytest.mark.parametrize(
    ("earned", "actual", "planned"),
    [(0, 0, 0), (0, 500, 300), (400, 0, 0), (0, -20, 0)],
    ids=["nothing yet", "spent, nothing earned", "earned for nothing", "money back"],
)
def test_nothing_is_divided_by_nothing(earned: int, actual: int, planned: int) -> None:
    """An estimate that rests on a rate needs something earned and something spent."""
    found = earned_value(budget=1000, earned=earned, actual=actual, planned=planned)
    assert found.at_this_rate is None
    assert found.at_cost_and_schedule is None
    assert found.rest_as_planned is not None


def test_a_budget_that_is_gone_cannot_be_kept() -> None:
    """TCPI has no value once nothing of the budget is left to spend."""
    assert earned_value(budget=1000, earned=800, actual=1000).performance_for_budget is None


def test_the_build_is_the_sum_of_its_phases_and_has_one_index() -> None:
    """5 earned for 4, and 1 earned for 2: 6 for 6."""
    phases = [earned_value(budget=10, earned=5, actual=4), earned_value(budget=10, earned=1, actual=2)]
    build = build_earned_value(phases)
    assert (build.budget, build.earned, build.actual, build.cost_index) == (20, 6, 6, Fraction(1))


def test_one_unknown_phase_makes_the_build_unknown() -> None:
    """A sum that leaves something out is not the sum."""
    known, unknown = (
        earned_value(budget=10, earned=5, actual=4),
        earned_value(budget=10, earned=None, actual=2),
    )
    assert build_earned_value([known, unknown]) == EarnedValue(budget=20, earned=None, actual=6, planned=None)


def test_a_share_of_work_is_a_share() -> None:
    """More than all of it, or less than none, is refused."""
    with pytest.raises(ValueError, match=r"between 0 and 1, not 3/2"):
        earned_amount(100, Fraction(3, 2))


amounts = st.integers(1, 10**8)


@given(budget=amounts, share=st.fractions(0, 1), actual=amounts, planned=amounts)
def test_the_gold_cards_identities_hold(budget: int, share: Fraction, actual: int, planned: int) -> None:
    """EAC = AC + ETC, VAC = BAC - EAC, AC + (BAC - EV) / CPI = BAC / CPI, and TCPI for its own EAC is CPI."""
    earned = earned_amount(budget, share)
    found = earned_value(budget=budget, earned=earned, actual=actual, planned=planned)
    estimates = [found.at_this_rate, found.rest_as_planned, found.at_cost_and_schedule]
    for estimate in filter(None, estimates):
        assert estimate.at_completion == actual + estimate.to_complete == budget - estimate.variance
    if found.at_this_rate is not None and found.cost_index is not None:
        assert abs(found.at_this_rate.at_completion - budget / found.cost_index) <= Fraction(1, 2)
        needed = found.at_this_rate.performance_needed
        if needed is not None and found.at_this_rate.to_complete > 10**4:
            assert abs(needed / found.cost_index - 1) < Fraction(1, 10**4)


@given(budget=amounts, actual=amounts)
def test_finished_work_comes_to_what_it_cost(budget: int, actual: int) -> None:
    """With EV = BAC every estimate is AC and nothing is left."""
    found = earned_value(budget=budget, earned=budget, actual=actual, planned=budget)
    for estimate in (found.at_this_rate, found.rest_as_planned, found.at_cost_and_schedule):
        assert estimate is not None
        assert (estimate.at_completion, estimate.to_complete) == (actual, 0)
