"""The words of the pages in other languages: one module a language, its sentences in files by area.

English sentences are the keys. What bends with a number is a mapping of CLDR's plural forms, under the English
sentence for many. A catalogue is written with ordinary spaces; where a language wants one that does not break
a line, it is put in here.
"""

from __future__ import annotations

from collections.abc import Mapping

Catalogue = Mapping[str, str | Mapping[str, str]]


def together(*areas: Catalogue, unbroken: Mapping[str, str]) -> Catalogue:
    """One catalogue of all areas; `unbroken` says what is written instead of what (` %` with a space that holds)."""
    return {english: _held(told, unbroken) for area in areas for english, told in area.items()}


def _held(told: str | Mapping[str, str], unbroken: Mapping[str, str]) -> str | Mapping[str, str]:
    if not isinstance(told, str):
        return {form: _spaced(text, unbroken) for form, text in told.items()}
    return _spaced(told, unbroken)


def _spaced(text: str, unbroken: Mapping[str, str]) -> str:
    for written, instead in unbroken.items():
        text = text.replace(written, instead)
    return text
