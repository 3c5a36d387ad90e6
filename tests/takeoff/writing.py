"""Writing a take-off the short way: Python values stand for what an author writes in plan.yaml."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from builder.journal.records.takeoff_entry import SizedFind, TakeoffEntry
from builder.journal.records.written import Entry, Mapping, Node, Scalar
from builder.journal.records.written import Sequence as Listed
from builder.takeoff.compute import take_off
from builder.takeoff.records import Takeoff
from builder.words.place import Place
from builder.words.problem import Problem

Written = str | Sequence["Written"] | dict[str, "Written"]
FILE = "plan.yaml"


def entry(method: str, inputs: dict[str, Written], name: str = "footing") -> TakeoffEntry:
    """`name: {method: ..., ...}`, its name on line 1, its method on line 2, and a line for every input."""
    entries = tuple(
        Entry(Scalar(_at(line, key), key), node(value, line, key))
        for line, (key, value) in enumerate(inputs.items(), 3)
    )
    return TakeoffEntry(name=name, place=_at(1, name), method=method, method_place=_at(2, "method"), inputs=entries)


def node(value: Written, line: int, key: str) -> Node:
    """The value as it comes from the file. `# text` is an empty value with a comment behind it."""
    if isinstance(value, str):
        comment = value if value.startswith("#") else ""
        return Scalar(_at(line, key), "" if comment else value, comment=comment)
    if isinstance(value, dict):
        inside = tuple(Entry(Scalar(_at(line, each), each), node(one, line, each)) for each, one in value.items())
        return Mapping(_at(line, key), inside)
    return Listed(_at(line, key), tuple(node(one, line, key) for one in value))


def _at(line: int, key: str) -> Place:
    return Place(file=FILE, line=line, key=key)


def worked(method: str, *, metric: bool = False, finds: Sequence[SizedFind] = (), **inputs: Written) -> Takeoff:
    """The take-off of these inputs, which must have no mistake."""
    takeoffs, problems = take_off([entry(method, inputs)], finds, metric=metric)
    assert problems == (), [problem.one_line() for problem in problems]
    return takeoffs[0]


def result(takeoff: Takeoff, key: str, unit: str) -> Fraction:
    """One result as a number of `unit`, exact."""
    quantity = takeoff.get(key)
    assert quantity is not None, f"{key} is not among {[each.key for each in takeoff.results]}"
    return quantity.in_unit(unit)


def number(takeoff: Takeoff, key: str) -> Fraction:
    """One result as a number of the unit it has."""
    quantity = takeoff.get(key)
    assert quantity is not None, f"{key} is not among {[each.key for each in takeoff.results]}"
    return quantity.value


def mistakes(method: str, *, metric: bool = False, **inputs: Written) -> list[Problem]:
    """What is wrong with these inputs; something must be."""
    takeoffs, problems = take_off([entry(method, inputs)], (), metric=metric)
    assert takeoffs == ()
    return list(problems)


def told(method: str, *, metric: bool = False, **inputs: Written) -> list[str]:
    """The same as whole messages of one line."""
    return [problem.one_line() for problem in mistakes(method, metric=metric, **inputs)]
