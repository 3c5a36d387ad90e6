"""Planned against actual, line by line: what was planned, what answered to it, over or under, and why."""

from __future__ import annotations

from collections.abc import Sequence

from builder.ledger.records import Line
from builder.pages.costs import View
from builder.pages.paths import LEDGER, line_anchor
from builder.pages.standing import mark_of
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.wording import Words
from builder.plan.budget_records import Match, PhaseOutlook, Status
from builder.words.quantity import Quantity


def compare_table(view: View, phase: PhaseOutlook, caption: str) -> Table | None:
    """Every planned line of a phase with what answers to it, then what was not planned; None without a plan by line."""
    if not phase.matches:
        return None
    words = view.words
    columns = (
        Column(label=words.say("Line"), role="what"),
        Column(label=words.say("To be used"), role="side", many=True),
        Column(label=words.say("Planned"), role="lead", sums=True),
        Column(label=words.say("Used"), role="side", many=True),
        Column(label=words.say("Job cost"), role="lead", sums=True),
        Column(label=words.say("Over or under"), role="part"),
        Column(label=words.say("Because"), role="part"),
    )
    rows = [_match(view, match, phase) for match in phase.matches]
    rows += [
        _unplanned(view, line) for ref in phase.not_planned if (line := view.account.line(ref)) and line.parts.job_cost
    ]
    return without_empty(
        Table(caption=caption, columns=columns, rows=tuple(rows), foot=(_foot(view, phase),)),
        ("what", "lead"),
    )


def _match(view: View, match: Match, phase: PhaseOutlook) -> Row:
    words = view.words
    name = words.listing(dict.fromkeys(one.item.what for one in match.planned))
    leads = f"{view.root}{LEDGER}#{line_anchor(match.refs[0])}" if match.refs else None
    bought = bool(match.refs)
    return Row(
        cells=(
            Cell(text=name, href=leads),
            Cell(text=words.quantity(match.planned_quantity)),
            Cell(text=words.bare(match.planned_cost)),
            Cell(text=words.quantity(match.quantity) if bought else ""),
            Cell(text=words.bare(match.job_cost) if bought else words.say("not bought")),
            _difference(words, match.variance.total) if bought or phase.status is Status.DONE else Cell(),
            Cell(text=because(match, words) if bought else ""),
        ),
        notes=tuple(_lines(view, match)),
    )


MOST_VARIANCES = 12


def variance_table(view: View, caption: str) -> Table | None:
    """The planned lines furthest from their plan, over all phases, furthest first; None where there are none."""
    words = view.words
    found = [
        (match, phase)
        for phase in view.account.phases
        for match in phase.matches
        if match.refs and match.variance.total
    ]
    found.sort(key=lambda one: -abs(one[0].variance.total))
    if not found:
        return None
    columns = (
        Column(label=words.say("Line"), role="what"),
        Column(label=words.say("Phase"), role="side"),
        Column(label=words.say("Planned"), role="lead", sums=True),
        Column(label=words.say("Job cost"), role="lead", sums=True),
        Column(label=words.say("Over or under"), role="part"),
        Column(label=words.say("Because"), role="part"),
    )
    rows = tuple(_variance(view, match, phase) for match, phase in found[:MOST_VARIANCES])
    return without_empty(Table(caption=caption, columns=columns, rows=rows))


def _variance(view: View, match: Match, phase: PhaseOutlook) -> Row:
    words = view.words
    return Row(
        cells=(
            Cell(
                text=words.listing(dict.fromkeys(one.item.what for one in match.planned)),
                href=f"{view.root}{LEDGER}#{line_anchor(match.refs[0])}",
            ),
            Cell(text=view.account.phase_name(phase.key) or ""),
            Cell(text=words.bare(match.planned_cost)),
            Cell(text=words.bare(match.job_cost)),
            _difference(words, match.variance.total),
            Cell(text=because(match, words)),
        )
    )


def _lines(view: View, match: Match) -> list[str]:
    """The lines that answer, where there is more than one or the name differs."""
    lines = [line for ref in match.refs if (line := view.account.line(ref))]
    names = [view.account.called(line.item) for line in lines]
    planned = {one.item.what for one in match.planned}
    if len(lines) < 2 and set(names) <= planned:
        return []
    episodes = [view.words.say("episode {number}", number=line.episode) for line in lines]
    return [", ".join(f"{name} ({episode})" for name, episode in zip(names, episodes, strict=True))]


def _unplanned(view: View, line: Line) -> Row:
    words = view.words
    return Row(
        cells=(
            Cell(text=view.account.called(line.item), href=f"{view.root}{LEDGER}#{line_anchor(line.ref)}"),
            Cell(),
            Cell(text=words.say("not planned"), mark="quiet"),
            Cell(text=words.quantity(line.used) if line.used and line.used.value else ""),
            Cell(text=words.bare(line.parts.job_cost)),
            _difference(words, line.parts.job_cost) if line.parts.job_cost else Cell(),
            Cell(),
        )
    )


def _foot(view: View, phase: PhaseOutlook) -> Row:
    words = view.words
    name = view.account.phase_name(phase.key) or words.say("no phase")
    planned = phase.planned or 0
    return Row(
        cells=(
            Cell(text=words.say("{name}, at least", name=name) if phase.unpriced else name),
            Cell(),
            Cell(text=words.bare(planned)),
            Cell(),
            Cell(text=words.bare(phase.job_cost)),
            _difference(words, phase.job_cost - planned) if phase.status is Status.DONE else Cell(),
            Cell(),
        )
    )


def _difference(words: Words, minor: int) -> Cell:
    return Cell(text=words.over_or_under(minor), mark=mark_of(minor))


def because(match: Match, words: Words) -> str:
    """Dearer or cheaper than planned, more or less of it; "" where quantities tell nothing."""
    variance = match.variance
    if variance.price is None or variance.quantity is None:
        return ""
    return ", ".join([*_price(variance.price, words), *_quantity(variance.quantity, words)])


def _price(minor: int, words: Words) -> Sequence[str]:
    if not minor:
        return []
    amount = words.bare(abs(minor))
    if minor > 0:
        return [words.say("dearer than planned, {amount}", amount=amount)]
    return [words.say("cheaper than planned, {amount}", amount=amount)]


def _quantity(minor: int, words: Words) -> Sequence[str]:
    if not minor:
        return []
    amount = words.bare(abs(minor))
    if minor > 0:
        return [words.say("more of it than planned, {amount}", amount=amount)]
    return [words.say("less of it than planned, {amount}", amount=amount)]


def left_of(bought: Quantity | None, used: Quantity | None) -> Quantity | None:
    """Bought less used, where both are known and in one unit."""
    if bought is None or used is None or not bought.like(used):
        return None
    return bought - used
