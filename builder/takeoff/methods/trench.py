"""A trench with straight sides, and the stone that fills it round a pipe."""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import may_have, needs, waste
from builder.takeoff.cautions import DIGGING
from builder.takeoff.declared import Kind, MethodDoc, Output
from builder.takeoff.expression import CIRCLE, Expression, Squared
from builder.takeoff.method import Method, Refusal
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working

_LESS_PIPE = Text("the trench filled with stone, less the pipe")

DOC = MethodDoc(
    word="trench",
    title=Text("Trench"),
    about="Earth to dig for a trench, and stone to fill it round a pipe.",
    source=Text("geometry"),
    inputs=(
        needs("length", Kind.LENGTH, "of the trench", "60 ft"),
        needs("width", Kind.LENGTH, "of the trench; half way down where its sides slope", "18 in"),
        needs("depth", Kind.LENGTH, "of the trench, or of the stone in it", "12 in"),
        may_have("pipe_diameter", Kind.LENGTH, "outside of the pipe", "4 in"),
        waste(),
    ),
    outputs=(
        Output("volume", "earth to dig, as it lies"),
        Output("stone_volume", "stone round the pipe, net"),
        Output("stone_volume_with_waste", "stone round the pipe, waste added"),
    ),
    cautions=DIGGING,
)


def _check(values: Values) -> Iterator[Refusal]:
    if not values.has("pipe_diameter"):
        return
    pipe = values.quantity("pipe_diameter")
    narrow = min((values.quantity(key) for key in ("width", "depth")), key=lambda each: each.in_unit("m"))
    if pipe.in_unit("m") >= narrow.in_unit("m"):
        yield Refusal(
            values.place("pipe_diameter"),
            f"a pipe of {shown(pipe)} does not fit into a trench of {shown(narrow)}",
            "a pipe smaller than the trench is wide and deep",
            "check the units of pipe_diameter",
        )


def _work(working: Working) -> None:
    length = working.input("length")
    volume = working.volume("volume", length * working.input("width") * working.input("depth"))
    stone: Expression = volume
    if working.values.has("pipe_diameter"):
        stone = volume - CIRCLE / 4 * Squared(working.input("pipe_diameter")) * length
    net = working.result("stone_volume", stone, working.habit.volume, _LESS_PIPE)
    working.with_waste("stone_volume", net)


METHOD = Method(DOC, _work, _check)
