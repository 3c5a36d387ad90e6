"""How the forecast of cost moved: what the build was forecast to come to after each episode.

Lines are never costed again: they are kept in order of date, so what stood after an episode is what the lines
up to it add up to. Matches are those of the whole journal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from builder.journal.records.journal import Journal
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.records import HoursWorked, Ledger, Line
from builder.plan.budget_records import Match, Outlook, Status
from builder.plan.matching import adds_none, came_by, lacking_of, missing_of
from builder.plan.outlook import begun_in, statuses_of
from builder.words.quantity import Quantity

T = TypeVar("T", Line, HoursWorked)


@dataclass(slots=True)
class _Answered:
    """What has answered to a match so far: its job cost, and how much came (None once that is unknown)."""

    match: Match
    job_cost: int = 0
    came: Quantity | None = None
    counted: bool = True

    def add(self, line: Line) -> None:
        self.job_cost += line.parts.job_cost
        if adds_none(line):
            return
        came = came_by(line, frozenset(self.match.refs))
        if came is None or (self.came is not None and not came.like(self.came)):
            self.counted = False
        elif self.counted:
            self.came = came if self.came is None else self.came + came

    def lacking(self) -> int:
        missing = missing_of(self.match.wanted, self.match.needed, self.came if self.counted else None)
        return lacking_of(missing, self.match.wanted, self.match.planned_cost, self.job_cost)


def forecasts_after(journal: Journal, ledger: Ledger, outlook: Outlook) -> Mapping[int, int]:
    """Forecast by episode number, minor units; empty where the build has no forecast."""
    if outlook.forecast is None or outlook.planned is None:
        return {}
    return dict(_forecasts(journal, ledger, outlook))


def _forecasts(journal: Journal, ledger: Ledger, outlook: Outlook) -> Iterator[tuple[int, int]]:
    answered = {match.key: _Answered(match) for phase in outlook.phases for match in phase.matches}
    of_line = {ref: answered[match.key] for phase in outlook.phases for match in phase.matches for ref in match.refs}
    sums: dict[str | None, Parts] = {}
    begun: set[str] = set()
    done: set[str] = set()
    all_lines, all_hours = _by_episode(journal, ledger.lines), _by_episode(journal, ledger.hours)
    for episode, lines, hours in zip(journal.episodes, all_lines, all_hours, strict=True):
        moves = [(one.phase, one.parts) for one in lines] + [(one.phase, one.parts) for one in hours]
        for phase, parts in moves:
            sums[phase] = sums.get(phase, NOTHING).plus(parts)
        for line in lines:
            if line.ref in of_line:
                of_line[line.ref].add(line)
        begun |= begun_in(episode)
        done |= {one.text for one in episode.done}
        statuses = statuses_of(done, begun, sums)
        yield episode.number, sum(_phase_forecasts(outlook, answered, sums, statuses))


def _by_episode(journal: Journal, told: Iterable[T]) -> Sequence[list[T]]:
    """Lines, or hours, of each episode in turn."""
    found: dict[int, list[T]] = {episode.number: [] for episode in journal.episodes}
    for one in told:
        found[one.episode].append(one)
    return list(found.values())


def _phase_forecasts(
    outlook: Outlook,
    answered: Mapping[str, _Answered],
    sums: Mapping[str | None, Parts],
    statuses: Mapping[str | None, Status],
) -> Iterator[int]:
    for phase in outlook.phases:
        cost, planned = sums.get(phase.key, NOTHING).job_cost, phase.planned or 0
        status = statuses.get(phase.key, Status.NOT_BEGUN) if phase.key is not None else Status.DONE
        if status is Status.DONE:
            yield cost
        elif status is Status.NOT_BEGUN:
            yield planned
        elif phase.matches:
            yield cost + sum(answered[match.key].lacking() for match in phase.matches)
        else:
            yield cost + max(planned - cost, 0)
