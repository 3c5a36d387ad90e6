"""A story as its author wrote it, with the figures it names and the pictures it shows."""

from __future__ import annotations

from dataclasses import dataclass

from builder.words.place import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """`{= name =}` in the story: what it names, where, and which characters of the story it takes."""

    name: str
    place: Place
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture that the story or the front matter shows. `path` is inside the journal (`photos/a.png`)."""

    path: str
    place: Place
    alt: str
    written: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """The story: Markdown, with its marks and its pictures in their order."""

    text: str = ""
    marks: tuple[Mark, ...] = ()
    pictures: tuple[Picture, ...] = ()


def folder_name(number: int, slug: str) -> str:
    """The name of an episode's folder on the site: number and slug."""
    return f"{number:02d}-{slug}"
