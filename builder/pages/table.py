"""Tables as records: ready text, column by column. One template places every table of the site."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

ROOM = 11
"""Letters of a figure that has room beside another one on a phone."""
WORD = 22
"""Letters of a word that has room in a column of a table that does not fold."""
NAME = 30
"""Letters of a phase's name that is short enough for a narrow column of many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column's heading, and what part it plays on a narrow screen.

    `role`: `what` heads the row; `lead` is a figure people came for; `side` goes with what; `part` folds
    into a labelled pair, and so does `part main`, a figure people came for that needs a line of its own; `write-in`
    is left blank for a pencil. `sums` sets figures in tabular digits.
    `many` keeps numbers from breaking. `key` is what a script sorts and sifts by.
    """

    label: str
    role: str = "part"
    sums: bool = False
    many: bool = False
    key: str = ""

    @property
    def labelled(self) -> bool:
        """Whether its cells carry its heading when the row folds."""
        return self.role.startswith("part")

    @property
    def folds_away(self) -> bool:
        """Whether an empty cell of it needs no place of its own."""
        return self.role in ("part", "side")

    @property
    def classes(self) -> str:
        """The class attribute of its cells."""
        words = [*(["sum"] if self.sums else []), self.role, *(["many"] if self.many else [])]
        return " ".join(words)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """Text of a cell, where it leads, a mark (`over`, `under`), small words behind it."""

    text: str = ""
    href: str | None = None
    mark: str = ""
    small: str = ""
    drawing: str = ""

    @property
    def empty(self) -> bool:
        """Whether there is nothing in it."""
        return not (self.text or self.small or self.drawing)


EMPTY = Cell()


@lru_cache(maxsize=100_000)
def plain(text: str) -> Cell:
    """A cell that holds text alone. The same for the same text: a large site has half a million."""
    return Cell(text=text)


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The cells of a row. `anchor` is its id on the page; `notes` stand under the first cell."""

    cells: tuple[Cell, ...]
    anchor: str = ""
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A whole table. `caption` says what it shows and in which currency; `foot` rows are totals."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    foot: tuple[Row, ...] = ()
    kind: str = "folds"
    label: str = ""

    def __post_init__(self) -> None:
        """Figures too long to stand side by side on a phone stand one under the other there, each with its name;
        words too long for a column break. Such a table may still be wider than its place, and scrolls.
        """
        if "long" not in self.kind and _too_long(self._texts(lambda one: one.sums or one.role == "lead"), ROOM):
            stacked = (replace(one, role="part main") if one.role == "lead" else one for one in self.columns)
            object.__setattr__(self, "columns", tuple(stacked))
            object.__setattr__(self, "kind", f"{self.kind} long")
        if "wordy" not in self.kind and _too_long(self._texts(lambda one: one.role in ("what", "side")), WORD):
            object.__setattr__(self, "kind", f"{self.kind} wordy")
        if self.kind.endswith((" long", " wordy")):
            object.__setattr__(self, "label", self.label or self.caption)
        if "named" not in self.kind and any(len(text) > NAME for text in self._texts(_is_phase)):
            object.__setattr__(self, "kind", f"{self.kind} named")

    def _texts(self, wanted: Callable[[Column], bool]) -> Iterator[str]:
        columns = [at for at, column in enumerate(self.columns) if wanted(column)]
        return (row.cells[at].text for row in (*self.rows, *self.foot) for at in columns)

    def paired(self, row: Row) -> Iterable[tuple[Column, Cell]]:
        """Each cell of a row with its column."""
        return zip(self.columns, row.cells, strict=True)


def _is_phase(column: Column) -> bool:
    return column.key == "phase"


def _too_long(texts: Iterable[str], room: int) -> bool:
    """Whether a word has more letters than there is room for. A short text has none that has."""
    return any(len(text) > room and max(map(len, text.split(" "))) > room for text in texts)


def cells(*texts: str | Cell) -> tuple[Cell, ...]:
    """Cells from plain texts and cells."""
    return tuple(text if isinstance(text, Cell) else plain(text) for text in texts)


def without_empty(table: Table, keep: Sequence[str] = ("what", "lead", "part main")) -> Table:
    """The table without columns of which every cell is empty: a part that is nowhere says nothing."""
    filled = [
        column.role in keep or not all(row.cells[at].empty for row in (*table.rows, *table.foot))
        for at, column in enumerate(table.columns)
    ]
    return Table(
        caption=table.caption,
        columns=tuple(column for column, there in zip(table.columns, filled, strict=True) if there),
        rows=tuple(_kept(row, filled) for row in table.rows),
        foot=tuple(_kept(row, filled) for row in table.foot),
        kind=table.kind,
        label=table.label,
    )


def _kept(row: Row, filled: Sequence[bool]) -> Row:
    there = tuple(cell for cell, keep in zip(row.cells, filled, strict=True) if keep)
    return Row(cells=there, anchor=row.anchor, notes=row.notes)
