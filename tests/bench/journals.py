"""Journals of any length for measuring: 700 words, 20 lines, receipts, stock, a plan with take-off."""

from __future__ import annotations

import datetime
import random
from collections.abc import Iterator
from pathlib import Path

PHASES = ("ground", "foundation", "frame", "roof", "wiring", "finishing")
_WORDS = (
    "the board string level mixer bag stone rain weekend corner wall roof rail wheel trench bar form nail saw "
    "ladder morning tea mistake neighbour slope ground cloud tape pencil square plumb line again slowly then we "
    "measured cut poured laid dug carried lifted bolted painted waited and but because under over beside with"
).split()

_SETTINGS = """title: A roof that rolls off
summary: A backyard observatory, built at weekends.
language: en-US
currency: USD
begun: 2000-01-01
ready_by: 2040-11-15
floor_area: 10 ft x 14 ft
service_life: 20 years
labour_rate: 18
travel_rate: 0.55
work_week: {saturday: 6, sunday: 4}
"""
_OWNED = """equipment:
  saw:
    name: Table saw
    replacement_cost: 9
    basis: day hire divided by eight
stock:
  fabric:
    material: Drainage fabric
    quantity: 3000000 ft
    unit_cost: 0.40
"""


def write_journal(folder: Path, episodes: int, seed: int = 1) -> None:
    """A journal of so many episodes; the same for the same numbers."""
    (folder / "episodes").mkdir(parents=True, exist_ok=True)
    (folder / "journal.yaml").write_text(_SETTINGS, encoding="utf-8")
    (folder / "owned.yaml").write_text(_OWNED, encoding="utf-8")
    (folder / "plan.yaml").write_text(_plan(), encoding="utf-8")
    chance = random.Random(seed)  # the same journal every time, and nothing to guess
    for number in range(1, episodes + 1):
        name = f"{number:05d}-weekend-{number}.md"
        (folder / "episodes" / name).write_text(episode_text(number, episodes, chance), encoding="utf-8")


def _plan() -> str:
    lines = ["contingency: 8%", "phases:"]
    for at, phase in enumerate(PHASES):
        lines += [f"  - key: {phase}", f"    name: {phase.capitalize()}"]
        lines += [f"    after: [{PHASES[at - 1]}]"] if at else []
        lines += [
            "    hours: [800, 1400, 2400]",
            "    planned:",
            f"      - key: mix-{phase}",
            "        material: Concrete mix, 80 lb",
            "        quantity: {takeoff: footing.bags}",
            "        unit_cost: 6.10",
            f"      - key: boards-{phase}",
            "        material: Form boards",
            "        quantity: 800 board",
            "        unit_cost: 11",
            "        uses: 4",
        ]
    lines += [
        "takeoff:",
        "  footing:",
        "    method: strip_footing",
        "    length: 14 ft",
        "    width: 10 ft",
        "    footing_width: 18 in",
        "    thickness: 6 in",
        "    bag: 80 lb",
        "    waste: 5%",
    ]
    return "\n".join(lines) + "\n"


def episode_text(number: int, episodes: int, chance: random.Random) -> str:
    """One episode: front matter with twenty lines, then some 700 words."""
    phase = PHASES[(number - 1) * len(PHASES) // episodes]
    day = datetime.date(2000, 1, 1) + datetime.timedelta(days=7 * (number - 1) * min(1, 1))
    front = [
        "---",
        f"title: Weekend {number}",
        f"date: {day}",
        f"phase: {phase}",
        "hours: 8",
        "people: 2",
        "weather: dry",
        "receipts:",
        "  yard:",
        "    seller: Builders' yard",
        "    tax: 7%",
        "    delivery: 35",
        "    items:",
        "      - material: Concrete mix, 80 lb",
        "        quantity: 20 bag",
        f"        unit_cost: {chance.randrange(500, 700) / 100:.2f}",
        "        used: 18 bag",
        "      - material: Form boards",
        "        quantity: 8 board",
        f"        cost: {chance.randrange(4000, 9000) / 100:.2f}",
        "        uses: 4",
        *(f"      - Nails {at}, {chance.randrange(100, 9000) / 100:.2f}" for at in range(8)),
        "items:",
        "  - material: Concrete mix, 80 lb",
        "    source: stock",
        "    quantity: 1 bag",
        "  - material: Drainage fabric",
        "    source: stock",
        "    quantity: 3 ft",
        "  - equipment: saw",
        "    source: owned",
        "    quantity: 3 hour",
        *(f"  - Small things {at}, {chance.randrange(100, 5000) / 100:.2f}" for at in range(7)),
        "lessons: [Order the stone by weight]",
        "---",
        "",
    ]
    return "\n".join([*front, *_story(chance)]) + "\n"


def _story(chance: random.Random) -> Iterator[str]:
    for part in range(7):
        if part % 3 == 0:
            yield f"## Part {part + 1}\n"
        words = " ".join(chance.choice(_WORDS) for _ in range(100))
        yield f"{words.capitalize()}. So far {{= spent to date =}}.\n"
