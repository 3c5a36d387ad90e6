"""Words, money, numbers and dates in the language of the journal. The only place that formats any of them.

English sentences are their own keys; a catalogue gives the other languages. Money is whole minor units and is
written with all of them, so that a printed column adds up by hand; the locale only says how digits are grouped
and where the currency stands.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Mapping
from contextlib import suppress
from copy import deepcopy
from decimal import Decimal
from fractions import Fraction
from functools import cache
from importlib import import_module

from babel import Locale, UnknownLocaleError, localedata
from babel.dates import format_date, format_interval
from babel.lists import format_list

from builder.figures.figure import Bound
from builder.pages.digits import MoneyStyle, NumberStyle
from builder.pages.languages import Catalogue
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.rounding import decimal_text, half_up, significant_text
from builder.words.span import Span

CATALOGUES: tuple[str, ...] = ("de", "fr", "es")
_SIGNS = {"ft2": "ft²", "yd2": "yd²", "in2": "in²", "m2": "m²", "cm2": "cm²"}
_SIGNS |= {"ft3": "ft³", "yd3": "yd³", "in3": "in³", "m3": "m³"}
_TAPE = 16
"""The finest division of an inch on a builder's tape."""


class Words:
    """How everything is said in one language and one currency."""

    def __init__(self, language: str, currency: Currency, catalogue: Catalogue | None = None) -> None:
        self.language = language
        self.locale = _locale(language)
        self.direction = self.locale.text_direction
        self._currency = currency
        self._catalogue = catalogue if catalogue is not None else _catalogue(self.locale)
        self._money = MoneyStyle.of(self.locale, currency, symbol=True)
        self._bare = MoneyStyle.of(self.locale, currency, symbol=False)
        self._number = NumberStyle.of(self.locale)
        self._written: dict[int, str] = {}  # a line's amounts stand on many pages

    @property
    def money_style(self) -> MoneyStyle:
        """How amounts are written, for a script that writes them too."""
        return self._money

    def say(self, text: str, **values: object) -> str:
        """A sentence of the catalogue with its values put in. English is the key and the fallback."""
        told = self._catalogue.get(text, text)
        if not isinstance(told, str):
            raise TypeError(f"{text!r} is a plural: use count()")
        return told.format(**values) if values else told

    def count(self, number: int, one: str, many: str, **values: object) -> str:
        """A sentence that depends on a number: `count(3, "{n} line", "{n} lines")`."""
        return self._bent(Decimal(number), one, many).format(n=self.whole(number), **values)

    def _bent(self, number: Decimal, one: str, many: str) -> str:
        """The sentence in the plural that a number as it is printed asks for (French: 1,5 heure)."""
        told = self._catalogue.get(many)
        if isinstance(told, Mapping):
            return told.get(self.locale.plural_form(number), told["other"])
        return told or (one if number == 1 else many)

    def known(self, text: str) -> str:
        """A word that may be the program's or its author's: put into the language where it is the program's."""
        told = self._catalogue.get(text)
        return told if isinstance(told, str) else text

    def money(self, minor: int, bound: Bound = Bound.EXACT) -> str:
        """An amount with its currency, "at least" before it where unknowns stand below it."""
        return self.bounded(self._isolated(self._money.write(minor)), bound)

    def bare(self, minor: int) -> str:
        """An amount without its currency, for columns that name it above."""
        if (told := self._written.get(minor)) is None:
            told = self._written[minor] = self._bare.write(minor)
        return told

    def bounded(self, text: str, bound: Bound) -> str:
        """`at least $12.00`; or that it cannot be told."""
        if bound is Bound.EXACT:
            return text
        if bound is Bound.UNTOLD:
            return self.say("cannot be told")
        return self.say("at least {figure}" if bound is Bound.AT_LEAST else "at most {figure}", figure=text)

    def around(self, bound: Bound) -> tuple[str, str]:
        """The words before and after a figure set in large type: ("at least", "")."""
        before, _, after = self.bounded("\n", bound).partition("\n")
        return before.strip(), after.strip()

    def over_or_under(self, difference: int, bound: Bound = Bound.EXACT, *, alone: bool = False) -> str:
        """A difference from the plan in words: over, under, or on plan; `alone` with its currency."""
        if difference == 0 and bound is Bound.EXACT:
            return self.say("on plan")
        figure = self.money(abs(difference)) if alone else self.bare(abs(difference))
        under = Bound.AT_MOST if bound is Bound.AT_LEAST else bound
        told = (
            self.say("{amount} over", amount=self.bounded(figure, bound))
            if difference >= 0
            else self.say("{amount} under", amount=self.bounded(figure, under))
        )
        return told.replace(f"{figure} ", f"{figure}\N{NO-BREAK SPACE}")

    def whole(self, number: int) -> str:
        """A whole number."""
        return self._number.write(str(number))

    def decimal(self, value: Fraction, most: int = 2) -> str:
        """A number with at most so many decimals."""
        return self._number.write(_trimmed(value, most))

    def percent(self, part: Fraction, most: int = 0) -> str:
        """A part of a whole, in per cent."""
        return self._number.percent(self.decimal(part * 100, most))

    def hours(self, hours: Fraction) -> str:
        """A number of hours."""
        return self._isolated(self._counted(hours, "hour"))

    def days(self, days: Fraction) -> str:
        """A number of days."""
        return self._isolated(self._counted(days, "day"))

    def quantity(self, quantity: Quantity | None) -> str:
        """A quantity with its unit, "" where none was said."""
        return "" if quantity is None else self._isolated(self._measured(quantity))

    def _measured(self, quantity: Quantity) -> str:
        symbol, value = quantity.unit.symbol, quantity.value
        if symbol in COUNTED:
            return self._counted(value, symbol)
        if symbol in _ALONE:
            return self.decimal(value)
        if symbol == "%":
            return self.percent(value / 100, 2)
        if symbol == "currency":
            return self.money(half_up(value * 10**self._currency.digits))
        if symbol == "ft" and value >= 0 and (value * 12 * _TAPE).denominator == 1:
            return self._feet(value)
        if symbol == "in" and value >= 0 and (value * _TAPE).denominator == 1:
            return f"{self._sixteenths(value)} in"
        return f"{self.decimal(value, _decimals(quantity))} {self._unit(quantity)}"

    def as_written(self, text: str) -> str:
        """An author's own figures, digit for digit (none is rounded), with the reader's marks and unit signs.

        Fractions, numbers of things (`#4`) and whatever else is no plain number stay as they are.
        """
        told = _SHARE.sub(lambda share: self._number.percent(share[1]), text)
        told = _PLAIN.sub(lambda number: self._number.write(number[0]), told)
        return _MEASURE.sub(lambda unit: unit[1] + _RAISED[unit[2]], told)

    def put_in(self, quantity: Quantity) -> str:
        """A number that goes into a formula, on a tape where a tape has it, else digit for digit: 0.0125 m³ is
        not 0.013.
        """
        symbol, digits = quantity.unit.symbol, self._number.write(_all_digits(quantity.value))
        if symbol in ("ft", "in", "currency") and self._is_written_whole(quantity):
            return self.quantity(quantity)
        if symbol in COUNTED:
            one, many = COUNTED[symbol]
            return self._isolated(self._bent(Decimal(_all_digits(quantity.value)), one, many).format(n=digits))
        if symbol == "%":
            return self._isolated(self._number.percent(digits))
        unit = self._currency.code if symbol == "currency" else self._unit(quantity)
        return self._isolated(digits if symbol in _ALONE else f"{digits} {unit}")

    def _is_written_whole(self, quantity: Quantity) -> bool:
        """Whether sixteenths of an inch, or the currency's digits, are all it needs."""
        finest: int = {"ft": 12 * _TAPE, "in": _TAPE}.get(quantity.unit.symbol, 10**self._currency.digits)
        return bool((quantity.value * finest).denominator == 1)

    def coefficient(self, quantity: Quantity) -> str:
        """A coefficient, digit for digit and never on a tape, as its table or its author has it."""
        if quantity.unit.symbol in ("ft", "in"):
            return self._isolated(f"{self._number.write(_all_digits(quantity.value))} {self._unit(quantity)}")
        return self.put_in(quantity)

    def _isolated(self, text: str) -> str:
        """Kept from running into words that go the other way, where the language goes from right to left."""
        return f"\u2068{text}\u2069" if self.direction == "rtl" else text

    def _unit(self, quantity: Quantity) -> str:
        """The unit alone; words of the author's that count are only bent in English."""
        symbol = quantity.unit.symbol
        if quantity.unit.counts:
            return _plural(symbol) if self.locale.language == "en" and quantity.value != 1 else symbol
        return self.unit_sign(symbol)

    def unit_sign(self, symbol: str) -> str:
        """A unit's sign by itself (`ft²`, `per ft²`)."""
        if symbol.startswith("per "):
            return self.say("per {unit}", unit=self.unit_sign(symbol.removeprefix("per ")))
        return self.known(_POWER.sub(lambda power: _RAISED[power[0]], symbol))

    def _feet(self, feet: Fraction) -> str:
        """As on a tape: `9 ft 8 in`, `5 ft 7 1/2 in`."""
        whole, inches = divmod(feet * 12, 12)
        parts = [f"{self.whole(int(whole))} ft"] if whole or not inches else []
        return " ".join([*parts, *([f"{self._sixteenths(inches)} in"] if inches else [])])

    def _sixteenths(self, inches: Fraction) -> str:
        whole, part = divmod(inches, 1)
        pieces = [self.whole(int(whole))] if whole or not part else []
        return " ".join([*pieces, *([f"{part.numerator}/{part.denominator}"] if part else [])])

    def _counted(self, value: Fraction, symbol: str) -> str:
        one, many = COUNTED[symbol]
        text = _trimmed(value, 2)
        return self._bent(Decimal(text), one, many).format(n=self._number.write(text))

    def date(self, day: datetime.date, style: str = "long") -> str:
        """A day, as the language writes it."""
        return format_date(day, style, locale=self.locale)

    def month_day(self, day: datetime.date) -> str:
        """A day without its year."""
        return format_interval(day, day, "MMMd", locale=self.locale)

    def month(self, day: datetime.date) -> str:
        """A month's short name."""
        return format_date(day, "LLL", locale=self.locale)

    def year(self, day: datetime.date) -> str:
        """A year alone."""
        return format_date(day, "y", locale=self.locale)

    def span(self, span: Span) -> str:
        """A day, or from one to another."""
        if span.first == span.last:
            return self.date(span.first)
        return format_interval(span.first, span.last, "yMMMMd", locale=self.locale)

    def listing(self, words: Iterable[str]) -> str:
        """`one, two and three`."""
        return format_list(list(words), locale=self.locale)


