"""Lots and what is drawn from them, first in first out.

A lot is what one line (or one entry of owned.yaml) brought. It lies in three piles: stock (leftovers), reusable
(what will serve again) and used (what is in the build, which only a return, a sale or spoilage touches). A
pile is carried at cost with tax and delivery; taking all of it leaves exactly nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from builder.words.money import split
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.units import Unit


@dataclass(slots=True)
class Pile:
    """A quantity (in the lot's unit, or the part of an uncounted whole) and its value in minor units."""

    quantity: Fraction = Fraction(0)
    value: int = 0

    def take(self, quantity: Fraction) -> int:
        """Take some away, at most what is there; half a minor unit goes with what is taken."""
        taken = self.worth(quantity)
        self.quantity -= quantity
        self.value -= taken
        return taken

    def worth(self, quantity: Fraction) -> int:
        """The value of some of it."""
        return split(self.value, quantity / self.quantity)[0] if self.quantity else 0


@dataclass(slots=True, kw_only=True)
class Lot:
    """What one line brought.

    `one_use` is the value that one use of the whole reusable pile uses up; `refundable` what the shop
    gives back by default for `refundable_quantity` of it; `unit_worth` its replacement cost per unit,
    major units; `new` whether a newcomer's cost for it is what was paid.
    """

    ref: str
    material: str
    place: Place
    unit: Unit | None
    stock: Pile = field(default_factory=Pile)
    reusable: Pile = field(default_factory=Pile)
    used: Pile = field(default_factory=Pile)
    reusable_at_first: Fraction = Fraction(0)
    one_use: int = 0
    refundable: int = 0
    refundable_quantity: Fraction = Fraction(0)
    unpriced: bool = False
    valued: bool = True
    new: bool = False
    unit_worth: Fraction | None = None
    from_earlier: bool = False

    def left(self, *, all_piles: bool) -> Fraction:
        """How much can be drawn (stock and reusable), or given back (all of it)."""
        piles = (self.stock, self.reusable, self.used) if all_piles else (self.stock, self.reusable)
        return sum((pile.quantity for pile in piles), Fraction(0))

    def quantity(self, amount: Fraction) -> Quantity | None:
        """An amount of this lot as a quantity, None where nobody counted."""
        return Quantity(amount, self.unit) if self.unit is not None else None

    def says(self, amount: Fraction) -> str:
        """An amount in words."""
        counted = self.quantity(amount)
        return "nothing" if not amount else str(counted) if counted else "some of it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What was taken from one lot: how much from which pile, and the value of each."""

    lot: Lot
    quantity: Fraction
    from_stock: int = 0
    from_reusable: int = 0
    from_used: int = 0

    @property
    def value(self) -> int:
        """The value carried."""
        return self.from_stock + self.from_reusable + self.from_used


class Shelf:
    """All lots so far, in the order they came."""

    def __init__(self) -> None:
        self._lots: dict[str, Lot] = {}
        self._by_material: dict[str, list[Lot]] = {}

    def put(self, lot: Lot) -> None:
        """Add a lot."""
        self._lots[lot.ref] = lot
        self._by_material.setdefault(_same(lot.material), []).append(lot)

    def lot(self, ref: str) -> Lot | None:
        """The lot of a line's id or of a key in owned.yaml."""
        return self._lots.get(ref)

    def of_material(self, material: str) -> list[Lot]:
        """The lots of a material, ignoring case, first in first."""
        return list(self._by_material.get(_same(material), ()))

    def __iter__(self) -> Iterator[Lot]:
        return iter(self._lots.values())


def _same(material: str) -> str:
    return " ".join(material.casefold().split())


def draw(lot: Lot, quantity: Fraction, reuse: Fraction | None) -> Taken:
    """Take from a lot's stock, then put its reusable part to one more use.

    One more use costs what one use cost at first, and never more than is left; where the line itself
    says how much will serve again (`reuse`, a rate), the rest of the value carried is used up. The things
    stay reusable. `quantity` is in the lot's unit, at most what is left.
    """
    from_stock = min(quantity, lot.stock.quantity)
    value = lot.stock.take(from_stock)
    again = quantity - from_stock
    return Taken(lot=lot, quantity=quantity, from_stock=value, from_reusable=_use_again(lot, again, reuse))


def _use_again(lot: Lot, quantity: Fraction, reuse: Fraction | None) -> int:
    if not quantity:
        return 0
    carried = lot.reusable.worth(quantity)
    if reuse is not None:
        used_up = split(carried, 1 - reuse)[0]
    else:
        used_up = min(carried, split(lot.one_use, quantity / lot.reusable_at_first)[0])
    lot.reusable.value -= used_up
    return used_up


def take_away(lot: Lot, quantity: Fraction) -> Taken:
    """Take from a lot for good: from its stock, then its reusable part, then what is in the build."""
    from_stock = min(quantity, lot.stock.quantity)
    from_reusable = min(quantity - from_stock, lot.reusable.quantity)
    from_used = quantity - from_stock - from_reusable
    return Taken(
        lot=lot,
        quantity=quantity,
        from_stock=lot.stock.take(from_stock),
        from_reusable=lot.reusable.take(from_reusable),
        from_used=lot.used.take(from_used),
    )


def refund_for(lot: Lot, quantity: Fraction) -> int:
    """What the shop gives back by default: goods less discount plus tax, never delivery. Minor units."""
    whole = lot.refundable_quantity
    if not whole:
        return 0
    kept, back = split(lot.refundable, 1 - quantity / whole)
    lot.refundable, lot.refundable_quantity = kept, whole - quantity
    return back
