"""Journals with a plan, worked out and laid out, and what their pages say."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from pathlib import Path
from textwrap import dedent

from builder.app import work_out
from builder.figures.account import Account
from builder.pages.costs import View
from builder.pages.site import Material
from builder.pages.table import Table
from builder.pages.wording import Words
from builder.words.money import Currency

ENGLISH = Words("en-US", Currency.named("USD"))


def build(
    folder: Path, plan: str, *episodes: str, settings: str = "", as_of: datetime.date | None = None, owned: str = ""
) -> Account:
    """A journal of a plan and episodes, worked out: Saturdays from 4 April 2026 on; one that names its day keeps it."""
    (folder / "episodes").mkdir()
    told = dedent(settings)
    (folder / "journal.yaml").write_text(f"title: A shed\nlanguage: en-US\ncurrency: USD\n{told}", "utf-8")
    (folder / "plan.yaml").write_text(dedent(plan), "utf-8")
    if owned:
        (folder / "owned.yaml").write_text(dedent(owned), "utf-8")
    for number, front in enumerate(episodes, 1):
        day = datetime.date(2026, 4, 4) + (number - 1) * datetime.timedelta(weeks=1)
        dated = "" if "date:" in front else f"date: {day}\n"
        text = f"---\ntitle: Day {number}\n{dated}{dedent(front)}\n---\nWork.\n"
        (folder / "episodes" / f"{number:02d}-day.md").write_text(text, "utf-8")
    worked = work_out(folder, as_of)
    assert worked.account is not None, worked.mistakes
    return worked.account


def material(account: Account, words: Words = ENGLISH) -> Material:
    """What pages are made from."""
    return Material(account=account, words=words, photos={})


def view(account: Account) -> View:
    """The account as seen from the first page."""
    return View(account=account, words=ENGLISH, root="")


def rows(table: Table | None) -> list[list[str]]:
    """The cells of a table with their small words, empty ones left out; none where there is no table."""
    return [] if table is None else [list(_cells(row.cells)) for row in (*table.rows, *table.foot)]


def _cells(cells: object) -> Iterator[str]:
    assert isinstance(cells, tuple)
    for cell in cells:
        text = " ".join(part for part in (cell.text, cell.small) if part)
        if text:
            yield text
