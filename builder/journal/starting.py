"""The texts of a new journal and of a new episode, with comments that teach the format."""

from __future__ import annotations

import datetime
import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.journal.add_line import NewLine
from builder.journal.language import uses_metric
from builder.journal.quoting import quoted
from builder.journal.reading import FALLBACK
from builder.journal.records.item import Item, Source, Told
from builder.journal.records.plan import OwnedStock
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.rounding import decimal_text
from builder.words.span import Span

SCHEMAS = ".barrowbook"


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginning:
    """What `begin` asks: the answers a small journal is made from."""

    title: str
    language: str
    currency: str
    ready_by: datetime.date | None
    phases: tuple[str, ...]
    begun: datetime.date


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What an earlier build leaves to this one: its leftovers and what it bought to keep."""

    stock: tuple[OwnedStock, ...] = ()


def journal_files(told: Beginning, stock: Sequence[str] = ()) -> Iterator[tuple[str, str]]:
    """The files of a new journal, by path: settings, plan, what is owned. `stock` are lines for owned.yaml."""
    yield "journal.yaml", _settings(told)
    yield "plan.yaml", _plan(told)
    yield "owned.yaml", _owned(told, stock)


@dataclass(frozen=True, slots=True, kw_only=True)
class Examples:
    """What the comments measure with, in the habit of feet or of metres."""

    area: str
    bag: str
    length: str


_FEET = Examples(area="10 ft x 14 ft", bag="80 lb", length="30 ft")
_METRES = Examples(area="3 m x 4.2 m", bag="25 kg", length="10 m")


def _like(told: Beginning) -> Examples:
    return _METRES if uses_metric(told.language) else _FEET


def _schema(name: str) -> str:
    return f"# yaml-language-server: $schema={SCHEMAS}/{name}.schema.json\n"


def _settings(told: Beginning) -> str:
    ready = f"ready_by: {told.ready_by}" if told.ready_by else "# ready_by: 2027-10-30   # the date it is promised for"
    schema = _schema("journal")
    return f"""{schema}# The settings of this journal. A line with # before it is a comment; take the # away to use it.
title: {quoted(told.title)}
# summary: what is being built, in a sentence
language: {told.language}
currency: {told.currency}
begun: {told.begun}                       # the day work began
{ready}
work_week: {{saturday: 7, sunday: 5}}   # hours you mean to work, for the forecast of when it will be ready
# away: [2027-07-04/2027-07-12]         # days without work
# prices_include_tax: yes               # where shelf prices carry the tax
# floor_area: {_like(told).area:<26}# gives cost per area
# service_life: 20 years                # gives cost per year of service
# labour_rate: 18                       # what an hour of your own work would cost; in no total
# address: https://example.org/build    # where the site will stand
"""


def _plan(told: Beginning) -> str:
    lines = [
        _schema("plan")
        + "# What it is to cost, and in which order. Each phase has a key (the word you write in episodes) and a name.",
        "# contingency: 10%       # kept apart for overruns, never inside a phase",
        "phases:",
    ]
    keys = [slug_of(name) for name in told.phases]
    for name, key, before in zip(told.phases, keys, ["", *keys], strict=False):
        lines += [f"  - key: {key}", f"    name: {quoted(name)}"]
        lines += [f"    after: [{before}]"] if before else []
        lines += ["    # hours: [8, 14, 24]  # hours of work: low, likely, high"]
        lines += ["    # planned: 500        # what it is to cost"]
        lines += [] if before else _as_lines(_like(told).bag, amount_in(_of(told), "6.10"))
    return "\n".join(lines) + "\n"


def _of(told: Beginning) -> Currency:
    return Currency.named(told.currency)


def _as_lines(bag: str, price: str) -> list[str]:
    return [
        "    # or, in place of one amount, lines like the items of an episode, each with a key:",
        "    # planned:",
        "    #   - key: mix",
        f"    #     material: Concrete mix, {bag}",
        "    #     quantity: 58 bag",
        f"    #     unit_cost: {price}",
    ]


def _owned(told: Beginning, stock: Sequence[str]) -> str:
    text = f"""{_schema("owned")}# Machines and tools you own already, and leftovers of earlier jobs.
# equipment:
#   saw:
#     name: Table saw
#     replacement_cost: 9      # what an hour of it would cost to hire
#     basis: day hire at the nearest yard, divided by eight
"""
    if stock:
        return text + "stock:\n" + "\n".join(stock) + "\n"
    return (
        text
        + f"""# stock:
