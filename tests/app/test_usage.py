"""Words on the command line: what a command takes, and what is said of those it does not."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.cli import COMMAND_WRONG, DONE, main
from tests.app.journal_folder import FILES, write
from tests.app.seat import seat

UNREAD = {
    "episode Pegging out": (
        'out stands alone; put words that belong together in quotes: barrowbook episode "Pegging out"'
    ),
    "begin my shed": 'shed stands alone; put words that belong together in quotes: barrowbook begin "my shed"',
    "begin shed --title The shed": 'shed stands alone; put words that belong together in quotes: --title "The shed"',
    "spend Galvanised nails 36.90": (
        '36.90 stands alone; put words that belong together in quotes: barrowbook spend "Galvanised nails" 36.90'
    ),
    "spend --in x Galvanised roof nails": (
        'nails stands alone; put words that belong together in quotes: barrowbook spend "Galvanised roof nails"'
    ),
    "spend Nails about 150": (
        '150 stands alone; put words that belong together in quotes: barrowbook spend "Nails" "about 150"'
    ),
    "spend Mix 219.60 --quantity 36 bag": (
        'bag stands alone; put words that belong together in quotes: --quantity "36 bag"'
    ),
    "spend Nails 3 --note=for the roof": (
        'the roof stands alone; put words that belong together in quotes: --note "for the roof"'
    ),
    "spend Nails 3 --qty 3": "--qty is no option of spend; did you mean --quantity?",
    "publish x --to y --asof=2026-04-18": "--asof is no option of publish; did you mean --as-of?",
    "inspect -l": "-l is no option of inspect; expected --as-of, --figures, --json or --lines",
    "takeoff d footing": (
        "footing is one word too many: takeoff takes one folder, which is d; it prints every take-off of the plan"
    ),
    "tally a b": "b is one word too many: tally takes one folder, which is a",
    "completion bash": "bash is one word too many: completion takes no words",
}


@pytest.mark.parametrize("line", UNREAD)
def test_words_that_a_command_does_not_take_are_told_with_what_was_meant(
    capsys: pytest.CaptureFixture[str], line: str
) -> None:
    """After the usage of that command."""
    with pytest.raises(SystemExit) as ended:
        main(line.split(" "))
    assert ended.value.code == COMMAND_WRONG
    told = capsys.readouterr().err
    name = line.partition(" ")[0]
    assert told.startswith(f"usage: barrowbook {name} ")
    assert told.endswith(f"\nbarrowbook {name}: error: {UNREAD[line]}\n")


def test_a_misspelt_command_is_told_with_the_one_that_was_meant(capsys: pytest.CaptureFixture[str]) -> None:
    """And with all that there are."""
    with pytest.raises(SystemExit) as ended:
        main(["eppisode", "Pegging out"])
    assert ended.value.code == COMMAND_WRONG
    assert capsys.readouterr().err.endswith(
        "\nbarrowbook: error: eppisode is no command; expected publish, inspect, tally, takeoff, begin, episode, "
        "spend, preview or completion; did you mean episode?\n"
    )


@pytest.mark.parametrize(("words", "code"), [((), DONE), (("--version",), DONE), (("--help",), DONE), (("-x",), 2)])
def test_no_command_at_all(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], code: int) -> None:
    """Help, the version, or what is wrong; never an error of the program's own."""
    try:
        ended: object = main(words)
    except SystemExit as error:
        ended = error.code
    assert ended == code
    told = capsys.readouterr()
    assert "barrowbook" in (told.err if code else told.out)


REFUSED = {
    ("Nails", "3", "--kind", "labor"): (
        "kind: labor is not known here; expected material, equipment, labour, travel or fee; did you mean labour?"
    ),
    ("18.50", "Nails"): (
        '18.50 stands where the thing is named, and Nails where its cost is; write: barrowbook spend "Nails" 18.50'
    ),
    ("about 20", "Tie wire"): (
        "about 20 stands where the thing is named, and Tie wire where its cost is; "
        'write: barrowbook spend "Tie wire" "about 20"'
    ),
    ("Nails", "£18.50"): (
        "cost: £18.50 has a currency mark; expected an amount such as 1250 or 1250.50; "
        "write 18.50: the currency stands in journal.yaml; nothing was written"
    ),
    ("N\udce4gel", "3"): (
        "the byte 0xe4 is not UTF-8 text; expected a file saved as UTF-8; "
        "save it again with the encoding UTF-8 (in most editors under Save as); nothing was written"
    ),
    ("Nails", "~20"): ("cost: ~20 is a guess; expected the word about before it; write about 20; nothing was written"),
}


