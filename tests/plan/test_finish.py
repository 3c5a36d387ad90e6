"""Will it be ready: dates and chances against closed forms, random play, and laws a forecast must keep."""

from __future__ import annotations

import datetime
import os
import random
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.plan.finish import chance_text, forecast_finish
from builder.plan.outcomes import OUTCOMES
from builder.plan.remaining import PhaseWork
from builder.plan.threepoint import ThreePoint, triangular, triangular_share
from builder.plan.time_records import Finish, NoFinish, PhaseForecast, Why
from builder.plan.worktime import WorkWeek, hours_between, work_week, worked_by
from builder.words.span import Span
from tests.plan.plans import OBSERVATORY, SUNDAY, WEEKEND, day, estimates, phase, plans, weeks

EVERY_DAY = work_week(dict.fromkeys(range(7), Fraction(1)))


def finish(phases: Sequence[PhaseWork], week: WorkWeek = WEEKEND, **told: Fraction) -> Finish:
    """The forecast as of Sunday 1 March 2026, which has to have a date."""
    found = forecast_finish(phases, week=week, as_of=SUNDAY, **told)
    assert isinstance(found, Finish)
    return found


def row(found: Finish, key: str) -> PhaseForecast:
    """The forecast of one phase."""
    return next(one for one in found.phases if one.key == key)


def test_certain_hours_have_a_certain_date() -> None:
    """Twelve hours are the next weekend, and every chance is all or nothing."""
    found = finish([phase("a", 12)])
    assert (found.p50, found.p80) == (day(3, 8), day(3, 8))
    assert [found.chance(day(3, number)) for number in (7, 8)] == [0, 1]


def test_the_chance_of_one_phase_is_the_share_of_its_estimate() -> None:
    """An hour a day: by the nth day the chance is that of needing at most n hours, to a slice."""
    estimate = ThreePoint(low=Fraction(10), likely=Fraction(20), high=Fraction(60))
    found = finish([phase("a", (10, 20, 60))], EVERY_DAY)
    for number in range(70):
        by = SUNDAY + datetime.timedelta(days=number)
        exact = triangular_share(estimate, hours_between(EVERY_DAY, SUNDAY, by))
        assert abs(found.chance(by) - exact) <= Fraction(1, OUTCOMES)


def test_the_hours_left_are_the_means_of_the_estimates() -> None:
    """(a + m + b) / 3, to a second or two."""
    for one in finish(OBSERVATORY).phases:
        estimate = next(told.hours for told in OBSERVATORY if told.key == one.key)
        assert estimate is not None
        assert float(one.hours_left) == pytest.approx(float(triangular(estimate).mean), abs=1e-3)


def played(rng: random.Random) -> int:
    """One game of a chain of phases with waits, an hour at a time and a part of one: the day it is ready."""
    number, free, left_today = 0, 0, 0.0
    for low, likely, high, wait in CHAIN:
        needed = rng.triangular(low, high, likely)
        if number < free:
            number, left_today = free, float(WEEKEND.on(SUNDAY + datetime.timedelta(days=free)))
        while needed > left_today:
            needed -= left_today
            number += 1
            left_today = float(WEEKEND.on(SUNDAY + datetime.timedelta(days=number)))
        left_today -= needed
        free = number + wait if wait else 0
    return max(number, free)


CHAIN = [(8, 12, 20, 0), (16, 21, 40, 7), (20, 30, 50, 3), (10, 14, 24, 0), (20, 28, 50, 9)]


def test_a_chain_with_waits_agrees_with_random_play() -> None:
    """Four thousand games with Python's generator, played day by day without the package's scheduling."""
    phases = [phase(str(place), told[:3], str(place - 1) if place else "", told[3]) for place, told in enumerate(CHAIN)]
    found = finish(phases)
    rng = random.Random(11)
    days = [played(rng) for _ in range(4000)]
    for by, share in found.ready_by:
        number = (by - SUNDAY).days
        assert float(share) == pytest.approx(sum(one <= number for one in days) / len(days), abs=0.035)


def test_half_the_pace_is_half_the_hours_of_the_week() -> None:
    """And two pairs of hands make up for it."""
    half = replace(WEEKEND, hours=tuple(hours / 2 for hours in WEEKEND.hours))
    assert finish(OBSERVATORY, pace=Fraction(1, 2)) == finish(OBSERVATORY, half)
    assert finish(OBSERVATORY, pace=Fraction(1, 2), hands=Fraction(2)) == finish(OBSERVATORY)


def test_a_holiday_moves_the_finish() -> None:
    """Two weekends away in the middle of one chain of work are two weekends later."""
    away = (Span(first=day(3, 9), last=day(3, 22)),)
    assert finish([phase("a", 24)], replace(WEEKEND, away=away)).p50 == day(3, 29)


