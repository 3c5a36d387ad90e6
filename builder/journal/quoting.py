"""Words written so that YAML reads them back as they are."""

from __future__ import annotations

import re

_PLAIN = re.compile(r"[^\W\d_][^\n:#{}\[\]&*!|>'\"%@`,\t]*(?<!\s)", re.UNICODE)
# What word processors make of quotes, in the ways of several languages; the same text may not go on behind them.
_CURLY = re.compile(r"[“”„‟](?P<double>[^“”„‟]+)[“”]|[‘‚](?P<single>[^‘‚]+)[’‘]")
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


def without_curly(text: str) -> str:
    """A text that stands wholly in curly quotes without them; any other as it is.

    >>> without_curly("“All quiet”"), without_curly("“One” and “two”")
    ('All quiet', '“One” and “two”')
    """
    match = _CURLY.fullmatch(text)
    return text if match is None else (match["double"] or match["single"]).strip()