@pytest.mark.parametrize("words", REFUSED)
def test_spend_says_what_is_wrong_with_what_it_was_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...]
) -> None:
    """As a file is told; and nothing is written."""
    journal = write(tmp_path)
    before = (journal / "episodes/02-second.md").read_bytes()
    assert main(["spend", *words, "--in", str(journal)]) == COMMAND_WRONG
    assert capsys.readouterr().err == f"barrowbook spend: {REFUSED[words]}\n"
    assert (journal / "episodes/02-second.md").read_bytes() == before


@pytest.mark.parametrize(("what", "cost"), [("2x4", "31.50"), ("4", "12"), ("Nails", "unknown"), ("Nails", "about 20")])
def test_what_only_looks_swapped_is_taken_as_it_was_told(tmp_path: Path, what: str, cost: str) -> None:
    """A name may be a number, where what stands behind it is a cost."""
    journal = write(tmp_path)
    assert main(["spend", what, cost, "--in", str(journal)]) == DONE


@pytest.mark.parametrize("command", ["spend", "episode"])
def test_a_journal_that_is_not_there_is_no_mistake_in_a_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    """No file is named that does not exist."""
    folder = tmp_path / "bb"
    assert main([command, "Nails", "--in", str(folder)]) == COMMAND_WRONG
    assert capsys.readouterr().err == f"barrowbook {command}: there is no folder {folder}; check the name\n"


def test_a_journal_that_one_stands_in_need_not_be_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """By any command, unless a journal lies there in a folder `content`: that is the usual one."""
    journal = write(tmp_path / "shed")
    monkeypatch.chdir(journal)
    assert main(["inspect"]) == DONE
    assert capsys.readouterr().out == ".: 2 episodes, 6 lines, no mistakes\n"
    assert main(["episode", "Rain"]) == DONE
    assert main(["spend", "Nails", "3.50"]) == DONE
    assert "  - Nails, 3.50\n" in (journal / "episodes/03-rain.md").read_text(encoding="utf-8")
    assert main(["publish", "--to", "../site"]) == DONE
    assert (tmp_path / "site/episodes/03-rain/index.html").is_file()
    (journal / "content").mkdir()
    capsys.readouterr()
    assert main(["inspect"]) == DONE
    assert capsys.readouterr().out == ".: 3 episodes, 7 lines, no mistakes\n"
    write(journal / "content")
    assert main(["inspect"]) == DONE
    assert capsys.readouterr().out == "content: 2 episodes, 6 lines, no mistakes\n"


def test_spend_asks_again_what_it_was(tmp_path: Path) -> None:
    """Enter says nothing, and only Ctrl-C stops; what was lent is among the answers that are offered."""
    journal = write(tmp_path / "content")
    with seat("spend", folder=tmp_path) as person:
        person.answers(("What was it (", ""), ("say it in a word or two; Ctrl-C stops\r\nWhat was it (", "Long ladder"))
        person.answers(("How many", ""), ("What did it cost", ""))
        person.answers(("hired, borrowed, owned)", "borrowed"))
        assert person.ends() == DONE
    text = (journal / "episodes/02-second.md").read_text(encoding="utf-8")
    assert "  - equipment: Long ladder\n    source: borrowed\n" in text


def test_control_d_at_a_question_stops_as_control_c_does(tmp_path: Path) -> None:
    """It is not taken for an answer, and asked for ever."""
    write(tmp_path / "content")
    with seat("spend", folder=tmp_path) as person:
        person.until("What was it (")
        person.presses_control_d()
        assert person.ends() == 130
    assert re.search(r"\nStopped; nothing was written\.\n$", person.screen)
    assert (tmp_path / "content/episodes/02-second.md").read_text(encoding="utf-8") == FILES["episodes/02-second.md"]
