"""Studs, joists or anything at a spacing: round up (length / spacing) + 1, and so many more at each corner.

S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157 and Ex. 13-11, 13-12. A closed perimeter needs
no + 1: the last one is the first.
"""

from __future__ import annotations

from builder.takeoff.asking import coefficient, may_have, needs, waste
from builder.takeoff.cautions import HEIGHT, STRUCTURE, TIMBER
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.expression import Applied, Expression, Rule
from builder.takeoff.measures import unit
from builder.takeoff.method import Method
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_CORNER = Text(
    "S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157: two more for a corner of three 2x4"
)
_SPACES, _NET = Text("spaces"), Text("net studs")
_BEFORE = Text("studs before rounding")
_ONE_MORE = Text("one more than there are spaces, for the end")
_CLOSED = Text("as many as there are spaces: the wall closes on itself")

DOC = MethodDoc(
    word="studs",
    title=Text("Studs at a spacing"),
    about="Studs, joists or rafters at an even spacing, with what corners take.",
    source=Text("S. Peterson and F. Dagostino, Estimating in Building Construction, p. 157"),
    inputs=(
        needs("length", Kind.LENGTH, "of the wall, or of all walls together", "48 ft"),
        needs("spacing", Kind.LENGTH, "from middle to middle", "16 in"),
        may_have("corners", Kind.COUNT, "corners and walls that join", "4", default="0", may_be_zero=True),
        may_have("closed", Kind.YES_NO, "whether the wall goes all the way round", "yes", default="no"),
        coefficient("studs_per_corner", Kind.NUMBER, "more at each corner", "2", Default("2", _CORNER)),
        waste(),
    ),
    outputs=(Output("count", "whole studs, waste added"),),
    cautions=(*TIMBER, STRUCTURE, HEIGHT),
)


def _work(working: Working) -> None:
    ratio = working.input("length") / working.input("spacing")
    spaces: Expression = working.step(_SPACES, Applied(Rule.ROUND_UP, (ratio,)), unit("space"))
    closed = working.values.yes("closed")
    along = spaces if closed else spaces + 1
    corners = working.input("corners") * working.input("studs_per_corner")
    net = working.step(_NET, along + corners, unit("stud"), _CLOSED if closed else _ONE_MORE)
    exact = working.step(_BEFORE, net * (1 + working.input("waste")), unit("stud"))
    working.whole("count", exact, unit("stud"))


METHOD = Method(DOC, _work)
