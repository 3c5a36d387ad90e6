"""What yours would cost: three standing answers, and everything a script needs to reprice the lines."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.figure import Bound
from builder.figures.yours import (
    FOUND,
    Choice,
    YoursLine,
    all_new,
    as_i_did,
    half_luck,
    machines,
    yours,
    yours_lines,
)
from builder.journal.records.item import Source
from builder.pages.costs import SOURCES
from builder.pages.frame import Fact, Frame
from builder.pages.paths import YOURS
from builder.pages.site import Material, frame

_MACHINES = frozenset({Source.OWNED, Source.BORROWED})


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineChoice:
    """A machine the reader may own; `key` is its number in the data."""

    key: int
    name: str
    owned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LuckChoice:
    """A source of found things; `gap` says what finding nothing of it would add."""

    key: str
    name: str
    gap: str


@dataclass(frozen=True, slots=True, kw_only=True)
class YoursPage:
    """yours/."""

    frame: Frame
    answers: tuple[Fact, ...]
    unpriced: str
    unvalued: str
    machines: tuple[MachineChoice, ...]
    luck: tuple[LuckChoice, ...]
    reusable: str
    hours: str
    unchanged: str
    """A hundred per cent, as the language writes it."""
    data: str
    first: str


def yours_page(material: Material) -> YoursPage:
    """Lay the page out."""
    account, words = material.account, material.words
    lines, whole = yours_lines(account), account.sums.whole
    known = machines(lines)
    bound = Bound.AT_LEAST if whole.unpriced or whole.unvalued else Bound.EXACT
    first = yours(lines, as_i_did(lines), Fraction(0))
    return YoursPage(
        frame=frame(
            material,
            YOURS,
            words.say("What yours would cost"),
            words.say("The same build at your prices, with your machines and your luck"),
            scripts=("yours.js",),
        ),
        answers=tuple(_answers(material, lines, bound)),
        unpriced=words.count(
            whole.unpriced,
            "{n} line has no price and is not in these figures.",
            "{n} lines have no price and are not in these figures.",
        )
        if whole.unpriced
        else "",
        unvalued=words.count(
            whole.unvalued,
            "{n} line could not be valued: it stands at what it cost here.",
            "{n} lines could not be valued: they stand at what they cost here.",
        )
        if whole.unvalued
        else "",
        machines=tuple(MachineChoice(key=at, name=name, owned=had) for at, (name, had) in enumerate(known)),
        luck=tuple(_luck(material, lines)),
        reusable=words.money(whole.reusable) if whole.reusable else "",
        hours=words.hours(whole.hours) if whole.hours else "",
        unchanged=words.percent(Fraction(1)),
        data=_data(material, lines),
        first=words.money(first, bound),
    )


def _answers(material: Material, lines: Sequence[YoursLine], bound: Bound) -> Iterator[Fact]:
    words = material.words
    told: tuple[tuple[str, Choice, str], ...] = (
        (words.say("As I did it"), as_i_did(lines), words.say("what this build has taken so far")),
        (
            words.say("With half the luck"),
            half_luck(lines),
            words.say("each thing I found, at half the way to its price new"),
        ),
        (
            words.say("Everything bought new and hired"),
            all_new(lines),
            words.say("starting from nothing, selling no leftovers"),
        ),
    )
    for name, choice, small in told:
        amount = yours(lines, choice, Fraction(0))
        yield Fact(name=name, value=words.money(amount, bound), small=small, money=True)


def _luck(material: Material, lines: Sequence[YoursLine]) -> Iterator[LuckChoice]:
    words = material.words
    for source in FOUND:
        gap = sum(line.gap for line in lines if line.source is source)
        if source not in _MACHINES and gap:
            yield LuckChoice(key=source.value, name=words.say(SOURCES[source]), gap=words.money(gap))


def _data(material: Material, lines: Sequence[YoursLine]) -> str:
    """The lines as integers, and how money is written; `<` escaped, since it stands inside a page."""
    names = [name for name, _ in machines(lines)]
    hours = material.account.sums.whole.hours
    style = material.words.money_style
    data = {
        "lines": [
            [
                line.source.value,
                names.index(line.machine) if line.machine is not None else -1,
                line.spent,
                line.gap,
                line.reusable,
                line.with_own,
                int(line.scales),
            ]
            for line in lines
        ],
        "atMyPrice": sorted(source.value for source in _MACHINES),
        "hours": [hours.numerator, hours.denominator],
        "money": {
            "digits": style.currency.digits,
            "before": style.before,
            "after": style.after,
            "minusBefore": style.minus_before,
            "minusAfter": style.minus_after,
            "decimal": style.numbers.decimal,
            "group": style.numbers.group,
            "last": style.numbers.last,
            "others": style.numbers.others,
        },
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
