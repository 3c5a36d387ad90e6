"""The journal's own timing: its work week, its episodes and its promise. April 4, 2026 is a Saturday."""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest

from builder.plan.time_records import Finish, NoFinish, Why
from builder.plan.timing import Timing, check_order, finished_on, time_plan
from tests.plan.planned import read_plan

WEEKEND = "work_week: {saturday: 7, sunday: 5}\n"
TWELVE = "phases:\n  - {key: roof, hours: [12, 12, 12]}\n"


def day(month: int, number: int) -> datetime.date:
    """A day of 2026."""
    return datetime.date(2026, month, number)


def timing(
    plan: str, *fronts: str, settings: str = "", as_of: datetime.date | None = None, upto: int | None = None
) -> Timing:
    """The timing of a journal, which there has to be."""
    found = time_plan(read_plan(plan, *fronts, settings=WEEKEND + settings), as_of, upto)
    assert found is not None
    return found


def likely(found: Timing) -> datetime.date:
    """The likely date, which there has to be."""
    assert isinstance(found.finish, Finish)
    return found.finish.p50


def front(number: int, more: str = "") -> str:
    """An episode of a day of April, in the phase `roof`."""
    return f"date: 2026-04-{number:02d}\nphase: roof\n{more}"


class TestWhetherThereIsAny:
    @pytest.mark.parametrize(
        ("plan", "settings"),
        [
            ("phases:\n  - {key: roof, planned: 5}\n", f"{WEEKEND}begun: 2026-04-05\n"),
            (TWELVE, "begun: 2026-04-05\n"),
            (TWELVE, WEEKEND),
        ],
    )
    def test_there_is_none_without_hours_a_work_week_or_a_day(self, plan: str, settings: str) -> None:
        """Neither a guess nor a mistake."""
        assert time_plan(read_plan(plan, settings=settings), None) is None

    def test_a_plan_of_which_one_phase_has_no_hours_says_why_it_has_no_finish(self) -> None:
        """That phase is to blame, and there is no chance."""
        found = timing(TWELVE + "  - {key: paint}\n", settings="begun: 2026-04-05\nready_by: 2026-12-01\n")
        assert found.finish == NoFinish(why=Why.NO_HOURS, keys=("paint",))
        assert (found.chance, found.chance_told) == (None, None)


class TestTheDay:
    def test_it_is_the_last_episode_s_by_default(self) -> None:
        """The last day of its weekend."""
        found = timing(TWELVE, front(4, "hours: 2"), "from: 2026-04-11\nto: 2026-04-12\nphase: roof\n")
        assert found.as_of == day(4, 12)

    def test_it_is_the_beginning_where_there_is_no_episode(self) -> None:
        """12 hours from a Sunday evening on are over on the next Sunday."""
        found = timing(TWELVE, settings="begun: 2026-04-05\n")
        assert (found.as_of, likely(found)) == (day(4, 5), day(4, 12))

    def test_it_may_be_any_day_before_anything_was_told(self) -> None:
        """Neither an episode nor a beginning: asked on a Sunday evening, 12 hours are over on the next Sunday."""
        found = timing(TWELVE, as_of=day(4, 5))
        assert (found.as_of, likely(found)) == (day(4, 5), day(4, 12))

    def test_only_what_was_told_until_then_counts(self) -> None:
        """An episode of the day itself does, later ones do not."""
        fronts = (front(4, "hours: 3"), front(5, "hours: 4"), front(11, "hours: 5"))
        assert timing(TWELVE, *fronts, as_of=day(4, 5)).pace.worked == 7
        assert timing(TWELVE, *fronts, as_of=day(4, 4)).pace.worked == 3
        assert timing(TWELVE, *fronts).pace.worked == 12

    def test_it_can_be_told_as_after_the_first_episodes(self) -> None:
        """Their last day is the day."""
        found = timing(TWELVE, front(4, "hours: 3"), front(5, "hours: 4"), front(11, "hours: 5"), upto=2)
        assert (found.as_of, found.pace.worked) == (day(4, 5), 7)

    def test_after_none_of_them_it_is_the_beginning(self) -> None:
        """Nothing was worked."""
        found = timing(TWELVE, front(4, "hours: 3"), settings="begun: 2026-04-02\n", upto=0)
        assert (found.as_of, found.pace.worked) == (day(4, 2), 0)


