"""A small journal with its site and its cache, for tests of publishing again."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from builder import cli
from tests.bench.journals import write_journal


class Desk:
    """A journal, its site, and a cache; what was in the journal at first can be put back."""

    def __init__(self, folder: Path) -> None:
        self.journal, self.site, self.cache = folder / "journal", folder / "site", folder / "cache"
        write_journal(self.journal, 3)
        self.edit(self.journal / "plan.yaml", "[800, 1400, 2400]", "[8, 14, 24]")  # so that looking ahead is quick
        self.photo("a.png", 1)
        self.edit(self.episodes[0], "## Part 1", "![The slope](../photos/a.png)\n\n## Part 1")
        self.first = {path: path.read_bytes() for path in self.files}

    @property
    def episodes(self) -> list[Path]:
        """The episodes that there are."""
        return sorted((self.journal / "episodes").iterdir())

    @property
    def files(self) -> list[Path]:
        """Every file of the journal."""
        return sorted(path for path in self.journal.rglob("*") if path.is_file())

    def edit(self, file: Path, old: str, new: str) -> None:
        """Change a text wherever it stands."""
        file.write_text(file.read_text("utf-8").replace(old, new), "utf-8")

    def photo(self, name: str, seed: int) -> None:
        """A small picture."""
        (self.journal / "photos").mkdir(exist_ok=True)
        Image.new("RGB", (40 + seed, 30), (seed * 40 % 256, 90, 60)).save(self.journal / "photos" / name)

    def put_back(self) -> None:
        """The journal as it was at first."""
        for path in self.files:
            if path not in self.first:
                path.unlink()
        for path, raw in self.first.items():
            path.write_bytes(raw)


def published(desk: Desk, to: Path, patch: pytest.MonkeyPatch, cache: str) -> dict[str, bytes]:
    """The site, published with this cache, by path."""
    patch.setenv("BARROWBOOK_CACHE", cache)
    assert cli.main(["publish", str(desk.journal), "--to", str(to)]) == 0
    return {str(path.relative_to(to)): path.read_bytes() for path in to.rglob("*") if path.is_file()}


@pytest.fixture
def desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A journal that has been published once."""
    desk = Desk(tmp_path)
    published(desk, desk.site, monkeypatch, str(desk.cache))
    return desk


def again(desk: Desk, *more: str) -> int:
    """Publish once more, the same way."""
    return cli.main(["publish", str(desk.journal), "--to", str(desk.site), *more])
