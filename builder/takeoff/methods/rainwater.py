"""Rain off a roof: area in plan x rain x the part that reaches the tank.

One inch on one square foot is 144 / 231 = 0.6234 gal; handbooks print 0.62 or 0.623. The slope of the roof does not
change what falls on it.
"""

from __future__ import annotations

from builder.takeoff.asking import coefficient, needs
from builder.takeoff.cautions import HEIGHT, NOT_A_DESIGN, RAIN
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_EFFICIENCY = Text("the middle of 75% to 95%, Take Care of Texas as quoted by the Brazos River Authority")

DOC = MethodDoc(
    word="rainwater",
    title=Text("Rainwater"),
    about="Water that a roof gathers from some depth of rain.",
    source=Text("geometry; 1 in on 1 ft2 is 144/231 gal"),
    inputs=(
        needs("roof_area", Kind.AREA, "seen from above, not along the slope", "140 ft2"),
        needs("rainfall", Kind.LENGTH, "depth of rain, of a storm or a year", "40 in"),
        coefficient("efficiency", Kind.RATE, "the part that reaches the tank", "85%", Default("85%", _EFFICIENCY)),
    ),
    outputs=(Output("volume", "water gathered"),),
    cautions=(NOT_A_DESIGN, RAIN, HEIGHT),
    no_waste="leave waste out: efficiency says what is lost",
)


def _work(working: Working) -> None:
    fallen = working.input("roof_area") * working.input("rainfall")
    working.result("volume", fallen * working.input("efficiency"), working.habit.liquid)


METHOD = Method(DOC, _work)
