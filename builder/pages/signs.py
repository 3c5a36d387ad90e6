"""A part as a labelled figure: below zero it has a name of its own, since no page shows a bare sign in a sentence."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from builder.figures.figure import Bound, amount_of, bound_of
from builder.ledger.parts import Parts, together
from builder.ledger.records import Line
from builder.pages.frame import Fact
from builder.pages.terms import name_of
from builder.pages.wording import Words

BELOW = {
    "in_stock": "Taken from stock",
    "reusable": "Used again",
    "saved": "Dearer than new by",
    "spent": "Came back",
}


def part_fact(key: str, parts: Parts, words: Words, name: str = "") -> Fact:
    """What was saved, or by how much it was dearer than new; what is in stock, or was taken from there."""
    amount, bound = amount_of(parts, key), bound_of(parts, key)
    if amount < 0 and key in BELOW:
        return Fact(name=words.say(BELOW[key]), value=words.money(-amount, turned(bound)), money=True)
    return Fact(name=name or name_of(key, words), value=words.money(amount, bound), money=True)


def rework_fact(lines: Iterable[Line], words: Words) -> Iterator[Fact]:
    """What doing it twice cost, where anything was done twice: unknown is not zero."""
    twice = together([line.parts for line in lines if line.item.rework])
    if twice.rework or twice.unpriced:
        bound = bound_of(twice, "rework")
        value = words.money(twice.rework, bound) if twice.rework else words.say("not priced")
        yield Fact(name=words.say("Doing it twice"), value=value, money=True)


def turned(bound: Bound) -> Bound:
    """The bound of a difference seen from the other side: at least 5 under is at most 5 over."""
    return {Bound.AT_LEAST: Bound.AT_MOST, Bound.AT_MOST: Bound.AT_LEAST}.get(bound, bound)


def spent_told(parts: Parts, words: Words) -> str:
    """What was spent; where more was taken in than paid, what came back."""
    bound = bound_of(parts, "spent")
    if parts.spent >= 0:
        return words.money(parts.spent, bound)
    return words.say("{amount} came back", amount=words.money(-parts.spent, turned(bound)))
