"""Sunday night: one more line item, told on the command line or asked for. Written whole or not at all."""

from __future__ import annotations

import difflib
import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from builder.app import understand
from builder.evening import Ask, account_of, read_answer
from builder.figures.account import Account
from builder.journal import item_keys as k
from builder.journal.add_line import CannotAdd, NewLine, with_line
from builder.journal.check import machine_meant
from builder.journal.files import find_files
from builder.journal.keys import Key, Word
from builder.journal.kinds import choice
from builder.journal.paste import Columns, NotATable, pasted_lines
from builder.journal.quoting import in_quotes, quoted
from builder.journal.read import read_journal
from builder.journal.reading import Reading
from builder.journal.records.item import ALLOWED, PRICED, Kind, Source
from builder.journal.report import Report, one_of
from builder.journal.starting import amount_in
from builder.journal.text import LARGEST
from builder.journal.writing import NotDone, write_over
from builder.plan.budget_records import Budgeted
from builder.words.problem import Problem
from builder.words.telling import Tell, quiet


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """What `spend` did: the file, the line as written, and what it noticed."""

    file: Path
    written: tuple[str, ...]
    noticed: tuple[str, ...]


def ready_to_spend(folder: Path, tell: Tell = quiet) -> Account:
    """The journal worked out; NotDone where it cannot be read or has no episode that could take a line."""
    account = account_of(folder, tell)
    if not account.journal.episodes:
        raise NotDone("there is no episode to add to", f'make one with: barrowbook episode "TITLE" --in {folder}')
    return account


def spend(folder: Path, account: Account, new: NewLine, tell: Tell = quiet) -> Spent:
    """Add a line to the newest episode of a journal worked out, keeping everything else of the file to the byte.

    NotDone, with nothing written, where the line would be a mistake or the file cannot take it.
    """
    episode = account.journal.episodes[-1]
    path = folder / episode.file
    before = path.read_bytes()
    try:
        after = with_line(before.decode("utf-8"), new).encode(
            "utf-8", "surrogateescape"
        )  # what is no text is told below
    except CannotAdd as error:
        raise NotDone(f"{path}: {error.found}", error.fix) from None
    mistakes = _mistakes_with(folder, episode.file, after, tell)
    if mistakes:
        one = mistakes[0]
        raise NotDone(f"{one.found}; expected {one.expected}", f"{one.fix}{'; ' if one.fix else ''}nothing was written")
    write_over(path, after, before)
    return Spent(file=path, written=tuple(new.written()), noticed=tuple(_noticed(account, new)))


def _mistakes_with(folder: Path, file: str, text: bytes, tell: Tell) -> list[Problem]:
    """The mistakes that a file of the journal would have with this text."""
    report = Report()
    files = find_files(folder, report)
    if files is None:
        return list(report.problems)
    texts = tuple((name, text if name == file else raw) for name, raw in files.texts)
    read = read_journal(replace(files, texts=texts), tell)
    problems = list(read.problems)
    if read.journal is not None and read.whole:
        tell(0, 0, "adding up")
        problems += understand(read.journal)[1]
    return [problem for problem in problems if problem.is_mistake and problem.place.file == file]


_LINE_KEYS = (
    k.NUMBER_OF,
    k.UNIT_COST,
    k.COST_OF,
    k.SOURCE,
    k.USED,
    k.SHARE,
    k.USES,
    k.REPLACEMENT,
    k.RECEIPT_OF,
    k.AGAINST,
    k.PHASE_OF,
    k.NOTE,
)


def line_told(told: Mapping[str, object], ask: Ask | None, account: Account) -> NewLine:
    """The line to add, as told on the command line, or asked for where nothing was told."""
    given = {key.name: str(told[key.name]) for key in _LINE_KEYS if told.get(key.name) is not None}
    what, kind = told.get("what"), told.get("kind")
    if kind is not None:
        read_answer(_KIND, "kind", str(kind), Reading(report=Report()))
    _check_order(str(what), given.get("cost", ""))
    if what is None:
        if ask is None:
            raise NotDone("nothing to add was told", 'write: barrowbook spend "Galvanised nails" 36.90')
        what, given = _asked(given, ask, account)
    elif ask is not None and _lacks_price(str(kind or ""), given):
        cost = _answer(k.COST_OF, _cost_asked(account), ask, account)
        given |= {"cost": cost} if cost else {}
    if not str(what).strip():
        raise NotDone("the line does not say what it was", "tell it in a few words; nothing was written")
    values = tuple((key.name, _value(key.name, given[key.name])) for key in _LINE_KEYS if key.name in given)
    kind = kind or _kind_of(given.get("source", "")).value
    return NewLine(kind=str(kind), what=" ".join(str(what).split()), values=values)


