"""Publishing a folder: what is written, what is kept, what is said."""

from __future__ import annotations

import ctypes
import errno
import hashlib
import json
import os
import stat
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.publish import folder, folder_system, folder_tree
from builder.publish.folder import Changed, Copy
from builder.publish.folder_errors import InTheWay, NotWritten, SiteError, Unfit
from tests.publish.sites import LATER, MARKER, SMALL, add_foreign, contents, facts, names, publish, unharmed

pytestmark = pytest.mark.usefixtures("never_waiting")


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Where to publish; not there yet."""
    return tmp_path / "site"


def copy_of(data: bytes) -> Copy:
    """A file whose digest is known beforehand."""
    return Copy(hashlib.sha256(data).hexdigest(), lambda: data)


def never() -> bytes:
    """For bytes that must not be asked for."""
    raise AssertionError("these bytes were not needed")


class TestWhatIsWritten:
    def test_a_new_folder_holds_the_files_and_nothing_else(self, site: Path) -> None:
        """Not beside it either, and the folders above are made."""
        changed = publish(site / "of" / "mine")
        assert contents(site / "of" / "mine") == SMALL
        assert changed == Changed(added=tuple(sorted(SMALL)))
        assert names(site / "of") == ["mine"]

    def test_an_empty_folder_may_be_used(self, site: Path) -> None:
        site.mkdir(mode=0o750)
        publish(site)
        assert contents(site) == SMALL
        assert stat.S_IMODE(site.stat().st_mode) == 0o750

    def test_no_files_make_an_empty_site(self, site: Path) -> None:
        publish(site, {})
        assert names(site) == [MARKER]

    def test_every_path_is_accounted_for(self, site: Path) -> None:
        """Added, changed, removed or unchanged: each once."""
        publish(site, SMALL)
        assert publish(site, LATER) == Changed(
            added=("episodes/03-the-rails/index.html",),
            changed=("index.html",),
            removed=("episodes/02-the-footing/index.html",),
            unchanged=("episodes/01-pegging-out/index.html", "ledger/index.html"),
        )
        assert contents(site) == LATER
        assert names(site.parent) == ["site"]

    def test_what_is_unchanged_keeps_its_inode_and_its_date(self, site: Path) -> None:
        """So a copy to a server sends only what changed."""
        publish(site, SMALL)
        before = facts(site)
        publish(site, LATER)
        kept = str(site / "ledger/index.html")
        assert facts(site)[kept] == before[kept]

    def test_a_folder_of_ours_that_became_empty_goes(self, site: Path) -> None:
        publish(site, SMALL)
        publish(site, LATER)
        assert not (site / "episodes/02-the-footing").exists()

    def test_a_file_may_become_a_folder_and_back(self, site: Path) -> None:
        publish(site, {"plan": b"a file"})
        publish(site, {"plan/index.html": b"in a folder"})
        assert contents(site) == {"plan/index.html": b"in a folder"}
        publish(site, {"plan": b"a file"})
        assert contents(site) == {"plan": b"a file"}

    def test_the_marker_says_version_and_digests_and_depends_on_nothing_else(self, site: Path) -> None:
        publish(site / "one", dict(sorted(SMALL.items())))
        publish(site / "two", dict(sorted(LATER.items())))
        publish(site / "two", dict(sorted(SMALL.items(), reverse=True)))
        raw = (site / "one" / MARKER).read_bytes()
        assert raw == (site / "two" / MARKER).read_bytes()
        digests = {path: hashlib.sha256(data).hexdigest() for path, data in sorted(SMALL.items())}
        said = {"made_by": "barrowbook", "version": "1", "files": digests}
        assert raw == f"{json.dumps(said, indent=1)}\n".encode()

    def test_another_version_writes_the_marker_only(self, site: Path) -> None:
        """The site says which version made it, even if the pages are the same."""
        publish(site)
        changed = publish(site, version="2")
        assert changed == Changed(unchanged=tuple(sorted(SMALL)))
        assert json.loads((site / MARKER).read_bytes())["version"] == "2"

    def test_a_site_behind_a_link_is_published_where_it_stands(self, site: Path) -> None:
        publish(site.with_name("real"))
        site.symlink_to("real")
        publish(site, LATER)
        assert site.is_symlink()
        assert contents(site.with_name("real")) == LATER


class TestNothingChanged:
    def test_it_writes_nothing_at_all(self, site: Path) -> None:
        """Not the marker, not a folder beside the site: inodes and dates stay, also of the folder above."""
        publish(site)
        with unharmed(site.parent):
            assert publish(site) == Changed(unchanged=tuple(sorted(SMALL)))

    def test_bytes_that_are_not_needed_are_not_asked_for(self, site: Path) -> None:
        """A photo whose digest is known is not read, let alone made, if the site has it."""
        publish(site, {"a.webp": copy_of(b"photo")})
        publish(site, {"a.webp": Copy(hashlib.sha256(b"photo").hexdigest(), never), "b": b"new"})
        assert contents(site) == {"a.webp": b"photo", "b": b"new"}


class TestFilesOfOthers:
    def test_they_stay_as_they_are(self, site: Path) -> None:
        """Content, inode and date: a repository's own folder, a file among ours, an empty folder, a link."""
        publish(site)
        theirs = add_foreign(site)
        before = facts(site)
        publish(site, LATER)
        assert contents(site) == {**LATER, **theirs}
        for path, was in facts(site).items():
            if Path(path).relative_to(site).as_posix() in theirs and Path(path).is_file():
                assert was == before[path]

    def test_they_outlive_our_own_files(self, site: Path) -> None:
        publish(site)
        theirs = add_foreign(site)
        publish(site, {})
        assert contents(site) == theirs

    def test_a_folder_of_theirs_keeps_its_permissions_and_its_date(self, site: Path) -> None:
        publish(site)
        (site / "old-photos").mkdir()
        (site / "old-photos" / "a.jpg").write_bytes(b"photo")
        os.utime(site / "old-photos", (1_000_000_000, 1_000_000_000))
        (site / "old-photos").chmod(0o555)
        publish(site, LATER)
        told = (site / "old-photos").stat()
        assert (stat.S_IMODE(told.st_mode), told.st_mtime) == (0o555, 1_000_000_000)
        (site / "old-photos").chmod(0o755)

    def test_permissions_given_to_our_folders_stay(self, site: Path) -> None:
        publish(site)
        (site / "ledger").chmod(0o700)
        publish(site, LATER)
        assert stat.S_IMODE((site / "ledger").stat().st_mode) == 0o700

    @pytest.mark.parametrize(
        ("theirs", "ours"),
        [
            ("feed.xml", "feed.xml"),  # a file where we want a file
            ("plan", "plan/index.html"),  # a file where we want a folder
            ("plan/notes.txt", "plan"),  # a folder of theirs where we want a file
        ],
    )
    def test_they_are_not_written_over(self, site: Path, theirs: str, ours: str) -> None:
        """What stands in the way is named, and nothing changes."""
        publish(site)
        (site / theirs).parent.mkdir(exist_ok=True)
        (site / theirs).write_bytes(b"mine")
        with unharmed(site), pytest.raises(InTheWay) as refusal:
            publish(site, {**SMALL, ours: b"ours"})
        assert refusal.value.found.startswith("plan " if theirs != "feed.xml" else "feed.xml ")

    def test_a_link_in_place_of_our_folder_is_not_followed(self, site: Path, tmp_path: Path) -> None:
        """Nothing outside the site is written or deleted."""
        publish(site)
        outside = tmp_path / "outside"
        (site / "ledger").rename(outside)
        (site / "ledger").symlink_to(outside)
        with unharmed(outside), pytest.raises(InTheWay, match=r"^ledger in the site's folder"):
            publish(site, {**SMALL, "ledger/index.html": b"new"})

    def test_a_marker_that_names_files_outside_leads_nowhere(self, site: Path, tmp_path: Path) -> None:
        """Somebody may have written the marker: only what lies in the site is ours."""
        publish(site)
        (tmp_path / "precious").write_bytes(b"precious")
        said = json.loads((site / MARKER).read_bytes())
        said["files"]["../precious"] = hashlib.sha256(b"precious").hexdigest()
        (site / MARKER).write_text(json.dumps(said), encoding="ascii")
        publish(site, LATER)
        assert (tmp_path / "precious").read_bytes() == b"precious"


