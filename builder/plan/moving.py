"""How the forecast of cost moved: what the build was forecast to come to after each episode.

Lines are never costed again: they are kept in order of date, so what stood after an episode is what the lines
up to it add up to. Matches are those of the whole journal.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.journal import Journal
from builder.ledger.records import Ledger, Line
from builder.plan.budget_records import Match, Outlook, Status
from builder.plan.matching import adds_none, had_by
from builder.words.quantity import Quantity
from builder.words.rounding import half_up


@dataclass(slots=True)
class _Answered:
    """What has answered to a match so far: its job cost, and how much was bought (None once that is unknown)."""

    match: Match
    job_cost: int = 0
    bought: Quantity | None = None
    counted: bool = True

    def add(self, line: Line) -> None:
        self.job_cost += line.parts.job_cost
        if adds_none(line):
            return
        bought = had_by(line, frozenset(self.match.refs))
        if bought is None or (self.bought is not None and not bought.like(self.bought)):
            self.counted = False
        elif self.counted:
            self.bought = bought if self.bought is None else self.bought + bought

    def lacking(self) -> int:
        wanted = _wanted(self.match)
        if not self.counted or self.bought is None or wanted is None or not self.bought.like(wanted):
            return max(self.match.planned_cost - self.job_cost, 0)
        missing = max(wanted.value - self.bought.to_like(wanted), Fraction(0))
        return half_up(self.match.planned_cost * missing / wanted.value)


def _wanted(match: Match) -> Quantity | None:
    total: Quantity | None = None
    for one in match.planned:
        if one.quantity is None or (total is not None and not one.quantity.like(total)):
            return None
        total = one.quantity if total is None else total + one.quantity
    return total if total is not None and total.value else None


def forecasts_after(journal: Journal, ledger: Ledger, outlook: Outlook) -> Mapping[int, int]:
    """Forecast by episode number, minor units; empty where the build has no forecast."""
    if outlook.forecast is None or outlook.planned is None:
        return {}
    return dict(_forecasts(journal, ledger, outlook))


def _forecasts(journal: Journal, ledger: Ledger, outlook: Outlook) -> Iterator[tuple[int, int]]:
    answered = {match.key: _Answered(match) for phase in outlook.phases for match in phase.matches}
    of_line = {ref: answered[match.key] for phase in outlook.phases for match in phase.matches for ref in match.refs}
    costs: dict[str | None, int] = {}
    statuses: dict[str | None, Status] = {}
    lines = iter(_by_episode(journal, ledger))
    for episode in journal.episodes:
        for line in next(lines):
            costs[line.phase] = costs.get(line.phase, 0) + line.parts.job_cost
            statuses.setdefault(line.phase, Status.UNDER_WAY)
            if line.ref in of_line:
                of_line[line.ref].add(line)
        if episode.phase is not None:
            statuses.setdefault(episode.phase, Status.UNDER_WAY)
        statuses |= {told.text: Status.DONE for told in episode.done}
        yield episode.number, sum(_phase_forecasts(outlook, answered, costs, statuses))


def _by_episode(journal: Journal, ledger: Ledger) -> Sequence[list[Line]]:
    lines: dict[int, list[Line]] = {episode.number: [] for episode in journal.episodes}
    for line in ledger.lines:
        lines[line.episode].append(line)
    return list(lines.values())


def _phase_forecasts(
    outlook: Outlook,
    answered: Mapping[str, _Answered],
    costs: Mapping[str | None, int],
    statuses: Mapping[str | None, Status],
) -> Iterator[int]:
    for phase in outlook.phases:
        cost, planned = costs.get(phase.key, 0), phase.planned or 0
        status = statuses.get(phase.key, Status.NOT_BEGUN) if phase.key is not None else Status.DONE
        if status is Status.DONE:
            yield cost
        elif status is Status.NOT_BEGUN:
            yield planned
        elif phase.matches:
            yield cost + sum(answered[match.key].lacking() for match in phase.matches)
        else:
            yield cost + max(planned - cost, 0)
