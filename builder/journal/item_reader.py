"""A written line to an `Item`, long form or short."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from builder.journal import item_keys as k
from builder.journal.item_check import check_item
from builder.journal.keys import Fields, Key
from builder.journal.kinds import ABOUT
from builder.journal.money_kinds import COST
from builder.journal.reading import Reading, kind_of
from builder.journal.records.item import Item, Kind, Source, Told
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import one_of
from builder.words.judged import Judged
from builder.words.money import Money
from builder.words.numbers import Unreadable

_SHORT = "what it was, a comma and what it cost, as in: Galvanised nails, 36.90"
_JUDGED = (
    k.NUMBER_OF,
    k.UNIT_COST,
    k.COST_OF,
    k.USED,
    k.SHARE,
    k.REUSABLE_SHARE,
    k.USES,
    k.REPLACEMENT,
    k.FUEL,
    k.RETURNED,
    k.REFUND,
)


def read_items(node: Node | None, reading: Reading, owned: frozenset[str], receipt: str | None = None) -> list[Item]:
    """The lines of a list, in order; those that cannot be read are reported and left out.

    `owned` are the equipment keys of owned.yaml; `receipt` is the receipt the list stands in.
    """
    if node is None or (isinstance(node, Scalar) and not node.text and not node.quoted):
        return []
    if not isinstance(node, Sequence):
        reading.mistake(node.place, f"items is {kind_of(node)}", "a list of lines, each beginning with a dash")
        return []
    items = (read_item(one, reading, owned, receipt) for one in node.items)
    return [item for item in items if item is not None]


def read_item(node: Node, reading: Reading, owned: frozenset[str], receipt: str | None = None) -> Item | None:
    """One line; None, with mistakes reported, when it cannot be costed."""
    if isinstance(node, Scalar):
        return _short(node, reading, receipt)
    fields = k.ITEM.read(_without_colon(node, reading), reading, node.place)
    return None if fields is None else _long(fields, reading, owned, receipt)


def _without_colon(node: Node, reading: Reading) -> Node:
    """`- Nails: 36.90` is a short line written with a colon: say so once, instead of "no such key"."""
    if isinstance(node, Mapping) and len(node.entries) == 1:
        only = node.entries[0]
        if only.key.text not in {key.name for key in k.ITEM.keys} and isinstance(only.value, Scalar):
            reading.mistake(
                only.key.place,
                f"{only.key.text} is no key of a line item",
                "a short line written with a comma, or keys such as material: and cost:",
                f"write {only.key.text}, {only.value.text}",
            )
            return Scalar(node.place, "")
    return node


def _short(node: Scalar, reading: Reading, receipt: str | None) -> Item | None:
    if not node.text:
        return None
    what, comma, amount = node.text.rpartition(",")
    if comma and re.search(r"\d$", what) and re.match(r"\d{3}\b", amount):
        reading.mistake(
            node.place,
            f"{node.text} has a thousands comma",
            _SHORT,
            f"write {re.sub(r'(?<=[0-9]),(?=[0-9]{3})', '', node.text)}",
        )
        return None
    bare, about = ABOUT.subn("", amount.strip(), count=1) if ABOUT.match(amount.strip()) else (amount.strip(), 0)
    if not comma or not what.strip():
        reading.mistake(node.place, f"{node.text} has no amount after a comma", _SHORT, f"write {node.text}, 0.00 with its cost")
        return None
    try:
        cost = COST.parse(bare, reading)
    except Unreadable as error:
        reading.mistake(node.place, f"{node.text}: {error.found}", _SHORT, error.fix)
        return None
    if cost is Told.REST and receipt is None:
        _rest_alone(node, reading)
        return None
    return Item(
        place=node.place,
        kind=Kind.MATERIAL,
        what=what.strip(),
        source=Source.BOUGHT,
        cost=cost,
        judged=bool(about),
        receipt=receipt,
    )


def _rest_alone(node: Scalar, reading: Reading) -> None:
    reading.mistake(node.place, "cost: rest stands outside a receipt", "an amount, or unknown", "")


def _long(fields: Fields, reading: Reading, owned: frozenset[str], receipt: str | None) -> Item | None:
    kinds = [kind for kind, key in k.WHAT.items() if fields.has(key)]
    if len(kinds) != 1:
        names = [key.name for key in k.WHAT.values()]
        reading.mistake(
            fields.at,
            "the line does not say what it is" if not kinds else f"the line is {one_of([one.value for one in kinds])} at once",
            f"one of {one_of(names)}",
            "add material: and what it was" if not kinds else "write two lines",
        )
        return None
    item = _item(fields, kinds[0], owned, receipt)
    return item if check_item(item, fields, reading) else None


def _item(fields: Fields, kind: Kind, owned: frozenset[str], receipt: str | None) -> Item:
    what = fields.either(k.WHAT[kind], "")
    against = fields.get(k.AGAINST)
    return Item(
        place=fields.at,
        kind=kind,
        what=what,
        source=_source(fields, kind, what in owned),
        quantity=_of(fields, k.NUMBER_OF),
        unit_cost=_of(fields, k.UNIT_COST),
        cost=_of(fields, k.COST_OF),
        used=_of(fields, k.USED),
        share=_of(fields, k.SHARE),
        reusable=_reusable(fields),
        uses=_of(fields, k.USES),
        replacement_cost=_of(fields, k.REPLACEMENT),
        fuel=_of(fields, k.FUEL),
        deposit=fields.get(k.DEPOSIT),
        deposit_back=fields.get(k.DEPOSIT_BACK),
        returned=_of(fields, k.RETURNED),
        refund=_of(fields, k.REFUND),
        receipt=fields.get(k.RECEIPT_OF) or receipt,
        taxed=fields.either(k.TAXED, True),
        lot=fields.get(k.FROM),
        against=tuple(one.value for one in against or ()),
        rework=fields.either(k.REWORK, False),
        judged=_is_judged(fields),
        size=fields.get(k.SIZE_OF),
        was=fields.get(k.WAS_PAID),
        phase=fields.get(k.PHASE_OF),
        id=fields.get(k.ID),
        note=fields.get(k.NOTE),
        places=tuple((name, place) for name, (_, place) in fields.values.items()),
    )


def _of(fields: Fields, key: Key[Any]) -> Any:
    judged = fields.values.get(key.name, (None,))[0]
    return None if judged is None else judged.value


def _is_judged(fields: Fields) -> bool:
    found = [fields.values[key.name][0] for key in _JUDGED if fields.has(key)]
    return fields.either(k.ESTIMATED, False) or any(one.about for one in found)


def _reusable(fields: Fields) -> Fraction | None:
    uses, share = fields.get(k.USES), fields.get(k.REUSABLE_SHARE)
    if uses is not None:
        return 1 - Fraction(1, uses.value)
    return None if share is None else share.value


def _source(fields: Fields, kind: Kind, known: bool) -> Source:
    told = fields.get(k.SOURCE)
    if told is not None:
        return Source(told)
    if kind is Kind.EQUIPMENT:
        return Source.OWNED if known else Source.HIRED
    return _DEFAULTS[kind] if kind is not Kind.TRAVEL or not _costs(fields) else Source.PAID


def _costs(fields: Fields) -> bool:
    cost = _of(fields, k.COST_OF)
    return fields.has(k.UNIT_COST) or cost is Told.UNKNOWN or (isinstance(cost, Money) and cost.minor > 0)


_DEFAULTS = {
    Kind.MATERIAL: Source.BOUGHT,
    Kind.LABOUR: Source.UNPAID,
    Kind.TRAVEL: Source.UNPAID,
    Kind.FEE: Source.PAID,
}

