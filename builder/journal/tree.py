"""YAML text to a tree of placed, still written values.

Built from the parser's events, so nothing is resolved: `no` stays no, `12:30` stays 12:30, `010` stays
010. Names for values (&, *), types (!) and merges are refused, which also refuses alias bombs; nesting is
limited; a key that stands twice is a mistake and not the last one silently.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml

from builder.journal.records.written import Entry, Mapping, Node, Scalar, Sequence
from builder.journal.report import Report
from builder.journal.text import Source
from builder.words.place import Place

DEEPEST = 12


class _Refused(Exception):
    """Reading this file cannot go on; its mistake has been reported."""


def read_tree(source: Source, report: Report, first_line: int = 1) -> Node | None:
    """The tree of one YAML document. None when the text is no YAML (reported) or says nothing.

    `first_line` is the line of the file on which `source.text` begins.
    """
    builder = _Builder(source, report, first_line)
    try:
        return builder.document()
    except _Refused:
        return None
    except yaml.MarkedYAMLError as error:
        builder.broken(error)
    except yaml.reader.ReaderError as error:
        line = source.text.count("\n", 0, max(error.position, 0)) + first_line
        report.mistake(
            Place(file=source.file, line=line),
            f"there is a character that text cannot hold (U+{_code(error):04X})",
            "printable characters",
            "delete it and type it again",
        )
    return None


def _code(error: yaml.reader.ReaderError) -> int:
    character: object = error.character
    return character if isinstance(character, int) else ord(str(character)[0])


class _Builder:
    def __init__(self, source: Source, report: Report, first_line: int) -> None:
        self._file = source.file
        self._lines = source.text.split("\n")
        self._report = report
        self._first = first_line
        self._events: Iterator[Any] = yaml.parse(source.text, Loader=yaml.CSafeLoader)

    def document(self) -> Node | None:
        root: Node | None = None
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                if root is not None:
                    raise self._refuse(
                        event, "a line of --- begins a second document", "one document", "remove the ---"
                    )
            elif isinstance(event, yaml.NodeEvent):
                root = self._node(event, "", 0)
        return None if isinstance(root, Scalar) and not root.text and not root.quoted else root

    def _node(self, event: Any, path: str, depth: int) -> Node:
        self._plain(event)
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event, path)
        if depth >= DEEPEST:
            raise self._refuse(
                event,
                f"lists or keys stand more than {DEEPEST} deep here",
                "the format's own depth",
                "see the example of this key",
            )
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(event, path, depth)
        return self._mapping(event, path, depth)

    def _plain(self, event: Any) -> None:
        if isinstance(event, yaml.AliasEvent) or event.anchor is not None:
            raise self._refuse(
                event,
                "a name for a value (& or *) stands here",
                "the value itself; the journal has no shorthand",
                "write the value out, or put the text in quotes",
            )
        if getattr(event, "tag", None) not in (None, "!"):
            raise self._refuse(
                event, "a type (!) stands here", "the value alone", "remove it, or put the text in quotes"
            )

    def _scalar(self, event: Any, path: str) -> Scalar:
        quoted = bool(event.style) and event.style in "'\"|>"
        text = event.value if quoted else event.value.strip()
        return Scalar(self._place(event, path), "" if not quoted and text in ("~", "null") else text, quoted)

    def _sequence(self, start: Any, path: str, depth: int) -> Sequence:
        items: list[Node] = []
        for event in self._events:
            if isinstance(event, yaml.SequenceEndEvent):
                break
            items.append(self._node(event, f"{path}[{len(items) + 1}]", depth + 1))
        return Sequence(self._place(start, path), tuple(items))

    def _mapping(self, start: Any, path: str, depth: int) -> Mapping:
        entries: dict[str, Entry] = {}
        for event in self._events:
            if isinstance(event, yaml.MappingEndEvent):
                break
            key = self._key(event, path, depth)
            inner = f"{path}.{key.text}" if path else key.text
            entry = Entry(key, self._node(next(self._events), inner, depth + 1))
            self._keep(entries, entry)
        return Mapping(self._place(start, path), tuple(entries.values()))

    def _key(self, event: Any, path: str, depth: int) -> Scalar:
        key = self._node(event, path, depth + 1)
        if isinstance(key, Scalar):
            return key
        raise self._refuse(event, "a list or mapping stands where a key is due", "a word, then a colon", "")

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
        return Place(
            file=self._file,
            line=start.line + self._first,
            column=start.column + 1,
            width=max(width, 1),
            key=path,
        )

    def _refuse(self, event: Any, found: str, expected: str, fix: str) -> _Refused:
        self._report.mistake(self._place(event, ""), found, expected, fix)
        return _Refused()

    def broken(self, error: yaml.MarkedYAMLError) -> None:
        """Report text that is no YAML, guessing what the author meant."""
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line, mark.column) if mark else (0, 0)
        line = min(line, len(self._lines) - 1)
        found, expected, fix = self._guess(error, line)
        place = Place(file=self._file, line=line + self._first, column=column + 1)
        self._report.mistake(place, found, expected, fix)

    def _guess(self, error: yaml.MarkedYAMLError, line: int) -> tuple[str, str, str]:
        text = self._lines[line]
        before = self._lines[line - 1] if line else ""
        figure = next((one for one in (text, before) if ": {=" in one or "- {=" in one), None)
        if figure is not None:
            return (
                "a value begins with {=",
                'a figure at the start of a value in quotes, as in title: "{= spent =} so far"',
                "put the whole value in double quotes",
            )
        if "\t" in text[: len(text) - len(text.lstrip())] or "\\t" in str(error.problem):
            return ("a tab stands here", "spaces for indents", "put two spaces for each tab")
        key, colon, value = text.partition(":")
        if ": " in value and colon:
            return (
                f"{key.strip()} has a second colon in its value",
                "a value that holds a colon in quotes",
                f'write {key.strip()}: "{value.strip()}"',
            )
        if any(quote in text for quote in "\"'") or "quoted" in str(error.context):
            return ("a quote is opened and not closed", "quotes in pairs", 'close it, or write it as "..." whole')
        reason = (error.problem or error.context or "the text cannot be read").strip()
        return (
            f"this is not written as keys and values ({reason})",
            "lines such as key: value, lists with a dash, the same indent for what belongs together",
            "compare the indents of this line and the one before",
        )
