"""The site's pages, one after another in one window."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page


def visited(browser: Browser, paths: Iterable[Path], width: int = 1280, **how: Any) -> Iterator[tuple[Path, Page]]:
    """Each page in turn, loaded from the disk, in a window of that many CSS pixels."""
    context = browser.new_context(viewport={"width": width, "height": 800}, **how)
    try:
        page = context.new_page()
        for path in paths:
            page.goto(path.as_uri())
            yield path, page
    finally:
        context.close()


def resized(page: Page, *widths: int) -> Iterator[int]:
    """The same page in windows of these widths in turn: loaded once, laid out for each."""
    for width in widths:
        page.set_viewport_size({"width": width, "height": 800})
        yield width
