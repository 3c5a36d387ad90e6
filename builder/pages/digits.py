"""Digits as a locale groups them, learnt once from Babel's patterns: formatting each of ten thousand amounts
through the library takes longer than everything else a page needs.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from babel import Locale
from babel.numbers import NumberPattern, get_currency_symbol

from builder.words.money import Currency

_CURRENCY = "¤"
_NO_BREAK = "\u00a0"


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberStyle:
    """How digits are grouped: the signs, the sizes of the last and the other groups, the percent pattern."""

    decimal: str
    group: str
    minus: str
    last: int
    others: int
    percent_before: str
    percent_after: str

    @classmethod
    def of(cls, locale: Locale) -> NumberStyle:
        """The style of plain numbers in a locale."""
        symbols = locale.number_symbols["latn"]
        pattern: NumberPattern = locale.decimal_formats[None]
        percent: NumberPattern = locale.percent_formats[None]
        return cls(
            decimal=symbols["decimal"],
            group=symbols["group"],
            minus=symbols["minusSign"],
            last=pattern.grouping[0],
            others=pattern.grouping[1],
            percent_before=percent.prefix[0].replace("%", symbols["percentSign"]),
            percent_after=percent.suffix[0].replace("%", symbols["percentSign"]),
        )

    def write(self, text: str) -> str:
        """Plain digits (`-1234.5`) as the locale writes them."""
        sign, body = (self.minus, text[1:]) if text.startswith("-") else ("", text)
        whole, point, decimals = body.partition(".")
        return f"{sign}{self.grouped(whole)}{self.decimal if point else ''}{decimals}"

    def grouped(self, whole: str) -> str:
        """A whole number's digits with marks between the groups."""
        if len(whole) <= self.last:
            return whole
        groups = [whole[-self.last :]]
        rest = whole[: -self.last]
        while rest:
            groups.append(rest[-self.others :])
            rest = rest[: -self.others]
        return self.group.join(reversed(groups))

    def percent(self, number: str) -> str:
        """A number already written, as per cent."""
        return f"{self.percent_before}{number}{self.percent_after}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyStyle:
    """How amounts of one currency are written: what stands before and after the digits, and the digits."""

    currency: Currency
    numbers: NumberStyle
    before: str
    after: str
    minus_before: str
    minus_after: str

    @classmethod
    def of(cls, locale: Locale, currency: Currency, *, symbol: bool) -> MoneyStyle:
        """The style of a locale; without `symbol` only digits and sign."""
        numbers = NumberStyle.of(locale)
        pattern: NumberPattern = locale.currency_formats["standard"]
        sign = get_currency_symbol(currency.code, locale)
        if not symbol:
            return cls(
                currency=currency,
                numbers=numbers,
                before="",
                after="",
                minus_before=numbers.minus,
                minus_after="",
            )

        def filled(text: str) -> str:
            return text.replace(_CURRENCY, sign).replace("-", numbers.minus)

        return cls(
            currency=currency,
            numbers=numbers,
            before=filled(_before(pattern.prefix[0], sign)),
            after=filled(_after(pattern.suffix[0], sign)),
            minus_before=filled(_before(pattern.prefix[1], sign)),
            minus_after=filled(_after(pattern.suffix[1], sign)),
        )

    def write(self, minor: int) -> str:
        """An amount in minor units, with all of them."""
        text = self.currency.major(abs(minor))
        body = self.numbers.write(text)
        if minor < 0:
            return f"{self.minus_before}{body}{self.minus_after}"
        return f"{self.before}{body}{self.after}"


def _before(text: str, sign: str) -> str:
    """What stands before the digits, with a space where a letter of the currency would touch them: `CHF 12`, `$12`.

    Currency spacing of Unicode Technical Standard 35, part 3, which Babel does not apply.
    """
    return f"{text}{_NO_BREAK}" if text.endswith(_CURRENCY) and _is_letter(sign[-1]) else text


def _after(text: str, sign: str) -> str:
    """The same for what stands after them."""
    return f"{_NO_BREAK}{text}" if text.startswith(_CURRENCY) and _is_letter(sign[0]) else text


def _is_letter(character: str) -> bool:
    return unicodedata.category(character)[0] not in "SZ"
