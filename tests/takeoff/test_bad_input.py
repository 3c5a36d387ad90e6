"""Every mistake in a take-off with its whole message: place, what was found, what was expected, a likely fix."""

from __future__ import annotations

import pytest

from builder.takeoff.registry import METHODS
from tests.takeoff.writing import FILE, Written, mistakes, told, worked

FOOTING: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "footing_width": "18 in", "thickness": "6 in"}
SLAB: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "thickness": "4 in"}
WALL: dict[str, Written] = {"length": "20 ft", "height": "8 ft"}
PIT: dict[str, Written] = {"length": "14 ft", "width": "10 ft", "depth": "3 ft"}
ROOF: dict[str, Written] = {"span": "16 ft", "length": "20 ft"}
ONE_PIECE: dict[str, Written] = {"pieces": {"length": "1 ft"}}
A_BOARD: dict[str, Written] = {"stock": {"length": "10 ft"}}
A_WALL: dict[str, Written] = {"walls": {"clear_length": "10 ft"}, "post": "4 in"}

LENGTH = "a length such as 9 ft 8 in or 2.4 m"
AREA = "an area such as 120 ft2, 11 m2 or 10 ft x 12 ft"
RATE = "a part such as 10% or 0.1"
WHOLE = "a whole number such as 4"
NUMBER = "a number such as 40 or 2.5"
RISE = "the rise in 12 in of run, such as 7 in, or a slope such as 1:2 or 30 deg"
SLOPE = "a slope such as 2%, 1:48 or 1/4 in per ft"
COVERAGE = "what one unit covers, such as 350 ft2 per gal or 10 m2 per L"

