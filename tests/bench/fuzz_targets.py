"""What long fuzzing throws its inputs at, and what is held of each: mistakes with places, and nothing else.

An input is bytes. A target turns them into what an author would hand over and raises AssertionError, or whatever
the reading raises, where that is not read or told of soundly.
"""

from __future__ import annotations

import dataclasses
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path

from builder.app import reckon, work_out
from builder.figures.account import Account
from builder.figures.check import check_figures
from builder.figures.data import data_text
from builder.figures.names import look_up
from builder.figures.notices import notices
from builder.journal.add_line import CannotAdd, with_line
from builder.journal.episode_keys import EPISODE as EPISODE_KEYS
from builder.journal.episode_keys import SAID
from builder.journal.files import OWNED, PLAN, SETTINGS, Files
from builder.journal.item_keys import ITEM, RECEIPT
from builder.journal.keys import Key
from builder.journal.owned_reader import EQUIPMENT, STOCK
from builder.journal.owned_reader import OWNED as OWNED_KEYS
from builder.journal.paste import Columns, NotATable, pasted_lines
from builder.journal.plan_reader import PHASE
from builder.journal.plan_reader import PLAN as PLAN_KEYS
from builder.journal.quoting import quoted
from builder.journal.read import Read, read_journal
from builder.journal.reading import Reading
from builder.journal.records.written import Scalar
from builder.journal.report import Report
from builder.journal.settings_reader import SETTINGS as SETTINGS_KEYS
from builder.journal.writing import NotDone
from builder.spending import line_told
from builder.words.money import Currency
from builder.words.numbers import LONGEST, Unreadable
from builder.words.place import Place
from builder.words.quantity import read_quantity
from tests.journal.sound import check_problems, check_read

ROOT = Path(__file__).resolve().parents[2]
EPISODE = "episodes/01-a.md"
GROUPS = (SETTINGS_KEYS, PLAN_KEYS, PHASE, OWNED_KEYS, EQUIPMENT, STOCK, EPISODE_KEYS, SAID, ITEM, RECEIPT)
_PART = re.compile(rb"^=== (\S+) *\n", re.MULTILINE)
_BASE = {SETTINGS: b"title: A shed\nlanguage: en-US\ncurrency: USD\n"}
CURRENCIES = (Currency.named("USD"), Currency.named("JPY"), Currency.named("KWD"))


def every_key() -> Iterator[Key[object]]:
    """Every key that a file of the journal may hold."""
    for group in GROUPS:
        yield from group.keys


def parts_of(data: bytes) -> dict[str, bytes]:
    """The files of a journal out of one input: `=== journal.yaml`, a line end, what it holds, and so on.

    What stands before the first such line is an episode.
    """
    first, *rest = _PART.split(data)
    files = {EPISODE: first} if first.strip() or not rest else {}
    for name, text in zip(rest[::2], rest[1::2], strict=True):
        files[name.decode("ascii", "replace")] = text
    return _BASE | files


def joined(files: Mapping[str, bytes]) -> bytes:
    """One input out of the files of a journal."""
    return b"".join(b"=== %s\n%s" % (name.encode(), text) for name, text in files.items())


def _files(texts: Mapping[str, bytes]) -> Files:
    order = [name for name in (SETTINGS, PLAN, OWNED) if name in texts]
    order += sorted(name for name in texts if re.fullmatch(r"episodes/[0-9]{1,6}-[a-z]{1,9}\.md", name))
    pictures = frozenset({"photos/pegs.png"})
    return Files(folder=Path(), texts=tuple((name, texts[name]) for name in order), pictures=pictures)


def read_only(data: bytes) -> Read:
    """A whole folder, read."""
    files = _files(parts_of(data))
    read = read_journal(files)
    check_read(read, dict(files.texts))
    return read


def folder(data: bytes) -> None:
    """A whole folder, read and worked out; what has no mistake gives figures that are JSON."""
    read = read_only(data)
    texts = dict(_files(parts_of(data)).texts)
    if read.journal is None or any(len(text) > 20_000 for text in texts.values()):
        return
    account, problems = reckon(read.journal, None)
    if not any(problem.is_mistake for problem in (*read.problems, *problems)):
        problems = [*problems, *check_figures(account)]
    problems = problems if read.whole else []
    check_problems(problems, texts)
    if not any(problem.is_mistake for problem in (*read.problems, *problems)):
        check_problems(notices(account, None), texts)
        json.loads(data_text(account))


