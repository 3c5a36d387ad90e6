"""The plan page: is it on budget, will it be ready, and what is to blame; then everything that says why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.figures.figure import Bound, bound_of
from builder.ledger.parts import NOTHING
from builder.pages.calendar_page import calendar_drawing, calendar_table
from builder.pages.compare import variance_table
from builder.pages.earned import earned_sentence, earned_table
from builder.pages.frame import Fact, Frame, Term
from builder.pages.moved import moved_drawing, moved_table
from builder.pages.overtime import cost_over_time
from builder.pages.paths import PLAN, phase_path, root_of
from builder.pages.site import Material, frame
from builder.pages.standing import level, mark_of, over, status_words, verdict
from builder.pages.table import Cell, Column, Row, Table
from builder.pages.terms import terms
from builder.pages.timewords import chance_words, why_not
from builder.pages.wanted import wanted_table
from builder.plan.budget_records import PhaseOutlook
from builder.plan.time_records import Finish, NoFinish


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A question, the answer at a glance with its mark, and the sentences behind it."""

    question: str
    answer: str
    mark: str
    behind: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPage:
    """plan/."""

    frame: Frame
    answers: tuple[Answer, ...]
    side_by_side: Table
    contingency: tuple[Fact, ...]
    over_time: str
    calendar: str
    calendar_note: str
    calendar_table: Table | None
    moved: str
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
    drawn = calendar_drawing(account, words) if account.timing is not None else ""
    return PlanPage(
        frame=frame(
            material,
            PLAN,
            words.say("Plan"),
            words.say("What it was to cost, what it will cost, and when it will be ready"),
        ),
        answers=tuple(_answers(material)),
        side_by_side=_side_by_side(material),
        contingency=tuple(_contingency(material)),
        over_time=cost_over_time(account, words) if len(account.journal.episodes) > 1 else "",
        calendar=drawn,
        calendar_note=_hangs_on(material),
        calendar_table=calendar_table(account, words) if drawn else None,
        moved=moved_drawing(account, moved, words),
        moved_table=moved_table(account, moved, words),
        compared=variance_table(
            view,
            words.say("The lines furthest from their plan, in {currency}", currency=account.ledger.currency.code),
        ),
        wanted=wanted_table(material, root_of(PLAN)),
        earned=earned_table(account, words),
        earned_note=earned_sentence(account, words),
        terms=terms(words, "planned", "job_cost", "forecast", "contingency"),
    )


def _answers(material: Material) -> Iterator[Answer]:
    yield _on_budget(material)
    if material.account.timing is not None or material.account.journal.settings.ready_by is not None:
        yield _ready(material)
    yield _to_blame(material)


def _on_budget(material: Material) -> Answer:
    account, words = material.account, material.words
    outlook = account.outlook
    question = words.say("Is it on budget?")
    if outlook.planned is None or outlook.forecast is None:
        return Answer(
            question=question,
            answer=words.say("Cannot be told"),
            mark="",
            behind=(words.say("A phase that is not done has no plan, so there is no forecast for the whole build."),),
        )
    bound = bound_of(account.sums.whole, "job_cost")
    difference = outlook.forecast - outlook.planned
    behind = [
        words.say(
            "The whole build is forecast to come to {forecast}, against {plan} planned.",
            forecast=words.money(outlook.forecast, bound),
            plan=words.money(outlook.planned),
        )
    ]
    if outlook.contingency is not None:
        behind.append(_contingency_words(material))
    answer = words.over_or_under(difference, bound, alone=True)
    return Answer(
        question=question,
        answer=words.say("Yes: {verdict}", verdict=answer)
        if difference <= 0
        else words.say("No: {verdict}", verdict=answer),
        mark=mark_of(difference),
        behind=tuple(behind),
    )


def _least(material: Material) -> Bound:
    return bound_of(material.account.sums.whole, "job_cost")


def _contingency_words(material: Material) -> str:
    outlook, words = material.account.outlook, material.words
    kept, taken, left = outlook.contingency or 0, outlook.taken, outlook.left or 0
    told = words.say(
        "Of the {kept} kept for overruns, {taken} is taken.",
        kept=words.money(kept),
        taken=words.money(taken, _least(material)),
    )
    if left < 0:
        return f"{told} {words.say('The overruns are {amount} more than was kept.', amount=words.money(-left))}"
    return told


