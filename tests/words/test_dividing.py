"""Dividing money without losing any: law 3 of the design, and the published examples of largest remainder."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.words.money import apportion, split

amounts = st.integers(0, 10**12)
# Whole cents on some receipts, parts of a cent on others (a discount of a third).
weights = st.one_of(
    st.lists(st.integers(0, 10**9), min_size=1, max_size=9),
    st.lists(st.integers(0, 10**7).map(lambda number: Fraction(number, 30)), min_size=1, max_size=5),
)
rates = st.fractions(0, 1, max_denominator=10**6)


class TestSplit:
    """A line's parts are split two ways at a time, half a cent to the part that stays with the build."""

    @given(amount=st.integers(-(10**12), 10**12), stays=rates)
    def test_it_never_loses_a_cent(self, amount: int, stays: Fraction) -> None:
        """Both parts add up, and neither is off by more than half a cent."""
        kept, rest = split(amount, stays)
        assert kept + rest == amount
        assert abs(kept - amount * stays) <= Fraction(1, 2)

    @given(half=st.integers(0, 10**9))
    def test_half_a_cent_stays(self, half: int) -> None:
        """An odd amount in two: the larger half stays, on the way back too."""
        amount = 2 * half + 1
        assert split(amount, Fraction(1, 2)) == (half + 1, half)
        assert split(-amount, Fraction(1, 2)) == (-half - 1, -half)

    @given(amount=amounts)
    def test_all_and_nothing_are_exact(self, amount: int) -> None:
        """Nothing is left over of the whole."""
        assert split(amount, Fraction(1)) == (amount, 0)
        assert split(amount, Fraction(0)) == (0, amount)

    def test_a_float_never_gets_in(self) -> None:
        """Neither as the amount nor as the rate."""
        for amount, stays in ((4975.0, Fraction(1, 4)), (4975, 0.25), (4975.0, Fraction(1)), (4975, 1.0)):
            with pytest.raises(TypeError, match=r"^money is divided by whole numbers and fractions, not "):
                split(amount, stays)  # type: ignore[arg-type]


