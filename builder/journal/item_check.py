"""What one line may and must say, by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from builder.journal import item_keys as k
from builder.journal.keys import Fields, Key
from builder.journal.reading import Reading
from builder.journal.records.item import ALLOWED, PRICED, Item, Kind, Source, Told
from builder.journal.report import Lost, one_of
from builder.words.money import Money, till
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.units import PIECE, pieces


@dataclass(frozen=True, slots=True)
class _Wrong:
    """What is wrong. `rests_on` are keys whose absence, or default, is the reason."""

    place: Place
    found: str
    expected: str
    fix: str = ""
    rests_on: tuple[Key[Any], ...] = ()


def check_item(item: Item, fields: Fields, reading: Reading) -> bool:
    """Report what is wrong with a line; whether it can be costed.

    A key that stands there and could not be read has been reported, and nothing is said that rests on it.
    """
    found = [
        *_source(item, fields, reading.report.lost(Lost.OWNED)),
        *_price(item, fields),
        *_pairs(item, fields),
        *_only_for(item, fields),
        *_parts(item, fields),
    ]
    wrong = [one for one in found if not any(key.name in fields.unread for key in one.rests_on)]
    for one in wrong:
        reading.mistake(one.place, one.found, one.expected, one.fix)
    if not wrong:
        _warn(item, fields, reading)
    return not wrong


def _source(item: Item, fields: Fields, owned_lost: bool) -> Iterator[_Wrong]:
    allowed = ALLOWED[item.kind]
    if item.source not in allowed:
        yield _Wrong(
            fields.place(k.SOURCE),
            f"{item.kind.value} cannot be {item.source.value}",
            one_of([source.value for source in allowed]),
            _other_kind(item),
        )
    assumed = not fields.has(k.SOURCE) and item.source is Source.HIRED and item.deposit_back is None
    if item.kind is Kind.EQUIPMENT and assumed and not owned_lost:
        yield _Wrong(
            item.place,
            f"{item.what} has no source, and owned.yaml does not list it",
            "source: owned, borrowed, hired or bought",
            "add source: hired, for instance",
            (k.SOURCE, k.EQUIPMENT, k.DEPOSIT_BACK),
        )


def _other_kind(item: Item) -> str:
    """`write equipment: instead of material:` where the source says that it is a machine or a tool."""
    machine = item.source in ALLOWED[Kind.EQUIPMENT]
    return f"write equipment: instead of {item.kind.value}:" if machine else ""


def _price(item: Item, fields: Fields) -> Iterator[_Wrong]:
    told = item.cost is not None or item.unit_cost is not None or item.deposit_back is not None
    assumed = item.kind is Kind.EQUIPMENT and not fields.has(k.SOURCE)
    if item.source in PRICED and not told and not assumed:
        known_part = isinstance(item.share, Money)
        yield _Wrong(
            item.place,
            f"{item.what} is {item.source.value} and has no price",
            "cost: or unit_cost:",
            "add cost: unknown to make it a known part of an unpriced line"
            if known_part
            else "add cost: with what was paid, or cost: unknown",
            (k.COST_OF, k.UNIT_COST, k.SOURCE, k.DEPOSIT_BACK),
        )
    if item.cost is Told.REST and item.receipt is None:
        yield _Wrong(
            fields.place(k.COST_OF),
            "cost: rest stands outside a receipt",
            "an amount, or unknown",
            "name the receipt with receipt:, or move the line into it",
            (k.RECEIPT_OF,),
        )
    if item.source is Source.SOLD and item.cost is Told.UNKNOWN:
        yield _Wrong(fields.place(k.COST_OF), "a sale of unknown money", "the money that came in")


def _pairs(item: Item, fields: Fields) -> Iterator[_Wrong]:
    if fields.has(k.USED) and fields.has(k.SHARE):
        yield _Wrong(
            fields.place(k.SHARE),
            "both used and share stand on one line",
            "share where the rest went elsewhere, used where the rest is in stock",
            "write two lines, one for each part of the purchase",
        )
    if fields.has(k.REUSABLE_SHARE) and fields.has(k.USES):
        yield _Wrong(
            fields.place(k.USES),
            "both reusable_share and uses stand on one line",
            "one of the two",
            "remove one",
        )
    given_back = item.returned is not None or item.source in (Source.RETURNED, Source.SOLD)
    if item.refund is not None and not given_back:
        yield _Wrong(
            fields.place(k.REFUND),
            "there is a refund and nothing was returned",
            "returned: with how many went back",
            "add returned:, or write it as a discount of the receipt",
            (k.RETURNED, k.SOURCE),
        )
    if item.deposit_back is not None and item.lot is None:
        yield _Wrong(
            fields.place(k.DEPOSIT_BACK),
            "deposit_back does not say whose deposit",
            "from: with the id of the line that paid it",
            "give that line an id, and write from: here",
            (k.FROM,),
        )
    if item.deposit_back is not None and item.deposit is not None:
        yield _Wrong(
            fields.place(k.DEPOSIT_BACK), "a deposit goes out and comes back on one line", "two lines", "write two"
        )


_EQUIPMENT_ONLY = (k.FUEL, k.DEPOSIT, k.DEPOSIT_BACK)
_DRAWS = (Source.STOCK, Source.RETURNED, Source.SOLD, Source.SPOILED)
_BUYS = (Source.BOUGHT, Source.SECONDHAND)
_ONLY_BOUGHT = (k.RETURNED, k.USED)


def _only_for(item: Item, fields: Fields) -> Iterator[_Wrong]:
    if item.kind is not Kind.EQUIPMENT:
        yield from _not_here(fields, _EQUIPMENT_ONLY, f"a line of {item.kind.value}", "equipment")
    if item.source not in _DRAWS and item.deposit_back is None:
        yield from _not_here(
            fields, (k.FROM,), f"a line that is {item.source.value}", "stock, returned, sold or spoiled lines"
        )
    if item.source.leaves:
        keys: tuple[Key[Any], ...] = (
            k.USED,
            k.SHARE,
            k.USES,
            k.REUSABLE_SHARE,
            k.RETURNED,
            k.UNIT_COST,
            k.REPLACEMENT,
        )
        if item.source is Source.SOLD:
            keys = tuple(key for key in keys if key is not k.UNIT_COST)
        yield from _not_here(fields, keys, f"a line that is {item.source.value}", "what came in")
    if item.source in (Source.STOCK, Source.OWNED, Source.BORROWED, Source.HIRED):
        yield from _not_here(fields, _ONLY_BOUGHT, f"a line that is {item.source.value}", "what was bought or found")
    if item.refund is not None and item.source is Source.SOLD:
        yield _Wrong(fields.place(k.REFUND), "a sale has a refund", "cost: with the money that came in", "write cost:")
    if item.receipt is not None and (item.source.leaves or item.source is Source.STOCK):
        yield _Wrong(
            fields.place(k.RECEIPT_OF),
            f"a line that is {item.source.value} stands on a receipt",
            "lines that were paid for",
            "move it under items of the episode",
        )


def _not_here(fields: Fields, keys: tuple[Key[Any], ...], line: str, instead: str) -> Iterator[_Wrong]:
    for key in keys:
        if fields.has(key):
            yield _Wrong(
                fields.place(key),
                f"{key.name} stands on {line}",
                f"{key.name} only on {instead}",
                "remove it, or correct source",
                (k.SOURCE,),
            )


def _parts(item: Item, fields: Fields) -> Iterator[_Wrong]:
    whole = item.quantity
    for key, part in ((k.USED, item.used), (k.RETURNED, item.returned)):
        if not isinstance(part, Quantity):
            continue
        if whole is None:
            yield _Wrong(
                fields.place(key),
                f"{key.name} is {_shown(part)}, and the line has no quantity",
                "quantity: with how many there were",
                "add quantity:" + (", or write used as a part such as 80%" if key is k.USED else ""),
                (k.NUMBER_OF,),
            )
        elif not part.like(whole):
            yield _Wrong(
                fields.place(key),
                f"{key.name} is {_shown(part)} and quantity is {_shown(whole)}, which is something else",
                f"both in {whole.unit.symbol}",
                f"write {key.name}: {Quantity(part.value, whole.unit)}" if part.unit == pieces() else "",
            )
        elif part.to_like(whole) > whole.value:
            yield _Wrong(
                fields.place(key),
                f"{key.name} is {part}, more than the quantity of {whole}",
                f"at most {whole}",
                "correct one of the two",
            )
    yield from _together(item, fields)
    gross = _gross(item)
    if isinstance(item.share, Money) and gross is not None and item.share.minor > gross.minor:
        yield _Wrong(
            fields.place(k.SHARE),
            f"share is {item.share}, more than the cost of {gross}",
            f"at most {gross}",
            "an amount that went into this build, or a part such as 55%",
        )
    if whole is not None and whole.value == 0:
        yield _Wrong(
            fields.place(k.NUMBER_OF),
            "quantity is 0",
            "more than nothing",
            "remove the line, or say how many",
        )


def _shown(quantity: Quantity) -> str:
    """A bare number as it was written: without the word for what it counts."""
    return str(quantity).removesuffix(f" {PIECE}")


def _gross(item: Item) -> Money | None:
    """What the line cost by its own numbers, where they say so."""
    if isinstance(item.cost, Money):
        return item.cost
    if item.cost is not None or item.unit_cost is None or item.quantity is None or not isinstance(item.share, Money):
        return None
    currency = item.share.currency
    return Money(till(item.quantity.value, item.unit_cost, currency), currency)


def _together(item: Item, fields: Fields) -> Iterator[_Wrong]:
    whole, used, back = item.quantity, item.used, item.returned
    if whole is None or back is None or used is None or not back.like(whole):
        return
    went_in = used * whole.value if isinstance(used, Fraction) else used.to_like(whole) if used.like(whole) else 0
    came_back = back.to_like(whole)
    if max(went_in, came_back) > whole.value:
        return  # one of them alone, which has been told
    if went_in + came_back > whole.value:
        yield _Wrong(
            fields.place(k.USED),
            f"used and returned are together more than the quantity of {whole}",
            f"together at most {whole}",
            "correct one of the three",
        )


def _warn(item: Item, fields: Fields, reading: Reading) -> None:
    if not (isinstance(item.cost, Money) and item.unit_cost is not None):
        return
    count = item.quantity.value if item.quantity else Fraction(1)
    product = Money(till(count, item.unit_cost, item.cost.currency), item.cost.currency)
    if product != item.cost:
        reading.report.warning(
            fields.place(k.COST_OF),
            f"quantity x unit_cost is {product}, and cost is {item.cost}",
            "both the same; cost holds",
            "remove unit_cost if only the amount is known",
        )
