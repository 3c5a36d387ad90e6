"""On what the finish hangs: the hours and the waits that, were they longer, would make everything later."""

from __future__ import annotations

from collections.abc import Sequence

from builder.plan.onebuilder import Course, Yard, may_go_on


def hanging(yard: Yard, course: Course, needed: Sequence[int]) -> tuple[list[int], list[int]]:
    """The phases whose hours, and the phases whose wait, the finish of one course hangs on.

    Followed from the end: the last phase or wait, the unbroken work before it, the wait that held that up,
    and so on. Within work without a gap every phase hangs, whichever comes first: one builder works the hours
    of all of them. That a longer phase might still end on the same day is not looked at.
    """
    hours: list[int] = []
    waits: list[int] = []
    free = [may_go_on(yard, phase, course.days, course.steps) for phase in range(len(needed))]
    phase, wait = _last(yard, course)
    while phase >= 0:
        if wait:
            waits.append(phase)
        unbroken, held_up = _unbroken(course, phase, needed, [step for _, step, _ in free])
        hours += unbroken
        phase = -1 if held_up < 0 else free[held_up][2]
        wait = dict(yard.after[held_up]).get(phase, 0)
    return hours, waits


def _last(yard: Yard, course: Course) -> tuple[int, int]:
    """The phase that is ready last, and its wait; -1 if that is one done long ago."""
    ready = [
        (step, phase)
        for phase, (day, step) in enumerate(zip(course.days, course.steps, strict=True))
        if day + yard.waits[phase] == course.ready
    ]
    last = max(ready)[1] if ready else -1
    return last, yard.waits[last] if ready else 0


def _unbroken(course: Course, phase: int, needed: Sequence[int], free: Sequence[int]) -> tuple[Sequence[int], int]:
    """The phases worked without a gap up to the turn of this one, and the one the builder stood idle for
    before them; -1 if there was no idling. A phase without hours stands for itself.
    """
    if not needed[phase]:
        return [phase], phase
    turn = course.order.index(phase) + 1
    members: list[int] = []
    front, held_up = 0, -1
    for start, one in sorted([(free[one], one) for one in course.order[:turn] if needed[one]]):
        if start > front:
            members, front, held_up = [], start, one
        members.append(one)
        front += needed[one]
    return members, held_up
