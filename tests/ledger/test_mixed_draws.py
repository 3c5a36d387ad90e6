"""One line that takes from several piles at once: leftovers of this build and of an earlier one, and what serves again.

Amounts are in minor units, worked out by hand; saved is replacement cost less job cost less reusable.
"""

from __future__ import annotations

import pytest

from tests.ledger.journals import Kept, keep, sound

# 30 ft of an earlier job at 0.40, worth 0.65 new, and 10 ft of this one at 1.00.
EARLIER = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40, replacement_cost: 0.65}}"
BOUGHT = "items: [{material: Fabric, quantity: 10 ft, cost: 10, used: 0 ft, id: roll}]"
# 6 of 8 boards serve four times (45.00 left of 60.00), 2 lie in stock (20.00).
FORMS = "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4, id: forms}]"


def drawn(more: str) -> Kept:
    """35 ft of both kinds of leftovers: 12.00 of the earlier job and 5.00 of this one."""
    return keep(BOUGHT, f"items: [{{material: Fabric, source: stock, quantity: 35 ft{more}}}]", owned=EARLIER)


@pytest.mark.parametrize("share", ["50%", "8.50"])
def test_half_of_a_draw_of_both_goes_elsewhere(share: str) -> None:
    """17.00 are carried; half of the 30 ft of the earlier job would be 9.75 new."""
    kept = drawn(f", share: {share}")
    assert kept.messages == []
    assert kept.moved("2.1") == {
        "brought_in": 1200,
        "in_stock": -500,
        "elsewhere": 850,
        "job_cost": 850,
        "replacement_cost": 975,
        "saved": 125,
    }
    assert str(kept.line("2.1").used) == "17.5 ft"


def test_the_share_of_a_draw_is_at_most_what_both_carry() -> None:
    """17.00 is all of it, and a cent more is too much."""
    assert drawn(", share: 17.00").messages == []
    (message,) = drawn(", share: 17.01").messages
    assert "share is 17.01, more than the 17.00 it is a part of; expected at most 17.00" in message


def test_a_draw_of_both_is_told_lot_by_lot() -> None:
    """The earlier job's first, since it came first."""
    draws = drawn("").line("2.1").draws
    assert [(draw.ref, str(draw.quantity), draw.value, draw.reusable) for draw in draws] == [
        ("fabric", "30 ft", 1200, False),
        ("roll", "5 ft", 500, False),
    ]


@pytest.mark.parametrize("share", ["50%", "12.50"])
def test_half_of_a_draw_from_stock_and_again_goes_elsewhere(share: str) -> None:
    """2 boards of the stock (20.00) and 2 of those that serve again (a use of 5.00), half of all for somebody else."""
    again = "material: Form boards, source: stock, quantity: 4 board, from: forms"
    kept = sound(FORMS, f"items: [{{{again}, share: {share}}}]")
    assert kept.moved("2.1") == {
        "in_stock": -2000, "reusable": -500, "elsewhere": 1250, "job_cost": 1250, "saved": -750,
    }  # fmt: skip
    (draw,) = kept.line("2.1").draws
    assert (draw.value, draw.reusable, str(kept.line("2.1").used)) == (2500, True, "2 board")


def test_leftovers_of_both_that_are_spoilt_are_job_cost() -> None:
    """What lay of the earlier job is brought in on that day, and nothing is got for any of it."""
    kept = sound(BOUGHT, "items: [{material: Fabric, source: spoiled, quantity: 35 ft}]", owned=EARLIER)
    assert kept.moved("2.1") == {"brought_in": 1200, "in_stock": -500, "job_cost": 1700, "saved": -1700}


def test_leftovers_of_both_that_are_sold_bring_their_price() -> None:
    """20.00 for what was carried at 17.00."""
    kept = sound(BOUGHT, "items: [{material: Fabric, source: sold, quantity: 35 ft, cost: 20}]", owned=EARLIER)
    assert kept.moved("2.1") == {"paid": -2000, "brought_in": 1200, "in_stock": -500, "job_cost": -300, "saved": 300}


def test_boards_that_are_sold_leave_the_stock_the_next_uses_and_the_build() -> None:
    """Seven of eight: 2 in stock (20.00), 5 of the 6 that serve again (37.50 of 45.00); 40.00 are got for them."""
    kept = sound(FORMS, "items: [{material: Form boards, source: sold, quantity: 7 board, cost: 40, from: forms}]")
    assert kept.moved("2.1") == {
        "paid": -4000, "in_stock": -2000, "reusable": -3750, "job_cost": 1750, "saved": 2000,
    }  # fmt: skip
    assert str(kept.line("2.1").used) == "-5 board"


