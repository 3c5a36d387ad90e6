"""What lies in stock and how it is drawn: "Carried at cost with tax and delivery. A draw from an unpriced lot is
unpriced and inherits the lot's replacement cost per unit. Undrawn `owned.yaml` stock is listed apart and is in no
total." And `from`: "without it, first in first out by material (ignoring case). It may draw a line's reusable part
for one more use here."

Amounts are in minor units, worked out by hand.
"""

from __future__ import annotations

import pytest

from builder.ledger.records import Left
from tests.ledger.journals import moved, sound, value_of

# 10 bags come to 120.00 with tax and delivery; 6 are left.
MIX = """
    receipts:
      yard:
        tax: 10%
        delivery: 10
        items: [{material: Mix, quantity: 10 bag, cost: 100, used: 4 bag, id: mix}]
    """
FORMS = "items: [{material: Form boards, quantity: 8 board, cost: 49.75, uses: 4, id: forms}]"
AGAIN = "items: [{material: Form boards, source: stock, from: forms}]"


def lies(left: Left) -> tuple[str, str, int]:
    """Which lot, how much of it, and its value."""
    return left.ref, f"{left.quantity} {left.unit.symbol if left.unit else '-'}", left.value


class TestDrawing:
    """The rule: "Drawing 20.72 from stock is in stock -20.72, job cost +20.72"."""

    def test_a_draw_moves_value_from_stock_to_job_cost(self) -> None:
        """4 x 5.18: the movement that the design tells."""
        kept = sound(
            "items: [{material: Block, quantity: 10, unit_cost: 5.18, used: 6, id: blocks}]",
            "items: [{material: Block, source: stock, quantity: 4, from: blocks}]",
        )
        assert kept.moved("2.1") == {"in_stock": -2072, "job_cost": 2072, "saved": -2072}

    def test_it_is_carried_at_cost_with_tax_and_delivery(self) -> None:
        """A bag came to 12.00."""
        kept = sound(MIX, "items: [{material: Mix, source: stock, quantity: 2 bag, from: mix}]")
        assert kept.moved("2.1") == {"in_stock": -2400, "job_cost": 2400, "saved": -2400}
        assert [lies(left) for left in kept.ledger.stock] == [("mix", "4 bag", 4800)]

    def test_drawing_the_last_of_it_takes_the_last_cent(self) -> None:
        """Three for 1.00: 0.33; half of 0.67 is 33.5, so 0.34; and what is left, 0.33."""
        one = "items: [{material: Hook, source: stock, quantity: 1}]"
        kept = sound("items: [{material: Hook, quantity: 3, cost: 1, used: 0}]", one, one, one)
        assert [kept.line(f"{day}.1").parts.job_cost for day in (2, 3, 4)] == [33, 34, 33]
        assert (kept.ledger.stock, kept.whole.in_stock) == ((), 0)

    def test_without_a_quantity_all_that_is_left_is_drawn(self) -> None:
        """Also where nobody counted: a fifth of the box."""
        kept = sound("items: [{material: Screws, cost: 0.99, used: 80%}]", "items: [{material: Screws, source: stock}]")
        assert kept.moved("2.1") == {"in_stock": -20, "job_cost": 20, "saved": -20}
        assert kept.line("2.1").used is None

    def test_a_lot_that_nobody_counted_is_passed_over(self) -> None:
        """Three screws cannot be drawn from a fifth of a box; they come from the ten that were counted."""
        kept = sound(
            "items: [{material: Screws, cost: 5, used: 80%}]",
            "items: [{material: Screws, quantity: 10 screw, cost: 20, used: 5 screw}]",
            "items: [{material: Screws, source: stock, quantity: 3 screw}]",
        )
        assert [(draw.ref, draw.value) for draw in kept.line("3.1").draws] == [("2.1", 600)]

    def test_a_lot_that_is_empty_is_passed_over(self) -> None:
        """The first bag costs 3.00 and is drawn; the next ones cost 5.00 each, the last ones 7.00."""
        one = "items: [{material: Mix, source: stock, quantity: 1 bag}]"
        kept = sound(
            "items: [{material: Mix, quantity: 2 bag, cost: 6, used: 1 bag, id: first}]",
            one,
            "items: [{material: Mix, quantity: 3 bag, cost: 15, used: 1 bag, id: second}]",
            "items: [{material: Mix, quantity: 1 bag, cost: 7, used: 0 bag, id: third}]",
            "items: [{material: Mix, source: stock, quantity: 1 bag, from: third}]",
            one,
            one,
        )
        drawn = [[(draw.ref, draw.value) for draw in kept.line(f"{day}.1").draws] for day in (2, 5, 6, 7)]
        assert drawn == [[("first", 300)], [("third", 700)], [("second", 500)], [("second", 500)]]

    def test_a_later_lot_that_is_empty_does_not_hide_the_first(self) -> None:
        """The second load was asked for by name and is gone; what comes next is of the first, not of the third."""
        kept = sound(
            "items: [{material: Mix, quantity: 2 bag, cost: 6, used: 1 bag, id: first}]",
            "items: [{material: Mix, quantity: 2 bag, cost: 10, used: 1 bag, id: second}]",
            "items: [{material: Mix, quantity: 2 bag, cost: 14, used: 1 bag, id: third}]",
            "items: [{material: Mix, source: stock, quantity: 1 bag, from: second}]",
            "items: [{material: Mix, source: stock, quantity: 1 bag}]",
        )
        assert [(draw.ref, draw.value) for draw in kept.line("5.1").draws] == [("first", 300)]

    def test_the_whole_build_then_cost_what_was_bought(self) -> None:
        """Bought, used in two steps: nothing saved, nothing left."""
        kept = sound(MIX, "items: [{material: Mix, source: stock}]")
        assert moved(kept.whole) == {"paid": 12000, "job_cost": 12000, "replacement_cost": 12000}

    def test_leftovers_may_go_to_somebody_else(self) -> None:
        """`share: 0%` of a draw: taken from stock and gone elsewhere; half of it, or an amount, stays."""
        draw = "items: [{{material: Mix, source: stock, quantity: 2 bag, share: {}}}]"
        given, half, amount = (sound(MIX, draw.format(share)).moved("2.1") for share in ("0%", "50%", "9.00"))
        assert given == {"in_stock": -2400, "elsewhere": 2400}
        assert half == {"in_stock": -2400, "elsewhere": 1200, "job_cost": 1200, "saved": -1200}
        assert amount == {"in_stock": -2400, "elsewhere": 1500, "job_cost": 900, "saved": -900}

    def test_bringing_it_may_cost_something(self) -> None:
        """The van for the leftovers: paid and used up."""
        kept = sound(MIX, "items: [{material: Mix, source: stock, quantity: 2 bag, cost: 15}]")
        assert kept.moved("2.1") == {"paid": 1500, "in_stock": -2400, "job_cost": 3900, "saved": -3900}

    def test_what_bringing_it_cost_may_be_unknown(self) -> None:
        """Unknown is not zero."""
        kept = sound(MIX, "items: [{material: Mix, source: stock, quantity: 2 bag, cost: unknown}]")
        assert kept.moved("2.1") == {"in_stock": -2400, "job_cost": 2400, "saved": -2400, "unpriced": 1}

    def test_the_draw_says_where_from(self) -> None:
        """Which lots, how much of each, and the value carried."""
        kept = sound(MIX, "items: [{material: Mix, source: stock, quantity: 2 bag}]")
        (draw,) = kept.line("2.1").draws
        assert (draw.ref, str(draw.quantity), draw.value, draw.reusable) == ("mix", "2 bag", 2400, False)


