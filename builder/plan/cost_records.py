"""What the plan layer finds about money. Amounts are whole minor units of the journal's currency."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class CostVariance:
    """How far a cost went from its plan, in minor units; positive is over the plan.

    `price` is "dearer than planned", `quantity` is "more of it than planned"; they always add to `total`.
    Both are None when plan and purchase have no quantities in one unit, or nothing was planned to divide by.
    """

    price: int | None
    quantity: int | None
    total: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """One way to say what the whole will come to, in minor units.

    `at_completion` (EAC) is rounded once, half up; `to_complete` (ETC) = EAC - AC; `variance` (VAC) = BAC -
    EAC, favourable positive. `performance_needed` (TCPI) = (BAC - EV) / (EAC - AC), None when nothing is left
    to spend.
    """

    at_completion: int
    to_complete: int
    variance: int
    performance_needed: Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class EarnedValue:
    """Earned value of a phase or a build; amounts in minor units, indices exact.

    Here the signs are the method's own: a positive variance and an index above 1 are favourable.
    What cannot be told is None: everything but the inputs when `earned` is; schedule figures without
    `planned`.
    """

    budget: int
    """BAC, the budget at completion."""
    actual: int
    """AC (ACWP), what the work done has cost."""
    earned: int | None
    """EV (BCWP), the budget of the work done. None when nobody knows how far it has got."""
    planned: int | None
    """PV (BCWS), the budget of the work due by now. None when the plan has no dates."""
    cost_variance: int | None = None
    schedule_variance: int | None = None
    cost_index: Fraction | None = None
    schedule_index: Fraction | None = None
    at_this_rate: Estimate | None = None
    """EAC = BAC / CPI: the rest goes as what is done went."""
    rest_as_planned: Estimate | None = None
    """EAC = AC + BAC - EV: the rest costs what the plan says."""
    at_cost_and_schedule: Estimate | None = None
    """EAC = AC + (BAC - EV) / (CPI x SPI)."""
    performance_for_budget: Fraction | None = None
    """TCPI to end on the budget, (BAC - EV) / (BAC - AC); None when the budget is gone."""
