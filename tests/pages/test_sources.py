"""The sources page: unknown is not zero, and its words are the ledger's."""

from __future__ import annotations

import re
from pathlib import Path

from builder.pages.ledger import ledger_page
from builder.pages.sources import sources_page
from tests.pages.weekend import column, texts, weekend

AUGER = "{equipment: Auger, source: hired, quantity: 1 day, cost: unknown}"
MIXER = "{equipment: Mixer, source: hired, quantity: 1 day, cost: 62}"
SAND = "{material: Sand, quantity: 2 load, cost: unknown, used: 1 load, rework: yes}"
PIER = "{material: Concrete mix, quantity: 10 bag, cost: 60, used: 7 bag, rework: yes}"


class TestUnknownIsNotZero:
    """Law 7: a line of unknown cost is not priced, and whatever stands above it says "at least"."""

    def test_machines(self, tmp_path: Path) -> None:
        """The auger cost something; together it was 62.00 and more."""
        machines = sources_page(weekend(tmp_path, AUGER, MIXER)).machines
        assert column(machines, "Job cost") == ["not priced", "62.00", "at least 62.00"]
        assert column(machines, "Replacement cost") == ["not valued", "62.00", "at least 62.00"]

    def test_what_was_done_twice(self, tmp_path: Path) -> None:
        """Seven of ten bags at 6.00 are 42.00; nobody knows what the sand was."""
        assert column(sources_page(weekend(tmp_path, SAND, PIER)).rework, "Job cost") == [
            "not priced", "42.00", "at least 42.00",
        ]  # fmt: skip

    def test_what_is_left(self, tmp_path: Path) -> None:
        """Three of ten bags at 6.00 are 18.00, and a load of sand is worth something too."""
        left = sources_page(weekend(tmp_path, SAND, PIER)).in_stock
        assert column(left, "Worth, at cost") == ["not priced", "18.00", "at least 18.00"]

    def test_leftovers_of_earlier_jobs(self, tmp_path: Path) -> None:
        """One has a price, 2 at 7.60; the other was written down without."""
        owned = (
            "stock:\n  a: {material: Felt, quantity: 2 roll, unit_cost: 7.60}\n  b: {material: Slate, quantity: 9}\n"
        )
        earlier = sources_page(weekend(tmp_path, MIXER, owned=owned)).from_earlier
        assert column(earlier, "Worth, at cost") == ["15.20", "not priced", "at least 15.20"]

    def test_what_cost_most(self, tmp_path: Path) -> None:
        """A known part of an unknown load is the least that it cost."""
        page = sources_page(weekend(tmp_path, "{material: Stone, cost: unknown, share: 150}", MIXER))
        assert column(page.most, "Job cost") == ["at least 150.00", "62.00"]

    def test_the_chart_says_what_the_table_says(self, tmp_path: Path) -> None:
        """By where things came from, in the bars, in their description and in the column."""
        page = sources_page(weekend(tmp_path, AUGER, MIXER, "{material: Stone, cost: unknown}"))
        assert column(page.by_source, "Paid") == ["at least 0.00", "at least 62.00", "at least 62.00"]
        assert re.findall("<desc[^>]*>([^<]*)", page.shares) == ["bought not priced and hired at least $62.00"]
        assert "at least 62.00" in page.shares

    def test_paid_work(self, tmp_path: Path) -> None:
        """One mason's bill is lost."""
        page = sources_page(
            weekend(
                tmp_path, "{labour: Mason, source: paid, cost: unknown}", "{labour: Roofer, source: paid, cost: 90}"
            )
        )
        assert [fact.value for fact in page.work if fact.name == "Paid labour"] == ["at least $90.00"]


class TestWhereThingsCameFrom:
    """The words are those of the ledger's column, so that one page can be held against the other."""

    LINES = (
        "{fee: Permit, cost: 20}",
        "{travel: Tip, quantity: 1 mi, cost: 3}",
        "{labour: Mason, source: paid, cost: 90}",
        "{labour: June, quantity: 2 hour}",
        "{material: Forms, quantity: 8 board, cost: 80, uses: 4}",
        "{material: Forms, quantity: 8 board, source: stock}",
    )

    def test_fees_and_journeys_have_rows_of_their_own(self, tmp_path: Path) -> None:
        """A permit is no paid work, and a journey no unpaid one."""
        rows = texts(sources_page(weekend(tmp_path, *self.LINES)).by_source.rows)
        assert [row[:3] for row in rows] == [
            ["bought", "1", "80.00"],
            ["unpaid work", "1", "0.00"],
            ["paid work", "1", "90.00"],
            ["used again", "1", "0.00"],
            ["fee", "1", "20.00"],
            ["travel", "1", "3.00"],
        ]

    def test_they_are_the_ledgers(self, tmp_path: Path) -> None:
        """Whatever can be chosen there has a row here."""
        told = weekend(tmp_path, *self.LINES)
        assert set(column(sources_page(told).by_source, "Where from")[:-1]) == set(ledger_page(told).sources)
