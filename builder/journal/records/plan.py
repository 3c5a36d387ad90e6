"""The plan (plan.yaml) and what is owned already (owned.yaml)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.journal.records.item import Item
from builder.journal.records.takeoff_entry import TakeoffEntry
from builder.words.money import Money
from builder.words.place import Place
from builder.words.quantity import Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeoffRef:
    """A quantity that a take-off works out: `{takeoff: footing.bags}`."""

    name: str
    result: str
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedLine:
    """One line of the budget: a line item, whose quantity may come from a take-off."""

    key: str | None
    item: Item
    quantity_from: TakeoffRef | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """A stage of the build. `hours` is low, likely, high; `wait` days after it before what follows it.

    `planned` is its lines, or one amount for the whole phase, or None when nothing was planned.
    """

    key: str
    name: str
    place: Place
    after: tuple[str, ...] = ()
    after_places: tuple[Place, ...] = ()
    hours: tuple[Fraction, Fraction, Fraction] | None = None
    wait: Fraction = Fraction(0)
    planned: tuple[PlannedLine, ...] | Money | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """plan.yaml. `contingency` is a rate of the planned total, or an amount; it is outside every phase."""

    phases: tuple[Phase, ...] = ()
    contingency: Fraction | Money | None = None
    takeoffs: tuple[TakeoffEntry, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnedEquipment:
    """A machine or tool owned already. `replacement_cost` is per hour, in major units; `basis` where from."""

    key: str
    name: str
    place: Place
    replacement_cost: Fraction | None = None
    basis: str | None = None
    basis_has_fuel: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnedStock:
    """Leftovers of an earlier job. `unit_cost` is what they cost then, None when nobody knows.

    `judged` where the author called that or the quantity a guess.
    """

    key: str
    material: str
    place: Place
    quantity: Quantity
    unit_cost: Fraction | None = None
    replacement_cost: Fraction | None = None
    judged: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Owned:
    """owned.yaml."""

    equipment: tuple[OwnedEquipment, ...] = ()
    stock: tuple[OwnedStock, ...] = ()
