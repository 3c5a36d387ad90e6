"""A bed of gravel or crushed stone: length x width x depth, loose before compaction, and its weight."""

from __future__ import annotations

from builder.takeoff.asking import coefficient, needs, waste
from builder.takeoff.cautions import CALL, NOT_A_DESIGN, SILICA
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_DENSITY = Text(
    "EPA, Standard Volume-to-Weight Conversion Factors (2006), crushed stone, as quoted by a web page; the yard knows"
    " its own"
)
_COMPACTION = Text("none is added unless it is given; 10% to 20% for crushed stone is common practice, no source")
_LOOSE = Text("what to order: it lies looser on the truck than in the compacted bed")

DOC = MethodDoc(
    word="gravel_bed",
    title=Text("Gravel bed"),
    about="Gravel or crushed stone for a bed of even depth, by volume and by weight.",
    source=Text("geometry"),
    inputs=(
        needs("length", Kind.LENGTH, "one side", "14 ft"),
        needs("width", Kind.LENGTH, "the other side", "10 ft"),
        needs("depth", Kind.LENGTH, "of the finished bed", "4 in"),
        coefficient(
            "density", Kind.DENSITY, "weight of the loose stone", "2700 lb/yd3", Default("2700 lb/yd3", _DENSITY)
        ),
        coefficient(
            "compaction",
            Kind.RATE,
            "how much more is needed loose",
            "15%",
            Default("0%", _COMPACTION),
            may_be_zero=True,
        ),
        waste(),
    ),
    outputs=(
        Output("volume", "the finished bed"),
        Output("volume_with_waste", "the finished bed, waste added"),
        Output("loose_volume", "loose stone for it"),
        Output("loose_volume_with_waste", "loose stone for it, waste added"),
        Output("weight", "of the loose stone"),
        Output("weight_with_waste", "of the loose stone, waste added"),
    ),
    cautions=(NOT_A_DESIGN, CALL, SILICA),
)


def _work(working: Working) -> None:
    sides = working.input("length") * working.input("width") * working.input("depth")
    volume = working.volume("volume", sides)
    working.with_waste("volume", volume)
    more = 1 + working.input("compaction")
    loose = working.result("loose_volume", volume * more, working.habit.volume, _LOOSE)
    working.with_waste("loose_volume", loose)
    weight = working.result("weight", loose * working.input("density"), working.habit.heavy)
    working.with_waste("weight", weight)


METHOD = Method(DOC, _work)
