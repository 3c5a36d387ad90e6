"""Whole journals, made up: every one of them holds all that can happen to money on a build.

A journal is the texts of its files, so that what is tried goes through the whole reading. In each there are: a
receipt with tax, delivery and discount; a share; leftovers that are drawn, sold, spoiled and returned; a draw over
two lots; a return on the line itself; something reusable put to one more use; stock from owned.yaml; an unknown
cost that is drawn from; machines, hours, journeys; judgements and rework. Nothing in them is a mistake.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import TypeVar

from hypothesis import strategies as st

T = TypeVar("T")
Draw = Callable[[st.SearchStrategy[T]], T]

CURRENCIES = {"JPY": 0, "USD": 2, "KWD": 3}
PHASES = ("ground", "frame", "roof")
OTHER_LINES = (
    "Galvanised nails, {price}",
    "{{material: Paint, cost: about {price}}}",
    "{{material: Beam, source: salvaged, quantity: 3, replacement_cost: {price}}}",
    "{{material: Window, source: secondhand, cost: {price}, size: 24 in x 48 in}}",
    "{{material: Door, source: gift, cost: {price}, replacement_cost: 95}}",
    "{{material: Second coat, cost: {price}, rework: yes, phase: roof}}",
    "{{equipment: saw, quantity: 3 hour, fuel: {price}}}",
    "{{equipment: Mixer, source: borrowed, quantity: 2 hour}}",
    "{{equipment: Drill, source: bought, cost: {price}, reusable_share: 90%}}",
    "{{labour: June, quantity: 2.5 hour}}",
    "{{labour: Mason, source: paid, cost: {price}, estimated: yes}}",
    "{{travel: To the yard, quantity: 41 mi, cost: {price}}}",
    "{{fee: Permit, cost: {price}, phase: ground}}",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """The texts of a journal: front matter by file name in the order found, owned.yaml and settings."""

    fronts: dict[str, str]
    owned: str
    settings: str
    currency: str


@st.composite
def whole_journals(draw: Draw[T]) -> Written:
    """Any such journal."""
    writer = _Writer(draw)
    stories = [
        writer.receipt, writer.shared, writer.leftovers, writer.two_lots, writer.returned, writer.reused,
        writer.from_earlier, writer.unknown, writer.hired, writer.others,
    ]  # fmt: skip
    for story in draw(st.permutations(stories)):
        story()
    return writer.written()


class _Writer:
    """The journal so far. A story is told over one day or several, each not before the last."""

    def __init__(self, draw: Draw[T]) -> None:
        self._draw = draw
        self._currency = self.one_of(list(CURRENCIES))
        self._digits = CURRENCIES[self._currency]
        self._count = self.whole(2, 5)
        self._receipts: list[list[str]] = [[] for _ in range(self._count)]
        self._items: list[list[str]] = [[] for _ in range(self._count)]
        self._owned = ""

    def whole(self, least: int, most: int) -> int:
        return self._draw(st.integers(least, most))

    def one_of(self, choices: Sequence[T]) -> T:
        return choices[self.whole(0, len(choices) - 1)]

    def amount(self, minor: int) -> str:
        """So many minor units, as written."""
        return str(Decimal(minor).scaleb(-self._digits))

    def price(self) -> int:
        """A price in minor units: small ones round badly, large ones are what people pay."""
        return self.whole(1, self.one_of([9, 500, 90_000]))

    def days(self, count: int) -> list[int]:
        return sorted(self.whole(0, self._count - 1) for _ in range(count))

    def put(self, day: int, line: str) -> None:
        self._items[day].append(line)

    def buy(self, day: int, line: str) -> None:
        """A line on its own, or on a receipt of its own with tax and delivery."""
        kind = self.whole(0, 2)
        if kind == 0:
            self.put(day, f"{{{line}}}")
            return
        key, head = f"r{len(self._receipts[day])}", f"tax: {self.whole(0, 25)}%, delivery: {self.amount(self.price())}"
        if kind == 1:
            self._receipts[day].append(f"{key}: {{{head}, items: [{{{line}}}]}}")
        else:
            self._receipts[day].append(f"{key}: {{{head}, delivery_taxed: yes}}")
            self.put(day, f"{{{line}, receipt: {key}}}")

    # --- the stories ----------------------------------------------------------------------------------

    def receipt(self) -> None:
        """A receipt with tax, delivery and discount, its total worked out here by itself."""
        prices = [self.price() * self.whole(0, 3) for _ in range(self.whole(1, 4))]
        taxed = [self.whole(0, 3) > 0 for _ in prices]
        extras = ["share: 35%", "used: 60%", "uses: 3", "share: 0%", "estimated: yes", "note: as it was"]
        discount = self.one_of(["5%", "12.5%", self.amount(self.whole(0, sum(prices)))])
        tax = self.one_of(["8.25%", "20%", self.amount(self.price()), "included"])
        delivery, delivery_taxed = self.price(), self.one_of(["yes", "no"])
        lines = [
            f"{{material: Thing {number}, cost: {self.amount(price)}, {self.one_of(extras)}"
            + (", taxed: no}" if not counts else "}")
            for number, (price, counts) in enumerate(zip(prices, taxed, strict=True))
        ]
        total = self._total(prices, taxed, discount, tax, delivery if delivery_taxed == "yes" else 0) + delivery
        head = f"discount: {discount}, tax: {tax}, delivery: {self.amount(delivery)}, delivery_taxed: {delivery_taxed}"
        (day,) = self.days(1)
        self._receipts[day].append(f"shop: {{{head}, total: {self.amount(total)}, items: [{', '.join(lines)}]}}")

    def _total(self, prices: Sequence[int], taxed: Sequence[bool], discount: str, tax: str, taxed_delivery: int) -> int:
        """Goods less discount plus tax, worked out in decimals and apart from the program."""
        off = self._part(discount, sum(prices))
        after = [price - less for price, less in zip(prices, largest_remainder(off, prices), strict=True)]
        taxable = sum(price for price, counts in zip(after, taxed, strict=True) if counts)
        if tax == "included":
            return sum(after)
        if not tax.endswith("%"):
            return sum(after) + int(Decimal(tax).scaleb(self._digits))
        return sum(after) + self._part(tax, taxable) + self._part(tax, taxed_delivery)

    def _part(self, told: str, of: int) -> int:
        if told.endswith("%"):
            return rounded(Decimal(of) * Decimal(told.removesuffix("%")) / 100)
        return int(Decimal(told).scaleb(self._digits))

    def shared(self) -> None:
        """A part of this purchase went into something else."""
        price = self.price()
        share = self.one_of([f"{self.whole(0, 100)}%", self.amount(self.whole(0, price))])
        self.buy(self.days(1)[0], f"material: Stone, quantity: 1 load, cost: {self.amount(price)}, share: {share}")

    def leftovers(self) -> None:
        """Bought, partly used; then drawn, sold, spoiled and returned in any order."""
        left, used, price = self.whole(4, 12), self.whole(0, 9), self.price()
        first, *later = self.days(5)
        whole, worth = left + used, self.one_of(["", ", replacement_cost: 3.335"])
        self.buy(
            first,
            f"material: Felt, quantity: {whole} ft, cost: {self.amount(price)}, used: {used} ft, id: felt{worth}",
        )
        for number, (day, source) in enumerate(
            zip(later, self._draw(st.permutations(["stock", "sold", "spoiled", "returned"])), strict=True)
        ):
            taken = self.whole(1, left - (3 - number))
            left -= taken
            quantity = self.one_of([f"quantity: {taken} ft", f"quantity: {taken * 12} in"])
            money = {
                "sold": f", cost: {self.amount(self.price())}",
                "returned": self.one_of(["", f", refund: {self.amount(price * taken // whole // 2)}"]),
            }.get(source, "")
            where = self.one_of(["", ", from: felt"])
            self.put(day, f"{{material: felt, source: {source}, {quantity}{money}{where}}}")

    def two_lots(self) -> None:
        """A draw over two lots in two units, first in first out; and one of all that is left."""
        one, two, then, last = self.days(4)
        feet, yards = self.whole(2, 20), self.whole(1, 9)
        # more than either holds, since the receipts of a day come before its other lines
        wanted = self.whole(max(feet, yards * 3) + 1, feet + yards * 3 - 1)
        self.buy(one, f"material: Cable, quantity: {feet} ft, cost: {self.amount(self.price())}, used: 0 ft")
        self.buy(two, f"material: CABLE, quantity: {yards} yd, cost: {self.amount(self.price())}, used: 0%")
        self.put(then, f"{{material: cable, source: stock, quantity: {wanted} ft}}")
        if self.whole(0, 1):
            self.put(last, "{material: Cable, source: stock}")

    def returned(self) -> None:
        """Some of it went back, on the line itself."""
        whole, price = self.whole(2, 30), self.price()
        back = self.whole(1, whole)
        refund = self.one_of(["", f", refund: {self.amount(price * back // whole)}"])
        used = self.one_of(["", f", used: {self.whole(0, whole - back)} box", ", share: 40%"])
        self.buy(
            self.days(1)[0],
            f"material: Tiles, quantity: {whole} box, cost: {self.amount(price)}, returned: {back} box{refund}{used}",
        )

    def reused(self) -> None:
        """Form boards, put to one more use until nothing is left, or as the line says."""
        uses, boards = self.whole(2, 5), self.whole(1, 12)
        first, *later = self.days(1 + self.whole(1, 6))
        # a digit more than the currency has, so that the product is rounded
        unit_cost = self.amount(self.price()) + ("5" if self._digits else ".5")
        self.buy(
            first,
            f"material: Boards, quantity: {boards} board, unit_cost: {unit_cost}, uses: {uses}, id: boards",
        )
        for day in later:
            how = self.one_of(["", f", quantity: {self.whole(1, boards)} board", ", reusable_share: 35%"])
            self.put(day, f"{{material: Boards, source: stock, from: boards{how}}}")

    def from_earlier(self) -> None:
        """Leftovers of an earlier job, priced or not, valued or not; a part of them is drawn."""
        feet = self.whole(2, 40)
        told = self.one_of(["unit_cost: 0.4, ", "unit_cost: 1.2345, ", "unit_cost: unknown, "])
        worth = self.one_of(["replacement_cost: 0.655, ", ""])
        self._owned = f"stock: {{fabric: {{{told}{worth}material: Fabric, quantity: {feet} ft}}}}\n"
        some = self.whole(1, feet - 1)
        one, two = self.days(2)
        self.put(one, f"{{material: Fabric, source: stock, quantity: {some} ft{self.one_of(['', ', uses: 2'])}}}")
        if self.whole(0, 1):
            self.put(
                two,
                f"{{material: Fabric, source: sold, quantity: {feet - some} ft, cost: {self.amount(self.price())}}}",
            )

    def unknown(self) -> None:
        """A price that nobody remembers, and what is drawn from it."""
        one, two, three = self.days(3)
        part = self.one_of(["used: 2 bag", f"share: {self.amount(self.price())}", "used: 25%, replacement_cost: 7"])
        self.put(one, f"{{material: Gravel, quantity: 8 bag, cost: unknown, {part}, id: gravel}}")
        if "share" not in part:
            self.put(two, "{material: Gravel, source: stock, quantity: 2 bag}")
            self.put(three, "{material: Gravel, source: spoiled, quantity: 1 bag, from: gravel}")

    def hired(self) -> None:
        """A machine with a deposit, of which some may be kept."""
        one, two = self.days(2)
        deposit = self.price()
        price = f"cost: {self.amount(self.price())}, fuel: {self.amount(self.price())}"
        self.put(
            one,
            f"{{equipment: Cutter, source: hired, {price}, deposit: {self.amount(deposit)}, id: cutter}}",
        )
        back = self.amount(self.whole(0, deposit))
        self.put(two, f"{{equipment: Cutter, from: cutter, deposit_back: {back}}}")

    def others(self) -> None:
        """Some more of what people write."""
        for day in self.days(self.whole(0, 6)):
            self.put(day, self.one_of(OTHER_LINES).format(price=self.amount(self.price())))

    # --- the files ------------------------------------------------------------------------------------

    def written(self) -> Written:
        """Days may fall together; then the episode's number decides."""
        gaps = [self.whole(0, 3) for _ in range(self._count)]
        dates = [datetime.date(2026, 4, 1) + datetime.timedelta(sum(gaps[: day + 1])) for day in range(self._count)]
        numbers = self._draw(st.permutations(range(1, self._count + 1)))
        by_date = sorted(zip(sorted(dates), numbers, strict=True))
        fronts = [
            (f"episodes/{number:02d}-day-{day}.md", self._front(day, date))
            for day, (date, number) in enumerate(by_date)
        ]
        return Written(
            fronts=dict(self._draw(st.permutations(fronts))),
            owned=f"{self._owned}equipment: {{saw: {{name: Saw, replacement_cost: 9.5, basis: a quote}}}}",
            settings="labour_rate: 18.33\ntravel_rate: 0.655 per mile",
            currency=self._currency,
        )

    def _front(self, day: int, date: datetime.date) -> str:
        told = self.whole(0, 2)
        when = f"date: {date}" if told else f"from: {date - datetime.timedelta(1)}\nto: {date}"
        phase = self.one_of(["", *(f"\nphase: {phase}" for phase in PHASES)])
        hours = self.one_of(["", "\nhours: 7.25", "\nhours: {ground: 2, frame: 3.5}"])
        receipts = "".join(f"\n  {one}" for one in self._receipts[day])
        items = "".join(f"\n  - {one}" for one in self._items[day])
        return (
            f"title: Day {day}\n{when}{phase}{hours}"
            + (f"\nreceipts:{receipts}" if receipts else "")
            + (f"\nitems:{items}" if items else "")
        )


def rounded(value: Decimal) -> int:
    """To a whole number, half up."""
    return int(value.to_integral_value(rounding=ROUND_HALF_UP))


def largest_remainder(amount: int, weights: Sequence[int]) -> list[int]:
    """An amount over weights, one unit at a time to whoever is furthest below its quota."""
    whole = sum(weights)
    if not whole:
        return largest_remainder(amount, [1] * len(weights))
    quotas = [Fraction(amount * weight, whole) for weight in weights]
    parts = [int(quota) for quota in quotas]
    for _ in range(amount - sum(parts)):
        short = [quota - part for quota, part in zip(quotas, parts, strict=True)]
        parts[short.index(max(short))] += 1
    return parts
