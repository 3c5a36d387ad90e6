"""Where in the journal something stands."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Place:
    """A spot in a file: line and column count from 1, `key` is the path of keys down to the value.

    `file` is the path inside the journal folder, with forward slashes (`episodes/01-pegging-out.md`).
    `width` is how many characters the value takes on its line; the mark under it is that long.
    """

    file: str
    line: int = 1
    column: int = 1
    width: int = 1
    key: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"
