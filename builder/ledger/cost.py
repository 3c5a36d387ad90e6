"""Step two of the ledger: each line's parts, in order of date, and the lots that later lines draw from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.item import Item, Kind, Source, Told
from builder.journal.records.plan import OwnedEquipment
from builder.journal.records.settings import Settings
from builder.ledger.amortise import Amortised, amortise, refund_of, returned_part, share_of, used_of
from builder.ledger.leaving import Away, draw_stock, give_back
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.problems import Findings
from builder.ledger.records import Draw, OnReceipt
from builder.ledger.stock import Lot, Pile, Shelf
from builder.ledger.worth import NEW, own_work, travel_worth, unpaid_hours, worth_of
from builder.words.money import Money
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Costed:
    """A line's parts, and the quantities that came and that went into the build."""

    parts: Parts = NOTHING
    used: Quantity | None = None
    bought: Quantity | None = None
    draws: tuple[Draw, ...] = ()
    basis: str | None = None


@dataclass(slots=True, kw_only=True)
class Books:
    """What costing needs besides the line: lots so far, deposits out, the settings, where to report."""

    settings: Settings
    machines: dict[str, OwnedEquipment]
    shelf: Shelf
    later: frozenset[str]
    deposits: dict[str, Item]
    closed: dict[str, Item]
    findings: Findings

    def cost(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        """Cost one line; its lot, if it makes one, is put on the shelf."""
        if item.source is Source.STOCK:
            costed = self._drawn(item, ref, price)
        elif item.source.leaves:
            costed = self._left(item)
        else:
            costed = self._brought(item, ref, price)
        return replace(costed, parts=self._finished(item, ref, costed.parts))

    def _finished(self, item: Item, ref: str, parts: Parts) -> Parts:
        """The parts with deposits, and with what is marked as a judgement or as rework."""
        parts = self._deposits(item, ref, parts)
        return parts._replace(
            estimated=parts.job_cost if item.judged else 0, rework=parts.job_cost if item.rework else 0
        )

    def _brought(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        unpriced = item.cost is Told.UNKNOWN
        price = price or OnReceipt(goods=0)
        self._refund_fits(item, price)
        machine = self.machines.get(item.what) if item.source is Source.OWNED else None
        divided = amortise(_known_part(item), price)
        worth = worth_of(item, divided, machine, self.settings.currency)
        hours = unpaid_hours(item)
        saved = 0 if worth.amount is None else worth.amount - divided.job_cost - divided.reusable
        self._put(item, ref, price, divided, unpriced, worth.amount is not None or worth.apart)
        return Costed(
            parts=Parts(
                paid=divided.paid,
                elsewhere=divided.elsewhere,
                job_cost=divided.job_cost,
                in_stock=divided.in_stock,
                reusable=divided.reusable,
                replacement_cost=worth.amount or 0,
                saved=saved,
                own_work=own_work(hours, self.settings),
                travel_worth=travel_worth(item, self.settings),
                unpriced=int(unpriced),
                unvalued=int(worth.amount is None and not worth.apart),
                hours=hours,
            ),
            used=_times(item, (1 - returned_part(item)) * share_of(item, price) * used_of(item)),
            bought=_times(item, 1 - returned_part(item)),
            basis=worth.basis,
        )

    def _refund_fits(self, item: Item, price: OnReceipt) -> None:
        if item.refund is not None and item.refund.minor > price.whole:
            self.findings.mistake(
                item.at("refund"),
                f"the refund of {item.refund} is more than was paid, {Money(price.whole, item.refund.currency)}",
                "at most what was paid",
                "check the receipt; a sale at a gain is a line of its own with source: sold",
            )

    def _put(
        self, item: Item, ref: str, price: OnReceipt, divided: Amortised, unpriced: bool, valued: bool
    ) -> None:
        if item.kind not in (Kind.MATERIAL, Kind.EQUIPMENT) or item.source in _NO_LOT:
            return
        whole = item.quantity.value if item.quantity else Fraction(1)
        here = whole * (1 - returned_part(item)) * share_of(item, price)
        went_in = here * used_of(item)
        serves_again = went_in if item.reusable else Fraction(0)
        fuel = item.fuel.minor if item.fuel else 0
        used_up = divided.paid - divided.elsewhere - divided.in_stock - divided.reusable - fuel
        self.shelf.put(
            Lot(
                ref=ref,
                material=item.what,
                place=item.place,
                unit=item.quantity.unit if item.quantity else None,
                stock=Pile(here - went_in, divided.in_stock),
                reusable=Pile(serves_again, divided.reusable),
                used=Pile(went_in - serves_again, 0 if serves_again else used_up),
                reusable_at_first=serves_again,
                one_use=used_up if serves_again else 0,
                refundable=_refundable(item, price),
                refundable_quantity=whole * (1 - returned_part(item)),
                unpriced=unpriced,
                valued=valued,
                new=item.source in NEW and item.replacement_cost is None,
                unit_worth=item.replacement_cost,
            )
        )

    def _drawn(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        away = draw_stock(item, self.shelf, self.later, self.findings, self.settings.currency)
        if away is None:
            return Costed()
        charge = price.whole if price else 0
        parts = away.parts.plus(Parts(paid=charge, job_cost=charge))
        if away.lot is not None:
            self.shelf.put(replace(away.lot, ref=ref))
        return _of(away, parts, bought=False)

    def _left(self, item: Item) -> Costed:
        away = give_back(item, self.shelf, self.later, self.findings, self.settings.currency)
        return Costed() if away is None else _of(away, away.parts, bought=item.source is Source.RETURNED)

    def _deposits(self, item: Item, ref: str, parts: Parts) -> Parts:
        if item.deposit is not None:
            self.deposits[ref] = item
            parts = parts._replace(deposits_out=parts.deposits_out + item.deposit.minor)
        if item.deposit_back is None or item.lot is None:
            return parts
        paid = self.deposits.pop(item.lot, None)
        if paid is None or paid.deposit is None:
            self._no_deposit(item)
            return parts
        self.closed[item.lot] = item
        kept = paid.deposit.minor - item.deposit_back.minor
        if kept < 0:
            self.findings.mistake(
                item.at("deposit_back"),
                f"{item.deposit_back} came back of a deposit of {paid.deposit}",
                "at most what was paid out",
                "correct one of the two",
            )
        return parts._replace(
            paid=parts.paid + kept,
            job_cost=parts.job_cost + kept,
            replacement_cost=parts.replacement_cost + kept,
            deposits_out=parts.deposits_out - paid.deposit.minor,
        )

    def _no_deposit(self, item: Item) -> None:
        before = self.closed.get(item.lot or "")
        found = (
            f"the deposit of {item.lot} comes back twice, first at {before.place.file}:{before.place.line}"
            if before
            else f"no deposit is out on {item.lot}"
        )
        self.findings.mistake(
            item.at("deposit_back"), found, "a deposit that is out", "remove the line, or correct from:"
        )


_NO_LOT = frozenset({Source.HIRED, Source.OWNED, Source.BORROWED})


def _known_part(item: Item) -> Item:
    """Of an unknown load with a known share, the share is all that is known: nothing of it is elsewhere."""
    return replace(item, share=None) if item.cost is Told.UNKNOWN and isinstance(item.share, Money) else item


def _refundable(item: Item, price: OnReceipt) -> int:
    """Goods less discount plus tax, less what was given back on the line itself."""
    return price.whole - price.delivery - refund_of(item, price)


def _times(item: Item, part: Fraction) -> Quantity | None:
    return None if item.quantity is None else Quantity(item.quantity.value * part, item.quantity.unit)


def _of(away: Away, parts: Parts, *, bought: bool) -> Costed:
    return Costed(
        parts=parts, used=away.used, bought=away.used if bought else None, draws=away.draws
    )
