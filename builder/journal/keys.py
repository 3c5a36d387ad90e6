"""Keys as data: each has its type, meaning and an example, declared once.

Reading, "did you mean", the format page and the JSON Schema all come from these declarations. A `Kind` turns
a written node into a typed value or reports why it cannot; a `Group` is the set of keys that one mapping may
hold; `Fields` are the values read from one mapping, each with its place.
"""

from __future__ import annotations

from collections.abc import Callable
from collections.abc import Mapping as Lookup
from dataclasses import dataclass, field
from typing import Any, Generic, Protocol, TypeVar, cast

from builder.journal.reading import Reading, kind_of
from builder.journal.records.written import Entry, Mapping, Node, Scalar
from builder.journal.report import one_of
from builder.words.misread import clipped
from builder.words.numbers import Unreadable
from builder.words.place import Place

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)


class Kind(Protocol[T_co]):
    """How a value is written. `expects` completes the sentence "expected ...", `schema` is JSON Schema."""

    @property
    def expects(self) -> str: ...
    @property
    def schema(self) -> Lookup[str, object]: ...
    def read(self, node: Node, key: str, reading: Reading) -> T_co | None:
        """The value, or None with a mistake reported."""


@dataclass(frozen=True, slots=True)
class Word(Generic[T]):
    """A kind written as one value; `parse` raises Unreadable."""

    expects: str
    parse: Callable[[str, Reading], T]
    schema: Lookup[str, object] = field(default_factory=lambda: {"type": ["string", "number"]})

    def read(self, node: Node, key: str, reading: Reading) -> T | None:
        """The value, or None with a mistake reported."""
        scalar = reading.scalar(node, key, self.expects)
        if scalar is None:
            return None
        try:
            return self.parse(scalar.text.strip(), reading)
        except Unreadable as error:
            reading.report.unreadable(scalar.place, key, error)
            return None


@dataclass(frozen=True, slots=True, kw_only=True)
class Key(Generic[T]):
    """One key of a group. `also` are words that people write for it; they are not read, only recognised."""

    name: str
    kind: Kind[T]
    meaning: str
    example: str
    required: bool = False
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Fields:
    """The values read from one mapping, by key. `at` is where the mapping stands.

    `unread` are the keys that stand there, under their own name or another, and could not be read; `node` is
    the mapping as written.
    """

    at: Place
    values: dict[str, tuple[Any, Place]]
    unread: frozenset[str] = frozenset()
    node: Mapping | None = None

    def get(self, key: Key[T]) -> T | None:
        """The value of a key, or None when it was absent or could not be read."""
        found = self.values.get(key.name)
        return None if found is None else cast(T, found[0])

    def either(self, key: Key[T], default: T) -> T:
        """The value of a key, or a default."""
        found = self.values.get(key.name)
        return default if found is None else cast(T, found[0])

    def place(self, key: Key[Any]) -> Place:
        """Where the value of a key stands; where the mapping stands if it is absent."""
        found = self.values.get(key.name)
        return self.at if found is None else found[1]

    def text(self, key: Key[Any]) -> str:
        """What was written for a key, where it is one value; "" otherwise."""
        found = None if self.node is None else self.node.get(key.name)
        return found.text if isinstance(found, Scalar) else ""

    def has(self, key: Key[Any]) -> bool:
        """Whether the key has a value that could be read."""
        return key.name in self.values

    def wrote(self, key: Key[Any]) -> bool:
        """Whether the key stands there, readable or not."""
        return key.name in self.values or key.name in self.unread


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """The keys one mapping may hold. `name` says what the mapping is ("a line item")."""

    name: str
    keys: tuple[Key[Any], ...]

    def read(self, node: Node | None, reading: Reading, at: Place) -> Fields | None:
        """The values of a mapping; unknown keys and missing ones are reported. None if it is no mapping."""
        if node is None:
            node = Mapping(at, ())
        if not isinstance(node, Mapping):
            self._no_mapping(node, reading)
            return None
        known = {key.name: key for key in self.keys}
        values: dict[str, tuple[Any, Place]] = {}
        seen: set[str] = set()
        for entry in node.entries:
            key = known.get(entry.key.text)
            if key is None:
                seen.add(self._unknown(entry, reading))
                continue
            seen.add(key.name)
            value = key.kind.read(entry.value, key.name, reading)
            if value is not None:
                values[key.name] = (value, entry.value.place)
        self._missing(seen, reading, node.place)
        return Fields(node.place, values, frozenset(seen - values.keys() - {""}), node)

    def _no_mapping(self, node: Node, reading: Reading) -> None:
        """Say that keys are missing, or that only the space after their colon is."""
        first = self.keys[0]
        key, colon, value = node.text.partition(":") if isinstance(node, Scalar) else ("", "", "")
        known = colon and key.strip() in {one.name for one in self.keys}
        reading.mistake(
            node.place,
            f"{self.name} is {kind_of(node)}" if not known else "there is no space after the colon",
            f"keys and values, such as {first.name}: {first.example}",
            f"write {key.strip()}: {value.split(' ')[0]}" if known else "",
        )

    def _unknown(self, entry: Entry, reading: Reading) -> str:
        """Report a key that is none; gives the name of the one it seems to stand for, or ""."""
        names, word = [key.name for key in self.keys], entry.key.text
        found = f"{clipped(word)} is no key of {self.name}" if word else "a colon has no key"
        meant = self.meant(word)
        if meant is not None:
            expected = f"{meant.name}, as in {meant.name}: {meant.example}"
            reading.mistake(entry.key.place, found, expected, f"did you mean {meant.name}?")
            return meant.name
        near = reading.report.nearest(word, names)
        reading.mistake(entry.key.place, found, one_of(names), f"did you mean {near}?" if near else "")
        return near

    def meant(self, word: str) -> Key[Any] | None:
        """The key that a word stands for: its name in any case, or another word for it."""
        low = word.lower().replace(" ", "_").replace("-", "_")
        return next((key for key in self.keys if low in (key.name, *key.also)), None)

    def _missing(self, seen: set[str], reading: Reading, at: Place) -> None:
        for key in self.keys:
            if key.required and key.name not in seen:
                reading.mistake(
                    at, f"{self.name} has no {key.name}", key.kind.expects, f"add {key.name}: {key.example}"
                )
