"""What the same build would cost somebody else. The page's script does the same sums with the same integers.

A line costs what this build spent on it, moved toward its replacement cost by the part of its luck that the other
person does not have. Every line is rounded once, half up.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from builder.figures.account import Account
from builder.figures.figure import Bound
from builder.journal.records.item import Kind, Source
from builder.ledger.records import Line
from builder.words.rounding import half_up

FOUND = (Source.SECONDHAND, Source.SALVAGED, Source.GIFT, Source.STOCK, Source.OWNED, Source.BORROWED)
_AT_MY_PRICE = frozenset({Source.OWNED, Source.BORROWED})


@dataclass(frozen=True, slots=True, kw_only=True)
class YoursLine:
    """A line as another person would pay it. Amounts are minor units.

    `gap` is replacement cost less spent, 0 where nobody knows; `with_own` what is left to pay for somebody
    who owns the machine, None for what is no machine; `scales` whether a larger build takes more of it.
    """

    source: Source
    machine: str | None
    spent: int
    gap: int
    reusable: int
    with_own: int | None
    scales: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What the other person has and wants.

    `luck` is by source, per cent, 100 where nothing is said: how much of what this build found they find
    too. `owns` are machines; `reuse` takes off what will serve again; `price` and `size` are per cent;
    `hour` is what an hour of own work is worth to them, minor units.
    """

    luck: Mapping[Source, int] = field(default_factory=dict)
    owns: frozenset[str] = frozenset()
    reuse: bool = False
    price: int = 100
    size: int = 100
    hour: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """A line of which the price or the replacement cost is not known. `machine` is set where a choice can own it."""

    source: Source
    machine: str | None
    unpriced: bool
    unvalued: bool


def yours_lines(account: Account) -> tuple[YoursLine, ...]:
    """Every line that has any figure. Who hired a machine beside the own one pays for it again in owning one."""
    made = [_line(line, account) for line in account.ledger.lines]
    lines = [line for line in made if line.spent or line.gap or line.reusable]
    had = {name for name, mine in machines(lines) if mine}
    return tuple(replace(line, with_own=line.spent) if line.machine in had else line for line in lines)


def _line(line: Line, account: Account) -> YoursLine:
    item, parts = line.item, line.parts
    apart = item.kind is Kind.TRAVEL or (item.kind is Kind.LABOUR and item.source is Source.UNPAID)
    known = not parts.unvalued and not apart
    machine = account.called(item) if item.kind is Kind.EQUIPMENT and not item.source.leaves else None
    fuel = item.fuel.minor if item.fuel else 0
    return YoursLine(
        source=item.source,
        machine=machine,
        spent=parts.spent,
        gap=parts.replacement_cost - parts.spent if known else 0,
        reusable=parts.reusable,
        with_own=None if machine is None else parts.spent if item.source in _AT_MY_PRICE else fuel,
        scales=item.kind is Kind.MATERIAL,
    )


def unknowns(account: Account, lines: Sequence[YoursLine]) -> tuple[Unknown, ...]:
    """What an answer may rest on without knowing it, each kind of it once."""
    known = {name for name, _ in machines(lines)}
    return tuple(
        dict.fromkeys(
            Unknown(
                source=line.item.source,
                machine=name if (name := account.called(line.item)) in known else None,
                unpriced=bool(line.parts.unpriced),
                unvalued=bool(line.parts.unvalued),
            )
            for line in account.ledger.lines
            if line.parts.unpriced or line.parts.unvalued
        )
    )


def bound_of_yours(unknown: Sequence[Unknown], choice: Choice) -> Bound:
    """Whether an answer is "at least": what this build paid counts as far as the luck is the same, and what things
    cost new as far as it is not.
    """
    return Bound.AT_LEAST if any(_rests_on(one, choice) for one in unknown) else Bound.EXACT


def _rests_on(unknown: Unknown, choice: Choice) -> bool:
    if unknown.machine is not None and unknown.machine in choice.owns:
        return unknown.unpriced and unknown.source in _AT_MY_PRICE
    missing = _missing(unknown.source, unknown.machine, choice)
    return (missing < 100 and unknown.unpriced) or (missing > 0 and unknown.unvalued)


def _missing(source: Source, machine: str | None, choice: Choice) -> int:
    """How much of this build's luck somebody does not have, per cent; a machine one does not own is hired."""
    missing = 100 - choice.luck.get(source, 100)
    return 100 if machine is not None and source in _AT_MY_PRICE and missing == 0 else missing


def machines(lines: Sequence[YoursLine]) -> tuple[tuple[str, bool], ...]:
    """Every machine in order, and whether this build had it for nothing (own or borrowed)."""
    found: dict[str, bool] = {}
    for line in lines:
        if line.machine is not None:
            found[line.machine] = found.get(line.machine, False) or line.source in _AT_MY_PRICE
    return tuple(found.items())


def yours(lines: Sequence[YoursLine], choice: Choice, hours: Fraction) -> int:
    """What it would cost, minor units; `hours` of own work at the choice's rate are in it."""
    return sum(_cost(line, choice) for line in lines) + half_up(hours * choice.hour)


def _cost(line: YoursLine, choice: Choice) -> int:
    if line.machine is not None and line.machine in choice.owns and line.with_own is not None:
        amount = line.with_own
    else:
        amount = line.spent + half_up(Fraction(line.gap * _missing(line.source, line.machine, choice), 100))
    amount -= line.reusable if choice.reuse else 0
    size = choice.size if line.scales else 100
    return half_up(Fraction(amount * size * choice.price, 10_000))


def as_i_did(lines: Sequence[YoursLine]) -> Choice:
    """The same luck, and the same machines for nothing."""
    return Choice(owns=frozenset(name for name, had in machines(lines) if had))


def all_new(lines: Sequence[YoursLine]) -> Choice:
    """Everything bought new and hired."""
    del lines
    return Choice(luck=dict.fromkeys(Source, 0))


def half_luck(lines: Sequence[YoursLine]) -> Choice:
    """Each found thing at half the gap to its replacement cost; own and borrowed machines too."""
    del lines
    return Choice(luck=dict.fromkeys(FOUND, 50))
