"""The rows of `variances` in figures.json: both quantities in one unit, which the row names."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from builder.app import figures_text, work_out

SETTINGS = "title: T\nlanguage: en-US\ncurrency: USD\n"


def variance(folder: Path, planned: str, bought: str) -> dict[str, object]:
    """The only row of a journal with one planned line and one real one."""
    (folder / "episodes").mkdir()
    (folder / "journal.yaml").write_text(SETTINGS, encoding="utf-8")
    (folder / "plan.yaml").write_text(f"phases:\n  - key: g\n    planned:\n      - {{{planned}}}\n", encoding="utf-8")
    front = f"---\ntitle: A\ndate: 2025-03-01\nphase: g\nitems:\n  - {{{bought}}}\n---\n"
    (folder / "episodes" / "01-a.md").write_text(front, encoding="utf-8")
    worked = work_out(folder)
    assert worked.account is not None
    (row,) = json.loads(figures_text(worked.account))["variances"]
    assert isinstance(row, dict)
    return row


@pytest.mark.parametrize(
    ("planned", "bought", "quantities"),
    [
        # 2 t are 2,000 kg; 3 yd are 9 ft.
        ("quantity: 1500 kg, unit_cost: 0.05", "quantity: 2 t, cost: 100", ("1500", "2000", "kg")),
        ("quantity: 12 ft, unit_cost: 2", "quantity: 3 yd, cost: 30", ("12", "9", "ft")),
        ("quantity: 4 bag, unit_cost: 5", "quantity: 5 bag, cost: 30", ("4", "5", "bag")),
        # Only one of the two is known: it is in its own unit.
        ("cost: 40", "quantity: 41 km, cost: 30", (None, "41", "km")),
        ("quantity: 4 bag, unit_cost: 5", "cost: 30", ("4", None, "bag")),
        ("cost: 40", "cost: 30", (None, None, None)),
    ],
)
def test_both_quantities_are_in_the_unit_that_stands_beside_them(
    tmp_path: Path, planned: str, bought: str, quantities: tuple[str | None, str | None, str | None]
) -> None:
    """As planned, where that was counted."""
    row = variance(tmp_path, f"key: s, material: Stone, {planned}", f"material: Stone, {bought}")
    assert (row["planned_quantity"], row["quantity"], row["unit"]) == quantities
