"""The home page: what it is, how far, what was spent against the plan, whether it will be ready, the newest episode."""

from __future__ import annotations

from dataclasses import dataclass, replace

from builder.figures.account import Account
from builder.figures.figure import bound_of
from builder.pages.episode import Entry, entry
from builder.pages.frame import Card, Fact, Frame, Share, Term
from builder.pages.nothere import NotHere, not_in_total
from builder.pages.overtime import cost_over_time, over_time_note
from builder.pages.paths import HOME, LEDGER, SOURCES, WHOLE
from builder.pages.saying import told_summary
from builder.pages.signs import part_fact
from builder.pages.site import Material, frame
from builder.pages.standing import (
    OnPlan,
    PhaseStanding,
    Reading,
    anything_planned,
    on_plan,
    phase_standings,
    reading,
    spent_bound,
    tape,
)
from builder.pages.terms import terms
from builder.pages.timewords import ready_small
from builder.pages.wording import Words
from builder.plan.budget_records import Status


@dataclass(frozen=True, slots=True, kw_only=True)
class HomePage:
    """index.html."""

    frame: Frame
    summary: str
    spent: Reading
    spent_note: str
    spent_href: str
    tape: str
    facts: tuple[Fact, ...]
    on_plan: OnPlan | None
    newest: Entry | None
    newest_summary: str
    phases: tuple[PhaseStanding, ...]
    phases_note: str
    whole: str
    over_time: str
    over_time_note: str
    episodes: tuple[Entry, ...]
    not_here: NotHere
    terms: tuple[Term, ...]


def home_page(material: Material) -> HomePage:
    """Lay the home page out."""
    account, words = material.account, material.words
    settings, whole = account.journal.settings, account.sums.whole
    episodes = account.journal.episodes
    newest = episodes[-1] if episodes else None
    over_time = cost_over_time(account, words)
    return HomePage(
        frame=frame(material, HOME, settings.title, settings.summary, share=Share(picture="share.png")),
        summary=settings.summary,
        spent=reading(whole.spent, spent_bound(account), words),
        spent_note=_against(material),
        spent_href=LEDGER if material.has_lines else "",
        tape=tape(account, words, ""),
        facts=tuple(_facts(material)),
        on_plan=on_plan(account, words),
        newest=entry(material, newest, "") if newest else None,
        newest_summary=told_summary(newest, account, words) if newest else "",
        phases=phase_standings(account, words, ""),
        phases_note=_phases_note(account, words),
        whole=WHOLE if material.is_done else "",
        over_time=over_time,
        over_time_note=over_time_note(account, words) if over_time else "",
        episodes=tuple(entry(material, episode, "") for episode in reversed(episodes)),
        not_here=not_in_total(material, ""),
        terms=terms(words, *_words_used(material)) if material.has_lines else (),
    )


def _words_used(material: Material) -> tuple[str, ...]:
    finished = material.account.finished is not None
    return ("spent", "job_cost") if finished else ("spent", "job_cost", "forecast")


def share_card(material: Material) -> Card:
    """The words and amounts of the picture that stands beside a shared link."""
    account, words = material.account, material.words
    planned = account.outlook.planned
    return Card(
        title=account.journal.settings.title,
        spent=words.money(account.sums.whole.spent, spent_bound(account)),
        plan=words.say("plan {amount}", amount=words.money(planned)) if planned is not None else "",
        currency=account.ledger.currency.code,
        spent_amount=account.sums.whole.spent,
        plan_amount=planned,
    )


def _against(material: Material) -> str:
    """Spent is more than job cost where things are left: the plan is compared with job cost, and says so."""
    account, words = material.account, material.words
    whole, planned = account.sums.whole, account.outlook.planned
    if planned is None or whole.spent == whole.job_cost:
        return words.say("spent so far")
    return words.say(
        "spent so far, {job_cost} of it used up",
        job_cost=words.money(whole.job_cost, bound_of(whole, "job_cost")),
    )


def _phases_note(account: Account, words: Words) -> str:
    """What the phases' levels and amounts are; nothing of levels that are not there."""
    footing = words.say("Costs are job cost: what is still on the shelf or will be used again is not in them.")
    if not anything_planned(account):
        return footing if account.ledger.lines else ""
    return f"{words.say('The bubble slides to the side that is over.')} {footing}"


def _facts(material: Material) -> list[Fact]:
    account, words = material.account, material.words
    ready_by = account.journal.settings.ready_by
    facts = []
    phases = [phase for phase in account.phases if phase.key is not None]
    if phases:
        done = sum(phase.status is Status.DONE for phase in phases)
        now = [account.phase_name(phase.key) or "" for phase in phases if phase.status is Status.UNDER_WAY]
        facts.append(
            Fact(
                name=words.say("How far"),
                value=words.count(
                    len(phases), "{done} of {n} phase done", "{done} of {n} phases done", done=words.whole(done)
                ),
                small=words.say("now: {phases}", phases=words.listing(now)) if now else "",
            )
        )
    if ready_by is not None:
        facts.append(
            Fact(
                name=words.say("Promised for"),
                value=words.date(ready_by),
                small=ready_small(account, words),
            )
        )
    elif account.is_over and account.finished is not None:
        facts.append(Fact(name=words.say("Finished"), value=words.date(account.finished)))
    if account.sums.whole.saved:
        facts.append(replace(part_fact("saved", account.sums.whole, words), href=SOURCES))
    if account.sums.whole.hours:
        facts.append(Fact(name=words.say("Unpaid hours"), value=words.hours(account.sums.whole.hours)))
    return facts
