"""Folders that a site is not published to, each with its whole message."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from builder.publish.folder_errors import Refused
from builder.publish.folder_tree import survey
from tests.publish.disks import small_disk
from tests.publish.sites import MARKER, names, publish, unharmed

EXPECTED = "a new or empty folder, or a site that publish made"


def refusal(target: Path, **how: object) -> Refused:
    """What is said, after making sure that nothing was done."""
    with unharmed(target.resolve()), pytest.raises(Refused) as refused:
        publish(target, **how)
    assert refused.value.expected == EXPECTED
    return refused.value


def test_a_folder_with_things_in_it_that_publish_did_not_make(tmp_path: Path) -> None:
    """Even if it holds nothing but one hidden file."""
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / ".notes").write_bytes(b"mine")
    assert str(refusal(mine)) == (
        f"{mine} has things in it and no file .barrowbook, so publish did not make it; "
        f"expected {EXPECTED}; name another folder, or empty this one yourself"
    )


def test_a_file(tmp_path: Path) -> None:
    """The suggestion is a name that is free."""
    (tmp_path / "notes").write_bytes(b"mine")
    refused = refusal(tmp_path / "notes")
    assert refused.found == f"{tmp_path / 'notes'} is a file"
    assert refused.fix == f"name a folder of its own, such as {tmp_path / 'notes-site'}"


@pytest.mark.parametrize("made", [False, True])
def test_a_home_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, made: bool) -> None:
    """Also if somebody put our marker there."""
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    if made:
        monkeypatch.setenv("HOME", str(tmp_path))
        publish(tmp_path / "home")
        monkeypatch.setenv("HOME", str(tmp_path / "home"))
    else:
        (tmp_path / "home").mkdir()
    assert refusal(tmp_path / "home").found == f"{tmp_path / 'home'} is your home folder"


def test_the_root_of_the_file_system() -> None:
    """Nobody means that."""
    with pytest.raises(Refused) as refused:
        publish(Path(Path.cwd().anchor))
    assert refused.value.found.endswith(" is the root of the file system")


def test_the_root_of_a_disk() -> None:
    """It cannot be swapped; a folder on the disk can. Every Linux has one at /proc."""
    with pytest.raises(Refused) as refused:
        publish(Path("/proc"))
    assert (refused.value.found, refused.value.fix) == (
        "/proc is the root of a disk",
        "name a folder of its own, such as /proc/site",
    )


def test_a_folder_with_another_disk_mounted_in_it_is_not_looked_through() -> None:
    """Every Linux has disks mounted in /dev."""
    with pytest.raises(Refused, match=r"^another disk is mounted at /dev/.*, inside the site; expected"):
        survey(Path("/dev"))


def test_a_site_with_another_disk_mounted_in_it(tmp_path: Path) -> None:
    """What is on the other disk cannot be carried over, and is not cleared away. (Played if not root.)"""
    publish(tmp_path / "site")
    with small_disk(tmp_path / "site" / "disk", 1 << 20) as disk:
        (disk / "mine").write_bytes(b"mine")
        if disk.is_mount():
            with unharmed(tmp_path / "site"), pytest.raises(Refused, match="another disk is mounted at"):
                publish(tmp_path / "site", {})
        assert (disk / "mine").read_bytes() == b"mine"


def test_the_root_of_a_repository(tmp_path: Path) -> None:
    """Even a new one, which holds nothing but its own folder."""
    subprocess.run(["git", "init", "--quiet", str(tmp_path / "repo")], check=True)
    refused = refusal(tmp_path / "repo")
    assert refused.found == f"{tmp_path / 'repo'} is a repository"
    assert refused.fix == f"name a folder in it, such as {tmp_path / 'repo' / 'site'}"


def test_a_site_of_ours_that_became_a_repository_is_published(tmp_path: Path) -> None:
    """Many keep the site itself under version control, to push it to a host."""
    publish(tmp_path / "site")
    subprocess.run(["git", "init", "--quiet", str(tmp_path / "site")], check=True)
    publish(tmp_path / "site", {"index.html": b"new"})
    assert (tmp_path / "site" / ".git" / "HEAD").is_file()
    told = subprocess.run(["git", "-C", str(tmp_path / "site"), "fsck"], check=False, capture_output=True)
    assert told.returncode == 0


@pytest.mark.parametrize(
    ("target", "words"),
    [("journal", "the journal itself"), (".", "a folder that holds the journal"), ("link", "the journal itself")],
)
def test_the_journal_and_what_holds_it(tmp_path: Path, target: str, words: str) -> None:
    """Also by another name."""
    build = tmp_path / "build"
    (build / "journal").mkdir(parents=True)
    (build / "journal" / "journal.yaml").write_bytes(b"title: Shed")
    (build / "link").symlink_to("journal")
    refused = refusal(build / target, journal=build / "journal")
    assert refused.found == f"{build / target} is {words}"
    assert refused.fix == f"name a folder of its own, such as {build / 'site'}"


def test_the_empty_folder_of_a_journal_is_still_the_journal(tmp_path: Path) -> None:
    """Before anything is written in it, it is as empty as a folder for a site."""
    (tmp_path / "journal").mkdir()
    assert "the journal itself" in refusal(tmp_path / "journal", journal=tmp_path / "journal").found


def test_a_link_that_leads_in_a_circle(tmp_path: Path) -> None:
    """There is no folder at the end of it."""
    (tmp_path / "one").symlink_to("two")
    (tmp_path / "two").symlink_to("one")
    with pytest.raises(Refused, match="is a link that leads nowhere"):
        publish(tmp_path / "one")
    assert names(tmp_path) == ["one", "two"]


@pytest.mark.parametrize(
    "raw",
    [
        b"", b"{", b"[]", b"null", b'{"version": "1"}', b"\xff", b"[" * 100_000,
        b'{"made_by": "barrowbook", "version": 1, "files": {}}',
        b'{"made_by": "barrowbook", "version": "1", "files": []}',
        b'{"made_by": "barrowbook", "version": "1", "files": {"a": 1}}',
        b'{"made_by": "barrowbook", "version": "1", "files": {"a": "not a digest"}}',
        b'{"made_by": "another", "version": "1", "files": {}}',
    ],
)  # fmt: skip
def test_a_site_whose_marker_is_damaged(tmp_path: Path, raw: bytes) -> None:
    """What in it is ours cannot be told, so nothing is touched."""
    publish(tmp_path / "site")
    (tmp_path / "site" / MARKER).write_bytes(raw)
    with unharmed(tmp_path / "site"), pytest.raises(Refused) as refused:
        publish(tmp_path / "site", {})
    assert str(refused.value) == (
        f"{tmp_path / 'site' / MARKER}, which says what we wrote there, is damaged; "
        "expected the file as publish wrote it; publish to a new folder, or empty this one yourself"
    )


def test_a_marker_that_is_a_folder(tmp_path: Path) -> None:
    """We never make one."""
    (tmp_path / "site" / MARKER).mkdir(parents=True)
    with unharmed(tmp_path / "site"), pytest.raises(Refused, match="is damaged"):
        publish(tmp_path / "site")
