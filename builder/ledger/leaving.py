"""Lines that take from earlier ones: draws from stock, returns, sales, spoilage."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.item import Item, Source
from builder.ledger.parts import Parts
from builder.ledger.pricing import gross
from builder.ledger.problems import Findings
from builder.ledger.records import Draw
from builder.ledger.stock import Lot, Pile, Shelf, Taken, draw, refund_for, take_away
from builder.words.money import Currency, Money, split, till
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Away:
    """What a line took: its parts, the quantity (negative where it left the build), and from where.

    `lot` is the line's own lot where a part of what it drew will serve again.
    """

    parts: Parts
    used: Quantity | None
    draws: tuple[Draw, ...]
    lot: Lot | None = None


def draw_stock(
    item: Item, shelf: Shelf, later: frozenset[str], findings: Findings, currency: Currency
) -> Away | None:
    """Draw leftovers, or put something reusable to one more use; None, with a mistake, if that cannot be."""
    portions = _portions(item, shelf, later, findings, all_piles=False)
    if portions is None:
        return None
    taken = [draw(lot, quantity, item.reusable) for lot, quantity in portions]
    fresh = sum(one.from_stock for one in taken if not one.lot.from_earlier)
    earlier = sum(one.from_stock for one in taken if one.lot.from_earlier)
    again = sum(one.from_reusable for one in taken)
    rate = _share(item)
    here, elsewhere = split(fresh + earlier + again, rate)
    used_up, kept = split(here, 1 - (item.reusable or Fraction(0))) if not again else (here, 0)
    worth = _drawn_worth(item, taken, currency)
    known = worth is not None and all(one.lot.valued for one in taken if not one.lot.from_earlier)
    parts = Parts(
        brought_in=earlier,
        elsewhere=elsewhere,
        job_cost=used_up,
        in_stock=-fresh,
        reusable=kept - again,
        replacement_cost=worth or 0,
        saved=(worth or 0) - used_up - (kept - again) if known else 0,
        unpriced=int(any(one.lot.unpriced for one in taken)),
        unvalued=int(worth is None),
    )
    quantity = _quantity(taken)
    own = _own_lot(item, quantity, used_up, kept) if kept else None
    return Away(parts=parts, used=_times(quantity, rate), draws=_draws(taken), lot=own)


def give_back(
    item: Item, shelf: Shelf, later: frozenset[str], findings: Findings, currency: Currency
) -> Away | None:
    """A return, a sale or spoilage: value carried less money got is job cost, on the line's own date."""
    portions = _portions(item, shelf, later, findings, all_piles=True)
    if portions is None:
        return None
    refunds = [refund_for(lot, quantity) for lot, quantity in portions]
    taken = [take_away(lot, quantity) for lot, quantity in portions]
    got = _money_got(item, sum(refunds), currency)
    if item.source is Source.RETURNED and item.refund is not None:
        _refund_fits(item, taken, sum(refunds), findings)
    carried, unused = sum(one.value for one in taken), sum(one.from_used for one in taken)
    worth = _returned_worth(item, taken, got, currency)
    job_cost = carried - unused - got
    reusable = -sum(one.from_reusable for one in taken)
    valued = all(one.lot.valued for one in taken)
    parts = Parts(
        paid=-got,
        job_cost=job_cost,
        in_stock=-sum(one.from_stock for one in taken),
        reusable=reusable,
        replacement_cost=worth,
        saved=worth - job_cost - reusable if valued else 0,
    )
    return Away(parts=parts, used=_times(_quantity(taken), Fraction(-1)), draws=_draws(taken))


def _money_got(item: Item, by_default: int, currency: Currency) -> int:
    if item.source is Source.SPOILED:
        return 0
    if item.source is Source.SOLD:
        return gross(item, currency) or 0
    return by_default if item.refund is None else item.refund.minor


def _refund_fits(item: Item, taken: Sequence[Taken], by_default: int, findings: Findings) -> None:
    paid = max(by_default, sum(one.value for one in taken))
    known = not any(one.lot.unpriced for one in taken)
    if known and item.refund is not None and item.refund.minor > paid:
        findings.mistake(
            item.at("refund"),
            f"the refund of {item.refund} is more than was paid, {Money(paid, item.refund.currency)}",
            "at most what was paid for what went back",
            "a sale at a gain is a line with source: sold",
        )


def _share(item: Item) -> Fraction:
    return item.share if isinstance(item.share, Fraction) else Fraction(1)


def _drawn_worth(item: Item, taken: Sequence[Taken], currency: Currency) -> int | None:
    """What a draw adds to the replacement cost: only what comes from an earlier job, since a newcomer's
    cost of this build's own leftovers is counted where they were bought. None where nobody knows."""
    total = 0
    for one in taken:
        if not one.lot.from_earlier:
            continue
        rate = item.replacement_cost if item.replacement_cost is not None else one.lot.unit_worth
        if rate is None:
            return None
        total += till(one.quantity * _share(item), rate, currency)
    return total


