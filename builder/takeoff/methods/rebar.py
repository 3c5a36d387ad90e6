"""Reinforcing bar: length with laps, bars to buy, and weight.

A run longer than a bar is lapped, each lap so many bar diameters. The bars are at least the length with waste over
the length of a bar, and at least what cutting the runs from whole bars takes, with no more laps than are needed.
Weights per foot and diameters: ASTM A615/A615M Table 1, as quoted by a trade magazine.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from builder.takeoff.asking import coefficient, may_have, needs, waste
from builder.takeoff.cautions import NOT_A_DESIGN, STRUCTURE
from builder.takeoff.cutting.solve import solve
from builder.takeoff.cutting.task import Item, Stock, Task
from builder.takeoff.declared import Default, Kind, MethodDoc, Output
from builder.takeoff.expression import Applied, Named, Rule
from builder.takeoff.measures import unit
from builder.takeoff.method import Method, Refusal
from builder.takeoff.records import Suggestion
from builder.takeoff.shown import shown
from builder.takeoff.stock import metres, whole_numbers
from builder.takeoff.text import Text
from builder.takeoff.values import Lot, Values
from builder.takeoff.working import Working, many

_TABLE = Text("ASTM A615/A615M Table 1, as quoted by a trade magazine")
_LAP = Text(
    "40 diameters: IRC Table R608.5.4(1) for Grade 40 bar in a residential concrete wall; the same table has 60 for"
    " Grade 60. The drawing decides"
)
_BARS = (
    ("#3", "3/8 in", "0.376 lb/ft"),
    ("#4", "1/2 in", "0.668 lb/ft"),
    ("#5", "5/8 in", "1.043 lb/ft"),
    ("#6", "3/4 in", "1.502 lb/ft"),
    ("#7", "7/8 in", "2.044 lb/ft"),
    ("#8", "1 in", "2.670 lb/ft"),
)
_ONE_LAP = Text("length of one lap")
_LAPS, _NO_LAPS = Text("laps"), Text("no run is longer than a bar, so nothing is lapped")
_UNKNOWN_LAPS = Text("without laps: stock_length is not given")
_LAPPED = Text("one lap fewer than the bars in each run")
_BY_LENGTH, _BY_CUTTING = Text("bars by length"), Text("bars by cutting")
_EXACT = Text("bars by length before rounding")
_CUT = Text("whole bars in the runs, and the bars that the ends are cut from")
_LARGER = Text("whichever is more: enough length, and long enough pieces")

DOC = MethodDoc(
    word="rebar",
    title=Text("Reinforcing bar"),
    about="Bars to buy for straight runs, lapped where a run is longer than a bar, and their weight.",
    source=_TABLE,
    inputs=(
        may_have("bar", Kind.BAR, "size of the bar", '"#4"'),
        needs("runs", Kind.LENGTHS, "length of each straight run", "[42 ft, 42 ft]"),
        coefficient("lap", Kind.NUMBER, "length of a lap in bar diameters", "40", Default("40", _LAP)),
        may_have("stock_length", Kind.LENGTH, "length of the bars that are sold", "20 ft"),
        coefficient(
            "bar_diameter",
            Kind.LENGTH,
            "of another bar",
            "12 mm",
            *(Default(diameter, _TABLE, ("bar", bar)) for bar, diameter, _ in _BARS),
        ),
        coefficient(
            "weight_per_length",
            Kind.WEIGHT_OF_LENGTH,
            "of another bar",
            "0.888 kg/m",
            *(Default(weight, _TABLE, ("bar", bar)) for bar, _, weight in _BARS),
        ),
        waste(),
    ),
    outputs=(
        Output("total_length", "runs and laps, net"),
        Output("bars", "whole bars, waste added", "where stock_length is given"),
        Output("weight", "of the length, net"),
        Output("weight_with_waste", "of the length, waste added"),
    ),
    cautions=(NOT_A_DESIGN, STRUCTURE),
    suggestions=(
        Suggestion(
            Text("10% for laps and waste, where laps are not counted"), Text("course notes CVE 367, at second hand")
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class _Run:
    """How a run is made: so many bars one after another, the last of which is `end` metres long."""

    bars: int
    end: Fraction


def _check(values: Values) -> Iterator[Refusal]:
    needed = ["weight_per_length", *(["bar_diameter"] if values.has("stock_length") else [])]
    missing = next((key for key in needed if not values.has(key)), None)
    if missing:
        yield Refusal(
            values.at,
            f"neither bar nor {missing} is given",
            "bar, or bar_diameter and weight_per_length",
            'add bar: "#4" (in quotes), or bar: no. 4',
        )
    elif values.has("stock_length"):
        stock, lap = values.quantity("stock_length"), values.quantity("lap")
        if 2 * lap.value * metres(values.quantity("bar_diameter")) > metres(stock):
            yield Refusal(
                values.place("stock_length"),
                f"a bar of {shown(stock)} is too short for two laps of {shown(lap)} bar diameters",
                "bars of at least twice the lap",
                "check stock_length, and that lap is a number of bar diameters",
            )


def _work(working: Working) -> None:
    if working.values.has("stock_length"):
        length = _with_bars(working)
    else:
        length = working.result("total_length", working.lengths("runs"), working.habit.length, _UNKNOWN_LAPS)
    weight = working.result("weight", length * working.input("weight_per_length"), working.habit.weight)
    working.with_waste("weight", weight)


def _with_bars(working: Working) -> Named:
    """The length with its laps, and the bars it takes."""
    stock = working.input("stock_length")
    overlap = working.input("lap") * working.input("bar_diameter")
    lap = working.step(_ONE_LAP, overlap, working.habit.short)
    lots = working.values.lots("runs")
    runs = [_made(metres(lot.length), metres(stock.quantity), metres(lap.quantity)) for lot in lots]
    whole = sum(lot.count * (run.bars - 1) for lot, run in zip(lots, runs, strict=True))
    laps = working.step(_LAPS, many(whole), unit("lap"), _LAPPED if whole else _NO_LAPS)
    length = working.result("total_length", working.lengths("runs") + laps * lap, working.habit.length)
    exact = working.step(_EXACT, length * (1 + working.input("waste")) / stock, unit("bar"))
    by_length = working.step(_BY_LENGTH, Applied(Rule.ROUND_UP, (exact,)), unit("bar"))
    ends = _bars_for_ends(lots, runs, metres(stock.quantity))
    by_cutting = working.step(_BY_CUTTING, many(whole) + ends, unit("bar"), _CUT)
    working.result("bars", Applied(Rule.LARGER, (by_length, by_cutting)), unit("bar"), _LARGER)
    return length


def _made(run: Fraction, stock: Fraction, lap: Fraction) -> _Run:
    """The fewest bars in a row, each lapped with the next."""
    bars = max(ceil((run - lap) / (stock - lap)), 1)
    return _Run(bars, run - (bars - 1) * (stock - lap))


def _bars_for_ends(lots: tuple[Lot, ...], runs: list[_Run], stock: Fraction) -> int:
    """The fewest bars that the last piece of every run can be cut from."""
    (length, *ends), _ = whole_numbers([stock, *(run.end for run in runs)])
    counts: dict[int, int] = {}
    for lot, end in zip(lots, ends, strict=True):
        counts[end] = counts.get(end, 0) + lot.count
    items = tuple(Item(end, count) for end, count in sorted(counts.items(), reverse=True))
    return solve(Task((Stock(length, 1),), items)).packing.cost


METHOD = Method(DOC, _work, _check)
