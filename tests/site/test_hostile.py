"""Whatever the author's words hold, a page shows them as words: nothing in them runs, loads, or breaks out.

`hostile.py` holds the strings and puts each into every key that takes text, and into every place of a story. The
site that comes of it is looked at with a reader of tags that takes nothing on trust.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from html import unescape
from pathlib import Path

import pytest
from lxml import etree

from builder import site
from builder.app import show, work_out
from builder.journal.kinds import Anything
from builder.store.store import Store
from tests.journal.samples import DATED, read, told
from tests.site import hostile
from tests.site.atom import A, wrong_with
from tests.site.folder import listed

ALL = " ".join(hostile.MARKUP)  # of settings there is one set, which says all of it
COMMENT_OR_DOCTYPE = re.compile(r"<!doctype html>|<!--(?:(?!--|>).)*-->", re.DOTALL)
ATTRIBUTE = r"\s+([A-Za-z][A-Za-z0-9:-]*)(?:=\"([^\"]*)\")?"
TAG = re.compile(rf"<(?P<end>/?)(?P<name>[A-Za-z][A-Za-z0-9]*)(?P<rest>(?:{ATTRIBUTE})*)\s*/?>")
NEVER = {"iframe", "frame", "object", "embed", "applet", "base", "style", "math", "foreignobject", "animate", "set"}
LOADS = {"src", "srcset", "poster", "data", "action", "formaction", "srcdoc", "background", "ping", "xlink:href"}
SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:")


@dataclass(frozen=True, slots=True)
class Tag:
    """A tag as a browser sees it, its attributes with their entities read, and the text behind it."""

    name: str
    attributes: dict[str, str]
    text: str


class Stray(Exception):
    """A < that begins no tag of ours."""


def tags(page: str) -> Iterator[Tag]:
    """Every tag that begins, in order; Stray where something stands that no template and no cleaning writes."""
    at = 0
    while (begins := page.find("<", at)) >= 0:
        if skipped := COMMENT_OR_DOCTYPE.match(page, begins):
            at = skipped.end()
            continue
        tag = TAG.match(page, begins)
        if tag is None:
            raise Stray(page[begins : begins + 60])
        close = "</script>" if tag["name"] == "script" and not tag["end"] else "<"
        at = page.find(close, tag.end())
        at = len(page) if at < 0 else at
        if not tag["end"]:
            found = re.findall(ATTRIBUTE, tag["rest"])
            attributes = {name.lower(): unescape(value) for name, value in found}
            yield Tag(tag["name"].lower(), attributes, page[tag.end() : at])


def address(value: str) -> str:
    """An address as a browser takes it (WHATWG URL, basic URL parser, steps 1 to 3), in small letters."""
    return re.sub(r"^[\x00-\x20]+|[\x00-\x20]+$|[\t\n\r]", "", value).lower()


Site = dict[str, str]


def published(folder: Path, settings: hostile.Say, says: list[hostile.Say], stories: list[str]) -> Site:
    """The text of every file of the journal's site."""
    worked = work_out(hostile.write(folder, settings, says, stories))
    assert not worked.mistakes, show(worked, "", worked.mistakes[:3])
    files = site.built_site(worked, Store(None))
    texts = {path: content for path, content in files.items() if not path.endswith((".png", ".webp"))}
    return {path: content.decode() for path, content in texts.items() if isinstance(content, bytes)}


