"""The README says what the program does: its tables are made from the keys, its commands exist, its journal works."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.app import work_out
from builder.cli import DONE, main
from builder.format_page import GROUPS, METHODS, table, with_tables


def test_the_format_page_is_made_from_the_declared_keys(root: Path) -> None:
    """Every group of keys stands on it, as the reading declares it."""
    page = (root / "README.md").read_text(encoding="utf-8")
    assert with_tables(page) == page, "run: python -m builder.format_page README.md"
    missing = [name for name in (*GROUPS, METHODS) if f"<!-- keys: {name} -->" not in page]
    assert not missing


def test_every_key_has_a_meaning_and_an_example() -> None:
    """On its row of the format page."""
    for group in GROUPS.values():
        rows = table(group).splitlines()[2:]
        assert len(rows) == len(group.keys)
        assert all(len(cell.strip()) > 2 for row in rows for cell in row.strip("|").split("|"))


def test_every_command_that_the_readme_names_exists(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """And the help lists no other."""
    page = (root / "README.md").read_text(encoding="utf-8")
    named = {found[1] for found in re.finditer(r"^(?:\.venv/bin/)?barrowbook (\w+)", page, re.MULTILINE)}
    with pytest.raises(SystemExit) as ended:
        main(["--help"])
    assert ended.value.code == DONE
    listed = set(re.findall(r"^    (\w+)(?: |$)", capsys.readouterr().out, re.MULTILINE))
    assert named <= listed
    assert {"begin", "episode", "spend", "inspect", "tally", "takeoff", "preview", "publish", "completion"} == listed


def test_the_episode_in_the_readme_reads_as_it_says(root: Path, tmp_path: Path) -> None:
    """Three bags stay in stock; a quarter of the boards is used up."""
    page = (root / "README.md").read_text(encoding="utf-8")
    episode = re.search(r"```markdown\n(---\ntitle: The footing.*?)```", page, re.DOTALL)
    assert episode is not None
    (tmp_path / "episodes").mkdir()
    (tmp_path / "journal.yaml").write_text("title: A\nlanguage: en-US\ncurrency: USD\n", encoding="utf-8")
    text = episode[1].replace("{= bags used of mix =}", "them")
    (tmp_path / "episodes/01-the-footing.md").write_text(text, encoding="utf-8")
    worked = work_out(tmp_path)
    assert worked.mistakes == ()
    assert worked.account is not None
    whole = worked.account.sums.whole
    # 58 x 6.18 = 358.44, of which 55/58 = 339.90 go in; 83.20 / 4 = 20.80; wire 8.90.
    assert (whole.job_cost, whole.in_stock, whole.reusable) == (33990 + 2080 + 890, 1854, 6240)


def test_the_guide_names_only_files_that_are_there(root: Path) -> None:
    """Paths of DEVELOPERS.md, in the project or in the package."""
    guide = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`((?:builder/|tests/|\.ci/)?[a-z_]+(?:/[a-zA-Z_]+)*\.(?:py|txt|sh|html))`", guide))
    gone = [name for name in named if not (root / name).exists() and not (root / "builder" / name).exists()]
    assert [name for name in gone if "NAME" not in name] == []
