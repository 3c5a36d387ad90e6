"""What the reading needs to know of a story: the figures it names and the pictures it shows."""

from __future__ import annotations

import re

from builder.journal.records.episode import Mark, Picture
from builder.journal.reading import Reading
from builder.words.place import Place

_MARK = re.compile(r"\{=\s*(?P<name>[^{}\n]*?)\s*=\}")
_PICTURE = re.compile(r"!\[(?P<alt>[^\]\n]*)\]\((?P<path><[^>\n]*>|[^)\s]+)(?:\s+\"[^\"\n]*\")?\s*\)")
_TAG = re.compile(r"<img\b[^>]*>", re.IGNORECASE)
_SRC = re.compile(r"\bsrc\s*=\s*[\"']?(?P<path>[^\"'\s>]+)", re.IGNORECASE)
_ALT = re.compile(r"\balt\s*=\s*\"(?P<alt>[^\"]*)\"", re.IGNORECASE)


class Lines:
    """Turns a position in the story into a place in its file."""

    def __init__(self, file: str, prose: str, first: int) -> None:
        self._file, self._prose, self._first = file, prose, first

    def place(self, start: int, end: int) -> Place:
        """The place of the characters from `start` to `end`."""
        line = self._prose.count("\n", 0, start)
        column = start - (self._prose.rfind("\n", 0, start) + 1) + 1
        return Place(file=self._file, line=line + self._first, column=column, width=max(end - start, 1))


def find_marks(prose: str, lines: Lines) -> tuple[Mark, ...]:
    """Every `{= name =}` in order."""
    return tuple(
        Mark(
            name=" ".join(found["name"].split()),
            place=lines.place(found.start(), found.end()),
            start=found.start(),
            end=found.end(),
        )
        for found in _MARK.finditer(prose)
    )


def find_pictures(prose: str, lines: Lines, reading: Reading) -> tuple[Picture, ...]:
    """Every picture of the journal that the story shows; pictures of other hosts are refused."""
    found = [
        (one.start(), one["path"].strip("<>"), one["alt"], one) for one in _PICTURE.finditer(prose)
    ]
    for tag in _TAG.finditer(prose):
        source, alt = _SRC.search(tag[0]), _ALT.search(tag[0])
        if source:
            found.append((tag.start(), source["path"], alt["alt"] if alt else "", tag))
    pictures = (
        picture(path, alt, lines.place(match.start(), match.end()), reading)
        for _, path, alt, match in sorted(found, key=lambda one: one[0])
    )
    return tuple(one for one in pictures if one is not None)


def picture(written: str, alt: str, place: Place, reading: Reading) -> Picture | None:
    """A picture by the path its author wrote, which must lie in the journal's folder."""
    if re.match(r"[a-z][a-z0-9+.-]*:|//", written, re.IGNORECASE):
        reading.mistake(
            place,
            f"the picture {written} is on another host",
            "a picture in photos/, so that no page asks another host for anything",
            "put the file into photos/ and write ../photos/ and its name",
        )
        return None
    path = written.removeprefix("../").removeprefix("./").removeprefix("../")
    parts = path.split("/")
    if path.startswith("/") or "\\" in path or ".." in parts or "" in parts:
        reading.mistake(
            place,
            f"the picture {written} lies outside the journal",
            "a picture in the journal's folder, such as ../photos/pegs.png",
            "move the file into photos/",
        )
        return None
    return Picture(path=path, place=place, alt=alt.strip(), written=written)
