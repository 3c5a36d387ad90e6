"""One builder and several phases: the rule against an exhaustive search, and the laws it must not break."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import islice, permutations

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.plan.onebuilder import Course, Yard, likely_order_first, may_go_on, soonest_course
from builder.plan.orders import MOST_ORDERS, MOST_PHASES, finishing_orders
from builder.plan.remaining import PhaseWork
from builder.plan.worktime import WorkWeek, work_week
from builder.plan.yard import lay_out_yard, open_phases
from tests.plan.plans import SUNDAY, WEEKEND, certain_hours, day, phase, plans, weeks


def laid_out(phases: Sequence[PhaseWork], week: WorkWeek) -> tuple[Yard, list[int]]:
    """The yard of a plan with certain hours, and the steps each phase needs."""
    opened = open_phases(phases)
    yard = lay_out_yard(phases, opened, week, SUNDAY)
    assert yard is not None
    return yard, [one.slices[0] for one in opened]


def course_of(phases: Sequence[PhaseWork], week: WorkWeek = WEEKEND) -> Course:
    """How a plan with certain hours goes from the evening of Sunday 1 March 2026."""
    return soonest_course(*laid_out(phases, week))


def ready(phases: Sequence[PhaseWork], week: WorkWeek = WEEKEND) -> datetime.date:
    """The day on which all is ready."""
    return SUNDAY + datetime.timedelta(days=course_of(phases, week).ready)


def test_hours_run_through_the_weekends() -> None:
    """Seven and five; twelve hours are the first weekend, the thirteenth is the next Saturday."""
    assert ready([phase("a", 12)]) == day(3, 8)
    assert ready([phase("a", 12), phase("b", 1, "a")]) == day(3, 14)


def test_a_wait_of_seven_days_leads_to_the_same_weekday() -> None:
    """Done on Sunday the 8th, on again on Sunday the 15th: five hours, and the rest on Saturday."""
    plan = [phase("a", 12, wait=7), phase("b", 12, "a")]
    assert ready(plan) == day(3, 21)


def test_a_wait_of_no_days_goes_on_in_the_same_hour() -> None:
    """Three hours and four are one Saturday."""
    assert ready([phase("a", 3), phase("b", 4, "a")]) == day(3, 7)
    assert ready([phase("a", 3, wait=Fraction(1, 8)), phase("b", 4, "a")]) == day(3, 8)


def test_the_wait_behind_the_last_phase_counts() -> None:
    """Nobody looks through a roof whose sealant is wet."""
    assert ready([phase("a", 12, wait=9)]) == day(3, 17)


def test_other_phases_fill_a_wait() -> None:
    """Saturday the 14th is free while the concrete cures, and `c` takes just that."""
    alone = [phase("a", 12, wait=7), phase("b", 12, "a")]
    assert ready([*alone, phase("c", 7)]) == ready(alone) == day(3, 21)
    assert ready([*alone, phase("c", 8)]) == day(3, 22)


def test_a_phase_is_left_and_taken_up_again() -> None:
    """`d` needs more than either wait leaves free, and fits into the two."""
    plan = [phase("a", 12, wait=7), phase("b", 12, "a", 7), phase("c", 12, "b"), phase("d", 12)]
    assert ready(plan[:3]) == ready(plan)


def test_a_later_phase_goes_first_if_its_own_wait_is_what_holds_everything() -> None:
    """The trench has to be inspected for three weeks: dug first, although the plan names it second."""
    plan = [phase("wall", 24), phase("trench", 5, wait=21), phase("cable", 5, "trench wall")]
    assert course_of(plan).order == (1, 0, 2)
    assert ready(plan) == day(3, 28)


def test_of_orders_that_are_equally_soon_the_plan_s_own_is_nearest() -> None:
    """Both wait a month and go before `a`; which of the two is first changes no date, so it is the plan's."""
    assert course_of([phase("a", 12), phase("b", 7, wait=30), phase("c", 7, wait=30)]).order == (1, 2, 0)


def test_a_phase_may_end_a_single_step_after_the_gap_it_was_worked_in() -> None:
    """`a` until hour 12, `b` from Sunday the 15th on, hours 19 to 31: `c` has the seven hours between, and one step."""
    yard, steps = laid_out([phase("a", 12, wait=7), phase("b", 12, "a"), phase("c", 7)], WEEKEND)
    course = soonest_course(replace(yard, orders=((0, 1, 2),)), [*steps[:2], steps[2] + 1])
    assert (course.begun[2], course.ended[2]) == (12 * 3600, 31 * 3600 + 1)


