"""What the parts of the cutting engine promise each other: effort, boards, patterns, prices, boxes."""

from __future__ import annotations

from itertools import product
from math import ceil

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from builder.takeoff.cutting.boards import Boards
from builder.takeoff.cutting.effort import Effort
from builder.takeoff.cutting.knapsack import best_filling
from builder.takeoff.cutting.packed import ONE
from builder.takeoff.cutting.relaxation import Box, Generation, Pool, Proof
from builder.takeoff.cutting.sequence import Sequence
from builder.takeoff.cutting.solve import _Solver, solve
from builder.takeoff.cutting.task import Answer, Item, Packing, Stock, Task
from tests.takeoff.test_cutting_steps import windows


def test_an_effort_is_spent_with_its_last_step() -> None:
    """Not before, and not only after."""
    effort = Effort(3)
    seen = [effort.spent]
    for _ in range(4):
        effort.spend(1)
        seen.append(effort.spent)
    assert seen == [False, False, False, True, True]


def test_the_last_piece_of_work_may_overdraw() -> None:
    """And then nothing is left."""
    effort = Effort(3)
    effort.spend(10)
    assert (effort.spent, effort.left) == (True, -7)


@pytest.mark.parametrize("seed", [22, 23, 26])
def test_an_answer_that_is_left_open_has_used_up_its_steps(seed: int) -> None:
    """What the search inside a box takes is taken from the whole; only its last piece of work may go over."""
    effort = Effort(200_000)
    answer = _Solver(windows(seed), effort).answer()
    assert not answer.proven
    assert -1000 < effort.left <= 0


def test_a_longer_list_of_pieces_takes_more_steps_to_fill_a_board_with() -> None:
    """Looking through a list is work too, where nothing in it fits."""
    taken = []
    for many in (10, 1000):
        effort = Effort(10_000)
        assert best_filling([1] * many, [50] * many, [1] * many, 49, effort).taken == ()
        taken.append(10_000 - effort.left)
    assert 0 < taken[0] < taken[1]


def test_a_filling_that_takes_trying_takes_steps() -> None:
    """Even lengths into an odd board: more of them, more steps."""
    taken = []
    for many in (4, 8, 12):
        lengths = [2 * length for length in range(101, 101 + many)]
        effort = Effort(10**6)
        best_filling(lengths, lengths, [2] * many, 1001, effort)
        taken.append(10**6 - effort.left)
    assert taken[0] < taken[1] < taken[2]
    assert taken[2] > 2 * taken[1] > 4 * taken[0] > 0


FEW = Task((Stock(10, 3), Stock(6, 2, 1)), (Item(5, 3), Item(2, 4, 7)))
TWO_FIVES, FIVE, TWOS = (0, ((0, 2),)), (1, ((0, 1),)), (0, ((1, 4),))


def test_boards_are_counted_as_they_are_cut() -> None:
    """Three pieces of 5 and four of 2 from boards of 10 for 3 and one of 6 for 2; a piece of 2 may be left for 7."""
    boards = Boards(FEW)
    assert [boards.times(pattern) for pattern in (TWO_FIVES, FIVE, TWOS)] == [1, 1, 1]
    boards.cut(TWO_FIVES)
    boards.cut(FIVE)
    assert (boards.rest, boards.used, boards.cost) == ([0, 4], [1, 1], 5)
    assert (boards.may_use(0), boards.may_use(1)) == (True, False)
    assert boards.times(FIVE) == 0
    packing = boards.packing()
    assert packing == Packing(boards=((TWO_FIVES, 1), (FIVE, 1)), left=(0, 4), cost=5 + 4 * 7)


def test_the_number_of_boards_that_are_sold_is_never_gone_beyond() -> None:
    """Five pieces would take five boards, of which there are two."""
    boards = Boards(Task((Stock(6, 1, 2),), (Item(5, 5, 1),)))
    assert boards.times((0, ((0, 1),))) == 2
    boards.cut((0, ((0, 1),)))
    assert boards.times((0, ((0, 1),))) == 1
    boards.cut((0, ((0, 1),)))
    assert (boards.times((0, ((0, 1),))), boards.may_use(0)) == (0, False)


def test_a_packing_without_a_piece_that_must_be_cut_is_none() -> None:
    """The pieces of 5 may not be left."""
    boards = Boards(FEW)
    boards.cut(TWOS)
    assert boards.packing() is None


def test_a_piece_may_be_left_out_for_nothing() -> None:
    """Then it costs nothing, however many of it are left."""
    assert Boards(Task((Stock(10, 3),), (Item(5, 2, 0),))).packing() == Packing(boards=(), left=(2,), cost=0)


