"""The speed table: whole processes against a floor, in one run.

    python -m tests.bench.speed 1000

The floor is one process that turns the stories of the same journal into HTML with bare Markdown and the same
extensions, renders the same templates from page records that are ready, and writes the files. What it takes
to load those records is not counted. Every row is the median of five turns, in each of which the floor is run first
and everything else is divided by it: these machines are faster in one minute than in the next.
Seconds are those of the processor (user and system, all of a process): a busy machine moves them least. What both
processors do together is told by the clock, and needs a machine with nothing else to do.
"""

from __future__ import annotations

import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from tests.bench.journals import write_journal

TURNS = 5
ALONE = ("taskset", "-c", "0")


def main(episodes: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as scratch:
        bench = Bench(Path(scratch), episodes)
        rows, floors = bench.rows(), list[float]()
        ratios: list[list[float]] = [[] for _ in rows]
        for _ in range(TURNS):
            floors.append(bench.floor())
            for (_, _, run), seen in zip(rows, ratios, strict=True):
                seen.append(run() / floors[-1])
        print(f"{episodes} episodes; floor {statistics.median(floors):.2f} s ({min(floors):.2f} to {max(floors):.2f})")
        for (what, goal, _), seen in zip(rows, ratios, strict=True):
            print(f"{what:46} {statistics.median(seen):7.3f} x ({min(seen):.3f} to {max(seen):.3f})  {goal}")
        print(f"{'peak memory of a full publish':46} {bench.peak:7} MB           at most 200 MB at 1,000")
        bare, told = bench.start("-c", "pass"), bench.start("-m", "builder", "--help")
        print(f"{'--help':46} {told:7.2f} s {told / bare:6.1f} x  at most 20 x a bare interpreter's start")


class Bench:
    """A journal of so many episodes, published into a folder with a cache of its own."""

    def __init__(self, folder: Path, episodes: int) -> None:
        self.folder, self.turn, self.peak = folder, 0, 0
        self.journal, self.site, self.cache = folder / "journal", folder / "site", folder / "cache"
        write_journal(self.journal, episodes)
        # In a process of its own: what this one holds would count as the others' peak.
        self._run("-m", "tests.bench.records", str(self.journal), str(self.folder / "records"))

    def rows(self) -> list[tuple[str, str, Callable[[], float]]]:
        """What is measured, its goal, and how."""
        return [
            ("the same with both processors, by the clock", "at most 0.70 x", self.full_by_clock),
            ("full publish, caches empty, one process", "at most 1.25 x", self.full),
            ("nothing changed", "at most 0.04 x", self.publish),
            (
                "one price changed in the first episode",
                "at most 0.25 x",
                lambda: self.changed(0, r"cost: \d+", "cost: "),
            ),
            ("one word changed in one episode", "at most 0.06 x", lambda: self.changed(-1, r"## Part \d+", "## Part ")),
        ]

    def publish(self) -> float:
        """Seconds that one publish takes."""
        return self.start("-m", "builder", "publish", str(self.journal), "--to", str(self.site))

    def full(self) -> float:
        """The same into a new folder with an empty cache."""
        for folder in (self.site, self.cache):
            shutil.rmtree(folder, ignore_errors=True)
        return self.publish()

    def full_by_clock(self) -> float:
        """Seconds by the clock, with every processor that there is."""
        for folder in (self.site, self.cache):
            shutil.rmtree(folder, ignore_errors=True)
        begun = time.monotonic()
        self._run("-m", "builder", "publish", str(self.journal), "--to", str(self.site), alone=False)
        return time.monotonic() - begun

    def changed(self, episode: int, pattern: str, word: str) -> float:
        """The same after one change that was not there before."""
        self.turn += 1
        file = sorted((self.journal / "episodes").iterdir())[episode]
        text = file.read_text(encoding="utf-8")
        file.write_text(re.sub(pattern, f"{word}{100 + self.turn}", text, count=1), encoding="utf-8")
        return self.publish()

    def start(self, *words: str) -> float:
        """Processor seconds that a Python process takes as a whole."""
        return self._run(*words)[0]

    def _run(self, *words: str, alone: bool = True) -> tuple[float, str]:
        """Processor seconds, and what it printed; `alone` keeps it on one processor, so that it stays one process."""
        environment = {**os.environ, "BARROWBOOK_CACHE": str(self.cache)}
        # As an installed program runs: compiled once, whatever this shell says of compiled files.
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        environment["PYTHONPYCACHEPREFIX"] = str(self.folder / "compiled")
        with (self.folder / "told").open("w+") as told:
            command = [*(ALONE if alone else ()), sys.executable, *words]
            process = subprocess.Popen(command, env=environment, stdout=told, stderr=subprocess.DEVNULL)
            _, status, used = os.wait4(process.pid, 0)
            process.returncode = os.waitstatus_to_exitcode(status)
            assert process.returncode == 0, words
            told.seek(0)
            if "publish" in words:
                self.peak = max(self.peak, used.ru_maxrss // 1024)
            return used.ru_utime + used.ru_stime, told.read()

    def floor(self) -> float:
        """Seconds of the floor, less what it says that loading took."""
        out = self.folder / "floor"
        shutil.rmtree(out, ignore_errors=True)
        seconds, told = self._run("-m", "tests.bench.floor", str(self.folder / "records"), str(out))
        return seconds - float(told)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000)
