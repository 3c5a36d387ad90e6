"""What a working prints is what it computed: each formula, worked out from its text, gives the result beside it."""

from __future__ import annotations

from fractions import Fraction
from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.takeoff.compute import take_off
from builder.takeoff.expression import Style
from builder.takeoff.records import Takeoff
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.words.quantity import Quantity, read_quantity
from tests.takeoff.corpus import CORPUS, FINDS, IDS
from tests.takeoff.reckoner import quantity, reckon
from tests.takeoff.writing import Written, entry, number, result, worked


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_the_formula_with_its_numbers_gives_the_result(method: str, inputs: dict[str, Written], metric: bool) -> None:
    """From the printed text alone, to the ten digits that are printed."""
    takeoff = worked(method, metric=metric, finds=FINDS, **inputs)
    assert takeoff.steps
    for step in takeoff.steps:
        assert isclose(reckon(step.with_numbers), quantity(str(step.result)), rel_tol=1e-8, abs_tol=1e-12), step.name


@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_every_result_stands_in_its_working(method: str, inputs: dict[str, Written]) -> None:
    """No figure without a step that it comes from."""
    takeoff = worked(method, finds=FINDS, **inputs)
    steps = [step.result for step in takeoff.steps]
    assert takeoff.results
    assert all(each.quantity in steps for each in takeoff.results)


@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_feet_and_metres_give_the_same(method: str, inputs: dict[str, Written]) -> None:
    """The journal's habit changes the unit of a result and never how much it is."""
    us, metric = (worked(method, metric=each, finds=FINDS, **inputs) for each in (False, True))
    assert [each.key for each in us.results] == [each.key for each in metric.results]
    for one, other in zip(us.results, metric.results, strict=True):
        if not one.quantity.unit.symbol.startswith("per "):
            assert one.quantity.like(other.quantity)
        assert one.quantity.value * one.quantity.unit.ratio == other.quantity.value * other.quantity.unit.ratio


@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_the_same_take_off_gives_the_same_record(method: str, inputs: dict[str, Written]) -> None:
    """No clock, no chance: two runs are equal to the last field."""
    assert worked(method, finds=FINDS, **inputs) == worked(method, finds=FINDS, **inputs)


def units(takeoff: Takeoff) -> dict[str, str]:
    """The unit of every result."""
    return {each.key: each.quantity.unit.symbol for each in takeoff.results}


def test_results_come_in_the_journal_s_habit() -> None:
    """Concrete in yd3 or m3, lengths in ft or m, weights of stone in ton or t, water in gal or L."""
    slab: dict[str, Written] = {"length": "3 m", "width": "4 m", "thickness": "4 in"}
    assert units(worked("slab", **slab)) == {"area": "ft2", "volume": "yd3", "volume_with_waste": "yd3"}
    assert units(worked("slab", metric=True, **slab)) == {"area": "m2", "volume": "m3", "volume_with_waste": "m3"}
    bed: dict[str, Written] = {"length": "3 m", "width": "4 m", "depth": "4 in"}
    assert units(worked("gravel_bed", **bed))["weight"] == "ton"
    assert units(worked("gravel_bed", metric=True, **bed))["weight"] == "t"
    rain: dict[str, Written] = {"roof_area": "12 m2", "rainfall": "1 in"}
    assert units(worked("rainwater", **rain)) == {"volume": "gal"}
    assert units(worked("rainwater", metric=True, **rain)) == {"volume": "L"}


def test_no_bag_no_bags() -> None:
    """The result is left out, and so are its steps."""
    slab = worked("slab", length="12 ft", width="9 ft", thickness="4 in")
    assert [each.key for each in slab.results] == ["area", "volume", "volume_with_waste"]
    assert not any("bag" in step.formula for step in slab.steps)