def test_a_copy_goes_its_own_way() -> None:
    """What is cut from it is not cut from the first."""
    first = Boards(FEW)
    first.cut(FIVE)
    twin = first.copy()
    twin.cut(TWO_FIVES)
    assert (first.rest, first.used, first.cost) == ([2, 4], [0, 1], 2)
    assert (twin.rest, twin.used, twin.cost) == ([0, 4], [1, 1], 5)
    first.cut(TWO_FIVES, 1)
    assert first.packing() == twin.packing()


def test_equal_boards_are_one_pattern() -> None:
    """However often they are cut."""
    boards = Boards(Task((Stock(10, 3),), (Item(5, 12),)))
    boards.cut((0, ((0, 2),)), 2)
    boards.cut((0, ((0, 2),)))
    boards.cut((0, ((0, 2),)), 3)
    packing = boards.packing()
    assert packing == Packing(boards=(((0, ((0, 2),)), 6),), left=(0,), cost=18)


def test_a_pool_keeps_patterns_once_and_in_the_order_met() -> None:
    """And gives those that a box and the pieces left have room for."""
    pool = Pool()
    for pattern in (TWOS, TWO_FIVES, FIVE, TWOS):
        pool.add(pattern)
    assert list(pool.within((3, 4), Box((0, 0), (7, 1)))) == [TWOS, TWO_FIVES, FIVE]
    assert list(pool.within((3, 4), Box((0, 0), (7, 0)))) == [TWOS, TWO_FIVES]
    assert list(pool.within((1, 4), Box((0, 0), (7, 1)))) == [TWOS, FIVE]
    assert list(pool.within((2, 3), Box((0, 0), (0, 1)))) == [FIVE]


def relaxed(task: Task, box: Box, pool: Pool | None = None, steps: int = 10**6, rounds: int = 100) -> Proof:
    """The bound inside a box."""
    counts = [item.count for item in task.items]
    return Generation(task, counts, box, pool or Pool(), Effort(steps)).run(1, rounds).proof


def test_a_stock_outside_the_box_has_nothing_to_offer() -> None:
    """Its most valuable filling is none, also where its boards are free: three and a half of the others cost 10.50."""
    task = Task((Stock(10, 0, 2), Stock(8, 3)), (Item(4, 5), Item(3, 2)))
    assert relaxed(task, Box((0, 0), (0, 7))).tops[0] == 0
    assert relaxed(task, Box((0, 0), (0, 7))).cost(1) == 11
    assert relaxed(task, Box((0, 0), (2, 7))).tops[0] > 0


def test_a_pattern_that_was_met_is_used_again() -> None:
    """A second look at the same box takes fewer steps with the patterns of the first."""
    task = windows(9)
    box = Box((0,) * len(task.stocks), tuple(stock.most or 0 for stock in task.stocks))
    pool, taken = Pool(), []
    for _ in range(2):
        effort = Effort(10**6)
        Generation(task, [item.count for item in task.items], box, pool, effort).run(1, 1000)
        taken.append(10**6 - effort.left)
    assert taken[1] < taken[0]


@pytest.mark.parametrize(
    ("bound", "step", "cost"),
    [(0, 1, 0), (1, 1, 1), (ONE, 1, 1), (ONE + 1, 1, 2), (4 * ONE, 5, 5), (5 * ONE, 5, 5), (5 * ONE + 1, 5, 10)],
)
def test_a_bound_is_rounded_up_to_a_cost_that_can_be(bound: int, step: int, cost: int) -> None:
    """Where all costs are multiples of five, more than five means ten."""
    assert Proof((), (), bound).cost(step) == cost


def test_boards_that_cost_nothing_are_filled_all_the_same() -> None:
    """Two pieces of 5 fill the only board of 10."""
    assert solve(Task((Stock(10, 0, 1),), (Item(5, 2),))).packing.boards == (((0, ((0, 2),)), 1),)


def test_boards_that_cost_nothing_are_filled_to_the_last() -> None:
    """A piece of 6 and seven of 2 fill the only two boards of 10."""
    answer = solve(Task((Stock(10, 0, 2),), (Item(6, 1), Item(2, 7))))
    assert (answer.packing.left, answer.packing.cost, answer.proven) == ((0, 0), 0, True)


def test_the_longest_piece_goes_first_where_all_must_be_cut() -> None:
    """A piece of 9 beside nothing, though three of 4 fill a board of 12 to the end."""
    task = Task((Stock(12, 1),), (Item(9, 1), Item(4, 3)))
    packing = Sequence(task, Effort(1000)).fill(Boards(task))
    assert packing is not None
    assert packing.boards == (((0, ((0, 1),)), 1), ((0, ((1, 3),)), 1))


