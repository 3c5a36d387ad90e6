"""What every page has: where it lies, how it leads to others, its head and foot."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """Words that lead somewhere. `small` stands beside or before them."""

    text: str
    href: str
    small: str = ""
    here: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A word that explains itself in place."""

    name: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A labelled figure: its name, its value, small words behind it, where it leads."""

    name: str
    value: str
    small: str = ""
    href: str = ""
    money: bool = False
    small_href: str = ""

    @property
    def long(self) -> bool:
        """Whether its value needs the room of two on a phone."""
        return max(map(len, self.value.split(" "))) > 13


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """What a page says of itself to programs: kind of thing, picture, published day, absolute address."""

    kind: str = "website"
    address: str = ""
    picture: str = ""
    published: str = ""
    data: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """What the share picture shows: ready words, and the amounts of its tape in minor units."""

    title: str
    spent: str
    plan: str
    currency: str
    spent_amount: int
    plan_amount: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The frame of one page.

    `path` is its file in the site (`episodes/01-pegs/index.html`), `root` the way back to the top (`../../`).
    """

    path: str
    root: str
    title: str
    build: str
    description: str
    language: str
    direction: str
    nav: tuple[Link, ...]
    downloads: tuple[Link, ...]
    foot: str
    share: Share
    scripts: tuple[str, ...] = ()
