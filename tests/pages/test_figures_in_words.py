"""Figures in sentences: no bare sign, words in the right number, what is a judgement, when prices were paid."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.figures.figure import Bound
from builder.figures.tally import tally
from builder.journal import item_keys
from builder.journal.item_reader import _JUDGED
from builder.pages.costs import GUESSED, notes_on
from builder.pages.episode import entry, episode_page
from builder.pages.feed import feed
from builder.pages.frame import Fact
from builder.pages.home import home_page
from builder.pages.ledger import ledger_page
from builder.pages.nothere import not_in_total
from builder.pages.phase import phase_page
from builder.pages.signs import turned
from builder.pages.site import Material, foot_words
from builder.pages.sources import sources_page
from builder.pages.wording import Words
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.units import singular
from tests.pages.weekend import read, weekend

PLAN = """contingency: 10
phases:
  - {key: base, name: Base, planned: 100}
  - {key: end, name: End, hours: [8, 14, 24]}
"""


def facts(found: tuple[Fact, ...]) -> dict[str, str]:
    """Labelled figures by their names."""
    return {fact.name: fact.value for fact in found}


def of_phase(told: Material, key: str) -> dict[str, str]:
    """The labelled figures of a phase's page."""
    (phase,) = [one for one in told.account.phases if one.key == key]
    return facts(phase_page(told, phase).facts)


class TestNoBareSign:
    """What is below zero has words of its own."""

    HINGE = "{material: Hinge, source: secondhand, cost: 8, replacement_cost: 3, phase: base}"

    def test_dearer_than_new(self, tmp_path: Path) -> None:
        """8 for what costs 3 new."""
        told = weekend(tmp_path, self.HINGE, plan=PLAN, more="phase: base")
        page = sources_page(told)
        assert (page.saved.before, page.saved.figure) == ("", "$5.00")
        assert page.of == "more than the same things would cost new; new they are $3.00"
        assert of_phase(told, "base")["Dearer than new by"] == "$5.00"
        assert facts(home_page(told).facts)["Dearer than new by"] == "$5.00"

    def test_at_most_turns_into_at_least(self, tmp_path: Path) -> None:
        """With an unknown price beside it, no less than 5 was lost."""
        unknown = "{material: Hook, source: secondhand, cost: unknown, replacement_cost: 0}"
        page = sources_page(weekend(tmp_path, self.HINGE, unknown, plan=PLAN, more="phase: base"))
        assert (page.saved.before, page.saved.figure) == ("at least", "$5.00")

    def test_a_phase_that_takes_from_the_shelf_of_another(self, tmp_path: Path) -> None:
        """10 bags at 6.00 in one phase, 3 of them used in the other."""
        bought = "{id: mix, material: Mix, quantity: 10 bag, cost: 60, used: 7 bag, phase: base}"
        drawn = "{material: Mix, quantity: 3 bag, source: stock, phase: end}"
        told = weekend(tmp_path, bought, drawn, plan=PLAN, more="phase: base")
        assert of_phase(told, "base")["In stock"] == "$18.00"
        assert of_phase(told, "end")["Taken from stock"] == "$18.00"

    def test_more_came_back_than_was_paid(self, tmp_path: Path) -> None:
        """Two stones for 20, and one of them sold for 50."""
        bought = "{material: Stone, quantity: 2, cost: 20, used: 1}"
        told = weekend(tmp_path, bought, "{material: Stone, quantity: 1, source: sold, cost: 50}")
        assert facts(episode_page(told, 0).facts)["Came back"] == "$30.00"
        assert entry(told, told.account.journal.episodes[0], "").spent == "$30.00 came back"
        assert "<summary>$30.00 came back this episode, $30.00 came back so far." in feed(told)
        assert "spent so far: nothing, 30.00 USD more came back than was paid\n" in tally(told.account)

    def test_the_contingency_is_more_than_gone(self, tmp_path: Path) -> None:
        """125 where 100 was planned: 25 over, and 10 was kept."""
        told = weekend(tmp_path, "{material: Stone, cost: 125}", plan=PLAN, more="phase: base\ndone: [base]")
        assert "contingency: 10.00, 25.00 taken by overruns, nothing left, 15.00 more than was kept\n" in tally(
            told.account
        )

    @pytest.mark.parametrize(
        ("bound", "other"),
        [(Bound.AT_LEAST, Bound.AT_MOST), (Bound.AT_MOST, Bound.AT_LEAST), (Bound.EXACT, Bound.EXACT)],
    )
    def test_a_bound_turns_with_the_side(self, bound: Bound, other: Bound) -> None:
        """At least 5 under is at most 5 over."""
        assert turned(bound) is other


