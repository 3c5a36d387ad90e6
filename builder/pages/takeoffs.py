"""A take-off's working as pages show it: formula, numbers put in, result, sources, cautions."""

from __future__ import annotations

import re
from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace

from builder.pages.compare import left_of
from builder.pages.cutplan import drawing_of
from builder.pages.frame import Link
from builder.pages.paths import WORKINGS
from builder.pages.site import Material
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.wording import Words
from builder.plan.budget_records import Budgeted, Match, PhaseOutlook, Status
from builder.takeoff.expression import Style
from builder.takeoff.records import Result, Step, Takeoff
from builder.takeoff.text import Text
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownStep:
    """One step: its name, the formula, the formula with numbers in it, the result.

    The formula is "" where it has no names in it, the numbers are too where the result was found by a search.
    """

    name: str
    formula: str
    numbers: str
    result: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sourced:
    """A sentence with where it comes from."""

    text: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """A take-off on a page. `anchor` is its id; `whole` leads to the full working where this is the short form."""

    anchor: str
    title: str
    given: tuple[tuple[str, str], ...]
    steps: tuple[ShownStep, ...]
    results: tuple[tuple[str, str], ...]
    proof: str
    coefficients: tuple[Sourced, ...]
    suggestions: tuple[Sourced, ...]
    cautions: tuple[Sourced, ...]
    drawing: str
    compared: Table | None
    on_phase: bool
    whole: Link


def workings_of(material: Material, phase: PhaseOutlook, root: str) -> tuple[Working, ...]:
    """The workings that a phase's planned lines rest on, in the plan's order."""
    names = dict.fromkeys(
        one.takeoff.name for match in phase.matches for one in match.planned if one.takeoff is not None
    )
    found = (material.account.takeoff(name) for name in names)
    return tuple(working(material, takeoff, root) for takeoff in found if takeoff is not None)


def working(material: Material, takeoff: Takeoff, root: str) -> Working:
    """One take-off in full."""
    words = material.words
    return Working(
        anchor=f"takeoff-{takeoff.name}",
        title=words.say("{name}: {value}", name=spoken(takeoff.title, words), value=takeoff.name),
        given=tuple((_plain(given.key, words), _written(given.written, words)) for given in takeoff.inputs),
        steps=_steps(takeoff, words),
        results=tuple((_called(result, takeoff, words), words.quantity(result.quantity)) for result in takeoff.results),
        proof=_proof(takeoff, words),
        coefficients=tuple(
            Sourced(
                text=words.say("{name}: {value}", name=_plain(one.key, words), value=words.coefficient(one.value)),
                source=spoken(one.source, words),
            )
            for one in takeoff.coefficients
        ),
        suggestions=tuple(
            Sourced(text=spoken(one.text, words), source=spoken(one.source, words)) for one in takeoff.suggestions
        ),
        cautions=tuple(
            Sourced(text=spoken(one.text, words), source=spoken(one.source, words)) for one in takeoff.cautions
        ),
        drawing=drawing_of(takeoff, words),
        compared=_compared(material, takeoff),
        on_phase=_on_phase(material, takeoff),
        whole=Link(text=words.say("The whole working"), href=f"{root}{WORKINGS}#takeoff-{takeoff.name}"),
    )


def spoken(text: Text, words: Words) -> str:
    """A take-off's sentence in the language of the page."""
    values = {name: _value(value, words) for name, value in text.values}
    return words.say(text.pattern, **values) if values else words.say(text.pattern)


def _value(value: Quantity | int | str, words: Words) -> str:
    if isinstance(value, Quantity):
        return words.quantity(value)
    return words.whole(value) if isinstance(value, int) else words.known(value)


_COLUMN = re.compile(r"(?:^|(?<=[;,] ))[a-z_]+(?= )")
_PER = re.compile(r"\bper (\S+)")


def _written(text: str, words: Words) -> str:
    """An input as its author wrote it; marks in numbers and words of the format (`yes`, `count 4`, `per`) follow
    the language.
    """
    named = _COLUMN.sub(lambda column: words.known(column[0].replace("_", " ")), words.known(text))
    return words.as_written(_PER.sub(lambda per: words.say("per {unit}", unit=words.known(per[1])), named))


def _called(result: Result, takeoff: Takeoff, words: Words) -> str:
    """A result's name; one of a list of lengths is named as its step is (`boards of 9 ft 8 in`)."""
    for step in takeoff.steps:
        length = dict(step.name.values).get("length")
        if isinstance(length, str) and result.key.endswith(f"_length_{_WORDLESS.sub('_', length)}"):
            return spoken(step.name, words)
    return _plain(result.key, words)


