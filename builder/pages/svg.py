"""The one place where SVG is made.

A drawing is plain text in which every word and attribute has been escaped here.  Lengths
are whole numbers or fractions, written with at most two decimals, so equal input gives
equal bytes on every machine.  Shapes carry class names only: what they look like on a
light screen, a dark one and on paper is said once, in ``site.css``.

Every drawing is laid out for the narrowest phone, ``PAGE`` units wide, with its words
``WORDS`` units high.  On a wide screen ``site.css`` makes the words smaller against the
drawing, never larger, so room that is enough here is enough everywhere.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from html import escape

Length = int | Fraction
Attributes = Mapping[str, str | int | Fraction | None]

PAGE = 360
"""Width of a drawing in its own units: about the width of a phone in CSS pixels."""

WORDS = 15
"""Height of ordinary words, in the same units: 11.6 CSS pixels on a screen 320 pixels wide."""

FINGER = 32
"""Least distance between two links, in the same units: 24 CSS pixels and a little at 320 pixels."""

_EDGE = 4

# A letter of the widest common screen typeface, as a part of its height, measured over
# lower-case English with figures; narrower typefaces only leave more room.
_LETTER = Fraction(62, 100)

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
# Spaces that hold a number together or to its currency are not among them.
_BREAKS = re.compile(r"[ \t\n]+")
_NOT_IN_A_NAME = re.compile(r"[^\w-]+")


class Svg(str):
    """Text that is SVG already.  A template places it as it stands."""

    __slots__ = ()

    def __html__(self) -> str:
        return str(self)


def number(value: Length) -> str:
    """Digits of a length: half up at the second decimal, no trailing zeros, never ``-0``.

    >>> number(Fraction(1, 3)), number(Fraction(5, 2)), number(-7), number(Fraction(-1, 999))
    ('0.33', '2.5', '-7', '0')
    """
    if isinstance(value, bool) or not isinstance(value, (int, Fraction)):
        raise TypeError(f"a length is a whole number or a fraction, not {value!r}")
    hundredths = (value * 200 + 1) // 2
    whole, rest = divmod(abs(hundredths), 100)
    digits = f"{whole}.{rest:02d}".rstrip("0").rstrip(".")
    return f"-{digits}" if hundredths < 0 else digits


def element(name: str, attributes: Attributes | None = None, *children: str) -> Svg:
    """One element.  Attributes that are None are left out; plain words are escaped."""
    start = name + "".join(_attributes(attributes or {}))
    inside = "".join(_child(child) for child in children)
    return Svg(f"<{start}>{inside}</{name}>" if inside else f"<{start}/>")


def group(kind: str | None, *children: str) -> Svg:
    """Shapes that belong together."""
    return element("g", {"class": kind}, *children)


def words(x: Length, y: Length, text: str, kind: str = "label", anchor: str = "start") -> Svg:
    """Words standing on the line ``y``; ``anchor`` is ``start``, ``middle`` or ``end``."""
    where = None if anchor == "start" else anchor
    return element("text", {"class": kind, "x": x, "y": y, "text-anchor": where}, text)


def line(kind: str, x1: Length, y1: Length, x2: Length, y2: Length) -> Svg:
    """A straight line."""
    return element("line", {"class": kind, "x1": x1, "y1": y1, "x2": x2, "y2": y2})


def box(
    kind: str,
    x: Length,
    y: Length,
    width: Length,
    height: Length,
    *,
    round_by: Length | None = None,
    fill: str | None = None,
) -> Svg:
    """A rectangle.  ``fill`` is a reference to a pattern (`painted_with`), never a colour."""
    size: Attributes = {"x": x, "y": y, "width": width, "height": height}
    return element("rect", {"class": kind, **size, "rx": round_by, "fill": fill})


def path(kind: str, *steps: str | int | Fraction, fill: str | None = None) -> Svg:
    """A path from its letters and lengths, as in ``path("blade", "M", 0, 5, "H", 12)``."""
    written = " ".join(step if isinstance(step, str) else number(step) for step in steps)
    return element("path", {"class": kind, "d": written, "fill": fill})


def drawing(
    key: str,
    kind: str,
    size: tuple[Length, Length],
    title: str,
    description: str,
    *children: str,
    linked: bool = False,
) -> Svg:
    """A whole drawing with its name and its description for those who do not see it.

    ``key`` is unique on the page.  A drawing with links in it is a group: an image hides
    what it holds from a screen reader, and a link must not be hidden.
    """
    name = anchor_name(key)
    width, height = size
    about: Attributes = {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": f"drawing {kind}",
        "viewBox": f"0 0 {number(width)} {number(height)}",
        "role": "group" if linked else "img",
        "aria-labelledby": f"{name}-title",
        "aria-describedby": f"{name}-desc",
    }
    named = element("title", {"id": f"{name}-title"}, title)
    described = element("desc", {"id": f"{name}-desc"}, description)
    return element("svg", about, named, described, *children)


def anchor_name(key: str) -> str:
    """``key`` as the beginning of an id: letters, digits, ``-`` and ``_`` only."""
    return _NOT_IN_A_NAME.sub("-", key).strip("-") or "drawing"


def pattern(key: str, kind: str) -> Svg:
    """A texture of a drawing, for what must be told apart without colour.

    ``kind`` is ``hatch``, ``cross``, ``dots``, ``rungs`` or ``solid``.
    """
    size: Attributes = {"width": 6, "height": 6, "patternUnits": "userSpaceOnUse"}
    back = box("back", 0, 0, 6, 6)
    return element("pattern", {"id": _pattern_name(key, kind), **size}, back, *_TEXTURES[kind])


def painted_with(key: str, kind: str) -> str:
    """The value of ``fill`` that paints a shape with a texture of the same drawing."""
    return f"url(#{_pattern_name(key, kind)})"


def breadth(text: str, size: Length = WORDS) -> Fraction:
    """Room that words take on a line, on the generous side."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    return (len(text) + wide * Fraction(2, 3)) * size * _LETTER