class TestApportion:
    """Tax, delivery and discounts over a receipt's lines: largest remainder, ties to the earlier line."""

    @given(amount=st.integers(-(10**12), 10**12), over=weights)
    def test_the_parts_add_up(self, amount: int, over: Sequence[int | Fraction]) -> None:
        """To the cent, for negative amounts too."""
        assert sum(apportion(amount, over)) == amount

    @given(amount=amounts, over=weights.filter(any))
    def test_each_part_is_its_quota_rounded_down_or_up(self, amount: int, over: Sequence[int | Fraction]) -> None:
        """The quota rule (OpenStax Contemporary Mathematics, chapter 11, on Hamilton's method)."""
        for part, weight in zip(apportion(amount, over), over, strict=True):
            assert abs(part - Fraction(amount * weight) / sum(over)) < 1

    @given(amount=amounts, over=weights.filter(any))
    def test_a_larger_remainder_never_goes_without(self, amount: int, over: Sequence[int | Fraction]) -> None:
        """The cents left over go to the largest remainders; among equals, to the earlier line."""
        quotas = [Fraction(amount * weight) / sum(over) for weight in over]
        rounded_up = [part > quota // 1 for part, quota in zip(apportion(amount, over), quotas, strict=True)]
        ranked = sorted(range(len(over)), key=lambda at: (-(quotas[at] % 1), at))
        assert all(rounded_up[first] or not rounded_up[then] for first, then in pairwise(ranked))

    @given(amount=st.integers(-(10**6), 10**6), count=st.integers(1, 9), weight=st.sampled_from([0, 1, 7]))
    def test_equal_weights_get_equal_parts_the_first_ones_a_cent_more(
        self, amount: int, count: int, weight: int
    ) -> None:
        """Also when all weights are nothing (a receipt of gifts with a delivery)."""
        each, over = divmod(abs(amount), count)
        sign = 1 if amount >= 0 else -1
        wanted = [sign * (each + (at < over)) for at in range(count)]
        assert apportion(amount, [weight] * count) == wanted

    @given(amount=amounts, over=weights)
    def test_a_negative_amount_is_the_mirror_of_a_positive_one(
        self, amount: int, over: Sequence[int | Fraction]
    ) -> None:
        """A refund takes from each line what the charge put there."""
        assert apportion(-amount, over) == [-part for part in apportion(amount, over)]

    @given(amount=amounts, over=weights.filter(any))
    def test_a_line_of_nothing_gets_nothing(self, amount: int, over: Sequence[int | Fraction]) -> None:
        """No tax falls on what cost nothing."""
        parts = apportion(amount, over)
        assert all(part == 0 for part, weight in zip(parts, over, strict=True) if not weight)

    @given(amount=amounts, over=weights, by=st.fractions(Fraction(1, 1000), 1000))
    def test_only_the_proportions_of_the_weights_matter(
        self, amount: int, over: Sequence[int | Fraction], by: Fraction
    ) -> None:
        """Weights in cents or in dollars, the parts are the same."""
        assert apportion(amount, over) == apportion(amount, [weight * by for weight in over])

    def test_nothing_over_nothing_is_nothing(self) -> None:
        """And something over nothing is a mistake of the caller, not a loss."""
        assert apportion(0, []) == []
        with pytest.raises(ValueError, match=r"^there is nothing to divide the amount over"):
            apportion(5, [])

    def test_a_float_never_gets_in(self) -> None:
        """Neither as the amount nor as one weight of many."""
        for amount, over in ((5.0, [1]), (5, [1, 0.5]), (5, [float("nan")])):
            with pytest.raises(TypeError, match="not"):
                apportion(amount, over)  # type: ignore[arg-type]

    def test_a_negative_weight_is_refused(self) -> None:
        """It would give one line more than there is."""
        with pytest.raises(ValueError, match=r"^a weight is below zero"):
            apportion(100, [2, -1])

    def test_an_amount_beyond_the_digits_of_a_float_is_divided_to_the_last_unit(self) -> None:
        """A float has 53 bits: it would lose the 501."""
        assert apportion(10**18 + 501, [1, 1]) == [5 * 10**17 + 251, 5 * 10**17 + 250]


class TestPublishedExamples:
    """Worked examples of the method from outside."""

    def test_school_teachers_of_hawaii(self) -> None:
        """OpenStax Contemporary Mathematics, chapter 11: 616 over five counties.

        The book's answer is 87, 424, 1, 31, 73, as its own version of the method gives every county at least
        one. Money has no such rule, so the third county, with a quota of 0.04, gets nothing and the first gets
        the unit (88, 424, 0, 31, 73: worked out here from the book's quotas 87.62, 424.26, 0.04, 31.33, 72.75).
        """
        residents = [46310, 224230, 20, 16560, 38450]
        quotas = [round(616 * people / sum(residents), 2) for people in residents]
        assert quotas == [87.62, 424.26, 0.04, 31.33, 72.75]
        assert apportion(616, residents) == [88, 424, 0, 31, 73]

    def test_the_alabama_paradox(self) -> None:
        """OpenStax Contemporary Mathematics, chapter 11: populations 6, 6, 2.

        With 10 seats 4, 4, 2; with 11 seats 5, 5, 1. So one line's tax may fall by a cent when the tax rises
        by a cent, and no test here says otherwise.
        """
        assert apportion(10, [6, 6, 2]) == [4, 4, 2]
        assert apportion(11, [6, 6, 2]) == [5, 5, 1]

    def test_seven_seats_over_four(self) -> None:
        """The page "largest remainder" of Infinite Lexicon gives 50, 30, 20 and 7 seats; worked out: 4, 2, 1."""
        assert apportion(7, [50, 30, 20]) == [4, 2, 1]

    @pytest.mark.parametrize(
        ("cost", "over", "parts"),
        [
            (3600000, [25, 75], [900000, 2700000]),
            (6600000, [44, 66], [2640000, 3960000]),
            (4000000, [42000, 4000], [3652174, 347826]),
        ],
    )
    def test_joint_cost_by_physical_measure(self, cost: int, over: list[int], parts: list[int]) -> None:
        """OpenStax Principles of Managerial Accounting, chapter 10: inputs from the book, in cents.

        The book prints no answers to these; they are worked out here (36,521.74 and 3,478.26 add up to 40,000).
        """
        assert apportion(cost, over) == parts
