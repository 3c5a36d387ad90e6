"""Numbers from their digits, exactly, and what people write where a number is due."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.judged import Judged
from builder.words.numbers import Unreadable, read_mixed, read_number, read_rate

NUMBER = "a number such as 12 or 12.50"


class TestNumbers:
    """An amount in a file is read from its digits (`12.10` is exactly 12.10)."""

    @given(value=st.decimals(0, 10**9, places=4), places=st.integers(0, 4))
    def test_the_value_is_the_digits(self, value: Decimal, places: int) -> None:
        """And how many decimals were written is kept."""
        text = f"{value:.{places}f}"
        written = read_number(text)
        assert written.value == Fraction(text)
        assert written.decimals == places

    @pytest.mark.parametrize(
        ("text", "value"),
        [("0", 0), ("007", 7), (".5", "0.5"), ("12.10", "12.1"), ("010", 10), ("999999999999", 999999999999),
         ("0" * 5000 + "1", 1), ("0.000000000001", "0.000000000001")],
    )  # fmt: skip
    def test_plain_digits_read(self, text: str, value: int | str) -> None:
        """Zeros in front say nothing: 010 is ten, not eight."""
        assert read_number(text).value == Fraction(value)

    @pytest.mark.parametrize(
        ("text", "value"), [("1/4", "1/4"), ("5 1/4", "21/4"), ("5-1/4", "21/4"), ("2.5", "5/2"), ("0/4", 0)]
    )
    def test_a_mixed_number_reads(self, text: str, value: str) -> None:
        """Where fractions are allowed."""
        assert read_mixed(text, NUMBER) == Fraction(value)

    @pytest.mark.parametrize("text", ["1/0", "3 0/0", "1234567890123/2", "1/1234567890123", "9" * 5000 + "/2"])
    def test_a_mixed_number_that_cannot_be_is_refused(self, text: str) -> None:
        """Never with an error of Python's own."""
        with pytest.raises(Unreadable):
            read_mixed(text, NUMBER)

    def test_twelve_digits_are_not_too_many_in_any_part(self) -> None:
        """Thirteen are, and the message says how many may be."""
        assert read_mixed("123456789012 123456789012/999999999999", NUMBER) > 123456789012
        with pytest.raises(Unreadable) as caught:
            read_mixed("1234567890123/2", NUMBER)
        assert str(caught.value) == (
            "1234567890123/2 is too long a number; expected at most 12 digits before the point and 100 after it"
        )

    def test_what_divides_by_nothing_is_told_with_what_was_expected(self) -> None:
        """There is nothing to write instead."""
        with pytest.raises(Unreadable) as caught:
            read_mixed("1/0", NUMBER)
        assert str(caught.value) == f"1/0 divides by nothing; expected {NUMBER}"


