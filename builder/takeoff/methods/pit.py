"""A pit with sloped sides, by the prismoidal formula, with the average-end-area figure beside it.

V = h / 6 (A1 + 4 Am + A2) with Am from the dimensions half way down, not the mean of A1 and A2; average end area
V = h (A1 + A2) / 2 is never less (a course text on earthwork, "Practices of Irrigation and On-farm Water Management").
"""

from __future__ import annotations

from builder.takeoff.asking import may_have, needs
from builder.takeoff.cautions import DIGGING, SIDE_SLOPES
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.earth import HAUL_INPUTS, HAULED, NO_WASTE, haul
from builder.takeoff.expression import Named
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_LONG, _WIDE = Text("length at the bottom"), Text("width at the bottom")
_BOTTOM, _MIDDLE, _TOP = Text("area of the bottom"), Text("area half way up"), Text("area of the top")
_PRISMOIDAL = Text("prismoidal formula")
_AVERAGE = Text("average end area, the rougher rule: never less than the prismoidal volume")

DOC = MethodDoc(
    word="pit",
    title=Text("Pit"),
    about="Earth to dig for a pit with straight or sloped sides and room to work in.",
    source=Text("prismoidal formula, Practices of Irrigation and On-farm Water Management, a course text"),
    inputs=(
        needs("length", Kind.LENGTH, "of what is built in the pit", "14 ft"),
        needs("width", Kind.LENGTH, "of what is built in the pit", "10 ft"),
        needs("depth", Kind.LENGTH, "from the ground to the bottom", "3 ft"),
        may_have(
            "side_slope", Kind.SIDE_SLOPE, "how far the sides lean out for 1 down", "1", default="0", may_be_zero=True
        ),
        may_have("workspace", Kind.LENGTH, "room to work, on every side", "2 ft", may_be_zero=True),
        *HAUL_INPUTS,
    ),
    outputs=(
        Output("volume", "earth to dig, as it lies, by the prismoidal formula"),
        Output("average_end_area_volume", "the same by average end area"),
        *HAULED,
    ),
    cautions=(*DIGGING, SIDE_SLOPES),
    no_waste=NO_WASTE,
)


def _work(working: Working) -> None:
    depth, lean = working.input("depth"), working.input("side_slope")
    length, width = _at_the_bottom(working, "length", _LONG), _at_the_bottom(working, "width", _WIDE)

    bottom = working.step(_BOTTOM, length * width, working.habit.area)
    middle, top = (
        working.step(name, (length + out) * (width + out), working.habit.area)
        for name, out in ((_MIDDLE, lean * depth), (_TOP, 2 * lean * depth))
    )
    volume = working.volume("volume", depth / 6 * (bottom + 4 * middle + top), _PRISMOIDAL)
    working.volume("average_end_area_volume", depth * (bottom + top) / 2, _AVERAGE)
    haul(working, volume)


def _at_the_bottom(working: Working, key: str, name: Text) -> Named:
    """A side of the bottom: what is built there, and room to work on both sides of it."""
    side = working.input(key)
    if not working.values.has("workspace"):
        return side
    return working.step(name, side + 2 * working.input("workspace"), working.habit.length)


METHOD = Method(DOC, _work)
