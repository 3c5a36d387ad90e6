"""Cost lists as amateur builders write them: an amount and no quantity, a product that is not the amount, a price
nobody remembers, a total that is out by one.
"""

from __future__ import annotations

from dataclasses import dataclass
from textwrap import indent

import pytest

from tests.ledger.journals import Kept, keep


@dataclass(frozen=True, slots=True, kw_only=True)
class CostList:
    """A list of lines under a total as its author wrote them, and what the ledger makes of it (minor units)."""

    lines: tuple[str, ...]
    total: str
    paid: int
    unpriced: int = 0
    checked: bool = False
    says: str = ""


LISTS = {
    # 36.90 + 114.00 + 8.05
    "the amount stands alone": CostList(
        lines=("Galvanised nails, 36.90", "Two sheets of ply, 114", "{material: Hinges, cost: 8.05}"),
        total="158.95",
        paid=15895,
        checked=True,
    ),
    # 14 x 6.10 = 85.40, and 84.00 were paid: 84.00 + 36.90
    "quantity x price differs from the amount": CostList(
        lines=("{material: Mix, quantity: 14 bag, unit_cost: 6.10, cost: 84}", "Galvanised nails, 36.90"),
        total="120.90",
        paid=12090,
        checked=True,
        says=(
            "episodes/01-day.md:8:66: warning: quantity x unit_cost is 85.40, and cost is 84.00; "
            "expected both the same; cost holds; remove unit_cost if only the amount is known"
        ),
    ),
    # 36.90 + 8.05; the total leaves 15.05 for the post
    "a line is unpriced": CostList(
        lines=("Galvanised nails, 36.90", "{material: Post, cost: unknown}", "Hinges, 8.05"),
        total="60",
        paid=4495,
        unpriced=1,
        says=(
            "episodes/01-day.md:6:12: warning: the total of 60.00 cannot be checked: 1 line has no price; "
            "expected every line with its price; the others come to 44.95 with tax and delivery; "
            "write cost: rest on that line, which makes it 15.05"
        ),
    ),
    "two lines are unpriced": CostList(
        lines=("Galvanised nails, 36.90", "{material: Post, cost: unknown}", "{material: Cap, cost: unknown}"),
        total="60",
        paid=3690,
        unpriced=2,
        says=(
            "episodes/01-day.md:6:12: warning: the total of 60.00 cannot be checked: 2 lines have no price; "
            "expected every line with its price; the others come to 36.90 with tax and delivery; "
            "together they cost 23.10: put them into one line with cost: rest"
        ),
    ),
    "a line is unpriced, and the others are more than the total": CostList(
        lines=("Galvanised nails, 36.90", "{material: Post, cost: unknown}"),
        total="36.00",
        paid=3690,
        unpriced=1,
        says=(
            "episodes/01-day.md:6:12: warning: the total of 36.00 cannot be checked: 1 line has no price; "
            "expected every line with its price; the others come to 36.90 with tax and delivery; "
            "check the other lines against the paper"
        ),
    ),
    # nothing is left for it: the paper says so, and the line still does not
    "a line is unpriced, and the others are the total": CostList(
        lines=("Galvanised nails, 36.90", "{material: Post, cost: unknown}"),
        total="36.90",
        paid=3690,
        unpriced=1,
        says=(
            "episodes/01-day.md:6:12: warning: the total of 36.90 cannot be checked: 1 line has no price; "
            "expected every line with its price; the others come to 36.90 with tax and delivery; "
            "write cost: rest on that line, which makes it 0.00"
        ),
    ),
    # 36.90 + 114.00
    "the stated total is wrong by one": CostList(
        lines=("Galvanised nails, 36.90", "Two sheets of ply, 114"),
        total="151.90",
        paid=15090,
        says=(
            "episodes/01-day.md:6:12: mistake: the receipt shop says 151.90, and its lines with tax and delivery "
            "come to 150.90, 1.00 less than the paper; expected both the same to the cent; "
            "compare each line with the paper"
        ),
    ),
    "the stated total is wrong by one cent": CostList(
        lines=("Galvanised nails, 36.90", "Two sheets of ply, 114"),
        total="150.89",
        paid=15090,
        says=(
            "episodes/01-day.md:6:12: mistake: the receipt shop says 150.89, and its lines with tax and delivery "
            "come to 150.90, 0.01 more than the paper; expected both the same to the cent; "
            "compare each line with the paper"
        ),
    ),
    # free, given and owned things are a zero
    "some of it was free": CostList(
        lines=("Galvanised nails, 36.90", "{material: Pallets, source: gift}", "Old door, 0"),
        total="36.90",
        paid=3690,
        checked=True,
    ),
    "half of it is about": CostList(
        lines=("Galvanised nails, about 37", "Two sheets of ply, about 110"), total="147", paid=14700, checked=True
    ),
    "nothing but a total": CostList(
        lines=("{material: All of it, cost: rest}",), total="612.40", paid=61240, checked=True
    ),
}


def written(cost_list: CostList) -> Kept:
    """The list as a receipt."""
    lines = indent("\n".join(f"- {line}" for line in cost_list.lines), "      ")
    return keep(f"receipts:\n  shop:\n    total: {cost_list.total}\n    items:\n{lines}")


@pytest.mark.parametrize("cost_list", LISTS.values(), ids=LISTS.keys())
def test_a_cost_list(cost_list: CostList) -> None:
    """What is paid is the sum of the lines whose price is known, whatever else is wrong."""
    kept = written(cost_list)
    assert (kept.whole.paid, kept.whole.unpriced) == (cost_list.paid, cost_list.unpriced)
    assert kept.messages == ([cost_list.says] if cost_list.says else [])
    assert kept.receipt.checked is cost_list.checked
