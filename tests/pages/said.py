"""The invented journal in `sternwarte`, published in some language: what its pages say, and what had no translation."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import ClassVar

import lxml.etree
import lxml.html
import pytest

from builder import site
from builder.app import show, work_out
from builder.pages.wording import Words
from builder.store.store import Store

JOURNAL = Path(__file__).parent / "sternwarte"

# What changes in the journal to make another of it: a file, what stands there, what stands there instead.
Change = tuple[str, str, str]
EVERYTHING_DONE: tuple[Change, ...] = (
    ("episodes/03-drei-fenster.md", "progress: {rahmen: 30%}", "done: [fundament, rahmen, strom, dach]"),
)
TAX_ON_TOP: tuple[Change, ...] = (
    ("journal.yaml", "prices_include_tax: yes\n", ""),
    ("episodes/02-der-beton.md", "    total: 448.70\n", ""),
    ("episodes/03-drei-fenster.md", "hours: 6\nprogress: {rahmen: 30%}\n", ""),
)
NO_WORK_WEEK: tuple[Change, ...] = (
    ("journal.yaml", "work_week: {saturday: 7, sunday: 4}\n", ""),
    ("episodes/01-wo-ist-unten.md", ", Chance {= chance =},\nsicher {= safe date =}", ""),
)
NO_PLAN: tuple[Change, ...] = (
    ("plan.yaml", "", ""),
    ("owned.yaml", "", ""),
    ("episodes/01-wo-ist-unten.md", "", ""),
    ("episodes/02-der-beton.md", "", ""),
    (
        "episodes/03-drei-fenster.md",
        "",
        "---\ntitle: Nichts\ndate: 2026-05-09\nitems: [{material: Sand, cost: 3}]\n---\n",
    ),
)
DEARER_THAN_NEW: tuple[Change, ...] = (
    *NO_PLAN[:2],
    ("episodes/01-wo-ist-unten.md", "", "---\ntitle: Nichts\ndate: 2026-05-09\n---\n"),
    NO_PLAN[3],
    (
        "episodes/03-drei-fenster.md",
        "",
        """---
title: Teuer
date: 2026-05-10
items:
  - {material: Angel, source: secondhand, cost: 80, replacement_cost: 3}
  - {material: Balken, source: gift, cost: unknown, replacement_cost: 30}
  - {material: Kitt, cost: 5, estimated: yes}
  - {material: Sand, quantity: 3 Sack, cost: 12, returned: 1 Sack}
---
""",
    ),
)
FINISHED_LATE: tuple[Change, ...] = (
    *EVERYTHING_DONE,
    ("journal.yaml", "ready_by: 2026-09-26", "ready_by: 2026-05-01"),
)
NOTHING_PLANNED: tuple[Change, ...] = (
    ("journal.yaml", "ready_by: 2026-09-26\n", ""),
    ("plan.yaml", "", "phases: [{key: bau, name: Bau}]\n"),
    *NO_PLAN[1:-1],
    (
        "episodes/03-drei-fenster.md",
        "",
        "---\ntitle: Fertig\ndate: 2026-05-09\nphase: bau\nitems: [{material: Sand, cost: 3}]\ndone: [bau]\n---\n",
    ),
)
PLANNED_IN_PART: tuple[Change, ...] = (
    (
        "plan.yaml",
        "",
        "phases: [{key: bau, name: Bau, hours: [1, 2, 3], planned: 5}, {key: hof, name: Hof, hours: [1, 2, 3]}]\n",
    ),
    *NO_PLAN[1:-1],
    (
        "episodes/03-drei-fenster.md",
        "",
        "---\ntitle: Sand\ndate: 2026-05-09\nphase: bau\nhours: 9\nitems: [{fee: Amt, cost: 3}]\n---\n{= forecast =}\n",
    ),
)
NO_EPISODE: tuple[Change, ...] = (*NO_PLAN[:-1], ("episodes/03-drei-fenster.md", "", ""))

WORDY = ("alt", "aria-label", "content", "data-label", "label", "placeholder", "title")


@dataclass(frozen=True, slots=True, eq=False)
class Published:
    """A site's files, the sentences that went into it, and those that its language did not have."""

    files: Mapping[str, bytes]
    said: frozenset[str]
    missed: frozenset[str]

    def texts(self) -> frozenset[str]:
        """Every text that its readers and the feed's see or hear, each once."""
        return frozenset(text for name, content in self.files.items() for text in _texts(name, content))


@cache
def published(language: str, changes: tuple[Change, ...] = ()) -> Published:
    """The journal in a language, published."""
    listening = _listening()
    with TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        patch.setattr(site, "Words", listening)
        worked = work_out(_journal(Path(folder), language, changes))
        assert not worked.mistakes, show(worked, folder, worked.mistakes)
        files = site.built_site(worked, Store(None))
    return Published(files, frozenset(listening.asked), frozenset(listening.missed))


def _journal(folder: Path, language: str, changes: tuple[Change, ...]) -> Path:
    journal = folder / "journal"
    shutil.copytree(JOURNAL, journal)
    _change(journal, "journal.yaml", "language: de-DE", f"language: {language}")
    for name, old, new in changes:
        _change(journal, name, old, new)
    return journal


def _change(journal: Path, name: str, old: str, new: str) -> None:
    """One line for another; a whole file where no line is named, which goes where nothing is put instead."""
    path = journal / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    if old or new:
        path.write_text(text.replace(old, new) if old else new, encoding="utf-8")
    else:
        path.unlink()


class _Listener(Words):
    """Words that remember what they were asked for, and what they had not."""

    asked: ClassVar[set[str]]
    missed: ClassVar[set[str]]

    def say(self, text: str, **values: object) -> str:
        self._note(text)
        return super().say(text, **values)

    def count(self, number: int, one: str, many: str, **values: object) -> str:
        self._note(many)
        return super().count(number, one, many, **values)

    def known(self, text: str) -> str:
        self.asked |= {text} & set(self._catalogue)
        return super().known(text)

    def _note(self, text: str) -> None:
        self.asked.add(text)
        self.missed |= {text} - set(self._catalogue)


def _listening() -> type[_Listener]:
    """A class of its own for each site, so that two do not mix."""

    class Listening(_Listener):
        asked: ClassVar[set[str]] = set()
        missed: ClassVar[set[str]] = set()

    return Listening


def _texts(name: str, content: bytes) -> Iterator[str]:
    """All that a person can read or hear of a file, in pieces as they stand in it; data and scripts have none."""
    if name.endswith(".txt"):
        yield from content.decode().splitlines()
    elif name.endswith(".html"):
        yield from _readable(lxml.html.document_fromstring(content))
    elif name == "feed.xml":
        yield from _readable(lxml.etree.fromstring(content))


def _readable(root: lxml.etree._Element) -> Iterator[str]:
    for element in root.iter("{*}*"):
        if element.tag not in ("script", "style"):
            yield from _plain(element.text)
        yield from _plain(element.tail)
        yield from (text for said in _attributes(element.attrib) for text in _plain(said))


def _attributes(attributes: Mapping[str, str]) -> Iterator[str]:
    technical = {"http-equiv", "charset"} & set(attributes) or attributes.get("name") in _FOR_PROGRAMS
    yield from (attributes[name] for name in WORDY if name in attributes and not technical)


_FOR_PROGRAMS = {"viewport", "color-scheme", "referrer"}


def _plain(text: str | None) -> Iterator[str]:
    if text and not text.isspace():
        yield " ".join(text.split(" ")).strip("\n ")