class TestPace:
    def test_half_of_what_was_promised_is_half_the_pace(self) -> None:
        """6 of 12 hours worked on the Saturday; the 6 left are over on the next Saturday: 2.5, then 3.5."""
        found = timing(TWELVE, front(4, "hours: 6"))
        assert (found.pace.rate, found.pace.promised) == (Fraction(1, 2), 12)
        assert likely(found) == day(4, 11)

    def test_the_weeks_since_the_beginning_count(self) -> None:
        """A week before the first episode was idle."""
        found = timing(TWELVE, front(4, "hours: 6"), settings="begun: 2026-03-23\n")
        assert (found.pace.rate, found.pace.idle) == (Fraction(1, 4), 1)

    def test_without_a_beginning_the_first_episode_is_it(self) -> None:
        """Nothing was promised before."""
        assert timing(TWELVE, front(4, "hours: 6"), front(12, "hours: 6")).pace.promised == 24

    def test_a_beginning_after_the_day_promises_nothing_yet(self) -> None:
        """The promise stands as it is: 12 hours a week."""
        found = timing(TWELVE, settings="begun: 2026-06-01\n", as_of=day(4, 6))
        assert (found.pace.rate, likely(found)) == (None, day(4, 12))

    def test_hours_of_several_phases_are_worked_together(self) -> None:
        """An episode without hours is unknown, not idle."""
        plan = TWELVE + "  - {key: paint, hours: [5, 5, 5]}\n"
        found = timing(plan, front(4, "hours: {roof: 2, paint: 3}"), front(11))
        assert (found.pace.worked, found.pace.unknown) == (5, 1)

    def test_while_away_nothing_is_promised(self) -> None:
        """The weekend after is a holiday."""
        found = timing(TWELVE, settings="begun: 2026-04-05\naway: [2026-04-10/2026-04-13]\n")
        assert likely(found) == day(4, 19)


class TestWhatIsLeft:
    """Of 12 certain hours, at the pace promised: 7 on Saturday the 11th, 5 on Sunday."""

    @pytest.mark.parametrize(
        ("fronts", "finish"),
        [
            ([front(5, "hours: 12")], day(4, 5)),  # all of it was worked: nothing is left
            ([front(5, "hours: 12\nprogress: {roof: 50%}")], day(4, 12)),  # half of it took 12: slower than estimated
            ([front(5, "done: [roof]")], day(4, 5)),
            ([front(5)], day(4, 12)),  # nobody said how many hours it took
        ],
    )
    def test_it_follows_from_hours_progress_and_done(self, fronts: list[str], finish: datetime.date) -> None:
        """As the plan layer takes them."""
        assert likely(timing(TWELVE, *fronts, settings="begun: 2026-03-30\n")) == finish

    def test_a_phase_is_done_on_the_day_of_the_first_episode_that_says_so(self) -> None:
        """And its wait runs from then: 20 days from the 5th."""
        plan = "phases:\n  - {key: roof, hours: [12, 12, 12], wait: 20 days}\n  - {key: paint, hours: [1, 1, 1]}\n"
        found = timing(plan, front(5, "done: [roof]"), "date: 2026-04-12\nphase: paint\ndone: [paint]")
        assert likely(found) == day(4, 25)

    def test_work_comes_after_what_it_comes_after(self) -> None:
        """The roof on Sunday the 12th, five days of waiting, then an hour of paint on the 18th."""
        plan = (
            "phases:\n  - {key: roof, hours: [12, 12, 12], wait: 5 days}\n"
            "  - {key: paint, hours: [1, 1, 1], after: [roof]}\n"
        )
        assert likely(timing(plan, settings="begun: 2026-04-05\n")) == day(4, 18)

    def test_the_last_progress_counts_and_only_its_own_phase_s(self) -> None:
        """12 of 24 hours are left: one weekend, not two, and not none."""
        plan = "phases:\n  - {key: roof, hours: [24, 24, 24]}\n  - {key: paint, hours: [0, 0, 0]}\n"
        found = timing(
            plan,
            front(4, "progress: {roof: 10%}\nhours: {roof: 2}"),
            front(5, "progress: {roof: 50%, paint: 90%}\nhours: {roof: 10}"),
        )
        assert likely(found) == day(4, 12)

    def test_hours_count_for_the_phase_they_name(self) -> None:
        """7 of the 12 went into the roof, 5 into paint that is planned for 5: on Saturday 5 are left."""
        plan = TWELVE + "  - {key: paint, hours: [6, 6, 6]}\n"
        found = timing(plan, front(5, "hours: {roof: 7, paint: 5}"))
        assert isinstance(found.finish, Finish)
        assert {one.key: one.hours_left for one in found.finish.phases} == {"roof": 5, "paint": 1}


