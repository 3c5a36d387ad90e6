"""The floor of the speed table: what publishing could not do without, and nothing else (see speed.py)."""

from __future__ import annotations

import pickle
import sys
import time
from pathlib import Path

import markdown

from builder.pages.wording import Words
from builder.publish.templates import Templates

EXTENSIONS = ["tables", "footnotes", "def_list", "fenced_code", "sane_lists", "abbr"]


def main(records: Path, out: Path) -> None:
    """Stories to HTML, records through the templates, files written; prints how long loading took."""
    begun = time.process_time()
    language, currency, stories, pages, texts = pickle.loads(records.read_bytes())
    loading = time.process_time() - begun
    words = Words(language, currency)
    templates = Templates(words.say, words.count)
    for story in stories:
        markdown.Markdown(extensions=EXTENSIONS, output_format="html").convert(story)
    for path, page in pages.items():
        _write(out / path, templates.render(page).encode())
    for path, text in texts.items():
        _write(out / path, text.encode())
    print(loading)


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
