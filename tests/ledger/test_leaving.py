"""How things leave: "A return, sale or spoilage takes from the lot's stock, then its reusable part, then its job
cost, on its own date; value carried less money got is job cost. A refund is by default goods less discount plus
tax, never delivery."

Amounts are in minor units, worked out by hand.
"""

from __future__ import annotations

import pytest

from tests.ledger.journals import Kept, Moved, keep, moved, sound, value_of

# 10 bags come to 120.00: 100.00 of goods, 10.00 of tax, 10.00 of delivery. 4 are used (48.00), 6 are left
# (72.00). The shop gives 11.00 back for a bag, which carries 12.00.
MIX = """
    receipts:
      yard:
        tax: 10%
        delivery: 10
        items: [{material: Mix, quantity: 10 bag, cost: 100, used: 4 bag, id: mix}]
    """
# 8 boards for 80.00; one use of them all costs 20.00, 60.00 is left for three more.
FORMS = "items: [{material: Form boards, quantity: 8 board, cost: 80, uses: 4, id: forms}]"


def after(first: str, text: str) -> Kept:
    """What a day says, and a line a day later."""
    return sound(first, f"items:\n  - {text}")


TAKEN: list[tuple[str, str, str, Moved]] = [
    (
        # 36.00 left the shelf and 33.00 came back: the 3.00 are the delivery, which nobody gives back
        "a return from stock, at goods plus tax",
        MIX,
        "{material: Mix, source: returned, quantity: 3 bag, from: mix}",
        {"paid": -3300, "in_stock": -3600, "job_cost": 300, "replacement_cost": -3300, "saved": -3600},
    ),
    (
        "a return at less, with the difference lost",
        MIX,
        "{material: Mix, source: returned, quantity: 3 bag, from: mix, refund: 30}",
        {"paid": -3000, "in_stock": -3600, "job_cost": 600, "replacement_cost": -3000, "saved": -3600},
    ),
    (
        "a return against nothing",
        MIX,
        "{material: Mix, source: returned, quantity: 3 bag, from: mix, refund: 0}",
        {"in_stock": -3600, "job_cost": 3600, "saved": -3600},
    ),
    (
        # all 6 from the shelf (72.00) and 2 of those in the build; 88.00 back: 72.00 - 88.00 is job cost
        "a return of more than lies in stock takes job cost",
        MIX,
        "{material: Mix, source: returned, quantity: 8 bag, from: mix}",
        {"paid": -8800, "in_stock": -7200, "job_cost": -1600, "replacement_cost": -8800, "saved": -7200},
    ),
    (
        # 36.00 left the shelf and 50.00 came in: 14.00 less job cost; a newcomer has to buy the bags all the same
        "leftovers sold at a gain",
        MIX,
        "{material: Mix, source: sold, quantity: 3 bag, cost: 50, from: mix}",
        {"paid": -5000, "in_stock": -3600, "job_cost": -1400, "saved": 1400},
    ),
    (
        "leftovers sold at a loss, by the unit",
        MIX,
        "{material: Mix, source: sold, quantity: 3 bag, unit_cost: 2.50, from: mix}",
        {"paid": -750, "in_stock": -3600, "job_cost": 2850, "saved": -2850},
    ),
    (
        # "absent, 1 where there is a unit_cost": one bag at 2.50
        "one of them sold, where only the price of one is said",
        MIX,
        "{material: Mix, source: sold, unit_cost: 2.50, from: mix}",
        {"paid": -250, "in_stock": -1200, "job_cost": 950, "saved": -950},
    ),
    (
        "leftovers given away",
        MIX,
        "{material: Mix, source: sold, quantity: 3 bag, cost: 0, from: mix}",
        {"in_stock": -3600, "job_cost": 3600, "saved": -3600},
    ),
    (
        "spoiled by the damp",
        MIX,
        "{material: Mix, source: spoiled, quantity: 3 bag, from: mix}",
        {"in_stock": -3600, "job_cost": 3600, "saved": -3600},
    ),
    (
        # the 6 on the shelf, and one of those in the build, whose 12.00 are job cost already
        "spoiled in the build costs no more than it did",
        MIX,
        "{material: Mix, source: spoiled, quantity: 7 bag, from: mix}",
        {"in_stock": -7200, "job_cost": 7200, "saved": -7200},
    ),
    (
        # half of the boards carry 30.00; 25.00 came in
        "sold out of the reusable part",
        FORMS,
        "{material: Form boards, source: sold, quantity: 4 board, cost: 25, from: forms}",
        {"paid": -2500, "reusable": -3000, "job_cost": 500, "saved": 2500},
    ),
    (
        # the shop takes them all back at what was paid: 80.00, of which 60.00 lay there as reusable
        "returned out of the reusable part",
        FORMS,
        "{material: Form boards, source: returned, quantity: 8 board, from: forms}",
        {"paid": -8000, "reusable": -6000, "job_cost": -2000, "replacement_cost": -8000},
    ),
    (
        "without a quantity, all that lies unused",
        MIX,
        "{material: Mix, source: sold, cost: 60, from: mix}",
        {"paid": -6000, "in_stock": -7200, "job_cost": 1200, "saved": -1200},
    ),
    (
        "without a quantity and with nothing unused, out of the build",
        "items: [{material: Old window, cost: 45, id: window}]",
        "{material: Old window, source: sold, cost: 20, from: window}",
        {"paid": -2000, "job_cost": -2000, "saved": 2000},
    ),
    (
        "from by its name, ignoring case",
        MIX,
        "{material: mix, source: spoiled, quantity: 3 bag}",
        {"in_stock": -3600, "job_cost": 3600, "saved": -3600},
    ),
    (
        # what nobody knows the value of cannot be spoiled for nothing
        "spoiled from a lot that nobody could price",
        "items: [{material: Mix, quantity: 10 bag, cost: unknown, used: 4 bag, id: mix}]",
        "{material: Mix, source: spoiled, quantity: 3 bag, from: mix}",
        {"unpriced": 1},
    ),
    (
        "returned from a lot that nobody could price",
        "items: [{material: Mix, quantity: 10 bag, cost: unknown, used: 4 bag, id: mix}]",
        "{material: Mix, source: returned, quantity: 3 bag, refund: 21, from: mix}",
        {"paid": -2100, "job_cost": -2100, "unpriced": 1},
    ),
    (
        # 14.00 new a bag: a newcomer has three bags less to buy
        "returned, where a worth by the unit was given",
        "items: [{material: Mix, quantity: 10 bag, cost: 50, used: 4 bag, replacement_cost: 14, id: mix}]",
        "{material: Mix, source: returned, quantity: 3 bag, from: mix}",
        {"paid": -1500, "in_stock": -1500, "replacement_cost": -4200, "saved": -4200},
    ),
    (
        # 0.40 a foot then; nobody knew what it is worth new
        "leftovers of an earlier job are brought in on the day they leave",
        "summary: nothing yet",
        "{material: Fabric, source: sold, quantity: 10 ft, cost: 3}",
        {"paid": -300, "brought_in": 400, "job_cost": 100},
    ),
]
OWNED = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40}}"


