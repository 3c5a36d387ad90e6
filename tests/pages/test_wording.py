"""How amounts, numbers, quantities and dates are written in the reader's language."""

from __future__ import annotations

import datetime
import subprocess
import sys
import unicodedata
from decimal import Decimal
from fractions import Fraction

import pytest
from babel.numbers import format_currency, format_decimal, format_percent, get_currency_symbol
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.figures.figure import Bound
from builder.pages.wording import Words, decimal_of
from builder.words.currencies import codes, minor_units
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.span import Span
from builder.words.units import Unit

HELD, NARROW = "\u00a0", "\u202f"  # no-break space, narrow no-break space

# Where two implementations of Unicode CLDR write six amounts alike: 47 as shipped in Babel 2.18, and 48 in ICU 78.2
# as shipped in Node 20.20 (Intl.NumberFormat). Both were run side by side over 54 locales; these agree on all six.
AGREED = {
    "en-US": "USD", "en-GB": "GBP", "en-CA": "CAD", "en-IN": "INR", "de-DE": "EUR", "fr-FR": "EUR", "fr-CA": "CAD",
    "pt-BR": "BRL", "nl-NL": "EUR", "da-DK": "DKK", "cs-CZ": "CZK", "ru-RU": "RUB", "uk-UA": "UAH", "el-GR": "EUR",
    "hi-IN": "INR", "ta-IN": "INR", "th-TH": "THB", "zh-CN": "CNY", "zh-TW": "TWD",
}  # fmt: skip

# And some of the others, with what is peculiar to them.
OTHERS = {
    "de-AT": "EUR", "de-CH": "CHF", "es-ES": "EUR", "es-MX": "MXN", "it-IT": "EUR", "pl-PL": "PLN", "sv-SE": "SEK",
    "nb-NO": "NOK", "hu-HU": "HUF", "tr-TR": "TRY", "ja-JP": "JPY", "ko-KR": "KRW", "vi-VN": "VND", "es-CL": "CLP",
    "is-IS": "ISK", "he-IL": "ILS", "ar-EG": "EGP", "ar-KW": "KWD", "ar-TN": "TND", "ur-PK": "PKR", "en-ZA": "ZAR",
}  # fmt: skip

# Enough for each of many locales.
few = settings(max_examples=20)

amounts = st.integers(min_value=-(10**12), max_value=10**12)


def words(language: str, currency: str = "EUR") -> Words:
    """How a language says things in a currency."""
    return Words(language, Currency.named(currency))


def amount(text: str) -> str:
    """The digits of a text, and nothing else."""
    return "".join(sign for sign in text if unicodedata.category(sign) == "Nd")