def test_a_phase_hidden_behind_a_wait_has_slack() -> None:
    """`a` ends on 8 March and cures until the 29th, `b` ends on 4 April. Between them are 31 free hours: `c`
    takes 7 of them and could take 24 more, which are two weekends. The finish hangs on `a`, its wait and `b`.
    """
    found = finish([phase("a", 12, wait=21), phase("b", 12, "a"), phase("c", 7)])
    assert (found.p50, [one.slack for one in found.phases]) == (day(4, 4), [0, 0, 2])
    assert [one.hangs for one in found.phases] == [1, 1, 0]
    assert [one.wait_hangs for one in found.phases] == [1, 0, 0]
    hidden = row(found, "c")
    assert (hidden.start, hidden.finish, hidden.ready) == (day(3, 14), day(3, 14), day(3, 14))
    assert (row(found, "a").finish, row(found, "a").ready, row(found, "b").start) == (
        day(3, 8),
        day(3, 29),
        day(3, 29),
    )


def test_with_one_builder_and_no_waits_the_finish_hangs_on_everything() -> None:
    """Whatever takes longer makes the end later."""
    found = finish([phase("a", (5, 8, 20)), phase("b", (5, 8, 20)), phase("c", (5, 8, 20), "a")])
    assert [one.hangs for one in found.phases] == [1, 1, 1]
    assert [one.slack for one in found.phases] == [0, 0, 0]


def test_of_two_that_end_on_one_day_the_finish_hangs_on_the_later_hour() -> None:
    """The boards come on Saturday morning, after six days; the walls are worked on until noon. The paint goes
    on after all of that and dries for weeks: more hours of the walls, not a longer wait for boards, move it.
    """
    order, walls = phase("order", 0, wait=6), phase("walls", 3)
    found = finish([order, walls, phase("boards", 0, "order"), phase("paint", 0, "walls order boards", 30)])
    assert {one.key: one.hangs for one in found.phases} == {"order": 0, "walls": 1, "boards": 0, "paint": 1}
    assert {one.key: one.wait_hangs for one in found.phases} == {"order": 0, "walls": 0, "boards": 0, "paint": 1}


def test_the_finish_may_hang_on_what_is_done() -> None:
    """The slab cures until 21 April, and everything else is ready long before: two phases may take weeks
    more.
    """
    slab = phase("slab", 10, wait=60, done_on=datetime.date(2026, 2, 20))
    found = finish([slab, phase("fence", (3, 4, 5))])
    assert (found.p50, found.p80) == (day(4, 21), day(4, 21))
    assert (row(found, "fence").hangs, row(found, "fence").slack) == (0, 6)


def test_a_finished_build_has_the_day_it_was_ready() -> None:
    """Known, whenever it is asked, its last wait included."""
    done = [phase("a", 5, wait=3, done_on=day(2, 1)), phase("b", None, "a", done_on=day(2, 14))]
    found = finish(done)
    assert (found.p50, found.p80, found.phases) == (day(2, 14), day(2, 14), ())


def test_a_phase_under_way_counts_what_is_left() -> None:
    """Half of 24 hours done as estimated: the next weekend, not the one after."""
    half = phase("a", 24, progress=Fraction(1, 2), spent=Fraction(12))
    assert finish([half]).p50 == day(3, 8)


def test_a_phases_dates_are_those_of_half_the_outcomes() -> None:
    """An hour a day: `a` likely ends on the day its median of hours is over, and `b` likely begins then."""
    found = finish([phase("a", (10, 20, 60)), phase("b", 5, "a")], EVERY_DAY)
    a, b = found.phases
    estimate = ThreePoint(low=Fraction(10), likely=Fraction(20), high=Fraction(60))
    by_then = triangular_share(estimate, hours_between(EVERY_DAY, SUNDAY, a.finish))
    assert by_then >= Fraction(1, 2) > triangular_share(estimate, Fraction((a.finish - SUNDAY).days - 1))
    assert (a.start, b.start) == (day(3, 2), a.finish)
    assert b.finish == found.p50 == a.finish + datetime.timedelta(days=5)


def test_half_the_chance_is_enough_for_the_likely_date() -> None:
    """Exactly half, exactly four in five: the first date that has it."""
    shares = (Fraction(1, 2), Fraction(4, 5), Fraction(1))
    dates = tuple(zip((day(5, 1), day(6, 1), day(7, 1)), shares, strict=True))
    found = Finish(ready_by=dates, phases=())
    assert (found.p50, found.p80, found.chance(day(4, 30))) == (day(5, 1), day(6, 1), 0)


