"""The shares: where the money went."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from builder.pages.shares import Share, Shares, draw_shares
from tests.pages.shapes import at, root, shapes, texts


def shares(*amounts: int, label: str = "Bought new") -> str:
    """A bar for each amount."""
    bars = tuple(Share(label=label, amount=amount, amount_label=f"{amount}") for amount in amounts)
    return draw_shares(Shares(key="shares", title="Shares", description="Where it went.", shares=bars))


@given(st.lists(st.integers(1, 10**9), min_size=2, max_size=8))
def test_bars_are_as_long_as_their_amounts(amounts: list[int]) -> None:
    """The longest fills the page, the others are in proportion, to a hundredth of a unit."""
    lengths = [at(bar, "width")[0] for bar in shapes(shares(*amounts), "share")]
    full = max(lengths)
    drawn = [length * max(amounts) - full * amount for length, amount in zip(lengths, amounts, strict=False)]
    assert len(lengths) == len(amounts)
    assert all(abs(off) <= Fraction(max(amounts), 90) for off in drawn)


def test_neighbours_are_told_apart_without_colour() -> None:
    """Two bars side by side never have one texture, and every texture is in the drawing."""
    drawing = shares(5, 4, 3, 2, 1, 6, 7)
    fills = [bar.get("fill") or "" for bar in shapes(drawing, "share")]
    assert all(one != two for one, two in pairwise(fills))
    ids = {pattern.get("id") for pattern in root(drawing).iter("{*}pattern")}
    assert {fill[5:-1] for fill in fills} <= ids


def test_nothing_and_less_than_nothing_have_a_name_but_no_bar() -> None:
    """Salvage that cost nothing, and sales that brought money back, are still named."""
    drawing = shares(0, -500)
    assert shapes(drawing, "share") == []
    assert texts(drawing) == ["Bought new", "0", "Bought new", "-500"]


def test_a_long_name_takes_another_line() -> None:
    """It never runs into its amount."""
    name = "Aus zweiter Hand von Nachbarn, Kleinanzeigen und dem Wertstoffhof"
    drawing = shares(123456, label=name)
    said = texts(drawing)
    assert " ".join(said[:-1]) == name
    assert len(said) > 2


def test_no_money_at_all_is_a_drawing_too() -> None:
    """Before the first receipt."""
    assert texts(shares()) == []
