"""The tape: pulled out to what is spent, its case at the plan, a mark for each episode.

Zero is at the hook, on the left.  The blade is drawn out to what is spent and the case sits
at the plan, so the gap between them is what is left.  Past the plan the blade runs on under
the case, hatched.  Without a plan the case sits at the end of the blade.  Where something is
not priced the blade ends in a tear: it reaches at least so far.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.pages.svg import (
    FINGER,
    PAGE,
    WORDS,
    Length,
    Svg,
    apart,
    box,
    breadth,
    drawing,
    element,
    group,
    line,
    painted_with,
    path,
    pattern,
    words,
    words_about,
    wrapped,
)

_HOOK = 10
_CASE = 44
_END = PAGE - 6
_TOP = 48
_BOTTOM = 72
_NUMBERS = 89
_PLAN = 109
_CASE_TOP = 26
_LINE = WORDS + 3


@dataclass(frozen=True, slots=True, kw_only=True)
class TapeMark:
    """An episode on the tape: the running total after it, and where its page is."""

    amount: int
    label: str
    name: str = ""
    """What a link is called aloud; ``label`` alone is a bare number."""
    href: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Graduation:
    """A round amount printed on the blade."""

    amount: int
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tape:
    """What the tape shows.  Amounts are minor units of one currency; words are ready."""

    key: str
    title: str
    description: str
    spent: int
    plan: int | None
    spent_label: str
    plan_label: str
    at_least: bool = False
    marks: tuple[TapeMark, ...] = ()
    """In the order of the episodes; the last is the newest."""
    graduations: tuple[Graduation, ...] = ()


def draw_tape(tape: Tape) -> Svg:
    """The tape as SVG."""
    plan_label, foot = _plan_label(tape)
    return drawing(
        tape.key,
        "tape",
        (PAGE, foot),
        tape.title,
        tape.description,
        element("defs", None, pattern(tape.key, "hatch")),
        _case(tape),
        group("pulled", _blade(tape), _graduations(tape)),
        _marks(tape),
        plan_label,
        _sign(tape),
        linked=any(mark.href for mark in tape.marks),
    )


def place_of(tape: Tape, amount: int) -> Fraction:
    """Distance of an amount from the left edge.  Amounts below zero stand at the hook."""
    return _HOOK + max(amount, 0) * _scale(tape)


def _scale(tape: Tape) -> Fraction:
    """Units for one minor unit of money, so that both the blade and the case fit."""
    blade = Fraction(_END - _HOOK, max(tape.spent, *(mark.amount for mark in tape.marks), 1))
    case = Fraction(_END - _CASE - _HOOK, max(_case_at(tape), 1))
    return min(blade, case)


def _case_at(tape: Tape) -> int:
    return max(tape.spent if tape.plan is None else tape.plan, 0)


def _mouth(tape: Tape) -> Fraction:
    return place_of(tape, _case_at(tape))


def _case(tape: Tape) -> Svg:
    mouth, gap = _mouth(tape), place_of(tape, tape.spent)
    body = box("case", mouth, _CASE_TOP, _CASE, _BOTTOM - _CASE_TOP, round_by=8)
    drum = element("circle", {"class": "drum", "cx": mouth + _CASE // 2, "cy": 47, "r": 13})
    ahead = box("track", gap, _TOP + 2, mouth - gap, _BOTTOM - _TOP - 4) if gap < mouth else Svg("")
    return group(None, ahead, body, drum)


def _blade(tape: Tape) -> Svg:
    end = place_of(tape, tape.spent)
    over = min(end, _mouth(tape))
    hook = path("hook", "M", _HOOK, _TOP - 4, "H", _HOOK - 5, "V", _BOTTOM + 4, "H", _HOOK, "Z")
    return group(None, _strip(tape, "blade", _HOOK, end), _past(tape, over, end), hook)


def _past(tape: Tape, over: Fraction, end: Fraction) -> Svg:
    """The part beyond the plan, hatched."""
    hatch = painted_with(tape.key, "hatch")
    return _strip(tape, "past", over, end, hatch) if over < end else Svg("")


def _strip(tape: Tape, kind: str, start: Length, end: Fraction, fill: str | None = None) -> Svg:
    return path(kind, "M", start, _TOP, "H", end, *_blade_end(tape, end), "H", start, "Z", fill=fill)


def _blade_end(tape: Tape, end: Fraction) -> tuple[str | Length, ...]:
    """Cut square, or torn where the amount is only the least it can be."""
    if not tape.at_least:
        return ("V", _BOTTOM)
    quarter = Fraction(_BOTTOM - _TOP, 4)
    teeth = zip((4, -1, 4, 0), range(1, 5), strict=True)
    return tuple(step for out, at in teeth for step in ("L", end + out, _TOP + at * quarter))


def _graduations(tape: Tape) -> Svg:
    """Round amounts, as far as the blade is out and not under the case."""
    end = min(place_of(tape, tape.spent), _mouth(tape))
    shown = [at for at in tape.graduations if place_of(tape, at.amount) <= end]
    long = (step for at in shown for step in ("M", place_of(tape, at.amount), _TOP, "v", 13))
    return group(None, _lines((*_short(tape, end), *long)), *(_printed(tape, at) for at in shown))


def _lines(steps: Sequence[str | Length]) -> Svg:
    return path("graduation", *steps) if steps else Svg("")


def _printed(tape: Tape, graduation: Graduation) -> Svg:
    """The amount to the left of its line, where there is room between it and the one before."""
    place = place_of(tape, graduation.amount)
    room = min(tape.graduations[0].amount * _scale(tape), place - _HOOK)
    fits = breadth(graduation.label) + 5 <= room
    return words(place - 3, _BOTTOM - 6, graduation.label, "figure", "end") if fits else Svg("")


def _short(tape: Tape, end: Fraction) -> Iterator[str | Length]:
    """Five short lines to a long one, unless they would run together."""
    step = tape.graduations[0].amount * _scale(tape) / 5 if tape.graduations else Fraction(0)
    count = int((end - _HOOK) / step) if step >= 3 else 0
    for at in range(1, count + 1):
        yield from ("M", _HOOK + at * step, _TOP, "v", 7)


def _marks(tape: Tape) -> Svg:
    places = [place_of(tape, mark.amount) for mark in tape.marks]
    # A thousand episodes still make no more lines than there are units to draw them in.
    whole = sorted({round(place) for place in places})
    ticks = path("tick", *(step for place in whole for step in ("M", place, _BOTTOM, "v", 6)))
    named = (_mark_label(tape.marks[index], places[index]) for index in apart(places, FINGER))
    return group(None, ticks if whole else Svg(""), *named)


def _mark_label(mark: TapeMark, place: Fraction) -> Svg:
    label = words(place, _NUMBERS, mark.label, "mark", "middle")
    if mark.href is None:
        return label
    target = box("target", place - FINGER // 2, _BOTTOM - 8, FINGER, FINGER)
    return element("a", {"href": mark.href, "aria-label": mark.name or None}, target, label)


def _sign(tape: Tape) -> Svg:
    """What is spent, and the crow's foot a carpenter marks a measure with."""
    end, text = place_of(tape, tape.spent), tape.spent_label
    behind_case = _mouth(tape) <= end < _mouth(tape) + _CASE
    foot = ("M", end - 5, 17, "L", end, 25, "L", end + 5, 17)
    shaft = () if behind_case else ("M", end, 25, "V", _TOP)
    # Bold words are broader, as if they were higher.
    label = words_about(end, 13, text, "reading", WORDS + 2) if text else Svg("")
    return group(None, path("crowsfoot", *foot, *shaft), label)


def _plan_label(tape: Tape) -> tuple[Svg, int]:
    """The words of the plan under the case, a plumb line from its mouth, and where they end."""
    middle = _mouth(tape) + _CASE // 2
    lines = wrapped(tape.plan_label, PAGE - 8)
    placed = (words_about(middle, _PLAN + row * _LINE, text) for row, text in enumerate(lines))
    mouth = _mouth(tape)
    plumb = line("plumb", mouth, _BOTTOM, mouth, _PLAN - WORDS) if tape.plan is not None else Svg("")
    return group(None, plumb, *placed), _PLAN + 5 + _LINE * max(len(lines) - 1, 0)
