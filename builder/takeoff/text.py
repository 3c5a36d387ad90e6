"""A sentence that can be translated: the English pattern is the key, its values stand beside it."""

from __future__ import annotations

from dataclasses import dataclass

from builder.words.quantity import Quantity

Value = Quantity | int | str


@dataclass(frozen=True, slots=True)
class Text:
    """`pattern` is a plain English sentence with {places}; `values` go into them, by name."""

    pattern: str
    values: tuple[tuple[str, Value], ...] = ()

    def put(self, **values: Value) -> Text:
        """The same sentence with these values."""
        return Text(self.pattern, tuple(values.items()))

    def __str__(self) -> str:
        return self.pattern.format(**{name: str(value) for name, value in self.values})
