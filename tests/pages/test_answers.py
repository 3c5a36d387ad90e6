"""What the plan page says first, of builds that are finished, under way or planned in part: each sentence is true."""

from __future__ import annotations

import datetime
import json
import re
from pathlib import Path

import pytest

from builder.app import figures_text, tally_text
from builder.figures.account import Account, Moved
from builder.pages.answers import answers
from builder.pages.calendar_page import calendar_drawing
from builder.pages.earned import earned_sentence, earned_table
from builder.pages.moved import moved_table
from builder.pages.overtime import cost_over_time, over_time_note
from builder.pages.plan import plan_page
from builder.pages.timewords import ready_small
from builder.plan.timing import time_plan
from tests.pages.planned_pages import ENGLISH, build, material, rows

WEEK = "work_week: {saturday: 7}\n"
PROMISED = f"{WEEK}ready_by: 2026-06-30\n"
TWO = "phases:\n  - {key: slab, name: Slab, hours: [8, 14, 24], planned: 100}\n"
TWO += "  - {key: frame, name: Frame, hours: [8, 14, 24], after: [slab], planned: 50}\n"
SLAB = "phase: slab\nhours: 7\nitems:\n  - Mix, 90\ndone: [slab]\n"
FRAME = "phase: frame\nhours: 7\nitems:\n  - Wood, 45\ndone: [frame]\n"


def said(account: Account) -> dict[str, str]:
    """Each question with its answer and what stands behind it."""
    return {one.question: " ".join([one.answer, *one.behind]) for one in answers(material(account))}


class TestAFinishedBuild:
    """Both phases done for 135.00 of 150.00 by 11 April 2026: 80 days before 30 June (19 of April, 31 and 30)."""

    @pytest.fixture
    def finished(self, tmp_path: Path) -> Account:
        """As of a day long after, on which nothing is promised or worked any more."""
        return build(tmp_path, TWO, SLAB, FRAME, settings=PROMISED, as_of=datetime.date(2033, 1, 1))

    def test_it_says_when_it_was_finished_and_what_it_came_to(self, finished: Account) -> None:
        """No chance, no pace, nothing that is forecast."""
        assert said(finished) == {
            "Was it on budget?": (
                "Yes: $15.00\N{NO-BREAK SPACE}under The whole build came to $135.00, against $150.00 planned."
            ),
            "Is it ready?": "Finished April 11, 2026, 80 days before the promise Promised for June 30, 2026.",
            "What is to blame?": "Nothing: no phase is over",
        }

    def test_the_home_page_says_the_same(self, finished: Account) -> None:
        """Beside the date it was promised for."""
        assert ready_small(finished, ENGLISH) == "Finished April 11, 2026, 80 days before the promise"

    def test_the_tally_says_the_same(self, finished: Account) -> None:
        """In the terminal."""
        told = tally_text(finished)
        assert "\nfinished: 2026-04-11, 80 days before the promise of 2026-06-30\n" in told
        assert "\ncame to: 135.00, 15.00 under the plan\n" in told
        assert not [word for word in ("likely", "safe", "chance", "forecast:") if word in told]

    def test_the_data_keep_their_keys_and_meanings(self, finished: Account) -> None:
        """Other programs read them: a finish that is known is certain, and the forecast of what is done its cost."""
        data = json.loads(figures_text(finished))
        assert data["schedule"] == {
            "as_of": "2033-01-01",
            "ready_by": "2026-06-30",
            "finish": {"p50": "2026-04-11", "p80": "2026-04-11"},
            "chance": "1.00",
        }
        assert data["totals"]["forecast"] == "135.00"

    def test_no_drawing_looks_ahead(self, finished: Account) -> None:
        """No ring where it is forecast to end, no likely and no safe date."""
        drawn, calendar = cost_over_time(finished, ENGLISH), calendar_drawing(finished, ENGLISH)
        assert "job cost, $135.00" in drawn
        assert over_time_note(finished, ENGLISH) == "Each step is an episode."
        assert "finished Apr 11" in calendar
        told = re.sub("<[^>]+>", " ", drawn + calendar)
        assert not [word for word in ("forecast", "likely", "safe") if word in told]

    def test_what_the_whole_build_comes_to_at_this_rate_is_left_out(self, finished: Account) -> None:
        """Nothing is left that could go at any rate."""
        assert earned_sentence(finished, ENGLISH) == ""

    def test_the_phases_stand_side_by_side_without_a_forecast(self, finished: Account) -> None:
        """It would be the job cost once more."""
        table = plan_page(material(finished)).side_by_side
        assert [column.label for column in table.columns] == ["Phase", "Level", "Planned", "Job cost", "Over or under"]
        assert rows(table)[-1] == ["The whole build", "150.00", "135.00", "15.00\N{NO-BREAK SPACE}under"]

    def test_how_the_forecast_moved_ends_with_the_finish(self, finished: Account) -> None:
        """After the first episode there were dates and a chance; after the last there is the day."""
        moved = [
            Moved(episode=number, forecast=amount, timing=time_plan(finished.journal, None, number))
            for number, amount in ((1, 14000), (2, 13500))
        ]
        first, last = rows(moved_table(finished, moved, ENGLISH))
        assert len(first) == 5
        assert last == ["Episode 2 Apr 11", "135.00", "Apr 11, 2026 finished"]


