"""Lengths and prices as the whole numbers that cutting works with."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import lcm

from builder.words.quantity import Quantity


def metres(quantity: Quantity) -> Fraction:
    """A length in metres, exact."""
    return quantity.value * quantity.unit.ratio


def whole_numbers(values: Iterable[Fraction]) -> tuple[list[int], int]:
    """The values times the smallest whole number that makes them whole, and that number."""
    kept = list(values)
    scale = lcm(*(value.denominator for value in kept))
    return [int(value * scale) for value in kept], scale
