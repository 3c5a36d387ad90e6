"""The cost table of an episode, a phase or the whole ledger: the lines, their parts, and a foot that adds up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.figures.account import Account
from builder.figures.figure import amount_of, bound_of
from builder.journal.records.item import Item, Kind, Source, Told
from builder.ledger.parts import Parts, together
from builder.ledger.records import Line, OnReceipt
from builder.pages.paths import EPISODE_PAGE, LEDGER, line_anchor
from builder.pages.table import EMPTY, Cell, Column, Row, Table, plain
from builder.pages.terms import name_of
from builder.pages.wording import Words

PARTS = ("in_stock", "reusable", "elsewhere", "brought_in")
SOURCES = {
    Source.BOUGHT: "bought",
    Source.SECONDHAND: "secondhand",
    Source.SALVAGED: "salvaged",
    Source.GIFT: "gift",
    Source.STOCK: "taken from stock",
    Source.OWNED: "own",
    Source.BORROWED: "borrowed",
    Source.HIRED: "hired",
    Source.UNPAID: "unpaid work",
    Source.PAID: "paid work",
    Source.RETURNED: "returned",
    Source.SOLD: "sold",
    Source.SPOILED: "spoiled",
}
WAYS = {
    **{source.value: told for source, told in SOURCES.items()},
    "again": "used again",
    "fee": "fee",
    "travel": "travel",
}
"""Every word of the column `Where from`, in the order in which pages list them."""
GUESSED = {
    "quantity": "how many",
    "unit_cost": "price of one",
    "cost": "what it cost",
    "used": "how much was used",
    "share": "the part for this build",
    "reusable_share": "the part that serves again",
    "uses": "how often it serves",
    "replacement_cost": "what it would cost new",
    "fuel": "fuel",
    "returned": "how much went back",
    "refund": "what came back for it",
}
"""What is called a judgement, by its key in a line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """From where a table is seen: the account, the words, and the way back to the top of the site."""

    account: Account
    words: Words
    root: str


def cost_table(view: View, lines: Sequence[Line], caption: str, foot: str, *, ledger: bool = False) -> Table:
    """The lines with what was paid and their parts; `ledger` adds episode, phase and receipt, and anchors.

    A part that is nowhere has no column, nor have quantities; but the style sheet counts the ledger's first eight.
    """
    words = view.words
    many = ledger or any(line.item.quantity is not None for line in lines)
    parts = [part for part in PARTS if any(amount_of(line.parts, part) for line in lines)]
    columns = [
        Column(label=words.say("What"), role="what", key="what"),
        *((Column(label=words.say("How many"), role="side", many=True),) if many else ()),
        Column(label=words.say("Where from"), role="side", key="source"),
        *(_ledger_columns(words) if ledger else ()),
        Column(label=name_of("paid", words), role="lead", sums=True, key="paid"),
        Column(label=name_of("job_cost", words), role="lead", sums=True, key="job_cost"),
        *(Column(label=name_of(part, words), role="part", sums=True, key=part) for part in parts),
    ]
    whole = together([line.parts for line in lines])
    if whole.unpriced:
        foot = words.say("{name}, at least", name=foot)
    sums = _amounts(words, whole, parts)
    nothing = (EMPTY,) * (len(columns) - len(sums) - 1)
    return Table(
        caption=caption,
        columns=tuple(columns),
        rows=tuple(_ledger_rows(view, lines, parts) if ledger else _rows(view, lines, parts, many=many)),
        foot=(Row(cells=(Cell(text=foot), *nothing, *sums)),),
        kind="folds sortable lines" if ledger else "folds",
        label=caption if ledger else "",
    )


def _ledger_columns(words: Words) -> tuple[Column, ...]:
    return (
        Column(label=words.say("Episode"), role="side", many=True, key="episode"),
        Column(label=words.say("Phase"), role="side", key="phase"),
        Column(label=words.say("Receipt"), role="side"),
    )


def _rows(view: View, lines: Sequence[Line], parts: Sequence[str], *, many: bool) -> Iterator[Row]:
    """The lines on the page of their episode or phase: each leads to its place in the ledger."""
    for line in lines:
        what = Cell(text=view.account.called(line.item), href=f"{view.root}{LEDGER}#{line_anchor(line.ref)}")
        goods = _goods_in(view, line)[0 if many else 1 :]
        yield Row(cells=(what, *goods, *_sums(view.words, line, parts)), notes=tuple(notes_on(view, line)))


def _ledger_rows(view: View, lines: Sequence[Line], parts: Sequence[str]) -> Iterator[Row]:
    """The same lines in the ledger. An episode's first line leads to it: a thousand lines need not repeat the way."""
    seen: set[int] = set()
    for line in lines:
        what = Cell(text=view.account.called(line.item))
        where = _where(view, line, leads=line.episode not in seen)
        seen.add(line.episode)
        sums = _sums(view.words, line, parts)
        yield Row(cells=(what, *_goods_in(view, line), *where, *sums), anchor=line_anchor(line.ref))


def _goods_in(view: View, line: Line) -> tuple[Cell, Cell]:
    return plain(view.words.quantity(line.item.quantity)), plain(came_from(line, view.words))


