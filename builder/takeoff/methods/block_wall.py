"""A wall of concrete block: whole courses, blocks by the area of the face, halves at corners, mortar and grout.

Blocks = area of the courses less openings / (length x height of a block with its joint); an 8 x 8 x 16 block takes
8 x 16 in, 112.5 of them 100 ft2 (NCMA TEK 14, "Estimating Concrete Masonry", 1969). Half a block falls to each
corner in each course (US Navy training course 14045, ch. 4).
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import coefficient, may_have, needs, waste
from builder.takeoff.cautions import MASONRY
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.expression import Applied, Expression, Named, Rule
from builder.takeoff.facade import OPENINGS, about_openings, check_openings, less_openings
from builder.takeoff.measures import unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import Suggestion
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working
from builder.words.quantity import Quantity

_NOMINAL = Text("nominal size of an 8 x 8 x 16 block, its 3/8 in joint in it (NCMA TEK 14, 1969)")
_PER_BAG = Text(
    "from memory, CMHA/NCMA TEK 04-02A: 12 blocks of 8 x 8 x 16 from an 80 lb bag of ready mortar; 30 from 70 lb of"
    " masonry cement with sand; the bag says what it lays"
)
_LAID = Text("face of the courses less openings")
_WHOLE_COURSES = Text("only whole courses are laid")
_BEFORE, _HALVES = Text("blocks before rounding"), Text("half blocks, before rounding")
_AMONG = Text("half a block at each corner in each course; they are among the blocks")
_BAGS = Text("mortar bags before rounding")

DOC = MethodDoc(
    word="block_wall",
    title=Text("Block wall"),
    about="Blocks, mortar and grout for a straight wall or a whole perimeter.",
    source=Text("NCMA TEK 14, Estimating Concrete Masonry, 1969; half blocks as US Navy training course 14045, ch. 4"),
    inputs=(
        needs("length", Kind.LENGTH, "of all walls together; each corner once", "48 ft"),
        may_have("height", Kind.LENGTH, "of the wall; or give courses", "8 ft"),
        may_have("courses", Kind.COUNT, "how many rows of block; or give height", "12"),
        OPENINGS,
        coefficient("block_length", Kind.LENGTH, "with its joint", "16 in", Default("16 in", _NOMINAL)),
        coefficient("block_height", Kind.LENGTH, "with its joint", "8 in", Default("8 in", _NOMINAL)),
        may_have("corners", Kind.COUNT, "how many corners turn", "4", default="0", may_be_zero=True),
        coefficient("blocks_per_mortar_bag", Kind.NUMBER, "blocks laid with one bag", "12", Default("12", _PER_BAG)),
        may_have("filled_cores", Kind.COUNT, "hollows filled from bottom to top", "10"),
        may_have("core_volume", Kind.VOLUME, "one hollow in one block", "0.15 ft3"),
        waste(),
    ),
    outputs=(
        Output("net_area", "face of the wall less openings"),
        Output("courses", "rows of block"),
        Output("blocks", "whole blocks with the halves among them, waste added"),
        Output("half_blocks", "how many of them are halves, waste added"),
        Output("mortar_bags", "whole bags, waste added"),
        Output("grout_volume", "to fill the hollows, net", "where filled_cores is given"),
        Output("grout_volume_with_waste", "to fill the hollows, waste added", "where filled_cores is given"),
    ),
    cautions=MASONRY,
    suggestions=(
        Suggestion(
            Text("5% for breakage, an old rule for brick; the newer handbook asks for some and names none"),
            Text("Building Trades Pocketbook (ICS); Estimating in Building Construction, p. 123"),
        ),
    ),
)


def _check(values: Values) -> Iterator[Refusal]:
    if values.has("height") == values.has("courses"):
        both = values.has("height")
        yield Refusal(
            values.place("courses") if both else values.at,
            "height and courses both say how high the wall is" if both else "nothing says how high the wall is",
            "height or courses, one of the two",
            "leave one out" if both else "add height: 8 ft or courses: 12",
        )
        return
    if values.has("filled_cores") and not values.has("core_volume"):
        yield Refusal(
            values.place("filled_cores"),
            "filled_cores stands without core_volume",
            "the volume of one hollow in one block beside it",
            "measure a block: length x width of the hollow x height of the block",
        )
    if values.has("core_volume") and not values.has("filled_cores"):
        yield Refusal(
            values.place("core_volume"),
            "core_volume stands without filled_cores",
            "how many hollows are filled",
            "add filled_cores: 10, or leave core_volume out",
        )
    yield from check_openings(values, values.quantity("length"), _height(values))


def _height(values: Values) -> Quantity:
    if values.has("height"):
        return values.quantity("height")
    block = values.quantity("block_height")
    return Quantity(values.quantity("courses").value * block.value, block.unit)


def _work(working: Working) -> None:
    courses, height = _courses(working)
    length = working.input("length")
    net = less_openings(working, length * height)
    working.result("net_area", net, working.habit.area, about_openings(working))
    laid = less_openings(working, length * (courses * working.input("block_height")))
    face = working.step(_LAID, laid, working.habit.area)
    block = working.input("block_length") * working.input("block_height")
    blocks = _after_waste(working, "blocks", face / block, _BEFORE)
    _after_waste(working, "half_blocks", courses * working.input("corners") / 2, _HALVES, _AMONG)
    exact = working.step(_BAGS, blocks / working.input("blocks_per_mortar_bag"), unit("bag"))
    working.whole("mortar_bags", exact, unit("bag"))
    if working.values.has("filled_cores"):
        cores = working.input("filled_cores") * courses * working.input("core_volume")
        working.with_waste("grout_volume", working.volume("grout_volume", cores))


def _courses(working: Working) -> tuple[Named, Expression]:
    """The courses, and the height they were reckoned from or make."""
    block = working.input("block_height")
    if working.values.has("courses"):
        courses = working.result("courses", working.input("courses"), unit("course"))
        return courses, courses * block
    height = working.input("height")
    whole = Applied(Rule.ROUND_UP, (height / block,))
    return working.result("courses", whole, unit("course"), _WHOLE_COURSES), height


def _after_waste(working: Working, key: str, net: Expression, name: Text, note: Text | None = None) -> Named:
    exact = working.step(name, net * (1 + working.input("waste")), unit("block"), note)
    return working.whole(key, exact, unit("block"))


METHOD = Method(DOC, _work, _check)
