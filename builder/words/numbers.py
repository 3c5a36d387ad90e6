"""Reading numbers from the digits as written, exactly; saying what is wrong when they are not numbers.

A number here is digits with at most one point. No thousands commas, no exponents, no other alphabets,
at most 12 digits before the point: what a tired person means is never guessed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

LONGEST = 12
_NUMBER = re.compile(r"(\d+)(?:\.(\d+))?|\.(\d+)", re.ASCII)
_MIXED = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)", re.ASCII)


@dataclass
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
    whole, decimals = match[1] or "0", match[2] or match[3] or ""
    if len(whole.lstrip("0")) > LONGEST or len(decimals) > LONGEST:
        raise Unreadable(f"{text[:40]} is too long a number", f"at most {LONGEST} digits on each side of the point")
    return Written(Fraction(int(whole + decimals), 10 ** len(decimals)), len(decimals))


def read_mixed(text: str, expected: str) -> Fraction:
    """A number, a fraction or a whole number with a fraction: `2.5`, `1/4`, `5 1/4`, `5-1/4`."""
    match = _MIXED.fullmatch(text)
    if match is None:
        return read_number(text, expected).value
    if any(len(part or "") > LONGEST for part in match.groups()):
        raise Unreadable(f"{text[:40]} is too long a number", f"at most {LONGEST} digits")
    if int(match[3]) == 0:
        raise Unreadable(f"{text} divides by nothing", expected)
    return int(match[1] or 0) + Fraction(int(match[2]), int(match[3]))


def _unreadable(text: str, expected: str) -> Unreadable:
    shown = text if len(text) <= 60 else text[:57] + "..."
    if not text:
        return Unreadable("nothing is written here", expected)
    if re.fullmatch(r"-\s?[\d.,]+", text):
        return Unreadable(f"{shown} is negative", expected, f"write {text[1:].strip()}")
    if re.fullmatch(r"\d{1,3}(,\d{3})+(\.\d+)?", text):
        return Unreadable(f"{shown} has a thousands comma", expected, f"write {text.replace(',', '')}")
    if re.fullmatch(r"\d+,\d+", text):
        return Unreadable(f"{shown} has a decimal comma", expected, f"write {text.replace(',', '.')}")
    if re.fullmatch(r"[\d.]+[eE][+-]?\d+", text):
        return Unreadable(f"{shown} has an exponent", expected, "write all its digits")
    if re.fullmatch(r"[$€£¥]\s?[\d.]+|[\d.]+\s?(?:[$€£¥]|[A-Z]{3})", text):
        bare = re.sub(r"[^\d.]", "", text)
        return Unreadable(f"{shown} has a currency mark", expected, f"write {bare}: the currency stands in journal.yaml")
    return Unreadable(f"{shown} is not a number", expected)


def read_rate(text: str, expected: str, *, bare: bool = True) -> Fraction:
    """A part of a whole: `25%`, or (where `bare` allows) a number from 0 to 1. Not above 100 %."""
    percent = text.endswith("%")
    value = read_number(text.removesuffix("%").strip(), expected).value
    if percent:
        value /= 100
    elif not bare or value > 1:
        raise Unreadable(f"{text} has no % sign", expected, f"write {text}%")
    if value > 1:
        raise Unreadable(f"{text} is more than the whole", expected, "a part is at most 100%")
    return value