def test_waste_is_nothing_unless_given() -> None:
    """And the handbook's figure is only suggested."""
    slab = worked("slab", length="12 ft", width="9 ft", thickness="4 in")
    assert slab.get("volume") == slab.get("volume_with_waste")
    waste = next(each for each in slab.coefficients if each.key == "waste")
    assert (str(waste.value), waste.given, str(waste.source)) == ("0 %", False, "none is added unless waste is given")
    assert "8%" in str(slab.suggestions[0].text)


def test_waste_and_rounding_are_steps_of_their_own() -> None:
    """The working of a footing, whole."""
    footing = worked(
        "strip_footing",
        length="14 ft",
        width="10 ft",
        footing_width="18 in",
        thickness="6 in",
        bag="80 lb",
        waste="5%",
    )
    assert [(str(step.name), step.formula, step.with_numbers, str(step.result)) for step in footing.steps] == [
        (
            "centre line",
            "2 × ((length − footing width) + (width − footing width))",
            "2 × ((14 ft − 18 in) + (10 ft − 18 in))",
            "42 ft",
        ),
        ("volume", "centre line × footing width × thickness", "42 ft × 18 in × 6 in", "31.5 ft3"),
        ("volume in cubic yards", "volume", "31.5 ft3", "1.166666667 yd3"),
        ("volume with waste", "volume × (1 + waste)", "1.166666667 yd3 × (1 + 5%)", "1.225 yd3"),
        ("bags before rounding", "volume with waste ÷ bag yield", "1.225 yd3 ÷ 0.6 ft3", "55.125 bag"),
        ("bags", "round up(bags before rounding)", "round up(55.125 bag)", "56 bag"),
        ("weight to carry", "bags × bag", "56 bag × 80 lb", "4480 lb"),
    ]


def test_a_page_may_print_in_its_own_words_and_figures() -> None:
    """Names and quantities go through the page's hands; the signs of arithmetic stay."""
    slab = worked("slab", length="2.5 m", width="4 m", thickness="100 mm", metric=True)
    german = {"length": "Länge", "width": "Breite"}
    style = Style(
        word=lambda text: german.get(str(text), str(text)), measure=lambda each: shown(each).replace(".", ",")
    )
    assert slab.steps[0].formula_in(style) == "Länge × Breite"
    assert slab.steps[0].with_numbers_in(style) == "2,5 m × 4 m"


def test_a_number_that_was_found_has_no_formula() -> None:
    """Boards from the cutting plan are found; their cost is reckoned."""
    cut = worked("cut_list", pieces={"length": "3 ft"}, stock={"length": "8 ft", "unit_cost": "4"})
    assert [(str(step.name), step.is_found) for step in cut.steps][:3] == [
        ("boards of 8 ft", True),
        ("boards", False),
        ("cost", False),
    ]


def test_what_the_author_gave_is_kept_as_written() -> None:
    """Also the word about, which marks a judgement."""
    footing = worked(
        "strip_footing",
        length="about 14 ft",
        width="10 ft",
        footing_width="18 in",
        thickness="6 in",
        cross_walls=["about 5 ft", "5 ft"],
    )
    assert [(each.key, each.written, each.about) for each in footing.inputs] == [
        ("length", "14 ft", True),
        ("width", "10 ft", False),
        ("footing_width", "18 in", False),
        ("thickness", "6 in", False),
        ("cross_walls", "5 ft, 5 ft", True),
    ]


def test_lists_and_keys_are_kept_as_written() -> None:
    """On one line, with their brackets and commas."""
    walls = worked("openings", walls=[{"clear_length": "9 ft"}, {"clear_length": "8 ft"}],
                   units={"width": "30 in", "count": "4"}, post="6 in")  # fmt: skip
    wall = worked("block_wall", length="20 ft", height="8 ft", openings=[["3 ft", "7 ft"], "24 in x 48 in"])
    assert [each.written for each in walls.inputs] == [
        "clear_length 9 ft; clear_length 8 ft",
        "width 30 in, count 4",
        "6 in",
    ]
    assert wall.inputs[2].written == "[3 ft, 7 ft], 24 in x 48 in"


