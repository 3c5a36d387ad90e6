"""One line that takes from several lots of which only some are priced, valued or counted.

"A draw from an unpriced lot is unpriced"; something is saved only where the replacement cost of all of it is known.
Amounts are in minor units, worked out by hand.
"""

from __future__ import annotations

from tests.ledger.journals import Kept, keep, sound, value_of

# One of two loads is left of each: nobody knows what the first cost; the others carry 10.00 and 30.00.
UNPRICED = "items: [{material: Gravel, quantity: 2 yd3, cost: unknown, used: 1 yd3, replacement_cost: 40}]"
UNVALUED = "items: [{material: Gravel, source: secondhand, quantity: 2 yd3, cost: 20, used: 1 yd3}]"
BOUGHT = "items: [{material: Gravel, quantity: 2 yd3, cost: 60, used: 1 yd3}]"


def both(first: str, more: str, *later: str) -> Kept:
    """What is left of two loads leaves or is drawn in one line, the load bought last."""
    return sound(first, BOUGHT, f"items: [{{material: Gravel, quantity: 2 yd3, {more}}}]", *later)


class TestOneOfThemUnpriced:
    def test_a_draw_of_both_is_unpriced(self) -> None:
        """30.00 of the second are known; what the first carried is not."""
        kept = both(UNPRICED, "source: stock")
        assert kept.moved("3.1") == {"in_stock": -3000, "job_cost": 3000, "saved": -3000, "unpriced": 1}

    def test_so_is_what_will_serve_again_of_it(self) -> None:
        """Half of 30.00 is there for a second use, which takes it."""
        kept = both(
            UNPRICED, "source: stock, uses: 2, id: bed", "items: [{material: Gravel, source: stock, from: bed}]"
        )
        assert kept.moved("4.1") == {"job_cost": 1500, "reusable": -1500, "unpriced": 1}

    def test_so_is_what_spoils_of_both(self) -> None:
        """It costs 30.00 at least."""
        kept = both(UNPRICED, "source: spoiled")
        assert kept.moved("3.1") == {"in_stock": -3000, "job_cost": 3000, "saved": -3000, "unpriced": 1}

    def test_a_refund_for_both_may_be_anything(self) -> None:
        """99.00 are more than the 30.00 of the second, and nobody knows what was paid for the first."""
        kept = both(UNPRICED, "source: returned, refund: 99")
        assert (kept.moved("3.1")["paid"], kept.moved("3.1")["unpriced"]) == (-9900, 1)


class TestOneOfThemUnvalued:
    def test_nothing_is_saved_on_a_draw_of_what_nobody_valued(self) -> None:
        """10.00 of the shelf are used up; what they save is not known."""
        kept = sound(UNVALUED, "items: [{material: Gravel, source: stock, quantity: 1 yd3}]")
        assert kept.moved("2.1") == {"in_stock": -1000, "job_cost": 1000}

    def test_nor_on_a_sale_of_both(self) -> None:
        """10.00 and 30.00 left, 5.00 came in."""
        kept = both(UNVALUED, "source: sold, cost: 5")
        assert kept.moved("3.1") == {"paid": -500, "in_stock": -4000, "job_cost": 3500}

    def test_nor_on_what_was_to_serve_again_of_both(self) -> None:
        """Half of 40.00 was to serve again, and brings 5.00."""
        kept = both(
            UNVALUED,
            "source: stock, uses: 2, id: bed",
            "items: [{material: Gravel, source: sold, quantity: 2 yd3, cost: 5, from: bed}]",
        )
        assert kept.moved("4.1") == {"paid": -500, "reusable": -2000, "job_cost": 1500}

    def test_leftovers_of_an_earlier_job_are_valued_by_the_line_where_they_are_not(self) -> None:
        """10 ft at 0.40 then, and 0.70 new."""
        kept = sound(
            "items: [{material: Fabric, source: stock, quantity: 10 ft, replacement_cost: 0.70}]",
            owned="stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40}}",
        )
        assert kept.moved("1.1") == {"brought_in": 400, "job_cost": 400, "replacement_cost": 700, "saved": 300}

    def test_what_an_earlier_job_left_goes_back_to_no_shop_of_this_one(self) -> None:
        """Nothing is got for it where nothing is said, and no newcomer has less to buy for what is."""
        owned = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40}}"
        silent = sound("items: [{material: Fabric, source: returned, quantity: 10 ft}]", owned=owned)
        assert silent.moved("1.1") == {"brought_in": 400, "job_cost": 400}
        got = sound("items: [{material: Fabric, source: returned, quantity: 10 ft, refund: 3}]", owned=owned)
        assert got.moved("1.1") == {"paid": -300, "brought_in": 400, "job_cost": 100}


class TestOneOfThemInStock:
    def test_only_what_lay_in_stock_becomes_a_lot_of_its_own(self) -> None:
        """2 spare boards (20.00) and 2 of the 6 that serve again, which carry 45.00: half of 20.00 and of 15.00."""
        kept = sound(
            "items: [{material: Boards, quantity: 2 board, cost: 20, used: 0%, id: spare}]",
            "items: [{material: Boards, quantity: 6 board, cost: 60, uses: 4, id: forms}]",
            "items: [{material: Boards, source: stock, quantity: 4 board, uses: 2, id: props}]",
        )
        assert kept.moved("3.1") == {"in_stock": -2000, "job_cost": 1750, "reusable": 250, "saved": -2000}
        left = [(one.ref, str(one.quantity), one.value) for one in kept.ledger.reusable]
        assert left == [("forms", "6", 3750), ("props", "2", 1000)]
        assert value_of(kept.ledger.reusable) == kept.whole.reusable


class TestOneOfThemCounted:
    SHEETS = "items: [{material: Fabric, quantity: 2 sheet, cost: 9, used: 0%, id: sheets}]"
    ROLL = "items: [{material: Fabric, quantity: 30 ft, cost: 30, used: 0 ft, id: roll}]"

    def test_a_sale_passes_over_what_is_counted_in_other_words(self) -> None:
        """3 ft are of the roll, though the sheets came first."""
        kept = sound(
            self.SHEETS, self.ROLL, "items: [{material: Fabric, source: sold, quantity: 3 ft, unit_cost: 0.50}]"
        )
        assert [(draw.ref, draw.value) for draw in kept.line("3.1").draws] == [("roll", 300)]
        assert kept.moved("3.1") == {"paid": -150, "in_stock": -300, "job_cost": 150, "saved": -150}

    def test_one_cannot_be_sold_out_of_what_nobody_counted(self) -> None:
        """The counted screws are gone, and who knows how many are left of the box."""
        kept = keep(
            "items: [{material: Screws, quantity: 1 screw, cost: 1, used: 0%}]",
            "items: [{material: Screws, source: spoiled, quantity: 1 screw}]",
            "items: [{material: Screws, cost: 5, used: 80%}]",
            "items: [{material: Screws, source: sold, unit_cost: 0.10}]",
        )
        assert kept.messages == [
            (
                "episodes/04-day.md:4:9: mistake: what is left of Screws is sold, and nothing is left from "
                "episodes/01-day.md:4, only a part of it is left from episodes/03-day.md:4; "
                "expected at most what is left; check the quantity, and used: on the line it came from"
            )
        ]
