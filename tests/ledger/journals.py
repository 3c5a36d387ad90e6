"""Small journals as text, read and kept as the whole program does it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from textwrap import dedent

from builder.journal.files import OWNED, SETTINGS, Files
from builder.journal.read import read_journal
from builder.journal.records.journal import Journal
from builder.ledger.keep import keep_ledger
from builder.ledger.parts import Parts, together
from builder.ledger.records import CostedReceipt, Ledger, Left, Line
from builder.words.problem import Problem

# What a line moves, in minor units; what is not told here is nothing.
Moved = dict[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A journal, its ledger, and the problems of reading it and of keeping it."""

    journal: Journal
    ledger: Ledger
    problems: tuple[Problem, ...]

    def line(self, ref: str) -> Line:
        """The line of an id; or of episode and line as `2.1`, whether it has an id or not."""
        if "." not in ref:
            return next(line for line in self.ledger.lines if line.ref == ref)
        episode, number = (int(part) for part in ref.split("."))
        return [line for line in self.ledger.lines if line.episode == episode][number - 1]

    def moved(self, ref: str) -> Moved:
        """All that a line moves, without what it does not."""
        return moved(self.line(ref).parts)

    @property
    def whole(self) -> Parts:
        """All lines and hours together."""
        return together([line.parts for line in self.ledger.lines] + [one.parts for one in self.ledger.hours])

    @property
    def receipt(self) -> CostedReceipt:
        """The only receipt."""
        (only,) = self.ledger.receipts
        return only

    @property
    def messages(self) -> list[str]:
        """Every problem as one line."""
        return [problem.one_line() for problem in self.problems]


def moved(parts: Parts) -> Moved:
    """The parts that are not nothing, by name; `hours` is left out."""
    return {name: value for name, value in parts._asdict().items() if value and name != "hours"}


def keep(*episodes: str, settings: str = "", owned: str = "", currency: str = "USD", start: str = "2026-04") -> Kept:
    """Keep the ledger of these front matters, one a day in order from the first of `start`.

    An episode that names its own date keeps it.
    """
    texts = {}
    for number, front in enumerate(episodes, 1):
        dated = front if "date:" in front or "\nto:" in front else f"date: {start}-{number:02d}\n{dedent(front)}"
        texts[f"episodes/{number:02d}-day.md"] = f"title: Day {number}\n{dedent(dated)}"
    return keep_files(texts, settings=settings, owned=owned, currency=currency)


def keep_files(fronts: Mapping[str, str], *, settings: str = "", owned: str = "", currency: str = "USD") -> Kept:
    """Keep the ledger of episodes given by file name, their files found in the order of the mapping."""
    top = f"title: A roof that rolls off\nlanguage: en-US\ncurrency: {currency}\n{dedent(settings)}"
    texts = [(SETTINGS, top.encode())]
    texts += [(OWNED, dedent(owned).encode())] if owned else []
    texts += [(name, f"---\n{dedent(front)}\n---\n".encode()) for name, front in fronts.items()]
    read = read_journal(Files(folder=Path("journal"), texts=tuple(texts), pictures=frozenset()))
    assert read.journal is not None, [problem.one_line() for problem in read.problems]
    kept = keep_ledger(read.journal)
    return Kept(journal=read.journal, ledger=kept.ledger, problems=(*read.problems, *kept.problems))


def sound(*episodes: str, settings: str = "", owned: str = "", currency: str = "USD") -> Kept:
    """As `keep`, for a journal in which nothing is to be found wrong."""
    kept = keep(*episodes, settings=settings, owned=owned, currency=currency)
    assert kept.messages == []
    return kept


def value_of(left: Iterable[Left]) -> int:
    """What lies there is worth, minor units."""
    return sum(one.value for one in left)
