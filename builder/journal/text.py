"""Bytes to text, and an episode's text to front matter and prose. The only place that decodes the journal."""

from __future__ import annotations

import re
from dataclasses import dataclass

from builder.journal.report import Report
from builder.words.place import Place

LARGEST = 1_000_000
MOST_KEYS = 200_000  # of a file of keys, or of front matter: some four thousand lines
_BOM = "\ufeff"
# YAML ends a line at these and no editor does; the numbers of all later lines would be wrong.
_LINE_ENDS_NOBODY_SEES = str.maketrans({"\x85": " ", "\u2028": " ", "\u2029": " "})
_UNPRINTABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufffe\uffff]")
_LINE_ENDS = re.compile("[\t\n\r\x85\u2028\u2029]+")
_DASHES = re.compile("[-–—−_=*~ ]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A file of the journal as text, its lines without their ends; `file` is its path in the journal."""

    file: str
    text: str

    @property
    def lines(self) -> list[str]:
        """Its lines, for showing where a mistake stands."""
        return self.text.split("\n")


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """An episode's front matter and prose, each padded so that line numbers are those of the file.

    `front` starts at line 2 (after the `---`), `prose` at line `prose_line`.
    """

    front: Source
    prose: str
    prose_line: int


def decode(file: str, raw: bytes, report: Report, most: int = LARGEST) -> Source | None:
    """The text of a file: UTF-8 with or without a byte order mark, any line ends. None if it is not that."""
    if len(raw) > most:
        report.mistake(Place(file=file), *_too_large("the file", most))
        return None
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\x00" in raw[:4]:
        report.mistake(
            Place(file=file),
            "the file is saved as UTF-16",
            "a file saved as UTF-8",
            "save it again with the encoding UTF-8 (in most editors under Save as)",
        )
        return None
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        report.mistake(
            _place_of_byte(file, raw, error.start),
            f"the byte 0x{raw[error.start]:02x} is not UTF-8 text",
            "a file saved as UTF-8",
            "save it again with the encoding UTF-8 (in most editors under Save as)",
        )
        return None
    source = Source(file=file, text=_one_line_end(text.removeprefix(_BOM)))
    return source if printable(source, report) else None


def _one_line_end(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n").translate(_LINE_ENDS_NOBODY_SEES)


def printable(source: Source, report: Report, first_line: int = 1) -> bool:
    """Whether a text holds only what pages, feeds and YAML may hold; reports the first other character."""
    match = _UNPRINTABLE.search(source.text)
    if match is not None:
        report.mistake(
            place_at(source.file, source.text, match.start(), first_line),
            f"there is a character that cannot be printed (U+{ord(match[0]):04X})",
            "letters, digits and signs",
            "delete it; it may be invisible, so delete from the letter before to the letter after",
        )
    return match is None


def one_line(text: str) -> tuple[str, str]:
    """A value as text of one line, and the first character in it that is none, or "".

    A value in quotes can write any character as an escape, and one of several lines has line ends.
    """
    if text.isprintable():
        return text, ""
    text = _LINE_ENDS.sub(" ", text)
    match = _UNPRINTABLE.search(text)
    return (text, "") if match is None else (_UNPRINTABLE.sub("", text), match[0])


def _place_of_byte(file: str, raw: bytes, position: int) -> Place:
    before = _one_line_end(raw[:position].decode("utf-8", "replace").removeprefix(_BOM))
    return place_at(file, before, len(before))


def place_at(file: str, text: str, position: int, first_line: int = 1) -> Place:
    """The place of a character of a text that begins on `first_line` of its file."""
    start = text.rfind("\n", 0, position) + 1
    line = text.count("\n", 0, position) + first_line
    return Place(file=file, line=line, column=position - start + 1)


def shown_lines(raw: bytes) -> list[str]:
    """The lines of a file of the journal, numbered as the places of mistakes number them, for showing.

    Whatever the bytes are: what is not UTF-8 becomes a replacement character.
    """
    return _one_line_end(raw.decode("utf-8", "replace").removeprefix(_BOM)).split("\n")


def divide(source: Source, report: Report) -> Parts | None:
    """Front matter and prose of an episode; None, with a mistake, when there is no front matter."""
    lines = source.lines
    if lines[0].rstrip() != "---":
        report.mistake(Place(file=source.file), *_no_beginning(lines))
        return None
    end = next((number for number, line in enumerate(lines[1:], 1) if line.rstrip() == "---"), None)
    if end is None:
        report.mistake(
            Place(file=source.file),
            "the front matter that begins here has no end",
            "a second line of --- between the front matter and the story",
            "put a line of --- before the first line of the story",
        )
        return None
    front = "\n".join(lines[1:end]) + "\n"
    if len(front) > MOST_KEYS:
        report.mistake(Place(file=source.file, line=2), *_too_large("the front matter", MOST_KEYS))
        return None
    return Parts(
        front=Source(file=source.file, text=front),
        prose="\n".join(lines[end + 1 :]),
        prose_line=end + 2,
    )


def _too_large(what: str, most: int) -> tuple[str, str, str]:
    return (
        f"{what} has more than {most:,} bytes",
        "what a person writes",
        "split it, and keep pictures in photos/; look for something that was pasted by mistake",
    )


def _no_beginning(lines: list[str]) -> tuple[str, str, str]:
    expected = "front matter between two lines of ---, then the story"
    first = next((line.strip() for line in lines if line.strip()), "")
    if first == "---":
        return "there is something before the first ---", expected, "begin the file with the line of ---"
    if first and _DASHES.fullmatch(first):
        return f"the episode begins with {first[:20]}, which is not ---", expected, "write three hyphens: ---"
    return (
        "the episode does not begin with ---",
        expected,
        "begin the file with a line of ---, then title: and date:, then a line of ---",
    )
