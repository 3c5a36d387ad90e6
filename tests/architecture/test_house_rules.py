"""What keeps the project small enough to read: its files, their size, and what they may not hold."""

from __future__ import annotations

import ast
import importlib.metadata
import re
import statistics
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import pytest

from tests.architecture.source import PACKAGE, ROOT, FunctionTree, Module, listed, modules

# What a stranger sees on opening the project.
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "builder", "content", "templates", "tests", "site_demo",
}  # fmt: skip

# Folders and modules that anything could go into, so everything does.
DRAWERS = {"common", "helper", "helpers", "lib", "manager", "managers", "misc", "shared", "util", "utils"}

# Records that change, and why.
MUTABLE: dict[str, str] = {
    "builder.publish.preview.Shown": "what the preview serves at this moment, changed under its lock",
}

MOST_LINES = 400
LONG_FILES: dict[str, str] = {}  # path in the project -> why it is better whole

# Where a fraction of a cent would be a wrong cent.
EXACT = {"words", "journal", "takeoff", "ledger", "figures"}
FLOATS: dict[str, str] = {
    "cutoff": "how near a misspelt word has to be to a known one",  # an argument's name -> what it says
}

TEXT = {".py", ".md", ".toml", ".yaml", ".txt", ".sh", ".html", ".css", ".js", ".svg", ".xml", ".json", ""}

# Folders that one computer has and another has not, and the hosts of package indexes. The odd brackets
# keep this file from holding what it looks for.
MACHINE = re.compile(
    r"(?<![\w.)}:])/(?:work|tmp|root|home|Users)/\w"
    r"|files[.]pythonhosted|registry[.]npmjs|pypi[.]org|deb[.]debian"
)


@cache
def files() -> tuple[Path, ...]:
    """Every file of the project that is kept, without what tools made."""
    if (ROOT / ".git").exists():
        command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
        listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
        found = (ROOT / name for name in listed.stdout.split("\0") if name)
        return tuple(path for path in found if path.is_file())
    return tuple(path for path in ROOT.rglob("*") if path.is_file() and not _made_by_a_tool(path))


def _made_by_a_tool(path: Path) -> bool:
    parts = path.relative_to(ROOT).parts
    return "__pycache__" in parts or (parts[0].startswith(".") and parts[0] not in {".ci", ".gitignore"})


def _height(node: ast.stmt) -> int:
    return (node.end_lineno or node.lineno) - node.lineno + 1


def body_lines(function: FunctionTree) -> int:
    """Lines of a function from `def` to its end, without its docstring."""
    said = ast.get_docstring(function) is not None
    return _height(function) - (_height(function.body[0]) if said else 0)


def test_the_top_of_the_project_holds_what_it_should() -> None:
    """Anything new has to find its place in a folder that is there."""
    top = {path.relative_to(ROOT).parts[0] for path in files()}
    assert {name for name in top if not name.startswith(".")} <= TOP_LEVEL


def test_there_is_no_drawer() -> None:
    """A module is named for what it holds."""
    named = {path for path in files() for part in path.relative_to(ROOT).parts if Path(part).stem in DRAWERS}
    assert named == set()


def test_no_file_of_the_package_is_too_long_to_read() -> None:
    """A file above 400 lines is a question to answer."""
    lengths = {str(module.path.relative_to(ROOT)): module.text.count("\n") for module in modules()}
    assert {path: lines for path, lines in lengths.items() if lines > MOST_LINES}.keys() == LONG_FILES.keys()


def test_the_median_function_is_short() -> None:
    """Half of all functions are under eight lines."""
    lengths = [body_lines(function) for module in modules() for function in module.functions()]
    assert statistics.median(lengths) < 8


def test_nine_functions_in_ten_fit_on_a_screen() -> None:
    """And nine in ten are under thirty."""
    lengths = [body_lines(function) for module in modules() for function in module.functions()]
    assert statistics.quantiles(lengths, n=10)[-1] < 30


def excused(module: Module) -> set[ast.AST]:
    """The values of arguments that say something else than an amount."""
    named = (node for node in module.nodes() if isinstance(node, ast.keyword))
    return {node.value for node in named if node.arg in FLOATS}