def test_a_phase_keeps_its_outcomes_when_another_is_done() -> None:
    """So that a forecast moves because of the work, not because of the dice."""
    whole = finish([phase("a", 0), phase("b", (5, 20, 60))])
    after = finish([phase("a", 0, done_on=day(3, 1)), phase("b", (5, 20, 60))])
    assert whole.ready_by == after.ready_by


def test_a_phase_that_used_up_its_estimate_is_named() -> None:
    """Its dates mean "at least": what it still needs is unknown."""
    found = finish([phase("a", (5, 8, 20), spent=Fraction(25)), phase("b", 12, "a")])
    assert (found.spent_up, found.p50) == (("a",), day(3, 8))
    assert finish([phase("a", (5, 8, 20), spent=Fraction(19))]).spent_up == ()


def never(phases: Sequence[PhaseWork], week: WorkWeek = WEEKEND, **told: Fraction) -> NoFinish:
    """Why the forecast has no date."""
    found = forecast_finish(phases, week=week, as_of=SUNDAY, **told)
    assert isinstance(found, NoFinish)
    return found


AWAY_FOR_GOOD = replace(WEEKEND, away=(Span(first=SUNDAY, last=datetime.date.max),))


@pytest.mark.parametrize(
    ("phases", "told", "why", "keys"),
    [
        pytest.param([], {}, Why.NO_PHASES, (), id="no phases"),
        pytest.param([phase("a", 5), phase("b", None), phase("c", None)], {}, Why.NO_HOURS, ("b", "c"), id="no hours"),
        pytest.param([phase("a", 5, "b"), phase("b", 5, "a")], {}, Why.FLAWED, ("a", "b"), id="a circle"),
        pytest.param([phase("a", 5, "q")], {}, Why.FLAWED, ("a",), id="after an unknown phase"),
        pytest.param([phase("a", 5)], {"week": work_week({})}, Why.NO_TIME, (), id="a week of no hours"),
        pytest.param([phase("a", 5)], {"week": AWAY_FOR_GOOD}, Why.NO_TIME, (), id="away for good"),
        pytest.param([phase("a", 5)], {"pace": Fraction(0)}, Why.NO_TIME, (), id="a pace of nothing"),
        pytest.param([phase("a", 10**9)], {}, Why.TOO_FAR, (), id="a cathedral"),
        pytest.param([phase("a", 5, wait=10**12)], {}, Why.TOO_FAR, (), id="an endless wait"),
    ],
)
def test_where_there_is_no_date_it_is_said_why(
    phases: list[PhaseWork], told: dict[str, object], why: Why, keys: tuple[str, ...]
) -> None:
    """Never a made-up date, never a search without end."""
    assert never(phases, **told) == NoFinish(why=why, keys=keys)  # type: ignore[arg-type]


def test_a_done_phase_needs_no_hours() -> None:
    """Only open phases have to be estimated."""
    assert finish([phase("a", None, done_on=day(2, 1)), phase("b", 12)]).p50 == day(3, 8)


def test_waits_alone_need_no_work_week() -> None:
    """Nothing to work on, three days to wait."""
    assert finish([phase("a", 0, wait=3)], work_week({})).p50 == day(3, 4)


def test_a_week_without_hours_has_no_weeks_to_spare() -> None:
    """Nothing to work on, so no more work would fit before the finish, whatever the waits."""
    found = finish([phase("a", 0, wait=3), phase("b", 0, wait=30)], work_week({}))
    assert [one.slack for one in found.phases] == [0, 0]


def test_an_end_of_the_calendar_is_too_far_and_not_an_error() -> None:
    """A forecast as of the last weekend there is."""
    found = forecast_finish([phase("a", 12)], week=WEEKEND, as_of=datetime.date(9999, 12, 30))
    assert isinstance(found, NoFinish)


@pytest.mark.parametrize(
    ("chance", "text"),
    [(Fraction(0), "0.00"), (Fraction(1, 961), "0.01"), (Fraction(5, 6), "0.83"), (Fraction(33, 40), "0.83"),
     (Fraction(960, 961), "0.99"), (Fraction(1), "1.00")],
)  # fmt: skip
def test_only_what_is_so_in_every_outcome_is_certain(chance: Fraction, text: str) -> None:
    """Two decimals, half up, but never rounded to certainty."""
    assert chance_text(chance) == text


def test_a_forecast_of_eight_phases_is_quick() -> None:
    """Measured 20 to 40 ms of processor time; the bound leaves room for a slow and busy machine. Each as of
    another day, so that nothing but what never changes is remembered.
    """
    taken = []
    for number in range(5):
        began = time.process_time()
        forecast_finish(OBSERVATORY, week=WEEKEND, as_of=SUNDAY + datetime.timedelta(days=number))
        taken.append(time.process_time() - began)
    assert min(taken) < 0.15


