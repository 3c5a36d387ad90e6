"""The pages in a browser, from the disk: what they ask for, and whether everybody can read them."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.site.folder import document, kinds, listed, named, pages
from tests.site.window import visited

pytestmark = pytest.mark.browser

NARROW = 320  # CSS pixels: WCAG 2.2, 1.4.10 Reflow; also a page of 1280 at 400 %
PAPER = 718  # CSS pixels between margins of 10 mm on A4 (190 mm at 96 to the inch)


def test_no_page_asks_anybody_for_anything(browser: Browser, demo_site: Path) -> None:
    """Read from top to bottom, every request is for a file of the folder, and every one is answered."""
    asked: list[str] = []
    failed: list[str] = []
    context = browser.new_context()
    context.on("request", lambda request: asked.append(request.url))
    context.on("requestfailed", lambda request: failed.append(f"{request.url}: {request.failure}"))
    page = context.new_page()
    for path in pages(demo_site):
        page.goto(path.as_uri())
        page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
        page.wait_for_load_state("networkidle")
    context.close()
    inside = (demo_site.as_uri() + "/", "data:")
    wrong = failed + [url for url in asked if not url.startswith(inside)]
    assert len(asked) >= len(pages(demo_site))
    assert not wrong, listed(wrong)


def test_no_page_complains(browser: Browser, demo_site: Path) -> None:
    """No error in the console: no script that fails, nothing that the page's own policy had to stop."""
    said: list[str] = []
    context = browser.new_context()
    page = context.new_page()
    page.on("pageerror", lambda error: said.append(f"{page.url}: {error}"))
    page.on("console", lambda message: said.append(f"{page.url}: {message.type}: {message.text}"))
    for path in pages(demo_site):
        page.goto(path.as_uri())
    context.close()
    assert not said, listed(said)


WIDTHS = """() => ({
    page: document.documentElement.scrollWidth,
    beyond: [...document.querySelectorAll('body *')]
        .filter(e => e.getBoundingClientRect().right > innerWidth + 1)
        .map(e => e.outerHTML.slice(0, 80)).slice(0, 3),
})"""


@pytest.mark.parametrize("width", [NARROW, 390, 768, 1280, 3840])
def test_no_page_is_wider_than_the_window(browser: Browser, demo_site: Path, width: int) -> None:
    """Nobody scrolls sideways to read, on a small phone or a large screen; a wide table may, in itself."""
    wrong = []
    for path, page in visited(browser, kinds(demo_site), width):
        measured = page.evaluate(WIDTHS)
        if measured["page"] > width:
            wrong.append(f"{named(demo_site, path)}: {measured['page']} px: {measured['beyond']}")
    assert not wrong, listed(wrong)


# Everything that takes the keyboard. Of a group of radio buttons one does; the arrows reach the others.
WAITING = """() => {
    const able = 'a[href], area[href], button, input, select, textarea, summary, [tabindex], audio[controls]';
    const groups = new Set();
    window.waiting = new Set([...document.querySelectorAll(able)].filter(e => {
        if (e.disabled || e.tabIndex < 0 || e.type === 'hidden') return false;
        if (!e.checkVisibility({visibilityProperty: true})) return false;
        if (e.type !== 'radio') return true;
        const first = !groups.has(e.name) && !document.querySelector(
            `input[type=radio][name="${CSS.escape(e.name)}"]:checked`) || e.checked;
        groups.add(e.name);
        return first;
    }));
    window.unseen = [];
    document.addEventListener('focusin', event => {
        const style = getComputedStyle(event.target);
        if (waiting.delete(event.target) && style.outlineStyle === 'none' && style.boxShadow === 'none')
            unseen.push(event.target.outerHTML.slice(0, 100));
    }, true);
    return waiting.size;
}"""
LEFT = "() => [...waiting].map(e => e.outerHTML.slice(0, 100)).slice(0, 5)"


def test_the_keyboard_reaches_everything_and_shows_where_it_is(browser: Browser, demo_site: Path) -> None:
    """Tab alone gets to every link and control, and each shows its focus (WCAG 2.2, 2.1.1 and 2.4.7)."""
    wrong = []
    for path, page in visited(browser, kinds(demo_site)):
        presses = page.evaluate(WAITING) + 40  # a box that scrolls is a stop of its own
        while presses > 0 and page.evaluate("waiting.size"):
            for _ in range(20):
                page.keyboard.press("Tab")
            presses -= 20
        wrong += [f"{named(demo_site, path)}: not reached: {left}" for left in page.evaluate(LEFT)]
        wrong += [f"{named(demo_site, path)}: no ring: {left}" for left in page.evaluate("unseen")]
    assert not wrong, listed(wrong)


ROWS_SEEN = """rows => rows.filter(e => e.checkVisibility({visibilityProperty: true, opacityProperty: true})
    && e.getBoundingClientRect().height > 0).length"""


def rows_in_file(path: Path, *, folded: bool = True) -> int:
    """Rows of every table's body and foot, as they stand in the file; those folded away only if wanted."""
    rows = document(path).xpath("//tbody/tr | //tfoot/tr")
    return sum(folded or not row.xpath("ancestor::details[not(@open)]") for row in rows)


def rows_on(page: Page) -> int:
    """The rows of those that can be seen."""
    seen: int = page.locator("tbody > tr, tfoot > tr").evaluate_all(ROWS_SEEN)
    return seen


@pytest.mark.parametrize("width", [390, 1280])
def test_every_table_can_be_read_without_scripts(browser: Browser, demo_site: Path, width: int) -> None:
    """Scripts only add: without them every row is there, on a phone too, or unfolds."""
    wrong = []
    for path, page in visited(browser, pages(demo_site), width, java_script_enabled=False):
        seen, there = rows_on(page), rows_in_file(path, folded=False)
        if seen != there:
            wrong.append(f"{named(demo_site, path)}: {seen} of {there} rows")
    assert not wrong, listed(wrong)


def test_the_site_has_tables_to_read(demo_site: Path) -> None:
    """The tests on rows say nothing about a site without any."""
    assert sum(map(rows_in_file, pages(demo_site))) > 50


CUT_OFF = """tables => tables.filter(e => {
    if (e.getBoundingClientRect().right > innerWidth + 1) return true;
    const wider = box => box.scrollWidth > box.clientWidth + 1;
    const cuts = box => getComputedStyle(box).overflowX !== 'visible' && wider(box);
    for (let box = e.parentElement; box; box = box.parentElement) if (cuts(box)) return true;
    return false;
}).map(e => e.caption ? e.caption.innerText : e.innerText.slice(0, 40))"""


def test_paper_shows_every_table_in_full(browser: Browser, demo_site: Path) -> None:
    """On paper nothing scrolls and nothing unfolds: every row is there, and none runs off the sheet."""
    wrong = []
    for path, page in visited(browser, pages(demo_site), PAPER):
        page.emulate_media(media="print")
        if (seen := rows_on(page)) != rows_in_file(path):
            wrong.append(f"{named(demo_site, path)}: {seen} of {rows_in_file(path)} rows")
        cut = page.locator("table").evaluate_all(CUT_OFF)
        wrong += [f"{named(demo_site, path)}: cut off: {table}" for table in cut]
    assert not wrong, listed(wrong)
