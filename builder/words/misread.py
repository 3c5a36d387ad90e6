"""What people write where a plain number is due, and what they should write instead.

A guess is shown as a likely fix; none is ever taken for the number.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from functools import cache

from builder.words.currencies import codes

LONGEST_SHOWN = 60
# The fractions that phones and word processors make of 1/2 as it is typed.
VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
# Other ways of saying "about" (which the format has one word for).
ROUGHLY = r"(?i:(?:about|approx(?:imately)?\.?|around|roughly|circa|ca\.?|say)\s+|[~≈]\s?)"
# Other ways of writing the % sign, in the languages of the pages.
_PERCENT = re.compile(
    r"(?P<number>.*\d)\s*(?:per ?cent|pct|prozent|v\.? ?h\.?|pour ?cent|p\.? ?c\.?|por ?ciento)\.?", re.IGNORECASE
)
_PLAIN = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_Row = tuple[re.Pattern[str], str, Callable[[re.Match[str]], str]]


def clipped(text: str) -> str:
    """`text`, or its beginning when it is too long to show."""
    return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 3] + "..."


def misread(text: str) -> tuple[str, str]:
    """What is wrong with `text` as a number, and what to write instead ("" where nobody can tell).

    >>> misread("1,250"), misread("12 each")
    (('1,250 has a thousands comma', 'write 1250'), ('12 each has words after the number', 'write 12'))
    """
    for pattern, wrong, fix in _table() if len(text) <= 2 * LONGEST_SHOWN else ():
        match = pattern.fullmatch(text)
        if match is not None:
            return f"{clipped(text)} {wrong}", fix(match)
    return f"{clipped(text)} is not a number", ""


def with_percent(text: str) -> str:
    """A part whose % sign was written in words, as it should be written; "" where there are no such words.

    >>> with_percent("55 Prozent"), with_percent("8,25 v.H."), with_percent("55 bag")
    ('55%', '8.25%', '')
    """
    match = _PERCENT.fullmatch(text) if len(text) <= LONGEST_SHOWN else None
    if match is None:
        return ""
    number = _write(match["number"].strip()).removeprefix("write ")
    return f"{number}%" if re.fullmatch(_PLAIN, number) else ""


@cache
def _table() -> tuple[_Row, ...]:
    """Tried from the top: the first row that fits the whole text speaks."""
    mark = rf"(?:[A-Z]{{0,3}}[$€£¥]|{'|'.join(codes())}|S?[Ff]r\.|[Dd]ollars?|[Ee]uros?|[Pp]ounds|Franken)"
    rows = (
        (r"[-−–]\s?(?P<number>[\d.,]+)", "is negative", _number),
        (r"\+\s?(?P<number>[\d.,]+)", "has a plus sign", _number),
        (rf"{ROUGHLY}(?P<number>.+)", "is marked as a guess, which this number cannot be", _number),
        (r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?", "has a thousands comma", _digits_alone),
        (r"[0-9]{1,3}(?:[ '’_][0-9]{3})+(?:\.[0-9]+)?", "has a gap between its digits", _digits_alone),
        (r"(?:[0-9]{1,3}(?:\.[0-9]{3})+|[0-9]+),[0-9]+", "has a decimal comma", _with_point),
        (r"(?P<number>[0-9]+)\.", "ends in a point", _number),
        (r"(?P<number>[\d.,'’ ]*\d)[.,] ?[-–—−]{1,2}", "has a dash for its cents", _number),
        (r"[0-9.]+[eE][+-]?[0-9]+", "has an exponent", _just("write all its digits")),
        (rf"{mark}\s?(?P<number>[\d.,' ]+[-–—−]?)", "has a currency mark", _money),
        (rf"(?P<number>[\d.,' ]*[\d.][-–—−]?)\s?{mark}", "has a currency mark", _money),
        (
            r"(?:(?P<whole>[0-9]{1,9})[ -])?(?P<top>[0-9]{1,9})/(?P<bottom>[0-9]{1,9})",
            "is a fraction",
            _in_decimals,
        ),
        (rf"(?P<whole>[0-9]{{0,9}}) ?(?P<vulgar>[{''.join(VULGAR)}])", "is a fraction", _vulgar),
        (rf"{_PLAIN}\s?[x×*+@]\s?{_PLAIN}(?:\s.*)?", "is a sum to be worked out", _just("write what it comes to")),
        (rf"{_PLAIN}\s?(?:-|–|to|or)\s?{_PLAIN}.*", "is two numbers", _just("write the likelier one")),
        (r"(?=.*[^0-9.])[\d.]+", "has digits of another alphabet", _other_digits),
        (r"[0-9.]*[OolI][0-9.OolI]*", "has a letter for a digit", _look_alikes),
        (rf"(?P<number>{_PLAIN})(?:\s?[/(].*|\s(?!\d).*|[^\W\d_]+)", "has words after the number", _number),
    )
    return tuple((re.compile(pattern), wrong, fix) for pattern, wrong, fix in rows)


def _number(match: re.Match[str]) -> str:
    """To write the number inside, itself put right where it needs to be."""
    return _write(match["number"].strip())


def _write(number: str) -> str:
    return f"write {number}" if re.fullmatch(_PLAIN, number) else misread(number)[1]


def _just(fix: str) -> Callable[[re.Match[str]], str]:
    return lambda _: fix


def _digits_alone(match: re.Match[str]) -> str:
    return f"write {re.sub('[^0-9.]', '', match[0])}"


def _with_point(match: re.Match[str]) -> str:
    return f"write {match[0].replace('.', '').replace(',', '.')}"


def _money(match: re.Match[str]) -> str:
    fix = _number(match)
    return fix and f"{fix}: the currency stands in journal.yaml"


def _other_digits(match: re.Match[str]) -> str:
    return _write("".join(str(unicodedata.digit(one, one)) for one in match[0]))


def _look_alikes(match: re.Match[str]) -> str:
    return _write(match[0].translate(str.maketrans("OolI", "0011"))) if re.search("[0-9]", match[0]) else ""


def _vulgar(match: re.Match[str]) -> str:
    return misread(f"{match['whole']} {VULGAR[match['vulgar']]}".strip())[1]


def _in_decimals(match: re.Match[str]) -> str:
    top, bottom = int(match["top"]), int(match["bottom"])
    if bottom == 0 or 1000 % bottom:
        return "write it with decimals" if bottom else ""
    thousandths = int(match["whole"] or 0) * 1000 + top * 1000 // bottom
    decimals = f"{thousandths % 1000:03}".rstrip("0")
    return f"write {thousandths // 1000}" + (f".{decimals}" if decimals else "")
