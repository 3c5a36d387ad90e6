"""Where a language is spoken, and what people pay with there."""

from __future__ import annotations

import datetime

from babel.core import get_global
from babel.numbers import get_territory_currencies

_NEWER = {"BG": "EUR"}  # since 2026-01-01; Babel's table may still have the lev, which ISO 4217 has no more


def usual_currency(language: str, day: datetime.date) -> str:
    """The currency on a day where a language tag is at home, as ISO 4217; "" where there is none.

    >>> usual_currency("de-CH", datetime.date(2026, 4, 18)), usual_currency("ja", datetime.date(2026, 4, 18))
    ('CHF', 'JPY')
    """
    region = next((part for part in language.split("-")[1:] if len(part) == 2), "") or _at_home(language)
    if region in _NEWER:
        return _NEWER[region]
    return next(iter(get_territory_currencies(region, start_date=day, end_date=day)), "") if region else ""


def _at_home(language: str) -> str:
    """The region where most who write a language and script without naming one live: BR for pt, TW for zh-Hant."""
    likely: str = get_global("likely_subtags").get(language.replace("-", "_"), "")
    return likely.rpartition("_")[2]
