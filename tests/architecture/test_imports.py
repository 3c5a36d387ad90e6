"""Data flows one way, so imports run the other way only. The table is the design's, section 8."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator

import pytest

from tests.architecture.source import Import, Module, layer_of, listed, module_named, modules

# Which folders of builder/ each folder may import from.
MAY_IMPORT: dict[str, set[str]] = {
    "words": set(),
    "journal": {"words"},
    "takeoff": {"words", "journal"},
    "ledger": {"words", "journal", "takeoff"},
    "plan": {"words", "journal", "takeoff", "ledger"},
    "figures": {"words", "journal", "takeoff", "ledger", "plan"},
    "pages": {"words", "journal", "takeoff", "ledger", "plan", "figures"},
    "publish": {"words", "pages"},
    "store": set(),
}

# The five steps in order, the commands, and `python -m builder`: these see everything, and nobody sees them.
TOP = {
    "again", "retold", "app", "site", "beginning", "evening", "spending", "terminal", "usage", "unread", "format_page",
    "cli", "__main__",
}  # fmt: skip

# Which library lives where. Everything else comes from Python's own.
LIBRARIES: dict[str, set[str]] = {
    "yaml": {"journal"},
    "babel": {"pages"},
    "markdown": {"pages"},
    "nh3": {"pages"},
    "jinja2": {"publish"},
    "watchfiles": {"publish"},
    "PIL": {"publish", "journal"},  # the journal asks a photo for its size
}

# A library that is slow to import and often not needed may be imported where it is used.
LAZY: dict[str, str] = {
    "PIL": "photos, and only when a journal has some",
    "watchfiles": "the preview, and only there",
    "markdown.extensions.fenced_code": "where a story has fenced code: it loads a library that colours programs",
}

# And so may the program itself, by the commands only.
LAZY_OWN: dict[str, str] = {
    "builder.again": "only publishing asks whether anything changed",
    "builder.retold": "and only where something did, what a story alone changes",
    "builder.store.store": "the same",
    "builder.site": "only two commands lay out and write; the others need not load what does",
    "builder.beginning": "the same: only one command needs it",
    "builder.evening": "the same: only two commands need it",
    "builder.spending": "the same: only one command needs it",
    "builder.unread": "only words that no command takes need it",
    "builder.cli": "Ctrl-C while it loads is caught where it is imported",
    "builder.journal.writing": "the same: what they raise",
    "builder.app": "a command asked for help, or told a wrong word, answers before anything is loaded",
}

# Layers that compute: they know no file, no clock, no locale, no chance that is not handed in.
COMPUTE = {"words", "takeoff", "ledger", "plan", "figures", "pages"}
OUTSIDE = {
    "glob", "locale", "os", "random", "shutil", "socket", "sqlite3", "subprocess", "tempfile", "time",
    "urllib.request",
}  # fmt: skip
FILES = {"open", "read_bytes", "read_text", "write_bytes", "write_text"}
CLOCK = {"now", "today", "utcnow", "fromtimestamp"}

PLANNED = "planned lines are priced and amortised as real ones are, by the same function (design, section 4)"
YOURS = "the page asks what the build would cost with a choice, as it asks for any figure"
ASKED = "a page asks for a figure by its name, and whether it is one of at least; it computes none"

# Functions of one layer that another may call: who calls, what, and why.
DOERS_ALLOWED: dict[tuple[str, str], str] = {
    ("plan", "builder.ledger.amortise.amortise"): PLANNED,
    ("plan", "builder.ledger.amortise.share_of"): PLANNED,
    ("plan", "builder.ledger.amortise.used_of"): PLANNED,
    ("plan", "builder.ledger.pricing.gross"): PLANNED,
    (
        "figures",
        "builder.ledger.parts.together",
    ): "a phase is its lines, added as the ledger adds",
    ("pages", "builder.figures.names.look_up"): ASKED,
    ("pages", "builder.figures.figure.amount_of"): ASKED,
    ("pages", "builder.figures.figure.bound_of"): ASKED,
    ("pages", "builder.ledger.parts.together"): "the foot of a table adds its rows as the ledger adds",
    ("pages", "builder.figures.data.data_text"): "figures.json is a file of the site like a page",
    ("pages", "builder.figures.table.ledger_csv"): "and so is ledger.csv",
    ("pages", "builder.figures.yours.yours_lines"): YOURS,
    ("pages", "builder.figures.yours.yours"): YOURS,
    ("pages", "builder.figures.yours.unknowns"): YOURS,
    ("pages", "builder.figures.yours.bound_of_yours"): YOURS,
    ("pages", "builder.figures.yours.machines"): YOURS,
    ("pages", "builder.figures.yours.as_i_did"): YOURS,
    ("pages", "builder.figures.yours.half_luck"): YOURS,
    ("pages", "builder.figures.yours.all_new"): YOURS,
}


def own(module: Module) -> Iterator[Import]:
    """The imports of a module that stay inside the package."""
    return (found for found in module.imports() if found.target.split(".")[0] == "builder")


def test_there_is_a_package_to_look_at() -> None:
    """The other tests here say nothing if they find no module."""
    assert {module.layer for module in modules()} & set(MAY_IMPORT)


def test_every_folder_has_its_row_in_the_table() -> None:
    """A new layer has to say what it may import."""
    assert {module.layer for module in modules()} <= {*MAY_IMPORT, *TOP, ""}


def test_no_layer_imports_a_later_one() -> None:
    """The table, row by row."""
    wrong = [
        f"{module.at(found.line)}: {module.layer} imports {found.target}"
        for module in modules()
        if module.layer in MAY_IMPORT
        for found in own(module)
        if layer_of(found.target) not in {"", module.layer, *MAY_IMPORT[module.layer]}
    ]
    assert not wrong, listed(wrong)


def test_nobody_imports_the_top() -> None:
    """The commands stand above all layers; only `python -m builder` and cli call them."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        if module.layer not in TOP
        for found in own(module)
        if layer_of(found.target) in TOP
    ]
    assert not wrong, listed(wrong)


