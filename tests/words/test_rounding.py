"""The one place where a fraction becomes a whole number: half up, away from zero."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.rounding import decimal_text, half_up, significant_text

decimals = st.decimals(-(10**9), 10**9, places=6)

# Ties, where the rules part. Half even is what printed sources of measurement use, half up is a till's.
# 12.25 and 12.35 by rule B, 1225 and 1235 in tens: ISO 80000-1:2009 annex B, from memory.
# 6.974 950 5 to seven digits is 6.974 950 half to even: NIST SP 811 (2008) appendix B.7.1, as quoted by public
# test suites; half up is worked out here. The rest is worked out here with Python's Decimal.
TIES = [
    ("0.125", 2, "0.13", "0.12"),
    ("0.135", 2, "0.14", "0.14"),
    ("2.675", 2, "2.68", "2.68"),
    ("1.005", 2, "1.01", "1.00"),
    ("12.345", 2, "12.35", "12.34"),
    ("-0.125", 2, "-0.13", "-0.12"),
    ("12.25", 1, "12.3", "12.2"),
    ("12.35", 1, "12.4", "12.4"),
    ("6.9749505", 6, "6.974951", "6.974950"),
]
# No ties: every rule agrees. 12.223, 12.251 and 12.275 in tenths: ISO 80000-1:2009 annex B, from memory;
# 6.974 951 5 to five digits: NIST SP 811 B.7.1, as quoted by public test suites.
PLAIN = [("12.223", 1, "12.2"), ("12.251", 1, "12.3"), ("12.275", 1, "12.3"), ("6.9749515", 4, "6.9750")]


@pytest.mark.parametrize(("value", "digits", "up", "even"), TIES)
def test_a_tie_goes_up_where_half_even_would_not(value: str, digits: int, up: str, even: str) -> None:
    """The table holds its own check: the last column is what Decimal makes of it half to even."""
    place = Decimal(1).scaleb(-digits)
    assert str(Decimal(value).quantize(place, ROUND_HALF_EVEN)) == even
    assert str(Decimal(value).quantize(place, ROUND_HALF_UP)) == up
    assert decimal_text(Fraction(value), digits) == up


@pytest.mark.parametrize(("value", "digits", "text"), PLAIN)
def test_what_is_no_tie_is_the_same_by_every_rule(value: str, digits: int, text: str) -> None:
    """Published examples of rounding that is not in dispute."""
    assert decimal_text(Fraction(value), digits) == text


@given(value=decimals)
def test_half_up_is_decimal_s_round_half_up(value: Decimal) -> None:
    """Python's Decimal is the reference library."""
    assert half_up(Fraction(value)) == int(value.quantize(Decimal(1), ROUND_HALF_UP))


@given(value=st.fractions())
def test_rounding_is_never_off_by_more_than_a_half(value: Fraction) -> None:
    """For any fraction, and the same on both sides of nothing."""
    assert abs(half_up(value) - value) <= Fraction(1, 2)
    assert half_up(-value) == -half_up(value)


@pytest.mark.parametrize("value", [2.5, Decimal("2.5"), "2.5", None])
def test_only_exact_numbers_are_rounded(value: object) -> None:
    """A float is refused before it can be rounded to the wrong side."""
    with pytest.raises(TypeError, match=r"^only whole numbers and fractions are rounded here, not "):
        half_up(value)  # type: ignore[arg-type]


@given(value=decimals, digits=st.integers(0, 6))
def test_decimal_text_is_what_decimal_prints(value: Decimal, digits: int) -> None:
    """A point, every digit, no grouping; nothing is never negative."""
    wanted = value.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)
    assert decimal_text(Fraction(value), digits) == f"{abs(wanted) if wanted == 0 else wanted:f}"


@given(value=st.fractions(min_value=0, max_denominator=10**6).filter(lambda one: 0 < one < 10**10))
def test_significant_text_has_ten_digits_of_the_value(value: Fraction) -> None:
    """Decimal with ten digits of precision, half up, is the reference."""
    wanted = Context(prec=10, rounding=ROUND_HALF_UP).divide(Decimal(value.numerator), Decimal(value.denominator))
    text = significant_text(value)
    assert Decimal(text) == wanted
    assert "E" not in text.upper()
    assert not text.endswith(".")
    assert "." not in text or not text.endswith("0")


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Fraction(7, 6), "1.166666667"),
        (Fraction(56), "56"),
        (Fraction(0), "0"),
        (Fraction("0.99999999999"), "1"),
        (Fraction("9.99999999999"), "10"),
        (Fraction(1, 3000), "0.0003333333333"),
        (Fraction(1, 105), "0.009523809524"),
        (Fraction(-1, 3), "-0.3333333333"),
        (Fraction(123456789012345), "123456789012345"),
        (Fraction("12345678901.5"), "12345678902"),
    ],
)
def test_digits_before_the_point_are_all_kept(value: Fraction, text: str) -> None:
    """A large number is not made round; a number that rounds up to a longer one is written short."""
    assert significant_text(value) == text
