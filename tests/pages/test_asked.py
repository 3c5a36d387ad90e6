"""What readers ask on the pages: is it on plan, and which materials did it take."""

from __future__ import annotations

from pathlib import Path

from builder.app import work_out
from builder.figures.account import Account
from builder.pages.asked import materials
from builder.pages.costs import View
from builder.pages.standing import on_plan
from builder.pages.wording import Words
from builder.words.money import Currency

ENGLISH = Words("en-US", Currency.named("USD"))

BOARDS = "- {id: forms, material: Form boards, quantity: 8 board, unit_cost: 10, uses: 4}"
AGAIN = "- {material: Form boards, quantity: 6 board, source: stock}"
PLANNED = "phases: [{key: ground, name: Ground, planned: 200}, {key: roof, name: Roof, planned: 100}]"


def account(folder: Path, *items: str, plan: str = "", more: str = "", owned: str = "") -> Account:
    """A journal of one episode with these lines, worked out."""
    (folder / "episodes").mkdir()
    (folder / "journal.yaml").write_text("title: A shed\nlanguage: en-US\ncurrency: USD\n", "utf-8")
    for name, text in (("plan.yaml", plan), ("owned.yaml", owned)):
        if text:
            (folder / name).write_text(text, "utf-8")
    lines = "\n".join(f"  {item}" for item in items)
    (folder / "episodes" / "01-one.md").write_text(
        f"---\ntitle: One\ndate: 2026-05-02\n{more}\nitems:\n{lines}\n---\nWork.\n", "utf-8"
    )
    worked = work_out(folder)
    assert worked.account is not None, worked.mistakes
    return worked.account


def listed(told: Account) -> list[str]:
    """The list of materials, line by line."""
    return materials(View(account=told, words=ENGLISH, root="")).splitlines()


class TestTheListOfMaterials:
    """It says what somebody else has to bring, so a thing is in it once however often it served."""

    def test_what_serves_again_is_counted_once(self, tmp_path: Path) -> None:
        """Eight boards, six of them used a second time, are eight boards."""
        assert listed(account(tmp_path, BOARDS, AGAIN)) == ["Form boards: 8 boards"]

    def test_what_is_sold_after_its_use_was_needed_all_the_same(self, tmp_path: Path) -> None:
        """Five of them sold: it still took eight."""
        sold = "- {material: Form boards, quantity: 5 board, source: sold, cost: 20}"
        assert listed(account(tmp_path, BOARDS, AGAIN, sold)) == ["Form boards: 8 boards"]

    def test_leftovers_are_counted_when_they_are_used(self, tmp_path: Path) -> None:
        """Ten bought, seven used, two more drawn: nine."""
        bought = "- {material: Concrete mix, quantity: 10 bag, used: 7 bag, cost: 60}"
        drawn = "- {material: Concrete mix, quantity: 2 bag, source: stock}"
        assert listed(account(tmp_path, bought, drawn)) == ["Concrete mix: 9 bags"]

    def test_leftovers_of_an_earlier_job_are_needed_too(self, tmp_path: Path) -> None:
        """Nobody bought them for this build, and yet it took them."""
        owned = "stock: {felt: {material: Roofing felt, quantity: 2 roll, unit_cost: 30}}"
        drawn = "- {material: Roofing felt, quantity: 1 roll, source: stock}"
        assert listed(account(tmp_path, drawn, owned=owned)) == ["Roofing felt: 1 roll"]

    def test_an_amount_nobody_wrote_down_is_not_none(self, tmp_path: Path) -> None:
        """Three bags, and some more another time."""
        counted, uncounted = "- {material: Sand, quantity: 3 bag, cost: 12}", "- {material: Sand, cost: 5}"
        assert listed(account(tmp_path, counted, uncounted)) == ["Sand: at least 3 bags"]


class TestOnPlan:
    """The first page says whether the build is over or under, by how much, and what that rests on."""

    def said(self, folder: Path, cost: str, more: str = "done: [ground]") -> tuple[str, str, str]:
        """The sentence, its mark and the sentence behind it, after so much for the ground."""
        stone = f"- {{material: Stone, cost: {cost}}}"
        told = on_plan(account(folder, stone, plan=PLANNED, more=f"phase: ground\n{more}"), ENGLISH)
        assert told is not None
        return told.verdict.replace("\u00a0", " "), told.mark, told.behind

    def test_over(self, tmp_path: Path) -> None:
        """The rest is taken at its planned price, so the difference is what has happened so far."""
        assert self.said(tmp_path, "230") == (
            "Against the plan so far: $30.00 over.",
            "over",
            "If the rest costs what was planned, the whole build uses up $330.00; the plan was $300.00.",
        )

    def test_under(self, tmp_path: Path) -> None:
        """What was not spent on a phase that is done."""
        assert self.said(tmp_path, "150")[:2] == ("Against the plan so far: $50.00 under.", "under")

    def test_to_the_cent(self, tmp_path: Path) -> None:
        """Neither over nor under has no mark."""
        assert self.said(tmp_path, "200")[:2] == ("Against the plan so far: on plan.", "")

    def test_a_price_nobody_knows_makes_it_at_least(self, tmp_path: Path) -> None:
        """Unknown is not zero."""
        assert self.said(tmp_path, "230}\n  - {material: Sand, cost: unknown")[0] == (
            "Against the plan so far: at least $30.00 over."
        )

    def test_when_all_is_done_it_is_no_longer_so_far(self, tmp_path: Path) -> None:
        """What was planned for the roof and never needed makes it under."""
        assert self.said(tmp_path, "230", "done: [ground, roof]") == (
            "Against the plan: $70.00 under.",
            "under",
            "The whole build was to cost $300.00.",
        )

    def test_without_a_plan_there_is_nothing_to_say(self, tmp_path: Path) -> None:
        """No sentence, and none that guesses."""
        assert on_plan(account(tmp_path, "- {material: Stone, cost: 1}"), ENGLISH) is None
