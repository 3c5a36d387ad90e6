"""The one place where SVG is made."""

from __future__ import annotations

import doctest
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree

from builder.pages import svg
from builder.pages.svg import (
    PAGE,
    Svg,
    anchor_name,
    apart,
    breadth,
    element,
    number,
    round_steps,
    span_about,
    stacked,
    words,
    words_about,
    wrapped,
)
from tests.pages.shapes import at


def test_the_examples_in_the_docstrings_hold() -> None:
    """What a docstring shows is what happens."""
    assert doctest.testmod(svg).failed == 0


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (0, "0"),
        (12, "12"),
        (-7, "-7"),
        (Fraction(1, 2), "0.5"),
        (Fraction(1, 3), "0.33"),
        (Fraction(2, 3), "0.67"),
        (Fraction(1, 200), "0.01"),
        (Fraction(-1, 3), "-0.33"),
        (Fraction(-1, 999), "0"),
        (Fraction(100), "100"),
        (Fraction(1050, 10), "105"),
    ],
)
def test_a_length_is_written_short(value: int | Fraction, written: str) -> None:
    """At most two decimals, no zeros behind them, no minus before nothing."""
    assert number(value) == written


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**6))
def test_a_length_is_rounded_as_the_decimal_module_does(value: Fraction) -> None:
    """Half up at the second decimal, as Python's own ROUND_HALF_UP (checked above zero)."""
    hundredths = Decimal(value.numerator * 100) / Decimal(value.denominator)
    assert Decimal(number(value)) == hundredths.quantize(Decimal(1), ROUND_HALF_UP) / 100


@pytest.mark.parametrize("wrong", [0.5, 1.0, True, Decimal("1.5")])
def test_a_length_is_exact_or_refused(wrong: object) -> None:
    """A float would make the bytes depend on the machine that drew."""
    with pytest.raises(TypeError, match="a length is a whole number or a fraction"):
        number(wrong)  # type: ignore[arg-type]


def test_words_and_attributes_are_escaped() -> None:
    """What an author wrote is never read as SVG."""
    made = element("text", {"class": 'a" onload="x'}, "Rest & <script>alert('x')</script>")
    assert made == (
        '<text class="a&quot; onload=&quot;x">Rest &amp; &lt;script&gt;alert(&#x27;x&#x27;)&lt;/script&gt;</text>'
    )


def test_a_drawing_is_not_escaped_twice() -> None:
    """An element goes into another as it stands, and a template asks for it by the same name."""
    inner = words(1, 2, "5 < 6")
    assert element("g", None, inner) == f"<g>{inner}</g>"
    assert Svg("<g/>").__html__() == "<g/>"


def test_an_attribute_without_a_value_is_left_out() -> None:
    """None is no attribute; nothing is an empty one."""
    assert element("a", {"href": None, "class": ""}) == '<a class=""/>'


@given(st.text())
def test_whatever_was_written_comes_back(text: str) -> None:
    """Any text is well-formed XML, less the characters that XML 1.0 (section 2.2) does not allow."""
    read = etree.fromstring(element("text", {"class": text}, text))
    allowed = "".join(
        c for c in text if c in "\t\n\r" or (c >= " " and c not in "\ufffe\uffff" and not "\ud800" <= c <= "\udfff")
    )
    # A parser gives every end of a line as one line feed (XML 1.0, section 2.11).
    assert (read.text or "") == allowed.replace("\r\n", "\n").replace("\r", "\n")


@pytest.mark.parametrize(
    ("key", "name"),
    [
        ("roof", "roof"),
        ("roof & rails", "roof-rails"),
        ('x" onload="', "x-onload"),
        ("Höhe", "Höhe"),
        ("//", "drawing"),
    ],
)
def test_a_key_becomes_an_id(key: str, name: str) -> None:
    """An id holds no space, and nothing that would end a reference to it."""
    assert anchor_name(key) == name


@given(st.text(alphabet="abc mno-é漢", max_size=60), st.integers(20, 340))
def test_broken_lines_keep_their_room_and_every_letter(text: str, room: int) -> None:
    """No line is broader than it may be, and none of the words is lost."""
    lines = wrapped(text, room)
    assert "".join(lines).replace(" ", "") == "".join(text.split())
    assert all(breadth(line) <= room for line in lines if len(line) > 1)


@given(st.lists(st.integers(0, 360), min_size=1), st.integers(1, 60))
def test_labels_keep_apart_and_the_newest_stays(places: list[int], least: int) -> None:
    """No two that are kept are closer than they may be; one more would be too close to another."""
    kept = apart(places, least)
    assert len(places) - 1 in kept
    assert all(abs(places[a] - places[b]) >= least for a in kept for b in kept if a != b)
    left_out = set(range(len(places))) - set(kept)
    assert all(any(abs(places[out] - places[a]) < least for a in kept) for out in left_out)


@given(st.lists(st.tuples(st.integers(0, 300), st.integers(0, 80)), max_size=30))
def test_words_in_one_row_never_touch(sizes: list[tuple[int, int]]) -> None:
    """Spans that would overlap go to another row; a first one stands in the first."""
    spans = sorted((start, start + length) for start, length in sizes)
    rows = stacked(spans)
    for row in set(rows):
        together = [span for span, at_row in zip(spans, rows, strict=True) if at_row == row]
        assert all(one[1] <= two[0] for one, two in pairwise(together))
    assert not rows or rows[0] == 0


@given(st.integers(1, 10**12), st.integers(2, 10))
def test_a_scale_has_round_steps(top: int, most: int) -> None:
    """1, 2 or 5 times a power of ten, evenly, as far as the top and not too many."""
    steps = round_steps(top, most)
    assert 1 <= len(steps) <= most
    assert steps[0] == steps[-1] // len(steps)
    assert str(steps[0]).rstrip("0") in {"1", "2", "5"}
    assert steps[-1] <= top < steps[-1] + steps[0]


def test_a_scale_of_nothing_has_no_steps() -> None:
    """Nothing spent and no plan: nothing to measure."""
    assert round_steps(0) == round_steps(-500) == ()


@given(st.integers(0, PAGE), st.text(alphabet="nm 9", min_size=1, max_size=30))
def test_words_about_a_place_stay_on_the_page(middle: int, text: str) -> None:
    """They stand in the middle where they fit, and against the edge where they would cross it."""
    start, end = span_about(middle, text)
    made = etree.fromstring(words_about(middle, 10, text))
    (x,) = at(made, "x")
    room = breadth(text)
    side = {"start": x, "middle": x - room / 2, "end": x - room}[made.get("text-anchor") or "start"]
    assert 0 < start < end < PAGE
    assert abs(side - start) < Fraction(1, 50)
