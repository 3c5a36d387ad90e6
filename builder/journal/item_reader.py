"""A written line to an `Item`, long form or short."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from typing import Any

from builder.journal import item_keys as k
from builder.journal.item_check import check_item
from builder.journal.keys import Fields, Key
from builder.journal.kinds import without_about
from builder.journal.money_kinds import COST
from builder.journal.reading import Reading, kind_of
from builder.journal.records.item import Item, Kind, Source, Told
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import Lost, one_of
from builder.journal.short_line import no_short
from builder.words.misread import clipped
from builder.words.money import Money
from builder.words.numbers import Unreadable
from builder.words.quantity import Quantity
from builder.words.units import pieces

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
    if node is None or (isinstance(node, Scalar) and node.empty):
        return []
    if not isinstance(node, Sequence):
        dash = isinstance(node, Scalar) and node.text.startswith("-")
        reading.mistake(
            node.place,
            "there is no space after the dash" if dash else f"items is {kind_of(node)}",
            "a list of lines, each beginning with a dash and a space",
            _as_list(node),
        )
        reading.report.lose(Lost.LINE)
        return []
    items = (read_item(one, reading, owned, receipt) for one in node.items)
    return [item for item in items if item is not None]


def _as_list(node: Scalar | Mapping) -> str:
    """What to write for lines without dashes, or without a space after them (several are then read as one text)."""
    if isinstance(node, Mapping):
        first = node.entries[0] if node.entries else None
        if first is not None and k.ITEM.meant(first.key.text) is None and isinstance(first.value, Scalar):
            return f"write - {clipped(first.key.text)}, {first.value.text or 'and its cost'}, and so with each line"
        named = f"{first.key.text}:" if first is not None else "the line"
        return f"put a dash and a space before {named} and two spaces before each other key of that line"
    one = node.text.removeprefix("-").strip()
    if node.text.startswith("-"):
        return "put a space after each dash" if " -" in one else f"write - {clipped(one)}"
    many = len(re.findall(r",\s*\d", one)) > 1
    return "put a dash and a space before each line" if many else f"begin a new line and write - {clipped(one)}"


def read_item(
    node: Node, reading: Reading, owned: frozenset[str], receipt: str | None = None, *, counted: bool = False
) -> Item | None:
    """One line; None, with mistakes reported, when it cannot be costed. `counted`: a take-off says how many."""
    item = _item_of(node, reading, owned, receipt, counted=counted)
    if item is None:
        reading.report.lose(Lost.LINE)
    return item


def _item_of(node: Node, reading: Reading, owned: frozenset[str], receipt: str | None, *, counted: bool) -> Item | None:
    if isinstance(node, Scalar):
        return _short(node, reading, receipt)
    halves = _with_colon(node)
    if halves is not None:
        _report_colon(*halves, reading)
        return None
    fields = k.ITEM.read(node, reading, node.place)
    return None if fields is None else _long(fields, reading, owned, receipt, counted=counted)


def _with_colon(node: Node) -> tuple[Scalar, Scalar] | None:
    """The two halves of `- Nails: 36.90`, a short line written with a colon."""
    if not isinstance(node, Mapping) or len(node.entries) != 1:
        return None
    key, value = node.entries[0].key, node.entries[0].value
    return None if k.ITEM.meant(key.text) or not isinstance(value, Scalar) else (key, value)


def _report_colon(key: Scalar, value: Scalar, reading: Reading) -> None:
    if key.text.startswith("=") and value.empty:
        reading.mistake(key.place, "a line begins with {=", _SHORT, "figures stand in the story, not among the items")
        return
    reading.mistake(
        key.place,
        f"{key.text} is no key of a line item",
        "a short line written with a comma, or keys such as material: and cost:",
        f"write {key.text}, {value.text}" if value.text else f"write {key.text}, a comma and its cost",
    )


def _short(node: Scalar, reading: Reading, receipt: str | None) -> Item | None:
    if node.text and node.comment:
        return None
    text = " ".join(node.text.split())
    what, _, amount = (part.strip() for part in text.rpartition(","))
    wrong = no_short(text, node.comment)
    if wrong is not None:
        reading.mistake(node.place, wrong[0], _SHORT, wrong[1])
        return None
    try:
        bare, about = without_about(amount)
        cost = COST.parse(bare, reading)
    except Unreadable as error:
        found = error.found if len(text) > 60 else f"{text}: {error.found}"
        reading.mistake(node.place, found, _SHORT, _whole(error.fix, what, amount))
        return None
    if cost is Told.REST and receipt is None:
        _rest_alone(node, reading)
        return None
    return Item(
        place=node.place,
        kind=Kind.MATERIAL,
        what=what,
        source=Source.BOUGHT,
        cost=cost,
        judged=about,
        guessed=(k.COST_OF.name,) if about else (),
        receipt=receipt,
    )


def _whole(fix: str, what: str, amount: str) -> str:
    """The fix of an amount as that of the whole line: `write 36.90` is `write Nails, 36.90`."""
    if re.match(r"write (?:about )?[\d.]", fix) and re.search(r"\d", amount):
        return f"write {what}, {fix.removeprefix('write ')}"
    if re.search(r"\d", amount):
        return fix
    return f"write {what}, 0" if fix.startswith("write 0") else f"write {what}, unknown; or 0 where it was free"


def _rest_alone(node: Scalar, reading: Reading) -> None:
    reading.mistake(node.place, "cost: rest stands outside a receipt", "an amount, or unknown", "")


def _long(
    fields: Fields, reading: Reading, owned: frozenset[str], receipt: str | None, *, counted: bool
) -> Item | None:
    kinds = [kind for kind, key in k.WHAT.items() if fields.wrote(key)]
    if len(kinds) != 1:
        names = [key.name for key in k.WHAT.values()]
        reading.mistake(
            fields.at,
            "the line does not say what it is"
            if not kinds
            else f"the line is {' and '.join(one.value for one in kinds)} at once",
            f"one of {one_of(names)}",
            "add material: and what it was" if not kinds else "write two lines",
        )
        return None
    item = _item(fields, kinds[0], owned, receipt)
    if not counted and not fields.wrote(k.NUMBER_OF):
        item = _one(item)
    return item if check_item(item, fields, reading) and not fields.unread else None


def _item(fields: Fields, kind: Kind, owned: frozenset[str], receipt: str | None) -> Item:
    what = fields.either(k.WHAT[kind], "the line")
    against = fields.get(k.AGAINST)
    estimated, guessed = fields.either(k.ESTIMATED, False), _guessed(fields)
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
        judged=estimated or bool(guessed),
        guessed=() if estimated else guessed,
        size=fields.get(k.SIZE_OF),
        was=fields.get(k.WAS_PAID),
        phase=fields.get(k.PHASE_OF),
        id=fields.get(k.ID),
        note=fields.get(k.NOTE),
        places=tuple((name, place) for name, (_, place) in fields.values.items()),
    )


def _one(item: Item) -> Item:
    """A price of one unit without a number is for one. What is taken from earlier lines is counted as they are."""
    one = Quantity(Fraction(1), pieces())
    takes = item.source.leaves or item.source is Source.STOCK
    parts = [part for part in (item.used, item.returned) if isinstance(part, Quantity)]
    counted = all(part.like(one) for part in parts)  # else what is missing is how many there were
    return item if takes or item.unit_cost is None or not counted else replace(item, quantity=one)


def _of(fields: Fields, key: Key[Any]) -> Any:
    judged = fields.values.get(key.name, (None,))[0]
    return None if judged is None else judged.value


def _guessed(fields: Fields) -> tuple[str, ...]:
    """The keys of the numbers that were called a judgement."""
    return tuple(key.name for key in _JUDGED if fields.has(key) and fields.values[key.name][0].about)


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
    return Source.PAID if kind in _PAID_WHERE_IT_COST and _costs(fields) else _DEFAULTS[kind]


def _costs(fields: Fields) -> bool:
    cost = _of(fields, k.COST_OF)
    return fields.has(k.UNIT_COST) or cost is Told.UNKNOWN or (isinstance(cost, Money) and cost.minor > 0)


_PAID_WHERE_IT_COST = (Kind.LABOUR, Kind.TRAVEL)
_DEFAULTS = {
    Kind.MATERIAL: Source.BOUGHT,
    Kind.LABOUR: Source.UNPAID,
    Kind.TRAVEL: Source.UNPAID,
    Kind.FEE: Source.PAID,
}
