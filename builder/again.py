"""Publishing what has not changed: found out from the bytes of the journal and of the site.

What a publish made is noted under all that it was made from. Where the same is asked for again and the site
still is what was made then, nothing is computed, and only the warnings of that time are told once more. Where
nothing but stories changed, their episodes' pages are the only ones to be made: no other page tells them.
"""

from __future__ import annotations

import datetime
import hashlib
import json
import os
import re
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from functools import cache, lru_cache
from pathlib import Path
from typing import TypeAlias

from builder import __version__
from builder.journal.files import EPISODES, Files, find_files
from builder.journal.report import Report
from builder.publish.assets import TEMPLATES
from builder.publish.folder import Changed, stands
from builder.store.store import Store

_PROGRAM = Path(__file__).parent

# A line of --- as reading takes it for one, or less often: bytes know fewer blanks than texts.
_BORDER = re.compile(rb"^---[ \t\r\x0b\x0c]*$", re.MULTILINE)

# SHA-256 of the files of a site, in hexadecimal, by path.
Made: TypeAlias = Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is to be published where, as of which day, and which day it is: warnings depend on it."""

    journal: Path
    to: Path
    as_of: datetime.date | None
    today: datetime.date


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What came of it: the pictures that the site shows, with SHA-256 of their files, what stands there now, and what
    is to be told again: warnings, and notes on photos.
    """

    pictures: Mapping[str, str] = field(default_factory=dict)
    standing: str = ""
    warnings: str = ""
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Spared:
    """What came of a publish that computed nothing: the warnings that still hold, and what to say."""

    warnings: str
    says: str


def spare_of(store: Store) -> Path | None:
    """Where folders of an old site wait for the next publish (see builder/publish/folder_bench.py)."""
    return None if store.folder is None else store.folder / "spare"


def look(asked: Asked) -> Files | None:
    """The journal's files, where all of them can be read."""
    report = Report()
    files = find_files(asked.journal, report)
    return None if files is None or report.count or files.unread else files


def as_before(asked: Asked, files: Files, store: Store) -> Spared | None:
    """What there is to tell where the site already is what would be made; None where it may not be."""
    key = _key(asked, files)
    shown = store.find(key)
    pictures = None if shown is None else pictures_now(asked, json.loads(shown))
    with_pictures = None if pictures is None else _with_pictures(key, pictures)
    noted = None if with_pictures is None else store.find(with_pictures)
    if noted is None:
        return None
    said = json.loads(noted)
    if not stands(asked.to, said["standing"], asked.journal):
        return None
    return Spared(warnings=said["warnings"], says=nothing_changed(asked.to, said["notes"]))


def what_changed(changed: Changed, to: Path, spent: str, notes: Iterable[str]) -> str:
    """What changed since the last time, what was `spent`, and what to do next."""
    pages = [path for path in (*changed.added, *changed.changed) if path.endswith(".html")]
    if not (changed.added or changed.changed or changed.removed):
        return nothing_changed(to, notes)
    counts = [
        f"{len(paths)} {word}"
        for paths, word in ((changed.added, "new"), (changed.changed, "changed"), (changed.removed, "gone"))
        if paths
    ]
    edited = [f"{path} had been changed by hand; it was written again." for path in changed.edited]
    left = [f"{path} could not be put away; the next publish tries again." for path in changed.left]
    return "\n".join(
        [
            *notes,
            *edited,
            *left,
            f"{', '.join(counts)} of the site's files, {len(pages)} of them pages.",
            f"Spent so far: {spent}.",
            f"To put it on the web, copy the folder {to} to any host. Open {to / 'index.html'}",
        ]
    )


def nothing_changed(to: Path, notes: Iterable[str]) -> str:
    """What to say then."""
    return "\n".join([*notes, f"Nothing has changed. Open {to / 'index.html'}"])


def note(asked: Asked, files: Files, done: Done, store: Store) -> None:
    """Note what a publish made, and from what."""
    key = _key(asked, files)
    said = {"standing": done.standing, "warnings": done.warnings, "notes": done.notes}
    store.remember(key, json.dumps(list(done.pictures)).encode)
    store.remember(_with_pictures(key, done.pictures), json.dumps(said).encode)


def _with_pictures(key: str, pictures: Mapping[str, str]) -> str:
    """A key with what is in the pictures: their names alone do not say whether they changed."""
    return f"{key} {list(pictures.values())}"


def pictures_now(asked: Asked, paths: Iterable[str]) -> Mapping[str, str] | None:
    """SHA-256 of each picture's file; None where one is not to be read under its name (its accents may be written
    the other way).
    """
    digests = {path: _digest(asked.journal / path) for path in paths}
    found = {path: digest for path, digest in digests.items() if digest is not None}
    return found if len(found) == len(digests) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPage:
    """An episode's file, the page that tells it, and the pictures of its story, which other pages show too."""

    file: str
    page: str
    pictures: tuple[tuple[str, str], ...]


