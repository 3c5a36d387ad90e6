"""How a problem is shown to a person: the place, the line with a mark under it, what to do."""

from __future__ import annotations

from collections.abc import Sequence

from builder.words.problem import Problem

_WIDEST = 100


def shown(problem: Problem, folder: str, lines: Sequence[str]) -> str:
    """A problem in full. `folder` goes before the path of the file; `lines` are its lines, [] if unknown."""
    place = problem.place
    prefix = f"{folder}/" if folder else ""
    text = [f"{prefix}{place.file}:{place.line}:{place.column}: {problem.weight.value}: {problem.found}"]
    text += _marked(problem, lines)
    text += [f"    expected: {problem.expected}"] if problem.expected else []
    text += [f"    so: {problem.fix}"] if problem.fix else []
    return "\n".join(text)


def _marked(problem: Problem, lines: Sequence[str]) -> list[str]:
    place = problem.place
    if not 1 <= place.line <= len(lines) or not lines[place.line - 1].strip():
        return []
    line, column = lines[place.line - 1].replace("\t", " "), place.column
    if len(line) > _WIDEST:
        start = max(min(column - 1 - _WIDEST // 3, len(line) - _WIDEST), 0)
        line, column = line[start : start + _WIDEST], column - start
    number = f"{place.line:6} | "
    width = max(min(place.width, len(line) - column + 1), 1)
    return [f"{number}{line}", " " * (len(number) + column - 1) + "^" * width]
