"""Lines that take from earlier ones: draws from stock, returns, sales, spoilage."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.item import Item, Source
from builder.ledger.amortise import share_of
from builder.ledger.parts import Parts
from builder.ledger.pricing import gross
from builder.ledger.problems import Findings
from builder.ledger.records import Draw, OnReceipt
from builder.ledger.stock import Lot, Pile, Shelf, Taken, draw, put_in, refund_for, take_away
from builder.words.money import Currency, Money, apportion, split, till
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Away:
    """What a line took: its parts, the quantity that went in (below zero where it came out of the build), from where.

    `gone` is all that left the journal, also what had never gone in.

    `valued` tells whether the replacement cost of all of it is known, so that something can be saved on it.
    `lot` is the line's own lot where a part of what it drew will serve again.
    """

    parts: Parts
    used: Quantity | None
    gone: Quantity | None = None
    draws: tuple[Draw, ...]
    valued: bool
    lot: Lot | None = None


def draw_stock(
    item: Item, shelf: Shelf, later: AbstractSet[str], findings: Findings, currency: Currency
) -> Away | None:
    """Draw leftovers, or put something reusable to one more use; None, with a mistake, if that cannot be."""
    portions = _portions(item, shelf, later, findings)
    if portions is None:
        return None
    taken = [draw(lot, quantity, item.reusable) for lot, quantity in portions]
    fresh = sum(one.from_stock.value for one in taken if not one.lot.from_earlier)
    earlier = sum(one.from_stock.value for one in taken if one.lot.from_earlier)
    again = sum(one.from_reusable.value for one in taken)
    rate = _share(item, fresh + earlier + again, currency, findings)
    here, elsewhere = split(fresh + earlier, rate)
    used_up, kept = split(here, 1 - (item.reusable or Fraction(0)))
    here_again, elsewhere_again = split(again, rate)
    own = _own_lot(item, taken, rate, used_up, kept)
    for one in taken:
        shelf.change(one.left if own else put_in(one, rate))
    worth = _drawn_worth(item, taken, rate, currency)
    parts = Parts(
        brought_in=earlier,
        elsewhere=elsewhere + elsewhere_again,
        job_cost=used_up + here_again,
        in_stock=-fresh,
        reusable=kept - again,
        replacement_cost=worth or 0,
        unpriced=int(any(one.lot.unpriced for one in taken)),
        unvalued=int(worth is None),
    )
    return Away(
        parts=parts,
        used=_times(_quantity(taken, lambda one: one.quantity), rate),
        draws=_draws(taken),
        valued=worth is not None and all(one.lot.valued for one in taken if not one.lot.from_earlier),
        lot=own,
    )


def give_back(item: Item, shelf: Shelf, later: AbstractSet[str], findings: Findings, currency: Currency) -> Away | None:
    """A return, a sale or spoilage: value carried less money got is job cost, on the line's own date.

    Stock of an earlier job that leaves undrawn is brought in on that day, at what it cost then.
    """
    portions = _portions(item, shelf, later, findings)
    if portions is None:
        return None
    refunds = [refund_for(lot, quantity) for lot, quantity in portions]
    taken = [take_away(lot, quantity) for lot, quantity in portions]
    for one in taken:
        shelf.change(one.left)
    got = _money_got(item, sum(refunds), currency)
    _refund_fits(item, taken, sum(refunds), findings)
    fresh = sum(one.from_stock.value for one in taken if not one.lot.from_earlier)
    earlier = sum(one.from_stock.value for one in taken if one.lot.from_earlier)
    reusable = sum(one.from_reusable.value for one in taken)
    parts = Parts(
        paid=-got,
        brought_in=earlier,
        job_cost=fresh + earlier + reusable - got,
        in_stock=-fresh,
        reusable=-reusable,
        replacement_cost=-_returned_worth(item, taken, refunds, got, currency),
        unpriced=int(any(one.lot.unpriced for one in taken)),
    )
    return Away(
        parts=parts,
        used=_times(_quantity(taken, _out_of_the_build), Fraction(-1)),
        gone=_times(_quantity(taken, lambda one: one.quantity), Fraction(-1)),
        draws=_draws(taken),
        valued=all(one.lot.valued for one in taken),
    )


def _money_got(item: Item, by_default: int, currency: Currency) -> int:
    if item.source is Source.SPOILED:
        return 0
    if item.source is Source.SOLD:
        return gross(item, currency) or 0
    return by_default if item.refund is None else item.refund.minor


def _refund_fits(item: Item, taken: Sequence[Taken], by_default: int, findings: Findings) -> None:
    paid = max(by_default, sum(one.value for one in taken))
    known = item.source is Source.RETURNED and not any(one.lot.unpriced for one in taken)
    if known and item.refund is not None and item.refund.minor > paid:
        refund_too_high(item, paid, findings)


def refund_too_high(item: Item, paid: int, findings: Findings) -> None:
    """Report a refund that is more than was paid (minor units) for what went back."""
    assert item.refund is not None
    findings.mistake(
        item.at("refund"),
        f"the refund of {item.refund} is more than was paid, {Money(paid, item.refund.currency)}",
        "at most what was paid for what went back",
        "check the receipt; a sale at a gain is a line of its own with source: sold",
    )


def _share(item: Item, carried: int, currency: Currency, findings: Findings) -> Fraction:
    """The part that goes into this build; an amount is in the terms of the value drawn."""
    if isinstance(item.share, Money) and item.share.minor > carried:
        share_too_high(item, Money(carried, currency), findings)
    return share_of(item, OnReceipt(goods=carried))


def share_too_high(item: Item, whole: Money, findings: Findings) -> None:
    """Report an amount that went into this build and is more than there was."""
    findings.mistake(
        item.at("share"),
        f"share is {item.share}, more than the {whole} it is a part of",
        f"at most {whole}",
        "an amount that went into this build, or a part such as 55%",
    )


def _drawn_worth(item: Item, taken: Sequence[Taken], rate: Fraction, currency: Currency) -> int | None:
    """What a draw adds to the replacement cost: only what comes from an earlier job, since a newcomer's
    cost of this build's own leftovers is counted where they were bought. None where nobody knows.
    """
    total = 0
    for one in taken:
        if not one.lot.from_earlier:
            continue
        unit_worth = item.replacement_cost if item.replacement_cost is not None else one.lot.unit_worth
        if unit_worth is None:
            return None
        drawn = one.quantity if item.replacement_cost is None else _in_its_unit(item, one)
        total += till(drawn * rate, unit_worth, currency)
    return total


def _in_its_unit(item: Item, taken: Taken) -> Fraction:
    """What was taken, in the unit that the line speaks of: feet where the lot is told in yards."""
    if item.quantity is None or taken.lot.unit is None:
        return taken.quantity
    return Quantity(taken.quantity, taken.lot.unit).to_like(item.quantity)


def _returned_worth(item: Item, taken: Sequence[Taken], refunds: Sequence[int], got: int, currency: Currency) -> int:
    """What a return takes from the replacement cost: nobody has to buy what went back. A sale takes none."""
    if item.source is not Source.RETURNED:
        return 0
    by_lot = refunds if item.refund is None else apportion(got, [one.value for one in taken])
    worth = 0
    for one, refund in zip(taken, by_lot, strict=True):
        counted = one.from_used.quantity if one.lot.from_earlier else one.quantity
        if one.lot.unit_worth is not None:
            worth += till(counted, one.lot.unit_worth, currency)
        elif one.lot.new:
            worth += refund
    return worth


def _out_of_the_build(taken: Taken) -> Fraction:
    """How much had gone into the build: what lay in stock was never used."""
    return taken.from_used.quantity + taken.from_reusable.quantity


def _own_lot(item: Item, taken: Sequence[Taken], rate: Fraction, used_up: int, kept: int) -> Lot | None:
    """The lot of leftovers that will serve again after this line; None where none of them will."""
    if not item.reusable or not any(one.from_stock.quantity for one in taken):
        return None
    drawn = _quantity(taken, lambda one: one.from_stock.quantity)
    amount = (drawn.value if drawn else Fraction(1)) * rate
    return Lot(
        ref="",
        material=item.what,
        place=item.place,
        unit=drawn.unit if drawn else None,
        reusable=Pile(amount, kept),
        reusable_at_first=amount,
        one_use=used_up,
        unpriced=any(one.lot.unpriced for one in taken),
        valued=all(one.lot.valued for one in taken),
    )


def _quantity(taken: Sequence[Taken], of: Callable[[Taken], Fraction]) -> Quantity | None:
    """All that was taken, in the unit of the first lot; None where it cannot be added up."""
    total: Quantity | None = None
    for one in taken:
        counted = one.lot.quantity(of(one))
        if counted is None or not counted.like(total or counted):
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
            reusable=bool(one.from_reusable.quantity),
        )
        for one in taken
    )


def _portions(
    item: Item, shelf: Shelf, later: AbstractSet[str], findings: Findings
) -> list[tuple[Lot, Fraction]] | None:
    """Which lots give how much; None, with a mistake, when they cannot give it.

    A draw empties the first lot before it touches the next. What leaves is what lies unused, wherever it
    lies: the stock of all lots first, then what is reusable, and only then what is in the build.
    """
    lots = _lots(item, shelf, later, findings)
    if lots is None or (item.quantity is not None and not _countable(item, item.quantity, lots, findings)):
        return None
    portions: dict[str, tuple[Lot, Fraction]] = {}
    missing = item.quantity or _one(item, lots[0])
    for lot, there in _piles(lots, leaves=item.source.leaves, counted=missing is not None):
        wanted = there if missing is None or lot.unit is None else min(there, missing.to(lot.unit).value)
        if wanted > 0:
            portions[lot.ref] = (lot, portions.get(lot.ref, (lot, Fraction(0)))[1] + wanted)
            missing = _less(missing, lot, wanted)
    if not portions or (missing is not None and missing.value > 0):
        _short(item, lots, findings)
        return None
    return list(portions.values())


def _enough(item: Item, shelf: Shelf) -> list[Lot]:
    """The first lots of a material that hold what is drawn; none where it is no plain draw, or too little is there."""
    wanted = item.quantity
    if item.source is not Source.STOCK or wanted is None:
        return []
    lots: list[Lot] = []
    missing = wanted.value
    for lot in shelf.drawable(item.what):
        there = lot.quantity(lot.left(all_piles=False))
        if there is None or not there.like(wanted):
            continue
        lots.append(lot)
        missing -= there.to_like(wanted)
        if missing <= 0:
            return lots
    return []


def _one(item: Item, lot: Lot) -> Quantity | None:
    """Absent, a quantity is 1 where there is a unit cost: one of them was sold at that."""
    return lot.quantity(Fraction(1)) if item.source is Source.SOLD and item.unit_cost is not None else None


def _piles(lots: Sequence[Lot], *, leaves: bool, counted: bool) -> list[tuple[Lot, Fraction]]:
    """What can be taken, in the order it is taken. Without a quantity nothing is taken out of the build,
    unless all of it is there.
    """
    if not leaves:
        return [(lot, lot.left(all_piles=False)) for lot in lots]
    unused = [(lot, lot.stock.quantity) for lot in lots] + [(lot, lot.reusable.quantity) for lot in lots]
    if not counted and any(there for _, there in unused):
        return unused
    return unused + [(lot, lot.used.quantity) for lot in lots]


def _less(missing: Quantity | None, lot: Lot, taken: Fraction) -> Quantity | None:
    counted = lot.quantity(taken)
    return missing if missing is None or counted is None else missing - counted


def _lots(item: Item, shelf: Shelf, later: AbstractSet[str], findings: Findings) -> list[Lot] | None:
    if item.lot is not None:
        lot = shelf.lot(item.lot)
        if lot is not None:
            return [lot]
        early = item.lot in later
        findings.mistake(
            item.at("from"),
            f"{item.lot} {'comes only after this line' if early else 'left nothing that could be drawn'}",
            "a line that comes earlier" if early else "a line of material or equipment",
            "check the dates; on one day, the line it comes from stands first" if early else "check from:",
        )
        return None
    enough = _enough(item, shelf)
    if enough:
        return enough
    lots = shelf.of_material(item.what)
    if not lots:
        findings.mistake(
            item.at(item.kind.value),
            f"no {item.what} came before this line",
            "something bought or found on an earlier date, by the same name",
            "check the name and the dates, or name the line with from:",
        )
        return None
    return [lot for lot in lots if _fits(lot, item.quantity)] or lots


def _fits(lot: Lot, counted: Quantity | None) -> bool:
    return counted is None or (lot.unit is not None and lot.unit.measure == counted.unit.measure)


_VERBS = {Source.STOCK: "drawn", Source.RETURNED: "returned", Source.SOLD: "sold", Source.SPOILED: "spoiled"}


def _countable(item: Item, wanted: Quantity, lots: Sequence[Lot], findings: Findings) -> bool:
    lot, verb = lots[0], _VERBS[item.source]
    if _fits(lot, wanted):
        return True
    if lot.unit is None:
        findings.mistake(
            item.at("quantity"),
            f"{item.what} is {verb} as {wanted}, and the line it comes from has no quantity",
            f"a quantity on the line at {lot.place.file}:{lot.place.line}",
            "add it there; or leave quantity out here, which takes all that is left",
        )
    else:
        findings.mistake(
            item.at("quantity"),
            f"{item.what} is {verb} in {wanted.unit.symbol} and came in {lot.unit.symbol}",
            f"a quantity in {lot.unit.symbol}",
            f"the line it comes from stands at {lot.place.file}:{lot.place.line}",
        )
    return False


def _short(item: Item, lots: Sequence[Lot], findings: Findings) -> None:
    wanted = str(item.quantity) if item.quantity else "what is left"
    left = [_says_left(lot, all_piles=item.source.leaves) for lot in lots]
    findings.mistake(
        item.at("quantity"),
        f"{wanted} of {item.what} is {_VERBS[item.source]}, and {', '.join(left)}",
        "at most what is left",
        "check the quantity, and used: on the line it came from",
    )


def _says_left(lot: Lot, *, all_piles: bool) -> str:
    return f"{lot.says(lot.left(all_piles=all_piles))} is left from {lot.place.file}:{lot.place.line}"
