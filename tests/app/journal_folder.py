"""A small valid journal in a folder, for commands to work on."""

from __future__ import annotations

from pathlib import Path

FILES = {
    "journal.yaml": """title: The shed
summary: A shed, built at weekends.
language: en-US
currency: USD
begun: 2026-04-04
ready_by: 2026-09-30
work_week: {saturday: 6, sunday: 4}
labour_rate: 18
floor_area: 10 ft x 14 ft
service_life: 20 years
""",
    "plan.yaml": """contingency: 10%
phases:
  - key: ground
    name: Ground
    hours: [8, 14, 24]
    planned: 220
  - key: foundation
    name: Foundation
    after: [ground]
    hours: [14, 20, 34]
    planned:
      - key: mix
        material: Concrete mix
        quantity: {takeoff: footing.bags}
        unit_cost: 6
      - key: boards
        material: Form boards
        quantity: 8 board
        unit_cost: 10
        uses: 4
takeoff:
  footing:
    method: strip_footing
    length: 14 ft
    width: 10 ft
    footing_width: 18 in
    thickness: 6 in
    bag: 80 lb
    waste: 5%
""",
    "owned.yaml": "equipment:\n  saw: {name: Table saw, replacement_cost: 9}\n",
    "episodes/01-first.md": """---
title: Pegging out
date: 2026-04-05
phase: ground
hours: 7
items:
  - Line and pegs, 18.50
  - material: Crushed stone
    quantity: 1 load
    cost: 260
    share: 55%
snags: [The north corner is soft]
---

A ball of string. It took {= spent =}.
""",
    "episodes/02-second.md": """---
title: The footing
date: 2026-04-19
phase: foundation
hours: 13
done: [ground]
progress: {foundation: 40%}
items:
  - material: Concrete mix
    quantity: 58 bag
    unit_cost: 5.95
    used: 54 bag
  - material: Form boards
    quantity: 8 board
    cost: 80
    uses: 4
  - equipment: saw
    quantity: 3 hour
  - material: Old door
    source: salvaged
    quantity: 1
---

We used {= bags used of mix =} of {= footing.bags =}.
""",
}


def write(folder: Path, **changes: str) -> Path:
    """Write the journal; `changes` replace or add whole files, by a name without its folder and ending."""
    names = {Path(name).stem.replace("-", "_"): name for name in FILES}
    texts = dict(FILES)
    for key, text in changes.items():
        texts[names.get(key, key)] = text
    for name, text in texts.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
    return folder
