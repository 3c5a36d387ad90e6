"""The kinds of value that the journal's keys take: text, numbers, dates, durations, and lists of them."""

from __future__ import annotations

import datetime
import difflib
import re
from collections.abc import Mapping as Lookup
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar
from unicodedata import combining, normalize

from builder.journal.days import read_date
from builder.journal.keys import Kind, Word
from builder.journal.quoting import in_quotes, quoted, without_curly
from builder.journal.reading import Reading, kind_of, meant_by
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import MOST_SHOWN, did_you_mean, one_of
from builder.words.judged import Judged
from builder.words.misread import ROUGHLY, clipped
from builder.words.numbers import Unreadable, read_number, read_rate
from builder.words.place import Place
from builder.words.quantity import Quantity, read_quantity
from builder.words.rounding import significant_text
from builder.words.span import Span
from builder.words.units import pieces

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
    if not text:
        raise Unreadable("nothing stands between the quotes", "text", "write some")
    return text


def _yes_no(text: str, _: Reading) -> bool:
    word = text.lower()
    if word in ("yes", "true"):
        return True
    if word in ("no", "false"):
        return False
    meant = "yes" if word in _YES else "no" if word in _NO else ""
    raise Unreadable(f"{clipped(text)} is neither yes nor no", "yes or no", meant and f"write {meant}")


# In the languages of the pages.
_YES = frozenset({"y", "on", "x", "1", "j", "ja", "oui", "si", "sí", "wahr", "vrai", "verdadero"})
_NO = frozenset({"n", "off", "0", "nein", "non", "falsch", "faux", "falso"})


def _day(text: str, _: Reading) -> datetime.date:
    return read_date(text)


def _away(text: str, _: Reading) -> Span:
    # One space for many first: a pattern that takes any number of them looks at each of a million a million times.
    first, slash, last = re.sub(r" (?:to|-|–|until) ", "/", " ".join(text.split())).partition("/")
    start = read_date(first.strip())
    end = read_date(last.strip()) if slash else start
    if end < start:
        raise Unreadable(f"{text} ends before it begins", "the earlier date first", f"write {end}/{start}")
    return Span(start, end)


def _quantity(text: str, _: Reading) -> Quantity:
    try:
        return read_quantity(text)
    except Unreadable as error:
        if error.fix or re.search(r"\d", text):
            raise
        raise Unreadable(error.found, error.expected, "leave quantity out, where nobody counted") from None


def _length_of_time(text: str, _: Reading) -> Fraction:
    expected = "a time such as 7 days or 3 hours"
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "time":
        bare = f"write {text} days" if quantity.unit == pieces() else "write it in days"
        raise Unreadable(f"{clipped(text)} is not a number of days or hours", expected, bare)
    return quantity.in_unit("day")


def _years(text: str, _: Reading) -> Fraction:
    expected = "a time such as 20 years"
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "calendar" or quantity.value == 0:
        bare = f"write {text} years" if quantity.unit == pieces() and quantity.value else ""
        raise Unreadable(f"{clipped(text)} is no number of years", expected, bare)
    return quantity.in_unit("year")


def _hours(text: str, _: Reading) -> Fraction:
    """Hours as a number, with or without the word: `7`, `6.5`, `7 hours`."""
    expected = "a number of hours such as 7 or 6.5"
    clock = re.fullmatch(r"(\d{1,3})(?::| ?h ?)([0-5]\d) ?(?:m|min)?", text, re.ASCII)
    if clock is not None:
        hours = significant_text(Fraction(int(clock[1]) * 60 + int(clock[2]), 60), 4)
        raise Unreadable(f"{text} is written as on a clock", expected, f"write {hours}")
    return read_number(re.sub(r"(?<=\d)\s*(?:hours?|hrs?|h)\.?$", "", text), expected).value


def _count(text: str, _: Reading) -> int:
    number = read_number(text, "a whole number of 1 or more").value
    if number.denominator != 1 or number < 1:
        raise Unreadable(f"{text} is no whole number of 1 or more", "a whole number of 1 or more")
    return int(number)


def _rate(text: str, _: Reading) -> Fraction:
    return read_rate(text, "a part such as 25% or 0.25")


def _label(text: str, _: Reading) -> str:
    if not re.fullmatch(r"[^\W\d_][\w-]*", text) or not text[0].isalpha():
        slug = re.sub(r"\W+", "-", text.strip()).strip("-_")
        fix = (
            f"write {clipped(slug)}"
            if slug[:1].isalpha()
            else f"begin it with a letter, as in no{slug}"
            if slug
            else ""
        )
        raise Unreadable(
            f"{clipped(text)} is no plain word", "letters, digits and dashes, beginning with a letter", fix
        )
    return text


@dataclass(frozen=True, slots=True)
class Text(Word[str]):
    """Text, with a warning where curly quotes around the whole of it will be printed."""

    def read(self, node: Node, key: str, reading: Reading) -> str | None:
        """The value, or None with a mistake reported."""
        value = Word.read(self, node, key, reading)
        if value is None or not isinstance(node, Scalar) or node.quoted:
            return value
        if (bare := without_curly(value)) != value:
            reading.report.warning(
                node.place,
                f"{key}: the curly quotes around {clipped(value)} are printed",
                "text without quotes, or in straight ones",
                f"write {clipped(quoted(bare))}, or {clipped(in_quotes(value))} if they are to be printed",
            )
        return value


