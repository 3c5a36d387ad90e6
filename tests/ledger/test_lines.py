"""How a line is read, by itself: "Gross = `cost`, or quantity x unit cost rounded once half up. Then: elsewhere
(`share`) or stock (`used`); then reusable of what is left; the rest, fuel, and any gain or loss are job cost."

The expected amounts are worked out by hand beside each case, in minor units.
"""

from __future__ import annotations

import pytest

from tests.ledger.journals import Moved, sound


def line(text: str, currency: str = "USD") -> Moved:
    """What the only line of a journal moves."""
    return sound(f"items:\n  - {text}", currency=currency).moved("1.1")


def new(job_cost: int, **others: int) -> Moved:
    """A thing bought new, of which a newcomer would have to buy all that was paid for."""
    return {"paid": job_cost, "job_cost": job_cost, "replacement_cost": job_cost, **others}


# fmt: off
GROSS: list[tuple[str, str, str, int]] = [
    ("the short form is a material bought", "USD", "Galvanised nails, 36.90", 3690),
    ("the amount stands after the last comma", "USD", "Bolts, washers, nuts, 4.05", 405),
    ("cost is for the whole line", "USD", "{material: Sand, quantity: 2 load, cost: 40}", 4000),
    ("quantity x unit cost", "USD", "{material: Mix, quantity: 36 bag, unit_cost: 6.10}", 21960),
    # 3 x 1.235 = 3.705: a half goes up
    ("rounded half up", "USD", "{material: Block, quantity: 3, unit_cost: 1.235}", 371),
    # 3 x 1.2349 = 3.7047; rounding 1.2349 first would make 3.69
    ("rounded once, after the product", "USD", "{material: Block, quantity: 3, unit_cost: 1.2349}", 370),
    ("absent, a quantity is 1 beside a unit cost", "USD", "{material: Hinge, unit_cost: 0.125}", 13),
    ("a part of a unit", "USD", "{material: Stone, quantity: 1/3 yd3, unit_cost: 50}", 1667),
    # 9 ft 8 in = 29/3 ft; x 1.50 = 14.50
    ("feet and inches", "USD", "{material: Angle, quantity: 9 ft 8 in, unit_cost: 1.50}", 1450),
    # no minor unit: 3 x 12.5 = 37.5 yen
    ("in whole yen", "JPY", "{material: Block, quantity: 3, unit_cost: 12.5}", 38),
    # three decimals: 1.2345 dinar = 1234.5 fils
    ("in fils", "KWD", "{material: Block, quantity: 1, unit_cost: 1.2345}", 1235),
    ("nothing is a price too", "USD", "{material: Pallet wood, cost: 0}", 0),
]
# fmt: on


@pytest.mark.parametrize(("currency", "text", "gross"), [row[1:] for row in GROSS], ids=[r[0] for r in GROSS])
def test_a_line_costs_what_it_says(currency: str, text: str, gross: int) -> None:
    """Gross = cost, or quantity x unit cost rounded once half up."""
    assert line(text, currency) == ({} if gross == 0 else new(gross))