def test_what_lies_in_stock_is_sold_before_what_serves_again_whichever_came_first() -> None:
    """Six boards that serve again came first; the two sold are those that lie unused of a later load, at 5.00 each."""
    kept = sound(
        "items: [{material: Form boards, quantity: 6 board, cost: 60, uses: 4, id: forms}]",
        "items: [{material: Form boards, quantity: 3 board, cost: 15, used: 0%, id: spare}]",
        "items: [{material: Form boards, source: sold, quantity: 2 board, cost: 8}]",
        "items: [{material: Form boards, source: sold, quantity: 2 board, cost: 8}]",
    )
    assert kept.moved("3.1") == {"paid": -800, "in_stock": -1000, "job_cost": 200, "saved": -200}
    # The last of the spare ones, and one of the six, which carry 45.00.
    assert [(draw.ref, draw.value) for draw in kept.line("4.1").draws] == [("spare", 500), ("forms", 750)]


def test_the_shop_gives_back_for_less_than_a_whole_one_too() -> None:
    """Of 10 ft for 100.00 go back 9 ft 6 in, and then the last 6 in; each brings what was paid for it."""
    kept = sound(
        "items: [{material: Fabric, quantity: 10 ft, cost: 100, used: 0 ft, id: roll}]",
        "items: [{material: Fabric, source: returned, quantity: 9.5 ft, from: roll}]",
        "items: [{material: Fabric, source: returned, quantity: 0.25 ft, from: roll}]",
        "items: [{material: Fabric, source: returned, quantity: 0.25 ft, from: roll}]",
    )
    assert [kept.line(f"{day}.1").parts.paid for day in (2, 3, 4)] == [-9500, -250, -250]
    assert (kept.whole.paid, kept.whole.in_stock, kept.ledger.stock) == (0, 0, ())


def test_half_of_the_last_cent_is_a_cent() -> None:
    """Two pegs for 0.02 serve twice: one use of both costs a cent, and so does one use of one of them."""
    kept = sound(
        "items: [{material: Peg, quantity: 2, cost: 0.02, uses: 2, id: pegs}]",
        "items: [{material: Peg, source: stock, quantity: 1, from: pegs}]",
        "items: [{material: Peg, source: stock, quantity: 1, from: pegs}]",
    )
    assert [kept.moved(f"{day}.1") for day in (2, 3)] == [{"job_cost": 1, "reusable": -1}, {}]
    assert type(kept.line("2.1").parts.job_cost) is int


class TestOneCent:
    """What is worth a cent is divided into whole cents as well, half of it staying."""

    def test_one_more_use_of_half_of_it_takes_it(self) -> None:
        """Two pegs for 0.02, twice used: a cent is left, and half of it used up is a cent."""
        kept = sound(
            "items: [{material: Peg, quantity: 2, cost: 0.02, uses: 2, id: pegs}]",
            "items: [{material: Peg, source: stock, from: pegs, reusable_share: 50%}]",
        )
        assert kept.moved("2.1") == {"job_cost": 1, "reusable": -1}
        assert type(kept.line("2.1").parts.job_cost) is int

    def test_what_half_of_it_put_into_the_build_is_worth_it(self) -> None:
        """Half of a cent's worth of sand is drawn for this build, and spoils there."""
        kept = sound(
            "items: [{material: Sand, quantity: 2 kg, cost: 0.01, used: 0%, id: sand}]",
            "items: [{material: Sand, source: stock, share: 50%, from: sand}]",
            "items: [{material: Sand, source: spoiled, quantity: 1 kg, from: sand}]",
        )
        assert [(str(draw.quantity), draw.value) for draw in kept.line("3.1").draws] == [("1 kg", 1)]
        assert type(kept.line("3.1").draws[0].value) is int

    def test_all_of_it_may_be_the_share_of_what_was_kept(self) -> None:
        """One of two pegs for 0.01 went back: half a cent stays with what is kept, so a cent is all of it."""
        kept = sound("items: [{material: Peg, quantity: 2, cost: 0.01, returned: 1, share: 0.01}]")
        assert kept.moved("1.1") == {"paid": 1, "job_cost": 1, "replacement_cost": 1}
