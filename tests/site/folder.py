"""A published folder, looked at from outside: its pages, what they link to and what they load."""

from __future__ import annotations

import os
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

import lxml.html
from lxml.etree import _Element

ROOT = Path(__file__).resolve().parents[2]

# Attributes that hold an address. Only `href` on a link waits for the reader; the others load at once.
ADDRESSES = ("href", "src", "srcset", "imagesrcset", "poster", "data", "action", "formaction", "background")
XLINK = "{http://www.w3.org/1999/xlink}href"

# <link> relations that say something and load nothing.
SAYS_ONLY = {"alternate", "author", "canonical", "next", "prev", "license"}

CSS_ADDRESS = re.compile(r"""(?:url\(\s*|@import\s+)["']?([^"')\s;]+)""")


@dataclass(frozen=True, slots=True)
class Reference:
    """An address on a page, and the element it stands on."""

    element: _Element
    address: str

    @property
    def is_link(self) -> bool:
        """Whether it waits for the reader to follow it, or loads nothing at all."""
        if self.element.tag in {"a", "area"}:
            return True
        return self.element.tag == "link" and bool(SAYS_ONLY & set(self.element.get("rel", "").split()))

    @property
    def scheme(self) -> str:
        return urlsplit(self.address).scheme or ("host" if self.address.startswith("//") else "")


@cache
def pages(site: Path) -> tuple[Path, ...]:
    """Every page of the site; there is at least the first."""
    found = tuple(sorted(site.rglob("*.html")))
    assert site / "index.html" in found, f"no index.html among {len(found)} pages"
    return found


@cache
def kinds(site: Path) -> tuple[Path, ...]:
    """One page of each kind: each page of its own, and of a folder of like pages the longest."""
    groups: dict[Path, list[Path]] = {}
    for page in pages(site):
        depth = len(page.relative_to(site).parts)
        groups.setdefault(page if depth <= 2 else page.parent.parent, []).append(page)
    return tuple(max(group, key=lambda page: page.stat().st_size) for group in groups.values())


@cache
def document(page: Path) -> _Element:
    """A page as a tree."""
    return lxml.html.document_fromstring(page.read_bytes(), parser=lxml.html.HTMLParser(encoding="utf-8"))


@cache
def places(page: Path) -> Counter[str]:
    """Everything on a page that a `#` can lead to, and how often that name stands there."""
    return Counter(str(value) for value in document(page).xpath("//@id | //a/@name"))


def references(page: Path) -> Iterator[Reference]:
    """Every address on a page, those of srcset one by one."""
    for element in document(page).iter("*"):
        for name in (*ADDRESSES, XLINK):
            if (value := element.get(name)) is not None:
                yield from (Reference(element, address) for address in _addresses(name, value.strip()))


def _addresses(name: str, value: str) -> list[str]:
    if not name.endswith("srcset"):
        return [value]
    return [part.split()[0] for part in value.split(",") if part.strip()]


@cache
def target(page: Path, address: str) -> tuple[Path, str]:
    """The file and the place in it that a relative address on a page leads to."""
    parts = urlsplit(address)
    path = Path(os.path.normpath(page.parent / unquote(parts.path))) if parts.path else page
    return path, unquote(parts.fragment)


def style_sheets(page: Path) -> list[Path]:
    """The style sheets a page loads."""
    found = document(page).xpath("//link[contains(concat(' ', @rel, ' '), ' stylesheet ')]/@href")
    return [target(page, str(address))[0] for address in found]


def scripts(page: Path) -> list[Path]:
    """The script files a page loads."""
    return [target(page, str(address))[0] for address in document(page).xpath("//script/@src")]


def named(site: Path, page: Path) -> str:
    """A page's path in its site, for messages."""
    return page.relative_to(site).as_posix()


def listed(wrong: list[str], most: int = 40) -> str:
    """What is wrong, one a line, for a failing test to show."""
    more = [f"... and {len(wrong) - most} more"] if len(wrong) > most else []
    return "\n".join(["", *wrong[:most], *more])
