"""The files that programs read: figures.json, ledger.csv, feed, sitemap and show notes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.figures.data import data_text
from builder.figures.table import ledger_csv
from builder.pages.feed import feed, show_notes, sitemap
from builder.pages.layout import page_paths
from builder.pages.site import Material


def data_files(material: Material) -> Iterator[tuple[str, str]]:
    """Path and text of each."""
    yield "figures.json", data_text(material.account)
    yield "ledger.csv", ledger_csv(material.account)
    yield "feed.xml", feed(material)
    for episode in material.account.journal.episodes:
        yield f"show-notes/{episode.name}.txt", show_notes(material, episode)
    if material.account.journal.settings.address:
        yield "sitemap.xml", sitemap(material, page_paths(material))
