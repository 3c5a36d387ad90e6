"""Every key of a line item, once: what it does to the money of its line, or that it does nothing to it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from builder.journal import item_keys
from builder.ledger.records import Line
from tests.ledger.journals import keep, moved

# A day before: a load to draw from, and a machine with its deposit out.
BEFORE = (
    "items: [{material: Mix, quantity: 10 bag, cost: 100, used: 4 bag, id: mix}, "
    "{equipment: Cutter, source: hired, cost: 64, deposit: 50, id: cutter}]"
)


def part(name: str) -> Callable[[Line], object]:
    """A part of a line, minor units."""
    return lambda line: getattr(line.parts, name)


def said(name: str) -> Callable[[Line], object]:
    """What the line says, which is printed and moves nothing."""
    return lambda line: str(getattr(line.item, name))


# key, a line with it, what to look at, and what is there
KEYS: list[tuple[str, str, Callable[[Line], object], object]] = [
    ("material", "{material: Nails, cost: 3}", part("job_cost"), 300),
    ("equipment", "{equipment: Hoist, source: hired, cost: 40}", part("job_cost"), 4000),
    ("labour", "{labour: June, quantity: 3 hour}", part("hours"), 3),
    ("travel", "{travel: To the yard, quantity: 10 mi}", part("travel_worth"), 550),
    ("fee", "{fee: Permit, cost: 85}", part("job_cost"), 8500),
    ("quantity", "{material: Mix, quantity: 3 bag, unit_cost: 6}", part("paid"), 1800),
    ("unit_cost", "{material: Mix, unit_cost: 6.105}", part("paid"), 611),
    ("cost", "{material: Mix, cost: 6.10}", part("paid"), 610),
    ("source", "{material: Mix, source: salvaged}", part("unvalued"), 1),
    ("used", "{material: Mix, cost: 10, used: 30%}", part("in_stock"), 700),
    ("share", "{material: Mix, cost: 10, share: 30%}", part("elsewhere"), 700),
    ("reusable_share", "{material: Boards, cost: 10, reusable_share: 70%}", part("reusable"), 700),
    ("uses", "{material: Boards, cost: 10, uses: 4}", part("reusable"), 750),
    ("replacement_cost", "{material: Door, cost: 10, replacement_cost: 80}", part("replacement_cost"), 8000),
    ("fuel", "{equipment: Hoist, source: hired, cost: 40, fuel: 5}", part("job_cost"), 4500),
    ("deposit", "{equipment: Hoist, source: hired, cost: 40, deposit: 5}", part("deposits_out"), 500),
    ("deposit_back", "{equipment: Cutter, from: cutter, deposit_back: 45}", part("paid"), 500),
    ("returned", "{material: Mix, quantity: 4 bag, cost: 20, returned: 1 bag}", part("paid"), 1500),
    ("refund", "{material: Mix, quantity: 4 bag, cost: 20, returned: 1 bag, refund: 4}", part("paid"), 1600),
    ("receipt", "{material: Mix, cost: 10, receipt: shop}", part("paid"), 1070),
    ("taxed", "{material: Mix, cost: 10, receipt: shop, taxed: no}", part("paid"), 1000),
    ("from", "{material: Anything, source: stock, quantity: 2 bag, from: mix}", part("in_stock"), -2000),
    ("rework", "{material: Mix, cost: 10, rework: yes}", part("rework"), 1000),
    ("estimated", "{material: Mix, cost: 10, estimated: yes}", part("estimated"), 1000),
    ("phase", "{material: Mix, cost: 10, phase: roof}", lambda line: line.phase, "roof"),
    ("id", "{material: Mix, cost: 10, id: more}", lambda line: line.ref, "more"),
    ("against", "{material: Mix, cost: 10, against: [mix, bars]}", said("against"), "('mix', 'bars')"),
    ("size", "{material: Window, cost: 10, size: 24 in x 48 in}", lambda line: str(line.item.size.height), "48 in"),
    ("was", "{material: Hinge, cost: 44.93, was: 41.20 EUR}", said("was"), "41.20 EUR"),
    ("note", "{material: Mix, cost: 10, note: The rest went on the path.}", said("note"), "The rest went on the path."),
]


@pytest.mark.parametrize(("text", "look", "expected"), [row[1:] for row in KEYS], ids=[row[0] for row in KEYS])
def test_what_a_key_does(text: str, look: Callable[[Line], object], expected: object) -> None:
    """One line with the key, beside a receipt of 7 % and the rates of the journal."""
    front = f"phase: frame\nreceipts: {{shop: {{tax: 7%, items: ['Ply, 20']}}}}\nitems:\n  - {text}"
    line = keep(BEFORE, front, settings="travel_rate: 0.55").line("2.2")
    assert look(line) == expected


@pytest.mark.parametrize(
    "words", ["against: mix", "size: 24 in x 48 in", "was: 9 EUR", "note: so it was", "id: a", "phase: x"]
)
def test_what_is_only_printed_moves_nothing(words: str) -> None:
    """The same money with and without it."""
    kept = keep(f"items: ['Mix, 10', {{material: Mix, cost: 10, {words}}}]")
    assert moved(kept.line("1.1").parts) == moved(kept.line("1.2").parts)


def test_there_is_no_other_key() -> None:
    """A new key has to say here what it does."""
    assert [key for key, *_ in KEYS if key not in _names()] == []
    assert _names() == {key for key, *_ in KEYS}


def _names() -> set[str]:
    return {key.name for key in item_keys.ITEM.keys}
