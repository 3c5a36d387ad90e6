"""Sunday night: a new journal, the next episode's file, one more line. Written whole or not at all."""

from __future__ import annotations

import datetime
import difflib
import os
import re
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

from builder.app import Worked, work_out
from builder.figures.account import Account
from builder.journal.add_line import CannotAdd, NewLine, with_line
from builder.journal.files import EPISODES
from builder.journal.keys import Word
from builder.journal.kinds import DATE
from builder.journal.language import LANGUAGE
from builder.journal.money_kinds import CURRENCY
from builder.journal.paste import Columns, NotATable, pasted_lines
from builder.journal.quoting import quoted
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
from builder.ledger.records import Left
from builder.plan.budget_records import Status
from builder.words.money import Money
from builder.words.numbers import Unreadable
from builder.words.place import Place
from builder.words.quantity import Quantity

T = TypeVar("T")


@dataclass
class NotDone(Exception):
    """A command that could not do what it was asked; nothing was written."""

    found: str
    fix: str = ""

    def __str__(self) -> str:
        return f"{self.found}{'; ' if self.fix else ''}{self.fix}"


def begin(folder: Path, told: Beginning, after: Path | None = None) -> list[Path]:
    """Make a new journal; the files made. Never writes over one; NotDone where a file stands in the way.

    `after` is the folder of a finished build: its leftovers and what it bought to keep become this
    journal's stock from earlier.
    """
    stock = stock_lines(_left_by(after)) if after is not None else []
    files = dict(journal_files(told, stock))
    files |= {f"{SCHEMAS}/{name}.schema.json": text for name, text in schemas()}
    standing = [name for name in files if (folder / name).exists()]
    if standing:
        raise NotDone(f"{folder / standing[0]} is there already", "name a new folder; nothing was written")
    for name, text in files.items():
        _write_new(folder / name, text)
    (folder / EPISODES).mkdir(exist_ok=True)
    (folder / "photos").mkdir(exist_ok=True)
    return [folder / name for name in files]


Ask = Callable[[str, str], str]


def answers(told: Mapping[str, object], ask: Ask | None, today: datetime.date) -> Beginning:
    """What a new journal is made from: as told, else asked for, else the usual. NotDone for what cannot be."""

    def answer(key: str, question: str, usual: str) -> str:
        given = told.get(key)
        return str(given) if given is not None else ask(question, usual) if ask is not None else usual

    title = answer("title", "What is it called", "The build")
    language = answer("language", "Language of the pages (en-US, de-DE, fr-FR, es-ES ...)", "en-US")
    currency = answer("currency", "Currency (USD, EUR ...)", "USD").upper()
    ready = answer("ready_by", "Promised for which date (2027-10-30, or nothing)", "")
    phases = answer("phases", "Phases in order, with commas between", "Ground, Foundation, Frame, Roof, Finishing")
    named = tuple(dict.fromkeys(name.strip() for name in phases.split(",") if name.strip()))
    keys = [slug_of(name) for name in named]
    if len(set(keys)) != len(keys):
        raise NotDone(f"two phases would have one key: {', '.join(keys)}", "give them different names")
    return Beginning(
        title=title,
        language=_read(LANGUAGE, "language", language),
        currency=_read(CURRENCY, "currency", currency).code,
        ready_by=_read(DATE, "ready by", ready) if ready and ready.lower() != "none" else None,
        phases=named,
        begun=today,
    )


def _read(kind: Word[T], name: str, text: str) -> T:
    try:
        return kind.parse(text, Reading(report=Report()))
    except Unreadable as error:
        raise NotDone(f"{name}: {error.found}; expected {error.expected}", error.fix) from None


def line_told(told: Mapping[str, object], ask: Ask | None) -> NewLine:
    """The line to add, as told on the command line, or asked for where nothing was told."""
    given = {key: str(told[key]) for key in _LINE_KEYS if told.get(key) is not None}
    what = told.get("what")
    if what is None:
        if ask is None:
            raise NotDone("nothing to add was told", 'write: barrowbook spend "Galvanised nails" 36.90')
        what = ask("What was it", "")
        given |= {
            key: answered
            for key, question in _QUESTIONS
            if key not in given and (answered := ask(question, "")) and not (key == "source" and answered == "bought")
        }
    if not str(what).strip():
        raise NotDone("the line does not say what it was", "tell it in a few words")
    values = tuple((key, _value(key, given[key])) for key in _LINE_KEYS if key in given)
    return NewLine(kind=str(told.get("kind") or "material"), what=" ".join(str(what).split()), values=values)


