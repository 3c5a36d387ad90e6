"""What Markdown is extended by is left out where a story has no sign of it, and the page is the same."""

from __future__ import annotations

from unittest import mock

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from builder.pages import prose
from builder.pages.prose import _clean_html

EVERY = tuple((extension, ("",)) for extension, _ in prose._EXTENSIONS)
PIECES = (
    "pegs", "rail", " ", "\n", "\n\n", "    ", "\t", ":", ": ", ":\t", "|", "-", "---", "\n|-|-|\n", "`", "```",
    "\n~~~\n", "[^1]", "[^1]: ", "[^", "*[", "*[pegs]: ", "[", "]", "^", "(", ")", "*", "**", "> ", "1. ", "- ", "# ",
    "\\", "<div>", "</div>", "<dl>", "<!-- ", " -->", "![", "&#58; ", "&lt;",
)  # fmt: skip


@given(st.lists(st.sampled_from(PIECES), max_size=14).map("".join))
@example("Rail\n: what the roof rolls on")
@example("<p>Rail</p>: what the roof rolls on\n: twice")
@example("a | b\n--|--\n1 | 2")
@example("pegs[^1]\n\n[^1]: of oak")
@example("The pegs.\n\n*[pegs]: of oak")
@example("```\npegs\n```")
@example("~~~\npegs\n~~~")
def test_a_story_is_told_as_with_every_extension(text: str) -> None:
    """Whatever stands in it: nothing is missed that would have changed anything."""
    told = _clean_html(text, "../", {})
    with mock.patch.object(prose, "_EXTENSIONS", EVERY):
        assert _clean_html(text, "../", {}) == told


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("Rail\n: what it rolls on", "<dl>\n<dt>Rail</dt>\n<dd>what it rolls on</dd>\n</dl>"),
        ("Rail\n:\twhat it rolls on", "<dl>\n<dt>Rail</dt>\n<dd>what it rolls on</dd>\n</dl>"),
        ("```\na *b*\n```", '<pre tabindex="0"><code>a *b*\n</code></pre>'),
        ("~~~\na *b*\n~~~", '<pre tabindex="0"><code>a *b*\n</code></pre>'),
        ("The HW.\n\n*[HW]: hot water", '<p>The <abbr title="hot water">HW</abbr>.</p>'),
    ],
)
def test_each_is_there_where_a_story_asks_for_it(text: str, html: str) -> None:
    """By the signs that it goes by."""
    assert _clean_html(text, "../", {}) == html


def test_so_are_tables_and_footnotes() -> None:
    """Their HTML is longer than what is asked of it."""
    assert "<table>" in _clean_html("a | b\n--|--\n1 | 2", "../", {})
    assert 'href="#fn:1"' in _clean_html("pegs[^1]\n\n[^1]: of oak", "../", {})


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("<table title='a>b'><tr><td>1</td></tr></table>", '<div class="wide" tabindex="0"><table title="'),
        ("    a line of code", '<pre tabindex="0"><code>'),
    ],
)
def test_what_may_be_wide_scrolls_in_itself(text: str, html: str) -> None:
    """By the keyboard too, in Markdown or in tags of the story's own."""
    told = _clean_html(text, "../", {})
    assert told.startswith(html)
    assert told.count("<div") == told.count("</div>") == told.count("</table>")


def test_words_that_look_like_a_table_stay_words() -> None:
    """In an attribute nothing is wrapped: that would end it."""
    told = _clean_html('<b title="&lt;table&gt;&lt;pre&gt;">bold</b>', "../", {})
    assert "div" not in told
    assert "tabindex" not in told
