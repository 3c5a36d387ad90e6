"""The style sheet as it is served, read by a browser."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from builder.publish.assets import asset

pytestmark = pytest.mark.browser

SHEET = Path(__file__).resolve().parents[2] / "templates" / "site.css"
RULES = """text => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    return [...sheet.cssRules].map(rule => rule.cssText.replace(/\\s+/g, " ").replace(/([:,]) /g, "$1"));
}"""


def test_the_sheet_as_served_says_what_was_written(browser: Browser) -> None:
    """Comments and spaces are left out, and not one rule is another for it."""
    page = browser.new_page()
    written, served = (
        page.evaluate(RULES, text) for text in (SHEET.read_text(encoding="utf-8"), asset("site.css").decode())
    )
    page.close()
    assert len(written) > 150
    assert served == written
