"""Mistakes that show only when the ledger is worked out."""

from __future__ import annotations

from builder.words.place import Place
from builder.words.problem import Problem, Weight


class Findings:
    """The problems found so far."""

    def __init__(self) -> None:
        self._found: list[Problem] = []

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All of them, in the order found."""
        return tuple(self._found)

    def add(self, problem: Problem) -> None:
        """One that was told before, and stands."""
        self._found.append(problem)

    def mistake(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something that stops publishing."""
        self._found.append(Problem(place=place, found=found, expected=expected, fix=fix))

    def warning(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something to look at."""
        self._found.append(Problem(place=place, found=found, expected=expected, fix=fix, weight=Weight.WARNING))
