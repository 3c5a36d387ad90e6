"""The kinds of value that are money, or a part of some."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.keys import Word
from builder.journal.kinds import AMOUNTISH, STRING
from builder.journal.reading import Reading
from builder.journal.records.item import Size, TaxTold, Told
from builder.journal.report import did_you_mean
from builder.words.currencies import codes
from builder.words.money import Currency, Money
from builder.words.numbers import Unreadable, read_number, read_rate
from builder.words.quantity import Quantity, read_quantity
from builder.words.rounding import decimal_text
from builder.words.units import MEASURED, Unit, unit_named


def read_amount(text: str, currency: Currency) -> Money:
    """An amount from its digits, with no more decimals than the currency has; Unreadable otherwise."""
    digits = currency.digits
    example = "1250" if digits == 0 else f"1250 or 1250.{'50'.ljust(digits, '0')[:digits]}"
    written = read_number(text, f"an amount such as {example}")
    minor = written.value * 10**digits
    if minor.denominator != 1:
        rounded = decimal_text(written.value, digits)
        raise Unreadable(
            f"{text} has more decimals than {currency.code} has",
            f"at most {digits} decimals" if digits else "a whole number",
            f"write {rounded}, or give unit_cost, which may have any digits",
        )
    return Money(int(minor), currency)


def _amount(text: str, reading: Reading) -> Money:
    return read_amount(text, reading.currency)


def _price(text: str, _: Reading) -> Fraction:
    return read_number(text, "a price such as 6.10").value


def _cost(text: str, reading: Reading) -> Money | Told:
    return Told(text) if text in ("unknown", "rest") else read_amount(text, reading.currency)


def _amount_or_rate(text: str, reading: Reading) -> Money | Fraction:
    if text.endswith("%"):
        return read_rate(text, "a part such as 25%")
    return read_amount(text, reading.currency)


def _tax(text: str, reading: Reading) -> Money | Fraction | TaxTold:
    return TaxTold.INCLUDED if text == "included" else _amount_or_rate(text, reading)


def _part(text: str, _: Reading) -> Quantity | Fraction:
    expected = "a quantity such as 30 bag, or a part such as 80%"
    return read_rate(text, expected) if text.endswith("%") else read_quantity(text, expected)


def _size(text: str, _: Reading) -> Size:
    expected = "a width and a height such as 24 in x 48 in"
    width, cross, height = text.replace("×", " x ").partition(" x ")
    if not cross:
        raise Unreadable(f"{text} is not a size", expected)
    sides = [read_quantity(side.strip(), expected) for side in (width, height)]
    for side in sides:
        if side.unit.measure != "length" or side.value == 0:
            raise Unreadable(f"{side} is not a length", expected)
    return Size(width=sides[0], height=sides[1], text=text)


def _area(text: str, reading: Reading) -> Quantity:
    expected = "an area such as 140 ft2 or 10 ft x 14 ft"
    if " x " in text or "×" in text:
        size = _size(text, reading)
        unit = "ft2" if size.width.unit.symbol in ("ft", "in", "yd") else "m2"
        side = unit.removesuffix("2")
        return Quantity(size.width.in_unit(side) * size.height.in_unit(side), MEASURED[unit])
    quantity = read_quantity(text, expected)
    if quantity.unit.measure != "area" or quantity.value == 0:
        raise Unreadable(f"{text} is not an area", expected)
    return quantity


def _currency(text: str, _: Reading) -> Currency:
    if text not in codes():
        raise Unreadable(
            f"{text} is no currency code",
            "an ISO 4217 code such as USD, EUR or JPY",
            did_you_mean(text.upper(), codes()) if text.upper() not in codes() else f"write {text.upper()}",
        )
    return Currency.named(text)


def _travel_rate(text: str, _: Reading) -> tuple[Fraction, Unit | None]:
    number, _word, name = text.replace("/", " per ").partition(" per ")
    unit = unit_named(name.strip()) if name else None
    if name and (unit is None or unit.symbol not in ("mi", "km")):
        raise Unreadable(f"{text} is not per mile or km", "a rate such as 0.55 per mile")
    return read_number(number.strip(), "a rate such as 0.55 per mile").value, unit


def _was(text: str, _: Reading) -> str:
    expected = "an amount and its currency such as 41.20 EUR"
    number, _space, code = text.partition(" ")
    if code not in codes():
        raise Unreadable(f"{text} names no currency", expected)
    read_amount(number, Currency.named(code))
    return text


AMOUNT = Word("an amount such as 1250 or 12.50", _amount, AMOUNTISH)
PRICE = Word("a price such as 6.10", _price, AMOUNTISH)
COST = Word("an amount such as 12.50, or unknown, or rest", _cost, AMOUNTISH)
AMOUNT_OR_RATE = Word("an amount, or a part with its %", _amount_or_rate, AMOUNTISH)
TAX = Word("a rate such as 8.25%, an amount, or included", _tax, AMOUNTISH)
PART = Word("a quantity such as 30 bag, or a part such as 80%", _part, AMOUNTISH)
SIZE = Word("a width and a height such as 24 in x 48 in", _size, STRING)
AREA = Word("an area such as 140 ft2 or 10 ft x 14 ft", _area, STRING)
CURRENCY = Word("an ISO 4217 code such as USD", _currency, STRING)
TRAVEL_RATE = Word("a rate such as 0.55 per mile", _travel_rate, AMOUNTISH)
WAS = Word("an amount and its currency such as 41.20 EUR", _was, STRING)