def test_a_layer_takes_records_and_never_doers() -> None:
    """What crosses from one layer to the next is a result: a class or a constant, not a function to call.

    Words are exempt: values come with their own reading and rounding.
    """
    wrong = [
        f"{module.at(found.line)}: {found.target}: {found.name or 'the whole module'}"
        for module in modules()
        if module.layer in MAY_IMPORT
        for found in own(module)
        if layer_of(found.target) not in {"", "words", module.layer}
        if not found.name or found.name in module_named(found.target).public_functions()
        if (module.layer, f"{found.target}.{found.name}") not in DOERS_ALLOWED
    ]
    assert not wrong, listed(wrong)


def test_only_the_records_of_the_journal_leave_it() -> None:
    """Reading is the journal's own business: later layers see what was written, not how it was read."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        if module.layer in MAY_IMPORT and module.layer != "journal"
        for found in own(module)
        if layer_of(found.target) == "journal" and not found.target.startswith("builder.journal.records")
    ]
    assert not wrong, listed(wrong)


def test_each_library_stays_in_its_layer() -> None:
    """Changing a library touches one folder."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        for found in module.imports()
        for library in [found.target.split(".")[0]]
        if library not in {"builder", *sys.stdlib_module_names}
        if module.layer not in LIBRARIES.get(library, set())
    ]
    assert not wrong, listed(wrong)


def test_imports_stand_at_the_top_of_the_file() -> None:
    """Except for the few that are slow and seldom needed, each with its reason."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        for found in module.imports()
        if found.lazy and not _is_slow(found)
        if not (module.layer in {"cli", "__main__"} and found.target in LAZY_OWN)
    ]
    assert not wrong, listed(wrong)


def _is_slow(found: Import) -> bool:
    return any(f"{found.target}.".startswith(f"{slow}.") for slow in LAZY)


def test_a_slow_library_is_not_imported_by_everybody() -> None:
    """Reading a journal without photos costs nothing for the photos."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        for found in module.imports()
        if not found.lazy and not found.typing and _is_slow(found)
    ]
    assert not wrong, listed(wrong)


@pytest.mark.parametrize("layer", sorted(COMPUTE))
def test_what_computes_knows_no_file_clock_or_locale(layer: str) -> None:
    """Today's date and the language are handed in, so the same journal gives the same bytes."""
    wrong = [
        f"{module.at(found.line)}: {found.target}"
        for module in modules()
        if module.layer == layer
        for found in module.imports()
        if found.target in OUTSIDE
    ]
    assert not wrong, listed(wrong)


def test_what_computes_opens_nothing() -> None:
    """Reading is the journal's, writing is publish's."""
    wrong = [
        module.at(node.lineno)
        for module in modules()
        if module.layer in COMPUTE
        for node in module.nodes()
        if (isinstance(node, ast.Attribute) and node.attr in FILES)
        or (isinstance(node, ast.Name) and node.id == "open")
    ]
    assert not wrong, listed(wrong)


def test_only_the_commands_ask_what_day_it_is() -> None:
    """A page made tomorrow is the page made today."""
    wrong = [
        module.at(node.lineno)
        for module in modules()
        if module.layer not in TOP
        for node in module.attributes()
        if node.attr in CLOCK
    ]
    assert not wrong, listed(wrong)


def test_every_exception_is_still_needed() -> None:
    """An entry in the list of allowed doers goes when the call goes."""
    used = {(module.layer, f"{found.target}.{found.name}") for module in modules() for found in own(module)}
    assert set(DOERS_ALLOWED) <= used
