"""Windows, doors and sheets that were found or bought second-hand, for the take-off of a wall."""

from __future__ import annotations

from builder.journal.check import all_items
from builder.journal.records.item import Item, Source
from builder.journal.records.journal import Journal
from builder.journal.records.takeoff_entry import SizedFind

_FOUND = (Source.SALVAGED, Source.SECONDHAND, Source.GIFT)


def sized_finds(journal: Journal) -> tuple[SizedFind, ...]:
    """Every found thing with a size, in order of date."""
    finds = (_find(item) for item in all_items(journal) if item.source in _FOUND)
    return tuple(find for find in finds if find is not None)


def _find(item: Item) -> SizedFind | None:
    if item.size is None:
        return None
    counted = item.quantity is not None and item.quantity.unit.counts and item.quantity.value.denominator == 1
    return SizedFind(
        line=item.id or "",
        what=item.what,
        width=item.size.width.in_unit("m"),
        height=item.size.height.in_unit("m"),
        count=int(item.quantity.value) if counted and item.quantity else 1,
    )
