"""An episode: what its front matter says, and its story."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from fractions import Fraction

from builder.journal.records.item import Item, Receipt
from builder.journal.records.prose import Mark, Picture, Prose, folder_name
from builder.words.place import Place
from builder.words.span import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """A figure that the author said aloud. `decimals` is how exactly; `differs` says why it is another.

    `named` is the place of its name, `place` that of the number.
    """

    name: str
    named: Place
    value: Fraction
    decimals: int
    about: bool
    differs: str | None
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A sentence with its place: a snag, a lesson."""

    text: str
    place: Place

    def means(self, text: str) -> bool:
        """Whether the words are the same, whatever the case, the spaces and the last full stop."""
        return _bare(self.text) == _bare(text)

    @property
    def bare(self) -> str:
        """Its words without case, doubled spaces and the last full stop: the same for a snag and its `fixed`."""
        return _bare(self.text)


def _bare(text: str) -> str:
    return " ".join(text.lower().split()).rstrip(".!")


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a phase is, 0 to 1, at the end of this episode. `about` where the author called it a guess."""

    phase: str
    part: Fraction
    place: Place
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """The author's own hours for one phase (or for no phase). `about` where they called it a guess."""

    phase: str | None
    hours: Fraction
    place: Place
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Episode:
    """One dated write-up. `number` and `slug` come from its file name; `items` are in the order of lines.

    `phase_told` and `hours_told` say whether the key stands there at all.
    """

    file: str
    number: int
    slug: str
    title: str
    dates: Span
    place: Place
    phase: str | None = None
    phase_place: Place | None = None
    phase_told: bool = False
    summary: str | None = None
    summary_marks: tuple[Mark, ...] = ()
    hours: tuple[Hours, ...] = ()
    hours_told: bool = False
    people: int | None = None
    weather: str | None = None
    cover: Picture | None = None
    video: str | None = None
    chapters: tuple[tuple[str, str], ...] = ()
    progress: tuple[Progress, ...] = ()
    done: tuple[Told, ...] = ()
    receipts: tuple[Receipt, ...] = ()
    items: tuple[Item, ...] = ()
    stated: tuple[Stated, ...] = ()
    snags: tuple[Told, ...] = ()
    fixed: tuple[Told, ...] = ()
    lessons: tuple[Told, ...] = ()
    prose: Prose = field(default_factory=Prose)

    @property
    def date(self) -> datetime.date:
        """The date it counts by: the last day of the weekend."""
        return self.dates.last

    @property
    def name(self) -> str:
        """Its folder on the site: number and slug."""
        return folder_name(self.number, self.slug)
