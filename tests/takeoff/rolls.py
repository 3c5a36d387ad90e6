"""The published cutting stock example that two tests use."""

from __future__ import annotations

# "Cutting stock problem" in a free encyclopedia, as quoted by several forums: paper rolls of 5600 mm.
ROLL = 5600
ROLLS = {
    2200: 20, 2150: 18, 2140: 16, 2100: 14, 2050: 12, 2000: 10, 1930: 20, 1880: 18, 1820: 18, 1710: 14, 1560: 12,
    1520: 25, 1380: 22,
}  # fmt: skip
