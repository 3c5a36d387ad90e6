"""What the reading needs to know of a story: the figures it names and the pictures it shows."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Callable, Collection, Mapping
from itertools import islice
from unicodedata import normalize
from urllib.parse import unquote

from builder.journal.files import Files
from builder.journal.records.prose import Mark, Picture, Prose
from builder.journal.report import MOST_TOLD, Report
from builder.journal.text import Parts, decode, divide
from builder.words.misread import clipped
from builder.words.place import Place
from builder.words.problem import Problem

# No pattern here may look twice at the same characters, or remember each: a story can be a million characters long.
_MARK = re.compile(r"\{=(?P<name>(?:[^{}=\n]++|=(?!\})|\n(?![ \t]*\n))*+)=\}")
_BEGUN = re.compile(r"\{=")
_PICTURE = re.compile(
    r"!\[(?P<alt>(?:[^\[\]\n]++|\[[^\[\]\n]*+\])*+)\]"
    r"(?:\((?P<inside>(?:[^()\n]++|\([^()\n]*+\))*+)\)|\[(?P<name>[^\[\]\n]*+)\])"
)
_CODE = re.compile(r"`|~~~|^(?: {4}|\t| +\t)", re.MULTILINE)
_COMMENT = re.compile(r"<!--[^<>\\]++(?<=--)>")
_ADDRESS = re.compile(r"^ {0,3}\[(?P<name>[^\[\]\n]+)\]:[ \t]*(?P<path>\S+)", re.MULTILINE)
_TAG = re.compile(r"<img\b[^<>]*>", re.IGNORECASE)
_SRC = re.compile(r"""\bsrc\s*=\s*(?:"(?P<double>[^"]*)"|'(?P<single>[^']*)'|(?P<bare>[^"'\s>]+))""", re.IGNORECASE)
_ALT = re.compile(r"""\balt\s*=\s*(?:"(?P<double>[^"]*)"|'(?P<single>[^']*)')""", re.IGNORECASE)


def read_stories(files: Files, names: Collection[str]) -> tuple[Mapping[str, Prose], tuple[Problem, ...]]:
    """The stories of these episodes' files, and what is wrong in them. Nothing is read of their front matter."""
    report, told = Report(), {}
    for file, raw in files.episodes:
        source = decode(file, raw, report) if file in names else None
        parts = None if source is None else divide(source, report)
        if parts is not None:
            told[file] = read_prose(parts, report)
    return told, report.problems


class Lines:
    """Turns a position in the story into a place in its file."""

    def __init__(self, file: str, prose: str, first: int) -> None:
        self._file, self._first = file, first
        self._starts = [0, *(found.end() for found in re.finditer("\n", prose))]

    def place(self, start: int, end: int) -> Place:
        """The place of the characters from `start` to `end`."""
        line = bisect_right(self._starts, start) - 1
        return Place(
            file=self._file,
            line=line + self._first,
            column=start - self._starts[line] + 1,
            width=max(end - start, 1),
        )


# The place of a stretch of text, from where it begins and ends in it.
Whereabouts = Callable[[int, int], Place]


def read_prose(parts: Parts, report: Report) -> Prose:
    """The story of an episode's file, with every mistake in it reported."""
    lines = Lines(parts.front.file, parts.prose, parts.prose_line)
    check_marks(parts.prose, lines.place, report)
    return Prose(
        text=parts.prose,
        marks=find_marks(parts.prose, lines.place),
        pictures=find_pictures(parts.prose, lines, report),
    )


def find_marks(prose: str, place: Whereabouts) -> tuple[Mark, ...]:
    """Every `{= name =}` in order."""
    return tuple(
        Mark(
            name=" ".join(found["name"].split()),
            place=place(found.start(), found.end()),
            start=found.start(),
            end=found.end(),
        )
        for found in _MARK.finditer(prose)
        if found["name"].strip()
    )


def check_marks(prose: str, place: Whereabouts, report: Report) -> None:
    """Report every `{=` that has no `=}`, or nothing between: it would stand on the page as it is."""
    closed = {found.start(): found["name"].strip() for found in _MARK.finditer(prose)}
    wrong = (found for found in _BEGUN.finditer(prose) if not closed.get(found.start()))
    for begun in islice(wrong, MOST_TOLD):
        report.mistake(
            place(begun.start(), begun.end()),
            "no figure is named between {= and =}"
            if begun.start() in closed
            else "a figure begins with {= here and does not end with =}",
            "{=, the name of a figure and =}",
            "write {= spent to date =}, for instance",
        )


