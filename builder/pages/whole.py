"""The whole build: a last page, once every phase is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.figures.figure import MoneyFigure, amount_of, bound_of
from builder.figures.names import look_up
from builder.pages.asked import all_lessons, cost_most
from builder.pages.episode import Entry, entry
from builder.pages.frame import Fact, Frame, Link
from builder.pages.nothere import NotHere, not_in_total
from builder.pages.paths import WHOLE, root_of
from builder.pages.saying import worded
from builder.pages.signs import part_fact, rework_fact
from builder.pages.site import Material, frame
from builder.pages.standing import PhaseStanding, Reading, phase_standings, reading, tape
from builder.pages.table import Table


@dataclass(frozen=True, slots=True, kw_only=True)
class WholePage:
    """build/."""

    frame: Frame
    spent: Reading
    of: str
    tape: str
    facts: tuple[Fact, ...]
    phases: tuple[PhaseStanding, ...]
    most: Table | None
    lessons: tuple[Link, ...]
    not_here: NotHere
    episodes: tuple[Entry, ...]


def whole_page(material: Material) -> WholePage:
    """Lay it out."""
    account, words = material.account, material.words
    whole, root, view = account.sums.whole, root_of(WHOLE), material.view(WHOLE)
    episodes = account.journal.episodes
    return WholePage(
        frame=frame(
            material, WHOLE, words.say("The whole build"), words.say("What it cost in the end, and what was learnt")
        ),
        spent=reading(whole.spent, bound_of(whole, "spent"), words),
        of=words.say(
            "spent from {first} to {last}",
            first=words.date(episodes[0].dates.first),
            last=words.date(episodes[-1].date),
        ),
        tape=tape(account, words, root),
        facts=tuple(_facts(material)),
        phases=phase_standings(account, words, root),
        most=cost_most(view),
        lessons=tuple(all_lessons(view)),
        not_here=not_in_total(material, root),
        episodes=tuple(entry(material, episode, root) for episode in episodes),
    )


def _facts(material: Material) -> Iterator[Fact]:
    account, words = material.account, material.words
    whole = account.sums.whole
    for key in ("job_cost", "reusable", "in_stock", "replacement_cost", "saved"):
        if amount_of(whole, key):
            yield part_fact(key, whole, words)
    yield from rework_fact(account.ledger.lines, words)
    if whole.hours:
        yield Fact(name=words.say("Unpaid hours"), value=words.hours(whole.hours))
    for unit, name in (("area", "Job cost per area"), ("year", "Job cost per year of service")):
        figure = look_up(f"job cost per {unit}", account)
        if isinstance(figure, MoneyFigure):
            yield Fact(name=words.say(name), value=worded(figure, words), money=True)
