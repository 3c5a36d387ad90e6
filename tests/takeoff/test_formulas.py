"""The small algebra behind the workings: exact values, dimensions, brackets, roots and tangents."""

from __future__ import annotations

import math
from decimal import Decimal, getcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.takeoff.expression import PI, Applied, Constant, Expression, Named, Rule, Squared, Total
from builder.takeoff.measures import DEGREE, NUMBER, PERCENT, dimension, unit
from builder.takeoff.text import Text
from builder.words.quantity import Quantity


def of(value: Fraction | int, symbol: str, name: str = "a") -> Named:
    """A named quantity."""
    return Named(Text(name), Quantity.of(value, symbol))


def plain(value: Fraction | int) -> Constant:
    """A plain number."""
    return Constant(Quantity(Fraction(value), NUMBER))


def test_feet_times_inches_is_an_area() -> None:
    """3 ft x 8 in = 2 ft2, exactly."""
    assert str((of(3, "ft") * of(8, "in")).worth().of(unit("ft2"))) == "2 ft2"


def test_a_length_and_an_area_do_not_add_up() -> None:
    """A method that tried it would stop at once, with the formula named."""
    with pytest.raises(ValueError, match=r"^length \+ area puts together what measures different things$"):
        (of(1, "ft", "length") + of(1, "ft2", "area")).worth()


def test_an_area_is_not_measured_in_feet() -> None:
    """The unit a step asks for has to measure the same."""
    with pytest.raises(ValueError, match="is not measured in ft"):
        (of(1, "ft") * of(1, "ft")).worth().of(unit("ft"))


def test_a_length_is_not_rounded_up() -> None:
    """Only plain numbers are: nobody buys whole feet of a volume."""
    with pytest.raises(ValueError, match=r"^round up\(a\) takes a plain number$"):
        Applied(Rule.ROUND_UP, (of(1, "ft"),)).worth()


def test_a_length_is_not_compared_with_a_number() -> None:
    """The larger of two is taken among the same kind."""
    with pytest.raises(ValueError, match=r"^larger of\(a, 2\) compares what measures different things$"):
        Applied(Rule.LARGER, (of(1, "ft"), plain(2))).worth()


A, B, C = (of(value, "ft", name) for value, name in ((5, "a"), (3, "b"), (2, "c")))


@pytest.mark.parametrize(
    ("formula", "text"),
    [
        (A - B - C, "a − b − c"),
        (A - (B - C), "a − (b − c)"),
        (A - (B + C), "a − (b + c)"),
        ((A - B) + (C - B), "(a − b) + (c − b)"),
        (A + B * C / C, "a + b × c ÷ c"),
        ((A + B) * C, "(a + b) × c"),
        (A / (B * C), "a ÷ (b × c)"),
        (A / B / C, "a ÷ b ÷ c"),
        (2 * A, "2 × a"),
        (1 / A, "1 ÷ a"),
        (1 + A / B, "1 + a ÷ b"),
        (Squared(A), "a²"),
        (Squared(A + B), "(a + b)²"),
        (Applied(Rule.ROOT, (A / B + 1,)), "square root(a ÷ b + 1)"),
        (Total(Text("runs"), (A, B), unit("ft")) - C, "Σ runs − c"),
    ],
)
def test_brackets_stand_where_they_are_needed(formula: Expression, text: str) -> None:
    """And round a difference that is added, as handbooks write the centre line."""
    assert formula.formula() == text


def test_a_sum_prints_its_parts() -> None:
    """And in brackets where something is taken from it or it is taken from something."""
    total = Total(Text("openings"), (B, C), unit("ft"))
    assert (A - total).with_numbers() == "5 ft − (3 ft + 2 ft)"
    assert (total * total).with_numbers() == "(3 ft + 2 ft) × (3 ft + 2 ft)"


def test_a_sum_of_nothing_is_nothing() -> None:
    """In its own unit, so that it still measures something."""
    nothing = Total(Text("openings"), (), unit("ft2"))
    assert str(nothing.worth().of(unit("ft2"))) == "0 ft2"
    assert nothing.with_numbers() == "0 ft2"


def test_the_circle_s_number_is_right_to_forty_decimals() -> None:
    """By Machin's formula, 16 arctan 1/5 - 4 arctan 1/239, worked out here."""

    def arctan(inverse: int) -> Fraction:
        return sum(
            (Fraction((-1) ** k, (2 * k + 1) * inverse ** (2 * k + 1)) for k in range(60)),
            Fraction(0),
        )

    assert abs(PI - (16 * arctan(5) - 4 * arctan(239))) < Fraction(1, 10**40)


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**4))
def test_a_root_squared_is_the_number(value: Fraction) -> None:
    """To thirty decimals; exactly where it is a square."""
    root = Applied(Rule.ROOT, (plain(value),)).worth().value
    assert 0 <= value - root**2 < Fraction(1, 10**30)
    assert Applied(Rule.ROOT, (plain(value**2),)).worth().value == value


def test_a_root_has_the_digits_of_a_table() -> None:
    """The square root of two, by decimal arithmetic."""
    getcontext().prec = 40
    root = Applied(Rule.ROOT, (plain(2),)).worth().value
    assert abs(root - Fraction(Decimal(2).sqrt())) < Fraction(1, 10**35)


@given(st.integers(1, 8999).map(lambda hundredths: Fraction(hundredths, 100)))
def test_a_tangent_is_that_of_the_mathematics_library(degrees: Fraction) -> None:
    """As far as a float goes."""
    tangent = Applied(Rule.TANGENT, (Constant(Quantity(degrees, DEGREE)),)).worth().value
    assert math.isclose(tangent, math.tan(math.radians(degrees)), rel_tol=1e-12)


@pytest.mark.parametrize(("degrees", "square"), [(30, Fraction(1, 3)), (45, Fraction(1)), (60, Fraction(3))])
def test_the_tangents_that_are_known_exactly(degrees: int, square: Fraction) -> None:
    """Their squares are 1/3, 1 and 3, to thirty decimals."""
    tangent = Applied(Rule.TANGENT, (Constant(Quantity(Fraction(degrees), DEGREE)),)).worth().value
    assert abs(tangent**2 - square) < Fraction(1, 10**30)


def test_what_is_counted_is_a_plain_number() -> None:
    """Bags, percents and plain numbers have no dimension."""
    assert dimension(unit("bag")) == dimension(PERCENT) == dimension(NUMBER) == (0, 0, 0)


def test_a_word_that_is_no_unit_is_refused() -> None:
    """A mistake in a method, not in a journal."""
    with pytest.raises(ValueError, match="'7' is no unit"):
        unit("7")
