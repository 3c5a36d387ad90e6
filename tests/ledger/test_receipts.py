"""How a receipt is read: its discount, tax and delivery over the lines that stand on it.

Every sum is worked out by hand beside its case, in minor units; `total` is what the paper says, so that each
case is checked by the ledger as well.
"""

from __future__ import annotations

from fractions import Fraction
from textwrap import indent

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.journal.records.item import Receipt
from builder.ledger.receipt import rest_of, work_out
from builder.words.money import Currency, Money
from builder.words.place import Place
from tests.ledger.journals import Kept, sound


def shop(head: str, *lines: str, settings: str = "", currency: str = "USD") -> Kept:
    """One episode with one receipt, its keys in `head`."""
    items = "\n".join(f"- {line}" for line in lines)
    front = f"receipts:\n  shop:\n{indent(head, '    ')}\n    items:\n{indent(items, '      ')}"
    return sound(front, settings=settings, currency=currency)


def shares(kept: Kept) -> list[tuple[int, int, int, int]]:
    """Goods, discount, tax, and delivery with its tax, of each line."""
    priced = [line.priced for line in kept.ledger.lines if line.priced is not None]
    return [(one.goods, one.discount, one.tax, one.delivery) for one in priced]


def paid(kept: Kept) -> list[int]:
    """What each line came to."""
    return [line.parts.paid for line in kept.ledger.lines]


class TestDiscount:
    """The rule: "Discount falls on all lines, rounded once"."""

    def test_a_rate_is_rounded_once(self) -> None:
        """5 % of 10.30 is 0.515, so 0.52; line by line it would be 0.51 and 0.01."""
        kept = shop("discount: 5%\ntotal: 9.78", "Bracket, 10.10", "Washer, 0.20")
        assert (kept.receipt.goods, kept.receipt.discount, kept.receipt.total) == (1030, 52, 978)
        assert shares(kept) == [(1010, 51, 0, 0), (20, 1, 0, 0)]

    def test_an_amount_falls_by_what_the_lines_cost(self) -> None:
        """10.00 over 60.00 and 30.00: 6.666 and 3.333; the larger remainder takes the cent."""
        kept = shop("discount: 10\ntotal: 80", "Timber, 60", "Screws, 30")
        assert shares(kept) == [(6000, 667, 0, 0), (3000, 333, 0, 0)]

    def test_it_falls_on_untaxed_lines_too(self) -> None:
        """A tenth off both; tax only on the first: 8 % of 90.00."""
        kept = shop("discount: 10%\ntax: 8%\ntotal: 187.20", "Timber, 100", "{fee: Permit, cost: 100, taxed: no}")
        assert shares(kept) == [(10000, 1000, 720, 0), (10000, 1000, 0, 0)]

    def test_all_of_it_may_be_taken_off(self) -> None:
        """Delivery is still paid, and falls equally where nothing has a price any more."""
        kept = shop("discount: 100%\ndelivery: 5\ntotal: 5", "Timber, 60", "Screws, 30")
        assert paid(kept) == [250, 250]


