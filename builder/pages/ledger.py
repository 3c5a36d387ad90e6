"""The ledger page: every line item, its four parts, its receipt and its episode."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from builder.figures.figure import Bound, bound_of
from builder.ledger.records import CostedReceipt, Line
from builder.pages.costs import came_from, cost_table, phase_of
from builder.pages.frame import Frame, Link, Term
from builder.pages.paths import EPISODE_PAGE, LEDGER, line_anchor, root_of
from builder.pages.site import Material, frame
from builder.pages.standing import Reading, reading
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.terms import terms
from builder.pages.wording import Words

MOST_LINES = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class LedgerPage:
    """ledger/."""

    frame: Frame
    spent: Reading
    of: str
    phases: Sequence[str]
    sources: Sequence[str]
    tables: tuple[Table, ...]
    not_priced: tuple[Link, ...]
    not_valued: tuple[Link, ...]
    receipts: Table | None
    terms: tuple[Term, ...]
    status: str


def ledger_page(material: Material) -> LedgerPage:
    """Lay the ledger out; beyond `MOST_LINES` lines it is split by phase, so that it stays quick on a phone."""
    account, words = material.account, material.words
    lines, whole = account.ledger.lines, account.sums.whole
    view, split = material.view(LEDGER), len(lines) > MOST_LINES
    return LedgerPage(
        frame=frame(
            material,
            LEDGER,
            words.say("Ledger"),
            words.say("Every line item of the build"),
            scripts=("ledger.js",),
        ),
        spent=reading(whole.spent, bound_of(whole, "spent"), words),
        of=words.count(len(lines), "spent so far, in {n} line", "spent so far, in {n} lines"),
        phases=_each(phase_of(view, line) for line in lines),
        sources=_each(came_from(line, words) for line in lines),
        tables=_by_phase(material) if split else (_table(material, lines, _caption(material), words.say("All lines")),),
        not_priced=_links(material, [line for line in lines if line.parts.unpriced]),
        not_valued=_links(material, [line for line in lines if line.parts.unvalued]),
        receipts=_receipts(material),
        terms=terms(words, "spent", "paid", "job_cost", "in_stock", "reusable", "elsewhere", "brought_in"),
        status=words.count(len(lines), "{n} line, all of them", "{n} lines, all of them"),
    )


def _each(words: Iterable[str]) -> tuple[str, ...]:
    """Every one once, as they come: what stands in a column is what can be chosen from it."""
    return tuple(dict.fromkeys(words))


def _caption(material: Material) -> str:
    currency = material.account.ledger.currency.code
    return material.words.say("Every line, in {currency}, with tax and delivery", currency=currency)


def _table(material: Material, lines: Sequence[Line], caption: str, foot: str) -> Table:
    return cost_table(material.view(LEDGER), lines, caption, foot, ledger=True)


def _by_phase(material: Material) -> tuple[Table, ...]:
    account, words = material.account, material.words
    return tuple(
        _table(
            material,
            account.lines_of_phase(phase.key),
            account.phase_name(phase.key) or words.say("No phase"),
            account.phase_name(phase.key) or words.say("No phase"),
        )
        for phase in account.phases
        if account.lines_of_phase(phase.key)
    )


def _links(material: Material, lines: Sequence[Line]) -> tuple[Link, ...]:
    account, words = material.account, material.words
    return tuple(
        Link(
            text=account.called(line.item),
            href=f"#{line_anchor(line.ref)}",
            small=words.say("episode {number}", number=line.episode),
        )
        for line in lines
    )


def _receipts(material: Material) -> Table | None:
    """Every receipt: goods, discount, tax, delivery and its total, with the episode it stands in."""
    account, words = material.account, material.words
    if not account.ledger.receipts:
        return None
    root = root_of(LEDGER)
    rows = []
    for receipt in account.ledger.receipts:
        episode = account.episode(receipt.episode)
        rows.append(
            Row(
                cells=(
                    Cell(
                        text=receipt.seller or receipt.key,
                        href=root + EPISODE_PAGE.format(name=episode.name) + "#costs",
                        small=words.say("episode {number}", number=episode.number),
                    ),
                    Cell(text=_least(receipt.goods, receipt, words)),
                    Cell(text=_least(receipt.discount, receipt, words) if receipt.discount else ""),
                    Cell(text=_tax(receipt, words)),
                    Cell(text=words.bare(receipt.delivery) if receipt.delivery else ""),
                    Cell(
                        text=words.bare(receipt.total),
                        small=_checked(receipt.checked, receipt.unpriced, words),
                    ),
                )
            )
        )
    return without_empty(
        Table(
            caption=words.say("Receipts, in {currency}", currency=account.ledger.currency.code),
            columns=(
                Column(label=words.say("Receipt"), role="what"),
                Column(label=words.say("Goods"), role="part", sums=True),
                Column(label=words.say("Discount"), role="part", sums=True),
                Column(label=words.say("Tax"), role="part", sums=True),
                Column(label=words.say("Delivery"), role="part", sums=True),
                Column(label=words.say("Total"), role="lead", sums=True),
            ),
            rows=tuple(rows),
        )
    )


def _least(amount: int, receipt: CostedReceipt, words: Words) -> str:
    return words.bounded(words.bare(amount), Bound.AT_LEAST if receipt.unpriced else Bound.EXACT)


def _tax(receipt: CostedReceipt, words: Words) -> str:
    """The tax of a receipt; where the prices hold it, that stands there, with the amount if somebody told it."""
    if receipt.tax is None:
        return words.say("in the prices") if receipt.tax_inside else ""
    amount = _least(receipt.tax, receipt, words)
    return words.say("{tax}, in the prices", tax=amount) if receipt.tax_inside else amount


def _checked(checked: bool, unpriced: int, words: Words) -> str:
    if unpriced:
        return words.say("at least: a line has no price")
    return words.say("as on the paper") if checked else ""
