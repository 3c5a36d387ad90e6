"""What yours would cost: three standing answers, and everything a script needs to reprice the lines."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.figures.figure import Bound, bound_of
from builder.figures.yours import (
    FOUND,
    Choice,
    YoursLine,
    all_new,
    as_i_did,
    bound_of_yours,
    half_luck,
    machines,
    unknowns,
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
    """A source of found things; `says` is its name and what finding nothing of it would add."""

    key: str
    says: str


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
    answers = tuple(_answers(material, lines))
    return YoursPage(
        frame=frame(
            material,
            YOURS,
            words.say("What yours would cost"),
            words.say("The same build at your prices, with your machines and your luck"),
            scripts=("yours.js",),
        ),
        answers=answers,
        unpriced=words.count(
            whole.unpriced,
            "{n} line has no price: only what is known of it is in these figures.",
            "{n} lines have no price: only what is known of them is in these figures.",
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
        reusable=words.money(whole.reusable, bound_of(whole, "reusable")) if whole.reusable else "",
        hours=words.hours(whole.hours) if whole.hours else "",
        unchanged=words.percent(Fraction(1)),
        data=_data(material, lines),
        first=answers[0].value,
    )


def _answers(material: Material, lines: Sequence[YoursLine]) -> Iterator[Fact]:
    words, unknown = material.words, unknowns(material.account, lines)
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
        amount = words.money(yours(lines, choice, Fraction(0)), bound_of_yours(unknown, choice))
        yield Fact(name=name, value=amount, small=small, money=True)


def _luck(material: Material, lines: Sequence[YoursLine]) -> Iterator[LuckChoice]:
    for source in FOUND:
        gap = sum(line.gap for line in lines if line.source is source)
        if source not in _MACHINES and gap:
            yield LuckChoice(key=source.value, says=_gap(material, source, gap))


def _gap(material: Material, source: Source, gap: int) -> str:
    """How much more what was found would cost new, or less where that is cheaper."""
    words, name = material.words, material.words.say(SOURCES[source])
    unknown = [one for one in unknowns(material.account, ()) if one.source is source]
    if any(one.unpriced for one in unknown):
        return words.say("{source}: nobody knows how much more when it has to be bought", source=name)
    if gap < 0:
        bound = Bound.AT_MOST if unknown else Bound.EXACT
        return words.say("{source}: {amount} less when it is bought new", source=name, amount=words.money(-gap, bound))
    bound = Bound.AT_LEAST if unknown else Bound.EXACT
    return words.say("{source}: {amount} more when it has to be bought", source=name, amount=words.money(gap, bound))


def _data(material: Material, lines: Sequence[YoursLine]) -> str:
    """The lines as integers, and how money is written; `<` escaped, since it stands inside a page."""
    names = [name for name, _ in machines(lines)]
    words, hours = material.words, material.account.sums.whole.hours
    style = words.money_style
    plain = words.money(0).replace(style.write(0), "\n")
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
        "unknown": [
            [
                one.source.value,
                names.index(one.machine) if one.machine is not None else -1,
                int(one.unpriced),
                int(one.unvalued),
            ]
            for one in unknowns(material.account, lines)
        ],
        "around": [plain, words.bounded(plain, Bound.AT_LEAST)],
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
