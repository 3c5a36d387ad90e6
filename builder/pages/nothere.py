"""What readers ask first: what is not in this total. One list, each entry with its way to the lines."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.figures.figure import bound_of
from builder.journal.records.item import Kind, Source
from builder.pages.frame import Link
from builder.pages.paths import LEDGER, SOURCES
from builder.pages.site import Material


@dataclass(frozen=True, slots=True, kw_only=True)
class NotHere:
    """The list, and what bounds the total: lines without a price, and those nobody valued."""

    links: tuple[Link, ...]


def not_in_total(material: Material, root: str) -> NotHere:
    """Everything that stands outside what was spent."""
    return NotHere(links=tuple(_links(material, root)))


def _links(material: Material, root: str) -> Iterator[Link]:
    account, words = material.account, material.words
    whole, ledger = account.sums.whole, f"{root}{LEDGER}"
    if whole.unpriced:
        yield Link(
            text=words.count(
                whole.unpriced,
                "{n} line whose price is not known, so every total says “at least”",
                "{n} lines whose price is not known, so every total says “at least”",
            ),
            href=f"{ledger}#not-priced",
        )
    if whole.elsewhere:
        elsewhere = words.money(whole.elsewhere, bound_of(whole, "elsewhere"))
        text = words.say("{amount} that went into something else", amount=elsewhere)
        yield Link(text=text, href=f"{ledger}#all-lines")
    if whole.hours:
        yield Link(
            text=words.say("Unpaid work: {hours}", hours=words.hours(whole.hours)),
            href=f"{root}{SOURCES}#work",
        )
    own = sum(line.item.kind is Kind.EQUIPMENT and line.item.source is Source.OWNED for line in account.ledger.lines)
    if own:
        text = words.count(own, "The use of own tools, on {n} line", "The use of own tools, on {n} lines")
        yield Link(text=text, href=f"{root}{SOURCES}#by-source")
    if whole.deposits_out:
        text = words.say("Deposits of {amount} that are still out", amount=words.money(whole.deposits_out))
        yield Link(text=text, href=f"{ledger}#all-lines")
    if account.ledger.from_earlier:
        text = words.say("Leftovers of earlier jobs that this build has not drawn")
        yield Link(text=text, href=f"{root}{SOURCES}#from-earlier")
