"""Whatever fails and whenever: the site is the old one or the new one, whole, and the next run succeeds."""

from __future__ import annotations

import ctypes
import errno
import os
import threading
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from unittest import mock

import pytest

from builder.publish import folder, folder_bench, folder_system
from builder.publish.folder import Changed
from builder.publish.folder_errors import InUse, NotWritten
from tests.publish.disks import Fault, forbidden, small_disk
from tests.publish.kill import Publishers, kill_evenly
from tests.publish.sites import LATER, SMALL, add_foreign, big_site, contents, names, publish, unharmed

BENCH = ".site.barrowbook"

WRITING = ("mkdir", "open", "write", "link", "rename", "unlink", "rmdir", "chmod", "fsync")
LOOKING = ("scandir", "listdir", "stat", "lstat", "fstat", "read")


@contextmanager
def fault(nth: int, number: int, calls: tuple[str, ...]) -> Iterator[Fault]:
    """The nth of these calls fails, those that go by the C library too."""
    played = Fault(nth, number)

    def library(name: str) -> object:
        real = getattr(folder_system, name)

        def called(*words: object) -> object:
            try:
                played.count(name, ())
            except OSError as error:
                ctypes.set_errno(error.errno)
                return -1
            return real(*words)

        return called

    with (
        mock.patch.multiple(os, **{name: played.wrap(name) for name in calls}),
        mock.patch.multiple(folder_system, _renameat2=library("_renameat2"), _syncfs=library("_syncfs")),
    ):
        yield played


def try_each(where: Path, number: int, calls: tuple[str, ...], *, spare: bool) -> dict[str, int]:
    """Publish again and again, each time with the next call failing, until none is left to fail."""
    ended = {"old": 0, "new": 0}
    site, cache = where / "site", where / "cache"
    how = {"spare": cache} if spare else {}
    publish(site, LATER, **how)
    theirs = add_foreign(site)
    publish(site, SMALL, **how)
    nth = 0
    while True:
        nth += 1
        standing, state = "new", LATER
        with fault(nth, number, calls) as played:
            try:
                publish(site, LATER, **how)
            except NotWritten:
                standing, state = "old", SMALL
        ended[standing] += 1
        failed = played.calls[nth - 1 : nth]
        assert contents(site) == {**state, **theirs}, failed
        publish(site, SMALL, **how)
        assert contents(site) == {**SMALL, **theirs}, failed
        assert set(names(where)) == {"site", *(["cache"] if spare else [])}, failed
        if not failed:
            return ended


@pytest.mark.usefixtures("never_waiting")
@pytest.mark.parametrize("spare", [False, True])
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EIO], ids=["disk full", "broken disk"])
def test_every_write_failing_in_turn(tmp_path: Path, number: int, spare: bool) -> None:
    """Each call that changes the disk fails once: folders, files, names, permissions, the swap itself."""
    ended = try_each(tmp_path, number, WRITING, spare=spare)
    assert ended["old"] > 10
    assert ended["new"] > 5


@pytest.mark.usefixtures("never_waiting")
def test_every_look_failing_in_turn(tmp_path: Path) -> None:
    """Each call that reads a folder, a fact or a file fails once."""
    ended = try_each(tmp_path, errno.EIO, LOOKING, spare=False)
    assert min(ended.values()) > 5


