"""How the forecast of cost moved from episode to episode."""

from __future__ import annotations

import pytest

from builder.plan.moving import forecasts_after
from tests.plan.planned import footing, of, planned, worked

MIX = "key: mix, material: Mix, quantity: 10 bag, unit_cost: 4"
ROOF = "  - {key: roof, planned: 100}\n"
PANELS = "phase: roof\nitems:\n  - Panels, 130\n"


def moved(plan: str, *fronts: str) -> list[int]:
    """The forecast after each episode. The last is the forecast of the whole journal."""
    found = planned(plan, *fronts)
    after = forecasts_after(found.journal, found.ledger, found.outlook)
    assert list(after) == [episode.number for episode in found.journal.episodes]
    assert list(after.values())[-1] == found.outlook.forecast
    return list(after.values())


def test_it_begins_at_the_plan_and_moves_with_price_and_quantity() -> None:
    """40.00; 4 bags at 5 leave 6 at 4; two of what was to be 100.00 cost 130.00; 7 more bags at 4 are one too many."""
    assert moved(
        footing(MIX) + ROOF,
        "weather: rain",
        worked("material: Mix, quantity: 4 bag, unit_cost: 5"),
        PANELS,
        worked("material: Mix, quantity: 7 bag, unit_cost: 4"),
    ) == [14000, 14400, 17400, 17800]


def test_a_phase_done_comes_to_what_it_cost() -> None:
    """Whatever its lines still lack."""
    bought = worked("material: Mix, quantity: 4 bag, unit_cost: 5")
    roof = "phase: roof\nitems:\n  - Panels, 20\ndone: [roof]\n"
    assert moved(footing(MIX) + ROOF, bought, "done: [footing]", roof) == [14400, 12000, 4000]


def test_an_episode_in_a_phase_begins_it() -> None:
    """Without a line: planned 100.00 and nothing spent is still 100.00."""
    assert moved(footing(MIX) + ROOF, "phase: roof\n", worked()) == [14000, 14000]


def test_an_episode_in_a_phase_begins_it_where_its_things_came_before() -> None:
    """4 of the 10 bags of the footing came with the roof for 20.00; once it is begun, only 6 at 4.00 are to come."""
    early = "phase: roof\nitems:\n  - {material: Mix, quantity: 4 bag, cost: 20, against: mix}\n"
    assert moved(footing(MIX) + ROOF, early, "phase: footing\n") == [14000, 12400]


@pytest.mark.parametrize(
    ("front", "after"),
    [
        ("progress: {footing: 10%}\n", 12400),
        ("progress: {footing: 0%}\n", 14000),
        ("hours: {footing: 3}\n", 12400),
        ("items:\n  - {material: Rags, cost: 0, phase: footing}\n", 14000),
        ("items:\n  - {material: Rags, cost: unknown, phase: footing}\n", 12400),
    ],
)
def test_what_begins_a_phase_begins_it_in_the_history_too(front: str, after: int) -> None:
    """The same four bags before; then progress, hours or a line that moves a figure, and nothing that moves none."""
    early = "phase: roof\nitems:\n  - {material: Mix, quantity: 4 bag, cost: 20, against: mix}\n"
    assert moved(footing(MIX) + ROOF, early, front) == [14000, after]


def test_a_line_begins_its_own_phase_in_an_episode_of_another() -> None:
    """130.00 for the roof, told on a day of the footing."""
    assert moved(footing(MIX) + ROOF, worked("material: Panels, cost: 130, phase: roof")) == [17000]


def test_a_phase_without_a_plan_is_forecast_at_what_it_costs() -> None:
    """Nothing before it is begun, 8.00 when it is done."""
    plan = "phases:\n  - {key: roof, planned: 100}\n  - {key: paint}\n"
    paint = "phase: paint\nitems:\n  - Paint, 8\ndone: [paint]\n"
    assert moved(plan, "weather: rain", paint) == [10000, 10800]


