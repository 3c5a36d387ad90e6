"""How the build and its phases stand, in a sentence or a drawing: used by home, phase and plan pages alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.figures.account import Account
from builder.figures.figure import Bound, bound_of
from builder.ledger.parts import NOTHING
from builder.pages.level import Level, draw_level
from builder.pages.paths import EPISODE_PAGE, PLAN, phase_path
from builder.pages.svg import round_steps
from builder.pages.tape import Graduation, Tape, TapeMark, draw_tape
from builder.pages.wording import Words
from builder.plan.budget_records import PhaseOutlook, Status

STATUS = {Status.DONE: "done", Status.UNDER_WAY: "under way", Status.NOT_BEGUN: "not begun"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseStanding:
    """A phase in a list: name and page, what it used up of what was planned, its level, over or under."""

    name: str
    href: str
    job_cost: str
    planned: str
    status: str
    level: str
    verdict: str
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A figure in large type, with the small words that stand before and after it (`at least`)."""

    before: str
    figure: str
    after: str


def reading(minor: int, bound: Bound, words: Words) -> Reading:
    """An amount as a page's first figure."""
    before, after = words.around(bound)
    return Reading(before=before, figure=words.money(minor), after=after)


def spent_bound(account: Account) -> Bound:
    """Whether the build's spent is "at least"."""
    return bound_of(account.sums.whole, "spent")


def phase_standings(account: Account, words: Words, root: str) -> tuple[PhaseStanding, ...]:
    """Every phase in the plan's order."""
    return tuple(phase_standing(phase, account, words, root) for phase in account.phases)


def phase_standing(phase: PhaseOutlook, account: Account, words: Words, root: str) -> PhaseStanding:
    """One phase."""
    parts = account.sums.by_phase.get(phase.key, NOTHING)
    bound = bound_of(parts, "job_cost")
    difference = over(phase)
    return PhaseStanding(
        name=account.phase_name(phase.key) or words.say("No phase"),
        href=root + phase_path(phase.key),
        job_cost=words.money(phase.job_cost, bound),
        planned=words.money(phase.planned) if phase.planned is not None else "",
        status=status_words(phase, account, words),
        level=level(phase, account, words) if phase.key is not None and anything_planned(account) else "",
        verdict=verdict(phase, account, words),
        mark=mark_of(difference),
    )


def anything_planned(account: Account) -> bool:
    """Whether any phase has a plan: before that no level has anything to show."""
    return any(phase.planned is not None for phase in account.phases)


def over(phase: PhaseOutlook) -> int | None:
    """Forecast less plan: how far over (or, below zero, under) the phase ends; None when unknown or not begun."""
    if phase.planned is None or phase.forecast is None or phase.status is Status.NOT_BEGUN:
        return None
    return phase.forecast - phase.planned


def mark_of(difference: int | None) -> str:
    """The class of a difference: over, under or nothing."""
    return "" if not difference else "over" if difference > 0 else "under"


def verdict(phase: PhaseOutlook, account: Account, words: Words) -> str:
    """Over or under in words; for a phase under way, as forecast."""
    difference = over(phase)
    if phase.key is None:
        return words.say("outside every phase")
    if phase.planned is None:
        return words.say("nothing planned")
    if difference is None:
        return words.say("nothing to read yet") if phase.status is Status.NOT_BEGUN else words.say("cannot be told")
    told = words.over_or_under(difference, bound_of(account.sums.by_phase.get(phase.key, NOTHING), "job_cost"))
    return told if phase.status is Status.DONE else words.say("{verdict}, as forecast", verdict=told)


def status_words(phase: PhaseOutlook, account: Account, words: Words) -> str:
    """Done, under way with how far, or not begun."""
    status = words.say(STATUS[phase.status])
    if phase.key is None:
        return ""
    if phase.status is not Status.UNDER_WAY:
        return status
    told = [one.part for episode in account.journal.episodes for one in episode.progress if one.phase == phase.key]
    if not told:
        return words.say("under way, nobody said how far")
    return words.say("under way, {part}", part=words.percent(told[-1]))