_KIND = choice(*(kind.value for kind in Kind))
_PRICE = re.compile(r"(?:about )?[^\w\s]?\d[\d.,]*[^\w\s]?|unknown|rest", re.IGNORECASE)


def _check_order(what: str, cost: str) -> None:
    """NotDone where the cost was told before what it was for."""
    if cost and _PRICE.fullmatch(what.strip()) and not _PRICE.fullmatch(cost.strip()):
        price = in_quotes(what) if " " in what else what
        fix = f"write: barrowbook spend {in_quotes(cost)} {price}"
        raise NotDone(f"{what} stands where the thing is named, and {cost} where its cost is", fix)


def _lacks_price(kind: str, given: Mapping[str, str]) -> bool:
    """Whether nothing says what a line cost that has to say it."""
    usual = Source.UNPAID if kind in (Kind.LABOUR.value, Kind.TRAVEL.value) else Source.BOUGHT
    source = given.get("source", usual.value)
    return not given.keys() & {"cost", "unit_cost"} and source in {one.value for one in PRICED}


def _kind_of(source: str) -> Kind:
    """What a line is that does not say so: a material, unless only a machine or work can have such a source."""
    for kind in (Kind.MATERIAL, Kind.EQUIPMENT, Kind.LABOUR):
        if source in {one.value for one in ALLOWED[kind]}:
            return kind
    return Kind.MATERIAL


def _value(key: str, text: str) -> str:
    return quoted(text) if key == "note" or not re.fullmatch(r"\w[\w.,%/ +'-]*", text) else text


def _asked(given: Mapping[str, str], ask: Ask, account: Account) -> tuple[str, dict[str, str]]:
    """What it was, and the keys that were not given, each asked until it can be read; nothing leaves one out."""
    often = [what for what, _ in Counter(_materials(account)).most_common(3)]
    question = f"What was it ({', '.join([*often, 'or something new'])})" if often else "What was it"
    what, shown = "", question
    while not what:
        what, shown = " ".join(ask(shown, "").split()), f"say it in a word or two; Ctrl-C stops\n{question}"
    what = _same(what, ask, account)
    found = dict(given)
    for key, question, wanted in _questions(account):
        if key.name not in found and wanted(found):
            answer = _answer(key, question, ask, account)
            found |= {key.name: answer} if answer else {}
    if found.get("source") == Source.BOUGHT.value:
        del found["source"]
    near = None if "against" in found else _may_answer_to(account, what)
    if near is not None and _yes(ask, f"Does it answer to the planned {near.item.what}"):
        found["against"] = str(near.key)
    return what, found


def _materials(account: Account) -> list[str]:
    items = (line.item for line in account.ledger.lines)
    return [item.what for item in items if item.kind is Kind.MATERIAL and not item.source.leaves]


def _same(what: str, ask: Ask, account: Account) -> str:
    """The name that the journal has already, where this is the same thing under nearly the same name."""
    near = _near_name(account, what)
    return near if near is not None and _yes(ask, f"There is a {near} already. Is it the same") else what


def _yes(ask: Ask, question: str) -> bool:
    return ask(f"{question} (yes, no)", "no").strip().lower() in ("yes", "y", "ja", "j", "oui", "sí", "si")


Wanted = Callable[[Mapping[str, str]], bool]
_FOUND = frozenset({Source.SECONDHAND.value, Source.SALVAGED.value, Source.GIFT.value})


