"""Laying out: one frozen record a page, ready text in reading order. No files and no templates here."""

from __future__ import annotations
