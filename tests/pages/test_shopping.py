"""The shopping list and the forecast say the same of what a phase still lacks."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.figures.account import Account
from builder.pages.shopping import shopping_list
from tests.pages.planned_pages import build, rows, view

MESH = "key: mats, material: Mesh, quantity: 6 mat, unit_cost: 24.90"
POST = "key: post, material: Post, quantity: 1 post, unit_cost: 10"


def base(folder: Path, planned: list[str], *lines: str, more: str = "") -> Account:
    """A phase under way with these planned lines, and an episode with these line items."""
    wanted = "".join(f"      - {{{line}}}\n" for line in planned)
    items = "".join(f"  - {{{line}}}\n" for line in lines)
    plan = f"phases:\n  - key: base\n    name: Base\n    planned:\n{wanted}  - {{key: roof, planned: 5}}\n"
    return build(folder, plan, f"phase: base\n{more}items:\n{items}")


def listed(account: Account) -> list[list[str]]:
    """The rows of the list of the first phase; its foot is left out."""
    return rows(shopping_list(view(account), account.phases[0]))[:-1]


def to_come(account: Account) -> int:
    """What the forecast of the first phase adds to its job cost."""
    phase = account.phases[0]
    assert phase.forecast is not None
    return phase.forecast - phase.job_cost


def test_what_is_bought_by_another_count_is_not_to_be_bought_again(tmp_path: Path) -> None:
    """6 mats were to cost 149.40, 6 sheets cost 179.40: none of the money is left, and only the post is to come."""
    account = base(tmp_path, [MESH, POST], "material: Mesh, quantity: 6 sheet, unit_cost: 29.90")
    assert listed(account) == [["Post", "1 post", "10.00"]]
    assert to_come(account) == 1000


@pytest.mark.parametrize(
    ("planned", "bought"),
    [
        (MESH, "material: Mesh, quantity: 2 sheet, unit_cost: 29.90"),  # counted otherwise
        (MESH, "material: Mesh, cost: 59.80"),  # not counted
        ("key: mats, material: Mesh, cost: 149.40", "material: Mesh, quantity: 2 sheet, cost: 59.80"),  # a lump sum
    ],
)
def test_without_a_common_count_what_is_left_of_the_money_is_to_be_spent(
    tmp_path: Path, planned: str, bought: str
) -> None:
    """149.40 planned and 59.80 spent leave 89.60, and nobody knows how many mats that is."""
    account = base(tmp_path, [planned, POST], bought)
    assert listed(account) == [["Mesh what is left of the planned amount", "89.60"], ["Post", "1 post", "10.00"]]
    assert to_come(account) == 8960 + 1000


def test_what_lies_in_stock_is_bought_already_though_counted_otherwise(tmp_path: Path) -> None:
    """6 sheets for 119.40, 4 of them used (79.60): of 149.40 are 69.80 left, and 39.80 lie there; 30.00 are to buy."""
    account = base(tmp_path, [MESH, POST], "material: Mesh, quantity: 6 sheet, unit_cost: 19.90, used: 4 sheet")
    assert listed(account)[0] == ["Mesh what is left of the planned amount", "30.00"]
    assert to_come(account) == 6980 + 1000


def test_half_of_it_used_and_half_in_stock_leaves_nothing_to_buy(tmp_path: Path) -> None:
    """6 sheets for 179.40, 3 used: 59.70 of the money are left, and 89.70 of mesh lie there."""
    account = base(tmp_path, [MESH, POST], "material: Mesh, quantity: 6 sheet, unit_cost: 29.90, used: 3 sheet")
    assert listed(account) == [["Post", "1 post", "10.00"]]


def test_what_will_serve_again_is_bought_for_its_whole_price(tmp_path: Path) -> None:
    """Boards for 80.00, a quarter used up. 40.00 are spent, 10.00 used up, so half of the 80.00 is still to come."""
    boards = "key: forms, material: Form boards, cost: 80, uses: 4"
    account = base(tmp_path, [boards], "material: Form boards, cost: 40, uses: 4")
    assert listed(account) == [["Form boards what is left of the planned amount", "40.00"]]
    assert to_come(account) == 1000


def test_what_is_used_up_by_nothing_is_bought_once(tmp_path: Path) -> None:
    """A ladder serves for good and is in no job cost: it is to be bought until something answers to it."""
    ladder = "key: ladder, material: Ladder, cost: 90, reusable_share: 100%"
    (tmp_path / "before").mkdir()
    (tmp_path / "after").mkdir()
    assert listed(base(tmp_path / "before", [ladder], "material: Gloves, cost: 4")) == [["Ladder", "90.00"]]
    bought = "material: Ladder, cost: 85, reusable_share: 100%"
    assert listed(base(tmp_path / "after", [ladder], bought)) == []


def test_planned_lines_that_stand_together_are_bought_together(tmp_path: Path) -> None:
    """10 bags at 4.00 and 5 at 6.00 are 15 for 70.00; 12 have come, so 3 are to come for 14.00."""
    mix, more = "key: mix, material: Mix, quantity: 10 bag", "key: more, material: mix, quantity: 5 bag"
    account = base(
        tmp_path, [f"{mix}, unit_cost: 4", f"{more}, unit_cost: 6"], "material: Mix, quantity: 12 bag, cost: 60"
    )
    assert listed(account) == [["Mix", "3 bags", "14.00"]]
    assert to_come(account) == 1400


def test_what_a_take_off_finds_none_of_is_not_to_be_bought(tmp_path: Path) -> None:
    """8 ft are six whole blocks a course and one course needs no half ones."""
    plan = """
        phases:
          - key: base
            planned:
              - {key: half, material: Half block, quantity: {takeoff: wall.half_blocks}, unit_cost: 4}
              - {key: post, material: Post, quantity: 1 post, unit_cost: 10}
        takeoff:
          wall: {method: block_wall, length: 8 ft, height: 8 in}
        """
    account = build(tmp_path, plan, "phase: base\nitems:\n  - Gloves, 4\n")
    assert listed(account) == [["Post", "1 post", "10.00"]]
