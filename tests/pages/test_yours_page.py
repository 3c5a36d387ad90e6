"""What yours would cost, as its page says it."""

from __future__ import annotations

from pathlib import Path

from builder.pages.yours import yours_page
from tests.pages.weekend import weekend

BEAM = "{material: Beam, source: salvaged}"
DOOR = "{material: Door, source: salvaged, replacement_cost: 90}"
NAILS = "{material: Nails, cost: 12}"


class TestUnknowns:
    """What nobody knows makes those answers "at least" that rest on it, and is told below them."""

    def test_what_could_not_be_valued_leaves_what_i_paid_exact(self, tmp_path: Path) -> None:
        """12 paid; half of 90 is 45, all of it 90, and the beam would cost something too."""
        page = yours_page(weekend(tmp_path, BEAM, DOOR, NAILS))
        assert [answer.value for answer in page.answers] == ["$12.00", "at least $57.00", "at least $102.00"]
        assert page.first == "$12.00"

    def test_a_known_part_is_in_the_figures(self, tmp_path: Path) -> None:
        """150 of a load whose price nobody knows."""
        page = yours_page(weekend(tmp_path, "{material: Stone, cost: unknown, share: 150}", NAILS))
        assert page.answers[0].value == "at least $162.00"
        assert page.unpriced == "1 line has no price: only what is known of it is in these figures."

    def test_several(self, tmp_path: Path) -> None:
        """In the plural."""
        page = yours_page(weekend(tmp_path, *["{material: Stone, cost: unknown}"] * 2, NAILS))
        assert page.unpriced == "2 lines have no price: only what is known of them is in these figures."


class TestWhatFindingNothingWouldAdd:
    """The difference of each source, in words and never with a bare sign."""

    def says(self, folder: Path, *lines: str) -> list[str]:
        """What stands at each source."""
        return [luck.says for luck in yours_page(weekend(folder, *lines)).luck]

    def test_more(self, tmp_path: Path) -> None:
        """90 for the door."""
        assert self.says(tmp_path, DOOR) == ["salvaged: $90.00 more when it has to be bought"]

    def test_at_least(self, tmp_path: Path) -> None:
        """And something for the beam."""
        assert self.says(tmp_path, DOOR, BEAM) == ["salvaged: at least $90.00 more when it has to be bought"]

    def test_less(self, tmp_path: Path) -> None:
        """A new hinge at 3 would have been cheaper than the old one at 8."""
        hinge = "{material: Hinge, source: secondhand, cost: 8, replacement_cost: 3}"
        assert self.says(tmp_path, hinge) == ["secondhand: $5.00 less when it is bought new"]

    def test_unknown(self, tmp_path: Path) -> None:
        """What was paid for it is lost."""
        hinge = "{material: Hinge, source: secondhand, cost: unknown, replacement_cost: 3}"
        assert self.says(tmp_path, hinge) == ["secondhand: nobody knows how much more when it has to be bought"]