# Units that are words and not signs: of time, of weight and way, and what take-offs count.
COUNTED = {
    "hour": ("{n} hour", "{n} hours"),
    "day": ("{n} day", "{n} days"),
    "week": ("{n} week", "{n} weeks"),
    "month": ("{n} month", "{n} months"),
    "year": ("{n} year", "{n} years"),
    "ton": ("{n} ton", "{n} tons"),
    "mi": ("{n} mile", "{n} miles"),
    "bag": ("{n} bag", "{n} bags"),
    "bar": ("{n} bar", "{n} bars"),
    "block": ("{n} block", "{n} blocks"),
    "board": ("{n} board", "{n} boards"),
    "board-foot": ("{n} board foot", "{n} board feet"),
    "brick": ("{n} brick", "{n} bricks"),
    "course": ("{n} course", "{n} courses"),
    "cut": ("{n} cut", "{n} cuts"),
    "lap": ("{n} lap", "{n} laps"),
    "load": ("{n} load", "{n} loads"),
    "space": ("{n} space", "{n} spaces"),
    "square": ("{n} square", "{n} squares"),
    "stud": ("{n} stud", "{n} studs"),
}
_ALONE = ("", "piece")
_RAISED = {"2": "²", "3": "³"}
_POWER = re.compile(r"(?<=[a-z])[23](?=/|$)")
_MEASURE = re.compile(r"\b(ft|yd|in|mm|cm|m|km)([23])\b")
_PLAIN = re.compile(r"(?<![\w#/.,:-])\d+(?:\.\d+)?(?![\w/,.:-]*\w)")
_SHARE = re.compile(r"(\d+(?:\.\d+)?) ?%")


