"""plan.yaml: phases, budget, take-off."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.item_keys import LINES
from builder.journal.item_reader import read_item
from builder.journal.keys import Fields, Group, Key
from builder.journal.kinds import DURATION, HOURS_GUESSED, LABEL, PHASE_NAMED, TEXT, Anything, Listed, Placed
from builder.journal.money_kinds import BUDGET, RESERVE
from builder.journal.reading import Reading, kind_of
from builder.journal.records.plan import Phase, Plan, PlannedLine, TakeoffRef
from builder.journal.records.takeoff_entry import TakeoffEntry
from builder.journal.records.written import Entry, Mapping, Node, Scalar, Sequence
from builder.journal.report import Lost
from builder.words.money import Money
from builder.words.place import Place
from builder.words.rounding import significant_text

KEY = Key(
    name="key",
    kind=LABEL,
    meaning="the word for the phase everywhere else",
    example="foundation",
    required=True,
)
NAME = Key(name="name", kind=TEXT, meaning="what the pages call it", example="Foundation")
AFTER = Key(
    name="after",
    also=("depends_on", "needs"),
    kind=Listed(PHASE_NAMED, lone=True),
    meaning="phases that must be finished first",
    example="[ground]",
)
_THREE = "write three numbers, such as [14, 20, 34]"
HOURS = Key(
    name="hours",
    kind=Listed(HOURS_GUESSED, fix=_THREE, whole=True),
    meaning="hours it will take: low, likely, high",
    example="[14, 20, 34]",
)
WAIT = Key(
    name="wait",
    also=("curing", "delay"),
    kind=DURATION,
    meaning="days on the calendar before what comes after (curing, delivery)",
    example="7 days",
)
PLANNED: Key[Node] = Key(
    name="planned",
    also=("budget", "lines", "items"),
    kind=Anything("a list of planned lines, or one amount", {"anyOf": [LINES.schema, {"type": ["number", "string"]}]}),
    meaning="the budget, tax inside: lines like line items, with a key, or one amount for the whole phase",
    example="220",
)
PHASE = Group(name="a phase", keys=(KEY, NAME, AFTER, HOURS, WAIT, PLANNED))

CONTINGENCY: Key[Money | Fraction] = Key(
    name="contingency",
    also=("reserve", "buffer"),
    kind=RESERVE,
    meaning="kept apart for overruns, never inside a phase: a part of the planned total, or an amount",
    example="10%",
)
PHASES: Key[Node] = Key(
    name="phases",
    also=("stages",),
    kind=Anything("a list of phases", {"type": "array"}),
    meaning="the stages of the build",
    example="[{key: ground, planned: 220}]",
)
TAKEOFF: Key[Node] = Key(
    name="takeoff",
    also=("take_off", "takeoffs", "take_offs"),
    kind=Anything("take-offs by name", {"type": "object"}),
    meaning="quantities worked out from dimensions, each under a name of its own",
    example="{pad: {method: slab, length: 10 ft, width: 8 ft, thickness: 4 in}}",
)
PLAN = Group(name="plan.yaml", keys=(CONTINGENCY, PHASES, TAKEOFF))


def read_plan(node: Node | None, file: str, reading: Reading, owned: frozenset[str] = frozenset()) -> Plan:
    """What plan.yaml says; an empty plan when there is no such file.

    `owned` are the equipment keys of owned.yaml.
    """
    fields = PLAN.read(node, reading, Place(file=file))
    if fields is None:
        reading.report.lose(Lost.PHASE, Lost.PLANNED_LINE)
        return Plan()
    return Plan(
        phases=_phases(fields.get(PHASES), reading, owned),
        contingency=fields.get(CONTINGENCY),
        takeoffs=_takeoffs(fields.get(TAKEOFF), reading),
    )


def _phases(node: Node | None, reading: Reading, owned: frozenset[str]) -> tuple[Phase, ...]:
    if node is None or (isinstance(node, Scalar) and node.empty):
        return ()
    if not isinstance(node, Sequence):
        reading.mistake(
            node.place,
            f"phases is {kind_of(node)}",
            "a list of phases, each beginning with a dash",
            "write each as - key: ground, with its other keys below",
        )
        reading.report.lose(Lost.PHASE, Lost.PLANNED_LINE)
        return ()
    phases = (_phase(one, reading, owned) for one in node.items)
    return tuple(phase for phase in phases if phase is not None)


def _phase(node: Node, reading: Reading, owned: frozenset[str]) -> Phase | None:
    fields = PHASE.read(node, reading, node.place)
    key = None if fields is None else fields.get(KEY)
    if fields is None or key is None:
        reading.report.lose(Lost.PHASE, Lost.PLANNED_LINE)
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
        planned=_planned(fields, reading, owned),
    )


def _hours(fields: Fields, reading: Reading) -> tuple[Fraction, Fraction, Fraction] | None:
    told: tuple[Placed[Fraction], ...] | None = fields.get(HOURS)
    if told is None:
        return None
    values = [one.value for one in told]
    if len(values) != 3:
        reading.mistake(
            fields.place(HOURS),
            f"hours has {len(values)} numbers",
            "three: low, likely, high",
            _THREE,
        )
        return None
    low, likely, high = values
    if not low <= likely <= high:
        reading.mistake(
            fields.place(HOURS),
            f"hours are {_listed(values)}",
            "low, likely, high, none smaller than the one before",
            f"write [{_listed(sorted(values))}]",
        )
        return None
    return low, likely, high


def _listed(values: list[Fraction]) -> str:
    return ", ".join(significant_text(one) for one in values)


def _planned(fields: Fields, reading: Reading, owned: frozenset[str]) -> tuple[PlannedLine, ...] | Money | None:
    node = fields.get(PLANNED)
    if node is None:
        return None
    if isinstance(node, Sequence):
        lines = (_line(one, reading, owned) for one in node.items)
        return tuple(line for line in lines if line is not None)
    if isinstance(node, Scalar) and node.empty:
        return ()
    if isinstance(node, Mapping):
        fix = "begin each line with a dash, as in - key: mix"
        reading.mistake(node.place, "planned is a group of keys", "a list of planned lines, or one amount", fix)
        reading.report.lose(Lost.PLANNED_LINE)
        return None
    return BUDGET.read(node, "planned", reading)


def _line(node: Node, reading: Reading, owned: frozenset[str]) -> PlannedLine | None:
    key, ref, rest = _taken_out(node, reading)
    item = read_item(rest, reading, owned, counted=ref is not None)
    if item is None:
        reading.report.lose(Lost.PLANNED_LINE)
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
    if key is not None and read is None:
        reading.report.lose(Lost.PLANNED_LINE)
    entries = tuple(one for one in entries if one.key.text != "key")
    return read, taken, Mapping(node.place, entries)


def _ref(node: Mapping, reading: Reading) -> TakeoffRef | None:
    told = node.get("takeoff")
    expected = "{takeoff: footing.bags}, the name of a take-off, a dot and one of its results"
    if not isinstance(told, Scalar) or told.text.count(".") != 1:
        only = node.entries[0] if len(node.entries) == 1 else None
        meant = only.key.text if only and isinstance(only.value, Scalar) and only.value.empty else ""
        fix = f"write {{takeoff: {meant}}}" if meant.count(".") == 1 else ""
        reading.mistake(node.place, "the quantity is no number and no take-off", expected, fix)
        return None
    name, _, result = told.text.partition(".")
    return TakeoffRef(name=name, result=result, place=told.place)


def _takeoffs(node: Node | None, reading: Reading) -> tuple[TakeoffEntry, ...]:
    if node is None or (isinstance(node, Scalar) and node.empty):
        return ()
    if not isinstance(node, Mapping):
        reading.mistake(
            node.place,
            f"takeoff is {kind_of(node)}",
            "a name, a colon, and method and dimensions, for each",
            "write a word for each and a colon, such as pad:, and its keys below it, further in",
        )
        return ()
    entries = (_takeoff(entry, reading) for entry in node.entries)
    return tuple(entry for entry in entries if entry is not None)


def _takeoff(entry: Entry, reading: Reading) -> TakeoffEntry | None:
    if LABEL.read(entry.key, "the name of a take-off", reading) is None:
        return None
    if not isinstance(entry.value, Mapping):
        reading.mistake(
            entry.value.place,
            f"{entry.key.text} is {kind_of(entry.value)}",
            "method: and its dimensions",
            "write {method: slab, length: 10 ft, width: 8 ft, thickness: 4 in}, for instance",
        )
        return None
    method = entry.value.get("method")
    if not isinstance(method, Scalar) or not method.text:
        reading.mistake(
            entry.key.place,
            f"{entry.key.text} has no method",
            "method: and its name",
            "add method: slab, for instance",
        )
        return None
    return TakeoffEntry(
        name=entry.key.text,
        place=entry.key.place,
        method=method.text,
        method_place=method.place,
        inputs=tuple(one for one in entry.value.entries if one.key.text != "method"),
    )