def test_no_float_touches_money_or_a_quantity() -> None:
    """Amounts are whole minor units, quantities are fractions: no float is made where they are."""
    wrong = [
        module.at(node.lineno)
        for module in modules()
        if module.layer in EXACT
        for node in set(module.nodes()) - excused(module)
        if (isinstance(node, ast.Constant) and isinstance(node.value, float))
        or (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "float")
    ]
    assert not wrong, listed(wrong)


def test_every_module_reads_its_annotations_late() -> None:
    """One habit for all files, so that an annotation never costs an import."""
    habit = "from __future__ import annotations"
    wrong = [module.name for module in modules() if len(module.tree.body) > 1 and habit not in module.text]
    assert not wrong, listed(wrong)


def records() -> Iterator[tuple[str, ast.ClassDef, str]]:
    """Every dataclass others may see: where it stands, itself, and how it is declared.

    Not those that never leave their module, such as a sum while it grows; not exceptions; not the few in MUTABLE.
    """
    for module in modules():
        for node in module.nodes():
            if isinstance(node, ast.ClassDef) and not _is_exempt(module, node):
                for decorator in map(ast.unparse, node.decorator_list):
                    if decorator.startswith("dataclass"):
                        yield module.at(node.lineno), node, decorator


def _is_exempt(module: Module, node: ast.ClassDef) -> bool:
    if node.name.startswith("_") or f"{module.name}.{node.name}" in MUTABLE:
        return True
    return any(ast.unparse(base).endswith(("Error", "Exception")) for base in node.bases)


def test_every_record_is_frozen() -> None:
    """A result stays what it was: a dataclass is frozen and slotted."""
    wrong = [at for at, _, how in records() if "frozen=True" not in how or "slots=True" not in how]
    assert not wrong, listed(wrong)


def test_a_record_of_more_than_four_fields_is_built_by_keyword() -> None:
    """Two amounts in a row are easily swapped; a small value such as a quantity reads well without."""
    wrong = [
        at
        for at, node, how in records()
        if sum(isinstance(part, ast.AnnAssign) for part in node.body) > 4 and "kw_only=True" not in how
    ]
    assert not wrong, listed(wrong)


def test_every_library_that_is_used_is_asked_for() -> None:
    """What the package or its tests import stands in pyproject.toml, so a new machine has it too."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = {normal(line) for line in project["dependencies"]}
    asked_for_tests = asked | {normal(line) for line in project["optional-dependencies"]["test"]}
    wrong = [
        f"{path.relative_to(ROOT)}: {library}"
        for path in files()
        if path.suffix == ".py"
        for library in libraries(path)
        if not known_as(library) & (asked if PACKAGE in path.parents else asked_for_tests)
    ]
    assert not wrong, listed(wrong)


def libraries(path: Path) -> set[str]:
    """The libraries a file imports that are neither Python's own nor ours."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found = [alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names]
    found += [node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and not node.level]
    return {name.split(".")[0] for name in found} - {"builder", "tests", *sys.stdlib_module_names}


def known_as(library: str) -> set[str]:
    """The names of the packages that bring a library."""
    return {normal(name) for name in distributions().get(library, [library])}


@cache
def distributions() -> Mapping[str, list[str]]:
    """Library to packages, of this environment."""
    return importlib.metadata.packages_distributions()


def normal(requirement: str) -> str:
    """The name in a requirement, as package indexes compare names."""
    name = re.match(r"[\w.-]+", requirement)
    assert name, requirement
    return re.sub(r"[-_.]+", "-", name[0]).lower()


def test_no_file_knows_the_machine_it_was_written_on() -> None:
    """No path of one computer and no address of a package index."""
    wrong = [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()[:80]}"
        for path in files()
        if path.suffix in TEXT
        for number, line in enumerate(path.read_text(encoding="utf-8", errors="replace").split("\n"), 1)
        if MACHINE.search(line)
    ]
    assert not wrong, listed(wrong)


@pytest.mark.parametrize("word", ["skip", "skipif", "importorskip"])
def test_no_test_steps_aside(word: str) -> None:
    """What a machine cannot run is left out by tests/run.sh, which says so. A test runs or fails."""
    wrong = [
        f"{path.relative_to(ROOT)}:{node.lineno}"
        for path in files()
        if path.suffix == ".py" and PACKAGE not in path.parents
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and node.attr == word and "pytest" in ast.unparse(node.value)
    ]
    assert not wrong, listed(wrong)
