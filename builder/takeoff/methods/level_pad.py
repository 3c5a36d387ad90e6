"""Levelling sloping ground by cutting it down to its low side: a wedge, length x width x fall / 2."""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import needs
from builder.takeoff.cautions import DIGGING
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.earth import HAUL_INPUTS, HAULED, NO_WASTE, haul
from builder.takeoff.measures import PERCENT
from builder.takeoff.method import Method, Refusal
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working

_WEDGE = Text("half of the full depth: the cut is a wedge, nothing at the low side")

DOC = MethodDoc(
    word="level_pad",
    title=Text("Level pad"),
    about="Earth to cut to make sloping ground level, down to its low side.",
    source=Text("geometry: a wedge"),
    inputs=(
        needs("length", Kind.LENGTH, "down the fall", "16 ft"),
        needs("width", Kind.LENGTH, "across the fall", "12 ft"),
        needs("fall", Kind.LENGTH, "how much lower the low side is", "16 in"),
        *HAUL_INPUTS,
    ),
    outputs=(
        Output("slope", "fall over length"),
        Output("cut_volume", "earth to cut, as it lies"),
        *HAULED,
    ),
    cautions=DIGGING,
    no_waste=NO_WASTE,
)


def _check(values: Values) -> Iterator[Refusal]:
    length, fall = values.quantity("length"), values.quantity("fall")
    if fall.in_unit("m") >= length.in_unit("m"):
        yield Refusal(
            values.place("fall"),
            f"the ground falls {shown(fall)} over {shown(length)}, steeper than 1 in 1",
            "a fall smaller than the length",
            "check the units of fall",
        )


def _work(working: Working) -> None:
    length, fall = working.input("length"), working.input("fall")
    working.result("slope", fall / length, PERCENT)
    haul(working, working.volume("cut_volume", length * working.input("width") * fall / 2, _WEDGE))


METHOD = Method(DOC, _work, _check)