def test_what_is_begun_stays_as_it_is() -> None:
    """Filling goes on from boards that are cut, and leaves them alone."""
    task = Task((Stock(10, 3),), (Item(5, 4),))
    begun = Boards(task)
    begun.cut((0, ((0, 1),)))
    packing = Sequence(task, Effort(1000)).fill(begun)
    assert packing is not None
    assert packing.cost == 9
    assert (begun.rest, begun.used) == ([3], [1])


def test_a_piece_that_fits_nothing_is_refused_in_whole_words() -> None:
    """The engine's own words; what asks for it has checked before."""
    with pytest.raises(ValueError, match=r"^a piece that must be cut fits no board$"):
        solve(Task((Stock(10, 1),), (Item(11, 1),)))


def test_a_bound_of_its_own_cost_is_a_proof() -> None:
    """And so is one that is beyond it; less than the cost is none."""
    packing = Packing(boards=(), left=(), cost=5)
    assert [Answer(packing=packing, bound=bound).proven for bound in (4, 5, 6)] == [False, True, True]


@pytest.mark.parametrize(
    ("costs", "outside", "step"),
    [((4, 6), (), 2), ((4, 6), (3,), 1), ((0,), (), 1), ((0,), (10, 15), 5), ((7,), (), 7)],
)
def test_costs_differ_by_their_greatest_common_divisor(
    costs: tuple[int, ...], outside: tuple[int, ...], step: int
) -> None:
    """Of boards and of what may be left out; one where everything is free."""
    stocks = tuple(Stock(10 + at, cost) for at, cost in enumerate(costs))
    items = (Item(5, 2), *(Item(4 - at, 1, worth) for at, worth in enumerate(outside)))
    assert _Solver(Task(stocks, items), Effort(100))._step == step


@st.composite
def boxed(draw: st.DrawFn) -> tuple[Task, Box]:
    """Up to four lengths, some of which may be left out; up to three stocks, and a box with room for all of them."""
    lengths = sorted(draw(st.sets(st.integers(2, 12), min_size=1, max_size=4)), reverse=True)
    some_left = draw(st.booleans())
    items = tuple(
        Item(length, draw(st.integers(1, 9)), draw(st.integers(1, 30)) if some_left else None) for length in lengths
    )
    stocks = draw(st.lists(st.tuples(st.integers(12, 30), st.integers(1, 30)), min_size=1, max_size=3, unique=True))
    all_pieces = sum(item.count for item in items)
    least, most = [], []
    for _ in stocks:
        low, high = sorted(draw(st.tuples(st.integers(0, 6), st.integers(0, 6))))
        least.append(low)
        most.append(high if some_left else low + all_pieces)
    return Task(tuple(Stock(length, cost) for length, cost in stocks), items), Box(tuple(least), tuple(most))


def linear(task: Task, box: Box) -> float:
    """The linear program's optimum by HiGHS, over every pattern that fits."""
    columns: list[tuple[float, list[int]]] = []
    for at, stock in enumerate(task.stocks):
        of_stock = [int(at == other) for other in range(len(task.stocks))]
        for taken in product(*(range(item.count + 1) for item in task.items)):
            length = sum(item.length * many for item, many in zip(task.items, taken, strict=True))
            if length <= stock.length:
                columns.append((stock.cost, [*(-many for many in taken), *(-one for one in of_stock), *of_stock]))
    for at, item in enumerate(task.items):
        if item.outside is not None:
            rows = [-int(at == other) for other in range(len(task.items))]
            columns.append((item.outside, [*rows, *[0] * (2 * len(task.stocks))]))
    found = linprog(
        [cost for cost, _ in columns],
        A_ub=np.array([entries for _, entries in columns]).T,
        b_ub=[*(-item.count for item in task.items), *(-least for least in box.least), *box.most],
    )
    assert found.status == 0, found.message
    return float(found.fun)


@settings(max_examples=40)
@given(boxed())
def test_the_bound_inside_a_box_is_that_of_an_exact_solver(case: tuple[Task, Box]) -> None:
    """Rounded up to a whole cost: no fewer boards of a stock than the least, no more than the most."""
    task, box = case
    assert relaxed(task, box).cost(1) == ceil(linear(task, box) - 1e-6)


@settings(max_examples=40)
@given(boxed(), st.integers(0, 3))
def test_the_bound_inside_a_box_holds_after_any_number_of_rounds(case: tuple[Task, Box], rounds: int) -> None:
    """And is never beyond the exact one."""
    task, box = case
    assert relaxed(task, box, rounds=rounds).bound <= (linear(task, box) + 1e-6) * ONE