# Method, inputs, the line of the mistake (1 the name, 2 the method, 3 the first input), and the message.
MESSAGES: list[tuple[str, dict[str, Written], int, str]] = [
    # What is not there, or not known.
    ("strip_footing", {"length": "14 ft", "width": "10 ft", "footing_width": "18 in"}, 1,
     f"footing has no thickness; expected {LENGTH}; add thickness: 6 in"),
    ("slab", SLAB | {"lenght": "3 ft"}, 6,
     "slab takes no lenght; expected one of length, width, thickness, bag, bag_yield, waste; did you mean length?"),
    ("slab", SLAB | {"colour": "grey"}, 6,
     "slab takes no colour; expected one of length, width, thickness, bag, bag_yield, waste"),
    ("slab", SLAB | {"length": ""}, 3, f"length has no value; expected {LENGTH}; write length: 14 ft"),
    ("slab", SLAB | {"length": ["14 ft"]}, 3, f"length is a list, where a length is due; expected {LENGTH}"),
    ("slab", SLAB | {"length": {"feet": "14"}}, 3,
     f"length is a group of keys, where a length is due; expected {LENGTH}"),
    # A measure that is not the one due.
    ("slab", SLAB | {"length": "14"}, 3, f"length: 14 has no unit; expected {LENGTH}; write 14 ft or 14 in"),
    ("slab", SLAB | {"length": "14 ft2"}, 3, f"length: 14 ft2 is an area, where a length is due; expected {LENGTH}"),
    ("slab", SLAB | {"length": "3 bags"}, 3, f"length: 3 bags is a count, where a length is due; expected {LENGTH}"),
    ("slab", SLAB | {"length": "14 fet"}, 3,
     f"length: 14 fet is a count, where a length is due; expected {LENGTH}; did you mean 14 ft?"),
    ("slab", SLAB | {"length": "ten"}, 3, f"length: ten is not a quantity; expected {LENGTH}"),
    ("rainwater", {"roof_area": "20 ft", "rainfall": "1 in"}, 3,
     (f"roof_area: 20 ft is a length, where an area is due; expected {AREA}; "
     "write the area in ft2, or both sides, such as 20 ft x 20 ft")),
    ("rainwater", {"roof_area": "20 ft x 3 lb", "rainfall": "1 in"}, 3,
     f"roof_area: 3 lb is a weight, where a length is due; expected {LENGTH}"),
    ("rebar", {"bar": "4", "runs": "42 ft", "lap": "20 in"}, 5,
     f"lap: 20 in is a length, where a number is due; expected {NUMBER}"),
    ("rebar", {"runs": "42 ft", "weight_per_length": "0.888 kg"}, 4,
     ("weight_per_length: 0.888 kg is no weight of a length; expected a weight of a length such as 0.668 lb/ft or "
     "0.994 kg/m")),
    ("gravel_bed", {"length": "9 ft", "width": "9 ft", "depth": "4 in", "density": "1.35 ton"}, 6,
     "density: 1.35 ton is a weight, where a density is due; expected a density such as 2700 lb/yd3 or 1600 kg/m3"),
    ("finish", {"area": "20 ft2", "coverage": "350 ft2"}, 4,
     f"coverage: 350 ft2 does not say how much covers it; expected {COVERAGE}"),
    ("finish", {"area": "20 ft2", "coverage": "350 ft2 per lb"}, 4,
     f"coverage: 350 ft2 per lb does not say how much covers it; expected {COVERAGE}"),
    ("finish", {"area": "20 ft2", "coverage": "350 ft per gal"}, 4,
     (f"coverage: 350 ft is a length, where an area is due; expected {AREA}; "
     "write the area in ft2, or both sides, such as 350 ft x 350 ft")),
    # Nothing, less than nothing, too much.
    ("slab", SLAB | {"length": "0 ft"}, 3, f"length: 0 ft is nothing; expected {LENGTH}; give more than zero"),
    ("slab", SLAB | {"length": "-3 ft"}, 3, f"length: -3 ft is negative; expected {LENGTH}; write 3 ft"),
    ("slab", SLAB | {"waste": "300%"}, 6,
     f"waste: 300% is more than the whole; expected {RATE}; did you mean 30%?"),
    ("cut_list", {"pieces": {"length": "11 ft"}, "stock": [{"length": "8 ft"}, {"length": "10 ft"}]}, 3,
     ("pieces 1 is 11 ft, and the longest board is 10 ft; expected pieces that fit a board; "
     "add a longer board to stock, or plan a joint and write two pieces")),
    ("slab", SLAB | {"waste": "1000%"}, 6,
     f"waste: 1000% is more than the whole; expected {RATE}; did you mean 100%?"),
    ("slab", SLAB | {"waste": "3000%"}, 6,
     f"waste: 3000% is more than the whole; expected {RATE}; a part is at most 100%"),
    ("slab", SLAB | {"waste": "5"}, 6, f"waste: 5 has no % sign; expected {RATE}; write 5%"),
    ("slab", SLAB | {"waste": "lots%"}, 6, f"waste: lots% is not a number; expected {RATE}"),
    ("rainwater", {"roof_area": "20 ft2", "rainfall": "1 in", "efficiency": "0%"}, 5,
     f"efficiency: 0% is nothing; expected {RATE}; give more than zero"),
    ("finish", {"area": "20 ft2", "coats": "0"}, 4, f"coats: 0 is nothing; expected {NUMBER}; give more than zero"),
    ("pier", {"diameter": "12 in", "height": "4 ft", "count": "0"}, 5,
     f"count: 0 is nothing; expected {WHOLE}; give more than zero"),
    ("pier", {"diameter": "12 in", "height": "4 ft", "count": "1.5"}, 5,
     f"count: 1.5 is no whole number; expected {WHOLE}"),
    ("pier", {"diameter": "12 in", "height": "4 ft", "count": "100001"}, 5,
     "count: 100001 is more than can be counted here; expected at most 100000"),
    # Waste where there is none.
    ("pit", PIT | {"waste": "5%"}, 6,
     ("pit takes no waste; expected one of length, width, depth, side_slope, workspace, swell, truck; "
     "leave waste out: swell is what digging adds")),
    ("cut_list", ONE_PIECE | A_BOARD | {"waste": "5%"}, 5,
     "cut_list takes no waste; expected one of pieces, stock, kerf; leave waste out: the plan knows every offcut"),
    ("rainwater", {"roof_area": "20 ft2", "rainfall": "1 in", "waste": "5%"}, 5,
     ("rainwater takes no waste; expected one of roof_area, rainfall, efficiency; "
     "leave waste out: efficiency says what is lost")),
    ("drain_run", {"length": "9 ft", "fall": "1 in", "waste": "5%"}, 5,
     "drain_run takes no waste; expected one of length, fall, slope; leave waste out: nothing is bought by this"),
    ("openings", A_WALL | {"units": {"width": "3 ft"}, "waste": "5%"}, 6,
     "openings takes no waste; expected one of walls, units, post; leave waste out: nothing is cut"),
    # Bags.
    ("slab", SLAB | {"bag": "70 lb"}, 6,
     ("no yield is known for a bag of 70 lb; expected a bag of 40 lb, 50 lb, 60 lb or 80 lb, or its yield beside it; "
     "give bag_yield: the volume printed on the bag")),
    ("slab", SLAB | {"bag_yield": "0.6 ft3"}, 6,
     "bag_yield stands without its bag; expected the weight of one bag beside it; add bag: 80 lb"),
    ("slab", SLAB | {"bag_yield": "12 L"}, 6,
     "bag_yield stands without its bag; expected the weight of one bag beside it; add bag: 25 kg"),
    ("slab", SLAB | {"bag": "27 kg"}, 6,
     ("no yield is known for a bag of 27 kg; expected a bag of 40 lb, 50 lb, 60 lb or 80 lb, or its yield beside it; "
     "give bag_yield: the volume printed on the bag, such as 12 L")),
    ("slab", SLAB | {"bag": "1 t"}, 6,
     ("no yield is known for a bag of 1 t; expected a bag of 40 lb, 50 lb, 60 lb or 80 lb, or its yield beside it; "
     "give bag_yield: the volume printed on the bag, such as 12 L")),
    ("slab", SLAB | {"bag": "80 lb", "bag_yield": "0.6"}, 7,
     "bag_yield: 0.6 has no unit; expected a volume such as 0.6 ft3, 5 yd3 or 17 L; write 0.6 ft3"),
    # Footings.
    ("strip_footing", FOOTING | {"footing_width": "12 ft"}, 5,
     ("footing_width is 12 ft, and the building is only 10 ft across; expected a strip narrower than the building; "
     "length and width are the outside of the footing; check the units")),
    ("strip_footing", FOOTING | {"footing_width": "5 ft"}, 5,
     ("two strips of 5 ft leave nothing between them in 10 ft; expected strips with ground between them; "
     "for a solid base use method: slab")),
    ("strip_footing", FOOTING | {"cross_walls": "14 ft"}, 7,
     ("a cross wall of 14 ft is longer than the building; expected the clear length between the footings it joins; "
     "check its unit")),
    ("strip_footing", FOOTING | {"cross_walls": []}, 7,
     "cross_walls is an empty list; expected 1 to 400 entries, as in [7 ft]"),
    ("strip_footing", FOOTING | {"cross_walls": ["7 ft"] * 401}, 7,
     "cross_walls has 401 entries; expected 1 to 400 entries, as in [7 ft]"),
    ("strip_footing", FOOTING | {"cross_walls": ["3 ft", "4"]}, 7,
     f"cross_walls 2: 4 has no unit; expected {LENGTH}; write 4 ft or 4 in"),
    ("strip_footing", FOOTING | {"cross_walls": "0 x 4 ft"}, 7,
     "cross_walls: 0 x 4 ft is no number of pieces; expected 1 to 99999 of them"),
    ("strip_footing", FOOTING | {"cross_walls": ""}, 7,
     "cross_walls has no value; expected a list of lengths such as [12 ft, 9 ft 8 in]; write cross_walls: [7 ft]"),
    # Walls.
    ("block_wall", {"length": "20 ft"}, 1,
     "nothing says how high the wall is; expected height or courses, one of the two; add height: 8 ft or courses: 12"),
    ("block_wall", WALL | {"courses": "12"}, 5,
     "height and courses both say how high the wall is; expected height or courses, one of the two; leave one out"),
    ("block_wall", WALL | {"openings": [["20 ft 1 in", "7 ft"]]}, 5,
     ("an opening of 20 ft 1 in x 7 ft is larger than the wall; expected openings within 20 ft x 8 ft; "
     "write the width first, then the height")),
    ("block_wall", {"length": "20 ft", "courses": "3", "openings": "3 ft x 7 ft"}, 5,
     ("an opening of 3 ft x 7 ft is larger than the wall; expected openings within 20 ft x 24 in; "
     "write the width first, then the height")),
    ("brick_wall", WALL | {"brick_length": "8 in", "brick_height": "2 in", "openings": "8 ft x 9 ft"}, 7,
     ("an opening of 8 ft x 9 ft is larger than the wall; expected openings within 20 ft x 8 ft; "
     "write the width first, then the height")),
    ("block_wall", WALL | {"openings": [["20 ft", "7 ft"], ["20 ft", "1 ft"]]}, 5,
     ("the openings together leave nothing of the wall; expected less than 20 ft x 8 ft in all; "
     "check their sizes, and whether one is written twice")),
    ("block_wall", WALL | {"openings": [["3 ft"]]}, 5,
     "openings is no width and height; expected a size such as [3 ft, 7 ft]"),
    ("block_wall", WALL | {"openings": "3 ft"}, 5,
     "openings is no width and height; expected a size such as [3 ft, 7 ft]"),
    ("block_wall", WALL | {"openings": [["3 ft", "7 ft"], ["3 ft", "x"]]}, 5,
     f"openings 2: x is not a quantity; expected {LENGTH}"),
    ("block_wall", WALL | {"filled_cores": "4"}, 5,
     ("filled_cores stands without core_volume; expected the volume of one hollow in one block beside it; "
     "measure a block: length x width of the hollow x height of the block")),
    ("block_wall", WALL | {"core_volume": "0.2 ft3"}, 5,
     ("core_volume stands without filled_cores; expected how many hollows are filled; "
     "add filled_cores: 10, or leave core_volume out")),
    # Ground and drains.
    ("pit", PIT | {"side_slope": "1:2"}, 6,
     ("side_slope: 1:2 does not end in 1; expected how far the side leans out for 1 down, such as 1.5 or 3/4; "
     "write how far out for 1 down, such as 1.5:1")),
    ("level_pad", {"length": "10 ft", "width": "2 ft", "fall": "12 ft"}, 5,
     ("the ground falls 12 ft over 10 ft, steeper than 1 in 1; expected a fall smaller than the length; "
     "check the units of fall")),
    ("trench", {"length": "10 ft", "width": "2 ft", "depth": "1 ft", "pipe_diameter": "12 in"}, 6,
     ("a pipe of 12 in does not fit into a trench of 1 ft; expected a pipe smaller than the trench is wide and deep; "
     "check the units of pipe_diameter")),
    ("drain_run", {"length": "10 ft"}, 1,
     ("nothing says how steep the drain is; expected fall or slope, one of the two; "
     "add slope: 1/4 in per ft or fall: 10 in")),
    ("drain_run", {"length": "10 ft", "fall": "3 in", "slope": "2%"}, 5,
     "fall and slope both say how steep the drain is; expected fall or slope, one of the two; leave one out"),
    ("drain_run", {"length": "10 ft", "fall": "10 ft"}, 4,
     "the drain falls 10 ft over 10 ft; expected a fall smaller than the length; check the units of fall"),
    ("drain_run", {"length": "10 ft", "slope": "2"}, 4, f"slope: 2 has no % sign; expected {SLOPE}; write 2%"),
    ("drain_run", {"length": "10 ft", "slope": "0%"}, 4,
     f"slope: 0% is nothing; expected {SLOPE}; give a slope above zero"),
    ("drain_run", {"length": "10 ft", "slope": "0 in per ft"}, 4,
     f"slope: 0 in per ft is nothing; expected {SLOPE}; give a slope above zero"),
    ("drain_run", {"length": "10 ft", "slope": "1/4 lb per ft"}, 4,
     f"slope: 1/4 lb is no length; expected {SLOPE}"),
    # Bars.
    ("rebar", {"bar": "#4", "runs": "42 ft"}, 3,
     'bar has no value: a # begins a comment; expected a bar size such as "#4" or no. 4; write "#4"'),
    ("rebar", {"bar": "9", "runs": "42 ft"}, 3,
     ("bar: 9 is no bar size known here; expected one of #3, #4, #5, #6, #7, #8; "
     "for another bar give bar_diameter and weight_per_length instead of bar")),
    ("rebar", {"runs": "42 ft"}, 1,
     ("neither bar nor weight_per_length is given; expected bar, or bar_diameter and weight_per_length; "
     'add bar: "#4" (in quotes), or bar: no. 4')),
    ("rebar", {"runs": "42 ft", "weight_per_length": "0.888 kg/m", "stock_length": "20 ft"}, 1,
     ("neither bar nor bar_diameter is given; expected bar, or bar_diameter and weight_per_length; "
     'add bar: "#4" (in quotes), or bar: no. 4')),
    ("rebar", {"bar": "4", "runs": "42 ft", "stock_length": "39 in"}, 5,
     ("a bar of 39 in is too short for two laps of 40 bar diameters; expected bars of at least twice the lap; "
     "check stock_length, and that lap is a number of bar diameters")),
    # Timber.
    ("studs", {"length": "10 ft", "spacing": "16 in", "closed": "maybe"}, 5,
     "closed: maybe is neither yes nor no; expected yes or no"),
    ("boards", {"pieces": ["2x4"]}, 3,
     ("pieces 1 is a single value, where thickness, width, length, count are due; expected a list such as "
     "[{thickness: 2 in, width: 6 in, length: 8 ft, count: 14}]")),
    ("boards", {"pieces": {"thickness": "1 in", "width": "4 in", "lenght": "3 ft"}}, 3,
     "pieces 1 takes no lenght; expected one of thickness, width, length, count; did you mean length?"),
    ("boards", {"pieces": {"thickness": "1 in", "width": "4 in"}}, 3,
     f"pieces 1 has no length; expected {LENGTH}; add length: 8 ft"),
    ("cut_list", {"pieces": [{"length": "1 ft"}, {"length": "11 ft"}]} | A_BOARD, 3,
     ("pieces 2 is 11 ft, and the longest board is 10 ft; expected pieces that fit a board; "
     "add a longer board to stock, or plan a joint and write two pieces")),
    ("cut_list", ONE_PIECE | {"stock": [{"length": "10 ft", "unit_cost": "4"}, {"length": "8 ft"}]}, 4,
     ("boards of 8 ft have no unit_cost, and others have; expected a unit_cost for every length, or for none; "
     "add unit_cost to it")),
    ("cut_list", ONE_PIECE | {"stock": [{"length": "10 ft"}, {"length": "120 in"}]}, 4,
     "boards of 120 in stand twice; expected each length once; leave one of them out"),
    ("cut_list", ONE_PIECE | {"stock": {"length": "10 ft", "unit_cost": "$4"}}, 4,
     "unit_cost: $4 has a currency mark; expected a price such as 6.10; write 4: the currency stands in journal.yaml"),
    ("cut_list", ONE_PIECE | A_BOARD | {"kerf": "10 ft"}, 5,
     "kerf is 10 ft, as much as a board; expected a cut such as 1/8 in"),
    # Roofs.
    ("roof", ROOF | {"rise": "90 deg"}, 5,
     f"rise: 90 deg is upright or leans over; expected {RISE}; give an angle below 90 deg"),
    ("roof", ROOF | {"rise": "0"}, 5, f"rise: 0 is nothing; expected {RISE}; give a slope above zero"),
    ("roof", ROOF | {"rise": "180 mm"}, 5,
     f"rise: 180 mm is no rise in 12 in of run; expected {RISE}; write it as a slope, such as 1:2 or 30 deg"),
    ("roof", ROOF | {"rise": "7 in", "sides": "3"}, 6,
     "sides is neither 1 nor 2; expected 1 for a lean-to, 2 for a gable roof"),
    # Windows.
    ("openings", A_WALL | {"units": "salvaged"}, 5,
     ("no salvaged or secondhand line item carries a size; expected line items such as {material: Window, source: "
     "salvaged, size: 24 in x 48 in}; add size to the windows in the episodes, or list the units here")),
    ("openings", A_WALL | {"units": "salvged"}, 5,
     ("units 1 is a single value, where width, height, count are due; expected a list such as "
     "[{width: 24 in, height: 48 in, count: 3}]; did you mean salvaged?")),
    ("openings", {"walls": {"clear_length": "8 in"}, "post": "4 in", "units": {"width": "3 ft"}}, 3,
     ("two posts of 4 in leave nothing of a wall of 8 in; expected a wall wider than its two posts; "
     "check the units of post and clear_length")),
]  # fmt: skip


