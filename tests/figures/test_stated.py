"""What was said aloud is held against the ledger, at the digits that were said."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.app import work_out
from tests.app.journal_folder import FILES, write


def stated(folder: Path, said: str) -> list[str]:
    """The problems of the second episode with such a `stated`; it spent 425.10."""
    text = FILES["episodes/02-second.md"].replace("items:", f"stated: {said}\nitems:", 1)
    told = [problem.one_line() for problem in work_out(write(folder, **{"02_second": text})).problems]
    return [problem for problem in told if "would cost new" not in problem]


@pytest.mark.parametrize(
    "said", ["{spent: 425}", "{spent: 425.10}", "{spent: 425.1, spent to date: 587}", "{lines: 6}"]
)
def test_what_agrees_at_the_digits_said_passes(tmp_path: Path, said: str) -> None:
    """425 is fair for 425.10; 587 for 586.60."""
    assert stated(tmp_path, said) == []


def test_what_does_not_agree_is_a_mistake_with_both_numbers(tmp_path: Path) -> None:
    """And says what to write."""
    assert stated(tmp_path, "{spent: 424}") == [
        (
            "episodes/02-second.md:8:17: mistake: spent is stated as 424, and the ledger has 425.10; expected the same "
            "at the digits written; write 425, or about, or {says: 424, differs: why}"
        )
    ]


def test_about_only_warns(tmp_path: Path) -> None:
    """A judgement said aloud does not keep the site from being made."""
    [problem] = stated(tmp_path, "{spent: about 400}")
    assert ": warning: spent is stated as about 400, and the ledger has 425.10" in problem


def test_a_reason_lets_it_differ(tmp_path: Path) -> None:
    """A corrected ledger is published with the reason printed."""
    assert stated(tmp_path, "{spent: {says: 400, differs: I forgot the bolts}}") == []


def test_a_figure_that_is_none_is_a_mistake(tmp_path: Path) -> None:
    """With its place and a guess."""
    [problem] = stated(tmp_path, "{spend: 425}")
    assert problem.endswith("did you mean spent?")


def test_of_very_many_wrong_names_the_first_thousand_are_told(tmp_path: Path) -> None:
    """And what was meant is guessed for two hundred: for all of them it would take minutes."""
    problems = stated(tmp_path, "{" + ", ".join(f"spend{number} to date: 1" for number in range(1500)) + "}")
    assert len(problems) == 1000
    assert sum("did you mean spent to date?" in problem for problem in problems) == 200
    assert problems[-1].endswith("; inspect --figures lists all of them")
