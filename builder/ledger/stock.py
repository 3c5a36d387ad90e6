"""Lots and what is drawn from them, first in first out.

A lot is what one line (or one entry of owned.yaml) brought. It lies in three piles: stock (leftovers),
reusable (what will serve again) and used (what is in the build, which only a return, a sale or spoilage
touches). A pile is carried at cost with tax and delivery; taking all of it leaves exactly nothing.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.words.money import split
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.units import Unit


@dataclass(frozen=True, slots=True)
class Pile:
    """A quantity (in the lot's unit, or the part of an uncounted whole) and its value in minor units."""

    quantity: Fraction = Fraction(0)
    value: int = 0

    def some(self, quantity: Fraction) -> Pile:
        """A part of it, at most what is there; half a minor unit goes with what is taken."""
        share = quantity / self.quantity if self.quantity else Fraction(0)
        return Pile(quantity, split(self.value, share)[0])

    def less(self, taken: Pile) -> Pile:
        """What stays when some is taken."""
        return Pile(self.quantity - taken.quantity, self.value - taken.value)

    def plus(self, added: Pile) -> Pile:
        """Both together."""
        return Pile(self.quantity + added.quantity, self.value + added.value)


@dataclass(frozen=True, slots=True, kw_only=True)
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
    stock: Pile = Pile()
    reusable: Pile = Pile()
    used: Pile = Pile()
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
        there = self.stock.quantity + self.reusable.quantity
        return there + self.used.quantity if all_piles else there

    def quantity(self, amount: Fraction) -> Quantity | None:
        """An amount of this lot as a quantity, None where nobody counted."""
        return Quantity(amount, self.unit) if self.unit is not None else None

    def says(self, amount: Fraction) -> str:
        """An amount in words."""
        counted = self.quantity(amount)
        return "nothing" if not amount else f"only {counted}" if counted else "only a part of it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What was taken from one lot: the lot as it was, what it is now, and how much came from which pile.

    The value of `from_reusable` is what one more use used up; the things themselves stay in the lot.
    """

    lot: Lot
    left: Lot
    quantity: Fraction
    from_stock: Pile = Pile()
    from_reusable: Pile = Pile()
    from_used: Pile = Pile()

    @property
    def value(self) -> int:
        """The value carried, minor units."""
        return self.from_stock.value + self.from_reusable.value + self.from_used.value


class Shelf:
    """All lots so far, in the order they came."""

    def __init__(self) -> None:
        self._lots: dict[str, Lot] = {}
        self._by_material: dict[str, list[str]] = {}
        self._open: dict[str, deque[str]] = {}

    def put(self, lot: Lot) -> None:
        """Add a lot."""
        self._by_material.setdefault(_same(lot.material), []).append(lot.ref)
        self._open.setdefault(_same(lot.material), deque()).append(lot.ref)
        self._lots[lot.ref] = lot

    def change(self, lot: Lot) -> None:
        """Let a lot that is there be what it is now."""
        self._lots[lot.ref] = lot

    def lot(self, ref: str) -> Lot | None:
        """The lot of a line's id or of a key in owned.yaml."""
        return self._lots.get(ref)

    def of_material(self, material: str) -> list[Lot]:
        """The lots of a material, ignoring case, first in first."""
        return [self._lots[ref] for ref in self._by_material.get(_same(material), ())]

    def drawable(self, material: str) -> Iterator[Lot]:
        """Those of them that something can be drawn from, first in first; emptied ones are not looked at again.

        What lies in a lot never grows, so a long journal does not pay for all the bags it has used.
        """
        waiting = self._open.get(_same(material), deque())
        while waiting and not self._lots[waiting[0]].left(all_piles=False):
            waiting.popleft()
        return (lot for ref in waiting if (lot := self._lots[ref]).left(all_piles=False))

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
    stock = lot.stock.some(min(quantity, lot.stock.quantity))
    again = quantity - stock.quantity
    worn = _worn(lot, again, reuse)
    left = replace(lot, stock=lot.stock.less(stock), reusable=lot.reusable.less(Pile(value=worn)))
    return Taken(lot=lot, left=left, quantity=quantity, from_stock=stock, from_reusable=Pile(again, worn))


def _worn(lot: Lot, quantity: Fraction, reuse: Fraction | None) -> int:
    """What one more use of some of the reusable part uses up."""
    carried = lot.reusable.some(quantity).value
    if reuse is not None:
        return split(carried, 1 - reuse)[0]
    if not lot.reusable_at_first:
        return 0
    return min(carried, split(lot.one_use, quantity / lot.reusable_at_first)[0])


def put_in(taken: Taken, rate: Fraction) -> Lot:
    """The lot of what was drawn, once a rate of it is in the build: only a return touches it there."""
    gone_in = Pile(taken.from_stock.quantity * rate, split(taken.from_stock.value, rate)[0])
    return replace(taken.left, used=taken.left.used.plus(gone_in))


def take_away(lot: Lot, quantity: Fraction) -> Taken:
    """Take from a lot for good: from its stock, then its reusable part, then what is in the build."""
    stock = lot.stock.some(min(quantity, lot.stock.quantity))
    reusable = lot.reusable.some(min(quantity - stock.quantity, lot.reusable.quantity))
    used = lot.used.some(quantity - stock.quantity - reusable.quantity)
    left = replace(
        lot,
        stock=lot.stock.less(stock),
        reusable=lot.reusable.less(reusable),
        used=lot.used.less(used),
        refundable=lot.refundable - refund_for(lot, quantity),
        refundable_quantity=max(lot.refundable_quantity - quantity, Fraction(0)),
    )
    return Taken(lot=lot, left=left, quantity=quantity, from_stock=stock, from_reusable=reusable, from_used=used)


def refund_for(lot: Lot, quantity: Fraction) -> int:
    """What the shop gives back by default: goods less discount plus tax, never delivery. Minor units."""
    whole = lot.refundable_quantity
    return split(lot.refundable, 1 - min(quantity / whole, Fraction(1)))[1] if whole else 0
