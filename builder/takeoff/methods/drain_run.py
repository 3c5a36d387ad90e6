"""A drain laid to a fall: fall = length x slope, or the slope from the fall."""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import may_have, needs
from builder.takeoff.cautions import DIGGING, DRAIN_SLOPE
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.measures import PERCENT
from builder.takeoff.method import Method, Refusal
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working

DOC = MethodDoc(
    word="drain_run",
    title=Text("Drain run"),
    about="How much a drain falls over its length, or how steep that makes it.",
    source=Text("definition of slope"),
    inputs=(
        needs("length", Kind.LENGTH, "of the run", "40 ft"),
        may_have("fall", Kind.LENGTH, "how much lower the far end is; or give slope", "10 in"),
        may_have("slope", Kind.SLOPE, "fall over length; or give fall", "1/4 in per ft"),
    ),
    outputs=(Output("fall", "how much lower the far end is"), Output("slope", "fall over length")),
    cautions=(*DIGGING, DRAIN_SLOPE),
    no_waste="leave waste out: nothing is bought by this",
)


def _check(values: Values) -> Iterator[Refusal]:
    if values.has("fall") == values.has("slope"):
        both = values.has("fall")
        yield Refusal(
            values.place("slope") if both else values.at,
            "fall and slope both say how steep the drain is" if both else "nothing says how steep the drain is",
            "fall or slope, one of the two",
            "leave one out" if both else "add slope: 1/4 in per ft or fall: 10 in",
        )
    elif values.has("fall") and values.quantity("fall").in_unit("m") >= values.quantity("length").in_unit("m"):
        yield Refusal(
            values.place("fall"),
            f"the drain falls {shown(values.quantity('fall'))} over {shown(values.quantity('length'))}",
            "a fall smaller than the length",
            "check the units of fall",
        )


def _work(working: Working) -> None:
    length = working.input("length")
    if working.values.has("fall"):
        fall = working.result("fall", working.input("fall"), working.habit.short)
        working.result("slope", fall / length, PERCENT)
    else:
        slope = working.values.expression("slope")
        fall = working.result("fall", length * slope, working.habit.short)
        working.result("slope", fall / length, PERCENT)


METHOD = Method(DOC, _work, _check)
