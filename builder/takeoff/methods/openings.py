"""Placing windows and doors in walls so that the most glass finds room, with a least post between and beside them.

A packing problem, solved exactly (builder/takeoff/cutting).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.takeoff.asking import may_have, needs
from builder.takeoff.cautions import ASBESTOS, GLAZING, LEAD, NOT_A_DESIGN, STRUCTURE
from builder.takeoff.declared import Input, Kind, MethodDoc, Output
from builder.takeoff.expression import Constant, Expression, Total
from builder.takeoff.glazing import Placing, Window, place
from builder.takeoff.measures import unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import PlacedUnit, Result
from builder.takeoff.shown import shown
from builder.takeoff.stock import metres
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working, many
from builder.words.quantity import Quantity
from builder.words.units import MEASURED

SALVAGED = "salvaged"
_FOUND = Text("from the layout")
_MOST = Text("no layout has more glass: proven")
_AT_MOST = Text("the search stopped early; no layout can have more than {bound}")
_GLASS_AREA, _GLASS_WIDTH = Text("width × height of each one placed"), Text("width of each one placed")

DOC = MethodDoc(
    word="openings",
    title=Text("Windows in walls"),
    about="Which windows and doors fit which wall, with the most glass placed, and the layout.",
    source=Text("a packing problem, solved by search"),
    inputs=(
        Input(
            key="walls",
            kind=Kind.ROWS,
            meaning="the walls",
            example="[{clear_length: 12 ft}, {clear_length: 9 ft 8 in}]",
            required=True,
            columns=(needs("clear_length", Kind.LENGTH, "between the corner posts", "12 ft"),),
        ),
        Input(
            key="units",
            kind=Kind.ROWS,
            meaning="windows and doors; salvaged takes those of the line items that carry a size",
            example="[{width: 24 in, height: 48 in, count: 3}]",
            required=True,
            columns=(
                needs("width", Kind.LENGTH, "of the whole unit", "24 in"),
                may_have("height", Kind.LENGTH, "of the whole unit", "48 in"),
                may_have("count", Kind.COUNT, "how many", "3", default="1"),
            ),
            words=(SALVAGED,),
        ),
        needs("post", Kind.LENGTH, "the least width between units and beside them", "4 1/2 in"),
    ),
    outputs=(
        Output("placed", "units that have a place"),
        Output("left_over", "units that have none"),
        Output("glass", "area of the units placed; their width where a height is not known"),
    ),
    cautions=(NOT_A_DESIGN, STRUCTURE, GLAZING, LEAD, ASBESTOS),
    no_waste="leave waste out: nothing is cut",
)


def _check(values: Values) -> Iterator[Refusal]:
    if values.word("units") == SALVAGED and not values.finds:
        yield Refusal(
            values.place("units"),
            "no salvaged or secondhand line item carries a size",
            "line items such as {material: Window, source: salvaged, size: 24 in x 48 in}",
            "add size to the windows in the episodes, or list the units here",
        )
    post = values.quantity("post")
    for row in values.rows("walls"):
        clear = row.quantity("clear_length")
        if 2 * metres(post) >= metres(clear):
            yield Refusal(
                row.place("clear_length"),
                f"two posts of {shown(post)} leave nothing of a wall of {shown(clear)}",
                "a wall wider than its two posts",
                "check the units of post and clear_length",
            )


def _work(working: Working) -> None:
    post = working.input("post").quantity
    walls = [row.quantity("clear_length") for row in working.values.rows("walls")]
    placing = place(walls, _windows(working), post)
    working.drawing, working.proven = placing.layout, placing.proven
    working.result("placed", many(placing.placed), unit("piece"), _FOUND)
    working.result("left_over", many(placing.left), unit("piece"), _FOUND)
    _write_glass(working, placing)


def _windows(working: Working) -> list[Window]:
    """The units as listed, or as found; heights count only where every unit has one."""
    if working.values.word("units") == SALVAGED:
        return [
            Window(
                width=_in_habit(find.width, working),
                height=_in_habit(find.height, working),
                count=find.count,
                what=find.what,
                line=find.line,
            )
            for find in working.values.finds
        ]
    rows = working.values.rows("units")
    known = all(row.has("height") for row in rows)
    return [
        Window(
            width=row.quantity("width"),
            height=row.quantity("height") if known else None,
            count=int(row.quantity("count").value),
        )
        for row in rows
    ]


def _in_habit(length: Fraction, working: Working) -> Quantity:
    return Quantity(length, MEASURED["m"]).to(working.habit.short)


def _write_glass(working: Working, placing: Placing) -> None:
    units = [each for wall in placing.layout.walls for each in wall.units]
    heights = [*(each.height for each in units), *(each.height for each in placing.layout.left)]
    wide_only = None in heights
    measure = working.habit.length if wide_only else working.habit.area
    if not placing.proven:
        working.bound = Result("glass", Quantity(placing.bound / measure.ratio, measure))
    verdict = _MOST if working.bound is None else _AT_MOST.put(bound=working.bound.quantity)
    parts = tuple(_glass(each) for each in units)
    working.result("glass", Total(_GLASS_WIDTH if wide_only else _GLASS_AREA, parts, measure), measure, verdict)


def _glass(placed: PlacedUnit) -> Expression:
    width = Constant(placed.width)
    return width if placed.height is None else width * Constant(placed.height)


METHOD = Method(DOC, _work, _check)
