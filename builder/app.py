"""The first three steps in order: read, understand, compute. `builder.site` lays out and writes what they give.

Every step gives back its results and its problems; they are sorted and shown together at the end. Nothing is
published while a mistake stands.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from builder.figures.account import Account, add_up, index_of
from builder.figures.check import check_figures
from builder.figures.data import data_text
from builder.figures.names import all_names
from builder.figures.notices import notices
from builder.figures.tally import tally
from builder.figures.workings import workings_text
from builder.journal.files import OWNED, PLAN, SETTINGS, Files, find_files
from builder.journal.finds import sized_finds
from builder.journal.read import read_journal
from builder.journal.records.journal import Journal
from builder.journal.report import Report
from builder.journal.text import shown_lines
from builder.ledger.keep import keep_ledger
from builder.plan.budget import work_out_budget
from builder.plan.matching import near_misses
from builder.plan.outlook import look_ahead
from builder.plan.timing import check_order, time_plan
from builder.plan.value import earn
from builder.takeoff.compute import take_off
from builder.words.problem import Problem
from builder.words.quantity import Quantity
from builder.words.showing import shown


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A journal worked out. `account` is None when it could not be read; `problems` are in file order."""

    files: Files | None
    account: Account | None
    problems: tuple[Problem, ...]

    @property
    def mistakes(self) -> tuple[Problem, ...]:
        """The problems that stop publishing."""
        return tuple(problem for problem in self.problems if problem.is_mistake)

    @property
    def warnings(self) -> tuple[Problem, ...]:
        """The problems that do not."""
        return tuple(problem for problem in self.problems if not problem.is_mistake)


def work_out(folder: Path, as_of: datetime.date | None = None, today: datetime.date | None = None) -> Worked:
    """Read a journal's folder and compute everything; nothing is written.

    `today` only serves a warning; no figure depends on it.
    """
    report = Report()
    files = find_files(folder, report)
    if files is None:
        return Worked(files=None, account=None, problems=report.problems)
    read = read_journal(files)
    problems = [*report.problems, *read.problems]
    account = None
    if read.journal is not None:
        account, found = understand(read.journal, as_of)
        problems += _not_from_these(found, problems)
        if not any(problem.is_mistake for problem in problems):
            problems += notices(account, today)
    return Worked(files=files, account=account, problems=in_file_order(problems))


def _not_from_these(found: Iterable[Problem], read: Iterable[Problem]) -> list[Problem]:
    """What computing found, but for files that could not be read in full: it may only follow from that."""
    broken = {problem.place.file for problem in read if problem.is_mistake}
    return [problem for problem in found if problem.place.file not in broken]


def understand(journal: Journal, as_of: datetime.date | None = None) -> tuple[Account, list[Problem]]:
    """Ledger, take-off, plan and figures of a journal, and the problems that show only then."""
    kept = keep_ledger(journal)
    takeoffs, takeoff_problems = take_off(journal.plan.takeoffs, sized_finds(journal), metric=journal.settings.metric)
    results: dict[str, dict[str, Quantity]] = {entry.name: {} for entry in journal.plan.takeoffs}
    results |= {one.name: {result.key: result.quantity for result in one.results} for one in takeoffs}
    budget = work_out_budget(journal, results)
    sums = add_up(journal, kept.ledger)
    order = check_order(journal)
    outlook = look_ahead(journal, kept.ledger, budget.phases, sums.by_phase)
    account = Account(
        journal=journal,
        ledger=kept.ledger,
        sums=sums,
        index=index_of(journal, kept.ledger),
        takeoffs=takeoffs,
        outlook=outlook,
        earned=earn(journal, outlook),
        timing=None if order else time_plan(journal, as_of),
        moved=(),
    )
    matches = [match for phase in outlook.phases for match in phase.matches]
    problems = [*kept.problems, *takeoff_problems, *budget.problems, *order]
    problems += near_misses(matches, kept.ledger.lines)
    if not any(problem.is_mistake for problem in problems):
        problems += check_figures(account)
    return account, problems


def in_file_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """By file (settings, plan, what is owned, then episodes by name), line and column; each once."""
    rank = {SETTINGS: 0, PLAN: 1, OWNED: 2}
    unique = dict.fromkeys(problems)
    return tuple(
        sorted(unique, key=lambda one: (rank.get(one.place.file, 3), one.place, not one.is_mistake, one.found))
    )


def show(worked: Worked, folder: str, problems: Sequence[Problem]) -> str:
    """Problems as a person reads them, each with its line."""
    lines: dict[str, list[str]] = {}
    for name, raw in worked.files.texts if worked.files else ():
        if any(problem.place.file == name for problem in problems):
            lines[name] = shown_lines(raw)
    return "\n\n".join(shown(problem, folder, lines.get(problem.place.file, [])) for problem in problems)


def figures_text(account: Account) -> str:
    """figures.json as text."""
    return data_text(account)


def tally_text(account: Account) -> str:
    """The totals as a table."""
    return tally(account)


def takeoff_text(account: Account, *, brief: bool) -> str:
    """The take-offs with their workings."""
    if not account.takeoffs:
        return "The plan has no take-off. Add takeoff: to plan.yaml.\n"
    return workings_text(account.takeoffs, brief=brief)


def figure_names(worked: Worked) -> list[str]:
    """Every figure that can be named, as seen from the newest episode."""
    if worked.account is None:
        return []
    episodes = worked.account.journal.episodes
    return list(all_names(worked.account, episodes[-1].number if episodes else None))


def problems_data(worked: Worked) -> list[dict[str, object]]:
    """The problems as plain data."""
    return [
        {
            "file": problem.place.file,
            "line": problem.place.line,
            "column": problem.place.column,
            "weight": problem.weight.value,
            "found": problem.found,
            "expected": problem.expected,
            "fix": problem.fix,
        }
        for problem in worked.problems
    ]
