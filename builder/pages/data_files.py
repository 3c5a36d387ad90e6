"""The files that programs read: figures.json, ledger.csv, feed, sitemap and show notes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from builder.figures.data import data_text
from builder.figures.table import ledger_csv
from builder.pages.feed import feed, show_notes, sitemap
from builder.pages.layout import page_paths
from builder.pages.site import Material


def text_makers(material: Material) -> Mapping[str, Callable[[], str]]:
    """What makes the text of each, by where it lies."""
    account = material.account
    makers: dict[str, Callable[[], str]] = {
        "figures.json": partial(data_text, account),
        "ledger.csv": partial(ledger_csv, account),
        "feed.xml": partial(feed, material),
    }
    for episode in account.journal.episodes:
        makers[f"show-notes/{episode.name}.txt"] = partial(show_notes, material, episode)
    if account.journal.settings.address:
        makers["sitemap.xml"] = lambda: sitemap(material, page_paths(material))
    return makers
