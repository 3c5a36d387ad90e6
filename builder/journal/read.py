"""The first step: the journal's folder to a `Journal`, with every mistake found on the way."""

from __future__ import annotations

from dataclasses import dataclass

from builder.journal.check import check_journal
from builder.journal.episode_reader import Unplaced, read_episode
from builder.journal.files import OWNED, PLAN, SETTINGS, Files
from builder.journal.known import From, Known
from builder.journal.owned_reader import read_owned
from builder.journal.plan_reader import read_plan
from builder.journal.reading import Reading
from builder.journal.records.episode import Episode
from builder.journal.records.journal import Journal
from builder.journal.records.plan import Owned
from builder.journal.records.settings import Settings
from builder.journal.records.written import Node
from builder.journal.report import Lost, Report
from builder.journal.settings_reader import read_settings
from builder.journal.text import MOST_KEYS, decode, divide
from builder.journal.tree import read_tree
from builder.words.problem import Problem
from builder.words.telling import Tell, each, quiet


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """The journal (None when it has no usable settings) and the problems of reading it.

    `whole` is False when lines, episodes or other parts could not be read and are left out: sums of what is
    left say nothing, and names that lead to it cannot be looked up. `unplaced` are the episodes without a date or a
    title, where nothing else was lost: what they name could be looked up if they stood among the others.
    """

    journal: Journal | None
    problems: tuple[Problem, ...]
    whole: bool = True
    unplaced: tuple[Episode, ...] = ()


def read_journal(files: Files, tell: Tell = quiet, known: Known | None = None) -> Read:
    """Read every file; a file that cannot be read does not keep the others from being read.

    `known` are episodes read before: what is in it is not read again.
    """
    report = Report()
    known = known or Known()
    known.begin()
    for file in files.unread:
        report.lose(*_PARTS.get(file, (Lost.EPISODE,)))
    settings, reading, owned, keys = _terms(files, report)
    plan = read_plan(_tree(files, PLAN, report), PLAN, reading, keys)
    told = each(files.episodes, len(files.episodes), "episodes read", tell)
    read = [_episode((file, raw, reading.currency, keys), reading, known) for file, raw in told]
    episodes = (one for one in read if isinstance(one, Episode))
    if settings is None:
        return Read(journal=None, problems=report.problems, whole=False)
    journal = Journal(
        settings=settings,
        plan=plan,
        owned=owned,
        episodes=tuple(sorted(episodes, key=lambda one: (one.date, one.number))),
        planned=files.text(PLAN) is not None or PLAN in files.unread,
    )
    unplaced = tuple(one.episode for one in read if isinstance(one, Unplaced))
    check_journal(journal, unplaced, files.pictures, report)
    alone = report.lost_at_most(Lost.EPISODE, Lost.SNAG) and None not in read and not files.unread
    return Read(journal=journal, problems=report.problems, whole=report.whole, unplaced=unplaced if alone else ())


def _terms(files: Files, report: Report) -> tuple[Settings | None, Reading, Owned, frozenset[str]]:
    """The settings, what else reading an episode rests on, and the machines that there are."""
    settings, reading = read_settings(_tree(files, SETTINGS, report), SETTINGS, Reading(report=report))
    owned = read_owned(_tree(files, OWNED, report), OWNED, reading)
    return settings, reading, owned, frozenset(one.key for one in owned.equipment)


_PARTS = {PLAN: (Lost.PHASE, Lost.PLANNED_LINE), OWNED: (Lost.OWNED,)}


def _tree(files: Files, file: str, report: Report) -> Node | None:
    """What a file says; None when there is no such file, or when it cannot be read."""
    raw = files.text(file)
    if raw is None:
        return None
    source = decode(file, raw, report, MOST_KEYS)
    tree = None if source is None else read_tree(source, report)
    if tree is None:
        report.lose(*_PARTS.get(file, ()))
    return tree


def _episode(read_from: From, reading: Reading, known: Known) -> Episode | Unplaced | None:
    if (episode := known.get(read_from)) is not None:
        return episode
    before = reading.report.count
    file, raw, _, owned = read_from
    source = decode(file, raw, reading.report)
    parts = None if source is None else divide(source, reading.report)
    read = None if parts is None else read_episode(file, parts, reading, owned)
    if not isinstance(read, Episode):
        reading.report.lose(Lost.EPISODE)
    elif reading.report.count == before:
        known.keep(read_from, read)
    return read
