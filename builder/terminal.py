"""What only a terminal has: somebody who answers, words to complete, a bar that shows how far a slow step is."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from typing import TextIO

from builder.words.telling import Tell, quiet

PATIENCE, PAUSE = 1.0, 0.1  # seconds before a bar is shown at all, and between two drawings
_WIDEST, _NARROWEST = 60, 10  # columns between the brackets of a bar


def asks() -> Callable[[str, str], str] | None:
    """Who answers questions; nobody where no person sits at a terminal."""
    return _ask if sys.stdin.isatty() else None


def _ask(question: str, usual: str) -> str:
    """A question on the terminal; an empty answer takes the usual one. Ctrl-C and Ctrl-D stop, before anything is
    written: commands ask first.
    """
    shown = f"{question} [{usual}]: " if usual else f"{question}: "
    try:
        return input(shown).strip() or usual
    except (EOFError, KeyboardInterrupt):
        raise KeyboardInterrupt("nothing was written") from None


@contextmanager
def along(stream: TextIO, clock: Callable[[], float] = time.monotonic) -> Iterator[Tell]:
    """What slow steps tell how far they are: a bar where `stream` is a terminal, else nothing. Gone at the end."""
    if not stream.isatty():
        yield quiet
        return
    bar = _Bar(stream, clock)
    try:
        yield bar.tell
    finally:
        bar.erase()


class _Bar:
    """One line of a terminal, drawn over and over."""

    def __init__(self, stream: TextIO, clock: Callable[[], float]) -> None:
        self._stream, self._clock = stream, clock
        self._next = clock() + PATIENCE
        self._what, self._drawn = "", False

    def tell(self, done: int, of: int, what: str) -> None:
        """Draw how far it is, where it is time to: a new step at once, the same one a few times a second."""
        now = self._clock()
        if now < self._next and (what == self._what or not self._drawn):
            return
        self._next, self._what, self._drawn = now + PAUSE, what, True
        width = _columns(self._stream) - 1
        self._write("\r" + bar_line(done, of, what, width).ljust(width))

    def erase(self) -> None:
        """Leave the line as if nothing had stood there."""
        if self._drawn:
            self._write("\r" + " " * (_columns(self._stream) - 1) + "\r")

    def _write(self, text: str) -> None:
        with suppress(OSError):  # a terminal that is gone stops no work
            self._stream.write(text)
            self._stream.flush()


def bar_line(done: int, of: int, what: str, width: int) -> str:
    """One line of at most so many columns; the bar itself where there is room for it and the number is known.

    >>> bar_line(3, 12, "photos", 40)
    'photos 3 of 12 [=====                  ]'
    """
    if not of:
        return f"{what} ..."[:width]
    text = f"{what} {done} of {of}"
    room = min(width - len(text) - 3, _WIDEST)
    if room < _NARROWEST:
        return text[:width]
    return f"{text} [{'=' * (room * min(done, of) // of):{room}}]"


def _columns(stream: TextIO) -> int:
    try:
        return os.get_terminal_size(stream.fileno()).columns or 80
    except (OSError, ValueError):
        return 80


def completion_text(usages: Mapping[str, str]) -> str:
    """What completes commands and their options in bash, from the usage line of each command."""
    cases = (f"    {name}) words='{' '.join(options_in(usage))}' ;;" for name, usage in usages.items())
    return _COMPLETION.format(names=" ".join(usages), cases="\n".join(cases))


def options_in(usage: str) -> list[str]:
    """The long options that a usage line names."""
    words = usage.replace("[", " ").replace("]", " ").split()
    return sorted({word for word in words if word.startswith("--")})


_COMPLETION = """_barrowbook() {{
  local word=${{COMP_WORDS[COMP_CWORD]}} words='{names}'
  if [ "$COMP_CWORD" -gt 1 ]; then
    case ${{COMP_WORDS[1]}} in
{cases}
    *) words='' ;;
    esac
  fi
  COMPREPLY=($(compgen -W "$words" -- "$word"))
  case $word in -*) ;; *) [ "$COMP_CWORD" -gt 1 ] && COMPREPLY+=($(compgen -f -- "$word")) ;; esac
}}
complete -o filenames -F _barrowbook barrowbook"""
