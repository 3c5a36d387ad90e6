"""One take-off of plan.yaml as it was written; the take-off layer knows what each method needs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.written import Entry
from builder.words.place import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeoffEntry:
    """`name: {method: ..., ...}`: the method's word and its inputs, still as written text with places."""

    name: str
    place: Place
    method: str
    method_place: Place
    inputs: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SizedFind:
    """A window, door or sheet that was found or bought second-hand, with its size (for `openings`).

    `width` and `height` are exact, in metres; `count` is how many; `line` is the line item's id.
    """

    line: str
    what: str
    width: Fraction
    height: Fraction
    count: int