@cache
def demo() -> Account:
    """The demo journal worked out."""
    account = work_out(ROOT / "content").account
    assert account is not None
    return account


def words(data: bytes) -> None:
    """One value as every key takes it, in one of three currencies; as a quantity; as a figure of the demo journal."""
    text = data.decode("utf-8", "replace")
    report = Report()
    reading = Reading(report=report, currency=CURRENCIES[len(data) % len(CURRENCIES)])
    for key in {id(key.kind): key for key in every_key()}.values():
        before = report.count
        value = key.kind.read(Scalar(Place(file=SETTINGS), text), key.name, reading)
        assert value is not None or report.count > before, f"{key.name} says nothing"
    check_problems(report.problems, {SETTINGS: b"a"})
    _quantity(text)
    if text.isprintable():
        look_up(text, demo(), 3)


def _quantity(text: str) -> None:
    try:
        quantity = read_quantity(text)
    except Unreadable:
        return
    assert quantity.value >= 0
    if quantity.value.denominator < 10**LONGEST:  # or it cannot be written as a fraction
        assert read_quantity(f"{quantity.value} {quantity.unit.symbol}") == quantity


_OPTIONS = ("quantity", "unit_cost", "source", "used", "share", "uses", "replacement_cost", "against", "note")
_TOLD = ("what", "cost", *_OPTIONS)


def spend(data: bytes) -> None:
    """Lines of input as the words of `spend`; what is added reads again, or is a mistake with its place.

    A short line, as an author writes it, is the first line.
    """
    lines = data.decode("utf-8", "replace").split("\n")
    _short_line(lines[0])
    told: dict[str, object] = {name: text for name, text in zip(_TOLD, lines, strict=False) if text}
    try:
        new = line_told(told, None, demo())
    except NotDone:
        return
    base = "---\ntitle: A\ndate: 2026-04-18\nitems:\n  - Sand, 3\n---\nStory\n"
    try:
        after = with_line(base, new)
    except CannotAdd:
        return
    assert after.endswith("---\nStory\n")
    assert [line for line in after.split("\n") if line in base.split("\n")][:5] == base.split("\n")[:5]
    read = read_only(joined({EPISODE: after.encode("utf-8", "surrogatepass")}))
    if not any(problem.is_mistake for problem in read.problems):
        assert read.journal is not None
        items = read.journal.episodes[0].items
        assert [item.what for item in items] == ["Sand", new.what]


def _short_line(line: str) -> None:
    for written in (line, quoted(line), json.dumps(line)):
        text = f"---\ntitle: A\ndate: 2026-04-18\nitems:\n  - {written}\n---\n"
        read_only(joined({EPISODE: text.encode("utf-8", "surrogatepass")}))


def table(data: bytes) -> None:
    """A pasted table; the lines made of it are one line each, and read as lines of an episode or are told of."""
    text = data.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n")
    for columns in _columns(text):
        lines = _lines(text, columns)
        assert not [line for line in lines if "\n" in line], "a line holds two"
        _reads(lines)


def _lines(text: str, columns: Columns) -> list[str]:
    """The lines made of a table, or the one that says why it is none, as a comment."""
    try:
        return list(pasted_lines(text, columns))
    except NotATable as error:
        return [f"# {error}"]


def _columns(text: str) -> Iterable[Columns]:
    head = re.split("[;,\t]", text.split("\n", 1)[0])
    names = (head[0].strip(' "'), head[-1].strip(' "'))
    return [Columns(what=names[0], amount=names[1], decimal=mark) for mark in ".,"]


def _reads(lines: list[str]) -> None:
    front = "".join(f"  {line}\n" for line in lines)
    episode = f"---\ntitle: A\ndate: 2026-04-18\nitems:\n{front}---\n".encode("utf-8", "surrogatepass")
    read = read_only(joined({EPISODE: episode}))
    told = [problem for problem in read.problems if problem.is_mistake]
    fair = ("decimals", "printed")  # of an amount in another currency; of a character in the table itself
    lost = [problem.one_line() for problem in told if not any(word in problem.found for word in fair)]
    assert not lost, lost[0]


@dataclasses.dataclass(frozen=True, slots=True)
class Target:
    """Its check, its part of the time, and inputs to begin with."""

    check: Callable[[bytes], object]
    part: int
    seeds: Callable[[], Iterable[bytes]]