class TestMoneyIsWrittenAsTheLocaleDoes:
    """Signs, groups and places by Unicode CLDR; how many decimals by ISO 4217."""

    @pytest.mark.parametrize(
        ("language", "currency", "minor", "written"),
        [
            # Unicode CLDR 47 as shipped in Babel 2.18, and CLDR 48 as shipped in Node 20.20: both write these.
            ("en-US", "USD", 123456789, "$1,234,567.89"),
            ("en-US", "USD", -123456789, "-$1,234,567.89"),
            ("en-GB", "GBP", 123450, "£1,234.50"),
            ("en-CA", "CAD", 123450, "$1,234.50"),
            ("de-DE", "EUR", 123456789, f"1.234.567,89{HELD}€"),
            ("de-DE", "EUR", -123456789, f"-1.234.567,89{HELD}€"),
            ("fr-FR", "EUR", 123456789, f"1{NARROW}234{NARROW}567,89{HELD}€"),
            ("fr-CA", "CAD", 123450, f"1{HELD}234,50{HELD}$"),
            ("pt-BR", "BRL", 123450, f"R${HELD}1.234,50"),
            ("nl-NL", "EUR", -123456789, f"€{HELD}-1.234.567,89"),
            ("da-DK", "DKK", 123450, f"1.234,50{HELD}kr."),
            ("cs-CZ", "CZK", 123450, f"1{HELD}234,50{HELD}Kč"),
            ("hi-IN", "INR", 123456789, "₹12,34,567.89"),
            ("ta-IN", "INR", 123450, "₹1,234.50"),
            ("zh-CN", "CNY", 123450, "¥1,234.50"),
            ("es-ES", "EUR", 123456789, f"1.234.567,89{HELD}€"),
            ("es-MX", "MXN", 123450, "$1,234.50"),
            ("de-AT", "EUR", 123450, f"€{HELD}1.234,50"),
            ("he-IL", "ILS", 123450, f"\u2068\u200f1,234.50{HELD}\u200f₪\u2069"),
            # Node 20.20 (CLDR 48): the locale's own minus sign, which Babel leaves out.
            ("sv-SE", "SEK", -123456789, f"−1{HELD}234{HELD}567,89{HELD}kr"),
            ("nb-NO", "NOK", -123456789, f"−1{HELD}234{HELD}567,89{HELD}kr"),
            # The same: a letter of the currency does not touch a digit (Unicode TS 35, part 3, currency spacing).
            ("en-ZA", "ZAR", 123450, f"R{HELD}1{HELD}234,50"),
            ("ur-PK", "PKR", 123450, f"\u2068Rs{HELD}1,234.50\u2069"),
        ],
    )
    def test_an_amount(self, language: str, currency: str, minor: int, written: str) -> None:
        """Exactly so, to the last space."""
        assert words(language, currency).money(minor) == written

    @pytest.mark.parametrize("language", AGREED)
    @few
    @given(minor=amounts)
    def test_it_is_what_babel_writes(self, language: str, minor: int) -> None:
        """Any amount, in the locales where Babel agrees with the other implementation."""
        currency = Currency.named(AGREED[language])
        exact = decimal_of(minor, currency.digits)
        theirs = format_currency(
            exact, currency.code, locale=language.replace("-", "_"), currency_digits=False, decimal_quantization=False
        )
        assert words(language, currency.code).money(minor) == theirs

    @pytest.mark.parametrize(("language", "code"), [*AGREED.items(), *OTHERS.items()])
    @few
    @given(minor=amounts)
    def test_no_digit_is_lost_or_added(self, language: str, code: str, minor: int) -> None:
        """Every minor unit is there, the sign and the currency too, whatever the locale thinks of small change."""
        text = words(language, code).money(minor)
        assert amount(text) == Currency.named(code).major(abs(minor)).replace(".", "")
        assert any(sign in text for sign in "-−") == (minor < 0)
        assert get_currency_symbol(code, locale=language.replace("-", "_")) in text

    @pytest.mark.parametrize(
        ("currency", "minor", "digits"),
        [("JPY", 1235, "1,235"), ("KWD", 1234500, "1,234.500"), ("HUF", 123450, "1,234.50"), ("USD", 5, "0.05")],
    )
    def test_decimals_are_those_of_iso_4217(self, currency: str, minor: int, digits: str) -> None:
        """None for the yen, three for the dinar (ISO 4217 list one, 2026-01-01); two for the forint, which CLDR 48
        shows with none: what was paid is shown to the last unit that was counted.
        """
        assert words("en-GB", currency).money(minor).endswith(digits)

    @given(code=st.sampled_from(codes()), minor=amounts)
    def test_in_every_currency(self, code: str, minor: int) -> None:
        """As many decimals as the minor unit has, after the one point."""
        text = words("en-GB", code).bare(abs(minor))
        assert len(text.partition(".")[2]) == minor_units(code)

    def test_a_half_was_rounded_before(self) -> None:
        """2.665 is 2.67, as a till rounds; Babel, asked to round, takes the even one."""
        half = Quantity(Fraction(2665, 1000), Unit("currency", "money", Fraction(1)))
        assert words("en-US", "USD").quantity(half) == "$2.67"
        assert format_currency(Decimal("2.665"), "USD", locale="en_US") == "$2.66"

    @given(minor=amounts)
    def test_a_column_has_no_currency(self, minor: int) -> None:
        """It is named above the column; sign and digits are the same."""
        german = words("de-DE")
        assert german.bare(minor) == german.money(minor).removesuffix(f"{HELD}€")

    @pytest.mark.parametrize(
        ("number", "written"),
        [
            (0, "0"),
            (999, "999"),
            (1000, "1,000"),
            (99999, "99,999"),
            (100000, "1,00,000"),
            (1234567890, "1,23,45,67,890"),
        ],
    )
    def test_groups_of_two_in_hindi(self, number: int, written: str) -> None:
        """Thousands, lakhs and crores: three digits, then two and two (Unicode CLDR 47, hi)."""
        assert words("hi-IN").whole(number) == written


