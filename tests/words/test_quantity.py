"""Quantities as people write them: the grammar, what is refused and with which words, and their arithmetic."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.numbers import Unreadable
from builder.words.quantity import EXPECTED, Mismatch, Quantity, read_quantity
from builder.words.units import MEASURED

READS = [
    # number and unit
    ("36 bag", 36, "bag"),
    ("36 bags", 36, "bag"),
    ("3 load", 3, "load"),
    ("2.4 m", "2.4", "m"),
    ("1.5 yd3", "1.5", "yd3"),
    (".5 yd3", "0.5", "yd3"),
    ("40 lb", 40, "lb"),
    ("40lb", 40, "lb"),
    ("140 ft2", 140, "ft2"),
    ("9 ft3", 9, "ft3"),
    ("2400 kg/m3", 2400, "kg/m3"),
    ("90 lb/ft3", 90, "lb/ft3"),
    ("3 hours", 3, "hour"),
    # a bare number counts pieces
    ("12", 12, "piece"),
    ("12 pieces", 12, "piece"),
    ("1/2", "1/2", "piece"),
    ("0", 0, "piece"),
    # fractions
    ("5 1/4 in", "21/4", "in"),
    ("5-1/4 in", "21/4", "in"),
    ('5-1/4"', "21/4", "in"),
    ("3/4 in", "3/4", "in"),
    ("1/2 load", "1/2", "load"),
    ("2 1/2 bag", "5/2", "bag"),
    # feet and inches
    ("9 ft 8 in", "29/3", "ft"),
    ("9 ft 0 in", 9, "ft"),
    ("9' 8\"", "29/3", "ft"),
    ("9'8\"", "29/3", "ft"),
    ("9'-8\"", "29/3", "ft"),
    ("9' - 8\"", "29/3", "ft"),
    ("9ft8in", "29/3", "ft"),
    ("9 ft 8-1/2 in", "233/24", "ft"),
    ("9 feet 8 1/2 inches", "233/24", "ft"),
    ("9 ft. 8 in.", "29/3", "ft"),
    ("9 ft 14 in", "61/6", "ft"),
    ("1 mi 3 yd 2 ft 1 in", "1 + (3*36 + 2*12 + 1)/63360", "mi"),
    ("2 m 30 cm", "2.3", "m"),
    # what phones and word processors make of it
    ("9’ 8”", "29/3", "ft"),
    ("9′ 8″", "29/3", "ft"),
    ("2½ in", "5/2", "in"),
    ("2 ½ in", "5/2", "in"),
    ("½ load", "1/2", "load"),
    ("⅓ load", "1/3", "load"),
    ("⅔ load", "2/3", "load"),
    ("¼ load", "1/4", "load"),
    ("¾ load", "3/4", "load"),
    ("⅕ load", "1/5", "load"),
    ("⅛ load", "1/8", "load"),
    ("⅜ load", "3/8", "load"),
    ("⅝ load", "5/8", "load"),
    ("⅞ load", "7/8", "load"),
    ("9‘ 8“", "29/3", "ft"),
    ("5−1/4 in", "21/4", "in"),
    ("4 m³", 4, "m3"),
    ("1⁄2 load", "1/2", "load"),
    ("5\u00a0bag", 5, "bag"),
    ("5–1/4 in", "21/4", "in"),
    ("12 ft²", 12, "ft2"),
    ("  36   bag  ", 36, "bag"),
]  # fmt: skip


def value_of(told: int | str) -> Fraction:
    """The expected number: an int, a decimal or a fraction as text, or the sum that shows how it comes about."""
    if isinstance(told, str) and "+" in told:
        return 1 + Fraction(3 * 36 + 2 * 12 + 1, 63360)
    return Fraction(told)


@pytest.mark.parametrize(("text", "value", "unit"), READS)
def test_a_quantity_reads_exactly(text: str, value: int | str, unit: str) -> None:
    """As a fraction of its first unit."""
    assert read_quantity(text) == Quantity.of(value_of(value), unit)


REFUSED = [
    ("", "nothing is written here", ""),
    ("x", "x is not a quantity", ""),
    ("some", "some is not a quantity", ""),
    ("a few", "a few is not a quantity", ""),
    ("-5 bag", "-5 bag is negative", "write 5 bag"),
    ("1,250 bag", "1,250 bag has a thousands comma", "write 1250 bag"),
    ("2,4 m", "2,4 m has a decimal comma", "write 2.4 m"),
    ("1e3 bag", "1e3 bag has an exponent", "write all its digits"),
    ("1e3", "1e3 has an exponent", "write all its digits"),
    ("1.5E2", "1.5E2 has an exponent", "write all its digits"),
    ("9 ft 8", "9 ft 8 is more than one quantity", "write 9 ft 8 in"),
    ("8 in 9 ft", "8 in 9 ft does not go from the larger unit to the smaller", "write 9 ft 8 in"),
    ("9 ft 8 ft", "9 ft 8 ft does not go from the larger unit to the smaller", ""),
    ("9 ft, 8 in", "9 ft, 8 in goes on after the quantity with , 8 in", "write 9 ft 8 in"),
    ("9ft2in", "9ft2in has no spaces between its parts", "write them apart, as in 9 ft 2 in"),
    ("5/0 in", "5/0 divides by nothing", ""),
    ("2x4", "2x4 is more than one quantity", ""),
    ("12 1", "12 1 is more than one quantity", ""),
    ("3 bag 2 box", "3 bag 2 box is more than one quantity", "write 3 bag, or two lines"),
    ("3 ft 2 lb", "3 ft 2 lb is more than one quantity", "write 3 ft, or two lines"),
    (
        "2-3 bags",
        "2-3 bags is more than one quantity",
        "write the likelier of the two numbers, with about before it where that is allowed",
    ),
    ("36 bags of mix", "36 bags of mix goes on after the quantity with of mix", "write 36 bags"),
    ("36 bags, 80 lb", "36 bags, 80 lb goes on after the quantity with , 80 lb", "write 36 bags"),
    ("36 bag(s)", "36 bag(s) goes on after the quantity with (s)", "write 36 bag"),
    ("36-bag", "36-bag goes on after the quantity with -bag", "write 36 bag"),
    ("5. bag", "5. bag goes on after the quantity with . bag", "write 5 bag"),
    ("12 sq ft", "12 sq ft goes on after the quantity with ft", "write 12 ft2"),
    ("3 cubic yards", "3 cubic yards goes on after the quantity with yards", "write 3 yd3"),
    ("3 m^2", "3 m^2 has the unit m^2, which is no word", "write 3 m2"),
    ("3 m**2", "3 m**2 has the unit m**2, which is no word", "write 3 m2"),
    ("a dozen of bags", "a dozen of bags is not a quantity", "write 12 bags"),
    ("a lot", "a lot is not a quantity", ""),
    ("a bit", "a bit is not a quantity", ""),
    ("a couple", "a couple is not a quantity", ""),
    ("a " + "b" * 58, "a " + "b" * 58 + " is not a quantity", "write 1 " + "b" * 58),
    ("a " + "b" * 59, "a " + "b" * 55 + "... is not a quantity", ""),
    ("half a load", "half a load is not a quantity", "write 1/2 load"),
    ("a half load", "a half load is not a quantity", "write 1/2 load"),
    ("a quarter load", "a quarter load is not a quantity", "write 1/4 load"),
    ("a dozen bags", "a dozen bags is not a quantity", "write 12 bags"),
    ("a couple of bags", "a couple of bags is not a quantity", "write 2 bags"),
    ("A bag", "A bag is not a quantity", "write 1 bag"),
    ("an hour", "an hour is not a quantity", "write 1 hour"),
    *(
        (f"{word} bags", f"{word} bags is not a quantity", f"write {number} bags")
        for word, number in [
            ("one", 1), ("three", 3), ("four", 4), ("five", 5), ("six", 6), ("seven", 7), ("eight", 8), ("nine", 9),
            ("ten", 10), ("twelve", 12),
        ]
    ),
    ("a load of stone", "a load of stone is not a quantity", ""),
    ("two loads", "two loads is not a quantity", "write 2 loads"),
    ("about 5 bags", "about 5 bags is not a quantity", "write 5 bags"),
    ("~5 bags", "~5 bags is not a quantity", "write 5 bags"),
    ("3 m3/h", "3 m3/h has the unit m3/h, which is no word", ""),
    ("1234567890123 bag", "1234567890123 is too long a number", ""),
    ("x" * 100, "x" * 57 + "... is not a quantity", ""),
    ("٣ bag", "٣ bag is not a quantity", ""),
]  # fmt: skip


@pytest.mark.parametrize(("text", "found", "fix"), REFUSED)
def test_what_is_no_quantity_is_refused_with_what_to_write(text: str, found: str, fix: str) -> None:
    """The whole message: what was found, and what to write where that can be told."""
    with pytest.raises(Unreadable) as caught:
        read_quantity(text)
    assert (caught.value.found, caught.value.fix) == (found, fix)


@pytest.mark.parametrize("fix", [fix for _, _, fix in REFUSED if fix.startswith("write ") and fix[6].isdigit()])
def test_every_fix_reads(fix: str) -> None:
    """Following the advice is the end of it."""
    read_quantity(fix.removeprefix("write ").removesuffix(", or two lines"))


def test_the_message_says_what_would_do() -> None:
    """What was expected is the reader's own example, or that of whoever asked."""
    with pytest.raises(Unreadable) as caught:
        read_quantity("x")
    assert str(caught.value) == f"x is not a quantity; expected {EXPECTED}"
    with pytest.raises(Unreadable) as caught:
        read_quantity("2,4 m", "a width")
    assert str(caught.value) == "2,4 m has a decimal comma; expected a width; write 2.4 m"


