"""The journal's language, and whether its readers measure in metres."""

from __future__ import annotations

import re

from builder.journal.keys import Word
from builder.journal.reading import Reading
from builder.words.numbers import Unreadable

_FEET = frozenset({"US", "LR", "MM"})
_TAG = re.compile(r"[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|\d{3}))?", re.ASCII)


def _language(text: str, _: Reading) -> str:
    if not _TAG.fullmatch(text):
        fixed = text.replace("_", "-")
        raise Unreadable(
            f"{text} is no language tag",
            "a language such as en-US, de-DE or fr",
            f"write {fixed}" if _TAG.fullmatch(fixed) else "",
        )
    return text


LANGUAGE = Word("a language such as en-US, de-DE or fr", _language, {"type": "string"})


def uses_metric(language: str) -> bool:
    """Whether readers of a language measure in metres: all but those of the United States and two others.

    A bare `en` is read as en-US.
    """
    region = next((part for part in language.split("-")[1:] if len(part) == 2), "")
    return not (region in _FEET or language == "en")
