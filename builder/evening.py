"""Sunday night: the next episode's file, written whole or not at all; and what every command of that night asks."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

from builder.app import Worked, work_out
from builder.figures.account import Account
from builder.journal.add_line import NewLine
from builder.journal.episode_reader import read_episode
from builder.journal.files import EPISODES
from builder.journal.keys import Word
from builder.journal.reading import Reading
from builder.journal.records.episode import Episode
from builder.journal.records.item import Kind
from builder.journal.report import Report
from builder.journal.starting import NewEpisode, episode_file, last_weekend, like_before
from builder.journal.text import decode, divide
from builder.journal.writing import NotDone, write_new
from builder.plan.budget_records import Status
from builder.words.numbers import Unreadable
from builder.words.telling import Tell, quiet

T = TypeVar("T")
Ask = Callable[[str, str], str]


def read_answer(kind: Word[T], name: str, text: str, reading: Reading) -> T:
    """What was answered, as its key is read in a file; NotDone says what is wrong with it."""
    try:
        return kind.parse(text.strip(), reading)
    except Unreadable as error:
        raise NotDone(f"{name}: {error.found}; expected {error.expected}", error.fix) from None


def new_episode(folder: Path, title: str, today: datetime.date, tell: Tell = quiet) -> Path:
    """Make the next episode's file; its path. NotDone where the journal cannot be read, or the title could not be."""
    if not title.strip():
        raise NotDone("the title is empty", 'tell it in a few words, as in: barrowbook episode "Pegging out"')
    account = account_of(folder, tell)
    episodes = account.journal.episodes
    number = max((episode.number for episode in episodes), default=0) + 1
    phase = phase_now(account)
    name, text = episode_file(
        NewEpisode(
            number=number,
            title=title,
            days=last_weekend(today),
            phase=phase,
            usual=tuple(usual_lines(account)),
            to_buy=tuple(_to_buy(account, phase)),
            snags=tuple(open_snags(account)),
            currency=account.ledger.currency,
        )
    )
    _check_reads(name, text, account)
    write_new(folder / name, text)
    return folder / name


def _check_reads(name: str, text: str, account: Account) -> None:
    """NotDone where the title makes a file that does not read, as one with a sign that cannot be printed."""
    report = Report()
    source = decode(name, text.encode("utf-8", "surrogateescape"), report)
    parts = None if source is None else divide(source, report)
    owned = frozenset(one.key for one in account.journal.owned.equipment)
    reading = Reading(report=report, currency=account.ledger.currency)
    if parts is None or not isinstance(read_episode(name, parts, reading, owned), Episode):
        problem = report.problems[0]
        raise NotDone(f"{problem.found}; expected {problem.expected}", "write another title; nothing was written")


def account_of(folder: Path, tell: Tell) -> Account:
    """The journal worked out, even where it has mistakes; NotDone where it cannot be read."""
    worked = work_out(folder, tell=tell)
    if worked.account is None:
        problem = worked.mistakes[0]  # why it could not be read
        if worked.files is None:  # there is no journal that the place could be in
            raise NotDone(problem.found, problem.fix)
        raise NotDone(problem.one_line(), f"barrowbook inspect {folder}")
    _check_episodes(worked, worked.account)
    return worked.account


def _check_episodes(worked: Worked, account: Account) -> None:
    """NotDone where an episode could not be read at all: it may be the newest, and its number is taken."""
    known = {episode.file for episode in account.journal.episodes}
    for problem in worked.mistakes:
        if problem.place.file.startswith(f"{EPISODES}/") and problem.place.file not in known:
            raise NotDone(problem.one_line(), "mend this first; nothing was written")


def phase_now(account: Account) -> str | None:
    """The phase under way: that of the last episode, unless it is done, then the first that is not."""
    done = {phase.key for phase in account.phases if phase.status is Status.DONE}
    episodes = account.journal.episodes
    if episodes and episodes[-1].phase and episodes[-1].phase not in done:
        return episodes[-1].phase
    return next((phase.key for phase in account.phases if phase.key and phase.key not in done), None)


def usual_lines(account: Account, most: int = 5) -> list[NewLine]:
    """What this person uses most, as the line that brought it last."""
    items = [
        line.item for line in account.ledger.lines if line.item.kind is Kind.MATERIAL and not line.item.source.leaves
    ]
    counts = Counter(item.what for item in items)
    last = {item.what: item for item in items}
    often = sorted((what for what, count in counts.items() if count > 1), key=lambda what: (-counts[what], what))
    return [like_before(last[what]) for what in often[:most]]


def _to_buy(account: Account, phase: str | None) -> Iterable[str]:
    for one in account.phases:
        if one.key == phase:
            for match in one.matches:
                if not match.refs:
                    planned = match.planned[0]
                    quantity = f"{planned.quantity} of " if planned.quantity else ""
                    yield f"{quantity}{planned.item.what}" + (f" (against: {planned.key})" if planned.named else "")


def open_snags(account: Account) -> list[str]:
    """Snags that no later episode calls fixed, oldest first."""
    snags: list[str] = []
    for episode in account.journal.episodes:
        snags = [snag for snag in snags if not any(told.means(snag) for told in episode.fixed)]
        snags += [told.text for told in episode.snags]
    return snags
