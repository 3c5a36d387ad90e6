"""Mutation testing of the folders that compute: how many small changes do their tests notice?

    python -m tests.bench.mutate                          every change to words, a sample of the others
    python -m tests.bench.mutate --folder plan --sample 0 every change to plan
    python -m tests.bench.mutate --again survivors.txt    only those listed there, by an earlier run

Every change is made in a process of its own, and only the tests that reach its line are run, fastest first, until one
fails. A change that makes a test take far longer than it did is noticed too. Laws are tried on fewer examples than in
the suite (the same in every run), so a change that survives here may yet be noticed there.
"""

from __future__ import annotations

import argparse
import ast
import contextlib
import importlib
import json
import os
import random
import sys
import tempfile
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

import coverage
import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.bench.mutants import sites
from tests.bench.noticed import (
    BROKEN,
    KILLED,
    PYTEST,
    ROOT,
    SURVIVED,
    Measure,
    Mutant,
    Reach,
    forked,
    imported_changed,
    in_processes,
    line_of,
    started_over,
)

FOLDERS = ("words", "ledger", "takeoff", "plan")
EXAMPLES = 25
SAMPLE = 450  # changes of the folders other than words, together
# Loaded once, before processes are forked; without them the run is only slower.
HEAVY = (
    "babel", "iso4217", "jinja2", "jsonschema", "lxml.etree", "markdown", "networkx", "nh3", "numpy", "numpy_financial",
    "pint", "playwright.sync_api", "scipy.optimize", "scipy.stats", "yaml",
)  # fmt: skip


def all_mutants(folders: Iterable[str]) -> list[Mutant]:
    """Every change to the files of these folders."""
    found = []
    for folder in folders:
        for path in sorted((ROOT / "builder" / folder).rglob("*.py")):
            name = path.relative_to(ROOT).as_posix()
            tree = ast.parse(path.read_text("utf-8"))
            found += [Mutant(path=name, number=at, site=site) for at, site in enumerate(sites(tree))]
    return found


def sampled(mutants: Sequence[Mutant], size: int, seed: int) -> list[Mutant]:
    """So many of them by chance, from every file in proportion, and at least one from each."""
    by_path: dict[str, list[Mutant]] = defaultdict(list)
    for mutant in mutants:
        by_path[mutant.path].append(mutant)
    chance = random.Random(seed)
    chosen = []
    for path in sorted(by_path):
        wanted = max(1, round(size * len(by_path[path]) / len(mutants)))
        chosen += chance.sample(by_path[path], min(wanted, len(by_path[path])))
    return chosen


def chosen(options: argparse.Namespace) -> list[Mutant]:
    """The changes that the command line asks for."""
    if options.again:
        names = {line.split("  ")[0] for line in Path(options.again).read_text("utf-8").splitlines()}
        return [mutant for mutant in all_mutants(FOLDERS) if mutant.name in names]
    found = []
    for folder in options.folder or FOLDERS:
        mutants = all_mutants([folder])
        size = 0 if folder == "words" and options.sample is None else options.sample or 0
        if options.sample is None and folder != "words":
            size = round(SAMPLE * len(mutants) / len(all_mutants(FOLDERS[1:])))
        found += sampled(mutants, size, options.seed) if size else mutants
    return found


def table(mutants: Sequence[Mutant], outcomes: dict[str, int], sizes: dict[str, int]) -> Iterator[str]:
    """A row a folder; where it is a sample, the share killed with its 95 % interval (Wilson's)."""
    yield f"{'folder':<10}{'of':>7}{'tried':>7}{'killed':>8}{'survived':>10}{'share':>9}  95 % interval"
    for folder in sorted({mutant.folder for mutant in mutants}, key=FOLDERS.index):
        mine = [mutant for mutant in mutants if mutant.folder == folder and outcomes[mutant.name] != BROKEN]
        killed = sum(outcomes[mutant.name] == KILLED for mutant in mine)
        low, high = wilson(killed, len(mine))
        interval = f"{low:.1%} to {high:.1%}" if len(mine) < sizes[folder] else "all of them"
        left = len(mine) - killed
        yield f"{folder:<10}{sizes[folder]:>7}{len(mine):>7}{killed:>8}{left:>10}{killed / len(mine):>9.1%}  {interval}"


def wilson(killed: int, tried: int, z: float = 1.96) -> tuple[float, float]:
    """E. B. Wilson, 1927: the interval of a share seen in a sample."""
    share, square = killed / tried, z * z / tried
    middle, half = share + square / 2, z * (share * (1 - share) / tried + square / (4 * tried)) ** 0.5
    return (middle - half) / (1 + square), (middle + half) / (1 + square)


def main() -> int:
    """Try the changes; print the survivors and a table."""
    parser = argparse.ArgumentParser(description="How many small changes do the tests notice?")
    parser.add_argument("--folder", action="append", choices=FOLDERS)
    parser.add_argument("--sample", type=int, help="so many changes of each folder; 0 for all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--again", help="a file of survivors: try only these")
    parser.add_argument("--survivors", help="write the survivors into this file")
    options = parser.parse_args()
    os.chdir(ROOT)
    mutants = chosen(options)
    outcomes = tried(mutants, options.jobs)
    alive = [line_of(mutant) for mutant in mutants if outcomes[mutant.name] != KILLED]
    if options.survivors:
        Path(options.survivors).write_text("".join(f"{line}\n" for line in alive), "utf-8")
    sizes = {folder: len(all_mutants([folder])) for folder in FOLDERS}
    sys.stdout.write("\n".join([*alive, "", *table(mutants, outcomes, sizes), ""]))
    return 0


def tried(mutants: Sequence[Mutant], jobs: int) -> dict[str, int]:
    """What became of each change."""
    settings.register_profile(
        "mutation",
        max_examples=EXAMPLES,
        derandomize=True,
        database=None,
        deadline=None,
        phases=[Phase.explicit, Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    os.environ["HYPOTHESIS_PROFILE"] = "mutation"
    for name in HEAVY:
        with contextlib.suppress(ImportError):
            importlib.import_module(name)
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "reach.json"
        if not (child := os.fork()):
            os._exit(_measured(mutants, file, jobs))
        if os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]):
            sys.exit("the tests do not pass as they are")
        outcomes, seconds, tests, on_import, importers = json.loads(file.read_text("utf-8"))
    by_line = {path: {int(line): found for line, found in lines.items()} for path, lines in tests.items()}
    reach = Reach(seconds, by_line, on_import, importers)
    unchanged = forked(lambda: started_over(sorted(seconds), reach))
    if os.waitstatus_to_exitcode(os.waitpid(unchanged, 0)[1]) != SURVIVED:
        sys.exit("the tests do not pass when they are started over without any change")
    rest = [mutant for mutant in mutants if reach.imported(mutant)]
    return outcomes | in_processes(rest, lambda mutant: imported_changed(mutant, reach), jobs)


def _measured(mutants: Sequence[Mutant], file: Path, jobs: int) -> int:
    watch = coverage.Coverage(data_file=None, branch=False, source=[str(ROOT / "builder")], config_file=False)
    watch.start()
    folders = [f"tests/{name}" for name in FOLDERS]
    return int(pytest.main([*PYTEST, *folders], plugins=[Measure(mutants, watch, file, jobs)]))


if __name__ == "__main__":
    raise SystemExit(main())
