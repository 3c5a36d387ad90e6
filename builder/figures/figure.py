"""A figure: a value with its name, what kind of value it is, and how far it can be trusted."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from builder.ledger.parts import Parts
from builder.words.quantity import Quantity


class Bound(Enum):
    """What an unknown does to a figure that stands above it."""

    EXACT = ""
    AT_LEAST = "at least"
    AT_MOST = "at most"
    UNTOLD = "cannot be told"


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyFigure:
    """An amount in minor units (a Fraction of one where it is a rate, `per` an area or a year)."""

    name: str
    minor: int
    bound: Bound = Bound.EXACT
    per: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CountFigure:
    """How many there are of something."""

    name: str
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class QuantityFigure:
    """A quantity: hours, bags, feet."""

    name: str
    quantity: Quantity
    bound: Bound = Bound.EXACT


@dataclass(frozen=True, slots=True, kw_only=True)
class DateFigure:
    """A day."""

    name: str
    day: datetime.date


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareFigure:
    """A part of a whole: a chance."""

    name: str
    share: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class UntoldFigure:
    """A figure that has a name and cannot be told as the journal stands: why, and what to `add` so that it can."""

    name: str
    why: str
    add: str


Figure = MoneyFigure | CountFigure | QuantityFigure | DateFigure | ShareFigure | UntoldFigure

MONEY = (
    "paid",
    "brought_in",
    "elsewhere",
    "spent",
    "job_cost",
    "in_stock",
    "reusable",
    "replacement_cost",
    "saved",
    "estimated",
    "rework",
    "own_work",
    "travel_worth",
    "deposits_out",
)
_KNOWN_ANYWAY = frozenset({"own_work", "travel_worth", "deposits_out"})


def amount_of(parts: Parts, key: str) -> int:
    """The amount of a key of `MONEY`, minor units."""
    return int(getattr(parts, key))


def bound_of(parts: Parts, key: str) -> Bound:
    """Whether unknown lines below make a figure "at least", or a difference "at most".

    What was saved is told over the lines that could be valued; those that could not are counted apart.
    """
    if key in _KNOWN_ANYWAY:
        return Bound.EXACT
    if key == "replacement_cost":
        return Bound.AT_LEAST if parts.unvalued else Bound.EXACT
    if key == "saved":
        return Bound.AT_MOST if parts.unpriced else Bound.EXACT
    return Bound.AT_LEAST if parts.unpriced else Bound.EXACT
