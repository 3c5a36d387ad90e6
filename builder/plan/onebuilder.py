"""One builder, several phases: how soon everything can be ready, once it is known how many hours each phase
takes.

The rule. Phases are finished in one order. While the phase whose turn it is has to wait, the builder works
ahead on the later ones that may go on, and never sits idle while any of them may. So when the turn comes to a
phase, all hours of those before it and its own have been worked with no more idling than their waits force,
and it counts as finished then. What comes after it may go on from that moment, or when its wait is over. Of
the orders that `after` allows the one that is ready soonest is taken.

Why not simply "the first phase in the plan that may go on"? Because of a known trap of such rules (R. L.
Graham, "Bounds on multiprocessing timing anomalies", SIAM Journal on Applied Mathematics 17, 1969, from
memory): a longer wait before one phase can let another go first and the whole be ready EARLIER. A forecast
must not do that. This one cannot:

- For one order, a phase's finish is the latest over its own and every earlier phase's start of "that start,
  and then all the hours of those of them that cannot start before". Longer waits and more hours move every
  such term later or not at all; more hours in the week move it earlier or not at all. By induction along the
  order, so they move every finish and every start.
- The soonest of several orders keeps that, as long as the choice of orders to try does not depend on waits or
  hours. It looks at `after` alone.

When every order is tried, the result is the soonest any way of working could be ready, phases left half done
and taken up again included. (Take a best way of working and the order in which it finishes. Work that order
by the rule: up to a phase's turn there is no idling but what its waits and those of the earlier ones force,
and these are over no later than in the best way; so it finishes no later.) A phase that needs no hours needs
no builder: it is finished when it may go on, whatever else is.

Days are counted from the day of the forecast, day 0, which has no hours left. Work is counted in whole steps,
and a moment is a day together with the steps of the calendar that are past by then.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.plan.orders import Order

Stretch = tuple[int, int]

_NEVER = 1 << 62


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """What stays the same in every outcome. Phases are numbers, in an order that `after` allows.

    `after` holds, for each phase, the phases it comes after and the days of wait behind each; `held` the
    first moment at which it may go on at all, because of waits that run already; `waits` the days of wait
    behind it. `through` is the calendar: the steps past at the end of each day, rising, at least as long as
    any outcome takes and all the waits on top. `orders` are those to try. `done` is the day on which the last
    wait behind a finished phase is over, `last_wait` the shortest wait behind a phase that nothing comes
    after.
    """

    after: tuple[tuple[tuple[int, int], ...], ...]
    held: tuple[tuple[int, int], ...]
    waits: tuple[int, ...]
    through: tuple[int, ...]
    orders: tuple[Order, ...]
    done: int
    last_wait: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """How one outcome goes, by phase: the steps of the calendar between which it is worked on (-1: it needs
    none), and the day and the step at which it counts as finished. `ready` is the day on which all waits are
    over.
    """

    order: Order
    begun: Sequence[int]
    ended: Sequence[int]
    days: Sequence[int]
    steps: Sequence[int]
    ready: int


def soonest_course(yard: Yard, needed: Sequence[int]) -> Course:
    """The course that is ready soonest, given the steps of work each phase needs; of equals the first."""
    best = _course(yard, yard.orders[0], needed, _NEVER)
    assert best is not None
    if len(yard.orders) == 1 or best.ready <= bisect_left(yard.through, sum(needed)) + yard.last_wait:
        return best
    least = _least_day(yard, needed)
    for order in yard.orders[1:]:
        if best.ready <= least:
            break
        best = _course(yard, order, needed, best.ready) or best
    return best


def likely_order_first(yard: Yard, needed: Sequence[int]) -> Yard:
    """The same yard, with the order first that is ready soonest in this outcome, the plan's own if none is
    sooner. It settles which is taken of equally soon ones, and saves time; the soonest stays the soonest.
    """
    first = soonest_course(yard, needed).order
    return replace(yard, orders=(first, *(order for order in yard.orders if order != first)))


def may_go_on(yard: Yard, phase: int, days: Sequence[int], steps: Sequence[int]) -> tuple[int, int, int]:
    """The day and the step at which all the phase comes after is finished and waited for, and which of it is
    last (-1: it may go on from the first), given when those before it are finished.
    """
    (day, step), last = yard.held[phase], -1
    for other, wait in yard.after[phase]:
        if wait:
            over = days[other] + wait
            if over > day:
                day, step, last = over, yard.through[over - 1], other
        elif steps[other] > step or days[other] > day:
            day, step, last = days[other], steps[other], other
    return day, step, last


def _course(yard: Yard, order: Order, needed: Sequence[int], limit: int) -> Course | None:
    """The phases finished in this order; None as soon as it cannot be ready before the day `limit`."""
    begun, ended, days, steps = ([-1] * len(needed) for _ in range(4))
    gaps: list[Stretch] = []
    front, ready = 0, yard.done
    for phase in order:
        day, step, _ = may_go_on(yard, phase, days, steps)
        if needed[phase]:
            if step < front and gaps:
                front, begun[phase], ended[phase] = _work_in_gaps(gaps, front, step, needed[phase])
            else:
                if step > front:
                    gaps.append((front, step))
                    front = step
                begun[phase] = front
                front += needed[phase]
                ended[phase] = front
            day, step = bisect_left(yard.through, front), front
        days[phase], steps[phase] = day, step
        ready = max(ready, day + yard.waits[phase])
        if ready >= limit:
            return None
    return Course(order=order, begun=begun, ended=ended, days=days, steps=steps, ready=ready)


def _work_in_gaps(gaps: list[Stretch], front: int, step: int, needed: int) -> tuple[int, int, int]:
    """Work from `step` on in the idle gaps before `front`, then at the front. Changes the gaps; gives back
    the new front, and where the work begins and ends.
    """
    left: list[Stretch] = []
    used: list[int] = []
    for opens, closes in gaps:
        begin = min(max(opens, step), closes)
        end = min(begin + needed, closes)
        needed -= end - begin
        used += [begin, end] * (begin < end)
        left += [gap for gap in ((opens, begin), (end, closes)) if gap[0] < gap[1]]
    gaps[:] = left
    used += [front, front + needed] * (needed > 0)
    return front + needed, used[0], used[-1]


def _least_day(yard: Yard, needed: Sequence[int]) -> int:
    """A day before which no order can be ready: every phase worked on as soon as it may, as if there were a
    builder for each; and all the work together, none of it before it may, by the one there is.
    """
    days, steps, least = [0] * len(needed), [0] * len(needed), yard.done
    starts = []
    for phase, work in enumerate(needed):
        day, step, _ = may_go_on(yard, phase, days, steps)
        if work:
            starts.append((step, work))
            step += work
            day = bisect_left(yard.through, step)
        days[phase], steps[phase] = day, step
        least = max(least, day + yard.waits[phase])
    front = 0
    for start, work in sorted(starts):
        front = max(front, start) + work
    return max(least, bisect_left(yard.through, front) + yard.last_wait)