REFUSED = [
    ("", "nothing is written here", ""),
    ("1,250", "1,250 has a thousands comma", "write 1250"),
    ("1,250.50", "1,250.50 has a thousands comma", "write 1250.50"),
    ("-1,250", "-1,250 is negative", "write 1250"),
    ("-5", "-5 is negative", "write 5"),
    ("−5", "−5 is negative", "write 5"),
    ("+5", "+5 has a plus sign", "write 5"),
    ("12,5", "12,5 has a decimal comma", "write 12.5"),
    ("1.250,50", "1.250,50 has a decimal comma", "write 1250.50"),
    ("1 250", "1 250 has a gap between its digits", "write 1250"),
    ("1'250.00", "1'250.00 has a gap between its digits", "write 1250.00"),
    ("12.", "12. ends in a point", "write 12"),
    ("1e3", "1e3 has an exponent", "write all its digits"),
    ("$12", "$12 has a currency mark", "write 12: the currency stands in journal.yaml"),
    ("$1,250.00", "$1,250.00 has a currency mark", "write 1250.00: the currency stands in journal.yaml"),
    ("12.50 EUR", "12.50 EUR has a currency mark", "write 12.50: the currency stands in journal.yaml"),
    ("US$ 5", "US$ 5 has a currency mark", "write 5: the currency stands in journal.yaml"),
    ("12,50 €", "12,50 € has a currency mark", "write 12.50: the currency stands in journal.yaml"),
    ("5 ZWG", "5 ZWG has a currency mark", "write 5: the currency stands in journal.yaml"),
    ("40 dollars", "40 dollars has a currency mark", "write 40: the currency stands in journal.yaml"),
    ("1/4", "1/4 is a fraction", "write 0.25"),
    ("5 1/4", "5 1/4 is a fraction", "write 5.25"),
    ("2½", "2½ is a fraction", "write 2.5"),
    ("½", "½ is a fraction", "write 0.5"),
    ("7/2", "7/2 is a fraction", "write 3.5"),
    ("4/2", "4/2 is a fraction", "write 2"),
    ("999 1/2", "999 1/2 is a fraction", "write 999.5"),
    ("1/3", "1/3 is a fraction", "write it with decimals"),
    ("1/0", "1/0 is a fraction", ""),
    ("3 x 12.50", "3 x 12.50 is a sum to be worked out", "write what it comes to"),
    ("150-200", "150-200 is two numbers", "write the likelier one"),
    ("150 to 200", "150 to 200 is two numbers", "write the likelier one"),
    ("about 5", "about 5 is marked as a guess, which this number cannot be", "write 5"),
    ("~5", "~5 is marked as a guess, which this number cannot be", "write 5"),
    ("12.50 each", "12.50 each has words after the number", "write 12.50"),
    ("12.50/bag", "12.50/bag has words after the number", "write 12.50"),
    ("12.50 (with tax)", "12.50 (with tax) has words after the number", "write 12.50"),
    ("7h", "7h has words after the number", "write 7"),
    ("5X", "5X has words after the number", "write 5"),
    ("1O.50", "1O.50 has a letter for a digit", "write 10.50"),
    ("OIl", "OIl has a letter for a digit", ""),
    ("-" + "9" * 119, "-" + "9" * 56 + "... is negative", "write " + "9" * 119),
    ("-" + "9" * 120, "-" + "9" * 56 + "... is not a number", ""),  # too long to be looked at
    ("１２０", "１２０ has digits of another alphabet", "write 120"),
    ("٧", "٧ has digits of another alphabet", "write 7"),
    ("free", "free is not a number", ""),
    ("7:30", "7:30 is not a number", ""),
    ("1.2.3", "1.2.3 is not a number", ""),
    (".inf", ".inf is not a number", ""),
    ("nan", "nan is not a number", ""),
    ("0x1F", "0x1F is not a number", ""),
    ("1234567890123", "1234567890123 is too long a number", ""),
    ("0.1" + "2" * 100, "0.1" + "2" * 54 + "... is too long a number", ""),
    ("9" * 5000, "9" * 57 + "... is too long a number", ""),
    ("x" * 60, "x" * 60 + " is not a number", ""),
    ("x" * 61, "x" * 57 + "... is not a number", ""),
    ("x" * 5000, "x" * 57 + "... is not a number", ""),
]  # fmt: skip


@pytest.mark.parametrize(("text", "found", "fix"), REFUSED)
def test_what_is_no_number_is_refused_with_what_to_write(text: str, found: str, fix: str) -> None:
    """A guess is offered and never taken: the number has to be written."""
    with pytest.raises(Unreadable) as caught:
        read_number(text)
    assert (caught.value.found, caught.value.fix) == (found, fix)


FIXES = [fix for _, _, fix in REFUSED if fix.startswith("write ") and fix[6].isdigit() and len(fix) < 99]


@pytest.mark.parametrize("fix", FIXES)
def test_every_fix_reads(fix: str) -> None:
    """Following the advice is the end of it."""
    read_number(fix.removeprefix("write ").partition(":")[0])


