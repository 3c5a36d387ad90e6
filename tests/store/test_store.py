"""What is stored between runs is found again, never believed blindly, and never a reason to fail."""

from __future__ import annotations

import os
import random
import shutil
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Self
from unittest import mock

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.store import pack, store
from builder.store.store import Store

ROOT = Path(__file__).resolve().parents[2]
MB = 1 << 20


def never() -> bytes:
    """For what must be found."""
    raise AssertionError("this was stored, and is made again")


def filled(folder: Path, pieces: dict[str, bytes]) -> None:
    """A run that makes these."""
    with Store(folder) as stored:
        for key, data in pieces.items():
            stored.remember(key, lambda data=data: data)  # type: ignore[misc]


def found(folder: Path, keys: dict[str, bytes]) -> set[str]:
    """Which of these a later run finds; what it finds is right."""
    missing: set[str] = set()

    def lost(key: str) -> bytes:
        missing.add(key)
        return keys[key]

    with Store(folder) as stored:
        for key, data in keys.items():
            assert stored.remember(key, lambda key=key: lost(key)) == data  # type: ignore[misc]
    return keys.keys() - missing


def size(folder: Path) -> int:
    """Bytes of everything in the folder."""
    return sum(path.stat().st_size for path in folder.iterdir())


class TestRemembering:
    def test_bytes_are_made_once_and_found_by_the_next_run(self, tmp_path: Path) -> None:
        """Empty bytes and odd keys too."""
        pieces = {"a": b"one", "empty": b"", "": b"no key", "schön \ud800 \0": bytes(range(256))}
        filled(tmp_path / "store", pieces)
        assert found(tmp_path / "store", pieces) == pieces.keys()

    def test_within_a_run_it_is_found_at_once(self, tmp_path: Path) -> None:
        """Before anything is written."""
        with Store(tmp_path / "store") as stored:
            stored.remember("a", lambda: b"one")
            assert stored.remember("a", never) == b"one"

    def test_of_what_was_stored_under_one_key_the_latest_is_found(self, tmp_path: Path) -> None:
        """Whatever else the runs used meanwhile, and however close to one another they were."""
        filled(tmp_path, {"always used": b"by all"})
        for number in range(40):
            with Store(tmp_path) as stored:
                assert stored.find("always used") == b"by all"
                assert stored.find("the same") == (str(number - 1).encode() if number else None)
                stored.keep("the same", str(number).encode())

    def test_another_key_is_another_thing(self, tmp_path: Path) -> None:
        """Version and settings are part of the key, so a new version makes everything anew."""
        filled(tmp_path, {"prose 1.0 a": b"old"})
        with Store(tmp_path) as stored:
            assert stored.remember("prose 1.1 a", lambda: b"new") == b"new"

    def test_what_cannot_be_made_is_not_stored(self, tmp_path: Path) -> None:
        """The mistake reaches who asked; the next one may succeed."""
        with Store(tmp_path) as stored:
            with pytest.raises(ZeroDivisionError):
                stored.remember("a", lambda: bytes(1 // 0))
            assert stored.remember("a", lambda: b"one") == b"one"

    def test_no_folder_is_made_for_nothing(self, tmp_path: Path) -> None:
        """Looking leaves no trace."""
        Store(tmp_path / "store").close()
        assert not (tmp_path / "store").exists()

    def test_without_a_folder_a_run_remembers_its_own(self) -> None:
        """And forgets the oldest when that gets too much."""
        with Store(None, 10) as stored:
            stored.remember("a", lambda: b"12345")
            stored.remember("b", lambda: b"67890")
            assert stored.remember("a", never) == b"12345"
            stored.remember("c", lambda: b"c")
            assert stored.remember("b", never) == b"67890"
            assert stored.remember("a", lambda: b"again") == b"again"

    def test_threads_may_share_it(self, tmp_path: Path) -> None:
        """Each finds its own."""
        pieces = {str(n): os.urandom(1000) for n in range(200)}
        filled(tmp_path, pieces)
        with Store(tmp_path) as stored:
            wrong: list[str] = []

            def look() -> None:
                wrong.extend(key for key, data in pieces.items() if stored.remember(key, never) != data)

            threads = [threading.Thread(target=look) for _ in range(4)]
            for thread in threads:
                thread.start()
            for thread in threads:
                thread.join()
        assert wrong == []

    def test_a_forked_process_reads_without_disturbing_the_first(self, tmp_path: Path) -> None:
        """Both read by place, not by where the file happens to stand."""
        code = (
            "import os, sys; from pathlib import Path; from builder.store.store import Store\n"
            "stored = Store(Path(sys.argv[1]))\n"
            "child = os.fork()\n"
            "for _ in range(50):\n"
            "    for n in range(50):\n"
            "        assert stored.remember(str(n), lambda: 1 / 0) == bytes([n]) * 1000\n"
            "if child: assert os.waitpid(child, 0)[1] == 0\n"
        )
        filled(tmp_path, {str(n): bytes([n]) * 1000 for n in range(50)})
        subprocess.run([sys.executable, "-c", code, str(tmp_path)], check=True, cwd=ROOT)


class TestNeverTrusted:
    @settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
    @given(st.integers(0, 10_000), st.integers(0, 2), st.binary(min_size=1, max_size=40))
    def test_damage_anywhere_costs_time_and_nothing_else(
        self, tmp_path: Path, at: int, kind: int, noise: bytes
    ) -> None:
        """Bytes changed, cut off or put in: what is given is what was stored, or is made again."""
        folder = tmp_path / "store"
        shutil.rmtree(folder, ignore_errors=True)
        pieces = {str(n): random.Random(n).randbytes(50 * n) for n in range(8)}
        filled(folder, pieces)
        (path,) = folder.iterdir()
        raw = path.read_bytes()
        at %= len(raw)
        path.write_bytes([raw[:at] + noise + raw[at + len(noise) :], raw[:at], raw[:at] + noise + raw[at:]][kind])
        sound = found(folder, pieces)
        assert found(folder, pieces) == pieces.keys()
        assert len(sound) > 4 or at < 16 + 40 + 8 * 80 or kind

    def test_a_damaged_piece_is_made_again_and_found_afterwards(self, tmp_path: Path) -> None:
        """The pack that was wrong is not asked a second time."""
        filled(tmp_path, {"a": b"one" * 100})
        (path,) = tmp_path.iterdir()
        path.write_bytes(path.read_bytes()[:-1] + b"?")
        assert found(tmp_path, {"a": b"one" * 100}) == set()
        assert found(tmp_path, {"a": b"one" * 100}) == {"a"}

    @pytest.mark.parametrize("begin", [b"", b"barrowbook pk 1\n", b"barrowbook pk 1\n" + b"\xff" * 40, b"x" * 1000])
    def test_a_file_that_is_no_pack_is_removed(self, tmp_path: Path, begin: bytes) -> None:
        """If it has a name such as only we give."""
        wrong = tmp_path / f"{'0' * 32}{pack.SUFFIX}"
        wrong.write_bytes(begin)
        filled(tmp_path, {"a": b"one"})
        assert not wrong.exists()

    def test_what_others_keep_in_the_folder_is_left_alone(self, tmp_path: Path) -> None:
        """Somebody may name a folder that is not empty."""
        others = ["notes.txt", f"mine{pack.SUFFIX}", "0" * 32, f"x{pack.HALF}"]
        for name in others:
            (tmp_path / name).write_bytes(b"mine")
            os.utime(tmp_path / name, (1, 1))
        filled(tmp_path, {"a": b"one"})
        assert {name for name in others if (tmp_path / name).read_bytes() == b"mine"} == set(others)


class TestNeverInTheWay:
    def test_it_may_be_deleted_between_runs_and_during_one(self, tmp_path: Path) -> None:
        """What was open stays readable; what is new is written anew."""
        folder = tmp_path / "store"
        filled(folder, {"a": b"one"})
        with Store(folder) as stored:
            shutil.rmtree(folder)
            assert stored.remember("a", never) == b"one"
            stored.remember("b", lambda: b"two")
        assert found(folder, {"a": b"one", "b": b"two"}) == {"b"}

    @pytest.mark.parametrize("call", ["pread", "open", "mkdir", "replace", "utime", "unlink", "scandir", "listdir"])
    def test_nothing_the_system_refuses_stops_a_run(self, tmp_path: Path, call: str) -> None:
        """A full disk, no permission: the bytes are made, and that is all."""
        filled(tmp_path, {"a": b"one"})

        def refuse(*_: object, **__: object) -> object:
            raise PermissionError(13, "Permission denied")

        with mock.patch.object(os, call, refuse):
            assert found(tmp_path, {"a": b"one", "b": b"two"}) <= {"a"}

    def test_a_disk_that_fills_up_leaves_no_half_file(self, tmp_path: Path) -> None:
        """What could not be written is forgotten."""

        class Full:
            def write(self, _data: bytes) -> int:
                raise OSError(28, "No space left on device")

            def __enter__(self) -> Self:
                return self

            def __exit__(self, *_: object) -> None:
                return None

        folder = tmp_path / "store"
        opened = Path.open

        def full(path: Path, *words: str) -> object:
            opened(path, *words).close()
            return Full()

        with mock.patch.object(Path, "open", full):
            filled(folder, {"a": b"one"})
        assert list(folder.iterdir()) == []

    def test_a_file_where_the_folder_should_be(self, tmp_path: Path) -> None:
        """Somebody's file stays somebody's."""
        (tmp_path / "store").write_bytes(b"mine")
        assert found(tmp_path / "store", {"a": b"one"}) == set()
        assert (tmp_path / "store").read_bytes() == b"mine"

    def test_what_a_killed_run_left_half_written_goes_later(self, tmp_path: Path) -> None:
        """Not at once: another run may be writing it."""
        filled(tmp_path, {"a": b"one"})
        half = tmp_path / f"{'0' * 32}.77-88{pack.HALF}"
        half.write_bytes(b"half")
        filled(tmp_path, {"b": b"two"})
        assert half.exists()
        os.utime(half, (time.time() - 4000, time.time() - 4000))
        filled(tmp_path, {"c": b"three"})
        assert not half.exists()

    def test_a_piece_that_is_damaged_while_packs_are_merged_ends_the_merging(self, tmp_path: Path) -> None:
        """Nothing half done is left, and the old packs stay."""
        whole = pack.Pack(pack.write_pack(tmp_path, {b"k" * 32: b"one"}))
        whole.path.write_bytes(whole.path.read_bytes()[:-1] + b"?")
        with pytest.raises(OSError, match="damaged meanwhile"):
            pack.write_pack(tmp_path, {b"k" * 32: pack.Stored(whole, b"k" * 32), b"l" * 32: b"two"})
        whole.close()
        assert list(tmp_path.iterdir()) == [whole.path]


class TestTwoAtOnce:
    def test_both_keep_what_they_made(self, tmp_path: Path) -> None:
        """Neither sees the other's, and neither loses any."""
        with Store(tmp_path) as one, Store(tmp_path) as other:
            one.remember("a", lambda: b"one")
            other.remember("b", lambda: b"two")
            one.remember("c", lambda: b"three")
            other.remember("c", lambda: b"three")
        assert found(tmp_path, {"a": b"one", "b": b"two", "c": b"three"}) == {"a", "b", "c"}

    def test_one_may_tidy_up_under_the_other(self, tmp_path: Path) -> None:
        """Packs are merged away while another run has them open."""
        pieces = {str(n): str(n).encode() * 100 for n in range(20)}
        for key, data in pieces.items():
            filled(tmp_path, {key: data})
        with Store(tmp_path) as reader:
            filled(tmp_path, {"more": b"more"})
            for key, data in pieces.items():
                assert reader.remember(key, never) == data
        assert found(tmp_path, pieces) == pieces.keys()

    def test_processes_that_are_killed_hurt_nobody(self, tmp_path: Path) -> None:
        """Six runs on one folder, half of them killed on the way."""
        code = (
            "import sys; from pathlib import Path; from builder.store import store\n"
            "store.FULL = 50_000\n"
            "with store.Store(Path(sys.argv[1])) as stored:\n"
            "    print('began', flush=True)\n"
            "    for n in range(800):\n"
            "        data = str(n).encode() * 500\n"
            "        assert stored.remember(str(n), lambda: data) == data\n"
        )
        runs = [
            subprocess.Popen([sys.executable, "-c", code, str(tmp_path)], stdout=subprocess.PIPE, cwd=ROOT)
            for _ in range(6)
        ]
        for run in runs:
            assert run.stdout
            assert run.stdout.readline() == b"began\n"
        for number, run in enumerate(runs):
            if number % 2:
                time.sleep(0.02)
                run.kill()
            with run:
                assert (run.wait() == 0) or number % 2
        pieces = {str(n): str(n).encode() * 500 for n in range(800)}
        assert found(tmp_path, pieces) == pieces.keys()


class TestBounded:
    def test_a_few_packs_hold_what_many_runs_made(self, tmp_path: Path) -> None:
        """Fifty runs that made one thing each."""
        pieces = {str(n): str(n).encode() for n in range(50)}
        for key, data in pieces.items():
            filled(tmp_path, {key: data})
        assert len(list(tmp_path.iterdir())) <= store.MOST_SMALL + 1
        assert found(tmp_path, pieces) == pieces.keys()

    def test_what_was_not_used_for_longest_goes_first(self, tmp_path: Path) -> None:
        """Three runs; the first run's things are used again by the last, so the second run's go."""
        data = {name: {f"{name}{n}": os.urandom(100_000) for n in range(3)} for name in "abc"}

        def run(date: int, *names: str) -> None:
            with Store(tmp_path, MB) as stored:
                for name in names:
                    for key, made in data[name].items():
                        stored.remember(key, lambda made=made: made)  # type: ignore[misc]
            for path in tmp_path.iterdir():
                if path.stat().st_mtime > 10**9:
                    os.utime(path, (date, date))

        run(100, "a")
        run(200, "b")
        run(300, "a")
        run(400, "c")
        with Store(tmp_path, 7 * 100_000) as stored:
            stored.remember("more", lambda: b"more")
        assert found(tmp_path, data["a"]) == data["a"].keys()
        assert found(tmp_path, data["c"]) == data["c"].keys()
        assert found(tmp_path, data["b"]) == set()

    @pytest.mark.parametrize("limit", [0, 1000, 100_000, 300_000])
    def test_it_never_takes_more_than_its_limit(self, tmp_path: Path, limit: int) -> None:
        """Not even while all of it is in use, and not during a run by more than is being written."""
        with mock.patch.object(store, "FULL", 50_000), Store(tmp_path, limit) as stored:
            for n in range(200):
                stored.remember(str(n), lambda: os.urandom(5000))
                assert size(tmp_path) <= limit + 50_000
        assert size(tmp_path) <= limit

    def test_what_is_larger_than_the_limit_is_made_every_time(self, tmp_path: Path) -> None:
        """It would push out everything else."""
        with Store(tmp_path, 1000) as stored:
            stored.remember("small", lambda: b"small")
            stored.remember("large", lambda: bytes(1001))
        with Store(tmp_path, 1000) as stored:
            assert stored.remember("small", never) == b"small"
            assert stored.remember("large", lambda: b"again") == b"again"

    def test_a_run_that_uses_everything_and_makes_one_thing_keeps_the_rest(self, tmp_path: Path) -> None:
        """The usual evening: one word changed."""
        pieces = {str(n): os.urandom(8000) for n in range(100)}
        filled(tmp_path, pieces)
        for n in range(30):
            with Store(tmp_path, 2 * MB) as stored:
                for key, data in pieces.items():
                    assert stored.remember(key, never) == data
                stored.remember(f"word {n}", lambda: os.urandom(8000))
        assert found(tmp_path, pieces) == pieces.keys()


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(st.lists(st.tuples(st.sampled_from("abcdef"), st.integers(0, 400)), max_size=8), min_size=1, max_size=12),
    st.integers(0, 800),
)
def test_whatever_was_stored_the_bytes_are_those_of_the_key(
    tmp_path: Path, runs: list[list[tuple[str, int]]], limit: int
) -> None:
    """Law: with any history and any limit, `remember` gives what `make` would, and the limit holds."""
    folder = tmp_path / "store"
    shutil.rmtree(folder, ignore_errors=True)

    def maker(key: str) -> Callable[[], bytes]:
        return lambda: key.encode() * 3

    with mock.patch.multiple(store, MOST_SMALL=2, FULL=300):
        for run in runs:
            with Store(folder, limit) as stored:
                for name, number in run:
                    key = f"{name}{number}"
                    assert stored.remember(key, maker(key)) == key.encode() * 3
            assert not folder.exists() or size(folder) <= limit
