"""The forecast of cost: done, under way, not begun, and what the overruns take of the contingency."""

from __future__ import annotations

import pytest

from builder.plan.budget_records import Status
from tests.plan.planned import footing, planned, worked

MIX = "key: mix, material: Mix, quantity: 10 bag, unit_cost: 4"
SPENT = "phase: roof\nitems:\n  - Panels, 90\n"
ROOF = "phases:\n  - {key: roof, planned: 100}\n"


class TestStatus:
    @pytest.mark.parametrize(
        ("front", "status"),
        [
            ("weather: rain", Status.NOT_BEGUN),
            ("phase: roof", Status.UNDER_WAY),
            ("progress: {roof: 5%}", Status.UNDER_WAY),
            ("progress: {roof: 0%}", Status.NOT_BEGUN),
            ("items:\n  - {material: Panels, cost: 5, phase: roof}", Status.UNDER_WAY),
            ("items:\n  - {material: Panels, cost: 0, phase: roof}", Status.NOT_BEGUN),
            ("hours: {roof: 3}", Status.UNDER_WAY),
            ("done: [roof]", Status.DONE),
            ("phase: roof\nprogress: {roof: 50%}\ndone: [roof]", Status.DONE),
        ],
    )
    def test_a_phase_stands_where_the_episodes_say(self, front: str, status: Status) -> None:
        """An episode in it, costs, hours or progress begin it; only `done` ends it."""
        assert planned(ROOF, front).phase("roof").status is status

    def test_each_is_told_in_its_words(self) -> None:
        """As figures.json has them."""
        found = planned(ROOF + "  - {key: wall, planned: 5}\n  - {key: base, planned: 5}\n",
                        "phase: wall", "phase: base\ndone: [base]")  # fmt: skip
        assert [one.status.value for one in found.outlook.phases] == ["not begun", "under way", "done"]

    def test_a_plan_without_episodes_is_not_begun(self) -> None:
        """And its forecast is what was planned."""
        found = planned(ROOF)
        assert (found.phase("roof").status, found.outlook.forecast) == (Status.NOT_BEGUN, 10000)


class TestForecast:
    @pytest.mark.parametrize(
        ("front", "forecast"),
        [
            ("weather: rain", 10000),  # not begun: what was planned
            (SPENT, 10000),  # under way at 90 of 100: the plan may yet hold
            (SPENT.replace("90", "130"), 13000),  # under way and over: what it cost
            (f"{SPENT}done: [roof]", 9000),  # done: what it cost
        ],
    )
    def test_a_phase_in_one_amount_comes_to_the_larger_of_plan_and_cost(self, front: str, forecast: int) -> None:
        """Until it is done: then it came to what it cost."""
        found = planned(ROOF, front)
        assert (found.phase("roof").forecast, found.outlook.forecast) == (forecast, forecast)

    def test_a_phase_with_lines_comes_to_its_cost_and_what_they_lack(self) -> None:
        """4 of 10 bags bought at 5 and a shovel not planned for 7: 27.00, and 6 bags at 4 are to come."""
        bought = worked("material: Mix, quantity: 4 bag, unit_cost: 5", "material: Shovel, cost: 7")
        phase = planned(footing(MIX), bought).phase("footing")
        assert (phase.planned, phase.job_cost, phase.forecast) == (4000, 2700, 5100)
        assert (phase.not_planned, [match.key for match in phase.matches]) == (("1.2",), ["mix"])

    def test_a_phase_without_a_plan_has_no_forecast_and_then_the_build_has_none(self) -> None:
        """Until it is done."""
        plan = ROOF + "  - {key: paint}\n"
        assert planned(plan, SPENT).outlook.forecast is None
        assert planned(plan, SPENT, "phase: paint\nitems:\n  - Paint, 8\n").phase("paint").forecast is None
        done = planned(plan, SPENT, "phase: paint\nitems:\n  - Paint, 8\ndone: [paint]")
        assert (done.phase("paint").forecast, done.outlook.forecast) == (800, 10800)

    def test_what_is_planned_is_the_sum_of_the_budgets_there_are(self) -> None:
        """100.00 for the roof, none for the paint."""
        assert planned(ROOF + "  - {key: paint}\n").outlook.planned == 10000

    def test_a_journal_without_a_plan_or_a_cost_has_no_forecast(self) -> None:
        """There is nothing to add up."""
        outlook = planned("contingency: 5%\n", "weather: rain").outlook
        assert (outlook.phases, outlook.planned, outlook.forecast, outlook.contingency) == ((), None, None, None)