@pytest.mark.parametrize(("first", "text", "expected"), [row[1:] for row in TAKEN], ids=[row[0] for row in TAKEN])
def test_what_a_line_takes_away(first: str, text: str, expected: Moved) -> None:
    """Stock, then reusable, then job cost; value carried less money got is job cost."""
    kept = sound(first, f"items:\n  - {text}", owned=OWNED)
    assert kept.moved("2.1") == expected


class TestReturnedInTwoSteps:
    """What came back on the line itself says nothing of what the shop gives for the rest."""

    BOUGHT = "items: [{material: Mix, quantity: 10 bag, cost: 100, returned: 4 bag, refund: 30, id: mix}]"

    def test_the_default_is_what_the_rest_cost(self) -> None:
        """4 bags came back for 30.00 instead of 40.00; the other 6 still cost 60.00."""
        kept = after(self.BOUGHT, "{material: Mix, source: returned, quantity: 6 bag, from: mix}")
        assert kept.moved("2.1")["paid"] == -6000

    def test_in_thirds_no_cent_is_lost(self) -> None:
        """3 pieces for 1.00 come back one by one: 0.33, 0.33 and 0.34, half a cent staying with what is kept."""
        lines = "items: [{material: Hook, source: returned, quantity: 1, from: hook}]"
        kept = sound("items: [{material: Hook, quantity: 3, cost: 1, id: hook}]", lines, lines, lines)
        assert [kept.line(f"{day}.1").parts.paid for day in (2, 3, 4)] == [-33, -33, -34]
        assert moved(kept.whole) == {}


