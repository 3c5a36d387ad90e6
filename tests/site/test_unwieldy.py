"""Long words, long amounts, tall photos and wide code stay within the page."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.conftest import barrowbook
from tests.site import unwieldy
from tests.site.folder import listed, named, pages
from tests.site.test_browser import CUT_OFF, PAPER
from tests.site.window import resized, visited

pytestmark = pytest.mark.browser

PHONES = (320, 390)
HEIGHT = 800  # of the windows of `visited`


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The unwieldy journal, published."""
    folder = tmp_path_factory.mktemp("unwieldy")
    unwieldy.write(folder / "journal")
    run = barrowbook("publish", str(folder / "journal"), "--to", str(folder / "site"), cache=folder / "cache")
    assert run.returncode == 0, run.stdout + run.stderr
    return folder / "site"


BEYOND = """() => document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll('body *')]
    .filter(e => e.getBoundingClientRect().right > innerWidth + 1).map(e => e.outerHTML.slice(0, 80)).slice(0, 3)
    .concat(document.documentElement.scrollWidth)"""


def test_no_word_or_amount_widens_a_page(browser: Browser, site: Path) -> None:
    """Nobody scrolls sideways, whatever stands in titles, names, tables, choices and stories."""
    wrong = [
        f"{named(site, path)} at {width}: {beyond}"
        for path, page in visited(browser, pages(site))
        for width in resized(page, *PHONES, 1280)
        if (beyond := page.evaluate(BEYOND))
    ]
    assert not wrong, listed(wrong)


# Words of two cells, facts or names that stand on the same spot.
OVER_EACH_OTHER = """() => [...document.querySelectorAll('tr, .facts, .phases li, .log li, .running, .masthead')]
    .flatMap(row => {
        const boxes = [...row.querySelectorAll('td, th, dt, dd, h3, p, a, figcaption, .money')].map(e => {
            const range = document.createRange();
            range.selectNodeContents(e);
            return [e, [...range.getClientRects()].filter(box => box.width > 1 && box.height > 1)];
        });
        const touch = (one, two) => Math.min(one.right, two.right) - Math.max(one.left, two.left) > 2
            && Math.min(one.bottom, two.bottom) - Math.max(one.top, two.top) > 5;
        return boxes.flatMap(([one, ones], at) => boxes.slice(at + 1)
            .filter(([two, twos]) => !one.contains(two) && ones.some(box => twos.some(other => touch(box, other))))
            .map(([two]) => `${one.textContent.trim()} / ${two.textContent.trim()}`));
    })"""


def test_nothing_is_printed_over_anything_else(browser: Browser, site: Path) -> None:
    """Neither amounts over amounts nor names over dates."""
    wrong = [
        f"{named(site, path)} at {width}: {over}"
        for path, page in visited(browser, pages(site))
        for width in resized(page, *PHONES, 1280)
        for over in page.evaluate(OVER_EACH_OTHER)
    ]
    assert not wrong, listed(wrong)


SCROLLS = """() => [...document.querySelectorAll('body *')].filter(e => e.scrollWidth > e.clientWidth + 1
    && e.checkVisibility() && ['auto', 'scroll'].includes(getComputedStyle(e).overflowX))
    .map(e => [e.localName, e.tabIndex])"""


def test_what_scrolls_in_itself_takes_the_keyboard(browser: Browser, site: Path) -> None:
    """A story's code and wide tables do on a phone, each a stop of its own; the page's own tables need not."""
    told = site / "episodes" / "01-eins" / "index.html"
    scrolling = {path: page.evaluate(SCROLLS) for path, page in visited(browser, pages(site), 320)}
    assert scrolling.pop(told) == [["pre", 0], ["div", 0]]
    by_itself = {named(site, path): found for path, found in scrolling.items() if found}
    assert by_itself == {"sources/index.html": [["pre", 0]]} or not by_itself


PICTURES = """() => [...document.querySelectorAll('main img')].map(e => [e.getBoundingClientRect().height,
    getComputedStyle(e).objectFit])"""


def test_no_photo_is_higher_than_the_screen(browser: Browser, site: Path) -> None:
    """A photo eight times as high as wide keeps its proportions in a story, and is cut to a thumbnail at home."""
    for width in (*PHONES, 1280):
        (_, home), (_, told) = (
            (path, page.evaluate(PICTURES))
            for path, page in visited(
                browser, [site / "index.html", site / "episodes" / "01-eins" / "index.html"], width
            )
        )
        assert [fit for _, fit in told] == ["contain"]
        assert all(0 < height <= HEIGHT for height, _ in told)
        assert all(0 < height <= HEIGHT / 4 for height, _ in home)


def test_nothing_runs_off_the_paper(browser: Browser, site: Path) -> None:
    """On paper nothing can be scrolled; code and names break there, amounts are set small, and photos share a sheet."""
    wrong = []
    for path, page in visited(browser, pages(site), PAPER):
        page.emulate_media(media="print")
        wrong += [f"{named(site, path)}: {cut}" for cut in page.locator("table, pre").evaluate_all(CUT_OFF)]
        heights = [height for height, _ in page.evaluate(PICTURES)]
        wrong += [f"{named(site, path)}: a photo {height} px high" for height in heights if height > PAPER]
    assert not wrong, listed(wrong)
