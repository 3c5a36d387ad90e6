"""Bytes to text, and an episode's text to front matter and prose. The only place that decodes the journal."""

from __future__ import annotations

from dataclasses import dataclass

from builder.journal.report import Report
from builder.words.place import Place

LARGEST = 1_000_000
_BOM = "\ufeff"


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


def decode(file: str, raw: bytes, report: Report) -> Source | None:
    """The text of a file: UTF-8 with or without a byte order mark, any line ends. None when it is not that."""
    if len(raw) > LARGEST:
        report.mistake(
            Place(file=file),
            f"the file has {len(raw):,} bytes",
            f"at most {LARGEST:,}, which is some hundred thousand words",
            "split it, and keep pictures in photos/",
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
    text = text.removeprefix(_BOM).replace("\r\n", "\n").replace("\r", "\n")
    return Source(file=file, text=text)


def _place_of_byte(file: str, raw: bytes, position: int) -> Place:
    before = raw[:position]
    start = before.rfind(b"\n") + 1
    return Place(file=file, line=before.count(b"\n") + 1, column=position - start + 1)


def divide(source: Source, report: Report) -> Parts | None:
    """Front matter and prose of an episode; None, with a mistake, when there is no front matter."""
    lines = source.lines
    if lines[0].rstrip() != "---":
        report.mistake(
            Place(file=source.file),
            "the episode does not begin with ---",
            "front matter between two lines of ---, then the story",
            "begin the file with a line of ---, then title: and date:, then a line of ---",
        )
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
    return Parts(
        front=Source(file=source.file, text="\n".join(lines[1:end]) + "\n"),
        prose="\n".join(lines[end + 1 :]),
        prose_line=end + 2,
    )
