"""Filling one board with the most valuable pieces: the bounded knapsack, by depth-first branch and bound.

The order of the search is that of P. C. Gilmore and R. E. Gomory for their cutting patterns (from memory):
pieces go in by value per length, and a branch is left when even its best piece could not fill the rest well enough.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.takeoff.cutting.effort import Effort

# Enough for any board of a house; a board of very many short pieces falls back on the bound.
STEPS = 40_000


@dataclass(frozen=True, slots=True)
class Filling:
    """The best filling found: its value, (item, how many), and a value that no filling exceeds."""

    value: int
    taken: tuple[tuple[int, int], ...]
    bound: int


def best_filling(
    values: Sequence[int], lengths: Sequence[int], counts: Sequence[int], capacity: int, effort: Effort
) -> Filling:
    """The filling of `capacity` with the greatest total of `values`; at most `counts` of each item."""
    effort.spend(len(values) // 2)
    offers = _offers(values, lengths, counts, capacity)
    if not offers:
        return Filling(0, (), 0)
    best, taken, finished = _search(offers, capacity, effort)
    bound = best if finished else capacity * offers[0][0] // offers[0][1]
    return Filling(best, tuple(sorted((offers[index][3], many) for index, many in taken)), bound)


def _offers(
    values: Sequence[int], lengths: Sequence[int], counts: Sequence[int], capacity: int
) -> list[tuple[int, int, int, int]]:
    """(value, length, count, item) of all that is worth something and fits, the best value per length first."""
    offers = [
        (value, length, min(count, capacity // length), item)
        for item, (value, length, count) in enumerate(zip(values, lengths, counts, strict=True))
        if value > 0 and count > 0 and length <= capacity
    ]
    return sorted(offers, key=lambda offer: (-(offer[0] << 32) // offer[1], offer[3]))


def _search(
    offers: list[tuple[int, int, int, int]], capacity: int, effort: Effort
) -> tuple[int, list[tuple[int, int]], bool]:
    shortest = _shortest_from(offers)
    best, best_taken = -1, []
    taken: list[tuple[int, int]] = []
    value, room, index, steps = 0, capacity, 0, 0
    while steps < STEPS:
        while index < len(offers) and room >= shortest[index]:
            worth, length, count, _ = offers[index]
            if value * length + room * worth <= best * length:
                break
            many = min(count, room // length)
            if many:
                taken.append((index, many))
                value, room = value + many * worth, room - many * length
            index += 1
            steps += 1
        if value > best:
            best, best_taken = value, taken[:]
        if not taken:
            effort.spend(steps + 1)
            return best, best_taken, True
        index, many = taken.pop()
        worth, length, _, _ = offers[index]
        value, room = value - worth, room + length
        if many > 1:
            taken.append((index, many - 1))
        index += 1
        steps += 1
    effort.spend(steps)
    return best, best_taken, False


def _shortest_from(offers: list[tuple[int, int, int, int]]) -> list[int]:
    """The shortest length from each offer on."""
    shortest = [offer[1] for offer in offers]
    for index in range(len(shortest) - 2, -1, -1):
        shortest[index] = min(shortest[index], shortest[index + 1])
    return shortest
