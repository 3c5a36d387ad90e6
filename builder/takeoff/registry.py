"""Every method there is. A new one is a file in methods/ and a line here."""

from __future__ import annotations

from builder.takeoff.declared import MethodDoc
from builder.takeoff.method import Method
from builder.takeoff.methods import (
    block_wall,
    boards,
    brick_wall,
    cut_list,
    drain_run,
    finish,
    gravel_bed,
    level_pad,
    openings,
    pier,
    pit,
    rainwater,
    rebar,
    roof,
    slab,
    strip_footing,
    studs,
    trench,
)

# In the order of a build, which is the order of the format page.
METHODS: tuple[Method, ...] = (
    level_pad.METHOD,
    pit.METHOD,
    trench.METHOD,
    drain_run.METHOD,
    gravel_bed.METHOD,
    strip_footing.METHOD,
    slab.METHOD,
    pier.METHOD,
    rebar.METHOD,
    block_wall.METHOD,
    brick_wall.METHOD,
    studs.METHOD,
    boards.METHOD,
    cut_list.METHOD,
    roof.METHOD,
    rainwater.METHOD,
    openings.METHOD,
    finish.METHOD,
)


def methods() -> tuple[MethodDoc, ...]:
    """What every method takes and gives."""
    return tuple(method.doc for method in METHODS)


def method_named(word: str) -> Method | None:
    """The method of that word, or None."""
    return next((method for method in METHODS if method.doc.word == word), None)
