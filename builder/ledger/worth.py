"""What a line's thing would cost a newcomer, who has to buy it new or hire it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.item import Item, Kind, Source, Told
from builder.journal.records.plan import OwnedEquipment
from builder.journal.records.settings import Settings
from builder.ledger.amortise import ALL, Amortised, kept_part, share_of
from builder.ledger.records import OnReceipt
from builder.words.money import Currency, Money, till
from builder.words.rounding import half_up

NEW = frozenset({Source.BOUGHT, Source.HIRED, Source.PAID})


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """Replacement cost in minor units; None where nobody knows. `apart` is true for own work and travel,
    which are in neither replacement cost nor saved.
    """

    amount: int | None
    apart: bool = False
    basis: str | None = None


def worth_of(
    item: Item, price: OnReceipt, divided: Amortised, machine: OwnedEquipment | None, currency: Currency
) -> Worth:
    """The replacement cost of a line that brings something."""
    if item.kind is Kind.TRAVEL or (item.kind is Kind.LABOUR and item.source is Source.UNPAID):
        return Worth(amount=None, apart=True)
    if only_a_deposit(item):
        return Worth(amount=0)
    known_part = item.cost is Told.UNKNOWN and isinstance(item.share, Money)
    rate, basis = _rate(item, machine)
    if rate is not None and not known_part:
        with_fuel = machine is not None and item.replacement_cost is None and machine.basis_has_fuel
        fuel = item.fuel.minor if item.fuel and not with_fuel else 0
        return Worth(amount=till(counted(item, price), rate, currency) + fuel, basis=basis)
    if item.source in NEW and item.cost is not Told.UNKNOWN:
        return Worth(amount=divided.paid - divided.elsewhere)
    return Worth(amount=None)


def only_a_deposit(item: Item) -> bool:
    """Whether a line only brings a deposit back, and no thing."""
    return item.deposit_back is not None and item.cost is None and item.unit_cost is None


def _rate(item: Item, machine: OwnedEquipment | None) -> tuple[Fraction | None, str | None]:
    if item.replacement_cost is not None:
        return item.replacement_cost, None
    if machine is not None and machine.replacement_cost is not None and item.quantity is not None:
        return machine.replacement_cost, machine.basis
    return None, None


def counted(item: Item, price: OnReceipt) -> Fraction:
    """How much the replacement cost is for: the quantity less what went back, the part
    that went into this build; one where no quantity was said.
    """
    whole = ALL if item.quantity is None else item.quantity.value * kept_part(item)
    return whole * share_of(item, price)


def _here(item: Item) -> Fraction:
    """The part of a journey or of work that was for this build."""
    return item.share if isinstance(item.share, Fraction) else Fraction(1)


def unpaid_hours(item: Item) -> Fraction:
    """Hours of unpaid work that a line tells, zero for all else."""
    if item.kind is not Kind.LABOUR or item.source is not Source.UNPAID or item.quantity is None:
        return Fraction(0)
    return item.quantity.value * _here(item) if item.quantity.unit.symbol == "hour" else Fraction(0)


def own_work(hours: Fraction, settings: Settings) -> int:
    """Hours at the journal's labour rate, minor units, rounded once half up."""
    if settings.labour_rate is None or not hours:
        return 0
    return till(hours, settings.labour_rate, settings.currency)


def travel_worth(item: Item, settings: Settings) -> int:
    """A journey at the journal's travel rate, minor units, rounded once half up."""
    rate, quantity = settings.travel_rate, item.quantity
    if item.kind is not Kind.TRAVEL or rate is None or quantity is None or quantity.unit.measure != "length":
        return 0
    return half_up(quantity.to(rate.per).value * _here(item) * rate.rate * 10**settings.currency.digits)