class TestTaxOnGoods:
    """The rule: "Tax on goods over taxed lines only, on goods after discount, rounded once half up"."""

    def test_on_goods_after_discount(self) -> None:
        """8 % of 100.00 - 10.00 is 7.20."""
        kept = shop("discount: 10\ntax: 8%\ntotal: 97.20", "Timber, 100")
        assert (kept.receipt.tax, kept.receipt.tax_inside) == (720, False)
        assert kept.moved("1.1") == {"paid": 9720, "job_cost": 9720, "replacement_cost": 9720}

    def test_rounded_once(self) -> None:
        """10 % of 1.35 is 0.135, so 0.14; line by line each 0.45 would carry 0.05."""
        kept = shop("tax: 10%\ntotal: 1.49", "Hook, 0.45", "Eye, 0.45", "Ring, 0.45")
        assert shares(kept) == [(45, 0, 5, 0), (45, 0, 5, 0), (45, 0, 4, 0)]

    def test_over_taxed_lines_only(self) -> None:
        """`taxed: no` leaves the line out of the tax."""
        kept = shop("tax: 7%\ntotal: 207", "Timber, 100", "{material: Book of knots, cost: 100, taxed: no}")
        assert paid(kept) == [10700, 10000]

    def test_what_cost_nothing_bears_no_tax(self) -> None:
        """All of it falls on the line that cost something."""
        kept = shop("tax: 7%\ntotal: 107", "{material: Sample, cost: 0}", "Timber, 100")
        assert paid(kept) == [0, 10700]

    def test_as_an_amount_over_the_taxed_lines(self) -> None:
        """3.01 over two equal lines: the odd cent goes to the earlier one."""
        kept = shop("tax: 3.01\ntotal: 103.01", "{material: Book, cost: 20, taxed: no}", "Timber, 40", "Screws, 40")
        assert shares(kept) == [(2000, 0, 0, 0), (4000, 0, 151, 0), (4000, 0, 150, 0)]

    def test_as_an_amount_on_free_lines_it_is_tax_and_no_delivery(self) -> None:
        """3.00 on two things that cost nothing: half each."""
        assert shares(shop("tax: 3\ntotal: 3", "Nails, 0", "Ply, 0")) == [(0, 0, 150, 0), (0, 0, 150, 0)]

    def test_in_whole_yen(self) -> None:
        """10 % of 1,235 yen is 123.5: a half goes up."""
        kept = shop("tax: 10%\ntotal: 1359", "Timber, 1235", currency="JPY")
        assert paid(kept) == [1359]


class TestTaxOnDelivery:
    """The rule: "Tax on delivery follows delivery"."""

    def test_delivery_is_not_taxed_unless_the_receipt_says_so(self) -> None:
        """7 % of the goods only."""
        kept = shop("tax: 7%\ndelivery: 10\ntotal: 117", "Timber, 100")
        assert (kept.receipt.delivery, kept.receipt.tax) == (1000, 700)

    def test_it_is_rounded_apart_and_falls_where_the_delivery_falls(self) -> None:
        """10 % of 5.05 is 0.505, so 0.51; delivery with its tax is 5.56, half on the untaxed line."""
        kept = shop(
            "tax: 10%\ndelivery: 5.05\ndelivery_taxed: yes\ntotal: 215.56",
            "Timber, 100",
            "{fee: Permit, cost: 100, taxed: no}",
        )
        assert shares(kept) == [(10000, 0, 1000, 278), (10000, 0, 0, 278)]

    def test_goods_and_delivery_are_two_roundings(self) -> None:
        """10 % of 0.45 is 0.045, so 0.05, for each of the two."""
        kept = shop("tax: 10%\ndelivery: 0.45\ndelivery_taxed: yes\ntotal: 1.00", "Hook, 0.45")
        assert kept.receipt.tax == 10

    def test_an_amount_is_divided_between_goods_and_delivery(self) -> None:
        """11.00 over goods of 100.00 and delivery of 10.00; the untaxed line has its part of the delivery."""
        kept = shop(
            "tax: 11.00\ndelivery: 10\ndelivery_taxed: yes\ntotal: 221",
            "Timber, 100",
            "{fee: Permit, cost: 100, taxed: no}",
        )
        assert shares(kept) == [(10000, 0, 1000, 550), (10000, 0, 0, 550)]


