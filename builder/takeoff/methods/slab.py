"""A slab of even thickness: length x width x thickness."""

from __future__ import annotations

from builder.takeoff.asking import needs
from builder.takeoff.cautions import CALL, CONCRETE
from builder.takeoff.concrete import BAG_INPUTS, POURED, SLAB_WASTE, SMALL_BUILDING_WASTE, check_bag, pour
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

DOC = MethodDoc(
    word="slab",
    title=Text("Slab"),
    about="Concrete for a rectangular slab of even thickness.",
    source=Text("geometry"),
    inputs=(
        needs("length", Kind.LENGTH, "one side", "14 ft"),
        needs("width", Kind.LENGTH, "the other side", "10 ft"),
        needs("thickness", Kind.LENGTH, "how thick it is", "4 in"),
        *BAG_INPUTS,
    ),
    outputs=(Output("area", "the top of the slab"), *POURED),
    cautions=(*CONCRETE, CALL),
    suggestions=(SLAB_WASTE, SMALL_BUILDING_WASTE),
)


def _work(working: Working) -> None:
    area = working.result("area", working.input("length") * working.input("width"), working.habit.area)
    pour(working, working.volume("volume", area * working.input("thickness")))


METHOD = Method(DOC, _work, check_bag)
