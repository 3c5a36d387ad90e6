"""journal.yaml: its keys, and the settings read from them."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

from builder.journal.keys import Fields, Group, Key
from builder.journal.kinds import AWAY, DATE, HOURS, TEXT, YEARS, YES_NO, Listed, Placed, Table, bare_word, loosely
from builder.journal.language import LANGUAGE, WORDED, uses_metric
from builder.journal.money_kinds import AREA, CURRENCY, TRAVEL_WORTH, WORTH_OF
from builder.journal.reading import Reading
from builder.journal.records.settings import Settings, TravelRate
from builder.journal.records.written import Mapping, Node, Scalar
from builder.journal.report import did_you_mean
from builder.words.misread import clipped
from builder.words.place import Place
from builder.words.rounding import significant_text
from builder.words.units import MEASURED

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")

TITLE = Key(
    name="title",
    also=("name",),
    kind=TEXT,
    meaning="name of the build",
    example="A roof that rolls off",
    required=True,
)
SUMMARY = Key(
    name="summary",
    also=("description",),
    kind=TEXT,
    meaning="what is being built, in a sentence",
    example="An observatory, built at weekends.",
)
AUTHOR = Key(name="author", also=("by", "builder"), kind=TEXT, meaning="who writes", example="Robin")
LANGUAGE_OF = Key(
    name="language",
    also=("locale", "lang"),
    kind=LANGUAGE,
    meaning="language of the pages, as BCP 47",
    example="en-US",
    required=True,
)
CURRENCY_OF = Key(
    name="currency",
    kind=CURRENCY,
    meaning="the one currency of the journal, ISO 4217",
    example="USD",
    required=True,
)
INCLUDE_TAX = Key(
    name="prices_include_tax",
    kind=YES_NO,
    meaning="yes where shelf prices carry the tax (default no)",
    example="yes",
)
ADDRESS = Key(
    name="address",
    also=("url", "site", "website", "site_url"),
    kind=TEXT,
    meaning="where the site will stand; for feed, sitemap and share cards",
    example="https://example.org/shed",
)
BEGUN = Key(
    name="begun",
    also=("start", "started", "begin", "began"),
    kind=DATE,
    meaning="the day work began",
    example="2026-04-11",
)
READY_BY = Key(
    name="ready_by",
    also=("deadline", "due", "finish_by", "end"),
    kind=DATE,
    meaning="the date it was promised for",
    example="2026-11-29",
)
_ROUGH_AREA, _ROUGH_YEARS = loosely(AREA), loosely(YEARS)
FLOOR_AREA = Key(
    name="floor_area",
    also=("area", "size"),
    kind=_ROUGH_AREA,
    meaning="gives cost per area",
    example="10 ft x 14 ft",
)
SERVICE_LIFE = Key(
    name="service_life",
    also=("lifetime", "lifespan"),
    kind=_ROUGH_YEARS,
    meaning="gives cost per year of service",
    example="20 years",
)
LABOUR_RATE = Key(
    name="labour_rate",
    also=("labor_rate", "hourly_rate"),
    kind=WORTH_OF,
    meaning="what an hour of own work would cost; for own_work only",
    example="18",
)
TRAVEL_RATE_OF = Key(
    name="travel_rate",
    also=("mileage_rate",),
    kind=TRAVEL_WORTH,
    meaning="what a mile or a kilometre is worth; for travel_worth only. A bare number is per mile in the "
    "habit of feet, else per km",
    example="0.55 per mile",
)
WORK_WEEK = Key(
    name="work_week",
    also=("hours", "weekly_hours"),
    kind=Table(HOURS, "a weekday", "write {saturday: 7, sunday: 5}"),
    meaning="hours available by weekday",
    example="{saturday: 7, sunday: 5}",
)
AWAY_ON = Key(
    name="away",
    also=("holidays", "vacation", "days_off"),
    kind=Listed(AWAY, lone=True),
    meaning="days without work",
    example="[2026-07-04/2026-07-12]",
)
SETTINGS = Group(
    name="journal.yaml",
    keys=(
        TITLE,
        SUMMARY,
        AUTHOR,
        LANGUAGE_OF,
        CURRENCY_OF,
        INCLUDE_TAX,
        ADDRESS,
        BEGUN,
        READY_BY,
        FLOOR_AREA,
        SERVICE_LIFE,
        LABOUR_RATE,
        TRAVEL_RATE_OF,
        WORK_WEEK,
        AWAY_ON,
    ),
)


def read_settings(node: Node | None, file: str, reading: Reading) -> tuple[Settings | None, Reading]:
    """The settings, and the reading from here on (which knows the currency).

    `node` is None when the file could not be read, which has been reported.
    """
    reading = dataclasses.replace(reading, metric=_is_metric(node))
    fields = None if node is None else SETTINGS.read(node, reading, Place(file=file))
    if fields is None:
        return None, reading
    currency = fields.either(CURRENCY_OF, reading.currency)
    settings = _settings(fields, reading)
    complete = all(fields.has(key) for key in SETTINGS.keys if key.required)
    return settings if complete else None, dataclasses.replace(reading, currency=currency)


def _is_metric(node: Node | None) -> bool:
    """Whether the language that stands there is one of metres, before anything is read."""
    language = node.get(LANGUAGE_OF.name) if isinstance(node, Mapping) else None
    return isinstance(language, Scalar) and bool(language.text) and uses_metric(language.text)


def _settings(fields: Fields, reading: Reading) -> Settings:
    language = fields.either(LANGUAGE_OF, "en-US")
    settings = Settings(
        title=fields.either(TITLE, ""),
        summary=fields.either(SUMMARY, ""),
        author=fields.get(AUTHOR),
        language=language,
        metric=uses_metric(language),
        currency=fields.either(CURRENCY_OF, reading.currency),
        prices_include_tax=fields.either(INCLUDE_TAX, False),
        address=_address(fields, reading),
        begun=fields.get(BEGUN),
        ready_by=fields.get(READY_BY),
        floor_area=fields.get(FLOOR_AREA),
        service_life=fields.get(SERVICE_LIFE),
        labour_rate=fields.get(LABOUR_RATE),
        travel_rate=_travel_rate(fields, uses_metric(language)),
        work_week=_work_week(fields, reading),
        away=tuple(one.value for one in fields.get(AWAY_ON) or ()),
        place=fields.at,
    )
    _dates(settings, fields, reading)
    _words(language, fields, reading)
    return settings


def _address(fields: Fields, reading: Reading) -> str | None:
    address = fields.get(ADDRESS)
    if address is not None and not re.fullmatch(r"https?://[^\s/.][^\s\"<>]*", address):
        whole = re.fullmatch(r"[^\s/:.][^\s\"<>:]*\.[^\s\"<>]+", address)
        reading.mistake(
            fields.place(ADDRESS),
            f"address is {clipped(address)}",
            "an address that begins with https://",
            f"write https://{address}" if whole else "write the address as the browser shows it",
        )
        return None
    return address.rstrip("/") if address else None


def _travel_rate(fields: Fields, metric: bool) -> TravelRate | None:
    told = fields.get(TRAVEL_RATE_OF)
    if told is None:
        return None
    rate, unit = told
    return TravelRate(rate=rate, per=unit or MEASURED["km" if metric else "mi"])


def _work_week(fields: Fields, reading: Reading) -> tuple[Fraction, ...] | None:
    told = fields.get(WORK_WEEK)
    if told is None:
        return None
    hours = [Fraction(0)] * len(WEEKDAYS)
    for day, number in told:
        _one_day(day, number, hours, fields.either(LANGUAGE_OF, "en"), reading)
    if told and not any(number for _, number in told):
        reading.mistake(
            fields.place(WORK_WEEK),
            "the work week has no hours",
            "hours on at least one weekday",
            "write work_week: {saturday: 7, sunday: 5}, or remove the key",
        )
        return None
    return tuple(hours) if any(hours) else None


def _one_day(day: Placed[str], number: Fraction, hours: list[Fraction], language: str, reading: Reading) -> None:
    if day.value not in WEEKDAYS:
        reading.mistake(
            day.place, f"{day.value} is no weekday", "monday to sunday", _weekday(day.value, number, language)
        )
    elif number > 24:
        reading.mistake(day.place, f"{day.value} has {significant_text(number)} hours", "at most 24")
    else:
        hours[WEEKDAYS.index(day.value)] = number


def _weekday(word: str, hours: Fraction, language: str) -> str:
    """`did you mean saturday?` for Saturday, sat or saterday; `write saturday: 7` for Samstag, sábado or samedi."""
    short = [day for day in WEEKDAYS if len(word) >= 2 and day.startswith(word.lower().rstrip("."))]
    if len(short) == 1:
        return f"did you mean {short[0]}?"
    own = _DAYS.get(language.partition("-")[0], ())
    for names in (own, [name for known in _DAYS.values() for name in known]):
        meant = {day for name, day in names if len(word) >= 2 and name.startswith(bare_word(word).rstrip("."))}
        if len(meant) == 1:
            return f"write {meant.pop()}: {significant_text(hours)}"
    return did_you_mean(word, WEEKDAYS)


def _named(words: str) -> list[tuple[str, str]]:
    return list(zip(words.split(" "), WEEKDAYS, strict=True))


# In the other languages of the pages, without their accents.
_DAYS = {
    "de": _named("montag dienstag mittwoch donnerstag freitag samstag sonntag"),
    "es": _named("lunes martes miercoles jueves viernes sabado domingo"),
    "fr": _named("lundi mardi mercredi jeudi vendredi samedi dimanche"),
    "in the north": [("sonnabend", "saturday")],  # who writes So means Sunday
}


def _words(language: str, fields: Fields, reading: Reading) -> None:
    if language.partition("-")[0] not in WORDED:
        reading.report.warning(
            fields.place(LANGUAGE_OF),
            f"the pages have no words in {language} yet, so theirs are English; dates, numbers and money follow it",
            f"a language that has them: {', '.join(WORDED)}",
            "write one of these, or leave it if that will do",
        )


def _dates(settings: Settings, fields: Fields, reading: Reading) -> None:
    begun, ready = settings.begun, settings.ready_by
    if begun and ready and ready < begun:
        reading.mistake(
            fields.place(READY_BY),
            f"ready_by is {ready}, before begun, {begun}",
            "the promised date after the first day of work",
            "correct one of the two",
        )