class TestOurFilesTouchedByHand:
    @pytest.mark.parametrize("files", [SMALL, LATER])
    def test_what_somebody_changed_is_written_again_and_said(self, site: Path, files: dict[str, bytes]) -> None:
        """Whether it would have been kept, changed or removed."""
        publish(site)
        for path in ("ledger/index.html", "index.html", "episodes/02-the-footing/index.html"):
            (site / path).write_bytes(b"by hand")
        changed = publish(site, files)
        assert changed.edited == ("episodes/02-the-footing/index.html", "index.html", "ledger/index.html")
        assert "ledger/index.html" in changed.changed
        assert contents(site) == files

    def test_what_somebody_deleted_comes_back_and_is_said(self, site: Path) -> None:
        publish(site)
        (site / "index.html").unlink()
        assert publish(site).edited == ("index.html",)
        assert contents(site) == SMALL

    def test_a_link_in_place_of_our_file_is_replaced_and_its_target_left_alone(
        self, site: Path, tmp_path: Path
    ) -> None:
        publish(site)
        (tmp_path / "outside.html").write_bytes(SMALL["index.html"])
        (site / "index.html").unlink()
        (site / "index.html").symlink_to(tmp_path / "outside.html")
        with unharmed(tmp_path / "outside.html"):
            assert publish(site).edited == ("index.html",)
        assert not (site / "index.html").is_symlink()

    def test_a_pipe_in_place_of_our_file_does_not_hold_us_up(self, site: Path) -> None:
        """Opening a pipe waits for its other end, for ever if there is none."""
        publish(site)
        (site / "index.html").unlink()
        os.mkfifo(site / "index.html")
        assert publish(site).edited == ("index.html",)
        assert contents(site) == SMALL


