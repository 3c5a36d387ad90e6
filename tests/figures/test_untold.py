"""A figure that has a name and cannot be told is printed so, with a warning that says why and what to add."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.app import work_out
from builder.figures.account import Account
from builder.figures.figure import MoneyFigure, UntoldFigure
from builder.figures.names import NoFigure, all_names, look_up
from builder.pages.saying import say_figure
from builder.pages.wording import Words
from builder.words.money import Currency
from tests.pages.planned_pages import ENGLISH, build

WEEK = "work_week: {saturday: 7}\n"
HOURS = "phases:\n  - {key: base, name: Base, hours: [1, 2, 3], planned: 10}\n"
SILENT = HOURS + "  - {key: top, name: Top, hours: [1, 2, 3]}\n  - {key: paint, name: Paint, planned: 5}\n"
MESH = "phases:\n  - key: base\n    planned:\n      - {key: mats, material: Mesh, quantity: 6 mat, unit_cost: 20}\n"
MESH += "      - {key: wire, material: Wire, cost: 5}\n"
BASE = "phase: base\n"
NOT_COUNTED = "what answers to mats is not counted in one unit"
ONLY = "expected a figure that can be told; the page says that it cannot"


def untold(account: Account, name: str) -> tuple[str, str]:
    """Why a name cannot be told, and what to add."""
    figure = look_up(name, account)
    assert isinstance(figure, UntoldFigure), figure
    return figure.why, figure.add


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("likely date", "the plan gives no hours for Paint"),
        ("safe date", "the plan gives no hours for Paint"),
        ("chance", "the plan gives no hours for Paint"),
        ("forecast", "not done and without a plan: Top"),
        ("forecast of the build", "not done and without a plan: Top"),
        ("forecast of top", "Top is not done and has no plan"),
        ("planned of Top", "Top has no plan"),
        ("contingency left", "the plan has no contingency"),
        ("ready by", "no date is promised"),
        ("spent per ft2", "the settings give no floor area"),
        ("job cost per year", "the settings give no service life"),
        ("job cost per hour", "no episode gives hours"),
    ],
)
def test_why_it_cannot_be_told_is_said(tmp_path: Path, name: str, why: str) -> None:
    """Base has hours and a plan, Top no plan, Paint no hours."""
    assert untold(build(tmp_path, SILENT, BASE, settings=WEEK), name)[0] == why


@pytest.mark.parametrize(
    ("plan", "settings", "fronts", "why"),
    [
        (HOURS, "", [BASE], "the settings have no work week"),
        (HOURS, WEEK, [], "nothing has begun"),
        ("phases:\n  - {key: base}\n", WEEK, [BASE], "the plan gives no hours"),
        (HOURS, WEEK, [BASE], "no date is promised"),
        (HOURS, WEEK + "away: [2026-01-01/2099-12-31]\n", [BASE], "there are no hours to work in"),
        (HOURS.replace("1, 2, 3", "80000, 90000, 99999"), WEEK, [BASE], "it is too far away"),
    ],
)
def test_why_there_is_no_chance_is_said(tmp_path: Path, plan: str, settings: str, fronts: list[str], why: str) -> None:
    """What is missing first is told first."""
    assert untold(build(tmp_path, plan, *fronts, settings=settings), "chance")[0] == why


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("planned", "no phase has a plan"),
        ("forecast", "not done and without a plan: Base"),
        ("contingency", "contingency is a part of the plan, and no phase has a plan"),
    ],
)
def test_a_plan_without_amounts_says_so(tmp_path: Path, name: str, why: str) -> None:
    """A tenth of nothing that is planned is no amount."""
    assert untold(build(tmp_path, "contingency: 10%\nphases:\n  - {key: base}\n", BASE), name)[0] == why


def test_no_phases_give_no_forecast(tmp_path: Path) -> None:
    """Nothing is planned, and nothing was spent."""
    assert untold(build(tmp_path, "contingency: 5.00\n"), "forecast")[0] == "the plan has no phases"


@pytest.mark.parametrize(
    ("items", "name", "why"),
    [
        ("", "mats used of mats", "nothing answers to mats yet"),
        ("items:\n  - {material: Mesh, cost: 9}\n", "mats bought of mats", NOT_COUNTED),
        ("", "coils planned of wire", "the plan gives no quantity of wire"),
    ],
)  # fmt: skip
def test_a_quantity_that_nobody_counted_cannot_be_told(tmp_path: Path, items: str, name: str, why: str) -> None:
    """Six mats are planned, and wire for 5.00."""
    account = build(tmp_path, MESH, f"{BASE}{items}")
    assert untold(account, name)[0] == why
    assert isinstance(look_up("pallets used of mats", account), NoFigure)


@pytest.mark.parametrize(
    "name", ["spnt", "forecast of tpo", "likely", "spend per year", "spent per mile", "bags used of x"]
)
def test_a_name_that_is_none_is_still_no_figure(tmp_path: Path, name: str) -> None:
    """However much of the plan is silent."""
    assert isinstance(look_up(name, build(tmp_path, SILENT, BASE, settings=WEEK)), NoFigure)


def test_a_slip_in_the_name_of_what_cannot_be_told_is_met_with_a_guess(tmp_path: Path) -> None:
    """It is a name all the same; lists of what can be told leave it out."""
    account = build(tmp_path, SILENT, BASE, settings=WEEK)
    assert look_up("likley date", account) == NoFigure(name="likley date", near="likely date")
    assert {"likely date", "forecast", "forecast of top", "planned of top"} & set(all_names(account)) == set()


def journal(folder: Path, plan: str, settings: str, story: str, front: str = "") -> Path:
    """A journal of one episode with a story."""
    (folder / "episodes").mkdir()
    (folder / "journal.yaml").write_text(f"title: A shed\nlanguage: en-US\ncurrency: USD\n{settings}", "utf-8")
    (folder / "plan.yaml").write_text(plan, "utf-8")
    text = f"---\ntitle: One\ndate: 2026-04-04\nphase: base\nhours: 1\nprogress: {{base: 50%}}\n{front}---\n{story}\n"
    (folder / "episodes" / "01-one.md").write_text(text, "utf-8")
    return folder


def test_a_story_that_names_it_is_published_with_a_warning(tmp_path: Path) -> None:
    """The message says why, and what to add; the page says that it cannot be told."""
    worked = work_out(journal(tmp_path, SILENT, WEEK, "Ready by {= likely date =}, for {= Forecast =}."))
    date, cost = (problem.one_line() for problem in worked.problems)
    assert date == (
        f"episodes/01-one.md:8:10: warning: likely date cannot be told: the plan gives no hours for Paint; {ONLY}; "
        "add hours: [8, 14, 24] (low, likely, high) there in plan.yaml"
    )
    assert cost == (
        f"episodes/01-one.md:8:33: warning: forecast cannot be told: not done and without a plan: Top; {ONLY}; "
        "add planned: to each of them in plan.yaml, or done: in an episode once it is finished"
    )
    assert worked.account is not None
    assert say_figure("likely date", worked.account, ENGLISH, 1, "../../").text == "cannot be told"
    german = Words("de-DE", Currency.named("EUR"))
    assert say_figure("forecast", worked.account, german, 1, "").text == "lässt sich nicht sagen"


def test_what_is_stated_of_it_cannot_be_held_against_anything(tmp_path: Path) -> None:
    """Which is a warning, as nothing contradicts it."""
    [problem] = work_out(journal(tmp_path, SILENT, WEEK, "", "stated: {forecast: 40}\n")).problems
    assert problem.one_line().startswith("episodes/01-one.md:7:20: warning: forecast cannot be told: not done")


def test_beside_what_could_not_be_read_nothing_is_said_of_it(tmp_path: Path) -> None:
    """The hours that are missing may be the ones with the mistake."""
    wrong = SILENT.replace("name: Paint", "name: Paint, hours: [1, 2]")
    folder = journal(tmp_path, wrong, WEEK, "Ready by {= likely date =}.", "stated: {forecast: 40}\n")
    assert [problem.place.file for problem in work_out(folder).problems] == ["plan.yaml"]


def test_once_it_can_be_told_it_is_printed(tmp_path: Path) -> None:
    """10.00 for Base, and 5.00 for Paint: with 7.00 for Top the build comes to 22.00."""
    account = build(tmp_path, SILENT.replace("name: Top", "name: Top, planned: 7"), BASE, settings=WEEK)
    figure = look_up("forecast", account)
    assert isinstance(figure, MoneyFigure)
    assert figure.minor == 2200


def test_where_there_is_no_plan_page_it_leads_to_the_first_page(tmp_path: Path) -> None:
    """A figure of the plan comes from the plan's page where there is one."""
    (tmp_path / "with").mkdir()
    (tmp_path / "without").mkdir()
    with_plan = build(tmp_path / "with", HOURS, BASE, settings=WEEK)
    without = build(tmp_path / "without", "contingency: 5.00\n", settings="ready_by: 2026-09-30\n")
    assert say_figure("likely date", with_plan, ENGLISH, 1, "../../").href == "../../plan/index.html"
    assert say_figure("ready by", without, ENGLISH, None, "../../").href == "../../index.html"
