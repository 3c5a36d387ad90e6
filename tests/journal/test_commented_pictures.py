"""Pictures that an author took out of a story with <!-- and -->."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml.html import document_fromstring

from builder.journal.prose import Lines, find_pictures
from builder.journal.records.prose import Picture
from builder.journal.report import Report
from builder.pages.prose import _clean_html

PIECES = st.sampled_from([
    "<!--", "\n\n<!-- ", "-->", "![a](../photos/a.png)", "> ", "- ", "1. ", "# ", "| ", "text ", "\n", "\n\n", "<div>",
    "</div>", '<span title="', '">', "</span>", "`", "    ", "[x]: ", "*", "~~~\n", "[^1]", "[^1]: ", ":   ", "\\",
    "|---|---|\n", "<br>", "&lt;", "--",
])  # fmt: skip


def counted(text: str) -> tuple[Picture, ...]:
    """The pictures that are taken for shown."""
    return find_pictures(text, Lines("a.md", text, 1), Report())


@given(st.lists(PIECES, max_size=12), st.lists(PIECES, max_size=8))
def test_no_picture_that_a_page_shows_is_missed_for_a_comment(before: list[str], after: list[str]) -> None:
    """What stands between <!-- and --> does not count as shown only where it is not shown."""
    text = "".join([*before, "\n\n<!-- ![a](../photos/a.png) -->", *after])
    shown = document_fromstring(f"<main>{_clean_html(text, '../', {})}</main>").xpath("//img")
    assert len(counted(text)) >= len(shown)


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("It rained.\n\n<!-- ![a](../photos/a.png) -->\n\nMore.", 0),
        ("<!--\n![a](../photos/a.png)\n\n![b](../photos/b.png)\n-->\n\n![c](../photos/c.png)", 1),
        ("It rained. <!-- ![a](../photos/a.png) -->", 1),
        ("`<!--`\n\n<!-- ![a](../photos/a.png) -->", 1),
        ("<!-- ![a](../photos/a.png)", 1),
    ],
)
def test_a_picture_in_a_comment_of_its_own_is_not_published(text: str, count: int) -> None:
    """Its author took it out. Where that is not certain, it counts."""
    assert len(counted(text)) == count
