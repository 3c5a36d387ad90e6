"""Barrowbook: a folder of Markdown episodes becomes a build journal with a cost ledger."""

from __future__ import annotations

__version__ = "0.1.0"
