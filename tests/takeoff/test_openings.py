"""Windows in walls: the most glass, against every layout, and where each window stands."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.journal.records.takeoff_entry import SizedFind
from builder.takeoff.records import Takeoff, WallLayout
from tests.takeoff.writing import Written, number, result, worked


def layout_of(takeoff: Takeoff) -> WallLayout:
    """The layout, which must be there."""
    assert isinstance(takeoff.drawing, WallLayout)
    return takeoff.drawing


def test_posts_stand_between_and_beside() -> None:
    """Three of 30 in with four posts of 6 in need 114 in: 9 ft 6 in hold them, an inch less does not."""
    units: Written = {"width": "30 in", "count": "3"}
    fits = worked("openings", walls={"clear_length": "9 ft 6 in"}, units=units, post="6 in")
    short = worked("openings", walls={"clear_length": "9 ft 5 in"}, units=units, post="6 in")
    assert (number(fits, "placed"), number(fits, "left_over")) == (3, 0)
    assert (number(short, "placed"), number(short, "left_over")) == (2, 1)
    assert fits.proven is short.proven is True


def test_the_room_that_is_left_is_shared_between_the_posts() -> None:
    """Two of 30 in in 9 ft: 48 in for three posts, 16 in each."""
    walls = layout_of(
        worked("openings", walls={"clear_length": "9 ft"}, units={"width": "30 in", "count": "2"}, post="6 in")
    ).walls
    assert walls[0].post is not None
    assert walls[0].post.in_unit("in") == 16
    assert [unit.at.in_unit("in") for unit in walls[0].units] == [16, 62]


def test_more_glass_beats_more_windows() -> None:
    """One of 60 x 60 in has more glass than two of 24 x 36, and only one of these ways fits."""
    takeoff = worked(
        "openings",
        walls={"clear_length": "72 in"},
        units=[{"width": "24 in", "height": "36 in", "count": "2"}, {"width": "60 in", "height": "60 in"}],
        post="6 in",
    )
    assert result(takeoff, "glass", "ft2") == 25
    assert number(takeoff, "placed") == 1
    left = layout_of(takeoff).left
    assert [(str(unit.width), unit.count) for unit in left] == [("24 in", 2)]


def test_without_heights_the_widths_count() -> None:
    """One height missing, and glass is measured along the wall."""
    takeoff = worked(
        "openings",
        walls={"clear_length": "10 ft"},
        units=[{"width": "24 in", "height": "36 in"}, {"width": "40 in"}],
        post="4 in",
    )
    assert result(takeoff, "glass", "in") == 64
    assert all(unit.height is None for wall in layout_of(takeoff).walls for unit in wall.units)


def test_salvaged_windows_come_from_the_line_items() -> None:
    """Their sizes are in metres in the records, and in inches in a US journal; each keeps its line item."""
    finds = [
        SizedFind(line="sash", what="Window", width=Fraction("0.6096"), height=Fraction("1.2192"), count=2),
        SizedFind(line="wide", what="Wide window", width=Fraction("3.048"), height=Fraction("1.2192"), count=1),
    ]
    takeoff = worked("openings", walls={"clear_length": "6 ft"}, units="salvaged", post="4 in", finds=finds)
    layout = layout_of(takeoff)
    assert [(unit.what, unit.line, str(unit.width), str(unit.height)) for unit in layout.walls[0].units] == [
        ("Window", "sash", "24 in", "48 in"),
        ("Window", "sash", "24 in", "48 in"),
    ]
    assert [(unit.line, unit.count) for unit in layout.left] == [("wide", 1)]


def test_windows_that_are_only_listed_have_no_name_and_no_line() -> None:
    """Neither the one that has a place nor the one that has none."""
    units: Written = {"width": "24 in", "height": "36 in", "count": "2"}
    layout = layout_of(worked("openings", walls={"clear_length": "4 ft"}, units=units, post="4 in"))
    found = [*layout.walls[0].units, *layout.left]
    assert [(unit.what, unit.line) for unit in found] == [("", ""), ("", "")]


def test_a_wall_nothing_fits_into_stays_bare() -> None:
    """And has no post to show."""
    takeoff = worked("openings", walls={"clear_length": "3 ft"}, units={"width": "40 in"}, post="6 in")
    wall = layout_of(takeoff).walls[0]
    assert (wall.units, wall.post) == ((), None)
    assert number(takeoff, "placed") == 0
    assert takeoff.proven is True


def test_equal_walls_are_filled_in_the_order_written() -> None:
    """Two walls of one length, the first written in inches; every wall keeps its own words."""
    takeoff = worked(
        "openings",
        walls=[{"clear_length": "72 in"}, {"clear_length": "20 ft"}, {"clear_length": "6 ft"}],
        units={"width": "5 ft", "count": "2"},
        post="6 in",
    )
    assert [str(wall.clear_length) for wall in layout_of(takeoff).walls] == ["72 in", "20 ft", "6 ft"]
    assert number(takeoff, "placed") == 2


def most_glass(walls: list[int], units: list[tuple[int, int]], post: int) -> int:
    """The most glass of all ways to put each unit into some wall or none."""
    best = 0
    for choice in product(range(len(walls) + 1), repeat=len(units)):
        used = [post] * len(walls)
        for (width, _), wall in zip(units, choice, strict=True):
            if wall:
                used[wall - 1] += width + post
        if all(length <= wall for length, wall in zip(used, walls, strict=True)):
            best = max(best, sum(w * h for (w, h), wall in zip(units, choice, strict=True) if wall))
    return best


@settings(max_examples=60)
@given(
    st.lists(st.integers(30, 120), min_size=1, max_size=3),
    st.lists(st.tuples(st.integers(8, 60), st.integers(10, 70)), min_size=1, max_size=6),
    st.integers(1, 10),
)
def test_no_layout_has_more_glass(walls: list[int], units: list[tuple[int, int]], post: int) -> None:
    """Against every way to do it; and what is placed fits with posts no thinner than asked."""
    takeoff = worked(
        "openings",
        walls=[{"clear_length": f"{length} in"} for length in walls],
        units=[{"width": f"{width} in", "height": f"{height} in"} for width, height in units],
        post=f"{post} in",
    )
    assert takeoff.proven is True
    assert result(takeoff, "glass", "in2") == most_glass(walls, units, post)
    placed = 0
    for wall in layout_of(takeoff).walls:
        end = Fraction(0)
        for unit in wall.units:
            assert unit.at.in_unit("in") - end >= post
            end = unit.at.in_unit("in") + unit.width.in_unit("in")
            placed += 1
        assert not wall.units or wall.clear_length.in_unit("in") - end >= post
    assert placed == number(takeoff, "placed") == len(units) - number(takeoff, "left_over")


def test_a_search_that_stopped_early_gives_its_bound() -> None:
    """Sixty odd sizes in eight odd walls: not proven, and the glass that no layout can go beyond is close."""
    units: Written = [
        {"width": f"{20 + at * 13 % 41} {at % 4}/4 in", "height": f"{30 + at * 17 % 37} in"} for at in range(60)
    ]
    walls: Written = [{"clear_length": f"{96 + at * 7 % 60} in"} for at in range(8)]
    takeoff = worked("openings", walls=walls, units=units, post="4 1/2 in")
    assert takeoff.proven is False
    assert takeoff.bound is not None
    assert takeoff.bound.key == "glass"
    glass = number(takeoff, "glass")
    assert glass < takeoff.bound.quantity.value < glass * Fraction(101, 100)
    assert str(takeoff.steps[-1].note) == (
        f"the search stopped early; no layout can have more than {takeoff.bound.quantity}"
    )


def test_thirty_windows_in_five_walls() -> None:
    """A whole house of odd sizes is proven: every wall is full to an inch or two."""
    units: Written = [
        {"width": f"{20 + at * 7 % 31} in", "height": f"{30 + at * 11 % 29} in", "count": str(1 + at % 2)}
        for at in range(20)
    ]
    walls: Written = [{"clear_length": f"{feet} ft"} for feet in (14, 14, 10, 10, 8)]
    takeoff = worked("openings", walls=walls, units=units, post="4 1/2 in")
    assert takeoff.proven is True
    assert takeoff.bound is None
    assert number(takeoff, "placed") == 16
