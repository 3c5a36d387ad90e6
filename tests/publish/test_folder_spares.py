"""Folders of an old site that wait in the cache: that they hold nothing, and that nothing in them harms a site."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.publish.folder_tree import carry
from tests.publish.sites import LATER, SMALL, add_foreign, contents, names, publish

pytestmark = pytest.mark.usefixtures("never_waiting")


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Where to publish; not there yet."""
    return tmp_path / "site"


class TestSpareFolders:
    """The old site's empty folders wait in the cache to be the next one's."""

    @pytest.fixture
    def spare(self, tmp_path: Path) -> Path:
        return tmp_path / "cache" / "spare"

    def spared(self, spare: Path) -> list[Path]:
        return [path for path in spare.rglob("*") if not path.is_dir()]

    def test_they_hold_no_file(self, site: Path, spare: Path) -> None:
        publish(site, spare=spare)
        add_foreign(site)
        publish(site, LATER, spare=spare)
        assert [path.name for path in spare.iterdir()] != []
        assert self.spared(spare) == []

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

    def test_nothing_of_a_site_is_in_the_cache_under_a_second_name(self, site: Path, spare: Path) -> None:
        """Whatever happens to the cache, also to files in their place, happens to the cache only."""
        for files in (SMALL, LATER, SMALL):
            publish(site, files, spare=spare)
        assert all(path.stat().st_nlink == 1 for path in site.rglob("*") if path.is_file())

    def test_a_few_sites_have_them_and_no_more(self, tmp_path: Path, spare: Path) -> None:
        for number in range(7):
            publish(tmp_path / str(number), spare=spare)
            publish(tmp_path / str(number), LATER, spare=spare)
        assert len(list(spare.iterdir())) == 4

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