def _questions(account: Account) -> Iterator[tuple[Key[Any], str, Wanted]]:
    """Which key, how it is asked for, and whether it is, by what was answered before."""
    receipts = [receipt.key for receipt in account.journal.episodes[-1].receipts]
    yield k.NUMBER_OF, "How many (36 bag; nothing if you did not count)", lambda _: True
    yield k.COST_OF, _cost_asked(account), lambda found: "unit_cost" not in found
    yield k.SOURCE, "Where from (bought, secondhand, salvaged, gift, stock, hired, borrowed, owned)", lambda _: True
    yield (
        k.REPLACEMENT,
        "What would one cost new (nothing if you do not know)",
        lambda found: found.get("source") in _FOUND and "quantity" in found,
    )
    yield (
        k.RECEIPT_OF,
        f"On which receipt ({one_of([*receipts, 'none'])})",
        lambda found: bool(receipts) and found.get("source") != Source.STOCK.value,
    )


def _cost_asked(account: Account) -> str:
    return f"What did it cost ({amount_in(account.ledger.currency, '219.60')}, about 150, 0, unknown)"


def _answer(key: Key[Any], question: str, ask: Ask, account: Account) -> str:
    """An answer that can be read, as it was written; "" for none."""
    reading = Reading(report=Report(), currency=account.ledger.currency)
    shown = question
    while answer := ask(shown, "").strip():
        try:
            if isinstance(key.kind, Word):
                read_answer(key.kind, key.name, answer, reading)
            if key is k.RECEIPT_OF:
                return _receipt(answer, account)
        except NotDone as error:
            shown = f"{error}\n{question}"
        else:
            return answer
    return ""


def _receipt(answer: str, account: Account) -> str:
    keys = [receipt.key for receipt in account.journal.episodes[-1].receipts]
    if answer.lower() in ("none", "no"):
        return ""
    if answer not in keys:
        raise NotDone(f"{answer} is no receipt of this episode; expected {one_of(keys)}")
    return answer


def _near_name(account: Account, what: str) -> str | None:
    """A name of the journal that is nearly this one, where it has not this one."""
    names = {line.item.what for line in account.ledger.lines}
    near = [] if what in names else difflib.get_close_matches(what, sorted(names), n=1, cutoff=0.8)
    return near[0] if near else None


def _may_answer_to(account: Account, what: str) -> Budgeted | None:
    """A planned line with nearly this name that nothing answers to yet."""
    planned = {
        one.item.what: one
        for phase in account.phases
        for match in phase.matches
        if not match.refs
        for one in match.planned
        if one.named
    }
    near = difflib.get_close_matches(what, sorted(planned), n=1, cutoff=0.6)
    return planned[near[0]] if near and near[0] != what else None


def _noticed(account: Account, new: NewLine) -> Iterator[str]:
    """What the same thing cost before, a name nearly the same, and the planned line it may answer to."""
    near = _near_name(account, new.what)
    if near is not None:
        yield f"there is a {near} already: write the same name if it is the same thing"
    if new.kind == Kind.EQUIPMENT.value and dict(new.values).get("source") == Source.OWNED.value:
        meant = machine_meant(new.what, account.journal, Report())
        if meant:
            yield f"{new.what} is no machine of owned.yaml: {meant}"
    planned = None if dict(new.values).get("against") else _may_answer_to(account, new.what)
    if planned is not None:
        yield f"it may answer to the planned {planned.item.what}: then add against: {planned.key}"


def from_table(file: Path, what: str, amount: str, decimal: str) -> Sequence[str]:
    """Lines for editing from a table of amounts; NotDone where it cannot be read."""
    try:
        with file.open(encoding="utf-8-sig") as lines:
            text = lines.read(LARGEST + 1)
        if len(text) > LARGEST:
            raise NotDone(f"{file} has more than {LARGEST:,} characters", "split the table; it may be another file")
        return list(pasted_lines(text, Columns(what=what, amount=amount, decimal=decimal)))
    except OSError as error:
        raise NotDone(f"{file} cannot be read ({error.strerror})", "check the name") from None
    except UnicodeDecodeError:
        raise NotDone(f"{file} is not UTF-8 text", "save the table as CSV with the encoding UTF-8") from None
    except NotATable as error:
        raise NotDone(error.found, f"{error.fix}; name them with --what and --amount") from None
