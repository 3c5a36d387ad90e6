"""One way to report a mistake while reading: collected, never raised on the first."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence

from builder.words.numbers import Unreadable
from builder.words.place import Place
from builder.words.problem import Problem, Weight


class Report:
    """The problems found so far, in the order found."""

    def __init__(self) -> None:
        self._problems: list[Problem] = []

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All of them."""
        return tuple(self._problems)

    def mistake(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something that stops publishing."""
        self._problems.append(Problem(place=place, found=found, expected=expected, fix=fix))

    def warning(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something to look at; the site is published all the same."""
        self._problems.append(
            Problem(place=place, found=found, expected=expected, fix=fix, weight=Weight.WARNING)
        )

    def unreadable(self, place: Place, key: str, error: Unreadable) -> None:
        """A value that is not what its key takes."""
        self.mistake(place, f"{key}: {error.found}" if key else error.found, error.expected, error.fix)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """`did you mean quantity?`, or "" when nothing known is near."""
    choices = list(known)
    lowered = {choice.lower(): choice for choice in choices}
    near = difflib.get_close_matches(word.lower(), list(lowered), n=1, cutoff=0.6)
    return f"did you mean {lowered[near[0]]}?" if near else ""


def one_of(words: Sequence[str]) -> str:
    """`ground, foundation or frame`."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}" if words else "nothing"
