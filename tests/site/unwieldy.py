"""A journal whose words, amounts, photos and code are wider or taller than a phone."""

from __future__ import annotations

from pathlib import Path

from PIL import Image

COMPOUND = "Streifenfundamentbewehrungskorbherstellungsarbeiten"

SETTINGS = f"""\
title: Die Sternwarte mit {COMPOUND}
summary: Eine Sternwarte im Garten.
language: de-DE
currency: IDR
begun: 2026-03-07
ready_by: 2027-06-30
work_week: {{saturday: 7, sunday: 5}}
floor_area: 3 m x 4 m
service_life: 20 years
"""

PLAN = f"""\
contingency: 10%
phases:
  - key: grund
    name: {COMPOUND}
    hours: [8, 14, 24]
    planned:
      - {{key: beton, material: Beton, quantity: 100 sack, unit_cost: 1250000}}
  - key: dach
    name: Dachdeckungsunterkonstruktion
    after: [grund]
    hours: [8, 14, 24]
    planned: 98500000
"""

WINDOWS = "Nordwandsprossenfenster | 75 cm | 150 cm | Rahmenverbreiterungsprofil | Bleifarbenanstrich | Juni"

EPISODE = f"""\
---
title: {COMPOUND}
from: 2026-03-07
to: 2026-03-08
phase: grund
hours: 9
progress: {{grund: 60%}}
snags: [{COMPOUND} fehlt noch]
receipts:
  markt: {{seller: {COMPOUND}, tax: 2500000}}
items:
  - {{material: Trockenbetonfertigmischung, quantity: 120 sack, unit_cost: 1237500.50, used: 95 sack, against: beton}}
  - {{material: {COMPOUND}, cost: 1148500000, receipt: markt}}
  - {{material: Alte Fenster, source: salvaged, quantity: 3, replacement_cost: 250000000}}
---
Der Turm:

![Ein Turm](../photos/turm.png "Der Turm")

    {" ".join(["lange Zeile"] * 20)}

Fenster | Breite | Höhe | Was fehlt | Farbe | Wann
--------|--------|------|-----------|-------|-----
{WINDOWS}
"""

SECOND = """\
---
title: Noch ein Tag
date: 2026-03-14
phase: dach
progress: {dach: 10%}
items:
  - {material: Lattung, cost: 3148500000}
---
Kurz.
"""


def write(folder: Path) -> None:
    """The journal into a folder of its own."""
    for name in ("episodes", "photos"):
        (folder / name).mkdir(parents=True)
    (folder / "journal.yaml").write_text(SETTINGS, "utf-8")
    (folder / "plan.yaml").write_text(PLAN, "utf-8")
    (folder / "episodes" / "01-eins.md").write_text(EPISODE, "utf-8")
    (folder / "episodes" / "02-zwei.md").write_text(SECOND, "utf-8")
    Image.new("RGB", (300, 2400), "#4f7a50").save(folder / "photos" / "turm.png")
