"""Sunday night: a new journal, the next episode's file. Each file is written whole or not at all."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

from builder.app import Worked, work_out
from builder.figures.account import Account
from builder.journal.files import EPISODES, SETTINGS
from builder.journal.keys import Word
from builder.journal.kinds import DATE, TEXT
from builder.journal.language import LANGUAGE
from builder.journal.money_kinds import CURRENCY
from builder.journal.reading import Reading
from builder.journal.records.item import Item, Kind
from builder.journal.records.plan import OwnedStock
from builder.journal.report import Report
from builder.journal.schema import schemas
from builder.journal.starting import (
    SCHEMAS,
    Beginning,
    NewEpisode,
    episode_file,
    journal_files,
    last_weekend,
    slug_of,
    stock_lines,
)
from builder.journal.writing import NotDone, tidy, write_new
from builder.ledger.records import Left
from builder.plan.budget_records import Status
from builder.words.money import Money
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


def _check_rest(folder: Path, files: Mapping[str, str]) -> None:
    """NotDone where another file stands in the way. What a killed run has written already may stay."""
    for name, text in files.items():
        if (folder / name).exists() and (folder / name).read_bytes() != text.encode():
            raise NotDone(f"{folder / name} is there already", _ANOTHER)


_ANOTHER = "name a new folder; nothing was written"


Ask = Callable[[str, str], str]


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
    currency, phases = _USUAL.get(language.partition("-")[0], _USUAL["en"])
    return Beginning(
        title=title,
        language=language,
        currency=read(CURRENCY, "currency", "Currency (USD, EUR ...)", currency).code,
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
# What Enter takes for the currency and the phases, by the language of the pages.
_USUAL = {
    "en": ("USD", "Ground, Foundation, Frame, Roof, Finishing"),
    "de": ("EUR", "Boden, Fundament, Rahmen, Dach, Ausbau"),
    "fr": ("EUR", "Terrain, Fondations, Ossature, Toit, Finitions"),
    "es": ("EUR", "Terreno, Cimientos, Estructura, Tejado, Acabados"),
}


def read_answer(kind: Word[T], name: str, text: str, reading: Reading) -> T:
    """What was answered, as its key is read in a file; NotDone says what is wrong with it."""
    try:
        return kind.parse(text, reading)
    except Unreadable as error:
        raise NotDone(f"{name}: {error.found}; expected {error.expected}", error.fix) from None


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


def new_episode(folder: Path, title: str, today: datetime.date, tell: Tell = quiet) -> Path:
    """Make the next episode's file; its path. NotDone where the journal cannot be read."""
    account = account_of(folder, tell)
    episodes = account.journal.episodes
    number = max((episode.number for episode in episodes), default=0) + 1
    phase = phase_now(account)
    name, text = episode_file(
        NewEpisode(
            number=number,
            title=title,
            days=last_weekend(today),
            phase=phase,
            usual=tuple(usual_lines(account)),
            to_buy=tuple(_to_buy(account, phase)),
            snags=tuple(open_snags(account)),
        )
    )
    write_new(folder / name, text)
    return folder / name


def account_of(folder: Path, tell: Tell) -> Account:
    """The journal worked out, even where it has mistakes; NotDone where it cannot be read."""
    worked = work_out(folder, tell=tell)
    if worked.account is None:
        problem = worked.mistakes[0] if worked.mistakes else None
        raise NotDone(problem.one_line() if problem else f"{folder} cannot be read", f"barrowbook inspect {folder}")
    _check_episodes(worked, worked.account)
    return worked.account


def _check_episodes(worked: Worked, account: Account) -> None:
    """NotDone where an episode could not be read at all: it may be the newest, and its number is taken."""
    known = {episode.file for episode in account.journal.episodes}
    for problem in worked.mistakes:
        if problem.place.file.startswith(f"{EPISODES}/") and problem.place.file not in known:
            raise NotDone(problem.one_line(), "mend this first; nothing was written")


def phase_now(account: Account) -> str | None:
    """The phase under way: that of the last episode, unless it is done, then the first that is not."""
    done = {phase.key for phase in account.phases if phase.status is Status.DONE}
    episodes = account.journal.episodes
    if episodes and episodes[-1].phase and episodes[-1].phase not in done:
        return episodes[-1].phase
    return next((phase.key for phase in account.phases if phase.key and phase.key not in done), None)


def usual_lines(account: Account, most: int = 5) -> list[str]:
    """What this person uses most, as short lines with what it cost last."""
    items = [
        line.item for line in account.ledger.lines if line.item.kind is Kind.MATERIAL and not line.item.source.leaves
    ]
    counts = Counter(item.what for item in items)
    last = {item.what: item for item in items}
    often = sorted((what for what, count in counts.items() if count > 1), key=lambda what: (-counts[what], what))
    return [f"{what}, {_last_cost(last[what])}" for what in often[:most]]


def _last_cost(item: Item) -> str:
    return str(item.cost) if isinstance(item.cost, Money) else "0.00"


def _to_buy(account: Account, phase: str | None) -> Iterable[str]:
    for one in account.phases:
        if one.key == phase:
            for match in one.matches:
                if not match.refs:
                    planned = match.planned[0]
                    quantity = f"{planned.quantity} of " if planned.quantity else ""
                    yield f"{quantity}{planned.item.what}" + (f" (against: {planned.key})" if planned.named else "")


def open_snags(account: Account) -> list[str]:
    """Snags that no later episode calls fixed, oldest first."""
    snags: list[str] = []
    for episode in account.journal.episodes:
        snags = [snag for snag in snags if not any(told.means(snag) for told in episode.fixed)]
        snags += [told.text for told in episode.snags]
    return snags
