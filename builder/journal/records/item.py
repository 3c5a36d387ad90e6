"""Line items and receipts as the author wrote them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from builder.words.money import Money
from builder.words.place import Place
from builder.words.problem import Problem
from builder.words.quantity import Quantity


class Kind(Enum):
    """What a line item is."""

    MATERIAL = "material"
    EQUIPMENT = "equipment"
    LABOUR = "labour"
    TRAVEL = "travel"
    FEE = "fee"


class Source(Enum):
    """Where a thing came from, or how it left. Fees are paid; travel is paid where it cost something."""

    BOUGHT = "bought"
    SECONDHAND = "secondhand"
    SALVAGED = "salvaged"
    GIFT = "gift"
    STOCK = "stock"
    OWNED = "owned"
    BORROWED = "borrowed"
    HIRED = "hired"
    UNPAID = "unpaid"
    PAID = "paid"
    RETURNED = "returned"
    SOLD = "sold"
    SPOILED = "spoiled"

    @property
    def leaves(self) -> bool:
        """Whether the line takes something away: returned, sold, spoiled."""
        return self in LEAVING


LEAVING = frozenset({Source.RETURNED, Source.SOLD, Source.SPOILED})
PRICED = frozenset({Source.BOUGHT, Source.SECONDHAND, Source.HIRED, Source.PAID, Source.SOLD})
ALLOWED = {
    Kind.MATERIAL: (
        Source.BOUGHT,
        Source.SECONDHAND,
        Source.SALVAGED,
        Source.GIFT,
        Source.STOCK,
        Source.RETURNED,
        Source.SOLD,
        Source.SPOILED,
    ),
    Kind.EQUIPMENT: (
        Source.OWNED,
        Source.BORROWED,
        Source.HIRED,
        Source.BOUGHT,
        Source.SECONDHAND,
        Source.SALVAGED,
        Source.GIFT,
        Source.STOCK,
        Source.RETURNED,
        Source.SOLD,
        Source.SPOILED,
    ),
    Kind.LABOUR: (Source.UNPAID, Source.PAID),
    Kind.TRAVEL: (Source.PAID, Source.UNPAID),
    Kind.FEE: (Source.PAID,),
}


class Told(Enum):
    """A cost that is not an amount."""

    UNKNOWN = "unknown"
    REST = "rest"


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """Width and height of a window, door or sheet; `text` is how it was written."""

    width: Quantity
    height: Quantity
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One line item.

    `unit_cost` and `replacement_cost` are exact, in major units, per unit of `quantity` (for owned
    equipment per hour). `share` is the part that went into this build: a rate, or an amount in the
    terms of the line's own cost. `reusable` is a rate; `uses` is kept where the author wrote it.
    `lot` is the id or owned key the line draws from or gives back. `judged` is true when the whole
    line or any number of it was called a judgement; `guessed` are the keys of those numbers, () where it
    was the whole line.
    """

    place: Place
    kind: Kind
    what: str
    source: Source
    quantity: Quantity | None = None
    unit_cost: Fraction | None = None
    cost: Money | Told | None = None
    used: Quantity | Fraction | None = None
    share: Fraction | Money | None = None
    reusable: Fraction | None = None
    uses: int | None = None
    replacement_cost: Fraction | None = None
    fuel: Money | None = None
    deposit: Money | None = None
    deposit_back: Money | None = None
    returned: Quantity | None = None
    refund: Money | None = None
    receipt: str | None = None
    taxed: bool = True
    lot: str | None = None
    against: tuple[str, ...] = ()
    rework: bool = False
    judged: bool = False
    guessed: tuple[str, ...] = ()
    size: Size | None = None
    was: str | None = None
    phase: str | None = None
    id: str | None = None
    note: str | None = None
    places: tuple[tuple[str, Place], ...] = ()

    def at(self, key: str) -> Place:
        """Where a key of the line stands; the line itself if the key is absent."""
        return next((place for name, place in self.places if name == key), self.place)


class TaxTold(Enum):
    """Tax that stands in the prices."""

    INCLUDED = "included"


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """One receipt: what its paper says besides the lines. `tax` and `discount` are a rate or an amount.

    `judged` is true when any of them was called a judgement, which makes each of its lines one. `tax_asked` and
    `discount_asked` say what to ask about an amount that may be a rate whose % was forgotten, unless the total tells.
    """

    place: Place
    key: str
    seller: str | None = None
    tax: Fraction | Money | TaxTold | None = None
    delivery: Money | None = None
    delivery_taxed: bool = False
    discount: Fraction | Money | None = None
    total: Money | None = None
    total_place: Place | None = None
    judged: bool = False
    tax_asked: Problem | None = None
    discount_asked: Problem | None = None
