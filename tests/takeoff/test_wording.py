"""How methods speak: titles, meanings, names and formulas of steps; and what an input may be: missing, zero, listed."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from builder.takeoff.declared import Input, Kind, MethodDoc
from builder.takeoff.reading.scalars import read_scalar
from builder.takeoff.registry import methods
from builder.words.numbers import Unreadable
from tests.takeoff.corpus import CORPUS, FINDS, IDS
from tests.takeoff.writing import Written, told, worked

DOCS = methods()
WORDS = [doc.word for doc in DOCS]

# Without these nothing can be worked out, and a method says so; the others have a default or are not needed.
REQUIRED = {
    "level_pad": "length width fall",
    "pit": "length width depth",
    "trench": "length width depth",
    "drain_run": "length",
    "gravel_bed": "length width depth",
    "strip_footing": "length width footing_width thickness",
    "slab": "length width thickness",
    "pier": "diameter height",
    "rebar": "runs",
    "block_wall": "length",
    "brick_wall": "length height brick_length brick_height",
    "studs": "length spacing",
    "boards": "pieces",
    "cut_list": "pieces stock",
    "roof": "span length rise",
    "rainwater": "roof_area rainfall",
    "openings": "walls units post",
    "finish": "area",
}
REQUIRED_COLUMNS = {
    ("boards", "pieces"): "thickness width length",
    ("cut_list", "pieces"): "length",
    ("cut_list", "stock"): "length",
    ("openings", "walls"): "clear_length",
    ("openings", "units"): "width",
}
# Straight sides, no waste, no corner: zero says something. Elsewhere it is a slip of the pen.
MAY_BE_ZERO = {
    "waste", "corners", "joint", "compaction", "side_slope", "workspace", "overhang", "kerf", "unit_cost",
}  # fmt: skip
ZEROS = {
    Kind.LENGTH: "0 in", Kind.AREA: "0 m2", Kind.VOLUME: "0 L", Kind.WEIGHT: "0 kg", Kind.DENSITY: "0 lb/yd3",
    Kind.COUNT: "0", Kind.NUMBER: "0", Kind.RATE: "0%", Kind.PRICE: "0", Kind.SIDE_SLOPE: "0",
    Kind.COVERAGE: "0 ft2/gal", Kind.WEIGHT_OF_LENGTH: "0 lb/ft",
}  # fmt: skip
# Numbers that a formula needs beside the dimensions; a page lists them with their sources.
COEFFICIENTS = {
    "level_pad": "swell",
    "pit": "swell",
    "trench": "waste",
    "drain_run": "",
    "gravel_bed": "density compaction waste",
    "strip_footing": "bag_yield waste",
    "slab": "bag_yield waste",
    "pier": "bag_yield waste",
    "rebar": "lap bar_diameter weight_per_length waste",
    "block_wall": "block_length block_height blocks_per_mortar_bag waste",
    "brick_wall": "joint mortar_per_thousand waste",
    "studs": "studs_per_corner waste",
    "boards": "waste",
    "cut_list": "kerf",
    "roof": "waste",
    "rainwater": "efficiency",
    "openings": "",
    "finish": "coverage waste",
}


def each_input() -> Iterator[tuple[str, Input]]:
    """Every input and column with the method it belongs to."""
    for doc in DOCS:
        for kept in (*doc.inputs, *(column for each in doc.inputs for column in each.columns)):
            yield doc.word, kept


INPUTS = list(each_input())


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_a_title_has_one_capital_and_no_full_stop(doc: MethodDoc) -> None:
    """It stands over a take-off on its page."""
    assert str(doc.title) == str(doc.title).capitalize()
    assert re.fullmatch("[A-Z][a-z -]+", str(doc.title))
    assert doc.about[0].isupper()
    assert doc.about.endswith(".")


@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_a_take_off_bears_the_title_and_the_word_of_its_method(method: str, inputs: dict[str, Written]) -> None:
    """With the cautions and the suggestions that belong to it."""
    doc = next(doc for doc in DOCS if doc.word == method)
    takeoff = worked(method, finds=FINDS, **inputs)
    assert (takeoff.method, takeoff.title) == (method, doc.title)
    assert (takeoff.cautions, takeoff.suggestions) == (doc.cautions, doc.suggestions)
    assert takeoff.name == "footing"


def phrase(text: str) -> bool:
    """Whether a text can stand behind a colon: small letters at its beginning, no full stop at its end."""
    return re.match(r"[a-z]{2}|[a-z] |\d|π", text) is not None and not text.endswith(".")


@pytest.mark.parametrize("doc", DOCS, ids=WORDS)
def test_what_stands_behind_a_colon_is_a_phrase(doc: MethodDoc) -> None:
    """Meanings of inputs and results, and when a result is there."""
    for kept in doc.inputs:
        assert all(phrase(each.meaning) for each in (kept, *kept.columns)), kept.key
    for output in doc.outputs:
        assert phrase(output.meaning), output.key
        assert output.when == "" or output.when.startswith("where "), output.key
    assert doc.no_waste == "" or doc.no_waste.startswith("leave waste out: ")


@pytest.mark.parametrize(("method", "inputs"), CORPUS, ids=IDS)
def test_the_name_of_a_step_and_its_note_are_phrases(method: str, inputs: dict[str, Written]) -> None:
    """They stand in a table, beside a number."""
    for step in worked(method, finds=FINDS, **inputs).steps:
        assert phrase(str(step.name)), step.name
        assert step.note is None or phrase(str(step.note)), step.note


@pytest.mark.parametrize("kind", Kind)
def test_a_kind_completes_the_words_where_it_is_due(kind: Kind) -> None:
    """`where a length is due`, with its article."""
    assert re.fullmatch("an? [a-z ]+|yes or no", kind.value)
    assert kind.value.startswith("an ") == (kind is Kind.AREA)


@pytest.mark.parametrize("method", REQUIRED)
def test_what_cannot_be_left_out_is_missed_by_its_name(method: str) -> None:
    """Each once, in the order of the format, and nothing else is missed at this stage."""
    missed = re.findall(r"footing has no (\w+);", " ".join(told_of(method)))
    assert missed == REQUIRED[method].split()


def told_of(method: str) -> list[str]:
    """What is said of an entry with one strange key only."""
    return told(method, zzzzzzzzzz="1")


@pytest.mark.parametrize(("method", "key"), REQUIRED_COLUMNS)
def test_a_row_misses_its_columns_by_their_names(method: str, key: str) -> None:
    """The same in a list of rows."""
    row = {key: [{"zzzzzzzzzz": "1"}]}
    missed = re.findall(rf"{key} 1 has no (\w+);", " ".join(told(method, **row)))
    assert missed == REQUIRED_COLUMNS[method, key].split()


SCALARS = [(method, kept) for method, kept in INPUTS if kept.kind in ZEROS]


@pytest.mark.parametrize(("method", "kept"), SCALARS, ids=[f"{method}-{kept.key}" for method, kept in SCALARS])
def test_zero_stands_only_where_it_says_something(method: str, kept: Input) -> None:
    """And is told as nothing elsewhere."""
    zero = ZEROS[kept.kind]
    if kept.key in MAY_BE_ZERO:
        read_scalar(zero, kept, metric=False)
    else:
        with pytest.raises(Unreadable) as refused:
            read_scalar(zero, kept, metric=False)
        assert (refused.value.found, refused.value.fix) == (f"{zero} is nothing", "give more than zero")


@pytest.mark.parametrize("method", COEFFICIENTS)
def test_a_take_off_lists_the_coefficients_it_used(method: str) -> None:
    """Each once, over all the take-offs of the corpus, and no dimension among them."""
    used = [
        [each.key for each in worked(method, finds=FINDS, **inputs).coefficients]
        for word, inputs in CORPUS
        if word == method
    ]
    assert {key for keys in used for key in keys} == set(COEFFICIENTS[method].split())
    assert all(len(keys) == len(set(keys)) for keys in used)


def test_a_method_that_is_plain_geometry_says_so() -> None:
    """Every other one names a book, a table or a definition."""
    assert {doc.word for doc in DOCS if str(doc.source) == "geometry"} == {"trench", "gravel_bed", "slab", "pier"}
    assert all(len(str(doc.source).split()) > 1 for doc in DOCS if str(doc.source) != "geometry")


# Written where a length is due, which none of them is.
@pytest.mark.parametrize(
    ("text", "called"),
    [
        ("3 ft2", "an area"), ("3 m2", "an area"), ("3 yd3", "a volume"), ("3 L", "a volume"), ("3 lb", "a weight"),
        ("3 t", "a weight"), ("3 lb/yd3", "a density"), ("3 h", "a time"), ("3 weeks", "a time"),
        ("3 months", "a time"),
        ("3 bags", "a count"), ("3 rolls", "a count"),
    ],
)  # fmt: skip
def test_what_is_measured_is_called_by_its_name(text: str, called: str) -> None:
    """In a message, and with its article."""
    message = told("slab", length=text, width="10 ft", thickness="4 in")[0]
    assert f"length: {text} is {called}, where a length is due;" in message


@pytest.mark.parametrize(
    ("method", "key", "kind"),
    [
        ("slab", "length", "a length"), ("rainwater", "roof_area", "an area"), ("slab", "bag_yield", "a volume"),
        ("slab", "bag", "a weight"), ("gravel_bed", "density", "a density"), ("pier", "count", "a whole number"),
        ("rebar", "lap", "a number"), ("slab", "waste", "a part"), ("roof", "rise", "a rise"),
        ("drain_run", "slope", "a slope"), ("pit", "side_slope", "a side slope"), ("finish", "coverage", "a coverage"),
        ("rebar", "weight_per_length", "a weight of a length"), ("studs", "closed", "yes or no"),
        ("rebar", "bar", "a bar size"),
    ],
)  # fmt: skip
def test_a_group_of_keys_is_refused_with_what_is_due(method: str, key: str, kind: str) -> None:
    """The same word for a kind in every method."""
    found = [message for message in told(method, **{key: {"feet": "3"}}) if f" {key} is a group of keys" in message]
    assert len(found) == 1
    assert f"{key} is a group of keys, where {kind} is due; expected " in found[0]


# By hand, as a handbook would print them: a step by its name, and its formula in names.
FORMULAS: list[tuple[str, dict[str, Written], list[tuple[str, str]]]] = [
    (
        "pier",
        {"diameter": "12 in", "height": "4 ft", "count": "3"},
        [
            ("volume", "π ÷ 4 × diameter² × height × count"),
            ("volume in cubic yards", "volume"),
            ("volume with waste", "volume × (1 + waste)"),
        ],
    ),
    (
        "roof",
        {"span": "16 ft", "length": "20 ft", "rise": "7 in", "overhang": "12 in"},
        [
            ("slope", "rise ÷ 12 in"),
            ("run", "span ÷ 2 + overhang"),
            ("rafter", "run × square root(1 + slope²)"),
            ("area", "rafter × length × sides"),
            ("area with waste", "area × (1 + waste)"),
            ("squares", "area with waste ÷ 100 ft2"),
        ],
    ),
    (
        "roof",
        {"span": "5 m", "length": "6 m", "rise": "30 deg", "sides": "1"},
        [("slope", "tangent(rise)"), ("run", "span")],
    ),
    ("drain_run", {"length": "40 ft", "slope": "2%"}, [("fall", "length × slope"), ("slope", "fall ÷ length")]),
    ("drain_run", {"length": "40 ft", "slope": "1/4 in per ft"}, [("fall", "length × slope ÷ 1 ft")]),
    (
        "pit",
        {"length": "14 ft", "width": "10 ft", "depth": "3 ft", "side_slope": "1", "workspace": "2 ft"},
        [
            ("length at the bottom", "length + 2 × workspace"),
            ("width at the bottom", "width + 2 × workspace"),
            ("area of the bottom", "length at the bottom × width at the bottom"),
            (
                "area half way up",
                "(length at the bottom + side slope × depth) × (width at the bottom + side slope × depth)",
            ),
            (
                "area of the top",
                "(length at the bottom + 2 × side slope × depth) × (width at the bottom + 2 × side slope × depth)",
            ),
        ],
    ),
    (
        "boards",
        {"pieces": [{"thickness": "3/4 in", "width": "6 in", "length": "7 ft", "count": "9"}]},
        [("piece 1", "count × larger of(thickness, 1 in) × width × length ÷ 144 in3"), ("board feet", "Σ pieces")],
    ),
    (
        "studs",
        {"length": "31 ft", "spacing": "16 in", "corners": "3"},
        [("spaces", "round up(length ÷ spacing)"), ("net studs", "spaces + 1 + corners × studs per corner")],
    ),
    (
        "rebar",
        {"bar": "4", "runs": ["42 ft", "2 x 12 ft"], "stock_length": "20 ft"},
        [
            ("length of one lap", "lap × bar diameter"),
            ("laps", "2"),
            ("total length", "Σ runs + laps × length of one lap"),
            ("bars by length before rounding", "total length × (1 + waste) ÷ stock length"),
            ("bars by length", "round up(bars by length before rounding)"),
            ("bars by cutting", "2 + 2"),
            ("bars", "larger of(bars by length, bars by cutting)"),
        ],
    ),
    (
        "brick_wall",
        {"length": "20 ft", "height": "4 ft", "brick_length": "7 5/8 in", "brick_height": "2 1/4 in"},
        [("net area", "length × height"), ("per area", "1 ÷ ((brick length + joint) × (brick height + joint))")],
    ),
    (
        "cut_list",
        {"pieces": [{"length": "4 ft", "count": "5"}, {"length": "1 ft"}], "stock": {"length": "8 ft"}},
        [
            ("boards of 8 ft", "5"),
            ("boards", "Σ boards of each length"),
            ("all pieces", "Σ pieces"),
            ("cuts between pieces", "1"),
            ("offcut", "Σ boards of each length × length − all pieces − cuts between pieces × kerf"),
        ],
    ),
]


@pytest.mark.parametrize(("method", "inputs", "formulas"), FORMULAS)
def test_a_working_prints_its_formulas(
    method: str, inputs: dict[str, Written], formulas: list[tuple[str, str]]
) -> None:
    """From the first step on, in the names of the inputs."""
    steps = [(str(step.name), step.formula) for step in worked(method, **inputs).steps]
    assert steps[: len(formulas)] == formulas


# A bare number, and the units that are probably meant: in a journal kept in feet, and in one kept in metres.
@pytest.mark.parametrize(
    ("method", "key", "us", "metric"),
    [
        ("slab", "length", "80 ft or 80 in", "80 m or 80 mm"),
        ("rainwater", "roof_area", "80 ft2", "80 m2"),
        ("slab", "bag_yield", "80 ft3", "80 m3"),
        ("slab", "bag", "80 lb", "80 kg"),
        ("gravel_bed", "density", "80 lb/yd3", "80 kg/m3"),
    ],
)
def test_a_number_without_a_unit_is_told_the_likely_ones(method: str, key: str, us: str, metric: str) -> None:
    """To choose from, and to copy."""
    for habit, likely in ((False, us), (True, metric)):
        (message,) = [each for each in told(method, metric=habit, **{key: "80"}) if f" {key}: " in each]
        assert f"{key}: 80 has no unit; " in message
        assert message.endswith(f"; write {likely}")
