"""The level: a spirit level for a phase, its bubble in the middle when on plan.

A bubble slides to the side that is over.  It is between the two lines up to about a
twentieth of the plan either way, and against the end at a quarter or more.  A phase not
begun has a level that still lies on its side, with no bubble to read.  A phase without
a plan has no lines for a bubble to lie between.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.pages.svg import Length, Svg, box, drawing, element, group, line, words

_WIDTH = 160
_MIDDLE = Fraction(_WIDTH, 2)
_VIAL = 124
_BUBBLE = 15
_TRAVEL = Fraction(_VIAL, 2) - _BUBBLE - 3
_FULL_SCALE = Fraction(1, 4)
# Half the distance between the lines: a bubble one twentieth of the plan out just touches one.
_LINES = _BUBBLE + _TRAVEL / 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """What the level shows.  ``over`` is above the plan, below zero under it; minor units."""

    key: str
    title: str
    description: str
    over: int
    plan: int | None
    """None where the phase has no plan."""
    begun: bool = True
    under_label: str = ""
    """Words for the two ends, on a level that stands alone; a small one in a list has none."""
    over_label: str = ""


def draw_level(level: Level) -> Svg:
    """The level as SVG."""
    labelled = bool(level.under_label or level.over_label)
    return drawing(
        level.key,
        "level",
        (_WIDTH, 44 if labelled else 32),
        level.title,
        level.description,
        box("beam", 1, 3, _WIDTH - 2, 26, round_by=2),
        box("vial", _MIDDLE - Fraction(_VIAL, 2), 7, _VIAL, 18, round_by=9),
        _bubble(level),
        _lines(level),
        _labels(level) if labelled else Svg(""),
    )


def bubble_place(level: Level) -> Fraction | None:
    """Where the bubble's middle lies, or None where there is none to read."""
    if level.plan is None or not level.begun:
        return None
    return _MIDDLE + _slide(level.over, level.plan) * _TRAVEL


def _slide(over: int, plan: int) -> Fraction:
    """From -1, all the way to the side that is under, to 1."""
    if plan <= 0:
        return Fraction((over > 0) - (over < 0))
    share = Fraction(over, plan) / _FULL_SCALE
    return max(Fraction(-1), min(Fraction(1), share))


def _bubble(level: Level) -> Svg:
    place = bubble_place(level)
    if place is None:
        return Svg("")
    air = _oval("air", place, (_BUBBLE, 7))
    return group("bubble", air, _oval("shine", place - 2, (5, Fraction(3, 2)), 13))


def _oval(kind: str, x: Fraction, half: tuple[Length, Length], y: int = 16) -> Svg:
    return element("ellipse", {"class": kind, "cx": x, "cy": y, "rx": half[0], "ry": half[1]})


def _lines(level: Level) -> Svg:
    if level.plan is None:
        return Svg("")
    sides = (_MIDDLE - _LINES, _MIDDLE + _LINES)
    return group(None, *(line("scribed", side, 5, side, 27) for side in sides))


def _labels(level: Level) -> Svg:
    under = words(2, 41, level.under_label)
    over = words(_WIDTH - 2, 41, level.over_label, anchor="end")
    return group(None, under, over)
