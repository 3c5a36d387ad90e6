"""The plan page: is it on budget, will it be ready, and what is to blame; then everything that says why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.figures.figure import Bound, bound_of
from builder.ledger.parts import NOTHING
from builder.pages.answers import Answer, answers, least
from builder.pages.calendar_page import calendar_drawing, calendar_table
from builder.pages.compare import variance_table
from builder.pages.earned import earned_sentence, earned_table
from builder.pages.frame import Fact, Frame, Term
from builder.pages.moved import moved_drawing, moved_table
from builder.pages.overtime import cost_over_time, over_time_note
from builder.pages.paths import PLAN, phase_path, root_of
from builder.pages.site import Material, frame
from builder.pages.standing import anything_planned, level, mark_of, over, status_words, verdict
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.terms import terms
from builder.pages.wanted import wanted_table
from builder.plan.budget_records import PhaseOutlook
from builder.plan.time_records import Finish


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPage:
    """plan/."""

    frame: Frame
    answers: tuple[Answer, ...]
    side_by_side: Table
    contingency: tuple[Fact, ...]
    over_time: str
    over_time_note: str
    calendar: str
    calendar_note: str
    calendar_table: Table | None
    moved: str
    moved_note: str
    moved_table: Table | None
    compared: Table | None
    wanted: Table | None
    earned: Table | None
    earned_note: str
    terms: tuple[Term, ...]


def plan_page(material: Material) -> PlanPage:
    """Lay the plan page out. Only where there is a plan."""
    account, words = material.account, material.words
    view = material.view(PLAN)
    moved = material.history()
    moved_drawn, moved_note = moved_drawing(account, moved, words)
    over_time = cost_over_time(account, words)
    drawn = calendar_drawing(account, words) if account.timing is not None else ""
    return PlanPage(
        frame=frame(
            material,
            PLAN,
            words.say("Plan"),
            words.say("What it was to cost, what it did cost, and when it was ready")
            if account.is_over
            else words.say("What it was to cost, what it will cost, and when it will be ready"),
        ),
        answers=tuple(answers(material)),
        side_by_side=_side_by_side(material),
        contingency=tuple(_contingency(material)),
        over_time=over_time,
        over_time_note=over_time_note(account, words) if over_time else "",
        calendar=drawn,
        calendar_note=_hangs_on(material),
        calendar_table=calendar_table(account, words) if drawn else None,
        moved=moved_drawn,
        moved_note=moved_note,
        moved_table=moved_table(account, moved, words),
        compared=variance_table(
            view,
            words.say("The lines furthest from their plan, in {currency}", currency=account.ledger.currency.code),
        ),
        wanted=wanted_table(material, root_of(PLAN)),
        earned=earned_table(account, words),
        earned_note=earned_sentence(account, words),
        terms=terms(words, *_words_used(material)),
    )


def _words_used(material: Material) -> Iterator[str]:
    """The words that stand on the page and want explaining."""
    outlook = material.account.outlook
    planned = outlook.planned is not None
    if planned:
        yield "planned"
    yield "job_cost"
    if planned and material.account.finished is None:
        yield "forecast"
    if outlook.contingency is not None:
        yield "contingency"


def _side_by_side(material: Material) -> Table:
    account, words = material.account, material.words
    root = root_of(PLAN)
    rows = tuple(_phase_row(material, phase, root) for phase in account.phases)
    planned, open_ = anything_planned(account), account.finished is None
    table = Table(
        caption=words.say("Job cost by phase, in {currency}", currency=account.ledger.currency.code),
        columns=(
            Column(label=words.say("Phase"), role="what"),
            Column(label=words.say("Level"), role="reads"),
            Column(label=words.say("Planned"), role="lead", sums=True),
            Column(label=words.say("Job cost so far") if open_ else words.say("Job cost"), role="lead", sums=True),
            Column(label=words.say("Forecast"), role="lead", sums=True),
            Column(label=words.say("Over or under"), role="part"),
        ),
        rows=rows,
        foot=(_whole_row(material),),
        kind="folds three" if planned else "folds",
    )
    if planned:
        return without_empty(table, keep=("what", "reads", "lead" if open_ else ""))
    return without_empty(table, keep=("what",))


def _forecast(material: Material, minor: int | None, bound: Bound) -> str:
    """What is still forecast: of a finished build nothing is."""
    if minor is None or material.account.finished is not None:
        return ""
    return material.words.bounded(material.words.bare(minor), bound)


def _phase_row(material: Material, phase: PhaseOutlook, root: str) -> Row:
    account, words = material.account, material.words
    parts = account.sums.by_phase.get(phase.key, NOTHING)
    bound = bound_of(parts, "job_cost")
    return Row(
        cells=(
            Cell(
                text=account.phase_name(phase.key) or words.say("no phase"),
                href=root + phase_path(phase.key),
                small=status_words(phase, account, words),
            ),
            Cell(drawing=level(phase, account, words) if phase.key and anything_planned(account) else ""),
            Cell(text=words.bare(phase.planned) if phase.planned is not None else ""),
            Cell(text=words.bounded(words.bare(phase.job_cost), bound)),
            Cell(text=_forecast(material, phase.forecast, bound)),
            Cell(text=verdict(phase, account, words) if anything_planned(account) else "", mark=mark_of(over(phase))),
        )
    )


def _whole_row(material: Material) -> Row:
    account, words = material.account, material.words
    outlook, bound = account.outlook, bound_of(account.sums.whole, "job_cost")
    difference = (
        outlook.forecast - outlook.planned if outlook.forecast is not None and outlook.planned is not None else None
    )
    return Row(
        cells=(
            Cell(text=words.say("The whole build")),
            Cell(),
            Cell(text=words.bare(outlook.planned) if outlook.planned is not None else ""),
            Cell(text=words.bounded(words.bare(account.sums.whole.job_cost), bound)),
            Cell(text=_forecast(material, outlook.forecast, bound)),
            Cell(
                text=words.over_or_under(difference, bound) if difference is not None else "",
                mark=mark_of(difference),
            ),
        )
    )


def _contingency(material: Material) -> Iterator[Fact]:
    outlook, words = material.account.outlook, material.words
    if outlook.contingency is None or outlook.left is None:
        return
    bound = least(material)
    yield Fact(name=words.say("Contingency"), value=words.money(outlook.contingency), money=True)
    yield Fact(name=words.say("Taken by overruns"), value=words.money(outlook.taken, bound), money=True)
    if outlook.left < 0:
        yield Fact(name=words.say("More than was kept"), value=words.money(-outlook.left, bound), money=True)
        return
    left = words.money(outlook.left, Bound.AT_MOST if bound is Bound.AT_LEAST else bound)
    yield Fact(name=words.say("Left of it"), value=left, money=True)


def _hangs_on(material: Material) -> str:
    """The phases on which the date hangs, and the slack of the others."""
    account, words, timing = material.account, material.words, material.account.timing
    if timing is None or not isinstance(timing.finish, Finish) or not timing.finish.phases:
        return ""
    hanging = [account.phase_name(one.key) or one.key for one in timing.finish.phases if one.slack == 0]
    loose = [one for one in timing.finish.phases if one.slack > 0]
    said = [words.say("The date hangs on {phases}.", phases=words.listing(hanging))] if hanging else []
    said += [
        words.count(
            one.slack,
            "{phase} has {n} weekend of slack.",
            "{phase} has {n} weekends of slack.",
            phase=account.phase_name(one.key) or one.key,
        )
        for one in loose
    ]
    return " ".join(said)
