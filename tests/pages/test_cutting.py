"""The cutting plan: boards with their pieces, to take to the saw."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from builder.pages.cutting import Board, Cutting, Piece, draw_cutting
from tests.pages.shapes import at, shape, shapes, texts


def board(length: int, *pieces: int | Fraction, mark: str = "", offcut: str = "offcut") -> Board:
    """A board with pieces named after their length."""
    cut = tuple(Piece(length=piece, label=f"{piece} in", mark=mark) for piece in pieces)
    return Board(length=length, label=f"Board of {length} in", pieces=cut, offcut_label=offcut)


def drawn(*boards: Board, kerf: Fraction | int = 0) -> str:
    """The cutting plan of some boards."""
    return draw_cutting(Cutting(key="cut", title="Cut", description="Boards.", boards=boards, kerf=kerf))


def test_boards_are_to_one_scale() -> None:
    """A board of 72 in is drawn half as long as one of 144 in."""
    long, short = (at(one, "width")[0] for one in shapes(drawn(board(144, 40), board(72, 40)), "board"))
    assert long == 2 * short


def test_a_cut_is_after_each_piece() -> None:
    """Kerf falls between pieces: the second cut of 40 and 40 is at 80 and one kerf."""
    drawing = drawn(board(120, 40, 40), kerf=Fraction(3))
    left, width = at(shape(drawing, "board"), "x", "width")
    places = [(at(cut, "x1")[0] - left) * 120 / width for cut in shapes(drawing, "cut")]
    assert [round(place, 1) for place in places] == [40, 83]


@given(st.lists(st.integers(1, 60), min_size=1, max_size=20))
def test_pieces_and_offcut_are_the_whole_board(pieces: list[int]) -> None:
    """The offcut begins where the last piece and its kerf end, and ends with the board."""
    length = sum(pieces) + len(pieces) + 7
    drawing = drawn(board(length, *pieces), kerf=1)
    left, width = at(shape(drawing, "board"), "x", "width")
    start, room = at(shape(drawing, "offcut"), "x", "width")
    assert abs(start + room - left - width) < Fraction(1, 20)
    assert abs(room * length - 7 * width) < Fraction(length, 50)


def test_a_board_used_up_has_no_offcut() -> None:
    """And no cut at its own end."""
    drawing = drawn(board(80, 40, 40))
    assert shapes(drawing, "offcut") == []
    assert len(shapes(drawing, "cut")) == 1
    assert "offcut" not in texts(drawing)


def test_a_piece_too_short_for_its_length_says_its_mark() -> None:
    """The length then stands below, once for a run of equal pieces."""
    drawing = drawn(board(144, 12, 12, 12, mark="A"))
    assert texts(drawing).count("A") == 3
    assert texts(drawing).count("A 12 in") == 1


def test_every_length_is_on_the_drawing() -> None:
    """Thirty different pieces, however short: each is said somewhere."""
    lengths = [Fraction(n, 2) for n in range(2, 17)]
    said = " ".join(texts(drawn(board(144, *lengths, mark="A"))))
    assert all(f"{length} in" in said for length in lengths)


def test_words_below_a_board_never_overlap() -> None:
    """They go to as many rows as it takes, and the next board keeps clear of them."""
    one = board(144, *range(3, 12), mark="", offcut="offcut of so many inches")
    drawing = drawn(one, one)
    rows: dict[Fraction, list[tuple[Fraction, Fraction]]] = {}
    for text in shapes(drawing, "below"):
        (x, y), half = at(text, "x", "y"), Fraction(len(text.text or "") * 8, 2)
        shift = {"start": 0, "middle": half, "end": 2 * half}[text.get("text-anchor") or "start"]
        rows.setdefault(y, []).append((x - shift, x - shift + 2 * half))
    for spans in rows.values():
        spans.sort()
        assert all(first[1] <= second[0] for first, second in pairwise(spans))
    assert len(rows) > 2
    second_board = at(shapes(drawing, "board")[1], "y")[0]
    assert sum(y < second_board for y in rows) == sum(y > second_board for y in rows)


def test_a_board_without_pieces_is_all_offcut() -> None:
    """A board bought and not cut."""
    drawing = drawn(board(96))
    assert at(shape(drawing, "offcut"), "x", "width") == at(shape(drawing, "board"), "x", "width")
