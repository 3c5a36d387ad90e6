"""Every figure by name: one set that figures.json, tally, stated figures, prose, notes and pages all read."""

from __future__ import annotations
