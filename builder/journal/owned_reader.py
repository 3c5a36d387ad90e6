"""owned.yaml: own machines and tools, and leftovers of earlier jobs."""

from __future__ import annotations

import re

from builder.journal.keys import Group, Key
from builder.journal.kinds import QUANTITY, TEXT, YES_NO, Anything, judged
from builder.journal.money_kinds import PRICE, WORTH_OF
from builder.journal.quoting import in_quotes
from builder.journal.reading import Reading, kind_of
from builder.journal.records.item import Told
from builder.journal.records.plan import Owned, OwnedEquipment, OwnedStock
from builder.journal.records.written import Entry, Mapping, Node, Scalar
from builder.journal.report import Lost
from builder.words.misread import clipped
from builder.words.place import Place

NAME = Key(name="name", kind=TEXT, meaning="what it is called on the pages", example="Table saw")
WORTH = Key(
    name="replacement_cost",
    also=("worth", "rate", "per_hour", "hourly", "value", "cost"),
    kind=WORTH_OF,
    meaning="what an hour of it is worth, or a unit of stock new",
    example="9",
)
BASIS = Key(
    name="basis",
    also=("source", "where_from"),
    kind=TEXT,
    meaning="where that rate comes from; say so when it includes fuel",
    example="day hire at the nearest yard, divided by eight",
)
FUEL_INCLUDED = Key(name="fuel_included", kind=YES_NO, meaning="yes when the worth carries the fuel", example="yes")
EQUIPMENT = Group(name="owned equipment", keys=(NAME, WORTH, BASIS, FUEL_INCLUDED))

MATERIAL = Key(name="material", kind=TEXT, meaning="what it is", example="Drainage fabric", required=True)
QUANTITY_OF = Key(name="quantity", kind=judged(QUANTITY), meaning="how much is there", example="30 ft", required=True)
UNIT_COST = Key(
    name="unit_cost", kind=judged(PRICE), meaning="what a unit cost then; absent, nobody knows", example="0.40"
)
STOCK = Group(name="owned stock", keys=(MATERIAL, QUANTITY_OF, UNIT_COST, WORTH))

_OBJECT = {"type": "object"}
ALL_EQUIPMENT: Key[Node] = Key(
    name="equipment",
    also=("tools", "machines"),
    kind=Anything("own machines and tools by key", _OBJECT),
    meaning="own machines and tools, each under a key of its own",
    example="{saw: {name: Table saw, replacement_cost: 9}}",
)
ALL_STOCK: Key[Node] = Key(
    name="stock",
    also=("leftovers", "materials"),
    kind=Anything("leftovers by key", _OBJECT),
    meaning="leftovers of earlier jobs, each under a key of its own",
    example="{offcuts: {material: Cedar offcuts, quantity: 12 board, unit_cost: 3}}",
)
OWNED = Group(name="owned.yaml", keys=(ALL_EQUIPMENT, ALL_STOCK))
_FUEL_IN = re.compile(r"\b(?:incl\w*|with)\b[^.]*\bfuel\b|\bfuel\b[^.]*\bincl\w*", re.IGNORECASE)


def read_owned(node: Node | None, file: str, reading: Reading) -> Owned:
    """What owned.yaml says; nothing owned when there is no such file."""
    fields = OWNED.read(node, reading, Place(file=file))
    if fields is None:
        reading.report.lose(Lost.OWNED)
        return Owned()
    equipment = (_equipment(entry, reading) for entry in _entries(fields.get(ALL_EQUIPMENT), reading))
    stock = (_stock(entry, reading) for entry in _entries(fields.get(ALL_STOCK), reading))
    return Owned(
        equipment=tuple(one for one in equipment if one is not None),
        stock=tuple(one for one in stock if one is not None),
    )


def _entries(node: Node | None, reading: Reading) -> tuple[Entry, ...]:
    if node is None or (isinstance(node, Scalar) and node.empty):
        return ()
    if not isinstance(node, Mapping):
        reading.mistake(
            node.place,
            f"this is {kind_of(node)}",
            "a key, a colon, and what it is, for each",
            "write a word for each and a colon, such as saw:, and its keys below it, further in",
        )
        reading.report.lose(Lost.OWNED)
        return ()
    return node.entries


def _equipment(entry: Entry, reading: Reading) -> OwnedEquipment | None:
    value: Node | None = entry.value
    if isinstance(value, Scalar) and not value.empty:
        _only_a_name(entry.key.text, value, reading)
        return None
    fields = EQUIPMENT.read(None if isinstance(value, Scalar) else value, reading, entry.key.place)
    if fields is None:
        reading.report.lose(Lost.OWNED)
        return None
    basis = fields.get(BASIS)
    return OwnedEquipment(
        key=entry.key.text,
        name=fields.either(NAME, entry.key.text),
        place=entry.key.place,
        replacement_cost=fields.get(WORTH),
        basis=basis,
        basis_has_fuel=fields.either(FUEL_INCLUDED, bool(basis and _FUEL_IN.search(basis))),
    )


def _only_a_name(key: str, value: Scalar, reading: Reading) -> None:
    reading.mistake(
        value.place,
        f"{key} is {kind_of(value)}",
        "keys and values, such as name: Table saw",
        f"write {key}: {{name: {in_quotes(clipped(value.text))}}}",
    )
    reading.report.lose(Lost.OWNED)


def _stock(entry: Entry, reading: Reading) -> OwnedStock | None:
    fields = STOCK.read(_unknown_left_out(entry.value), reading, entry.key.place)
    material, quantity = (None, None) if fields is None else (fields.get(MATERIAL), fields.get(QUANTITY_OF))
    if fields is None or material is None or quantity is None:
        reading.report.lose(Lost.OWNED)
        return None
    cost = fields.get(UNIT_COST)
    return OwnedStock(
        key=entry.key.text,
        material=material,
        place=entry.key.place,
        quantity=quantity.value,
        unit_cost=None if cost is None else cost.value,
        replacement_cost=fields.get(WORTH),
        judged=quantity.about or (cost is not None and cost.about),
    )


def _unknown_left_out(node: Node) -> Node:
    """`unit_cost: unknown` says the same as no unit_cost."""
    if not isinstance(node, Mapping):
        return node
    kept = (one for one in node.entries if not _is_unknown(one))
    return Mapping(node.place, tuple(kept))


def _is_unknown(entry: Entry) -> bool:
    value = entry.value
    return entry.key.text == UNIT_COST.name and isinstance(value, Scalar) and value.text == Told.UNKNOWN.value