class TestNames:
    @pytest.mark.parametrize(
        "name",
        [
            "a b.html",
            'it\'s "quoted".html',
            "caf\u00e9.html",
            "cafe\u0301.html",
            "\u0441\u0430\u0440\u0430\u0439.html",
            "CON",
            "-rf",
            "a" * 255,
            "\u00e9" * 127,
            "%2e%2e",
            "...",
            "back\u2028line",
        ],
    )
    def test_an_odd_name_is_a_name_like_any_other(self, site: Path, name: str) -> None:
        """For a file, for a folder in the site, and for the site itself."""
        files = {f"files/{name}": b"1", f"{name}/index.html": b"2"}
        publish(site / name, files)
        assert contents(site / name) == files
        assert publish(site / name, files).unchanged == tuple(sorted(files))
        publish(site / name, {**files, "more": b"3"})
        assert names(site) == [name]

    @pytest.mark.parametrize(
        "path",
        [
            "../up", "a/../../up", "..", ".", "a/./b", "/etc/hosts", "a//b", "a/", "", "a\\b", "a\0b", "a\nb",
            MARKER, "a" * 256, "\u00e9" * 128, "\ud800",
        ],
    )  # fmt: skip
    def test_a_path_that_leads_out_or_fits_no_disk_is_refused(self, site: Path, path: str) -> None:
        """Before anything is written, with the path in the message."""
        publish(site)
        with unharmed(site.parent), pytest.raises(Unfit) as refusal:
            publish(site, {**SMALL, path: b"x"})
        assert repr(path) in str(refusal.value)

    def test_a_name_cannot_be_file_and_folder_at_once(self, site: Path) -> None:
        with pytest.raises(Unfit, match=r"^'plan' is both a file and a folder; expected one of the two"):
            publish(site, {"plan": b"x", "plan/index.html": b"y"})

    def test_a_path_too_long_for_the_system_leaves_the_site(self, site: Path) -> None:
        publish(site)
        with unharmed(site), pytest.raises(SiteError, match="the site is as it was"):
            publish(site, {**SMALL, "/".join(["deep" * 50] * 30): b"x"})