def test_a_take_off_that_comes_to_nothing_lacks_nothing() -> None:
    """No half blocks are needed for this wall; two were bought for 9.00 all the same."""
    plan = footing("key: half, material: Half block, quantity: {takeoff: wall.half_blocks}, unit_cost: 4")
    found = planned(
        plan,
        worked("material: Half block, quantity: 2 block, cost: 9"),
        results={"wall": {"half_blocks": of("0 block")}},
    )
    assert forecasts_after(found.journal, found.ledger, found.outlook) == {1: 900}
    assert found.outlook.forecast == 900


def test_what_nobody_planned_adds_to_it() -> None:
    """In a phase with lines beside them; in one amount once it is more than that; and in no phase at all."""
    assert moved(
        footing(MIX) + ROOF,
        worked("material: Shovel, cost: 7"),
        "phase: roof\nitems:\n  - Panels, 60\n",
        "phase: roof\nitems:\n  - Panels, 60\n",
        "items:\n  - Gloves, 3\n",
    ) == [14700, 14700, 16700, 17000]


@pytest.mark.parametrize(
    ("lines", "forecasts"),
    [
        (["quantity: 8 bag, cost: 32, used: 6 bag"], [3200]),  # 6 of 8 bags went in; 2 of the 10 have not come
        (["quantity: 8 bag, cost: 32", "source: returned, quantity: 3 bag"], [4000, 4000]),  # and 5 have not come
        (["quantity: 8 bag, cost: 32", "source: spoiled, quantity: 3 bag"], [4000, 4000]),  # they had come
        (["quantity: 8 bag, cost: 32", "cost: 5"], [4000, 4000]),  # from here on nobody can count
        (["cost: 5", "quantity: 8 bag, cost: 50"], [4000, 5500]),
        (["quantity: 300 kg, cost: 30"], [4000]),  # no bags
        (["quantity: 8 bag, cost: 36", "quantity: 300 kg, cost: 30"], [4400, 6600]),
        (["quantity: 300 kg, cost: 30", "quantity: 8 bag, cost: 32"], [4000, 6200]),
    ],
)
def test_it_counts_as_the_outlook_does(lines: list[str], forecasts: list[int]) -> None:
    """By quantity where there is one, else by what is left of the money."""
    assert moved(footing(MIX), *(worked(f"material: Mix, {line}") for line in lines)) == forecasts


def test_planned_lines_together_lack_what_they_lack_together() -> None:
    """15 bags for 70.00; 12 have come for 60.00, so 3 of 15 are lacking: 14.00."""
    more = "key: more, material: mix, quantity: 5 bag, unit_cost: 6"
    assert moved(footing(MIX, more), worked("material: Mix, quantity: 12 bag, unit_cost: 5")) == [7400]


def test_planned_lines_in_different_units_are_told_in_money() -> None:
    """70.00 planned, 60.00 spent."""
    more = "key: more, material: mix, quantity: 5 kg, unit_cost: 6"
    assert moved(footing(MIX, more), worked("material: Mix, quantity: 12 bag, unit_cost: 5")) == [7000]


def test_a_deposit_kept_is_a_cost_without_a_quantity() -> None:
    """2 days at 30 and 5.00 kept."""
    plan = footing("key: mixer, equipment: Mixer, source: hired, quantity: 3 day, unit_cost: 30")
    assert moved(
        plan,
        worked("equipment: Mixer, source: hired, quantity: 2 day, cost: 60, deposit: 50, id: mixer"),
        worked("equipment: Mixer, from: mixer, deposit_back: 45"),
    ) == [9000, 9500]


def test_a_build_without_a_forecast_moves_nowhere() -> None:
    """One phase has no plan; or there is no plan at all."""
    for plan, front in [("phases:\n  - {key: roof}\n", PANELS), ("contingency: 5.00\n", "items:\n  - Gloves, 3\n")]:
        found = planned(plan, front)
        assert forecasts_after(found.journal, found.ledger, found.outlook) == {}
