"""Cutting pieces from boards, exactly: the fewest or cheapest boards, or the most glass in a wall."""

from __future__ import annotations