class TestWeights:
    """The rule: "Weights are goods after discount, or equal if all are zero"."""

    def test_delivery_falls_by_goods_after_discount(self) -> None:
        """10.00 over 90.00 and 45.00."""
        kept = shop("discount: 10%\ndelivery: 10\ntotal: 145", "Timber, 100", "Screws, 50")
        assert [share[3] for share in shares(kept)] == [667, 333]

    def test_a_free_line_among_paid_ones_carries_nothing(self) -> None:
        """The brushes were thrown in."""
        kept = shop("delivery: 10\ntotal: 110", "Paint, 100", "{material: Brushes, cost: 0}")
        assert paid(kept) == [11000, 0]

    def test_over_free_lines_only_it_is_equal(self) -> None:
        """10.00 for bringing three free things: 3.34, 3.33, 3.33."""
        gift = "{material: Pallet, source: gift, replacement_cost: 8}"
        kept = shop("delivery: 10\ntotal: 10", gift, gift, gift)
        assert paid(kept) == [334, 333, 333]
        assert kept.moved("1.1") == {"paid": 334, "job_cost": 334, "replacement_cost": 800, "saved": 466}

    def test_a_free_line_alone_under_a_delivery_charge(self) -> None:
        """Fine, and nothing is divided by zero."""
        kept = shop("delivery: 35\ntax: 7%\ntotal: 35", "{material: Topsoil, source: gift}")
        assert kept.moved("1.1") == {"paid": 3500, "job_cost": 3500, "unvalued": 1}


class TestTaxInside:
    """The rule: "With `prices_include_tax` or `tax: included`, total = goods - discount + delivery and the tax
    inside is only shown".
    """

    def test_prices_include_tax(self) -> None:
        """120.00 less a tenth is 108.00, of which 20/120 are tax."""
        kept = shop(
            "tax: 20%\ndiscount: 10%\ndelivery: 6\ntotal: 114", "Timber, 120", settings="prices_include_tax: yes"
        )
        assert (kept.receipt.tax, kept.receipt.tax_inside, kept.receipt.total) == (1800, True, 11400)
        assert shares(kept) == [(12000, 1200, 0, 600)]

    def test_what_the_prices_hold_is_rounded_once(self) -> None:
        """20/120 of 10.04 is 1.6733; a cent more would hold 1.675, which is 1.68."""
        assert shop("tax: 20%\ntotal: 10.04", "Ply, 10.04", settings="prices_include_tax: yes").receipt.tax == 167
        assert shop("tax: 20%\ntotal: 10.05", "Ply, 10.05", settings="prices_include_tax: yes").receipt.tax == 168

    def test_of_a_taxed_delivery_it_is_shown_too(self) -> None:
        """20/120 of 108.00 + 6.00."""
        kept = shop(
            "tax: 20%\ndiscount: 10%\ndelivery: 6\ndelivery_taxed: yes\ntotal: 114",
            "Timber, 120",
            settings="prices_include_tax: yes",
        )
        assert (kept.receipt.tax, paid(kept)) == (1900, [11400])

    def test_untaxed_lines_hold_none(self) -> None:
        """20/120 of 60.00 only."""
        kept = shop(
            "tax: 20%\ntotal: 160",
            "Timber, 60",
            "{fee: Permit, cost: 100, taxed: no}",
            settings="prices_include_tax: yes",
        )
        assert (kept.receipt.tax, paid(kept)) == (1000, [6000, 10000])

    def test_an_amount_is_only_shown(self) -> None:
        """The paper says how much tax there was."""
        kept = shop("tax: 9.58\ntotal: 60", "Timber, 60", settings="prices_include_tax: yes")
        assert (kept.receipt.tax, kept.receipt.tax_inside, paid(kept)) == (958, True, [6000])

    def test_included_on_one_receipt(self) -> None:
        """Nobody said at which rate, so nobody knows how much; it is not nothing."""
        kept = shop("tax: included\ndelivery: 5\ntotal: 65", "Timber, 60")
        assert (kept.receipt.tax, kept.receipt.tax_inside, paid(kept)) == (None, True, [6500])


class TestWhatWasBought:
    """The rule: "Computed on what was bought, before returns"."""

    KEPT = """
        receipts:
          shop:
            tax: 10%
            delivery: 10
            total: 175
            items:
              - {material: Mix, quantity: 10 bag, cost: 100, returned: 4 bag}
              - Timber, 50
        """

    def test_the_total_is_that_of_the_day(self) -> None:
        """150.00 and 15.00 tax and 10.00 delivery, whatever went back on the next trip."""
        kept = sound(self.KEPT)
        assert (kept.receipt.total, kept.receipt.checked) == (17500, True)

    def test_what_went_back_takes_its_share_of_the_delivery_as_a_loss(self) -> None:
        """The bags came to 116.67; 4 of 10 carried 46.67, and 44.00 (goods and tax) came back."""
        kept = sound(self.KEPT)
        assert shares(kept) == [(10000, 0, 1000, 667), (5000, 0, 500, 333)]
        assert kept.moved("1.1") == {"paid": 7267, "job_cost": 7267, "replacement_cost": 7267}


