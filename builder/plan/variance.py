"""A cost against its plan, split into price and quantity."""

from __future__ import annotations

from fractions import Fraction

from builder.plan.cost_records import CostVariance
from builder.words.rounding import half_up


def cost_variance(
    *,
    planned_quantity: Fraction | None,
    planned_cost: int,
    actual_quantity: Fraction | None,
    actual_cost: int,
) -> CostVariance:
    """Price variance (AP - SP) x AQ and quantity variance (AQ - SQ) x SP, from costs in minor units.

    AQ x AP is the actual cost itself and SP = planned cost / SQ, so no unit price is ever rounded. The
    quantity variance is rounded once, half up (an exact half away from zero, so that over and under mirror
    each other); the price variance is the rest of the total, so the two add to it exactly. Quantities are in
    one unit; None where there is none. A planned quantity of nothing has no unit price, and only the total is
    told.

    Formulas: OpenStax, Principles of Accounting, Volume 2: Managerial Accounting, section 8.2.

    >>> bags, used = Fraction(8), Fraction(9)
    >>> cost_variance(planned_quantity=bags, planned_cost=800, actual_quantity=used, actual_cost=990)
    CostVariance(price=90, quantity=100, total=190)
    """
    total = actual_cost - planned_cost
    if not planned_quantity or actual_quantity is None:
        return CostVariance(price=None, quantity=None, total=total)
    more = half_up((actual_quantity - planned_quantity) * planned_cost / planned_quantity)
    return CostVariance(price=total - more, quantity=more, total=total)
