"""What concrete from bags has in common: the inputs, the waste that handbooks add, and the steps to whole bags."""

from __future__ import annotations

from collections.abc import Iterator

from builder.takeoff.asking import coefficient, may_have, waste
from builder.takeoff.declared import Default, Kind, Output
from builder.takeoff.expression import Named
from builder.takeoff.measures import unit
from builder.takeoff.method import Refusal
from builder.takeoff.records import Suggestion
from builder.takeoff.shown import shown
from builder.takeoff.text import Text
from builder.takeoff.values import Values
from builder.takeoff.working import Working

_YIELD = Text("from how-to pages, which differ by a tenth (others have 2/3 ft3 for 80 lb); the bag says what it yields")
_SCALED = Text("common practice, no source: in proportion to a 60 lb bag; the bag says what it yields")
_BAGS, _CARRY = Text("bags before rounding"), Text("weight to carry")

BAG_INPUTS = (
    may_have("bag", Kind.WEIGHT, "weight of one bag of dry mix", "80 lb"),
    coefficient(
        "bag_yield",
        Kind.VOLUME,
        "how much concrete one bag makes",
        "0.6 ft3",
        Default("0.3 ft3", _YIELD, ("bag", "40 lb")),
        Default("0.375 ft3", _SCALED, ("bag", "50 lb")),
        Default("0.45 ft3", _YIELD, ("bag", "60 lb")),
        Default("0.6 ft3", _YIELD, ("bag", "80 lb")),
    ),
    waste(),
)
POURED = (
    Output("volume", "concrete, net"),
    Output("volume_with_waste", "concrete, waste added"),
    Output("bags", "whole bags, waste added", "where bag is given"),
)

_BOOK = Text("S. Peterson and F. Dagostino, Estimating in Building Construction, ch. 10, as quoted by lecture slides")
FOOTING_WASTE = Suggestion(Text("5% for footings, columns and beams"), _BOOK)
SLAB_WASTE = Suggestion(Text("8% for slabs"), _BOOK)
SMALL_BUILDING_WASTE = Suggestion(
    Text("10% for the foundation and slab of a small building"), Text("US Navy training course 14070, ch. 5")
)


def check_bag(values: Values) -> Iterator[Refusal]:
    """A bag whose yield is not known, or a yield without its bag."""
    if values.has("bag") and not values.has("bag_yield"):
        metric = values.quantity("bag").unit.symbol in ("kg", "t")
        yield Refusal(
            values.place("bag"),
            f"no yield is known for a bag of {shown(values.quantity('bag'))}",
            "a bag of 40 lb, 50 lb, 60 lb or 80 lb, or its yield beside it",
            "give bag_yield: the volume printed on the bag" + (", such as 12 L" if metric else ""),
        )
    if values.given("bag_yield") and not values.given("bag"):
        yield Refusal(
            values.place("bag_yield"),
            "bag_yield stands without its bag",
            "the weight of one bag beside it",
            "add bag: 25 kg" if values.quantity("bag_yield").unit.symbol in ("L", "m3") else "add bag: 80 lb",
        )


def pour(working: Working, volume: Named) -> None:
    """From the net volume to the volume with waste, and to whole bags where there is a bag."""
    needed = working.with_waste("volume", volume)
    if working.values.has("bag"):
        exact = working.step(_BAGS, needed / working.input("bag_yield"), unit("bag"))
        bags = working.whole("bags", exact, unit("bag"))
        working.step(_CARRY, bags * working.input("bag"), working.habit.weight)