DIVIDED: list[tuple[str, str, Moved]] = [
    (
        # 55 % of 260.00 is 143.00
        "share as a rate",
        "{material: Crushed stone, quantity: 1 load, cost: 260, share: 55%}",
        new(14300) | {"paid": 26000, "elsewhere": 11700},
    ),
    (
        "share as an amount",
        "{material: Crushed stone, cost: 260, share: 150}",
        new(15000) | {"paid": 26000, "elsewhere": 11000},
    ),
    (
        "share as an amount of quantity x unit cost",
        "{material: Crushed stone, quantity: 4 yd3, unit_cost: 65, share: 150}",
        new(15000) | {"paid": 26000, "elsewhere": 11000},
    ),
    (
        # half of 0.25 is 12.5 cents: the half cent stays with the build
        "half a cent of a share stays with the build",
        "{material: Washer, cost: 0.25, share: 50%}",
        new(13) | {"paid": 25, "elsewhere": 12},
    ),
    (
        "a thing for another job is all elsewhere",
        "{material: Paint for the fence, cost: 31.50, share: 0%}",
        {"paid": 3150, "elsewhere": 3150},
    ),
    ("a share of all is no share", "{material: Paint, cost: 31.50, share: 100%}", new(3150)),
    (
        # 4 of 10 bags: 24.40 in, 36.60 on the shelf; a newcomer has to buy all ten
        "used as a quantity",
        "{material: Mix, quantity: 10 bag, cost: 61, used: 4 bag}",
        {"paid": 6100, "job_cost": 2440, "in_stock": 3660, "replacement_cost": 6100, "saved": 3660},
    ),
    (
        # 80 % of 0.99 is 0.792
        "used as a part, without any quantity",
        "{material: Screws, cost: 0.99, used: 80%}",
        {"paid": 99, "job_cost": 79, "in_stock": 20, "replacement_cost": 99, "saved": 20},
    ),
    (
        # 2 yd of 12 ft is half
        "used in another unit of the same measure",
        "{material: Felt, quantity: 12 ft, cost: 30, used: 2 yd}",
        {"paid": 3000, "job_cost": 1500, "in_stock": 1500, "replacement_cost": 3000, "saved": 1500},
    ),
    (
        "nothing used yet",
        "{material: Mix, quantity: 10 bag, cost: 61, used: 0 bag}",
        {"paid": 6100, "in_stock": 6100, "replacement_cost": 6100, "saved": 6100},
    ),
    (
        # a quarter of 49.75 is 12.4375
        "reusable_share",
        "{material: Form boards, quantity: 8 board, cost: 49.75, reusable_share: 75%}",
        {"paid": 4975, "job_cost": 1244, "reusable": 3731, "replacement_cost": 4975},
    ),
    (
        "uses: 4 means three quarters",
        "{material: Form boards, quantity: 8 board, cost: 49.75, uses: 4}",
        {"paid": 4975, "job_cost": 1244, "reusable": 3731, "replacement_cost": 4975},
    ),
    ("a thing used once is used up", "{material: Form boards, cost: 49.75, uses: 1}", new(4975)),
    (
        # half of 0.25 is 12.5 cents: the build used up the half cent
        "half a cent of a reusable share stays with the build",
        "{material: Prop, cost: 0.25, uses: 2}",
        {"paid": 25, "job_cost": 13, "reusable": 12, "replacement_cost": 25},
    ),
    (
        # 6 of 8 boards went in: 60.00, of which a quarter is used up; 20.00 lies in stock
        "stock first, then reusable of what is left",
        "{material: Form boards, quantity: 8 board, cost: 80, used: 6 board, uses: 4}",
        {"paid": 8000, "job_cost": 1500, "in_stock": 2000, "reusable": 4500, "replacement_cost": 8000, "saved": 2000},
    ),
    (
        # elsewhere 50.00; 40 % of the other 50.00 will serve again
        "elsewhere first, then reusable of what is left",
        "{material: Props, cost: 100, share: 50%, reusable_share: 40%}",
        {"paid": 10000, "elsewhere": 5000, "job_cost": 3000, "reusable": 2000, "replacement_cost": 5000},
    ),
    (
        "fuel is paid and used up",
        "{equipment: Turf cutter, source: hired, quantity: 1 day, unit_cost: 64, fuel: 12.40}",
        new(7640),
    ),
    (
        # half of the drill is used up, and all of the fuel
        "no part of the fuel serves again",
        "{equipment: Petrol breaker, source: bought, cost: 100, uses: 2, fuel: 5}",
        {"paid": 10500, "job_cost": 5500, "reusable": 5000, "replacement_cost": 10500},
    ),
    ("four of ten bags went back", "{material: Mix, quantity: 10 bag, cost: 50, returned: 4 bag}", new(3000)),
    (
        # 4 bags cost 20.00 and 15.00 came back: the 5.00 lost were spent all the same
        "a loss on what went back is job cost",
        "{material: Mix, quantity: 10 bag, cost: 50, returned: 4 bag, refund: 15}",
        new(3500),
    ),
    ("no money at all came back", "{material: Mix, quantity: 10 bag, cost: 50, returned: 4 bag, refund: 0}", new(5000)),
    (
        # half of 0.25 is 12.5 cents: the half cent stays with the build, 0.12 comes back
        "half a cent of a return stays with the build",
        "{material: Washer, quantity: 2, cost: 0.25, returned: 1}",
        new(13),
    ),
    (
        # 8 bags kept for 40.00; 4 of those 8 went in
        "the default of used is all that was not returned, and used counts of the whole quantity",
        "{material: Mix, quantity: 10 bag, cost: 50, used: 4 bag, returned: 2 bag}",
        {"paid": 4000, "job_cost": 2000, "in_stock": 2000, "replacement_cost": 4000, "saved": 2000},
    ),
    (
        # 9 kept for 90.00; 80 % of the ten is 8 of those 9
        "used as a part is a part of quantity too",
        "{material: Mix, quantity: 10 bag, cost: 100, used: 80%, returned: 1 bag}",
        {"paid": 9000, "job_cost": 8000, "in_stock": 1000, "replacement_cost": 9000, "saved": 1000},
    ),
    (
        # 80.00 kept, and 40.00 of those went into this build, as the line says
        "a share as an amount is what it says, whatever went back",
        "{material: Mix, quantity: 10 bag, cost: 100, share: 40.00, returned: 2 bag}",
        new(4000) | {"paid": 8000, "elsewhere": 4000},
    ),
    (
        "everything went back",
        "{material: Mix, quantity: 10 bag, cost: 50, returned: 10 bag}",
        {},
    ),
    (
        "a fee, with a part of it for later jobs",
        "{fee: Tool library, cost: 60, reusable_share: 75%}",
        {"paid": 6000, "job_cost": 1500, "reusable": 4500, "replacement_cost": 6000},
    ),
]


