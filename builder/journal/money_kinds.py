"""The kinds of value that are money, or a part of some."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.keys import T, Word
from builder.journal.kinds import ABOUT, AMOUNTISH, STRING, judged, loosely
from builder.journal.reading import Reading
from builder.journal.records.item import Size, TaxTold, Told
from builder.journal.records.written import Node, Scalar
from builder.journal.report import did_you_mean
from builder.words.currencies import codes
from builder.words.misread import clipped, with_percent
from builder.words.money import Currency, Money
from builder.words.numbers import Unreadable, read_number, read_rate
from builder.words.quantity import Quantity, read_quantity
from builder.words.rounding import decimal_text, significant_text
from builder.words.units import MEASURED, Unit, pieces, unit_named

_FREE = ("free", "nothing", "none", "gift", "gratis", "salvaged", "n/c")
_SIGNS = {
    "$": "USD, CAD or AUD", "us$": "USD", "dollar": "USD, CAD or AUD", "dólar": "USD, CAD or AUD", "€": "EUR",
    "euro": "EUR", "£": "GBP", "pound": "GBP", "pfund": "GBP", "livre": "GBP", "libra": "GBP", "¥": "JPY or CNY",
    "yen": "JPY", "fr": "CHF", "sfr": "CHF", "franken": "CHF", "franc": "CHF", "franco": "CHF",
    "kr": "DKK, NOK or SEK", "krone": "DKK or NOK", "kronen": "DKK or NOK", "krona": "SEK", "kronor": "SEK",
    "zł": "PLN", "złoty": "PLN", "zloty": "PLN", "kč": "CZK",
}  # fmt: skip


def read_amount(text: str, currency: Currency) -> Money:
    """An amount from its digits, with no more decimals than the currency has; Unreadable otherwise."""
    digits = currency.digits
    example = "1250" if digits == 0 else f"1250 or 1250.{'50'.ljust(digits, '0')[:digits]}"
    written = read_number(text, f"an amount such as {example}")
    minor = written.value * 10**digits
    if minor.denominator != 1:
        rounded = decimal_text(written.value, digits)
        raise Unreadable(
            f"{clipped(text)} has more decimals than {currency.code} has",
            f"at most {digits} decimals" if digits else "a whole number",
            f"write {rounded}",
        )
    return Money(int(minor), currency)


def _amount(text: str, reading: Reading) -> Money:
    return read_amount(text, reading.currency)


def _price(text: str, _: Reading) -> Fraction:
    expected = "a price such as 6.10"
    if text.lower() in ("unknown", *_FREE):
        raise Unreadable(
            f"{text} is not a number",
            expected,
            f"write cost: {'0' if text.lower() in _FREE else 'unknown'} instead",
        )
    return read_number(text, expected).value


def _cost(text: str, reading: Reading) -> Money | Told:
    if text.lower() in ("unknown", "rest"):
        return Told(text.lower())
    try:
        return read_amount(text, reading.currency)
    except Unreadable as error:
        raise Unreadable(error.found, error.expected, _cost_meant(text, error)) from None


def _cost_meant(text: str, error: Unreadable) -> str:
    if re.match(r"[-−–]", text):
        return "write it as a return or a sale (source: returned or sold), or as a discount: of its receipt"
    if text.lower() in _FREE:
        return "write 0, and say with source: where it came from"
    if not re.search(r"\d", text):
        return error.fix or "write unknown, where nobody knows"
    many = "more decimals" in error.found
    return f"{error.fix}, or unit_cost instead of cost, which may have any digits" if many else error.fix


def _amount_or_rate(text: str, reading: Reading) -> Money | Fraction:
    if text.endswith("%"):
        return read_rate(text, "a part such as 25%")
    _check_sign(text, "an amount, or a part such as 25%")
    return read_amount(text, reading.currency)


def _check_sign(text: str, expected: str) -> None:
    """Unreadable for a part whose % sign is written in words."""
    if meant := with_percent(text):
        raise Unreadable(f"{clipped(text)} has no % sign", expected, f"write {meant}")


def _tax(text: str, reading: Reading) -> Money | Fraction | TaxTold:
    if text.lower() in ("included", "incl", "inclusive"):
        return TaxTold.INCLUDED
    return _amount_or_rate(text, reading)


def _part(text: str, _: Reading) -> Quantity | Fraction:
    expected = "a quantity such as 30 bag, or a part such as 80%"
    _check_sign(text, expected)
    return read_rate(text, expected) if text.endswith("%") else read_quantity(text, expected)


def _size(text: str, reading: Reading) -> Size:
    usual, other = ("cm", "in") if reading.metric else ("in", "cm")
    expected = f"a width and a height such as {'60 cm x 120 cm' if reading.metric else '24 in x 48 in'}"
    written = _CROSS.split(text)
    if len(written) != 2:
        raise Unreadable(f"{clipped(text)} is not a size", expected, _two_sides(text, written))
    width, height = (read_quantity(side, expected) for side in written)
    if width.unit == pieces():
        unit = height.unit.symbol if height.unit.measure == "length" else usual
        tail = "" if height.unit.measure == "length" else f" {usual}, or {other}"
        found = f"{clipped(text)} has no unit for its width"
        raise Unreadable(found, expected, f"write {written[0]} {unit} x {written[1]}{tail}")
    for side in (width, height):
        if side.unit.measure != "length" or side.value == 0:
            raise Unreadable(f"{side} is not a length", expected)
    return Size(width=width, height=height, text=text)


# A cross between two sides, not the x of a word: 24 in x 48 in, 24"x48", 24×48.
_CROSS = re.compile(r"(?<=[\w.\"'”″’′]) *[xX×*] *(?=[\d.])")


def _two_sides(text: str, written: list[str]) -> str:
    if len(written) == 3:
        return f"write {clipped(written[0])} x {clipped(written[1])}, and the thickness in the name"
    by = re.fullmatch(r"(\S.{0,20}) (?:by|X|and|/) (\S.{0,20})", text)
    return f"write {by[1]} x {by[2]}" if by else ""


def _area(text: str, reading: Reading) -> Quantity:
    expected = f"an area such as {'12 m2 or 3 m x 4 m' if reading.metric else '140 ft2 or 10 ft x 14 ft'}"
    if _CROSS.search(text):
        size = _size(text, reading)
        unit = "ft2" if size.width.unit.symbol in ("ft", "in", "yd") else "m2"
        side = unit.removesuffix("2")
        return Quantity(size.width.in_unit(side) * size.height.in_unit(side), MEASURED[unit])
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "area" or quantity.value == 0:
        usual = "m2, or ft2" if reading.metric else "ft2, or m2"
        bare = quantity.unit == pieces() and quantity.value
        raise Unreadable(f"{clipped(text)} is not an area", expected, f"write {text} {usual}" if bare else "")
    return quantity


def _currency(text: str, _: Reading) -> Currency:
    if text in codes():
        return Currency.named(text)
    meant = _code_of(text)
    hint = f"write {meant}" if meant else did_you_mean(text.upper(), codes())
    raise Unreadable(f"{clipped(text)} is no currency code", "an ISO 4217 code such as USD, EUR or JPY", hint)


def _code_of(word: str) -> str:
    """The code, or the codes, that a word or a sign for a currency stands for: CHF for Fr.; "" for no such word."""
    bare = word.strip().rstrip(".")
    if bare.upper() in codes():
        return bare.upper()
    return _SIGNS.get(bare.lower()) or _SIGNS.get(bare.lower().rstrip("s"), "")


def _travel_rate(text: str, _: Reading) -> tuple[Fraction, Unit | None]:
    number, _word, name = re.sub(r" a (?=mile|km|kilo)|/", " per ", text).partition(" per ")
    unit = unit_named(name.strip()) if name else None
    if name and (unit is None or unit.symbol not in ("mi", "km")):
        raise Unreadable(f"{clipped(text)} is not per mile or km", "a rate such as 0.55 per mile")
    return read_number(number.strip(), "a rate such as 0.55 per mile").value, unit


def _was(text: str, _: Reading) -> str:
    expected = "an amount and its currency such as 41.20 EUR"
    number, _space, code = text.partition(" ")
    if code not in codes():
        raise Unreadable(f"{clipped(text)} names no currency", expected, _was_meant(text))
    try:
        read_amount(number, Currency.named(code))
    except Unreadable as error:
        raise Unreadable(error.found, expected, error.fix and f"{error.fix} {code}") from None
    return text


_NUMBER_AND_WORD = re.compile(r"(?P<before>[^\d\s]*) ?(?P<number>\d(?:[\d.,' ]*\d)?) ?(?P<after>[^\d\s]*)")


def _was_meant(text: str) -> str:
    """`write 41.20 EUR` for EUR 41.20, 41,20 Euro or 41.20€."""
    match = _NUMBER_AND_WORD.fullmatch(text)
    code = "" if match is None else _code_of(match["before"] or match["after"])
    if match is None or code not in codes():
        return ""
    try:
        read_amount(match["number"], Currency.named(code))
    except Unreadable as error:
        return error.fix and f"{error.fix} {code}"
    return f"write {match['number']} {code}"


def part_or_amount(key: str, text: str, most: int, part: str, currency: Currency) -> tuple[str, str, str] | None:
    """What to say of a number without % where a part, or an amount, may stand: found, expected, what to write.

    None where it is clear: above `most`, with all the decimals of the currency (55.00), or in one that has none.
    """
    bare = ABOUT.sub("", text.strip(), count=1)
    try:
        written = read_number(bare)
    except Unreadable:
        return None
    if written.decimals >= currency.digits or not 0 < written.value <= most:
        return None
    percent = significant_text(written.value if written.value >= 1 else written.value * 100)
    return (
        f"{key}: {bare} has no % sign, so it counts as an amount",
        "a part with its % sign, or an amount with its decimals",
        f"write {percent}% if {part} was meant, {read_amount(bare, currency)} if an amount was",
    )


@dataclass(frozen=True, slots=True)
class PartOrAmount(Word[T]):
    """A kind that takes a part with its % or an amount, and asks about a small number that may be either."""

    def read(self, node: Node, key: str, reading: Reading) -> T | None:
        """The value, or None with a mistake reported."""
        value = Word.read(self, node, key, reading)
        text = node.text if isinstance(node, Scalar) and value is not None else ""
        if (asked := part_or_amount(key, text, 100, "a part", reading.currency)) is not None:
            reading.report.warning(node.place, *asked)
        return value


AMOUNT = Word("an amount such as 1250 or 12.50", _amount, AMOUNTISH)
PRICE = Word("a price such as 6.10", _price, AMOUNTISH)
COST = Word("an amount such as 12.50, or unknown, or rest", _cost, AMOUNTISH)
AMOUNT_OR_RATE = Word("an amount, or a part with its %", _amount_or_rate, AMOUNTISH)
_SHARE = judged(AMOUNT_OR_RATE)
_RESERVE = loosely(AMOUNT_OR_RATE)
SHARE_OF_LINE = PartOrAmount(_SHARE.expects, _SHARE.parse, _SHARE.schema)
TAX = Word("a rate such as 8.25%, an amount, or included", _tax, AMOUNTISH)
PART = Word("a quantity such as 30 bag, or a part such as 80%", _part, AMOUNTISH)
SIZE = Word("a width and a height such as 24 in x 48 in", _size, STRING)
AREA = Word("an area such as 140 ft2 or 10 ft x 14 ft", _area, STRING)
CURRENCY = Word("an ISO 4217 code such as USD", _currency, STRING)
TRAVEL_RATE = Word("a rate such as 0.55 per mile", _travel_rate, AMOUNTISH)
WAS = Word("an amount and its currency such as 41.20 EUR", _was, STRING)
# Judgements by their nature, where "about" adds nothing.
BUDGET = loosely(AMOUNT)
DEPOSITED = loosely(AMOUNT)
RESERVE = PartOrAmount(_RESERVE.expects, _RESERVE.parse, _RESERVE.schema)
WORTH_OF = loosely(PRICE)
TRAVEL_WORTH = loosely(TRAVEL_RATE)
