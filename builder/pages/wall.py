"""The wall: openings placed along it, with what stands between them measured out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
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
    group,
    line,
    span_about,
    stacked,
    words,
    words_about,
    wrapped,
)

_LEFT = 6
_ROOM = PAGE - 12
_LINE = WORDS + 3
_TOP = _LINE + 8
# A wall of unknown height, and one far longer than it is high, are still drawn to be read.
_LEAST = 60
_MOST = 260
_UNKNOWN = 110

_Pair = tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A window or door: how far from the left end, its size, and how high above the floor.

    Without a height it stands in the middle of the wall with a broken outline.
    """

    left: Length
    width: Length
    label: str
    sill: Length = 0
    height: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A stretch along the foot of the wall, with its length in words."""

    start: Length
    end: Length
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What the drawing shows.  All lengths are in one unit, whichever it is."""

    key: str
    title: str
    description: str
    length: Length
    height: Length | None
    """None where only the length is known: the drawing is then no measure of height."""
    length_label: str
    height_label: str = ""
    openings: tuple[Opening, ...] = ()
    measures: tuple[Measure, ...] = ()


def draw_wall(wall: Wall) -> Svg:
    """The wall as SVG, its length above it and its measures below."""
    across = Fraction(_ROOM) / (wall.length or 1)
    tall = _tall(wall, across)
    floor = _TOP + tall
    measures, below = _measures(wall.measures, across, floor)
    return drawing(
        wall.key,
        "wall",
        (PAGE, floor + below + 6),
        wall.title,
        wall.description,
        _heading(wall),
        box("wall-face", _LEFT, _TOP, _ROOM, tall),
        *(_opening(opening, wall, across, floor) for opening in wall.openings),
        measures,
    )


def _heading(wall: Wall) -> Svg:
    length = words(_LEFT, WORDS, wall.length_label)
    height = words(_LEFT + _ROOM, WORDS, wall.height_label, anchor="end") if wall.height_label else Svg("")
    return group(None, length, height)


def _tall(wall: Wall, across: Fraction) -> Fraction:
    """Height of the wall on the page: to scale, unless that is too low or too high to read."""
    height = wall.height * across if wall.height else Fraction(_UNKNOWN)
    return max(Fraction(_LEAST), min(Fraction(_MOST), height))


def _opening(opening: Opening, wall: Wall, across: Fraction, floor: Fraction) -> Svg:
    x, width = _LEFT + opening.left * across, opening.width * across
    below, height, kind = _upright(opening, wall, across)
    y = floor - below - height
    glass = box(kind, x, y, width, height)
    return group(None, glass, *_on_glass(opening.label, (x, y), (width, height)))


def _upright(opening: Opening, wall: Wall, across: Fraction) -> tuple[Fraction, Fraction, str]:
    """Height of the sill and of the opening on the page, and the kind of outline it gets."""
    tall = _tall(wall, across)
    if wall.height and opening.height is not None:
        up = tall / wall.height
        return opening.sill * up, opening.height * up, "glass"
    return tall / 5, tall * 3 / 5, "glass unmeasured"


def _on_glass(label: str, corner: _Pair, size: _Pair) -> Iterator[Svg]:
    """Words in the middle of the glass, left out where they do not fit: the table has them."""
    lines = wrapped(label, max(size[0] - 6, 1))
    longest = max((breadth(word) for word in label.split()), default=Fraction(0))
    if longest > size[0] - 6 or len(lines) * _LINE > size[1]:
        return
    first = corner[1] + (size[1] - len(lines) * _LINE) / Fraction(2) + WORDS
    middle = corner[0] + size[0] / Fraction(2)
    for row, text in enumerate(lines):
        yield words(middle, first + row * _LINE, text, "on-glass", "middle")


def _measures(measures: Sequence[Measure], across: Fraction, floor: Fraction) -> tuple[Svg, int]:
    """Ticks at the ends of each stretch and its length under it, in as many rows as it takes."""
    spans = (span_about(_middle(measure, across), measure.label) for measure in measures)
    rows = stacked((start, end + 8) for start, end in spans)
    pieces = (_measure(one, across, floor, row) for one, row in zip(measures, rows, strict=True))
    return group(None, *pieces), 14 + _LINE * (max(rows, default=-1) + 1)


def _measure(measure: Measure, across: Fraction, floor: Fraction, row: int) -> Svg:
    first, last = (_LEFT + at * across for at in (measure.start, measure.end))
    level, middle = floor + 10, _middle(measure, across)
    base = level + 4 + (row + 1) * _LINE
    ticks = (line("tick", at, floor + 4, at, floor + 16) for at in (first, last))
    leader = line("leader", middle, level, middle, base - WORDS + 2)
    measured = line("measured", first, level, last, level)
    return group(None, measured, *ticks, leader, words_about(middle, base, measure.label))


def _middle(measure: Measure, across: Fraction) -> Fraction:
    return _LEFT + Fraction(measure.start + measure.end) * across / 2
