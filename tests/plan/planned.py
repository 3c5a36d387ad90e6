"""Journals with a plan, read, kept and set against it as the whole program does it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from textwrap import dedent, indent

from builder.journal.records.journal import Journal
from builder.ledger.keep import keep_ledger
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.records import Ledger
from builder.plan.budget import Budget, work_out_budget
from builder.plan.budget_records import Budgeted, Match, Outlook, PhaseOutlook
from builder.plan.matching import match_lines, near_misses
from builder.plan.outlook import look_ahead
from builder.words.quantity import Quantity, read_quantity
from tests.journal import samples


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A journal, what it was to cost and what it cost."""

    journal: Journal
    ledger: Ledger
    budget: Budget
    outlook: Outlook

    def phase(self, key: str | None) -> PhaseOutlook:
        """The outlook of a phase; of the row "no phase" for None."""
        return next(one for one in self.outlook.phases if one.key == key)

    def line(self, key: str) -> Budgeted:
        """A planned line."""
        return next(one for phase in self.budget.phases for one in phase.lines if one.key == key)

    @property
    def matches(self) -> tuple[Match, ...]:
        """Every match, in the plan's order."""
        lines = [one for phase in self.budget.phases for one in phase.lines]
        return match_lines(lines, self.ledger.lines)

    @property
    def match(self) -> Match:
        """The only match."""
        (only,) = self.matches
        return only

    @property
    def near(self) -> list[str]:
        """What is told about lines that answer to nothing planned."""
        return [one.one_line() for one in near_misses(self.matches, self.ledger.lines)]


def read_plan(plan: str, *fronts: str, settings: str = "", owned: str | None = None) -> Journal:
    """The journal of a plan and episodes, one a day from 1 April; one that names its own day keeps it.

    It may have no mistake, but that an episode has no phase: it is worked out all the same.
    """
    episodes: dict[str, str | bytes] = {}
    for number, front in enumerate(fronts, 1):
        has_day = "date:" in front or "\nto:" in front
        day = "" if has_day else f"date: 2026-04-{number:02d}\n"
        episodes[f"episodes/{number:02d}-day.md"] = f"---\ntitle: Day {number}\n{day}{dedent(front)}\n---\n"
    told = samples.SETTINGS + dedent(settings)
    read = samples.read(settings=told, plan=dedent(plan), owned=owned, more=episodes)
    assert [one for one in samples.told(read) if ": mistake: " in one and "has no phase" not in one] == []
    assert read.journal is not None
    return read.journal


def planned(
    plan: str, *fronts: str, settings: str = "", results: Mapping[str, Mapping[str, Quantity]] | None = None
) -> Planned:
    """A plan and what came of it. `results` are those of its take-offs."""
    journal = read_plan(plan, *fronts, settings=settings)
    ledger = keep_ledger(journal).ledger
    budget = work_out_budget(journal, results or {})
    by_phase: dict[str | None, Parts] = {}
    for one in (*ledger.lines, *ledger.hours):
        by_phase[one.phase] = by_phase.get(one.phase, NOTHING).plus(one.parts)
    outlook = look_ahead(journal, ledger, budget.phases, by_phase)
    return Planned(journal=journal, ledger=ledger, budget=budget, outlook=outlook)


def footing(*lines: str, more: str = "") -> str:
    """A plan of one phase with these planned lines; `more` stands beside them in the phase."""
    told = "".join(f"      - {{{line}}}\n" for line in lines)
    return f"phases:\n  - key: footing\n    name: Footing\n{indent(dedent(more), '    ')}    planned:\n{told}"


def worked(*lines: str, more: str = "") -> str:
    """An episode in the phase `footing` with these line items."""
    told = "".join(f"  - {{{line}}}\n" for line in lines)
    return f"phase: footing\n{dedent(more)}" + (f"items:\n{told}" if lines else "")


def of(text: str) -> Quantity:
    """A quantity such as `12 bag`."""
    return read_quantity(text)
