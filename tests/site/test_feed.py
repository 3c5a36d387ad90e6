"""The Atom feed by RFC 4287, and that the rules would find what is against it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from lxml import etree

from tests.pages import said
from tests.site.atom import ATOM, A, wrong_with
from tests.site.folder import document

ADDRESS = "https://build.example"


@pytest.fixture(scope="module")
def feed(demo_site: Path) -> str:
    """The demo's feed."""
    return (demo_site / "feed.xml").read_text(encoding="utf-8")


def test_the_feed_is_valid(feed: str) -> None:
    """By the schema, the author rule, the ids and the links."""
    assert wrong_with(feed.encode()) == []


def test_every_entry_leads_to_its_episode(demo_site: Path, feed: str) -> None:
    """The newest first; each link is a page of the site with that title."""
    entries = etree.fromstring(feed.encode()).findall(f"{A}entry")
    days = [entry.findtext(f"{A}updated") for entry in entries]
    assert len(days) > 5
    assert days == sorted(days, reverse=True)
    for entry in entries:
        link = entry.find(f"{A}link")
        assert link is not None
        title = document(demo_site / str(link.get("href"))).findtext(".//h1")
        assert entry.findtext(f"{A}title") == title


@pytest.mark.parametrize("language", ["de-DE", "he-IL"])
def test_the_feed_of_a_site_with_an_address_is_valid(language: str) -> None:
    """Its links are absolute then, to the pages and to itself; the ids stay what they were without one."""
    at_home = said.published(language).files["feed.xml"]
    moved = ("journal.yaml", "currency:", f"address: {ADDRESS}\ncurrency:")
    away = said.published(language, (moved,)).files["feed.xml"]
    assert wrong_with(at_home) == wrong_with(away) == []
    root = etree.fromstring(away)
    assert all(str(link.get("href")).startswith(f"{ADDRESS}/") for link in root.iter(f"{A}link"))
    ids = [[one.text for one in etree.fromstring(each).iter(f"{A}id")] for each in (at_home, away)]
    assert ids[0] == ids[1]


SPOILT = {
    "no id": (r"<id>.*?</id>\n", ""),
    "two titles": (r"(<title>.*?</title>)", r"\1\1"),
    "no title on an entry": (r"(?<=<entry>\n)<title>.*?</title>", ""),
    "no day of change": (r"<updated>.*?</updated>", ""),
    "a day without a time": (r"<updated>(.{10}).*?</updated>", r"<updated>\1</updated>"),
    "a time without a zone": (r"T00:00:00Z</updated>", "T00:00:00</updated>"),
    "a day that is none": (r"<updated>\d{4}-\d\d-\d\d", "<updated>2026-02-31"),
    "an author without a name": (r"<author>.*?</author>", "<author><uri>about:us</uri></author>"),
    "an author's name as text": (r"<author>.*?</author>", "<author>Somebody</author>"),
    "no author at all": (r"<author>.*?</author>", ""),
    "an address that is none": (r"</author>", "<email>nowhere</email></author>"),
    "two things with one id": (r"<entry>(.|\n)*?</entry>", r"\g<0>\n\g<0>"),
    "an id that is no IRI": (r"<id>urn:uuid:.*?</id>", "<id>number one</id>"),
    "a link without an address": (r'href="index.html"', ""),
    "a link with something in it": (r'(<link rel="alternate".*?)/>', r"\1>here</link>"),
    "a link with an attribute of its own": (r"<link ", '<link target="new" '),
    "two alternate links": (r'<link rel="alternate".*?/>', r"\g<0>\g<0>"),
    "an entry that leads nowhere": (r'(?<=</updated>\n)<link rel="alternate".*?/>\n<summary', "<summary"),
    "text of a kind there is not": (r"<title>", '<title type="markdown">'),
    "markup in plain text": (r"<summary>", "<summary><b>Bold</b>"),
    "an element Atom has not": (r"<entry>", "<entry><pubDate>today</pubDate>"),
    "words between the elements": (r"<entry>", "A word. <entry>"),
    "a language that is none": (r'xml:lang="en-US"', 'xml:lang="en_US"'),
    "another vocabulary": (re.escape(ATOM), "http://example.org/feed"),
    "no XML": (r"</feed>", ""),
}


@pytest.mark.parametrize("what", SPOILT)
def test_a_spoilt_feed_is_not_valid(feed: str, what: str) -> None:
    """Each rule finds what is against it, so that its silence says something."""
    pattern, instead = SPOILT[what]
    spoilt, times = re.subn(pattern, instead, feed, count=1)
    assert times == 1
    assert wrong_with(spoilt.encode())


def test_an_author_for_every_entry_will_do(feed: str) -> None:
    """4.1.1: the feed needs none then."""
    author = "<author><name>Somebody</name></author>"
    each = re.sub(r"<author>.*?</author>", "", feed).replace("<entry>", f"<entry>{author}")
    assert wrong_with(each.encode()) == []
    assert wrong_with(each.replace(author, "", 1).encode())


def test_other_vocabularies_may_stand_in_a_feed(feed: str) -> None:
    """6.4: what a reader does not know it passes over."""
    more = feed.replace("<entry>", '<entry><x:mood xmlns:x="urn:x" x:of="day">fine <x:b/></x:mood>', 1)
    assert wrong_with(more.encode()) == []
