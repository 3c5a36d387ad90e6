"""What was drawn from stock of an earlier job that was only guessed says so under its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pages.episode import episode_page
from tests.pages.weekend import weekend

DRAW = "{material: Mix, source: stock, quantity: 2 bag}"


@pytest.mark.parametrize(
    ("price", "notes"),
    [("3", ["From an earlier job"]), ("about 3", ["a judgement, not on a paper", "From an earlier job"])],
)
def test_a_guess_is_told_where_it_is_used(tmp_path: Path, price: str, notes: list[str]) -> None:
    """Not only where the stock was written down."""
    owned = f"stock:\n  mix: {{material: Mix, quantity: 9 bag, unit_cost: {price}, replacement_cost: 4}}\n"
    costs = episode_page(weekend(tmp_path, DRAW, owned=owned), 0).costs
    assert costs is not None
    assert [list(row.notes) for row in costs.rows] == [notes]