class TestRefunds:
    """What the paper says holds, up to what was paid: with its delivery, or at what the shop asked for the things."""

    @pytest.mark.parametrize(("refund", "is_right"), [("60", True), ("60.01", False)])
    def test_on_the_line_the_delivery_may_come_back_too(self, refund: str, is_right: bool) -> None:
        """Half of 120.00, of which 5.00 are delivery that no shop gives back by itself."""
        kept = keep(MIX.replace("used: 4 bag", f"returned: 5 bag, refund: {refund}"))
        assert (kept.messages == []) is is_right

    @pytest.mark.parametrize(("refund", "is_right"), [("36", True), ("36.01", False)])
    def test_later_the_delivery_may_come_back_too(self, refund: str, is_right: bool) -> None:
        """Three bags carry 12.00 each, and by default bring 11.00."""
        line = f"items: [{{material: Mix, source: returned, quantity: 3 bag, from: mix, refund: {refund}}}]"
        assert (keep(MIX, line).messages == []) is is_right

    @pytest.mark.parametrize(("refund", "is_right"), [("80", True), ("80.01", False)])
    def test_what_was_used_once_may_bring_what_was_paid(self, refund: str, is_right: bool) -> None:
        """The boards carry 60.00 after their first use; the shop takes them back for their 80.00."""
        line = f"items: [{{material: Form boards, source: returned, quantity: 8 board, from: forms, refund: {refund}}}]"
        assert (keep(FORMS, line).messages == []) is is_right

    def test_the_ledger_says_what_came_back_on_the_line_itself(self) -> None:
        """4 of 10 bags at 10.00, by default or as the paper says; nothing on lines of which nothing went back."""
        bought = "items: [{{material: Mix, quantity: 10 bag, cost: 100{}, id: mix}}]"
        told = ("", ", returned: 4 bag", ", returned: 4 bag, refund: 30")
        assert [sound(bought.format(back)).line("1.1").refund for back in told] == [0, 4000, 3000]

    def test_a_line_of_its_own_brings_money_and_no_refund_of_the_line(self) -> None:
        """The 33.00 are paid back by the line; nothing of the line went back."""
        assert after(MIX, "{material: Mix, source: returned, quantity: 3 bag}").line("2.1").refund == 0


class TestFirstInFirstOut:
    """Without `from`, by material; and what lies unused leaves before what is in the build."""

    TWO = (
        "items: [{material: Mix, quantity: 4 bag, cost: 20, id: first}]",
        "items: [{material: Mix, quantity: 10 bag, cost: 60, used: 7 bag, id: second}]",
    )

    def test_a_return_takes_bags_from_the_shelf_and_not_out_of_the_footing(self) -> None:
        """The first four are in the ground; the three that go back lie there from the second load."""
        kept = sound(*self.TWO, "items: [{material: Mix, source: returned, quantity: 3 bag}]")
        assert kept.moved("3.1") == {
            "paid": -1800,
            "in_stock": -1800,
            "replacement_cost": -1800,
            "saved": -1800,
        }
        assert kept.ledger.stock == ()

    def test_the_first_stock_leaves_first(self) -> None:
        """Two at 5.00 and one at 6.00."""
        first = "items: [{material: Mix, quantity: 4 bag, cost: 20, used: 2 bag}]"
        kept = sound(first, self.TWO[1], "items: [{material: Mix, source: spoiled, quantity: 3 bag}]")
        assert kept.moved("3.1") == {"in_stock": -1600, "job_cost": 1600, "saved": -1600}

    def test_one_refund_for_two_lots_is_divided_by_what_they_carried(self) -> None:
        """10.00 back for 10.00 and 5.00 worth: no cent of it is lost on the way to the replacement cost."""
        kept = sound(
            "items: [{material: Hook, quantity: 2, cost: 10, used: 0}]",
            "items: [{material: Hook, quantity: 1, cost: 5, used: 0}]",
            "items: [{material: Hook, source: returned, quantity: 3, refund: 10}]",
        )
        assert kept.moved("3.1") == {
            "paid": -1000,
            "in_stock": -1500,
            "job_cost": 500,
            "replacement_cost": -1000,
            "saved": -1500,
        }