def test_the_observatory() -> None:
    """Pinned from the first run: the invented demo's plan, to notice when a forecast moves."""
    found = finish(OBSERVATORY)
    assert (found.p50, found.p80) == (day(6, 6), day(6, 13))
    assert 0 < found.chance(day(6, 1)) < Fraction(1, 2)


def test_another_process_finds_the_same_digits() -> None:
    """Another hash seed, the same forecast to the last field."""
    script = (
        "from tests.plan.plans import OBSERVATORY, WEEKEND, SUNDAY\n"
        "from builder.plan.finish import forecast_finish\n"
        "print(forecast_finish(OBSERVATORY, week=WEEKEND, as_of=SUNDAY))"
    )
    told = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.curdir},
            capture_output=True,
            text=True,
            check=True,
        ).stdout.strip()
        for seed in ("1", "2")
    }
    assert told == {str(finish(OBSERVATORY))}


dates = st.integers(0, 400).map(lambda number: SUNDAY + datetime.timedelta(days=number))


def no_later(sooner: Finish, later: Finish) -> bool:
    """Date by date: the chance is nowhere lower; so p50, p80 and every other date are no later."""
    days = {date for date, _ in (*sooner.ready_by, *later.ready_by)}
    return (
        sooner.p50 <= later.p50
        and sooner.p80 <= later.p80
        and all(sooner.chance(date) >= later.chance(date) for date in days)
    )


@settings(max_examples=25)
@given(plan=plans(estimates, most=5), week=weeks(), data=st.data())
def test_more_wait_never_makes_it_earlier(plan: list[PhaseWork], week: WorkWeek, data: st.DataObject) -> None:
    """No date, no chance of any date."""
    place = data.draw(st.integers(0, len(plan) - 1))
    more = data.draw(st.integers(1, 15))
    longer = [replace(one, wait=one.wait + more) if number == place else one for number, one in enumerate(plan)]
    assert no_later(finish(plan, week), finish(longer, week))


@settings(max_examples=25)
@given(
    plan=plans(estimates, most=5),
    week=weeks(),
    weekday=st.integers(0, 6),
    more=st.fractions(0, 8, max_denominator=3),
)
def test_more_hours_a_week_never_make_it_later(
    plan: list[PhaseWork], week: WorkWeek, weekday: int, more: Fraction
) -> None:
    """At the same pace, no date and no chance of any date."""
    longer = replace(week, hours=tuple(hours + more * (number == weekday) for number, hours in enumerate(week.hours)))
    assert no_later(finish(plan, longer), finish(plan, week))


@settings(max_examples=25)
@given(plan=plans(estimates, most=5), week=weeks(), pace=st.fractions("1/4", 2, max_denominator=12))
def test_a_better_pace_never_makes_it_later(plan: list[PhaseWork], week: WorkWeek, pace: Fraction) -> None:
    """A tenth faster."""
    assert no_later(finish(plan, week, pace=pace * Fraction(11, 10)), finish(plan, week, pace=pace))


@settings(max_examples=25)
@given(plan=plans(estimates, most=5), week=weeks(), days=st.lists(dates, min_size=2, max_size=2).map(sorted))
def test_a_later_date_never_has_a_smaller_chance(
    plan: list[PhaseWork], week: WorkWeek, days: list[datetime.date]
) -> None:
    """And the likely date is no later than the safe one, each the first that is good enough."""
    found = finish(plan, week)
    assert found.chance(days[0]) <= found.chance(days[1])
    assert found.p50 <= found.p80
    for date, share in ((found.p50, Fraction(1, 2)), (found.p80, Fraction(4, 5))):
        assert found.chance(date) >= share > found.chance(date - datetime.timedelta(days=1))


@settings(max_examples=25)
@given(plan=plans(estimates, most=5), week=weeks())
def test_every_phase_lies_within_the_build(plan: list[PhaseWork], week: WorkWeek) -> None:
    """Start before finish before ready, none ready after the last outcome; shares are shares."""
    found = finish(plan, week)
    last = found.ready_by[-1][0]
    for one in found.phases:
        assert SUNDAY <= one.start <= one.finish <= one.ready <= last
        assert 0 <= one.hangs <= 1 >= one.wait_hangs >= 0 <= one.slack
    assert found.ready_by[-1][1] == 1


@given(hours=st.integers(1, 60))
def test_one_certain_phase_ends_when_its_hours_are_worked(hours: int) -> None:
    """The forecast and the work week tell the same date."""
    assert finish([phase("a", hours)]).p50 == worked_by(WEEKEND, SUNDAY, Fraction(hours))
