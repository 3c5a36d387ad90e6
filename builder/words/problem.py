"""A mistake or a warning, told in full: where, what was found, what was expected, what to do."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from builder.words.place import Place


class Weight(Enum):
    """Whether a problem stops the site from being published."""

    MISTAKE = "mistake"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing wrong at one place. Nothing is published while a mistake stands; warnings are only told.

    `found` is a whole clause ("cost is 1,250, with a thousands comma"), `expected` names what would do
    ("an amount such as 1250 or 1250.00"), `fix` is what to write instead, or "".
    """

    place: Place
    found: str
    expected: str
    fix: str = ""
    weight: Weight = Weight.MISTAKE

    @property
    def is_mistake(self) -> bool:
        """Whether it stops publishing."""
        return self.weight is Weight.MISTAKE

    def one_line(self) -> str:
        """`file:line:column: mistake: ...`, the form that editors and machines read."""
        parts = [self.found, f"expected {self.expected}" if self.expected else "", self.fix]
        return f"{self.place}: {self.weight.value}: " + "; ".join(part for part in parts if part)
