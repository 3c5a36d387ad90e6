"""A new journal: asked for, made from the answers, never half of it. `builder.evening` makes its first episode."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

from builder.app import work_out
from builder.evening import Ask, read_answer
from builder.journal.files import EPISODES, SETTINGS, Files
from builder.journal.keys import Word
from builder.journal.kinds import DATE, TEXT
from builder.journal.language import LANGUAGE
from builder.journal.money_kinds import CURRENCY
from builder.journal.read import read_journal
from builder.journal.reading import FALLBACK, Reading
from builder.journal.records.plan import OwnedStock
from builder.journal.report import Report
from builder.journal.schema import schemas
from builder.journal.starting import SCHEMAS, Beginning, journal_files, last_weekend, slug_of, stock_lines
from builder.journal.writing import NotDone, tidy, write_new
from builder.ledger.records import Left
from builder.pages.region import usual_currency
from builder.words.currencies import codes
from builder.words.numbers import Unreadable
from builder.words.place import Place
from builder.words.quantity import Quantity
from builder.words.telling import Tell, quiet

T = TypeVar("T")


def begin(folder: Path, told: Beginning, after: Path | None = None, tell: Tell = quiet) -> list[Path]:
    """Make a new journal; the files made. Never writes over one; NotDone where a file stands in the way.

    `after` is the folder of a finished build: its leftovers and what it bought to keep become this
    journal's stock from earlier.
    """
    check_free(folder)
    stock = stock_lines(_left_by(after, tell)) if after is not None else []
    # The settings last: they make the folder a journal, so a killed run leaves none that is half begun.
    files = dict(journal_files(told, stock))
    _check_reads(folder, files)
    files |= {f"{SCHEMAS}/{name}.schema.json": text for name, text in schemas()}
    _check_rest(folder, files)
    for name in sorted(files, key=lambda name: name == SETTINGS):
        if (folder / name).exists():
            tidy(folder / name)
        else:
            write_new(folder / name, files[name])
    (folder / EPISODES).mkdir(exist_ok=True)
    (folder / "photos").mkdir(exist_ok=True)
    return [folder / name for name in files]


def check_free(folder: Path) -> None:
    """NotDone where a journal stands already; to be asked before any question."""
    if (folder / SETTINGS).exists():
        raise NotDone(f"{folder / SETTINGS} is there already", _ANOTHER)


def _check_reads(folder: Path, files: Mapping[str, str]) -> None:
    """NotDone where an answer would make a file that does not read, as a name with a sign that cannot be printed."""
    texts = tuple((name, text.encode("utf-8", "surrogateescape")) for name, text in files.items())
    for problem in read_journal(Files(folder=folder, texts=texts, pictures=frozenset())).problems:
        if problem.is_mistake:
            raise NotDone(f"{problem.found}; expected {problem.expected}", "nothing was written")


def _check_rest(folder: Path, files: Mapping[str, str]) -> None:
    """NotDone where another file stands in the way. What a killed run has written already may stay."""
    for name, text in files.items():
        if (folder / name).exists() and (folder / name).read_bytes() != text.encode():
            raise NotDone(f"{folder / name} is there already", _ANOTHER)


_ANOTHER = "name a new folder; nothing was written"


def answers(told: Mapping[str, object], ask: Ask | None, today: datetime.date) -> Beginning:
    """What a new journal is made from: as told, else asked for, else the usual. NotDone for what cannot be."""

    def read(kind: Word[T], key: str, question: str, usual: str) -> T:
        given, shown = told.get(key), question
        while True:
            answer = str(given) if given is not None else ask(shown, usual) if ask is not None else usual
            try:
                return read_answer(kind, key.replace("_", " "), answer, Reading(report=Report()))
            except NotDone as error:
                if given is not None or ask is None:
                    raise
                shown = f"{error}\n{question}"

    begun = last_weekend(today).first  # as the first episode is dated
    title = read(TEXT, "title", "What is it called", "The build")
    language = read(LANGUAGE, "language", "Language of the pages (en-US, de-DE, fr-FR, es-ES ...)", "en-US")
    phases = _USUAL.get(language.partition("-")[0], _USUAL["en"])
    return Beginning(
        title=title,
        language=language,
        currency=read(CURRENCY, "currency", "Currency (USD, EUR ...)", _currency(language, today)).code,
        ready_by=read(_ready_by(begun), "ready_by", "Promised for which date (2027-10-30, or nothing)", "none")[0],
        phases=read(_PHASES, "phases", "Phases in order, with commas between", phases),
        begun=begun,
    )


def _ready_by(begun: datetime.date) -> Word[tuple[datetime.date | None]]:
    """A date on or after the day work began, or none; in a tuple, since none is an answer too."""
    expected = "a date such as 2027-10-30, or none"

    def parse(text: str, reading: Reading) -> tuple[datetime.date | None]:
        if text.lower() in ("", "none"):
            return (None,)
        day = DATE.parse(text, reading)
        if day < begun:
            found = f"{day} is before the work begins, {begun}"
            raise Unreadable(found, expected, f"write a later date, or none; begun: in {SETTINGS} can be set back")
        return (day,)

    return Word(expected, parse)


def _phases(text: str, _: Reading) -> tuple[str, ...]:
    named = tuple(dict.fromkeys(name.strip() for name in text.split(",") if name.strip()))
    keys = [slug_of(name) for name in named]
    if len(set(keys)) != len(keys):
        raise Unreadable(f"two phases would have one key: {', '.join(keys)}", "a name of its own for each")
    return named


_PHASES = Word("names with commas between", _phases)
# What Enter takes for the phases, by the language of the pages.
_USUAL = {
    "en": "Ground, Foundation, Frame, Roof, Finishing",
    "de": "Boden, Fundament, Rahmen, Dach, Ausbau",
    "fr": "Terrain, Fondations, Ossature, Toit, Finitions",
    "es": "Terreno, Cimientos, Estructura, Tejado, Acabados",
}


def _currency(language: str, today: datetime.date) -> str:
    """What Enter takes for the currency: the one of the language's region."""
    usual = usual_currency(language, today)
    return usual if usual in codes() else FALLBACK.code


def _left_by(folder: Path, tell: Tell) -> list[OwnedStock]:
    worked = work_out(folder, tell=tell)
    if worked.account is None or worked.mistakes:
        raise NotDone(f"{folder} has mistakes, so nobody knows what it left", f"barrowbook inspect {folder}")
    ledger, keys = worked.account.ledger, set[str]()
    left = [*ledger.stock, *ledger.from_earlier, *(one for one in ledger.reusable if one.value)]
    return [_as_owned(one, keys, 10**ledger.currency.digits) for one in left if one.quantity or one.value]


def _as_owned(left: Left, keys: set[str], minor: int) -> OwnedStock:
    """What is left of a lot, at what a unit of it stands at in the ledger."""
    quantity = Quantity(left.quantity, left.unit) if left.quantity and left.unit else Quantity.of(1, "piece")
    key = base = slug_of(left.material)
    number = 1
    while key in keys:
        number += 1
        key = f"{base}-{number}"
    keys.add(key)
    cost = None if left.unpriced else Fraction(left.value, minor) / quantity.value
    place = Place(file="owned.yaml")
    return OwnedStock(key=key, material=left.material, place=place, quantity=quantity, unit_cost=cost)
