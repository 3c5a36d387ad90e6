"""The page records of a journal, made ready for the floor of the speed table (see speed.py)."""

from __future__ import annotations

import pickle
import sys
from pathlib import Path

from builder.app import work_out
from builder.pages.data_files import text_makers
from builder.pages.layout import page_makers
from builder.pages.site import Material
from builder.pages.wording import Words


def main(journal: Path, to: Path) -> None:
    """Work the journal out and write its records."""
    account = work_out(journal).account
    assert account is not None
    language, currency = account.journal.settings.language, account.ledger.currency
    material = Material(account=account, words=Words(language, currency), photos={})
    pages = {path: make() for path, make in page_makers(material).items()}
    texts = {path: make() for path, make in text_makers(material).items()}
    stories = [episode.prose.text for episode in account.journal.episodes]
    to.write_bytes(pickle.dumps((language, currency, stories, pages, texts)))


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
