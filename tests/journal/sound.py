"""What is held of every reading, whatever was read: mistakes have places in their files, and can be printed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from builder.journal.read import Read
from builder.journal.text import shown_lines
from builder.words.problem import Problem


def check_problems(problems: Iterable[Problem], texts: Mapping[str, bytes]) -> None:
    """Each stands on a line that an editor shows, and says on one line what was found."""
    shown: dict[str, list[str]] = {}
    for problem in problems:
        place = problem.place
        if place.file not in shown:
            shown[place.file] = shown_lines(texts[place.file])
        lines = shown[place.file]
        assert 1 <= place.line <= len(lines), f"{place.file}:{place.line} of {len(lines)} lines"
        assert 1 <= place.column <= len(lines[place.line - 1]) + 1, f"column {place.column}"
        assert problem.found, "nothing was found"
        assert "\n" not in problem.one_line()
        problem.one_line().encode()


def check_read(read: Read, texts: Mapping[str, bytes]) -> None:
    """As above; and a journal without settings has a mistake that says why."""
    check_problems(read.problems, texts)
    assert read.journal is not None or any(problem.is_mistake for problem in read.problems)
