"""Every slip in mistakes/ is told with its whole message: place, what was found, what was expected, what to write."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import pytest

from builder.words.problem import Problem
from tests.journal.samples import DATED, SETTINGS, read

FOLDER = Path(__file__).with_name("mistakes")
PHASES = "phases:\n  - key: ground\n  - key: foundation\n"
SLIP = re.compile(
    r"^## (?P<name>[^\n]+)\n\n```(?P<where>[a-z ]+)\n(?P<text>.*?)```\n\n```told\n(?P<told>.*?)\n```$",
    re.MULTILINE | re.DOTALL,
)
# What a block is read as: the argument of `read`, and what stands before it.
WHERE = {
    "front matter": ("front", DATED),
    "whole front matter": ("front", ""),
    "settings": ("settings", SETTINGS),
    "whole settings": ("settings", ""),
    "plan": ("plan", PHASES),
    "whole plan": ("plan", ""),
    "owned": ("owned", ""),
}


OURS = r"\b(?:YAML|scalar|mapping|string|integer|parse\w*|syntax|invalid|null|None|token|schema|regex|node|dict)\b"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One slip of a file: what was written, where, and what is said of it."""

    where: str
    text: str
    told: str

    def problems(self) -> tuple[Problem, ...]:
        """What is said now."""
        part, before = WHERE[self.where]
        return read(**{part: before + self.text}).problems  # type: ignore[arg-type]


def slips() -> list[tuple[str, Slip]]:
    """Every slip of every file, with its name."""
    return [
        (f"{path.stem}: {found['name']}", Slip(where=found["where"], text=found["text"], told=found["told"]))
        for path in sorted(FOLDER.glob("*.md"))
        if path.name != "README.md"
        for found in SLIP.finditer(path.read_text(encoding="utf-8"))
    ]


SLIPS = slips()


def as_told(problems: tuple[Problem, ...]) -> str:
    """Problems as the files write them."""
    return "\n\n".join(
        "\n".join(
            [
                f"{one.place}: {one.weight.value}: {one.found}",
                *([f"expected {one.expected}"] if one.expected else []),
                *([f"so {one.fix}"] if one.fix else []),
            ]
        )
        for one in problems
    )


@pytest.mark.parametrize("slip", [slip for _, slip in SLIPS], ids=[name for name, _ in SLIPS])
def test_a_slip_is_told_as_written(slip: Slip) -> None:
    """The whole of it, and nothing else."""
    assert as_told(slip.problems()) == slip.told


def test_every_heading_is_a_slip_with_a_name_of_its_own() -> None:
    """A block that is not written right would be passed over."""
    texts = [path.read_text(encoding="utf-8") for path in FOLDER.glob("*.md")]
    assert sum(text.count("\n## ") for text in texts) == len(SLIPS) > 100
    assert [name for name, times in Counter(name for name, _ in SLIPS).items() if times > 1] == []


@pytest.mark.parametrize("slip", [slip for _, slip in SLIPS], ids=[name for name, _ in SLIPS])
def test_a_message_is_short_and_in_plain_words(slip: Slip) -> None:
    """No word of ours: what a builder does not say is not said to them."""
    assert re.findall(OURS, slip.told) == []
    assert all(len(line) < 420 for line in slip.told.split("\n"))


@pytest.mark.parametrize("slip", [slip for _, slip in SLIPS], ids=[name for name, _ in SLIPS])
def test_the_mark_stands_on_what_was_written(slip: Slip) -> None:
    """The place of each message is on a line of the text, and the mark does not run over its end."""
    part, before = WHERE[slip.where]
    lines = ("---\n" * (part == "front") + before + slip.text + "---\n" * (part == "front")).split("\n")
    for problem in slip.problems():
        line = lines[problem.place.line - 1]
        assert 1 <= problem.place.column <= len(line) + 1
        assert problem.place.column - 1 + problem.place.width <= max(len(line), problem.place.column)