def find_pictures(prose: str, lines: Lines, report: Report) -> tuple[Picture, ...]:
    """Every picture of the journal that the story shows; pictures of other hosts are refused."""
    if "![" not in prose and "<" not in prose:
        return ()
    prose = _without_comments(prose)
    addresses = {found["name"].lower(): found["path"] for found in _ADDRESS.finditer(prose)}
    found = [(one, _path(one, addresses), one["alt"]) for one in _PICTURE.finditer(prose)]
    for tag in _TAG.finditer(prose):
        source, alt = _SRC.search(tag[0]), _ALT.search(tag[0])
        found.append((tag, _value(source), _value(alt)))
    pictures = (
        picture(path, alt, lines.place(match.start(), match.end()), report)
        for match, path, alt in sorted(found, key=lambda one: one[0].start())
        if path
    )
    return tuple(one for one in pictures if one is not None)


def _without_comments(prose: str) -> str:
    """The story with blanks for what its author took out with <!-- and -->, so that every place stays what it is.

    Only where that is certain: in a paragraph of its own, before any other tag and any code. A picture that counts
    though it is not shown does less harm than one that is shown and missing.
    """
    kept, at, code = [], 0, _CODE.search(prose)
    while (begins := prose.find("<", at, code.start() if code else len(prose))) >= 0:
        comment = _COMMENT.match(prose, begins)
        if comment is None or not _begins_paragraph(prose, begins):
            break
        kept += [prose[at:begins], re.sub(r"[^\n]", " ", comment[0])]
        at = comment.end()
    return "".join([*kept, prose[at:]])


def _begins_paragraph(prose: str, at: int) -> bool:
    line = prose.rfind("\n", 0, at) + 1
    before = prose.rfind("\n", 0, max(line - 1, 0)) + 1
    return not prose[line:at].strip(" ") and not prose[before:line].strip()


def _path(match: re.Match[str], addresses: dict[str, str]) -> str:
    """The path of `![alt](path "title")`, `![alt](<path>)` or `![alt][name]`; "" when there is none."""
    if match["inside"] is None:
        return addresses.get((match["name"] or match["alt"]).lower(), "").strip("<>")
    inside: str = match["inside"].strip()
    quote = inside.rfind(inside[-1], 0, -1) if inside.endswith(('"', "'")) else -1
    titled = quote > 0 and inside[quote - 1].isspace()
    return (inside[:quote].rstrip() if titled else inside).strip("<>")


def _value(match: re.Match[str] | None) -> str:
    return "" if match is None else next((one for one in match.groups() if one), "")


LONGEST_PATH = 4096  # as systems have it; taking a longer one apart takes two hundred times its room
_INSIDE = "a picture in the journal's folder, such as ../photos/pegs.png"


def picture(written: str, alt: str, place: Place, report: Report) -> Picture | None:
    """A picture by the path its author wrote, which must lie in the journal's folder."""
    wrong = _no_picture(written)
    if wrong is not None:
        report.mistake(place, *wrong)
        return None
    return Picture(path=_in_journal(written), place=place, alt=alt.strip(), written=written)


def _in_journal(written: str) -> str:
    """The path inside the journal: episodes lie one folder down, so one `../` leads to it.

    Accents are composed (NFC), whatever keyboard or file system wrote them.
    """
    return normalize("NFC", unquote(written)).removeprefix("./").removeprefix("../")


def _no_picture(written: str) -> tuple[str, str, str] | None:
    shown = clipped(written)
    if re.match(r"(?:https?:)?//", written, re.IGNORECASE):
        return (
            f"the picture {shown} is on another host",
            "a picture in photos/, so that no page asks another host for anything",
            "put the file into photos/ and write ../photos/ and its name",
        )
    if re.match(r"data:", written, re.IGNORECASE):
        return "the picture is written into the story itself", _INSIDE, "save it as a file in photos/"
    if re.match(r"/|~|[a-z][a-z0-9+.-]*:", written, re.IGNORECASE):
        return f"the picture {shown} is a place on your own computer", _INSIDE, "copy the file into photos/"
    if len(written) > LONGEST_PATH:
        return f"the picture {shown} has a path of {len(written):,} characters", _INSIDE, "look for a bracket left open"
    path = _in_journal(written)
    if "\\" in path:
        return f"the picture {shown} is written with \\", _INSIDE, f"write {shown.replace(chr(92), '/')}"
    if {"..", ".", ""} & set(path.split("/")) or path.startswith("~") or "\x00" in path:
        return f"the picture {shown} lies outside the journal", _INSIDE, "move the file into photos/"
    return None
