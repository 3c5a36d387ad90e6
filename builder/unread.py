"""What to say of words on the command line that no command takes."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence

from builder.journal.quoting import in_quotes
from builder.journal.report import did_you_mean, one_of
from builder.terminal import options_in
from builder.words.misread import clipped


def no_command(word: str, names: Sequence[str]) -> str:
    """`eppisode` is none; which one was meant."""
    return _told(f"{clipped(word)} is no command", f"expected {one_of(names)}", did_you_mean(word, names))


def unread(words: Sequence[str], told: argparse.Namespace, whole: Sequence[str], usage: str) -> str:
    """What is wrong with `words`, which a command did not take of the `whole` line.

    `told` is what it took, `usage` its usage line.
    """
    option = next((word.partition("=")[0] for word in words if word.startswith("-") and word != "-"), None)
    if option is not None:
        options = options_in(usage)
        known = "" if option.startswith("--") else one_of(options)
        found = f"{clipped(option)} is no option of {told.name}"
        return _told(found, did_you_mean(option, options), f"expected {known}" if known else "")
    if told.name in ("begin", "episode", "spend"):
        meant = _value_of(words, whole) or f"barrowbook {told.name} {_first_words(words, told)}"
        return f"{clipped(' '.join(words))} stands alone; put words that belong together in quotes: {meant}"
    taken = f"takes one folder, which is {told.journal}" if "journal" in told else "takes no words"
    all_of_them = "; it prints every take-off of the plan" if told.name == "takeoff" else ""
    return f"{clipped(' '.join(words))} is one word too many: {told.name} {taken}{all_of_them}"


_FOLDERS = ("--in", "--after", "--table")  # whose names have blanks more rarely than what comes behind them


def _value_of(words: Sequence[str], whole: Sequence[str]) -> str:
    """An option with all the words that stand behind it in quotes: `--quantity "36 bag"`; "" where there is none."""
    at = len(whole) - whole[::-1].index(words[-1]) - len(words)
    begins = max((number for number, word in enumerate(whole[:at]) if word.startswith("--")), default=None)
    if begins is None:
        return ""
    option, _, value = whole[begins].partition("=")
    text = " ".join(filter(None, (value, *whole[begins + 1 : at + len(words)])))
    return "" if option in _FOLDERS else f"{option} {in_quotes(text)}"


def _first_words(words: Sequence[str], told: argparse.Namespace) -> str:
    """What a command takes first, in quotes, with the words that were meant to belong to it."""
    if told.name != "spend":
        return in_quotes(" ".join((str(told.folder) if told.name == "begin" else told.title, *words)))
    what = [told.what, told.cost, *words]
    cost = [what.pop()] if _may_be_cost(what[-1]) else []
    cost = [what.pop(), *cost] if cost and what[-1].lower() == "about" else cost
    price = in_quotes(" ".join(cost)) if len(cost) > 1 else "".join(cost)
    return f"{in_quotes(' '.join(what))} {price}".rstrip()


def _may_be_cost(word: str) -> bool:
    return word.lower() == "unknown" or re.fullmatch(r"\W?\d[\d.,]*\W?", word) is not None


def _told(*parts: str) -> str:
    return "; ".join(filter(None, parts))
