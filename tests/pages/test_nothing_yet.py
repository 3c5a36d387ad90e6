"""What has nothing to show yet is left out: before anything is planned, spent, or known of the end."""

from __future__ import annotations

from pathlib import Path

from builder.pages.calendar_page import calendar_table
from builder.pages.home import HomePage, home_page
from builder.pages.overtime import cost_over_time, over_time_note
from builder.pages.plan import PlanPage, plan_page
from builder.pages.site import Material
from builder.publish.templates import Templates
from tests.pages import planned_pages
from tests.pages.planned_pages import ENGLISH, material

PHASES = "phases:\n  - {key: ground, name: Ground}\n  - {key: frame, name: Frame}\n"
PLANNED = "phases:\n  - {key: ground, name: Ground, planned: 100}\n  - {key: frame, name: Frame, planned: 200}\n"


def build(folder: Path, plan: str, *items: str, settings: str = "") -> Material:
    """A journal with a plan and an episode a week for each line of costs."""
    folder.mkdir(exist_ok=True)
    episodes = (f"phase: ground\nitems: [{item}]" for item in items)
    return material(planned_pages.build(folder, plan, *episodes, settings=settings))


def headings(page: PlanPage) -> list[str]:
    """The columns of the phases side by side."""
    return [column.label for column in page.side_by_side.columns]


class TestBeforeAnythingIsPlanned:
    """A journal as it is begun: phases with names, and no more."""

    def test_no_level_lies_under_words_about_its_bubble(self, tmp_path: Path) -> None:
        """Neither levels nor a note, and no cost to say what it is."""
        page = home_page(build(tmp_path, PHASES))
        assert [phase.level for phase in page.phases] == ["", ""]
        assert page.phases_note == ""

    def test_costs_are_still_explained(self, tmp_path: Path) -> None:
        """Where something was bought already."""
        page = home_page(build(tmp_path, PHASES, "{material: Sand, cost: 5}"))
        assert page.phases_note.startswith("Costs are job cost")

    def test_the_plan_has_no_empty_columns(self, tmp_path: Path) -> None:
        """And blames nobody for what nobody planned."""
        page = plan_page(build(tmp_path, PHASES))
        assert headings(page) == ["Phase", "Job cost so far"]
        assert [answer.question for answer in page.answers] == ["Is it on budget?"]

    def test_with_a_plan_everything_is_there(self, tmp_path: Path) -> None:
        """So that leaving out is for the lack of it."""
        told = build(tmp_path, PLANNED)
        assert headings(plan_page(told)) == [
            "Phase", "Level", "Planned", "Job cost so far", "Forecast", "Over or under",
        ]  # fmt: skip
        page = home_page(told)
        assert all("<svg" in phase.level for phase in page.phases)
        assert page.phases_note.startswith("The bubble slides")


class TestCostOverTime:
    """The chart of home and plan."""

    def test_it_is_not_drawn_where_nothing_was_used_up(self, tmp_path: Path) -> None:
        """A dot at nothing says nothing."""
        free = "{material: Old door, source: salvaged}"
        told = build(tmp_path, PLANNED, free, free)
        assert cost_over_time(told.account, told.words) == ""

    def test_it_speaks_of_a_ring_where_there_is_one(self, tmp_path: Path) -> None:
        """A forecast without a day for it has none."""
        for name, more, ring in (("none", "", False), ("promised", "ready_by: 2026-08-01\n", True)):
            told = build(tmp_path / name, PLANNED, *["{material: Sand, cost: 5}"] * 2, settings=more)
            drawing = cost_over_time(told.account, told.words)
            note = over_time_note(told.account, told.words)
            assert ('"forecast-end"' in drawing, "ring" in note) == (ring, ring)


def shown(page: HomePage) -> str:
    """The page as HTML."""
    return Templates(ENGLISH.say, ENGLISH.count).render(page)


def test_no_heading_stands_over_an_empty_list(tmp_path: Path) -> None:
    """Where everything is in the total, nothing is said not to be; what the words mean is there either way."""
    inside = shown(home_page(build(tmp_path / "inside", PLANNED, "{material: Sand, cost: 5}")))
    outside = shown(home_page(build(tmp_path / "outside", PLANNED, "{material: Sand, cost: 5, share: 50%}")))
    assert "What is not in this total" not in inside
    assert "What is not in this total" in outside
    assert "Spent: what it is" in inside
    assert "Spent: what it is" in outside


def test_a_calendar_without_ends_has_no_column_for_them(tmp_path: Path) -> None:
    """Begun, but nothing done and nothing forecast."""
    told = build(tmp_path, PLANNED, "{material: Sand, cost: 5}")
    table = calendar_table(told.account, told.words)
    assert [column.label for column in table.columns] == ["Phase", "Begun"]
