"""A wall of brick, one brick thick: bricks by the area of the face.

Bricks per area = 1 / ((length + joint) (height + joint)), the wall-area method of BIA Technical Note 10 (its text as
copied on a web page). Modular brick, 8 x 2 2/3 in with its joint, comes to 6.75 per ft2.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import coefficient, needs, waste
from builder.takeoff.cautions import MASONRY
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.expression import Expression
from builder.takeoff.facade import OPENINGS, about_openings, check_openings, less_openings
from builder.takeoff.measures import per_area, unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import Suggestion
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working, many

_JOINT = Text("common practice, no source; give 0 in where the sizes of the brick have their joint in them")
_MORTAR = Text(
    "from memory, BIA Technical Note 10, an older edition: modular brick with a 3/8 in joint; a 1/2 in joint takes"
    " 10.3 ft3"
)
_BEFORE = Text("bricks before rounding")
_NET = Text("net bricks")

DOC = MethodDoc(
    word="brick_wall",
    title=Text("Brick wall"),
    about="Bricks and mortar for a wall one brick thick.",
    source=Text("wall-area method, BIA Technical Note 10, as quoted by a web page"),
    inputs=(
        needs("length", Kind.LENGTH, "of all walls together; each corner once", "20 ft"),
        needs("height", Kind.LENGTH, "of the wall", "4 ft"),
        OPENINGS,
        needs("brick_length", Kind.LENGTH, "of the brick's face", "7 5/8 in"),
        needs("brick_height", Kind.LENGTH, "of the brick's face", "2 1/4 in"),
        coefficient(
            "joint", Kind.LENGTH, "thickness of the mortar", "3/8 in", Default("3/8 in", _JOINT), may_be_zero=True
        ),
        coefficient(
            "mortar_per_thousand", Kind.VOLUME, "mortar for 1000 bricks", "8.1 ft3", Default("8.1 ft3", _MORTAR)
        ),
        waste(),
    ),
    outputs=(
        Output("net_area", "face of the wall less openings"),
        Output("per_area", "bricks in an area, waste not in it"),
        Output("bricks", "whole bricks, waste added"),
        Output("mortar_volume", "mortar, net"),
        Output("mortar_volume_with_waste", "mortar, waste added"),
    ),
    cautions=MASONRY,
    suggestions=(Suggestion(Text("5% for breakage"), Text("Building Trades Pocketbook (ICS), Brickwork")),),
)


def _check(values: Values) -> Iterator[Refusal]:
    yield from check_openings(values, values.quantity("length"), values.quantity("height"))


def _work(working: Working) -> None:
    face = less_openings(working, working.input("length") * working.input("height"))
    area = working.result("net_area", face, working.habit.area, about_openings(working))
    per_area_of = working.result("per_area", 1 / _brick(working), per_area(working.habit.area.symbol))
    net = working.step(_NET, area * per_area_of, unit("brick"))
    exact = working.step(_BEFORE, net * (1 + working.input("waste")), unit("brick"))
    working.whole("bricks", exact, unit("brick"))
    mortar = net / many(1000) * working.input("mortar_per_thousand")
    working.with_waste("mortar_volume", working.result("mortar_volume", mortar, working.habit.small_volume))


def _brick(working: Working) -> Expression:
    """What one brick takes of the face, with a joint on two sides."""
    joint = working.input("joint")
    return (working.input("brick_length") + joint) * (working.input("brick_height") + joint)


METHOD = Method(DOC, _work, _check)
