"""A phase's page: what it used up of what was planned, its cost table, its plan line by line, its episodes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.figure import amount_of, bound_of
from builder.ledger.parts import NOTHING, Parts
from builder.pages.compare import compare_table
from builder.pages.costs import cost_table
from builder.pages.episode import Entry, entry
from builder.pages.frame import Fact, Frame, Term
from builder.pages.hazards import hazards_of
from builder.pages.paths import phase_path, root_of
from builder.pages.shopping import shopping_list
from builder.pages.signs import part_fact, rework_fact
from builder.pages.site import Material, frame
from builder.pages.standing import Reading, anything_planned, level, mark_of, over, reading, status_words, verdict
from builder.pages.table import Table
from builder.pages.takeoffs import Working, workings_of
from builder.pages.terms import terms
from builder.plan.budget_records import PhaseOutlook, Status


@dataclass(frozen=True, slots=True, kw_only=True)
class PhasePage:
    """phases/KEY/."""

    frame: Frame
    kicker: str
    name: str
    job_cost: Reading
    of: str
    verdict: str
    verdict_mark: str
    level: str
    facts: tuple[Fact, ...]
    costs: Table | None
    compared: Table | None
    compared_note: str
    workings: tuple[Working, ...]
    shopping: Table | None
    episodes: tuple[Entry, ...]
    hazards: tuple[str, ...]
    terms: tuple[Term, ...]


def phase_page(material: Material, phase: PhaseOutlook) -> PhasePage:
    """Lay out the page of a phase, or of the lines of no phase."""
    account, words = material.account, material.words
    path = phase_path(phase.key)
    root = root_of(path)
    view = material.view(path)
    name = account.phase_name(phase.key) or words.say("No phase")
    parts = account.sums.by_phase.get(phase.key, NOTHING)
    lines = account.lines_of_phase(phase.key)
    currency = account.ledger.currency.code
    numbers = dict.fromkeys(
        [line.episode for line in lines]
        + [one.number for one in account.journal.episodes if one.phase == phase.key and phase.key]
    )
    episodes = sorted((account.episode(number) for number in numbers), key=lambda one: (one.date, one.number))
    job_cost = words.money(phase.job_cost, bound_of(parts, "job_cost"))
    return PhasePage(
        frame=frame(material, path, name, words.say("{phase}: {amount} used up so far", phase=name, amount=job_cost)),
        kicker=_kicker(material, phase),
        name=name,
        job_cost=reading(phase.job_cost, bound_of(parts, "job_cost"), words),
        of=words.say("used up, of {plan} planned", plan=words.money(phase.planned))
        if phase.planned is not None
        else words.say("used up"),
        verdict=verdict(phase, account, words),
        verdict_mark=mark_of(over(phase)),
        level=level(phase, account, words, labelled=True) if phase.key and anything_planned(account) else "",
        facts=tuple(_facts(material, phase)),
        costs=cost_table(
            view,
            lines,
            words.say("Every line of {phase}, in {currency}, with tax and delivery", phase=name, currency=currency),
            name,
        )
        if lines
        else None,
        compared=compare_table(view, phase, words.say("Job cost against the plan, in {currency}", currency=currency)),
        compared_note=words.say("This phase was planned as one amount, so it is compared as a whole.")
        if phase.planned is not None and not phase.matches
        else "",
        workings=workings_of(material, phase, root),
        shopping=shopping_list(view, phase),
        episodes=tuple(entry(material, episode, root) for episode in episodes),
        hazards=hazards_of(account, words, lines, phase.matches, name),
        terms=terms(words, "job_cost", *_present(parts), "planned", "forecast"),
    )


def _present(parts: Parts) -> list[str]:
    return [key for key in ("in_stock", "reusable", "elsewhere", "brought_in") if getattr(parts, key)]


def _kicker(material: Material, phase: PhaseOutlook) -> str:
    account, words = material.account, material.words
    keys = [one.key for one in account.phases if one.key is not None]
    if phase.key is None:
        return words.say("Lines that belong to no phase")
    return words.say(
        "Phase {number} of {all}, {status}",
        number=keys.index(phase.key) + 1,
        all=len(keys),
        status=status_words(phase, account, words),
    )


def _facts(material: Material, phase: PhaseOutlook) -> Iterator[Fact]:
    account, words = material.account, material.words
    parts = account.sums.by_phase.get(phase.key, NOTHING)
    if phase.forecast is not None and phase.planned is not None and phase.status is not Status.DONE:
        yield Fact(
            name=words.say("Forecast"),
            value=words.money(phase.forecast, bound_of(parts, "job_cost")),
            money=True,
        )
    planned = account.journal.phase(phase.key) if phase.key else None
    if parts.hours or (planned and planned.hours):
        small = ""
        if planned and planned.hours:
            low, likely, high = planned.hours
            small = words.say(
                "planned {likely}, from {low} to {high}",
                likely=words.decimal(likely),
                low=words.decimal(low),
                high=words.decimal(high),
            )
        # The plan's hours are the author's own, so helpers stand apart as they do on an episode's page.
        own = sum((one.parts.hours for one in account.ledger.hours if one.phase == phase.key), Fraction(0))
        told = own or any(one.hours_told for one in account.journal.episodes if one.phase == phase.key)
        if told or small:
            value = words.decimal(own) if told else words.say("none written down")
            yield Fact(name=words.say("Hours"), value=value, small=small)
        if parts.hours > own:
            yield Fact(name=words.say("Helpers"), value=words.hours(parts.hours - own))
    if planned and planned.wait:
        yield Fact(name=words.say("Wait after it"), value=words.days(planned.wait))
    for key in ("in_stock", "reusable", "saved"):
        if amount_of(parts, key):
            yield part_fact(key, parts, words)
    yield from rework_fact(account.lines_of_phase(phase.key), words)
    if parts.estimated:
        yield part_fact("estimated", parts, words)
