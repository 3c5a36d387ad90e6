"""Figures that the author names or states: unknown names are mistakes, and stated ones are checked."""

from __future__ import annotations

from collections.abc import Iterator, Sized
from fractions import Fraction
from itertools import islice

from builder.figures.account import Account
from builder.figures.figure import Bound, CountFigure, Figure, MoneyFigure, QuantityFigure, UntoldFigure
from builder.figures.names import NoFigure, look_up
from builder.journal.records.episode import Episode, Stated
from builder.words.place import Place
from builder.words.problem import Problem, Weight
from builder.words.rounding import decimal_text

MOST_TOLD, MOST_GUESSED = 1000, 200  # as many mistakes as reading tells, and guesses


def check_figures(account: Account, *, stated: bool = True) -> tuple[Problem, ...]:
    """Every named figure that is none or cannot be told, and every stated one that the ledger contradicts; the first
    thousand.

    Without `stated`, none is said to be contradicted or past telling: where something could not be read, figures rest
    on less than the author has. What was meant is guessed for the first ones, as guessing for a thousand takes seconds.
    """
    found: list[Problem] = []
    for problem in islice(_wrong(account, found, compare=stated), MOST_TOLD):
        found.append(problem)  # noqa: PERF402 - one by one, as guessing ends by how many there are
    return tuple(found)


def _wrong(account: Account, found: Sized, *, compare: bool) -> Iterator[Problem]:
    for episode in account.journal.episodes:
        yield from _marks(episode, account, found, compare=compare)
        yield from _stated(episode, account, found, compare=compare)


def _marks(episode: Episode, account: Account, found: Sized, *, compare: bool) -> Iterator[Problem]:
    for mark in (*episode.summary_marks, *episode.prose.marks):
        figure = look_up(mark.name, account, episode.number, guess=len(found) < MOST_GUESSED)
        if isinstance(figure, NoFigure):
            yield _no_figure(mark.name, figure, mark.place)
        elif compare and isinstance(figure, UntoldFigure):
            yield _untold(figure, mark.place, "a figure that can be told; the page says that it cannot")


def _no_figure(name: str, figure: NoFigure, place: Place) -> Problem:
    return Problem(
        place=place,
        found=f"{name or 'nothing'} is no figure",
        expected="a figure such as spent to date, job cost of a phase, or a take-off's result",
        fix=f"did you mean {figure.near}?" if figure.near else "inspect --figures lists all of them",
    )


def _untold(figure: UntoldFigure, place: Place, expected: str) -> Problem:
    """A warning: what cannot be told today may be told tomorrow, and the story that names it is right all the same."""
    return Problem(
        place=place,
        found=f"{figure.name} cannot be told: {figure.why}",
        expected=expected,
        fix=figure.add,
        weight=Weight.WARNING,
    )


def _stated(episode: Episode, account: Account, found: Sized, *, compare: bool) -> Iterator[Problem]:
    for stated in episode.stated:
        figure = look_up(stated.name, account, episode.number, guess=len(found) < MOST_GUESSED)
        if isinstance(figure, NoFigure):
            yield _no_figure(stated.name, figure, stated.named)
            continue
        if compare and isinstance(figure, UntoldFigure):
            yield _untold(figure, stated.place, "a figure that what is stated can be held against")
        value = plain_value(figure, account) if compare else None
        if value is not None and not _agrees(stated, value):
            yield _mismatch(stated, figure, value, account)


def plain_value(figure: Figure, account: Account) -> Fraction | None:
    """The number of a figure: major units for money; None for dates and the like."""
    if isinstance(figure, MoneyFigure):
        return Fraction(figure.minor, 10**account.ledger.currency.digits)
    if isinstance(figure, CountFigure):
        return Fraction(figure.count)
    return figure.quantity.value if isinstance(figure, QuantityFigure) else None


def _agrees(stated: Stated, value: Fraction) -> bool:
    """At the digits written: 1204 agrees with 1203.97."""
    return stated.differs is not None or Fraction(decimal_text(value, stated.decimals)) == stated.value


def _mismatch(stated: Stated, figure: Figure, value: Fraction, account: Account) -> Problem:
    digits = account.ledger.currency.digits if isinstance(figure, MoneyFigure) else max(stated.decimals, 2)
    says, ledger = (
        decimal_text(stated.value, stated.decimals),
        decimal_text(value, max(digits, stated.decimals)),
    )
    least = isinstance(figure, MoneyFigure) and figure.bound is Bound.AT_LEAST
    return Problem(
        place=stated.place,
        found=f"{stated.name} is stated as {'about ' if stated.about else ''}{says}, and the ledger has "
        f"{'at least ' if least else ''}{ledger}",
        expected="the same at the digits written",
        fix=f"write {decimal_text(value, stated.decimals)}, or about, or {{says: {says}, differs: why}}",
        weight=Weight.WARNING if stated.about else Weight.MISTAKE,
    )
