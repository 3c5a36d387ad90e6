"""What of a line's money this build used up, and what it did not. Real and planned lines alike.

The order of division: what went back to the shop; elsewhere (`share`) or stock (`used`); then reusable of
what is left; the rest, fuel, and any gain or loss are job cost. Each division is in two, half a minor unit to
the part that stays with the build.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.item import Item
from builder.ledger.records import OnReceipt
from builder.words.money import Money, split
from builder.words.quantity import Quantity

ALL = Fraction(1)  # most lines are all of one kind: made once, not once a line


@dataclass(frozen=True, slots=True, kw_only=True)
class Amortised:
    """A line's money divided, minor units: paid = job_cost + in_stock + reusable + elsewhere.

    `used_up` is the part of job cost that is in the things themselves: without fuel, and without what a
    return gained or lost.
    """

    paid: int
    elsewhere: int
    job_cost: int
    used_up: int
    in_stock: int
    reusable: int


def amortise(item: Item, price: OnReceipt) -> Amortised:
    """Divide what a line cost. `refund` may differ from what the returned part carried: that is job cost."""
    kept, back = split(price.whole, kept_part(item))
    refund = refund_of(item, price)
    here, elsewhere = split(kept, share_of(item, price))
    went_in, in_stock = split(here, used_of(item))
    used_up, reusable = split(went_in, 1 - item.reusable if item.reusable else ALL)
    fuel = item.fuel.minor if item.fuel else 0
    return Amortised(
        paid=price.whole - refund + fuel,
        elsewhere=elsewhere,
        job_cost=used_up + fuel + back - refund,
        used_up=used_up,
        in_stock=in_stock,
        reusable=reusable,
    )


def refund_of(item: Item, price: OnReceipt) -> int:
    """Money back for what was returned on the line itself: what its paper says, or else the default."""
    return refundable(item, price)[1] if item.refund is None else item.refund.minor


def refundable(item: Item, price: OnReceipt) -> tuple[int, int]:
    """Goods less discount plus tax, never delivery: of the part kept, and of the part that went back."""
    return split(price.whole - price.delivery, kept_part(item))


def kept_part(item: Item) -> Fraction:
    """The part of the quantity that did not go back to the shop, 0 to 1."""
    if item.returned is None or item.quantity is None or not item.quantity.value:
        return ALL
    return 1 - item.returned.to_like(item.quantity) / item.quantity.value


def share_of(item: Item, price: OnReceipt) -> Fraction:
    """The part that went into this build, of what was not returned: 0 to 1.

    An amount is in the terms of the line's own price, so tax and delivery follow it.
    """
    if not isinstance(item.share, Money):
        return ALL if item.share is None else item.share
    kept = kept_goods(item, price)
    return min(Fraction(item.share.minor, kept), ALL) if kept else ALL


def kept_goods(item: Item, price: OnReceipt) -> int:
    """The line's own price, less that of what went back. Minor units."""
    return split(price.goods, kept_part(item))[0]


def used_of(item: Item) -> Fraction:
    """The part that went in, of what was not returned."""
    if item.used is None:
        return ALL
    kept = kept_part(item)
    if isinstance(item.used, Quantity):
        whole = item.quantity
        used = item.used.to_like(whole) / whole.value if whole is not None and whole.value else ALL
    else:
        used = item.used
    return min(used / kept, ALL) if kept else ALL
