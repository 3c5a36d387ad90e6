"""Which tests reach a change, and whether one of them notices it.

Every change is made in a process of its own. A change inside a function is put into the running process, with the
tests collected once; one that the import of a module would see starts over from there.
"""

from __future__ import annotations

import ast
import functools
import gc
import importlib.machinery
import json
import os
import resource
import signal
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import CodeType, FunctionType

import coverage
import pytest
from _pytest.runner import runtestprotocol

from tests.bench.mutants import Site, changed

ROOT = Path(__file__).resolve().parents[2]
SURVIVED, KILLED, NO_TEST, BROKEN = 0, 1, 2, 3
PYTEST = ["-q", "-s", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """One change to one file of the package."""

    path: str
    number: int
    site: Site

    @property
    def name(self) -> str:
        return f"{self.path}:{self.site.name}"

    @property
    def folder(self) -> str:
        return self.path.split("/")[1]

    def code(self) -> CodeType:
        return changed((ROOT / self.path).read_text("utf-8"), str(ROOT / self.path), self.number)


@dataclass(frozen=True, slots=True)
class Reach:
    """Which tests reach which line of which file (on import, too), and how long each takes."""

    seconds: dict[str, float]
    tests: dict[str, dict[int, list[str]]]
    on_import: dict[str, list[int]]
    importers: dict[str, list[str]]

    def imported(self, mutant: Mutant) -> bool:
        """Whether its line runs when the module, or a test, is imported: then the change has to be there by then."""
        first, last = mutant.site.statement
        return mutant.site.function is None or any(first <= line <= last for line in self.on_import[mutant.path])

    def of(self, mutant: Mutant) -> list[str]:
        """The tests that could notice a change; those of its own folder first, the fastest first."""
        found: set[str] = set()
        first, last = mutant.site.statement
        lines = self.tests[mutant.path]
        if self.imported(mutant):
            for path in (mutant.path, *self.importers[mutant.path]):
                found.update(test for tests in self.tests.get(path, {}).values() for test in tests)
            files = {path for path in self.importers[mutant.path] if path.startswith("tests/")}
            found.update(test for test in self.seconds if test.split("::")[0] in files)
        else:
            found.update(test for line in range(first, last + 1) for test in lines.get(line, ()))
        near = f"tests/{mutant.folder}/"
        return sorted(found, key=lambda test: (not test.startswith(near), self.seconds[test], test))


class Measure:
    """A pytest plugin: runs every test once, notes what it reaches, then tries the changes inside functions."""

    def __init__(self, mutants: Sequence[Mutant], watch: coverage.Coverage, file: Path, jobs: int) -> None:
        self.mutants, self.watch, self.file, self.jobs = mutants, watch, file, jobs
        self.outcomes: dict[str, int] = {}

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        seconds = {}
        caches = kept()
        for item, following in zip(session.items, [*session.items[1:], None], strict=True):
            for cache in caches:
                cache.cache_clear()  # or only the first test to fill it would reach what fills it
            self.watch.switch_context(item.nodeid)
            begun = time.perf_counter()
            if not passes(item, following):
                sys.exit(f"{item.nodeid} fails without any change")
            seconds[item.nodeid] = time.perf_counter() - begun
        self.watch.stop()
        reach = reached(self.watch, seconds)
        self.outcomes |= self.tried(session, reach)
        self.file.write_text(json.dumps([self.outcomes, reach.seconds, reach.tests, reach.on_import, reach.importers]))
        return True

    def tried(self, session: pytest.Session, reach: Reach) -> dict[str, int]:
        functions: dict[tuple[str, str, int], list[FunctionType]] = defaultdict(list)
        for one in gc.get_objects():
            if isinstance(one, FunctionType) and one.__code__.co_filename.startswith(str(ROOT / "builder")):
                code = one.__code__
                functions[code.co_filename, code.co_qualname, code.co_firstlineno].append(one)
        items = {item.nodeid: item for item in session.items}

        def attempt(mutant: Mutant) -> int:
            swap(mutant, functions)
            return run([items[test] for test in reach.of(mutant)], reach)

        now = [mutant for mutant in self.mutants if not reach.imported(mutant)]
        return in_processes(now, attempt, self.jobs)


class Chosen:
    """A pytest plugin: runs the chosen tests in their order, until one fails."""

    def __init__(self, tests: Sequence[str], reach: Reach) -> None:
        self.place = {test: at for at, test in enumerate(tests)}
        self.reach = reach

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = sorted(
            (item for item in items if item.nodeid in self.place), key=lambda item: self.place[item.nodeid]
        )

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        if session.testsfailed or len(session.items) < len(self.place):
            os._exit(KILLED)  # a test file could not be imported, or its table of cases changed
        os._exit(run(session.items, self.reach))


def passes(item: pytest.Item, following: pytest.Item | None) -> bool:
    """Whether a test passes."""
    return not any(report.failed for report in runtestprotocol(item, log=False, nextitem=following))


def run(items: Sequence[pytest.Item], reach: Reach) -> int:
    """Run these until one fails, each with a limit: ten times the processor time it took, and three seconds."""
    for at, item in enumerate(items):
        signal.setitimer(signal.ITIMER_PROF, 3 + 10 * reach.seconds[item.nodeid])
        if not passes(item, items[at + 1] if at + 1 < len(items) else None):
            return KILLED
    return SURVIVED if items else NO_TEST


def reached(watch: coverage.Coverage, seconds: dict[str, float]) -> Reach:
    """What the measuring found."""
    data = watch.get_data()
    tests: dict[str, dict[int, list[str]]] = {}
    on_import: dict[str, list[int]] = {}
    texts = {path.relative_to(ROOT).as_posix(): path for path in sorted((ROOT / "builder").rglob("*.py"))}
    asking = {path.relative_to(ROOT).as_posix(): path for path in sorted((ROOT / "tests").rglob("*.py"))}
    for name, path in texts.items():
        by_line = data.contexts_by_lineno(str(path))
        tests[name] = {line: [one for one in found if one] for line, found in by_line.items() if any(found)}
        on_import[name] = [line for line, found in by_line.items() if "" in found]
    imported = {name: _imported(path) for name, path in (texts | asking).items()}
    importers = {name: _importers(name, imported) for name in texts}
    return Reach(seconds, tests, on_import, importers)


def _importers(name: str, imported: dict[str, set[str]]) -> list[str]:
    """The package's modules that import this one themselves, and every test file that does, however far round."""
    found = [name]
    for one in found:  # which grows
        module = one.removesuffix(".py").replace("/", ".")
        asking = [other for other, modules in imported.items() if module in modules]
        found += [other for other in asking if other not in found]
    module = name.removesuffix(".py").replace("/", ".")
    return [one for one in found[1:] if one.startswith("tests/") or module in imported[one]]


def _imported(path: Path) -> set[str]:
    """The modules that a file takes names from; in `from package import module` either may be one."""
    asked = [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(node, ast.ImportFrom)]
    packages = {node.module or "" for node in asked}
    return packages | {f"{node.module}.{each.name}" for node in asked for each in node.names}


def swap(mutant: Mutant, functions: dict[tuple[str, str, int], list[FunctionType]]) -> None:
    """Give the functions of this process their changed code, and let them forget what they kept."""
    assert mutant.site.function is not None
    name, line = mutant.site.function
    code = next(one for one in _codes(mutant.code()) if (one.co_qualname, one.co_firstlineno) == (name, line))
    found = functions[code.co_filename, name, line]
    if not found:
        raise LookupError(f"{mutant.name}: no function {name} of line {line} is there")
    for function in found:
        function.__code__ = code
    for cache in kept():
        cache.cache_clear()


def kept() -> list[functools._lru_cache_wrapper[object]]:
    """What the package's functions remember."""
    caches = (one for one in gc.get_objects() if isinstance(one, functools._lru_cache_wrapper))
    return [one for one in caches if (one.__module__ or "").startswith("builder")]


def _codes(code: CodeType) -> Iterator[CodeType]:
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield one
            yield from _codes(one)


def imported_changed(mutant: Mutant, reach: Reach) -> int:
    """Start over with the module changed before anything imports it."""
    code, path = mutant.code(), str(ROOT / mutant.path)
    before = importlib.machinery.SourceFileLoader.get_code
    tests = reach.of(mutant)
    if not tests:
        return NO_TEST

    def get_code(self: importlib.machinery.SourceFileLoader, fullname: str) -> CodeType | None:
        return code if self.path == path else before(self, fullname)

    importlib.machinery.SourceFileLoader.get_code = get_code  # type: ignore[method-assign]
    return started_over(tests, reach)


def started_over(tests: Sequence[str], reach: Reach) -> int:
    """Run these tests in a session of their own, until one fails."""
    signal.setitimer(signal.ITIMER_PROF, 60)
    files = list(dict.fromkeys(test.split("::")[0] for test in tests))
    ended = pytest.main([*PYTEST, *files], plugins=[Chosen(tests, reach)])
    # It ends here only where it ran nothing: a test file could not be imported.
    return KILLED if ended == pytest.ExitCode.INTERRUPTED else BROKEN


def in_processes(mutants: Sequence[Mutant], attempt: Callable[[Mutant], int], jobs: int) -> dict[str, int]:
    """What became of each, so many at a time."""
    outcomes: dict[str, int] = {}
    running: dict[int, Mutant] = {}
    waiting = list(reversed(mutants))
    while waiting or running:
        while waiting and len(running) < jobs:
            mutant = waiting.pop()
            running[forked(functools.partial(attempt, mutant))] = mutant
        child, status = os.waitpid(-1, 0)
        if child in running:
            code = os.waitstatus_to_exitcode(status)
            mutant = running.pop(child)
            outcomes[mutant.name] = code if code in (SURVIVED, NO_TEST, BROKEN) else KILLED  # also by a signal
            if outcomes[mutant.name] != KILLED:
                sys.stderr.write(f"{line_of(mutant)}{'  could not be tried' if code == BROKEN else ''}\n")
    return outcomes


def forked(attempt: Callable[[], int]) -> int:
    """Begin an attempt in a process of its own, with its limits; the number of the process."""
    child = os.fork()
    if child:
        return child
    code = BROKEN
    try:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.dup2(null, 2)
        resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
        signal.alarm(900)
        code = attempt()
    finally:
        os._exit(code)


def line_of(mutant: Mutant) -> str:
    """A change as it is listed."""
    site = mutant.site
    return f"{mutant.name}  {site.before}  ->  {site.after}"
