"""What walls have in common: the area of the face, less its openings."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.takeoff.asking import may_have
from builder.takeoff.declared import Kind
from builder.takeoff.expression import Constant, Expression, Total
from builder.takeoff.method import Refusal
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Size, Values
from builder.takeoff.working import Working, words
from builder.words.quantity import Quantity

OPENINGS = may_have("openings", Kind.SIZES, "doors and windows: width and height of each", "[[3 ft, 7 ft]]")
_ALL_OPENINGS = Text("all openings are taken off, whatever their size (NCMA TEK 14, 1969)")


def check_openings(values: Values, length: Quantity, height: Quantity) -> Iterator[Refusal]:
    """An opening that is larger than the wall, or openings that leave nothing of it."""
    sizes = values.sizes("openings")
    for size in sizes:
        if _base(size.width) > _base(length) or _base(size.height) > _base(height):
            yield Refusal(
                size.place,
                f"an opening of {shown(size.width)} x {shown(size.height)} is larger than the wall",
                f"openings within {shown(length)} x {shown(height)}",
                "write the width first, then the height",
            )
            return
    if sum(_area(size) for size in sizes) >= _base(length) * _base(height):
        yield Refusal(
            values.place("openings"),
            "the openings together leave nothing of the wall",
            f"less than {shown(length)} x {shown(height)} in all",
            "check their sizes, and whether one is written twice",
        )


def _base(quantity: Quantity) -> Fraction:
    return quantity.value * quantity.unit.ratio


def _area(size: Size) -> Fraction:
    return _base(size.width) * _base(size.height)


def less_openings(working: Working, area: Expression) -> Expression:
    """`area` less the openings, if there are any."""
    sizes = working.values.sizes("openings")
    if not sizes:
        return area
    parts = tuple(Constant(size.width) * Constant(size.height) for size in sizes)
    return area - Total(words("openings"), parts, working.habit.area)


def about_openings(working: Working) -> Text | None:
    """The note on how openings are taken off, where there are some."""
    return _ALL_OPENINGS if working.values.has("openings") else None