def notes(takeoff: Takeoff) -> list[str]:
    """What is said beside the steps."""
    return [str(step.note) for step in takeoff.steps if step.note is not None]


def test_openings_are_told_where_there_are_some() -> None:
    """And nowhere else."""
    told = "all openings are taken off, whatever their size (NCMA TEK 14, 1969)"
    assert told not in notes(worked("block_wall", length="20 ft", height="8 ft"))
    assert told in notes(worked("block_wall", length="20 ft", height="8 ft", openings=["3 ft x 7 ft"]))


@pytest.mark.parametrize("closed", ["yes", "true", "no", "false"])
def test_studs_say_how_they_are_counted(closed: str) -> None:
    """One more than spaces, or as many: 12 spaces of 24 in."""
    studs = worked("studs", length="24 ft", spacing="24 in", closed=closed)
    round_it_goes = closed in ("yes", "true")
    assert notes(studs)[0] == (
        "as many as there are spaces: the wall closes on itself"
        if round_it_goes
        else "one more than there are spaces, for the end"
    )
    assert number(studs, "count") == (12 if round_it_goes else 13)


def test_waste_is_added_to_the_studs() -> None:
    """13 and a tenth are 14.3, so 15."""
    assert number(worked("studs", length="24 ft", spacing="24 in", waste="10%"), "count") == 15


@pytest.mark.parametrize("sides", ["1", "2"])
def test_a_roof_says_what_its_run_is(sides: str) -> None:
    """Half of the span under a ridge, all of it under a lean-to."""
    roof = worked("roof", span="16 ft", length="20 ft", rise="6 in", sides=sides)
    told = [str(step.note) for step in roof.steps if str(step.name) == "run"]
    assert len(told) == 1
    assert ("half" in told[0]) == (sides == "2")


def test_a_take_off_that_is_not_known_stops_no_other() -> None:
    """One mistake, and the slab after it is worked out."""
    unknown = entry("slabb", {"length": "1 ft"}, "first")
    slab = entry("slab", {"length": "12 ft", "width": "9 ft", "thickness": "4 in"}, "second")
    takeoffs, problems = take_off([unknown, slab], (), metric=False)
    assert ([each.name for each in takeoffs], len(problems)) == (["second"], 1)


def test_a_cut_list_says_what_is_proven() -> None:
    """The fewest boards; or the cheapest, where they have a price."""
    pieces: dict[str, Written] = {"pieces": {"length": "4 ft", "count": "5"}}
    fewest = worked("cut_list", stock={"length": "8 ft"}, **pieces)
    cheapest = worked("cut_list", stock={"length": "8 ft", "unit_cost": "5"}, **pieces)
    assert "no plan can do with fewer: proven" in notes(fewest)
    assert "no plan can be cheaper: proven" in notes(cheapest)


def test_piers_are_counted() -> None:
    """Three take three times what one takes."""
    one, three = (
        result(worked("pier", diameter="12 in", height="4 ft", count=count), "volume", "ft3") for count in ("1", "3")
    )
    assert three == 3 * one


def test_a_coefficient_says_whether_it_was_given() -> None:
    """A default has its source, a given one says so."""
    default, given_one = (
        next(each for each in worked("finish", area="100 ft2", **more).coefficients if each.key == "coverage")
        for more in ({}, {"coverage": "300 ft2/gal"})
    )
    assert (str(default.value), default.given) == ("350 ft2/gal", False)
    assert str(default.source).startswith("read on how-to pages")
    assert (str(given_one.value), given_one.given, str(given_one.source)) == (
        "300 ft2/gal",
        True,
        "given in plan.yaml",
    )


