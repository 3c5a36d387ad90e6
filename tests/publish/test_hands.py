"""Files made by two processes: the same files, whoever made them, and whatever becomes of the second one."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

import pytest

from builder.publish.hands import ENOUGH, all_made
from builder.store.store import Store

MANY = 3 * ENOUGH


@pytest.fixture
def processors(monkeypatch: pytest.MonkeyPatch) -> Callable[[int], None]:
    """Sets how many processors this process may use."""

    def use(count: int) -> None:
        monkeypatch.setattr(os, "sched_getaffinity", lambda _: set(range(count)))

    use(2)
    return use


def by_whom(number: int) -> bytes:
    """A file that says which process made it, slowly enough that another one gets its turn."""
    time.sleep(0.0005)
    return f"{number} by {os.getpid()}".encode()


def makers(make: Callable[[int], bytes], count: int = MANY) -> dict[str, Callable[[], bytes]]:
    """So many files."""
    return {f"{number}.html": partial(make, number) for number in range(count)}


def makers_of(files: Mapping[str, bytes]) -> set[int]:
    """The processes that made them."""
    return {int(told.split()[-1]) for told in files.values()}


@pytest.mark.parametrize("count", [MANY, 2345])
def test_two_processes_share_the_files(processors: Callable[[int], None], count: int) -> None:
    """Each file once and under its own path, some by this process and some by another."""
    del processors
    begun: list[int] = []
    files = all_made(makers(by_whom, count), Store(None), lambda done, of, what: begun.append(done))
    assert {path: told.split()[0] for path, told in files.items()} == {
        f"{number}.html": str(number).encode() for number in range(count)
    }
    assert len(makers_of(files)) == 2
    assert os.getpid() in makers_of(files)
    assert begun == sorted(set(begun))
    assert len(begun) == sum(told.endswith(str(os.getpid()).encode()) for told in files.values())


@pytest.mark.parametrize(("count", "files"), [(1, MANY), (2, ENOUGH - 1)])
def test_one_processor_or_few_files_are_left_to_one_process(
    processors: Callable[[int], None], count: int, files: int
) -> None:
    """A second would only be in the way."""
    processors(count)
    assert makers_of(all_made(makers(by_whom, files), Store(None))) == {os.getpid()}


def test_what_the_second_process_wants_to_keep_is_kept(processors: Callable[[int], None], tmp_path: Path) -> None:
    """The store of this process has every piece, and writes it down."""
    del processors
    with Store(tmp_path) as store:

        def made(number: int) -> bytes:
            return store.remember(f"piece {number}", partial(by_whom, number))

        assert len(makers_of(all_made(makers(made), store))) == 2
    with Store(tmp_path) as again:
        assert all(again.find(f"piece {number}") is not None for number in range(MANY))


def test_a_second_process_that_is_killed_takes_nothing_with_it(processors: Callable[[int], None]) -> None:
    """What did not come back is made here."""
    del processors
    first = os.getpid()

    def made(number: int) -> bytes:
        if os.getpid() != first:
            os.kill(os.getpid(), signal.SIGKILL)
        return by_whom(number)

    files = all_made(makers(made), Store(None))
    assert len(files) == MANY
    assert makers_of(files) == {first}


@pytest.mark.parametrize("wrong", [0, MANY // 2, MANY - 1])
def test_a_mistake_shows_whichever_process_meets_it(processors: Callable[[int], None], wrong: int) -> None:
    """As it does with one process."""
    del processors

    def made(number: int) -> bytes:
        if number == wrong:
            raise ValueError(f"no file {number}")
        return by_whom(number)

    with pytest.raises(ValueError, match=f"no file {wrong}"):
        all_made(makers(made), Store(None))


def test_where_there_may_be_no_second_process_one_does_it_all(
    processors: Callable[[int], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The system says how many a person may have. Nothing stays open."""
    del processors
    before = set(Path("/proc/self/fd").iterdir())

    def refused() -> int:
        raise BlockingIOError("no more processes")

    monkeypatch.setattr(os, "fork", refused)
    files = all_made(makers(by_whom), Store(None))
    assert len(files) == MANY
    assert makers_of(files) == {os.getpid()}
    assert set(Path("/proc/self/fd").iterdir()) == before


def test_no_process_and_no_open_file_is_left(
    processors: Callable[[int], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Neither after all went well, nor after a mistake."""
    del processors
    before, begun, fork = set(Path("/proc/self/fd").iterdir()), list[int](), os.fork

    def noted() -> int:
        begun.append(fork())
        return begun[-1]

    def failing(number: int) -> bytes:
        raise ValueError(f"no file {number}")

    monkeypatch.setattr(os, "fork", noted)
    all_made(makers(by_whom), Store(None))
    with pytest.raises(ValueError, match="no file"):  # whichever this process came to first
        all_made(makers(failing), Store(None))
    assert set(Path("/proc/self/fd").iterdir()) == before
    assert len(begun) == 2
    for process in begun:
        with pytest.raises(ChildProcessError):
            os.waitpid(process, os.WNOHANG)


KILLED = """
import os, sys, time
from builder.publish.hands import all_made
from builder.store.store import Store

first = os.getpid()

def made():
    if os.getpid() != first:
        with open(sys.argv[1], "w") as file:
            file.write(f"{os.getpid()}\\n")
    time.sleep(0.02)
    return bytes(10_000)

os.sched_getaffinity = lambda _: {0, 1}
all_made({str(number): made for number in range(100_000)}, Store(None))
"""


def test_the_second_process_does_not_outlive_the_first(tmp_path: Path) -> None:
    """Killed while both are at work, far more of it still to come."""
    told = tmp_path / "second"
    first = subprocess.Popen([sys.executable, "-c", KILLED, str(told)])
    within(20, lambda: told.exists() and told.read_text().endswith("\n"))
    second = Path("/proc") / told.read_text().strip()
    assert second.exists()
    first.kill()
    first.wait()
    within(20, lambda: ended(second))


def ended(process: Path) -> bool:
    """Whether a process is no more, or only waits to be counted."""
    try:
        return "(zombie)" in (process / "status").read_text()
    except OSError:
        return True


def within(seconds: float, so: Callable[[], bool]) -> None:
    """Wait until it is so, and fail where it does not come to that."""
    end = time.monotonic() + seconds
    while not so():
        assert time.monotonic() < end, f"not within {seconds} s"
        time.sleep(0.01)
