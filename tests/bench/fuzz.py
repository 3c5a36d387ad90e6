"""Looks for inputs that reading cannot take, guided by which lines of the package they reach.

    python -m tests.bench.fuzz SECONDS [--only TARGET] [--keep FOLDER]

Needs atheris (`pip install atheris`, into an environment of its own). Every target of fuzz_targets.py gets its part
of the time; the rest goes to swelling: pieces of what was found, repeated until a file is as large as one may be.
A finding is anything but mistakes with places: another exception, more than a second of one processor, or more
than 200 MB. It is tried again in a process of its own, without the instruments, before it counts.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import random
import signal
import subprocess
import sys
import time
import traceback
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.bench.fuzz_changes import swollen
from tests.bench.fuzz_targets import ROOT, TARGETS, read_only

MOST_SECONDS, MOST_MEGABYTES = 1.0, 200
SWELLING = 15  # parts of the time, beside those of the targets
STORY, KEYS = 950_000, 195_000  # bytes: just under what a file may have


@dataclass(frozen=True, slots=True)
class Trial:
    """What became of one input in a process of its own; `raised` ends with where."""

    seconds: float
    megabytes: float
    raised: str

    @property
    def wrong(self) -> str:
        """What is wrong with it, in a line; "" if nothing is."""
        if self.raised:
            return self.raised.strip().rsplit("\n", 1)[-1]
        if self.seconds > MOST_SECONDS:
            return f"{self.seconds:.1f} s"
        return f"{self.megabytes:.0f} MB" if self.megabytes > MOST_MEGABYTES else ""


def tried(check: object, data: bytes) -> Trial:
    """One input in a child process: how much processor and memory it took, and what it raised."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        _in_child(check, data, write)
    os.close(write)
    with os.fdopen(read, "rb") as told:
        raised = told.read().decode()
    _, status, used = os.wait4(child, 0)
    if os.WIFSIGNALED(status):
        raised = f"ended by signal {os.WTERMSIG(status)}"
    return Trial(used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, raised)


def _in_child(check: object, data: bytes, write: int) -> None:
    signal.setitimer(signal.ITIMER_VIRTUAL, 20)
    try:
        check(data)  # type: ignore[operator]
    except BaseException:  # noqa: BLE001 - whatever it raises is what we look for
        os.write(write, traceback.format_exc(limit=-4)[-4000:].encode("utf-8", "backslashreplace"))
    os._exit(0)


def keep(folder: Path, data: bytes) -> None:
    """An input as a file, named after what it holds."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / hashlib.sha256(data).hexdigest()[:16]).write_bytes(data)


def run_target(name: str, seconds: int, folder: Path) -> dict[str, int]:
    """One target in a process of its own; how many inputs it tried, and kept for reaching new code."""
    for seed in TARGETS[name].seeds():
        keep(folder / "seeds", seed)
    (folder / "corpus").mkdir(parents=True, exist_ok=True)
    command = [sys.executable, "-m", "tests.bench.fuzz_guided", name, str(seconds), str(folder)]
    run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, errors="replace", check=False)
    try:
        return dict(json.loads((folder / "count.json").read_text("utf-8")))
    except (OSError, ValueError):
        raise SystemExit(f"{name} did not run:\n{run.stderr[-2000:]}") from None


def swell(seconds: float, keep_in: Path) -> Iterator[bytes]:
    """Whole folders with some piece of them repeated, until the time is up."""
    found = [path.read_bytes() for path in sorted((keep_in / "folder" / "corpus").glob("*"))]
    inputs = [*TARGETS["folder"].seeds(), *found]
    chance, end = random.Random(1), time.monotonic() + seconds
    while time.monotonic() < end:
        data = chance.choice(inputs)
        yield swollen(data, chance.choice((STORY, KEYS, KEYS, 20_000)), chance)


def confirmed(folder: Path, name: str) -> dict[str, Path]:
    """The findings of a target that are found again without the instruments, one of each kind."""
    found: dict[str, Path] = {}
    for path in sorted((folder / "findings").glob("*")):
        trial = tried(TARGETS[name].check, path.read_bytes())
        if trial.wrong:
            lines = [line.strip() for line in trial.raised.split("\n") if line.strip().startswith("File")]
            found.setdefault(f"{lines[-1] if lines else ''} {trial.wrong}".strip()[:300], path)
    return found


def main() -> int:
    """Run all of it, print a table; 1 if something was found."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("seconds", type=int, metavar="SECONDS")
    parser.add_argument("--only", choices=[*TARGETS, "swell"], metavar="TARGET", help="one of them, for all the time")
    parser.add_argument("--keep", type=Path, default=ROOT / ".checks" / "fuzz", metavar="FOLDER")
    told = parser.parse_args()
    parts = {name: target.part for name, target in TARGETS.items()} | {"swell": SWELLING}
    parts = {told.only: 1} if told.only else parts
    found: dict[str, Path] = {}
    print(f"{'target':8} {'seconds':>8} {'inputs':>9} {'kept':>6} {'findings':>8}")
    for name, part in parts.items():
        seconds = told.seconds * part // sum(parts.values())
        new = _swelling(seconds, told.keep) if name == "swell" else _guided(name, seconds, told.keep / name)
        found |= new
    for wrong, path in found.items():
        print(f"{path}\n    {wrong}")
    return 1 if found else 0


def _guided(name: str, seconds: int, folder: Path) -> dict[str, Path]:
    count = run_target(name, seconds, folder)
    found = confirmed(folder, name)
    print(f"{name:8} {count['seconds']:8} {count['inputs']:9,} {count['kept']:6,} {len(found):8}", flush=True)
    return found


def _swelling(seconds: int, keep_in: Path) -> dict[str, Path]:
    found, number = {}, 0
    for number, data in enumerate(swell(seconds, keep_in), 1):  # noqa: B007 - how many there were
        trial = tried(read_only, data)
        if trial.wrong:
            keep(keep_in / "swell" / "findings", data)
            found[trial.wrong] = keep_in / "swell" / "findings" / hashlib.sha256(data).hexdigest()[:16]
    print(f"{'swell':8} {seconds:8} {number:9,} {'':6} {len(found):8}", flush=True)
    return found


if __name__ == "__main__":
    sys.exit(main())
