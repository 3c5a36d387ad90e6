"""A method: what it declares, what it refuses, and the steps it takes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from builder.takeoff.declared import MethodDoc
from builder.takeoff.values import Values
from builder.takeoff.working import Working
from builder.words.place import Place


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why the inputs, each good by itself, do not go together. The mistake is told at `place`."""

    place: Place
    found: str
    expected: str
    fix: str = ""


def nothing_to_refuse(values: Values) -> Iterator[Refusal]:  # noqa: ARG001 - the shape of a check
    """The check of a method whose inputs always go together."""
    return iter(())


@dataclass(frozen=True, slots=True)
class Method:
    """`check` is asked before `work`, which may then rely on the inputs."""

    doc: MethodDoc
    work: Callable[[Working], None]
    check: Callable[[Values], Iterator[Refusal]] = nothing_to_refuse