class TestRest:
    """The rule: "`cost: rest` inside a receipt takes the printed total less the other lines"."""

    @pytest.mark.parametrize(
        ("head", "other", "rest"),
        [
            ("total: 100", "Timber, 60", 4000),
            # 345.10 + 49.75 = 394.85; 7 % is 27.64; with 35.00 delivery 457.49
            (
                "tax: 7%\ndelivery: 35\ntotal: 457.49",
                "{material: Mix, quantity: 58 bag, unit_cost: 5.95}",
                4975,
            ),
            # (60.00 + 40.00) less a quarter, and 8 % of 75.00
            ("tax: 8%\ndiscount: 25%\ntotal: 81", "Timber, 60", 4000),
            # a discount larger than the total: 60.00 - 50.00
            ("discount: 50\ntotal: 10", "{material: Brushes, cost: 0}", 6000),
            # half of 60.00 + 40.00; 40.01 would do as well, and the lower one is taken
            ("discount: 50%\ntotal: 50", "Timber, 60", 4000),
            # nine tenths of 99.96 are 89.964, so 89.96 is taken off
            ("discount: 90%\ntotal: 10", "{material: Brushes, cost: 0}", 9996),
            # all of it is taken off, so any cost would do
            ("discount: 100%\ndelivery: 5\ntotal: 5", "Timber, 60", 0),
            ("tax: 6.10\ndelivery: 4\ntotal: 110.10", "Timber, 60", 4000),
            ("tax: included\ntotal: 100", "Timber, 60", 4000),
            ("total: 60", "Timber, 60", 0),
        ],
    )
    def test_it_is_what_the_total_leaves(self, head: str, other: str, rest: int) -> None:
        """Tax, delivery and discount are worked back out of the total."""
        kept = shop(head, other, "{material: All the rest, cost: rest}")
        line = kept.line("1.2")
        assert line.priced is not None
        assert line.priced.goods == rest

    def test_it_is_as_well_known_as_any_price(self) -> None:
        """Bought new: a newcomer pays the same."""
        kept = shop("total: 100", "Timber, 60", "{material: All the rest, cost: rest}")
        assert kept.moved("1.2") == {"paid": 4000, "job_cost": 4000, "replacement_cost": 4000}

    @given(
        prices=st.lists(st.integers(0, 30_000), min_size=1, max_size=5),
        rest=st.integers(0, 30_000),
        tax=st.fractions(0, 1, max_denominator=400) | st.integers(0, 5000),
        discount=st.fractions(0, Fraction(9, 10), max_denominator=400) | st.integers(0, 2000) | st.none(),
        delivery=st.integers(0, 9000),
        taxed=st.lists(st.booleans(), min_size=6, max_size=6),
        delivery_taxed=st.booleans(),
    )
    def test_any_price_is_found_again_from_the_total(
        self,
        prices: list[int],
        rest: int,
        tax: Fraction | int,
        discount: Fraction | int | None,
        delivery: int,
        taxed: list[bool],
        delivery_taxed: bool,
    ) -> None:
        """A price that makes this total is found, for every receipt that has one."""
        goods, taxed = [*prices, rest], taxed[: len(prices) + 1]
        receipt = Receipt(
            place=Place(file="episodes/01-day.md"),
            key="shop",
            tax=money(tax),
            discount=None if discount is None else money(discount),
            delivery=money(delivery),
            delivery_taxed=delivery_taxed,
        )
        total = work_out(receipt, goods, taxed, False).total
        printed = Receipt(
            place=receipt.place,
            key="shop",
            tax=receipt.tax,
            discount=receipt.discount,
            delivery=receipt.delivery,
            delivery_taxed=delivery_taxed,
            total=Money(total, USD),
        )
        found = rest_of(printed, goods, len(prices), taxed, False)
        assert found is not None
        assert work_out(receipt, [*prices, found], taxed, False).total == total


