"""plan.yaml: phases, budget, take-off."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.item_keys import LINES
from builder.journal.item_reader import read_item
from builder.journal.keys import Fields, Group, Key
from builder.journal.kinds import DURATION, LABEL, NUMBER, TEXT, Anything, Listed, Placed
from builder.journal.money_kinds import AMOUNT, AMOUNT_OR_RATE
from builder.journal.reading import Reading, kind_of
from builder.journal.records.plan import Phase, Plan, PlannedLine, TakeoffRef
from builder.journal.records.takeoff_entry import TakeoffEntry
from builder.journal.records.written import Entry, Mapping, Node, Scalar, Sequence
from builder.words.money import Money
from builder.words.place import Place

KEY = Key(name="key", kind=LABEL, meaning="the word for the phase everywhere else", example="foundation", required=True)
NAME = Key(name="name", kind=TEXT, meaning="what the pages call it", example="Foundation")
AFTER = Key(
    name="after", kind=Listed(LABEL, lone=True), meaning="phases that must be finished first", example="[ground]"
)
HOURS = Key(
    name="hours", kind=Listed(NUMBER), meaning="hours it will take: low, likely, high", example="[14, 20, 34]"
)
WAIT = Key(
    name="wait", kind=DURATION, meaning="days on the calendar before what comes after (curing, delivery)", example="7 days"
)
PLANNED: Key[Node] = Key(
    name="planned",
    kind=Anything("a list of planned lines, or one amount", {"anyOf": [LINES.schema, {"type": ["number", "string"]}]}),
    meaning="the budget, tax inside: lines like line items, with a key, or one amount for the whole phase",
    example="220",
)
PHASE = Group(name="a phase", keys=(KEY, NAME, AFTER, HOURS, WAIT, PLANNED))

CONTINGENCY: Key[Money | Fraction] = Key(
    name="contingency",
    kind=AMOUNT_OR_RATE,
    meaning="kept apart for overruns, never inside a phase: a part of the planned total, or an amount",
    example="10%",
)
PHASES: Key[Node] = Key(
    name="phases", kind=Anything("a list of phases", {"type": "array"}), meaning="the stages of the build", example="a list"
)
TAKEOFF: Key[Node] = Key(
    name="takeoff",
    kind=Anything("take-offs by name", {"type": "object"}),
    meaning="quantities worked out from dimensions, each under a name of its own",
    example="{pad: {method: slab, length: 10 ft, width: 8 ft, thickness: 4 in}}",
)
PLAN = Group(name="plan.yaml", keys=(CONTINGENCY, PHASES, TAKEOFF))


def read_plan(node: Node | None, file: str, reading: Reading) -> Plan:
    """What plan.yaml says; an empty plan when there is no such file."""
    fields = PLAN.read(node, reading, Place(file=file))
    if fields is None:
        return Plan()
    return Plan(
        phases=_phases(fields.get(PHASES), reading),
        contingency=fields.get(CONTINGENCY),
        takeoffs=_takeoffs(fields.get(TAKEOFF), reading),
    )


def _phases(node: Node | None, reading: Reading) -> tuple[Phase, ...]:
    if node is None or (isinstance(node, Scalar) and not node.text):
        return ()
    if not isinstance(node, Sequence):
        reading.mistake(node.place, f"phases is {kind_of(node)}", "a list of phases, each beginning with a dash")
        return ()
    phases = (_phase(one, reading) for one in node.items)
    return tuple(phase for phase in phases if phase is not None)


def _phase(node: Node, reading: Reading) -> Phase | None:
    fields = PHASE.read(node, reading, node.place)
    key = None if fields is None else fields.get(KEY)
    if fields is None or key is None:
        return None
    after = fields.get(AFTER) or ()
    return Phase(
        key=key,
        name=fields.either(NAME, key.capitalize()),
        place=fields.place(KEY),
        after=tuple(one.value for one in after),
        after_places=tuple(one.place for one in after),
        hours=_hours(fields, reading),
        wait=fields.either(WAIT, Fraction(0)),
        planned=_planned(fields, reading),
    )


def _hours(fields: Fields, reading: Reading) -> tuple[Fraction, Fraction, Fraction] | None:
    told: tuple[Placed[Fraction], ...] | None = fields.get(HOURS)
    if told is None:
        return None
    values = [one.value for one in told]
    if len(values) != 3:
        reading.mistake(
            fields.place(HOURS), f"hours has {len(values)} numbers", "three: low, likely, high", "write [14, 20, 34]"
        )
        return None
    low, likely, high = values
    if not low <= likely <= high:
        reading.mistake(
            fields.place(HOURS),
            f"hours are {low}, {likely}, {high}",
            "low, likely, high, none smaller than the one before",
            f"write [{', '.join(str(one) for one in sorted(values))}]",
        )
        return None
    return low, likely, high


def _planned(fields: Fields, reading: Reading) -> tuple[PlannedLine, ...] | Money | None:
    node = fields.get(PLANNED)
    if node is None:
        return None
    if isinstance(node, Sequence):
        lines = (_line(one, reading) for one in node.items)
        return tuple(line for line in lines if line is not None)
    if isinstance(node, Scalar) and not node.text:
        return ()
    amount = AMOUNT.read(node, "planned", reading)
    return amount


def _line(node: Node, reading: Reading) -> PlannedLine | None:
    key, ref, rest = _taken_out(node, reading)
    item = read_item(rest, reading, frozenset())
    return None if item is None else PlannedLine(key=key, item=item, quantity_from=ref)


def _taken_out(node: Node, reading: Reading) -> tuple[str | None, TakeoffRef | None, Node]:
    """The key and the take-off of a planned line, and the line without them, which reads like any other."""
    if not isinstance(node, Mapping):
        return None, None, node
    key, ref = node.get("key"), node.get("quantity")
    entries = node.entries
    taken = None
    if isinstance(ref, Mapping):
        taken = _ref(ref, reading)
        entries = tuple(one for one in entries if one.key.text != "quantity")
    read = LABEL.read(key, "key", reading) if key is not None else None
    entries = tuple(one for one in entries if one.key.text != "key")
    return read, taken, Mapping(node.place, entries)


def _ref(node: Mapping, reading: Reading) -> TakeoffRef | None:
    told = node.get("takeoff")
    expected = "{takeoff: footing.bags}, the name of a take-off, a dot and one of its results"
    if not isinstance(told, Scalar) or told.text.count(".") != 1:
        reading.mistake(node.place, "the quantity is no number and no take-off", expected)
        return None
    name, _, result = told.text.partition(".")
    return TakeoffRef(name=name, result=result, place=told.place)


def _takeoffs(node: Node | None, reading: Reading) -> tuple[TakeoffEntry, ...]:
    if node is None or (isinstance(node, Scalar) and not node.text):
        return ()
    if not isinstance(node, Mapping):
        reading.mistake(node.place, f"takeoff is {kind_of(node)}", "a name, a colon, and method and dimensions, for each")
        return ()
    entries = (_takeoff(entry, reading) for entry in node.entries)
    return tuple(entry for entry in entries if entry is not None)


def _takeoff(entry: Entry, reading: Reading) -> TakeoffEntry | None:
    if LABEL.read(entry.key, "the name of a take-off", reading) is None:
        return None
    if not isinstance(entry.value, Mapping):
        reading.mistake(entry.value.place, f"{entry.key.text} is {kind_of(entry.value)}", "method: and its dimensions")
        return None
    method = entry.value.get("method")
    if not isinstance(method, Scalar) or not method.text:
        reading.mistake(
            entry.key.place, f"{entry.key.text} has no method", "method: and its name", "add method: slab, for instance"
        )
        return None
    return TakeoffEntry(
        name=entry.key.text,
        place=entry.key.place,
        method=method.text,
        method_place=method.place,
        inputs=tuple(one for one in entry.value.entries if one.key.text != "method"),
    )


