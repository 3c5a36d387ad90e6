"""The middle of what may happen: where half of all outcomes lie on either side."""

from __future__ import annotations

from itertools import pairwise

import pytest

from builder.plan.finish import _median, forecast_finish
from builder.plan.outcomes import A_QUARTER, BANDS, MIDDLE, OUTCOMES, slice_numbers
from builder.plan.time_records import Finish
from tests.plan.plans import SUNDAY, WEEKEND, day, phase


@pytest.mark.parametrize(
    ("values", "middle"), [([7], 7), ([3, 1, 2], 2), ([4, 1, 3, 2], 2), ([5, 5, 1], 5), ([9, 1, 8, 2, 7], 7)]
)
def test_half_of_all_outcomes_are_over_by_the_middle_one(values: list[int], middle: int) -> None:
    """Of an even number the lower of the two."""
    assert _median(values) == middle


@pytest.mark.parametrize(("hours", "weeks"), [((0, 12, 24), 3), ((1, 13, 25), 2), ((0, 12, 26), 2)])
def test_the_weeks_to_spare_are_those_of_the_middle_outcome(hours: tuple[int, int, int], weeks: int) -> None:
    """A wait of four weeks holds the finish, and four weekends of 12 hours are free until it is over.

    Of 12 hours, the middle of an even spread, three more weekends fit; of 13, and of 12 hours and a half (which the
    median is where the high value is further off), only two.
    """
    found = forecast_finish([phase("cure", 0, wait=28), phase("shed", hours)], week=WEEKEND, as_of=SUNDAY)
    assert isinstance(found, Finish)
    assert found.p50 == day(3, 29)
    assert [one.slack for one in found.phases] == [0, weeks]


def test_as_many_slices_lie_below_the_middle_as_above() -> None:
    """And every phase is in the middle band of some outcomes that are looked at roughly, as in every other band."""
    assert MIDDLE == OUTCOMES - 1 - MIDDLE
    for place in (0, 1, 30, 31, 40):
        assert sorted(slice_numbers(place)) == list(range(OUTCOMES))
    counts = [sum(slice_numbers(1)[one] // BANDS == band for one in A_QUARTER) for band in range(BANDS)]
    assert len(set(counts)) == 1
    assert all(other > one for one, other in pairwise(A_QUARTER))
