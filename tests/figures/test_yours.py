"""What the same build would cost somebody else."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.figures.figure import Bound
from builder.figures.yours import (
    Choice,
    YoursLine,
    all_new,
    as_i_did,
    bound_of_yours,
    half_luck,
    unknowns,
    yours,
    yours_lines,
)
from builder.journal.records.item import Source
from tests.pages.weekend import weekend

amounts = st.integers(0, 10**7)


@st.composite
def lines(draw: st.DrawFn) -> YoursLine:
    """Any line that brought something; machines have a name."""
    source = draw(st.sampled_from([Source.BOUGHT, Source.SALVAGED, Source.GIFT, Source.OWNED, Source.HIRED]))
    spent = draw(amounts)
    machine = draw(st.sampled_from(["saw", "mixer"])) if source in (Source.OWNED, Source.HIRED) else None
    return YoursLine(
        source=source,
        machine=machine,
        spent=spent,
        gap=draw(st.integers(-1000, 10**6)),
        reusable=draw(st.integers(0, spent)),
        with_own=None if machine is None else draw(st.integers(0, spent)),
        scales=machine is None,
    )


@given(st.lists(lines(), max_size=8))
def test_with_everything_new_each_line_is_at_its_replacement_cost(found: list[YoursLine]) -> None:
    """Spent and the whole gap, for every line."""
    assert yours(found, all_new(found), Fraction(0)) == sum(line.spent + line.gap for line in found)


@given(st.lists(lines().filter(lambda line: line.machine is None), max_size=8))
def test_as_i_did_it_is_what_was_spent(found: list[YoursLine]) -> None:
    """The same luck and the same prices."""
    assert yours(found, as_i_did(found), Fraction(0)) == sum(line.spent for line in found)


@given(amounts, st.integers(0, 10**6))
def test_half_the_luck_is_half_the_gap_rounded_once(spent: int, gap: int) -> None:
    """Half a cent goes up."""
    line = YoursLine(source=Source.SALVAGED, machine=None, spent=spent, gap=gap, reusable=0, with_own=None, scales=True)
    assert yours([line], half_luck([line]), Fraction(0)) == spent + (gap + 1) // 2


def test_hours_are_worth_what_the_reader_says() -> None:
    """13.5 hours at 18.01 are 243.14 (243.135 rounded half up)."""
    assert yours([], Choice(hour=1801), Fraction(27, 2)) == 24314


def test_price_and_size_are_rounded_once() -> None:
    """0.33 at 150 % of the size and 150 % of the price is 0.74 (0.7425), not 0.75 by rounding twice."""
    line = YoursLine(source=Source.BOUGHT, machine=None, spent=33, gap=0, reusable=0, with_own=None, scales=True)
    assert yours([line], Choice(size=150, price=150), Fraction(0)) == 74


LEAST, EXACT = Bound.AT_LEAST, Bound.EXACT


class TestWhatAnAnswerRestsOn:
    """An answer is "at least" where something it counts is not known, and only there."""

    @pytest.mark.parametrize(
        ("line", "same", "half", "new"),
        [
            ("{material: Sand, cost: unknown}", LEAST, LEAST, LEAST),
            ("{material: Beam, source: salvaged}", EXACT, LEAST, LEAST),
            ("{material: Beam, source: salvaged, replacement_cost: 90}", EXACT, EXACT, EXACT),
            ("{material: Door, source: secondhand, cost: unknown, replacement_cost: 90}", LEAST, LEAST, EXACT),
            ("{equipment: Saw, source: borrowed}", EXACT, LEAST, LEAST),
            ("{equipment: Saw, source: borrowed, fuel: 4}", EXACT, LEAST, LEAST),
            ("{labour: June, quantity: 4 hour}", EXACT, EXACT, EXACT),
        ],
    )
    def test_each_answer_by_itself(self, tmp_path: Path, line: str, same: Bound, half: Bound, new: Bound) -> None:
        """As I did it rests on what I paid, everything new on what things cost new, half the luck on both."""
        account = weekend(tmp_path, line).account
        lines = yours_lines(account)
        unknown = unknowns(account, lines)
        choices = as_i_did(lines), half_luck(lines), all_new(lines)
        assert [bound_of_yours(unknown, choice) for choice in choices] == [same, half, new]

    def test_a_machine_that_is_hired_instead_has_to_be_worth_something(self, tmp_path: Path) -> None:
        """Who has no saw hires one, and nobody knows for how much."""
        account = weekend(tmp_path, "{equipment: Saw, source: borrowed, fuel: 4}").account
        assert bound_of_yours(unknowns(account, yours_lines(account)), Choice()) is LEAST


def test_a_machine_hired_beside_the_own_one_was_paid_for(tmp_path: Path) -> None:
    """As I did it is what was spent: 62 for the second mixer, and 4 of fuel in my own."""
    own, hired = "{equipment: Mixer, source: borrowed, fuel: 4}", "{equipment: Mixer, source: hired, cost: 62}"
    lines = yours_lines(weekend(tmp_path, own, hired).account)
    assert yours(lines, as_i_did(lines), Fraction(0)) == 6600
