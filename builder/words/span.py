"""A stretch of days."""

from __future__ import annotations

import datetime
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """From `first` to `last`, both days included; one day has both the same."""

    first: datetime.date
    last: datetime.date

    def __contains__(self, day: object) -> bool:
        return isinstance(day, datetime.date) and self.first <= day <= self.last
