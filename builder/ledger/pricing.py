"""Step one of the ledger: what each line cost, alone or with its receipt, and what each receipt came to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.journal.records.episode import Episode
from builder.journal.records.item import Item, Receipt, TaxTold, Told
from builder.journal.records.settings import Settings
from builder.ledger.problems import Findings
from builder.ledger.receipt import Sums, rest_of, work_out
from builder.ledger.records import CostedReceipt, OnReceipt
from builder.words.money import Currency, Money, till
from builder.words.rounding import half_up, significant_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """The prices of an episode's lines, in their order.

    None for a line without a price. Where such a line stands on a receipt and delivery or tax falls on it,
    that was paid all the same: its goods are then 0.
    """

    prices: tuple[OnReceipt | None, ...]
    receipts: tuple[CostedReceipt, ...]


def gross(item: Item, currency: Currency) -> int | None:
    """A line's price before its receipt: `cost`, or quantity x unit cost rounded once half up, else 0.

    None where it is unknown; of a `share` given as an amount the known part is the price.
    """
    if isinstance(item.cost, Money):
        return item.cost.minor
    if item.cost is not None:
        return item.share.minor if item.cost is Told.UNKNOWN and isinstance(item.share, Money) else None
    if item.unit_cost is not None:
        return till(item.quantity.value if item.quantity else Fraction(1), item.unit_cost, currency)
    return 0


def price_episode(episode: Episode, settings: Settings, findings: Findings) -> Priced:
    """Price every line of an episode; receipts whose paper disagrees are reported."""
    prices: dict[int, OnReceipt | None] = {}
    for index, item in enumerate(episode.items):
        alone = gross(item, settings.currency) if item.receipt is None else None
        prices[index] = None if alone is None else OnReceipt(goods=alone)
    receipts = []
    for receipt in episode.receipts:
        lines = [index for index, item in enumerate(episode.items) if item.receipt == receipt.key]
        if not lines:
            continue
        paper = _Paper(receipt, [episode.items[index] for index in lines], settings)
        sums, shares = paper.work_out(findings)
        prices.update(zip(lines, shares, strict=True))
        receipts.append(paper.costed(episode.number, sums))
    in_order = tuple(prices[index] for index in range(len(episode.items)))
    return Priced(prices=in_order, receipts=tuple(receipts))


class _Paper:
    """One receipt and the lines on it."""

    def __init__(self, receipt: Receipt, items: Sequence[Item], settings: Settings) -> None:
        self._receipt, self._items = receipt, items
        self._currency = settings.currency
        self._inside = settings.prices_include_tax
        self._taxed = [item.taxed for item in items]
        self._gross = [gross(item, settings.currency) for item in items]
        self._unpriced = [item.cost is Told.UNKNOWN for item in items]

    def work_out(self, findings: Findings) -> tuple[Sums, list[OnReceipt | None]]:
        goods = self._with_rest(findings)
        self._discount_fits(goods, findings)
        sums = work_out(self._receipt, goods, self._taxed, self._inside)
        rest = any(item.cost is Told.REST for item in self._items)
        if not rest:
            self._check(sums, goods, findings)
            self._offer_rest(sums, goods, findings)
        self._ask_for_rates(findings, told=not rest and not any(self._unpriced))
        shares = zip(self._unpriced, sums.shares, strict=True)
        return sums, [None if unpriced and not share.whole else share for unpriced, share in shares]

    def costed(self, episode: int, sums: Sums) -> CostedReceipt:
        printed = self._receipt.total
        return CostedReceipt(
            episode=episode,
            key=self._receipt.key,
            seller=self._receipt.seller,
            goods=sums.goods,
            discount=sums.discount,
            delivery=sums.delivery,
            tax=sums.tax,
            tax_inside=sums.tax_inside,
            total=sums.total,
            checked=printed is not None and printed.minor == sums.total and not any(self._unpriced),
            unpriced=sum(self._unpriced),
        )

    def _with_rest(self, findings: Findings) -> list[int]:
        goods = [price or 0 for price in self._gross]
        rests = [index for index, item in enumerate(self._items) if item.cost is Told.REST]
        if not rests:
            return goods
        item, receipt = self._items[rests[0]], self._receipt
        if len(rests) > 1:
            second = self._items[rests[1]]
            findings.mistake(
                second.at("cost"),
                "two lines of one receipt take the rest",
                "one cost: rest on a receipt",
                "give all but one their cost",
            )
        elif receipt.total is None:
            findings.mistake(
                item.at("cost"),
                f"the receipt {receipt.key} has no total to take the rest of",
                "total: on the receipt",
                "add total: as printed",
            )
        elif any(self._unpriced):
            findings.mistake(
                item.at("cost"),
                f"the receipt {receipt.key} has a line of unknown cost, so its rest is unknown too",
                "either a rest or an unknown line",
                "put both things into one line, or look the price up",
            )
        else:
            rest = rest_of(receipt, goods, rests[0], self._taxed, self._inside)
            if rest is None:
                findings.mistake(
                    item.at("cost"),
                    f"no cost of this line brings the receipt {receipt.key} to its total of {receipt.total}",
                    "the other lines, tax and delivery at most as much as the total",
                    "check them against the paper",
                )
            goods[rests[0]] = rest or 0
        return goods

    def _discount_fits(self, goods: list[int], findings: Findings) -> None:
        told = self._receipt.discount
        if isinstance(told, Money) and told.minor > sum(goods) and not any(self._unpriced):
            findings.mistake(
                self._receipt.place,
                f"the discount of {told} is more than the goods, {self._money(sum(goods))}",
                "a discount of at most the goods",
                "check the receipt",
            )

    def _ask_for_rates(self, findings: Findings, *, told: bool) -> None:
        """Ask about a tax or discount that may be a rate, where no printed total tells (or contradicts) them.

        Tax inside the prices is in no total.
        """
        told = told and self._receipt.total is not None
        if self._receipt.tax_asked is not None and (self._inside or not told):
            findings.add(self._receipt.tax_asked)
        if self._receipt.discount_asked is not None and not told:
            findings.add(self._receipt.discount_asked)

    def _check(self, sums: Sums, goods: list[int], findings: Findings) -> None:
        printed = self._receipt.total
        if printed is None or printed.minor == sums.total or any(self._unpriced):
            return
        findings.mistake(
            self._receipt.total_place or self._receipt.place,
            f"the receipt {self._receipt.key} says {printed}, and its lines with tax and delivery come to "
            f"{self._money(sums.total)}, {self._more(printed.minor - sums.total)}",
            "both the same to the cent",
            self._rate_meant(goods, printed.minor) or self._guess(sums, printed.minor - sums.total),
        )

    def _rate_meant(self, goods: list[int], printed: int) -> str:
        """What to write where an amount of tax or discount, read as a rate, brings the receipt to its total."""
        receipt = self._receipt
        tax, discount = _as_rate(receipt.tax), _as_rate(receipt.discount)
        for rates in ((tax, None), (None, discount), (tax, discount)):
            meant = replace(receipt, tax=rates[0] or receipt.tax, discount=rates[1] or receipt.discount)
            if work_out(meant, goods, self._taxed, self._inside).total == printed:
                named = zip(("tax", "discount"), rates, strict=True)
                return "write " + " and ".join(f"{key}: {significant_text(rate * 100)}%" for key, rate in named if rate)
        return ""

    def _offer_rest(self, sums: Sums, goods: list[int], findings: Findings) -> None:
        """A receipt with an unpriced line cannot be checked; what is left of its total is a good guess."""
        printed, count = self._receipt.total, sum(self._unpriced)
        lines = "line has" if count == 1 else "lines have"
        if printed is None or not count:
            return
        rest = rest_of(self._receipt, goods, self._unpriced.index(True), self._taxed, self._inside)
        if rest is None:
            fix = "check the other lines against the paper"
        elif count == 1:
            fix = f"write cost: rest on that line, which makes it {self._money(rest)}"
        else:
            fix = f"together they cost {self._money(rest)}: put them into one line with cost: rest"
        findings.warning(
            self._receipt.total_place or self._receipt.place,
            f"the total of {printed} cannot be checked: {count} {lines} no price",
            f"every line with its price; the others come to {self._money(sums.total)} with tax and delivery",
            fix,
        )

    def _guess(self, sums: Sums, missing: int) -> str:
        """What might explain a difference: one line, the delivery, the discount, the tax, a rounding."""
        for item, price in zip(self._items, sums.shares, strict=True):
            if price.goods and abs(missing) in (price.goods, price.goods - price.discount + price.tax):
                word = "is it on the paper twice?" if missing > 0 else "is it on this receipt at all?"
                return f"that is just what {item.what} costs: {word}"
        for item in self._items:
            if item.deposit is not None and missing == item.deposit.minor:
                return f"that is just the deposit on {item.what}, which is no cost: take it off total:"
        if sums.delivery and missing == -sums.delivery:
            return "that is just the delivery: is it in the lines already?"
        if sums.discount and missing == sums.discount:
            return "that is just the discount: was it taken off already?"
        return self._tax_guess(sums, missing) or self._rounding(missing) or "compare each line with the paper"

    def _tax_guess(self, sums: Sums, missing: int) -> str:
        rate, delivered = self._receipt.tax, sums.delivery
        if sums.tax_inside or not isinstance(rate, Fraction):
            return ""
        if missing == -(sums.tax or 0):
            return "that is just the tax: do the prices include it? Write tax: included"
        on_delivery = half_up(rate * delivered)
        if on_delivery and self._receipt.delivery_taxed and abs(missing + on_delivery) <= 1:
            return "that is just the tax on the delivery: leave out delivery_taxed"
        if on_delivery and not self._receipt.delivery_taxed and abs(missing - on_delivery) <= 1:
            return "that is just the tax on the delivery: write delivery_taxed: yes"
        return ""

    def _rounding(self, missing: int) -> str:
        """A minor unit a line at most; told by what was rounded here."""
        if abs(missing) > len(self._items):
            return ""
        if isinstance(self._receipt.tax, Fraction) and not (self._inside or self._receipt.tax == 0):
            return "that is a rounding: tax worked out line by line? Give tax: as the amount that is printed"
        if isinstance(self._receipt.discount, Fraction):
            return "that is a rounding: give discount: as the amount that is printed"
        if any(item.unit_cost is not None and item.cost is None for item in self._items):
            return "that is a rounding: give cost: as printed where it is not quantity x unit_cost"
        return ""

    def _money(self, minor: int) -> Money:
        return Money(minor, self._currency)

    def _more(self, missing: int) -> str:
        return f"{self._money(abs(missing))} {'less' if missing > 0 else 'more'} than the paper"


def _as_rate(told: Fraction | Money | TaxTold | None) -> Fraction | None:
    """8.10 as 8.1 %; None for what is no amount, or more than the whole."""
    if not isinstance(told, Money):
        return None
    rate = Fraction(told.minor, 10**told.currency.digits) / 100
    return rate if 0 < rate <= 1 else None