class TestFirstInFirstOut:
    """Without `from`, the lots of a material in the order they came."""

    # 30 ft at 1.00 and 10 yd at 4.50 (1.50 a foot)
    ROLLS = (
        "items: [{material: Fabric, quantity: 30 ft, cost: 30, used: 0 ft, id: feet}]",
        "items: [{material: fabric, quantity: 10 yd, cost: 45, used: 0%, id: yards}]",
    )

    @pytest.mark.parametrize(
        ("quantity", "value", "used"),
        [
            ("30 ft", 3000, "30 ft"),
            # 30 ft and 10 ft of the second roll: 30.00 + 15.00
            ("40 ft", 4500, "40 ft"),
            # 12 yd are 36 ft: 30.00 + 2 x 4.50
            ("12 yd", 3900, "36 ft"),
            # 6 ft 6 in
            ("6 ft 6 in", 650, "6.5 ft"),
            ("20 yd", 7500, "60 ft"),
        ],
    )
    def test_across_lots_and_units(self, quantity: str, value: int, used: str) -> None:
        """The roll in feet first, then the roll in yards; the quantity in the unit of the first lot."""
        kept = sound(*self.ROLLS, f"items: [{{material: FABRIC, source: stock, quantity: {quantity}}}]")
        assert kept.moved("3.1") == {"in_stock": -value, "job_cost": value, "saved": -value}
        assert str(kept.line("3.1").used) == used

    def test_from_passes_the_order_by(self) -> None:
        """The second roll, because the line says so."""
        kept = sound(*self.ROLLS, "items: [{material: Fabric, source: stock, quantity: 3 ft, from: yards}]")
        assert kept.line("3.1").parts.job_cost == 450

    def test_lots_counted_in_other_words_are_passed_over(self) -> None:
        """Sheets of fabric are not feet of it."""
        kept = sound(
            "items: [{material: Fabric, quantity: 2 sheet, cost: 9, used: 0}]".replace("used: 0", "used: 0%"),
            *self.ROLLS,
            "items: [{material: Fabric, source: stock, quantity: 3 ft}]",
        )
        assert [draw.ref for draw in kept.line("4.1").draws] == ["feet"]

    def test_without_a_quantity_lots_of_any_unit_are_drawn(self) -> None:
        """Feet and sheets cannot be added up, so the quantity is not said; the value is."""
        kept = sound(
            "items: [{material: Fabric, quantity: 2 sheet, cost: 9, used: 0%}]",
            *self.ROLLS,
            "items: [{material: Fabric, source: stock}]",
        )
        assert (kept.line("4.1").used, kept.line("4.1").parts.job_cost) == (None, 8400)

    def test_by_date_and_not_by_the_order_of_files(self) -> None:
        """The later file tells of the earlier day."""
        kept = sound(
            "date: 2026-05-02\nitems: [{material: Fabric, quantity: 10 ft, cost: 20, used: 0 ft}]",
            "date: 2026-04-04\nitems: [{material: Fabric, quantity: 10 ft, cost: 10, used: 0 ft}]",
            "date: 2026-06-06\nitems: [{material: Fabric, source: stock, quantity: 10 ft}]",
        )
        assert kept.line("3.1").parts.job_cost == 1000


