"""Round piers: pi / 4 x diameter^2 x height, times how many."""

from __future__ import annotations

from builder.takeoff.asking import may_have, needs
from builder.takeoff.cautions import CALL, CONCRETE, FROST
from builder.takeoff.concrete import BAG_INPUTS, FOOTING_WASTE, POURED, check_bag, pour
from builder.takeoff.declared import Kind, MethodDoc
from builder.takeoff.expression import CIRCLE, Squared
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

DOC = MethodDoc(
    word="pier",
    title=Text("Round pier"),
    about="Concrete for round piers or columns, all of one size.",
    source=Text("geometry"),
    inputs=(
        needs("diameter", Kind.LENGTH, "inside of the tube", "12 in"),
        needs("height", Kind.LENGTH, "from bottom to top", "4 ft"),
        may_have("count", Kind.COUNT, "how many", "6", default="1"),
        *BAG_INPUTS,
    ),
    outputs=POURED,
    cautions=(*CONCRETE, FROST, CALL),
    suggestions=(FOOTING_WASTE,),
)


def _work(working: Working) -> None:
    circle = CIRCLE / 4 * Squared(working.input("diameter"))
    pour(working, working.volume("volume", circle * working.input("height") * working.input("count")))


METHOD = Method(DOC, _work, check_bag)
