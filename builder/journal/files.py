"""The files of a journal's folder: which there are, and their bytes. Reads, and never writes."""

from __future__ import annotations

import os
import re
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from stat import S_ISLNK

from builder.journal.report import Report
from builder.journal.text import LARGEST
from builder.words.misread import clipped
from builder.words.place import Place

SETTINGS, PLAN, OWNED, EPISODES = "journal.yaml", "plan.yaml", "owned.yaml", "episodes"
LONGEST_NAME = 255  # bytes, on every file system that people use
# A name that every computer can hold, as the pages' folders are named after it.
FILE_NAME = re.compile(
    '(?P<number>[0-9]{1,6})-(?P<slug>[^/\\\\<>:"|?*\x00-\x20\x7f-\x9f\ud800-\udfff]'
    '[^/\\\\<>:"|?*\x00-\x1f\x7f-\x9f\ud800-\udfff]*?)(?<![. ])\\.md'
)
PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".gif")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)  # what was read once is told apart by being that
class Files:
    """What lies in the folder. Paths are inside the journal, with forward slashes.

    `texts` are the bytes of the settings, the plan, what is owned and the episodes, in that order and
    the episodes by name; `pictures` are all pictures by path; `unread` are files that are there and could
    not be read, or have no name that can be used.
    """

    folder: Path
    texts: tuple[tuple[str, bytes], ...]
    pictures: frozenset[str]
    unread: tuple[str, ...] = ()

    def text(self, file: str) -> bytes | None:
        """The bytes of one file, None when there is no such file."""
        return next((raw for name, raw in self.texts if name == file), None)

    @property
    def episodes(self) -> tuple[tuple[str, bytes], ...]:
        """The episodes' files."""
        return tuple(one for one in self.texts if one[0].startswith(f"{EPISODES}/"))


def find_files(folder: Path, report: Report) -> Files | None:
    """Everything of a journal's folder; None, with a mistake, when it is no journal."""
    try:
        return _files(folder, report)
    except OSError as error:
        why = error.strerror or "it cannot be opened"
        report.mistake(
            Place(file=SETTINGS),
            f"the folder {folder} cannot be read ({why})",
            "the folder of a journal",
            "check the name, and that you may open it",
        )
        return None


def _files(folder: Path, report: Report) -> Files | None:
    if not (folder / SETTINGS).is_file():
        report.mistake(Place(file=SETTINGS), *_no_journal(folder))
        return None
    names = [SETTINGS, *(name for name in (PLAN, OWNED) if _is_there(folder, name, report))]
    episodes, misnamed = _episode_names(folder, report)
    linked = (folder / EPISODES).is_symlink()
    read = {name: _bytes(folder, name, report, linked=_is_link(folder / name)) for name in names}
    read |= {name: _bytes(folder, name, report, linked=linked or link) for name, link in episodes.items()}
    return Files(
        folder=folder,
        texts=tuple((name, raw) for name, raw in read.items() if raw is not None),
        pictures=_pictures(folder),
        unread=(*misnamed, *(name for name, raw in read.items() if raw is None)),
    )


def _no_journal(folder: Path) -> tuple[str, str, str]:
    expected = "the folder of a journal"
    if not folder.exists():
        here = _journal_around(Path.cwd() / SETTINGS)
        of_here = f", or name the journal that you are in, {os.path.relpath(here)}" if here else ""
        return f"there is no folder {folder}", expected, f"check the name{of_here}"
    if (around := _journal_around(folder)) is not None:
        found = f"{folder} is a {'folder' if folder.is_dir() else 'file'} of a journal"
        return found, expected, f"name the journal's own folder, {around}"
    if not folder.is_dir():
        return f"{folder} is a file", expected, "name the folder of the journal"
    if (folder / _short_ending(SETTINGS)).is_file():
        found = f"the folder {folder} has {_short_ending(SETTINGS)} and no {SETTINGS}"
        return found, expected, f"rename it to {SETTINGS}"
    return (
        f"the folder {folder} has no {SETTINGS}",
        expected,
        f"name the right folder, or make one with: barrowbook begin {folder}",
    )


def _journal_around(path: Path) -> Path | None:
    """The folder of the journal that a file or a folder lies in, as far as its path names one."""
    return next((above for above in path.parents if (above / SETTINGS).is_file()), None)


def _short_ending(name: str) -> str:
    return name.replace(".yaml", ".yml")


def _is_there(folder: Path, name: str, report: Report) -> bool:
    other = _short_ending(name)
    if (folder / other).is_file():
        report.mistake(Place(file=other), f"the file is named {other}, and is not read", name, f"rename it to {name}")
    return (folder / name).is_file()


