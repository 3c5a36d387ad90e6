"""Still wanted: what the plan says is to be found, not bought, and is not found yet; with sizes and by when."""

from __future__ import annotations

from collections.abc import Iterator

from builder.pages.calendar_page import forecast_of
from builder.pages.costs import SOURCES
from builder.pages.paths import phase_path
from builder.pages.site import Material
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.plan.budget_records import Budgeted, PhaseOutlook, Status


def wanted_table(material: Material, root: str) -> Table | None:
    """The list; None when nothing is wanted."""
    rows = tuple(_rows(material, root))
    if not rows:
        return None
    words = material.words
    return without_empty(
        Table(
            caption=words.say("Still wanted: to be found, not bought"),
            columns=(
                Column(label=words.say("What"), role="what"),
                Column(label=words.say("How many"), role="side", many=True),
                Column(label=words.say("Where from"), role="side"),
                Column(label=words.say("Phase"), role="part"),
                Column(label=words.say("By"), role="part"),
            ),
            rows=rows,
        )
    )


def _rows(material: Material, root: str) -> Iterator[Row]:
    for phase in material.account.phases:
        if phase.status is Status.DONE:
            continue
        for match in phase.matches:
            if not match.refs:
                yield from (_row(material, phase, one, root) for one in match.planned if one.to_find)


def _row(material: Material, phase: PhaseOutlook, planned: Budgeted, root: str) -> Row:
    words, item = material.words, planned.item
    forecast = forecast_of(phase.key or "", material.account)
    return Row(
        cells=(
            Cell(text=item.what, small=words.as_written(item.size.text) if item.size else ""),
            Cell(text=words.quantity(planned.quantity)),
            Cell(text=words.say(SOURCES[item.source])),
            Cell(text=material.account.phase_name(phase.key) or "", href=root + phase_path(phase.key)),
            Cell(text=words.date(forecast.start) if forecast else ""),
        )
    )
