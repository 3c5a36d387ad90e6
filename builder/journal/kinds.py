"""The kinds of value that the journal's keys take: text, numbers, dates, durations, and lists of them."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping as Lookup
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

from builder.journal.keys import Kind, Word
from builder.journal.reading import Reading, kind_of
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import did_you_mean, one_of
from builder.words.judged import Judged
from builder.words.numbers import Unreadable, read_number, read_rate
from builder.words.place import Place
from builder.words.quantity import Quantity, read_quantity
from builder.words.span import Span

T = TypeVar("T")
STRING = {"type": "string"}
AMOUNTISH = {"type": ["string", "number"]}
ABOUT = re.compile(r"about\s+", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Placed(Generic[T]):
    """A value and where it stands."""

    value: T
    place: Place


def _text(text: str, _: Reading) -> str:
    return text


def _yes_no(text: str, _: Reading) -> bool:
    if text in ("yes", "true"):
        return True
    if text in ("no", "false"):
        return False
    raise Unreadable(f"{text} is neither yes nor no", "yes or no")


def _day(text: str, _: Reading) -> datetime.date:
    return read_date(text)


def read_date(text: str) -> datetime.date:
    """A day of the calendar written as ISO 8601, `2026-04-18`."""
    expected = "a date such as 2026-04-18 (year, month, day)"
    if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII):
        raise Unreadable(f"{text} is not a date", expected)
    year, month, day = (int(part) for part in text.split("-"))
    try:
        return datetime.date(year, month, day)
    except ValueError:
        raise Unreadable(f"{text} is a day that no calendar has", expected) from None


def _away(text: str, _: Reading) -> Span:
    first, slash, last = text.partition("/")
    start = read_date(first.strip())
    end = read_date(last.strip()) if slash else start
    if end < start:
        raise Unreadable(f"{text} ends before it begins", "the earlier date first", f"write {end}/{start}")
    return Span(start, end)


def _quantity(text: str, _: Reading) -> Quantity:
    return read_quantity(text)


def _length_of_time(text: str, _: Reading) -> Fraction:
    expected = "a time such as 7 days or 3 hours"
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "time":
        raise Unreadable(f"{text} is not a length of time", expected, f"write {text.split()[0]} days")
    return quantity.in_unit("day")


def _years(text: str, _: Reading) -> Fraction:
    expected = "a time such as 20 years"
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "calendar" or quantity.value == 0:
        raise Unreadable(f"{text} is no number of years", expected)
    return quantity.in_unit("year")


def _number(text: str, _: Reading) -> Fraction:
    return read_number(text).value


def _count(text: str, _: Reading) -> int:
    number = read_number(text, "a whole number of 1 or more").value
    if number.denominator != 1 or number < 1:
        raise Unreadable(f"{text} is no whole number of 1 or more", "a whole number of 1 or more")
    return int(number)


def _rate(text: str, _: Reading) -> Fraction:
    return read_rate(text, "a part such as 25% or 0.25")


def _label(text: str, _: Reading) -> str:
    if not re.fullmatch(r"[^\W\d_][\w-]*", text):
        raise Unreadable(f"{text} is no plain word", "letters, digits and dashes, beginning with a letter")
    return text


TEXT = Word("text", _text, STRING)
YES_NO = Word("yes or no", _yes_no, {"enum": ["yes", "no", True, False]})
DATE = Word("a date such as 2026-04-18", _day, {"type": "string", "format": "date"})
AWAY = Word("a date, or two as 2026-07-04/2026-07-12", _away, STRING)
QUANTITY = Word("a quantity such as 36 bag, 2.4 m or 9 ft 8 in", _quantity, AMOUNTISH)
DURATION = Word("a time such as 7 days or 3 hours", _length_of_time, STRING)
YEARS = Word("a time such as 20 years", _years, STRING)
NUMBER = Word("a number such as 7 or 6.5", _number, AMOUNTISH)
COUNT = Word("a whole number of 1 or more", _count, {"type": ["integer", "string"]})
RATE = Word("a part such as 25% or 0.25", _rate, AMOUNTISH)
LABEL = Word("a plain word", _label, {"type": "string", "pattern": "^[^\\W\\d_][\\w-]*$"})


def judged(kind: Word[T]) -> Word[Judged[T]]:
    """The same kind, with `about` allowed before the value."""

    def parse(text: str, reading: Reading) -> Judged[T]:
        bare, count = ABOUT.subn("", text, count=1) if ABOUT.match(text) else (text, 0)
        return Judged(kind.parse(bare, reading), about=bool(count))

    schema = dict(kind.schema) | ({"type": ["string", "number"]} if "type" in kind.schema else {})
    return Word(kind.expects, parse, schema)


def choice(*words: str) -> Word[str]:
    """One of these words."""
    expects = one_of(words)

    def parse(text: str, _: Reading) -> str:
        if text in words:
            return text
        raise Unreadable(f"{text} is not known here", expects, did_you_mean(text, words))

    return Word(expects, parse, {"enum": list(words)})


@dataclass(frozen=True, slots=True)
class Listed(Generic[T]):
    """A list of a kind. `lone` allows a single value to stand without its list."""

    kind: Kind[T]
    lone: bool = False

    @property
    def expects(self) -> str:
        """What is expected of each of them."""
        return f"a list, each of it {self.kind.expects}"

    @property
    def schema(self) -> Lookup[str, object]:
        """JSON Schema."""
        listed: dict[str, object] = {"type": "array", "items": self.kind.schema}
        return {"anyOf": [listed, self.kind.schema]} if self.lone else listed

    def read(self, node: Node, key: str, reading: Reading) -> tuple[Placed[T], ...] | None:
        """The values with their places; one that cannot be read is reported and left out."""
        if isinstance(node, Sequence):
            nodes = node.items
        elif self.lone and isinstance(node, Scalar):
            nodes = (node,)
        elif isinstance(node, Scalar) and not node.text and not node.quoted:
            return ()
        else:
            fix = f"write {key}: [{node.text}]" if isinstance(node, Scalar) else ""
            reading.mistake(node.place, f"{key} is {kind_of(node)}", self.expects, fix)
            return None
        read = ((self.kind.read(one, key, reading), one.place) for one in nodes)
        return tuple(Placed(value, place) for value, place in read if value is not None)


@dataclass(frozen=True, slots=True)
class Table(Generic[T]):
    """A mapping from the author's own words to a kind. `words` names what the words are ("a phase")."""

    kind: Kind[T]
    words: str

    @property
    def expects(self) -> str:
        """What is expected."""
        return f"{self.words}, a colon, and {self.kind.expects}"

    @property
    def schema(self) -> Lookup[str, object]:
        """JSON Schema."""
        return {"type": "object", "additionalProperties": self.kind.schema}

    def read(self, node: Node, key: str, reading: Reading) -> tuple[tuple[Placed[str], T], ...] | None:
        """Pairs of word (with its place) and value, in the order written."""
        if isinstance(node, Scalar) and not node.text and not node.quoted:
            return ()
        if not isinstance(node, Mapping):
            reading.mistake(node.place, f"{key} is {kind_of(node)}", self.expects)
            return None
        read = ((one.key, self.kind.read(one.value, one.key.text, reading)) for one in node.entries)
        return tuple((Placed(name.text, name.place), value) for name, value in read if value is not None)


@dataclass(frozen=True, slots=True)
class Anything:
    """A node handed on as written, for a reader of its own. `shape` is its JSON Schema."""

    expects: str
    schema: Lookup[str, object]

    def read(self, node: Node, key: str, reading: Reading) -> Node | None:
        """The node itself."""
        del key, reading
        return node
