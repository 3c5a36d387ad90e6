"""The pages in a browser, from the disk: what they ask for, and whether everybody can read them."""

from __future__ import annotations

import time
from dataclasses import dataclass
from itertools import cycle
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route

from tests.site.folder import document, kinds, listed, named, pages, scripts
from tests.site.window import resized, visited

pytestmark = pytest.mark.browser

NARROW = 320  # CSS pixels: WCAG 2.2, 1.4.10 Reflow; also a page of 1280 at 400 %
PAPER = 718  # CSS pixels between margins of 10 mm on A4 (190 mm at 96 to the inch)


@dataclass(frozen=True, slots=True)
class Heard:
    """What pages asked for while they were read, what of it failed, and what they said in the console."""

    asked: list[str]
    failed: list[str]
    said: list[str]


@pytest.fixture(scope="module")
def heard(browser: Browser, demo_site: Path) -> Heard:
    """The demo's pages, listened to."""
    return hear(browser, demo_site)


def hear(browser: Browser, site: Path) -> Heard:
    """Every page read from top to bottom and left alone until it is quiet, while the next ones open beside it."""
    heard = Heard([], [], [])
    context = browser.new_context()
    context.on("request", lambda request: heard.asked.append(request.url))
    context.on("requestfailed", lambda request: heard.failed.append(f"{request.url}: {request.failure}"))
    context.on("weberror", lambda error: heard.said.append(f"{error.page and error.page.url}: {error.error}"))
    context.on("console", lambda message: heard.said.append(f"{message.page and message.page.url}: {message.text}"))
    windows = [context.new_page() for _ in range(5)]
    for path, window in zip(pages(site), cycle(windows), strict=False):
        window.wait_for_load_state("networkidle")
        window.goto(path.as_uri())
        window.evaluate("window.scrollTo(0, document.body.scrollHeight)")
    for window in windows:
        window.wait_for_load_state("networkidle")
    context.close()
    return heard


def test_no_page_asks_anybody_for_anything(heard: Heard, demo_site: Path) -> None:
    """Every request is for a file of the folder, photos further down too, and every one is answered."""
    inside = (demo_site.as_uri() + "/", "data:")
    wrong = heard.failed + [url for url in heard.asked if not url.startswith(inside)]
    assert len(heard.asked) >= len(pages(demo_site))
    assert any(url.endswith(".webp") for url in heard.asked)
    assert not wrong, listed(wrong)


def test_no_page_complains(heard: Heard) -> None:
    """No error in the console: no script that fails, nothing that the page's own policy had to stop."""
    assert not heard.said, listed(heard.said)


def test_a_page_that_asks_and_complains_is_heard(browser: Browser, tmp_path: Path) -> None:
    """A picture that is not there, a script that fails and one that is loud: so silence says something."""
    (tmp_path / "index.html").write_text(
        "<!doctype html><title>Loud</title><img src='gone.png' alt=''><script>console.log('hello'); nobody();</script>",
        encoding="utf-8",
    )
    loud = hear(browser, tmp_path)
    assert [url.rpartition("/")[2] for url in loud.asked] == ["index.html", "gone.png"]
    assert len(loud.failed) == 1
    assert any("hello" in said for said in loud.said)
    assert any("nobody is not defined" in said for said in loud.said)


WIDTHS = """() => ({
    page: document.documentElement.scrollWidth,
    beyond: [...document.querySelectorAll('body *')]
        .filter(e => e.getBoundingClientRect().right > innerWidth + 1)
        .map(e => e.outerHTML.slice(0, 80)).slice(0, 3),
})"""


def test_no_page_is_wider_than_the_window(browser: Browser, demo_site: Path) -> None:
    """Nobody scrolls sideways to read, on a small phone or a large screen; a wide table may, in itself."""
    wrong = []
    for path, page in visited(browser, kinds(demo_site)):
        for width in resized(page, NARROW, 390, 768, 1280, 3840):
            measured = page.evaluate(WIDTHS)
            if measured["page"] > width:
                wrong.append(f"{named(demo_site, path)}: {measured['page']} px of {width}: {measured['beyond']}")
    assert not wrong, listed(wrong)


SHIFTS = """() => new Promise(told => {
    const found = [];
    new PerformanceObserver(list => found.push(...list.getEntries())).observe({type: 'layout-shift', buffered: true});
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => told(found.map(shift => ({
        by: shift.value,
        what: shift.sources.map(one => one.node && one.node.nodeName + ' ' + one.node.textContent.slice(0, 40)),
    }))), 50)));
})"""


def test_nothing_jumps_while_a_page_opens(browser: Browser, demo_site: Path) -> None:
    """What a script shows has its room from the start: no layout shift on a phone (W3C Layout Instability)."""
    page = browser.new_page(viewport={"width": 390, "height": 800})
    page.route("**/*.js", a_little_later)
    with_scripts = [path for path in pages(demo_site) if scripts(path)]
    assert len(with_scripts) == 2
    for path in with_scripts:
        page.goto(path.as_uri())
        assert page.evaluate(SHIFTS) == [], named(demo_site, path)
    page.close()


def a_little_later(route: Route) -> None:
    """Let the page be seen before its script comes, as on a slow line."""
    time.sleep(0.3)
    route.continue_()


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
                page.keyboard.down("Tab")  # held down it repeats, which takes half the time
            page.keyboard.up("Tab")
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


def test_every_table_can_be_read_without_scripts(browser: Browser, demo_site: Path) -> None:
    """Scripts only add: without them every row is there, on a phone too, or unfolds."""
    wrong = [
        f"{named(demo_site, path)}: {seen} of {there} rows at {width} px"
        for path, page in visited(browser, pages(demo_site), java_script_enabled=False)
        for width in resized(page, 390, 1280)
        if (seen := rows_on(page)) != (there := rows_in_file(path, folded=False))
    ]
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


BROKEN = """cells => cells.flatMap(cell => {
    const found = [];
    const walk = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) for (const figure of walk.currentNode.data.matchAll(/[\\d.,]*\\d/g)) {
        const range = document.createRange();
        range.setStart(walk.currentNode, figure.index);
        range.setEnd(walk.currentNode, figure.index + figure[0].length);
        if (new Set([...range.getClientRects()].map(box => box.top)).size > 1) found.push(figure[0]);
    }
    return found;
})"""


def test_paper_shows_every_table_in_full(browser: Browser, demo_site: Path) -> None:
    """On paper nothing scrolls and nothing unfolds: every row is there, none runs off the sheet, and no figure is
    broken in two.
    """
    wrong = []
    for path, page in visited(browser, pages(demo_site), PAPER):
        page.emulate_media(media="print")
        if (seen := rows_on(page)) != rows_in_file(path):
            wrong.append(f"{named(demo_site, path)}: {seen} of {rows_in_file(path)} rows")
        cut = page.locator("table").evaluate_all(CUT_OFF)
        wrong += [f"{named(demo_site, path)}: cut off: {table}" for table in cut]
        broken = page.locator("td").evaluate_all(BROKEN)
        wrong += [f"{named(demo_site, path)}: in two: {figure}" for figure in broken]
    assert not wrong, listed(wrong)
