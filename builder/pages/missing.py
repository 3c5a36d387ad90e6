"""404.html: a page that is not there, and the way to those that are."""

from __future__ import annotations

from dataclasses import dataclass

from builder.pages.frame import Frame, Link
from builder.pages.site import Material, frame

MISSING = "404.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class MissingPage:
    """404.html. Hosts show it for any address, so its links hold only where the site stands at its host's top."""

    frame: Frame
    episodes: tuple[Link, ...]


def missing_page(material: Material) -> MissingPage:
    """Lay it out."""
    words = material.words
    newest = material.account.journal.episodes[-5:]
    return MissingPage(
        frame=frame(material, MISSING, words.say("Not here"), words.say("There is no page at this address")),
        episodes=tuple(
            Link(text=episode.title, href=f"episodes/{episode.name}/index.html") for episode in reversed(newest)
        ),
    )