def test_a_phase_without_hours_needs_no_builder() -> None:
    """A delivery comes after its wait, whatever is being built."""
    plan = [phase("order", 0, wait=10), phase("walls", 12), phase("boards", 7, "order walls")]
    assert ready([phase("order", 0, wait=10)]) == day(3, 11)
    assert ready(plan) == day(3, 14)


@pytest.mark.parametrize("after", ["boards walls", "walls boards"])
def test_a_phase_waits_for_the_last_day_also_where_no_hour_lies_between(after: str) -> None:
    """The walls are done on Sunday the 8th, the boards come on Wednesday: five days of drying from then, in
    whichever order the two are named.
    """
    plan = [phase("order", 0, wait=10), phase("boards", 0, "order"), phase("walls", 12)]
    assert ready([*plan, phase("paint", 0, after, 5)]) == day(3, 16)


def test_the_wait_behind_a_finished_phase_still_runs() -> None:
    """Poured on 21 February, left for 28 days: on 21 March it goes on."""
    poured = phase("slab", 10, wait=28, done_on=datetime.date(2026, 2, 21))
    assert ready([poured, phase("frame", 7, "slab")]) == day(3, 21)
    assert ready([poured, phase("frame", 7)]) == day(3, 21)
    assert ready([replace(poured, wait=Fraction(3)), phase("frame", 7, "slab")]) == day(3, 7)


def test_nothing_is_worked_before_the_wait_behind_a_finished_phase_is_over() -> None:
    """Left for a week from Sunday to Sunday: not the Saturday before, though five hours would fit into it."""
    poured = phase("slab", 10, wait=7, done_on=SUNDAY)
    course = course_of([poured, phase("frame", 5, "slab")])
    assert (course.begun, course.days) == ([7 * 3600], [7])


def test_a_longer_wait_does_not_make_it_earlier() -> None:
    """The trap of "the first phase in the plan that may go on": behind a wait of 13 days `long` would come
    second and the whole be ready sooner than without that wait, because `short` has the long wait behind it.
    """

    def plan(wait: int) -> list[PhaseWork]:
        return [phase("order", 0, wait=wait), phase("long", 24, "order"), phase("short", 12, wait=60)]

    assert first_that_may(plan(0)) > first_that_may(plan(13))
    assert ready(plan(0)) <= ready(plan(13))


def first_that_may(phases: Sequence[PhaseWork]) -> int:
    """The day on which the simple rule is ready, an hour at a time."""
    left = {one.key: int(one.hours.low) if one.hours else 0 for one in phases}
    ended: dict[str, int] = {}
    for number in range(1, 400):
        today = SUNDAY + datetime.timedelta(days=number)
        for _ in range(int(WEEKEND.on(today)) + 1):
            free = [one for one in phases if one.key not in ended and _free(one, phases, ended, number)]
            for one in free:
                if not left[one.key]:
                    ended[one.key] = number
            busy = next((one for one in free if left[one.key]), None)
            if busy and WEEKEND.on(today):
                left[busy.key] -= 1
    waits = {one.key: int(one.wait) for one in phases}
    return max(number + waits[key] for key, number in ended.items())


def _free(one: PhaseWork, phases: Sequence[PhaseWork], ended: dict[str, int], number: int) -> bool:
    waits = {other.key: int(other.wait) for other in phases}
    return all(key in ended and ended[key] + waits[key] <= number for key in one.after)


