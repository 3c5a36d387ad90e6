"""YAML as it was written: every scalar is still text, and everything has its place."""

from __future__ import annotations

from dataclasses import dataclass

from builder.words.place import Place


@dataclass(frozen=True, slots=True)
class Scalar:
    """One written value. `quoted` tells `"no"` from `no`; an empty plain scalar has text "".

    `comment` is what stands behind an empty one (`bar: #4` has the comment `#4`), or was cut off as a comment
    and reported (`Rebar #4, 36.90`), else "".
    """

    place: Place
    text: str
    quoted: bool = False
    comment: str = ""

    @property
    def empty(self) -> bool:
        """Whether nothing was written."""
        return not self.text and not self.quoted


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list, in the order written."""

    place: Place
    items: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One `key: value` of a mapping; the key is a scalar with its own place."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys and values, in the order written; no key stands twice."""

    place: Place
    entries: tuple[Entry, ...]

    def get(self, key: str) -> Node | None:
        """The value of a key, or None."""
        return next((entry.value for entry in self.entries if entry.key.text == key), None)


Node = Scalar | Sequence | Mapping
