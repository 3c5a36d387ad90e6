"""What a take-off allowed for is judged only once the phase is done, in words that fit what is counted."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pages.takeoffs import workings_of
from tests.pages.planned_pages import build, material, rows

# 4 m x 2.5 m x 0.1 m is 1 m3, of which a bag makes 0.0125: 80 bags.
PLAN = """
    phases:
      - key: slab
        name: Slab
        planned:
          - {key: mix, material: Mix, quantity: {takeoff: slab.bags}, unit_cost: 5}
          - {key: concrete, material: Concrete, quantity: {takeoff: slab.volume}, unit_cost: 5}
    takeoff:
      slab: {method: slab, length: 4 m, width: 2.5 m, thickness: 10 cm, bag: 25 kg, bag_yield: 0.0125 m3, waste: 0%}
    """


def compared(folder: Path, items: str, more: str = "") -> list[list[str]]:
    """The rows of what the take-off's planned lines came to, with the heads of the columns."""
    lines = "".join(f"  - {{{item}}}\n" for item in items.splitlines())
    account = build(folder, PLAN, f"phase: slab\n{more}items:\n{lines}")
    (working,) = workings_of(material(account), account.phases[0], "")
    assert working.compared is not None
    return [[column.label for column in working.compared.columns], *rows(working.compared)]


def test_while_more_may_be_used_nobody_says_how_far_off_it_was(tmp_path: Path) -> None:
    """70 of 80 bags are used at 55 %: ten may still be wanted."""
    head, mix = compared(tmp_path, "material: Mix, quantity: 70 bag, cost: 350", "progress: {slab: 55%}\n")
    assert head == ["What", "Planned", "Bought", "Used", "Left"]
    assert mix == ["Mix", "80 bags", "70 bags", "70 bags", "0 bags"]


@pytest.mark.parametrize(
    ("item", "off"),
    [
        ("material: Mix, quantity: 70 bag, cost: 350", "10 bags too many"),
        ("material: Mix, quantity: 100 bag, cost: 500, used: 81 bag", "1 bag too few"),
        ("material: Mix, quantity: 80 bag, cost: 400", "nothing"),
        ("material: Concrete, quantity: 1.5 m3, cost: 75", "0.654 yd³ too little"),
        ("material: Concrete, quantity: 0.75 m3, cost: 50", "0.327 yd³ too much"),
    ],
)
def test_once_it_is_done_how_far_off_it_was_is_said(tmp_path: Path, item: str, off: str) -> None:
    """80 bags and 1 m3 were allowed for; what is counted is too many or too few.

    A yard is 0.9144 m and its cube 0.764555 m3, so half a cubic metre is 0.654 of one.
    """
    head, row = compared(tmp_path, item, "done: [slab]\n")
    assert (head[-1], row[-1]) == ("The allowance was off by", off)
