"""Paint, oil, membrane or anything that covers: area x coats / coverage."""

from __future__ import annotations

from builder.takeoff.asking import coefficient, may_have, needs, waste
from builder.takeoff.cautions import FUMES, LEAD, NOT_A_DESIGN
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.measures import unit
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_COVERAGE = Text("read on how-to pages: paint on a smooth wall; 300 ft2 on bare or rough boards. The tin says its own")
_BEFORE = Text("amount before rounding")

DOC = MethodDoc(
    word="finish",
    title=Text("Finish"),
    about="Paint, oil, membrane or insulation for an area.",
    source=Text("definition of coverage"),
    inputs=(
        needs("area", Kind.AREA, "to cover, openings taken off", "415 ft2"),
        coefficient(
            "coverage",
            Kind.COVERAGE,
            "what one gallon, litre, roll or pack covers",
            "350 ft2 per gal",
            Default("350 ft2/gal", _COVERAGE),
        ),
        may_have("coats", Kind.NUMBER, "how many times over", "2", default="1"),
        waste(),
    ),
    outputs=(
        Output("amount", "net where it is measured; whole ones, waste added, where it is counted"),
        Output("amount_with_waste", "waste added", "where coverage is that of a volume"),
    ),
    cautions=(NOT_A_DESIGN, LEAD, FUMES),
)


def _work(working: Working) -> None:
    coverage = working.input("coverage")
    net = working.input("area") * working.input("coats") / coverage
    of = coverage.quantity.unit.symbol.partition("/")[2]
    if unit(of).counts:
        exact = working.step(_BEFORE, net * (1 + working.input("waste")), unit(of))
        working.whole("amount", exact, unit(of))
    else:
        working.with_waste("amount", working.result("amount", net, working.habit.liquid))


METHOD = Method(DOC, _work)
