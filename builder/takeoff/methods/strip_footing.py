"""A strip footing round a rectangle, by its centre line.

V = 2 [(L - t) + (W - t)] t d, with L and W outside to outside and t the footing's width: the centre-line method of
building estimating (course slides "Concrete Structures"; university course notes CVE 367, at second hand). A cross
wall adds its clear length between the footings it joins.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import may_have, needs
from builder.takeoff.cautions import CALL, CONCRETE, FOOTING_SIZE, FROST
from builder.takeoff.concrete import BAG_INPUTS, FOOTING_WASTE, POURED, SMALL_BUILDING_WASTE, check_bag, pour
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.method import Method, Refusal
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working

_MIDDLE = Text("along the middle of the footing, so that no corner counts twice")

DOC = MethodDoc(
    word="strip_footing",
    title=Text("Strip footing"),
    about="Concrete for a footing of even width and thickness round a rectangle, and for footings across it.",
    source=Text("centre-line method of building estimating, as in university course notes CVE 367"),
    inputs=(
        needs("length", Kind.LENGTH, "outside of the footing, one way", "14 ft"),
        needs("width", Kind.LENGTH, "outside of the footing, the other way", "10 ft"),
        needs("footing_width", Kind.LENGTH, "how wide the strip is", "18 in"),
        needs("thickness", Kind.LENGTH, "how thick the strip is", "6 in"),
        may_have("cross_walls", Kind.LENGTHS, "clear length of each footing across the inside", "[7 ft]"),
        *BAG_INPUTS,
    ),
    outputs=(Output("centre_line", "length of the strip along its middle"), *POURED),
    cautions=(*CONCRETE, FOOTING_SIZE, FROST, CALL),
    suggestions=(FOOTING_WASTE, SMALL_BUILDING_WASTE),
)


def _check(values: Values) -> Iterator[Refusal]:
    yield from check_bag(values)
    strip = values.quantity("footing_width")
    side = min((values.quantity(key) for key in ("length", "width")), key=lambda each: each.in_unit("m"))
    if strip.in_unit("m") >= side.in_unit("m"):
        yield Refusal(
            values.place("footing_width"),
            f"footing_width is {shown(strip)}, and the building is only {shown(side)} across",
            "a strip narrower than the building",
            "length and width are the outside of the footing; check the units",
        )
    elif 2 * strip.in_unit("m") >= side.in_unit("m"):
        yield Refusal(
            values.place("footing_width"),
            f"two strips of {shown(strip)} leave nothing between them in {shown(side)}",
            "strips with ground between them",
            "for a solid base use method: slab",
        )
    longest = max(values.quantity(key).in_unit("m") for key in ("length", "width"))
    for lot in values.lots("cross_walls"):
        if lot.length.in_unit("m") >= longest:
            yield Refusal(
                values.place("cross_walls"),
                f"a cross wall of {shown(lot.length)} is longer than the building",
                "the clear length between the footings it joins",
                "check its unit",
            )


def _work(working: Working) -> None:
    length, width, strip = (working.input(key) for key in ("length", "width", "footing_width"))
    middle = 2 * ((length - strip) + (width - strip))
    if working.values.has("cross_walls"):
        middle = middle + working.lengths("cross_walls")
    centre_line = working.result("centre_line", middle, working.habit.length, _MIDDLE)
    pour(working, working.volume("volume", centre_line * strip * working.input("thickness")))


METHOD = Method(DOC, _work, _check)