class TestDoneTwice:
    """What doing it twice cost is told where anything was done twice, and only its own unknowns bound it."""

    AGAIN = "{material: Mix, cost: 60, rework: yes, phase: base}"
    LOST = "{material: Sand, cost: unknown, rework: yes, phase: base}"
    OTHER = "{material: Nails, cost: unknown, phase: base}"

    @pytest.mark.parametrize(
        ("lines", "told"),
        [
            ((AGAIN,), "$60.00"),
            ((AGAIN, OTHER), "$60.00"),
            ((AGAIN, LOST), "at least $60.00"),
            ((LOST,), "not priced"),
            ((OTHER,), None),
        ],
    )
    def test_unknown_is_not_zero(self, tmp_path: Path, lines: tuple[str, ...], told: str | None) -> None:
        """Sand done twice at an unknown price cost something."""
        page = weekend(tmp_path, *lines, plan=PLAN, more="phase: base")
        assert of_phase(page, "base").get("Doing it twice") == told


def test_a_receipt_with_an_unknown_line_is_at_least_so_much(tmp_path: Path) -> None:
    """Its goods and its tax, 8 % of 50.00, as well as its total."""
    receipts = (
        "receipts:\n  yard:\n    tax: 8%\n    items:\n"
        "      - {material: Stone, cost: 50}\n      - {material: Rope, cost: unknown}\n"
    )
    table = ledger_page(weekend(tmp_path, more=receipts)).receipts
    assert table is not None
    assert [cell.text for cell in table.rows[0].cells[1:]] == ["at least 50.00", "at least 4.00", "54.00"]
    assert table.rows[0].cells[-1].small == "at least: a line has no price"


def test_a_heading_is_not_in_lower_case(tmp_path: Path) -> None:
    """The row of lines that stand in no phase is headed as the others are."""
    told = weekend(tmp_path, "{material: Nails, cost: 9}")
    assert [phase.name for phase in home_page(told).phases] == ["No phase"]


class TestSaved:
    """What was saved stands on the first page where something was."""

    def test_a_build_of_found_things(self, tmp_path: Path) -> None:
        """Nothing spent, and 90 saved."""
        found = facts(home_page(weekend(tmp_path, "{material: Door, source: salvaged, replacement_cost: 90}")).facts)
        assert found["Saved"] == "$90.00"

    def test_nothing_saved_is_not_told(self, tmp_path: Path) -> None:
        """New nails save nothing."""
        assert "Saved" not in facts(home_page(weekend(tmp_path, "{material: Nails, cost: 9}")).facts)


class TestTheFoot:
    """It says when prices were paid, and nothing of prices where none were."""

    def test_one_day(self, tmp_path: Path) -> None:
        """No span from a day to the same day."""
        told = foot_words(weekend(tmp_path, "{material: Nails, cost: 9}"))
        assert told.startswith("Prices were paid on May 2, 2026, in USD, with tax and delivery. This is an account")

    def test_two_days(self, tmp_path: Path) -> None:
        """From the first to the last."""
        weekend(tmp_path, "{material: Nails, cost: 9}")
        path = tmp_path / "episodes/01-one.md"
        path.write_text(
            path.read_text("utf-8").replace("date: 2026-05-02", "from: 2026-05-02\nto: 2026-05-03"), "utf-8"
        )
        assert foot_words(read(tmp_path)).startswith("Prices were paid from May 2, 2026 to May 3, 2026, in USD")

    @pytest.mark.parametrize("lines", [(), ("{material: Door, source: salvaged}",)])
    def test_nothing_paid(self, tmp_path: Path, lines: tuple[str, ...]) -> None:
        """Found things have no price that anybody paid."""
        assert foot_words(weekend(tmp_path, *lines)).startswith("This is an account of how one person built it")