def wrapped(text: str, room: Length, size: Length = WORDS) -> tuple[str, ...]:
    """Words broken into lines no broader than ``room``; a word too long is cut."""
    lines: list[str] = []
    for word in _cut(_BREAKS.split(text.strip(" \n")), room, size):
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and breadth(joined, size) <= room:
            lines[-1] = joined
        else:
            lines.append(word)
    return tuple(lines)


def apart(places: Sequence[Length], least: Length) -> tuple[int, ...]:
    """Indices of places that keep ``least`` between them.  The last one always stays.

    >>> apart([0, 10, 20, 25], 10)
    (0, 1, 3)
    """
    exact = [Fraction(place) for place in places]
    kept = [len(exact) - 1] if exact else []
    for index in sorted(range(len(exact)), key=lambda at: exact[at]):
        if all(abs(exact[index] - exact[other]) >= least for other in kept):
            kept.append(index)
    return tuple(sorted(kept))


def words_about(middle: Length, y: Length, text: str, kind: str = "label", size: Length = WORDS) -> Svg:
    """Words centred about a place, or pushed back from the edge where they would cross it."""
    start, end = span_about(middle, text, size)
    if start == _EDGE:
        return words(start, y, text, kind)
    if end == PAGE - _EDGE:
        return words(end, y, text, kind, "end")
    return words(middle, y, text, kind, "middle")


def span_about(middle: Length, text: str, size: Length = WORDS) -> tuple[Fraction, Fraction]:
    """From where to where words about a place reach, on the generous side."""
    room = breadth(text, size)
    start = max(Fraction(_EDGE), min(middle - room / 2, PAGE - _EDGE - room))
    return start, start + room


def stacked(spans: Iterable[tuple[Length, Length]]) -> tuple[int, ...]:
    """The row (0, 1, ...) on which each span can stand without touching another."""
    ends: list[Length] = []
    rows: list[int] = []
    for start, end in spans:
        row = next((at for at, taken in enumerate(ends) if start >= taken), len(ends))
        ends[row : row + 1] = [end]
        rows.append(row)
    return tuple(rows)


def round_steps(top: int, most: int = 4) -> tuple[int, ...]:
    """Round amounts above zero and up to ``top`` for a scale: steps of 1, 2 or 5 times ten.

    The caller puts each into words.  No more than ``most``, which is two or above; none where
    ``top`` is not positive.

    >>> round_steps(640000)
    (200000, 400000, 600000)
    """
    step = next((size for size in _round_sizes() if top // size <= most), 1)
    return tuple(range(step, top + 1, step))


def _round_sizes() -> Iterator[int]:
    ten = 1
    while True:
        yield from (ten, 2 * ten, 5 * ten)
        ten *= 10


def _attributes(attributes: Attributes) -> Iterator[str]:
    for name, value in attributes.items():
        if value is not None:
            written = value if isinstance(value, str) else number(value)
            yield f' {name}="{escape(_legal(written))}"'


def _child(child: str) -> str:
    return child if isinstance(child, Svg) else escape(_legal(child))


def _legal(text: str) -> str:
    return _NOT_XML.sub("", text)


def _pattern_name(key: str, kind: str) -> str:
    return f"{anchor_name(key)}-{kind}"


def _cut(pieces: Iterable[str], room: Length, size: Length) -> Iterator[str]:
    """Words as they are, and those broader than the room in parts that fit."""
    for piece in pieces:
        part = ""
        for letter in piece:
            if part and breadth(part + letter, size) > room:
                yield part
                part = ""
            part += letter
        yield part


_TEXTURES: Mapping[str, tuple[Svg, ...]] = {
    "solid": (),
    "hatch": (path("stroke", "M -1 1 L 1 -1 M 0 6 L 6 0 M 5 7 L 7 5"),),
    "cross": (path("stroke", "M 0 0 L 6 6 M 0 6 L 6 0"),),
    "dots": (element("circle", {"class": "dot", "cx": 3, "cy": 3, "r": Fraction(3, 2)}),),
    "rungs": (path("stroke", "M 3 0 V 6"),),
}
