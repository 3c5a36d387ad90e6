"""The journal's settings (journal.yaml)."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from fractions import Fraction

from builder.words.money import Currency
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.span import Span
from builder.words.units import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelRate:
    """What travel is worth: major units of money per mile or kilometre."""

    rate: Fraction
    per: Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """journal.yaml. `labour_rate` is major units per hour; `service_life` years; `metric` the habit of units.

    `work_week` holds hours by weekday, Monday first, or is None when the journal does not say.
    """

    title: str
    summary: str
    currency: Currency
    language: str
    metric: bool
    author: str | None = None
    prices_include_tax: bool = False
    address: str | None = None
    begun: datetime.date | None = None
    ready_by: datetime.date | None = None
    floor_area: Quantity | None = None
    service_life: Fraction | None = None
    labour_rate: Fraction | None = None
    travel_rate: TravelRate | None = None
    work_week: tuple[Fraction, ...] | None = None
    away: tuple[Span, ...] = ()
    place: Place
