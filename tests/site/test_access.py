"""Whether everyone can use the pages: axe-core's rules for WCAG 2.2, levels A and AA."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.site.folder import ROOT, kinds, listed, named
from tests.site.window import visited

pytestmark = [pytest.mark.browser, pytest.mark.axe]

LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
EVERYTHING = {"type": "tag", "values": LEVELS}
COLOURS = {"type": "rule", "values": ["color-contrast", "link-in-text-block"]}  # what the dark can change
# Nothing is fetched beforehand: only a rule that is still an experiment wants that.
RUN = "only => axe.run(document, {runOnly: only, resultTypes: ['violations'], preload: false})"


def violations(page: Page, only: Mapping[str, object]) -> Iterator[str]:
    """What axe-core finds on a page: the rule, some elements, and what would put them right."""
    if not page.evaluate("'axe' in window"):
        script = ROOT / os.environ.get("AXE_JS", ".checks/node_modules/axe-core/axe.min.js")
        page.evaluate(script.read_text(encoding="utf-8"))
    found = page.evaluate(RUN, only)
    assert found["passes"], "axe-core looked at nothing"
    for rule in found["violations"]:
        yield f"{rule['id']}: {rule['help']} ({len(rule['nodes'])} places)"
        for node in rule["nodes"][:3]:
            yield f"    {node['html'][:120]}: {' '.join(node['failureSummary'].split())}"


def by_day_and_by_night(page: Page) -> Iterator[str]:
    """What is wrong with a page in light and in dark."""
    for scheme, only in (("light", EVERYTHING), ("dark", COLOURS)):
        page.emulate_media(color_scheme=scheme)
        yield from (f"{scheme}: {violation}" for violation in violations(page, only))


@pytest.mark.parametrize("width", [390, 1280])
def test_no_page_shuts_anybody_out(browser: Browser, demo_site: Path, width: int) -> None:
    """No violation on any kind of page, on a phone and a desk, by day and by night."""
    wrong = [
        f"{named(demo_site, path)}: {violation}"
        for path, page in visited(browser, kinds(demo_site), width, reduced_motion="reduce")
        for violation in by_day_and_by_night(page)
    ]
    assert not wrong, listed(wrong)


def test_the_rules_are_awake(browser: Browser, tmp_path: Path) -> None:
    """They find a picture without words and grey on grey, so that their silence says something."""
    poor = tmp_path / "poor.html"
    poor.write_text(
        '<!doctype html><html lang="en"><title>Poor</title><main><img src="x.png">'
        '<p style="color:#999;background:#aaa">grey on grey</p></main>',
        encoding="utf-8",
    )
    found = {
        violation.partition(":")[0]
        for _, page in visited(browser, [poor])
        for violation in violations(page, EVERYTHING)
    }
    assert {"image-alt", "color-contrast"} <= found