@pytest.mark.parametrize(
    ("ready_by", "ending"),
    [
        ("", ""),
        ("ready_by: 2026-04-12\n", ", 1 day before the promise"),
        ("ready_by: 2026-04-11\n", ", on the promised day"),
        ("ready_by: 2026-04-10\n", ", 1 day after the promise"),
        ("ready_by: 2026-03-31\n", ", 11 days after the promise"),
    ],
)
@pytest.mark.parametrize("week", [WEEK, ""])
def test_a_finish_is_held_against_its_promise(tmp_path: Path, week: str, ready_by: str, ending: str) -> None:
    """Also where nothing says how many hours a week has: that a phase is done needs none."""
    account = build(tmp_path, TWO, SLAB, FRAME, settings=week + ready_by)
    answer = next(one for one in answers(material(account)) if one.question == "Is it ready?")
    assert answer.answer == f"Finished April 11, 2026{ending}"
    assert answer.mark == ("over" if "after" in ending else "")
    promise = f" of {account.journal.settings.ready_by}" if ending.endswith("the promise") else ""
    assert f"\nfinished: 2026-04-11{ending}{promise}\n" in tally_text(account)


def test_a_last_wait_that_is_not_over_is_still_to_come(tmp_path: Path) -> None:
    """Done on 11 April, and the paint wants ten days: until 21 April. On that day it is finished."""
    plan = TWO.replace("after: [slab]", "after: [slab], wait: 10 days")
    folders = [tmp_path / "now", tmp_path / "then"]
    for folder in folders:
        folder.mkdir()
    now = build(folders[0], plan, SLAB, FRAME, settings=WEEK)
    assert ready_small(now, ENGLISH) == "Done, and ready April 21, 2026 when the last wait is over"
    assert "\ndone, and ready 2026-04-21 when the last wait is over\n" in tally_text(now)
    then = build(folders[1], plan, SLAB, FRAME, settings=WEEK, as_of=datetime.date(2026, 4, 21))
    assert ready_small(then, ENGLISH) == "Finished April 21, 2026"


def test_on_a_day_before_the_end_the_end_is_still_forecast(tmp_path: Path) -> None:
    """As of 5 April the frame was not begun."""
    account = build(tmp_path, TWO, SLAB, FRAME, settings=PROMISED, as_of=datetime.date(2026, 4, 5))
    assert account.finished is None
    assert "Will it be ready?" in said(account)


class TestWithoutABudget:
    """Nothing is held against a plan that is not there."""

    PLAN = "phases:\n  - {key: base, name: Base}\n  - {key: hut, name: Hut}\n"

    def test_a_finished_build_says_that_nothing_was_planned(self, tmp_path: Path) -> None:
        """It cost 40.00, and no phase is to blame for any of it."""
        account = build(tmp_path, self.PLAN, "phase: base\nitems:\n  - Sand, 40\n", "phase: hut\ndone: [base, hut]\n")
        assert said(account) == {
            "Was it on budget?": "Nothing was planned The whole build came to $40.00.",
            "Is it ready?": "Finished April 11, 2026",
        }
        moved = [Moved(episode=number, forecast=None, timing=None) for number in (1, 2)]
        assert moved_table(account, moved, ENGLISH) is None
        assert earned_table(account, ENGLISH) is None
        assert [term.name.split(":")[0] for term in plan_page(material(account)).terms] == ["Job cost"]

    def test_a_build_under_way_says_that_nothing_is_planned(self, tmp_path: Path) -> None:
        """Without a promise nobody asks whether it will be ready."""
        account = build(tmp_path, self.PLAN, "phase: base\nitems:\n  - Sand, 40\n")
        assert said(account) == {
            "Is it on budget?": "Nothing is planned yet No phase has a plan to hold its cost against."
        }


