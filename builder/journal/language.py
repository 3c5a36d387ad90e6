"""The journal's language, and whether its readers measure in metres."""

from __future__ import annotations

import re

from builder.journal.keys import Word
from builder.journal.reading import Reading
from builder.words.misread import clipped
from builder.words.numbers import Unreadable

WORDED = ("de", "en", "es", "fr")
"""The languages that pages have words in; in others only dates, numbers and money follow the language."""

_FEET = frozenset({"US", "LR", "MM"})
_TAG = re.compile(r"[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|\d{3}))?", re.ASCII)


def _language(text: str, _: Reading) -> str:
    if not _TAG.fullmatch(text):
        fixed = _tidied(text)
        raise Unreadable(
            f"{clipped(text)} is no language tag",
            "a language such as en-US, de-DE or fr",
            f"write {fixed}" if _TAG.fullmatch(fixed) else "",
        )
    return text


def _tidied(text: str) -> str:
    """`en_us.UTF-8` as `en-US`; `english` as `en`."""
    first, *others = re.split("[-_]", text.partition(".")[0])
    named = _NAMED.get(text.lower())
    cased = (part.upper() if len(part) == 2 else part.capitalize() for part in others)
    return named or "-".join((first.lower(), *cased))


_NAMED = {
    "english": "en",
    "american": "en-US",
    "british": "en-GB",
    "german": "de",
    "deutsch": "de",
    "french": "fr",
}
LANGUAGE = Word("a language such as en-US, de-DE or fr", _language, {"type": "string"})


def uses_metric(language: str) -> bool:
    """Whether readers of a language measure in metres: all but those of the United States and two others.

    A bare `en` is read as en-US.
    """
    region = next((part for part in language.split("-")[1:] if len(part) == 2), "")
    return not (region in _FEET or language == "en")
