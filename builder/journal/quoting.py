"""Words written so that YAML reads them back as they are."""

from __future__ import annotations

import re

_PLAIN = re.compile(r"[^\W\d_][^\n:#{}\[\]&*!|>'\"%@`,\t]*(?<!\s)", re.UNICODE)
_RESERVED = frozenset({"yes", "no", "true", "false", "null", "on", "off", "~"})


def quoted(text: str) -> str:
    """The text as it stands where that is safe, else in double quotes."""
    plain = " ".join(text.split())
    if _PLAIN.fullmatch(plain) and plain.lower() not in _RESERVED:
        return plain
    return '"' + plain.replace("\\", "\\\\").replace('"', '\\"') + '"'


def in_quotes(text: str) -> str:
    """The text in quotes, the kind that needs least escaping: for showing what to write."""
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"
