"""The parts of the cutting engine by themselves: knapsack, packed numbers, linear program, relaxation."""

from __future__ import annotations

from functools import cache
from itertools import product

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.knapsack import STEPS, best_filling
from builder.takeoff.cutting.master import Column, Master
from builder.takeoff.cutting.packed import ONE, Places
from builder.takeoff.cutting.relaxation import Box, Generation, Pool
from builder.takeoff.cutting.search import Found, Search
from builder.takeoff.cutting.task import Item, Stock, Task
from builder.takeoff.values import Values
from builder.words.place import Place

offers = st.lists(st.tuples(st.integers(0, 50), st.integers(1, 20), st.integers(0, 3)), max_size=5)


@given(offers, st.integers(0, 60))
def test_a_board_is_filled_with_the_most_valuable_pieces(items: list[tuple[int, int, int]], capacity: int) -> None:
    """Against every filling there is."""
    values, lengths, counts = ([each[at] for each in items] for at in range(3))
    found = best_filling(values, lengths, counts, capacity, Effort(10**6))
    best = 0
    for taken in product(*(range(count + 1) for count in counts)):
        if sum(many * length for many, length in zip(taken, lengths, strict=True)) <= capacity:
            best = max(best, sum(many * value for many, value in zip(taken, values, strict=True)))
    assert found.value == found.bound == best
    assert sum(values[item] * many for item, many in found.taken) == best
    assert sum(lengths[item] * many for item, many in found.taken) <= capacity
    assert all(0 < many <= counts[item] for item, many in found.taken)


def test_a_filling_that_takes_too_long_gives_its_bound() -> None:
    """Even lengths never fill an odd board: nobody can tell without trying, so the bound is the whole board."""
    lengths = [2 * length for length in range(101, 161)]
    effort = Effort(10**9)
    found = best_filling(lengths, lengths, [3] * 60, 1999, effort)
    assert found.value == 1998
    assert found.bound == 1999
    assert 10**9 - effort.left >= STEPS


def test_a_bound_is_whole_however_large_the_values_are() -> None:
    """The same board with 3^40 for a unit of length: its bound is right to the last of 23 digits."""
    lengths = [2 * length for length in range(101, 161)]
    found = best_filling([length * 3**40 for length in lengths], lengths, [3] * 60, 1999, Effort(10**9))
    assert found.bound == 1999 * 3**40 > found.value


vectors = st.lists(st.integers(-(2**60), 2**60), min_size=1, max_size=6)


