"""The critical path method over steps that come after each other. Exact; one pass forward, one back.

ES is the latest early finish of what comes before, EF = ES + t, LF the earliest late start of what follows,
LS = LF - t, total float = LS - ES, free float = earliest ES of what follows - EF.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.plan.time_records import Flaw, NetworkFault, NetworkTimes, StepTimes


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A piece of work, what it comes after, and how long it takes (any one unit, not below zero)."""

    key: str
    after: tuple[str, ...] = ()
    duration: Fraction = Fraction(0)


class FlawedNetworkError(ValueError):
    """Steps that cannot be put in order; `faults` says why."""

    def __init__(self, faults: tuple[NetworkFault, ...]) -> None:
        self.faults = faults
        super().__init__("; ".join(f"{fault.flaw.value}: {', '.join(fault.keys)}" for fault in faults))


def network_faults(steps: Sequence[Step]) -> tuple[NetworkFault, ...]:
    """Everything wrong with the steps: doubled keys, unknown predecessors, then one circle, if any."""
    keys = [step.key for step in steps]
    twice = [key for place, key in enumerate(keys) if keys.index(key) < place]
    missing = [(step.key, key) for step in steps for key in dict.fromkeys(step.after) if key not in keys]
    circle = _circle(steps)
    return (
        *(NetworkFault(flaw=Flaw.TWICE, keys=(key,)) for key in dict.fromkeys(twice)),
        *(NetworkFault(flaw=Flaw.UNKNOWN, keys=pair) for pair in missing),
        *([NetworkFault(flaw=Flaw.CIRCLE, keys=circle)] if circle else []),
    )


def in_order(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps with each after what it comes after, otherwise in the order given.

    Raises FlawedNetworkError where there is no such order.
    """
    if faults := network_faults(steps):
        raise FlawedNetworkError(faults)
    return _orderable(steps)


def network_times(steps: Sequence[Step]) -> NetworkTimes:
    """Early and late times and floats of every step. Raises FlawedNetworkError."""
    ordered = in_order(steps)
    early = _early_finishes(ordered)
    length = max(early.values(), default=Fraction(0))
    late = _late_finishes(ordered, length)
    next_start = _next_starts(ordered, early, length)
    return NetworkTimes(
        steps=tuple(_times(step, early[step.key], late[step.key], next_start[step.key]) for step in steps),
        length=length,
    )


def _early_finishes(ordered: Sequence[Step]) -> dict[str, Fraction]:
    finishes: dict[str, Fraction] = {}
    for step in ordered:
        start = max((finishes[key] for key in step.after), default=Fraction(0))
        finishes[step.key] = start + step.duration
    return finishes


def _late_finishes(ordered: Sequence[Step], length: Fraction) -> dict[str, Fraction]:
    finishes = {step.key: length for step in ordered}
    for step in reversed(ordered):
        for key in step.after:
            finishes[key] = min(finishes[key], finishes[step.key] - step.duration)
    return finishes


def _next_starts(ordered: Sequence[Step], early: dict[str, Fraction], length: Fraction) -> dict[str, Fraction]:
    starts = {step.key: length for step in ordered}
    for step in ordered:
        for key in step.after:
            starts[key] = min(starts[key], early[step.key] - step.duration)
    return starts


def _times(step: Step, early_finish: Fraction, late_finish: Fraction, next_start: Fraction) -> StepTimes:
    return StepTimes(
        key=step.key,
        early_start=early_finish - step.duration,
        early_finish=early_finish,
        late_start=late_finish - step.duration,
        late_finish=late_finish,
        total_float=late_finish - early_finish,
        free_float=next_start - early_finish,
    )


def _orderable(steps: Sequence[Step]) -> tuple[Step, ...]:
    """As many steps as can be put in order; those of a circle, or behind one, are left out."""
    waiting, done, ordered = list(steps), set[str](), list[Step]()
    known = {step.key for step in steps}
    while free := next((step for step in waiting if done.issuperset(known.intersection(step.after))), None):
        waiting.remove(free)
        done.add(free.key)
        ordered.append(free)
    return tuple(ordered)


def _circle(steps: Sequence[Step]) -> tuple[str, ...]:
    """The keys of a circle, or none. Whoever cannot be ordered waits for another such: follow until one
    repeats.
    """
    ordered = {step.key for step in _orderable(steps)}
    stuck = {step.key: step for step in steps if step.key not in ordered}
    path: list[str] = list(stuck)[:1]
    while path:
        ahead = next(key for key in stuck[path[-1]].after if key in stuck)
        if ahead in path:
            return tuple(path[path.index(ahead) :])
        path.append(ahead)
    return ()