def exhaustive(phases: Sequence[PhaseWork], hours_of_day: Sequence[int]) -> int:
    """The first day on which any way of working, an hour at a time, has everything ready. Tries them all.

    A phase of no hours is ended on the day it may go on. Written without any of the package's scheduling.
    """
    keys = [one.key for one in phases]
    waits = [int(one.wait) for one in phases]
    after = [[keys.index(key) for key in one.after] for one in phases]

    def settle(left: tuple[int, ...], ended: tuple[int | None, ...], today: int) -> tuple[int | None, ...]:
        now = list(ended)
        for place in range(len(keys)):  # predecessors come first in the list
            if now[place] is None and left[place] == 0 and all(now[one] is not None for one in after[place]):
                free = max([0, *((now[one] or 0) + waits[one] for one in after[place])])
                now[place] = today if had_hours[place] else free
        return tuple(now)

    def may(place: int, ended: tuple[int | None, ...], today: int) -> bool:
        ends = [(ended[one], waits[one]) for one in after[place]]
        return all(end is not None and end + wait <= today for end, wait in ends)

    @cache
    def best(today: int, hour: int, left: tuple[int, ...], ended: tuple[int | None, ...]) -> int:
        if None not in ended:
            return max((end or 0) + wait for end, wait in zip(ended, waits, strict=True))
        if today >= len(hours_of_day):
            return 10**6
        if hour == hours_of_day[today]:
            return best(today + 1, 0, left, ended)
        choices = [place for place in range(len(keys)) if left[place] and may(place, ended, today)]
        found = [best(today + 1, 0, left, ended)] if not choices else []
        for place in choices:
            less = (*left[:place], left[place] - 1, *left[place + 1 :])
            found.append(best(today, hour + 1, less, settle(less, ended, today)))
        return min(found)

    start = tuple(int(one.hours.low) if one.hours else 0 for one in phases)
    had_hours = [bool(hours) for hours in start]
    return best(1, 0, start, settle(start, (None,) * len(keys), 0))


@settings(max_examples=150)
@given(
    plan=plans(st.integers(0, 4), most=4),
    hours=st.lists(st.integers(0, 3), min_size=7, max_size=7).filter(any),
)
def test_no_way_of_working_is_ready_sooner(plan: list[PhaseWork], hours: list[int]) -> None:
    """Against a search of every way to spend every hour, as long as all orders are tried."""
    week = work_week({weekday: Fraction(hours[weekday]) for weekday in range(7)})
    days = [0, *(hours[(SUNDAY.weekday() + number) % 7] for number in range(1, 150))]
    assert course_of(plan, week).ready == exhaustive(plan, days)


@settings(max_examples=200)
@given(plan=plans(certain_hours, most=7), week=weeks(), data=st.data())
def test_a_longer_wait_never_makes_it_earlier(plan: list[PhaseWork], week: WorkWeek, data: st.DataObject) -> None:
    """Any phase's wait, by any number of days."""
    place = data.draw(st.integers(0, len(plan) - 1))
    longer = [
        replace(one, wait=one.wait + data.draw(st.integers(1, 15))) if number == place else one
        for number, one in enumerate(plan)
    ]
    assert ready(longer, week) >= ready(plan, week)


@settings(max_examples=200)
@given(
    plan=plans(certain_hours, most=7),
    week=weeks(),
    weekday=st.integers(0, 6),
    more=st.fractions(0, 8, max_denominator=3),
)
def test_more_hours_in_the_week_never_make_it_later(
    plan: list[PhaseWork], week: WorkWeek, weekday: int, more: Fraction
) -> None:
    """On any weekday, by any amount."""
    longer = replace(week, hours=tuple(hours + more * (number == weekday) for number, hours in enumerate(week.hours)))
    assert ready(plan, longer) <= ready(plan, week)


@settings(max_examples=150)
@given(plan=plans(certain_hours, most=7), week=weeks(), data=st.data())
def test_more_hours_in_a_phase_never_make_it_earlier(
    plan: list[PhaseWork], week: WorkWeek, data: st.DataObject
) -> None:
    """Step by step, not only by whole hours."""
    yard, steps = laid_out(plan, week)
    place = data.draw(st.integers(0, len(steps) - 1))
    before = soonest_course(yard, steps).ready
    steps[place] += data.draw(st.integers(1, 3600))
    assert soonest_course(yard, steps).ready >= before


@given(plan=plans(certain_hours, most=7), week=weeks(), data=st.data())
def test_less_to_come_after_never_makes_it_later(plan: list[PhaseWork], week: WorkWeek, data: st.DataObject) -> None:
    """Leaving out an `after`, while all orders are tried."""
    if not any(one.after for one in plan) or len(plan) > 4:
        return
    place = data.draw(st.sampled_from([number for number, one in enumerate(plan) if one.after]))
    freer = [replace(one, after=one.after[1:]) if number == place else one for number, one in enumerate(plan)]
    assert ready(freer, week) <= ready(plan, week)