def _episode_names(folder: Path, report: Report) -> tuple[dict[str, bool], list[str]]:
    """The episodes' files, each with whether it is a link; and those that are meant as such and have no name that can
    be used.
    """
    good: dict[str, bool] = {}
    bad: list[str] = []
    if not (folder / EPISODES).is_dir():
        return good, bad
    with os.scandir(folder / EPISODES) as entries:
        found = sorted((entry.name, entry.is_symlink()) for entry in entries if _is_file(entry))
    for name, link in found:
        if FILE_NAME.fullmatch(name):
            good[f"{EPISODES}/{name}"] = link
            _check_length(name, report)
        elif _is_meant(name):
            bad.append(f"{EPISODES}/{_printable(name)}")
            report.mistake(Place(file=bad[-1]), *_misnamed(name))
    return good, bad


def number_and_slug(file: str) -> tuple[int, str]:
    """What the name of an episode's file says: 3 and `the-footing`."""
    match = FILE_NAME.fullmatch(file.rpartition("/")[2])
    return (int(match["number"]), match["slug"]) if match else (0, file)


def _is_file(entry: os.DirEntry[str]) -> bool:
    """A link that leads round in a circle is none."""
    try:
        return entry.is_file()
    except OSError:
        return False


def _check_length(name: str, report: Report) -> None:
    """The site names an episode's folder and its show notes after it, and a name has at most 255 bytes."""
    notes = f"{name.removesuffix('.md')}.txt"
    over = len(notes.encode()) - LONGEST_NAME
    if over > 0:
        report.mistake(
            Place(file=f"{EPISODES}/{name}"),
            f"the file's name is too long by {over} for its show notes, which would be named {clipped(notes)}",
            f"a name that leaves them at most {LONGEST_NAME} bytes, of which an accented letter takes two",
            f"rename it with at least {over} letter{'s' if over > 1 else ''} less",
        )


def _is_meant(name: str) -> bool:
    """Whether a file looks like a write-up: by its ending, or by a number and a dash (`03-frame.md.txt`)."""
    if name.startswith(".") or name.endswith("~"):
        return False
    return name.lower().endswith((".md", ".markdown")) or re.match(r"\d+-.*\.txt$", name) is not None


def _misnamed(name: str) -> tuple[str, str, str]:
    expected = "a number, a dash and a few words, such as 03-the-footing.md"
    if re.match(r"\d+-", name) and not name.endswith(".md"):
        return "the file's name does not end in .md", expected, "rename it so that it ends in .md"
    if re.match(r"\d+-", name):
        found = "the file's name holds a character that not every computer can"
        return found, expected, "rename it with letters, digits and dashes"
    return (
        "the file's name does not say which episode it is",
        expected,
        "rename it, or move it out of episodes/",
    )


def _printable(name: str) -> str:
    """A name as text: what is no text in it is shown as its code."""
    text = name.encode("utf-8", "backslashreplace").decode("utf-8")
    return "".join(one if one.isprintable() else f"\\x{ord(one):02x}" for one in text)


def _bytes(folder: Path, name: str, report: Report, *, linked: bool) -> bytes | None:
    """The bytes of a file, at most one more than a file may have; None, reported, when it cannot be read.

    Without a link on the way a file lies where it seems to; `linked` is whether it or its folder is one.
    """
    if linked and not inside(folder, folder / name):
        report.mistake(
            Place(file=name),
            "the file is a link that leads out of the journal",
            "a file of its own",
            "copy the file here",
        )
        return None
    try:
        return _beginning(f"{folder}/{name}")
    except OSError as error:
        report.mistake(
            Place(file=name),
            f"the file cannot be read ({error.strerror})",
            "a file that you may open",
            "check its permissions, or that no other program holds it",
        )
        return None


def _beginning(path: str) -> bytes:
    """All of a file, or one byte more than one may have. By the system's own calls, as a journal may have thousands."""
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0))
    try:
        data, size = b"", os.fstat(handle).st_size
        while piece := os.read(handle, min(size, LARGEST) + 1):
            data += piece
            if len(data) == size or len(data) > LARGEST:
                break
        return data[: LARGEST + 1]
    finally:
        os.close(handle)


def _is_link(path: Path) -> bool:
    with suppress(OSError):  # it is gone since it was listed: reading it will say so
        return S_ISLNK(os.lstat(path).st_mode)
    return False


def inside(folder: Path, path: Path) -> bool:
    """Whether a path, links followed, lies in the folder. A link that leads round in a circle does not.

    Python 3.13 gives such a link back as it is, where older ones raise an error.
    """
    try:
        real = path.resolve()
        circles = any(one.is_symlink() for one in (real, *real.parents))
        return not circles and real.is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        return False


def _pictures(folder: Path) -> frozenset[str]:
    """All pictures by path. A link counts when what it leads to is a file of the journal."""
    found = set()
    for here, folders, names in os.walk(folder):
        folders[:] = sorted(one for one in folders if not one.startswith("."))
        for name in names:
            path = Path(here, name)
            if name.lower().endswith(PICTURES) and _is_own_file(folder, path):
                found.add(path.relative_to(folder).as_posix())
    return frozenset(found)


def _is_own_file(folder: Path, path: Path) -> bool:
    if path.is_symlink() and not inside(folder, path):
        return False
    try:
        return path.is_file()
    except OSError:
        return False
