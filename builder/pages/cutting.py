"""The cutting plan: boards with the pieces to cut from them, to print and take to the saw."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from builder.pages.svg import (
    PAGE,
    WORDS,
    Length,
    Svg,
    box,
    breadth,
    drawing,
    element,
    group,
    line,
    painted_with,
    pattern,
    span_about,
    stacked,
    words,
    words_about,
    wrapped,
)

_LEFT = 4
_ROOM = PAGE - 8
_BOARD = 28
_LINE = WORDS + 3

_Along = tuple[Length, Length]
_Note = tuple[Fraction, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece to cut.  ``label`` is its length in words; ``mark`` a letter for it, if it has one."""

    length: Length
    label: str
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board, or several cut alike, with its pieces in the order they are cut.

    Lengths of all boards, pieces and the kerf are in one unit, whichever it is.
    """

    length: Length
    label: str
    pieces: tuple[Piece, ...]
    offcut_label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """What the drawing shows: one bar a board, all to one scale."""

    key: str
    title: str
    description: str
    boards: tuple[Board, ...]
    kerf: Length = 0


def draw_cutting(cutting: Cutting) -> Svg:
    """The cutting plan as SVG."""
    longest = max((board.length for board in cutting.boards), default=1)
    rows: list[Svg] = []
    y = 0
    for board in cutting.boards:
        row, height = _board(cutting, board, Fraction(_ROOM) / longest, y)
        rows.append(row)
        y += height
    return drawing(
        cutting.key,
        "cutting",
        (PAGE, max(y, 1)),
        cutting.title,
        cutting.description,
        element("defs", None, pattern(cutting.key, "hatch")),
        *rows,
    )


def _board(cutting: Cutting, board: Board, scale: Fraction, y: int) -> tuple[Svg, int]:
    lines = wrapped(board.label, _ROOM)
    names = (words(_LEFT, y + WORDS + row * _LINE, text) for row, text in enumerate(lines))
    top = y + _LINE * len(lines) + 5
    wood = box("board", _LEFT, top, board.length * scale, _BOARD)
    spans = _spans(board.pieces, cutting.kerf)
    free = spans[-1][1] + cutting.kerf if spans else 0
    cuts = (_cut(end, board, scale, top) for _, end in spans)
    offcut = _offcut(cutting.key, (free, board.length), scale, top)
    below = [*_outside(board.pieces, spans, scale), *_offcut_label(board, free, scale)]
    under, height = _under(below, top + _BOARD)
    inside = _inside(board.pieces, spans, scale, top)
    return group(None, *names, wood, offcut, *cuts, *inside, under), top + _BOARD + height + 12 - y


def _spans(pieces: Sequence[Piece], kerf: Length) -> list[_Along]:
    """From where to where each piece lies on its board, a kerf between one and the next."""
    spans: list[_Along] = []
    for piece in pieces:
        start = spans[-1][1] + kerf if spans else 0
        spans.append((start, start + piece.length))
    return spans


def _cut(end: Length, board: Board, scale: Fraction, top: int) -> Svg:
    place = _LEFT + end * scale
    return line("cut", place, top - 3, place, top + _BOARD + 3) if end < board.length else Svg("")


def _offcut(key: str, along: _Along, scale: Fraction, top: int) -> Svg:
    start, end = along
    if start >= end:
        return Svg("")
    size = ((end - start) * scale, _BOARD)
    return box("offcut", _LEFT + start * scale, top, *size, fill=painted_with(key, "hatch"))


def _middle(along: _Along, scale: Fraction) -> Fraction:
    return _LEFT + Fraction(along[0] + along[1]) * scale / 2


def _inside(pieces: Sequence[Piece], spans: Sequence[_Along], scale: Fraction, top: int) -> Iterator[Svg]:
    for piece, along in zip(pieces, spans, strict=True):
        if text := _fitting(piece, along, scale):
            yield words(_middle(along, scale), top + 19, text, "piece", "middle")


def _outside(pieces: Sequence[Piece], spans: Sequence[_Along], scale: Fraction) -> Iterator[_Note]:
    """What could not be said inside: said once under each run of equal pieces."""
    for piece, run in groupby(zip(pieces, spans, strict=True), key=lambda placed: placed[0]):
        along = [placed[1] for placed in run]
        if _fitting(piece, along[0], scale) != _full(piece):
            yield _middle((along[0][0], along[-1][1]), scale), _full(piece)


def _offcut_label(board: Board, free: Length, scale: Fraction) -> Iterator[_Note]:
    if board.offcut_label and free < board.length:
        yield _middle((free, board.length), scale), board.offcut_label


def _full(piece: Piece) -> str:
    return f"{piece.mark} {piece.label}".strip()


def _fitting(piece: Piece, along: _Along, scale: Fraction) -> str:
    """The most that can be said inside a piece: mark and length, or the mark, or nothing."""
    room = (along[1] - along[0]) * scale - 6
    return next((text for text in (_full(piece), piece.mark) if text and breadth(text) <= room), "")


def _under(notes: Sequence[_Note], foot: int) -> tuple[Svg, int]:
    """Words under the board, in as many rows as it takes, and the height of those rows."""
    spans = (span_about(middle, text) for middle, text in notes)
    rows = stacked((start, end + 8) for start, end in spans)
    pieces = (_note(note, (foot, foot + 4 + (row + 1) * _LINE)) for note, row in zip(notes, rows, strict=True))
    return group(None, *pieces), 4 + _LINE * (max(rows, default=-1) + 1)


def _note(note: _Note, levels: tuple[int, int]) -> Svg:
    middle, text = note
    foot, base = levels
    leader = line("leader", middle, foot - 4, middle, base - WORDS + 2)
    return group(None, leader, words_about(middle, base, text, "below"))