def _returned_worth(item: Item, taken: Sequence[Taken], got: int, currency: Currency) -> int:
    """What a return takes from the replacement cost: nobody has to buy what went back. A sale takes nothing."""
    if item.source is not Source.RETURNED:
        return 0
    worth = 0
    for one in taken:
        if one.lot.unit_worth is not None:
            worth -= till(one.quantity, one.lot.unit_worth, currency)
        elif one.lot.new:
            worth -= got if len(taken) == 1 else split(got, Fraction(one.value, max(_value(taken), 1)))[0]
    return worth


def _value(taken: Sequence[Taken]) -> int:
    return sum(one.value for one in taken)


def _own_lot(item: Item, quantity: Quantity | None, used_up: int, kept: int) -> Lot:
    amount = quantity.value if quantity else Fraction(1)
    return Lot(
        ref="",
        material=item.what,
        place=item.place,
        unit=quantity.unit if quantity else None,
        reusable=Pile(amount, kept),
        reusable_at_first=amount,
        one_use=used_up,
    )


def _quantity(taken: Sequence[Taken]) -> Quantity | None:
    """All that was taken, in the unit of the first lot."""
    total: Quantity | None = None
    for one in taken:
        counted = one.lot.quantity(one.quantity)
        if counted is None:
            return None
        total = counted if total is None else total + counted
    return total


def _times(quantity: Quantity | None, factor: Fraction) -> Quantity | None:
    return None if quantity is None else replace(quantity, value=quantity.value * factor)


def _draws(taken: Sequence[Taken]) -> tuple[Draw, ...]:
    return tuple(
        Draw(
            ref=one.lot.ref,
            quantity=one.lot.quantity(one.quantity),
            value=one.value,
            reusable=bool(one.from_reusable),
        )
        for one in taken
    )


def _portions(
    item: Item, shelf: Shelf, later: frozenset[str], findings: Findings, *, all_piles: bool
) -> list[tuple[Lot, Fraction]] | None:
    """Which lots give how much; None, with a mistake, when they cannot give it."""
    lots = _lots(item, shelf, later, findings)
    if lots is None:
        return None
    wanted = item.quantity
    if wanted is not None and not _countable(item, wanted, lots, findings):
        return None
    portions: list[tuple[Lot, Fraction]] = []
    missing = wanted
    for lot in lots:
        there = lot.left(all_piles=all_piles)
        if missing is not None and lot.unit is not None:
            there = min(there, missing.to(lot.unit).value)
        if there > 0:
            portions.append((lot, there))
            missing = _less(missing, lot, there)
        if missing is not None and missing.value <= 0:
            break
    if not portions or (missing is not None and missing.value > 0):
        _short(item, lots, findings, all_piles=all_piles)
        return None
    return portions


def _less(missing: Quantity | None, lot: Lot, taken: Fraction) -> Quantity | None:
    counted = lot.quantity(taken)
    return missing if missing is None or counted is None else missing - counted


def _lots(item: Item, shelf: Shelf, later: frozenset[str], findings: Findings) -> list[Lot] | None:
    if item.lot is not None:
        lot = shelf.lot(item.lot)
        if lot is not None:
            return [lot]
        early = item.lot in later
        findings.mistake(
            item.at("from"),
            f"{item.lot} {'was bought after this' if early else 'left nothing that could be drawn'}",
            "a line of an earlier date" if early else "a line of material or equipment",
            "check the dates of the two episodes" if early else "check from:",
        )
        return None
    lots = shelf.of_material(item.what)
    if not lots:
        findings.mistake(
            item.at("material"),
            f"no {item.what} came before this line",
            "a material bought or found on an earlier date, by the same name",
            "check the name and the dates, or name the line with from:",
        )
        return None
    counted = item.quantity
    return [lot for lot in lots if _fits(lot, counted)] or lots


def _fits(lot: Lot, counted: Quantity | None) -> bool:
    return counted is None or (lot.unit is not None and lot.unit.measure == counted.unit.measure)


def _countable(item: Item, wanted: Quantity, lots: Sequence[Lot], findings: Findings) -> bool:
    lot = lots[0]
    if _fits(lot, wanted):
        return True
    if lot.unit is None:
        findings.mistake(
            item.at("quantity"),
            f"{item.what} is drawn as {wanted}, and the line it comes from has no quantity",
            f"a quantity on the line at {lot.place.file}:{lot.place.line}",
            "add it there; or leave quantity out here, which takes all that is left",
        )
    else:
        findings.mistake(
            item.at("quantity"),
            f"{item.what} is drawn in {wanted.unit.symbol} and was bought in {lot.unit.symbol}",
            f"a quantity in {lot.unit.symbol}",
            f"the line it comes from stands at {lot.place.file}:{lot.place.line}",
        )
    return False


def _short(item: Item, lots: Sequence[Lot], findings: Findings, *, all_piles: bool) -> None:
    verb = {Source.STOCK: "drawn", Source.RETURNED: "returned", Source.SOLD: "sold"}.get(item.source, "spoiled")
    wanted = str(item.quantity) if item.quantity else "what is left"
    left = [f"{lot.says(lot.left(all_piles=all_piles))} from {lot.place.file}:{lot.place.line}" for lot in lots]
    findings.mistake(
        item.at("quantity"),
        f"{wanted} of {item.what} is {verb}, and there is only {', '.join(left)}",
        "at most what is left",
        "check the quantity, and used: on the line it came from",
    )