class TestNumberOfAWord:
    """One line, two lines; leaves and knives."""

    def test_one_phase(self, tmp_path: Path) -> None:
        """One of one."""
        told = weekend(tmp_path, plan="phases: [{key: base, name: Base}]", more="phase: base")
        assert facts(home_page(told).facts)["How far"] == "0 of 1 phase done"

    def test_two_phases(self, tmp_path: Path) -> None:
        """One of two."""
        told = weekend(tmp_path, plan=PLAN, more="phase: base\ndone: [base]")
        assert facts(home_page(told).facts)["How far"] == "1 of 2 phases done"

    @pytest.mark.parametrize(
        ("lines", "told"), [(1, "1 line without a price stands"), (2, "2 lines without a price stand")]
    )
    def test_the_tally(self, tmp_path: Path, lines: int, told: str) -> None:
        """It counts as people do."""
        text = tally(
            weekend(
                tmp_path,
                *["{material: Sand, cost: unknown, rework: yes}"] * lines,
                "{material: Nails, cost: 9, rework: yes}",
            ).account
        )
        assert f"+ at least: {told} below this figure\n" in text
        assert f"not valued: {told.partition(' without')[0]} whose replacement cost nobody knows\n" in text
        assert "rework: at least 9.00\n" in text

    @pytest.mark.parametrize(
        ("one", "many"),
        [
            ("leaf", "leaves"),
            ("knife", "knives"),
            ("Shelf", "Shelves"),
            ("roof", "roofs"),
            ("handkerchief", "handkerchiefs"),
            ("safe", "safes"),
            ("half", "halves"),
        ],
    )
    def test_an_f_that_becomes_a_v(self, one: str, many: str) -> None:
        """There and back: what was written in the plural is the same unit."""
        assert Words("en-US", Currency.named("USD")).quantity(Quantity.of(2, one)) == f"2 {many}"
        assert singular(many) == one


class TestHours:
    """Hours that nobody wrote down are not 0."""

    def test_planned_and_not_told(self, tmp_path: Path) -> None:
        """A phase nobody has begun."""
        assert of_phase(weekend(tmp_path, plan=PLAN, more="phase: base"), "end")["Hours"] == "none written down"

    def test_none_is_none(self, tmp_path: Path) -> None:
        """`hours: 0` was written."""
        assert of_phase(weekend(tmp_path, plan=PLAN, more="phase: end\nhours: 0"), "end")["Hours"] == "0"


class TestWhichFigureIsAJudgement:
    """A note under a line names the figures that are a judgement."""

    def notes(self, folder: Path, line: str) -> list[str]:
        """What stands under the one line."""
        told = weekend(folder, line)
        return list(notes_on(told.view(""), told.account.ledger.lines[0]))

    def test_only_what_it_would_cost_new(self, tmp_path: Path) -> None:
        """The price of nothing is no judgement."""
        line = "{material: Sheets, quantity: 7 sheet, source: salvaged, replacement_cost: about 1900}"
        assert self.notes(tmp_path, line) == ["what it would cost new: a judgement, not on a paper"]

    def test_two_figures(self, tmp_path: Path) -> None:
        """In the order of the keys."""
        assert self.notes(tmp_path, "{material: Sand, quantity: about 2 load, cost: about 150}") == [
            "how many and what it cost: a judgement, not on a paper"
        ]

    @pytest.mark.parametrize(
        "line", ["{material: Sand, cost: 150, estimated: yes}", "{material: Sand, cost: about 150, estimated: yes}"]
    )
    def test_the_whole_line(self, tmp_path: Path, line: str) -> None:
        """No figure is named."""
        assert self.notes(tmp_path, line) == ["a judgement, not on a paper"]

    def test_a_line_in_short(self, tmp_path: Path) -> None:
        """`Sand, about 150` guesses its cost."""
        assert self.notes(tmp_path, "Sand, about 150") == ["what it cost: a judgement, not on a paper"]

    def test_every_key_has_a_name(self) -> None:
        """Whatever may be called a judgement can be named."""
        assert {key.name for key in _JUDGED} == set(GUESSED)
        assert item_keys.COST_OF.name in GUESSED


def test_what_went_elsewhere_is_at_least_so_much(tmp_path: Path) -> None:
    """60 % of 100 stayed; of the other load nobody knows the price."""
    told = weekend(tmp_path, "{material: Stone, cost: 100, share: 60%}", "{material: Sand, cost: unknown, share: 50%}")
    assert "at least $40.00 that went into something else" in [link.text for link in not_in_total(told, "").links]


def test_what_was_saved_leads_to_where_it_is_told(tmp_path: Path) -> None:
    """No figure of the home page stands for itself alone."""
    window = "{material: Window, source: salvaged, replacement_cost: 90}"
    (saved,) = [fact for fact in home_page(weekend(tmp_path, window)).facts if fact.name == "Saved"]
    assert (saved.value, saved.href) == ("$90.00", "sources/index.html")
