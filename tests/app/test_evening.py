"""From nothing to a published first episode: begin, episode, spend."""

from __future__ import annotations

import datetime
import json
import re
from pathlib import Path

import jsonschema  # type: ignore[import-untyped]
import pytest
import yaml

from builder.beginning import answers
from builder.cli import COMMAND_WRONG, DONE, main
from builder.evening import new_episode
from builder.journal.add_line import NewLine, with_line
from builder.journal.schema import schemas
from builder.journal.starting import last_weekend, slug_of
from builder.journal.writing import NotDone
from builder.spending import Spent, line_told, ready_to_spend, spend
from tests.app.journal_folder import FILES, write

BEGIN = ["--title", "The shed", "--language", "en-US", "--currency", "USD", "--phases", "Ground, Frame"]


def add(journal: Path, new: NewLine) -> Spent:
    """Add a line to the newest episode."""
    return spend(journal, ready_to_spend(journal), new)


def test_a_new_journal_publishes_at_once(tmp_path: Path) -> None:
    """And so does it with a first episode and three costs."""
    journal, site = tmp_path / "shed", tmp_path / "site"
    assert main(["begin", str(journal), *BEGIN, "--ready-by", "2027-10-30"]) == DONE
    assert main(["publish", str(journal), "--to", str(site)]) == DONE
    assert main(["episode", "Pegging out", "--in", str(journal)]) == DONE
    assert main(["spend", "Line and pegs", "18.50", "--in", str(journal)]) == DONE
    assert (
        main(["spend", "Crushed stone", "260", "--quantity", "1 load", "--share", "55%", "--in", str(journal)]) == DONE
    )
    assert main(["spend", "Spade", "31", "--kind", "equipment", "--source", "bought", "--in", str(journal)]) == DONE
    assert main(["publish", str(journal), "--to", str(site)]) == DONE
    data = json.loads((site / "figures.json").read_text(encoding="utf-8"))
    assert data["totals"]["spent"] == "192.50"
    assert data["episodes"][0]["title"] == "Pegging out"
    assert data["episodes"][0]["phase"] == "ground"


def test_begin_never_writes_over_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Not even over one of several."""
    (tmp_path / "plan.yaml").write_text("mine", encoding="utf-8")
    assert main(["begin", str(tmp_path), *BEGIN]) == COMMAND_WRONG
    assert [path.name for path in tmp_path.iterdir()] == ["plan.yaml"]
    assert "plan.yaml is there already" in capsys.readouterr().err


def test_begin_refuses_what_cannot_be(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A currency that is none, with a guess."""
    assert main(["begin", str(tmp_path / "x"), "--title", "A", "--currency", "USS"]) == COMMAND_WRONG
    assert "USS is no currency code" in capsys.readouterr().err
    assert not (tmp_path / "x").exists()


