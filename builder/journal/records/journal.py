"""The whole journal as read."""

from __future__ import annotations

from dataclasses import dataclass

from builder.journal.records.episode import Episode
from builder.journal.records.plan import Owned, Phase, Plan
from builder.journal.records.settings import Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class Journal:
    """One build. `episodes` are in order of date, then number; `planned` tells whether plan.yaml stands."""

    settings: Settings
    plan: Plan
    owned: Owned
    episodes: tuple[Episode, ...]
    planned: bool

    def phase(self, key: str) -> Phase | None:
        """The plan's phase of a key."""
        return next((phase for phase in self.plan.phases if phase.key == key), None)
