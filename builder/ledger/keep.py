"""Keeping the ledger: every line of a journal costed, in order of date, episode number and line."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.episode import Episode
from builder.journal.records.item import Item
from builder.journal.records.journal import Journal
from builder.journal.records.plan import OwnedStock
from builder.ledger.cost import Books
from builder.ledger.parts import Parts
from builder.ledger.pricing import price_episode
from builder.ledger.problems import Findings
from builder.ledger.records import CostedReceipt, HoursWorked, Ledger, Left, Line
from builder.ledger.stock import Lot, Pile
from builder.ledger.worth import own_work
from builder.words.money import Currency, till
from builder.words.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """The ledger and the problems of keeping it."""

    ledger: Ledger
    problems: tuple[Problem, ...]


def keep_ledger(journal: Journal) -> Kept:
    """Cost every line. A line that cannot be costed is reported and counts nothing."""
    findings = Findings()
    books = Books(journal, _earlier(journal), findings)
    refs = {stock.key for stock in journal.owned.stock}
    lines: list[Line] = []
    receipts: list[CostedReceipt] = []
    hours: list[HoursWorked] = []
    for episode in journal.episodes:
        priced = price_episode(episode, journal.settings, findings)
        receipts += priced.receipts
        for number, (item, price) in enumerate(zip(episode.items, priced.prices, strict=True), 1):
            ref = item.id if item.id and item.id not in refs else f"{episode.number}.{number}"
            refs.add(ref)
            costed = books.cost(item, ref, price)
            lines.append(
                Line(
                    item=item,
                    ref=ref,
                    episode=episode.number,
                    date=episode.date,
                    phase=item.phase or episode.phase,
                    parts=costed.parts,
                    priced=price,
                    used=costed.used,
                    bought=costed.bought,
                    draws=costed.draws,
                    worth_basis=costed.basis,
                    refund=costed.refund,
                )
            )
        hours += _hours(episode, journal)
    _deposits_out(books.deposits.values(), findings)
    ledger = Ledger(
        currency=journal.settings.currency,
        lines=tuple(lines),
        hours=tuple(hours),
        receipts=tuple(receipts),
        stock=_left((lot for lot in books.shelf if not lot.from_earlier), reusable=False),
        reusable=_left((lot for lot in books.shelf if not lot.from_earlier), reusable=True),
        from_earlier=_left((lot for lot in books.shelf if lot.from_earlier), reusable=False),
    )
    return Kept(ledger=ledger, problems=findings.problems)


def _earlier(journal: Journal) -> Iterable[Lot]:
    return (_lot(stock, journal.settings.currency) for stock in journal.owned.stock)


def _lot(stock: OwnedStock, currency: Currency) -> Lot:
    quantity = stock.quantity
    value = till(quantity.value, stock.unit_cost, currency) if stock.unit_cost is not None else 0
    return Lot(
        ref=stock.key,
        material=stock.material,
        place=stock.place,
        unit=quantity.unit,
        stock=Pile(quantity.value, value),
        unpriced=stock.unit_cost is None,
        valued=stock.replacement_cost is not None,
        unit_worth=stock.replacement_cost,
        from_earlier=True,
    )


def _hours(episode: Episode, journal: Journal) -> Iterable[HoursWorked]:
    for told in episode.hours:
        parts = Parts(hours=told.hours, own_work=own_work(told.hours, journal.settings))
        yield HoursWorked(episode=episode.number, phase=told.phase or episode.phase, parts=parts)


def _deposits_out(items: Iterable[Item], findings: Findings) -> None:
    for item in items:
        findings.warning(
            item.at("deposit"),
            f"the deposit of {item.deposit} on {item.what} is still out",
            "it to come back",
            ("" if item.id else "give this line an id, and ")
            + "write deposit_back: with from: in the episode where it comes back",
        )


def _left(lots: Iterable[Lot], *, reusable: bool) -> tuple[Left, ...]:
    found = ((lot, lot.reusable if reusable else lot.stock) for lot in lots)
    return tuple(_one_left(lot, pile) for lot, pile in found if pile.quantity or pile.value)


def _one_left(lot: Lot, pile: Pile) -> Left:
    counted = lot.unit is not None
    return Left(
        ref=lot.ref,
        material=lot.material,
        quantity=Fraction(pile.quantity) if counted else None,
        unit=lot.unit,
        value=pile.value,
        unpriced=lot.unpriced,
    )
