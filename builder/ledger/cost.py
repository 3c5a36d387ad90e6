"""Step two of the ledger: each line's parts, in order of date, and the lots that later lines draw from."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.item import Item, Kind, Source, Told
from builder.journal.records.journal import Journal
from builder.ledger.amortise import (
    ALL,
    Amortised,
    amortise,
    kept_goods,
    kept_part,
    refund_of,
    refundable,
    share_of,
    used_of,
)
from builder.ledger.leaving import Away, draw_stock, give_back, refund_too_high, share_too_high
from builder.ledger.parts import NOTHING, Parts
from builder.ledger.problems import Findings
from builder.ledger.records import Draw, OnReceipt
from builder.ledger.stock import Lot, Pile, Shelf
from builder.ledger.worth import NEW, own_work, travel_worth, unpaid_hours, worth_of
from builder.words.money import Money, split
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Costed:
    """A line's parts, and the quantities that came and that went into the build.

    `valued` tells whether something can be saved on it: its replacement cost is known, and it is neither
    own work nor travel.
    """

    parts: Parts = NOTHING
    valued: bool = False
    used: Quantity | None = None
    bought: Quantity | None = None
    draws: tuple[Draw, ...] = ()
    basis: str | None = None
    refund: int = 0


class Books:
    """What costing needs besides the line: lots so far, deposits out, the settings, where to report."""

    def __init__(self, journal: Journal, stock: Iterable[Lot], findings: Findings) -> None:
        self.shelf = Shelf()
        for lot in stock:
            self.shelf.put(lot)
        self.deposits: dict[str, Item] = {}
        self._closed: dict[str, Item] = {}
        self._settings = journal.settings
        self._currency = journal.settings.currency
        self._machines = {machine.key: machine for machine in journal.owned.equipment}
        self._later = {item.id for episode in journal.episodes for item in episode.items if item.id}
        self._named = self._later | {stock.key for stock in journal.owned.stock}
        self._guessed = {stock.key for stock in journal.owned.stock if stock.judged}
        self._findings = findings

    def cost(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        """Cost one line; its lot, if it makes one, is put on the shelf.

        A line that draws from a name nobody has is nothing; reading has reported it.
        """
        if item.lot is not None and item.lot not in self._named:
            return Costed()
        if item.source is Source.STOCK:
            costed = self._drawn(item, ref, price)
        elif item.source.leaves:
            costed = self._left(item)
        else:
            costed = self._brought(item, ref, price)
        self._later.discard(ref)
        return replace(costed, parts=self._finished(item, ref, costed))

    def _finished(self, item: Item, ref: str, costed: Costed) -> Parts:
        """The parts with deposits, with what was saved, and with what is a judgement or rework."""
        parts = self._deposits(item, ref, costed.parts)
        return parts._replace(
            saved=parts.replacement_cost - parts.job_cost - parts.reusable if costed.valued else 0,
            estimated=parts.job_cost if item.judged or self._of_a_guess(costed) else 0,
            rework=parts.job_cost if item.rework else 0,
        )

    def _of_a_guess(self, costed: Costed) -> bool:
        """Whether something was taken of which the author only guessed how much it was, or what it had cost."""
        return any(draw.ref in self._guessed for draw in costed.draws)

    def _brought(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        price = price or OnReceipt(goods=0)
        self._fits(item, price)
        self._in_hours(item)
        machine = self._machines.get(item.what) if item.source is Source.OWNED else None
        divided = amortise(_known_part(item), price)
        worth = worth_of(item, price, divided, machine, self._currency)
        hours = unpaid_hours(item)
        self._put(item, ref, price, divided, worth.amount is not None or worth.apart)
        return Costed(
            parts=Parts(
                paid=divided.paid,
                elsewhere=divided.elsewhere,
                job_cost=divided.job_cost,
                in_stock=divided.in_stock,
                reusable=divided.reusable,
                replacement_cost=worth.amount or 0,
                own_work=own_work(hours, self._settings),
                travel_worth=travel_worth(item, self._settings),
                unpriced=int(item.cost is Told.UNKNOWN),
                unvalued=int(worth.amount is None and not worth.apart),
                hours=hours,
            ),
            valued=worth.amount is not None,
            used=_times(item, _went_in(item, price)),
            bought=_times(item, kept_part(item)),
            basis=worth.basis,
            refund=refund_of(item, price) if item.returned is not None else 0,
        )

    def _fits(self, item: Item, price: OnReceipt) -> None:
        """Report a refund or a share that is more than there was to give back or to share."""
        if item.cost is Told.UNKNOWN:
            return
        if item.refund is not None:
            limit = max(split(price.whole, kept_part(item))[1], refundable(item, price)[1])
            if item.refund.minor > limit:
                refund_too_high(item, limit, self._findings)
        if isinstance(item.share, Money) and item.share.minor > kept_goods(item, price):
            share_too_high(item, Money(kept_goods(item, price), self._currency), self._findings)

    def _in_hours(self, item: Item) -> None:
        """A day of work has no fixed number of hours, so a line in days would count none: say so."""
        quantity = item.quantity
        if item.source is Source.UNPAID and item.kind is Kind.LABOUR and quantity and not unpaid_hours(item):
            self._findings.warning(
                item.at("quantity"),
                f"{item.what} is {quantity} of work, and only hours are counted",
                "hours",
                "write quantity: 6 hour, for instance",
            )

    def _put(self, item: Item, ref: str, price: OnReceipt, divided: Amortised, valued: bool) -> None:
        """Put the line's lot on the shelf. A lot keeps all that a line says will be there later."""
        keeps = item.kind in _THINGS and item.source not in _NOT_KEPT
        if not keeps and not divided.reusable and not divided.in_stock:
            return
        whole = item.quantity.value if item.quantity else Fraction(1)
        came = _part(whole, kept_part(item))
        here = _part(came, share_of(item, price))
        went_in = _part(whole, _went_in(item, price))
        serves_again = went_in if item.reusable else Fraction(0)
        self.shelf.put(
            Lot(
                ref=ref,
                material=item.what,
                place=item.place,
                unit=item.quantity.unit if item.quantity else None,
                stock=Pile(here - went_in, divided.in_stock),
                reusable=Pile(serves_again, divided.reusable),
                used=Pile(went_in - serves_again, 0 if serves_again else divided.used_up),
                reusable_at_first=serves_again,
                one_use=divided.used_up if serves_again else 0,
                refundable=refundable(item, price)[0],
                refundable_quantity=came,
                unpriced=item.cost is Told.UNKNOWN,
                valued=valued,
                new=valued and item.source in NEW and item.replacement_cost is None,
                unit_worth=item.replacement_cost if valued else None,
            )
        )

    def _drawn(self, item: Item, ref: str, price: OnReceipt | None) -> Costed:
        away = draw_stock(item, self.shelf, self._later, self._findings, self._currency)
        if away is None:
            return Costed()
        if away.lot is not None:
            self.shelf.put(replace(away.lot, ref=ref))
        charge = price.whole if price else 0
        unpriced = int(bool(away.parts.unpriced) or item.cost is Told.UNKNOWN)
        parts = away.parts.plus(Parts(paid=charge, job_cost=charge))._replace(unpriced=unpriced)
        return _of(item, away, parts, bought=False)

    def _left(self, item: Item) -> Costed:
        away = give_back(item, self.shelf, self._later, self._findings, self._currency)
        if away is None:
            return Costed()
        return _of(item, away, away.parts, bought=item.source is Source.RETURNED)

    def _deposits(self, item: Item, ref: str, parts: Parts) -> Parts:
        if item.deposit is not None:
            self.deposits[ref] = item
            parts = parts._replace(deposits_out=parts.deposits_out + item.deposit.minor)
        if item.deposit_back is None or item.lot is None:
            return parts
        out = self.deposits.pop(item.lot, None)
        if out is None or out.deposit is None:
            self._no_deposit(item)
            return parts
        self._closed[item.lot] = item
        kept = out.deposit.minor - item.deposit_back.minor
        if kept < 0:
            self._findings.mistake(
                item.at("deposit_back"),
                f"{item.deposit_back} came back of a deposit of {out.deposit}",
                "at most what was paid out",
                "correct one of the two",
            )
        newcomer_too = out.source in NEW and out.replacement_cost is None
        return parts._replace(
            paid=parts.paid + kept,
            job_cost=parts.job_cost + kept,
            replacement_cost=parts.replacement_cost + (kept if newcomer_too else 0),
            deposits_out=parts.deposits_out - out.deposit.minor,
        )

    def _no_deposit(self, item: Item) -> None:
        before = self._closed.get(item.lot or "")
        found = (
            f"the deposit of {item.lot} comes back twice, first at {before.place.file}:{before.place.line}"
            if before
            else f"no deposit is out on {item.lot}"
        )
        self._findings.mistake(
            item.at("deposit_back"), found, "a deposit that is out", "remove the line, or correct from:"
        )