class TestNumbers:
    """Plain numbers and parts of a whole."""

    @pytest.mark.parametrize("language", [*AGREED, "es-ES", "sv-SE", "tr-TR"])
    @few
    @given(number=st.integers(min_value=0, max_value=10**12))
    def test_whole_numbers_are_what_babel_writes(self, language: str, number: int) -> None:
        """Unicode CLDR 47 as shipped in Babel 2.18."""
        assert words(language).whole(number) == format_decimal(number, locale=language.replace("-", "_"))

    @pytest.mark.parametrize("language", [*AGREED, "es-ES", "sv-SE", "tr-TR"])
    @few
    @given(hundredths=st.integers(min_value=0, max_value=1000))
    def test_parts_are_what_babel_writes(self, language: str, hundredths: int) -> None:
        """Unicode CLDR 47 as shipped in Babel 2.18: `5%`, `5 %`, `%5`."""
        theirs = format_percent(Decimal(hundredths) / 100, locale=language.replace("-", "_"))
        assert words(language).percent(Fraction(hundredths, 100)) == theirs

    @given(
        numerator=st.integers(min_value=-(10**6), max_value=10**6), denominator=st.integers(min_value=1, max_value=999)
    )
    def test_a_decimal_is_near_and_short(self, numerator: int, denominator: int) -> None:
        """Two decimals at most, none that say nothing, and less than half a hundredth away."""
        value = Fraction(numerator, denominator)
        text = words("en-US").decimal(value).replace(",", "")
        assert abs(Fraction(text) - value) <= Fraction(1, 200)
        assert "." not in text or not text.endswith("0")

    def test_a_coefficient_keeps_its_digits(self) -> None:
        """0.668 lb/ft is not 0.67."""
        weight = Quantity(Fraction("0.668"), Unit("lb/ft", "weight of length", Fraction(1)))
        assert words("en-US").coefficient(weight) == "0.668 lb/ft"
        assert words("de-DE").coefficient(weight) == "0,668 lb/ft"


