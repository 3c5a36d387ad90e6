"""Trees of an old site that wait in the cache: what they hold, and that nothing of it harms a site."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.publish import folder
from builder.publish.folder_tree import carry
from tests.publish.sites import LATER, MARKER, SMALL, add_foreign, contents, names, publish

pytestmark = pytest.mark.usefixtures("never_waiting")


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Where to publish; not there yet."""
    return tmp_path / "site"


class TestSpareTrees:
    """What is left of the old site waits in the cache to be made into the next one."""

    @pytest.fixture
    def spare(self, tmp_path: Path) -> Path:
        return tmp_path / "cache" / "spare"

    def spared(self, spare: Path) -> list[str]:
        """The files in the only tree there is, the marker apart."""
        (tree,) = spare.iterdir()
        return [path.relative_to(tree).as_posix() for path in tree.rglob("*") if path.is_file() and path.name != MARKER]

    def test_they_hold_nothing_but_second_names_of_what_stands_in_the_site(self, site: Path, spare: Path) -> None:
        """No page that is gone or was another, nothing of others, and no room on the disk."""
        publish(site, spare=spare)
        add_foreign(site)
        publish(site, LATER, spare=spare)
        (tree,) = spare.iterdir()
        assert sorted(self.spared(spare)) == ["episodes/01-pegging-out/index.html", "ledger/index.html"]
        assert all((tree / path).samefile(site / path) for path in self.spared(spare))

    def test_a_second_publish_gives_no_name_to_a_file_that_has_one(
        self, site: Path, spare: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        publish(site, spare=spare)
        publish(site, {**SMALL, "index.html": b"new"}, spare=spare)
        named: list[str] = []
        monkeypatch.setattr(folder, "carry", lambda old, _new: named.append(old))
        publish(site, {**SMALL, "index.html": b"newer"}, spare=spare)
        assert named == []
        assert contents(site) == {**SMALL, "index.html": b"newer"}

    @pytest.mark.parametrize("where", ["site", "spare"])
    @pytest.mark.parametrize("how", ["in its place", "by another file", "by a link", "by nothing"])
    def test_a_file_that_is_not_what_it_was_is_made_again(
        self, site: Path, spare: Path, tmp_path: Path, where: str, how: str
    ) -> None:
        """Whichever of its two names somebody changed it under; and what a link leads to is left alone."""
        (tmp_path / "theirs").write_bytes(b"theirs")
        publish(site, spare=spare)
        publish(site, LATER, spare=spare)
        (tree,) = spare.iterdir()
        file = (site if where == "site" else tree) / "ledger/index.html"
        if how != "in its place":
            file.unlink()
        if how == "by a link":
            file.symlink_to(tmp_path / "theirs")
        elif how != "by nothing":
            file.write_bytes(b"changed")
        publish(site, {**LATER, "index.html": b"new"}, spare=spare)
        assert contents(site) == {**LATER, "index.html": b"new"}
        assert (tmp_path / "theirs").read_bytes() == b"theirs"
        assert names(site.parent) == ["cache", "site", "theirs"]

    @pytest.mark.parametrize("raw", [None, b"", b"{}", b'{"made_by": "barro'])
    def test_a_tree_whose_marker_is_lost_or_cut_short_does_no_harm(
        self, site: Path, spare: Path, raw: bytes | None
    ) -> None:
        publish(site, spare=spare)
        publish(site, LATER, spare=spare)
        (tree,) = spare.iterdir()
        (tree / MARKER).unlink()
        if raw is not None:
            (tree / MARKER).write_bytes(raw)
        publish(site, SMALL, spare=spare)
        assert contents(site) == SMALL
        assert names(site.parent) == ["cache", "site"]

    def test_where_a_file_has_one_name_only_none_is_kept_twice(
        self, site: Path, spare: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """Copies would take as much room as the site."""
        monkeypatch.setattr(folder, "carry", lambda old, new: Path(new).write_bytes(Path(old).read_bytes()))
        publish(site, spare=spare)
        publish(site, LATER, spare=spare)
        assert self.spared(spare) == []
        publish(site, SMALL, spare=spare)
        assert contents(site) == SMALL

    @settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
    @given(st.lists(st.sampled_from([SMALL, LATER, {}, {"ledger": b"a file"}]), max_size=6))
    def test_they_change_nothing_in_the_site(self, tmp_path: Path, history: list[dict[str, bytes]]) -> None:
        """Whatever was published before, with spare folders or without: the same site."""
        with tempfile.TemporaryDirectory(dir=tmp_path) as name:
            folder = Path(name)
            for files in history:
                publish(folder / "with", files, spare=folder / "spare")
                publish(folder / "without", files)
                assert contents(folder / "with") == contents(folder / "without") == files
                assert set(names(folder)) <= {"with", "without", "spare"}

    def test_they_may_be_deleted_or_damaged_at_any_moment(self, site: Path, spare: Path) -> None:
        """A file in the place of the folders, a link, other folders: none of it reaches the site."""
        publish(site, spare=spare)
        publish(site, LATER, spare=spare)
        (kept,) = spare.iterdir()
        (kept / "of" / "somebody").mkdir(parents=True)
        publish(site, SMALL, spare=spare)
        assert contents(site) == SMALL
        (kept,) = spare.iterdir()
        kept.rename(spare / "moved")
        kept.symlink_to(spare / "moved")
        publish(site, LATER, spare=spare)
        kept.unlink()
        kept.write_bytes(b"a file")
        publish(site, SMALL, spare=spare)
        assert contents(site) == SMALL
        assert names(site.parent) == ["cache", "site"]

    def test_what_somebody_still_writes_in_them_comes_to_the_site(self, site: Path, spare: Path) -> None:
        """A program that has a folder of the old site open writes there, and means the site."""
        publish(site, spare=spare)
        publish(site, LATER, spare=spare)
        (kept,) = spare.iterdir()
        (kept / "ledger" / "note.txt").write_bytes(b"late")
        (kept / "index.html").write_bytes(b"late too")
        publish(site, SMALL, spare=spare)
        assert contents(site) == {**SMALL, "ledger/note.txt": b"late", "index.html.kept": b"late too"}

    def test_a_few_sites_have_them_and_no_more(self, tmp_path: Path, spare: Path) -> None:
        for number in range(7):
            publish(tmp_path / str(number), spare=spare)
            publish(tmp_path / str(number), LATER, spare=spare)
        assert len(list(spare.iterdir())) == 4
        assert all(contents(tmp_path / str(number)) == LATER for number in range(7))

    def test_a_folder_that_cannot_be_spared_is_removed(self, site: Path, tmp_path: Path) -> None:
        """The cache is on another disk, or is no folder."""
        (tmp_path / "cache").write_bytes(b"a file")
        publish(site, spare=tmp_path / "cache" / "spare")
        publish(site, LATER, spare=tmp_path / "cache" / "spare")
        assert names(tmp_path) == ["cache", "site"]


@pytest.mark.parametrize("linked", [True, False])
def test_carrying_writes_over_nothing_and_through_no_link(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, linked: bool
) -> None:
    """Also where a disk has no second names, and the file is copied."""
    if not linked:
        monkeypatch.setattr(os, "link", _no_second_names)
    ours, theirs, link = tmp_path / "ours", tmp_path / "theirs", tmp_path / "link"
    ours.write_bytes(b"ours")
    theirs.write_bytes(b"theirs")
    link.symlink_to(theirs)
    for taken in (theirs, link):
        with pytest.raises(FileExistsError):
            carry(str(ours), str(taken))
    carry(str(link), str(tmp_path / "second"))
    assert theirs.read_bytes() == b"theirs"
    assert (tmp_path / "second").readlink() == theirs


def _no_second_names(*_: object, **__: object) -> None:
    raise OSError(errno.EPERM, "this disk has no such thing")
