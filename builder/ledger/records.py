"""What the ledger gives back: costed lines, receipts, lots in stock, the whole ledger."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.item import Item
from builder.ledger.parts import Parts
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.units import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class OnReceipt:
    """A line's goods (its price), its share of the discount, of the tax and of the delivery with its tax.

    Minor units, none below zero. Tax that stands in the prices is not here: the goods carry it.
    """

    goods: int
    discount: int = 0
    tax: int = 0
    delivery: int = 0

    @property
    def whole(self) -> int:
        """What the line cost with everything on it."""
        return self.goods - self.discount + self.tax + self.delivery


@dataclass(frozen=True, slots=True, kw_only=True)
class CostedReceipt:
    """A receipt worked out, minor units. `total` is what our sums say; `tax` what was added, or where
    `tax_inside` is true what the prices hold (None when the rate is not known). `checked` is whether a
    printed total agreed; `unpriced` counts its lines without a price.
    """

    episode: int
    key: str
    seller: str | None
    goods: int
    discount: int
    delivery: int
    tax: int | None
    tax_inside: bool
    total: int
    checked: bool
    unpriced: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """What a line took from an earlier one: its ref, how much of it, and the value carried, minor units."""

    ref: str
    quantity: Quantity | None
    value: int
    reusable: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line item, costed.

    `ref` is its id, or episode and line as `3.2`. `priced` is None where the price is not known, unless
    delivery or tax of its receipt fell on it all the same. `used` is the quantity that went into this build
    on that day, below zero for what came out of it; `bought` the quantity that came, below zero for what
    went back. Both are None where no quantity was said. `refund` is the money back for what was returned on
    the line itself, minor units.
    """

    item: Item
    ref: str
    episode: int
    date: datetime.date
    phase: str | None
    parts: Parts
    priced: OnReceipt | None
    used: Quantity | None = None
    bought: Quantity | None = None
    draws: tuple[Draw, ...] = ()
    worth_basis: str | None = None
    refund: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursWorked:
    """The author's own hours of an episode in one phase, as parts (hours, own_work)."""

    episode: int
    phase: str | None
    parts: Parts


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left of a lot: `ref` of the line or key in owned.yaml, how much, and its value (minor units).

    `quantity` is None where the author gave none; `unpriced` where nobody knows the value.
    """

    ref: str
    material: str
    quantity: Fraction | None
    unit: Unit | None
    value: int
    unpriced: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """The whole ledger. `lines` are in order of date, episode number and line; `stock` and `reusable` are
    what lies there at the end; `from_earlier` is owned.yaml stock not drawn, which is in no total.
    """

    currency: Currency
    lines: tuple[Line, ...]
    hours: tuple[HoursWorked, ...]
    receipts: tuple[CostedReceipt, ...]
    stock: tuple[Left, ...]
    reusable: tuple[Left, ...]
    from_earlier: tuple[Left, ...]
