"""Mistakes that people make with money, and the whole message that each of them gets.

Every journal here holds one mistake. Nothing raises, everything else is kept, and the message names the place, what
was found, what was expected and a likely fix.
"""

from __future__ import annotations

import pytest

from tests.ledger.journals import keep

MIX = "items: [{material: Mix, quantity: 10 bag, cost: 100, used: 4 bag, id: mix}]"
CUTTER = "items: [{equipment: Cutter, source: hired, cost: 64, deposit: 50, id: cutter}]"
BACK = "items: [{{equipment: Cutter, from: cutter, deposit_back: {}}}]"


def shop(head: str, *lines: str) -> list[str]:
    """One day with one receipt; its keys stand on line 6 of the file."""
    return ["receipts:\n  shop:\n    {" + f"{head}, items: [{', '.join(lines)}]" + "}"]


def later(line: str, first: str = MIX) -> list[str]:
    """A day, and a line a day later, which stands on line 4 of its file."""
    return [first, f"items: [{{{line}}}]"]


OFF = "the receipt shop says {}, and its lines with tax and delivery come to {}; expected both the same to the cent; {}"
LEFT = "is left from episodes/01-day.md:4"
BAGS = "expected at most what is left; check the quantity, and used: on the line it came from"
REFUND = (
    "expected at most what was paid for what went back; "
    "check the receipt; a sale at a gain is a line of its own with source: sold"
)

