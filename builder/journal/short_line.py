"""What can be wrong with a short line, `Galvanised nails, 36.90`, before its amount is read.

The amount is whatever stands after the last comma, so a comma that was meant otherwise would be read as
another price: each such comma is refused.
"""

from __future__ import annotations

import re

from builder.words.misread import clipped

_KEY = re.compile(r"(?P<key>material|equipment|labour|travel|fee|cost|quantity|unit_cost|source):(?P<value>\S.*)")
# Two amounts with cents on one line: two things, or a list of things, behind one dash.
_AMOUNT_BEFORE = re.compile(r",\s*\d+\.\d\d(?=\s*(?:,|-|$))")
_TRAILING = re.compile(r"(?P<what>.*?\S)(?:\s+-|\s*=|\s*;)?\s+(?P<amount>[$€£]?\d+(?:\.\d+)?)")


def no_short(text: str, comment: str) -> tuple[str, str] | None:
    """What was found and what to write, where `text` is no thing, comma and amount; else None."""
    if not text:
        return _nothing(comment)
    what, comma, amount = text.rpartition(",")
    key = _KEY.fullmatch(text)
    if key is not None:
        return "there is no space after the colon", f"write {key['key']}: {clipped(key['value'])}"
    if not comma or not amount.strip():
        return f"{clipped(text)} has no amount after a comma", _with_comma(what.strip() or text)
    if not what.strip():
        return (
            f"{clipped(text)} does not say what it was",
            f"write what it was before the comma: ...,{amount}",
        )
    if re.search(r"\d$", what) and re.match(r"\d", amount):
        return _number_with_comma(text, amount)
    if _AMOUNT_BEFORE.search(what):
        return f"{clipped(text)} has two amounts", "write a line for each thing, each with a dash of its own"
    if re.fullmatch(r"[$€£]?\d[\d.]*", what) and not re.search(r"\d", amount):
        return f"{clipped(text)} begins with the amount", f"write {amount.strip()}, {what.strip()}"
    return None


def _nothing(comment: str) -> tuple[str, str]:
    if comment:
        return (
            f"the line is empty, as # begins a comment: {clipped(comment)}",
            f'write the line in quotes: "{clipped(comment)}"',
        )
    return "a dash stands here with nothing after it", "write the line, or remove the dash"


def _with_comma(text: str) -> str:
    trailing = _TRAILING.fullmatch(text) if len(text) < 200 else None
    if trailing is not None:
        return f"write {clipped(trailing['what'])}, {trailing['amount']}"
    return f"write {clipped(text)}, a comma and its cost; or unknown for the cost"


def _number_with_comma(text: str, amount: str) -> tuple[str, str] | None:
    """A comma between digits without a space, which no reader could tell from the comma before the amount."""
    if re.match(r"\d{3}\b", amount):
        return (
            f"{clipped(text)} has a thousands comma",
            f"write {re.sub(r'(?<=[0-9]),(?=[0-9]{3})', '', clipped(text))}",
        )
    cents = re.match(r"\d{1,2}(?![\d.])", amount)
    if cents is None:
        return None
    before = re.sub(r"(?<=[0-9])\.(?=[0-9]{3}$)", "", clipped(text.rpartition(",")[0]))
    if ", " in before:
        return f"{clipped(text)} has a decimal comma", f"write {before}.{cents[0]}"
    return (
        f"{clipped(text)} has no space after its comma",
        f"write {before}, {amount}, or {before}.{cents[0]} for one number",
    )