@given(vectors, st.integers(-(2**60), 2**60))
def test_packed_numbers_are_scaled_side_by_side(numbers: list[int], factor: int) -> None:
    """Each as if it stood alone, rounded down."""
    places = Places(len(numbers))
    scaled = places.unpack(places.scaled(places.pack(numbers), factor))
    assert scaled == [number * factor // ONE for number in numbers]


@given(vectors)
def test_packed_numbers_come_out_as_they_went_in(numbers: list[int]) -> None:
    """All at once, and one by one."""
    places = Places(len(numbers))
    packed = places.pack(numbers)
    assert places.unpack(packed) == numbers == [places.at(packed, at) for at in range(len(numbers))]


@st.composite
def covers(draw: st.DrawFn) -> tuple[list[int], list[tuple[int, list[int]]]]:
    """Needs of up to five rows, and columns with their costs that cover them."""
    rows = draw(st.integers(1, 5))
    needs = draw(st.lists(st.integers(1, 9), min_size=rows, max_size=rows))
    entries = st.lists(st.integers(0, 3), min_size=rows, max_size=rows).filter(any)
    return needs, draw(st.lists(st.tuples(st.integers(1, 9), entries), max_size=8))


@given(covers())
def test_the_linear_program_agrees_with_an_exact_solver(task: tuple[list[int], list[tuple[int, list[int]]]]) -> None:
    """HiGHS: the same cost, to a millionth, for covering at least the needs."""
    needs, columns = task
    rows = len(needs)
    dear = 100
    master = Master(needs, [Column(dear * ONE, ((row, 1),)) for row in range(rows)])
    for row in range(rows):
        master.add(Column(0, ((row, -1),)))
    for cost, entries in columns:
        master.add(Column(cost * ONE, tuple((row, number) for row, number in enumerate(entries) if number)))
    better = True
    while better:
        better = master.improve()
    every = [*(([int(row == at) for row in range(rows)], dear) for at in range(rows)), *((e, c) for c, e in columns)]
    found = linprog(
        [cost for _, cost in every],
        A_ub=-np.array([entries for entries, _ in every]).T,
        b_ub=[-need for need in needs],
    )
    assert master.cost() / ONE == pytest.approx(found.fun, rel=1e-6, abs=1e-6)


def test_a_program_without_an_end_is_left_alone() -> None:
    """A column that saves and takes nothing would save for ever; costs here are never negative, so it is a mistake."""
    master = Master([1], [Column(ONE, ((0, 1),))])
    master.add(Column(-3 * ONE, ((0, -1),)))
    assert master.improve() == 0


SMALL = Task((Stock(100, 1),), (Item(45, 97), Item(36, 610), Item(31, 395), Item(14, 211)))
WHOLE = Box((0,), (1313,))


def relaxed(rounds: int, task: Task = SMALL, box: Box = WHOLE) -> int:
    """The bound after so many rounds, as a whole cost."""
    counts = [item.count for item in task.items]
    return Generation(task, counts, box, Pool(), Effort(10**6)).run(1, rounds).proof.cost(1)


@pytest.mark.parametrize("rounds", [1, 2, 3, 100])
def test_a_bound_holds_after_any_number_of_rounds(rounds: int) -> None:
    """It only gets better: 453 in the end, never more."""
    assert relaxed(rounds - 1) <= relaxed(rounds) <= 453
    assert relaxed(100) == 453


def test_a_bound_knows_the_least_and_the_most_of_its_box() -> None:
    """At least 500 boards cost 500; with windows and one wall, what does not fit costs its worth."""
    assert relaxed(100, box=Box((500,), (1313,))) == 500
    walls = Task((Stock(100, 0, 1),), (Item(60, 2, 7),))
    assert relaxed(100, walls, Box((0,), (1,))) == 7


@st.composite
def few_pieces(draw: st.DrawFn) -> Task:
    """Up to four lengths, up to three of each; one or two stocks, sometimes few of them; some may be left out."""
    lengths = draw(st.lists(st.integers(1, 12), min_size=1, max_size=4, unique=True))
    outside = st.none() | st.integers(1, 6)
    items = [Item(length, draw(st.integers(1, 3)), draw(outside)) for length in sorted(lengths, reverse=True)]
    stocks = draw(st.lists(st.tuples(st.integers(6, 16), st.integers(1, 9)), min_size=1, max_size=2, unique=True))
    most = st.none() | st.integers(1, 4)
    return Task(tuple(Stock(length, cost, draw(most)) for length, cost in stocks), tuple(items))


def cheapest(task: Task) -> int | None:
    """Every way there is, board after board; None if something cannot be cut that must be."""

    @cache
    def least(rest: tuple[int, ...], used: tuple[int, ...]) -> int | None:
        first = next((at for at, left in enumerate(rest) if left), None)
        if first is None:
            return 0
        costs = []
        if (outside := task.items[first].outside) is not None:
            costs.append((outside, least(less(rest, first), used)))
        for at, stock in enumerate(task.stocks):
            if stock.most is None or used[at] < stock.most:
                now = (*used[:at], used[at] + 1, *used[at + 1 :])
                for cut in product(*(range(left + 1) for left in rest)):
                    room = sum(many * item.length for many, item in zip(cut, task.items, strict=True))
                    if cut[first] and room <= stock.length:
                        left = tuple(one - many for one, many in zip(rest, cut, strict=True))
                        costs.append((stock.cost, least(left, now)))
        return min((cost + more for cost, more in costs if more is not None), default=None)

    return least(tuple(item.count for item in task.items), (0,) * len(task.stocks))


def less(rest: tuple[int, ...], item: int) -> tuple[int, ...]:
    """One piece of an item fewer."""
    return (*rest[:item], rest[item] - 1, *rest[item + 1 :])


# Where a branch left too soon is the only one with the cheapest way.
TIGHT = [
    Task((Stock(32, 3),), (Item(13, 1), Item(12, 3), Item(5, 1), Item(3, 1))),
    Task((Stock(39, 5),), (Item(19, 1), Item(13, 2, 1), Item(9, 1), Item(3, 2, 4))),
    Task((Stock(31, 6), Stock(27, 11)), (Item(10, 2, 5), Item(8, 4), Item(4, 2, 2))),
]


@settings(max_examples=60)
@example(TIGHT[0], 100, 1)
@example(TIGHT[1], 100, 1)
@example(TIGHT[2], 100, 1)
@given(few_pieces(), st.sampled_from([0, 1, 100]), st.integers(1, 3))
def test_a_search_that_ends_has_missed_nothing(task: Task, rounds: int, above: int) -> None:
    """With a weak bound or a good one: the cheapest of all ways, and nothing where nothing is cheaper."""
    total = sum(item.count for item in task.items)
    box = Box((0,) * len(task.stocks), tuple(total if one.most is None else one.most for one in task.stocks))
    proof = Generation(task, [item.count for item in task.items], box, Pool(), Effort(10**6)).run(1, rounds).proof
    best = cheapest(task)
    dear = 1000 if best is None else best + above
    found = Search(task, box, proof, 1, Effort(10**7)).below(dear)
    assert (found.packing.cost if found.packing else None, found.finished) == (best, True)
    if best is not None:
        assert Search(task, box, proof, 1, Effort(10**7)).below(best) == Found(None, True)


def test_a_method_that_asks_for_what_is_not_there_is_stopped() -> None:
    """A mistake in a method, told to whoever writes one."""
    values = Values(at=Place(file="plan.yaml"), values={"length": "x"}, places={}, sources={})
    for asked, message in (
        (values.quantity, "length is no Quantity"),
        (values.expression, "length is no formula"),
        (values.rows, "length is no list"),
    ):
        with pytest.raises(TypeError, match=message):
            asked("length")
