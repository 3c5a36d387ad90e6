"""The parts of money that every line, episode, phase and the project divide into.

All are whole minor units of the journal's currency. The law that holds for each of them:
paid + brought in = job cost + in stock + reusable + elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple


class Parts(NamedTuple):
    """Movements on a date; for a sum of lines, the sum of them.

    `saved` is replacement cost - job cost - reusable over what is valued; `deposits_out` stands outside
    `paid`; `unpriced` and `unvalued` count lines; `hours` are unpaid hours, the author's and helpers'.
    """

    paid: int = 0
    brought_in: int = 0
    elsewhere: int = 0
    job_cost: int = 0
    in_stock: int = 0
    reusable: int = 0
    replacement_cost: int = 0
    saved: int = 0
    estimated: int = 0
    rework: int = 0
    own_work: int = 0
    travel_worth: int = 0
    deposits_out: int = 0
    unpriced: int = 0
    unvalued: int = 0
    hours: Fraction = Fraction(0)

    @property
    def spent(self) -> int:
        """paid + brought in - elsewhere: what people mean by "what it cost me"."""
        return self.paid + self.brought_in - self.elsewhere

    @property
    def unbalanced(self) -> int:
        """paid + brought in - (job cost + in stock + reusable + elsewhere): nothing, by law."""
        return self.paid + self.brought_in - self.job_cost - self.in_stock - self.reusable - self.elsewhere

    def plus(self, other: Parts) -> Parts:
        """Both together."""
        return together((self, other))


NOTHING = Parts()


def together(parts: Iterable[Parts]) -> Parts:
    """The sum of any number of them."""
    columns = list(zip(*parts, strict=True))
    return Parts(*(sum(column) for column in columns)) if columns else NOTHING