class TestQuantities:
    """A number and its unit; the author's own units stay as they were written."""

    @pytest.mark.parametrize(
        ("language", "value", "unit", "written"),
        [
            ("en-US", 3, "bag", "3 bags"),
            ("en-US", 1, "pallet", "1 pallet"),
            ("en-US", 2, "box", "2 boxes"),
            ("en-US", 12, "piece", "12"),
            ("en-US", 1, "ton", "1 ton"),
            ("en-US", Fraction(5, 2), "ton", "2.5 tons"),
            ("en-US", Fraction(29, 3), "ft", "9 ft 8 in"),
            ("en-US", Fraction(45, 8), "ft", "5 ft 7 1/2 in"),
            ("en-US", Fraction(1, 24), "ft", "1/2 in"),
            ("en-US", 12, "ft", "12 ft"),
            ("en-US", Fraction(7, 2), "in", "3 1/2 in"),
            ("en-US", Fraction(1, 3), "in", "0.33 in"),
            ("en-US", Fraction(7, 6), "yd3", "1.167 yd³"),
            ("en-US", 140, "ft2", "140 ft²"),
            ("en-US", 2700, "lb/yd3", "2,700 lb/yd³"),
            ("de-DE", 3, "bag", "3 Säcke"),
            ("de-DE", 1, "bag", "1 Sack"),
            ("de-DE", 3, "Eimer", "3 Eimer"),
            ("de-DE", 3, "box", "3 box"),
            ("de-DE", Fraction("2.345"), "m", "2,345 m"),
            ("de-DE", Fraction(3, 2), "hour", "1,5 Stunden"),
            ("fr-FR", Fraction(3, 2), "hour", "1,5 heure"),
            ("fr-FR", 0, "hour", "0 heure"),
            ("fr-FR", 2, "hour", "2 heures"),
            ("fr-FR", 1_000_000, "brick", f"1{NARROW}000{NARROW}000 de briques"),
            ("es-ES", 1, "bag", "1 saco"),
            ("es-ES", 2_000_000, "brick", "2.000.000 de ladrillos"),
            ("es-ES", Fraction(5, 2), "day", "2,5 días"),
        ],
    )
    def test_a_quantity(self, language: str, value: Fraction | int, unit: str, written: str) -> None:
        """In feet and sixteenths as on a tape; plurals as the language has them (Unicode CLDR 47 plural rules)."""
        assert words(language).quantity(Quantity.of(value, unit)) == written

    def test_none_was_said(self) -> None:
        """Then nothing is shown."""
        assert words("de-DE").quantity(None) == ""

    @pytest.mark.parametrize(
        ("symbol", "german"), [("ft2", "ft²"), ("per ft2", "je ft²"), ("m2/L", "m²/L"), ("hour", "Stunde"), ("t", "t")]
    )
    def test_a_sign_by_itself(self, symbol: str, german: str) -> None:
        """As it stands in a rate."""
        assert words("de-DE").unit_sign(symbol) == german


class TestDates:
    """Days as the language writes them (Unicode CLDR 47 as shipped in Babel 2.18)."""

    @pytest.mark.parametrize(
        ("language", "long", "day", "month", "weekend"),
        [
            ("en-US", "November 14, 2026", "Nov 14", "Nov", "Nov 14\u2009–\u200915, 2026"),
            ("de-DE", "14. November 2026", "14. Nov.", "Nov", "14.–15. Nov. 2026"),
            ("fr-FR", "14 novembre 2026", "14 nov.", "nov.", "14–15 nov. 2026"),
            ("es-ES", "14 de noviembre de 2026", "14 nov", "nov", "14–15 de noviembre de 2026"),
        ],
    )
    def test_a_day_and_a_weekend(self, language: str, long: str, day: str, month: str, weekend: str) -> None:
        """In full, without the year, the month alone, and from one day to the next."""
        said, saturday = words(language), datetime.date(2026, 11, 14)
        assert (said.date(saturday), said.month_day(saturday), said.month(saturday)) == (long, day, month)
        assert said.span(Span(saturday, saturday)) == long
        assert said.span(Span(saturday, datetime.date(2026, 11, 15))) == weekend

    def test_languages_in_one_process_do_not_mix(self) -> None:
        """The preview may see the language change. Babel 2.18 alone names the French month in Hebrew then."""
        told = (
            "import datetime; from builder.pages.wording import Words; from builder.words.money import Currency\n"
            "for language in ('he-IL', 'fr-FR', 'es-ES', 'he-IL'):\n"
            "    print(ascii(Words(language, Currency.named('EUR')).month(datetime.date(2026, 11, 14))))"
        )
        run = subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True)
        hebrew = ascii("\N{HEBREW LETTER NUN}\N{HEBREW LETTER VAV}\N{HEBREW LETTER BET}\N{HEBREW PUNCTUATION GERESH}")
        assert run.stdout.split() == [hebrew, "'nov.'", "'nov'", hebrew]