def _decimals(quantity: Quantity) -> int:
    """Enough to build by: litres of a cubic metre, millimetres of a metre."""
    if quantity.unit.symbol == "m":
        return 3
    return 3 if quantity.unit.measure in ("volume", "density") and abs(quantity.value) < 10 else 2


def _all_digits(value: Fraction) -> str:
    """A number's digits up to the last, as it was written; of one without a last (a third) six that count."""
    text = significant_text(value)
    return text if Fraction(text) == value else significant_text(value, 6)


def _trimmed(value: Fraction, most: int) -> str:
    text = decimal_text(value, most)
    return text.rstrip("0").rstrip(".") if "." in text else text


# Words whose f becomes a v; roofs and handkerchiefs keep theirs.
_LEAF = re.compile(r"(?:(?:lea|hal|shel|loa|shea|cal|wol|thie)(?=f$)|(?:kni|wi|li)(?=fe$))(fe?)$")


def _plural(word: str) -> str:
    low = word.lower()
    if leaf := _LEAF.search(low):
        return f"{word[: leaf.start(1)]}ves"
    if low.endswith(("s", "x", "ch", "sh")):
        return f"{word}es"
    return f"{word[:-1]}ies" if low.endswith("y") and low[-2:-1] not in "aeiou" else f"{word}s"