@pytest.mark.parametrize(("method", "inputs", "line", "message"), MESSAGES)
def test_a_mistake_is_told_in_full(method: str, inputs: dict[str, Written], line: int, message: str) -> None:
    """One mistake, one message, at its place."""
    assert told(method, **inputs) == [f"{FILE}:{line}:1: mistake: {message}"]


def test_an_unknown_method_is_told_with_the_likely_one() -> None:
    """At the place of the method; the inputs are not looked at."""
    words = ", ".join(sorted(method.doc.word for method in METHODS))
    assert told("strip_foting", whatever="1") == [
        f"{FILE}:2:1: mistake: strip_foting is no take-off method; expected one of {words}; did you mean strip_footing?"
    ]


def test_a_metric_journal_is_told_metric_units() -> None:
    """The likely fix is in what the journal is kept in."""
    assert mistakes("slab", metric=True, **SLAB | {"length": "14"})[0].fix == "write 14 m or 14 mm"
    assert mistakes("rainwater", metric=True, roof_area="20 m", rainfall="1 in")[0].fix == (
        "write the area in m2, or both sides, such as 20 m x 20 m"
    )


def test_all_mistakes_of_a_take_off_are_told_at_once() -> None:
    """Unknown, missing and wrong ones together."""
    found = [problem.found for problem in mistakes("slab", length="0 ft", thickness="4", colour="grey")]
    assert found == [
        "slab takes no colour",
        "length: 0 ft is nothing",
        "thickness: 4 has no unit",
        "footing has no width",
    ]


