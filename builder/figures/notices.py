"""What is no mistake and still worth a look before publishing: warnings."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from fractions import Fraction

from builder.figures.account import Account
from builder.journal.records.item import Item, Kind, Source
from builder.ledger.records import Line
from builder.plan.budget_records import Status
from builder.words.place import Place
from builder.words.problem import Problem, Weight
from builder.words.rounding import decimal_text

FAR = 10  # a slipped point makes a price ten times what it was
_FOUND = frozenset({Source.SALVAGED, Source.SECONDHAND, Source.GIFT, Source.BORROWED})


def notices(account: Account, today: datetime.date | None) -> tuple[Problem, ...]:
    """Every warning; `today` is None where nobody looks at the clock (then nothing lies in the future)."""
    return (
        *_unvalued(account),
        *_slipped_points(account),
        *_no_progress(account),
        *_other_units(account),
        *_no_hours(account),
        *to_come(account, today),
    )


def _warning(place: Place, found: str, expected: str, fix: str) -> Problem:
    return Problem(place=place, found=found, expected=expected, fix=fix, weight=Weight.WARNING)


def _unvalued(account: Account) -> Iterator[Problem]:
    for line in account.ledger.lines:
        if line.parts.unvalued and line.item.source in _FOUND:
            yield _warning(
                line.item.place,
                f"nobody said what {line.item.what} would cost new",
                "replacement_cost: on what was found, so that it counts as saved",
                "add replacement_cost: with the price of one, or leave it out if nobody knows",
            )


def _slipped_points(account: Account) -> Iterator[Problem]:
    before: dict[tuple[str, str], tuple[Fraction, Line]] = {}
    for line in account.ledger.lines:
        price = _unit_price(line)
        if price is None:
            continue
        item, unit = line.item, line.item.quantity.unit.measure if line.item.quantity else ""
        key = (item.what.casefold(), unit)
        if key in before:
            yield from _far(line, price, *before[key])
        before[key] = (price, line)


def _unit_price(line: Line) -> Fraction | None:
    """What one of it cost, minor units; None for what was free, uncounted or given back."""
    item = line.item
    if item.kind is not Kind.MATERIAL or item.source not in (Source.BOUGHT, Source.SECONDHAND):
        return None
    if line.priced is None or not line.priced.goods or item.quantity is None:
        return None
    return line.priced.goods / (item.quantity.value * item.quantity.unit.ratio)


def _far(line: Line, price: Fraction, earlier: Fraction, first: Line) -> Iterator[Problem]:
    times = price / earlier
    if 1 / Fraction(FAR) < times < FAR:
        return
    word = "dearer" if times > 1 else "cheaper"
    factor = decimal_text(times if times > 1 else 1 / times, 0)
    yield _warning(
        _priced_at(line.item),
        f"{line.item.what} is {factor} times {word} than at {first.item.place.file}:{first.item.place.line}",
        "a price near what the same thing cost before",
        "a slipped point? Check the cost and the quantity",
    )


def _priced_at(item: Item) -> Place:
    return item.at("cost" if any(name == "cost" for name, _ in item.places) else "unit_cost")


def _no_progress(account: Account) -> Iterator[Problem]:
    told = {one.phase for episode in account.journal.episodes for one in episode.progress}
    for phase in account.phases:
        planned = account.journal.phase(phase.key) if phase.key else None
        if planned is not None and phase.status is Status.UNDER_WAY and phase.key not in told:
            yield _warning(
                planned.place,
                f"{planned.name} is under way, and no episode says how far",
                "progress: in the newest episode of the phase, for the forecast",
                f"add progress: {{{planned.key}: 40%}} there",
            )


def _other_units(account: Account) -> Iterator[Problem]:
    """Planned in one unit and bought in another: the two cannot be compared but in money."""
    for phase in account.phases:
        for match in phase.matches:
            lines = [line for ref in match.refs if (line := account.line(ref)) and line.used is not None]
            wanted = match.planned_quantity
            other = next((line for line in lines if wanted and line.used and not line.used.like(wanted)), None)
            if other is not None and wanted is not None and other.used is not None:
                yield _warning(
                    other.item.at("quantity"),
                    f"{other.item.what} is planned in {wanted.unit.symbol} and comes in {other.used.unit.symbol}",
                    "one unit for both, so that price and quantity can be told apart",
                    f"write {wanted.unit.symbol} here, or the other word in the plan",
                )


def _no_hours(account: Account) -> Iterator[Problem]:
    if account.timing is None:
        return
    for episode in account.journal.episodes:
        if not episode.hours_told:
            yield _warning(
                episode.place,
                "the episode does not say how many hours it took",
                "hours: with your own hours, from which the pace is learnt",
                "add hours: 8, or hours: 0 if there was no work",
            )


def to_come(account: Account, today: datetime.date | None) -> Iterator[Problem]:
    """Episodes of the future: told beside mistakes too, as a slip in the year may be what they come from."""
    for episode in account.journal.episodes:
        if today is not None and episode.date > today:
            yield _warning(
                episode.place,
                f"the episode is dated {episode.date}, which is still to come",
                f"a day up to today, {today}",
                "check the year",
            )
