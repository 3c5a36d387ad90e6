"""A deposit is "paid out and owed back; outside `paid` while it is out. `deposit_back: AMOUNT` with `from` closes
it; what is kept is paid that day."
"""

from __future__ import annotations

from tests.ledger.journals import Moved, keep, moved, sound

HIRED = "items: [{equipment: Cutter, source: hired, quantity: 1 day, unit_cost: 64, deposit: 100, id: cutter}]"


def back(amount: str, first: str = HIRED) -> tuple[Moved, Moved]:
    """What the line with the deposit back moves, and the whole journal."""
    kept = sound(first, f"items: [{{equipment: Cutter, from: cutter, deposit_back: {amount}}}]")
    return kept.moved("2.1"), moved(kept.whole)


def test_while_it_is_out_it_is_not_paid() -> None:
    """64.00 for the day; 100.00 out."""
    kept = keep(HIRED)
    assert kept.moved("1.1") == {
        "paid": 6400,
        "job_cost": 6400,
        "replacement_cost": 6400,
        "deposits_out": 10000,
    }


def test_when_all_of_it_comes_back_nothing_was_paid_for_it() -> None:
    """As if there had been none."""
    line, whole = back("100")
    assert line == {"deposits_out": -10000}
    assert whole == {"paid": 6400, "job_cost": 6400, "replacement_cost": 6400}


def test_what_is_kept_is_paid_that_day() -> None:
    """20.00 for the bent blade: paid, used up, and something that hiring can cost a newcomer too."""
    line, whole = back("80")
    assert line == {"paid": 2000, "job_cost": 2000, "replacement_cost": 2000, "deposits_out": -10000}
    assert whole == {"paid": 8400, "job_cost": 8400, "replacement_cost": 8400}


def test_all_of_it_may_be_kept() -> None:
    """Nothing came back, and the deposit is no longer out."""
    line, _ = back("0")
    assert (line["paid"], line["deposits_out"]) == (10000, -10000)


def test_where_the_hire_has_a_worth_a_newcomer_pays_only_that() -> None:
    """A neighbour's mixer for nothing, worth 50.00 a day, with a deposit of which 5.00 were kept."""
    borrowed = (
        "items: [{equipment: Cutter, source: borrowed, quantity: 1 day, replacement_cost: 50, deposit: 30, id: cutter}]"
    )
    line, whole = back("25", borrowed)
    assert line == {"paid": 500, "job_cost": 500, "saved": -500, "deposits_out": -3000}
    assert whole == {"paid": 500, "job_cost": 500, "replacement_cost": 5000, "saved": 4500}


def test_so_does_one_who_hires_what_has_a_worth_of_its_own() -> None:
    """64.00 for the day, and 50.00 a day are what a newcomer pays, whatever was kept for the bent blade."""
    line, whole = back("80", HIRED.replace("unit_cost: 64", "unit_cost: 64, replacement_cost: 50"))
    assert line == {"paid": 2000, "job_cost": 2000, "saved": -2000, "deposits_out": -10000}
    assert whole == {"paid": 8400, "job_cost": 8400, "replacement_cost": 5000, "saved": -3400}


def test_bringing_it_back_may_be_a_line_with_a_price() -> None:
    """A day more at 64.00, and the deposit back."""
    kept = sound(
        HIRED,
        "items: [{equipment: Cutter, source: hired, quantity: 1 day, unit_cost: 64, from: cutter, deposit_back: 100}]",
    )
    assert moved(kept.whole) == {"paid": 12800, "job_cost": 12800, "replacement_cost": 12800}


def test_a_lender_who_gives_it_back_is_nobody_unvalued() -> None:
    """The line brings money and no thing, so there is nothing whose worth could be unknown."""
    kept = sound(
        "items: [{equipment: Cutter, source: borrowed, quantity: 1 day, replacement_cost: 5, deposit: 30, id: cutter}]",
        "items: [{equipment: Cutter, source: borrowed, from: cutter, deposit_back: 30}]",
    )
    assert kept.moved("2.1") == {"deposits_out": -3000}
