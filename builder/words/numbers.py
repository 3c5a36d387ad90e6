"""Reading numbers from the digits as written, exactly; saying what is wrong when they are not numbers.

A number here is digits with at most one point. No thousands commas, no exponents, no other alphabets,
at most 12 digits before the point and 100 after it: what a tired person means is never guessed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.words.misread import clipped, misread, with_percent
from builder.words.rounding import decimal_text, significant_text

LONGEST, FINEST = 12, 100  # digits before the point and after it
_NUMBER = re.compile(r"(\d+)(?:\.(\d+))?|\.(\d+)", re.ASCII)
_MIXED = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)", re.ASCII)


@dataclass(eq=False)  # each raising is its own; with eq it would have no hash, which tracebacks want
class Unreadable(Exception):
    """Text that is not the number or quantity it should be. Keeps its facts; `fix` may be empty."""

    found: str
    expected: str
    fix: str = ""

    def __str__(self) -> str:
        return f"{self.found}; expected {self.expected}" + (f"; {self.fix}" if self.fix else "")


@dataclass(frozen=True, slots=True)
class Written:
    """A number and how many decimals its author wrote (`12.10` has 2)."""

    value: Fraction
    decimals: int


def read_number(text: str, expected: str = "a number such as 12 or 12.50") -> Written:
    """The exact value of plain digits; Unreadable otherwise.

    >>> read_number("12.10")
    Written(value=Fraction(121, 10), decimals=2)
    """
    match = _NUMBER.fullmatch(text)
    if match is None:
        raise _unreadable(text, expected)
    whole, decimals = (match[1] or "").lstrip("0") or "0", match[2] or match[3] or ""
    if len(whole) > LONGEST or len(decimals) > FINEST:
        raise _too_long(text)
    return Written(Fraction(int(whole + decimals), 10 ** len(decimals)), len(decimals))


def read_mixed(text: str, expected: str) -> Fraction:
    """A number, a fraction or a whole number with a fraction: `2.5`, `1/4`, `5 1/4`, `5-1/4`."""
    match = _MIXED.fullmatch(text)
    if match is None:
        return read_number(text, expected).value
    if any(len(part or "") > LONGEST for part in match.groups()):
        raise _too_long(text)
    if int(match[3]) == 0:
        raise Unreadable(f"{text} divides by nothing", expected)
    return int(match[1] or 0) + Fraction(int(match[2]), int(match[3]))


def _too_long(text: str) -> Unreadable:
    most = f"at most {LONGEST} digits before the point and {FINEST} after it"
    return Unreadable(f"{clipped(text)} is too long a number", most)


def _unreadable(text: str, expected: str) -> Unreadable:
    if not text:
        return Unreadable("nothing is written here", expected)
    found, fix = misread(text)
    return Unreadable(found, expected, fix)


def read_rate(text: str, expected: str, *, bare: bool = True) -> Fraction:
    """A part of a whole: `25%`, or (where `bare` allows) a number from 0 to 1. Not above 100 %."""
    percent = text.endswith("%")
    try:
        value = read_number(text.removesuffix("%").strip(), expected).value
    except Unreadable as error:
        raise _no_rate(text, error) from None
    if percent:
        value /= 100
    elif value > 1 and value <= 100:
        raise Unreadable(f"{text} has no % sign", expected, f"write {text}%")
    elif not bare:
        raise Unreadable(f"{text} has no % sign", expected, f"write {significant_text(value * 100)}%")
    if value > 1:
        raise Unreadable(f"{text} is more than the whole", expected, "a part is at most 100%")
    return value


_SPOKEN = {
    "half": "50%",
    "a half": "50%",
    "a third": "33.3%",
    "a quarter": "25%",
    "all": "100%",
    "none": "0%",
}


def _no_rate(text: str, error: Unreadable) -> Unreadable:
    """A part that is no number: with what to write as a percentage."""
    match = _MIXED.fullmatch(text)
    if match is not None and not match[1] and len(text) <= LONGEST and int(match[3]):
        hundred = decimal_text(Fraction(100 * int(match[2]), int(match[3])), 1)
        return Unreadable(f"{text} is a fraction", error.expected, f"write {hundred.removesuffix('.0')}%")
    if meant := with_percent(text):
        return Unreadable(f"{clipped(text)} has no % sign", error.expected, f"write {meant}")
    if text.lower() in _SPOKEN:
        return Unreadable(f"{text} is a word", error.expected, f"write {_SPOKEN[text.lower()]}")
    if text == "%":
        return Unreadable("the % sign has no number before it", error.expected)
    if not text.endswith("%"):
        return error
    found = error.found.replace(text.removesuffix("%").strip(), text, 1)
    is_number = _NUMBER.fullmatch(error.fix.removeprefix("write "))
    return Unreadable(found, error.expected, error.fix + "%" if is_number else error.fix)
