"""Estimates with three points: low, likely, high. Everything is exact; no square root is taken here."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class ThreePoint:
    """A low, a likely and a high value of one unit (here hours of work), none below zero, in that order."""

    low: Fraction
    likely: Fraction
    high: Fraction

    def __post_init__(self) -> None:
        if not 0 <= self.low <= self.likely <= self.high:
            raise ValueError(f"low, likely, high must rise from zero: {self.low}, {self.likely}, {self.high}")

    def times(self, factor: Fraction) -> ThreePoint:
        """The same estimate on another scale; `factor` is not below zero."""
        return ThreePoint(low=self.low * factor, likely=self.likely * factor, high=self.high * factor)


@dataclass(frozen=True, slots=True, kw_only=True)
class Moments:
    """A mean, in the estimate's unit, and a variance, in its square."""

    mean: Fraction
    variance: Fraction


def pert(points: ThreePoint) -> Moments:
    """te = (a + 4m + b) / 6 and variance = ((b - a) / 6)^2: the usual shorthand of the critical path method.

    The variance is a rule of thumb and ignores the likely value; `triangular` and `beta_pert` are exact.
    """
    mean = (points.low + 4 * points.likely + points.high) / 6
    return Moments(mean=mean, variance=((points.high - points.low) / 6) ** 2)


def triangular(points: ThreePoint) -> Moments:
    """Of a triangular distribution: (a + m + b) / 3 and (a^2 + m^2 + b^2 - am - ab - mb) / 18."""
    a, m, b = points.low, points.likely, points.high
    return Moments(mean=(a + m + b) / 3, variance=(a * a + m * m + b * b - a * m - a * b - m * b) / 18)


def beta_pert(points: ThreePoint) -> Moments:
    """Of a beta distribution whose mean is te and whose shape is 4: variance = (te - a)(b - te) / 7."""
    mean = pert(points).mean
    return Moments(mean=mean, variance=(mean - points.low) * (points.high - mean) / 7)


def summed(parts: Iterable[Moments], covariance: Fraction = Fraction(0)) -> Moments:
    """Mean and variance of a sum. `covariance` is the sum over all pairs, 0 when the parts do not depend
    on each other; a pair with correlation r and standard deviations s and t has the covariance r s t.
    """
    rows = tuple(parts)
    return Moments(
        mean=sum((row.mean for row in rows), Fraction(0)),
        variance=sum((row.variance for row in rows), 2 * covariance),
    )


def triangular_share(points: ThreePoint, value: Fraction) -> Fraction:
    """The share of a triangular distribution at or below `value`, 0 to 1; a single point is a step."""
    a, m, b = points.low, points.likely, points.high
    if value < a:
        return Fraction(0)
    if value >= b:
        return Fraction(1)
    if value < m:
        return (value - a) ** 2 / ((b - a) * (m - a))
    return 1 - (b - value) ** 2 / ((b - a) * (b - m))
