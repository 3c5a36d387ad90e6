"""Small journals, written in a test and read as if they lay in a folder."""

from __future__ import annotations

from pathlib import Path

from builder.journal.files import Files
from builder.journal.read import Read, read_journal
from builder.journal.records.episode import Episode
from builder.journal.records.item import Item
from builder.journal.records.journal import Journal

SETTINGS = "title: A roof that rolls off\nlanguage: en-US\ncurrency: USD\n"
DATED = "title: The footing\ndate: 2026-04-18\n"
EPISODE = "episodes/01-a.md"


def read(
    front: str | None = None,
    *,
    story: str = "",
    settings: str = SETTINGS,
    plan: str | None = None,
    owned: str | None = None,
    pictures: tuple[str, ...] = (),
    more: dict[str, str | bytes] | None = None,
) -> Read:
    """Read a journal of these texts. `front` is the front matter of its one episode; `more` are other files."""
    texts: dict[str, str | bytes | None] = {
        "journal.yaml": settings,
        "plan.yaml": plan,
        "owned.yaml": owned,
        EPISODE: None if front is None else f"---\n{front}---\n{story}",
        **(more or {}),
    }
    raw = {name: text.encode() if isinstance(text, str) else text for name, text in texts.items()}
    return read_journal(
        Files(
            folder=Path(),
            texts=tuple((name, text) for name, text in raw.items() if text is not None),
            pictures=frozenset(pictures),
        )
    )


def told(result: Read) -> list[str]:
    """Every problem as one line, in the order found."""
    return [problem.one_line() for problem in result.problems]


def whole(result: Read) -> Journal:
    """The journal, which must have no problem."""
    assert told(result) == []
    assert result.journal is not None
    return result.journal


def episode(front: str, story: str = "") -> Episode:
    """The one episode of a journal without a problem; `front` follows a title and a date."""
    return whole(read(DATED + front, story=story)).episodes[0]


def item(*lines: str) -> Item:
    """The one line item of an episode: its keys, one a line, or its short form."""
    return episode("items:\n  - " + "\n    ".join(lines) + "\n").items[0]
