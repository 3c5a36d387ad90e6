"""The first three steps in order: read, understand, compute. `builder.site` lays out and writes what they give.

Every step gives back its results and its problems; they are sorted and shown together at the end. Nothing is
published while a mistake stands.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from builder.figures.account import Account, add_up, index_of
from builder.figures.check import check_figures
from builder.figures.data import data_text
from builder.figures.names import all_names
from builder.figures.notices import notices, to_come
from builder.figures.tally import tally
from builder.figures.workings import workings_text
from builder.journal.files import OWNED, PLAN, SETTINGS, Files, find_files
from builder.journal.finds import sized_finds
from builder.journal.known import Known
from builder.journal.read import Read, read_journal
from builder.journal.records.journal import Journal
from builder.journal.records.prose import Prose
from builder.journal.report import Report
from builder.journal.text import shown_lines
from builder.ledger.keep import keep_ledger
from builder.plan.budget import work_out_budget
from builder.plan.matching import near_misses
from builder.plan.outlook import look_ahead
from builder.plan.timing import check_order, finished_on, time_plan
from builder.plan.value import earn
from builder.takeoff.compute import take_off
from builder.words.problem import Problem
from builder.words.quantity import Quantity
from builder.words.showing import shown
from builder.words.span import Span
from builder.words.telling import Tell, quiet


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
    def planned(self) -> bool:
        """Whether nothing is wrong with the settings and the plan, on which the take-offs rest."""
        return not any(problem.place.file in (SETTINGS, PLAN) for problem in self.mistakes)

    @property
    def warnings(self) -> tuple[Problem, ...]:
        """The problems that do not."""
        return tuple(problem for problem in self.problems if not problem.is_mistake)


class Memory:
    """What earlier runs of this process found, so that a word saved costs only what hangs on it.

    Computing asks for nothing in a story but the figures it names: while all else stays, so does what was computed.
    """

    def __init__(self) -> None:
        self.episodes = Known()
        self._from: tuple[Journal, datetime.date | None] | None = None
        self._reckoned: tuple[Account, list[Problem]] | None = None

    def reckon(self, journal: Journal, as_of: datetime.date | None) -> tuple[Account, list[Problem]]:
        """The same as `reckon`."""
        wanted = (_without_stories(journal), as_of)
        if self._reckoned is None or self._from != wanted:
            self._from, self._reckoned = wanted, reckon(journal, as_of)
        account, problems = self._reckoned
        return replace(account, journal=journal, index=index_of(journal, account.ledger)), problems


def _without_stories(journal: Journal) -> Journal:
    told = (replace(one, prose=Prose()) for one in journal.episodes)
    return replace(journal, episodes=tuple(told))


def work_out(
    folder: Path,
    as_of: datetime.date | None = None,
    today: datetime.date | None = None,
    tell: Tell = quiet,
    memory: Memory | None = None,
) -> Worked:
    """Read a journal's folder and compute everything; nothing is written.

    `today` only serves a warning; no figure depends on it. `tell` hears how far it is.
    `memory` is one for all runs of a process.
    """
    report = Report()
    files = find_files(folder, report)
    if files is None:
        return Worked(files=None, account=None, problems=report.problems)
    read = read_journal(files, tell, memory.episodes if memory else None)
    problems = [*report.problems, *read.problems]
    account = None
    if read.journal is not None:
        tell(0, 0, "adding up")
        right = not any(problem.is_mistake for problem in problems)
        account, found = understand(read.journal, as_of, memory, right=right)
        problems += found if read.whole else _misnamed(read, as_of)
        mistaken = any(problem.is_mistake for problem in problems)
        problems += to_come(account, today) if mistaken else notices(account, today)
    return Worked(files=files, account=account, problems=in_file_order(problems))


def _misnamed(read: Read, as_of: datetime.date | None) -> list[Problem]:
    """Names that are no figure, where episodes have no date yet: which names there are does not hang on their order."""
    if read.journal is None or not read.unplaced:
        return []
    known, begun = read.journal.episodes, read.journal.settings.begun or datetime.date(2000, 1, 1)
    day = max((episode.date for episode in known), default=begun)
    placed = (replace(episode, dates=Span(day, day)) for episode in read.unplaced)
    together = tuple(sorted((*known, *placed), key=lambda one: (one.date, one.number)))
    account, problems = reckon(replace(read.journal, episodes=together), as_of)
    wrong = any(problem.is_mistake for problem in problems)
    return [] if wrong else list(check_figures(account, stated=False))


def understand(
    journal: Journal, as_of: datetime.date | None = None, memory: Memory | None = None, *, right: bool = True
) -> tuple[Account, list[Problem]]:
    """Ledger, take-off, plan and figures of a journal, and the problems that show only then.

    `right` is whether it was read without a mistake: else no figure is held against what the author states.
    """
    account, problems = memory.reckon(journal, as_of) if memory else reckon(journal, as_of)
    if not any(problem.is_mistake for problem in problems):
        problems = [*problems, *check_figures(account, stated=right)]
    return account, problems


def reckon(journal: Journal, as_of: datetime.date | None) -> tuple[Account, list[Problem]]:
    """As `understand`, but for the figures that the author names."""
    kept = keep_ledger(journal)
    takeoffs, takeoff_problems = take_off(journal.plan.takeoffs, sized_finds(journal), metric=journal.settings.metric)
    results: dict[str, dict[str, Quantity]] = {entry.name: {} for entry in journal.plan.takeoffs}
    results |= {one.name: {result.key: result.quantity for result in one.results} for one in takeoffs}
    budget = work_out_budget(journal, results)
    sums = add_up(journal, kept.ledger)
    order = check_order(journal)
    outlook = look_ahead(journal, kept.ledger, budget.phases, sums.by_phase)
    timing = None if order else time_plan(journal, as_of)
    account = Account(
        journal=journal,
        ledger=kept.ledger,
        sums=sums,
        index=index_of(journal, kept.ledger),
        takeoffs=takeoffs,
        outlook=outlook,
        earned=earn(journal, outlook),
        timing=timing,
        finished=None if order else finished_on(journal, timing),
        asked=as_of,
    )
    matches = [match for phase in outlook.phases for match in phase.matches]
    problems = [*kept.problems, *takeoff_problems, *budget.problems, *order]
    problems += near_misses(matches, kept.ledger.lines)
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


def told_whole(worked: Worked, folder: str) -> str:
    """All that is wrong, and how much of it; "" where nothing is."""
    mistakes, warnings = len(worked.mistakes), _count(len(worked.warnings), "warning")
    if not worked.problems:
        return ""
    count = f"{warnings}, no mistakes.\n"
    if mistakes:
        count = f"{_count(mistakes, 'mistake')}, {warnings}. Nothing was published."
    return f"{show(worked, folder, worked.problems)}\n\n{count}\n"


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


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
    return workings_text(account.takeoffs, account.ledger.currency, brief=brief)


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