_THINGS = frozenset({Kind.MATERIAL, Kind.EQUIPMENT})
_NOT_KEPT = frozenset({Source.HIRED, Source.OWNED, Source.BORROWED})


def _known_part(item: Item) -> Item:
    """Of an unknown load with a known share, the share is all that is known: nothing of it is elsewhere."""
    return replace(item, share=None) if item.cost is Told.UNKNOWN and isinstance(item.share, Money) else item


def _went_in(item: Item, price: OnReceipt) -> Fraction:
    """The part of the quantity that this build took, 0 to 1."""
    if item.returned is None and item.share is None and item.used is None:
        return ALL
    return kept_part(item) * share_of(item, price) * used_of(item)


def _part(whole: Fraction, part: Fraction) -> Fraction:
    """`whole` x `part`, at once where it is all of it, as on most lines."""
    return whole if part is ALL else whole * part


def _times(item: Item, part: Fraction) -> Quantity | None:
    if item.quantity is None or part is ALL:
        return item.quantity
    return Quantity(item.quantity.value * part, item.quantity.unit)


def _of(item: Item, away: Away, parts: Parts, *, bought: bool) -> Costed:
    """What left or was drawn; fuel is paid and used up, and a newcomer burns it too."""
    fuel = item.fuel.minor if item.fuel else 0
    burnt = Parts(paid=fuel, job_cost=fuel, replacement_cost=fuel if away.valued else 0)
    return Costed(
        parts=parts.plus(burnt),
        valued=away.valued,
        used=away.used,
        bought=away.gone if bought else None,
        draws=away.draws,
    )