def test_take_offs_come_in_the_order_written_and_a_bad_one_does_not_stop_the_others() -> None:
    """Every mistake in one run, and every take-off that can be worked out."""
    slab: dict[str, Written] = {"length": "12 ft", "width": "9 ft", "thickness": "4 in"}
    entries = [
        entry("slab", slab, "one"),
        entry("slab", slab | {"width": "0 ft"}, "two"),
        entry("slab", slab, "three"),
        entry("slob", slab, "four"),
    ]
    takeoffs, problems = take_off(entries, (), metric=False)
    assert [takeoff.name for takeoff in takeoffs] == ["one", "three"]
    assert [problem.found for problem in problems] == ["width: 0 ft is nothing", "slob is no take-off method"]


lengths = st.integers(1, 4000).map(lambda inches: Fraction(inches, 2))


@given(lengths, lengths, st.integers(1, 60), st.integers(1, 60))
def test_doubling_a_length_doubles_the_straight_part_of_a_footing(
    length: Fraction, width: Fraction, strip: int, thickness: int
) -> None:
    """The corners stay: twice the length adds twice that length of strip, on both sides together."""
    narrow = min(length, width)
    strip = min(strip, max(int(narrow / 2) - 1, 0))
    if not strip:
        return

    def volume(long: Fraction) -> Fraction:
        footing = worked(
            "strip_footing",
            length=f"{float(long)} in",
            width=f"{float(width)} in",
            footing_width=f"{strip} in",
            thickness=f"{thickness} in",
        )
        return result(footing, "volume", "in3")

    assert volume(2 * length) - volume(length) == 2 * length * strip * thickness


@given(st.integers(1, 400), st.integers(1, 400), st.integers(0, 100))
def test_bags_hold_the_volume_and_one_bag_fewer_does_not(length: int, width: int, waste: int) -> None:
    """Whole bags after waste."""
    slab = worked("slab", length=f"{length} in", width=f"{width} in", thickness="4 in", bag="80 lb", waste=f"{waste}%")
    needed = result(slab, "volume_with_waste", "ft3")
    bags = number(slab, "bags")
    assert needed == Fraction(length * width * 4, 1728) * (1 + Fraction(waste, 100))
    assert (bags - 1) * Fraction("0.6") < needed <= bags * Fraction("0.6")


@given(st.integers(1, 100_000))
def test_a_length_on_the_tape_is_written_exactly(sixteenths: int) -> None:
    """Feet and inches to a sixteenth, read back, are the same length to the last digit."""
    length = Quantity.of(Fraction(sixteenths, 192), "ft")
    assert read_quantity(shown(length)).in_unit("m") == length.in_unit("m")


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (Fraction(29, 3), "ft", "9 ft 8 in"),
        (Fraction(39, 4), "ft", "9 ft 9 in"),
        (Fraction(42), "ft", "42 ft"),
        (Fraction(1, 2), "ft", "6 in"),
        (Fraction(1, 7), "ft", "0.1428571429 ft"),
        (Fraction(7, 2), "in", "3 1/2 in"),
        (Fraction(3, 8), "in", "3/8 in"),
        (Fraction(8, 3), "in", "2.666666667 in"),
        (Fraction(7, 6), "yd3", "1.166666667 yd3"),
        (Fraction(6), "piece", "6"),
    ],
)
def test_a_quantity_is_written_as_builders_write_it(value: Fraction, unit: str, text: str) -> None:
    """Feet and inches where the tape has them, decimals elsewhere, a bare number for pieces."""
    assert shown(Quantity.of(value, unit)) == text


def test_a_sentence_keeps_its_pattern_and_its_values_apart() -> None:
    """The pattern is the key a translation is looked up by."""
    text = Text("at least {bound} of {what}").put(bound=Quantity.of(12, "board"), what="pine")
    assert str(text) == "at least 12 board of pine"
    assert text.pattern == "at least {bound} of {what}"
    assert dict(text.values) == {"bound": Quantity.of(12, "board"), "what": "pine"}
