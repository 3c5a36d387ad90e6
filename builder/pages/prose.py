"""An episode's story to clean HTML.

Figures are taken out before Markdown sees them and put back after the HTML has been cleaned: as a link to
where they come from in running text, as plain text in headings, links and attributes. Pictures become
figures with the width, height and sources of the prepared photo.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from html import escape
from unicodedata import normalize
from urllib.parse import unquote
from xml.etree.ElementTree import Element, SubElement

import markdown
import nh3
from markdown.__meta__ import __version__ as markdown_version
from markdown.extensions import Extension
from markdown.extensions.abbr import AbbrExtension
from markdown.extensions.def_list import DefListExtension
from markdown.extensions.footnotes import FootnoteExtension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension
from markdown.treeprocessors import Treeprocessor

from builder import __version__
from builder.journal.records.prose import Prose

_OPEN, _CLOSE = "\ue000", "\ue001"
_HELD = re.compile(f"{_OPEN}(\\d+){_CLOSE}")
_MAY_BE_WIDE = re.compile("<(?:table|pre)")
# A tag may hold a > in the quotes of an attribute: cleaning leaves it there, or not, depending on its version.
_PIECES = re.compile(r'(<(?:[^<>"]|"[^"]*")*>)')


def _fenced_code() -> Extension:
    from markdown.extensions.fenced_code import FencedCodeExtension  # which loads all that colours programs

    return FencedCodeExtension()


# By themselves: looking extensions up by name means looking through every package that is installed. Each with what a
# story that it changes anything of has in it somewhere: most stories need none, and each takes time of every paragraph.
_EXTENSIONS: tuple[tuple[Callable[[], Extension], tuple[str, ...]], ...] = (
    (TableExtension, ("|",)),
    (FootnoteExtension, ("[^",)),
    (DefListExtension, (": ", ":\t")),
    (_fenced_code, ("```", "~~~")),
    (SaneListExtension, ("",)),
    (AbbrExtension, ("*[",)),
)
_NOT_LINKED = frozenset({"a", "h2", "h3", "h4", "h5", "h6", "figcaption", "code", "summary"})
_TAGS = frozenset(
    "a abbr b blockquote br caption cite code dd del details div dl dt em figcaption figure h2 h3 h4 h5 h6 hr i img "
    "ins kbd li mark ol p pre q s small span strong sub summary sup table tbody td tfoot th thead tr u ul var".split()
)
_ATTRIBUTES = {
    "*": {"id", "lang", "dir", "title"},
    "a": {"href", "class"},
    "img": {"src", "srcset", "sizes", "alt", "width", "height", "loading", "decoding"},
    "ol": {"start", "reversed"},
    "td": {"colspan", "rowspan"},
    "th": {"colspan", "rowspan", "scope"},
    "figure": {"class"},
    "div": {"class"},
    "sup": {"class"},
}


Remember = Callable[[str, Callable[[], bytes]], bytes]


def make_anew(key: str, make: Callable[[], bytes]) -> bytes:
    """What stands in for a store where there is none."""
    del key
    return make()


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A prepared photo as a page shows it: sources by width, smallest first, and its own size in pixels."""

    sources: tuple[tuple[str, int], ...]
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A figure put into the story: its text, and where it comes from."""

    text: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Story:
    """A story as HTML that is safe to place, and its plain beginning for descriptions."""

    html: str
    opening: str


@dataclass(slots=True)
class _Pictures(Treeprocessor):
    photos: Mapping[str, Photo]
    root: str
    md: markdown.Markdown

    def run(self, root: Element) -> None:
        for parent in list(root.iter()):
            for image in [child for child in parent if child.tag == "img"]:
                self._place(image)
            if parent.tag == "p" and len(parent) == 1 and parent[0].tag == "img" and _alone(parent):
                _as_figure(parent)

    def _place(self, image: Element) -> None:
        photo = self.photos.get(_path(image.get("src", "")))
        if photo is None:
            return
        image.set("src", self.root + photo.sources[-1][0])
        if len(photo.sources) > 1:
            image.set("srcset", ", ".join(f"{self.root}{name} {width}w" for name, width in photo.sources))
            image.set("sizes", "(min-width: 48em) 42rem, 92vw")
        image.set("width", str(photo.width))
        image.set("height", str(photo.height))
        image.set("loading", "lazy")
        image.set("decoding", "async")


def _path(written: str) -> str:
    """The path in the journal of a picture as a story writes it."""
    return normalize("NFC", unquote(written)).removeprefix("./").removeprefix("../")


def _alone(parent: Element) -> bool:
    return not (parent.text or "").strip() and not (parent[0].tail or "").strip()


def _as_figure(parent: Element) -> None:
    image = parent[0]
    caption = image.attrib.pop("title", "")
    parent.tag = "figure"
    parent.set("class", "plate")
    image.tail = None
    if caption:
        SubElement(parent, "figcaption").text = caption


class _PictureExtension(Extension):
    def __init__(self, photos: Mapping[str, Photo], root: str) -> None:
        super().__init__()
        self._photos, self._root = photos, root

    def extendMarkdown(self, md: markdown.Markdown) -> None:  # noqa: N802  # the library's own name
        md.treeprocessors.register(_Pictures(self._photos, self._root, md), "pictures", 1)


def tell(
    prose: Prose,
    root: str,
    photos: Mapping[str, Photo],
    say: Callable[[str], Said],
    remember: Remember = make_anew,
) -> Story:
    """A story as HTML. `say` gives the figure of a name; `photos` are by path in the journal.

    `remember` keeps the cleaned HTML between runs: it depends on the text, its photos and where it stands,
    and not on any figure, since those are put in afterwards.
    """
    said = [say(mark.name) for mark in prose.marks]
    text = _held(prose)
    shown = {path: photos[path] for picture in prose.pictures if (path := picture.path) in photos}
    made_by = f"{__version__} {markdown_version} {nh3.__version__}"  # type: ignore[attr-defined]  # not in its stubs
    key = f"clean story {made_by} {root!r} {shown!r} {text}"
    cleaned = remember(key, lambda: _clean_html(text, root, shown).encode()).decode()
    return Story(html="".join(_put_back(cleaned, said)), opening=_opening(cleaned, said))


def _clean_html(text: str, root: str, photos: Mapping[str, Photo]) -> str:
    """Markdown to HTML without scripts, handlers, styles or foreign frames; a fresh instance for every text."""
    needed = (extension() for extension, signs in _EXTENSIONS if any(sign in text for sign in signs))
    md = markdown.Markdown(extensions=[*needed, _PictureExtension(photos, root)], output_format="html")
    cleaned = nh3.clean(
        _lowered(md.convert(text)),
        tags=set(_TAGS),
        attributes=_ATTRIBUTES,
        attribute_filter=_only_ours(root, photos),
        url_schemes={"http", "https", "mailto"},
    )
    return "".join(map(_scrolling, _PIECES.split(cleaned))) if _MAY_BE_WIDE.search(cleaned) else cleaned


def _scrolling(piece: str) -> str:
    """What may be wider than a phone, a table or code, scrolls in itself, with the keyboard as well."""
    if piece == "</table>":
        return "</table></div>"
    if piece.startswith("<table"):
        return f'<div class="wide" tabindex="0">{piece}'
    return piece.replace("<pre", '<pre tabindex="0"', 1) if piece.startswith("<pre") else piece


def _only_ours(root: str, photos: Mapping[str, Photo]) -> Callable[[str, str, str], str | None]:
    """Which attributes stay: names of places on the page are the page's own, but for those of a story's footnotes,
    and pictures are prepared photos, also where a tag of the story's own shows one.
    """
    made = {root + name for photo in photos.values() for name, _ in photo.sources}

    def kept(tag: str, attribute: str, value: str) -> str | None:
        if attribute == "id":
            return value if value.startswith(("fn:", "fnref:", "fnref2:")) else None
        if attribute == "srcset":
            return value if {part.split(" ")[0] for part in value.split(", ")} <= made else None
        if (tag, attribute) != ("img", "src") or value in made:
            return value
        photo = photos.get(_path(value))
        return root + photo.sources[-1][0] if photo else None

    return kept


def _held(prose: Prose) -> str:
    """The prose with a placeholder for each figure, and nothing that could be mistaken for one."""
    pieces, at = [], 0
    for number, mark in enumerate(prose.marks):
        pieces += [_bare(prose.text[at : mark.start]), f"{_OPEN}{number}{_CLOSE}"]
        at = mark.end
    return "".join([*pieces, _bare(prose.text[at:])])


def _bare(text: str) -> str:
    return text.replace(_OPEN, "").replace(_CLOSE, "")


def _lowered(html: str) -> str:
    """Headings one step down where the story begins with a first-level one: the page has its title already."""
    if "<h1" not in html:
        return html
    for level in range(5, 0, -1):
        html = re.sub(rf"<(/?)h{level}\b", rf"<\g<1>h{level + 1}", html)
    return html


def _put_back(html: str, said: list[Said]) -> Iterator[str]:
    inside: list[str] = []
    for piece in _PIECES.split(html):
        if piece.startswith("<"):
            _walk(piece, inside)
            yield _HELD.sub(lambda held: escape(said[int(held[1])].text), piece)
        elif inside:
            yield _HELD.sub(lambda held: escape(said[int(held[1])].text), piece)
        else:
            yield _HELD.sub(lambda held: _linked(said[int(held[1])]), piece)


def _walk(tag: str, inside: list[str]) -> None:
    name = re.match(r"</?([a-z0-9]+)", tag)
    if name is None or name[1] not in _NOT_LINKED:
        return
    if tag.startswith("</"):
        if name[1] in inside:
            inside.remove(name[1])
    else:
        inside.append(name[1])


def _linked(said: Said) -> str:
    return f'<a class="figure" href="{escape(said.href)}">{escape(said.text)}</a>'


def _opening(html: str, said: list[Said], longest: int = 200) -> str:
    """The first paragraph as plain text, cut at a word."""
    first = re.search(r"<p>(.*?)</p>", html, re.DOTALL)
    text = re.sub(r"<[^>]*>", "", first[1]) if first else ""
    text = _HELD.sub(lambda held: said[int(held[1])].text, text)
    plain = " ".join(_unescaped(text).split())
    return plain if len(plain) <= longest else plain[:longest].rsplit(" ", 1)[0] + "…"


def _unescaped(text: str) -> str:
    for entity, character in (("&lt;", "<"), ("&gt;", ">"), ("&quot;", '"'), ("&amp;", "&"), ("&nbsp;", " ")):
        text = text.replace(entity, character)
    return text
