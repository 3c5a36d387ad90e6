"""The sources page: where things came from, what was saved, what is left, who worked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.figure import MoneyFigure, bound_of
from builder.figures.names import look_up
from builder.journal.records.item import Kind, Source
from builder.ledger.parts import Parts
from builder.ledger.records import Left, Line
from builder.pages.asked import all_lessons, cost_most, materials
from builder.pages.costs import SOURCES, View
from builder.pages.frame import Fact, Frame, Link, Term
from builder.pages.paths import LEDGER, line_anchor, root_of
from builder.pages.paths import SOURCES as PATH
from builder.pages.saying import worded
from builder.pages.shares import Share, Shares, draw_shares
from builder.pages.site import Material, frame
from builder.pages.standing import Reading, reading
from builder.pages.table import Cell, Column, Row, Table, cells, without_empty
from builder.pages.terms import terms
from builder.pages.wanted import wanted_table
from builder.words.quantity import Quantity

_ORDER = tuple(SOURCES)


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesPage:
    """sources/."""

    frame: Frame
    saved: Reading
    of: str
    shares: str
    by_source: Table
    rates: tuple[Fact, ...]
    in_stock: Table | None
    from_earlier: Table | None
    to_keep: Table | None
    machines: Table | None
    work: tuple[Fact, ...]
    rework: Table | None
    most: Table | None
    materials: str
    lessons: tuple[Link, ...]
    wanted: Table | None
    terms: tuple[Term, ...]


def sources_page(material: Material) -> SourcesPage:
    """Lay the sources page out."""
    account, words = material.account, material.words
    whole, view = account.sums.whole, material.view(PATH)
    lines = account.ledger.lines
    return SourcesPage(
        frame=frame(
            material,
            PATH,
            words.say("Sources"),
            words.say("Where things came from, what was saved and what is left"),
        ),
        saved=reading(whole.saved, bound_of(whole, "saved"), words),
        of=words.say(
            "saved, of {amount} that the same things would cost new",
            amount=words.money(whole.replacement_cost, bound_of(whole, "replacement_cost")),
        ),
        shares=_shares(material),
        by_source=_by_source(material),
        rates=tuple(_rates(material)),
        in_stock=_left_table(view, account.ledger.stock, words.say("In stock: leftovers on the shelf")),
        from_earlier=_left_table(
            view,
            account.ledger.from_earlier,
            words.say("Leftovers of earlier jobs, not drawn and in no total"),
        ),
        to_keep=_to_keep(view, account.ledger.reusable),
        machines=_machines(view, [line for line in lines if line.item.kind is Kind.EQUIPMENT]),
        work=tuple(_work(material)),
        rework=_lines_table(view, [line for line in lines if line.item.rework], words.say("Done twice")),
        most=cost_most(view),
        materials=materials(view),
        lessons=tuple(all_lessons(view)),
        wanted=wanted_table(material, root_of(PATH)) if material.has_plan else None,
        terms=terms(words, "replacement_cost", "saved", "in_stock", "reusable", "own_work", "travel_worth"),
    )


def _shares(material: Material) -> str:
    words, sums = material.words, material.account.sums
    paid = [(source, sums.by_source[source].paid) for source in _ORDER if source in sums.by_source]
    shown = [(source, amount) for source, amount in paid if amount > 0]
    if not shown:
        return ""
    told = [f"{words.say(SOURCES[source])} {words.money(amount)}" for source, amount in shown]
    return draw_shares(
        Shares(
            key="shares",
            title=words.say("What was paid, by where things came from"),
            description=words.listing(told),
            shares=tuple(
                Share(label=words.say(SOURCES[source]), amount=amount, amount_label=words.bare(amount))
                for source, amount in shown
            ),
        )
    )


def _by_source(material: Material) -> Table:
    account, words = material.account, material.words
    counts: dict[Source, int] = {}
    for line in account.ledger.lines:
        counts[line.item.source] = counts.get(line.item.source, 0) + 1
    rows = tuple(
        Row(
            cells=(
                Cell(text=words.say(SOURCES[source])),
                Cell(text=words.whole(counts[source])),
                *_money(material, parts),
            )
        )
        for source in _ORDER
        if (parts := account.sums.by_source.get(source)) is not None
    )
    foot = Row(
        cells=(
            Cell(text=words.say("All lines")),
            Cell(text=words.whole(len(account.ledger.lines))),
            *_money(material, account.sums.whole),
        )
    )
    return Table(
        caption=words.say("By where things came from, in {currency}", currency=account.ledger.currency.code),
        columns=(
            Column(label=words.say("Where from"), role="what"),
            Column(label=words.say("Lines"), role="part", sums=True),
            Column(label=words.say("Paid"), role="lead", sums=True),
            Column(label=words.say("Job cost"), role="lead", sums=True),
            Column(label=words.say("Replacement cost"), role="part", sums=True),
            Column(label=words.say("Saved"), role="part", sums=True),
            Column(label=words.say("Not valued"), role="part", sums=True),
        ),
        rows=rows,
        foot=(foot,),
    )


def _money(material: Material, parts: Parts) -> Sequence[Cell]:
    words = material.words
    told = [
        Cell(text=words.bounded(words.bare(getattr(parts, key)), bound_of(parts, key)))
        for key in ("paid", "job_cost", "replacement_cost", "saved")
    ]
    lines = words.count(parts.unvalued, "{n} line", "{n} lines") if parts.unvalued else ""
    return [*told, Cell(text=lines, href=f"{root_of(PATH)}{LEDGER}#not-valued" if lines else None)]


def _rates(material: Material) -> Iterator[Fact]:
    """Per area, per year of service, per hour worked, where the journal gives the divisor."""
    account, words = material.account, material.words
    names = (
        ("area", words.say("Job cost per area")),
        ("year", words.say("Job cost per year of service")),
        ("hour", words.say("Job cost per hour worked")),
    )
    for unit, label in names:
        figure = look_up(f"job cost per {unit}", account)
        if isinstance(figure, MoneyFigure):
            yield Fact(name=label, value=worded(figure, words), money=True)


def _left_table(view: View, left: Sequence[Left], caption: str) -> Table | None:
    if not left:
        return None
    words = view.words
    rows = tuple(
        Row(
            cells=(
                Cell(text=one.material, href=_origin(view, one)),
                Cell(text=_quantity(view, one)),
                Cell(text=words.say("not priced") if one.unpriced else words.bare(one.value)),
            )
        )
        for one in left
    )
    return Table(
        caption=f"{caption}, {view.account.ledger.currency.code}",
        columns=(
            Column(label=words.say("What"), role="what"),
            Column(label=words.say("How much"), role="lead", many=True),
            Column(label=words.say("Worth, at cost"), role="lead", sums=True),
        ),
        rows=rows,
        foot=(Row(cells=cells(words.say("Together"), "", words.bare(sum(one.value for one in left)))),),
    )


def _origin(view: View, left: Left) -> str | None:
    return f"{view.root}{LEDGER}#{line_anchor(left.ref)}" if view.account.line(left.ref) else None


def _quantity(view: View, left: Left) -> str:
    if left.quantity is None or left.unit is None:
        return ""
    return view.words.quantity(Quantity(left.quantity, left.unit))


def _to_keep(view: View, reusable: Sequence[Left]) -> Table | None:
    """What will serve again: tools bought for the build, form boards."""
    kept = [one for one in reusable if one.value]
    return _left_table(view, kept, view.words.say("Bought to keep: what will serve again"))


def _machines(view: View, lines: Sequence[Line]) -> Table | None:
    """What the machines cost; a deposit that came back is none, but what was kept of it belongs to the hire."""
    cost = [line for line in lines if line.item.deposit_back is None or line.parts.job_cost]
    return _lines_table(view, cost, view.words.say("Machines and tools it took"))


def _lines_table(view: View, lines: Sequence[Line], caption: str) -> Table | None:
    if not lines:
        return None
    words = view.words
    rows = tuple(
        Row(
            cells=(
                Cell(
                    text=view.account.called(line.item),
                    href=f"{view.root}{LEDGER}#{line_anchor(line.ref)}",
                    small=words.say("episode {number}", number=line.episode),
                ),
                Cell(text=words.quantity(line.item.quantity)),
                Cell(text=words.say(SOURCES[line.item.source])),
                Cell(text=words.bare(line.parts.job_cost)),
                Cell(
                    text=words.bare(line.parts.replacement_cost) if not line.parts.unvalued else words.say("not valued")
                ),
            )
        )
        for line in lines
    )
    foot = Row(
        cells=cells(
            words.say("Together"),
            "",
            "",
            words.bare(sum(line.parts.job_cost for line in lines)),
            words.bare(sum(line.parts.replacement_cost for line in lines)),
        )
    )
    return without_empty(
        Table(
            caption=f"{caption}, {view.account.ledger.currency.code}",
            columns=(
                Column(label=words.say("What"), role="what"),
                Column(label=words.say("How much"), role="side", many=True),
                Column(label=words.say("Where from"), role="side"),
                Column(label=words.say("Job cost"), role="lead", sums=True),
                Column(label=words.say("Replacement cost"), role="part", sums=True),
            ),
            rows=rows,
            foot=(foot,),
        )
    )


def _work(material: Material) -> Iterator[Fact]:
    """The author's own hours, helpers', paid labour, and what own work and travel would be worth."""
    account, words = material.account, material.words
    whole = account.sums.whole
    own = sum((one.parts.hours for one in account.ledger.hours), Fraction(0))
    if own:
        yield Fact(name=words.say("Own hours"), value=words.hours(own))
    if whole.hours > own:
        yield Fact(name=words.say("Helpers' hours"), value=words.hours(whole.hours - own))
    paid = sum(
        line.parts.paid
        for line in account.ledger.lines
        if line.item.kind is Kind.LABOUR and line.item.source is Source.PAID
    )
    if paid:
        yield Fact(name=words.say("Paid labour"), value=words.money(paid), small=words.say("in job cost"), money=True)
    apart = words.say("in no total")
    if whole.own_work:
        yield Fact(name=words.say("Own work"), value=words.money(whole.own_work), small=apart, money=True)
    if whole.travel_worth:
        yield Fact(name=words.say("Travel"), value=words.money(whole.travel_worth), small=apart, money=True)
