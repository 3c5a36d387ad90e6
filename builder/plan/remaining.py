"""How many hours of work a phase still needs: its estimate, and what the work so far says of it."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from fractions import Fraction

from builder.plan.threepoint import ThreePoint, triangular


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseWork:
    """A phase as the schedule sees it.

    `hours` are the builder's own for the whole phase, `wait` the days after it before anything that comes
    after it. `progress` is 0 to 1, None when nobody said. `spent` hours were worked so far; 0 when it is not
    begun, None when it is and nobody counted. `done_on` is the day it was finished, None while it is open.
    """

    key: str
    after: tuple[str, ...] = ()
    hours: ThreePoint | None = None
    wait: Fraction = Fraction(0)
    progress: Fraction | None = None
    spent: Fraction | None = Fraction(0)
    done_on: datetime.date | None = None

    def __post_init__(self) -> None:
        if self.wait < 0 or (self.spent or 0) < 0 or not 0 <= (self.progress or 0) <= 1:
            raise ValueError(f"{self.key}: a wait or hours below none, or progress outside 0 to 1")


@dataclass(frozen=True, slots=True, kw_only=True)
class Remaining:
    """Hours still to work: `whole` as a triangular distribution, of which `worked` are over and done with.

    Where `worked` is above zero the phase is known not to be finished, so only the part of `whole` that lies
    above `worked` can still be true. With `worked` at the high value nothing is left that the estimate could
    say.
    """

    whole: ThreePoint
    worked: Fraction = Fraction(0)

    @property
    def spent_up(self) -> bool:
        return 0 < self.worked >= self.whole.high


def remaining_hours(estimate: ThreePoint, progress: Fraction | None, spent: Fraction | None) -> Remaining:
    """The hours an open phase still needs. With X the estimate, p the progress and s the hours spent:

    - p and s known: (1 - p) X f, with f = (1 - p) + p x (s / p) / mean of X = 1 - p + s / mean of X. What the
      work so far says of the whole, s / p hours, counts for the share p that is done, the estimate for the
      rest. So one slow hour on a phase hardly begun does not double it, and near the end the phase's own rate
      decides.
    - p known, s not: (1 - p) X.
    - s known, p not: X - s, knowing that X is more than s (the phase would be finished otherwise).
    - neither known: all of X; nothing is taken for done that nobody said was.
    """
    if progress is not None:
        own_rate = _own_rate(estimate, progress, spent)
        return Remaining(whole=estimate.times((1 - progress) * own_rate))
    return Remaining(whole=estimate, worked=spent or Fraction(0))


def _own_rate(estimate: ThreePoint, progress: Fraction, spent: Fraction | None) -> Fraction:
    mean = triangular(estimate).mean
    if spent is None or not mean or not (progress or spent):
        return Fraction(1)
    return 1 - progress + spent / mean
