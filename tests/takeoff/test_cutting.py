"""Cutting pieces from boards: published optima, every small case against all ways to cut, and an exact solver."""

from __future__ import annotations

import time
from collections.abc import Iterator
from functools import cache
from itertools import product
from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from builder.takeoff.cutting.solve import solve
from builder.takeoff.cutting.task import Answer, Item, Stock, Task
from tests.takeoff.rolls import ROLL, ROLLS

# V. Chvatal, Linear Programming (1983), ch. 13; the numbers from memory, 452.25 and 453 confirmed by an exact solver.
CHVATAL = {45: 97, 36: 610, 31: 395, 14: 211}


def fewest(board: int, pieces: dict[int, int]) -> Answer:
    """The answer for one length of board, where the number of boards counts."""
    items = tuple(Item(length, count) for length, count in sorted(pieces.items(), reverse=True))
    return solve(Task((Stock(board, 1),), items))


def test_the_paper_rolls() -> None:
    """Published: 73 rolls are the fewest, with 0.401 % waste of 407,160 mm."""
    answer = fewest(ROLL, ROLLS)
    assert (answer.packing.cost, answer.bound, answer.proven) == (73, 73, True)
    used = sum(length * count for length, count in ROLLS.items())
    assert used == 407_160
    assert round(100 * (73 * ROLL - used) / (73 * ROLL), 3) == 0.401


def test_chvatal_s_rolls() -> None:
    """The relaxation comes to 452.25, so 453 are the fewest."""
    answer = fewest(100, CHVATAL)
    assert (answer.packing.cost, answer.proven) == (453, True)


def test_the_nine_foot_boards() -> None:
    """Pieces of 6, 6, 5, 4, 3 and 3 ft from an article on linear programming: three boards, nothing left."""
    assert fewest(9, {6: 2, 5: 1, 4: 1, 3: 2}).packing.cost == 3


def cut_from(task: Task, answer: Answer) -> None:
    """The packing is one: no board is over its length, nothing is lost, and it costs what it says."""
    rest = [item.count for item in task.items]
    used, cost = [0] * len(task.stocks), 0
    for (stock, taken), times in answer.packing.boards:
        assert times > 0
        assert sum(task.items[item].length * many for item, many in taken) <= task.stocks[stock].length
        used[stock] += times
        cost += task.stocks[stock].cost * times
        for item, many in taken:
            rest[item] -= many * times
    assert tuple(rest) == answer.packing.left
    for left, item in zip(rest, task.items, strict=True):
        assert left == 0 or (left > 0 and item.outside is not None)
        cost += left * (item.outside or 0)
    assert all(stock.most is None or count <= stock.most for stock, count in zip(task.stocks, used, strict=True))
    assert cost == answer.packing.cost
    assert answer.bound <= cost


def every_way(task: Task) -> int:
    """The least cost by trying everything: what is left, and the boards that may still be used."""

    @cache
    def least(rest: tuple[int, ...], boards: tuple[int, ...]) -> int:
        if not any(rest):
            return 0
        costs = []
        first = next(item for item, left in enumerate(rest) if left)
        outside = task.items[first].outside
        if outside is not None:
            less = tuple(left - (item == first) for item, left in enumerate(rest))
            costs.append(outside + least(less, boards))
        for stock, taken in ways(task, rest, first):
            if boards[stock]:
                less = tuple(left - many for left, many in zip(rest, taken, strict=True))
                fewer = tuple(count - (at == stock) for at, count in enumerate(boards))
                costs.append(task.stocks[stock].cost + least(less, fewer))
        return min(costs, default=10**9)

    total = sum(item.count for item in task.items)
    boards = tuple(total if stock.most is None else stock.most for stock in task.stocks)
    return least(tuple(item.count for item in task.items), boards)