@pytest.mark.usefixtures("never_waiting")
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES], ids=["disk full", "forbidden"])
def test_every_write_failing_in_turn_where_there_is_no_swap(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    """With two renames too, as each is taken back when the other fails."""
    monkeypatch.setattr(folder_system, "_exchange", lambda _new, _site: False)
    ended = try_each(tmp_path, number, WRITING, spare=False)
    assert ended["old"] > 10


class TestFullDisk:
    def test_the_site_stays_and_the_message_says_so(self, tmp_path: Path) -> None:
        with small_disk(tmp_path / "disk", 1 << 20) as disk:
            site = disk / "site"
            publish(site, {"index.html": b"x" * 100_000})
            with unharmed(site), pytest.raises(NotWritten) as failure:
                publish(site, {f"{n}.html": bytes([n]) * 50_000 for n in range(30)})
            assert str(failure.value) == (
                f"the disk is full: the new site does not fit beside the old one at {site}; "
                "expected room for both until the new one is whole; "
                "make room and publish again; the site is as it was"
            )
            publish(site, {"index.html": b"y"})
            assert contents(site) == {"index.html": b"y"}

    def test_what_is_unchanged_takes_no_room(self, tmp_path: Path) -> None:
        """A site of more than half the disk can still be published again."""
        with small_disk(tmp_path / "disk", 1 << 20) as disk:
            photos = {f"photos/{n}.webp": bytes([n]) * 100_000 for n in range(7)}
            publish(disk / "site", photos)
            publish(disk / "site", {**photos, "index.html": b"new"})
            assert contents(disk / "site") == {**photos, "index.html": b"new"}


class TestForbidden:
    def test_the_folder_above_may_not_be_written(self, tmp_path: Path) -> None:
        """The site is swapped there, so that is said."""
        folder = tmp_path / "server"
        publish(folder / "site")
        with forbidden(folder):
            with unharmed(folder / "site"), pytest.raises(NotWritten) as failure:
                publish(folder / "site", LATER)
            assert "may not be written" in failure.value.found
            assert failure.value.expected == (
                "a site in a folder where you may write, as the whole of site is swapped there"
            )
        publish(folder / "site", LATER)
        assert contents(folder / "site") == LATER

    def test_nothing_changed_needs_no_permission(self, tmp_path: Path) -> None:
        folder = tmp_path / "server"
        publish(folder / "site")
        with forbidden(folder):
            assert publish(folder / "site") == Changed(unchanged=tuple(sorted(SMALL)))

    def test_folders_above_that_were_made_for_nothing_go_again(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        def full(*_: object) -> int:
            raise OSError(errno.ENOSPC, "No space left on device")

        monkeypatch.setattr(os, "write", full)
        with pytest.raises(NotWritten):
            publish(tmp_path / "a" / "b" / "site")
        assert names(tmp_path) == []


class TestTwoAtOnce:
    def test_the_second_waits_for_the_first(self, tmp_path: Path) -> None:
        site = tmp_path / "site"
        publish(site)
        with folder_system.locked(tmp_path / BENCH, site, 1):
            second = threading.Thread(target=publish, args=(site, LATER))
            second.start()
            second.join(0.2)
            assert second.is_alive()
            assert contents(site) == SMALL
        second.join(10)
        assert contents(site) == LATER
        assert names(tmp_path) == ["site"]

    def test_it_does_not_wait_for_ever_and_says_so(self, tmp_path: Path) -> None:
        site = tmp_path / "site"
        publish(site)
        with folder_system.locked(tmp_path / BENCH, site, 1):
            with pytest.raises(InUse) as failure:
                publish(site, LATER, wait=0.1)
            assert str(failure.value) == (
                f"another publish is at work on {site}; expected one at a time; wait until it is done and publish again"
            )
        assert contents(site) == SMALL

    def test_many_at_once_leave_one_of_their_sites_whole(self, tmp_path: Path) -> None:
        """Four processes, each publishing two states in turn, with the same spare folders."""
        site, spare = tmp_path / "site", tmp_path / "spare"
        with ExitStack() as stack:
            all_publishers = [stack.enter_context(Publishers(site, 12)) for _ in range(4)]
            for publishers in all_publishers:
                publishers.tell.write(f"a {spare}\n\nb {spare}\n\nb -\n\na -\n\n".encode())
                publishers.tell.flush()
            told = [[publishers.told.readline() for _ in range(8)] for publishers in all_publishers]
        assert [lines[1::2] for lines in told] == [[b"0\n"] * 4] * 4
        assert contents(site) in [big_site("a", 12), big_site("b", 12)]
        assert set(names(tmp_path)) <= {"site", "spare"}

    def test_a_lock_whose_file_was_taken_away_is_no_lock(self, tmp_path: Path) -> None:
        """The one who had it removes the file; who waited on that file must wait on the new one."""
        bench = tmp_path / BENCH
        bench.mkdir()
        (bench / "lock").touch()
        real = folder_system._take

        def late(handle: int) -> bool:
            (bench / "lock").unlink()
            return real(handle)

        with mock.patch.object(folder_system, "_take", late):
            assert folder_system._try_lock(bench, tmp_path / "site") is None

    def test_a_bench_that_goes_while_we_reach_for_it_is_made_again(self, tmp_path: Path) -> None:
        """The other one takes it away when it is done."""
        bench = tmp_path / BENCH
        real = os.open

        def late(path: Path, *words: int) -> int:
            bench.rmdir()
            return real(path, *words)

        with mock.patch.object(os, "open", late):
            assert folder_system._try_lock(bench, tmp_path / "site") is None
        publish(tmp_path / "site")
        assert names(tmp_path) == ["site"]

    def test_a_disk_without_locks_is_said(self, tmp_path: Path) -> None:
        def no_locks(_handle: int) -> bool:
            raise OSError(errno.ENOLCK, "No locks available")

        with mock.patch.object(folder_system, "_take", no_locks), pytest.raises(NotWritten) as failure:
            publish(tmp_path / "site")
        assert failure.value.found == f"the disk of {tmp_path / 'site'} has no locks (No locks available)"
        assert "copy the site" in failure.value.fix


class TestKilled:
    def test_at_forty_moments_drawn_evenly_over_a_run(self, tmp_path: Path) -> None:
        """SIGKILL; each time the site is the old one or the new one, whole, and what others put there too."""
        outcome = kill_evenly(tmp_path, 40)
        assert outcome.wrong == ()
        assert outcome.killed > 10
        assert outcome.old > 5

    @pytest.mark.parametrize("inode_known", [True, False])
    def test_a_tree_that_was_never_the_site_gives_nothing_back(self, tmp_path: Path, inode_known: bool) -> None:
        """Its files are second names of what the site has, or ours. Also where inode numbers do not last."""
        site, bench = tmp_path / "site", tmp_path / BENCH
        publish(site)
        theirs = add_foreign(site)
        bench.mkdir()
        with mock.patch.multiple(folder, swap=die, abandon=lambda _new: None), pytest.raises(_Killed):
            publish(site, LATER)
        (tree,) = folder_bench.strays(bench)
        if not inode_known:
            tree.rename(bench / "new-1")
        publish(site, SMALL)
        assert contents(site) == {**SMALL, **theirs}
        assert names(tmp_path) == ["site"]

    def test_an_old_site_half_put_away_is_put_away_by_the_next_run(self, tmp_path: Path) -> None:
        """Also if that run has nothing to write."""
        site = tmp_path / "site"
        publish(site)
        theirs = add_foreign(site)
        with mock.patch.object(folder, "put_away", die), pytest.raises(_Killed):
            publish(site, LATER)
        assert contents(site) == {**LATER, **theirs}
        assert len(folder_bench.strays(tmp_path / BENCH)) == 1
        assert publish(site, LATER) == Changed(unchanged=tuple(sorted(LATER)))
        assert contents(site) == {**LATER, **theirs}
        assert names(tmp_path) == ["site"]

    def test_a_run_that_is_interrupted_at_the_swap_takes_the_old_site_for_what_it_is(self, tmp_path: Path) -> None:
        """The swap took place, and nobody was told: what came to the old site at the last moment is not lost."""
        site = tmp_path / "site"
        publish(site)
        real = folder.swap

        def interrupted(new: Path, *others: Path) -> None:
            (new.parent.parent / "site" / "late.txt").write_bytes(b"late")
            real(new, *others)
            raise KeyboardInterrupt

        with mock.patch.object(folder, "swap", interrupted), pytest.raises(KeyboardInterrupt):
            publish(site, LATER)
        assert contents(site) == LATER
        publish(site, LATER)
        assert contents(site) == {**LATER, "late.txt": b"late"}
        assert names(tmp_path) == ["site"]

    def test_what_cannot_be_put_away_is_said(self, tmp_path: Path) -> None:
        site = tmp_path / "site"
        publish(site)
        with mock.patch.object(folder_bench, "remove_folders", side_effect=PermissionError(13, "no")):
            changed = publish(site, LATER)
        (left,) = changed.left
        assert left.parent == tmp_path / BENCH
        assert contents(site) == LATER

    def test_what_others_keep_on_the_bench_is_left_alone(self, tmp_path: Path) -> None:
        """Only the names that we give are ours to clear."""
        site, bench = tmp_path / "site", tmp_path / BENCH
        bench.mkdir()
        (bench / "notes").write_bytes(b"mine")
        publish(site)
        publish(site, LATER)
        assert contents(bench) == {"notes": b"mine"}


class _Killed(BaseException):
    """Stands for a process that ends here."""


def die(*_: object) -> None:
    """What a process does when it is killed."""
    raise _Killed