class TestSentences:
    """Sentences of the catalogue, and English where there is none."""

    def test_bounds_go_round_an_amount(self) -> None:
        """At least, at most, or that it cannot be told; and apart from it, for a figure in large type."""
        german = words("de-DE")
        assert german.money(1200, Bound.AT_LEAST) == f"mindestens 12,00{HELD}€"
        assert german.money(1200, Bound.AT_MOST) == f"höchstens 12,00{HELD}€"
        assert german.money(1200, Bound.UNTOLD) == "lässt sich nicht sagen"
        assert german.around(Bound.AT_LEAST) == ("mindestens", "")
        assert german.around(Bound.EXACT) == ("", "")

    def test_over_and_under_have_no_sign(self) -> None:
        """A difference is told in words, which stay with the number; what is under the plan and may have cost more
        is under it by at most so much.
        """
        german = words("de-DE")
        assert german.over_or_under(1200) == f"12,00{HELD}über Plan"
        assert german.over_or_under(-1200) == f"12,00{HELD}unter Plan"
        assert german.over_or_under(0) == "im Plan"
        assert german.over_or_under(1200, Bound.AT_LEAST) == f"mindestens 12,00{HELD}über Plan"
        assert german.over_or_under(-1200, Bound.AT_LEAST) == f"höchstens 12,00{HELD}unter Plan"
        assert german.over_or_under(1200, alone=True) == f"12,00{HELD}€{HELD}über Plan"

    @pytest.mark.parametrize(
        ("written", "shown"),
        [
            ("1.5 yd3", "1,5 yd³"),
            ("2700 lb/yd3", "2.700 lb/yd³"),
            ("5 ft 7 1/2 in", "5 ft 7 1/2 in"),
            ("0.1250 m", "0,1250 m"),
            ("12.5%", f"12,5{HELD}%"),
            ("16 in, 8.5 in; 300 ft2", "16 in, 8,5 in; 300 ft²"),
            ("#4", "#4"),
            ("12M", "12M"),
            ("1:2.5", "1:2.5"),
            ("2026-04-05", "2026-04-05"),
        ],
    )
    def test_an_author_s_figures_keep_their_digits(self, written: str, shown: str) -> None:
        """None is rounded; the marks and signs are the reader's. What is no plain number stays."""
        assert words("de-DE").as_written(written) == shown

    def test_a_list_reads_as_a_list(self) -> None:
        """With the language's own `and` (Unicode CLDR 47 list patterns)."""
        assert words("fr-FR").listing(["le sol", "le cadre", "le toit"]) == "le sol, le cadre et le toit"

    def test_a_sentence_that_bends_is_not_said(self) -> None:
        """Without its number it has no form: a mistake in the program, not something to print."""
        with pytest.raises(TypeError, match="is a plural"):
            words("de-DE").say("{n} lines")

    def test_a_word_may_be_the_authors(self) -> None:
        """What the language does not know stays as it is."""
        assert words("de-DE").known("salvaged") == "geborgen"
        assert words("de-DE").known("Tante Erna") == "Tante Erna"

    @pytest.mark.parametrize(("language", "other"), [("pt-BR", "."), ("pl-PL", HELD), ("nl", ".")])
    def test_a_language_without_a_catalogue_has_english_words_and_its_own_numbers(
        self, language: str, other: str
    ) -> None:
        """And English plurals: 21 lines, though Polish or Russian would bend 21 like 1."""
        said = words(language)
        assert said.count(21, "{n} line", "{n} lines") == "21 lines"
        assert said.count(1, "{n} line", "{n} lines") == "1 line"
        assert said.whole(1234567) == f"1{other}234{other}567"

    def test_a_language_nobody_knows_falls_back_on_its_first_part(self) -> None:
        """`de-US` is German with American measures: its words and numbers are German."""
        assert words("de-US").money(123450) == f"1.234,50{HELD}€"

    @pytest.mark.parametrize(("language", "direction"), [("de-DE", "ltr"), ("he-IL", "rtl"), ("ar-EG", "rtl")])
    def test_direction(self, language: str, direction: str) -> None:
        """As the language is written."""
        assert words(language).direction == direction
