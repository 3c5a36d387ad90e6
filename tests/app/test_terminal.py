"""At a terminal: what is drawn while something takes long, and what is asked."""

from __future__ import annotations

import io
import subprocess
from pathlib import Path

import pytest
from PIL import Image

from builder.cli import COMMAND_WRONG, DONE
from builder.terminal import PATIENCE, PAUSE, along, bar_line
from tests.app.journal_folder import FILES, write
from tests.app.seat import command, environment, seat

# The bar without its patience: every step is drawn, however quick this machine is.
AT_ONCE = "import builder.terminal as t; t.PATIENCE = t.PAUSE = 0"


class Screen(io.StringIO):
    """A terminal that keeps what was written to it."""

    def isatty(self) -> bool:
        return True


class Clock:
    """A clock that is moved by hand."""

    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


def with_photo(folder: Path) -> Path:
    """The small journal with one photo in its second episode."""
    story = FILES["episodes/02-second.md"] + "\n![The bags](../photos/bags.png)\n"
    write(folder, **{"02_second": story})
    (folder / "photos").mkdir()
    Image.new("RGB", (64, 48), "teal").save(folder / "photos/bags.png")
    return folder


def test_nothing_is_drawn_within_the_first_second() -> None:
    """Most commands are quicker, and a bar that flashes is a nuisance."""
    screen, clock = Screen(), Clock()
    with along(screen, clock) as tell:
        for done in range(100):
            clock.now = done * PATIENCE / 100
            tell(done, 200, "pages")
    assert screen.getvalue() == ""


def test_a_bar_is_drawn_at_most_ten_times_a_second() -> None:
    """However often it is told; the first time as soon as the patience is over."""
    screen, clock = Screen(), Clock()
    with along(screen, clock) as tell:
        for done in range(3000):
            clock.now = done / 1000
            tell(done, 3000, "pages")
        drawn = screen.getvalue().count("\rpages")
    assert 15 <= drawn <= 2 / PAUSE


def test_a_new_step_is_drawn_at_once() -> None:
    """It may tell nothing more for a while, and the name of the last one would be wrong."""
    screen, clock = Screen(), Clock()
    with along(screen, clock) as tell:
        clock.now = PATIENCE
        tell(1, 2, "photos")
        tell(0, 0, "adding up")
        assert screen.getvalue().split("\r")[-1].rstrip() == "adding up ..."


def test_the_bar_is_gone_at_the_end_even_of_a_failure() -> None:
    """What is printed next begins on an empty line."""
    screen, clock = Screen(), Clock()

    def fails() -> None:
        with along(screen, clock) as tell:
            clock.now = PATIENCE
            tell(1, 2, "photos")
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fails()
    *_, blank, after = screen.getvalue().split("\r")
    assert (blank.strip(), after) == ("", "")
    assert len(blank) >= len("photos 1 of 2 [")


@pytest.mark.parametrize("width", [1, 8, 20, 40, 80, 300])
def test_a_bar_fits_its_terminal(width: int) -> None:
    """And grows with the work, from nothing to full, never over its end."""
    lines = [bar_line(done, 12, "photos", width) for done in range(13)]
    assert max(map(len, lines)) <= width
    filled = [line.count("=") for line in lines]
    assert filled == sorted(filled)
    assert width < 30 or (filled[0] == 0 and lines[12].endswith("=]"))


def test_the_steps_of_publishing_are_drawn_on_a_terminal(tmp_path: Path) -> None:
    """Reading, photos and files by number; of the sums, that they are being made. Then all of it is gone."""
    journal = with_photo(tmp_path / "journal")
    with seat("publish", str(journal), "--to", "site", folder=tmp_path, before=AT_ONCE) as person:
        assert person.ends() == DONE
    for step in ("\repisodes read 0 of 2 [", "\radding up ...", "\rphotos 0 of 1 ["):
        assert step in person.seen
    lines = person.screen.split("\n")
    assert not [line for line in lines if "[" in line or "..." in line]
    assert lines[-2] == "To put it on the web, copy the folder site to any host. Open site/index.html"


