"""Adding a line item to an episode's text, keeping every comment and blank line as it was."""

from __future__ import annotations

import re
from dataclasses import dataclass

from builder.journal.quoting import quoted

_KEY = re.compile(r"^items:[ \t]*(?P<rest>[^#\n]*?)[ \t]*(#.*)?$")
_DASH = re.compile(r"^([ \t]*)- ")


@dataclass(frozen=True, slots=True, kw_only=True)
class NewLine:
    """A line to add, as keys and their written values in order; `kind` is material, equipment ..."""

    kind: str
    what: str
    values: tuple[tuple[str, str], ...]

    def written(self) -> list[str]:
        """The short form where it says everything, else the long one; the first line begins with a dash.

        A cost with a comma is a mistake; in the short form its beginning would become part of the name. So is one
        in quotes, which would become part of it there.
        """
        only_cost = self.kind == "material" and [name for name, _ in self.values] == ["cost"]
        if only_cost and quoted(self.what) == self.what and not {",", '"'} & set(self.values[0][1]):
            return [f"- {self.what}, {self.values[0][1]}"]
        return [f"- {self.kind}: {quoted(self.what)}", *(f"  {name}: {value}" for name, value in self.values)]


@dataclass
class CannotAdd(Exception):
    """The episode's items are written in a way that a line cannot be added to."""

    found: str
    fix: str

    def __str__(self) -> str:
        return f"{self.found}; {self.fix}"


def with_line(text: str, new: NewLine) -> str:
    """The episode's text with the line added at the end of its items; CannotAdd where that cannot be done."""
    end = "\r\n" if "\r\n" in text else "\n"
    lines = text.split(end)
    close = next((at for at, line in enumerate(lines[1:], 1) if line.rstrip() == "---"), None)
    if lines[0].lstrip("\ufeff").rstrip() != "---" or close is None:
        raise CannotAdd("the episode has no front matter", "put title: and date: between two lines of ---")
    at = next((number for number in range(1, close) if _KEY.match(lines[number])), None)
    if at is None:
        return end.join([*lines[:close], "items:", *_indented(new, "  "), *lines[close:]])
    match = _KEY.match(lines[at])
    rest = match["rest"] if match else ""
    if rest in ("[]", "~", "null"):
        lines[at] = lines[at].replace(rest, "", 1).rstrip()
    elif rest:
        raise CannotAdd("items is written on one line", "write each item on a line of its own, with a dash")
    last, indent = _block(lines, at, close)
    return end.join([*lines[: last + 1], *_indented(new, indent), *lines[last + 1 :]])


def _indented(new: NewLine, indent: str) -> list[str]:
    return [indent + line for line in new.written()]


def _block(lines: list[str], at: int, close: int) -> tuple[int, str]:
    """The last line of the items, comments after them included where nothing else follows, and their indent."""
    last, indent = at, "  "
    found = False
    for number in range(at + 1, close):
        line = lines[number]
        dash = _DASH.match(line)
        if dash and not found:
            indent, found = dash[1], True
        if line.strip() and not line.startswith((" ", "\t", "-", "#")):
            break
        if line.strip():
            last = number
    return last, indent
