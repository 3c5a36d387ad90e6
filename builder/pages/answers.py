"""What the plan page answers first: is it on budget, will it be ready, and what is to blame."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.figures.figure import Bound, bound_of
from builder.ledger.parts import NOTHING
from builder.pages.compare import line_over, match_bound, planned_names
from builder.pages.site import Material
from builder.pages.standing import mark_of, over
from builder.pages.timewords import chance_words, finished_words, why_not
from builder.pages.wording import Words
from builder.plan.budget_records import PhaseOutlook, Status
from builder.plan.time_records import Finish, NoFinish


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A question, the answer at a glance with its mark, and the sentences behind it."""

    question: str
    answer: str
    mark: str
    behind: tuple[str, ...]


def answers(material: Material) -> Iterator[Answer]:
    """Each question that can be asked of this plan, with its answer."""
    account = material.account
    yield _on_budget(material)
    if account.finished is not None:
        yield _finished(material)
    elif account.timing is not None or account.journal.settings.ready_by is not None:
        yield _ready(material)
    if account.outlook.planned is not None:
        yield _to_blame(material)


def least(material: Material) -> Bound:
    """Whether what the build cost is "at least"."""
    return bound_of(material.account.sums.whole, "job_cost")


def _on_budget(material: Material) -> Answer:
    account, words = material.account, material.words
    outlook, done = account.outlook, account.finished is not None
    question = words.say("Was it on budget?") if done else words.say("Is it on budget?")
    if outlook.planned is None:
        nothing = words.say("Nothing was planned") if done else words.say("Nothing is planned yet")
        return Answer(question=question, answer=nothing, mark="", behind=(_unplanned(material),))
    if outlook.forecast is None:
        return Answer(
            question=question,
            answer=words.say("Cannot be told"),
            mark="",
            behind=(words.say("A phase that is not done has no plan, so there is no forecast for the whole build."),),
        )
    difference = outlook.forecast - outlook.planned
    behind = [
        words.say(
            "The whole build came to {cost}, against {plan} planned.",
            cost=words.money(outlook.forecast, least(material)),
            plan=words.money(outlook.planned),
        )
        if done
        else words.say(
            "The whole build is forecast to come to {forecast}, against {plan} planned.",
            forecast=words.money(outlook.forecast, least(material)),
            plan=words.money(outlook.planned),
        )
    ]
    if outlook.contingency is not None:
        behind.append(_contingency_words(material))
    return Answer(
        question=question,
        answer=_kept(difference, least(material), words),
        mark=mark_of(difference),
        behind=tuple(behind),
    )


def _kept(difference: int, bound: Bound, words: Words) -> str:
    """Yes or no; a build of which not all costs are known may be over though what is known is not."""
    verdict = words.over_or_under(difference, bound, alone=True)
    if difference > 0:
        return words.say("No: {verdict}", verdict=verdict)
    if bound is Bound.EXACT:
        return words.say("Yes: {verdict}", verdict=verdict)
    return words.say("As far as costs are known: {verdict}", verdict=verdict)


def _unplanned(material: Material) -> str:
    account, words = material.account, material.words
    if account.finished is None:
        return words.say("No phase has a plan to hold its cost against.")
    return words.say("The whole build came to {cost}.", cost=words.money(account.sums.whole.job_cost, least(material)))


def _contingency_words(material: Material) -> str:
    outlook, words = material.account.outlook, material.words
    kept, taken, left = outlook.contingency or 0, outlook.taken, outlook.left or 0
    told = words.say(
        "Of the {kept} kept for overruns, {taken} is taken.",
        kept=words.money(kept),
        taken=words.money(taken, least(material)),
    )
    if left < 0:
        amount = words.money(-left, least(material))
        return f"{told} {words.say('The overruns are {amount} more than was kept.', amount=amount)}"
    return told


def _promised(material: Material) -> list[str]:
    ready_by, words = material.account.journal.settings.ready_by, material.words
    return [words.say("Promised for {date}.", date=words.date(ready_by))] if ready_by else []


def _finished(material: Material) -> Answer:
    account, words = material.account, material.words
    ready_by = account.journal.settings.ready_by
    late = ready_by is not None and account.finished is not None and account.finished > ready_by
    return Answer(
        question=words.say("Is it ready?"),
        answer=finished_words(account, words),
        mark="over" if late else "",
        behind=tuple(_promised(material)),
    )


