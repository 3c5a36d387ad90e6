"""What a figure is counted in, what is one where nothing is said, and what is only a guess.

Amounts are in minor units, worked out by hand; saved is replacement cost less job cost less reusable.
"""

from __future__ import annotations

import pytest

from tests.ledger.journals import keep, sound

CABLE = "stock: {cable: {material: Cable, quantity: 20 yd, unit_cost: 1, replacement_cost: 3}}"


class TestWorthOfADraw:
    """20 yd of an earlier job at 1.00 a yard, 3.00 new; 3 ft are one yard."""

    @pytest.mark.parametrize(
        ("told", "worth"),
        [
            ("quantity: 3 ft", 300),  # the stock's own 3.00 a yard
            ("quantity: 3 ft, replacement_cost: 1.20", 360),  # a foot
            ("quantity: 36 in, replacement_cost: 0.10", 360),  # an inch
            ("quantity: 1 yd, replacement_cost: 3.60", 360),
        ],
    )
    def test_it_is_for_a_unit_of_the_line_that_says_it(self, told: str, worth: int) -> None:
        kept = sound(f"items: [{{material: Cable, source: stock, {told}}}]", owned=CABLE)
        assert kept.moved("1.1") == {
            "brought_in": 100,
            "job_cost": 100,
            "replacement_cost": worth,
            "saved": worth - 100,
        }

    def test_without_a_quantity_it_is_for_a_unit_of_the_stock(self) -> None:
        """All 20 yd at 3.60."""
        kept = sound("items: [{material: Cable, source: stock, replacement_cost: 3.60}]", owned=CABLE)
        assert kept.moved("1.1")["replacement_cost"] == 7200


class TestFuelInAnHour:
    """6 hours at 59.00, and 10.00 of fuel; hired by the hour a newcomer pays the fuel once."""

    @pytest.mark.parametrize(
        ("machine", "worth"),
        [
            ("replacement_cost: 59", 36400),
            ("replacement_cost: 59, fuel_included: no", 36400),
            ("replacement_cost: 59, fuel_included: yes", 35400),
            ("replacement_cost: 59, basis: hire, fuel_included: yes", 35400),
            ("replacement_cost: 59, basis: hire with fuel", 35400),
            ("replacement_cost: 59, basis: hire with fuel, fuel_included: no", 36400),
        ],
    )
    def test_it_is_added_unless_the_rate_carries_it(self, machine: str, worth: int) -> None:
        owned = f"equipment: {{tractor: {{name: Tractor, {machine}}}}}"
        kept = sound("items: [{equipment: tractor, quantity: 6 hour, fuel: 10}]", owned=owned)
        assert kept.moved("1.1")["replacement_cost"] == worth

    def test_a_rate_of_the_line_itself_carries_none(self) -> None:
        """It has no basis that could say so: 6 x 50.00 and 10.00."""
        owned = "equipment: {tractor: {name: Tractor, replacement_cost: 59, fuel_included: yes}}"
        line = "{equipment: tractor, quantity: 6 hour, fuel: 10, replacement_cost: 50}"
        assert sound(f"items: [{line}]", owned=owned).moved("1.1")["replacement_cost"] == 31000


class TestAPriceWithoutANumber:
    def test_a_price_of_one_unit_is_for_one(self) -> None:
        kept = sound("items: [{material: Door, unit_cost: 90}]")
        assert str(kept.line("1.1").item.quantity) == "1 piece"
        assert kept.moved("1.1")["paid"] == 9000

    def test_it_may_stay_in_stock_and_be_drawn(self) -> None:
        """As one that was written."""
        kept = sound(
            "items: [{material: Door, unit_cost: 90, used: 0}]",
            "items: [{material: Door, source: stock, quantity: 1}]",
        )
        assert kept.moved("2.1") == {"in_stock": -9000, "job_cost": 9000, "saved": -9000}

    @pytest.mark.parametrize("part", ["used: 2 bag", "returned: 1 bag"])
    def test_what_is_counted_otherwise_still_lacks_its_number(self, part: str) -> None:
        """Nobody wrote that it was one."""
        (message,) = keep(f"items: [{{material: Mix, unit_cost: 5, {part}}}]").messages
        assert "and the line has no quantity; expected quantity: with how many there were" in message

    def test_a_price_of_the_whole_says_no_number(self) -> None:
        assert sound("items: [{material: Door, cost: 90}]").line("1.1").item.quantity is None

    def test_what_is_sold_by_the_price_of_one_is_counted_as_it_was_bought(self) -> None:
        """One bag of two, which had cost 10.00."""
        kept = sound(
            "items: [{material: Mix, quantity: 2 bag, cost: 20, used: 0 bag, id: mix}]",
            "items: [{material: Mix, source: sold, unit_cost: 25, from: mix}]",
        )
        assert kept.moved("2.1") == {"paid": -2500, "in_stock": -1000, "job_cost": -1500, "saved": 1500}

    def test_a_number_that_cannot_be_read_is_not_one(self) -> None:
        (message,) = keep("items: [{material: Door, quantity: some, unit_cost: 90, used: 1}]").messages
        assert "some is not a quantity" in message


class TestGuessedStock:
    """What was guessed when it was put down is a guess when it is drawn."""

    @pytest.mark.parametrize(
        ("stock", "estimated"),
        [
            ("quantity: 9 bag, unit_cost: 3", 0),
            ("quantity: 9 bag, unit_cost: about 3", 600),
            ("quantity: about 9 bag, unit_cost: 3", 600),
        ],
    )
    def test_a_draw_of_it_is_a_judgement(self, stock: str, estimated: int) -> None:
        owned = f"stock: {{mix: {{material: Mix, {stock}}}}}"
        kept = sound("items: [{material: Mix, source: stock, quantity: 2 bag}]", owned=owned)
        assert kept.line("1.1").parts.job_cost == 600
        assert kept.line("1.1").parts.estimated == estimated


@pytest.mark.parametrize("setting", ["floor_area: about 140 ft2", "service_life: about 20 years"])
def test_about_adds_nothing_where_no_cost_rests_on_it(setting: str) -> None:
    """Cost per area and per year are read from it, and no line is."""
    assert sound("items: [{material: Door, cost: 90}]", settings=setting).whole.estimated == 0


def test_a_price_may_have_any_digits() -> None:
    """1,000 at 0.1234567890123456789 are 123.46."""
    kept = sound("items: [{material: Nails, quantity: 1000, unit_cost: 0.1234567890123456789}]")
    assert kept.moved("1.1")["paid"] == 12346
