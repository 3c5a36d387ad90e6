"""A journal of one weekend, as the pages get it, and what stands on them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from builder.app import work_out
from builder.pages.site import Material
from builder.pages.table import Row, Table
from builder.pages.wording import Words


def weekend(
    folder: Path, *items: str, plan: str = "", more: str = "", owned: str = "", speaks: str = "en-US", pays: str = "USD"
) -> Material:
    """One episode with these lines and more front matter, worked out and worded."""
    (folder / "episodes").mkdir()
    (folder / "journal.yaml").write_text(f"title: A shed\nlanguage: {speaks}\ncurrency: {pays}\n", "utf-8")
    for name, text in (("plan.yaml", plan), ("owned.yaml", owned)):
        if text:
            (folder / name).write_text(text, "utf-8")
    lines = "".join(f"  - {item}\n" for item in items)
    front = f"title: One\ndate: 2026-05-02\n{more}\n" + (f"items:\n{lines}" if lines else "")
    (folder / "episodes" / "01-one.md").write_text(f"---\n{front}---\nWork.\n", "utf-8")
    return read(folder)


def read(folder: Path) -> Material:
    """The journal in a folder, worked out and worded."""
    worked = work_out(folder)
    assert worked.account is not None, worked.mistakes
    language = worked.account.journal.settings.language
    return Material(account=worked.account, words=Words(language, worked.account.ledger.currency), photos={})


def column(table: Table | None, label: str) -> list[str]:
    """What stands in a column, the foot last."""
    assert table is not None
    (at,) = [at for at, one in enumerate(table.columns) if one.label == label]
    return [row.cells[at].text for row in (*table.rows, *table.foot)]


def texts(rows: Iterable[Row]) -> list[list[str]]:
    """The cells of rows."""
    return [[cell.text for cell in row.cells] for row in rows]
