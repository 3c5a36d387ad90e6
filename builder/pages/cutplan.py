"""The drawing of a take-off that has one: a cutting plan to take to the saw, or a wall with its openings."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from builder.pages.cutting import Board, Cutting, Piece, draw_cutting
from builder.pages.wall import Opening, Wall, draw_wall
from builder.pages.wording import Words
from builder.takeoff.records import CutBoard, CutPlan, Takeoff, WallLayout
from builder.takeoff.records import Wall as LaidOut
from builder.words.quantity import Quantity

MOST_BOARDS = 40


def drawing_of(takeoff: Takeoff, words: Words) -> str:
    """The SVG, "" where there is nothing to draw."""
    if isinstance(takeoff.drawing, CutPlan):
        return _cutting(takeoff.name, takeoff.drawing, words) if takeoff.drawing.boards else ""
    if isinstance(takeoff.drawing, WallLayout):
        return "".join(
            _wall(f"{takeoff.name}-{number}", wall, words)
            for number, wall in enumerate(takeoff.drawing.walls, 1)
            if wall.units
        )
    return ""


def _cutting(name: str, plan: CutPlan, words: Words) -> str:
    boards = plan.boards[:MOST_BOARDS]
    told = [_says(board, words) for board in boards]
    return draw_cutting(
        Cutting(
            key=f"cut-{name}",
            title=words.say("How to cut the boards"),
            description=f"{words.say(';')} ".join(told),
            boards=tuple(_board(board, words) for board in boards),
            kerf=_metres(plan.kerf),
        )
    )


def _metres(length: Quantity) -> Fraction:
    return length.in_unit("m")


def _says(board: CutBoard, words: Words) -> str:
    pieces = [f"{words.whole(piece.count)} × {words.quantity(piece.length)}" for piece in board.pieces]
    return words.count(
        board.count,
        "{n} board of {length}: {pieces}",
        "{n} boards of {length}: {pieces}",
        length=words.quantity(board.stock),
        pieces=words.listing(pieces),
    )


def _board(board: CutBoard, words: Words) -> Board:
    pieces = [piece.length for piece in board.pieces for _ in range(piece.count)]
    return Board(
        length=_metres(board.stock),
        label=f"{words.whole(board.count)} × {words.quantity(board.stock)}",
        pieces=tuple(Piece(length=_metres(length), label=words.quantity(length)) for length in pieces),
        offcut_label=words.quantity(board.offcut) if board.offcut.value else "",
    )


def _wall(key: str, wall: LaidOut, words: Words) -> str:
    counts = Counter(words.quantity(unit.width) for unit in wall.units)
    placed = [f"{words.whole(count)} × {width}" for width, count in counts.items()]
    length = words.quantity(wall.clear_length)
    return draw_wall(
        Wall(
            key=f"wall-{key}",
            title=words.say("What goes into the wall"),
            description=words.say("A wall of {length} takes {units}.", length=length, units=words.listing(placed)),
            length=_metres(wall.clear_length),
            height=None,
            length_label=length,
            openings=tuple(
                Opening(
                    left=_metres(unit.at),
                    width=_metres(unit.width),
                    height=_metres(unit.height) if unit.height is not None else None,
                    label=words.quantity(unit.width),
                )
                for unit in wall.units
            ),
        )
    )