class TestWhereALineHasNoPrice:
    """Every figure above it says "at least", and what is left "at most": law 7 of the ledger."""

    PLAN = "contingency: 10\nphases:\n  - key: base\n    name: Base\n    planned:\n"
    PLAN += "      - {key: mesh, material: Mesh, quantity: 6 mat, unit_cost: 10}\n"
    PLAN += "      - {key: nails, material: Nails, cost: 5}\n"

    def test_what_is_to_blame_says_at_least(self, tmp_path: Path) -> None:
        """65.00 planned. Mesh 95.00 (35.00 over), screws 4.00 not planned, a saw of unknown cost; nails still 5.00.

        104.00 forecast: 39.00 over, 29.00 more than the 10.00 that were kept.
        """
        items = "  - {material: Mesh, quantity: 6 mat, cost: 95}\n  - Screws, 4\n"
        items += "  - {equipment: Saw, source: hired, cost: unknown}\n"
        told = said(build(tmp_path, self.PLAN, f"phase: base\nitems:\n{items}"))
        assert {question: answer.replace("\N{NO-BREAK SPACE}", " ") for question, answer in told.items()} == {
            "Is it on budget?": (
                "No: at least $39.00 over The whole build is forecast to come to at least $104.00, against $65.00 "
                "planned. Of the $10.00 kept for overruns, at least $39.00 is taken. The overruns are at least $29.00 "
                "more than was kept."
            ),
            "What is to blame?": (
                "Base: at least $39.00 over Not planned at all: at least $4.00, such as Screws and Saw. "
                "Mesh: $35.00 over."
            ),
        }

    def test_more_taken_than_was_kept_is_no_amount_below_zero(self, tmp_path: Path) -> None:
        """Pages say over and under, and never a bare sign."""
        items = "  - {material: Mesh, quantity: 6 mat, cost: 95}\n  - {material: Nails, cost: unknown}\n"
        page = plan_page(material(build(tmp_path, self.PLAN, f"phase: base\nitems:\n{items}")))
        assert [(fact.name, fact.value) for fact in page.contingency] == [
            ("Contingency", "$10.00"),
            ("Taken by overruns", "at least $35.00"),
            ("More than was kept", "at least $25.00"),
        ]

    def test_a_line_of_unknown_price_is_not_cheaper_than_planned(self, tmp_path: Path) -> None:
        """6 mats planned for 60.00; 2 for 30.00 and 4 of unknown cost are at least 30.00, so at most 30.00 under."""
        items = (
            "  - {material: Mesh, quantity: 2 mat, cost: 30}\n  - {material: Mesh, quantity: 4 mat, cost: unknown}\n"
        )
        page = plan_page(material(build(tmp_path, self.PLAN, f"phase: base\nitems:\n{items}")))
        assert rows(page.compared) == [
            ["Mesh", "Base", "60.00", "at least 30.00", "at most 30.00\N{NO-BREAK SPACE}under"]
        ]

    def test_a_build_that_may_be_over_is_not_said_to_be_under(self, tmp_path: Path) -> None:
        """65.00 planned; 58.00 for the mesh, nails of unknown cost for which 5.00 are left: at least 63.00."""
        items = "  - {material: Mesh, quantity: 6 mat, cost: 58}\n  - {material: Nails, cost: unknown}\n"
        told = said(build(tmp_path, self.PLAN, f"phase: base\nitems:\n{items}"))
        assert told["Is it on budget?"].startswith(
            "As far as costs are known: at most $2.00\N{NO-BREAK SPACE}under The"
        )
        assert told["What is to blame?"] == "As far as costs are known, no phase is over"


class TestWhatIsToBlame:
    """Where the build is over something is to blame for it."""

    def test_what_was_spent_in_no_phase(self, tmp_path: Path) -> None:
        """70.00 for a permit that belongs to none."""
        account = build(tmp_path, TWO, "items:\n  - {fee: Permit, cost: 70}\n")
        assert said(account)["What is to blame?"] == "Outside every phase: $70.00\N{NO-BREAK SPACE}over"

    def test_a_phase_for_which_nothing_was_planned(self, tmp_path: Path) -> None:
        """The slab is done for 90.00 of 100.00; the paint cost 30.00 that nobody planned."""
        plan = "phases:\n  - {key: slab, name: Slab, planned: 100}\n  - {key: paint, name: Paint}\n"
        account = build(tmp_path, plan, SLAB, "phase: paint\nitems:\n  - Paint, 30\ndone: [paint]\n")
        told = said(account)["What is to blame?"].replace("\N{NO-BREAK SPACE}", " ")
        assert told == "Paint: $30.00 over Nothing was planned for it."