class TestArithmetic:
    """Exact, in the unit that comes first; what measures different things does not add up."""

    def test_adding_feet_to_bags_names_both(self) -> None:
        """The two are named, whichever way round."""
        feet, bags = read_quantity("9 ft 6 in"), read_quantity("36 bags")
        for put_together in (feet.__add__, feet.__sub__, feet.to_like):
            with pytest.raises(Mismatch, match=r"9\.5 ft") as caught:
                put_together(bags)
            assert "36 bag" in str(caught.value)
            assert "measure different things" in str(caught.value)
        assert not feet.like(bags)
        with pytest.raises(Mismatch, match=r"^9\.5 ft and 36 bag "):  # as they are written
            feet.__sub__(bags)

    def test_asking_for_feet_of_bags_names_both(self) -> None:
        """In words that need no manual."""
        with pytest.raises(Mismatch) as caught:
            read_quantity("36 bag").in_unit("ft")
        assert str(caught.value) == "36 bag and ft cannot be put together: they measure different things"

    @given(
        one=st.fractions(0, 10**6),
        other=st.fractions(0, 10**6),
        units=st.sampled_from([("ft", "m"), ("in", "yd"), ("yd3", "gal"), ("ton", "kg"), ("day", "hour")]),
    )
    def test_a_sum_of_two_units_is_exact(self, one: Fraction, other: Fraction, units: tuple[str, str]) -> None:
        """Taking away again what was added leaves the first, to the last digit."""
        first, second = Quantity.of(one, units[0]), Quantity.of(other, units[1])
        assert first + second - second == first
        assert (first + second).unit == first.unit
        assert (second + first).to(first.unit) == first + second

    @given(value=st.fractions(), symbols=st.sampled_from(
        [(a.symbol, b.symbol) for a in MEASURED.values() for b in MEASURED.values() if a.measure == b.measure]
    ))  # fmt: skip
    def test_there_and_back_is_the_same(self, value: Fraction, symbols: tuple[str, str]) -> None:
        """Converting to any unit of the same measure and back loses nothing."""
        here, there = symbols
        quantity = Quantity.of(value, here)
        assert quantity.to(MEASURED[there]).to(MEASURED[here]) == quantity
        assert Quantity.of(quantity.in_unit(there), there).in_unit(here) == value

    def test_a_unit_that_is_none_is_refused(self) -> None:
        """Inside the program a unit is a name it knows, or a word."""
        with pytest.raises(ValueError, match="'4' is no unit"):
            Quantity.of(1, "4")
        with pytest.raises(ValueError, match="'' is no unit"):
            Quantity.of(1, "ft").in_unit("")


class TestRoundTrip:
    """What is printed reads back."""

    @given(value=st.integers(0, 10**9), decimals=st.integers(0, 3), unit=st.sampled_from([*MEASURED, "bag", "box"]))
    def test_a_quantity_of_few_digits_reads_back_as_itself(self, value: int, decimals: int, unit: str) -> None:
        """Ten digits are printed, so what has no more is unchanged."""
        quantity = Quantity.of(Fraction(value, 10**decimals), unit)
        assert read_quantity(str(quantity)) == quantity

    @given(feet=st.integers(0, 500), inches=st.integers(0, 11), eighths=st.integers(0, 7), style=st.sampled_from(
        ["{f} ft {i} {e}/8 in", "{f}' {i}-{e}/8\"", "{f}'-{i} {e}/8\"", "{f} feet {i}-{e}/8 inches"]
    ))  # fmt: skip
    def test_a_tape_reads_to_the_eighth(self, feet: int, inches: int, eighths: int, style: str) -> None:
        """In all the ways a tape is read aloud."""
        text = style.format(f=feet, i=inches, e=eighths)
        assert read_quantity(text).in_unit("in") == 12 * feet + inches + Fraction(eighths, 8)
