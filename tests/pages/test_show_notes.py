"""Show notes: whoever adds their lines comes to the total below them."""

from __future__ import annotations

from pathlib import Path

from builder.pages.feed import show_notes
from builder.pages.site import Material
from tests.pages.weekend import weekend

STONE = "{material: Crushed stone, quantity: 10 ton, cost: 402.03, share: 60%}"
FELT = "stock: {felt: {material: Roofing felt, quantity: 2 roll, unit_cost: 7.60}}"


def lines(told: Material) -> list[str]:
    """The lines of the notes that carry an amount: those of the costs, the episode's total, the running total."""
    notes = show_notes(told, told.account.journal.episodes[0]).splitlines()
    return [line.removeprefix("- ") for line in notes if line.startswith(("- ", "This episode", "Spent so far"))]


class TestLinesAddUpToTheEpisode:
    """Every line is told at what it spent: paid and brought in, less what went elsewhere."""

    def test_what_went_elsewhere_is_not_in_the_line(self, tmp_path: Path) -> None:
        """60 % of 402.03 is 241.218, half up 241.22."""
        assert lines(weekend(tmp_path, STONE, "{material: Nails, cost: 9.00}")) == [
            "Crushed stone, 10 tons (bought): $241.22, the rest of $402.03 went elsewhere",
            "Nails (bought): $9.00",
            "This episode: $250.22",
            "Spent so far: $250.22",
        ]

    def test_leftovers_of_an_earlier_job_count_at_what_they_cost_then(self, tmp_path: Path) -> None:
        """Two rolls at 7.60."""
        drawn = "{material: Roofing felt, quantity: 2 roll, source: stock}"
        assert lines(weekend(tmp_path, drawn, owned=FELT)) == [
            "Roofing felt, 2 rolls (taken from stock): $15.20",
            "This episode: $15.20",
            "Spent so far: $15.20",
        ]

    def test_what_was_paid_for_before_is_told_so(self, tmp_path: Path) -> None:
        """It is neither free nor paid for twice."""
        bought = "{material: Sand, quantity: 3 bag, used: 2 bag, cost: 12}"
        assert lines(weekend(tmp_path, bought, "{material: Sand, quantity: 1 bag, source: stock}"))[:3] == [
            "Sand, 3 bags (bought): $12.00",
            "Sand, 1 bag (taken from stock): paid for before",
            "This episode: $12.00",
        ]

    def test_a_known_part_of_an_unknown_price_is_the_least_it_was(self, tmp_path: Path) -> None:
        """Unknown is not zero, and 150 is not all of it."""
        part = "{material: Stone, quantity: 1 load, cost: unknown, share: 150}"
        assert lines(weekend(tmp_path, part, "{material: Rope, cost: unknown}")) == [
            "Stone, 1 load (bought): at least $150.00",
            "Rope (bought): not priced",
            "This episode: at least $150.00",
            "Spent so far: at least $150.00",
        ]


def test_a_line_is_called_as_the_ledger_calls_it(tmp_path: Path) -> None:
    """A journey is travel and no unpaid work; a permit is a fee and nobody's labour."""
    told = weekend(
        tmp_path, "{travel: Tip, quantity: 1 mi}", "{fee: Permit, cost: 20}", "{labour: Mason, cost: 90, source: paid}"
    )
    assert lines(told)[:3] == ["Tip, 1 mile (travel): $0.00", "Permit (fee): $20.00", "Mason (paid work): $90.00"]
