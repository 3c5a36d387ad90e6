"""Episodes that were read before. Whoever reads a journal again and again reads only what was saved since."""

from __future__ import annotations

from typing import TypeAlias

from builder.journal.records.episode import Episode
from builder.words.money import Currency

# All that an episode is read from: its file's name and bytes, the currency, and the machines that there are.
From: TypeAlias = tuple[str, bytes, Currency, frozenset[str]]


class Known:
    """Episodes in which nothing was found wrong, by what they were read from. Forgets what no run asks for."""

    def __init__(self) -> None:
        self._before: dict[From, Episode] = {}
        self._now: dict[From, Episode] = {}

    def begin(self) -> None:
        """Another run begins."""
        self._before, self._now = self._now, {}

    def get(self, read_from: From) -> Episode | None:
        """The episode read from exactly this in the last run or in this one."""
        episode = self._before.get(read_from)
        if episode is not None:
            self._now[read_from] = episode
        return episode

    def keep(self, read_from: From, episode: Episode) -> None:
        """Keep an episode for the next run."""
        self._now[read_from] = episode