class TestOneMoreUse:
    """`from` may draw a line's reusable part: one more use costs what one use cost at first."""

    def test_until_nothing_is_left(self) -> None:
        """49.75 at 12.44 a use: the fourth use takes the last 12.43, a fifth costs nothing."""
        kept = sound(FORMS, AGAIN, AGAIN, AGAIN, AGAIN)
        assert kept.moved("2.1") == {"job_cost": 1244, "reusable": -1244}
        assert [kept.line(f"{day}.1").parts.job_cost for day in (1, 2, 3, 4, 5)] == [1244, 1244, 1244, 1243, 0]
        assert (kept.whole.job_cost, kept.whole.reusable) == (4975, 0)

    def test_the_things_stay(self) -> None:
        """Eight boards are still there when they are worth nothing any more."""
        kept = sound(FORMS, AGAIN, AGAIN, AGAIN)
        assert [lies(left) for left in kept.ledger.reusable] == [("forms", "8 board", 0)]

    def test_of_some_of_them_it_costs_that_much_less(self) -> None:
        """Two of eight boards: a quarter of 12.44."""
        kept = sound(FORMS, "items: [{material: Form boards, source: stock, quantity: 2 board, from: forms}]")
        assert kept.moved("2.1") == {"job_cost": 311, "reusable": -311}
        assert kept.line("2.1").draws[0].reusable

    def test_the_line_may_say_how_much_will_serve_again(self) -> None:
        """37.31 carried; 60 % of that will serve again, so 40 % is used up: 14.924."""
        again = "items: [{material: Form boards, source: stock, from: forms, reusable_share: 60%}]"
        assert sound(FORMS, again).moved("2.1") == {"job_cost": 1492, "reusable": -1492}

    def test_what_was_lost_on_a_return_is_no_use_of_the_rest(self) -> None:
        """4 of 8 boards went back at a loss of 10.00; one use of the other four is a quarter of 40.00."""
        bought = (
            "{material: Form boards, quantity: 8 board, cost: 80, returned: 4 board, refund: 30, uses: 4, id: forms}"
        )
        kept = sound(f"items:\n  - {bought}", AGAIN)
        assert kept.moved("1.1") == {"paid": 5000, "job_cost": 2000, "reusable": 3000, "replacement_cost": 5000}
        assert kept.moved("2.1") == {"job_cost": 1000, "reusable": -1000}

    def test_stock_is_drawn_before_anything_serves_again(self) -> None:
        """6 of 8 boards serve four times (45.00 left of 60.00), 2 lie in stock (20.00): 4 are those 2 and 2 again."""
        kept = sound(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4, id: forms}]",
            "items: [{material: Form boards, source: stock, quantity: 4 board, from: forms}]",
        )
        assert kept.moved("2.1") == {"in_stock": -2000, "job_cost": 2500, "reusable": -500, "saved": -2000}

    def test_leftovers_may_be_what_serves_again(self) -> None:
        """20.00 drawn from stock for two uses: half is used up, half is there for the second."""
        kept = sound(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, id: boards}]",
            "items: [{material: Form boards, source: stock, quantity: 2 board, uses: 2, id: props}]",
            "items: [{material: Form boards, source: stock, quantity: 2 board, from: props}]",
        )
        assert kept.moved("2.1") == {"in_stock": -2000, "job_cost": 1000, "reusable": 1000, "saved": -2000}
        assert kept.moved("3.1") == {"job_cost": 1000, "reusable": -1000}
        assert [lies(left) for left in kept.ledger.reusable] == [("props", "2 board", 0)]

    def test_only_the_part_that_stayed_here_serves_again(self) -> None:
        """4 boards at 10.00, half of them for somebody else: 2 boards, of which one use costs 10.00, each 5.00."""
        kept = sound(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 4 board, id: boards}]",
            "items: [{material: Form boards, source: stock, quantity: 4 board, uses: 2, share: 50%, id: props}]",
            "items: [{material: Form boards, source: stock, quantity: 1 board, from: props}]",
        )
        assert [lies(left) for left in kept.ledger.reusable] == [("props", "2 board", 500)]
        assert kept.moved("3.1") == {"job_cost": 500, "reusable": -500}

    def test_both_at_once(self) -> None:
        """2 boards from stock (20.00) of which half will serve again; 2 of six again, at half of what they carry."""
        kept = sound(
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4, id: forms}]",
            "items: [{material: Form boards, source: stock, quantity: 4 board, from: forms, reusable_share: 50%}]",
        )
        # stock 20.00: 10.00 used up, 10.00 reusable; 2/6 of 45.00 carried is 15.00: 7.50 used up
        assert kept.moved("2.1") == {"in_stock": -2000, "job_cost": 1750, "reusable": 250, "saved": -2000}

    def test_a_machine_bought_for_the_build_may_run_again(self) -> None:
        """And burns fuel, which is paid that day, by a newcomer too."""
        kept = sound(
            "items: [{equipment: Breaker, source: bought, cost: 90, uses: 3, id: breaker}]",
            "items: [{equipment: Breaker, source: stock, from: breaker, fuel: 4}]",
        )
        assert kept.moved("2.1") == {"paid": 400, "job_cost": 3400, "reusable": -3000, "replacement_cost": 400}


