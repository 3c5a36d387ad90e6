"""What the same build would cost somebody else."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from builder.figures.yours import Choice, YoursLine, all_new, as_i_did, half_luck, yours
from builder.journal.records.item import Source

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
