"""All inputs of one take-off, by what its method declares."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.journal.records.takeoff_entry import SizedFind, TakeoffEntry
from builder.journal.records.written import Mapping, Node, Scalar
from builder.takeoff.declared import MethodDoc
from builder.takeoff.reading.nodes import ABOUT, NodeReader
from builder.takeoff.records import Given
from builder.takeoff.values import Values
from builder.words.problem import Problem


@dataclass(frozen=True, slots=True)
class Read:
    """The values, how they were written, and what is wrong with them."""

    values: Values
    given: tuple[Given, ...]
    problems: tuple[Problem, ...]


def read_inputs(entry: TakeoffEntry, doc: MethodDoc, finds: Sequence[SizedFind], *, metric: bool) -> Read:
    """The inputs of `entry`, and the defaults of those not given."""
    reader = NodeReader(metric=metric)
    values = reader.row(entry.inputs, doc.inputs, entry.place, entry.name, doc.word)
    given = tuple(Given(each.key.text, _without_about(each.value), _is_judged(each.value)) for each in entry.inputs)
    problems = tuple(_about_waste(problem, doc) for problem in reader.problems)
    return Read(replace(values, finds=tuple(finds)), given, problems)


def _about_waste(problem: Problem, doc: MethodDoc) -> Problem:
    """A method without waste says what stands in its place."""
    refused = problem.found == f"{doc.word} takes no waste"
    return replace(problem, fix=doc.no_waste) if refused else problem


def _without_about(node: Node) -> str:
    return written(node, bare=True)


def written(node: Node, *, bare: bool = False) -> str:
    """The node as one line, close to how it was written; `bare` leaves `about` out."""
    if isinstance(node, Scalar):
        return ABOUT.sub("", node.text, count=1) if bare else node.text
    if isinstance(node, Mapping):
        return ", ".join(f"{each.key.text} {written(each.value, bare=bare)}" for each in node.entries)
    between = "; " if any(isinstance(each, Mapping) for each in node.items) else ", "
    inside = (written(each, bare=bare) for each in node.items)
    return between.join(
        f"[{text}]" if not isinstance(each, Scalar | Mapping) else text
        for text, each in zip(inside, node.items, strict=True)
    )


def _is_judged(node: Node) -> bool:
    if isinstance(node, Scalar):
        return ABOUT.match(node.text) is not None
    inside = [each.value for each in node.entries] if isinstance(node, Mapping) else list(node.items)
    return any(_is_judged(each) for each in inside)