@given(plan=plans(certain_hours, most=7), week=weeks())
def test_what_is_tried_first_changes_no_date(plan: list[PhaseWork], week: WorkWeek) -> None:
    """Putting the likely order first saves time and nothing else."""
    yard, steps = laid_out(plan, week)
    likely = likely_order_first(yard, [one // 2 for one in steps])
    assert sorted(likely.orders) == sorted(yard.orders)
    assert soonest_course(likely, steps).ready == soonest_course(yard, steps).ready


@given(plan=plans(certain_hours, most=7), week=weeks())
def test_no_hour_is_worked_twice_and_none_too_early(plan: list[PhaseWork], week: WorkWeek) -> None:
    """Each phase between when it may go on and when it counts as finished; all of them within the steps that
    pass.
    """
    yard, steps = laid_out(plan, week)
    course = soonest_course(yard, steps)
    for place, needed in enumerate(steps):
        if needed:
            begun, ended = course.begun[place], course.ended[place]
            assert may_go_on(yard, place, course.days, course.steps)[1] <= begun <= ended - needed
            assert ended <= course.steps[place] <= yard.through[course.days[place]]
    assert sum(steps) <= yard.through[course.ready]


@st.composite
def partial_orders(draw: st.DrawFn) -> list[frozenset[int]]:
    """Up to seven phases, each after some of those before it."""
    count = draw(st.integers(0, 6))
    return [frozenset(draw(st.sets(st.integers(0, place - 1))) if place else ()) for place in range(count)]


@given(after=partial_orders())
def test_the_orders_are_those_that_keep_to_after(after: list[frozenset[int]]) -> None:
    """All of them, against networkx, the plan's own first; or no more than the limit, all of them allowed."""
    graph = networkx.DiGraph()
    graph.add_nodes_from(range(len(after)))
    graph.add_edges_from((one, place) for place, befores in enumerate(after) for one in befores)
    every = {tuple(order) for order in islice(networkx.all_topological_sorts(graph), 1000)} if after else {()}
    orders = finishing_orders(after)
    assert orders[0] == tuple(range(len(after)))
    assert len(set(orders)) == len(orders) <= MOST_ORDERS
    assert set(orders) <= every
    if len(every) <= MOST_ORDERS:
        assert set(orders) == every


def test_with_too_many_orders_each_phase_may_still_come_forward() -> None:
    """Eight phases that wait for nothing have 40,320 orders; 29 of them are the plan's with one moved."""
    orders = finishing_orders([frozenset()] * 8)
    moved = {
        order
        for to in range(8)
        for place in range(to, 8)
        for order in [(*range(to), place, *range(to, place), *range(place + 1, 8))]
    }
    assert set(orders) == moved
    assert len(orders) == 29


def test_near_orders_are_tried_before_far_ones() -> None:
    """The plan's own, then each two neighbours the other way round, from the front on."""
    orders = finishing_orders([frozenset()] * 6)
    assert orders[:6] == (
        (0, 1, 2, 3, 4, 5), (1, 0, 2, 3, 4, 5), (0, 2, 1, 3, 4, 5), (0, 1, 3, 2, 4, 5), (0, 1, 2, 4, 3, 5),
        (0, 1, 2, 3, 5, 4),
    )  # fmt: skip


def test_sixty_orders_are_all_tried_and_more_are_not() -> None:
    """Five phases of which one comes after another have 120 / 2 orders; of twelve free ones 67 would be near."""
    assert set(finishing_orders([frozenset(), frozenset({0}), *[frozenset[int]()] * 3])) == {
        order for order in permutations(range(5)) if order.index(0) < order.index(1)
    }
    assert len(finishing_orders([frozenset()] * 12)) == 60


@pytest.mark.parametrize(("count", "tried"), [(40, 60), (41, 1)])
def test_of_more_than_forty_open_phases_the_plan_s_order_is_kept(count: int, tried: int) -> None:
    """The limits themselves, so that no forecast changes with them unseen."""
    assert len(finishing_orders([frozenset()] * count)) == tried


def test_a_phase_brings_forward_what_it_needs() -> None:
    """`7` needs `6`: where it comes first, `6` comes before it."""
    after = [*[frozenset[int]()] * 7, frozenset({6})]
    assert (6, 7, 0, 1, 2, 3, 4, 5) in finishing_orders(after)


def test_a_very_long_plan_keeps_its_own_order() -> None:
    """Nothing is tried that would take all night."""
    assert finishing_orders([frozenset()] * (MOST_PHASES + 1)) == (tuple(range(MOST_PHASES + 1)),)


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_where_nothing_waits_every_order_is_as_good(order: tuple[int, ...]) -> None:
    """One builder has to work all the hours there are."""
    plan = [phase("a", 5), phase("b", 9), phase("c", 11)]
    assert ready([plan[place] for place in order]) == day(3, 21)