class TestRows:
    def test_cost_outside_every_phase_is_a_row_of_its_own(self) -> None:
        """It is done, it is not planned, and all of it is over."""
        found = planned(ROOF, "items:\n  - Gloves, 12\n")
        row = found.phase(None)
        assert (row.status, row.planned, row.job_cost, row.forecast) == (Status.DONE, None, 1200, 1200)
        assert (row.overrun, row.not_planned, row.matches) == (1200, ("1.1",), ())
        assert (found.outlook.planned, found.outlook.forecast, found.outlook.taken) == (10000, 11200, 1200)

    def test_there_is_no_such_row_where_nothing_stands_in_it(self) -> None:
        """The plan's phases alone, in its order."""
        found = planned(ROOF + "  - {key: base, planned: 1}\n", "phase: base\nitems:\n  - Stone, 1\n")
        assert [one.key for one in found.outlook.phases] == ["roof", "base"]

    def test_unpriced_lines_are_counted_in_their_phase(self) -> None:
        """One of them is."""
        found = planned(ROOF, "phase: roof\nitems:\n  - {material: Panels, cost: unknown}\n  - Screws, 5\n")
        assert found.phase("roof").unpriced == 1

    def test_lines_of_another_phase_are_not_this_ones(self) -> None:
        """Neither matched nor told as not planned."""
        found = planned(
            footing(MIX) + "  - key: roof\n    planned:\n      - {key: panels, material: Panels, cost: 9}\n",
            worked("material: Mix, quantity: 10 bag, unit_cost: 4", "material: Sand, cost: 1"),
            SPENT,
        )
        assert found.phase("footing").not_planned == ("1.2",)
        assert (found.phase("roof").not_planned, found.phase("roof").matches[0].refs) == ((), ("2.1",))


class TestContingency:
    def test_a_rate_is_of_the_planned_total_rounded_half_up(self) -> None:
        """12.5 % of 1.00 and 0.24 is 0.155, which is 0.16; it stands outside the plan."""
        outlook = planned("contingency: 12.5%\nphases:\n  - {key: roof, planned: 1}\n  - {key: wall, planned: 0.24}\n")
        assert (outlook.outlook.planned, outlook.outlook.contingency, outlook.outlook.taken) == (124, 16, 0)
        assert outlook.outlook.left == 16

    def test_an_amount_is_what_it_says(self) -> None:
        """Whatever the plan comes to."""
        assert planned("contingency: 50.00\n" + ROOF).outlook.contingency == 5000

    def test_a_plan_without_one_has_none_left(self) -> None:
        """None is not nothing."""
        outlook = planned(ROOF, SPENT.replace("90", "130")).outlook
        assert (outlook.contingency, outlook.taken, outlook.left) == (None, 3000, None)

    def test_an_amount_stands_where_nothing_is_planned_and_nothing_is_taken_of_it(self) -> None:
        """Without a plan nothing is over it."""
        outlook = planned("contingency: 50.00\n", "items:\n  - Gloves, 12\n").outlook
        assert (outlook.contingency, outlook.taken, outlook.left) == (5000, 0, 5000)

    def test_overruns_take_of_it_and_savings_give_nothing_back(self) -> None:
        """30.00 over on the roof, 40.00 saved on the wall: 30.00 are taken of 20.00, and 10.00 are lacking."""
        plan = "contingency: 20.00\n" + ROOF + "  - {key: wall, planned: 50}\n"
        outlook = planned(
            plan, SPENT.replace("90", "130"), "phase: wall\nitems:\n  - Boards, 10\ndone: [wall, roof]"
        ).outlook
        assert (outlook.forecast, outlook.taken, outlook.left) == (14000, 3000, -1000)

    def test_a_phase_that_nobody_planned_takes_nothing(self) -> None:
        """Its forecast is not known, or it is done and there is no plan that it could be over."""
        found = planned(ROOF + "  - {key: paint}\n", "phase: paint\nitems:\n  - Paint, 8\ndone: [paint]")
        assert (found.phase("paint").overrun, found.outlook.taken) == (0, 0)
