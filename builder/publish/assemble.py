"""Every file of the site as bytes, by its path in the site, made when it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache, partial
from threading import RLock
from typing import Protocol

from builder.pages.frame import Frame
from builder.pages.wording import Words
from builder.publish.assets import asset
from builder.publish.hands import Make
from builder.publish.templates import Kept, Templates

ASSETS = ("site.css", "icon.svg", "ledger.js", "yours.js")


class Page(Protocol):
    """A page record: whatever it holds, it has a frame."""

    @property
    def frame(self) -> Frame: ...


def file_makers(
    pages: Mapping[str, Callable[[], Page]], texts: Mapping[str, Callable[[], str]], words: Words, kept: Kept
) -> dict[str, Make]:
    """Pages through their templates, then texts that are ready, then what is published as it is."""
    templates = _templates(words, kept)
    return {
        **{path: partial(_rendered, templates, page) for path, page in pages.items()},
        **{path: partial(_encoded, text) for path, text in texts.items()},
        **{name: partial(asset, name) for name in ASSETS},
    }


@lru_cache(maxsize=2)
def _templates(words: Words, kept: Kept) -> Templates:
    """The templates of a language, read once in a process."""
    return Templates(words.say, words.count, kept)


def _rendered(templates: Templates, page: Callable[[], Page]) -> bytes:
    return templates.render(page()).encode()


def _encoded(text: Callable[[], str]) -> bytes:
    return text().encode()


class OnDemand(Mapping[str, bytes]):
    """Files that are made when somebody first asks for them, one at a time, and kept."""

    def __init__(self, makers: Mapping[str, Make]) -> None:
        self._makers = makers
        self._made: dict[str, bytes] = {}
        self._lock = RLock()

    def __getitem__(self, path: str) -> bytes:
        with self._lock:
            if path not in self._made:
                self._made[path] = self._makers[path]()
            return self._made[path]

    def __contains__(self, path: object) -> bool:
        return path in self._makers

    def __iter__(self) -> Iterator[str]:
        return iter(self._makers)

    def __len__(self) -> int:
        return len(self._makers)
