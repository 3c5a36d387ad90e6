"""How far along a slow step is, told to whoever asked. Who tells knows of no terminal, who shows it of no step."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

T = TypeVar("T")

# How many are done, of how many (0 where nobody knows), and what they are: `tell(3, 40, "photos")`.
Tell = Callable[[int, int, str], None]


def quiet(done: int, of: int, what: str) -> None:
    """Tells nobody."""


def each(things: Iterable[T], of: int, what: str, tell: Tell) -> Iterator[T]:
    """The things one by one, telling before each how many are done.

    >>> list(each("ab", 2, "photos", print))
    0 2 photos
    1 2 photos
    ['a', 'b']
    """
    for done, thing in enumerate(things):
        tell(done, of, what)
        yield thing
