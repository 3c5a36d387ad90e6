"""Earned value: what the work done was to cost, against what it did cost and what was due by now.

Formulas: United States Department of Defense, Defense Acquisition University, "Earned Value Management Gold
Card".
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from builder.plan.cost_records import EarnedValue, Estimate
from builder.words.rounding import half_up


def earned_amount(budget: int, share: Fraction) -> int:
    """The budget of the share (0 to 1) that is done, or due: minor units, rounded once, half up.

    >>> earned_amount(1001, Fraction(1, 2))
    501
    """
    if not 0 <= share <= 1:
        raise ValueError(f"a share of the work lies between 0 and 1, not {share}")
    return half_up(budget * share)


def earned_value(*, budget: int, earned: int | None, actual: int, planned: int | None = None) -> EarnedValue:
    """Every figure of earned value from BAC, EV, AC and PV in minor units.

    Estimates are exact until they are rounded once, half up. An index or estimate whose divisor is not above
    zero is None: nothing spent yet, nothing earned yet, nothing due yet.
    """
    if earned is None:
        return EarnedValue(budget=budget, earned=None, actual=actual, planned=planned)
    cost_index = _ratio(earned, actual)
    schedule_index = None if planned is None else _ratio(earned, planned)
    left = budget - earned
    return EarnedValue(
        budget=budget,
        earned=earned,
        actual=actual,
        planned=planned,
        cost_variance=earned - actual,
        schedule_variance=None if planned is None else earned - planned,
        cost_index=cost_index,
        schedule_index=schedule_index,
        at_this_rate=_estimate(budget, left, actual, cost_index),
        rest_as_planned=_estimate(budget, left, actual, Fraction(1)),
        at_cost_and_schedule=_estimate(budget, left, actual, _product(cost_index, schedule_index)),
        performance_for_budget=_ratio(left, budget - actual),
    )


def build_earned_value(phases: Iterable[EarnedValue]) -> EarnedValue:
    """The build's earned value from the sums of its phases'; one phase's unknown makes the build's unknown.

    The estimates are those of the sums, not the sums of the estimates: a build has one index.
    """
    rows = tuple(phases)
    return earned_value(
        budget=sum(row.budget for row in rows),
        earned=_known_sum(row.earned for row in rows),
        actual=sum(row.actual for row in rows),
        planned=_known_sum(row.planned for row in rows),
    )


def _estimate(budget: int, left: int, actual: int, performance: Fraction | None) -> Estimate | None:
    """EAC = AC + (BAC - EV) / performance, and what follows from it."""
    if not performance or performance < 0:
        return None
    whole = half_up(actual + left / performance)
    return Estimate(
        at_completion=whole,
        to_complete=whole - actual,
        variance=budget - whole,
        performance_needed=_ratio(left, whole - actual),
    )


def _ratio(part: int, whole: int) -> Fraction | None:
    return Fraction(part, whole) if whole > 0 else None


def _product(one: Fraction | None, other: Fraction | None) -> Fraction | None:
    return None if one is None or other is None else one * other


def _known_sum(amounts: Iterable[int | None]) -> int | None:
    total = 0
    for amount in amounts:
        if amount is None:
            return None
        total += amount
    return total
