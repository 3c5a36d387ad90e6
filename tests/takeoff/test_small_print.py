"""What a working says beside its figures, and figures that only show in one branch of a method. By hand, no source."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import partial

import pytest

from builder.takeoff import sawing
from builder.takeoff.compute import take_off
from builder.takeoff.cutting.solve import solve
from builder.takeoff.glazing import Window, place
from builder.takeoff.records import Takeoff
from builder.takeoff.registry import methods
from builder.takeoff.sawing import Board, Sawn, saw
from builder.takeoff.values import Lot
from builder.words.quantity import Quantity
from tests.takeoff.test_cutting_steps import whole_boards
from tests.takeoff.writing import Written, entry, number, result, told, worked

FEET = partial(Quantity.of, unit="ft")


def note(takeoff: Takeoff, step: str) -> str:
    """What stands beside a step, or "" where nothing does."""
    (found,) = [each.note for each in takeoff.steps if str(each.name) == step]
    return str(found or "")


@pytest.mark.parametrize(("thickness", "is_thin"), [("3/4 in", True), ("1 in", False), ("1 1/2 in", False)])
def test_only_what_is_thinner_than_an_inch_is_said_to_count_as_one(thickness: str, is_thin: bool) -> None:
    """A board foot is an inch thick at least; what is an inch thick is what it is."""
    piece: Written = {"thickness": thickness, "width": "6 in", "length": "8 ft"}
    assert ("1 in" in note(worked("boards", pieces=piece), "piece 1")) is is_thin


@pytest.mark.parametrize(("given", "bags"), [({}, 1), ({"courses": "7"}, 2), ({"blocks_per_mortar_bag": "2"}, 3)])
def test_mortar_bags_are_blocks_by_what_a_bag_lays(given: dict[str, Written], bags: int) -> None:
    """A block of 16 x 8 in: two to a course of 32 in, 12 to a bag. 3 courses are 6 blocks, 7 courses 14."""
    wall = worked("block_wall", length="32 in", **{"courses": "3", **given})
    assert number(wall, "mortar_bags") == bags


def test_mortar_is_reckoned_by_the_thousand_bricks() -> None:
    """96 bricks of 8 x 3 in to 16 ft2, and 10 ft3 for a thousand."""
    bricks: dict[str, Written] = {"brick_length": "7 1/2 in", "brick_height": "2 1/2 in", "joint": "1/2 in"}
    wall = worked("brick_wall", length="4 ft", height="4 ft", mortar_per_thousand="10 ft3", **bricks)
    assert result(wall, "mortar_volume", "ft3") == Fraction(96, 100)


def test_openings_are_taken_off_under_their_name() -> None:
    """In names, and with the size of each."""
    wall = worked("block_wall", length="20 ft", height="8 ft", openings=[["3 ft", "7 ft"], ["2 ft", "3 ft"]])
    step = wall.steps[1]
    assert (str(step.name), step.formula) == ("net area", "length × height − Σ openings")
    assert step.with_numbers == "20 ft × 8 ft − (3 ft × 7 ft + 2 ft × 3 ft)"


@pytest.mark.parametrize(("volume", "bag"), [("12 L", "25 kg"), ("0.012 m3", "25 kg"), ("0.6 ft3", "80 lb")])
def test_a_yield_without_its_bag_asks_for_one_of_its_own_habit(volume: str, bag: str) -> None:
    """Litres and cubic metres are printed on bags in kilograms."""
    inputs: dict[str, Written] = {"length": "4 m", "width": "3 m", "thickness": "10 cm", "bag_yield": volume}
    _, (problem,) = take_off([entry("slab", inputs)], (), metric=False)
    assert problem.fix == f"add bag: {bag}"


def test_a_suggestion_begins_with_its_rate_and_then_names_its_source() -> None:
    """Of every method that has any."""
    suggestions = [each for doc in methods() for each in doc.suggestions]
    assert suggestions
    assert all(re.match(r"\d+%", str(each.text)) and "%" not in str(each.source) for each in suggestions)


@pytest.mark.parametrize("method", ["slab", "strip_footing", "pier"])
def test_a_bag_of_an_unknown_yield_is_refused_by_all_that_is_poured(method: str) -> None:
    """Nobody knows how much 44 lb make."""
    sizes: dict[str, dict[str, Written]] = {
        "slab": {"length": "14 ft", "width": "10 ft", "thickness": "4 in"},
        "strip_footing": {"length": "14 ft", "width": "10 ft", "footing_width": "18 in", "thickness": "6 in"},
        "pier": {"diameter": "12 in", "height": "4 ft"},
    }
    takeoffs, (problem,) = take_off([entry(method, {**sizes[method], "bag": "44 lb"})], (), metric=False)
    assert (takeoffs, problem.found) == ((), "no yield is known for a bag of 44 lb")


@pytest.mark.parametrize(
    ("run", "said"),
    [
        ("42 ft", "one lap fewer than the bars in each run"),
        ("20 ft", "no run is longer than a bar, so nothing is lapped"),
    ],
)
def test_laps_say_where_they_come_from(run: str, said: str) -> None:
    """From bars of 20 ft."""
    assert note(worked("rebar", bar="4", runs=[run], stock_length="20 ft"), "laps") == said


def test_windows_of_a_kind_count_as_often_as_there_are() -> None:
    """Three of 2 x 3 ft, of which two fit: 12 ft2, and no layout has more."""
    placing = place([FEET(6)], [Window(width=FEET(2), height=FEET(3), count=3)], FEET(Fraction(1, 2)))
    assert (placing.placed, placing.left, placing.proven) == (2, 1, True)
    assert placing.glass == placing.bound == 12 * Fraction("0.3048") ** 2


def test_what_boards_cost_is_their_number_times_their_price() -> None:
    """Two of 8 ft at 3.00 and none of 16 ft."""
    stock: Written = [{"length": "16 ft 1 in", "unit_cost": "7.50"}, {"length": "8 ft 1 in", "unit_cost": "3.00"}]
    cut = worked("cut_list", pieces={"length": "4 ft", "count": "4"}, stock=stock)
    step = next(each for each in cut.steps if str(each.name) == "cost")
    assert (step.with_numbers, str(step.result)) == ("0 board × 7.5 + 2 board × 3", "6 currency")


def test_boards_without_a_price_are_bounded_in_boards(monkeypatch: pytest.MonkeyPatch) -> None:
    """Twelve boards sawn up without any waste: after a few steps thirteen are found, and twelve might do."""
    monkeypatch.setattr(sawing, "solve", lambda task: solve(task, 5000))
    task = whole_boards(195)
    pieces: Written = [{"length": f"{item.length}/4 in", "count": str(item.count)} for item in task.items]
    cut = worked("cut_list", pieces=pieces, stock={"length": f"{task.stocks[0].length}/4 in"}, kerf="0 in")
    assert (cut.proven, number(cut, "boards")) == (False, 13)
    assert cut.bound is not None
    assert (cut.bound.key, str(cut.bound.quantity)) == ("boards", "12 board")
    assert note(cut, "boards") == "the search stopped early; nobody can do with less than 12 board"


# A mistake in one input of a method whose others are right, and the end of what is told.
MISTAKES: list[tuple[str, dict[str, Written], str]] = [
    # only an area can be told by its sides
    ("slab", {"bag": "80 ft"}, "; expected a weight such as 80 lb or 25 kg"),
    ("rainwater", {"roof_area": "3 ft3"}, "; expected an area such as 120 ft2, 11 m2 or 10 ft x 12 ft"),
    # a tenth of it would still be more than the whole
    ("slab", {"waste": "1005%"}, "; a part is at most 100%"),
    ("slab", {"waste": "1000%"}, "; did you mean 100%?"),
    ("rebar", {"weight_per_length": "0.668 per ft"}, "; write 0.668 lb"),
    ("strip_footing", {"cross_walls": ["7 ft", ""]}, "; write one, such as 12 ft, or remove it"),
    ("slab", {"length": "about about 14 ft"}, "; write 14 ft"),
]
RIGHT: dict[str, dict[str, Written]] = {
    "slab": {"length": "14 ft", "width": "10 ft", "thickness": "4 in"},
    "rainwater": {"roof_area": "140 ft2", "rainfall": "1 in"},
    "rebar": {"runs": "42 ft", "bar": "4"},
    "strip_footing": {"length": "14 ft", "width": "10 ft", "footing_width": "18 in", "thickness": "6 in"},
}


@pytest.mark.parametrize(("method", "wrong", "end"), MISTAKES)
def test_a_fix_is_offered_where_it_is_one(method: str, wrong: dict[str, Written], end: str) -> None:
    """And nothing is where nobody can guess."""
    (message,) = told(method, **{**RIGHT[method], **wrong})
    assert message.endswith(end)


def test_a_rise_may_be_told_in_feet() -> None:
    """Half a foot in twelve inches of run is six inches in twelve."""
    feet, inches = (
        worked("roof", span="16 ft", length="20 ft", rise=rise).get("rafter") for rise in ("1/2 ft", "6 in")
    )
    assert feet == inches


def sawn(pieces: dict[int, int], boards: dict[int, int]) -> Sawn:
    """Pieces by length in feet and number, from boards by length and price, with a saw that takes nothing."""
    lots = [Lot(FEET(length), count) for length, count in pieces.items()]
    return saw(lots, [Board(FEET(length), Fraction(cost)) for length, cost in boards.items()], FEET(0))


def test_of_free_boards_no_more_are_taken_than_needed() -> None:
    """Both pieces come from one board of 14 ft; the dearer ones are left where they are."""
    found = sawn({5: 1, 1: 1}, {14: 0, 16: 7})
    assert (found.boards, found.cost, found.bound, found.proven) == ((1, 0), 0, 0, True)


def test_many_free_boards_are_cheaper_than_one_that_costs_something() -> None:
    """Five pieces of 2 ft from five free boards of 2 ft, though one of 20 ft for 1.00 would hold them all."""
    found = sawn({2: 5}, {2: 0, 20: 1})
    assert (found.boards, found.cost, found.bound, found.proven) == ((5, 0), 0, 0, True)


def test_a_bound_beside_free_boards_is_that_of_what_is_paid() -> None:
    """19 ft only come from the board for 9.00; the five pieces of 2 ft are cut from free ones."""
    found = sawn({19: 1, 2: 5}, {2: 0, 20: 9})
    assert (found.boards, found.cost, found.bound, found.proven) == ((5, 1), 9, 9, True)


def test_the_longest_boards_are_sawn_first() -> None:
    """Whichever is written first."""
    for boards in ({8: 4, 10: 5}, {10: 5, 8: 4}):
        plan = sawn({9: 1, 7: 1}, boards).plan
        assert [str(board.stock) for board in plan.boards] == ["10 ft", "8 ft"]
