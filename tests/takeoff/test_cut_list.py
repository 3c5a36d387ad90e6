"""The cut list as its author sees it: boards, kerf, prices, and the plan for the saw."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.takeoff.records import CutPlan, Takeoff
from tests.takeoff.rolls import ROLL, ROLLS
from tests.takeoff.writing import Written, number, result, worked


def plan_of(takeoff: Takeoff) -> CutPlan:
    """The cutting plan, which must be there."""
    assert isinstance(takeoff.drawing, CutPlan)
    return takeoff.drawing


def rows(plan: CutPlan) -> list[tuple[str, list[tuple[str, int]], str, int]]:
    """The plan in text: board, pieces with their number, offcut, how many boards."""
    return [
        (str(board.stock), [(str(piece.length), piece.count) for piece in board.pieces], str(board.offcut), board.count)
        for board in plan.boards
    ]


def test_nested_offcuts() -> None:
    """Builders' Guide: a 10 ft stick cut to 5 ft 1 in leaves 4 ft 11 in, from which a 3 ft 7 in upright is taken.

    Four of each take four sticks and not five; the book leaves the kerf out.
    """
    cut = worked(
        "cut_list",
        pieces=[{"length": "5 ft 1 in", "count": "4"}, {"length": "3 ft 7 in", "count": "4"}],
        stock={"length": "10 ft"},
        kerf="0 in",
    )
    assert number(cut, "boards") == 4
    assert rows(plan_of(cut)) == [
        ("10 ft", [("5.083333333 ft", 1), ("3.583333333 ft", 1)], "1.333333333 ft", 4),
    ]  # fmt: skip
    assert cut.proven is True


def test_the_paper_rolls_as_a_cut_list() -> None:
    """The published cutting stock example of 73 rolls, in the words of plan.yaml."""
    pieces: Written = [{"length": f"{length} mm", "count": str(count)} for length, count in ROLLS.items()]
    cut = worked("cut_list", pieces=pieces, stock={"length": f"{ROLL} mm"}, kerf="0 mm", metric=True)
    assert number(cut, "boards") == 73
    assert cut.proven is True
    assert result(cut, "offcut", "mm") == 73 * ROLL - 407_160


@pytest.mark.parametrize(("pieces", "boards"), [(3, 1), (4, 2)])
def test_the_kerf_falls_between_pieces_and_not_after_the_last(pieces: int, boards: int) -> None:
    """A board of 12 1/4 in holds three pieces of 4 in with two cuts of 1/8 in, to the last sixteenth."""
    cut = worked(
        "cut_list", pieces={"length": "4 in", "count": str(pieces)}, stock={"length": "12 1/4 in"}, kerf="1/8 in"
    )
    assert number(cut, "boards") == boards


def test_a_board_too_short_by_a_sixteenth() -> None:
    """The same three pieces with their two cuts do not come from 12 3/16 in."""
    cut = worked("cut_list", pieces={"length": "4 in", "count": "3"}, stock={"length": "12 3/16 in"}, kerf="1/8 in")
    assert number(cut, "boards") == 2


def test_the_kerf_is_an_eighth_unless_given() -> None:
    """Common practice, no source: and the page says so."""
    cut = worked("cut_list", pieces={"length": "4 in", "count": "3"}, stock={"length": "12 1/4 in"})
    assert number(cut, "boards") == 1
    kerf = next(each for each in cut.coefficients if each.key == "kerf")
    assert (str(kerf.value), kerf.given) == ("0.125 in", False)
    assert str(kerf.source).startswith("common practice, no source")


def test_what_is_left_over() -> None:
    """By hand: two boards of 10 ft less 7 ft, less 6 ft and 2 ft with an eighth of an inch between them."""
    cut = worked(
        "cut_list", pieces=[{"length": "7 ft"}, {"length": "6 ft"}, {"length": "2 ft"}], stock={"length": "10 ft"}
    )
    assert result(cut, "offcut", "in") == 3 * 12 + 2 * 12 - Fraction(1, 8)


def test_the_cheapest_boards_are_not_always_the_fewest() -> None:
    """Four pieces of 4 ft: two boards of 8 ft at 3.00 cost less than one of 16 ft at 7.50."""
    stock: Written = [{"length": "16 ft 1 in", "unit_cost": "7.50"}, {"length": "8 ft 1 in", "unit_cost": "3.00"}]
    cut = worked("cut_list", pieces={"length": "4 ft", "count": "4"}, stock=stock)
    assert number(cut, "cost") == 6
    assert number(cut, "boards") == 2
    assert [(each.key, each.quantity.value) for each in cut.results if each.key.startswith("boards_by_length")] == [
        ("boards_by_length_16_ft_1_in", 0),
        ("boards_by_length_8_ft_1_in", 2),
    ]


def test_without_prices_the_fewest_boards_each_as_short_as_will_do() -> None:
    """One board either way; the 8 ft one leaves less."""
    stock: Written = [{"length": "16 ft"}, {"length": "8 ft"}]
    cut = worked("cut_list", pieces={"length": "3 ft", "count": "2"}, stock=stock)
    assert number(cut, "boards_by_length_8_ft") == number(cut, "boards") == 1
    assert cut.get("cost") is None


def test_free_boards_come_first_and_no_more_of_them_than_needed() -> None:
    """Salvaged boards that cost nothing: six pieces of 2 ft come from two boards of 6 ft."""
    stock: Written = [{"length": "6 ft 1 in", "unit_cost": "0"}, {"length": "12 ft 1 in", "unit_cost": "9"}]
    cut = worked("cut_list", pieces={"length": "2 ft", "count": "6"}, stock=stock)
    assert number(cut, "cost") == 0
    assert number(cut, "boards") == 2
    assert cut.proven is True


def test_a_search_that_stopped_early_gives_its_bound() -> None:
    """Sixty lengths with odd prices: not proven, and the page has the cost that nobody can go below."""
    pieces: Written = [
        {"length": f"{12 + at * 37 % 79} 1/{2 + at % 3 * 2} in", "count": str(1 + at % 4)} for at in range(60)
    ]
    stock: Written = [
        {"length": "8 ft", "unit_cost": "4.19"}, {"length": "10 ft", "unit_cost": "5.27"},
        {"length": "12 ft", "unit_cost": "6.83"},
    ]  # fmt: skip
    cut = worked("cut_list", pieces=pieces, stock=stock)
    assert cut.proven is False
    assert cut.bound is not None
    assert cut.bound.key == "cost"
    assert number(cut, "cost") * Fraction(98, 100) < cut.bound.quantity.value < number(cut, "cost")
    cost = next(step for step in cut.steps if step.result == cut.get("cost"))
    assert str(cost.note) == f"the search stopped early; nobody can do with less than {cut.bound.quantity}"


lengths = st.integers(1, 96 * 8)


@settings(max_examples=50)
@given(st.lists(st.tuples(lengths, st.integers(1, 9)), min_size=1, max_size=8), st.integers(0, 3))
def test_no_cutting_plan_exceeds_its_board(pieces: list[tuple[int, int]], kerf: int) -> None:
    """Pieces and the cuts between them fit, every piece is there, and the offcuts add up."""
    written: Written = [{"length": f"{length}/8 in", "count": str(count)} for length, count in pieces]
    cut = worked("cut_list", pieces=written, stock=[{"length": "8 ft"}, {"length": "10 ft"}], kerf=f"{kerf}/8 in")
    found: dict[Fraction, int] = {}
    left = Fraction(0)
    for board in plan_of(cut).boards:
        number_of = sum(piece.count for piece in board.pieces)
        used = sum(piece.length.in_unit("in") * piece.count for piece in board.pieces)
        offcut = board.stock.in_unit("in") - used - (number_of - 1) * Fraction(kerf, 8)
        assert board.offcut.in_unit("in") == offcut >= 0
        left += offcut * board.count
        for piece in board.pieces:
            inches = piece.length.in_unit("in")
            found[inches] = found.get(inches, 0) + piece.count * board.count
    asked: dict[Fraction, int] = {}
    for length, count in pieces:
        asked[Fraction(length, 8)] = asked.get(Fraction(length, 8), 0) + count
    assert found == asked
    assert result(cut, "offcut", "in") == left
    assert number(cut, "boards") == sum(board.count for board in plan_of(cut).boards)