def ways(task: Task, rest: tuple[int, ...], first: int) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Every way to cut one board with at least one of item `first`, full or not."""
    for taken in product(*(range(left + 1) for left in rest)):
        if taken[first]:
            length = sum(item.length * many for item, many in zip(task.items, taken, strict=True))
            yield from ((at, taken) for at, stock in enumerate(task.stocks) if stock.length >= length)


@st.composite
def small_tasks(draw: st.DrawFn, *, prices: bool = False, outside: bool = False) -> Task:
    """Up to four lengths, up to six pieces, up to three stocks; everything fits the longest."""
    lengths = sorted(draw(st.sets(st.integers(2, 20), min_size=1, max_size=4)), reverse=True)
    counts = draw(
        st.lists(st.integers(1, 3), min_size=len(lengths), max_size=len(lengths)).filter(lambda all_: sum(all_) <= 6)
    )
    longest = draw(st.integers(lengths[0], 40))
    others = draw(st.sets(st.integers(2, longest), max_size=2)) - {longest}
    cost = st.integers(0 if outside else 1, 30) if prices else st.just(0 if outside else 1)
    most = st.integers(1, 3) if outside else st.none()
    stocks = tuple(Stock(length, draw(cost), draw(most)) for length in sorted({longest, *others}, reverse=True))
    left_out = st.integers(1, 30) if outside else st.none()
    return Task(
        stocks, tuple(Item(length, count, draw(left_out)) for length, count in zip(lengths, counts, strict=True))
    )


@given(small_tasks())
def test_the_fewest_boards_are_the_fewest_of_all_ways(task: Task) -> None:
    """Small cases are always proven, and right."""
    answer = solve(task)
    cut_from(task, answer)
    assert answer.proven
    assert answer.packing.cost == every_way(task)


@given(small_tasks(prices=True))
def test_the_cheapest_boards_are_the_cheapest_of_all_ways(task: Task) -> None:
    """The same where boards have prices."""
    answer = solve(task)
    cut_from(task, answer)
    assert answer.proven
    assert answer.packing.cost == every_way(task)


@given(small_tasks(outside=True))
def test_the_most_is_placed_of_all_ways(task: Task) -> None:
    """The same where boards are few and pieces may be left out, as windows in walls."""
    answer = solve(task)
    cut_from(task, answer)
    assert answer.proven
    assert answer.packing.cost == every_way(task)


def exact(task: Task) -> int:
    """The least cost by HiGHS, over every full pattern."""
    patterns = list(full_patterns(task))
    rows = np.zeros((len(task.items), len(patterns)))
    for column, (_, taken) in enumerate(patterns):
        rows[:, column] = taken
    costs = np.array([task.stocks[stock].cost for stock, _ in patterns])
    needs = np.array([item.count for item in task.items])
    found = milp(
        costs,
        constraints=LinearConstraint(rows, needs, np.inf),
        integrality=np.ones(len(patterns)),
        bounds=Bounds(0, np.inf),
        options={"mip_rel_gap": 0},
    )
    assert found.status == 0, found.message
    return round(found.fun)


def full_patterns(task: Task) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Every pattern that nothing more fits into."""

    def filled(item: int, room: int) -> Iterator[tuple[int, ...]]:
        if item == len(task.items):
            yield ()
            return
        for many in range(min(task.items[item].count, room // task.items[item].length) + 1):
            for rest in filled(item + 1, room - many * task.items[item].length):
                yield (many, *rest)

    for at, stock in enumerate(task.stocks):
        for taken in filled(0, stock.length):
            room = stock.length - sum(item.length * many for item, many in zip(task.items, taken, strict=True))
            if all(item.length > room or many == item.count for item, many in zip(task.items, taken, strict=True)):
                yield at, taken


@st.composite
def shop_tasks(draw: st.DrawFn, *, prices: bool) -> Task:
    """Four to seven lengths in quarter inches, one or three lengths of board as a yard sells them."""
    lengths = sorted(draw(st.sets(st.integers(60, 380), min_size=4, max_size=7)), reverse=True)
    items = tuple(Item(length, draw(st.integers(1, 6))) for length in lengths)
    if not prices:
        return Task((Stock(draw(st.sampled_from((384, 480, 576))), 1),), items)
    boards = ((384, (380, 420)), (480, (480, 520)), (576, (590, 640)))
    return Task(tuple(Stock(length, draw(st.integers(*cost))) for length, cost in boards), items)


@settings(max_examples=40)
@given(shop_tasks(prices=False))
def test_the_fewest_boards_are_those_of_an_exact_solver(task: Task) -> None:
    """HiGHS over every pattern."""
    answer = solve(task)
    cut_from(task, answer)
    assert answer.proven
    assert answer.packing.cost == exact(task)


@settings(max_examples=12)
@given(shop_tasks(prices=True))
def test_the_cheapest_boards_are_those_of_an_exact_solver(task: Task) -> None:
    """HiGHS over every pattern; where the search stopped early, its bound still holds."""
    answer = solve(task)
    cut_from(task, answer)
    best = exact(task)
    assert answer.bound <= best <= answer.packing.cost
    assert not answer.proven or answer.packing.cost == best


@given(small_tasks())
def test_no_optimum_beats_the_length(task: Task) -> None:
    """Boards are never fewer than all pieces end to end ask for."""
    length = sum(item.length * item.count for item in task.items)
    assert solve(task).packing.cost * max(stock.length for stock in task.stocks) >= length


def sixty(seed: int = 1, *, prices: bool) -> Task:
    """Sixty lengths from 1 ft to 7 ft 6 in, in sixteenths of an inch with a kerf of two, one to six of each."""
    draw = Random(seed)
    lengths = sorted(draw.sample(range(192, 1441), 60), reverse=True)
    items = tuple(Item(length + 2, draw.randint(1, 6)) for length in lengths)
    stocks = [Stock(16 * 96 + 2, 610), Stock(16 * 144 + 2, 899), Stock(16 * 192 + 2, 1250)]
    return Task(tuple(stocks) if prices else (Stock(16 * 192 + 2, 1),), items)


@pytest.mark.parametrize("seed", range(1, 9))
def test_the_fewest_boards_for_sixty_distinct_pieces_are_proven(seed: int) -> None:
    """Boards of 16 ft."""
    task = sixty(seed, prices=False)
    answer = solve(task)
    cut_from(task, answer)
    assert answer.proven


@pytest.mark.parametrize("prices", [False, True])
def test_sixty_distinct_pieces_take_less_than_two_seconds(prices: bool) -> None:
    """Of one processor's time, proven or stopped early."""
    task = sixty(prices=prices)
    began = time.process_time()
    answer = solve(task)
    assert time.process_time() - began < 2
    assert answer.packing.cost - answer.bound <= answer.packing.cost // 50


@pytest.mark.parametrize("steps", [1, 50_000, 300_000])
def test_a_search_that_stops_early_says_so_and_gives_its_bound(steps: int) -> None:
    """Three lengths with prices: the bound is below what was found, and close."""
    task = sixty(prices=True)
    answer = solve(task, steps)
    cut_from(task, answer)
    assert not answer.proven
    assert 0 <= answer.packing.cost - answer.bound < answer.packing.cost // 10


def test_a_box_that_cannot_be_searched_whole_leaves_the_answer_open() -> None:
    """Lengths that leave gaps nobody can fill: 17 boards are the fewest (HiGHS, in seven seconds), 16 not ruled out."""
    lengths = sorted((192 + at * 769 % 1249 for at in range(20)), reverse=True)
    items = tuple(Item(length + 2, 1 + at * 7 % 6) for at, length in enumerate(lengths))
    task = Task((Stock(16 * 192 + 2, 1),), items)
    answer = solve(task)
    cut_from(task, answer)
    assert (answer.packing.cost, answer.bound, answer.proven) == (17, 16, False)


def test_the_same_task_is_cut_the_same_way() -> None:
    """Steps are counted, no clock is read: two runs agree to the last board."""
    task = sixty(prices=True)
    assert solve(task, 100_000) == solve(task, 100_000)


def test_more_steps_never_find_worse() -> None:
    """A longer search goes on where a shorter one stopped."""
    costs = [solve(sixty(prices=True), steps).packing.cost for steps in (1, 100_000, 400_000)]
    assert costs == sorted(costs, reverse=True)


def test_a_hundred_thousand_of_a_kind_are_cut_at_once() -> None:
    """Equal boards are one pattern and a number: 100,000 pieces of 3 from boards of 10 take 33,334."""
    answer = fewest(10, {3: 100_000})
    assert (answer.packing.cost, answer.proven) == (33_334, True)
    assert len(answer.packing.boards) == 2


def test_a_piece_that_fits_nothing_is_refused() -> None:
    """What asks for it has checked before; the engine still never answers with a plan that lacks a piece."""
    with pytest.raises(ValueError, match="a piece that must be cut fits no board"):
        fewest(10, {11: 1})
