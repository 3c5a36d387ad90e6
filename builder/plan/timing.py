"""The journal's plan of time: phases as work, the pace learnt from episodes, and the finish that follows."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.episode import Episode
from builder.journal.records.journal import Journal
from builder.journal.records.plan import Phase
from builder.plan.finish import all_ready, chance_text, forecast_finish
from builder.plan.network import Step, network_faults
from builder.plan.pace import Worked, learn_pace
from builder.plan.remaining import PhaseWork
from builder.plan.threepoint import ThreePoint
from builder.plan.time_records import Finish, Flaw, NoFinish, Pace
from builder.plan.worktime import WorkWeek
from builder.words.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """When the build may be ready, as of a day. `finish` says why where there is no date.

    `chance` is the share of outcomes ready by `ready_by`, None where there is no promise or no finish.
    """

    as_of: datetime.date
    ready_by: datetime.date | None
    pace: Pace
    finish: Finish | NoFinish
    chance: Fraction | None

    @property
    def chance_told(self) -> str | None:
        """The chance with two decimals."""
        return None if self.chance is None else chance_text(self.chance)


def time_plan(journal: Journal, as_of: datetime.date | None, upto: int | None = None) -> Timing | None:
    """The timing as of a day (by default that of the last episode), from the episodes until then.

    None when the plan gives no hours or the journal no work week. `upto` takes only the first episodes.
    """
    week = journal.settings.work_week
    phases = journal.plan.phases
    episodes = journal.episodes[:upto] if upto is not None else journal.episodes
    day = as_of or _last_day(journal, episodes)
    if week is None or day is None or not any(phase.hours for phase in phases):
        return None
    told = tuple(episode for episode in episodes if episode.dates.first <= day)
    calendar = WorkWeek(hours=week, away=journal.settings.away)
    begun = journal.settings.begun or (told[0].dates.first if told else day)
    pace = learn_pace(calendar, min(begun, day), day, [_worked(episode) for episode in told])
    finish = forecast_finish(
        [_work(phase, told) for phase in phases],
        week=calendar,
        as_of=day,
        pace=pace.rate or Fraction(1),
    )
    ready_by = journal.settings.ready_by
    return Timing(as_of=day, ready_by=ready_by, pace=pace, finish=finish, chance=_chance(finish, ready_by))


def finished_on(journal: Journal, timing: Timing | None) -> datetime.date | None:
    """The day on which every phase of the plan was done and the last wait over, known on the day of the timing; None
    while one is open. The wait may end after that day.
    """
    if timing is not None:
        finish = timing.finish
        return finish.p50 if isinstance(finish, Finish) and not finish.phases else None
    work = [_work(phase, journal.episodes) for phase in journal.plan.phases]
    return all_ready(work) if work and all(one.done_on is not None for one in work) else None


def _last_day(journal: Journal, episodes: tuple[Episode, ...]) -> datetime.date | None:
    return episodes[-1].date if episodes else journal.settings.begun


def _worked(episode: Episode) -> Worked:
    hours = sum((told.hours for told in episode.hours), Fraction(0)) if episode.hours_told else None
    return Worked(days=episode.dates, hours=hours)


def _work(phase: Phase, episodes: tuple[Episode, ...]) -> PhaseWork:
    done = next((one.date for one in episodes if any(told.text == phase.key for told in one.done)), None)
    parts = [one.part for episode in episodes for one in episode.progress if one.phase == phase.key]
    return PhaseWork(
        key=phase.key,
        after=phase.after,
        hours=ThreePoint(low=phase.hours[0], likely=phase.hours[1], high=phase.hours[2]) if phase.hours else None,
        wait=phase.wait,
        progress=parts[-1] if parts else None,
        spent=_spent(phase.key, episodes),
        done_on=done,
    )


def _spent(phase: str, episodes: tuple[Episode, ...]) -> Fraction | None:
    """Hours worked on a phase; None where an episode of it does not say how many."""
    silent = any(episode.phase == phase and not episode.hours_told for episode in episodes)
    hours = (told.hours for episode in episodes for told in episode.hours if (told.phase or episode.phase) == phase)
    return None if silent else sum(hours, Fraction(0))


def _chance(finish: Finish | NoFinish, day: datetime.date | None) -> Fraction | None:
    if day is None or isinstance(finish, NoFinish):
        return None
    return finish.chance(day)


def check_order(journal: Journal) -> tuple[Problem, ...]:
    """Phases that wait for each other in a circle, named in order."""
    steps = [Step(key=phase.key, after=phase.after) for phase in journal.plan.phases]
    circles = (fault for fault in network_faults(steps) if fault.flaw is Flaw.CIRCLE)
    places = {phase.key: phase for phase in journal.plan.phases}
    return tuple(
        Problem(
            place=(*places[fault.keys[0]].after_places, places[fault.keys[0]].place)[0],
            found=f"phases wait for each other in a circle: {' after '.join((*fault.keys, fault.keys[0]))}",
            expected="phases of which one can begin",
            fix="take one of them out of an after:",
        )
        for fault in circles
    )
