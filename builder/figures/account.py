"""The account: all results of the run side by side, with the sums by episode and phase."""

from __future__ import annotations

import datetime
from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass
from typing import TypeVar

from builder.journal.records.episode import Episode
from builder.journal.records.item import Item, Kind
from builder.journal.records.journal import Journal
from builder.journal.records.plan import OwnedEquipment
from builder.ledger.parts import NOTHING, Parts, together
from builder.ledger.records import Ledger, Line
from builder.plan.budget_records import Outlook, PhaseOutlook
from builder.plan.timing import Timing
from builder.plan.value import Earned
from builder.takeoff.records import Takeoff

K = TypeVar("K", bound=Hashable)


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """Where the forecast stood after an episode: cost in minor units, and the timing; None when unknown."""

    episode: int
    forecast: int | None
    timing: Timing | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """Parts added up every way the pages need. Keys: episode numbers; phase keys (None: no phase)."""

    whole: Parts
    by_episode: Mapping[int, Parts]
    running: Mapping[int, Parts]
    by_phase: Mapping[str | None, Parts]
    before: Mapping[int, Parts]


@dataclass(frozen=True, slots=True, kw_only=True)
class Index:
    """Lines and episodes by the names they are asked for."""

    by_ref: Mapping[str, Line]
    by_episode: Mapping[int, tuple[Line, ...]]
    by_phase: Mapping[str | None, tuple[Line, ...]]
    episodes: Mapping[int, Episode]
    machines: Mapping[str, OwnedEquipment]


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """All results. `phases` are in the plan's order, then those outside it, then the row "no phase".

    `finished` is the day on which the whole plan was done and its last wait over; None while a phase is open. `asked`
    is the day that was asked for, if any.
    """

    journal: Journal
    ledger: Ledger
    sums: Sums
    index: Index
    takeoffs: tuple[Takeoff, ...]
    outlook: Outlook
    earned: Earned
    timing: Timing | None
    finished: datetime.date | None
    asked: datetime.date | None

    @property
    def as_of(self) -> datetime.date | None:
        """The day of all forecasts: the one that was asked for, else that of the last episode; None without any."""
        if self.timing is not None:
            return self.timing.as_of
        return self.asked or (self.journal.episodes[-1].date if self.journal.episodes else None)

    @property
    def is_over(self) -> bool:
        """Whether it was finished on that day: not while the last wait goes on."""
        return self.finished is not None and (self.as_of is None or self.finished <= self.as_of)

    @property
    def phases(self) -> tuple[PhaseOutlook, ...]:
        """Every phase that has a plan or a cost."""
        return self.outlook.phases

    def phase_name(self, key: str | None) -> str | None:
        """What pages call a phase; None for the row "no phase"."""
        phase = self.journal.phase(key) if key is not None else None
        return phase.name if phase else (key.capitalize() if key else None)

    def lines_of_episode(self, number: int) -> tuple[Line, ...]:
        """The lines of an episode, in order."""
        return self.index.by_episode.get(number, ())

    def lines_of_phase(self, key: str | None) -> tuple[Line, ...]:
        """The lines of a phase (None: of no phase), in order of date."""
        return self.index.by_phase.get(key, ())

    def line(self, ref: str) -> Line | None:
        """The line of a ref."""
        return self.index.by_ref.get(ref)

    def episode(self, number: int) -> Episode:
        """The episode of a number; KeyError if there is none."""
        return self.index.episodes[number]

    def called(self, item: Item) -> str:
        """What a line is called: an own machine by its name in owned.yaml."""
        machine = self.index.machines.get(item.what) if item.kind is Kind.EQUIPMENT else None
        return machine.name if machine else item.what

    def takeoff(self, name: str) -> Takeoff | None:
        """The take-off of a name."""
        return next((one for one in self.takeoffs if one.name == name), None)


def add_up(journal: Journal, ledger: Ledger) -> Sums:
    """Every sum of a ledger."""
    lines, hours = ledger.lines, ledger.hours
    by_episode = dict.fromkeys((episode.number for episode in journal.episodes), NOTHING)
    moved = [(line.episode, line.parts) for line in lines] + [(one.episode, one.parts) for one in hours]
    by_episode.update(_grouped(moved))
    in_phase = [(line.phase, line.parts) for line in lines] + [(one.phase, one.parts) for one in hours]
    running: dict[int, Parts] = {}
    before: dict[int, Parts] = {}
    so_far = NOTHING
    for episode in journal.episodes:
        before[episode.number] = so_far
        so_far = so_far.plus(by_episode[episode.number])
        running[episode.number] = so_far
    return Sums(
        whole=so_far,
        by_episode=by_episode,
        running=running,
        before=before,
        by_phase=_grouped(in_phase),
    )


def index_of(journal: Journal, ledger: Ledger) -> Index:
    """The index of a ledger."""
    return Index(
        by_ref={line.ref: line for line in ledger.lines},
        by_episode=_lists((line.episode, line) for line in ledger.lines),
        by_phase=_lists((line.phase, line) for line in ledger.lines),
        episodes={episode.number: episode for episode in journal.episodes},
        machines={machine.key: machine for machine in journal.owned.equipment},
    )


def _lists(pairs: Iterable[tuple[K, Line]]) -> dict[K, tuple[Line, ...]]:
    groups: dict[K, list[Line]] = {}
    for key, line in pairs:
        groups.setdefault(key, []).append(line)
    return {key: tuple(lines) for key, lines in groups.items()}


def _grouped(pairs: Iterable[tuple[K, Parts]]) -> dict[K, Parts]:
    groups: dict[K, list[Parts]] = {}
    for key, parts in pairs:
        groups.setdefault(key, []).append(parts)
    return {key: together(parts) for key, parts in groups.items()}
