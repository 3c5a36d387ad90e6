"""Money: a whole number of minor units of one currency, and the ways to divide it without losing any.

The laws: no float touches money; currencies never mix; a product is rounded once, half up; what is
divided adds up to what was divided.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.words.currencies import minor_units
from builder.words.rounding import half_up


@dataclass(frozen=True, slots=True)
class Currency:
    """An ISO 4217 currency. `digits` is how many decimals its minor unit makes (USD 2, JPY 0, KWD 3)."""

    code: str
    digits: int

    @classmethod
    def named(cls, code: str) -> Currency:
        """The currency of an ISO 4217 code in capitals; KeyError for a code that is not one."""
        return cls(code, minor_units(code))

    def major(self, minor: int) -> str:
        """Minor units as a decimal string in major units, with every decimal: 1210 is `12.10`."""
        sign, body = ("-" if minor < 0 else ""), str(abs(minor)).rjust(self.digits + 1, "0")
        return f"{sign}{body[: -self.digits]}.{body[-self.digits :]}" if self.digits else sign + body


@dataclass(frozen=True, slots=True)
class Money:
    """A whole number of minor units (cents) of a currency."""

    minor: int
    currency: Currency

    def __post_init__(self) -> None:
        if type(self.minor) is not int:
            raise TypeError(f"money is a whole number of minor units, not {self.minor!r}")

    def __add__(self, other: Money) -> Money:
        return Money(self.minor + self._same(other), self.currency)

    def __sub__(self, other: Money) -> Money:
        return Money(self.minor - self._same(other), self.currency)

    def __neg__(self) -> Money:
        return Money(-self.minor, self.currency)

    def _same(self, other: Money) -> int:
        if other.currency != self.currency:
            raise ValueError(f"{self.currency.code} and {other.currency.code} cannot be added")
        return other.minor

    def __str__(self) -> str:
        return self.currency.major(self.minor)


def till(quantity: Fraction, unit_cost: Fraction, currency: Currency) -> int:
    """`quantity` x `unit_cost` (major units) in minor units, rounded once, half up, as a till does."""
    return half_up(quantity * unit_cost * 10**currency.digits)


def split(amount: int, stays: Fraction) -> tuple[int, int]:
    """Divide `amount` (minor units) in two: the part that stays (a rate, 0 to 1) and the rest.

    Half a minor unit goes to the part that stays, so the two always add up to `amount`.

    >>> split(4975, Fraction(1, 4))
    (1244, 3731)
    """
    _refuse_floats(amount, stays)
    if stays == 1:
        return amount, 0
    kept = half_up(amount * stays)
    return kept, amount - kept


def apportion(amount: int, weights: Sequence[int | Fraction]) -> list[int]:
    """Divide `amount` (minor units) over `weights` by largest remainder; ties go to the earlier one.

    Weights are zero or more; if all are zero the division is equal. The result adds up to `amount`,
    and each part is its quota rounded down or up (the quota rule). It is *not* monotone: a part may
    fall by one when the amount rises by one (the paradox of this method). TypeError for a float,
    ValueError for a weight below zero or an amount with nothing to divide it over.

    >>> apportion(100, [1, 1, 1]), apportion(-100, [0, 0])
    ([34, 33, 33], [-50, -50])
    """
    _refuse_floats(amount, *weights)
    if any(weight < 0 for weight in weights):
        raise ValueError("a weight is below zero")
    if amount < 0:
        return [-part for part in apportion(-amount, weights)]
    if not weights:
        if amount:
            raise ValueError("there is nothing to divide the amount over")
        return []
    whole: int | Fraction = sum(weights)
    shares: Sequence[int | Fraction] = weights if whole else [1] * len(weights)
    whole = whole or len(weights)
    floors = [_floor(amount * weight, whole) for weight in shares]
    remainders = [amount * weight - floor * whole for weight, floor in zip(shares, floors, strict=True)]
    first = sorted(range(len(shares)), key=lambda index: (-remainders[index], index))
    for index in first[: amount - sum(floors)]:
        floors[index] += 1
    return floors


_EXACT = (int, Fraction)


def _refuse_floats(*values: object) -> None:
    for value in values:
        if not isinstance(value, _EXACT):
            raise TypeError(f"money is divided by whole numbers and fractions, not {value!r}")


def _floor(top: int | Fraction, bottom: int | Fraction) -> int:
    return int(top // bottom)
