"""Whatever a tired person writes, keeping the ledger never raises, and what it keeps still balances.

Each line here is one that can stand by itself; nobody saw to it that they go together. Most of these journals
hold mistakes: draws of what never came, refunds of a fortune, receipts that come to something else.
"""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.ledger.journals import keep_files, moved, value_of

THING = ["material: Mix", "material: Fabric", "equipment: Cutter"]
QUANTITY = ["", "quantity: 3 bag", "quantity: 10 bag", "quantity: 2.5 ft", "quantity: 1 yd", "quantity: 4"]
PRICE = [
    "cost: 0", "cost: 0.01", "cost: 10", "cost: 99.99", "cost: about 40", "cost: unknown", "unit_cost: 1.235",
    "unit_cost: about 12.50", "cost: 10, unit_cost: 7",
]  # fmt: skip
PART = [
    "",
    "",
    "used: 0%",
    "used: 40%",
    "used: 1 bag",
    "used: 2 ft",
    "share: 0%",
    "share: 55%",
    "share: 5",
    "share: 500",
]
AGAIN = ["", "", "reusable_share: 0%", "reusable_share: 75%", "uses: 1", "uses: 4"]
WORTH = ["", "replacement_cost: 14.505"]
BACK = ["", "", "", "returned: 1 bag", "returned: 3 bag, refund: 3.33", "returned: 1, refund: 1000"]
ON = ["", "receipt: one", "receipt: one, taxed: no", "receipt: two"]
MARKS = ["", "", "", "rework: yes", "estimated: yes", "phase: ground"]
ID = ["", "id: a", "id: b", "id: c", "id: fabric"]
FROM = ["", "from: a", "from: b", "from: c", "from: fabric"]
REST = ["cost: rest, receipt: one", "cost: rest, receipt: two"]
SHAPES: list[list[list[str]]] = [
    # bought and found
    [THING, ["source: bought", "source: secondhand"], QUANTITY, PRICE, PART, AGAIN, WORTH, BACK, ON, MARKS, ID],
    [["material: Mix", "material: Fabric"], REST, QUANTITY, PART, AGAIN, ID],
    [THING, ["source: salvaged", "source: gift"], QUANTITY, ["", "cost: 12"], PART, AGAIN, WORTH, ON, MARKS, ID],
    # drawn, and gone
    [THING, ["source: stock"], QUANTITY, ["", "", "cost: 5", "cost: unknown"], PART[6:], AGAIN, WORTH, MARKS, FROM, ID],
    [THING, ["source: stock"], QUANTITY, AGAIN, FROM, ID],
    [THING, ["source: returned"], QUANTITY, ["", "refund: 0", "refund: 4.50", "refund: 1000"], FROM, MARKS],
    [THING, ["source: sold"], QUANTITY, ["cost: 0", "cost: 31", "unit_cost: 2.225"], FROM, MARKS],
    [THING, ["source: spoiled"], QUANTITY, FROM, MARKS],
    # machines
    [
        ["equipment: Cutter"],
        ["source: hired, cost: 64", "source: borrowed", "source: hired, cost: unknown"],
        ["", "fuel: 6.01"],
        ["", "deposit: 50"],
        AGAIN,
        WORTH,
        ON,
        ID,
    ],
    [["equipment: saw"], ["", "quantity: 3 hour", "quantity: 2 day"], ["", "fuel: 6.01"], WORTH],
    [["equipment: Cutter"], ["deposit_back: 0", "deposit_back: 50", "deposit_back: 60"], FROM[1:]],
    # work, journeys, fees
    [["labour: June"], ["", "quantity: 3 hour", "quantity: 1 day", "source: paid, cost: 30"], ["", "share: 50%"]],
    [["travel: Trip"], ["", "quantity: 12 mi", "quantity: 2 trip", "cost: 4"], ["", "share: 50%"]],
    [["fee: Skip"], PRICE, PART[:2] + PART[6:], AGAIN, ON],
]
HEAD: list[list[str]] = [
    ["", "tax: 7%", "tax: 100%", "tax: 3.01", "tax: included"],
    ["", "delivery: 0", "delivery: 35.55", "delivery: 35.55, delivery_taxed: yes"],
    ["", "discount: 5%", "discount: 100%", "discount: 12", "discount: 5000"],
    ["", "total: 0", "total: 10", "total: 123.45"],
]
OWNED = """
equipment: {saw: {name: Saw, replacement_cost: 9}}
stock:
  fabric: {material: Fabric, quantity: 30 ft, unit_cost: 0.333}
  mix: {material: Mix, quantity: 3 bag, unit_cost: unknown}
"""


def written(shape: list[list[str]]) -> st.SearchStrategy[str]:
    """One of each of these, as a mapping."""
    chosen = st.tuples(*(st.sampled_from(options) for options in shape))
    return chosen.map(lambda parts: f"{{{', '.join(part for part in parts if part)}}}")


LINE = st.one_of([written(shape) for shape in SHAPES])
EPISODE = st.builds(
    lambda one, two, lines: "\n".join(
        [f"receipts: {{one: {one}, two: {two}}}", "items:", *(f"  - {line}" for line in lines)]
    ),
    written(HEAD),
    written(HEAD),
    st.lists(LINE, min_size=1, max_size=8),
)


def whole_units(front: str, currency: str) -> str:
    """The same journal in yen: 31.00 cents make no yen."""
    return front if currency != "JPY" else front.replace("3.01", "301").replace("35.55", "3555").replace("6.01", "601")


@settings(max_examples=settings().max_examples // 2)
@given(
    st.lists(EPISODE, min_size=1, max_size=4),
    st.sampled_from(["USD", "JPY", "KWD"]),
    st.sampled_from(["yes", "no"]),
)
def test_nothing_raises_and_everything_balances(fronts: list[str], currency: str, inside: str) -> None:
    """Laws 1, 4 and 8 hold for every line that could be kept, mistakes or not."""
    kept = keep_files(
        {
            f"episodes/{day:02d}-day.md": f"title: Day\ndate: 2026-04-{day:02d}\n{whole_units(front, currency)}"
            for day, front in enumerate(fronts, 1)
        },
        settings=f"labour_rate: 18\ntravel_rate: 0.55\nprices_include_tax: {inside}",
        owned=OWNED,
        currency=currency,
    )
    for line in kept.ledger.lines:
        assert line.parts.unbalanced == 0
        assert all(type(value) is int for value in moved(line.parts).values())
    for left in (*kept.ledger.stock, *kept.ledger.reusable, *kept.ledger.from_earlier):
        assert left.value >= 0
        assert left.quantity is None or left.quantity >= 0
    assert value_of(kept.ledger.stock) == kept.whole.in_stock
    assert value_of(kept.ledger.reusable) == kept.whole.reusable
