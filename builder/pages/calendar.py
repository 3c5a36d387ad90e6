"""The calendar: phases as bars, waits hatched, weekends worked, and the dates that matter."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
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
    path,
    pattern,
    stacked,
    words,
    wrapped,
)

_LEFT = 6
_RIGHT = PAGE - 6
_HEAD = WORDS + 10
_LINE = WORDS + 3
_BAR = 12
_SAMPLE = 34
_SIGN_ROOM = 16


class Span(Enum):
    """What a stretch of days is: work done, work to come, or waiting for something to cure."""

    WORKED = "worked"
    AHEAD = "to-come"
    WAIT = "wait"


class Sign(Enum):
    """Which date a line stands for; each has a line and a head of its own."""

    TODAY = "today"
    PROMISED = "promised"
    LIKELY = "likely"
    SAFE = "safe"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """Days from ``first`` to ``last``, both included.  Days are a date's ordinal."""

    first: int
    last: int
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseRow:
    """A phase: its name, its stretches and the days on which it was worked on."""

    label: str
    stretches: tuple[Stretch, ...] = ()
    worked_on: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DateSign:
    """A date that matters, with its words."""

    day: int
    sign: Sign
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Month:
    """The first day of a month, and its name."""

    day: int
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """What the calendar shows.  Its first and last day follow from what stands on it."""

    key: str
    title: str
    description: str
    rows: tuple[PhaseRow, ...]
    signs: tuple[DateSign, ...] = ()
    months: tuple[Month, ...] = ()
    years: tuple[Month, ...] = ()
    """Names of years, on a second row under those of the months."""
    span_labels: tuple[tuple[Span, str], ...] = ()
    """What the bars mean, in words, for the lines under the calendar."""
    worked_label: str = ""


@dataclass(frozen=True, slots=True)
class _Frame:
    first: int
    days: int

    def x(self, day: int) -> Fraction:
        return _LEFT + Fraction((day - self.first) * (_RIGHT - _LEFT), self.days)


def draw_calendar(calendar: Calendar) -> Svg:
    """The calendar as SVG, with what its signs mean written under it."""
    frame = _frame(calendar)
    head = _HEAD + (_LINE if calendar.years else 0)
    bars, names, foot = _rows(calendar, frame, head)
    signs, below = _signs(calendar.signs, frame, head, foot)
    meanings, height = _meanings(calendar, below + 6)
    return drawing(
        calendar.key,
        "calendar",
        (PAGE, height),
        calendar.title,
        calendar.description,
        element("defs", None, pattern(calendar.key, "hatch")),
        *(line("ruled", frame.x(month.day), 4, frame.x(month.day), foot) for month in calendar.months),
        _names(calendar.months, frame, WORDS),
        _names(calendar.years, frame, WORDS + _LINE),
        bars,
        signs,
        names,
        meanings,
    )


def _frame(calendar: Calendar) -> _Frame:
    stretches = [stretch for row in calendar.rows for stretch in row.stretches]
    starts = [stretch.first for stretch in stretches]
    ends = [stretch.last + 1 for stretch in stretches]
    worked = [day for row in calendar.rows for day in row.worked_on]
    named = [sign.day for sign in calendar.signs] + [month.day for month in calendar.months]
    days = [*starts, *ends, *worked, *named] or [0]
    return _Frame(min(days), max(max(days) - min(days), 1))


def _names(months: Sequence[Month], frame: _Frame, y: int) -> Svg:
    """Every month has its line; a name only where the one before it leaves room."""
    pieces: list[Svg] = []
    free: Length = 0
    for month in months:
        place = frame.x(month.day)
        if place >= free and place + breadth(month.label) + 4 <= PAGE:
            pieces.append(words(place + 3, y, month.label, "axis"))
            free = place + breadth(month.label) + 8
    return group(None, *pieces)


def _rows(calendar: Calendar, frame: _Frame, y: int) -> tuple[Svg, Svg, int]:
    """The bars, the names over them, and where they end: names are drawn last, so that no line runs through one."""
    bars: list[Svg] = []
    names: list[Svg] = []
    for row in calendar.rows:
        for text in wrapped(row.label, PAGE - 2 * _LEFT):
            names.append(words(_LEFT, y + WORDS, text))
            y += _LINE
        bars.extend(_stretch(calendar.key, stretch, frame, y + 2) for stretch in row.stretches)
        bars.append(_worked(row.worked_on, frame, y + 2))
        y += _BAR + 15
    return group(None, *bars), group(None, *names), y


