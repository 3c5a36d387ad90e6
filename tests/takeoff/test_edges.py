"""The last input that is taken and the first that is refused, and the spot that a mistake is told at."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

import pytest

from builder.takeoff.expression import Applied, Constant, Rule
from builder.takeoff.glazing import Window, place
from builder.takeoff.measures import (
    DEGREE,
    MONEY,
    NUMBER,
    PERCENT,
    coverage,
    dimension,
    per_area,
    unit,
    weight_of_length,
)
from builder.takeoff.records import WallLayout
from builder.takeoff.values import Values
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.units import Unit
from tests.takeoff.writing import Written, mistakes, number, result, told, worked

FOOTING: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "footing_width": "18 in", "thickness": "6 in"}
WALL: dict[str, Written] = {"length": "20 ft", "height": "8 ft"}
TRENCH: dict[str, Written] = {"length": "10 ft", "width": "2 ft", "depth": "3 ft"}
PAD: dict[str, Written] = {"length": "10 ft", "width": "2 ft"}
PIER: dict[str, Written] = {"diameter": "12 in", "height": "4 ft"}
ROOF: dict[str, Written] = {"span": "16 ft", "length": "20 ft"}
BARS: dict[str, Written] = {"bar": "4", "runs": "42 ft"}
PIECES: dict[str, Written] = {"pieces": {"length": "10 ft"}, "stock": [{"length": "8 ft"}, {"length": "10 ft"}]}
PANES: dict[str, Written] = {"units": {"width": "3 ft"}, "post": "4 in"}
SLAB: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "thickness": "4 in"}

# Method, inputs, the value that is just taken, and the one that is just refused, of the key named.
EDGES: list[tuple[str, dict[str, Written], str, Written, Written]] = [
    ("strip_footing", FOOTING, "footing_width", "59 15/16 in", "5 ft"),
    ("strip_footing", FOOTING, "cross_walls", "13 ft 11 in", "14 ft"),
    ("strip_footing", FOOTING, "cross_walls", "99999 x 1 ft", "100000 x 1 ft"),
    ("strip_footing", FOOTING, "cross_walls", ["1 in"] * 400, ["1 in"] * 401),
    ("block_wall", WALL, "openings", "20 ft x 7 ft", "20 ft 1/16 in x 7 ft"),
    ("block_wall", WALL, "openings", "19 ft x 8 ft", "19 ft x 8 ft 1/16 in"),
    ("block_wall", WALL, "openings", ["10 ft x 8 ft", "10 ft x 7 ft 11 in"], ["10 ft x 8 ft", "10 ft x 8 ft"]),
    ("trench", TRENCH, "pipe_diameter", "23 15/16 in", "2 ft"),
    ("trench", TRENCH | {"width": "4 ft"}, "pipe_diameter", "35 15/16 in", "3 ft"),
    ("level_pad", PAD, "fall", "9 ft 11 in", "10 ft"),
    ("drain_run", {"length": "10 ft"}, "fall", "9 ft 11 in", "10 ft"),
    ("pier", PIER, "count", "100000", "100001"),
    ("roof", ROOF, "rise", "89 deg", "90 deg"),
    ("roof", ROOF | {"rise": "7 in"}, "sides", "2", "3"),
    ("rebar", BARS, "stock_length", "40 in", "39 15/16 in"),
    ("cut_list", PIECES, "pieces", {"length": "10 ft"}, {"length": "10 ft 1/16 in"}),
    ("cut_list", PIECES, "kerf", "119 in", "10 ft"),
    ("openings", PANES, "walls", {"clear_length": "8 1/16 in"}, {"clear_length": "8 in"}),
    ("slab", SLAB, "waste", "100%", "101%"),
]  # fmt: skip


@pytest.mark.parametrize(("method", "inputs", "key", "taken", "refused"), EDGES)
def test_the_last_value_is_taken_and_the_next_is_refused(
    method: str, inputs: dict[str, Written], key: str, taken: Written, refused: Written
) -> None:
    """One mistake, no more."""
    assert worked(method, **inputs | {key: taken}).results
    assert len(told(method, **inputs | {key: refused})) == 1


def test_a_strip_as_wide_as_the_building_is_wider_than_half_of_it_too_and_told_once() -> None:
    """The first of the two reasons is told."""
    assert [problem.found for problem in mistakes("strip_footing", **FOOTING | {"footing_width": "10 ft"})] == [
        "footing_width is 10 ft, and the building is only 10 ft across"
    ]


@pytest.mark.parametrize(
    ("method", "inputs", "key"),
    [
        ("cut_list", {"pieces": [{"count": "2", "length": "11 ft"}], "stock": [{"length": "10 ft"}]}, "length"),
        ("cut_list", {"pieces": {"length": "1 ft"}, "stock": [{"length": "10 ft"}, {"length": "120 in"}]}, "length"),
        (
            "cut_list",
            {"pieces": {"length": "1 ft"}, "stock": [{"length": "10 ft", "unit_cost": "4"}, {"length": "8 ft"}]},
            "stock",
        ),
        ("cut_list", PIECES | {"kerf": "10 ft"}, "kerf"),
        ("openings", PANES | {"walls": {"clear_length": "8 in"}}, "clear_length"),
        ("openings", {"walls": {"clear_length": "9 ft"}, "units": {"width": "3"}, "post": "4 in"}, "width"),
        ("block_wall", WALL | {"openings": "30 ft x 7 ft"}, "openings"),
        ("boards", {"pieces": {"thickness": "1 in", "width": "4 in"}}, "pieces"),
        ("boards", {"pieces": {"thickness": "1 in", "width": "4 in", "length": "2 ft", "colour": "red"}}, "colour"),
    ],
)
def test_a_mistake_in_a_row_is_told_at_its_key(method: str, inputs: dict[str, Written], key: str) -> None:
    """At the row itself only where something is missing from it."""
    assert [problem.place.key for problem in mistakes(method, **inputs)] == [key]


def test_a_row_that_is_a_list_is_told_without_a_guess() -> None:
    """Nothing is near to a list."""
    problem = mistakes("boards", pieces=[["2x4"]])[0]
    assert problem.found == "pieces 1 is a list, where thickness, width, length, count are due"
    assert problem.fix == ""


@pytest.mark.parametrize(
    ("side", "square"),
    [("ft", "ft2"), ("in", "ft2"), ("yd", "ft2"), ("mi", "ft2"), ("m", "m2"), ("cm", "m2"), ("mm", "m2")],
)
def test_an_area_by_its_sides_is_printed_in_the_square_of_its_habit(side: str, square: str) -> None:
    """Three by five; and the water is that of fifteen squares of the side."""
    rain = worked("rainwater", roof_area=f"3 {side} x 5 {side}", rainfall="1 in")
    printed = rain.steps[0].with_numbers.split(" × ")[0]
    assert printed.endswith(f" {square}")
    area = 15 * Quantity.of(1, side).in_unit("m") ** 2
    assert result(rain, "volume", "L") == area * Fraction("25.4") * Fraction("0.85")


# By hand, bars of 20 ft, laps of 40 x 1/2 in = 20 in: a run of 30 ft is a whole bar and an end of 11 ft 8 in.
@pytest.mark.parametrize(
    ("runs", "bars"),
    [
        # Ends of 11 ft 8 in, one from a bar: 3 + 3, and by length (90 + 5) / 20, so 5.
        ("3 x 30 ft", 6),
        # Ends of 40 - 2 x 18 ft 4 in = 3 ft 4 in, six from a bar: 12 + 1, and by length (240 + 20) / 20, so 13.
        ("6 x 40 ft", 13),
        # A run as long as a bar is one bar; one of two bars less a lap is two, both whole.
        ("4 x 20 ft", 4),
        ("3 x 38 ft 4 in", 6),
        # Ends of 11 ft 8 in and whole runs of 8 ft 4 in share bars to the last inch: 2 + 2.
        (["2 x 30 ft", "2 x 8 ft 4 in"], 4),
        (["2 x 30 ft", "2 x 8 ft 5 in"], 5),
    ],
)
def test_the_ends_of_runs_are_cut_from_the_fewest_bars(runs: Written, bars: int) -> None:
    """Whole bars of the runs, and the bars for their ends."""
    assert number(worked("rebar", bar="4", runs=runs, stock_length="20 ft"), "bars") == bars


@pytest.mark.parametrize(("waste", "bars"), [("0%", 6), ("10%", 7), ("100%", 12)])
def test_waste_buys_bars(waste: str, bars: int) -> None:
    """Twelve runs of 10 ft from bars of 20 ft, and what is wasted of them."""
    assert number(worked("rebar", bar="4", runs="12 x 10 ft", stock_length="20 ft", waste=waste), "bars") == bars


def test_without_heights_glass_is_the_width() -> None:
    """In metres: 1.5 m placed, and a window of 0.8 m for which no wall is left."""
    wide, narrow = (Window(width=Quantity.of(Fraction(width), "m"), height=None, count=1) for width in ("1.5", "0.8"))
    assert (wide.glass, narrow.glass) == (Fraction("1.5"), Fraction("0.8"))
    placing = place([Quantity.of(2, "m")], [narrow, wide], Quantity.of(10, "cm"))
    assert (placing.placed, placing.left) == (1, 1)
    assert placing.glass == placing.bound == Fraction("1.5")
    assert placing.proven


@pytest.mark.parametrize(
    ("one", "other", "product"),
    [
        (unit("ft"), unit("in"), unit("ft2")),
        (unit("ft2"), unit("in"), unit("gal")),
        (unit("kg/m3"), unit("yd3"), unit("lb")),
        (weight_of_length("lb", "ft"), unit("m"), unit("kg")),
        (coverage("ft2", "gal"), unit("L"), unit("m2")),
        (coverage("ft2", "roll"), unit("bag"), unit("m2")),
        (per_area("ft2"), unit("m2"), NUMBER),
        (MONEY, unit("board"), MONEY),
        (PERCENT, unit("t"), unit("lb")),
        (DEGREE, NUMBER, NUMBER),
    ],
)
def test_a_product_measures_what_its_parts_make_together(one: Unit, other: Unit, product: Unit) -> None:
    """Lengths make areas, areas and lengths volumes, densities of volumes weights; what is counted changes nothing."""
    worth = (Constant(Quantity(Fraction(3), one)) * Constant(Quantity(Fraction(5), other))).worth()
    assert worth.of(product).value == 15 * one.ratio * other.ratio / product.ratio
    assert worth.dimension == dimension(product)


@pytest.mark.parametrize("symbol", ["ft", "lb", "ft2", "gal", "kg/m3", "bag"])
def test_money_is_measured_in_nothing_else(symbol: str) -> None:
    """Nor is a price times a price a price."""
    price = Constant(Quantity(Fraction(7), MONEY))
    with pytest.raises(ValueError, match="is not measured in"):
        price.worth().of(unit(symbol))
    with pytest.raises(ValueError, match="is not measured in currency"):
        (price * price).worth().of(MONEY)
    assert price.worth().value == 7
    assert price.worth().dimension == (0, 0, 1)


LENGTH, WEIGHT = (Constant(Quantity(Fraction(2), unit(symbol))) for symbol in ("ft", "lb"))


@pytest.mark.parametrize(
    ("make", "message"),
    [
        ((LENGTH + WEIGHT).worth, "2 ft + 2 lb puts together what measures different things"),
        ((LENGTH - WEIGHT).worth, "2 ft − 2 lb puts together what measures different things"),
        (
            Applied(Rule.LARGER, (LENGTH, WEIGHT)).worth,
            "larger of(2 ft, 2 lb) compares what measures different things",
        ),
        (Applied(Rule.ROUND_UP, (LENGTH,)).worth, "round up(2 ft) takes a plain number"),
        (Applied(Rule.ROOT, (WEIGHT,)).worth, "square root(2 lb) takes a plain number"),
        (lambda: unit("4"), "'4' is no unit"),
        (lambda: coverage("ft2", ""), "'' is no unit"),
    ],
)
def test_a_formula_that_makes_no_sense_is_refused_in_whole_words(make: Callable[[], object], message: str) -> None:
    """A mistake in a method, told to whoever writes one."""
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        make()


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        ("quantity", "length is no Quantity"), ("yes", "length is no bool"), ("expression", "length is no formula"),
        ("lots", "length is no list"), ("sizes", "length is no list"), ("rows", "length is no list"),
    ],
)  # fmt: skip
def test_a_value_of_another_kind_is_refused_in_whole_words(asked: str, message: str) -> None:
    """A word is none of them; and what is not there is an empty list, or no word."""
    values = Values(at=Place(file="plan.yaml"), values={"length": "x"}, places={}, sources={})
    with pytest.raises(TypeError, match=f"^{message}$"):
        getattr(values, asked)("length")
    assert (values.word("length"), values.word("width")) == ("x", None)
    assert (values.lots("width"), values.has("width"), values.given("length")) == ((), False, False)
    assert values.place("length") == values.at


def test_of_windows_as_wide_as_each_other_the_one_with_more_glass_comes_first() -> None:
    """On the wall, and among those that find no place, whichever is written first."""
    small, tall = {"width": "2 ft", "height": "3 ft"}, {"width": "2 ft", "height": "4 ft"}
    wide = {"width": "9 ft", "height": "1 ft"}
    for units in ([small, wide, tall], [tall, small, wide]):
        layouts = [
            worked("openings", walls=[{"clear_length": length}], units=units, post="6 in").drawing
            for length in ("6 ft", "2 ft")
        ]
        placed, bare = (layout for layout in layouts if isinstance(layout, WallLayout))
        assert [str(unit.height) for unit in placed.walls[0].units] == ["4 ft", "3 ft"]
        assert [(str(unit.width), str(unit.height)) for unit in bare.left] == [
            ("9 ft", "1 ft"), ("2 ft", "4 ft"), ("2 ft", "3 ft"),
        ]  # fmt: skip


@pytest.mark.parametrize(
    ("units", "formula", "numbers"),
    [
        ([{"width": "2 ft", "height": "4 ft"}], "Σ width × height of each one placed", "2 ft × 4 ft"),
        ([{"width": "2 ft"}], "Σ width of each one placed", "2 ft"),
    ],
)
def test_the_glass_says_what_it_is_the_sum_of(units: Written, formula: str, numbers: str) -> None:
    """Areas, or widths where a height is not known."""
    step = worked("openings", walls={"clear_length": "6 ft"}, units=units, post="6 in").steps[-1]
    assert (step.formula, step.with_numbers) == (formula, numbers)


@pytest.mark.parametrize(
    ("method", "inputs", "found"),
    [
        ("strip_footing", FOOTING | {"cross_walls": ["7 ft", ""]}, "7:1: mistake: cross_walls 2 has no value"),
        ("block_wall", WALL | {"openings": [["3 ft", "7 ft"], ["3 ft", ""]]}, "5:1: mistake: openings 2 has no value"),
    ],
)
def test_an_empty_entry_of_a_list_is_told_with_its_number(method: str, inputs: dict[str, Written], found: str) -> None:
    """And with a length that could stand there."""
    (message,) = told(method, **inputs)
    assert message.startswith(f"plan.yaml:{found}; expected a length such as 9 ft 8 in or 2.4 m; ")
    assert message.endswith("write one, such as 12 ft, or remove it")
