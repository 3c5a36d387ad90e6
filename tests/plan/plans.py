"""Plans for the tests of the schedule: written in a line each, or drawn by hypothesis."""

from __future__ import annotations

import datetime
from fractions import Fraction

from hypothesis import strategies as st

from builder.plan.remaining import PhaseWork
from builder.plan.threepoint import ThreePoint
from builder.plan.worktime import WorkWeek, work_week
from builder.words.span import Span

SUNDAY = datetime.date(2026, 3, 1)
WEEKEND = work_week({5: Fraction(7), 6: Fraction(5)})


def day(month: int, number: int) -> datetime.date:
    """A day of 2026, whose 1 March is a Sunday."""
    return datetime.date(2026, month, number)


def phase(
    key: str,
    hours: int | tuple[int, int, int] | None,
    after: str = "",
    wait: int | Fraction = 0,
    **told: Fraction | datetime.date | None,
) -> PhaseWork:
    """A phase; one number of hours is a certain one, `after` names phases with blanks between."""
    three = (hours, hours, hours) if isinstance(hours, int) else hours
    low_to_high = (
        None
        if three is None
        else ThreePoint(low=Fraction(three[0]), likely=Fraction(three[1]), high=Fraction(three[2]))
    )
    return PhaseWork(key=key, hours=low_to_high, after=tuple(after.split()), wait=Fraction(wait), **told)  # type: ignore[arg-type]


# An observatory with a roof that rolls off: eight phases, waits for concrete and for an inspection.
OBSERVATORY = [
    phase("ground", (8, 12, 20)),
    phase("footing", (16, 21, 40), "ground", 7),
    phase("walls", (20, 30, 50), "footing", 3),
    phase("floor", (8, 10, 16), "footing"),
    phase("rails", (10, 14, 24), "walls"),
    phase("roof", (20, 28, 50), "walls rails"),
    phase("power", (6, 9, 20), "ground", 14),
    phase("finish", (10, 15, 30), "roof power floor"),
]

waits = st.sampled_from([0, 0, 0, 1, 3, 7, 8, 21])
certain_hours = st.integers(0, 14)
estimates = st.lists(st.integers(0, 40), min_size=3, max_size=3).map(lambda three: tuple(sorted(three)))


@st.composite
def plans(
    draw: st.DrawFn, hours: st.SearchStrategy[int] | st.SearchStrategy[tuple[int, ...]], most: int = 6
) -> list[PhaseWork]:
    """Up to `most` phases, each after some of those before it, some with waits."""
    count = draw(st.integers(1, most))
    afters = [draw(st.sets(st.integers(0, place - 1), max_size=2)) if place else set() for place in range(count)]
    return [
        phase(f"p{place}", draw(hours), " ".join(f"p{one}" for one in sorted(after)), draw(waits))  # type: ignore[arg-type]
        for place, after in enumerate(afters)
    ]


@st.composite
def weeks(draw: st.DrawFn) -> WorkWeek:
    """Hours on some days, and sometimes a holiday."""
    hours = draw(st.dictionaries(st.integers(0, 6), st.integers(1, 8).map(Fraction), min_size=1, max_size=3))
    start = draw(st.none() | st.integers(1, 30))
    if start is None:
        return work_week(hours)
    first = SUNDAY + datetime.timedelta(days=start)
    return work_week(hours, (Span(first=first, last=first + datetime.timedelta(days=draw(st.integers(0, 20)))),))