def folder_seeds() -> Iterator[bytes]:
    """The awkward files of the corpus, the demo journal in pieces, and every key with its example."""
    corpus = ROOT / "tests" / "journal" / "corpus"
    for path in [*sorted((corpus / "fine").iterdir()), *sorted((corpus / "wrong").iterdir())]:
        raw = path.read_bytes()
        if len(raw) < 10_000:
            yield joined({EPISODE if path.suffix == ".episode" else SETTINGS: raw})
    demo_files = {name: (ROOT / "content" / name).read_bytes() for name in (SETTINGS, PLAN, OWNED)}
    for path in sorted((ROOT / "content" / "episodes").iterdir()):
        yield joined({SETTINGS: demo_files[SETTINGS], EPISODE: path.read_bytes()})
    yield joined(demo_files)
    yield from (joined({PLAN: plan}) for plan in _takeoffs(demo_files[PLAN]))
    yield from _examples()


def _takeoffs(plan: bytes) -> Iterator[bytes]:
    """Every take-off of the demo by itself."""
    _, _, takeoffs = plan.partition(b"takeoff:\n")
    for one in re.split(rb"\n(?=  [a-z])", takeoffs.rstrip()):
        yield b"takeoff:\n" + one + b"\n"


def _examples() -> Iterator[bytes]:
    """Each key of a line item beside a cost, and each key of the other files, with its example."""
    settings = "".join(f"{key.name}: {key.example}\n" for key in SETTINGS_KEYS.keys)
    dated = "title: A\ndate: 2026-04-18\n"
    front = "".join(f"{key.name}: {key.example}\n" for key in EPISODE_KEYS.keys if key.name not in ("from", "to"))
    yield joined({SETTINGS: settings.encode(), EPISODE: f"---\n{front}---\n![A]({'../photos/pegs.png'})\n".encode()})
    for key in ITEM.keys:
        line = f"{key.name}: {key.example}\n"
        yield f"---\n{dated}items:\n  - material: A\n    quantity: 4 bag\n    cost: 9\n    {line}---\n".encode()
    receipt = "".join(f"    {key.name}: {key.example}\n" for key in RECEIPT.keys)
    yield f"---\n{dated}receipts:\n  yard:\n{receipt}---\n{{= spent to date =}}\n".encode()
    phase = "".join(f"    {key.name}: {key.example}\n" for key in PHASE.keys[1:])
    yield joined({PLAN: f"contingency: 10%\nphases:\n  - key: ground\n{phase}".encode()})
    owned = [("equipment", EQUIPMENT), ("stock", STOCK)]
    lines = [f"{name}:\n  a:\n" + "".join(f"    {k.name}: {k.example}\n" for k in group.keys) for name, group in owned]
    yield joined({OWNED: "".join(lines).encode()})


def word_seeds() -> Iterator[bytes]:
    """The example of every key, every value of the demo, and figures by name."""
    yield from {key.example.encode() for key in every_key()}
    for path in sorted((ROOT / "content").rglob("*.[my]*")):
        yield from set(re.findall(rb": ([^\n{\[]{1,40})\n", path.read_bytes()))
    yield from (b"spent to date", b"job cost of foundation", b"footing.bags", b"bags used of mix", b"spent per ft2")


def spend_seeds() -> Iterator[bytes]:
    """Short lines, and words of `spend`."""
    yield from (b"Galvanised nails, 36.90", b"Nails\nabout 3.50")
    yield from (b"Mix\n\n36 bag\n6.10\nbought\n30 bag\n\n\n\nmix\nSo it was.",)
    yield from (b"Door\n0\n1\n\nsalvaged\n\n\n\n80", b"Stone, 2 loads, 450")
    yield from (b"Boards\n10\n\n\n\n\n30%\n4", b'"#4" bar, 12')


def table_seeds() -> Iterator[bytes]:
    """As spreadsheets and banks write them."""
    yield b'What,Amount\nNails,36.90\n"Stone, crushed",-120.00\n'
    yield 'Datum;Was;Betrag\n1.4.;N\u00e4gel;1.234,50\n2.4.;"Zwei\nZeilen";-3,00\n'.encode()
    yield "\ufeffWhat\tNote\tAmount\n=1+1\tx\t(12.00)\nSand\t\t\u22124.50\n".encode()


TARGETS = {
    "folder": Target(folder, 50, folder_seeds),
    "words": Target(words, 15, word_seeds),
    "spend": Target(spend, 10, spend_seeds),
    "table": Target(table, 10, table_seeds),
}
