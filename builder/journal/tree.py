"""YAML text to a tree of placed, still written values.

Built from the parser's events, so nothing is resolved: `no` stays no, `12:30` stays 12:30, `010` stays
010. Names for values (&, *), types (!) and merges are refused, which also refuses alias bombs; nesting is
limited; a key that stands twice is a mistake and not the last one silently.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import takewhile
from typing import Any

import yaml

from builder.journal.guess import guess
from builder.journal.quoting import in_quotes
from builder.journal.records.written import Entry, Mapping, Node, Scalar, Sequence
from builder.journal.report import Report
from builder.journal.text import Source, one_line, printable
from builder.words.misread import clipped
from builder.words.place import Place

DEEPEST = 12


class _Refused(Exception):
    """Reading this file cannot go on; its mistake has been reported."""


def read_tree(source: Source, report: Report, first_line: int = 1) -> Node | None:
    """The tree of one YAML document, an empty mapping when it says nothing, None (reported) when it is none.

    `first_line` is the line of the file on which `source.text` begins.
    """
    if not printable(source, report, first_line):
        return None
    builder = _Builder(source, report, first_line)
    try:
        return builder.document()
    except _Refused:
        return None
    except yaml.MarkedYAMLError as error:
        builder.broken(error)
    return None


class _Builder:
    def __init__(self, source: Source, report: Report, first_line: int) -> None:
        self._file = source.file
        self._lines = source.text.split("\n")
        self._report = report
        self._first = first_line
        self._events: Iterator[Any] = yaml.parse(source.text, Loader=yaml.CSafeLoader)

    def document(self) -> Node:
        root: Node | None = None
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                if root is not None:
                    raise self._refuse(
                        event, "a second set of keys begins here", "one set", "remove the line of --- or ..."
                    )
            elif isinstance(event, yaml.NodeEvent):
                root = self._node(event, "", 0)
        if root is None or (isinstance(root, Scalar) and root.empty):
            return Mapping(Place(file=self._file, line=max(self._first - 1, 1)), ())
        return root

    def _node(self, event: Any, path: str, depth: int) -> Node:
        self._plain(event)
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event, path)
        if depth >= DEEPEST:
            raise self._refuse(
                event,
                f"lists or keys stand more than {DEEPEST} deep here",
                "keys with values, and lists of lines",
                "look for a bracket, or a dash, too many",
            )
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(event, path, depth)
        return self._mapping(event, path, depth)

    def _plain(self, event: Any) -> None:
        if isinstance(event, yaml.AliasEvent) or event.anchor is not None:
            raise self._refuse(
                event,
                "a value begins with & or *",
                "text that begins with & or * in quotes",
                "put the whole value in quotes",
            )
        if getattr(event, "tag", None) not in (None, "!"):
            raise self._refuse(
                event,
                "a value begins with !",
                "text that begins with ! in quotes",
                "put the whole value in quotes",
            )

    def _scalar(self, event: Any, path: str) -> Scalar:
        place = self._place(event, path)
        if event.style and event.style in "'\"|>":
            return Scalar(place, self._one_line(event.value, place), quoted=True)
        text = one_line(event.value)[0].strip()  # where an empty line stands in it, it has two
        behind = self._after(event.end_mark)
        if text in ("", "~", "null"):
            return Scalar(place, "", comment=behind if behind.startswith("#") else "")
        if re.match(r"#\d", behind):
            self._cut_off(place, text, behind)
            return Scalar(place, text, comment=behind)
        return Scalar(place, text)

    def _one_line(self, value: str, place: Place) -> str:
        text, wrong = one_line(value)
        if wrong:
            self._report.mistake(
                place,
                f"a backslash in these quotes writes a character that cannot be printed (U+{ord(wrong):04X})",
                "letters, digits and signs",
                "write the backslash twice if you mean one, or delete it",
            )
        return text

    def _cut_off(self, place: Place, text: str, behind: str) -> None:
        self._report.mistake(
            place,
            f"{clipped(behind)} is taken for a comment and left out, as # begins one",
            "a # before a number in quotes; a comment has a space after its #",
            f"write {in_quotes(clipped(f'{text} {behind}'))}",
        )

    def _sequence(self, start: Any, path: str, depth: int) -> Sequence:
        items: list[Node] = []
        for event in self._until(yaml.SequenceEndEvent):
            items.append(self._node(event, f"{path}[{len(items) + 1}]", depth + 1))
        return Sequence(self._place(start, path), tuple(items))

    def _mapping(self, start: Any, path: str, depth: int) -> Mapping:
        entries: dict[str, Entry] = {}
        for event in self._until(yaml.MappingEndEvent):
            key = self._key(event, path, depth)
            inner = f"{path}.{key.text}" if path else key.text
            entry = Entry(key, self._node(next(self._events), inner, depth + 1))
            if not (start.flow_style and entries and self._cut_by_comma(event.end_mark, entry, entries)):
                self._keep(entries, entry)
        return Mapping(self._place(start, path), tuple(entries.values()))

    def _until(self, end: type[yaml.Event]) -> Iterator[Any]:
        return takewhile(lambda event: not isinstance(event, end), self._events)

    def _key(self, event: Any, path: str, depth: int) -> Scalar:
        key = self._node(event, path, depth + 1)
        if isinstance(key, Scalar):
            return key
        raise self._refuse(
            event,
            "a list or a group of keys stands where a key is due",
            "a word, then a colon",
            "remove the ?",
        )

    def _cut_by_comma(self, end: yaml.Mark, entry: Entry, entries: dict[str, Entry]) -> bool:
        """Whether `{cost: 1,250}` or `{material: Mix, 80 lb}` stands here: reported, the part is left out."""
        value, before = entry.value, next(reversed(entries.values()))
        if not isinstance(value, Scalar) or not isinstance(before.value, Scalar):
            return False
        if self._after(end).startswith(":") or not value.empty or before.value.empty:
            return False
        whole = f"{before.value.text},{entry.key.text}"
        number = re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?", whole)
        whole = whole if number else f"{before.value.text}, {entry.key.text}"
        self._report.mistake(
            before.value.place,
            f"{before.key.text}: {clipped(whole)} is cut in two at its comma",
            "inside { }, a value that holds a comma in quotes, and numbers without commas",
            f"write {whole.replace(',', '')}" if number else f"write {in_quotes(clipped(whole))}",
        )
        return True

    def _after(self, mark: yaml.Mark) -> str:
        """What stands behind a mark on its line; the beginning of it, as a line may be very long."""
        line = self._lines[mark.line] if mark.line < len(self._lines) else ""
        return line[mark.column : mark.column + 100].strip()

    def _keep(self, entries: dict[str, Entry], entry: Entry) -> None:
        first = entries.get(entry.key.text)
        if first is None:
            entries[entry.key.text] = entry
            return
        self._report.mistake(
            entry.key.place,
            f"the key {entry.key.text} stands twice, first on line {first.key.place.line}",
            "each key once",
            "remove one of the two",
        )

    def _place(self, event: Any, path: str) -> Place:
        start, end = event.start_mark, event.end_mark
        width = end.column - start.column if end.line == start.line else 1
        # What is missing at the very end is marked on a line that no editor shows.
        line = min(start.line, len(self._lines) - 1)
        return Place(
            file=self._file,
            line=line + self._first,
            column=min(start.column, len(self._lines[line])) + 1,
            width=max(width, 1),
            key=path,
        )

    def _refuse(self, event: Any, found: str, expected: str, fix: str) -> _Refused:
        self._report.mistake(self._place(event, ""), found, expected, fix)
        return _Refused()

    def broken(self, error: yaml.MarkedYAMLError) -> None:
        """Report text that is no YAML, guessing what the author meant."""
        slip = guess(error, self._lines)
        place = Place(file=self._file, line=slip.line + self._first, column=slip.column + 1)
        self._report.mistake(place, slip.found, slip.expected, slip.fix)
