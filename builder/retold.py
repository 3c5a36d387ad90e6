"""Publishing a journal of which only stories changed: nothing is computed, for no figure depends on a story.

Beside its story an episode's page holds nothing that a story changes, unless the story begins in other words where
the page is described by its beginning, shows other pictures, or names a figure that it did not name. So the page
that stands in the site gets the new story in the place of the old one. Wherever one of these may not be so, this
gives way, and everything is made as if nothing had been noted.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from functools import lru_cache
from html import unescape
from pathlib import Path
from typing import Any, NoReturn

from builder import __version__
from builder.again import (
    Asked,
    Done,
    Spared,
    digest_of_all,
    facts_of,
    fronts,
    note,
    pictures_now,
    spare_of,
    stories_of,
    what_changed,
)
from builder.journal.files import Files, number_and_slug
from builder.journal.prose import read_stories
from builder.journal.records.prose import Prose, folder_name
from builder.pages.paths import EPISODE_PAGE, root_of
from builder.pages.prose import Photo, Said, tell
from builder.publish.folder import Copy, digest_of, publish_folder, standing_at
from builder.publish.folder_errors import SiteError
from builder.publish.folder_tree import file_digest
from builder.store.store import Store

MOST = 20  # stories told anew one by one

# All that a page holds before and after its story is written by templates, in which every angle bracket of a text is
# escaped. So the first of the one and the last of the other are the page's own, whatever stands in the story.
BEGINS, ENDS, AFTER = '<div class="story">\n', "\n</div>\n", '<section aria-labelledby="{}">'
DESCRIBED = '<meta name="description" content="'


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """What a publish came to: what it told, what it said was spent, and which files it said something about."""

    done: Done
    spent: str
    warned: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """An episode's file, its page, and what the page takes into the story: figures by name, photos by path.

    `pictures` are the story's, with their words: lists of episodes show them too. `video` and `summary` are whether the
    episode has them: what follows its story, and what the page says that it is about.
    """

    file: str
    page: str
    figures: Mapping[str, Said]
    photos: Mapping[str, Photo]
    pictures: tuple[tuple[str, str], ...]
    video: bool
    summary: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stood:
    """What is noted of the site that stands: what it came to, and SHA-256 of the files it was made from."""

    site: Site
    stories: Mapping[str, str]


def note_site(asked: Asked, files: Files, site: Site, pages: Iterable[tuple[Telling, str]], store: Store) -> None:
    """Note what a site was made from, and of each page, with its SHA-256, what it takes into its story."""
    front = _front(asked, files)
    _keep_site(front, files, site, store)
    stories = stories_of(files)  # once: to look it up takes as long as there are episodes
    for told, digest in pages:
        said = {
            "figures": {name: [one.text, one.href] for name, one in sorted(told.figures.items())},
            "photos": {path: asdict(one) | {"of": site.done.pictures[path]} for path, one in told.photos.items()},
            "pictures": told.pictures,
            "video": told.video,
            "summary": told.summary,
        }
        key = _page_key(front, told.file, stories[told.file], digest)
        store.keep(key, json.dumps(said).encode())


def retold(asked: Asked, files: Files, store: Store) -> Spared | None:
    """Publish where only stories changed; None, with the site as it was, where more may have to be done."""
    standing = standing_at(asked.to, asked.journal)
    if standing is None or standing.version != __version__:
        return None
    front = _front(asked, files)
    stood = _noted_site(front, asked, standing.digest, store)
    pages = {} if stood is None else _pages(front, asked, files, stood, standing.files, store)
    if stood is None or not pages:
        return None
    others = {path: Copy(digest, _lost) for path, digest in standing.files.items()}
    try:
        made = publish_folder(
            asked.to, {**others, **pages}, version=__version__, journal=asked.journal, spare=spare_of(store), wait=0
        )
    except SiteError:  # also where another publish is at work: whoever makes everything waits for it
        return None
    done = replace(stood.site.done, standing=made.standing)
    note(asked, files, done, store)
    _keep_site(front, files, replace(stood.site, done=done), store)
    return Spared(warnings=done.warnings, says=what_changed(made, asked.to, stood.site.spent, done.notes))


@lru_cache(maxsize=2)
def _front(asked: Asked, files: Files) -> str:
    """All that a site is made from but stories and photos."""
    return f"front {digest_of_all(facts_of(asked, files), fronts(files))}"


def _site_key(front: str, standing: str) -> str:
    return f"{front} site {standing}"


def _page_key(front: str, file: str, story: str, page: str) -> str:
    """Two stories can come to the same page and yet show other pictures elsewhere: both are in the key."""
    return f"{front} page {file} {story} {page}"


def _keep_site(front: str, files: Files, site: Site, store: Store) -> None:
    """Stories that come to the same site have their notes under one key. Each is true, so any of them will do: of a
    page that note is looked up which belongs to the very story that is named here.
    """
    said = {
        "stories": stories_of(files),
        "pictures": site.done.pictures,
        "warnings": site.done.warnings,
        "notes": site.done.notes,
        "spent": site.spent,
        "warned": sorted(site.warned),
    }
    store.keep(_site_key(front, site.done.standing), json.dumps(said).encode())


def _noted_site(front: str, asked: Asked, standing: str, store: Store) -> _Stood | None:
    """What is noted of the site that stands, if its photos still are what they were."""
    raw = store.find(_site_key(front, standing))
    if raw is None:
        return None
    said = json.loads(raw)
    if pictures_now(asked, said["pictures"]) != said["pictures"]:
        return None
    done = Done(pictures=said["pictures"], standing=standing, warnings=said["warnings"], notes=tuple(said["notes"]))
    site = Site(done=done, spent=said["spent"], warned=frozenset(said["warned"]))
    return _Stood(site=site, stories=said["stories"])


def _pages(
    front: str, asked: Asked, files: Files, stood: _Stood, standing: Mapping[str, str], store: Store
) -> dict[str, bytes]:
    """The page of each story that changed; none at all where one of them asks for more than its own page.

    Where something was said about a file, its lines may have moved.
    """
    stories = stories_of(files)
    changed = {name for name, digest in stories.items() if stood.stories.get(name) != digest}
    if not 0 < len(changed) <= MOST or changed & stood.site.warned:
        return {}
    told, problems = read_stories(files, changed)
    if problems:
        return {}
    pages = {}
    for file, prose in told.items():
        path = EPISODE_PAGE.format(name=folder_name(*number_and_slug(file)))
        before = _read(asked.to / path, standing.get(path))
        noted = store.find(_page_key(front, file, stood.stories[file], standing.get(path, "")))
        page = None if noted is None or before is None else _page(path, prose, before, json.loads(noted), stood, store)
        if noted is not None and page is not None:
            pages[path] = page
            store.keep(_page_key(front, file, stories[file], digest_of(page)), noted)
    return pages if len(pages) == len(changed) else {}


def _page(path: str, prose: Prose, before: str, noted: Any, stood: _Stood, store: Store) -> bytes | None:
    """The page that stands with the new story; None where more than its story may change."""
    figures = {name: Said(text=text, href=href) for name, (text, href) in noted["figures"].items()}
    if [[one.path, one.alt] for one in prose.pictures] != noted["pictures"]:
        return None
    if not figures.keys() >= {mark.name for mark in prose.marks}:
        return None
    if any(stood.site.done.pictures[name] != one["of"] for name, one in noted["photos"].items()):
        return None
    photos = {name: _photo(one) for name, one in noted["photos"].items()}
    story = tell(prose, root_of(path), photos, figures.__getitem__, store.remember)
    if not noted["summary"] and _described(before) != story.opening:
        return None
    begin = before.find(BEGINS) + len(BEGINS)
    end = before.rfind(AFTER.format("video" if noted["video"] else "costs")) - len(ENDS)
    if not before.startswith(ENDS, end):
        return None
    return f"{before[:begin]}{story.html}{before[end:]}".encode()


def _photo(noted: Any) -> Photo:
    sources = tuple((name, width) for name, width in noted["sources"])
    return Photo(sources=sources, width=noted["width"], height=noted["height"])


def _described(page: str) -> str:
    """What a page's head says that the page is about."""
    begin = page.find(DESCRIBED) + len(DESCRIBED)
    return unescape(page[begin : page.find('"', begin)])


def _read(file: Path, digest: str | None) -> str | None:
    """A page, if it is what we wrote."""
    if digest is None or file_digest(str(file)) != digest:  # which opens nothing but plain files
        return None
    raw = file.read_bytes()
    return raw.decode() if digest_of(raw) == digest else None


def _lost() -> NoReturn:
    raise OSError("it was changed by hand")
