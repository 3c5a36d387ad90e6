"""The steps: what has been used up so far as a stepped line, against the plan, over the dates."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.pages.svg import (
    PAGE,
    WORDS,
    Length,
    Svg,
    breadth,
    drawing,
    element,
    group,
    line,
    path,
    span_about,
    words,
    words_about,
    wrapped,
)

_LEFT = 6
_RIGHT = PAGE - 12
_TOP = 22
_FLOOR = 202
_KEY = _FLOOR + 44
_ROW = WORDS + 5
_SAMPLE = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """An amount on a day.  Days are whole numbers in a row (a date's ordinal)."""

    day: int
    amount: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A line of the squared paper that has a name: a round amount, or the first of a month."""

    at: int
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Steps:
    """What the chart shows.  Amounts are minor units; a line without points is left out."""

    key: str
    title: str
    description: str
    so_far: tuple[Point, ...]
    so_far_label: str
    plan: tuple[Point, ...] = ()
    """One point is a level line over the whole chart; more are joined, straight from each to the next."""
    plan_label: str = ""
    forecast: Point | None = None
    forecast_label: str = ""
    amounts: tuple[Rule, ...] = ()
    dates: tuple[Rule, ...] = ()
    years: tuple[Rule, ...] = ()
    """A second row of names under the dates."""


@dataclass(frozen=True, slots=True)
class _Frame:
    first: int
    days: int
    low: int
    reach: int
    left: Fraction

    def x(self, day: int) -> Fraction:
        return self.left + (day - self.first) * (_RIGHT - self.left) / self.days

    def y(self, amount: int) -> Fraction:
        return _FLOOR - Fraction((amount - self.low) * (_FLOOR - _TOP), self.reach)


def draw_steps(steps: Steps) -> Svg:
    """The chart as SVG, with what each line means written under it."""
    frame = _frame(steps)
    meanings, height = _meanings(steps)
    return drawing(
        steps.key,
        "steps",
        (PAGE, height),
        steps.title,
        steps.description,
        _under(steps.so_far, frame),
        _amounts(steps.amounts, frame),
        _dates(steps.dates, frame),
        _names(steps.years, frame, _FLOOR + 2 * WORDS + 9),
        line("ground-line", frame.left, _FLOOR, _RIGHT, _FLOOR),
        _so_far(steps.so_far, frame),
        _plan(steps, frame),
        _forecast(steps, frame),
        meanings,
    )


def _frame(steps: Steps) -> _Frame:
    points = [*steps.so_far, *steps.plan, *([steps.forecast] if steps.forecast else [])]
    days = [point.day for point in points] + [rule.at for rule in steps.dates] or [0]
    amounts = [0, *(point.amount for point in points), *(rule.at for rule in steps.amounts)]
    low = min(amounts)
    # Amounts have a margin of their own, so that no line runs through them.
    margin = max((breadth(rule.label) + 5 for rule in steps.amounts), default=Fraction(0))
    return _Frame(min(days), max(max(days) - min(days), 1), low, max(max(amounts) - low, 1), _LEFT + margin)


def _amounts(rules: Sequence[Rule], frame: _Frame) -> Svg:
    lines = [line("ruled", frame.left, frame.y(rule.at), _RIGHT, frame.y(rule.at)) for rule in rules]
    labels = [words(frame.left - 5, frame.y(rule.at) + 5, rule.label, "axis", "end") for rule in rules]
    return group(None, *lines, *labels)


def _dates(rules: Sequence[Rule], frame: _Frame) -> Svg:
    """Every date has its tick; a name only where there is room."""
    ticks = (line("tick", frame.x(rule.at), _FLOOR, frame.x(rule.at), _FLOOR + 5) for rule in rules)
    return group(None, *ticks, _names(rules, frame, _FLOOR + WORDS + 5))


def _names(rules: Sequence[Rule], frame: _Frame, y: int) -> Svg:
    return group(None, *(words_about(frame.x(rule.at), y, rule.label, "axis") for rule in _named(rules, frame)))


def _named(rules: Sequence[Rule], frame: _Frame) -> Iterator[Rule]:
    """The dates of which the one before leaves room for a name."""
    free: Length = 0
    for rule in rules:
        start, end = span_about(frame.x(rule.at), rule.label)
        if start >= free:
            yield rule
            free = end + 4


def all_named(steps: Steps) -> bool:
    """Whether there is room for the name of every date."""
    return len(list(_named(steps.dates, _frame(steps)))) == len(steps.dates)


def _plan(steps: Steps, frame: _Frame) -> Svg:
    if not steps.plan:
        return Svg("")
    if len(steps.plan) == 1:
        level = frame.y(steps.plan[0].amount)
        return line("plan-line", frame.left, level, _RIGHT, level)
    pairs = [(frame.x(point.day), frame.y(point.amount)) for point in steps.plan]
    rest = (step for x, y in pairs[1:] for step in ("L", x, y))
    return path("plan-line", "M", *pairs[0], *rest)


def _under(points: Sequence[Point], frame: _Frame) -> Svg:
    """The area below the steps: first of all, so that every line and word stands on it."""
    if not points:
        return Svg("")
    return path("under-steps", *_stair(points, frame), "V", _FLOOR, "H", frame.x(points[0].day), "Z")


def _so_far(points: Sequence[Point], frame: _Frame) -> Svg:
    if not points:
        return Svg("")
    return group(None, path("so-far", *_stair(points, frame)), _dot("so-far-end", frame, points[-1]))


def _stair(points: Sequence[Point], frame: _Frame) -> tuple[str | Length, ...]:
    """Level until the day something was used, then straight up: money moves on its date."""
    rest = (step for point in points for step in ("H", frame.x(point.day), "V", frame.y(point.amount)))
    return ("M", frame.x(points[0].day), frame.y(0), *rest)


def _forecast(steps: Steps, frame: _Frame) -> Svg:
    if steps.forecast is None:
        return Svg("")
    end = _dot("forecast-end", frame, steps.forecast, 6)
    if not steps.so_far:
        return end
    last, ahead = steps.so_far[-1], steps.forecast
    ends = (frame.x(last.day), frame.y(last.amount), frame.x(ahead.day), frame.y(ahead.amount))
    return group(None, line("ahead", *ends), end)


def _dot(kind: str, frame: _Frame, point: Point, radius: Length = 4) -> Svg:
    place = {"cx": frame.x(point.day), "cy": frame.y(point.amount), "r": radius}
    return element("circle", {"class": kind, **place})


def _meanings(steps: Steps) -> tuple[Svg, int]:
    """A sample of each line with its words, one under the other: they can never collide."""
    shown = [
        (steps.so_far_label, bool(steps.so_far), ("so-far", "so-far-end")),
        (steps.plan_label, bool(steps.plan), ("plan-line", None)),
        (steps.forecast_label, steps.forecast is not None, ("ahead", "forecast-end")),
    ]
    pieces: list[Svg] = []
    y = _KEY + (WORDS + 4 if steps.years else 0)
    for label, there, sample in shown:
        if there and label:
            pieces.append(_sample(sample, y))
            for text in wrapped(label, PAGE - _SAMPLE - 4):
                pieces.append(words(_SAMPLE, y, text))
                y += _ROW
    return group(None, *pieces), y - _ROW + 8


def _sample(kinds: tuple[str, str | None], y: int) -> Svg:
    stroke = line(kinds[0], _LEFT, y - 5, _SAMPLE - 8, y - 5)
    if kinds[1] is None:
        return stroke
    dot = element("circle", {"class": kinds[1], "cx": _SAMPLE - 12, "cy": y - 5, "r": 5})
    return group(None, stroke, dot)