class TestRates:
    """Parts of a whole are written `25%` or `0.25`."""

    @pytest.mark.parametrize(
        ("text", "value"),
        [("25%", "1/4"), ("25 %", "1/4"), ("8.25%", "33/400"), ("0.25", "1/4"), ("1", 1), ("0", 0), ("100%", 1)],
    )  # fmt: skip
    def test_a_rate_reads_exactly(self, text: str, value: str) -> None:
        """As a fraction from nothing to the whole."""
        assert read_rate(text, "a part") == Fraction(value)

    @pytest.mark.parametrize(
        ("text", "found", "fix"),
        [
            ("25", "25 has no % sign", "write 25%"),
            ("100", "100 has no % sign", "write 100%"),
            ("101", "101 is more than the whole", "a part is at most 100%"),
            ("140%", "140% is more than the whole", "a part is at most 100%"),
            ("140", "140 is more than the whole", "a part is at most 100%"),
            ("-5%", "-5% is negative", "write 5%"),
            ("1,5%", "1,5% has a decimal comma", "write 1.5%"),
            ("1/3", "1/3 is a fraction", "write 33.3%"),
            ("1/2", "1/2 is a fraction", "write 50%"),
            ("10000/100000", "10000/100000 is a fraction", "write 10%"),
            ("10000/1000000", "10000/1000000 is a fraction", "write it with decimals"),
            ("half", "half is a word", "write 50%"),
            ("A half", "A half is a word", "write 50%"),
            ("a third", "a third is a word", "write 33.3%"),
            ("a quarter", "a quarter is a word", "write 25%"),
            ("all", "all is a word", "write 100%"),
            ("none", "none is a word", "write 0%"),
            ("e%", "e% is not a number", ""),
            ("55 Prozent", "55 Prozent has no % sign", "write 55%"),
            ("8,25 v.H.", "8,25 v.H. has no % sign", "write 8.25%"),
            ("0" * 52 + " percent", "0" * 52 + " percent has no % sign", "write " + "0" * 52 + "%"),
            ("0" * 53 + " percent", "0" * 53 + " per... has words after the number", "write " + "0" * 53),
            ("12 pour cent", "12 pour cent has no % sign", "write 12%"),
            ("1.2.3 pct", "1.2.3 pct is not a number", ""),
            ("5 bag", "5 bag has words after the number", "write 5"),
            ("25 percent", "25 percent has no % sign", "write 25%"),
            ("%", "the % sign has no number before it", ""),
            ("", "nothing is written here", ""),
            ("most", "most is not a number", ""),
        ],
    )
    def test_what_is_no_rate_is_refused_with_what_to_write(self, text: str, found: str, fix: str) -> None:
        """The same way as a number, and with its % sign."""
        with pytest.raises(Unreadable) as caught:
            read_rate(text, "a part")
        assert (caught.value.found, caught.value.fix) == (found, fix)

    @pytest.mark.parametrize(("text", "fix"), [("0.25", "write 25%"), ("0.5", "write 50%"), ("30", "write 30%")])
    def test_where_an_amount_is_allowed_a_rate_needs_its_sign(self, text: str, fix: str) -> None:
        """And the fix is the rate that was meant."""
        with pytest.raises(Unreadable) as caught:
            read_rate(text, "a part", bare=False)
        assert (caught.value.found, caught.value.fix) == (f"{text} has no % sign", fix)


def test_an_unreadable_can_be_kept_and_compared_by_itself() -> None:
    """It has a hash, which tracebacks and sets of exceptions want, and two of them are two."""
    one, other = Unreadable("a", "b"), Unreadable("a", "b")
    assert len({one, other}) == 2


def misread(text: str) -> list[Unreadable]:
    """What each reading of a number says of a text that is none."""
    said = []
    for read in (read_number, lambda one: read_mixed(one, NUMBER), lambda one: read_rate(one, NUMBER)):
        try:
            read(text)
        except Unreadable as error:
            said.append(error)
    return said


@given(text=st.text(max_size=200))
def test_no_text_breaks_the_reading_of_a_number(text: str) -> None:
    """Whatever is written, it is a number or an Unreadable that says something short."""
    for error in misread(text):
        assert 0 < len(error.found) < 200
        assert len(error.fix) < 200
        assert error.expected


def test_a_value_is_no_judgement_unless_its_author_says_so() -> None:
    """`about` has to be written."""
    assert not Judged(Fraction(5)).about
    assert Judged(Fraction(5), about=True).about