class TestStockOfAnEarlierJob:
    """Leftovers of owned.yaml, at what they cost then, brought in on the day this build draws them."""

    FABRIC = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40}}"
    WORTH = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.40, replacement_cost: 0.65}}"
    UNPRICED = "stock: {fabric: {material: Fabric, quantity: 30 ft, unit_cost: unknown, replacement_cost: 0.65}}"
    DRAW = "items: [{material: Fabric, source: stock, quantity: 24 ft}]"

    def test_it_is_brought_in_when_it_is_drawn(self) -> None:
        """24 x 0.40; nobody said what it is worth new."""
        kept = sound(self.DRAW, owned=self.FABRIC)
        assert kept.moved("1.1") == {"brought_in": 960, "job_cost": 960, "unvalued": 1}

    def test_its_worth_is_what_a_newcomer_pays(self) -> None:
        """24 x 0.65, unless the line knows better."""
        kept = sound(self.DRAW, owned=self.WORTH)
        assert kept.moved("1.1") == {"brought_in": 960, "job_cost": 960, "replacement_cost": 1560, "saved": 600}
        better = sound(self.DRAW.replace("24 ft", "24 ft, replacement_cost: 0.70"), owned=self.WORTH)
        assert better.moved("1.1")["replacement_cost"] == 1680

    def test_a_draw_from_an_unpriced_lot_is_unpriced_and_inherits_its_worth(self) -> None:
        """Nobody knows what it cost then."""
        kept = sound(self.DRAW, owned=self.UNPRICED)
        assert kept.moved("1.1") == {"replacement_cost": 1560, "saved": 1560, "unpriced": 1}

    def test_what_was_not_drawn_is_listed_apart_and_in_no_total(self) -> None:
        """6 ft are left, at 2.40; they are not this build's stock."""
        kept = sound(self.DRAW, owned=self.FABRIC)
        assert [lies(left) for left in kept.ledger.from_earlier] == [("fabric", "6 ft", 240)]
        assert (kept.ledger.stock, kept.whole.in_stock) == ((), 0)
        assert moved(sound("summary: nothing", owned=self.FABRIC).whole) == {}

    def test_it_came_first(self) -> None:
        """First in first out begins with it; and the draw is of both."""
        kept = sound(
            "items: [{material: Fabric, quantity: 10 ft, cost: 10, used: 0 ft}]",
            "items: [{material: Fabric, source: stock, quantity: 35 ft}]",
            owned=self.WORTH,
        )
        # 30 ft: 12.00 brought in, worth 19.50; 5 ft: 5.00, whose worth is counted where they were bought
        assert kept.moved("2.1") == {
            "brought_in": 1200,
            "in_stock": -500,
            "job_cost": 1700,
            "replacement_cost": 1950,
            "saved": 250,
        }

    def test_a_part_of_it_may_serve_again(self) -> None:
        """24 ft for two uses."""
        kept = sound(self.DRAW.replace("24 ft", "24 ft, uses: 2"), owned=self.FABRIC)
        assert kept.moved("1.1") == {"brought_in": 960, "job_cost": 480, "reusable": 480, "unvalued": 1}


