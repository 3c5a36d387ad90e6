"""The values of one take-off's inputs, typed, each with the place it was written at."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

from builder.journal.records.takeoff_entry import SizedFind
from builder.takeoff.expression import Expression
from builder.takeoff.text import Text
from builder.words.place import Place
from builder.words.quantity import Quantity

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Lot:
    """`count` of the same length."""

    length: Quantity
    count: int


@dataclass(frozen=True, slots=True)
class Size:
    """A width and a height, and where they stand."""

    width: Quantity
    height: Quantity
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Values:
    """Inputs by key, given and by default. `at` is where the whole stands; `places` are those of the keys written,
    `sources` say where the defaults come from.

    Asking for a key with the wrong type, or for one that is not there, is a mistake in the method: TypeError.
    """

    at: Place
    values: dict[str, object]
    places: dict[str, Place]
    sources: dict[str, Text]
    finds: tuple[SizedFind, ...] = ()

    def has(self, key: str) -> bool:
        """Whether there is a value, given or by default."""
        return key in self.values

    def given(self, key: str) -> bool:
        """Whether the author wrote it."""
        return key in self.places

    def place(self, key: str) -> Place:
        """Where it was written; the whole take-off if it was not."""
        return self.places.get(key, self.at)

    def quantity(self, key: str) -> Quantity:
        return self._typed(key, Quantity)

    def expression(self, key: str) -> Expression:
        """A slope."""
        value = self.values.get(key)
        if not isinstance(value, Expression):
            raise TypeError(f"{key} is no formula")
        return value

    def yes(self, key: str) -> bool:
        return self._typed(key, bool)

    def word(self, key: str) -> str | None:
        """The word that stands instead of a value, or None."""
        value = self.values.get(key)
        return value if isinstance(value, str) else None

    def lots(self, key: str) -> tuple[Lot, ...]:
        """A list of lengths; () if there is none."""
        return self._listed(key, Lot)

    def sizes(self, key: str) -> tuple[Size, ...]:
        """A list of sizes; () if there is none."""
        return self._listed(key, Size)

    def rows(self, key: str) -> tuple[Values, ...]:
        """A list of rows; () if there is none."""
        return self._listed(key, Values)

    def _typed(self, key: str, kind: type[T]) -> T:
        value = self.values.get(key)
        if not isinstance(value, kind):
            raise TypeError(f"{key} is no {kind.__name__}")
        return value

    def _listed(self, key: str, kind: type[T]) -> tuple[T, ...]:
        value = self.values.get(key, ())
        if not isinstance(value, tuple):
            raise TypeError(f"{key} is no list")
        return tuple(each for each in value if isinstance(each, kind))
