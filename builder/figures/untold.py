"""Why a figure that has a name cannot be told, and what would let it be told."""

from __future__ import annotations

from fractions import Fraction

from builder.figures.account import Account
from builder.plan.budget_records import Match, PhaseOutlook
from builder.plan.time_records import NoFinish, Why

Reason = tuple[str, str]
"""Why, and what to add."""

_NO_FINISH = {
    Why.NO_PHASES: ("the plan has no phases", "add phases: with hours: to plan.yaml"),
    Why.FLAWED: ("phases wait for each other", "take one of them out of an after:"),
    Why.NO_TIME: ("there are no hours to work in", "check work_week: and away: in journal.yaml"),
    Why.TOO_FAR: ("it is too far away", "check the hours: of the plan, the work week and the dates of the episodes"),
}
_AREAS = ("area", "ft2", "yd2", "m2")
_OF_SETTINGS = {
    **dict.fromkeys(_AREAS, ("the settings give no floor area", "add floor_area: 10 ft x 14 ft to journal.yaml")),
    **dict.fromkeys(
        ("year", "year of service"), ("the settings give no service life", "add service_life: 20 years to journal.yaml")
    ),
    **dict.fromkeys(("hour", "hour worked"), ("no episode gives hours", "add hours: to the episodes")),
}


def why_build(name: str, account: Account) -> Reason:
    """Why a figure of the whole build cannot be told."""
    if name == "planned":
        return "no phase has a plan", "add planned: to the phases of plan.yaml"
    if name == "forecast":
        return _no_forecast(account)
    if name.startswith("contingency"):
        return _no_contingency(account)
    if name == "ready by":
        return "no date is promised", "add ready_by: to journal.yaml"
    return _no_date(account)


def why_phase(word: str, phase: PhaseOutlook, account: Account) -> Reason:
    """Why `planned` or `forecast` of a phase cannot be told."""
    name = account.phase_name(phase.key)
    done = "" if word == "planned" else ", or done: in an episode once it is finished"
    why = f"{name} has no plan" if word == "planned" else f"{name} is not done and has no plan"
    return why, f"add planned: to it in plan.yaml{done}"


def why_quantity(verb: str, match: Match) -> Reason:
    """Why a quantity of planned lines cannot be told."""
    if verb == "planned":
        return f"the plan gives no quantity of {match.key}", "add quantity: to it in plan.yaml"
    if not match.refs:
        return f"nothing answers to {match.key} yet", "name it when something does"
    return f"what answers to {match.key} is not counted in one unit", "add quantity: to each of those lines"


def why_rate(unit: str, account: Account) -> Reason | None:
    """Why an amount per area, year or hour cannot be told; None where the unit is none of them."""
    if unit in _AREAS and account.journal.settings.floor_area is not None:
        return None
    return _OF_SETTINGS.get(unit)


def _no_forecast(account: Account) -> Reason:
    silent = [phase for phase in account.phases if phase.forecast is None]
    if not silent:
        return "the plan has no phases", "add phases: with planned: to plan.yaml"
    names = ", ".join(account.phase_name(phase.key) or "" for phase in silent)
    return (
        f"not done and without a plan: {names}",
        "add planned: to each of them in plan.yaml, or done: in an episode once it is finished",
    )


def _no_contingency(account: Account) -> Reason:
    if isinstance(account.journal.plan.contingency, Fraction):
        return "contingency is a part of the plan, and no phase has a plan", "add planned: to the phases of plan.yaml"
    return "the plan has no contingency", "add contingency: 10% to plan.yaml"


def _no_date(account: Account) -> Reason:
    settings, timing = account.journal.settings, account.timing
    if settings.work_week is None:
        return "the settings have no work week", "add work_week: {saturday: 7, sunday: 5} to journal.yaml"
    hours = "hours: [8, 14, 24] (low, likely, high)"
    if timing is None and not account.journal.episodes and settings.begun is None:
        return "nothing has begun", "add begun: to journal.yaml"
    if timing is None:
        return "the plan gives no hours", f"add {hours} to the phases of plan.yaml"
    if isinstance(timing.finish, NoFinish):
        if timing.finish.why in _NO_FINISH:
            return _NO_FINISH[timing.finish.why]
        names = ", ".join(account.phase_name(key) or key for key in timing.finish.keys)
        return f"the plan gives no hours for {names}", f"add {hours} there in plan.yaml"
    return "no date is promised", "add ready_by: to journal.yaml"