def test_a_long_value_is_cut_short() -> None:
    """A message stays readable whatever stands in the file."""
    problem = mistakes("slab", **SLAB | {"length": "x" * 500})[0]
    assert len(problem.found) < 100


@pytest.mark.parametrize("entries", [0, 401])
def test_a_list_has_its_limits(entries: int) -> None:
    """A cutting plan of more than 400 lengths is not one that anybody saws."""
    problem = mistakes("cut_list", pieces=[{"length": "1 ft"}] * entries, **A_BOARD)[0]
    assert problem.expected.startswith("1 to 400 entries")


@pytest.mark.parametrize(
    ("method", "inputs"),
    [
        ("slab", SLAB | {"waste": "0%"}),
        ("pit", PIT | {"side_slope": "0", "workspace": "0 ft"}),
        ("block_wall", WALL | {"corners": "0"}),
        ("roof", ROOF | {"rise": "7", "overhang": "0 ft"}),
        ("cut_list", ONE_PIECE | {"stock": {"length": "10 ft", "unit_cost": "0"}, "kerf": "0 in"}),
        ("gravel_bed", {"length": "9 ft", "width": "9 ft", "depth": "4 in", "compaction": "0%"}),
    ],
)
def test_zero_stands_where_it_means_something(method: str, inputs: dict[str, Written]) -> None:
    """No waste, straight sides, no kerf, free boards."""
    assert worked(method, **inputs).results


@pytest.mark.parametrize("key", ["length", "width", "thickness"])
@pytest.mark.parametrize("value", ["0 ft", "0 mm", "-1 ft", "-1"])
def test_a_size_is_above_zero(key: str, value: str) -> None:
    """Zero and negative sizes are refused, whatever their unit."""
    assert len(mistakes("slab", **SLAB | {key: value})) == 1