_LINE_KEYS = (
    "quantity",
    "unit_cost",
    "cost",
    "source",
    "used",
    "share",
    "uses",
    "replacement_cost",
    "receipt",
    "against",
    "phase",
    "note",
)
_QUESTIONS = (
    ("quantity", "How many (36 bag; nothing if you did not count)"),
    ("cost", "What did it cost (219.60, about 150, unknown)"),
    ("source", "Where from (bought, secondhand, salvaged, gift, stock, hired, owned)"),
    ("receipt", "On which receipt (nothing if none)"),
)


def _value(key: str, text: str) -> str:
    return quoted(text) if key == "note" or not re.fullmatch(r"[\w.,%/ +'-]+", text) else text


def _left_by(folder: Path) -> list[OwnedStock]:
    worked = work_out(folder)
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


def new_episode(folder: Path, title: str, today: datetime.date) -> Path:
    """Make the next episode's file; its path. NotDone where the journal has mistakes."""
    account = _account(folder)
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
    _write_new(folder / name, text)
    return folder / name


def _account(folder: Path) -> Account:
    worked: Worked = work_out(folder)
    if worked.account is None:
        problem = worked.mistakes[0] if worked.mistakes else None
        raise NotDone(problem.one_line() if problem else f"{folder} cannot be read", f"barrowbook inspect {folder}")
    return worked.account


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


def from_table(file: Path, what: str, amount: str, decimal: str) -> list[str]:
    """Lines for editing from a table of amounts; NotDone where it cannot be read."""
    try:
        text = file.read_text(encoding="utf-8-sig")
        return list(pasted_lines(text, Columns(what=what, amount=amount, decimal=decimal)))
    except OSError as error:
        raise NotDone(f"{file} cannot be read ({error.strerror})", "check the name") from None
    except UnicodeDecodeError:
        raise NotDone(f"{file} is not UTF-8 text", "save the table as CSV with the encoding UTF-8") from None
    except NotATable as error:
        raise NotDone(error.found, f"{error.fix}; name them with --what and --amount") from None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """What `spend` did: the file, the line as written, and what it noticed."""

    file: Path
    written: tuple[str, ...]
    noticed: tuple[str, ...]


def spend(folder: Path, new: NewLine) -> Spent:
    """Add a line to the newest episode, keeping everything else of the file to the byte.

    NotDone, with nothing written, where the line would be a mistake or the file cannot take it.
    """
    account = _account(folder)
    if not account.journal.episodes:
        raise NotDone("there is no episode to add to", f'make one with: barrowbook episode "TITLE" --in {folder}')
    episode = account.journal.episodes[-1]
    path = folder / episode.file
    before = path.read_bytes()
    try:
        after = with_line(before.decode("utf-8"), new)
    except CannotAdd as error:
        raise NotDone(f"{path}: {error.found}", error.fix) from None
    _write_over(path, after.encode(), before)
    mistakes = _new_mistakes(folder, episode.file)
    if mistakes:
        _write_over(path, before, after.encode())
        raise NotDone(mistakes[0], "nothing was written")
    return Spent(file=path, written=tuple(new.written()), noticed=tuple(_noticed(account, new)))


def _new_mistakes(folder: Path, file: str) -> list[str]:
    worked = work_out(folder)
    return [problem.one_line() for problem in worked.mistakes if problem.place.file == file]


def _noticed(account: Account, new: NewLine) -> Iterable[str]:
    """What the same thing cost before, a name nearly the same, and the planned line it may answer to."""
    names = {line.item.what for line in account.ledger.lines}
    if new.what not in names:
        near = difflib.get_close_matches(new.what, sorted(names), n=1, cutoff=0.8)
        if near:
            yield f"there is a {near[0]} already: write the same name if it is the same thing"
    if dict(new.values).get("against"):
        return
    planned = {
        one.item.what: one
        for phase in account.phases
        for match in phase.matches
        if not match.refs
        for one in match.planned
        if one.named
    }
    near = difflib.get_close_matches(new.what, sorted(planned), n=1, cutoff=0.6)
    if near and near[0] != new.what:
        yield f"it may answer to the planned {near[0]}: then add against: {planned[near[0]].key}"


def _write_new(path: Path, text: str) -> None:
    """Write a file that is not there yet; NotDone if it is."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise NotDone(f"{path} is there already", "nothing was written over it") from None


def _write_over(path: Path, text: bytes, expected: bytes) -> None:
    """Put new text in a file's place in one step; NotDone if somebody changed it meanwhile."""
    if path.read_bytes() != expected:
        raise NotDone(f"{path} was changed meanwhile", "save it in the editor, then try again")
    beside = path.with_name(f".{path.name}.new")
    try:
        beside.write_bytes(text)
        with beside.open("rb") as file:
            os.fsync(file.fileno())
        beside.chmod(path.stat().st_mode)
        beside.replace(path)
    except OSError as error:
        beside.unlink(missing_ok=True)
        raise NotDone(f"{path} could not be written ({error.strerror})", "the file is as it was") from None
