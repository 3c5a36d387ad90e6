"""Written nodes to values: scalars, lists, sizes and rows. Every mistake is told, none is raised."""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import get_close_matches

from builder.journal.records.written import Entry, Mapping, Node, Scalar
from builder.journal.records.written import Sequence as Listed
from builder.takeoff.declared import EXAMPLES, Default, Input, Kind
from builder.takeoff.reading.scalars import MOST, read_scalar, sides
from builder.takeoff.text import Text
from builder.takeoff.values import Lot, Size, Values
from builder.words.misread import clipped
from builder.words.numbers import Unreadable
from builder.words.place import Place
from builder.words.problem import Problem
from builder.words.quantity import Quantity

ABOUT = re.compile(r"about\s+", re.IGNORECASE)
_TIMES_ONE = re.compile(r"(\d+)\s*[x×]\s*(.+)")
_LONGEST_LIST = 400
_ONE_LENGTH = Input(key="length", kind=Kind.LENGTH, meaning="", example="12 ft")


class NodeReader:
    """Reads nodes by their declarations; `problems` are the mistakes so far. `metric` is for likely fixes."""

    def __init__(self, *, metric: bool) -> None:
        self.problems: list[Problem] = []
        self._metric = metric

    def row(self, entries: Sequence[Entry], inputs: Sequence[Input], at: Place, name: str, taker: str = "") -> Values:
        """The values of one mapping, with defaults; a message calls it `name`, and what takes its keys `taker`."""
        known = {kept.key: kept for kept in inputs}
        written = {entry.key.text: entry.value for entry in entries if entry.key.text in known}
        strange = [entry for entry in entries if entry.key.text not in known]
        meant = {self._strange(entry, list(known), taker or name) for entry in strange}
        read = {key: self._value(node, known[key]) for key, node in written.items()}
        for kept in inputs:
            # A key that is only misspelt has been told once.
            if kept.required and kept.key not in written and kept.key not in meant:
                self._problem(at, f"{name} has no {kept.key}", expected(kept), f"add {kept.key}: {kept.example}")
        values = {key: value for key, value in read.items() if value is not None}
        sources = _filled(values, set(written), known)
        places = {key: node.place for key, node in written.items()}
        return Values(at=at, values=values, places=places, sources=sources)

    def _strange(self, entry: Entry, known: list[str], taker: str) -> str:
        """Tell of a key that is not taken; the one that was probably meant, or ""."""
        word = entry.key.text
        found, fix = f"{taker} takes no {clipped(word)}", did_you_mean(word, known)
        self._problem(entry.key.place, found, f"one of {', '.join(known)}", fix)
        return nearest(word, known)

    def _value(self, node: Node, kept: Input) -> object | None:
        if isinstance(node, Scalar) and node.text in kept.words:
            return node.text
        match kept.kind:
            case Kind.ROWS:
                return self._rows(node, kept)
            case Kind.LENGTHS | Kind.SIZES:
                return self._each(node, kept)
            case _:
                return self._scalar(node, kept, kept.key)

    def _scalar(self, node: Node, kept: Input, name: str) -> object | None:
        if not isinstance(node, Scalar):
            self._not_due(node, kept, name)
        elif node.empty:
            self._empty(node, kept, name)
        else:
            try:
                return read_scalar(ABOUT.sub("", node.text.strip(), count=1), kept, metric=self._metric)
            except Unreadable as error:
                self._problem(node.place, f"{name}: {error.found}", error.expected, error.fix)
        return None

    def _not_due(self, node: Node, kept: Input, name: str) -> None:
        self._problem(node.place, f"{name} is {_called(node)}, where {kept.kind.value} is due", expected(kept))

    def _empty(self, node: Scalar, kept: Input, name: str) -> None:
        if node.comment:
            found, fix = f"{name} has no value: a # begins a comment", f'write "{clipped(node.comment)}"'
        elif name == kept.key:
            found, fix = f"{name} has no value", f"write {name}: {kept.example}"
        else:  # an entry of a list, which stands there without a name
            found, fix = f"{name} has no value", f"write one, such as {kept.example}, or remove it"
        self._problem(node.place, found, expected(kept), fix)

    def _listed(self, node: Node, kept: Input) -> tuple[Node, ...]:
        """The entries of a list, of which one alone may stand bare; (), and told, if there is none."""
        if isinstance(node, Scalar) and node.empty:
            self._empty(node, kept, kept.key)
            return ()
        nodes = node.items if isinstance(node, Listed) else (node,)
        if 0 < len(nodes) <= _LONGEST_LIST:
            return nodes
        found = f"{kept.key} has {len(nodes)} entries" if nodes else f"{kept.key} is an empty list"
        self._problem(node.place, found, f"1 to {_LONGEST_LIST} entries, as in {kept.example}")
        return ()

    def _rows(self, node: Node, kept: Input) -> tuple[Values, ...]:
        rows = []
        for number, each in enumerate(self._listed(node, kept), 1):
            if isinstance(each, Mapping):
                rows.append(self.row(each.entries, kept.columns, each.place, f"{kept.key} {number}"))
            else:
                self._not_a_row(each, kept, number)
        return tuple(rows)

    def _not_a_row(self, node: Node, kept: Input, number: int) -> None:
        keys = ", ".join(column.key for column in kept.columns)
        found = f"{kept.key} {number} is {_called(node)}, where {keys} are due"
        fix = did_you_mean(node.text, kept.words) if isinstance(node, Scalar) else ""
        self._problem(node.place, found, expected(kept), fix)

    def _each(self, node: Node, kept: Input) -> tuple[object, ...]:
        nodes = self._listed(node, kept)
        names = [f"{kept.key} {number}" for number in range(1, len(nodes) + 1)] if len(nodes) > 1 else [kept.key]
        read = self._lot if kept.kind is Kind.LENGTHS else self._size
        values = [read(each, name) for each, name in zip(nodes, names, strict=False)]
        return tuple(value for value in values if value is not None)

    def _lot(self, node: Node, name: str) -> Lot | None:
        """`12 ft`, or `4 x 12 ft`."""
        times = _TIMES_ONE.fullmatch(node.text.strip()) if isinstance(node, Scalar) else None
        count = 1
        if times is not None:
            count = int(times[1]) if len(times[1]) < len(str(MOST)) else 0
            node = Scalar(node.place, times[2])
        if times is not None and count == 0:
            self._problem(node.place, f"{name}: {clipped(times[0])} is no number of pieces", f"1 to {MOST - 1} of them")
            return None
        length = self._scalar(node, _ONE_LENGTH, name)
        return Lot(length, count) if isinstance(length, Quantity) else None

    def _size(self, node: Node, name: str) -> Size | None:
        """`[3 ft, 7 ft]`, or `3 ft x 7 ft`."""
        if isinstance(node, Scalar):
            parts: tuple[Node, ...] = tuple(Scalar(node.place, side) for side in sides(node.text))
        else:
            parts = node.items if isinstance(node, Listed) else ()
        if len(parts) != 2:
            self._problem(node.place, f"{name} is no width and height", "a size such as [3 ft, 7 ft]")
            return None
        width, height = (self._scalar(part, _ONE_LENGTH, name) for part in parts)
        if isinstance(width, Quantity) and isinstance(height, Quantity):
            return Size(width, height, node.place)
        return None

    def _problem(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        self.problems.append(Problem(place=place, found=found, expected=expected, fix=fix))


def did_you_mean(word: str, known: Sequence[str]) -> str:
    """`did you mean length?`, or "" when nothing known is near."""
    near = nearest(word, known)
    return f"did you mean {near}?" if near else ""


def nearest(word: str, known: Sequence[str]) -> str:
    """The known word that is nearest, or "" when none is near."""
    near = get_close_matches(word.lower()[:100], known, n=1)
    return near[0] if near else ""


def expected(kept: Input) -> str:
    """What an input looks like, to complete "expected ..."."""
    return EXAMPLES.get(kept.kind) or f"a list such as {kept.example}"


def _filled(values: dict[str, object], written: set[str], known: dict[str, Input]) -> dict[str, Text]:
    """Put in the defaults of what was not written; where each comes from."""
    sources = {}
    for kept in known.values():
        default = next((each for each in kept.defaults if _holds(each, values, known)), None)
        if default is not None and kept.key not in written:
            values[kept.key] = read_scalar(default.written, kept, metric=False)
            sources[kept.key] = default.source
    return sources


def _holds(default: Default, values: dict[str, object], known: dict[str, Input]) -> bool:
    if default.when is None:
        return True
    key, written = default.when
    due, value = read_scalar(written, known[key], metric=False), values.get(key)
    if isinstance(due, Quantity) and isinstance(value, Quantity):
        return due.like(value) and due.to(value.unit) == value
    return due == value


def _called(node: Node) -> str:
    if isinstance(node, Listed):
        return "a list"
    return "a group of keys" if isinstance(node, Mapping) else "a single value"
