"""A phase's shopping list: what its plan still lacks, in whole packages, less what is in stock."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from builder.journal.records.item import Kind
from builder.pages.compare import planned_names
from builder.pages.costs import View
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.plan.budget_records import Match, PhaseOutlook, Status
from builder.words.quantity import Quantity
from builder.words.rounding import half_up


@dataclass(frozen=True, slots=True, kw_only=True)
class _Buy:
    """A line to buy: its name, how much (None: not said), what lies in stock of it, about what it costs, and its
    sizes or what the amount is.
    """

    what: str
    quantity: Quantity | None
    in_stock: Quantity | None
    about: int
    small: str


def shopping_list(view: View, phase: PhaseOutlook) -> Table | None:
    """The list; None when the phase is done or nothing of it is to be bought."""
    if phase.status is Status.DONE or not phase.matches:
        return None
    buys = [buy for match in phase.matches for buy in _to_buy(view, match)]
    if not buys:
        return None
    words = view.words
    return without_empty(
        Table(
            caption=words.say(
                "To buy for {phase}, prices as planned, in {currency}",
                phase=view.account.phase_name(phase.key) or "",
                currency=view.account.ledger.currency.code,
            ),
            columns=(
                Column(label=words.say("What"), role="what"),
                Column(label=words.say("Buy"), role="lead", many=True),
                Column(label=words.say("About"), role="lead", sums=True),
                Column(label=words.say("In stock"), role="part", many=True),
                Column(label=words.say("Paid"), role="part write-in"),
            ),
            rows=tuple(
                Row(
                    cells=(
                        Cell(text=buy.what, small=buy.small),
                        Cell(text=words.quantity(buy.quantity)),
                        Cell(text=words.bare(buy.about)),
                        Cell(text=words.quantity(buy.in_stock)),
                        Cell(),
                    )
                )
                for buy in buys
            ),
            foot=(
                Row(
                    cells=(
                        Cell(text=words.say("About")),
                        Cell(),
                        Cell(text=words.bare(sum(buy.about for buy in buys))),
                        Cell(),
                        Cell(),
                    )
                ),
            ),
            kind="folds shopping",
        ),
        ("what", "lead", "part write-in"),
    )


def _to_buy(view: View, match: Match) -> list[_Buy]:
    """What is to be bought of planned lines, by the rule of the forecast: what has not come yet, by its count; where
    nobody counted in the plan's unit, what is left of the money.
    """
    if any(one.item.kind is not Kind.MATERIAL or one.to_find for one in match.planned):
        return []
    if match.missing is None or match.wanted is None:
        return _by_money(view, match)
    return _by_count(view, match, match.missing, match.wanted)


def _by_count(view: View, match: Match, missing: Quantity, wanted: Quantity) -> list[_Buy]:
    stock = min(_in_stock(view, match, wanted), missing.value)
    rest = missing.value - stock
    if rest <= 0:
        return []
    whole = Fraction(ceil(rest)) if wanted.unit.counts else rest
    return [
        _Buy(
            what=planned_names(match, view.words),
            quantity=Quantity(whole, wanted.unit),
            in_stock=Quantity(stock, wanted.unit) if stock else None,
            about=half_up(_spend(match) * whole / wanted.value),
            small=_size(view, match),
        )
    ]


def _by_money(view: View, match: Match) -> list[_Buy]:
    """What is left of the money buys the rest; what lies in stock of the lines that answer is bought already."""
    if not match.refs:
        return [
            _Buy(what=planned_names(match, view.words), quantity=None, in_stock=None, about=_spend(match), small="")
        ]
    part = Fraction(match.lacking, match.planned_cost) if match.planned_cost else Fraction(0)
    lying_there = sum(left.value for left in view.account.ledger.stock if left.ref in match.refs)
    about = half_up(_spend(match) * part) - lying_there
    if about <= 0:
        return []
    small = view.words.say("what is left of the planned amount")
    return [_Buy(what=planned_names(match, view.words), quantity=None, in_stock=None, about=about, small=small)]


def _spend(match: Match) -> int:
    return sum(one.spend for one in match.planned)


def _size(view: View, match: Match) -> str:
    sizes = dict.fromkeys(one.item.size.text for one in match.planned if one.item.size)
    return view.words.listing(view.words.as_written(size) for size in sizes)


def _in_stock(view: View, match: Match, wanted: Quantity) -> Fraction:
    """How much of the materials lies there beside what was bought for them: of other phases, of an earlier job."""
    ledger = view.account.ledger
    names = {one.item.what.casefold() for one in match.planned}
    same = (
        left
        for left in (*ledger.stock, *ledger.from_earlier)
        if left.material.casefold() in names and left.ref not in match.refs
    )
    quantities = [Quantity(left.quantity, left.unit) for left in same if left.quantity and left.unit]
    return sum((one.to_like(wanted) for one in quantities if one.like(wanted)), Fraction(0))
