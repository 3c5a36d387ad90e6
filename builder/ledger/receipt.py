"""A receipt's discount, tax and delivery, over the lines that stand on it.

Computed on what was bought, before returns. The discount falls on all lines, rounded once; tax on goods over
taxed lines only, on goods after discount, rounded once half up; tax on delivery follows delivery. The
weights are goods after discount, or equal if all are zero.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.item import Receipt, TaxTold
from builder.ledger.records import OnReceipt
from builder.words.money import Money, apportion
from builder.words.rounding import half_up


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """A receipt worked out, minor units: the sums, and each line's share in the order given."""

    goods: int
    discount: int
    delivery: int
    tax: int | None
    tax_inside: bool
    total: int
    shares: tuple[OnReceipt, ...]


def work_out(receipt: Receipt, goods: Sequence[int], taxed: Sequence[bool], prices_include_tax: bool) -> Sums:
    """The sums and shares of a receipt whose lines cost `goods` (minor units); `taxed` line by line."""
    whole = sum(goods)
    discount = min(_discount(receipt, whole), whole)
    discounts = apportion(discount, goods) if goods else []
    after = [price - off for price, off in zip(goods, discounts, strict=True)]
    delivery = receipt.delivery.minor if receipt.delivery else 0
    inside = prices_include_tax or receipt.tax is TaxTold.INCLUDED
    taxable = [price if counts else 0 for price, counts in zip(after, taxed, strict=True)]
    on_goods, on_delivery = (0, 0) if inside else _tax(receipt, sum(taxable), delivery)
    taxes = _over(on_goods, taxable, taxed)
    deliveries = apportion(delivery + on_delivery, after) if goods else []
    return Sums(
        goods=whole,
        discount=discount,
        delivery=delivery,
        tax=_inside(receipt, sum(taxable), delivery) if inside else on_goods + on_delivery,
        tax_inside=inside,
        total=whole - discount + delivery + on_goods + on_delivery,
        shares=tuple(
            OnReceipt(goods=price, discount=off, tax=tax, delivery=carried)
            for price, off, tax, carried in zip(goods, discounts, taxes, deliveries, strict=True)
        ),
    )


def _discount(receipt: Receipt, goods: int) -> int:
    told = receipt.discount
    if isinstance(told, Money):
        return told.minor
    return half_up(told * goods) if told is not None else 0


def _tax(receipt: Receipt, taxable: int, delivery: int) -> tuple[int, int]:
    """Tax on goods and on delivery. A tax given as an amount is divided between them by what they cost."""
    told = receipt.tax
    base = delivery if receipt.delivery_taxed else 0
    if isinstance(told, Money):
        on_goods, on_delivery = apportion(told.minor, [taxable, base]) if base else (told.minor, 0)
        return on_goods, on_delivery
    if isinstance(told, Fraction):
        return half_up(told * taxable), half_up(told * base)
    return 0, 0


def _over(tax: int, taxable: Sequence[int], taxed: Sequence[bool]) -> list[int]:
    """Tax over the taxed lines; over them equally if all of them cost nothing; over all if none is taxed."""
    if any(taxable):
        return apportion(tax, taxable)
    return apportion(tax, [int(one) for one in taxed]) if taxable else []


def _inside(receipt: Receipt, taxable: int, delivery: int) -> int | None:
    """The tax that the prices hold: only shown."""
    if isinstance(receipt.tax, Money):
        return receipt.tax.minor
    if not isinstance(receipt.tax, Fraction):
        return None
    held = taxable + (delivery if receipt.delivery_taxed else 0)
    return half_up(held * receipt.tax / (1 + receipt.tax))


def rest_of(
    receipt: Receipt, goods: Sequence[int], index: int, taxed: Sequence[bool], prices_include_tax: bool
) -> int | None:
    """What line `index` must have cost for the receipt to come to its printed total; None if nothing fits.

    The total grows with the line, so the answer is found by halving; a discount or a tax that rounds the
    other way may move it by a minor unit or two, so its neighbours are tried as well.
    """
    assert receipt.total is not None
    wanted, tried = receipt.total.minor, list(goods)

    def total(price: int) -> int:
        tried[index] = price
        return work_out(receipt, tried, taxed, prices_include_tax).total

    low, high = 0, _dearest(receipt, wanted)
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if total(middle) >= wanted else (middle + 1, high)
    near = range(max(low - _NEAR, 0), low + _NEAR + 1)
    return next((price for price in near if total(price) == wanted), None)


_NEAR = 3


def _dearest(receipt: Receipt, total: int) -> int:
    """No line of a receipt with this total can have cost more than this."""
    if isinstance(receipt.discount, Money):
        return total + receipt.discount.minor
    if receipt.discount is None or receipt.discount == 1:
        return total
    return int((total + 1) / (1 - receipt.discount)) + 1