@pytest.fixture(scope="module")
def attacked(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """A site whose every word means harm."""
    says = [hostile.saying(text) for text in hostile.ATTACKS]
    stories = [hostile.story(text) for text in hostile.ATTACKS]
    return published(tmp_path_factory.mktemp("hostile") / "journal", hostile.saying(ALL), says, stories)


def pages(of: Site) -> Iterator[tuple[str, list[Tag]]]:
    """Every page with its tags."""
    for path, content in of.items():
        if path.endswith((".html", ".svg")):
            yield path, _tags(content)


@cache
def _tags(page: str) -> list[Tag]:
    return list(tags(page))


def plain(text: str) -> str:
    """Text on one line."""
    return " ".join(text.split())


def every(of: Site, wrong: str, find: object) -> None:
    """No tag of any page is what `find` finds."""
    assert callable(find)
    found = [f"{path}: <{tag.name} {tag.attributes}>" for path, all_tags in pages(of) for tag in all_tags if find(tag)]
    assert not found, wrong + listed(found, 10)


def test_every_structure_has_its_place_in_the_journal() -> None:
    """A key with a reader of its own has to be put into `hostile.py` by hand: this says which."""
    own = {key.name for group in hostile.GROUPS for key in group.keys if isinstance(key.kind, Anything)}
    assert own == hostile.STRUCTURES


def test_what_every_key_says_is_on_a_page(tmp_path: Path) -> None:
    """Or the rest would prove nothing; `hostile.NARROWED` keys have another rule and are looked at below."""
    keys = [(group.name, key.name) for group, key, _ in hostile.every_text_key()]
    names = {key: f"Quartz{number}z" for number, key in enumerate([*keys, ("owned.yaml", "key")])}
    made = published(tmp_path / "journal", *[hostile.by_name(names)], [hostile.by_name(names)], ["A story."])
    shown = "".join(content for path, content in made.items() if path.endswith(".html"))
    missing = [key for key, name in names.items() if name not in shown and key not in hostile.NARROWED]
    assert len(keys) > 20
    assert missing == []


def test_every_attack_is_on_a_page_as_the_words_it_is(attacked: Site) -> None:
    """Not cut, not cleaned, not run: what a browser shows is what was written."""
    texts = {plain(unescape(tag.text)) for _, all_tags in pages(attacked) for tag in all_tags}
    assert [text for text in hostile.ATTACKS if plain(text) not in texts] == []
    assert plain(ALL) in texts


def test_no_script_but_our_own_files(attacked: Site) -> None:
    """And blocks of data, which no browser runs."""
    ours = {"ledger.js", "yours.js"} & attacked.keys()
    assert len(ours) == 2

    def foreign(tag: Tag) -> bool:
        data = tag.attributes.get("type") in ("application/json", "application/ld+json") and len(tag.attributes) <= 2
        return tag.name == "script" and not data and tag.attributes.get("src", "").removeprefix("../") not in ours

    every(attacked, "a script that is not ours", foreign)


def test_data_in_a_page_is_json_and_cannot_end_its_block(attacked: Site) -> None:
    """No < stands in it, so no </script> and no <!-- either."""
    blocks = [tag.text for _, all_tags in pages(attacked) for tag in all_tags if tag.name == "script" and tag.text]
    assert len(blocks) > 1
    assert [block[:80] for block in blocks if "<" in block or not isinstance(json.loads(block), dict)] == []


def test_nothing_runs_on_an_event_or_brings_a_style(attacked: Site) -> None:
    """No handler, no style, and no element that could bring either from elsewhere."""
    every(attacked, "a handler", lambda tag: any(name.startswith("on") for name in tag.attributes))
    every(attacked, "a style", lambda tag: "style" in tag.attributes or tag.name in NEVER)
    policy = "content-security-policy"
    every(attacked, "a meta that acts", lambda tag: tag.attributes.get("http-equiv", policy).lower() != policy)


def test_no_address_runs_and_nothing_is_loaded_from_elsewhere(attacked: Site) -> None:
    """Links lead to pages or to mail; pictures, scripts and styles are files of the site."""

    def elsewhere(value: str) -> bool:
        return SCHEME.match(address(value)) is not None or address(value).startswith(("//", "\\"))

    def bad_link(tag: Tag) -> bool:
        scheme = SCHEME.match(address(tag.attributes.get("href", "")))
        return scheme is not None and scheme[0] not in ("https:", "http:", "mailto:")

    every(attacked, "an address that runs", bad_link)
    every(attacked, "something loaded", lambda tag: any(elsewhere(tag.attributes.get(name, "")) for name in LOADS))
    every(
        attacked,
        "a style sheet or icon",
        lambda tag: tag.name == "link" and tag.attributes["rel"] != "canonical" and elsewhere(tag.attributes["href"]),
    )


def test_no_two_places_of_a_page_share_a_name(attacked: Site) -> None:
    """A story cannot take the id of a part of the page, which a script would look for."""
    for path, all_tags in pages(attacked):
        ids = Counter(tag.attributes["id"] for tag in all_tags if "id" in tag.attributes)
        assert [name for name, times in ids.items() if times > 1] == [], path


def test_every_picture_is_a_photo_of_the_site(attacked: Site) -> None:
    """Also one whose name is an attack, and one that a story shows with a tag of its own."""
    shown = [tag.attributes for _, all_tags in pages(attacked) for tag in all_tags if tag.name == "img"]
    names = {one["src"].removeprefix("../").removeprefix("../") for one in shown if "src" in one}
    assert len(shown) > len(hostile.ATTACKS)
    assert len(names) == 2
    assert {name for name in names if not re.fullmatch(r"photos/[a-z0-9-]+\.webp", name)} == set()


def test_the_feed_and_the_sitemap_are_well_formed(attacked: Site) -> None:
    """By RFC 4287; the titles are the words as they were written."""
    assert wrong_with(attacked["feed.xml"].encode()) == []
    entries = etree.fromstring(attacked["feed.xml"].encode()).findall(f"{A}entry")
    titles = {plain(str(entry.findtext(f"{A}title"))) for entry in entries}
    assert titles == {plain(text) for text in hostile.ATTACKS[-20:]}
    assert len(etree.fromstring(attacked["sitemap.xml"].encode())) == len(list(pages(attacked))) - 2


def test_no_cell_of_the_ledger_is_a_formula(attacked: Site) -> None:
    """What a spreadsheet would run has an apostrophe before it; an amount may begin with its sign."""
    rows = list(csv.reader(io.StringIO(attacked["ledger.csv"]), strict=True))
    cells = {cell for row in rows for cell in row}
    assert {len(row) for row in rows} == {len(rows[0])}
    assert len(rows) > 6 * len(hostile.ATTACKS)
    runs = [cell for cell in cells if re.match(r"\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]", cell)]
    assert [cell for cell in runs if not re.fullmatch(r"-\d+\.\d\d", cell)] == []
    assert {"'" + text for text in ("=1+1", "+1+1", "-1+1", "@SUM(1)", "\uff1d1+1")} <= cells


def test_show_notes_are_plain_lines(attacked: Site) -> None:
    """No text makes a line of its own, so nobody's words look like ours; no sign that acts on its own."""
    notes = [text for path, text in sorted(attacked.items()) if path.startswith("show-notes/")]
    assert [plain(text.split("\n")[0]) for text in notes] == [plain(text) for text in hostile.ATTACKS]
    assert len({len(text.splitlines()) for text in notes[1:]}) == 1
    assert [text for text in notes if re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029]", text)] == []


def test_figures_as_data_hold_the_words(attacked: Site) -> None:
    """JSON escapes them, and reading gives them back."""
    titles = [plain(episode["title"]) for episode in json.loads(attacked["figures.json"])["episodes"]]
    assert titles == [plain(text) for text in hostile.ATTACKS]


@pytest.mark.parametrize("character", ["\\0", "\\x07", "\\e", "\\x7f", "\\uFFFE", "\\uFFFF"])
def test_no_escape_writes_a_character_that_no_feed_may_hold(character: str) -> None:
    """XML 1.0, section 2.2: such a character, even escaped, is no XML."""
    mistakes = told(read(f'{DATED}summary: "We dug.{character}"\n'))
    assert len(mistakes) == 1
    assert mistakes[0].startswith(
        "episodes/01-a.md:4:10: mistake: a backslash in these quotes writes a character that cannot be printed (U+"
    )
    assert mistakes[0].endswith("; write the backslash twice if you mean one, or delete it")


@pytest.mark.parametrize(
    "page",
    [
        "<p>a < b</p>", "<p title=a>", "<p title='a'>", "<p <b>>", '<p title="a">"">b</p><img src=x>', "<!-->",
        "<!-- -- -->", "<![CDATA[x]]>", "<?xml?>", "</p x='1'>", '<p "">',
    ],
)  # fmt: skip
def test_the_reader_of_tags_finds_what_breaks_out(page: str) -> None:
    """Each of these is against what templates and cleaning write, so that its silence says something."""
    with pytest.raises(Stray):
        list(tags(page))


@pytest.mark.parametrize("plan", [None, "phases: [{key: ground}]\n"])
@pytest.mark.parametrize("text", ["<b>roof</b>", "../roof", "=1+1", "roof\\n=x", "a b"])
def test_a_phase_that_is_no_plain_word_never_gets_to_a_page(text: str, plan: str | None) -> None:
    """With a plan or without one, wherever one is named; pages and their folders are called after it."""
    front = f'phase: "{text}"\ndone: ["{text}"]\nitems: [{{material: a, cost: 1, phase: "{text}"}}]\n'
    lines = {line.split(":")[1] for line in told(read(DATED + front, plan=plan)) if ": mistake: " in line}
    assert lines == {"4", "5", "6"}
