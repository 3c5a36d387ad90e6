"""The forecast of cost: by phase, for the build, and what the overruns take of the contingency.

Done: its job cost. Not begun: what was planned. Under way: job cost so far and what its planned lines still
lack. A phase that is not done and has no plan has no forecast, and then neither has the build.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from builder.journal.records.episode import Episode
from builder.journal.records.journal import Journal
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.records import Ledger, Line
from builder.plan.budget_records import Match, Outlook, PhaseBudget, PhaseOutlook, Status
from builder.plan.matching import match_lines
from builder.words.money import Money
from builder.words.rounding import half_up


def look_ahead(
    journal: Journal, ledger: Ledger, budget: Sequence[PhaseBudget], by_phase: Mapping[str | None, Parts]
) -> Outlook:
    """The outlook of every phase in the plan's order, then phases outside it, then the row "no phase"."""
    lines = list(ledger.lines)
    matches = match_lines([one for phase in budget for one in phase.lines], lines)
    planned = {phase.key: phase for phase in budget}
    keys = [*planned, *(key for key in by_phase if key not in planned and key is not None)]
    if by_phase.get(None, NOTHING) != NOTHING:
        keys.append(None)  # type: ignore[arg-type]  # the row "no phase" has no key
    statuses = phase_statuses(journal, by_phase)
    phases = tuple(_phase(key, planned.get(key), statuses, by_phase.get(key, NOTHING), matches, lines) for key in keys)
    return _whole(journal, phases)


def phase_statuses(journal: Journal, by_phase: Mapping[str | None, Parts]) -> dict[str | None, Status]:
    """Done where an episode says so; under way where there are costs, hours or progress."""
    done = {told.text for episode in journal.episodes for told in episode.done}
    begun = {key for episode in journal.episodes for key in begun_in(episode)}
    return statuses_of(done, begun, by_phase)


def begun_in(episode: Episode) -> set[str]:
    """The phases that an episode begins by what it says, whatever they cost."""
    own = {episode.phase} if episode.phase is not None else set()
    return own | {one.phase for one in episode.progress if one.part}


def statuses_of(
    done: Iterable[str], begun: Iterable[str], by_phase: Mapping[str | None, Parts]
) -> dict[str | None, Status]:
    """Of phases with these sums, all so far; what is not in it has not begun."""
    costing = (key for key, parts in by_phase.items() if key is not None and parts != NOTHING)
    statuses: dict[str | None, Status] = dict.fromkeys([*begun, *costing], Status.UNDER_WAY)
    statuses.update(dict.fromkeys(done, Status.DONE))
    return statuses


def _phase(
    key: str | None,
    budget: PhaseBudget | None,
    statuses: Mapping[str | None, Status],
    parts: Parts,
    matches: Sequence[Match],
    lines: Sequence[Line],
) -> PhaseOutlook:
    own = tuple(match for match in matches if match.phase == key and key is not None)
    answered = {ref for match in matches for ref in match.refs}
    status = Status.DONE if key is None else statuses.get(key, Status.NOT_BEGUN)
    planned = budget.planned if budget else None
    return PhaseOutlook(
        key=key,
        status=status,
        planned=planned,
        job_cost=parts.job_cost,
        forecast=_forecast(status, planned, parts.job_cost, own),
        unpriced=parts.unpriced,
        matches=own,
        not_planned=tuple(line.ref for line in lines if line.phase == key and line.ref not in answered),
    )


def _forecast(status: Status, planned: int | None, job_cost: int, matches: Sequence[Match]) -> int | None:
    if status is Status.DONE:
        return job_cost
    if planned is None:
        return None
    if status is Status.NOT_BEGUN:
        return planned
    lacking = sum(match.lacking for match in matches) if matches else max(planned - job_cost, 0)
    return job_cost + lacking


def _whole(journal: Journal, phases: tuple[PhaseOutlook, ...]) -> Outlook:
    budgets = [phase.planned for phase in phases if phase.key is not None]
    forecasts = [phase.forecast for phase in phases]
    planned = _sum(budgets) if any(one is not None for one in budgets) else None
    return Outlook(
        phases=phases,
        planned=planned,
        forecast=_sum(forecasts) if forecasts and None not in forecasts else None,
        contingency=_contingency(journal, planned),
        taken=sum(phase.overrun for phase in phases) if planned is not None else 0,
    )


def _sum(amounts: Sequence[int | None]) -> int:
    return sum(amount or 0 for amount in amounts)


def _contingency(journal: Journal, planned: int | None) -> int | None:
    told = journal.plan.contingency
    if isinstance(told, Money):
        return told.minor
    if isinstance(told, Fraction) and planned is not None:
        return half_up(told * planned)
    return None
