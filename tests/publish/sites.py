"""Folders to publish and to look at, for the tests of the site folder."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from builder.publish.folder import Changed, Copy, publish_folder

MARKER = ".barrowbook"

SMALL = {
    "index.html": b"<h1>Roll-off roof</h1>",
    "episodes/01-pegging-out/index.html": b"pegs",
    "episodes/02-the-footing/index.html": b"concrete",
    "ledger/index.html": b"every line",
}
LATER = {
    "index.html": b"<h1>Roll-off roof, roofed</h1>",
    "episodes/01-pegging-out/index.html": b"pegs",
    "episodes/03-the-rails/index.html": b"rails",
    "ledger/index.html": b"every line",
}


def publish(site: Path, files: Mapping[str, bytes | Copy] = SMALL, **how: object) -> Changed:
    """Publish as version 1."""
    return publish_folder(site, files, **{"version": "1", **how})  # type: ignore[arg-type]


def contents(folder: Path) -> dict[str, bytes | None]:
    """Every file of a folder by its path in it, the marker apart; None for a folder with nothing in it."""
    return {
        path.relative_to(folder).as_posix(): _told(path)
        for path in sorted(folder.rglob("*"))
        if path.name != MARKER and (not path.is_dir() or path.is_symlink() or not any(path.iterdir()))
    }


def _told(path: Path) -> bytes | None:
    if path.is_symlink():
        return f"link to {path.readlink()}".encode()
    return None if path.is_dir() else path.read_bytes()


def names(folder: Path) -> list[str]:
    """What stands in a folder, hidden or not, by name."""
    return sorted(path.name for path in folder.iterdir())


def facts(folder: Path) -> dict[str, tuple[int, int]]:
    """Inode number and time of change of everything in a folder, itself included."""
    paths = [folder, *sorted(folder.rglob("*"))]
    return {str(path): (path.lstat().st_ino, path.lstat().st_mtime_ns) for path in paths}


def add_foreign(site: Path) -> dict[str, bytes | None]:
    """What others put into a site: files, a hidden folder, an empty one, a link, a file among ours."""
    (site / "CNAME").write_bytes(b"shed.example")
    (site / ".git" / "refs").mkdir(parents=True)
    (site / ".git" / "HEAD").write_bytes(b"ref: refs/heads/main")
    (site / "old-photos").mkdir()
    (site / "drawing.pdf").symlink_to("elsewhere/drawing.pdf")
    (site / "episodes" / "sketch.txt").write_bytes(b"by hand")
    return {
        "CNAME": b"shed.example",
        ".git/refs": None,
        ".git/HEAD": b"ref: refs/heads/main",
        "old-photos": None,
        "drawing.pdf": b"link to elsewhere/drawing.pdf",
        "episodes/sketch.txt": b"by hand",
    }


def big_site(state: str, pages: int) -> dict[str, bytes]:
    """A site of some size. Between two states a third of it is the same, a third changes, a third is new."""
    shared = {f"episodes/{n:03d}-same/index.html": _page("same", n) for n in range(pages // 3)}
    changed = {f"episodes/{n:03d}-changes/index.html": _page(state, n) for n in range(pages // 3)}
    own = {f"episodes/{n:03d}-only-{state}/index.html": _page(state, n) for n in range(pages // 3)}
    return {"index.html": _page(state, -1), **shared, **changed, **own}


def _page(state: str, number: int) -> bytes:
    return hashlib.sha256(f"{state} {number}".encode()).hexdigest().encode() * 100


@contextmanager
def unharmed(folder: Path) -> Iterator[None]:
    """Nothing in the folder is another after this, to the byte, inode and date, and nothing is new beside it."""
    before = contents(folder), facts(folder), names(folder.parent)
    yield
    assert (contents(folder), facts(folder), names(folder.parent)) == before
