"""What readers ask: what cost most, what was learnt, and the whole list of materials for copying."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.figures.figure import Bound
from builder.journal.records.item import Kind, Source
from builder.ledger.records import Line
from builder.pages.costs import View, known_of
from builder.pages.frame import Link
from builder.pages.paths import EPISODE_PAGE, LEDGER, line_anchor
from builder.pages.table import Cell, Column, Row, Table
from builder.words.quantity import Quantity

MOST = 10


def cost_most(view: View) -> Table | None:
    """The lines with the largest job cost, largest first; None where nothing was used up."""
    words = view.words
    lines = sorted(
        (line for line in view.account.ledger.lines if line.parts.job_cost > 0), key=lambda line: -line.parts.job_cost
    )[:MOST]
    if not lines:
        return None
    return Table(
        caption=words.say("What cost most, in {currency}", currency=view.account.ledger.currency.code),
        columns=(
            Column(label=words.say("What"), role="what"),
            Column(label=words.say("How many"), role="side", many=True),
            Column(label=words.say("Phase"), role="side"),
            Column(label=words.say("Job cost"), role="lead", sums=True),
        ),
        rows=tuple(_row(view, line) for line in lines),
    )


def _row(view: View, line: Line) -> Row:
    words = view.words
    return Row(
        cells=(
            Cell(
                text=view.account.called(line.item),
                href=f"{view.root}{LEDGER}#{line_anchor(line.ref)}",
                small=words.say("episode {number}", number=line.episode),
            ),
            Cell(text=words.quantity(line.item.quantity)),
            Cell(text=view.account.phase_name(line.phase) or words.say("no phase")),
            Cell(text=known_of(line.parts, "job_cost", words)),
        )
    )


def all_lessons(view: View) -> Iterator[Link]:
    """Every lesson with the episode it was learnt in, newest first."""
    for episode in reversed(view.account.journal.episodes):
        for told in episode.lessons:
            yield Link(
                text=told.text,
                href=view.root + EPISODE_PAGE.format(name=episode.name) + "#lessons",
                small=view.words.say("episode {number}", number=episode.number),
            )


def materials(view: View) -> str:
    """Every material with how much of it went in, a line each, in order of name; "" for none.

    What serves a second time was counted the first time: only what was bought or found is added.
    """
    totals: dict[str, dict[str, Quantity]] = {}
    uncounted: set[str] = set()
    for line in view.account.ledger.lines:
        item = line.item
        if item.kind is not Kind.MATERIAL or item.source is Source.SPOILED:
            continue
        if line.used is None and item.source.leaves:
            continue
        if line.used is None:
            uncounted.add(item.what)
            continue
        of_what = totals.setdefault(item.what, {})
        measure, used = line.used.unit.measure, _for_the_first_time(view, line, line.used)
        of_what[measure] = of_what[measure] + used if measure in of_what else used
    return "\n".join(
        _material(view, what, totals.get(what, {}), what in uncounted)
        for what in sorted({*totals, *uncounted}, key=_by_name)
    )


def _for_the_first_time(view: View, line: Line, used: Quantity) -> Quantity:
    """What went in for the first time: a second use adds nothing, and what is sold after its use takes nothing off."""
    for draw in line.draws:
        if draw.reusable and draw.quantity is not None and view.account.line(draw.ref) is not None:
            again = draw.quantity.to_like(used)
            value = max(used.value - again, Fraction(0)) if used.value > 0 else min(used.value + again, Fraction(0))
            used = Quantity(value, used.unit)
    return used


def _material(view: View, what: str, totals: dict[str, Quantity], more: bool) -> str:
    """A material with its amounts; at least so much, where a line of it does not say how much it was."""
    amounts = ", ".join(view.words.quantity(total) for total in totals.values() if total.value > 0)
    told = view.words.bounded(amounts, Bound.AT_LEAST if more else Bound.EXACT)
    return f"{what}: {told}" if amounts else what


def _by_name(what: str) -> tuple[str, str]:
    """In the order of the alphabet; names that differ by case only keep one order too."""
    return what.casefold(), what