def test_begin_refuses_a_promise_before_its_beginning(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The journal could not be published; nothing is written."""
    assert main(["begin", str(tmp_path / "x"), *BEGIN, "--ready-by", "2021-10-30"]) == COMMAND_WRONG
    begun = last_weekend(datetime.datetime.now().astimezone().date()).first
    assert capsys.readouterr().err == (
        f"barrowbook begin: ready by: 2021-10-30 is before the work begins, {begun}; "
        "expected a date such as 2027-10-30, or none; write a later date, or none; "
        "begun: in journal.yaml can be set back\n"
    )
    assert not (tmp_path / "x").exists()


def test_begin_asks_again_for_a_promise_before_its_beginning() -> None:
    """The day itself will do."""
    replies = iter(["2026-11-20", "2026-11-21"])
    asked: list[str] = []

    def ask(question: str, usual: str) -> str:
        asked.append(question)
        return next(replies) if "Promised" in question else usual

    told = answers({"title": "A"}, ask, datetime.date(2026, 11, 25))
    assert told.ready_by == told.begun == datetime.date(2026, 11, 21)
    again = [question for question in asked if "Promised" in question][1]
    assert again.startswith("ready by: 2026-11-20 is before the work begins, 2026-11-21; expected ")


def test_begin_asks_for_what_is_not_told() -> None:
    """Title, language, currency, date, phases, in this order."""
    asked: list[str] = []

    def ask(question: str, usual: str) -> str:
        asked.append(question.split(" (", maxsplit=1)[0])
        return usual

    told = answers({"title": "The shed"}, ask, datetime.date(2026, 4, 4))
    assert asked == [
        "Language of the pages",
        "Currency",
        "Promised for which date",
        "Phases in order, with commas between",
    ]
    assert (told.title, told.currency, told.ready_by) == ("The shed", "USD", None)


@pytest.mark.parametrize(
    ("language", "currency", "phase"),
    [
        ("en", "USD", "Ground"),
        ("en-GB", "GBP", "Ground"),
        ("en-CA", "CAD", "Ground"),
        ("de", "EUR", "Boden"),
        ("de-AT", "EUR", "Boden"),
        ("de-CH", "CHF", "Boden"),
        ("fr", "EUR", "Terrain"),
        ("fr-CH", "CHF", "Terrain"),
        ("es-MX", "MXN", "Terreno"),
        ("es-419", "USD", "Terreno"),  # no country, so no currency of its own
        ("ja", "JPY", "Ground"),
        ("ja-JP", "JPY", "Ground"),
        ("pt-BR", "BRL", "Ground"),
        ("zh-Hant", "TWD", "Ground"),
        ("bg", "EUR", "Ground"),
        ("xx", "USD", "Ground"),  # nobody's
    ],
)
def test_enter_takes_what_is_usual_for_the_language(language: str, currency: str, phase: str) -> None:
    """The currency of its region, and phases in its words: pages in German have no phase called Ground."""
    told = answers({"language": language}, None, datetime.date(2026, 4, 4))
    assert (told.currency, told.phases[0]) == (currency, phase)


@pytest.mark.parametrize(("language", "bag", "area"), [("en-US", "80 lb", "10 ft"), ("de", "25 kg", "3 m")])
def test_the_comments_measure_as_the_reader_does(tmp_path: Path, language: str, bag: str, area: str) -> None:
    """In feet or in metres."""
    assert main(["begin", str(tmp_path), "--title", "A", "--language", language]) == DONE
    assert f"# floor_area: {area}" in (tmp_path / "journal.yaml").read_text(encoding="utf-8")
    assert f"material: Concrete mix, {bag}" in (tmp_path / "plan.yaml").read_text(encoding="utf-8")


def test_every_comment_that_shows_a_key_can_be_taken_at_its_word(tmp_path: Path) -> None:
    """The # before a key taken away, the files still read: one amount and lines are shown as two ways."""
    assert main(["begin", str(tmp_path), *BEGIN]) == DONE
    for name in ("journal.yaml", "plan.yaml", "owned.yaml"):
        lines = (tmp_path / name).read_text(encoding="utf-8").split("\n")
        shown = [re.sub(r"^(\s*)# ?(?=\s*(?:- )?[a-z_]+:(?: |$))", r"\1", line) for line in lines]
        assert shown != lines
        amount = next((at for at, line in enumerate(shown) if line.startswith("    planned: 500")), None)
        if amount is not None:  # the first phase shows both ways; one of them goes
            del shown[amount]
        (tmp_path / name).write_text("\n".join(shown), encoding="utf-8")
    assert main(["inspect", str(tmp_path)]) == DONE


def test_the_work_begins_with_the_first_episode(tmp_path: Path) -> None:
    """Both are dated with the last weekend, so no episode lies before the beginning."""
    told = answers({"title": "A"}, None, datetime.date(2026, 11, 25))
    assert told.begun == last_weekend(datetime.date(2026, 11, 25)).first == datetime.date(2026, 11, 21)


def test_the_next_build_begins_with_the_leftovers_of_the_last(tmp_path: Path) -> None:
    """At what they cost, in the new journal's stock."""
    old, new = write(tmp_path / "old"), tmp_path / "new"
    assert main(["begin", str(new), *BEGIN, "--after", str(old)]) == DONE
    owned = yaml.safe_load((new / "owned.yaml").read_text(encoding="utf-8"))
    assert owned["stock"]["concrete-mix"] == {"material": "Concrete mix", "quantity": "4 bag", "unit_cost": 5.95}
    assert owned["stock"]["form-boards"] == {"material": "Form boards", "quantity": "8 board", "unit_cost": 7.5}
    assert main(["publish", str(new), "--to", str(tmp_path / "site")]) == DONE


@pytest.mark.parametrize(
    ("today", "first", "last"),
    [
        ("2026-11-25", "2026-11-21", "2026-11-22"),  # a Wednesday: the last weekend
        ("2026-11-22", "2026-11-21", "2026-11-22"),  # a Sunday: this one
        ("2026-11-21", "2026-11-21", "2026-11-21"),  # a Saturday: today
        ("2026-11-23", "2026-11-21", "2026-11-22"),  # a Monday
    ],
)
def test_an_episode_is_dated_with_the_last_weekend(today: str, first: str, last: str) -> None:
    """Or with today, on a Saturday."""
    span = last_weekend(datetime.date.fromisoformat(today))
    assert (str(span.first), str(span.last)) == (first, last)


def test_a_new_episode_reminds_of_what_is_open(tmp_path: Path) -> None:
    """The phase under way, open snags, planned lines nobody bought yet."""
    text = FILES["episodes/02-second.md"].replace(
        "  - material: Form boards\n    quantity: 8 board\n    cost: 80\n    uses: 4\n", ""
    )
    path = new_episode(write(tmp_path, **{"02_second": text}), "Third: the boards", datetime.date(2026, 4, 26))
    written = path.read_text(encoding="utf-8")
    assert path.name == "03-third-the-boards.md"
    assert 'title: "Third: the boards"' in written
    assert "phase: foundation" in written
    assert "#   - The north corner is soft" in written
    assert "# - 8 board of Form boards (against: boards)" in written


def test_a_line_is_added_and_everything_else_stays(tmp_path: Path) -> None:
    """Every comment, blank line and line end."""
    before = FILES["episodes/01-first.md"].replace("snags:", "  # mind the gap\n\n\nsnags:").replace("\n", "\r\n")
    after = with_line(before, NewLine(kind="material", what="Nails", values=(("cost", "3.50"),)))
    assert after.replace("  - Nails, 3.50\r\n", "") == before
    assert after.index("Nails") < after.index("snags:")


def test_spend_refuses_a_line_that_would_be_a_mistake(tmp_path: Path) -> None:
    """The file is then as it was, to the byte."""
    journal = write(tmp_path)
    before = (journal / "episodes/02-second.md").read_bytes()
    with pytest.raises(NotDone, match="nothing was written"):
        add(journal, NewLine(kind="material", what="Nails", values=(("cost", "1,250"),)))
    assert (journal / "episodes/02-second.md").read_bytes() == before
    assert sorted(path.name for path in (journal / "episodes").iterdir()) == ["01-first.md", "02-second.md"]


def test_spend_notices_a_name_nearly_the_same(tmp_path: Path) -> None:
    """So that leftovers are found again by their material."""
    spent = add(write(tmp_path), NewLine(kind="material", what="Concrete mixx", values=(("cost", "12"),)))
    assert spent.noticed[0] == "there is a Concrete mix already: write the same name if it is the same thing"


def test_spend_notices_a_machine_that_owned_yaml_nearly_has(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """By its key or by its name; one of which it has nothing is no matter."""
    journal = write(tmp_path, owned=FILES["owned.yaml"] + "  ruettler: {name: Rüttelplatte, replacement_cost: 9}\n")
    own = ["--source", "owned", "--quantity", "3 hour", "--in", str(journal)]
    assert main(["spend", "ruetler", *own]) == DONE
    assert "note: ruetler is no machine of owned.yaml: did you mean ruettler?\n" in capsys.readouterr().out
    assert main(["spend", "Rüttelplatte", *own]) == DONE
    assert "note: Rüttelplatte is no machine of owned.yaml: write ruettler\n" in capsys.readouterr().out
    for word in ("ruettler", "Hammer"):
        assert main(["spend", word, *own]) == DONE
        assert "owned.yaml" not in capsys.readouterr().out


def test_spend_says_the_key_of_a_phase_that_was_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing is written."""
    journal = write(tmp_path)
    before = (journal / "episodes/02-second.md").read_bytes()
    assert main(["spend", "Sand", "3", "--phase", "Foundation", "--in", str(journal)]) == COMMAND_WRONG
    assert "Foundation is no phase of the plan; expected ground or foundation; write foundation;" in (
        capsys.readouterr().err
    )
    assert (journal / "episodes/02-second.md").read_bytes() == before


def test_spend_asks_when_nothing_is_told(tmp_path: Path) -> None:
    """What, how many, how much, where from, what it is worth where it was found; empty answers leave a key out."""
    replies = iter(["Bolts", "12", "about 30", "salvaged", ""])
    new = line_told({}, lambda question, usual: next(replies), ready_to_spend(write(tmp_path)))
    assert new.written() == ["- material: Bolts", "  quantity: 12", "  cost: about 30", "  source: salvaged"]


def test_spend_never_takes_an_older_episode_for_one_that_cannot_be_read(tmp_path: Path) -> None:
    """The line would stand in the wrong weekend; and a new episode would take a number twice."""
    journal = write(tmp_path, **{"episodes/03-third.md": "---\ntitle: [\n---\n"})
    before = {path: path.read_bytes() for path in journal.rglob("*.*")}
    with pytest.raises(NotDone, match=r"episodes/03-third\.md:3:.*mend this first; nothing was written"):
        ready_to_spend(journal)
    with pytest.raises(NotDone, match="mend this first"):
        new_episode(journal, "Fourth", datetime.date(2026, 4, 26))
    assert {path: path.read_bytes() for path in journal.rglob("*.*")} == before


def test_words_become_a_file_name() -> None:
    """In every script, never empty, never a path."""
    assert [slug_of(text) for text in ("Fußboden & Dach", "../../etc", "屋根", "2nd pour")] == [
        "fussboden-dach",
        "etc",
        "episode",
        "e-2nd-pour",
    ]


def test_the_schemas_accept_the_demo_and_refuse_a_slip(root: Path) -> None:
    """What editors check while typing is what the reading takes."""
    known = {name: json.loads(text) for name, text in schemas()}
    for name, schema in known.items():
        jsonschema.Draft202012Validator.check_schema(schema)
        if name != "episode":
            told = yaml.load((root / "content" / f"{name}.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
            jsonschema.validate(told, schema)
    for path in sorted((root / "content/episodes").glob("*.md")):
        front = path.read_text(encoding="utf-8").split("---\n")[1]
        jsonschema.validate(yaml.load(front, Loader=yaml.BaseLoader), known["episode"])
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({"title": "A", "itmes": []}, known["episode"])
