"""The shares: where the money went, one bar for each place it went to."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.pages.svg import (
    PAGE,
    WORDS,
    Length,
    Svg,
    box,
    breadth,
    drawing,
    element,
    group,
    line,
    painted_with,
    pattern,
    words,
    wrapped,
)

_LEFT = 4
_RIGHT = PAGE - 4
_BAR = 14
_LINE = WORDS + 4
_TEXTURES = ("solid", "hatch", "dots", "cross", "rungs")


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """One place money went to.  An amount below zero (more came back) has no bar."""

    label: str
    amount: int
    amount_label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shares:
    """What the drawing shows: bars in the order given, each as long as its amount."""

    key: str
    title: str
    description: str
    shares: tuple[Share, ...]


def draw_shares(shares: Shares) -> Svg:
    """The bars as SVG, each with its name and amount above it."""
    most = max((share.amount for share in shares.shares), default=0)
    bars: list[Svg] = []
    y = 0
    for index, share in enumerate(shares.shares):
        bar, height = _share(shares.key, share, _TEXTURES[index % len(_TEXTURES)], most, y)
        bars.append(bar)
        y += height
    used = _TEXTURES[: len(shares.shares)]
    textures = element("defs", None, *(pattern(shares.key, kind) for kind in used))
    return drawing(shares.key, "shares", (PAGE, max(y, 1)), shares.title, shares.description, textures, *bars)


def bar_length(amount: int, most: int) -> Fraction:
    """Length of a bar, the longest being as long as the page is wide."""
    return Fraction(max(amount, 0) * (_RIGHT - _LEFT), max(most, 1))


def _share(key: str, share: Share, texture: str, most: int, y: int) -> tuple[Svg, int]:
    """A bar and the height it takes.  A long name runs over several lines, never into the amount."""
    lines = wrapped(share.label, _RIGHT - _LEFT - breadth(share.amount_label) - 12)
    names = [words(_LEFT, y + _LINE * (row + 1) - 4, text) for row, text in enumerate(lines)]
    top = y + _LINE * max(len(lines), 1) + 1
    amount = words(_RIGHT, top - 5, share.amount_label, "amount", "end")
    bar = _bar(key, texture, top, bar_length(share.amount, most))
    return group(None, *names, amount, bar), top + _BAR + 10 - y


def _bar(key: str, texture: str, top: int, length: Length) -> Svg:
    start = line("start", _LEFT, top - 2, _LEFT, top + _BAR + 2)
    if not length:
        return start
    bar = box(f"share {texture}", _LEFT, top, length, _BAR, fill=painted_with(key, texture))
    return group(None, bar, start)
