"""The files of a journal's folder: which there are, and their bytes. Reads, and never writes."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from builder.journal.episode_reader import FILE_NAME
from builder.journal.report import Report
from builder.words.place import Place

SETTINGS, PLAN, OWNED, EPISODES = "journal.yaml", "plan.yaml", "owned.yaml", "episodes"
PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".gif")


@dataclass(frozen=True, slots=True, kw_only=True)
class Files:
    """What lies in the folder. Paths are inside the journal, with forward slashes.

    `texts` are the bytes of the settings, the plan, what is owned and the episodes, in that order and
    the episodes by name; `pictures` are all pictures by path.
    """

    folder: Path
    texts: tuple[tuple[str, bytes], ...]
    pictures: frozenset[str]

    def text(self, file: str) -> bytes | None:
        """The bytes of one file, None when there is no such file."""
        return next((raw for name, raw in self.texts if name == file), None)

    @property
    def episodes(self) -> tuple[tuple[str, bytes], ...]:
        """The episodes' files."""
        return tuple(one for one in self.texts if one[0].startswith(f"{EPISODES}/"))


def find_files(folder: Path, report: Report) -> Files | None:
    """Everything of a journal's folder; None, with a mistake, when it is no journal."""
    if not (folder / SETTINGS).is_file():
        report.mistake(Place(file=SETTINGS), *_no_journal(folder))
        return None
    names = [SETTINGS, *(name for name in (PLAN, OWNED) if (folder / name).is_file())]
    names += _episode_names(folder, report)
    read = ((name, _bytes(folder, name, report)) for name in names)
    return Files(
        folder=folder,
        texts=tuple((name, raw) for name, raw in read if raw is not None),
        pictures=_pictures(folder),
    )


def _no_journal(folder: Path) -> tuple[str, str, str]:
    if not folder.exists():
        return f"there is no folder {folder}", "the folder of a journal", "check the name"
    if not folder.is_dir():
        return f"{folder} is a file", "the folder of a journal", "name the folder it lies in"
    return (
        f"the folder {folder} has no {SETTINGS}",
        "the folder of a journal",
        f"name the right folder, or make one with: barrowbook begin {folder}",
    )


def _episode_names(folder: Path, report: Report) -> list[str]:
    place = folder / EPISODES
    if not place.is_dir():
        return []
    names = []
    for name in sorted(entry.name for entry in place.iterdir() if entry.is_file()):
        if name.startswith(".") or not name.lower().endswith((".md", ".markdown")):
            continue
        if FILE_NAME.fullmatch(name):
            names.append(f"{EPISODES}/{name}")
        else:
            report.mistake(
                Place(file=f"{EPISODES}/{name}"),
                "the file's name does not say which episode it is",
                "a number, a dash and a few words, such as 03-the-footing.md",
                "rename it, or move it out of episodes/",
            )
    return names


def _bytes(folder: Path, name: str, report: Report) -> bytes | None:
    path = folder / name
    if not inside(folder, path):
        report.mistake(
            Place(file=name), "the file is a link that leads out of the journal", "a file of its own", "copy the file here"
        )
        return None
    try:
        return path.read_bytes()
    except OSError as error:
        report.mistake(Place(file=name), f"the file cannot be read ({error.strerror})", "a readable file", "")
        return None


def inside(folder: Path, path: Path) -> bool:
    """Whether a path, links followed, lies in the folder."""
    return path.resolve().is_relative_to(folder.resolve())


def _pictures(folder: Path) -> frozenset[str]:
    found = set()
    for here, folders, names in os.walk(folder):
        folders[:] = sorted(one for one in folders if not one.startswith("."))
        for name in names:
            path = Path(here, name)
            if name.lower().endswith(PICTURES) and inside(folder, path):
                found.add(path.relative_to(folder).as_posix())
    return frozenset(found)
