"""What every reader of a value is handed: where to report, the currency, and the words around it."""

from __future__ import annotations

from dataclasses import dataclass

from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import Report
from builder.words.money import Currency
from builder.words.place import Place

FALLBACK = Currency("USD", 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """The report of this run, and the journal's currency (USD until journal.yaml has been read)."""

    report: Report
    currency: Currency = FALLBACK

    def scalar(self, node: Node, key: str, expected: str) -> Scalar | None:
        """The node as one written value; anything else is reported."""
        if isinstance(node, Scalar) and (node.text or node.quoted):
            return node
        place = node.place
        if isinstance(node, Scalar):
            self.report.mistake(
                place,
                f"{key} has no value",
                expected,
                'a # starts a comment: write "#4" in quotes, or no. 4, where one is meant; or remove the key',
            )
        elif isinstance(node, Mapping) and node.entries and node.entries[0].key.text.startswith("="):
            self.report.mistake(
                place,
                f"{key}: a value begins with {{=",
                "a figure at the start of a value in quotes",
                f'write {key}: "{{{node.entries[0].key.text}}}"',
            )
        else:
            self.report.mistake(place, f"{key} is {kind_of(node)}", expected)
        return None

    def mistake(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Report a mistake."""
        self.report.mistake(place, found, expected, fix)


def kind_of(node: Node) -> str:
    """What a node is, in a word the author knows."""
    if isinstance(node, Sequence):
        return "a list"
    return "a group of keys" if isinstance(node, Mapping) else f"{node.text or 'empty'}"
