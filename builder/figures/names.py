"""Figures by name, as stories and `stated` write them.

spent                      this episode's (in the settings: the build's)
spent to date              over all episodes up to and including this one
job cost of foundation     a phase, by key or name; or a line, by id
spent of the build         the whole build
job cost per ft2           the build's, divided by floor area, service life or hours worked
footing.bags               a result of a take-off
bags used of mix           of a planned line (or a line's id): used, bought, planned
contingency left, likely date, safe date, ready by, chance, unpriced, hours ...
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.account import Account
from builder.figures.figure import (
    MONEY,
    Bound,
    CountFigure,
    DateFigure,
    Figure,
    MoneyFigure,
    QuantityFigure,
    ShareFigure,
    UntoldFigure,
    amount_of,
    bound_of,
)
from builder.figures.untold import why_build, why_phase, why_quantity, why_rate
from builder.ledger.parts import Parts
from builder.plan.budget_records import Match, PhaseOutlook
from builder.plan.time_records import Finish
from builder.words.quantity import Quantity
from builder.words.rounding import half_up
from builder.words.units import singular

_COUNTS = ("unpriced", "unvalued")
_WORDS = {key.replace("_", " "): key for key in MONEY}
_USED = re.compile(r"(?P<unit>\S+) (?P<verb>used|bought|planned) of (?P<key>.+)")
_BUILD = frozenset({"the build", "the whole build", "build"})


@dataclass(frozen=True, slots=True, kw_only=True)
class NoFigure:
    """A name that is no figure; `near` is what was perhaps meant, or ""."""

    name: str
    near: str


def look_up(name: str, account: Account, episode: int | None = None, *, guess: bool = True) -> Figure | NoFigure:
    """The figure of a name, as seen from an episode (or from the build where `episode` is None).

    `guess` looks for what was perhaps meant, which takes a thousand times as long as finding what is there.
    """
    wanted = " ".join(name.casefold().split())
    figure = _find(wanted, account, episode) or _untold(wanted, account)
    if figure is not None:
        return figure
    known = [*all_names(account, episode), *_BUILD_FIGURES] if guess else []
    near = difflib.get_close_matches(wanted, known, n=1, cutoff=0.6)
    return NoFigure(name=name, near=near[0] if near else "")


def all_names(account: Account, episode: int | None = None) -> Iterator[str]:
    """Every name that can be looked up, those of phases and take-offs included."""
    plain = [*_WORDS, *_COUNTS, "hours"]
    yield from plain
    if episode is not None:
        yield from (f"{word} to date" for word in plain)
    yield from (f"{word} of the build" for word in plain)
    for phase in account.phases:
        if phase.key is not None:
            told = [
                word
                for word, amount in (("planned", phase.planned), ("forecast", phase.forecast))
                if amount is not None
            ]
            yield from (f"{word} of {phase.key}" for word in [*plain, *told])
    yield from _build_names(account)
    for takeoff in account.takeoffs:
        yield from (f"{takeoff.name}.{result.key}" for result in takeoff.results)
    for phase in account.phases:
        for match in phase.matches:
            for verb in ("used", "bought", "planned"):
                quantity = _of_match(match, verb, account)
                if quantity is not None:
                    yield f"{quantity.unit.symbol} {verb} of {match.key}"


def _build_names(account: Account) -> Iterator[str]:
    yield from (name for name in _BUILD_FIGURES if _of_build(name, account) is not None)
    for unit in ("area", "year", "hour"):
        yield from (f"{word} per {unit}" for word in ("spent", "job cost") if _divisor(unit, account))


def _find(name: str, account: Account, episode: int | None) -> Figure | None:
    used = _USED.fullmatch(name)
    if used:
        return _quantity(used["unit"], used["verb"], used["key"], account)
    if re.fullmatch(r"[\w-]+\.[\w-]+", name):
        return _takeoff(name, account)
    if " per " in name:
        return _rate(name, account)
    word, of, scope = name.partition(" of ")
    if of:
        return _scoped(word, scope, account)
    if name.endswith(" to date") and episode is not None:
        return _part(name.removesuffix(" to date"), account.sums.running[episode], name)
    parts = account.sums.whole if episode is None else account.sums.by_episode[episode]
    return _part(name, parts, name) or _of_build(name, account)


def _part(word: str, parts: Parts, name: str) -> Figure | None:
    if word in _WORDS:
        key = _WORDS[word]
        return MoneyFigure(name=name, minor=amount_of(parts, key), bound=bound_of(parts, key))
    if word in _COUNTS:
        return CountFigure(name=name, count=getattr(parts, word))
    if word == "hours":
        return QuantityFigure(name=name, quantity=Quantity.of(parts.hours, "hour"))
    return None


def _scoped(word: str, scope: str, account: Account) -> Figure | None:
    name = f"{word} of {scope}"
    if scope in _BUILD:
        return _part(word, account.sums.whole, name) or _of_build(word, account)
    phase = _phase_called(scope, account)
    if phase is not None:
        parts = account.sums.by_phase.get(phase.key, Parts())
        if word in _OF_PHASE:
            amount = phase.planned if word == "planned" else phase.forecast
            bound = bound_of(parts, "job_cost") if word == "forecast" else Bound.EXACT
            return None if amount is None else MoneyFigure(name=name, minor=amount, bound=bound)
        return _part(word, parts, name)
    line = next((one for one in account.ledger.lines if one.ref.casefold() == scope), None)
    return None if line is None else _part(word, line.parts, name)


def _phase_called(scope: str, account: Account) -> PhaseOutlook | None:
    """The phase of a key or name."""
    return next(
        (
            phase
            for phase in account.phases
            if phase.key is not None
            and scope in (phase.key.casefold(), (account.phase_name(phase.key) or "").casefold())
        ),
        None,
    )


def _untold(name: str, account: Account) -> UntoldFigure | None:
    """A figure that has a name but cannot be told."""
    reason = _reason(name, account)
    return None if reason is None else UntoldFigure(name=name, why=reason[0], add=reason[1])


def _reason(name: str, account: Account) -> tuple[str, str] | None:
    used = _USED.fullmatch(name)
    if used:
        match = _match_called(used["key"], account)
        unit = match.planned_quantity.unit.symbol if match and match.planned_quantity else used["unit"]
        return why_quantity(used["verb"], match) if match and singular(unit) == singular(used["unit"]) else None
    word, per, unit = name.partition(" per ")
    if per:
        return why_rate(unit, account) if word in _WORDS else None
    word, of, scope = name.partition(" of ")
    if not of or scope in _BUILD:
        return why_build(word, account) if word in _BUILD_FIGURES else None
    phase = _phase_called(scope, account)
    return why_phase(word, phase, account) if phase and word in _OF_PHASE else None


_OF_PHASE = ("planned", "forecast")
_BUILD_FIGURES = (
    "planned",
    "forecast",
    "contingency",
    "contingency taken",
    "contingency left",
    "ready by",
    "likely date",
    "safe date",
    "chance",
    "episodes",
    "lines",
)


def _of_build(name: str, account: Account) -> Figure | None:
    outlook = account.outlook
    amounts = {
        "planned": outlook.planned,
        "forecast": outlook.forecast,
        "contingency": outlook.contingency,
        "contingency taken": outlook.taken if outlook.contingency is not None else None,
        "contingency left": outlook.left,
    }
    if name in amounts:
        minor = amounts[name]
        return None if minor is None else MoneyFigure(name=name, minor=minor, bound=_plan_bound(name, account))
    if name == "episodes":
        return CountFigure(name=name, count=len(account.journal.episodes))
    if name == "lines":
        return CountFigure(name=name, count=len(account.ledger.lines))
    return _of_time(name, account)


def _plan_bound(name: str, account: Account) -> Bound:
    if not account.sums.whole.unpriced or name in ("planned", "contingency"):
        return Bound.EXACT
    return Bound.AT_MOST if name == "contingency left" else Bound.AT_LEAST


def _of_time(name: str, account: Account) -> Figure | None:
    ready_by, timing = account.journal.settings.ready_by, account.timing
    if name == "ready by":
        return None if ready_by is None else DateFigure(name=name, day=ready_by)
    if timing is None or not isinstance(timing.finish, Finish):
        return None
    if name == "likely date":
        return DateFigure(name=name, day=timing.finish.p50)
    if name == "safe date":
        return DateFigure(name=name, day=timing.finish.p80)
    if name == "chance" and timing.chance is not None:
        return ShareFigure(name=name, share=timing.chance)
    return None


def _rate(name: str, account: Account) -> Figure | None:
    word, _, unit = name.partition(" per ")
    divisor = _divisor(unit, account)
    figure = _part(word, account.sums.whole, name)
    if divisor is None or not isinstance(figure, MoneyFigure):
        return None
    return MoneyFigure(
        name=name, minor=half_up(Fraction(figure.minor) / divisor[0]), bound=figure.bound, per=divisor[1]
    )


def _divisor(unit: str, account: Account) -> tuple[Fraction, str] | None:
    """What "per area", "per ft2", "per year" and "per hour" divide by, and the unit's symbol."""
    settings, hours = account.journal.settings, account.sums.whole.hours
    area = settings.floor_area
    if area is not None and unit in ("area", area.unit.symbol):
        return area.value, area.unit.symbol
    if unit in ("year", "year of service") and settings.service_life:
        return settings.service_life, "year"
    if unit in ("hour", "hour worked") and hours:
        return hours, "hour"
    return None


