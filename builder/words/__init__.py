"""Values with their own laws: Money, Quantity, Place, Problem. Imports the standard library only."""

from __future__ import annotations