class TestPromisedBytes:
    def test_bytes_that_are_not_what_was_promised_are_not_published(self, site: Path) -> None:
        publish(site)
        with unharmed(site), pytest.raises(NotWritten) as refusal:
            publish(site, {"a.webp": Copy("0" * 64, lambda: b"other")})
        assert str(refusal.value) == (
            "a.webp could not be made (other bytes came than were promised); "
            "expected the bytes it had a moment ago; publish again"
        )

    def test_bytes_that_cannot_be_read_any_more_leave_the_site(self, site: Path) -> None:
        publish(site)

        def gone() -> bytes:
            raise FileNotFoundError(2, "No such file", "photo.jpg")

        with unharmed(site), pytest.raises(NotWritten, match=r"could not be made \(No such file\)"):
            publish(site, {"a.webp": Copy("0" * 64, gone)})


class TestOtherDisks:
    """What another system or disk lacks, taken away here."""

    @pytest.fixture
    def without_swap(self, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(folder_system, "_renameat2", None)

    @pytest.fixture
    def without_second_names(self, monkeypatch: pytest.MonkeyPatch) -> None:
        def refuse(*_: object, **__: object) -> None:
            raise PermissionError(1, "Operation not permitted")

        monkeypatch.setattr(os, "link", refuse)

    @pytest.fixture
    def without_tree_sync(self, monkeypatch: pytest.MonkeyPatch) -> list[int]:
        asked: list[int] = []
        fsync = os.fsync
        monkeypatch.setattr(folder_system, "_syncfs", None)
        monkeypatch.setattr(folder_tree, "SYNCS_TREES", False)
        monkeypatch.setattr(os, "fsync", lambda handle: (asked.append(handle), fsync(handle))[1])
        return asked

    @pytest.mark.usefixtures("without_swap")
    def test_two_renames_do_where_there_is_no_swap(self, site: Path) -> None:
        publish(site)
        theirs = add_foreign(site)
        publish(site, LATER)
        assert contents(site) == {**LATER, **theirs}
        assert names(site.parent) == ["site"]

    def test_a_disk_that_cannot_swap_is_found_out_by_asking(self, site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Linux has the call, but not every disk takes it."""

        def cannot(*_: object) -> int:
            ctypes.set_errno(errno.EINVAL)
            return -1

        monkeypatch.setattr(folder_system, "_renameat2", cannot)
        publish(site)
        publish(site, LATER)
        assert contents(site) == LATER

    def test_a_disk_whose_folders_cannot_be_waited_for(self, site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Some network drives say that a folder is nothing to wait for; that is no failure."""

        def cannot(_handle: int) -> None:
            raise OSError(errno.EINVAL, "Invalid argument")

        monkeypatch.setattr(os, "fsync", cannot)
        publish(site)
        assert publish(site, LATER).left == ()

    @pytest.mark.usefixtures("without_swap")
    def test_a_kill_between_the_two_renames_is_put_right_by_the_next_run(self, site: Path) -> None:
        """The old site stands on the bench; it comes back first, whatever happens then."""
        publish(site)
        bench = site.with_name(".site.barrowbook")
        bench.mkdir()
        site.rename(bench / "old")
        with pytest.raises(NotWritten):
            publish(site, {"a": Copy("0" * 64, lambda: b"other")})
        assert contents(site) == SMALL
        assert names(site.parent) == ["site"]

    @pytest.mark.usefixtures("without_swap")
    def test_a_second_rename_that_fails_takes_the_first_one_back(
        self, site: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        publish(site)
        rename = os.rename

        def fail(old: Path, new: Path) -> None:
            if new == site and "new-" in str(old):
                raise OSError(5, "Input/output error", str(new))
            rename(old, new)

        monkeypatch.setattr(os, "rename", fail)
        with pytest.raises(NotWritten):
            publish(site, LATER)
        assert contents(site) == SMALL
        assert names(site.parent) == ["site"]

    @pytest.mark.usefixtures("without_second_names")
    def test_files_are_copied_where_a_file_has_one_name_only(self, site: Path) -> None:
        publish(site)
        theirs = add_foreign(site)
        publish(site, LATER)
        assert contents(site) == {**LATER, **theirs}
        assert names(site.parent) == ["site"]

    def test_each_file_is_waited_for_where_a_tree_cannot_be(self, site: Path, without_tree_sync: list[int]) -> None:
        """Every file, the marker, and the name of the site in the folder above."""
        publish(site)
        assert len(without_tree_sync) == len(SMALL) + 2


class TestDuringTheSwap:
    """Somebody works in the site while it is swapped: what they do lands in the tree that goes."""

    @pytest.fixture
    def meanwhile(self, monkeypatch: pytest.MonkeyPatch) -> list[object]:
        """What to do in the site once the new tree is built and before it is swapped in."""
        todo: list[object] = []
        swap = folder.swap

        def after_that(new: Path, site: Path, bench: Path) -> Path | None:
            for do in todo:
                do(site)  # type: ignore[operator]
            return swap(new, site, bench)

        monkeypatch.setattr(folder, "swap", after_that)
        return todo

    def test_a_file_that_comes_late_is_brought_over(self, site: Path, meanwhile: list[object]) -> None:
        publish(site)
        meanwhile.append(lambda site: (site / "late").mkdir())
        meanwhile.append(lambda site: (site / "late" / "note.txt").write_bytes(b"late"))
        publish(site, LATER)
        assert contents(site) == {**LATER, "late/note.txt": b"late"}

    def test_a_file_replaced_late_is_kept_beside_the_one_it_replaced(self, site: Path, meanwhile: list[object]) -> None:
        """Which of the two was meant cannot be told, so neither is lost."""
        publish(site)
        (site / "CNAME").write_bytes(b"first")
        meanwhile.append(lambda site: (site / "CNAME").unlink())
        meanwhile.append(lambda site: (site / "CNAME").write_bytes(b"second"))
        publish(site, LATER)
        assert contents(site) == {**LATER, "CNAME": b"first", "CNAME.kept": b"second"}


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(
        st.dictionaries(st.sampled_from(["a", "b", "c/d", "c/e", "f/g/h"]), st.binary(max_size=2), max_size=5),
        min_size=1,
        max_size=5,
    )
)
def test_a_site_with_any_past_is_the_site_made_anew(tmp_path: Path, history: list[dict[str, bytes]]) -> None:
    """Same journal, same bytes (law 9): what was published before leaves no trace, not even in the marker."""
    with tempfile.TemporaryDirectory(dir=tmp_path) as name:
        folder = Path(name)
        for files in history:
            publish(folder / "old", files)
        publish(folder / "new", history[-1])
        assert contents(folder / "old") == contents(folder / "new") == history[-1]
        assert (folder / "old" / MARKER).read_bytes() == (folder / "new" / MARKER).read_bytes()


def test_linux_swaps_in_one_step(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One call, and the site never has another name, nor none. Elsewhere it takes two renames."""
    assert (folder_system._renameat2 is not None) == (sys.platform == "linux")
    real = folder_system._renameat2 or (lambda *_: 0)
    told: list[int] = []
    renamed: list[Path] = []
    rename = Path.rename
    monkeypatch.setattr(folder_system, "_renameat2", lambda *words: told.append(real(*words)) or told[-1])
    monkeypatch.setattr(Path, "rename", lambda path, to: (renamed.append(path), rename(path, to))[1])
    publish(site)
    publish(site, LATER)
    if sys.platform == "linux":
        assert told == [0]
        assert site not in renamed
    assert contents(site) == LATER