def test_a_narrow_terminal_never_wraps_the_bar(tmp_path: Path) -> None:
    """A line that is too long would be left standing."""
    with seat("tally", str(write(tmp_path / "journal")), folder=tmp_path, before=AT_ONCE, columns=24) as person:
        assert person.ends() == DONE
    drawn = [part for line in person.seen.split("\r\n") for part in line.split("\r")[1:] if part.startswith("episodes")]
    assert drawn
    assert max(map(len, drawn)) < 24


@pytest.mark.parametrize(
    "words", [("publish", "journal", "--to", "site"), ("tally", "journal"), ("inspect", "journal")]
)
def test_nothing_is_drawn_where_output_goes_to_a_file(tmp_path: Path, words: tuple[str, ...]) -> None:
    """A log is not a terminal."""
    with_photo(tmp_path / "journal")
    run = subprocess.run(
        command(words, AT_ONCE),
        cwd=tmp_path,
        env=environment(tmp_path / "cache"),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == DONE
    assert "\r" not in run.stderr + run.stdout
    assert "episodes read" not in run.stderr


# --- questions ------------------------------------------------------------------------------


def test_begin_asks_four_things_and_again_what_it_cannot_read(tmp_path: Path) -> None:
    """With what was wrong and what to write; the journal publishes at once."""
    with seat("begin", "shed", folder=tmp_path) as person:
        person.answers(
            ("What is it called [The build]: ", "Die Sternwarte: ein Anfang"),
            ("Language of the pages", "german"),
            ("write de\r\nLanguage of the pages", "de-DE"),
            ("Currency", "Euro"),
            ("write EUR\r\nCurrency", "EUR"),
            ("Promised for which date", "30.10.2027"),
            ("write 2027-10-30\r\nPromised for which date", "2027-10-30"),
            ("Phases in order", "Dach, dach!"),
            ("a name of its own for each\r\nPhases in order", "Fundament, Rahmen, Dach"),
        )
        assert person.ends() == DONE
    settings = (tmp_path / "shed/journal.yaml").read_text(encoding="utf-8")
    for line in ('title: "Die Sternwarte: ein Anfang"', "language: de-DE", "currency: EUR", "ready_by: 2027-10-30"):
        assert f"\n{line}\n" in settings
    assert "key: rahmen\n    name: Rahmen\n    after: [fundament]" in (tmp_path / "shed/plan.yaml").read_text("utf-8")
    with seat("publish", "shed", "--to", "site", folder=tmp_path) as person:
        assert person.ends() == DONE


def test_enter_takes_the_usual_answer(tmp_path: Path) -> None:
    """Five times Enter is a journal too."""
    with seat("begin", "shed", folder=tmp_path) as person:
        person.types("", "", "", "", "")
        assert person.ends() == DONE
    settings = (tmp_path / "shed/journal.yaml").read_text(encoding="utf-8")
    for line in ("title: The build", "language: en-US", "currency: USD", "# ready_by:"):
        assert f"\n{line}" in settings


def test_begin_does_not_ask_where_a_journal_stands_already(tmp_path: Path) -> None:
    """It would be asked for nothing."""
    write(tmp_path / "shed")
    with seat("begin", "shed", folder=tmp_path) as person:
        assert person.ends() == COMMAND_WRONG
    assert "?" not in person.screen
    assert "shed/journal.yaml is there already; name a new folder; nothing was written" in person.screen


def test_an_episode_and_its_first_line_at_a_terminal(tmp_path: Path) -> None:
    """The evening: a new episode, then what was bought, each question answered, one twice."""
    journal = write(tmp_path / "content")
    with seat("episode", "The boards", folder=tmp_path) as person:
        assert person.ends() == DONE
    assert "made content/episodes/03-the-boards.md" in person.screen
    with seat("spend", folder=tmp_path) as person:
        person.answers(
            ("What was it (", "Galvanised nails"),
            ("How many", "2 box"),
            ("What did it cost", "1,250"),
            ("1,250 has a thousands comma; expected an amount such as 1250 or 1250.50; write 1250\r\nWhat", "12.50"),
            ("Where from", "bought"),
        )
        assert person.ends() == DONE
    lines = "  - material: Galvanised nails\n    quantity: 2 box\n    cost: 12.50\n"
    assert lines in (journal / "episodes/03-the-boards.md").read_text(encoding="utf-8")
    with seat("inspect", folder=tmp_path) as person:
        assert person.ends() == DONE


def test_spend_offers_the_name_that_the_journal_has(tmp_path: Path) -> None:
    """So that leftovers are found again; the person decides."""
    journal = write(tmp_path / "content")
    for answer, name in (("yes", "Form boards"), ("", "Form bords")):
        with seat("spend", folder=tmp_path) as person:
            person.answers(
                ("What was it (", "Form bords"),
                ("There is a Form boards already. Is it the same (yes, no) [no]: ", answer),
                ("How many", "1 board"),
                ("What did it cost", "9"),
                ("Where from", ""),
            )
            assert person.ends() == DONE
        text = (journal / "episodes/02-second.md").read_text(encoding="utf-8")
        assert f"  - material: {name}\n    quantity: 1 board\n    cost: 9\n" in text


def test_spend_offers_the_planned_line_with_nearly_that_name(tmp_path: Path) -> None:
    """`against` is written where the answer is yes."""
    plan = FILES["plan.yaml"].replace("material: Form boards", "material: Formwork boards, 8 ft")
    boards = "  - material: Form boards\n    quantity: 8 board\n    cost: 80\n    uses: 4\n"
    second = FILES["episodes/02-second.md"].replace(boards, "")
    journal = write(tmp_path / "content", plan=plan, **{"02_second": second})
    with seat("spend", folder=tmp_path) as person:
        person.answers(
            ("What was it (", "Formwork boards"),
            ("How many", "8 board"),
            ("What did it cost", "80"),
            ("Where from", ""),
            ("Does it answer to the planned Formwork boards, 8 ft (yes, no) [no]: ", "yes"),
        )
        assert person.ends() == DONE
    assert "    cost: 80\n    against: boards\n" in (journal / "episodes/02-second.md").read_text(encoding="utf-8")


def test_spend_asks_for_the_price_alone_where_the_rest_is_told(tmp_path: Path) -> None:
    """`barrowbook spend "Nails"` is nearly everything."""
    journal = write(tmp_path / "content")
    with seat("spend", "Nails", folder=tmp_path) as person:
        person.answers(("What did it cost", "3.50"))
        assert person.ends() == DONE
    assert "  - Nails, 3.50\n" in (journal / "episodes/02-second.md").read_text(encoding="utf-8")


def test_what_is_hired_is_written_as_equipment(tmp_path: Path) -> None:
    """The question offers it, so the answer has to do."""
    journal = write(tmp_path / "content")
    with seat("spend", folder=tmp_path) as person:
        person.answers(
            ("What was it (", "Turf cutter"), ("How many", "1 day"), ("What did it cost", "64"), ("Where from", "hired")
        )
        assert person.ends() == DONE
    text = (journal / "episodes/02-second.md").read_text(encoding="utf-8")
    assert "  - equipment: Turf cutter\n    quantity: 1 day\n    cost: 64\n    source: hired\n" in text


def test_a_table_is_printed_as_lines_and_nothing_is_written_or_asked(tmp_path: Path) -> None:
    """From a bank, with decimal commas; a row that cannot be read is told as a comment."""
    journal = write(tmp_path / "content")
    (tmp_path / "bank.csv").write_text("Datum;Text;Betrag\n1.5.;Kies;-1.234,50\n2.5.;Zins;viel\n", encoding="utf-8")
    before = {path: path.read_bytes() for path in journal.rglob("*.md")}
    columns = ("--what", "Text", "--amount", "Betrag", "--decimal", ",")
    with seat("spend", "--table", "bank.csv", *columns, folder=tmp_path) as person:
        assert person.ends() == DONE
    assert person.screen == "- Kies, 1234.50\n# row 3: viel is not a number: Zins viel\n"
    assert {path: path.read_bytes() for path in journal.rglob("*.md")} == before
