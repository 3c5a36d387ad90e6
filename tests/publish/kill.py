"""Kill a publish at moments drawn evenly over its run, and look at the site each time.

    python -m tests.publish.kill --moments 300 --pages 300

prints how the runs ended and exits 1 if a site was ever anything but whole. The moments are moments of
the clock, not borders between steps. Every other kill is of a run that first has to tidy up after the
last one; half of the runs use spare folders. `--folder` says on which disk.
"""

from __future__ import annotations

import argparse
import os
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Self

from builder.publish.folder import publish_folder
from tests.publish.sites import add_foreign, big_site, contents

ROOT = Path(__file__).resolve().parents[2]
NO_SPARE = "-"
AFRESH = 50  # moments after which the run is timed anew, as a machine has other things to do


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How the runs ended: how many were killed before their end, and which site stood then.

    `stray` is after how many kills a tree was left for the next run to put away. `run_ms` is the usual run:
    clean and tidying up, without spare folders and with, as last timed. `wrong` must be empty.
    """

    killed: int
    old: int
    new: int
    stray: int
    run_ms: tuple[float, ...]
    wrong: tuple[str, ...]


class Publishers:
    """A process that starts publishing processes, each a fork of it, so that none has to start Python."""

    def __init__(self, site: Path, pages: int) -> None:
        words = [sys.executable, "-m", "tests.publish.kill", "--serve", str(site), "--pages", str(pages)]
        self.process = subprocess.Popen(words, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        assert self.process.stdout
        assert self.process.stdin
        self.told, self.tell = self.process.stdout, self.process.stdin

    def publish(self, state: str, spare: str, kill_after: float | None = None) -> tuple[bool, float]:
        """One run: whether it came to its end, and its seconds. SIGKILL after so many, if given."""
        self.tell.write(f"{state} {spare}\n".encode())
        self.tell.flush()
        number, began = int(self.told.readline()), time.perf_counter()
        if kill_after is not None:
            time.sleep(max(began + kill_after - time.perf_counter(), 0))
            os.kill(number, signal.SIGKILL)  # it may have ended, but its number is not free until asked for
        self.tell.write(b"how did it end?\n")
        self.tell.flush()
        status = int(self.told.readline())
        if status not in {0, -signal.SIGKILL}:
            raise RuntimeError(f"a publish ended with {status}")
        return status == 0, time.perf_counter() - began

    def usual_run(self, spare: str) -> tuple[float, float]:
        """Seconds of a run, and of one that has to tidy up after a killed one; leaves the site in state a."""
        clean = statistics.median([self.publish(state, spare)[1] for state in "bababa"][2:])
        tidying = []
        for state in "baba":
            self.publish(state, spare, kill_after=clean / 2)
            tidying.append(self.publish(state, spare)[1])
        return clean, statistics.median(tidying)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.tell.close()
        self.process.wait()
        self.told.close()


def serve(site: Path, pages: int) -> None:
    """For each line, `STATE SPARE`: fork and say the child's number; for the next line, how it ended."""
    states = {state: big_site(state, pages) for state in "ab"}
    while line := sys.stdin.readline():
        state, spare = line.split()
        child = os.fork()
        if child == 0:
            publish_folder(site, states[state], version="1", spare=_spare(spare), wait=60)
            os._exit(0)
        _say(child)
        sys.stdin.readline()
        _say(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))


def _say(what: object) -> None:
    sys.stdout.write(f"{what}\n")
    sys.stdout.flush()


def _spare(given: str) -> Path | None:
    return None if given == NO_SPARE else Path(given)


class Watch:
    """The site as it should stand, compared with the site as it stands."""

    def __init__(self, folder: Path, pages: int) -> None:
        self.folder, self.site, self.pages = folder, folder / "site", pages
        publish_folder(self.site, big_site("a", pages), version="1")
        self.theirs = add_foreign(self.site)
        self.standing = "a"
        self.wrong: list[str] = []

    def is_in(self, state: str) -> bool:
        """Whether the site is that state, whole, and what others put there is whole too."""
        return contents(self.site) == {**big_site(state, self.pages), **self.theirs}

    def look(self, moment: int, wanted: str) -> str:
        """After a kill: which site stands."""
        if self.is_in(wanted):
            self.standing = wanted
            return "new"
        if not self.is_in(self.standing):
            self.wrong.append(f"moment {moment}: the site is neither the old one nor the new one")
        return "old"

    def recover(self, moment: int, spare: str) -> None:
        """The next run, which must succeed, and leave nothing beside the site."""
        publish_folder(self.site, big_site(self.standing, self.pages), version="1", spare=_spare(spare))
        if not self.is_in(self.standing):
            self.wrong.append(f"moment {moment}: the next run did not make the site")
        if strange := {path.name for path in self.folder.iterdir()} - {"site", "cache"}:
            self.wrong.append(f"moment {moment}: the next run left {', '.join(sorted(strange))}")


def kill_evenly(folder: Path, moments: int, pages: int = 36) -> Outcome:
    """Publish `moments` times, each run killed a little later in its course than the one before."""
    watch = Watch(folder, pages)
    ends = {"old": 0, "new": 0}
    run: dict[str, tuple[float, float]] = {}
    stray = killed = 0
    with Publishers(watch.site, pages) as publishers:
        for moment in range(moments):
            if moment % AFRESH == 0:
                run = {spare: publishers.usual_run(spare) for spare in (NO_SPARE, str(folder / "cache"))}
                watch.standing = "a"
            wanted = "b" if watch.standing == "a" else "a"
            spare = list(run)[moment // 2 % 2]
            seconds = run[spare][moment % 2] * (moment + 0.5) / moments
            whole, _ = publishers.publish(wanted, spare, kill_after=seconds)
            killed += not whole
            ends[watch.look(moment, wanted)] += 1
            stray += (folder / ".site.barrowbook").exists()
            if moment % 2:
                watch.recover(moment, spare)
    usual = tuple(round(seconds * 1000, 1) for seconds in (*run[NO_SPARE], *run[str(folder / "cache")]))
    return Outcome(killed=killed, **ends, stray=stray, run_ms=usual, wrong=tuple(watch.wrong))


def main(words: Sequence[str] | None = None) -> int:
    """The long run, from the command line."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--moments", type=int, default=300)
    parser.add_argument("--pages", type=int, default=300)
    parser.add_argument("--folder", type=Path)
    parser.add_argument("--serve", type=Path, help=argparse.SUPPRESS)
    given = parser.parse_args(words)
    if given.serve:
        serve(given.serve, given.pages)
        return 0
    with tempfile.TemporaryDirectory(dir=given.folder) as folder:
        outcome = kill_evenly(Path(folder), given.moments, given.pages)
    _say(outcome)
    return 1 if outcome.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