def _ready(material: Material) -> Answer:
    account, words = material.account, material.words
    timing, ready_by = account.timing, account.journal.settings.ready_by
    question = words.say("Will it be ready?")
    promised = [words.say("Promised for {date}.", date=words.date(ready_by))] if ready_by else []
    if timing is None or isinstance(timing.finish, NoFinish):
        names = (
            [account.phase_name(key) or key for key in timing.finish.keys]
            if timing and isinstance(timing.finish, NoFinish)
            else []
        )
        why = (
            why_not(timing.finish, names, words)
            if timing and isinstance(timing.finish, NoFinish)
            else words.say("the plan gives no hours, or the journal no work week")
        )
        return Answer(
            question=question,
            answer=words.say("Cannot be told"),
            mark="",
            behind=(*promised, words.say("No date can be told: {why}.", why=why)),
        )
    finish, chance = timing.finish, timing.chance
    late = ready_by is not None and finish.p50 > ready_by
    behind = [*promised, words.say("Safe by {date}: four chances in five.", date=words.date(finish.p80))]
    if chance is not None:
        behind.append(words.say("The chance of the promised date is {chance}.", chance=chance_words(timing, words)))
    behind.append(_pace(material))
    return Answer(
        question=question,
        answer=words.say("Likely {date}", date=words.date(finish.p50)),
        mark="over" if late else "",
        behind=tuple(behind),
    )


def _pace(material: Material) -> str:
    words, timing = material.words, material.account.timing
    pace = timing.pace if timing else None
    if pace is None or pace.rate is None:
        return words.say("No episode gives hours yet, so the work week is taken as promised.")
    told = words.count(
        pace.weeks,
        "This rests on {n} week, in which {rate} of the promised hours were worked.",
        "This rests on {n} weeks, in which {rate} of the promised hours were worked.",
        rate=words.percent(pace.rate),
    )
    if pace.unknown:
        more = words.count(
            pace.unknown, "In {n} week nobody wrote hours down.", "In {n} weeks nobody wrote hours down."
        )
        return f"{told} {more}"
    return told


def _to_blame(material: Material) -> Answer:
    account, words = material.account, material.words
    differences = [(over(phase) or 0, phase) for phase in account.phases if phase.key is not None]
    worst = max(differences, key=lambda one: one[0], default=None)
    question = words.say("What is to blame?")
    if worst is None or worst[0] <= 0:
        return Answer(question=question, answer=words.say("Nothing: no phase is over"), mark="", behind=())
    difference, phase = worst
    name = account.phase_name(phase.key) or ""
    return Answer(
        question=question,
        answer=words.say("{phase}: {verdict}", phase=name, verdict=words.over_or_under(difference, alone=True)),
        mark="over",
        behind=tuple(_reasons(material, phase)),
    )


def _reasons(material: Material, phase: PhaseOutlook) -> Iterator[str]:
    """The largest reasons: what was not planned at all, and the lines that are furthest over."""
    account, words = material.account, material.words
    unplanned = [line for ref in phase.not_planned if (line := account.line(ref)) and line.parts.job_cost > 0]
    if unplanned and phase.matches:
        amount = words.money(sum(line.parts.job_cost for line in unplanned))
        names = [account.called(line.item) for line in sorted(unplanned, key=lambda one: -one.parts.job_cost)[:3]]
        yield words.say("Not planned at all: {amount}, such as {names}.", amount=amount, names=words.listing(names))
    worst = sorted((match for match in phase.matches if match.variance.total > 0), key=lambda one: -one.variance.total)
    for match in worst[:2]:
        name = words.listing(dict.fromkeys(one.item.what for one in match.planned))
        yield words.say("{name}: {verdict}.", name=name, verdict=words.over_or_under(match.variance.total, alone=True))


def _side_by_side(material: Material) -> Table:
    account, words = material.account, material.words
    root = root_of(PLAN)
    rows = tuple(_phase_row(material, phase, root) for phase in account.phases)
    return Table(
        caption=words.say("Job cost by phase, in {currency}", currency=account.ledger.currency.code),
        columns=(
            Column(label=words.say("Phase"), role="what"),
            Column(label=words.say("Level"), role="reads"),
            Column(label=words.say("Planned"), role="lead", sums=True),
            Column(label=words.say("Job cost so far"), role="lead", sums=True),
            Column(label=words.say("Forecast"), role="lead", sums=True),
            Column(label=words.say("Over or under"), role="part"),
        ),
        rows=rows,
        foot=(_whole_row(material),),
        kind="folds three",
    )


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
            Cell(drawing=level(phase, account, words) if phase.key else ""),
            Cell(text=words.bare(phase.planned) if phase.planned is not None else ""),
            Cell(text=words.bounded(words.bare(phase.job_cost), bound)),
            Cell(text=words.bounded(words.bare(phase.forecast), bound) if phase.forecast is not None else ""),
            Cell(text=verdict(phase, account, words), mark=mark_of(over(phase))),
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
            Cell(text=words.bounded(words.bare(outlook.forecast), bound) if outlook.forecast is not None else ""),
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
    yield Fact(name=words.say("Contingency"), value=words.money(outlook.contingency), money=True)
    yield Fact(name=words.say("Taken by overruns"), value=words.money(outlook.taken, _least(material)), money=True)
    bound = Bound.AT_MOST if material.account.sums.whole.unpriced else Bound.EXACT
    yield Fact(name=words.say("Left of it"), value=words.money(outlook.left, bound), money=True)


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
