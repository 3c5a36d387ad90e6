"""Earned value of a journal's phases and of the build."""

from __future__ import annotations

import pytest

from builder.plan.value import Earned, earn
from tests.plan.planned import planned

PLAN = "phases:\n  - {key: roof, planned: 100}\n  - {key: paint, planned: 50}\n"
PANELS = "phase: roof\nitems:\n  - Panels, 60\n"


def earned(plan: str, *fronts: str) -> Earned:
    """What a journal has earned."""
    found = planned(plan, *fronts)
    return earn(found.journal, found.outlook)


@pytest.mark.parametrize(
    ("told", "share"),
    [
        ("weather: rain", None),  # under way, and nobody said how far
        ("progress: {roof: 40%}", 4000),
        ("progress: {roof: 0%}", 0),
        ("done: [roof]", 10000),
        ("progress: {roof: 40%}\ndone: [roof]", 10000),
    ],
)
def test_a_phase_earns_the_budget_of_the_work_done(told: str, share: int | None) -> None:
    """Of 100.00 planned, at a cost of 60.00."""
    phase, value = earned(PLAN, PANELS, told).phases[0]
    assert (phase.key, value.budget, value.actual, value.earned, value.planned) == ("roof", 10000, 6000, share, None)


def test_the_last_word_on_progress_counts() -> None:
    """40 %, and not the 30 % of the episode before, nor the 50 % of another phase."""
    _, value = earned(PLAN, PANELS, "progress: {roof: 30%}", "progress: {roof: 40%, paint: 50%}").phases[0]
    assert value.earned == 4000


def test_a_phase_not_begun_has_earned_nothing() -> None:
    """Nothing, and not unknown."""
    _, value = earned(PLAN, PANELS).phases[1]
    assert (value.earned, value.actual) == (0, 0)


def test_a_phase_of_which_nothing_is_planned_has_a_budget_of_nothing() -> None:
    """A plan without a line comes to 0.00, and is a plan."""
    _, value = earned("phases:\n  - {key: roof, planned: []}\n", PANELS, "done: [roof]").phases[0]
    assert (value.budget, value.earned, value.actual) == (0, 0, 6000)


def test_the_build_is_its_phases_together() -> None:
    """150.00 planned; 40.00 of the roof and 5.00 of the paint earned for 60.00."""
    build = earned(PLAN, PANELS, "progress: {roof: 40%, paint: 10%}").build
    assert build is not None
    assert (build.budget, build.earned, build.actual) == (15000, 4500, 6000)


def test_one_unknown_phase_makes_the_build_unknown() -> None:
    """Nobody said how far the roof is."""
    build = earned(PLAN, PANELS).build
    assert build is not None
    assert (build.budget, build.earned, build.actual) == (15000, None, 6000)


def test_cost_outside_every_budget_is_actual_cost_of_the_build() -> None:
    """Gloves for 12.00 in no phase, and 8.00 in one without a budget, are planned nowhere."""
    found = earned(
        PLAN + "  - {key: wall}\n", PANELS, "items:\n  - Gloves, 12\n", "phase: wall\nitems:\n  - Boards, 8\n",
        "progress: {roof: 40%}",
    )  # fmt: skip
    assert [phase.key for phase, _ in found.phases] == ["roof", "paint"]
    assert found.build is not None
    assert (found.build.budget, found.build.earned, found.build.actual) == (15000, 4000, 8000)


def test_a_journal_without_a_budget_earns_nothing_that_could_be_told() -> None:
    """No phase and no build."""
    assert earned("phases:\n  - {key: wall}\n", "phase: wall\nitems:\n  - Boards, 8\n") == Earned(phases=(), build=None)
