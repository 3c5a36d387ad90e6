"""An episode's file to an `Episode`."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from builder.journal import episode_keys as k
from builder.journal import item_keys
from builder.journal.files import number_and_slug
from builder.journal.item_reader import read_items
from builder.journal.keys import Fields, Key
from builder.journal.kinds import HOURS_TOLD, LABEL, Placed, without_about
from builder.journal.money_kinds import part_or_amount
from builder.journal.prose import check_marks, find_marks, picture, read_prose
from builder.journal.reading import Reading, kind_of
from builder.journal.records.episode import Episode, Hours, Progress, Stated, Told
from builder.journal.records.item import Item, Receipt
from builder.journal.records.prose import Picture
from builder.journal.records.written import Entry, Mapping, Scalar, Sequence
from builder.journal.report import Lost
from builder.journal.text import Parts
from builder.journal.tree import read_tree
from builder.words.judged import Judged
from builder.words.misread import clipped
from builder.words.numbers import Unreadable, read_number
from builder.words.place import Place
from builder.words.problem import Problem, Weight
from builder.words.span import Span

ADDRESS = re.compile(r"https?://[^\s/.]\S*")


@dataclass(frozen=True, slots=True)
class Unplaced:
    """An episode without a title or a date that could be read: what it says is checked, and it counts nowhere."""

    episode: Episode


def read_episode(file: str, parts: Parts, reading: Reading, owned: frozenset[str]) -> Episode | Unplaced | None:
    """The episode of a file; with mistakes Unplaced, or None where nothing but its story can be told from the rest.

    `owned` are the equipment keys of owned.yaml.
    """
    node = read_tree(parts.front, reading.report, first_line=2)
    fields = None if node is None else k.EPISODE.read(node, reading, node.place)
    if fields is None:
        read_prose(parts, reading.report)
        return None
    dates = _dates(fields, reading)
    receipts, on_receipts = _receipts(fields, reading, owned)
    items = [*on_receipts, *read_items(fields.get(k.ITEMS), reading, owned)]
    episode = _episode(file, parts, fields, reading, dates or _NO_DAY, receipts, items)
    return Unplaced(episode) if dates is None or not fields.has(k.TITLE) else episode


_NO_DAY = Span(datetime.date.min, datetime.date.min)


def _episode(
    file: str,
    parts: Parts,
    fields: Fields,
    reading: Reading,
    dates: Span,
    receipts: tuple[Receipt, ...],
    items: list[Item],
) -> Episode:
    number, slug = number_and_slug(file)
    phase = fields.get(k.PHASE)
    summary = fields.get(k.SUMMARY)

    def in_summary(_start: int, _end: int) -> Place:
        return fields.place(k.SUMMARY)

    prose = read_prose(parts, reading.report)
    check_marks(summary or "", in_summary, reading.report)
    return Episode(
        file=file,
        number=number,
        slug=slug,
        title=fields.either(k.TITLE, ""),
        dates=dates,
        place=Place(file=file),
        phase=phase,
        phase_place=fields.place(k.PHASE) if phase else None,
        phase_told=fields.wrote(k.PHASE),
        summary=summary,
        summary_marks=find_marks(summary or "", in_summary),
        hours=_hours(fields, reading),
        hours_told=fields.has(k.HOURS),
        people=fields.get(k.PEOPLE),
        weather=fields.get(k.WEATHER),
        cover=_cover(fields, reading),
        video=_video(fields, reading),
        chapters=_chapters(fields, reading),
        progress=tuple(
            Progress(phase=name.value, part=part.value, place=name.place, about=part.about)
            for name, part in fields.get(k.PROGRESS) or ()
        ),
        done=_told(fields, k.DONE),
        receipts=receipts,
        items=_in_order(items, receipts),
        stated=_stated(fields, reading),
        snags=_snags(fields, reading),
        fixed=_told(fields, k.FIXED),
        lessons=_told(fields, k.LESSONS),
        prose=prose,
    )


def _in_order(items: list[Item], receipts: tuple[Receipt, ...]) -> tuple[Item, ...]:
    """The lines as they stand in the file; those on a receipt with a guess in it are a judgement themselves."""
    guessed = {receipt.key for receipt in receipts if receipt.judged}
    marked = (replace(item, judged=True, guessed=()) if item.receipt in guessed else item for item in items)
    return tuple(sorted(marked, key=lambda item: (item.place.line, item.place.column)))


def _dates(fields: Fields, reading: Reading) -> Span | None:
    date, first, last = fields.get(k.DATE_OF), fields.get(k.FROM), fields.get(k.TO)
    if date is not None and (first is not None or last is not None):
        reading.mistake(
            fields.place(k.DATE_OF),
            "both date and from, to stand here",
            "date, or from and to",
            "remove one of them",
        )
    if date is not None:
        return Span(date, date)
    if first is None or last is None:
        _no_date(fields, reading)
        return None
    if last < first:
        reading.mistake(
            fields.place(k.TO), f"to is {last}, before from, {first}", "the last day", "correct one of them"
        )
        return None
    return Span(first, last)


def _no_date(fields: Fields, reading: Reading) -> None:
    """Say which date is missing, unless one stands there that could not be read and was reported."""
    wrote = [key.name for key in (k.DATE_OF, k.FROM, k.TO) if fields.wrote(key)]
    if not wrote:
        reading.mistake(fields.at, "the episode has no date", "a date such as 2026-04-18", "add date: 2026-04-18")
    elif wrote == [k.FROM.name]:
        fix = "add to: with the last day, or write date: for one day"
        reading.mistake(fields.place(k.FROM), "from stands without to", "both of them, or date", fix)
    elif wrote == [k.TO.name]:
        fix = "add from: with the first day, or write date: for one day"
        reading.mistake(fields.place(k.TO), "to stands without from", "both of them, or date", fix)


def _snags(fields: Fields, reading: Reading) -> tuple[Told, ...]:
    """The snags; one that cannot be read may be what a later episode calls fixed."""
    snags, node = _told(fields, k.SNAGS), fields.node and fields.node.get(k.SNAGS.name)
    there = len(node.items) if isinstance(node, Sequence) else int(not (isinstance(node, Scalar) and node.empty))
    if fields.wrote(k.SNAGS) and len(snags) < there:
        reading.report.lose(Lost.SNAG)
    return snags


def _told(fields: Fields, key: Key[tuple[Placed[str], ...]]) -> tuple[Told, ...]:
    return tuple(Told(text=one.value, place=one.place) for one in fields.get(key) or ())


def _hours(fields: Fields, reading: Reading) -> tuple[Hours, ...]:
    node = fields.get(k.HOURS)
    if node is None:
        return ()
    if not isinstance(node, Mapping):
        told = HOURS_TOLD.read(node, "hours", reading)
        return () if told is None else (_of(told, None, node.place),)
    read = ((one.key, HOURS_TOLD.read(one.value, one.key.text, reading)) for one in node.entries)
    return tuple(_of(told, key.text, key.place) for key, told in read if told is not None)


def _of(told: Judged[Fraction], phase: str | None, place: Place) -> Hours:
    return Hours(phase=phase, hours=told.value, place=place, about=told.about)


def _cover(fields: Fields, reading: Reading) -> Picture | None:
    cover = fields.get(k.COVER)
    return None if cover is None else picture(cover, "", fields.place(k.COVER), reading.report)


def _video(fields: Fields, reading: Reading) -> str | None:
    video = fields.get(k.VIDEO)
    if video is not None and not ADDRESS.fullmatch(video):
        fix = f"write https://{video}" if ADDRESS.fullmatch(f"https://{video}") and "." in video else ""
        reading.mistake(
            fields.place(k.VIDEO), f"video is {clipped(video)}", "an address that begins with https://", fix
        )
        return None
    return video


def _chapters(fields: Fields, reading: Reading) -> tuple[tuple[str, str], ...]:
    chapters: list[tuple[str, str]] = []
    for time, name in fields.get(k.CHAPTERS) or ():
        if re.fullmatch(r"\d{1,3}(?::[0-5]\d){1,2}", time.value, re.ASCII):
            chapters.append((time.value, name))
        else:
            turned = re.fullmatch(r"[\d:]+", name, re.ASCII)
            reading.mistake(
                time.place,
                f"{clipped(time.value)} is no time of the video",
                "minutes and seconds such as 0:00 or 1:02:30, a colon and the name of the chapter",
                f'write "{name}": {time.value}' if turned else "",
            )
    return tuple(chapters)


def _receipts(fields: Fields, reading: Reading, owned: frozenset[str]) -> tuple[tuple[Receipt, ...], list[Item]]:
    node = fields.get(k.RECEIPTS)
    if node is None or (isinstance(node, Scalar) and node.empty):
        return (), []
    if not isinstance(node, Mapping):
        reading.mistake(
            node.place,
            f"receipts is {kind_of(node)}",
            "a key, a colon and the receipt, for each",
            "write a word for the receipt and a colon, such as yard:, and its keys below it, further in",
        )
        reading.report.lose(Lost.RECEIPT, Lost.LINE)
        return (), []
    receipts: list[Receipt] = []
    items: list[Item] = []
    for entry in node.entries:
        receipt, lines = _receipt(entry, reading, owned)
        receipts += [receipt] if receipt else []
        items += lines
    return tuple(receipts), items


def _receipt(entry: Entry, reading: Reading, owned: frozenset[str]) -> tuple[Receipt | None, list[Item]]:
    key = LABEL.read(entry.key, "the key of a receipt", reading)
    fields = item_keys.RECEIPT.read(entry.value, reading, entry.key.place)
    if fields is None or key is None:
        reading.report.lose(Lost.RECEIPT, Lost.LINE)
        return None, []
    if fields.unread:
        reading.report.lose(Lost.RECEIPT)
    tax, delivery = fields.get(item_keys.TAX_ON), fields.get(item_keys.DELIVERY)
    discount = fields.get(item_keys.DISCOUNT)
    receipt = Receipt(
        place=entry.key.place,
        key=key,
        seller=fields.get(item_keys.SELLER),
        tax=None if tax is None else tax.value,
        delivery=None if delivery is None else delivery.value,
        delivery_taxed=fields.either(item_keys.DELIVERY_TAXED, False),
        discount=None if discount is None else discount.value,
        total=fields.get(item_keys.TOTAL),
        total_place=fields.place(item_keys.TOTAL) if fields.has(item_keys.TOTAL) else None,
        judged=any(one is not None and one.about for one in (tax, delivery, discount)),
        tax_asked=_asked(item_keys.TAX_ON, fields, reading),
        discount_asked=_asked(item_keys.DISCOUNT, fields, reading),
    )
    return receipt, read_items(fields.get(item_keys.LINES_ON), reading, owned, key)


_MOST_TAXED = 30  # no tax or discount that people meet is a higher rate, and few amounts on receipts are as low


def _asked(key: Key[Any], fields: Fields, reading: Reading) -> Problem | None:
    """What to ask about `tax: 19`, which is an amount; the ledger knows whether the printed total tells."""
    asked = part_or_amount(key.name, fields.text(key), _MOST_TAXED, "the rate", reading.currency)
    if asked is None or not fields.has(key):
        return None
    found, expected, fix = asked
    return Problem(place=fields.place(key), found=found, expected=expected, fix=fix, weight=Weight.WARNING)


def _stated(fields: Fields, reading: Reading) -> tuple[Stated, ...]:
    node = fields.get(k.STATED)
    if node is None or (isinstance(node, Scalar) and node.empty):
        return ()
    if not isinstance(node, Mapping):
        reading.mistake(
            node.place,
            f"stated is {kind_of(node)}",
            "the name of a figure, a colon and what was said",
            f"write {{spent: {clipped(node.text)}}}, for instance" if isinstance(node, Scalar) else "",
        )
        return ()
    stated = (_one_stated(entry, reading) for entry in node.entries)
    return tuple(one for one in stated if one is not None)


def _one_stated(entry: Entry, reading: Reading) -> Stated | None:
    told, differs = entry.value, None
    if isinstance(told, Mapping):
        said = k.SAID.read(told, reading, told.place)
        differs = None if said is None else said.get(k.DIFFERS)
        says = told.get(k.SAYS.name)
        if not isinstance(says, Scalar):
            return None
        told = says
    expected = "the figure as it was said, such as 1204 or about 1200"
    scalar = reading.scalar(told, entry.key.text, expected)
    if scalar is None:
        return None
    try:
        bare, about = without_about(scalar.text.strip())
        written = read_number(bare, expected)
    except Unreadable as error:
        reading.report.unreadable(scalar.place, entry.key.text, error)
        return None
    return Stated(
        name=" ".join(entry.key.text.split()),
        named=entry.key.place,
        value=Fraction(written.value),
        decimals=written.decimals,
        about=about,
        differs=differs,
        place=scalar.place,
    )
