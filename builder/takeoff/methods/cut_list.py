"""Which boards to buy for a list of pieces, and which pieces to cut from which board: the fewest, or the cheapest.

One-dimensional cutting stock, solved exactly (builder/takeoff/cutting). The saw's kerf falls between
pieces and not after the last: n pieces on a board take n - 1 cuts.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.takeoff.asking import coefficient, may_have, needs
from builder.takeoff.cautions import TIMBER
from builder.takeoff.declared import Default, Input, Kind, MethodDoc, Output
from builder.takeoff.expression import Constant, Named, Total
from builder.takeoff.measures import MONEY, unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import Result
from builder.takeoff.sawing import Board, Sawn, saw
from builder.takeoff.shown import shown
from builder.takeoff.stock import metres
from builder.takeoff.text import Text
from builder.takeoff.values import Lot, Values
from builder.takeoff.working import Working, lot_of, many, words
from builder.words.quantity import Quantity

_KERF = Text("common practice, no source: the cut of a usual circular saw blade")
_ALL_PIECES, _CUTS = Text("all pieces"), Text("cuts between pieces")
_BOARDS_OF, _BOARDS = Text("boards of {length}"), Text("boards of each length")
_PRICES, _LENGTHS = Text("boards of each length × unit cost"), Text("boards of each length × length")
_FOUND = Text("from the cutting plan")
_FEWEST = Text("no plan can do with fewer: proven")
_CHEAPEST = Text("no plan can be cheaper: proven")
_AT_LEAST = Text("the search stopped early; nobody can do with less than {bound}")
_ENDS = Text("what is left of the boards, the last cut of each board not taken off")

DOC = MethodDoc(
    word="cut_list",
    title=Text("Cut list"),
    about="The fewest boards for a list of pieces, or the cheapest where prices are given, with the cutting plan.",
    source=Text("one-dimensional cutting stock; P. C. Gilmore and R. E. Gomory's column generation, from memory"),
    inputs=(
        Input(
            key="pieces",
            kind=Kind.ROWS,
            meaning="what is needed",
            example="[{length: 5 ft 1 in, count: 4}, {length: 3 ft 7 in, count: 2}]",
            required=True,
            columns=(
                needs("length", Kind.LENGTH, "of one piece", "5 ft 1 in"),
                may_have("count", Kind.COUNT, "how many", "4", default="1"),
            ),
        ),
        Input(
            key="stock",
            kind=Kind.ROWS,
            meaning="the boards that are sold",
            example="[{length: 8 ft, unit_cost: 4.20}, {length: 12 ft, unit_cost: 7.10}]",
            required=True,
            columns=(
                needs("length", Kind.LENGTH, "of one board", "8 ft"),
                may_have("unit_cost", Kind.PRICE, "of one board", "4.20", may_be_zero=True),
            ),
        ),
        coefficient(
            "kerf", Kind.LENGTH, "what the saw takes at a cut", "1/8 in", Default("1/8 in", _KERF), may_be_zero=True
        ),
    ),
    outputs=(
        Output("boards", "in all"),
        Output("boards_by_length_...", "of each length, as in boards_by_length_8_ft"),
        Output("cost", "of all boards", "where every length has its unit_cost"),
        Output("offcut", "what is left over"),
    ),
    cautions=TIMBER,
    no_waste="leave waste out: the plan knows every offcut",
)


def _check(values: Values) -> Iterator[Refusal]:
    stocks, kerf = values.rows("stock"), values.quantity("kerf")
    longest = max((row.quantity("length") for row in stocks), key=metres)
    for number, row in enumerate(values.rows("pieces"), 1):
        length = row.quantity("length")
        if metres(length) > metres(longest):
            yield Refusal(
                row.place("length"),
                f"pieces {number} is {shown(length)}, and the longest board is {shown(longest)}",
                "pieces that fit a board",
                "add a longer board to stock, or plan a joint and write two pieces",
            )
    if metres(kerf) >= metres(longest):
        yield Refusal(values.place("kerf"), f"kerf is {shown(kerf)}, as much as a board", "a cut such as 1/8 in")
    yield from _check_stock(stocks)


def _check_stock(stocks: tuple[Values, ...]) -> Iterator[Refusal]:
    bare = next((row for row in stocks if not row.given("unit_cost")), None)
    if bare is not None and any(row.given("unit_cost") for row in stocks):
        yield Refusal(
            bare.at,
            f"boards of {shown(bare.quantity('length'))} have no unit_cost, and others have",
            "a unit_cost for every length, or for none",
            "add unit_cost to it",
        )
    seen: set[Fraction] = set()
    for row in stocks:
        length = metres(row.quantity("length"))
        if length in seen:
            yield Refusal(
                row.place("length"),
                f"boards of {shown(row.quantity('length'))} stand twice",
                "each length once",
                "leave one of them out",
            )
        seen.add(length)


def _work(working: Working) -> None:
    rows = working.values.rows("stock")
    pieces = tuple(Lot(row.quantity("length"), _count(row)) for row in working.values.rows("pieces"))
    priced = rows[0].given("unit_cost")
    boards = [Board(row.quantity("length"), row.quantity("unit_cost").value if priced else Fraction(1)) for row in rows]
    kerf = working.input("kerf")
    sawn = saw(pieces, boards, kerf.quantity)
    working.drawing, working.proven = sawn.plan, sawn.proven
    if not sawn.proven:
        bound = Quantity(sawn.bound, MONEY) if priced else Quantity(sawn.bound, unit("board"))
        working.bound = Result("cost" if priced else "boards", bound)
    _write_boards(working, boards, sawn, _verdict(working.bound, priced))
    _write_offcut(working, pieces, boards, sawn, kerf)


def _count(row: Values) -> int:
    return int(row.quantity("count").value)


def _verdict(bound: Result | None, priced: bool) -> Text:
    if bound is None:
        return _CHEAPEST if priced else _FEWEST
    return _AT_LEAST.put(bound=bound.quantity)


def _write_boards(working: Working, boards: Sequence[Board], sawn: Sawn, verdict: Text) -> None:
    """The boards of each length, in all, and what they cost."""
    priced = working.values.rows("stock")[0].given("unit_cost")
    each = []
    for board, count in zip(boards, sawn.boards, strict=True):
        key, name = _key(board.length), _BOARDS_OF.put(length=shown(board.length))
        each.append(working.result(key, many(count), unit("board"), _FOUND, name))
    total = Total(_BOARDS, tuple(each), unit("board"))
    working.result("boards", total, unit("board"), None if priced else verdict)
    if priced:
        prices = [Constant(Quantity(board.cost, MONEY)) for board in boards]
        costs = tuple(count * price for count, price in zip(each, prices, strict=True))
        working.result("cost", Total(_PRICES, costs, MONEY), MONEY, verdict)


def _key(length: Quantity) -> str:
    """`boards_by_length_9_ft_8_in`."""
    return "boards_by_length_" + re.sub(r"\W+", "_", shown(length))


def _write_offcut(working: Working, pieces: Sequence[Lot], boards: Sequence[Board], sawn: Sawn, kerf: Named) -> None:
    parts = tuple(lot_of(lot) for lot in pieces)
    needed = working.step(_ALL_PIECES, Total(words("pieces"), parts, working.habit.length), working.habit.length)
    number = sum(board.count * (sum(piece.count for piece in board.pieces) - 1) for board in sawn.plan.boards)
    cuts = working.step(_CUTS, many(number), unit("cut"), _FOUND)
    bought = Total(
        _LENGTHS,
        tuple(many(count) * Constant(board.length) for board, count in zip(boards, sawn.boards, strict=True)),
        working.habit.length,
    )
    working.result("offcut", bought - needed - cuts * kerf, working.habit.length, _ENDS)


METHOD = Method(DOC, _work, _check)