class TestOnItsOwnDate:
    """The running total dips on the day that something leaves, in whatever phase."""

    def test_done_phases_still_take_late_bills_and_returns(self) -> None:
        """Ground is done; its leftovers go back three weeks later, and that is ground's."""
        kept = sound(
            f"date: 2026-04-04\nphase: ground\ndone: [ground]\n{MIX.strip()}".replace("\n    ", "\n"),
            "date: 2026-04-25\nphase: frame\nitems:\n"
            "  - {material: Mix, source: returned, quantity: 6 bag, phase: ground}\n"
            "  - {fee: Skip, cost: 9, phase: ground}",
        )
        assert [line.phase for line in kept.ledger.lines] == ["ground", "ground", "ground"]
        assert str(kept.line("2.1").date) == "2026-04-25"

    def test_what_was_drawn_may_still_go_back(self) -> None:
        """All ten were in; the two that were too many come out again."""
        kept = sound(
            MIX,
            "items: [{material: Mix, source: stock, quantity: 6 bag}]",
            "items: [{material: Mix, source: returned, quantity: 2 bag}]",
        )
        assert kept.moved("3.1") == {
            "paid": -2200,
            "job_cost": -2200,
            "replacement_cost": -2200,
        }

    def test_when_everything_went_back_only_the_delivery_is_lost(self) -> None:
        """120.00 out and 110.00 back."""
        kept = after(MIX, "{material: Mix, source: returned, quantity: 10 bag}")
        assert moved(kept.whole) == {"paid": 1000, "job_cost": 1000, "replacement_cost": 1000}
        assert value_of(kept.ledger.stock) == 0

    def test_what_was_never_used_is_not_used_less(self) -> None:
        """Three bags from the shelf were in no footing; back in the shop they are bought less all the same."""
        back = after(MIX, "{material: Mix, source: returned, quantity: 3 bag}").line("2.1")
        gone = after(MIX, "{material: Mix, source: sold, quantity: 3 bag, cost: 9}").line("2.1")
        rest = after(MIX, "{material: Mix, source: sold, cost: 9}").line("2.1")
        assert (str(back.used), str(back.bought)) == ("0 bag", "-3 bag")
        assert (str(gone.used), gone.bought) == ("0 bag", None)
        assert (str(rest.used), rest.bought) == ("0 bag", None)  # all six, and none of the four in the build

    def test_what_comes_out_of_the_build_is_used_less(self) -> None:
        """Eight bags are the six from the shelf and two that had been put in."""
        back = after(MIX, "{material: Mix, source: returned, quantity: 8 bag}").line("2.1")
        assert (str(back.used), str(back.bought)) == ("-2 bag", "-8 bag")


class TestOutOfTheBuild:
    """What a return takes out of the build: what the line put in, and what was drawn from it since."""

    ALL_AGAIN = "items: [{material: Form boards, source: spoiled, quantity: 8 board, from: forms}]"

    def test_what_was_drawn_is_in_the_build_with_the_rest(self) -> None:
        """4 bags at once and 6 later: all ten go back, and carried 120.00."""
        kept = sound(
            MIX,
            "items: [{material: Mix, source: stock, quantity: 6 bag}]",
            "items: [{material: Mix, source: returned, quantity: 10 bag}]",
        )
        assert (kept.moved("3.1")["paid"], [draw.value for draw in kept.line("3.1").draws]) == (-11000, [12000])

    def test_what_was_drawn_to_serve_again_lies_in_a_lot_of_its_own(self) -> None:
        """6 of 8 boards are in the build and 2 became props: the first line cannot give all eight."""
        kept = keep(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, id: forms}]",
            "items: [{material: Form boards, source: stock, quantity: 2 board, uses: 2, from: forms, id: props}]",
            self.ALL_AGAIN,
        )
        (message,) = kept.messages
        assert "8 board of Form boards is spoiled, and only 6 board is left" in message

    def test_what_serves_again_is_not_in_the_build_too(self) -> None:
        """6 boards serve again and carry 45.00, 2 were drawn and are in the build with 20.00."""
        kept = sound(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4, id: forms}]",
            "items: [{material: Form boards, source: stock, quantity: 2 board, from: forms}]",
            self.ALL_AGAIN,
        )
        assert [draw.value for draw in kept.line("3.1").draws] == [6500]
