"""What the same build would cost somebody else. The page's script does the same sums with the same integers.

A line costs what this build spent on it, moved toward its replacement cost by the part of its luck that the other
person does not have. Every line is rounded once, half up.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from builder.figures.account import Account
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


def yours_lines(account: Account) -> tuple[YoursLine, ...]:
    """Every line that has any figure."""
    lines = (_line(line, account) for line in account.ledger.lines)
    return tuple(line for line in lines if line.spent or line.gap or line.reusable)


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
        missing = 100 - choice.luck.get(line.source, 100)
        if line.machine is not None and line.source in _AT_MY_PRICE:
            missing = 100 if line.machine not in choice.owns and missing == 0 else missing
        amount = line.spent + half_up(Fraction(line.gap * missing, 100))
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
