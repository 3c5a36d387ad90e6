"""Earned value of a journal's phases and build, from budget, progress and job cost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.journal import Journal
from builder.plan.budget_records import Outlook, PhaseOutlook, Status
from builder.plan.cost_records import EarnedValue
from builder.plan.earned import build_earned_value, earned_amount, earned_value


@dataclass(frozen=True, slots=True, kw_only=True)
class Earned:
    """Earned value of every phase that has a budget, and of the build (None without any budget)."""

    phases: tuple[tuple[PhaseOutlook, EarnedValue], ...]
    build: EarnedValue | None


def earn(journal: Journal, outlook: Outlook) -> Earned:
    """The earned value of a journal."""
    phases = _phase_values(journal, outlook)
    return Earned(phases=phases, build=_build_value(phases, outlook))


def _phase_values(journal: Journal, outlook: Outlook) -> tuple[tuple[PhaseOutlook, EarnedValue], ...]:
    """Each phase that has a budget, with its earned value; unknown where it is under way and nobody said how far.

    The plan sets no dates for its money, so there is no planned value: schedule figures are left out.
    """
    return tuple((phase, _phase(journal, phase)) for phase in outlook.phases if phase.planned is not None)


def _build_value(values: Sequence[tuple[PhaseOutlook, EarnedValue]], outlook: Outlook) -> EarnedValue | None:
    """The build's; cost outside every phase is actual cost without any budget. None without a budget."""
    if not values:
        return None
    unplanned = sum(phase.job_cost for phase in outlook.phases if phase.planned is None)
    outside = earned_value(budget=0, earned=0, actual=unplanned)
    return build_earned_value([*(value for _, value in values), outside])


def _phase(journal: Journal, phase: PhaseOutlook) -> EarnedValue:
    budget = phase.planned or 0
    share = _share(journal, phase)
    earned = None if share is None else earned_amount(budget, share)
    return earned_value(budget=budget, earned=earned, actual=phase.job_cost)


def _share(journal: Journal, phase: PhaseOutlook) -> Fraction | None:
    if phase.status is Status.DONE:
        return Fraction(1)
    told = [one.part for episode in journal.episodes for one in episode.progress if one.phase == phase.key]
    if told:
        return told[-1]
    return Fraction(0) if phase.status is Status.NOT_BEGUN else None