def made_before(asked: Asked, files: Files, episodes: Sequence[StoryPage], photos: Made, store: Store) -> Made:
    """SHA-256 by path of what need not be made, as only stories changed and other pages tell those."""
    key = _key_of_all_but_stories(asked, files, episodes, photos)
    others = store.find(key)
    pages = ((told.page, store.find(one)) for told, one in _with_keys(key, files, episodes))
    found = {page: digest.decode() for page, digest in pages if digest is not None}
    return {} if others is None else json.loads(others) | found


def note_made(
    asked: Asked, files: Files, episodes: Sequence[StoryPage], photos: Made, store: Store, made: Made
) -> None:
    """Note each file that a publish made: the page of each story apart, so that what is noted never changes."""
    key = _key_of_all_but_stories(asked, files, episodes, photos)
    of_stories = {told.page for told in episodes}
    others = {path: digest for path, digest in made.items() if path not in of_stories}
    store.remember(key, json.dumps(others).encode)
    for told, one in _with_keys(key, files, episodes):
        store.remember(one, made[told.page].encode)


def _with_keys(key: str, files: Files, episodes: Sequence[StoryPage]) -> Iterator[tuple[StoryPage, str]]:
    """Each episode with the key of its page."""
    stories = stories_of(files)
    return ((told, f"{key} {told.file} {stories[told.file]}") for told in episodes)


def _key_of_all_but_stories(asked: Asked, files: Files, episodes: Sequence[StoryPage], photos: Made) -> str:
    pictures = [picture for told in episodes for picture in (told.file, *(f"{one}" for one in told.pictures))]
    facts = [asked.as_of, *pictures, *sorted(photos.items())]
    return f"all but stories {digest_of_all(facts, fronts(files))}"


def fronts(files: Files) -> Iterator[tuple[str, bytes]]:
    """The journal's texts without stories."""
    return ((name, without_story(raw) if name.startswith(EPISODES) else raw) for name, raw in files.texts)


@lru_cache(maxsize=2)
def stories_of(files: Files) -> Mapping[str, str]:
    """SHA-256 of each episode's file, in hexadecimal, by its name."""
    return {name: hashlib.sha256(raw).hexdigest() for name, raw in files.episodes}


def without_story(raw: bytes) -> bytes:
    """The beginning of an episode's file that holds its front matter, or more; nothing of it is ever left out."""
    ends = _BORDER.search(raw, begins.end()) if (begins := _BORDER.match(raw)) else None
    return raw if ends is None else raw[: ends.end()]


@lru_cache(maxsize=2)
def _key(asked: Asked, files: Files) -> str:
    """All that a site is made from but its photos: the journal's bytes, what was asked, and the program."""
    stories = stories_of(files)
    texts = ((name, stories[name].encode() if name in stories else raw) for name, raw in files.texts)
    return f"site {digest_of_all(facts_of(asked, files), texts)}"


def facts_of(asked: Asked, files: Files) -> list[object]:
    """What was asked, and which pictures there are."""
    return [asked.journal, asked.as_of, asked.today, *sorted(files.pictures)]


def digest_of_all(facts: Iterable[object], texts: Iterable[tuple[str, bytes]]) -> str:
    """One digest for facts, texts and the program itself."""
    heard = hashlib.sha256(_program())
    for fact in facts:
        _hear(heard, str(fact).encode("utf-8", "surrogateescape"))
    _hear(heard, b"")
    heard.update(b"".join(piece for name, raw in texts for piece in (*_told(name.encode()), *_told(raw))))
    return heard.hexdigest()


@cache
def _program() -> bytes:
    """A digest of the program: its own files, its templates, the libraries and the interpreter."""
    heard = hashlib.sha256()
    for fact in (__version__, sys.version, *_libraries()):
        _hear(heard, fact.encode("utf-8", "surrogateescape"))
    for path in (*_all_in(_PROGRAM, (".py",)), *_all_in(TEMPLATES, ("",))):
        _hear(heard, path.encode("utf-8", "surrogateescape"))
        _hear(heard, Path(path).read_bytes())
    return heard.digest()


def _hear(heard: hashlib._Hash, piece: bytes) -> None:
    heard.update(b"".join(_told(piece)))


def _told(piece: bytes) -> tuple[bytes, bytes]:
    """With its length before it, so that no two rows of pieces are one."""
    return len(piece).to_bytes(8, "big"), piece


def _libraries() -> list[str]:
    """Every library that is installed, with its version: the names of the folders that say so."""
    found = []
    for place in sys.path:
        with suppress(OSError):
            found += [one.name for one in Path(place).iterdir() if one.name.endswith((".dist-info", ".egg-info"))]
    return sorted(found)


def _all_in(folder: Path, endings: tuple[str, ...]) -> list[str]:
    """Every file below a folder that ends so, in order."""
    found = []
    for here, _folders, names in os.walk(folder):
        found += [f"{here}/{name}" for name in names if name.endswith(endings) and "__pycache__" not in here]
    return sorted(found)


def _digest(file: Path) -> str | None:
    try:
        return hashlib.sha256(file.read_bytes()).hexdigest()
    except OSError:
        return None
