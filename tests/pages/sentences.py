"""Every English sentence that a page can say: the keys that each language has to have."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from builder.figures.figure import MONEY
from builder.pages.calendar_page import _SAID
from builder.pages.costs import GUESSED, SOURCES, WAYS
from builder.pages.hazards import HAZARDS
from builder.pages.saying import _USED
from builder.pages.signs import BELOW
from builder.pages.standing import STATUS
from builder.pages.terms import _SAYS
from builder.pages.timewords import _WHY
from builder.pages.wording import COUNTED
from builder.takeoff.declared import Input, Kind
from builder.takeoff.expression import Rule
from builder.takeoff.registry import METHODS

ROOT = Path(__file__).resolve().parents[2]
PAGES, TAKEOFF, TEMPLATES = ROOT / "builder" / "pages", ROOT / "builder" / "takeoff", ROOT / "templates"

# What is handed to say() by another name than its own, and where all its values stand.
TABLES = {
    "SOURCES[source]": SOURCES.values(),
    "SOURCES[item.source]": SOURCES.values(),
    "STATUS[phase.status]": STATUS.values(),
    "_SAYS[key][0]": [name for name, _ in _SAYS.values()],
    "_SAID[sign]": _SAID.values(),
    "_USED[verb]": _USED.values(),
    "_WHY[finish.why]": _WHY.values(),
    "name": [name for name, _ in _SAYS.values()],
    "says": [says for _, says in _SAYS.values()],
    "BELOW[key]": BELOW.values(),
    "GUESSED[key]": GUESSED.values(),
    "WAYS[way]": WAYS.values(),
    "WAYS[way_of(line)]": WAYS.values(),
    "hazard": HAZARDS,
    "hazard.value": HAZARDS,
}
# What take-offs hand on: see `takeoff_sentences`.
FROM_TAKEOFF = {"text.pattern", "key.replace('_', ' ')"}

# Names of figures that are no part of a line (those are `MONEY`), as `stated` has them.
FIGURES = (
    "unpriced", "unvalued", "hours", "planned", "forecast", "contingency", "contingency taken", "contingency left",
    "episodes", "lines",
)  # fmt: skip
UNITS = ("area", "hour", "year")


@cache
def sentences() -> frozenset[str]:
    """All keys. Of a sentence that bends with a number, the form for many."""
    said = {text for _, text, _ in code_sentences()} | set(template_sentences()) | takeoff_sentences()
    tables = {text for texts in TABLES.values() for text in texts}
    return frozenset(said | tables | plurals() | {name.replace("_", " ") for name in MONEY} | {*FIGURES, *UNITS})


@cache
def plurals() -> frozenset[str]:
    """The keys that bend with a number."""
    return frozenset({many for _, many in COUNTED.values()} | {text for _, text, bends in code_sentences() if bends})


@cache
def code_sentences() -> tuple[tuple[str, str, bool], ...]:
    """Where it stands, the sentence, and whether it bends: every literal handed to say() or count() by a page."""
    return tuple(
        (f"{path.name}:{call.lineno}", part.value, bends)
        for path, call, bends in _calls()
        for part in _parts(_said(call, bends))
        if isinstance(part, ast.Constant) and isinstance(part.value, str)
    )


@cache
def handed_on() -> frozenset[str]:
    """What is handed to say() and is no literal, as source."""
    return frozenset(
        ast.unparse(part)
        for path, call, bends in _calls()
        if path.name != "wording.py"
        for part in _parts(_said(call, bends))
        if not isinstance(part, ast.Constant)
    )


def _said(call: ast.Call, bends: bool) -> ast.expr:
    return call.args[2 if bends else 0]


def _calls() -> Iterator[tuple[Path, ast.Call, bool]]:
    for path in sorted(PAGES.glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and re.search(r"\b(words|self)\.(say|count)$", ast.unparse(node.func)):
                yield path, node, ast.unparse(node.func).endswith("count")


def _parts(node: ast.expr) -> Iterator[ast.expr]:
    """The texts that an expression can be: both of `one if this else other`."""
    if isinstance(node, ast.IfExp):
        yield from _parts(node.body)
        yield from _parts(node.orelse)
    else:
        yield node


_IN_TEMPLATE = re.compile(r"""\b(say|count)\((?:"([^"]*)")?""")


@cache
def template_sentences() -> tuple[str, ...]:
    """Every sentence of the templates; one that is no literal fails here."""
    found = []
    for path in sorted(TEMPLATES.glob("*.html")):
        for word, literal in _IN_TEMPLATE.findall(path.read_text(encoding="utf-8")):
            assert (word, bool(literal)) == ("say", True), f"{path.name}: {word}() without a literal"
            found.append(literal)
    return tuple(found)


@cache
def takeoff_sentences() -> frozenset[str]:
    """Sentences of the take-offs, names of what goes in and comes out, and the words of formulas."""
    said = {rule.value for rule in Rule}
    for path in TAKEOFF.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == "Text" and node.args:
                said |= {part.value for part in node.args[:1] if isinstance(part, ast.Constant)}
    for method in METHODS:
        said |= {word for kept in method.doc.inputs for word in _words_of(kept)}
        said |= {output.key.replace("_", " ") for output in method.doc.outputs if not output.key.endswith("...")}
    return frozenset(said - {"π"})


def _words_of(kept: Input) -> Iterator[str]:
    """An input's name, those of its columns, and the words that it may be instead of a number."""
    yield kept.key.replace("_", " ")
    yield from kept.words
    yield from ("yes", "no") if kept.kind is Kind.YES_NO else ()
    for column in kept.columns:
        yield from _words_of(column)