_WORDLESS = re.compile(r"\W+")


def _plain(key: str, words: Words) -> str:
    return words.say(key.replace("_", " "))


def _steps(takeoff: Takeoff, words: Words) -> tuple[ShownStep, ...]:
    """What was put in stands in a formula with the digits it was written with; a result as it stood above."""
    results = {step.result for step in takeoff.steps}

    def measure(quantity: Quantity) -> str:
        return words.quantity(quantity) if quantity in results else words.put_in(quantity)

    style = Style(word=lambda text: spoken(text, words), measure=measure)
    return tuple(_step(step, style, words) for step in takeoff.steps)


def _step(step: Step, style: Style, words: Words) -> ShownStep:
    formula, numbers = step.formula_in(style), step.with_numbers_in(style)
    return ShownStep(
        name=spoken(step.name, words),
        formula=formula if formula != numbers else "",
        numbers=numbers if not step.is_found else "",
        result=words.quantity(step.result),
        note=spoken(step.note, words) if step.note else "",
    )


def _proof(takeoff: Takeoff, words: Words) -> str:
    if takeoff.proven is None:
        return ""
    if takeoff.proven:
        return words.say("Proven: nothing better exists.")
    bound = words.quantity(takeoff.bound.quantity) if takeoff.bound else ""
    return words.say("The search stopped early; nothing can be better than {bound}.", bound=bound)


def _on_phase(material: Material, takeoff: Takeoff) -> bool:
    """Whether a phase's page shows it too, with its drawing."""
    return any(
        one.takeoff is not None and one.takeoff.name == takeoff.name
        for phase in material.account.phases
        for match in phase.matches
        for one in match.planned
    )


def _compared(material: Material, takeoff: Takeoff) -> Table | None:
    """Planned, bought, used and left of every planned line that takes its quantity from here."""
    found = [
        (match, one, phase.status is Status.DONE)
        for phase in material.account.phases
        for match in phase.matches
        for one in match.planned
        if one.takeoff is not None and one.takeoff.name == takeoff.name and len(match.planned) == 1 and match.refs
    ]
    if not found:
        return None
    words = material.words
    rows = tuple(_row(match, one, words, done=done) for match, one, done in found)
    return without_empty(
        Table(
            caption=words.say("Planned, bought, used and left"),
            columns=(
                Column(label=words.say("What"), role="what"),
                Column(label=words.say("Planned"), role="part", many=True),
                Column(label=words.say("Bought"), role="part", many=True),
                Column(label=words.say("Used"), role="part", many=True),
                Column(label=words.say("Left"), role="part", many=True),
                Column(label=words.say("The allowance was off by"), role="part"),
            ),
            rows=rows,
        )
    )


def _row(match: Match, planned: Budgeted, words: Words, *, done: bool) -> Row:
    """What was allowed for can be judged only once the phase is done: until then more may be used."""
    return Row(
        cells=(
            Cell(text=planned.item.what),
            Cell(text=words.quantity(planned.quantity)),
            Cell(text=words.quantity(match.bought)),
            Cell(text=words.quantity(match.quantity)),
            Cell(text=words.quantity(left_of(match.bought, match.quantity))),
            Cell(text=_off(planned.quantity, match.quantity, words) if done else ""),
        )
    )


def _off(planned: Quantity | None, used: Quantity | None, words: Words) -> str:
    """How far what was planned, waste included, was from what was used."""
    if planned is None or used is None or not used.like(planned) or not planned.value:
        return ""
    difference = used.to_like(planned) - planned.value
    amount = words.quantity(Quantity(abs(difference), planned.unit))
    if not difference:
        return words.say("nothing")
    if planned.unit.counts:
        return words.say("{amount} too few" if difference > 0 else "{amount} too many", amount=amount)
    return words.say("{amount} too little" if difference > 0 else "{amount} too much", amount=amount)


def sources_once(workings: Sequence[Working]) -> tuple[Working, ...]:
    """Workings as they stand on one page: a caution stands in full where it first stands, then in short."""
    seen: set[Sourced] = set()
    shown = []
    for one in workings:
        shown.append(replace(one, cautions=tuple(_told_once(caution, seen) for caution in one.cautions)))
        seen.update(one.cautions)
    return tuple(shown)


def _told_once(caution: Sourced, seen: AbstractSet[Sourced]) -> Sourced:
    if caution not in seen:
        return caution
    return Sourced(text=f"{caution.text.partition('. ')[0].rstrip('.')}.", source="")