def _takeoff(name: str, account: Account) -> Figure | None:
    of, _, key = name.partition(".")
    takeoff = next((one for one in account.takeoffs if one.name.casefold() == of), None)
    found = takeoff.get(key) if takeoff else None
    return None if found is None else QuantityFigure(name=name, quantity=found)


def _quantity(unit: str, verb: str, key: str, account: Account) -> Figure | None:
    name = f"{unit} {verb} of {key}"
    match = _match_called(key, account)
    if match is not None:
        quantity = _of_match(match, verb, account)
    else:
        line = next((one for one in account.ledger.lines if one.ref.casefold() == key), None)
        quantity = None if line is None else {"used": line.used, "bought": line.bought}.get(verb)
    if quantity is None or singular(quantity.unit.symbol).casefold() != singular(unit):
        return None
    return QuantityFigure(name=name, quantity=quantity)


def _match_called(key: str, account: Account) -> Match | None:
    return next((one for phase in account.phases for one in phase.matches if one.key.casefold() == key), None)


def _of_match(match: Match, verb: str, account: Account) -> Quantity | None:
    """A planned line's quantity; what was used in another unit than was planned is told in its own."""
    if verb != "used" or match.quantity is not None:
        return {"used": match.quantity, "bought": match.bought, "planned": match.planned_quantity}[verb]
    used = [line.used for ref in match.refs if (line := account.line(ref)) and line.used is not None]
    if not used or not all(one.like(used[0]) for one in used):
        return None
    return sum(used[1:], used[0])
