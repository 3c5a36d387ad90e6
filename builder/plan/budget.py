"""The plan's lines costed: they amortise as real lines do, all-in, with tax inside."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.item import Item, Source, Told
from builder.journal.records.journal import Journal
from builder.journal.records.plan import Phase, PlannedLine, TakeoffRef
from builder.ledger.amortise import amortise, share_of, used_of
from builder.ledger.pricing import gross
from builder.ledger.records import OnReceipt
from builder.plan.budget_records import Budgeted, PhaseBudget
from builder.words.money import Currency, Money
from builder.words.problem import Problem
from builder.words.quantity import Quantity

Results = Mapping[str, Mapping[str, Quantity]]
TO_FIND = frozenset({Source.SALVAGED, Source.SECONDHAND, Source.GIFT})


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """The budget by phase, in the plan's order, and the problems of working it out."""

    phases: tuple[PhaseBudget, ...]
    problems: tuple[Problem, ...]


def work_out_budget(journal: Journal, results: Results) -> Budget:
    """Cost every planned line. `results` are the take-offs' results by name and key."""
    problems: list[Problem] = []
    phases = [_phase(phase, results, journal.settings.currency, problems) for phase in journal.plan.phases]
    return Budget(phases=tuple(phases), problems=tuple(problems))


def _phase(phase: Phase, results: Results, currency: Currency, problems: list[Problem]) -> PhaseBudget:
    if not isinstance(phase.planned, tuple):
        planned = phase.planned.minor if isinstance(phase.planned, Money) else None
        return PhaseBudget(key=phase.key, planned=planned, lines=())
    lines = tuple(
        _line(line, f"{phase.key}.{number}", phase.key, results, currency, problems)
        for number, line in enumerate(phase.planned, 1)
    )
    return PhaseBudget(key=phase.key, planned=sum(line.job_cost for line in lines), lines=lines)


def _line(
    line: PlannedLine,
    by_default: str,
    phase: str,
    results: Results,
    currency: Currency,
    problems: list[Problem],
) -> Budgeted:
    item = line.item
    if line.quantity_from is not None:
        item = replace(item, quantity=_from_takeoff(line.quantity_from, results, problems))
    if item.cost in (Told.UNKNOWN, Told.REST):
        problems.append(_unpriced(item))
    price = OnReceipt(goods=gross(item, currency) or 0)
    divided = amortise(item, price)
    part = share_of(item, price) * used_of(item)
    return Budgeted(
        key=line.key or by_default,
        named=line.key is not None,
        phase=phase,
        item=item,
        quantity=item.quantity,
        needed=_times(item.quantity, share_of(item, price)),
        used=_times(item.quantity, part),
        spend=divided.paid - divided.elsewhere,
        job_cost=divided.job_cost,
        takeoff=line.quantity_from,
        to_find=item.source in TO_FIND,
    )


def _times(quantity: Quantity | None, part: Fraction) -> Quantity | None:
    return None if quantity is None else Quantity(quantity.value * part, quantity.unit)


def _unpriced(item: Item) -> Problem:
    return Problem(
        place=item.at("cost"),
        found=f"the planned {item.what} has no cost",
        expected="a plan in figures: cost: or unit_cost:",
        fix="write cost: about 150, for instance",
    )


def _from_takeoff(ref: TakeoffRef, results: Results, problems: list[Problem]) -> Quantity | None:
    """A take-off's result. A take-off that could not be worked out has reported why itself."""
    takeoff = results.get(ref.name)
    if takeoff is None:
        known = {name: f"{name}.{ref.result}" for name in results}
        problems.append(_no_such(ref, f"there is no take-off {ref.name}", ref.name, known))
        return None
    if takeoff and ref.result not in takeoff:
        found = f"the take-off {ref.name} has no result {ref.result}"
        problems.append(_no_such(ref, found, ref.result, {result: f"{ref.name}.{result}" for result in takeoff}))
    return takeoff.get(ref.result)


def _no_such(ref: TakeoffRef, found: str, word: str, known: Mapping[str, str]) -> Problem:
    """What is wrong with a reference; `known` are the words it could have, and how the whole is then written."""
    near = difflib.get_close_matches(word, known, n=1, cutoff=0.5)
    return Problem(
        place=ref.place,
        found=found,
        expected=", ".join(known) if known else "a take-off of plan.yaml; it has none",
        fix=f"did you mean {known[near[0]]}?" if near else "",
    )
