"""A phase's shopping list: what its plan still lacks, in whole packages, less what is in stock."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from builder.journal.records.item import Kind
from builder.pages.costs import View
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.plan.budget_records import Match, PhaseOutlook, Status
from builder.words.quantity import Quantity
from builder.words.rounding import half_up


@dataclass(frozen=True, slots=True, kw_only=True)
class _Buy:
    """A line to buy: its name, how much (None: not said), what lies in stock of it, about what it costs."""

    what: str
    quantity: Quantity | None
    in_stock: Quantity | None
    about: int
    size: str


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
                        Cell(text=buy.what, small=words.as_written(buy.size)),
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
    """A planned line that is to be bought and not bought yet, or not all of it."""
    planned = match.planned[0]
    item = planned.item
    if item.kind is not Kind.MATERIAL or planned.to_find or len(match.planned) > 1:
        return []
    wanted = planned.quantity
    if wanted is None or not wanted.value:
        return [] if match.refs else [_Buy(what=item.what, quantity=None, in_stock=None, about=planned.spend, size="")]
    had = match.bought.to_like(wanted) if match.bought is not None and match.bought.like(wanted) else Fraction(0)
    if match.refs and match.bought is None:
        return []
    stock = min(_in_stock(view, match, item.what, wanted), max(wanted.value - had, Fraction(0)))
    missing = wanted.value - had - stock
    if missing <= 0:
        return []
    whole = Fraction(ceil(missing)) if wanted.unit.counts else missing
    return [
        _Buy(
            what=item.what,
            quantity=Quantity(whole, wanted.unit),
            in_stock=Quantity(stock, wanted.unit) if stock else None,
            about=half_up(planned.spend * whole / wanted.value),
            size=item.size.text if item.size else "",
        )
    ]


def _in_stock(view: View, match: Match, material: str, wanted: Quantity) -> Fraction:
    """How much of a material lies there beside what was bought for this line: of other phases, of an earlier job."""
    ledger = view.account.ledger
    same = (
        left
        for left in (*ledger.stock, *ledger.from_earlier)
        if left.material.casefold() == material.casefold() and left.ref not in match.refs
    )
    quantities = [Quantity(left.quantity, left.unit) for left in same if left.quantity and left.unit]
    return sum((one.to_like(wanted) for one in quantities if one.like(wanted)), Fraction(0))