def _stretch(key: str, stretch: Stretch, frame: _Frame, y: int) -> Svg:
    start = frame.x(stretch.first)
    width = frame.x(stretch.last + 1) - start
    fill = painted_with(key, "hatch") if stretch.span is Span.WAIT else None
    return box(f"stretch {stretch.span.value}", start, y, width, _BAR, fill=fill)


def _worked(days: Sequence[int], frame: _Frame, y: int) -> Svg:
    if not days:
        return Svg("")
    places = (frame.x(day) + Fraction(_RIGHT - _LEFT, 2 * frame.days) for day in sorted(set(days)))
    return path("worked-tick", *(step for place in places for step in ("M", place, y - 2, "v", _BAR + 4)))


def _signs(signs: Sequence[DateSign], frame: _Frame, head: int, foot: int) -> tuple[Svg, int]:
    """A line for each date, its head below the calendar; heads that would touch go lower."""
    in_order = sorted(signs, key=lambda sign: sign.day)
    places = [frame.x(sign.day) for sign in in_order]
    rows = stacked((place - 7, place + 7) for place in places)
    drawn = (
        _standing(sign.sign, place, head, foot + 7 + 14 * row)
        for sign, place, row in zip(in_order, places, rows, strict=True)
    )
    return group(None, *drawn), foot + 14 * (max(rows, default=-1) + 1)


def _standing(sign: Sign, place: Fraction, head: int, foot: int) -> Svg:
    return group(None, line(f"sign {sign.value}", place, head, place, foot), _head(sign, place, foot))


def _head(sign: Sign, x: Length, y: Length) -> Svg:
    """A bar for today, a triangle for the promise, a ring for likely, a diamond for safe."""
    kind = f"sign-head {sign.value}"
    if sign is Sign.LIKELY:
        return element("circle", {"class": kind, "cx": x, "cy": y, "r": 5})
    return path(kind, "M", *_OUTLINES[sign](x, y))


_Outline = tuple[str | Length, ...]
_OUTLINES: Mapping[Sign, Callable[[Length, Length], _Outline]] = {
    Sign.TODAY: lambda x, y: (x - 5, y, "H", x + 5),
    Sign.PROMISED: lambda x, y: (x - 6, y + 5, "L", x, y - 6, "L", x + 6, y + 5, "Z"),
    Sign.SAFE: lambda x, y: (x - 6, y, "L", x, y - 6, "L", x + 6, y, "L", x, y + 6, "Z"),
}


def _meanings(calendar: Calendar, y: int) -> tuple[Svg, int]:
    """Only what is drawn is explained."""
    drawn = {stretch.span for row in calendar.rows for stretch in row.stretches}
    samples = [(_bar_sample(calendar.key, span), label) for span, label in calendar.span_labels if span in drawn]
    if calendar.worked_label and any(row.worked_on for row in calendar.rows):
        samples.append((_tick_sample(), calendar.worked_label))
    samples += [(_sign_sample(sign.sign), sign.label) for sign in calendar.signs]
    pieces: list[Svg] = []
    for sample, label in samples:
        pieces.append(element("g", {"transform": f"translate(0 {y})"}, sample))
        for text in wrapped(label, PAGE - _SAMPLE - 4):
            pieces.append(words(_SAMPLE, y + WORDS, text))
            y += _LINE + 2
    return group(None, *pieces), y + 6


def _bar_sample(key: str, span: Span) -> Svg:
    fill = painted_with(key, "hatch") if span is Span.WAIT else None
    return box(f"stretch {span.value}", _LEFT, 4, 20, _BAR, fill=fill)


def _tick_sample() -> Svg:
    return path("worked-tick", "M", _SIGN_ROOM, 2, "v", _BAR + 4)


def _sign_sample(sign: Sign) -> Svg:
    return _head(sign, _SIGN_ROOM, 10)
