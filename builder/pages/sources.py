"""The sources page: where things came from, what was saved, what is left, who worked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.figure import Bound, MoneyFigure, amount_of, bound_of
from builder.figures.names import look_up
from builder.journal.records.item import Kind, Source
from builder.ledger.parts import Parts, together
from builder.ledger.records import Left, Line
from builder.pages.asked import all_lessons, cost_most, materials
from builder.pages.costs import WAYS, View, came_from, known_of, way_of
from builder.pages.frame import Fact, Frame, Link, Term
from builder.pages.paths import LEDGER, line_anchor, root_of
from builder.pages.paths import SOURCES as PATH
from builder.pages.saying import worded
from builder.pages.shares import Share, Shares, draw_shares
from builder.pages.signs import turned
from builder.pages.site import Material, frame
from builder.pages.standing import Reading, reading
from builder.pages.table import Cell, Column, Row, Table, cells, without_empty
from builder.pages.terms import terms
from builder.pages.wanted import wanted_table
from builder.pages.wording import Words
from builder.words.quantity import Quantity


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
        saved=reading(abs(whole.saved), _saved_bound(whole), words),
        of=_of_new(whole, words),
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


def _saved_bound(whole: Parts) -> Bound:
    bound = bound_of(whole, "saved")
    return bound if whole.saved >= 0 else turned(bound)


def _of_new(whole: Parts, words: Words) -> str:
    """What stands behind the page's first figure: what was saved, or how much dearer it was than new."""
    new = words.money(whole.replacement_cost, bound_of(whole, "replacement_cost"))
    if whole.saved < 0:
        return words.say("more than the same things would cost new; new they are {amount}", amount=new)
    return words.say("saved, of {amount} that the same things would cost new", amount=new)


def _shares(material: Material) -> str:
    words = material.words
    shown = [(words.say(WAYS[way]), parts) for way, parts in _by_way(material).items() if _was_paid(parts)]
    if not shown:
        return ""
    told = [f"{name} {_paid_in(parts, words)}" for name, parts in shown]
    return draw_shares(
        Shares(
            key="shares",
            title=words.say("What was paid, by where things came from"),
            description=words.listing(told),
            shares=tuple(
                Share(label=name, amount=parts.paid, amount_label=known_of(parts, "paid", words))
                for name, parts in shown
            ),
        )
    )


def _was_paid(parts: Parts) -> bool:
    return parts.paid > 0 or bool(parts.unpriced)


def _paid_in(parts: Parts, words: Words) -> str:
    """The same as the label of a bar, with its currency."""
    return words.money(parts.paid, bound_of(parts, "paid")) if parts.paid else words.say("not priced")


def _by_way(material: Material) -> Mapping[str, Parts]:
    """The parts of all lines by the ledger's words for where they came from, in the order of `WAYS`."""
    found: dict[str, list[Parts]] = {}
    for line in material.account.ledger.lines:
        found.setdefault(way_of(line), []).append(line.parts)
    return {way: together(found[way]) for way in WAYS if way in found}


def _by_source(material: Material) -> Table:
    account, words = material.account, material.words
    counts = Counter(way_of(line) for line in account.ledger.lines)
    rows = tuple(
        Row(
            cells=(
                Cell(text=words.say(WAYS[way])),
                Cell(text=words.whole(counts[way])),
                *_money(material, parts),
            )
        )
        for way, parts in _by_way(material).items()
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
    told = [Cell(text=_bounded(parts, key, words)) for key in ("paid", "job_cost", "replacement_cost", "saved")]
    lines = words.count(parts.unvalued, "{n} line", "{n} lines") if parts.unvalued else ""
    return [*told, Cell(text=lines, href=f"{root_of(PATH)}{LEDGER}#not-valued" if lines else None)]


def _bounded(parts: Parts, key: str, words: Words) -> str:
    return words.bounded(words.bare(amount_of(parts, key)), bound_of(parts, key))


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
                Cell(text=words.say("not priced") if one.unpriced and not one.value else _worth_of((one,), words)),
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
        foot=(Row(cells=cells(words.say("Together"), "", _worth_of(left, words))),),
    )


def _worth_of(left: Sequence[Left], words: Words) -> str:
    """What it is worth together: at least so much, where nobody knows what some of it cost."""
    bound = Bound.AT_LEAST if any(one.unpriced for one in left) else Bound.EXACT
    return words.bounded(words.bare(sum(one.value for one in left)), bound)


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
                Cell(text=came_from(line, words)),
                Cell(text=known_of(line.parts, "job_cost", words)),
                Cell(
                    text=words.bare(line.parts.replacement_cost) if not line.parts.unvalued else words.say("not valued")
                ),
            )
        )
        for line in lines
    )
    whole = together([line.parts for line in lines])
    sums = [_bounded(whole, key, words) for key in ("job_cost", "replacement_cost")]
    foot = Row(cells=cells(words.say("Together"), "", "", *sums))
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
    paid = together(
        [
            line.parts
            for line in account.ledger.lines
            if line.item.kind is Kind.LABOUR and line.item.source is Source.PAID
        ]
    )
    if _was_paid(paid):
        amount, small = _paid_in(paid, words), words.say("in job cost")
        yield Fact(name=words.say("Paid labour"), value=amount, small=small, money=True)
    apart = words.say("in no total")
    if whole.own_work:
        yield Fact(name=words.say("Own work"), value=words.money(whole.own_work), small=apart, money=True)
    if whole.travel_worth:
        yield Fact(name=words.say("Travel"), value=words.money(whole.travel_worth), small=apart, money=True)
