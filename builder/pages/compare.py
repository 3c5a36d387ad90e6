"""Planned against actual, line by line: what was planned, what answered to it, over or under, and why."""

from __future__ import annotations

from collections.abc import Sequence

from builder.figures.account import Account
from builder.figures.figure import Bound, bound_of
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
        _unplanned(view, line)
        for ref in phase.not_planned
        if (line := view.account.line(ref)) and (line.parts.job_cost or line.parts.unpriced)
    ]
    return without_empty(
        Table(caption=caption, columns=columns, rows=tuple(rows), foot=(_foot(view, phase),)),
        ("what", "lead"),
    )


def planned_names(match: Match, words: Words) -> str:
    """What the planned lines of a match are called; a name that stands twice, in whatever case, once."""
    names: dict[str, str] = {}
    for one in match.planned:
        names.setdefault(one.item.what.casefold(), one.item.what)
    return words.listing(names.values())


def line_over(match: Match, phase: PhaseOutlook) -> int:
    """How far over its plan (below zero: under) a planned line ends: while its phase is not done, with what it still
    lacks, so that lines and phase are forecast alike.
    """
    return match.variance.total + (match.lacking if phase.status is not Status.DONE else 0)


def match_bound(match: Match, account: Account) -> Bound:
    """Whether a line of unknown cost is among those that answer."""
    lines = (account.line(ref) for ref in match.refs)
    return Bound.AT_LEAST if any(line and line.parts.unpriced for line in lines) else Bound.EXACT


def _match(view: View, match: Match, phase: PhaseOutlook) -> Row:
    words = view.words
    name = planned_names(match, words)
    leads = f"{view.root}{LEDGER}#{line_anchor(match.refs[0])}" if match.refs else None
    bought, bound = bool(match.refs), match_bound(match, view.account)
    return Row(
        cells=(
            Cell(text=name, href=leads),
            Cell(text=words.quantity(match.planned_quantity)),
            Cell(text=words.bare(match.planned_cost)),
            Cell(text=words.quantity(match.quantity) if bought else ""),
            Cell(text=words.bounded(words.bare(match.job_cost), bound) if bought else words.say("not bought")),
            _ends(view, match, phase) if bought or phase.status is Status.DONE else Cell(),
            Cell(text=because(match, phase, view) if bought else ""),
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
        if match.refs and line_over(match, phase)
    ]
    found.sort(key=lambda one: -abs(line_over(*one)))
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
                text=planned_names(match, words),
                href=f"{view.root}{LEDGER}#{line_anchor(match.refs[0])}",
            ),
            Cell(text=view.account.phase_name(phase.key) or ""),
            Cell(text=words.bare(match.planned_cost)),
            Cell(text=words.bounded(words.bare(match.job_cost), match_bound(match, view.account))),
            _ends(view, match, phase),
            Cell(text=because(match, phase, view)),
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
    words, cost = view.words, line.parts.job_cost
    bound = bound_of(line.parts, "job_cost")
    return Row(
        cells=(
            Cell(text=view.account.called(line.item), href=f"{view.root}{LEDGER}#{line_anchor(line.ref)}"),
            Cell(),
            Cell(text=words.say("not planned"), mark="quiet"),
            Cell(text=words.quantity(line.used) if line.used and line.used.value else ""),
            Cell(text=words.bounded(words.bare(cost), bound) if cost else words.say("not priced")),
            _difference(words, cost, bound) if cost else Cell(),
            Cell(),
        )
    )


def _foot(view: View, phase: PhaseOutlook) -> Row:
    words = view.words
    name = view.account.phase_name(phase.key) or words.say("no phase")
    planned, bound = phase.planned or 0, Bound.AT_LEAST if phase.unpriced else Bound.EXACT
    return Row(
        cells=(
            Cell(text=words.say("{name}, at least", name=name) if phase.unpriced else name),
            Cell(),
            Cell(text=words.bare(planned)),
            Cell(),
            Cell(text=words.bare(phase.job_cost)),
            _difference(words, phase.job_cost - planned, bound) if phase.status is Status.DONE else Cell(),
            Cell(),
        )
    )


def _difference(words: Words, minor: int, bound: Bound = Bound.EXACT) -> Cell:
    return Cell(text=words.over_or_under(minor, bound), mark=mark_of(minor))


def _ends(view: View, match: Match, phase: PhaseOutlook) -> Cell:
    words = view.words
    cell = _difference(words, line_over(match, phase), match_bound(match, view.account))
    if phase.status is Status.DONE or not match.lacking:
        return cell
    return Cell(text=words.say("{verdict}, as forecast", verdict=cell.text), mark=cell.mark)


def because(match: Match, phase: PhaseOutlook, view: View) -> str:
    """Dearer or cheaper than planned, more or less of it; "" where quantities or prices tell nothing.

    Nobody used less of something than was planned while some of it is still to come.
    """
    variance, words = match.variance, view.words
    if variance.price is None or variance.quantity is None or match_bound(match, view.account) is Bound.AT_LEAST:
        return ""
    to_come = phase.status is not Status.DONE and match.lacking > 0
    return ", ".join([*_price(variance.price, words), *([] if to_come else _quantity(variance.quantity, words))])


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