def _sums(words: Words, line: Line, parts: Sequence[str]) -> tuple[Cell, ...]:
    """What was paid, job cost, and the parts; of a line without a price, what is known of them."""
    if not line.parts.unpriced:
        return _amounts(words, line.parts, parts)
    known = [plain(known_of(line.parts, key, words)) for key in ("paid", "job_cost")]
    return (*known, *_amounts(words, line.parts, parts)[2:])


def known_of(parts: Parts, key: str, words: Words) -> str:
    """An amount of a line or of a few, for a column: "at least", or not priced where nothing of it is known."""
    amount = amount_of(parts, key)
    if parts.unpriced and not amount:
        return words.say("not priced")
    return words.bounded(words.bare(amount), bound_of(parts, key))


def _amounts(words: Words, told: Parts, parts: Sequence[str]) -> tuple[Cell, ...]:
    """Paid and job cost, whatever they are, and the parts that are something."""
    lead = plain(words.bare(told.paid)), plain(words.bare(told.job_cost))
    rest = [amount_of(told, part) for part in parts]
    return (*lead, *(plain(words.bare(amount)) if amount else EMPTY for amount in rest))


def _where(view: View, line: Line, *, leads: bool) -> tuple[Cell, ...]:
    episode = view.account.episode(line.episode)
    return (
        Cell(
            text=view.words.say("no. {number}", number=episode.number),
            href=view.root + EPISODE_PAGE.format(name=episode.name) + "#costs" if leads else None,
        ),
        plain(phase_of(view, line)),
        plain(_seller(view, line)),
    )


def phase_of(view: View, line: Line) -> str:
    """The name of the phase a line stands in."""
    return view.account.phase_name(line.phase) or view.words.say("no phase")


def _seller(view: View, line: Line) -> str:
    if line.item.receipt is None:
        return ""
    receipts = view.account.episode(line.episode).receipts
    seller = next((one.seller for one in receipts if one.key == line.item.receipt), None)
    return seller or line.item.receipt


def came_from(line: Line, words: Words) -> str:
    """Where a line came from, in a word: its source, or what kind of payment it was."""
    return words.say(WAYS[way_of(line)])


def way_of(line: Line) -> str:
    """The key in `WAYS` of where a line came from."""
    item = line.item
    if item.source is Source.STOCK and any(draw.reusable for draw in line.draws):
        return "again"
    return item.kind.value if item.kind in (Kind.FEE, Kind.TRAVEL) else item.source.value


def notes_on(view: View, line: Line) -> Sequence[str]:
    """What stands under a line: the author's note, and what its figures rest on."""
    item, words = line.item, view.words
    notes = [item.note] if item.note else []
    notes += _remarks(line, words)
    notes += [_drawn(view, line)] if line.draws else []
    if line.worth_basis:
        notes.append(words.say("Worth an hour: {basis}", basis=line.worth_basis))
    return notes


def _drawn(view: View, line: Line) -> str:
    words = view.words
    names = []
    for draw in line.draws:
        origin = view.account.line(draw.ref)
        where = words.say("episode {number}", number=origin.episode) if origin else words.say("an earlier job")
        names.append(where)
    return words.say("From {where}", where=words.listing(dict.fromkeys(names)))


def _goods(priced: OnReceipt, words: Words) -> str:
    pieces = [words.say("price {amount}", amount=words.bare(priced.goods))]
    if priced.discount:
        pieces.append(words.say("discount {amount}", amount=words.bare(priced.discount)))
    if priced.tax:
        pieces.append(words.say("tax {amount}", amount=words.bare(priced.tax)))
    if priced.delivery:
        pieces.append(words.say("delivery {amount}", amount=words.bare(priced.delivery)))
    return ", ".join(pieces)


def _remarks(line: Line, words: Words) -> Iterator[str]:
    """What a reader should know of a line beside its figures."""
    item, priced = line.item, line.priced
    if priced is not None and priced.whole != priced.goods:
        yield _goods(priced, words)
    if item.returned is not None:
        yield words.say(
            "{quantity} went back for {amount}",
            quantity=words.quantity(item.returned),
            amount=words.bare(line.refund),
        )
    if item.judged or line.parts.estimated:  # also what was drawn from stock that was guessed
        yield _judgement(item, words)
    if item.rework:
        yield words.say("done twice")
    if item.cost is Told.UNKNOWN:
        yield words.say("what it cost is not known")
    if line.parts.unvalued:
        yield words.say("what it would cost new is not known")
    if item.uses is not None:
        yield words.say("serves {uses} times", uses=item.uses)
    yield from _on_the_thing(item, words)


def _judgement(item: Item, words: Words) -> str:
    """Which figures of the line are a judgement; where it is the whole line, only that."""
    if not item.guessed:
        return words.say("a judgement, not on a paper")
    figures = words.listing(words.say(GUESSED[key]) for key in item.guessed)
    return words.say("{figures}: a judgement, not on a paper", figures=figures)


def _on_the_thing(item: Item, words: Words) -> Iterator[str]:
    if item.was is not None:
        yield words.say("paid as {amount}", amount=item.was)
    if item.size is not None:
        yield words.say("size {size}", size=words.as_written(item.size.text))
    if item.deposit is not None:
        yield words.say("deposit {amount}, not in what was paid", amount=words.bare(item.deposit.minor))
    if item.deposit_back is not None:
        yield words.say("deposit back {amount}", amount=words.bare(item.deposit_back.minor))
