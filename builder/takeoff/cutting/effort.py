"""How much more may be tried, counted in steps and never by a clock: every run stops at the same spot."""

from __future__ import annotations


class Effort:
    """A number of steps that can be spent. A step is about a microsecond's work, more on a slow machine."""

    def __init__(self, steps: int) -> None:
        self.left = steps

    def spend(self, steps: int) -> None:
        """Take off so many; the last piece of work may overdraw."""
        self.left -= steps

    @property
    def spent(self) -> bool:
        """Whether there is none left."""
        return self.left <= 0
