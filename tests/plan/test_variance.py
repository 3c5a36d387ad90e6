"""A cost against its plan, in price and quantity. Amounts are cents.

Source of the published rows: OpenStax (Rice University), Principles of Accounting, Volume 2: Managerial
Accounting, chapter 8, sections 8.2 (materials) and 8.3 (labor), as in the book's source repository at commit
2165bf6 (2026-04-23). The book's F (favourable) is negative here, its U positive.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.cost_records import CostVariance
from builder.plan.variance import cost_variance


def cents(quantity: str, price: str) -> int:
    """An exact product in cents."""
    exact = Fraction(quantity) * Fraction(price) * 100
    assert exact.denominator == 1
    return exact.numerator


def variance(standard: tuple[str, str], actual: tuple[str, str]) -> CostVariance:
    """From (SQ, SP) and (AQ, AP) as the book gives them."""
    return cost_variance(
        planned_quantity=Fraction(standard[0]),
        planned_cost=cents(*standard),
        actual_quantity=Fraction(actual[0]),
        actual_cost=cents(*actual),
    )


PUBLISHED = [
    pytest.param(("20", "7.00"), ("20", "6.00"), -2000, 0, id="Connie's Candy, 8.2: (6 - 7) x 20 lb, 20.00 F"),
    pytest.param(("20", "7.00"), ("20", "9.00"), 4000, 0, id="Connie's Candy, 8.2: (9 - 7) x 20 lb, 40.00 U"),
    pytest.param(("0.25", "7.00"), ("0.20", "7.00"), 0, -35, id="Connie's Candy, 8.2: a box of 0.20 lb, 0.35 F"),
    pytest.param(("0.25", "7.00"), ("0.50", "7.00"), 0, 175, id="Connie's Candy, 8.2: a box of 0.50 lb, 1.75 U"),
    pytest.param(("0.25", "7.00"), ("0.50", "9.00"), 100, 175, id="Connie's Candy, 8.2: both, 2.75 U in all"),
    pytest.param(("88000", "0.85"), ("89000", "0.84"), -89000, 85000, id="Biglow, 8.2: 890 F, 850 U, 40 F in all"),
    pytest.param(("0.10", "8.00"), ("0.10", "7.50"), -5, 0, id="Connie's Candy, 8.3: rate 0.05 F"),
    pytest.param(("0.10", "8.00"), ("0.10", "9.50"), 15, 0, id="Connie's Candy, 8.3: rate 0.15 U"),
    pytest.param(("0.10", "8.00"), ("0.05", "8.00"), 0, -40, id="Connie's Candy, 8.3: time 0.40 F"),
    pytest.param(("0.10", "8.00"), ("0.20", "8.00"), 0, 80, id="Connie's Candy, 8.3: time 0.80 U"),
    pytest.param(("0.10", "8.00"), ("0.20", "9.50"), 30, 80, id="Connie's Candy, 8.3: both, 1.10 U in all"),
    # One figure of 8.3 prints the rate variance as 5,650 and the total as unfavourable. The book's own
    # formula on the book's own inputs gives 5,600 and 11,900 favourable, as its text says elsewhere.
    pytest.param(
        ("16500", "35.00"),
        ("16000", "35.35"),
        560000,
        -1750000,
        id="Biglow, 8.3: rate 5,600 U, time 17,500 F",
    ),
]


@pytest.mark.parametrize(("standard", "actual", "price", "quantity"), PUBLISHED)
def test_the_published_variances_come_out(
    standard: tuple[str, str], actual: tuple[str, str], price: int, quantity: int
) -> None:
    """(AP - SP) x AQ and (AQ - SQ) x SP, and their sum."""
    assert variance(standard, actual) == CostVariance(price=price, quantity=quantity, total=price + quantity)


def test_half_a_cent_goes_to_the_quantity_and_the_price_takes_the_rest() -> None:
    """Dog Bone Bakery, an exercise of 8.2 without a published answer: 3,550 cups for 0.55 where 3,562.5 for
    0.53 were due. By hand: (3550 - 3562.5) x 0.53 = -6.625, so -6.63; 1952.50 - 1888.125 is the whole of it.
    """
    due = Fraction(4750) * Fraction("0.75")
    found = cost_variance(planned_quantity=due, planned_cost=188813, actual_quantity=Fraction(3550), actual_cost=195250)
    assert found == CostVariance(price=7100, quantity=-663, total=6437)


def test_over_and_under_mirror_each_other_to_the_cent() -> None:
    """An exact half goes away from zero on both sides."""
    over, under = (
        cost_variance(planned_quantity=Fraction(2), planned_cost=1, actual_quantity=Fraction(used), actual_cost=1)
        for used in (3, 1)
    )
    assert (over.quantity, under.quantity) == (1, -1)


@pytest.mark.parametrize(
    ("planned", "actual"),
    [(None, Fraction(3)), (Fraction(3), None), (None, None), (Fraction(0), Fraction(3))],
)
def test_without_two_quantities_in_one_unit_only_the_total_is_told(
    planned: Fraction | None, actual: Fraction | None
) -> None:
    """Unknown is not zero; and nothing planned has no unit price to compare with."""
    found = cost_variance(planned_quantity=planned, planned_cost=500, actual_quantity=actual, actual_cost=620)
    assert found == CostVariance(price=None, quantity=None, total=120)


def test_what_was_planned_and_never_used_is_less_of_it_not_cheaper() -> None:
    """AQ = 0: all of the plan is quantity."""
    found = cost_variance(planned_quantity=Fraction(10), planned_cost=4000, actual_quantity=Fraction(0), actual_cost=0)
    assert found == CostVariance(price=0, quantity=-4000, total=-4000)


amounts = st.integers(-(10**9), 10**9)
quantities = st.fractions(min_value=0, max_value=10**6, max_denominator=1000)


@given(planned=quantities, cost=amounts, used=quantities, paid=amounts)
def test_price_and_quantity_always_add_to_the_total(planned: Fraction, cost: int, used: Fraction, paid: int) -> None:
    """To the cent, and the quantity variance is never half a cent or more from the exact one."""
    found = cost_variance(planned_quantity=planned, planned_cost=cost, actual_quantity=used, actual_cost=paid)
    assert found.total == paid - cost
    if found.price is None or found.quantity is None:
        assert planned == 0
    else:
        assert found.price + found.quantity == found.total
        assert abs(found.quantity - (used - planned) * cost / planned) <= Fraction(1, 2)


@given(used=st.integers(1, 10**4), due=st.integers(1, 10**4), paid=st.integers(0, 999), price=st.integers(0, 999))
def test_whole_prices_need_no_rounding(used: int, due: int, paid: int, price: int) -> None:
    """Against Decimal arithmetic on the formulas as they stand."""
    found = cost_variance(
        planned_quantity=Fraction(due),
        planned_cost=due * price,
        actual_quantity=Fraction(used),
        actual_cost=used * paid,
    )
    assert found.price == (Decimal(paid) - Decimal(price)) * used
    assert found.quantity == (Decimal(used) - Decimal(due)) * price