class TestChance:
    @pytest.mark.parametrize(
        ("ready_by", "chance", "told"),
        [("2026-04-12", 1, "1.00"), ("2026-04-11", 0, "0.00"), ("2026-12-01", 1, "1.00")],
    )
    def test_it_is_the_share_of_outcomes_ready_by_the_promise(self, ready_by: str, chance: int, told: str) -> None:
        """12 certain hours are over on the 12th."""
        found = timing(TWELVE, settings=f"begun: 2026-04-05\nready_by: {ready_by}\n")
        assert (found.chance, found.chance_told) == (chance, told)
        assert found.ready_by == datetime.date.fromisoformat(ready_by)

    def test_half_the_outcomes_are_half_the_chance(self) -> None:
        """Anything from none to 24 hours: the first weekend holds about half of them."""
        found = timing(
            "phases:\n  - {key: roof, hours: [0, 12, 24]}\n", settings="begun: 2026-04-05\nready_by: 2026-04-12\n"
        )
        assert found.chance is not None
        assert abs(found.chance - Fraction(1, 2)) < Fraction(1, 20)

    def test_there_is_none_without_a_promise(self) -> None:
        """Nobody asked."""
        found = timing(TWELVE, settings="begun: 2026-04-05\n")
        assert (found.ready_by, found.chance, found.chance_told) == (None, None, None)


class TestTheFinish:
    """The roof is done on 4 April and waits five days, the paint on 11 April: both are over on 11 April."""

    PLAN = "phases:\n  - {key: roof, hours: [1, 2, 3], wait: 5 days}\n  - {key: paint, hours: [1, 2, 3]}\n"
    DAYS = (front(4, "done: [roof]\n"), front(11, "done: [paint]\n"))

    @pytest.mark.parametrize("settings", [WEEKEND, ""])
    def test_it_is_known_once_every_phase_is_done_and_waited_for(self, settings: str) -> None:
        """Whether or not anything says how many hours a week has."""
        journal = read_plan(self.PLAN, *self.DAYS, settings=settings)
        assert finished_on(journal, time_plan(journal, None)) == day(4, 11)

    @pytest.mark.parametrize("settings", [WEEKEND, ""])
    def test_there_is_none_while_a_phase_is_open(self, settings: str) -> None:
        """The paint is not done."""
        journal = read_plan(self.PLAN, self.DAYS[0], settings=settings)
        assert finished_on(journal, time_plan(journal, None)) is None

    def test_the_longest_wait_decides(self) -> None:
        """Until 14 April where the roof waits ten days."""
        journal = read_plan(self.PLAN.replace("5 days", "10 days"), *self.DAYS)
        assert finished_on(journal, None) == day(4, 14)

    def test_before_that_day_it_is_not_known(self) -> None:
        """On 5 April nobody knew; nor does anybody where the plan has no phases, or some have no hours."""
        journal = read_plan(self.PLAN, *self.DAYS, settings=WEEKEND)
        assert finished_on(journal, time_plan(journal, day(4, 5))) is None
        assert finished_on(read_plan("contingency: 5.00\n"), None) is None
        silent = read_plan(TWELVE + "  - {key: paint}\n", front(4), settings=WEEKEND)
        assert finished_on(silent, time_plan(silent, None)) is None


class TestCircles:
    def test_phases_in_a_circle_are_named_in_order(self) -> None:
        """At the `after` of the first of them."""
        plan = "phases:\n  - {key: base}\n  - {key: roof, after: [base, wall]}\n  - {key: wall, after: [roof]}\n"
        assert [problem.one_line() for problem in check_order(read_plan(plan))] == [
            (
                "plan.yaml:3:25: mistake: phases wait for each other in a circle: roof after wall after roof; expected "
                "phases of which one can begin; take one of them out of an after:"
            )
        ]

    def test_phases_in_order_have_no_problem(self) -> None:
        """Nothing is said."""
        assert check_order(read_plan("phases:\n  - {key: base}\n  - {key: roof, after: [base]}\n")) == ()
