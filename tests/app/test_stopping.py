"""Stopped in the middle, by Ctrl-C or by an empty battery: nothing half done, and the next run does all of it."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from builder.cli import DONE, STOPPED, main
from tests.app.journal_folder import write
from tests.app.seat import command, environment, seat


@pytest.mark.parametrize(("words", "question"), [(("begin", "new"), "What is it called"), (("spend",), "What was it")])
def test_control_c_at_a_question_writes_nothing_and_says_so(
    tmp_path: Path, words: tuple[str, ...], question: str
) -> None:
    """One calm line, and the exit code that shells know it by."""
    journal = write(tmp_path / "content")
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.*") if path.is_file()}
    with seat(*words, folder=tmp_path) as person:
        person.until(question)
        person.presses_control_c()
        assert person.ends() == STOPPED == 130
    assert person.screen.split("\n")[1:] == ["Stopped; nothing was written.", ""]
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.*") if path.is_file()} == before
    assert journal.is_dir()
    assert not (tmp_path / "new").exists()


def test_a_command_that_was_killed_at_a_question_can_be_run_again(tmp_path: Path) -> None:
    """Nothing of the first run is left, and the second does all of it."""
    with seat("begin", "shed", folder=tmp_path) as person:
        person.answers(("What is it called", "A"), ("Language", "en"))
        person.until("Currency")
        person.kills()
    assert list(tmp_path.iterdir()) == []
    with seat("begin", "shed", folder=tmp_path) as person:
        person.types("", "", "", "", "")
        assert person.ends() == DONE
    with seat("episode", "First", "--in", "shed", folder=tmp_path) as person:
        assert person.ends() == DONE
    file = tmp_path / "shed/episodes/01-first.md"
    before = file.read_bytes()
    with seat("spend", "--in", "shed", folder=tmp_path) as person:
        person.answers(("What was it", "Nails"))
        person.until("How many")
        person.kills()
    assert [path.read_bytes() for path in file.parent.iterdir()] == [before]
    with seat("spend", "Nails", "3.50", "--in", "shed", folder=tmp_path) as person:
        assert person.ends() == DONE
    assert b"  - Nails, 3.50\n" in file.read_bytes()


# Kills the command at the n-th time that it asks the system to write, name or put away a file.
KILLED = """
import os, sys, signal
seen = 0
def watch(event, args):
    global seen
    if event in ("os.rename", "os.chmod") or (event == "open" and args[2] & os.O_CREAT):
        seen += 1
        if seen == {at}:
            os.kill(os.getpid(), signal.SIGKILL)
sys.addaudithook(watch)
"""


def killed(words: tuple[str, ...], folder: Path, at: int) -> bool:
    """Run a command that is killed at some moment; whether that moment came."""
    run = subprocess.run(
        command(words, KILLED.format(at=at)),
        cwd=folder,
        env=environment(folder.parent / "cache"),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
    )
    return run.returncode == -9


def test_spend_killed_at_any_step_leaves_the_episode_whole(tmp_path: Path) -> None:
    """As it was or with the line in it, never with half of it; and the next run leaves no stray file."""
    file = write(tmp_path / "content") / "episodes/02-second.md"
    before, at = file.read_bytes(), 1
    after = before.replace(b"    quantity: 1\n", b"    quantity: 1\n  - Nails, 3.50\n")
    while killed(("spend", "Nails", "3.50"), tmp_path, at):
        assert file.read_bytes() in (before, after)
        file.write_bytes(before)
        at += 1
    assert at > 2
    assert file.read_bytes() == after
    assert sorted(path.name for path in file.parent.iterdir()) == ["01-first.md", "02-second.md"]


@pytest.mark.parametrize("at", [1, 2, 7, 13, 14])
def test_begin_killed_on_its_way_can_be_run_again(tmp_path: Path, at: int) -> None:
    """No folder is half a journal, as the settings come last; the second run takes what the first has made.

    Seven files are made, each in two steps: 13 begins the last of them, 14 gives it its name.
    """
    shed = tmp_path / "shed"
    assert killed(("begin", "shed", "--title", "A"), tmp_path, at)
    assert not (shed / "journal.yaml").exists()
    assert main(["begin", str(shed), "--title", "A"]) == DONE
    assert main(["inspect", str(shed)]) == DONE
    assert not list(shed.rglob("*.new"))


@pytest.mark.parametrize("module", ["builder.cli", "argparse", "json", "builder.app", "yaml", "builder.words.money"])
def test_control_c_while_the_program_loads_prints_no_traceback(tmp_path: Path, module: str) -> None:
    """However early: the import that is stopped is never told of."""
    stopped = f"""
import sys
class Stop:
    def find_spec(self, name, *rest):
        if name == {module!r}:
            raise KeyboardInterrupt
sys.modules.pop({module!r}, None)
sys.meta_path.insert(0, Stop())
"""
    run = subprocess.run(
        command(("tally", str(write(tmp_path))), stopped),
        cwd=tmp_path,
        env=environment(tmp_path / "cache"),
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == STOPPED
    assert run.stdout == ""
    assert run.stderr in ("", "\nStopped.\n")
