"""Worked examples that others published, put through whole journals.

Each class names its source. Where a source rounds to whole dollars, the journal is kept in a currency without
minor units, so that the ledger rounds where the source does.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import pytest

from tests.ledger.journals import Kept, sound, value_of


class TestInventoryFirstInFirstOut:
    """OpenStax, Principles of Accounting, Volume 1: Financial Accounting, chapter 10 "Inventory", sections 10.2
    (periodic) and 10.3 (perpetual), "The Spy Who Loves You Corporation": 150 units at 21, 225 at 27, 210 at 33;
    120 sold at 36, then 180 at 39. First in first out: cost of goods sold 7,200, ending inventory 8,955, gross
    margin 4,140.
    """

    BUY = "items: [{{material: Spy kit, quantity: {} kit, unit_cost: {}, used: 0 kit}}]"
    TAKE = "items: [{{material: Spy kit, source: {}, quantity: {} kit}}]"

    def days(self, first: str, second: str) -> list[str]:
        """The month, with two ways to take 120 and then 180."""
        return [self.BUY.format(150, 21), first, self.BUY.format(225, 27), second, self.BUY.format(210, 33)]

    def test_used_in_the_build(self) -> None:
        """What is drawn is job cost at 7,200; what is left lies there at 8,955."""
        kept = sound(*self.days(self.TAKE.format("stock", 120), self.TAKE.format("stock", 180)))
        assert [kept.line(f"{day}.1").parts.job_cost for day in (2, 4)] == [252000, 468000]
        assert (kept.whole.job_cost, kept.whole.in_stock) == (720000, 895500)
        assert value_of(kept.ledger.stock) == 895500

    def test_what_is_left_lot_by_lot(self) -> None:
        """75 x 27 and 210 x 33."""
        kept = sound(*self.days(self.TAKE.format("stock", 120), self.TAKE.format("stock", 180)))
        assert [(left.quantity, left.value) for left in kept.ledger.stock] == [(75, 202500), (210, 693000)]

    def test_sold(self) -> None:
        """11,340 came in for what had cost 7,200: the gross margin of 4,140 is taken off the job cost. 16,155
        were paid, so 4,815 are still out.
        """
        take = "items: [{{material: Spy kit, source: sold, quantity: {} kit, unit_cost: {}}}]"
        kept = sound(*self.days(take.format(120, 36), take.format(180, 39)))
        assert (kept.whole.paid, kept.whole.job_cost, kept.whole.in_stock) == (481500, -414000, 895500)

    def test_with_the_opening_stock_from_an_earlier_job(self) -> None:
        """The 150 stand in owned.yaml: 3,150 are brought in by and by, and 13,005 are paid."""
        kept = sound(
            *self.days(self.TAKE.format("stock", 120), self.TAKE.format("stock", 180))[1:],
            owned="stock: {opening: {material: Spy kit, quantity: 150 kit, unit_cost: 21}}",
        )
        whole = kept.whole
        assert (whole.brought_in, whole.paid) == (315000, 1300500)
        assert (whole.job_cost, whole.in_stock) == (720000, 895500)


class TestDepreciation:
    """OpenStax, same book, chapter 11 "Long-Term Assets", section 11.3: the Kenzie printing press, 58,000 with a
    salvage value of 10,000, so 48,000 to use up over 5 years or 960,000 pages; Liam's silk-screen machine, 9,000
    over 5 years or 100,000 presses.

    The ledger knows no salvage value, so the line is the amount that is to be used up.
    """

    @staticmethod
    def yearly(base: int, first: str, *later: str) -> list[int]:
        """Job cost of the first use and of each one after it, in whole dollars."""
        kept = sound(
            f"items: [{{equipment: Press, source: bought, cost: {base}, {first}, id: press}}]",
            *(f"items: [{{equipment: Press, source: stock, from: press{one}}}]" for one in later),
        )
        assert (kept.whole.job_cost + kept.whole.reusable, kept.ledger.reusable[0].value) == (
            base * 100,
            kept.whole.reusable,
        )
        return [line.parts.job_cost // 100 for line in kept.ledger.lines]

    @pytest.mark.parametrize(("base", "expected"), [(48000, 9600), (9000, 1800)])
    def test_straight_line(self, base: int, expected: int) -> None:
        """`uses: 5` and four more: the same each year, and then nothing is left."""
        assert self.yearly(base, "uses: 5", *[""] * 5) == [expected] * 5 + [0]

    @pytest.mark.parametrize(
        ("base", "units", "expected"),
        [
            (48000, [180_000, 200_000, 210_000, 190_000, 180_000], [9000, 10000, 10500, 9500, 9000]),
            (9000, [20_000, 30_000], [1800, 2700]),
        ],
    )
    def test_units_of_production(self, base: int, units: list[int], expected: list[int]) -> None:
        """`reusable_share` is the units still to come, out of those that were to come."""
        left = 960_000 if base == 48000 else 100_000
        rates = []
        for count in units:
            # twelve decimals, which is as exact as a rate can be written
            rates.append(f"reusable_share: 0.{(left - count) * 10**12 // left:012d}")
            left -= count
        assert self.yearly(base, rates[0], *(f", {rate}" for rate in rates[1:])) == expected

    def test_a_tenth_of_the_units_is_a_tenth_of_the_cost(self) -> None:
        """IRS Publication 946 (2020) on the unit-of-production method, as quoted by hanisarji.com: 1,000 units
        expected and 100 made in the year is 10 % of the cost less salvage.
        """
        assert self.yearly(7300, "reusable_share: 90%") == [730]


class TestCapitalisedCost:
    """OpenStax, same section: a drill press at 22,000, with 2,500 of tax and 800 for delivery, costs 25,300."""

    def test_tax_and_delivery_are_cost(self) -> None:
        """All three are paid and carried."""
        kept = sound("receipts: {shop: {tax: 2500, delivery: 800, total: 25300, items: ['Drill press, 22000']}}")
        assert kept.moved("1.1")["paid"] == 2530000


class TestEquipmentValue:
    """US Army Corps of Engineers, EP 1110-1-8 (Construction Equipment Ownership and Operating Expense Schedule), 31
    July 2003, Volume 8, page 2-14: list price 1,197,389 less 7.5 % (89,804) is 1,107,585; sales tax 5.80 % (64,240)
    makes 1,171,825; freight 10,082 makes 1,181,907. The worksheet rounds to whole dollars.
    """

    def test_a_receipt_comes_to_the_worksheet_s_value(self) -> None:
        """Discount before tax, tax on what is left, freight untaxed."""
        kept = sound(
            "receipts: {dealer: {discount: 7.5%, tax: 5.80%, delivery: 10082, total: 1181907, "
            "items: ['Crawler tractor, 1197389']}}",
            currency="JPY",
        )
        assert (kept.receipt.discount, kept.receipt.tax, kept.receipt.total) == (89804, 64240, 1181907)

    def test_freight_by_weight(self) -> None:
        """1,913 hundredweight at 5.27: 10,082."""
        assert sound("items: [{fee: Freight, quantity: 1913 cwt, unit_cost: 5.27}]", currency="JPY").whole.paid == 10082


class TestHourlyCost:
    """What a machine costs an hour."""

    def test_ownership_and_operating_cost_add_up(self) -> None:
        """EP 1110-1-8, Volume 10, page 2-18: 63.35 to own and 91.74 to run is 155.09 an hour."""
        kept = sound(
            "items: [{equipment: dozer, quantity: 1 hour, fuel: 91.74}]",
            owned="equipment: {dozer: {name: Dozer, replacement_cost: 63.35, basis: ownership only}}",
        )
        assert kept.whole.replacement_cost == 15509

    def test_standing_by(self) -> None:
        """Same page: half of 46.39 and 16.96 is 40.155, printed as 40.16."""
        kept = sound(
            "items: [{equipment: dozer, quantity: 1 hour}]",
            owned="equipment: {dozer: {name: Dozer, replacement_cost: 40.155, basis: standing by}}",
        )
        assert kept.whole.replacement_cost == 4016

    @pytest.mark.parametrize("hours", [1, 2000, 10000])
    def test_straight_line_over_its_hours(self, hours: int) -> None:
        """Columbia University, Construction Cost Estimating (lecture transcript): 12,000 less 2,000 left over, five
        years of 2,000 hours, is 1 $ an hour. Bought here for the hours this build needed.
        """
        left = f"0.{10000 - hours:04d}"
        kept = sound(f"items: [{{equipment: Loader, source: bought, cost: 10000, reusable_share: {left}}}]")
        assert kept.whole.job_cost == hours * 100

    def test_a_rate_over_what_it_does(self) -> None:
        """FAO Forestry Paper 99 (Sessions, 1992), chapter 3: 60 an hour and 100 m3 an hour is 0.60 a m3."""
        kept = sound("items: [{equipment: Loader, source: hired, quantity: 100 m3, unit_cost: 0.60}]")
        assert kept.whole.paid == 6000


class TestMileage:
    """IRS standard mileage rates for business, cents a mile: 2017 to 2024 as quoted by taxformprocessing.com, 2025
    (Notice 2025-5) and 2026 (Notice 2026-10) as quoted by KPMG. A rate belongs to a date: a journal takes the one of
    its year, and this one changed in the middle of 2022.
    """

    @pytest.mark.parametrize(
        ("period", "cents"),
        [
            ("2017", "53.5"), ("2018", "54.5"), ("2019", "58"), ("2020", "57.5"), ("2021", "56"),
            ("2022, January to June", "58.5"), ("2022, July to December", "62.5"), ("2023", "65.5"),
            ("2024", "67"), ("2025", "70"), ("2026", "72.5"),
        ],
    )  # fmt: skip
    def test_a_thousand_miles(self, period: str, cents: str) -> None:
        """A thousand miles are ten times the rate in dollars."""
        rate = f"0.{cents.replace('.', '')}"
        kept = sound("items: [{travel: To the yard, quantity: 1000 mi}]", settings=f"travel_rate: {rate} per mile")
        assert kept.whole.travel_worth == Fraction(cents) * 1000

    def test_half_a_cent_of_a_rate_is_not_lost(self) -> None:
        """37 miles at 65.5 cents are 24.235: rounded once, half up."""
        kept = sound("items: [{travel: To the yard, quantity: 37 mi}]", settings="travel_rate: 0.655")
        assert kept.whole.travel_worth == 2424


def delivered(amount: str, *goods: str) -> list[int]:
    """The parts of a delivery that fall on lines of these prices, in minor units."""
    lines = ", ".join(f"'Thing {number}, {price}'" for number, price in enumerate(goods, 1))
    kept: Kept = sound(f"receipts: {{shop: {{delivery: {amount}, items: [{lines}]}}}}")
    return [line.priced.delivery for line in kept.ledger.lines if line.priced is not None]


class TestApportionment:
    """Largest remainder. OpenStax, Contemporary Mathematics, chapter 11 "Voting and Apportionment"."""

    def test_the_alabama_paradox(self) -> None:
        """Populations 6, 6 and 2: of 10 seats 4, 4, 2; of 11 seats 5, 5, 1. A line's share of the delivery may fall
        by a cent when the delivery rises by one.
        """
        assert delivered("0.10", "6", "6", "2") == [4, 4, 2]
        assert delivered("0.11", "6", "6", "2") == [5, 5, 1]

    def test_the_schools_of_hawaii(self) -> None:
        """616 over 46,310, 224,230, 20, 16,560 and 38,450. The book gives every county one at least (87, 424, 1, 31,
        73); with cents a line may get none, and plain largest remainder makes it 88 and 0.
        """
        assert delivered("6.16", "46310", "224230", "20", "16560", "38450") == [88, 424, 0, 31, 73]

    def test_seven_over_fifty_thirty_twenty(self) -> None:
        """infinitelexicon.com, "Largest remainder": quotas 3.5, 2.1 and 1.4 (inputs theirs, result worked out here)."""
        assert delivered("0.07", "50", "30", "20") == [4, 2, 1]

    @pytest.mark.parametrize(
        ("cost", "goods", "expected"),
        [
            ("36000", ["25", "75"], [900000, 2700000]),
            ("66000", ["44", "66"], [2640000, 3960000]),
            ("40000", ["42000", "4000"], [3652174, 347826]),
        ],
    )
    def test_joint_costs_by_physical_measure(self, cost: str, goods: Sequence[str], expected: list[int]) -> None:
        """OpenStax, Principles of Accounting, Volume 2: Managerial Accounting, chapter 10, exercises (inputs only; the
        book prints no answers, these are worked out here).
        """
        assert delivered(cost, *goods) == expected


class TestRounding:
    """A till rounds half up, as rule B of ISO 80000-1, annex B does (from memory); printed examples that agree."""

    @pytest.mark.parametrize(
        ("exact", "minor"),
        [
            # ASME A112.18.1/CSA B125.1, annex A; its even rule gives 1.62 for the second, a till gives 1.63
            ("1.655000", 166),
            ("1.625000", 163),
            # the one-step rule of Ontario's LS-100, with numbers of our own: never by way of 1.345
            ("1.3447", 134),
            # what binary fractions get wrong (common practice, no source): 1.005, 2.675
            ("1.005", 101),
            ("2.675", 268),
        ],
    )
    def test_a_unit_cost_of_many_digits(self, exact: str, minor: int) -> None:
        """Quantity x unit cost, rounded once."""
        assert sound(f"items: [{{material: Thing, unit_cost: {exact}}}]").whole.paid == minor