TEXT = Text("text", _text, STRING)
YES_NO = Word("yes or no", _yes_no, {"enum": ["yes", "no", True, False]})
DATE = Word("a date such as 2026-04-18", _day, {"type": "string", "format": "date"})
AWAY = Word("a date, or two as 2026-07-04/2026-07-12", _away, STRING)
QUANTITY = Word("a quantity such as 36 bag, 2.4 m or 9 ft 8 in", _quantity, AMOUNTISH)
DURATION = Word("a time such as 7 days or 3 hours", _length_of_time, STRING)
YEARS = Word("a time such as 20 years", _years, STRING)
HOURS = Word("a number of hours such as 7 or 6.5", _hours, AMOUNTISH)
COUNT = Word("a whole number of 1 or more", _count, {"type": ["integer", "string"]})
RATE = Word("a part such as 25% or 0.25", _rate, AMOUNTISH)
LABEL = Word("a plain word", _label, {"type": "string", "pattern": "^[^\\W\\d_][\\w-]*$"})

# A phase is named by its key; what leads to none is told once the plan is read, which knows what was meant.
PHASE_NAMED = Word(LABEL.expects, _text, LABEL.schema)


def judged(kind: Word[T]) -> Word[Judged[T]]:
    """The same kind, with `about` allowed before the value."""

    def parse(text: str, reading: Reading) -> Judged[T]:
        bare, about = without_about(text)
        return Judged(kind.parse(bare, reading), about=about)

    schema = dict(kind.schema) | ({"type": ["string", "number"]} if "type" in kind.schema else {})
    return Word(kind.expects, parse, schema)


def loosely(kind: Word[T]) -> Word[T]:
    """The same kind, where `about` may stand and adds nothing: the number is a judgement anyway."""

    def parse(text: str, reading: Reading) -> T:
        return kind.parse(without_about(text)[0], reading)

    return Word(kind.expects, parse, dict(kind.schema))


def without_about(text: str) -> tuple[str, bool]:
    """The value behind an `about`, and whether there was one; Unreadable for other words that say it."""
    match = ABOUT.match(text)
    if match is not None:
        return text[match.end() :], True
    rough = re.fullmatch(rf"{ROUGHLY}(?P<after>[\d.$€£¥].*)|(?P<before>.*\d)\s*(?:\?|ish|or so)", text)
    if rough is not None:
        number = rough["after"] or rough["before"]
        raise Unreadable(f"{clipped(text)} is a guess", "the word about before it", f"write about {clipped(number)}")
    return text, False


HOURS_TOLD = judged(HOURS)
HOURS_GUESSED = loosely(HOURS)
HEADS = loosely(COUNT)


def choice(*words: str, also: Lookup[str, str] | None = None) -> Word[str]:
    """One of these words. `also` are other words for them, which the message recognises."""
    expects = one_of(words)

    def parse(text: str, _: Reading) -> str:
        if text in words:
            return text
        known = {bare_word(word): meant for word, meant in {**{word: word for word in words}, **(also or {})}.items()}
        meant = known.get(bare_word(text))
        near = [] if meant else difflib.get_close_matches(bare_word(text)[:MOST_SHOWN], known, n=1, cutoff=0.75)
        hint = f"write {meant}" if meant else f"did you mean {known[near[0]]}?" if near else did_you_mean(text, words)
        raise Unreadable(f"{clipped(text)} is not known here", expects, hint)

    return Word(expects, parse, {"enum": list(words)})


def bare_word(word: str) -> str:
    """A word in small letters without accents: Récupéré is recupere."""
    return "".join(one for one in normalize("NFKD", word.casefold()) if not combining(one))


@dataclass(frozen=True, slots=True)
class Listed(Generic[T]):
    """A list of a kind. `lone` allows a single value to stand without its list.

    `fix` is what to write in place of something that is no list. `whole` gives nothing when one of the list
    cannot be read.
    """

    kind: Kind[T]
    lone: bool = False
    fix: str = ""
    whole: bool = False

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
        elif isinstance(node, Scalar) and node.empty and not re.match(r"#\S", node.comment):
            return ()
        elif self.lone and (isinstance(node, Scalar) or meant_by(node, text=self._is_text)):
            nodes = (node,)
        else:
            reading.mistake(node.place, f"{key} is {kind_of(node)}", self.expects, self.fix)
            return None
        read = [(self._one(one, key, reading), one.place) for one in nodes]
        values = tuple(Placed(value, place) for value, place in read if value is not None)
        return None if self.whole and len(values) < len(read) else values

    @property
    def _is_text(self) -> bool:
        """Whether each is a sentence or a name, which a colon makes no less."""
        kind: object = self.kind
        return kind in (TEXT, LABEL, PHASE_NAMED)

    def _one(self, node: Node, key: str, reading: Reading) -> T | None:
        meant = meant_by(node, text=True) if self._is_text else None
        if meant is None:
            return self.kind.read(node, key, reading)
        reading.no_keys(node, key, TEXT.expects, meant)
        return None


@dataclass(frozen=True, slots=True)
class Table(Generic[T]):
    """A mapping from the author's own words to a kind. `words` names what the words are ("a phase").

    `fix` is what to write in place of something that is no mapping.
    """

    kind: Kind[T]
    words: str
    fix: str = ""

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
        if isinstance(node, Scalar) and node.empty:
            return ()
        if not isinstance(node, Mapping):
            reading.mistake(node.place, f"{key} is {kind_of(node)}", self.expects, self.fix)
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
