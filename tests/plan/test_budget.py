"""The planned lines costed: quantity x price, what serves again, and quantities that a take-off works out."""

from __future__ import annotations

import pytest

from tests.plan.planned import Planned, footing, of, planned

BAGS = {"footing": {"bags": of("12 bag"), "volume": of("7 ft3")}}


def told(found: Planned) -> list[str]:
    """Every problem of the budget."""
    return [problem.one_line() for problem in found.budget.problems]


class TestOneLine:
    def test_a_planned_line_costs_quantity_times_price(self) -> None:
        """36 bags at 6.10 are 219.60; all of them go in and none is reusable."""
        line = planned(footing("key: mix, material: Mix, quantity: 36 bag, unit_cost: 6.10")).line("mix")
        assert (line.spend, line.job_cost, line.quantity, line.used) == (21960, 21960, of("36 bag"), of("36 bag"))
        assert (line.named, line.phase, line.takeoff, line.to_find) == (True, "footing", None, False)

    def test_what_serves_again_is_spent_and_is_no_job_cost(self) -> None:
        """8 boards at 11, used four times: 88.00 spent and a quarter of it, 22.00, used up."""
        line = planned(footing("key: forms, material: Boards, quantity: 8 board, unit_cost: 11, uses: 4")).line("forms")
        assert (line.spend, line.job_cost, line.used) == (8800, 2200, of("8 board"))

    def test_what_is_for_elsewhere_is_neither_spent_nor_used(self) -> None:
        """Half of 10 bags at 4 is for the neighbour: 20.00 is spent, 5 bags go in."""
        line = planned(footing("key: mix, material: Mix, quantity: 10 bag, unit_cost: 4, share: 50%")).line("mix")
        assert (line.spend, line.job_cost, line.quantity, line.used) == (2000, 2000, of("10 bag"), of("5 bag"))

    def test_what_stays_in_stock_is_spent_and_not_used(self) -> None:
        """6 of 10 bags at 4 go in: 40.00 spent, 24.00 used up."""
        line = planned(footing("key: mix, material: Mix, quantity: 10 bag, unit_cost: 4, used: 6 bag")).line("mix")
        assert (line.spend, line.job_cost, line.used) == (4000, 2400, of("6 bag"))

    def test_a_line_in_one_sum_has_no_quantity(self) -> None:
        """A permit is an amount."""
        line = planned(footing("key: permit, fee: Permit, cost: 150")).line("permit")
        assert (line.spend, line.job_cost, line.quantity, line.used) == (15000, 15000, None, None)

    def test_a_line_without_a_key_is_called_by_phase_and_number(self) -> None:
        """The second one of the phase is 2."""
        found = planned(footing("material: Mix, cost: 1", "material: Stone, cost: 2"))
        lines = found.budget.phases[0].lines
        assert [(line.key, line.named) for line in lines] == [("footing.1", False), ("footing.2", False)]

    @pytest.mark.parametrize(
        ("source", "to_find"),
        [("bought", False), ("secondhand", True), ("salvaged", True), ("gift", True)],
    )
    def test_only_what_cannot_be_ordered_is_to_be_found(self, source: str, to_find: bool) -> None:
        """What is new can be ordered; the rest turns up or does not."""
        line = planned(footing(f"key: door, material: Door, quantity: 1 door, unit_cost: 5, source: {source}"))
        assert line.line("door").to_find is to_find


class TestPhases:
    def test_a_phase_is_the_sum_of_its_job_costs(self) -> None:
        """88.00 of forms used four times and a permit of 150.00 are 172.00."""
        found = planned(
            footing("material: Boards, quantity: 8 board, unit_cost: 11, uses: 4", "fee: Permit, cost: 150")
        )
        assert found.budget.phases[0].planned == 17200

    def test_a_phase_planned_in_one_amount_has_no_lines(self) -> None:
        """As one number, and as nothing at all."""
        found = planned("phases:\n  - {key: roof, planned: 1380}\n  - {key: paint}\n")
        assert [(one.key, one.planned, one.lines) for one in found.budget.phases] == [
            ("roof", 138000, ()),
            ("paint", None, ()),
        ]

    def test_a_plan_in_figures_has_no_problem(self) -> None:
        """Nothing is said where there is nothing to say."""
        assert told(planned(footing("material: Mix, cost: 1"))) == []


class TestUnpriced:
    def test_a_planned_line_of_unknown_cost_is_a_mistake(self) -> None:
        """A plan without a figure is no plan; the line counts as nothing."""
        found = planned(footing("key: mix, material: Mix, cost: unknown"))
        assert told(found) == [
            (
                "plan.yaml:5:41: mistake: the planned Mix has no cost; expected a plan in figures: cost: or "
                "unit_cost:; write cost: about 150, for instance"
            )
        ]
        assert found.line("mix").job_cost == 0

    def test_a_line_that_costs_nothing_is_priced(self) -> None:
        """What is salvaged costs nothing, and that is known."""
        found = planned(footing("key: door, material: Door, quantity: 1 door, source: salvaged"))
        assert told(found) == []
        assert found.line("door").spend == 0


class TestTakeOff:
    MIX = "key: mix, material: Mix, quantity: {takeoff: footing.bags}, unit_cost: 6"

    def test_a_quantity_comes_from_a_take_off(self) -> None:
        """12 bags at 6 are 72.00."""
        found = planned(footing(self.MIX), results=BAGS)
        line = found.line("mix")
        assert told(found) == []
        assert (line.job_cost, line.quantity, line.used) == (7200, of("12 bag"), of("12 bag"))
        assert line.takeoff is not None
        assert (line.takeoff.name, line.takeoff.result) == ("footing", "bags")

    def test_a_take_off_that_is_not_there_is_told_with_a_likely_one(self) -> None:
        """And its line has no quantity."""
        found = planned(footing(self.MIX.replace("footing.bags", "foting.bags")), results=BAGS)
        assert told(found) == [
            "plan.yaml:5:55: mistake: there is no take-off foting; expected footing; did you mean footing.bags?"
        ]
        assert found.line("mix").quantity is None

    def test_a_plan_without_take_offs_says_so(self) -> None:
        """There is none to choose from."""
        assert told(planned(footing(self.MIX))) == [
            "plan.yaml:5:55: mistake: there is no take-off footing; expected a take-off of plan.yaml; it has none"
        ]

    def test_a_result_that_is_not_there_is_told_with_those_that_are(self) -> None:
        """One that sounds like it is asked for."""
        found = planned(footing(self.MIX.replace("footing.bags", "footing.bag")), results=BAGS)
        assert told(found) == [
            (
                "plan.yaml:5:55: mistake: the take-off footing has no result bag; expected bags, volume; "
                "did you mean footing.bags?"
            )
        ]
        assert found.line("mix").quantity is None

    def test_nothing_is_asked_for_where_nothing_sounds_like_it(self) -> None:
        """The list stands alone."""
        found = planned(footing(self.MIX.replace("footing.bags", "footing.xyz")), results=BAGS)
        assert told(found) == ["plan.yaml:5:55: mistake: the take-off footing has no result xyz; expected bags, volume"]

    def test_a_take_off_that_could_not_be_worked_out_is_not_told_twice(self) -> None:
        """It has reported itself."""
        found = planned(footing(self.MIX), results={"footing": {}})
        assert told(found) == []
        assert found.line("mix").quantity is None
