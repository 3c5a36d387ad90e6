"""What methods declare: the table of methods, readable examples, sources, cautions, and catalogue keys."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.takeoff import cautions
from builder.takeoff.declared import EXAMPLES, Input, Kind, MethodDoc
from builder.takeoff.reading.scalars import read_scalar
from builder.takeoff.records import Caution
from builder.takeoff.registry import METHODS, method_named, methods
from builder.takeoff.text import Text
from tests.takeoff.corpus import CORPUS, FINDS
from tests.takeoff.writing import Written, worked

PACKAGE = Path(cautions.__file__).parent

# The methods of the format, what each takes beside waste and coefficients, and the results it promises.
TABLE: dict[str, tuple[str, str]] = {
    "strip_footing": (
        "length width footing_width thickness cross_walls bag bag_yield",
        "centre_line volume volume_with_waste bags",
    ),
    "slab": ("length width thickness bag bag_yield", "area volume volume_with_waste bags"),
    "pier": ("diameter height count bag bag_yield", "volume volume_with_waste bags"),
    "block_wall": (
        (
            "length height courses openings block_length block_height corners blocks_per_mortar_bag "
            "filled_cores core_volume"
        ),
        "net_area courses blocks half_blocks mortar_bags grout_volume",
    ),
    "brick_wall": (
        "length height openings brick_length brick_height joint mortar_per_thousand",
        "net_area per_area bricks mortar_volume",
    ),
    "gravel_bed": ("length width depth density compaction", "volume weight"),
    "level_pad": ("length width fall swell truck", "slope cut_volume loose_volume loads"),
    "pit": (
        "length width depth side_slope workspace swell truck",
        "volume average_end_area_volume loose_volume loads",
    ),
    "trench": ("length width depth pipe_diameter", "volume stone_volume"),
    "drain_run": ("length fall slope", "fall slope"),
    "rebar": ("bar runs lap stock_length", "total_length bars weight"),
    "boards": ("pieces", "board_feet"),
    "studs": ("length spacing corners closed", "count"),
    "cut_list": ("pieces stock kerf", "boards cost offcut"),
    "roof": ("span length rise overhang sides", "rafter area squares"),
    "rainwater": ("roof_area rainfall efficiency", "volume"),
    "finish": ("area coverage coats", "amount"),
    "openings": ("walls units post", "placed left_over"),
}
COLUMNS = {
    ("boards", "pieces"): ["thickness", "width", "length", "count"],
    ("cut_list", "pieces"): ["length", "count"],
    ("cut_list", "stock"): ["length", "unit_cost"],
    ("openings", "walls"): ["clear_length"],
    ("openings", "units"): ["width", "height", "count"],
}
# What a method takes besides: coefficients, and waste where something can be wasted.
BESIDES = {"waste", "bar_diameter", "weight_per_length", "studs_per_corner"}
WITHOUT_WASTE = {"level_pad", "pit", "drain_run", "cut_list", "rainwater", "openings"}
DOCS = methods()
WORDS = [doc.word for doc in DOCS]


def test_every_method_of_the_format_is_there() -> None:
    """Each once, under its own word."""
    assert sorted(WORDS) == sorted(TABLE)
    assert [method_named(word) for word in WORDS] == list(METHODS)
    assert method_named("wall") is None


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_a_method_takes_and_gives_what_the_format_says(doc: MethodDoc) -> None:
    """The inputs and results of the table, and nothing else but coefficients, waste and results with waste."""
    takes, gives = (words.split() for words in TABLE[doc.word])
    keys = [kept.key for kept in doc.inputs]
    assert [key for key in keys if key not in BESIDES] == takes
    assert ("waste" in keys) == (doc.word not in WITHOUT_WASTE) == (not doc.no_waste)
    assert [output.key for output in doc.outputs if output.key in gives] == gives


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_rows_have_the_columns_of_the_format(doc: MethodDoc) -> None:
    """Lists of mappings, and only they, have columns."""
    rows = {(doc.word, kept.key): [column.key for column in kept.columns] for kept in doc.inputs if kept.columns}
    assert rows == {key: columns for key, columns in COLUMNS.items() if key[0] == doc.word}
    assert {kept.key for kept in doc.inputs if kept.kind is Kind.ROWS} == {key for _, key in rows}


@pytest.mark.parametrize(("method", "inputs"), CORPUS)
def test_only_declared_results_come_out(method: str, inputs: dict[str, Written]) -> None:
    """In the order declared; one that is not always there says when it is."""
    doc = next(doc for doc in DOCS if doc.word == method)
    keys = [result.key for result in worked(method, finds=FINDS, **inputs).results]
    named = ["boards_by_length_..." if key.startswith("boards_by_length_") else key for key in keys]
    declared = [output.key for output in doc.outputs]
    assert list(dict.fromkeys(named)) == [key for key in declared if key in named]
    assert all(output.when for output in doc.outputs if output.key not in named)
    assert len(set(keys)) == len(keys)


def scalar_inputs() -> Iterator[tuple[str, Input]]:
    """Every input and column that is a single value, with the method it belongs to."""
    for doc in DOCS:
        for kept in (*doc.inputs, *(column for each in doc.inputs for column in each.columns)):
            if kept.kind not in (Kind.ROWS, Kind.LENGTHS, Kind.SIZES):
                yield doc.word, kept


SCALARS = list(scalar_inputs())


@pytest.mark.parametrize(("method", "kept"), SCALARS, ids=[f"{method}-{kept.key}" for method, kept in SCALARS])
def test_every_example_and_default_can_be_read(method: str, kept: Input) -> None:
    """What the messages and the format page tell people to write."""
    assert kept.meaning
    for text in (kept.example, *(default.written for default in kept.defaults)):
        read_scalar(text.strip('"'), kept, metric=False)


@pytest.mark.parametrize("kind", [kind for kind in Kind if kind is not Kind.ROWS])
def test_every_kind_has_its_example(kind: Kind) -> None:
    """To complete "expected ..."."""
    assert EXAMPLES[kind]


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_every_default_of_a_coefficient_has_its_source(doc: MethodDoc) -> None:
    """A sentence that says where the number comes from, or that it is practice or memory."""
    for kept in doc.inputs:
        if kept.coefficient:
            assert all(len(str(default.source)) > 20 for default in kept.defaults), kept.key


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_every_method_says_that_it_is_not_a_design(doc: MethodDoc) -> None:
    """First of all its cautions; none stands twice, and each has its source."""
    assert doc.cautions[0] is cautions.NOT_A_DESIGN
    assert str(doc.cautions[0].text).startswith("A take-off is for buying materials; it is not a design.")
    assert len(set(doc.cautions)) == len(doc.cautions)
    assert all(str(caution.text).endswith(".") for caution in doc.cautions)
    assert all(str(caution.source) and not str(caution.source).endswith(".") for caution in doc.cautions)
    assert str(doc.source)
    assert doc.about.endswith(".")


HAZARDS: list[tuple[Caution, str]] = [
    (cautions.WET_CONCRETE, "strip_footing slab pier block_wall brick_wall"),
    (cautions.SILICA, "strip_footing slab pier block_wall brick_wall gravel_bed"),
    (cautions.COLD, "strip_footing slab pier block_wall brick_wall"),
    (cautions.CURING, "strip_footing slab pier"),
    (cautions.FROST, "strip_footing pier"),
    (cautions.FOOTING_SIZE, "strip_footing"),
    (cautions.CALL, "strip_footing slab pier level_pad pit trench drain_run gravel_bed"),
    (cautions.TRENCH_WALLS, "level_pad pit trench drain_run"),
    (cautions.SIDE_SLOPES, "pit"),
    (cautions.LEAD, "openings finish studs boards cut_list"),
    (cautions.ASBESTOS, "openings"),
    (cautions.GLAZING, "openings"),
    (cautions.TREATED, "studs boards cut_list"),
    (cautions.HEIGHT, "studs roof rainwater"),
    (cautions.DRAIN_SLOPE, "drain_run"),
    (cautions.STRUCTURE, "strip_footing slab pier block_wall brick_wall rebar studs roof openings"),
]


@pytest.mark.parametrize(("caution", "words"), HAZARDS)
def test_a_caution_stands_where_its_hazard_is(caution: Caution, words: str) -> None:
    """With every method that leads to it, and with no other."""
    assert {doc.word for doc in DOCS if caution in doc.cautions} == set(words.split())


# Figures that a caution repeats, and how well they are known: as the sources were read, quoted or remembered.
@pytest.mark.parametrize(
    ("caution", "figures", "mark"),
    [
        # Seen in the source itself.
        (cautions.COLD, ["40 F (5 C)"], "American Concrete Institute"),
        (cautions.CURING, ["7 to 21 days"], "03301A, paragraph 3.5"),
        (cautions.WET_CONCRETE, ["12 to 13", "4 to 5.5"], "National Precast Concrete Association"),
        (cautions.LEAD, ["1978"], "40 CFR 745.83"),
        (cautions.DRAIN_SLOPE, ["1/4 in per ft", "2 1/2 in", "1/8 in", "1/16 in", "8 in"], "Table 704.1"),
        # Seen where somebody quotes it.
        (cautions.SILICA, ["50 micrograms", "8 hours"], "as quoted by"),
        (cautions.FROST, ["12 in"], "as quoted by"),
        (cautions.FOOTING_SIZE, ["6 in thick", "2 in"], "an older edition, as quoted"),
        (cautions.ASBESTOS, ["1980"], "as quoted by"),
        (cautions.GLAZING, ["9 ft2", "18 in", "36 in", "24 in", "60 in"], "as quoted by"),
        (cautions.SIDE_SLOPES, ["20 ft", "3/4", "1 1/2"], "as quoted by"),
        (cautions.TREATED, [], "as quoted by"),
        (cautions.CALL, ["811"], "as quoted by"),
        # Nobody has looked it up.
        (cautions.TRENCH_WALLS, ["5 ft"], "from memory"),
    ],
)
def test_a_caution_says_how_well_its_figures_are_known(caution: Caution, figures: list[str], mark: str) -> None:
    """The figures stand in the sentence, their mark in its source."""
    assert all(figure in str(caution.text) for figure in figures)
    assert mark in str(caution.source)


@pytest.mark.parametrize(
    ("word", "waste"),
    [
        ("strip_footing", "5%"), ("slab", "8%"), ("pier", "5%"), ("roof", "5% to 8%"), ("brick_wall", "5%"),
        ("rebar", "10%"), ("strip_footing", "10%"), ("slab", "10%"),
    ],
)  # fmt: skip
def test_the_handbook_s_waste_is_suggested(word: str, waste: str) -> None:
    """Estimating in Building Construction ch. 10 and p. 181; Navy course 14070; an old rule for brick; CVE 367."""
    doc = next(doc for doc in DOCS if doc.word == word)
    assert any(str(each.text).startswith(waste) and str(each.source) for each in doc.suggestions)


def calls_of_text() -> Iterator[tuple[str, ast.Call]]:
    """Every place where a sentence is made, in the whole layer."""
    for path in sorted(PACKAGE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Text":
                yield f"{path.relative_to(PACKAGE)}:{node.lineno}", node


def test_every_sentence_is_a_plain_string() -> None:
    """So that it can be a key of a catalogue. Names of inputs and rules come from their declarations."""
    from_declarations = {
        "working.py": 'key.replace("_", " ")',
        "expression.py": "self.rule.value",
        "text.py": "self.pattern",
    }
    odd = [
        at
        for at, call in calls_of_text()
        if not (isinstance(call.args[0], ast.Constant) and isinstance(call.args[0].value, str))
        and ast.unparse(call.args[0]).replace("'", '"') != from_declarations.get(at.partition(":")[0])
    ]
    assert odd == []


def test_a_pattern_has_only_places_that_are_filled() -> None:
    """A pattern without values is printed as it stands, so it may hold no brace."""
    filled = {"{length}", "{bound}", "{number}", "{volume}"}
    for _, call in calls_of_text():
        if isinstance(call.args[0], ast.Constant):
            pattern = str(call.args[0].value)
            assert "{" not in pattern or any(place in pattern for place in filled)


def test_a_text_without_values_prints_its_pattern() -> None:
    """Percent signs and all."""
    assert str(Text("5% for footings")) == "5% for footings"