#   fabric:
#     material: Drainage fabric
#     quantity: {_like(told).length}
#     unit_cost: {amount_in(_of(told), "0.40"):<14}# what a unit cost then; leave it out if nobody knows
"""
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class NewEpisode:
    """What `episode` knows when it makes the next file."""

    number: int
    title: str
    days: Span
    phase: str | None
    usual: tuple[NewLine, ...] = ()
    to_buy: tuple[str, ...] = ()
    snags: tuple[str, ...] = ()
    currency: Currency = FALLBACK


def episode_file(told: NewEpisode) -> tuple[str, str]:
    """Path and text of a new episode."""
    return f"episodes/{told.number:02d}-{slug_of(told.title)}.md", "\n".join(_episode(told)) + "\n"


def _episode(told: NewEpisode) -> Iterator[str]:
    yield "---"
    yield f"title: {quoted(told.title)}"
    if told.days.first == told.days.last:
        yield f"date: {told.days.first}"
    else:
        yield f"from: {told.days.first}"
        yield f"to: {told.days.last}"
    yield f"phase: {told.phase}" if told.phase else "# phase: ground"
    yield "# hours: 12            # your own hours"
    yield "# people: 2"
    yield "# weather: dry, cold wind"
    if told.phase:
        yield f"# progress: {{{told.phase}: 40%}}"
        yield f"# done: [{told.phase}]       # when it is finished"
    yield from _snags(told.snags)
    yield "items:"
    yield "  # what it was, a comma, what it cost:"
    yield f"  # - Galvanised nails, {amount_in(told.currency, '36.90')}"
    yield "  # or with more to say:"
    yield "  # - material: Crushed stone"
    yield "  #   quantity: 1 load"
    yield "  #   cost: 260"
    yield "  #   share: 55%        # the rest went elsewhere"
    yield from _comments("what you use most:", [line for one in told.usual for line in one.written()])
    yield from _comments("planned for this phase and not bought yet:", [f"- {line}" for line in told.to_buy])
    yield "---"
    yield ""
    yield "<!-- The story goes here, in place of this line: what happened this weekend. -->"


def _snags(snags: Sequence[str]) -> Iterator[str]:
    if snags:
        yield "# fixed:               # snags that are still open; take the # away when one is done"
        yield from (f"#   - {quoted(snag)}" for snag in snags)


def _comments(heading: str, lines: Sequence[str]) -> Iterator[str]:
    if lines:
        yield f"  # {heading}"
        yield from (f"  # {line}" for line in lines)


def like_before(item: Item) -> NewLine:
    """A line that brings the same thing from where it came the last time, at what it cost then."""
    sold = item.source is Source.BOUGHT
    told = {
        "quantity": "" if item.quantity is None else _counted(item.quantity),
        "unit_cost": "" if item.unit_cost is None else _exact(item.unit_cost),
        "cost": _cost_of(item),
        "source": "" if sold else item.source.value,
        "replacement_cost": "" if item.replacement_cost is None else _exact(item.replacement_cost),
        "from": item.lot or "",
    }
    values = tuple((name, value) for name, value in told.items() if value)
    return NewLine(kind=item.kind.value, what=item.what, values=values)


def _cost_of(item: Item) -> str:
    """As it was written; what was the rest of a receipt is nothing that a line alone could have."""
    if isinstance(item.cost, Told):
        return Told.UNKNOWN.value
    return "" if item.cost is None else str(item.cost)


def amount_in(currency: Currency, example: str) -> str:
    """An amount for showing, without its point where the currency has nothing behind it."""
    return example if currency.digits else example.replace(".", "").lstrip("0")


def slug_of(text: str) -> str:
    """A few words as a file name or a key: small letters, digits and dashes, beginning with a letter.

    >>> slug_of("The footing: every bag twice!"), slug_of("2nd pour")
    ('the-footing-every-bag-twice', 'e-2nd-pour')
    """
    spelt = text.translate(_SPELT)
    plain = unicodedata.normalize("NFKD", spelt).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:60].strip("-")
    if not slug:
        return "episode"
    return slug if slug[0].isalpha() else f"e-{slug}"


_SPELT = str.maketrans(
    {"ß": "ss", "ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue", "ø": "o", "æ": "ae"}
)


def last_weekend(today: datetime.date) -> Span:
    """Today where it is a Saturday or a Sunday (the whole weekend on Sunday), else the last weekend."""
    if today.weekday() == 5:
        return Span(today, today)
    back = (today.weekday() - 6) % 7
    sunday = today - datetime.timedelta(days=back)
    return Span(sunday - datetime.timedelta(days=1), sunday)


def stock_lines(stock: Iterable[OwnedStock]) -> list[str]:
    """Leftovers as lines of owned.yaml."""
    lines: list[str] = []
    for one in stock:
        lines += [f"  {one.key}:", f"    material: {quoted(one.material)}", f"    quantity: {_counted(one.quantity)}"]
        if one.unit_cost is not None:
            lines.append(f"    unit_cost: {_exact(one.unit_cost)}")
    return lines


def _counted(quantity: Quantity) -> str:
    return str(quantity) if quantity.unit.symbol != "piece" else str(quantity).split(" ")[0]


def _exact(cost: Fraction) -> str:
    return decimal_text(cost, 6).rstrip("0").rstrip(".")
