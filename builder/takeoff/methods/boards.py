"""Board feet of timber on its nominal size: thickness x width x length / 144 in3, less than 1 in thick as 1 in.

BF = T (in) x W (in) x L (ft) / 12 (Griffith, Carpentry): a board foot is 12 x 12 x 1 in.
"""

from __future__ import annotations

from fractions import Fraction

from builder.takeoff.asking import may_have, needs, waste
from builder.takeoff.cautions import COMMON, TIMBER
from builder.takeoff.declared import Input, Kind, MethodDoc, Output
from builder.takeoff.expression import Applied, Constant, Named, Rule, Total
from builder.takeoff.measures import unit
from builder.takeoff.method import Method
from builder.takeoff.records import Suggestion
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working, words
from builder.words.quantity import Quantity
from builder.words.units import MEASURED

_PIECE, _PIECES = Text("piece {number}"), Text("pieces")
_THIN = Text("less than 1 in thick counts as 1 in")
_BOARD_FOOT = Constant(Quantity(Fraction(144), MEASURED["in3"]))
_INCH = Constant(Quantity(Fraction(1), MEASURED["in"]))

DOC = MethodDoc(
    word="boards",
    title=Text("Boards by the board foot"),
    about="Board feet of timber sold by its nominal size.",
    source=Text("I. S. Griffith, Carpentry: a board foot is 12 x 12 x 1 in"),
    inputs=(
        Input(
            key="pieces",
            kind=Kind.ROWS,
            meaning="what is needed, in nominal sizes",
            example="[{thickness: 2 in, width: 6 in, length: 8 ft, count: 14}]",
            required=True,
            columns=(
                needs("thickness", Kind.LENGTH, "nominal", "2 in"),
                needs("width", Kind.LENGTH, "nominal", "6 in"),
                needs("length", Kind.LENGTH, "of one piece", "8 ft"),
                may_have("count", Kind.COUNT, "how many", "14", default="1"),
            ),
        ),
        waste(),
    ),
    outputs=(Output("board_feet", "net"), Output("board_feet_with_waste", "waste added")),
    cautions=TIMBER,
    suggestions=(Suggestion(Text("10% for ends and bad wood"), COMMON),),
)


def _work(working: Working) -> None:
    rows = working.values.rows("pieces")
    feet = tuple(_piece(working, row, number) for number, row in enumerate(rows, 1))
    net = working.result("board_feet", Total(_PIECES, feet, unit("board-foot")), unit("board-foot"))
    working.with_waste("board_feet", net)


def _piece(working: Working, row: Values, number: int) -> Named:
    count, thickness, width, length = (
        Named(words(key), row.quantity(key)) for key in ("count", "thickness", "width", "length")
    )
    thin = thickness.quantity.in_unit("in") < 1
    thick = Applied(Rule.LARGER, (thickness, _INCH)) if thin else thickness
    volume = count * thick * width * length / _BOARD_FOOT
    return working.step(_PIECE.put(number=number), volume, unit("board-foot"), _THIN if thin else None)


METHOD = Method(DOC, _work)
