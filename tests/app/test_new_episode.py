"""The file that `episode` makes: it reads, its comments can be taken at their word, and no page shows any of them."""

from __future__ import annotations

import datetime
import re
from pathlib import Path

import pytest

from builder.cli import COMMAND_WRONG, DONE, main
from builder.evening import new_episode
from builder.journal.records.item import Item, Told
from builder.journal.writing import NotDone
from builder.spending import line_told, ready_to_spend
from tests.app.journal_folder import write
from tests.app.test_evening import BEGIN

REFUSED = {
    "": 'the title is empty; tell it in a few words, as in: barrowbook episode "Pegging out"',
    " \t": 'the title is empty; tell it in a few words, as in: barrowbook episode "Pegging out"',
    "The \x1b[1mroof": (
        "there is a character that cannot be printed (U+001B); expected letters, digits and signs; "
        "write another title; nothing was written"
    ),
    "The r\udcf6\udcdf": (
        "the byte 0xf6 is not UTF-8 text; expected a file saved as UTF-8; write another title; nothing was written"
    ),
}


@pytest.mark.parametrize("title", REFUSED)
def test_an_episode_is_not_made_under_a_title_that_does_not_read(tmp_path: Path, title: str) -> None:
    """Nothing is written, so the journal still reads."""
    journal = write(tmp_path)
    with pytest.raises(NotDone) as refused:
        new_episode(journal, title, datetime.date(2026, 4, 26))
    assert str(refused.value) == REFUSED[title]
    assert sorted(path.name for path in (journal / "episodes").iterdir()) == ["01-first.md", "02-second.md"]


SIGNS = ("!!!", "---", "{= spent =}", "no", "# 4", "\"Quoted\" 'twice' \\ back", "a: b", "屋根", "12:30")


@pytest.mark.parametrize("title", SIGNS)
def test_any_other_title_is_read_as_it_was_told(tmp_path: Path, title: str) -> None:
    """Signs too, and what the format has its own use for."""
    journal = write(tmp_path)
    new_episode(journal, title, datetime.date(2026, 4, 26))
    account = ready_to_spend(journal)
    assert account.journal.episodes[-1].title == title


@pytest.mark.parametrize("title", ["", "  ", "The \x1b[1mroof"])
def test_begin_makes_nothing_under_a_title_that_does_not_read(tmp_path: Path, title: str) -> None:
    """Not even the folder."""
    assert main(["begin", str(tmp_path / "x"), "--title", title]) == COMMAND_WRONG
    assert not (tmp_path / "x").exists()


USUAL = """  - material: Old window
    source: salvaged
    quantity: 1
    replacement_cost: 12000
  - Nails, unknown
  - material: Mix
    quantity: 36 bag
    unit_cost: 612.5
  - material: "2x6"
    cost: 3600
  - {material: Sand, cost: rest, receipt: yard}
receipts:
  yard: {total: 900}
"""


def uncommented(text: str, heading: str) -> str:
    """The text with the # taken away from the lines that are suggested under a heading."""
    before, _, after = text.partition(f"  # {heading}:\n")
    suggested, _, rest = after.partition("---")
    return f"{before}{suggested.replace('  # ', '  ')}---{rest}"


def test_what_is_suggested_is_the_kind_of_line_that_it_was(tmp_path: Path) -> None:
    """With the # taken away it reads, in a currency without decimals too; what was found is not bought."""
    front = "---\ntitle: A\ndate: 2026-04-0%s\nitems:\n" + USUAL + "---\n"
    journal = tmp_path / "shed"
    assert main(["begin", str(journal), "--title", "A", "--language", "ja"]) == DONE
    (journal / "plan.yaml").unlink()
    for number in (1, 2):
        (journal / f"episodes/0{number}-a.md").write_text(front % number, encoding="utf-8")
    path = new_episode(journal, "Third", datetime.date(2026, 4, 26))
    text = uncommented(path.read_text(encoding="utf-8"), "what you use most")
    path.write_text(text, encoding="utf-8")
    account = ready_to_spend(journal)
    suggested = {item.what: item for item in account.journal.episodes[-1].items}
    before = {item.what: item for item in account.journal.episodes[0].items}
    assert suggested.keys() == before.keys() == {"Old window", "Nails", "Mix", "2x6", "Sand"}
    for what in ("Old window", "Nails", "Mix", "2x6"):
        assert _priced(suggested[what]) == _priced(before[what])
    assert suggested["Sand"].cost is Told.UNKNOWN


def _priced(item: Item) -> tuple[object, ...]:
    return item.source, item.quantity, item.unit_cost, item.cost, item.replacement_cost


@pytest.mark.parametrize(("currency", "amount"), [("JPY", "3690"), ("USD", "36.90"), ("KWD", "36.90")])
def test_the_examples_of_a_new_episode_are_in_the_journals_currency(tmp_path: Path, currency: str, amount: str) -> None:
    """Taken at their word they read."""
    assert main(["begin", str(tmp_path), *BEGIN, "--currency", currency]) == DONE
    path = new_episode(tmp_path, "First", datetime.date(2026, 4, 26))
    text = path.read_text(encoding="utf-8")
    assert f"  # - Galvanised nails, {amount}\n" in text
    shown = re.sub(r"^  # (?=- |  )", "  ", text, flags=re.MULTILINE)
    path.write_text(shown, encoding="utf-8")
    account = ready_to_spend(tmp_path)
    assert [item.what for item in account.journal.episodes[0].items] == ["Galvanised nails", "Crushed stone"]
    asked: list[str] = []
    line_told({"what": "Nails"}, lambda question, usual: (asked.append(question), "5")[1], account)
    (cost,) = re.findall(r"[\d.]+", asked[0])[:1]
    assert ("." in cost) == ("." in amount)


def test_a_new_episode_publishes_no_word_that_its_author_did_not_write(tmp_path: Path) -> None:
    """The line that shows where the story goes is on no page, neither before nor after a story stands below it."""
    journal, site = tmp_path / "shed", tmp_path / "site"
    assert main(["begin", str(journal), *BEGIN]) == DONE
    assert main(["episode", "Pegging out", "--in", str(journal)]) == DONE
    (episode,) = (journal / "episodes").iterdir()
    assert "in place of this line" in episode.read_text(encoding="utf-8")
    for story in ("", "We dug until dark.\n"):
        episode.write_text(episode.read_text(encoding="utf-8") + story, encoding="utf-8")
        assert main(["publish", str(journal), "--to", str(site)]) == DONE
        texts = [path.read_text(encoding="utf-8") for path in site.rglob("*.*") if path.suffix != ".png"]
        assert not [text for text in texts if "this weekend" in text]
        page = (site / "episodes/01-pegging-out/index.html").read_text(encoding="utf-8")
        assert ("<p>We dug until dark.</p>" in page) == bool(story)