USD = Currency("USD", 2)


def money(told: Fraction | int) -> Fraction | Money:
    """A rate, or an amount of so many cents."""
    return Money(told, USD) if isinstance(told, int) else told


class TestLinesOfOneReceipt:
    """A receipt may span phases, and may hold a line for another job."""

    def test_each_line_may_have_its_own_phase(self) -> None:
        """Else it has the episode's."""
        front = (
            "phase: frame\nreceipts: {shop: {tax: 10%, items: [{material: Felt, cost: 10, phase: roof}, 'Nails, 5']}}"
        )
        kept = sound(front)
        assert [(line.phase, line.parts.paid) for line in kept.ledger.lines] == [("roof", 1100), ("frame", 550)]

    def test_a_line_for_another_job_carries_its_part_away(self) -> None:
        """Half of the tax and the delivery leave with the fence paint."""
        kept = shop("tax: 10%\ndelivery: 10\ntotal: 120", "Paint, 50", "{material: Fence paint, cost: 50, share: 0%}")
        assert kept.moved("1.2") == {"paid": 6000, "elsewhere": 6000}

    def test_a_share_as_an_amount_takes_its_part_of_tax_and_delivery(self) -> None:
        """30.00 of 50.00 is three fifths: of 60.00, 36.00."""
        kept = shop("tax: 10%\ndelivery: 5\ntotal: 60", "{material: Paint, cost: 50, share: 30.00}")
        expected = {"paid": 6000, "elsewhere": 2400, "job_cost": 3600, "replacement_cost": 3600}
        assert kept.moved("1.1") == expected

    def test_leftovers_lie_in_stock_with_tax_and_delivery(self) -> None:
        """10 bags came to 120.00; 6 are left."""
        kept = shop("tax: 10%\ndelivery: 10\ntotal: 120", "{material: Mix, quantity: 10 bag, cost: 100, used: 4 bag}")
        assert kept.ledger.stock[0].value == 7200

    def test_lines_may_stand_outside_and_name_it(self) -> None:
        """`receipt:` on the line is the same as standing inside."""
        named = sound(
            """
            receipts: {shop: {tax: 10%, delivery: 10, total: 120}}
            items:
              - {material: Timber, cost: 60, receipt: shop}
              - Something else, 3
              - {material: Screws, cost: 40, receipt: shop}
            """
        )
        assert [line.parts.paid for line in named.ledger.lines] == [7200, 300, 4800]

    def test_two_receipts_of_a_day_have_nothing_to_do_with_each_other(self) -> None:
        """Each has its own tax."""
        kept = sound("receipts: {one: {tax: 10%, items: ['A, 10']}, two: {tax: 20%, items: ['B, 10']}}")
        assert [receipt.total for receipt in kept.ledger.receipts] == [1100, 1200]

    def test_delivery_of_something_unpriced_was_paid_all_the_same(self) -> None:
        """The price is not known; the 35.00 for bringing it are, and are in the ledger."""
        kept = shop("delivery: 35", "{material: Gravel, cost: unknown}")
        assert kept.moved("1.1") == {"paid": 3500, "job_cost": 3500, "unpriced": 1, "unvalued": 1}
        assert (kept.receipt.total, kept.receipt.unpriced, kept.receipt.checked) == (3500, 1, False)

    def test_a_discount_may_be_more_than_the_prices_that_are_known(self) -> None:
        """15.00 off is no mistake where one of the two prices is not known; nothing falls below zero."""
        kept = shop("discount: 15.00", "Hook, 10", "{material: Gravel, cost: unknown}")
        assert paid(kept) == [0, 0]
