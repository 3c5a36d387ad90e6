"""Money: whole minor units of one currency. The laws of design section 3, numbers 1 and 2."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.currencies import codes
from builder.words.money import Currency, Money, till

USD, JPY, KWD = Currency.named("USD"), Currency.named("JPY"), Currency.named("KWD")
minors = st.integers(-(10**14), 10**14)
currencies = st.sampled_from(codes()).map(Currency.named)


class TestMoneyIsAWholeNumber:
    """Law 1: money is a whole number of the currency's minor units, always. No float touches money."""

    @pytest.mark.parametrize("almost", [1.0, 12.5, True, Fraction(1), Decimal(1), "1", None])
    def test_anything_but_an_int_is_refused(self, almost: object) -> None:
        """A float that happens to be whole is refused too: the next one will not be."""
        with pytest.raises(TypeError, match=r"^money is a whole number of minor units, not "):
            Money(almost, USD)  # type: ignore[arg-type]

    @given(one=minors, other=minors, currency=currencies)
    def test_a_sum_is_exact_and_keeps_its_currency(self, one: int, other: int, currency: Currency) -> None:
        """Adding and taking away again leaves what was there."""
        first, second = Money(one, currency), Money(other, currency)
        assert first + second - second == first
        assert first + (-first) == Money(0, currency)
        assert (first + second).currency == currency

    @pytest.mark.parametrize("put_together", [Money.__add__, Money.__sub__])
    def test_two_currencies_never_mix(self, put_together: object) -> None:
        """The message names both."""
        with pytest.raises(ValueError, match=r"^USD and JPY cannot be added$"):
            put_together(Money(1, USD), Money(1, JPY))  # type: ignore[operator]

    def test_a_word_that_is_no_currency_is_refused(self) -> None:
        """Only ISO 4217 codes in capitals are."""
        for word in ("usd", "XXX", "BTC", ""):
            with pytest.raises(KeyError):
                Currency.named(word)


class TestMajorUnits:
    """Amounts leave the program as decimal strings in major units."""

    @pytest.mark.parametrize(
        ("minor", "currency", "text"),
        [
            (1210, USD, "12.10"),
            (5, USD, "0.05"),
            (0, USD, "0.00"),
            (-5, USD, "-0.05"),
            (-1210, USD, "-12.10"),
            (1210, JPY, "1210"),
            (-7, JPY, "-7"),
            (1210, KWD, "1.210"),
            (12, Currency.named("UYW"), "0.0012"),
        ],
    )
    def test_every_decimal_of_the_currency_is_written(self, minor: int, currency: Currency, text: str) -> None:
        """Also the zeros."""
        assert str(Money(minor, currency)) == text

    @given(minor=minors, currency=currencies)
    def test_the_text_is_the_amount(self, minor: int, currency: Currency) -> None:
        """Python's own Decimal reads back the same number, with as many decimals."""
        read = Decimal(str(Money(minor, currency)))
        assert read == Decimal(minor).scaleb(-currency.digits)
        assert -int(read.as_tuple().exponent) == currency.digits


class TestTill:
    """Law 2: quantity x unit cost is rounded once, half up, to the minor unit, as a till does."""

    @given(
        quantity=st.decimals(0, 10**6, places=4),
        unit_cost=st.decimals(0, 10**6, places=6),
        currency=st.sampled_from([USD, JPY, KWD]),
    )
    def test_it_rounds_as_python_s_decimal_does_half_up(
        self, quantity: Decimal, unit_cost: Decimal, currency: Currency
    ) -> None:
        """Decimal.quantize with ROUND_HALF_UP is the reference (Python's standard library)."""
        wanted = (quantity * unit_cost).quantize(Decimal(1).scaleb(-currency.digits), ROUND_HALF_UP)
        assert Decimal(till(Fraction(quantity), Fraction(unit_cost), currency)).scaleb(-currency.digits) == wanted

    def test_it_rounds_once(self) -> None:
        """0.4549 is 0.45; rounding to three decimals first would make 0.46 of it.

        The rule of one step as in Ontario LS-100, method for rounding off (1.347 is 1.3, never 1.4 by way of
        1.35).
        """
        assert till(Fraction(1), Fraction("0.4549"), USD) == 45
        assert till(Fraction(1), Fraction("1.347"), Currency("XTS", 1)) == 13

    def test_a_third_three_times_is_the_whole(self) -> None:
        """The quantity is exact, so a third of a load is not 0.3333."""
        assert till(Fraction(1, 3), Fraction(300), USD) == 10000

    def test_a_float_never_gets_in(self) -> None:
        """2.675 as a float is less than 2.675."""
        with pytest.raises(TypeError):
            till(2.675, Fraction(1), USD)  # type: ignore[arg-type]