@pytest.mark.parametrize(("text", "expected"), [row[1:] for row in DIVIDED], ids=[row[0] for row in DIVIDED])
def test_a_line_is_divided(text: str, expected: Moved) -> None:
    """Elsewhere or stock; then reusable of what is left; the rest, fuel, and any gain or loss are job cost."""
    assert line(text) == expected


class TestUnknownCost:
    """`cost: unknown` is counted and not summed; a share given as an amount is a known part of it."""

    def test_it_is_counted_and_worth_nothing_that_can_be_added(self) -> None:
        """Nothing is paid that anybody knows of, and nobody knows what a newcomer would pay."""
        assert line("{material: Gravel, quantity: 1 load, cost: unknown}") == {"unpriced": 1, "unvalued": 1}

    def test_a_known_part_is_paid_and_the_line_stays_unpriced(self) -> None:
        """`share: 150` with `cost: unknown`: paid counts that part."""
        expected = {"paid": 15000, "job_cost": 15000, "unpriced": 1, "unvalued": 1}
        assert line("{material: Gravel, quantity: 1 load, cost: unknown, share: 150}") == expected

    def test_a_rate_of_something_unknown_is_unknown(self) -> None:
        """Half of nobody knows."""
        expected = {"unpriced": 1, "unvalued": 1}
        assert line("{material: Gravel, quantity: 1 load, cost: unknown, share: 50%}") == expected

    def test_its_worth_may_be_known(self) -> None:
        """A newcomer pays 95.00 a load, whatever it cost here."""
        text = "{material: Gravel, quantity: 2 load, cost: unknown, replacement_cost: 95}"
        assert line(text) == {"replacement_cost": 19000, "saved": 19000, "unpriced": 1}

    def test_of_a_known_part_nobody_knows_the_worth(self) -> None:
        """How much of the load the 150.00 were for is not known, so no quantity can be valued."""
        text = "{material: Gravel, quantity: 2 load, cost: unknown, share: 150, replacement_cost: 95}"
        assert line(text) == {"paid": 15000, "job_cost": 15000, "unpriced": 1, "unvalued": 1}

    def test_money_that_came_back_is_known(self) -> None:
        """The receipt is lost, but the shop gave 24.40 back for what was returned."""
        text = "{material: Mix, quantity: 10 bag, cost: unknown, returned: 4 bag, refund: 24.40}"
        assert line(text) == {"paid": -2440, "job_cost": -2440, "unpriced": 1, "unvalued": 1}

    def test_what_is_left_of_it_lies_in_stock_unpriced(self) -> None:
        """Its quantity is known, its value is not."""
        kept = sound("items:\n  - {material: Mix, quantity: 10 bag, cost: unknown, used: 4 bag, id: mix}")
        (left,) = kept.ledger.stock
        assert (left.ref, left.quantity, left.value, left.unpriced) == ("mix", 6, 0, True)


class TestQuantities:
    """`used` is what went into the build on that day, `bought` what came less what went back."""

    def test_the_part_that_went_in_is_used(self) -> None:
        """10 came and 2 went back; 5 of the other 8 were used."""
        text = "items:\n  - {material: Mix, quantity: 10 bag, cost: 50, used: 5 bag, returned: 2 bag}"
        only = sound(text).line("1.1")
        assert (str(only.used), str(only.bought)) == ("5 bag", "8 bag")

    def test_what_went_elsewhere_is_bought_and_not_used(self) -> None:
        """A quarter of 4 yd3 is 1 yd3."""
        only = sound("items:\n  - {material: Stone, quantity: 4 yd3, cost: 50, share: 25%}").line("1.1")
        assert (str(only.used), str(only.bought)) == ("1 yd3", "4 yd3")

    def test_a_share_of_the_money_is_that_share_of_the_things(self) -> None:
        """20.00 of 50.00 is two fifths of 10 bags."""
        only = sound("items:\n  - {material: Mix, quantity: 10 bag, cost: 50, share: 20.00}").line("1.1")
        assert str(only.used) == "4 bag"

    def test_a_quantity_that_was_not_said_stays_unsaid(self) -> None:
        """Most people write only what they paid."""
        only = sound("items:\n  - Nails, 3.00").line("1.1")
        assert (only.used, only.bought) == (None, None)
