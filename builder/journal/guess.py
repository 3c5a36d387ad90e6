"""What the author meant, where the text is no YAML: one plain guess, and where it is to be put right.

The YAML reader says where it gave up, which is often a line or many after the slip, and in words of its own.
The guesses are tried from the most telling to the least; the last ones only compare lines.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import yaml

from builder.journal.quoting import in_quotes, without_curly

# Nobody writes a longer line of keys by hand, and no guess needs its end.
_WIDEST = 500
_VALUE = re.compile(r"(?P<before>\s*(?:- +)*(?:[^\s:#\"'{\[-][^:]*: +)?)(?P<value>\S.*)")
_NO_SPACE = re.compile(r"(?P<before>\s*(?:- +)*)(?P<key>[a-z_]+):(?P<value>[^\s/].*)")
# What stands before a colon on a line with a dash and is no key, as keys are small letters only.
_SENTENCE = re.compile(r"(?:- +)+(?! )(?=[^:]*[^a-z_:])[^:]+:$")
_NO_TEXT_BEGINS_WITH = "@`%*&!|>[{,"


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """The slip: line and column count from 0 in the text that was read."""

    line: int
    column: int
    found: str
    expected: str
    fix: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    """A place to look at: `text` is its line, `above` the last line before it that is not empty.

    `reading` is what the YAML reader says it was reading, `trouble` what stopped it, both in its words.
    """

    line: int
    column: int
    text: str
    above: str
    reading: str
    trouble: str

    @property
    def depth(self) -> int:
        return _depth(self.text)

    def slip(self, column: int, found: str, expected: str, fix: str) -> Guess:
        return Guess(line=self.line, column=column, found=found, expected=expected, fix=fix)


def guess(error: yaml.MarkedYAMLError, lines: Sequence[str]) -> Guess:
    """The likeliest slip behind an error of the YAML reader."""
    spots = list(_spots(error, lines))
    tries = [(_tab, spot) for spot in spots] + [(attempt, spot) for spot in spots for attempt in _ATTEMPTS]
    found = (attempt(spot) for attempt, spot in tries)
    return next((one for one in found if one is not None), _unknown(spots[0]))


def _spots(error: yaml.MarkedYAMLError, lines: Sequence[str]) -> Iterator[_Spot]:
    """Where the slip may be: where what was being read began, if it is as small as a line, and the end."""
    reading = str(error.context)
    small = any(word in reading for word in ("simple key", "quoted", "flow", "plain", "alias", "anchor", "tag"))
    marks = [mark for mark in (error.context_mark if small else None, error.problem_mark) if mark is not None]
    for line, column in [(min(mark.line, len(lines) - 1), mark.column) for mark in marks] or [(0, 0)]:
        yield _Spot(
            line=line,
            column=column,
            text=lines[line][:_WIDEST].rstrip(),
            above=next((lines[at] for at in range(line - 1, -1, -1) if lines[at].strip()), "")[:_WIDEST].rstrip(),
            reading=reading,
            trouble=str(error.problem),
        )


def _unclosed(spot: _Spot) -> Guess | None:
    opener = spot.text[spot.column : spot.column + 1]
    if "quoted" in spot.reading and opener and opener in "\"'":
        found, fix = (
            f"a quote ({opener}) is opened here and not closed",
            f"put a {opener} where the text ends",
        )
        return spot.slip(spot.column, found, "quotes in pairs", fix)
    if "flow" not in spot.reading or opener not in ("{", "[") or spot.text.startswith("{=", spot.column):
        return None
    closer = "}" if opener == "{" else "]"
    return spot.slip(
        spot.column,
        f"the {opener} that stands here is not closed, or a comma is missing behind it",
        f"{opener} and {closer} in pairs, with commas between what is inside",
        f"put the {closer} or the comma in; text that begins with {opener} stands in quotes",
    )


def _tab(spot: _Spot) -> Guess | None:
    column = spot.text.find("\t")
    if column < 0 or (column >= spot.depth and "tab" not in spot.trouble):
        return None
    return spot.slip(column, "a tab stands here", "spaces for indents", "put two spaces for each tab")


def _dash(spot: _Spot) -> Guess | None:
    match = re.match(r"\s*-([^\W\d_].*)", spot.text)
    if match is None:
        return None
    found, expected = "there is no space after the dash", "a dash, a space and the line"
    return spot.slip(spot.depth, found, expected, f"write - {match[1]}")


def _no_space(spot: _Spot) -> Guess | None:
    match = _NO_SPACE.fullmatch(spot.text)
    if match is None:
        return None
    found, expected = "there is no space after the colon", "a key, a colon, a space and the value"
    return spot.slip(match.start("key"), found, expected, f"write {match['key']}: {match['value']}")


def _value(spot: _Spot) -> Guess | None:
    """A value that YAML takes for something other than text, by its first character or a colon inside."""
    match = _VALUE.fullmatch(spot.text)
    if match is None:
        return None
    wrong = _wrong_value(match["before"].strip().removeprefix("- "), match["value"])
    return None if wrong is None else spot.slip(match.start("value"), *wrong, f"write {_in_quotes(match)}")


def _wrong_value(key: str, value: str) -> tuple[str, str] | None:
    if value.startswith("{="):
        return "a value begins with {=", "a figure at the start of a value in quotes"
    if value[0] in _NO_TEXT_BEGINS_WITH:
        return f"a value begins with {value[0]}", f"text that begins with {value[0]} in quotes"
    if value[0] in "\"'":
        return "the text goes on after its closing quote", "quotes around the whole value, or none"
    if key.endswith(":") and ": " in f"{value} ":
        return f"{key[:-1].strip()} has a second colon in its value", "a value that holds a colon in quotes"
    return None


def _in_quotes(match: re.Match[str]) -> str:
    """The line as it should be: the same key, the whole value in quotes."""
    before, value = match["before"].strip(), match["value"]
    if len(value) > 1 and value[0] in "\"'" and value[0] == value[-1]:
        value = value[1:-1]
    if _SENTENCE.match(before):
        before, value = "-", f"{before.lstrip('- ')} {value}"
    return f"{before} {in_quotes(without_curly(value))}".lstrip()


def _no_colon(spot: _Spot) -> Guess | None:
    text = spot.text.strip()
    if not text or ":" in text or text.startswith("- "):
        return None
    return spot.slip(
        spot.depth,
        f"there is no key and colon before {text[:40]}",
        "a key, a colon, a space and the value",
        "add the key, or begin the line further in if it goes on with the one before",
    )


def _indent(spot: _Spot) -> Guess | None:
    there = _depth(spot.above)
    if not spot.text or spot.depth == there:
        return None
    way = "further in" if spot.depth > there else "further out"
    return spot.slip(
        spot.depth,
        f"this line begins {way} than the one before it, and fits under no line above",
        "the same indent for what belongs together",
        "begin it in the same column as the line it belongs with",
    )


def _unknown(spot: _Spot) -> Guess:
    return spot.slip(
        spot.column,
        "this is not written as keys and values",
        "lines such as key: value, lists with a dash, the same indent for what belongs together",
        "compare this line and the one before with the example of the key",
    )


def _depth(text: str) -> int:
    return len(text) - len(text.lstrip())


_ATTEMPTS = (_unclosed, _dash, _no_space, _value, _no_colon, _indent)