def _ready(material: Material) -> Answer:
    timing, words = material.account.timing, material.words
    if timing is None or isinstance(timing.finish, NoFinish):
        why = words.say("No date can be told: {why}.", why=_why(material))
        return Answer(
            question=words.say("Will it be ready?"),
            answer=words.say("Cannot be told"),
            mark="",
            behind=(*_promised(material), why),
        )
    finish, ready_by = timing.finish, timing.ready_by
    behind, past = _promised(material), ready_by is not None and ready_by < timing.as_of
    if past:
        behind.append(words.say("That day is past."))
    behind.append(words.say("Safe by {date}: four chances in five.", date=words.date(finish.p80)))
    if timing.chance is not None and not past:
        behind.append(words.say("The chance of the promised date is {chance}.", chance=chance_words(timing, words)))
    behind += [*_spent_up(material, finish), _pace(material)]
    return Answer(
        question=words.say("Will it be ready?"),
        answer=words.say("Likely {date}", date=words.date(finish.p50)),
        mark="over" if ready_by is not None and finish.p50 > ready_by else "",
        behind=tuple(behind),
    )


def _why(material: Material) -> str:
    account, words = material.account, material.words
    if account.timing is None or not isinstance(account.timing.finish, NoFinish):
        return words.say("the plan gives no hours, or the journal no work week")
    finish = account.timing.finish
    return why_not(finish, [account.phase_name(key) or key for key in finish.keys], words)


def _spent_up(material: Material, finish: Finish) -> Iterator[str]:
    """Phases whose hours say nothing any more: what they still need is unknown, and counted as nothing."""
    account, words = material.account, material.words
    if finish.spent_up:
        yield words.say(
            "Nobody said how far {phases} got, and more hours than the highest estimate are spent there: it can only "
            "get later.",
            phases=words.listing(account.phase_name(key) or key for key in finish.spent_up),
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
    worst = max(account.phases, key=_over, default=None)
    question = words.say("What is to blame?")
    if worst is None or _over(worst) <= 0:
        nothing = (
            words.say("Nothing: no phase is over")
            if least(material) is Bound.EXACT
            else words.say("As far as costs are known, no phase is over")
        )
        return Answer(question=question, answer=nothing, mark="", behind=())
    bound = bound_of(account.sums.by_phase.get(worst.key, NOTHING), "job_cost")
    return Answer(
        question=question,
        answer=words.say(
            "{phase}: {verdict}",
            phase=account.phase_name(worst.key) or words.say("Outside every phase"),
            verdict=words.over_or_under(_over(worst), bound, alone=True),
        ),
        mark="over",
        behind=tuple(_reasons(material, worst)),
    )


def _over(phase: PhaseOutlook) -> int:
    """How far a phase is over: all of it that is in no phase, or in a done one without a plan, as none was planned."""
    if phase.key is None or (phase.planned is None and phase.status is Status.DONE):
        return phase.job_cost
    return over(phase) or 0


def _reasons(material: Material, phase: PhaseOutlook) -> Iterator[str]:
    """The largest reasons: what was not planned at all, and the lines that are furthest over."""
    account, words = material.account, material.words
    found = [line for ref in phase.not_planned if (line := account.line(ref))]
    unplanned = [line for line in found if line.parts.job_cost > 0 or line.parts.unpriced]
    amount = sum(line.parts.job_cost for line in unplanned)
    if phase.planned is None and phase.key is not None:
        yield words.say("Nothing was planned for it.")
    elif amount > 0 and phase.matches:
        bound = Bound.AT_LEAST if any(line.parts.unpriced for line in unplanned) else Bound.EXACT
        names = [account.called(line.item) for line in sorted(unplanned, key=lambda one: -one.parts.job_cost)[:3]]
        yield words.say(
            "Not planned at all: {amount}, such as {names}.",
            amount=words.money(amount, bound),
            names=words.listing(names),
        )
    worst = sorted(phase.matches, key=lambda one: -line_over(one, phase))
    for match in [one for one in worst if one.refs and line_over(one, phase) > 0][:2]:
        verdict = words.over_or_under(line_over(match, phase), match_bound(match, account), alone=True)
        yield words.say("{name}: {verdict}.", name=planned_names(match, words), verdict=verdict)
