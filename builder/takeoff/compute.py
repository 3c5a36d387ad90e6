"""Working out every take-off of the plan."""

from __future__ import annotations

from collections.abc import Sequence

from builder.journal.records.takeoff_entry import SizedFind, TakeoffEntry
from builder.takeoff.measures import METRIC, US
from builder.takeoff.method import Method
from builder.takeoff.reading.inputs import Read, read_inputs
from builder.takeoff.reading.nodes import did_you_mean
from builder.takeoff.records import Takeoff
from builder.takeoff.registry import METHODS, method_named
from builder.takeoff.working import Working
from builder.words.misread import clipped
from builder.words.problem import Problem


def take_off(
    entries: Sequence[TakeoffEntry], finds: Sequence[SizedFind], *, metric: bool
) -> tuple[tuple[Takeoff, ...], tuple[Problem, ...]]:
    """Every take-off that can be worked out, in the order written, and every mistake in the others.

    `finds` are the windows, doors and sheets that `units: salvaged` means; `metric` is the journal's habit, and
    decides the units of the results. No input is lost silently: what is not understood is a mistake.
    """
    takeoffs: list[Takeoff] = []
    problems: list[Problem] = []
    for entry in entries:
        method = method_named(entry.method)
        if method is None:
            problems.append(_unknown_method(entry))
            continue
        read = read_inputs(entry, method.doc, finds, metric=metric)
        wrong = read.problems or _refused(method, read)
        problems.extend(wrong)
        if not wrong:
            takeoffs.append(_worked_out(entry, method, read, metric))
    return tuple(takeoffs), tuple(problems)


def _unknown_method(entry: TakeoffEntry) -> Problem:
    words = sorted(method.doc.word for method in METHODS)
    return Problem(
        place=entry.method_place,
        found=f"{clipped(entry.method)} is no take-off method",
        expected=f"one of {', '.join(words)}",
        fix=did_you_mean(entry.method, words),
    )


def _refused(method: Method, read: Read) -> tuple[Problem, ...]:
    return tuple(
        Problem(place=why.place, found=why.found, expected=why.expected, fix=why.fix)
        for why in method.check(read.values)
    )


def _worked_out(entry: TakeoffEntry, method: Method, read: Read, metric: bool) -> Takeoff:
    working = Working(method.doc, read.values, METRIC if metric else US)
    method.work(working)
    return Takeoff(
        name=entry.name,
        method=method.doc.word,
        title=method.doc.title,
        place=entry.place,
        inputs=read.given,
        coefficients=tuple(working.coefficients),
        steps=tuple(working.steps),
        results=tuple(sorted(working.results, key=lambda each: _rank(method, each.key))),
        cautions=method.doc.cautions,
        suggestions=method.doc.suggestions,
        proven=working.proven,
        bound=working.bound,
        drawing=working.drawing,
    )


def _rank(method: Method, key: str) -> int:
    """Where the method declares the result; `boards_by_length_...` stands for all that begin so."""
    return next(
        at
        for at, output in enumerate(method.doc.outputs)
        if key == output.key or (output.key.endswith("...") and key.startswith(output.key.removesuffix("...")))
    )
