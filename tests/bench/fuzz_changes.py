"""How an input is changed: lines moved, values swapped for what means something, pieces of other inputs put in."""

from __future__ import annotations

import random
import re
from collections.abc import Sequence

from tests.bench.fuzz_targets import every_key

LONGEST = 8_000
_KEYS = sorted({key.name for key in every_key()})
_EXAMPLES = sorted({key.example for key in every_key()})
_VALUES = [
    *_EXAMPLES,
    "0", "1", "-1", "1/0", "1e9", "0.001", "999999999999", "1234567890123", "0.000000000001", "½", "٣", "１２",
    "unknown", "rest", "included", "about 5", "~5", "5%", "100%", "101%", "0%", "yes", "no", "null", "~", '""', "''",
    "9 ft 8 in", "5-1/4\"", "3 m", "1.5 yd3", "2 lb/ft3", "0 ft", "12 bag", "24 in x 48 in", "5 USD", "$5", "1,250",
    "2026-02-30", "0001-01-01", "9999-12-31", "2026-07-04/2026-07-12", "12:30", "{a: 1}", "[a, b]", "{}", "[]",
    "{takeoff: footing.bags}", "{says: 3, differs: so}", "stock", "returned", "sold", "spoiled", "owned", "hired",
    "{= spent =}", "{= job cost of a =}", "#4", "&a", "*a", "!!x", "|", ">", "- a", "? a", "a: b: c", "'", '"', "\\",
    "\u2028", "\u202e", "\ufeff", "\x00", "\U0001f600", "e\u0301", "\ud7ff", "ß", "İ", "ﬁ", "\u00a0", "\t",
]  # fmt: skip
_PIECES = [
    "---\n", "...\n", "items:\n  - ", "receipts:\n  yard:\n    items:\n      - ", "stated: {spent: 3}\n", "![", "](",
    "{=", "=}", "<img src='a.png' alt='", "[a]: b\n", "\n\n", "\r\n", "\r", "  ", "\t", ": ", "- ", "#", "{", "}",
    "[", "]", ",", '"', "'", "takeoff:\n  a: {method: slab, length: 10 ft, width: 8 ft, thickness: 4 in}\n",
    "from: a\n", "id: a\n", "=== plan.yaml\n", "=== owned.yaml\n", "phases:\n  - key: a\n    planned: 3\n",
    "equipment:\n  saw: {name: a}\n",
]  # fmt: skip


def changed(data: bytes, others: Sequence[bytes], chance: random.Random) -> bytes:
    """The input with one to four changes."""
    for _ in range(chance.choice((1, 1, 2, 4))):
        data = chance.choice(_CHANGES)(data, others, chance)
    return data[:LONGEST]


def _value(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """Another value for a key."""
    spots = list(re.finditer(rb"(?<=: )[^\n]+", data))
    if not spots:
        return data + chance.choice(_VALUES).encode()
    spot = chance.choice(spots)
    return data[: spot.start()] + chance.choice(_VALUES).encode() + data[spot.end() :]


def _inside(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """A value, or a piece of grammar, in the middle of something."""
    at = chance.randint(0, len(data))
    return data[:at] + chance.choice((*_VALUES, *_PIECES)).encode() + data[at:]


def _key(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """A line of key and value after some line, as far in as that one."""
    lines = data.split(b"\n")
    at = chance.randrange(len(lines))
    indent = re.match(rb"[ -]*", lines[at])
    before = indent[0].replace(b"-", b" ") if indent else b""
    lines.insert(at + 1, before + f"{chance.choice(_KEYS)}: {chance.choice(_VALUES)}".encode())
    return b"\n".join(lines)


def _line(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """A line gone, twice, elsewhere, or at another indent."""
    lines = data.split(b"\n")
    line = lines.pop(chance.randrange(len(lines)))
    fate = chance.randrange(4)
    if fate == 0:
        return b"\n".join(lines)
    at = chance.randint(0, len(lines))
    lines[at:at] = {1: [line], 2: [line, line], 3: [b"  " + line]}[fate]
    return b"\n".join(lines)


def _mixed(data: bytes, others: Sequence[bytes], chance: random.Random) -> bytes:
    """A piece of another input in the place of some of this."""
    other = chance.choice(others)
    begin, at = chance.randint(0, len(other)), chance.randint(0, len(data))
    return data[:at] + other[begin : begin + chance.choice((5, 30, 300))] + data[at + chance.choice((0, 0, 20)) :]


def _cut(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """Some bytes gone, or one of them another."""
    at = chance.randint(0, len(data))
    if chance.random() < 0.5:
        return data[:at] + data[at + chance.choice((1, 4, 40)) :]
    return data[:at] + bytes([chance.randrange(256)]) + data[at + 1 :]


def _again(data: bytes, _: Sequence[bytes], chance: random.Random) -> bytes:
    """A piece of it many times."""
    at = chance.randint(0, len(data))
    piece = data[at : at + chance.choice((1, 2, 8, 40))]
    return data[:at] + piece * chance.choice((2, 20, 100)) + data[at:]


_CHANGES = (_value, _value, _inside, _key, _line, _mixed, _cut, _again)


def swollen(data: bytes, most: int, chance: random.Random) -> bytes:
    """A piece of the input, a line or a few characters, so often that the whole has `most` bytes."""
    lines = data.split(b"\n")
    spot = chance.randrange(4)
    if spot == 0:
        at = chance.randrange(len(lines))
        room = max(most - len(data), 1) // (len(lines[at]) + 1)
        return b"\n".join([*lines[:at], *[lines[at]] * room, *lines[at:]])
    at = chance.randint(0, len(data))
    some = chance.choice((*_PIECES, *_VALUES)).encode()
    piece = some if spot == 1 else data[at : at + chance.choice((1, 2, 3, 9, 30))]
    return data[:at] + (piece or b"a") * (max(most - len(data), 1) // max(len(piece), 1)) + data[at:]
