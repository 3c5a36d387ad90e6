"""Which real lines answer to which planned ones: by `against`, or by the same material in the phase.

Lines that share a planned line, and planned lines that share a real one, stand together in one match.
Nothing else is matched; near misses are told.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from builder.journal.records.item import Source, Told
from builder.ledger.amortise import share_of
from builder.ledger.records import Line, OnReceipt
from builder.plan.budget_records import Budgeted, Match
from builder.plan.variance import cost_variance
from builder.words.money import Money
from builder.words.problem import Problem, Weight
from builder.words.quantity import Quantity
from builder.words.rounding import half_up


def match_lines(budgeted: Sequence[Budgeted], lines: Sequence[Line]) -> tuple[Match, ...]:
    """Every planned line in exactly one match, in the plan's order."""
    answers = {line.ref: _answers_to(line, budgeted) for line in lines}
    groups = _groups([one.key for one in budgeted], answers.values())
    return tuple(
        _match([one for one in budgeted if one.key in group], [line for line in lines if group & answers[line.ref]])
        for group in groups
    )


def _answers_to(line: Line, budgeted: Sequence[Budgeted]) -> frozenset[str]:
    if line.item.against:
        return frozenset(line.item.against)
    what = _bare(line.item.what)
    same = (one.key for one in budgeted if one.phase == line.phase and _bare(one.item.what) == what)
    return frozenset(same)


def _bare(text: str) -> str:
    return " ".join(text.casefold().split())


def _groups(keys: Sequence[str], answers: Iterable[frozenset[str]]) -> list[frozenset[str]]:
    """Keys that share a real line, together; in the order of their first."""
    group = {key: frozenset({key}) for key in keys}
    for together in answers:
        known = [key for key in together if key in group]
        if len(known) > 1:
            merged = frozenset().union(*(group[key] for key in known))
            group.update(dict.fromkeys(merged, merged))
    return list(dict.fromkeys(group[key] for key in keys))


def _match(planned: list[Budgeted], lines: list[Line]) -> Match:
    planned_quantity = _sum([one.used for one in planned])
    quantity = _sum([line.used for line in lines if not adds_none(line)])
    if planned_quantity is not None and (quantity is None or not quantity.like(planned_quantity)):
        quantity = None
    planned_cost, job_cost = sum(one.job_cost for one in planned), sum(line.parts.job_cost for line in lines)
    counted = quantity is not None and planned_quantity is not None
    refs = frozenset(line.ref for line in lines)
    bought = _sum([had_by(line, refs) for line in lines if not adds_none(line)])
    came = _sum([came_by(line, refs) for line in lines if not adds_none(line)])
    wanted, needed = _sum([one.quantity for one in planned]), _sum([one.needed for one in planned])
    missing = missing_of(wanted, needed, came) if lines else wanted
    return Match(
        key=" + ".join(one.key for one in planned),
        phase=planned[0].phase,
        planned=tuple(planned),
        refs=tuple(line.ref for line in lines),
        planned_quantity=planned_quantity,
        quantity=quantity,
        wanted=wanted,
        needed=needed,
        bought=bought,
        missing=missing,
        planned_cost=planned_cost,
        job_cost=job_cost,
        variance=cost_variance(
            planned_quantity=planned_quantity.value if counted and planned_quantity else None,
            planned_cost=planned_cost,
            actual_quantity=quantity.to_like(planned_quantity) if quantity and planned_quantity else None,
            actual_cost=job_cost,
        ),
        lacking=lacking_of(missing, wanted, planned_cost, job_cost),
    )


def adds_none(line: Line) -> bool:
    """A late charge on something (a deposit kept) says no quantity and needs none."""
    return line.used is None and line.item.deposit_back is not None


