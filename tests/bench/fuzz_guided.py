"""One target of the long fuzzing, in a process whose package tells which lines an input reaches: see fuzz.py."""

from __future__ import annotations

import importlib
import json
import random
import sys
import time
from pathlib import Path
from typing import Any

# Asked for by this command alone, so it is not among what the checks need; and first, so that what is imported under
# it tells which lines it reaches.
atheris = importlib.import_module("atheris")
with atheris.instrument_imports(include=["builder"]):
    targets = importlib.import_module("tests.bench.fuzz_targets").TARGETS
    changes = importlib.import_module("tests.bench.fuzz_changes")
    keep = importlib.import_module("tests.bench.fuzz").keep

SLOW = 0.7  # seconds with the instruments on, which make it slower


class Guided:
    """Tries inputs, keeps those that something is wrong with, and writes down how many there were."""

    def __init__(self, name: str, folder: Path) -> None:
        self._target, self._folder = targets[name], folder
        self._inputs, self._began, self._told = 0, time.monotonic(), 0.0
        self._seen: set[str] = set()
        self._seeds = list(self._target.seeds())

    def try_one(self, data: bytes) -> None:
        """Whatever it raises is kept, once for each place that raises."""
        began = time.process_time()
        try:
            self._target.check(data)
        except Exception as error:  # noqa: BLE001 - whatever it raises is what we look for
            self._found(data, _where(error))
        if time.process_time() - began > SLOW:
            self._found(data, f"slow {int(began) // 20}")
        self._inputs += 1
        if time.monotonic() - self._told > 1:
            self._tell()

    def _found(self, data: bytes, kind: str) -> None:
        if kind not in self._seen:
            self._seen.add(kind)
            keep(self._folder / "findings", data)

    def _tell(self) -> None:
        self._told = time.monotonic()
        kept = sum(1 for _ in (self._folder / "corpus").iterdir())
        said = {"inputs": self._inputs, "seconds": round(self._told - self._began), "kept": kept}
        (self._folder / "count.json").write_text(json.dumps(said), "utf-8")

    def change(self, data: bytes, most: int, seed: int) -> bytes:
        """A third of the changes are the library's own."""
        if seed % 3 == 0:
            return bytes(atheris.Mutate(data, most))
        return bytes(changes.changed(data, self._seeds, random.Random(seed))[:most])


def _where(error: Exception) -> str:
    """The kind of error and the last line of code that it went through."""
    trace: Any = error.__traceback__
    while trace.tb_next is not None:
        trace = trace.tb_next
    return f"{type(error).__name__} {trace.tb_frame.f_code.co_filename}:{trace.tb_lineno}"


def main() -> None:
    """`name seconds folder`; the library ends the process when the time is up."""
    name, seconds, folder = sys.argv[1], int(sys.argv[2]), Path(sys.argv[3])
    guided = Guided(name, folder)
    options = [
        f"-max_total_time={seconds}",
        f"-max_len={changes.LONGEST}",
        "-timeout=100",
        "-rss_limit_mb=0",
        "-verbosity=0",
    ]
    folders = [str(folder / "corpus"), str(folder / "seeds")]
    atheris.Setup([sys.argv[0], *options, *folders], guided.try_one, custom_mutator=guided.change)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