def level(phase: PhaseOutlook, account: Account, words: Words, *, labelled: bool = False) -> str:
    """The spirit level of a phase; `labelled` where it stands alone."""
    name = account.phase_name(phase.key) or ""
    return draw_level(
        Level(
            key=f"level-{phase.key}",
            title=words.say("Level of {phase}", phase=name),
            description=verdict(phase, account, words),
            over=over(phase) or 0,
            plan=phase.planned if over(phase) is not None else None,
            begun=phase.status is not Status.NOT_BEGUN,
            under_label=words.say("under") if labelled else "",
            over_label=words.say("over") if labelled else "",
        )
    )


def tape(account: Account, words: Words, root: str) -> str:
    """The measuring tape: pulled out to what is spent, its case at the plan."""
    spent, bound = account.sums.whole.spent, spent_bound(account)
    plan = account.outlook.planned
    told = words.money(spent, bound)
    described = (
        words.say(
            "A measuring tape pulled out to {spent}; its case stands at the plan, {plan}.",
            spent=told,
            plan=words.money(plan),
        )
        if plan is not None
        else words.say("A measuring tape pulled out to {spent}; there is no plan to set its case at.", spent=told)
    )
    return draw_tape(
        Tape(
            key="tape",
            title=words.say("Spent so far, on a tape"),
            description=described,
            spent=spent,
            plan=plan,
            spent_label=told,
            plan_label=words.say("plan {amount}", amount=words.money(plan)) if plan is not None else "",
            at_least=bound is Bound.AT_LEAST,
            marks=tuple(_marks(account, words, root)),
            graduations=tuple(_graduations(max(spent, plan or 0), account, words)),
        )
    )


def _marks(account: Account, words: Words, root: str) -> Sequence[TapeMark]:
    return [
        TapeMark(
            amount=account.sums.running[episode.number].spent,
            label=words.whole(episode.number),
            name=words.say("Episode {number}: {title}", number=episode.number, title=episode.title),
            href=root + EPISODE_PAGE.format(name=episode.name),
        )
        for episode in account.journal.episodes
    ]


def _graduations(top: int, account: Account, words: Words) -> Sequence[Graduation]:
    digits = account.ledger.currency.digits
    return [
        Graduation(amount=amount, label=words.whole(amount // 10**digits))
        for amount in round_steps(top)
        if amount % 10**digits == 0
    ]


@dataclass(frozen=True, slots=True)
class OnPlan:
    """Whether the build is on plan: over or under and by how much, the class of that, what it rests on, and the
    page that tells the rest.
    """

    verdict: str
    mark: str
    behind: str
    href: str


def on_plan(account: Account, words: Words) -> OnPlan | None:
    """How the build stands against its plan so far; None where there is no plan to stand against.

    The forecast takes what is still to come at its planned price, so it differs from the plan by as much as
    the build has gone over or under so far.
    """
    outlook = account.outlook
    if outlook.planned is None or outlook.forecast is None:
        return None
    bound = bound_of(account.sums.whole, "job_cost")
    difference = outlook.forecast - outlook.planned
    done = all(phase.status is Status.DONE for phase in account.phases if phase.key is not None)
    told = words.over_or_under(difference, bound, alone=True)
    behind = (
        words.say("The whole build was to cost {plan}.", plan=words.money(outlook.planned))
        if done
        else words.say(
            "If the rest costs what was planned, the whole build uses up {forecast}; the plan was {plan}.",
            forecast=words.money(outlook.forecast, bound),
            plan=words.money(outlook.planned),
        )
    )
    verdict = words.say("Against the plan: {verdict}." if done else "Against the plan so far: {verdict}.", verdict=told)
    return OnPlan(verdict, mark_of(difference), behind, PLAN)
