"""The whole program in order: read, understand, compute, lay out, write.

Every step gives back its results and its problems; they are sorted and shown together at the end. Nothing is
published while a mistake stands.
"""

from __future__ import annotations

import datetime
import json
import os
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from builder import __version__
from builder.figures.account import Account, Moved, add_up, index_of
from builder.figures.check import check_figures
from builder.figures.data import data_text
from builder.figures.names import all_names
from builder.figures.notices import notices
from builder.figures.tally import tally
from builder.figures.workings import workings_text
from builder.journal.check import shown_pictures
from builder.journal.files import OWNED, PLAN, SETTINGS, Files, find_files
from builder.journal.finds import sized_finds
from builder.journal.read import read_journal
from builder.journal.records.journal import Journal
from builder.journal.report import Report
from builder.journal.text import shown_lines
from builder.ledger.keep import keep_ledger
from builder.pages.data_files import data_files
from builder.pages.home import share_card
from builder.pages.layout import lay_out
from builder.pages.site import Material
from builder.pages.wording import Words
from builder.plan.budget import work_out_budget
from builder.plan.matching import near_misses
from builder.plan.moving import forecasts_after
from builder.plan.outlook import look_ahead
from builder.plan.timing import check_order, time_plan
from builder.plan.value import earn
from builder.publish.assemble import site_files
from builder.publish.card import draw_card
from builder.publish.folder import Changed, Copy, publish_folder
from builder.publish.folder_errors import SiteError
from builder.publish.pictures import PhotoError, prepare_photos
from builder.publish.preview import Built, serve
from builder.store.place import cache_folder
from builder.store.store import Store
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


MOST_TIMINGS = 20


def _moved(account: Account) -> tuple[Moved, ...]:
    """Where the forecast stood after each episode; of a long journal, after evenly chosen ones and the last."""
    episodes = account.journal.episodes
    if len(episodes) < 2 or not account.journal.plan.phases:
        return ()
    forecasts = forecasts_after(account.journal, account.ledger, account.outlook)
    count = min(len(episodes), MOST_TIMINGS)
    chosen = sorted({(at + 1) * len(episodes) // count - 1 for at in range(count)})
    return tuple(
        Moved(
            episode=episodes[at].number,
            forecast=forecasts.get(episodes[at].number),
            timing=time_plan(account.journal, None, at + 1),
        )
        for at in chosen
    )


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How publishing went: whether the site stands, and what to tell."""

    done: bool
    says: str


def publish_site(worked: Worked, to: Path) -> Outcome:
    """Write the site of a journal without mistakes; what stood there stays if that cannot be done."""
    if worked.account is None or worked.files is None:
        return Outcome(done=False, says="there is no journal to publish")
    before = _spent_before(to)
    try:
        cache = cache_folder(os.environ, Path.home())
        with Store(cache) as store:
            changed = publish_folder(
                to,
                built_site(worked, store),
                version=__version__,
                journal=worked.files.folder,
                spare=cache / "spare" if cache is not None else None,
            )
    except (SiteError, PhotoError) as error:
        return Outcome(done=False, says=str(error))
    return Outcome(done=True, says=_told(changed, to, worked.account, before))


def built_site(worked: Worked, store: Store) -> dict[str, bytes | Copy]:
    """Every file of the site by path; the journal has no mistakes. `store` keeps what is slow to make."""
    if worked.account is None or worked.files is None:
        return {}
    account = replace(worked.account, moved=_moved(worked.account))
    words = Words(account.journal.settings.language, account.ledger.currency)
    prepared = prepare_photos(shown_pictures(account.journal), worked.files.folder, store.remember)
    material = Material(account=account, words=words, photos=prepared.photos, remember=store.remember)
    card = {"share.png": draw_card(share_card(material))} if account.journal.settings.address else {}
    return {**dict(site_files(lay_out(material), data_files(material), words)), **prepared.files, **card}


def _in_memory(files: Mapping[str, bytes | Copy]) -> dict[str, bytes]:
    return {path: content if isinstance(content, bytes) else content.read() for path, content in files.items()}


def show_site(folder: Path, as_of: datetime.date | None, port: int, tell: Callable[[str], None]) -> None:
    """Serve a journal's site until interrupted, made anew whenever it is saved."""
    store = Store(None)

    def rebuild() -> Built:
        worked = work_out(folder, as_of)
        told = show(worked, folder.as_posix(), worked.mistakes)
        if worked.mistakes:
            return Built(files=None, told=told)
        try:
            return Built(files=_in_memory(built_site(worked, store)), told="")
        except PhotoError as error:
            return Built(files=None, told=str(error))

    serve(folder, rebuild, tell, port)


def _spent_before(to: Path) -> str | None:
    """What the site that stands there says was spent; None where none stands."""
    try:
        told = json.loads((to / "figures.json").read_text(encoding="utf-8"))["totals"]["spent"]
    except (OSError, ValueError, KeyError, TypeError):
        return None
    return told if isinstance(told, str) else None


def _told(changed: Changed, to: Path, account: Account, before: str | None) -> str:
    """What changed since the last time, and what to do next."""
    pages = [path for path in (*changed.added, *changed.changed) if path.endswith(".html")]
    if not (changed.added or changed.changed or changed.removed):
        return f"Nothing has changed. Open {to / 'index.html'}"
    counts = [
        f"{len(paths)} {word}"
        for paths, word in ((changed.added, "new"), (changed.changed, "changed"), (changed.removed, "gone"))
        if paths
    ]
    spent = account.ledger.currency.major(account.sums.whole.spent)
    least = "at least " if account.sums.whole.unpriced else ""
    was = f", {before} the last time" if before is not None and before != spent else ""
    edited = [f"{path} had been changed by hand; it was written again." for path in changed.edited]
    left = [f"{path} could not be put away; the next publish tries again." for path in changed.left]
    return "\n".join(
        [
            *edited,
            *left,
            f"{', '.join(counts)} of the site's files, {len(pages)} of them pages.",
            f"Spent so far: {least}{spent} {account.ledger.currency.code}{was}.",
            f"To put it on the web, copy the folder {to} to any host. Open {to / 'index.html'}",
        ]
    )


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