class TestUnpricedLots:
    """A draw from a lot of this build that nobody could price."""

    GRAVEL = "items: [{material: Gravel, quantity: 4 yd3, cost: unknown, used: 1 yd3, replacement_cost: 40}]"

    def test_it_is_unpriced(self) -> None:
        """Its worth, 4 x 40.00, was counted for the whole load."""
        kept = sound(self.GRAVEL, "items: [{material: Gravel, source: stock, quantity: 2 yd3}]")
        assert kept.moved("1.1") == {"replacement_cost": 16000, "saved": 16000, "unpriced": 1}
        assert kept.moved("2.1") == {"unpriced": 1}

    def test_so_is_one_more_use_of_what_it_left(self) -> None:
        """The lot of the draw is as unknown as the lot it came from."""
        kept = sound(
            self.GRAVEL,
            "items: [{material: Gravel, source: stock, quantity: 2 yd3, uses: 2, id: bed}]",
            "items: [{material: Gravel, source: stock, from: bed}]",
        )
        assert kept.moved("3.1") == {"unpriced": 1}


class TestTheList:
    """What is left, and what it is worth, lot by lot."""

    def test_stock_and_reusable_are_two_lists(self) -> None:
        """Each adds up to its part of the whole."""
        kept = sound(
            MIX,
            "items: [{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4, id: forms}]",
            "items: ['Nails, 4.00', {material: Tarp, cost: 30, used: 50%}]",
        )
        assert [lies(left) for left in kept.ledger.stock] == [
            ("mix", "6 bag", 7200),
            ("forms", "2 board", 2000),
            ("3.2", "None -", 1500),
        ]
        assert [lies(left) for left in kept.ledger.reusable] == [("forms", "6 board", 4500)]
        assert value_of(kept.ledger.stock) == kept.whole.in_stock
        assert value_of(kept.ledger.reusable) == kept.whole.reusable
