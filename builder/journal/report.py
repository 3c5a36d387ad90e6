"""One way to report a mistake while reading: collected, never raised on the first."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from enum import Enum

from builder.words.numbers import Unreadable
from builder.words.place import Place
from builder.words.problem import Problem, Weight

MOST_SHOWN = 300
MOST_HINTS = 200
MOST_TOLD = 1000


class Lost(Enum):
    """What could not be read, so that a name that leads to it cannot be looked up."""

    EPISODE = "episode"
    LINE = "line"
    ID = "id"
    RECEIPT = "receipt"
    PHASE = "phase"
    PLANNED_LINE = "planned line"
    OWNED = "owned"
    SNAG = "snag"


class Report:
    """The problems found so far, in the order found, and what was lost with them."""

    def __init__(self) -> None:
        self._problems: list[Problem] = []
        self._untold = 0
        self._lost: set[Lost] = set()
        self._hints = MOST_HINTS

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All of them; of more than a thousand the first thousand, and how many more there are."""
        if not self._untold:
            return tuple(self._problems)
        more = Problem(
            place=self._problems[-1].place,
            found=f"there are {self._untold:,} more mistakes after this one",
            expected="fewer",
            fix="mend the first ones and look again; it may be one slip all along",
        )
        return (*self._problems, more)

    @property
    def count(self) -> int:
        """How many were found so far."""
        return len(self._problems) + self._untold

    @property
    def whole(self) -> bool:
        """Whether everything that has a cost could be read, so that sums and names can be told."""
        return self.lost_at_most(Lost.SNAG)

    def mistake(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something that stops publishing."""
        self._add(Problem(place=place, found=_short(found), expected=expected, fix=_short(fix)))

    def warning(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Something to look at; the site is published all the same."""
        self._add(Problem(place=place, found=_short(found), expected=expected, fix=_short(fix), weight=Weight.WARNING))

    def _add(self, problem: Problem) -> None:
        if len(self._problems) < MOST_TOLD:
            self._problems.append(problem)
        else:
            self._untold += 1

    def unreadable(self, place: Place, key: str, error: Unreadable) -> None:
        """A value that is not what its key takes."""
        self.mistake(place, f"{key}: {error.found}" if key else error.found, error.expected, error.fix)

    def lose(self, *what: Lost) -> None:
        """Something was reported and left out; what names it is not reported again as leading nowhere."""
        self._lost.update(what)

    def lost(self, *what: Lost) -> bool:
        """Whether anything of these could not be read."""
        return not self._lost.isdisjoint(what)

    def lost_at_most(self, *what: Lost) -> bool:
        """Whether nothing but these could not be read."""
        return self._lost <= {*what}

    def nearest(self, word: str, known: Iterable[str], *, hardly: bool = False) -> str:
        """What of `known` is nearest to a misspelt word, or ""; `hardly` wants it to differ by a letter or two only.

        Only for the first mistakes of a run, as looking for a thousand takes minutes.
        """
        self._hints -= 1
        return _nearest(word, known, hardly=hardly) if self._hints >= 0 else ""

    def hint(self, word: str, known: Iterable[str]) -> str:
        """`did you mean quantity?`, or "" when nothing known is near."""
        near = self.nearest(word, known)
        return f"did you mean {near}?" if near else ""


def _short(text: str) -> str:
    """A text for one line of a message: long ones cut, line ends of what was written made spaces."""
    text = text.replace("\n", " ")
    return text if len(text) <= MOST_SHOWN else text[: MOST_SHOWN - 3] + "..."


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """`did you mean quantity?`, or "" when nothing known is near."""
    near = _nearest(word, known)
    return f"did you mean {near}?" if near else ""


def _nearest(word: str, known: Iterable[str], *, hardly: bool = False) -> str:
    lowered = {choice.lower(): choice for choice in known}
    short, among = word.lower()[:MOST_SHOWN], list(lowered)
    if hardly:
        found = difflib.get_close_matches(short, among, n=1, cutoff=0.75)
    else:
        found = difflib.get_close_matches(short, among, n=1, cutoff=0.6)
    return lowered[found[0]] if found else ""


def one_of(words: Sequence[str]) -> str:
    """`ground, foundation or frame`."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}" if words else "nothing"