RECEIPTS: dict[str, tuple[list[str], str]] = {
    "a receipt named by no line": (
        ["receipts: {shop: {tax: 7%}}\nitems: ['Nails, 4']"],
        (
            "episodes/01-day.md:4:12: mistake: no line stands on the receipt shop; "
            "expected at least one line on each receipt; put lines under its items:, or write receipt: on them"
        ),
    ),
    "a line naming no receipt": (
        ["receipts: {shop: {tax: 7%, items: ['Nails, 4']}}\nitems: [{material: Ply, cost: 9, receipt: shup}]"],
        (
            "episodes/01-day.md:5:43: mistake: receipt: shup is no receipt of this episode; "
            "expected shop; did you mean shop?"
        ),
    ),
    "a line naming a receipt where there is none": (
        ["items: [{material: Ply, cost: 9, receipt: shop}]"],
        (
            "episodes/01-day.md:4:43: mistake: receipt: shop is no receipt of this episode; "
            "expected a receipt; the episode has none; add it under receipts:"
        ),
    ),
    "tax above 100 %": (
        shop("tax: 107%", "'Nails, 4'"),
        (
            "episodes/01-day.md:6:11: mistake: tax: 107% is more than the whole; "
            "expected a part such as 25%; a part is at most 100%"
        ),
    ),
    "a discount above the goods": (
        shop("discount: 50", "'Nails, 4'", "'Ply, 18'"),
        (
            "episodes/01-day.md:5:3: mistake: the discount of 50.00 is more than the goods, 22.00; "
            "expected a discount of at most the goods; check the receipt"
        ),
    ),
    "off by a line: on the paper and not here": (
        shop("total: 26", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "26.00", "22.00, 4.00 less than the paper", "that is just what Nails costs: is it on the paper twice?"
        ),
    ),
    "off by a line: here and not on the paper": (
        # Nails with their tax: 4.40
        shop("total: 19.80, tax: 10%", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "19.80", "24.20, 4.40 more than the paper", "that is just what Nails costs: is it on this receipt at all?"
        ),
    ),
    "off by the delivery": (
        shop("total: 22, delivery: 5", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "22.00", "27.00, 5.00 more than the paper", "that is just the delivery: is it in the lines already?"
        ),
    ),
    "off by the discount": (
        shop("total: 22, discount: 3", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "22.00", "19.00, 3.00 less than the paper", "that is just the discount: was it taken off already?"
        ),
    ),
    "off by a deposit": (
        [
            *shop("total: 164", "{equipment: Cutter, source: hired, cost: 64, deposit: 100, id: cutter}"),
            BACK.format(100),
        ],
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "164.00",
            "64.00, 100.00 less than the paper",
            "that is just the deposit on Cutter, which is no cost: take it off total:",
        ),
    ),
    "off by the tax": (
        shop("total: 22, tax: 10%", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "22.00",
            "24.20, 2.20 more than the paper",
            "that is just the tax: do the prices include it? Write tax: included",
        ),
    ),
    "off by the tax on the delivery": (
        shop("total: 33, tax: 10%, delivery: 8", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "33.00",
            "32.20, 0.80 less than the paper",
            "that is just the tax on the delivery: write delivery_taxed: yes",
        ),
    ),
    "off by the tax on a delivery that is not taxed": (
        shop("total: 32.20, tax: 10%, delivery: 8, delivery_taxed: yes", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "32.20",
            "33.00, 0.80 more than the paper",
            "that is just the tax on the delivery: leave out delivery_taxed",
        ),
    ),
    "off by a cent of tax": (
        # 7 % of 22.00 is 1.54; line by line 0.28 and 1.26, and somebody's till rounds up
        shop("total: 23.55, tax: 7%", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "23.55",
            "23.54, 0.01 less than the paper",
            "that is a rounding: tax worked out line by line? Give tax: as the amount that is printed",
        ),
    ),
    "off by a cent of a discount": (
        shop("total: 20.45, discount: 7%", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "20.45",
            "20.46, 0.01 more than the paper",
            "that is a rounding: give discount: as the amount that is printed",
        ),
    ),
    "off by a cent of a product": (
        # 7 x 0.333 is 2.331
        shop("total: 20.34", "{material: Nails, quantity: 7, unit_cost: 0.333}", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format(
            "20.34",
            "20.33, 0.01 less than the paper",
            "that is a rounding: give cost: as printed where it is not quantity x unit_cost",
        ),
    ),
    "off by a cent where nothing was rounded": (
        shop("total: 22.01", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format("22.01", "22.00, 0.01 less than the paper", "compare each line with the paper"),
    ),
    "off where the prices include the tax": (
        # 10/110 of 22.00 are 2.00: that tax is inside, and is no explanation
        shop("total: 20, tax: included", "'Nails, 4'", "'Ply, 18'"),
        "episodes/01-day.md:6:13: mistake: "
        + OFF.format("20.00", "22.00, 2.00 more than the paper", "compare each line with the paper"),
    ),
    "two lines that take the rest": (
        shop("total: 20", "'Nails, rest'", "'Ply, rest'"),
        (
            "episodes/01-day.md:6:40: mistake: two lines of one receipt take the rest; "
            "expected one cost: rest on a receipt; give all but one their cost"
        ),
    ),
    "the rest of nothing": (
        shop("tax: 7%", "'Nails, rest'", "'Ply, 18'"),
        (
            "episodes/01-day.md:6:23: mistake: the receipt shop has no total to take the rest of; "
            "expected total: on the receipt; add total: as printed"
        ),
    ),
    "the rest beside something unknown": (
        shop("total: 20", "'Nails, rest'", "'Ply, unknown'"),
        (
            "episodes/01-day.md:6:25: mistake: the receipt shop has a line of unknown cost, "
            "so its rest is unknown too; "
            "expected either a rest or an unknown line; put both things into one line, or look the price up"
        ),
    ),
    "a rest below zero": (
        shop("total: 9", "{material: Nails, cost: rest}", "'Ply, 18'"),
        (
            "episodes/01-day.md:6:48: mistake: no cost of this line brings the receipt shop to its total of 9.00; "
            "expected the other lines, tax and delivery at most as much as the total; check them against the paper"
        ),
    ),
}

DRAWS: dict[str, tuple[list[str], str]] = {
    "a draw before the purchase, by its id": (
        ["items: [{material: Mix, source: stock, quantity: 1 bag, from: mix}]", MIX],
        (
            "episodes/01-day.md:4:63: mistake: mix comes only after this line; expected a line that comes earlier; "
            "check the dates; on one day, the line it comes from stands first"
        ),
    ),
    "a draw before the purchase, by its name": (
        ["items: [{material: Mix, source: stock, quantity: 1 bag}]", MIX],
        (
            "episodes/01-day.md:4:20: mistake: no Mix came before this line; "
            "expected something bought or found on an earlier date, by the same name; "
            "check the name and the dates, or name the line with from:"
        ),
    ),
    "a draw from a name that nobody has": (
        later("material: Mix, source: stock, quantity: 1 bag, from: mux"),
        (
            "episodes/02-day.md:4:63: mistake: from: mux is no id of a line and no stock of owned.yaml; "
            "expected the id of an earlier line; did you mean mix?"
        ),
    ),
    "a draw from a line that brought nothing": (
        later("equipment: Cutter, source: stock, from: cutter", CUTTER.replace("deposit: 50, ", "")),
        (
            "episodes/02-day.md:4:50: mistake: cutter left nothing that could be drawn; "
            "expected a line of material or equipment; check from:"
        ),
    ),
    "a draw of another unit": (
        later("material: Mix, source: stock, quantity: 20 lb, from: mix"),
        (
            "episodes/02-day.md:4:50: mistake: Mix is drawn in lb and came in bag; expected a quantity in bag; "
            "the line it comes from stands at episodes/01-day.md:4"
        ),
    ),
    "a sale of a number where nobody counted": (
        later(
            "material: Mix, source: sold, quantity: 2 bag, cost: 1, from: mix",
            "items: [{material: Mix, cost: 5, used: 50%, id: mix}]",
        ),
        (
            "episodes/02-day.md:4:49: mistake: Mix is sold as 2 bag, and the line it comes from has no quantity; "
            "expected a quantity on the line at episodes/01-day.md:4; "
            "add it there; or leave quantity out here, which takes all that is left"
        ),
    ),
    "a draw of more than is left": (
        later("material: Mix, source: stock, quantity: 7 bag, from: mix"),
        f"episodes/02-day.md:4:50: mistake: 7 bag of Mix is drawn, and only 6 bag {LEFT}; {BAGS}",
    ),
    "a draw of more than is left of two loads": (
        [
            MIX,
            "items: [{material: mix, quantity: 5 bag, cost: 30}]",
            "items: [{material: Mix, source: stock, quantity: 7 bag}]",
        ],
        (
            f"episodes/03-day.md:4:50: mistake: 7 bag of Mix is drawn, and only 6 bag {LEFT}, "
            f"nothing is left from episodes/02-day.md:4; {BAGS}"
        ),
    ),
    "a draw of what is left when nothing is": (
        [MIX.replace("used: 4 bag, ", ""), "items: [{material: Mix, source: stock}]"],
        "episodes/02-day.md:4:9: mistake: what is left of Mix is drawn, and nothing is left from episodes/01-day.md:4; "
        + BAGS,
    ),
    "spoilage of more than there ever was": (
        later("material: Mix, source: spoiled, quantity: 11 bag"),
        f"episodes/02-day.md:4:52: mistake: 11 bag of Mix is spoiled, and only 10 bag {LEFT}; {BAGS}",
    ),
    "a part of a draw that is more than the draw": (
        later("material: Mix, source: stock, quantity: 1 bag, share: 41.00"),
        (
            "episodes/02-day.md:4:64: mistake: share is 41.00, more than the 10.00 it is a part of; "
            "expected at most 10.00; an amount that went into this build, or a part such as 55%"
        ),
    ),
    "a part of a gift that cost nothing": (
        ["items: [{material: Stone, source: gift, share: 41.00}]"],
        (
            "episodes/01-day.md:4:48: mistake: share is 41.00, more than the 0.00 it is a part of; "
            "expected at most 0.00; an amount that went into this build, or a part such as 55%"
        ),
    ),
}

BACKS: dict[str, tuple[list[str], str]] = {
    "a return of more than was bought, on the line": (
        ["items: [{material: Mix, quantity: 10 bag, cost: 100, returned: 11 bag}]"],
        (
            "episodes/01-day.md:4:64: mistake: returned is 11 bag, more than the quantity of 10 bag; "
            "expected at most 10 bag; correct one of the two"
        ),
    ),
    "a return of more than was bought, later": (
        later("material: Mix, source: returned, quantity: 11 bag, from: mix"),
        f"episodes/02-day.md:4:53: mistake: 11 bag of Mix is returned, and only 10 bag {LEFT}; {BAGS}",
    ),
    "a refund above the price, on the line": (
        ["items: [{material: Mix, quantity: 10 bag, cost: 100, returned: 4 bag, refund: 40.01}]"],
        f"episodes/01-day.md:4:79: mistake: the refund of 40.01 is more than was paid, 40.00; {REFUND}",
    ),
    "a refund above the price, later": (
        later("material: Mix, source: returned, quantity: 2 bag, from: mix, refund: 20.01"),
        f"episodes/02-day.md:4:79: mistake: the refund of 20.01 is more than was paid, 20.00; {REFUND}",
    ),
    "a sale of nothing: no price": (
        later("material: Mix, source: sold, quantity: 2 bag, from: mix"),
        (
            "episodes/02-day.md:4:9: mistake: Mix is sold and has no price; expected cost: or unit_cost:; "
            "add cost: with what was paid, or cost: unknown"
        ),
    ),
    "a sale of nothing: no quantity of it": (
        later("material: Mix, source: sold, quantity: 0 bag, cost: 3, from: mix"),
        "episodes/02-day.md:4:49: mistake: quantity is 0; expected more than nothing; remove the line, or say how many",
    ),
    "a sale of nothing: none of it left": (
        [
            *later("material: Mix, source: returned, quantity: 10 bag"),
            "items: [{material: Mix, source: sold, cost: 4}]",
        ],
        f"episodes/03-day.md:4:9: mistake: what is left of Mix is sold, and nothing {LEFT}; {BAGS}",
    ),
    "a sale of nothing: it never came": (
        ["items: [{material: Mix, source: sold, quantity: 1 bag, cost: 4}]"],
        (
            "episodes/01-day.md:4:20: mistake: no Mix came before this line; "
            "expected something bought or found on an earlier date, by the same name; "
            "check the name and the dates, or name the line with from:"
        ),
    ),
}

MACHINES: dict[str, tuple[list[str], str]] = {
    "a deposit that comes back twice": (
        [CUTTER, BACK.format(50), BACK.format(50)],
        (
            "episodes/03-day.md:4:57: mistake: the deposit of cutter comes back twice, first at episodes/02-day.md:4; "
            "expected a deposit that is out; remove the line, or correct from:"
        ),
    ),
    "more than the deposit": (
        [CUTTER, BACK.format(60)],
        (
            "episodes/02-day.md:4:57: mistake: 60.00 came back of a deposit of 50.00; "
            "expected at most what was paid out; correct one of the two"
        ),
    ),
    "a deposit that was never out": (
        [CUTTER.replace("deposit: 50, ", ""), BACK.format(50)],
        (
            "episodes/02-day.md:4:57: mistake: no deposit is out on cutter; "
            "expected a deposit that is out; remove the line, or correct from:"
        ),
    ),
    "a deposit that is still out": (
        [CUTTER],
        (
            "episodes/01-day.md:4:63: warning: the deposit of 50.00 on Cutter is still out; expected it to come back; "
            "write deposit_back: with from: in the episode where it comes back"
        ),
    ),
    "a deposit that is still out, on a line without an id": (
        [CUTTER.replace(", id: cutter", "")],
        (
            "episodes/01-day.md:4:63: warning: the deposit of 50.00 on Cutter is still out; expected it to come back; "
            "give this line an id, and write deposit_back: with from: in the episode where it comes back"
        ),
    ),
    "an hourly worth without hours": (
        ["items: [{equipment: Saw, source: owned, replacement_cost: 9}]"],
        (
            "episodes/01-day.md:4:59: mistake: Saw has an hourly worth and no hours; "
            "expected quantity: with the hours it ran; "
            "add quantity: 3 hour, or remove replacement_cost and it is listed, not priced"
        ),
    ),
    "work in days, which are no hours": (
        ["items: [{labour: June, quantity: 2 day}]"],
        (
            "episodes/01-day.md:4:34: warning: June is 2 day of work, and only hours are counted; "
            "expected hours; write quantity: 6 hour, for instance"
        ),
    ),
}

ALL = {**RECEIPTS, **DRAWS, **BACKS, **MACHINES}


@pytest.mark.parametrize(("fronts", "message"), ALL.values(), ids=ALL.keys())
def test_a_mistake_is_told_whole(fronts: list[str], message: str) -> None:
    """The one message, and no other: what follows from a mistake is not told as well."""
    assert keep(*fronts).messages == [message]


@pytest.mark.parametrize("fronts", [fronts for fronts, _ in ALL.values()], ids=ALL.keys())
def test_what_could_be_kept_still_balances(fronts: list[str]) -> None:
    """A line that cannot be costed counts nothing."""
    assert all(line.parts.unbalanced == 0 for line in keep(*fronts).ledger.lines)


def test_two_stock_keys_alike() -> None:
    """Reading keeps the first of them."""
    owned = "stock:\n  offcuts: {material: Cedar, quantity: 3}\n  offcuts: {material: Pine, quantity: 3}"
    kept = keep("summary: nothing", owned=owned)
    assert kept.messages == [
        (
            "owned.yaml:3:3: mistake: the key offcuts stands twice, first on line 2; "
            "expected each key once; remove one of the two"
        )
    ]
    assert [left.material for left in kept.ledger.from_earlier] == ["Cedar"]


def test_an_hourly_worth_and_a_quantity_in_days() -> None:
    """A day has no fixed number of working hours."""
    kept = keep(
        "items: [{equipment: saw, quantity: 2 day}]", owned="equipment: {saw: {name: Saw, replacement_cost: 9}}"
    )
    assert kept.messages == [
        (
            "episodes/01-day.md:4:36: mistake: saw has an hourly worth, and its quantity is in day; "
            "expected hours; write quantity: 3 hour, for instance"
        )
    ]


def test_an_id_that_stands_twice_does_not_mix_the_lots() -> None:
    """The mistake is told; each of the two lines keeps what it brought."""
    kept = keep(MIX, MIX.replace("cost: 100", "cost: 50"))
    assert [left.value for left in kept.ledger.stock] == [6000, 3000]
    assert kept.whole.unbalanced == 0
