"""How long from a save to the repaint: a browser on the preview of a journal of so many episodes.

    python -m tests.bench.preview 100

Saves a word in the story and a price in the first episode in turn, with an episode's page open, and prints
how many milliseconds passed until the page was painted with the change.
"""

from __future__ import annotations

import re
import statistics
import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from tests.bench.journals import write_journal
from tests.conftest import CHROMIUM_OPTIONS
from tests.site.test_preview import start

SAVES = 20  # of each kind
# Waits in the page until its text is another, and then for the frame that shows it.
_WATCH = """() => {
  const text = () => document.querySelector("main").textContent;
  const old = text();
  window.painted = 0;
  const look = () => requestAnimationFrame(() => {
    if (text() === old) look();
    else requestAnimationFrame(() => { window.painted = Date.now(); });
  });
  look();
}"""


def main(episodes: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        journal = Path(scratch) / "journal"
        write_journal(journal, episodes)
        preview = start(journal, Path(scratch) / "cache")
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=CHROMIUM_OPTIONS)
        try:
            page = browser.new_page()
            page.goto(f"http://127.0.0.1:{preview.port}/episodes/{episodes:02d}-weekend-{episodes}/")
            for what, file, pattern in (
                ("a word in the story", f"{episodes:05d}-weekend-{episodes}.md", r"## Part \d+"),
                ("a price in the first episode", "00001-weekend-1.md", r"unit_cost: [\d.]+"),
            ):
                times = [_saved(page, journal / "episodes" / file, pattern, turn) for turn in range(SAVES)]
                half, most = statistics.median(times), sorted(times)[int(len(times) * 0.95) - 1]
                sys.stdout.write(f"{what}: median {half:.0f} ms, 95 % within {most:.0f} ms\n")
        finally:
            browser.close()
            preview.process.kill()
            preview.process.communicate()


def _saved(page: Page, file: Path, pattern: str, turn: int) -> float:
    """Milliseconds from one save to the repaint."""
    word = {"#": f"## Part {100 + turn}", "u": f"unit_cost: {6 + turn / 100:.2f}"}[pattern[0]]
    text = re.sub(pattern, word, file.read_text(encoding="utf-8"), count=1)
    page.evaluate(_WATCH)
    saved = time.time() * 1000
    file.write_text(text, encoding="utf-8")
    page.wait_for_function("() => window.painted")
    return float(page.evaluate("window.painted")) - saved


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
