"""What every reader of a value is handed: where to report, the currency, and the words around it."""

from __future__ import annotations

from dataclasses import dataclass

from builder.journal.quoting import in_quotes, without_curly
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import Report
from builder.words.misread import clipped
from builder.words.money import Currency
from builder.words.place import Place

FALLBACK = Currency("USD", 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """The report of this run, and the journal's currency (USD until journal.yaml has been read).

    `metric` is whether its readers measure in metres, for showing what to write.
    """

    report: Report
    currency: Currency = FALLBACK
    metric: bool = False

    def scalar(self, node: Node, key: str, expected: str) -> Scalar | None:
        """The node as one written value; anything else is reported."""
        if isinstance(node, Scalar):
            if not node.empty:
                return node
            self.report.mistake(node.place, *no_value(node, key, expected))
        elif (meant := meant_by(node)) is not None:
            self.no_keys(node, key, expected, meant)
        else:
            self.report.mistake(node.place, f"{key} is {kind_of(node)}", expected)
        return None

    def no_keys(self, node: Node, key: str, expected: str, meant: str) -> None:
        """Report keys that were meant as the text `meant`."""
        figure = meant.startswith("{=")
        self.report.mistake(
            node.place,
            f"{key}: a value {'begins with {=' if figure else 'holds a colon'}",
            "a figure at the start of a value in quotes" if figure else f"{expected}, in quotes where it holds a colon",
            f"write {in_quotes(without_curly(meant))}",
        )

    def mistake(self, place: Place, found: str, expected: str, fix: str = "") -> None:
        """Report a mistake."""
        self.report.mistake(place, found, expected, fix)


def no_value(node: Scalar, key: str, expected: str) -> tuple[str, str, str]:
    """What is wrong with an empty value: left empty, or lost behind a # that was no comment."""
    if node.comment:
        number = node.comment.removeprefix("#").strip()
        return (
            f"{key} has no value, as # begins a comment",
            expected,
            f"write {in_quotes(clipped(node.comment))} in quotes, or no. {clipped(number)}"
            if number[:1].isdigit()
            else f"write the value before the #, or remove {key}",
        )
    return f"{key} has no value", expected, f"write one, or remove {key}"


def meant_by(node: Node, *, text: bool = False) -> str | None:
    """The text an author meant who did not know that `{` or a colon makes keys; None if keys were meant.

    `text` where nothing but text can stand; elsewhere one word before the colon is a key.
    """
    if not isinstance(node, Mapping) or len(node.entries) != 1:
        return None
    only = node.entries[0]
    if not isinstance(only.value, Scalar):
        return None
    if only.key.text.startswith("=") and only.value.empty:
        return f"{{{only.key.text}}}"
    return f"{only.key.text}: {only.value.text}" if text or " " in only.key.text else None


def kind_of(node: Node) -> str:
    """What a node is, in a word the author knows."""
    if isinstance(node, Sequence):
        return "a list"
    return "a group of keys" if isinstance(node, Mapping) else clipped(node.text) or "empty"
