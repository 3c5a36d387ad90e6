"""Every file of the site as bytes, by its path in the site."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Protocol

from builder.pages.frame import Frame
from builder.pages.wording import Words
from builder.publish.templates import Templates, asset

ASSETS = ("site.css", "icon.svg", "ledger.js", "yours.js")


class Page(Protocol):
    """A page record: whatever it holds, it has a frame."""

    @property
    def frame(self) -> Frame: ...


def site_files(pages: Iterable[Page], texts: Iterable[tuple[str, str]], words: Words) -> Iterator[tuple[str, bytes]]:
    """Pages through their templates, then texts that are ready, then what is published as it is."""
    templates = Templates(words.say, words.count)
    for page in pages:
        yield page.frame.path, templates.render(page).encode()
    yield from ((path, text.encode()) for path, text in texts)
    yield from ((name, asset(name)) for name in ASSETS)
