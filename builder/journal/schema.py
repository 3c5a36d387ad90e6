"""JSON Schema of the journal's files, made from the declared keys, for editors that complete and check while typing."""

from __future__ import annotations

import json
from collections.abc import Iterator

from builder.journal.episode_keys import EPISODE
from builder.journal.item_keys import ITEM, LINES, RECEIPT
from builder.journal.keys import Group
from builder.journal.owned_reader import EQUIPMENT, OWNED, STOCK
from builder.journal.plan_reader import PHASE, PLAN
from builder.journal.settings_reader import SETTINGS

_DIALECT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, object]


def schemas() -> Iterator[tuple[str, str]]:
    """Name and text of each: journal, plan, owned, episode (the front matter)."""
    for name, schema in (
        ("journal", of_group(SETTINGS)),
        ("plan", _plan()),
        ("owned", _owned()),
        ("episode", _episode()),
    ):
        yield name, json.dumps({"$schema": _DIALECT, **schema}, indent=1, ensure_ascii=False) + "\n"


def of_group(group: Group, **own: object) -> Schema:
    """The schema of one mapping; `own` gives keys a schema of their own."""
    properties = {
        key.name: {"description": key.meaning, "examples": [key.example], **_shape(own.get(key.name, key.kind.schema))}
        for key in group.keys
    }
    required = [key.name for key in group.keys if key.required]
    schema: Schema = {"type": "object", "properties": properties, "additionalProperties": False}
    return schema | ({"required": required} if required else {})


def _shape(schema: object) -> Schema:
    assert isinstance(schema, dict)
    return schema


def _plan() -> Schema:
    planned_item = of_group(ITEM)
    assert isinstance(planned_item["properties"], dict)
    planned_item["properties"]["key"] = {"type": "string", "description": "the word that real lines answer to"}
    planned_item["properties"]["quantity"] = {
        "anyOf": [{"type": ["string", "number"]}, {"type": "object", "properties": {"takeoff": {"type": "string"}}}]
    }
    phase = of_group(PHASE)
    takeoffs = {
        "type": "object",
        "additionalProperties": {
            "type": "object",
            "properties": {"method": {"type": "string"}},
            "required": ["method"],
        },
    }
    plan = of_group(PLAN, phases={"type": "array", "items": phase}, takeoff=takeoffs)
    return plan | {"$defs": {"item": planned_item}}


def _owned() -> Schema:
    def table(group: Group) -> Schema:
        return {"type": "object", "additionalProperties": of_group(group)}

    return of_group(OWNED, equipment=table(EQUIPMENT), stock=table(STOCK))


def _episode() -> Schema:
    return of_group(EPISODE) | {
        "$defs": {"item": of_group(ITEM), "receipt": of_group(RECEIPT, items=dict(LINES.schema))}
    }
