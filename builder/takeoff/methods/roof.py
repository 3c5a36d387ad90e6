"""A roof of one or two slopes: rafter = run x square root (1 + slope^2); area = rafter x length x sides.

Rafter length per foot of run as in US Navy training course 14044, ch. 2; a square is 100 ft2. A hip roof of the same
span, pitch and length has the same area (S. Peterson and F. Dagostino, Estimating in Building Construction, p. 181).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.takeoff.asking import may_have, needs, waste
from builder.takeoff.cautions import HEIGHT, NOT_A_DESIGN, STRUCTURE
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.expression import Applied, Constant, Expression, Rule, Squared
from builder.takeoff.measures import PERCENT, unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import Suggestion
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working
from builder.words.quantity import Quantity
from builder.words.units import MEASURED

_SLOPE, _RUN = Text("slope"), Text("run")
_HALF, _WHOLE = Text("half the span, and the overhang"), Text("the whole span, and the overhang")
_SQUARE = Constant(Quantity(Fraction(100), MEASURED["ft2"]))
_SQUARES = Text("a square is 100 ft2")

DOC = MethodDoc(
    word="roof",
    title=Text("Roof"),
    about="Length of the rafters, and area to cover, of a roof with one or two slopes.",
    source=Text("US Navy training course 14044, ch. 2"),
    inputs=(
        needs("span", Kind.LENGTH, "from wall to wall, across the ridge", "16 ft"),
        needs("length", Kind.LENGTH, "of the roof along the ridge", "20 ft"),
        needs("rise", Kind.RISE, "in 12 in of run, or a slope", "7 in"),
        may_have("overhang", Kind.LENGTH, "beyond the wall, measured level", "12 in", may_be_zero=True),
        may_have("sides", Kind.COUNT, "slopes: 1 or 2", "2", default="2"),
        waste(),
    ),
    outputs=(
        Output("rafter", "along the slope, from ridge to eave"),
        Output("area", "of all slopes, net"),
        Output("area_with_waste", "of all slopes, waste added"),
        Output("squares", "of 100 ft2, waste added"),
    ),
    cautions=(NOT_A_DESIGN, STRUCTURE, HEIGHT),
    suggestions=(
        Suggestion(
            Text("5% to 8% for shingles"),
            Text("S. Peterson and F. Dagostino, Estimating in Building Construction, p. 181"),
        ),
    ),
)


def _check(values: Values) -> Iterator[Refusal]:
    if values.quantity("sides").value not in (1, 2):
        yield Refusal(values.place("sides"), "sides is neither 1 nor 2", "1 for a lean-to, 2 for a gable roof")


def _work(working: Working) -> None:
    slope = working.step(_SLOPE, working.values.expression("rise"), PERCENT)
    span, sides = working.input("span"), working.input("sides")
    two = sides.quantity.value == 2
    level: Expression = span / 2 if two else span
    if working.values.has("overhang"):
        level = level + working.input("overhang")
    run = working.step(_RUN, level, working.habit.length, _HALF if two else _WHOLE)
    rafter = working.result("rafter", run * Applied(Rule.ROOT, (1 + Squared(slope),)), working.habit.length)
    area = working.result("area", rafter * working.input("length") * sides, working.habit.area)
    covered = working.with_waste("area", area)
    working.result("squares", covered / _SQUARE, unit("square"), _SQUARES)


METHOD = Method(DOC, _work, _check)