class TestWhileAPhaseIsUnderWay:
    """10 bags at 4.00 are planned; 6 have come for 21.00, so 4 for 16.00 are to come: 37.00, which is 3.00 under."""

    PLAN = "phases:\n  - key: base\n    name: Base\n    planned:\n"
    PLAN += "      - {key: mix, material: Mix, quantity: 10 bag, unit_cost: 4}\n"
    ITEMS = "items:\n  - {material: Mix, quantity: 6 bag, cost: 21}\n"

    def test_a_line_ends_as_its_phase_is_forecast_to(self, tmp_path: Path) -> None:
        """Cheaper by 3.00; that fewer are used than planned is not so yet."""
        page = plan_page(material(build(tmp_path, self.PLAN, f"phase: base\n{self.ITEMS}")))
        under = "3.00\N{NO-BREAK SPACE}under, as forecast"
        assert rows(page.compared) == [["Mix", "Base", "40.00", "21.00", under, "cheaper than planned, 3.00"]]
        assert rows(page.side_by_side)[0][-1] == under

    def test_once_it_is_done_fewer_were_used(self, tmp_path: Path) -> None:
        """19.00 under: 3.00 for the price, 16.00 for four bags."""
        page = plan_page(material(build(tmp_path, self.PLAN, f"phase: base\ndone: [base]\n{self.ITEMS}")))
        because = "cheaper than planned, 3.00, less of it than planned, 16.00"
        assert rows(page.compared) == [["Mix", "Base", "40.00", "21.00", "19.00\N{NO-BREAK SPACE}under", because]]


def test_once_the_promised_day_is_past_nobody_gives_it_a_chance(tmp_path: Path) -> None:
    """Promised for 30 June, and half of it is done on 1 July."""
    late = build(tmp_path, TWO, SLAB, settings=PROMISED, as_of=datetime.date(2026, 7, 1))
    told = said(late)["Will it be ready?"]
    assert "Promised for June 30, 2026. That day is past. Safe by" in told
    assert "The chance" not in told
    (tmp_path / "before").mkdir()
    before = build(tmp_path / "before", TWO, SLAB, settings=PROMISED, as_of=datetime.date(2026, 6, 30))
    assert "four chances in five. The chance of the promised date is 0%." in said(before)["Will it be ready?"]


def test_what_is_at_least_is_not_about(tmp_path: Path) -> None:
    """50.00 of work for 90.00 and a saw of unknown cost: at that rate the whole 150.00 come to 270.00 at least."""
    front = (
        "phase: slab\nprogress: {slab: 50%}\nitems:\n  - Mix, 90\n  - {equipment: Saw, source: hired, cost: unknown}\n"
    )
    told = earned_sentence(build(tmp_path, TWO, front), ENGLISH)
    assert told.startswith("At this rate the whole build comes to at least $270.00. Against the plan: at least 120.00")


def test_hours_past_the_highest_estimate_are_told_beside_the_dates(tmp_path: Path) -> None:
    """30 hours on the slab, which was to take 24 at most, and nobody said how far it is."""
    account = build(tmp_path, TWO, "phase: slab\nhours: 30\n", settings=PROMISED)
    told = (
        "Nobody said how far Slab got, and more hours than the highest estimate are spent there: it can only get later."
    )
    assert told in said(account)["Will it be ready?"]


def test_at_this_rate_is_said_of_the_whole_build_only_where_all_of_it_has_a_plan(tmp_path: Path) -> None:
    """50 % of 100.00 for 90.00 is 180.00 for the slab; what the paint will cost nobody knows."""
    plan = "phases:\n  - {key: slab, name: Slab, planned: 100}\n  - {key: paint, name: Paint}\n"
    front = "phase: slab\nprogress: {slab: 50%}\nitems:\n  - Mix, 90\n"
    account = build(tmp_path, plan, front)
    assert earned_sentence(account, ENGLISH) == ""
    assert [row[0] for row in rows(earned_table(account, ENGLISH))] == ["Slab"]
    (tmp_path / "whole").mkdir()
    whole = build(tmp_path / "whole", plan.replace("name: Paint", "name: Paint, planned: 20"), front)
    assert [row[0] for row in rows(earned_table(whole, ENGLISH))] == ["Slab", "Paint", "The whole build"]
    assert earned_sentence(whole, ENGLISH).startswith("At this rate the whole build comes to about $216.00.")
