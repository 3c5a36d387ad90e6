"""The orders in which phases may be finished."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, islice

MOST_ORDERS = 60
"""More are not tried. The limit looks at `after` alone, never at hours or waits: see
`builder.plan.onebuilder`.
"""

MOST_PHASES = 40
"""Of more open phases only the plan's own order is tried."""

Order = tuple[int, ...]


def finishing_orders(after: Sequence[frozenset[int]]) -> tuple[Order, ...]:
    """Every order of the phases 0, 1, 2 ... that keeps to `after`, the plan's own first.

    `after` gives for each phase the earlier ones it comes after. Where there are more than `MOST_ORDERS`: the
    plan's order, and those that bring one phase forward, with what it needs.
    """
    if len(after) > MOST_PHASES:
        return (tuple(range(len(after))),)
    every = tuple(islice(_orders(after, ()), MOST_ORDERS + 1))
    if len(every) <= MOST_ORDERS:
        return every
    return tuple(islice(dict.fromkeys(_one_brought_forward(after)), MOST_ORDERS))


def _orders(after: Sequence[frozenset[int]], begun: Order) -> Iterator[Order]:
    if len(begun) == len(after):
        yield begun
        return
    for phase, needs in enumerate(after):
        if phase not in begun and needs <= set(begun):
            yield from _orders(after, (*begun, phase))


def _one_brought_forward(after: Sequence[frozenset[int]]) -> Iterator[Order]:
    """First the plan's order itself; then by how far a phase moves, so that near orders come first."""
    plan = tuple(range(len(after)))
    yield plan
    needed = _all_needed(after)
    for to, phase in sorted(combinations(plan, 2), key=lambda move: (move[1] - move[0], move)):
        with_it = needed[phase] | {phase}
        between = plan[to : phase + 1]
        moved = [one for one in between if one in with_it]
        left = [one for one in between if one not in with_it]
        yield (*plan[:to], *moved, *left, *plan[phase + 1 :])


def _all_needed(after: Sequence[frozenset[int]]) -> list[frozenset[int]]:
    """For each phase everything before it, by way of others too."""
    needed: list[frozenset[int]] = []
    for direct in after:
        needed.append(direct.union(*(needed[phase] for phase in direct)))
    return needed