def had_by(line: Line, refs: AbstractSet[str]) -> Quantity | None:
    """How much a line brings toward a plan, among lines with these refs; None where nobody counted.

    What is drawn was bought once: it counts here only where the line that bought it does not. A return takes
    away what had come; what is sold or spoilt had come all the same.
    """
    if line.item.source is Source.STOCK:
        return _drawn(line, refs)
    if line.bought is not None or line.used is None:
        return line.bought
    return replace(line.used, value=Fraction(0)) if line.item.source.leaves else line.used


def came_by(line: Line, refs: AbstractSet[str]) -> Quantity | None:
    """The part of it that came for this build: what went elsewhere is lacking here. None where only its money is known:
    of a load of unknown cost, and of what was drawn from stock.
    """
    had, item = had_by(line, refs), line.item
    if had is None or item.share is None:
        return had
    if isinstance(item.share, Money) and (item.source is Source.STOCK or item.cost is Told.UNKNOWN):
        return None
    return replace(had, value=had.value * share_of(item, line.priced or OnReceipt(goods=0)))


def _drawn(line: Line, refs: AbstractSet[str]) -> Quantity | None:
    if line.used is None:
        return None
    from_others = [draw.quantity for draw in line.draws if draw.ref not in refs]
    return _sum(from_others) if from_others else replace(line.used, value=Fraction(0))


def _sum(quantities: Sequence[Quantity | None]) -> Quantity | None:
    """Their sum; None if there is none, one is unknown, or they are not in one unit."""
    total: Quantity | None = None
    for one in quantities:
        if one is None or (total is not None and not one.like(total)):
            return None
        total = one if total is None else total + one
    return total


def missing_of(wanted: Quantity | None, needed: Quantity | None, came: Quantity | None) -> Quantity | None:
    """How much of what is wanted has not come; None where nobody counted both in one unit.

    Of a load that is to be shared `needed` is the part for this build, as `came` is of what was bought.
    """
    if wanted is None or needed is None or came is None or not came.like(needed):
        return None
    lacks = max(needed.value - came.to_like(needed), Fraction(0))
    return replace(wanted, value=wanted.value * lacks / needed.value if lacks else Fraction(0))


def lacking_of(missing: Quantity | None, wanted: Quantity | None, planned_cost: int, job_cost: int) -> int:
    """Quantity not yet bought x planned price; else, as for lump sums, what is left of the money. Never below zero."""
    if missing is None or wanted is None or not wanted.value:
        return max(planned_cost - job_cost, 0)
    return half_up(planned_cost * missing.value / wanted.value)


def near_misses(matches: Sequence[Match], lines: Sequence[Line]) -> tuple[Problem, ...]:
    """Real lines that nothing planned was matched with, though something planned sounds like it."""
    answered = {ref for match in matches for ref in match.refs}
    waiting = [one for match in matches if not match.refs for one in match.planned]
    if not waiting:
        return ()
    found = (_near(line, waiting) for line in lines if line.ref not in answered and not line.item.source.leaves)
    return tuple(one for one in found if one is not None)


@lru_cache(maxsize=1024)
def _nearest(name: str, names: tuple[str, ...]) -> list[str]:
    """What sounds most like a name. Kept: a long journal buys the same things again and again."""
    return difflib.get_close_matches(name, names, n=1, cutoff=0.75)


def _near(line: Line, waiting: Sequence[Budgeted]) -> Problem | None:
    names = {_bare(one.item.what): one for one in waiting if one.phase == line.phase}
    near = _nearest(_bare(line.item.what), tuple(names))
    elsewhere = [one for one in waiting if _bare(one.item.what) == _bare(line.item.what)]
    planned = names[near[0]] if near else elsewhere[0] if elsewhere else None
    if planned is None:
        return None
    where = "" if near else f" in {planned.phase}"
    return Problem(
        place=line.item.place,
        found=f"{line.item.what} answers to no planned line, and {planned.item.what}{where} has none to answer it",
        expected="against: on lines that answer to a planned one by another name or phase",
        fix=f"write against: {planned.key} if that is what it is" if planned.named else "give the planned line a key",
        weight=Weight.WARNING,
    )