def _locale(language: str) -> Locale:
    """The locale of a language tag, or of its language alone; English where the library knows neither."""
    for tag in (language, language.split("-", maxsplit=1)[0]):
        with suppress(UnknownLocaleError, ValueError):
            locale = Locale.parse(tag, sep="-")
            _own_months(str(locale))
            return locale
    return Locale("en")


@cache
def _own_months(locale: str) -> None:
    """Give a locale its own table of months.

    Babel looks an inherited name up once and writes it where all locales inherit it from: a process that spoke
    Hebrew would name the months of a French chart in Hebrew.
    """
    data = localedata.load(locale)
    data["months"] = deepcopy(data["months"])


def _catalogue(locale: Locale) -> Catalogue:
    """The catalogue of a language; an empty one for English and for languages that have none yet.

    Imported by name, so that a run reads only the one it needs.
    """
    if locale.language not in CATALOGUES:
        return {}
    catalogue: Catalogue = import_module(f"builder.pages.languages.{locale.language}").CATALOGUE
    return _without_eszett(catalogue) if locale.language == "de" and locale.territory in _NO_ESZETT else catalogue


_NO_ESZETT = ("CH", "LI")


def _without_eszett(catalogue: Catalogue) -> Catalogue:
    """German as it is written in Switzerland and Liechtenstein, which have no ß."""
    return {
        english: told.replace("ß", "ss")
        if isinstance(told, str)
        else {number: text.replace("ß", "ss") for number, text in told.items()}
        for english, told in catalogue.items()
    }


def decimal_of(minor: int, digits: int) -> Decimal:
    """Minor units as an exact decimal, for checks against a library."""
    return Decimal(minor).scaleb(-digits)
