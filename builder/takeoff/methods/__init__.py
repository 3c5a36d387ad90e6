"""One file a method; registry.py lists them."""

from __future__ import annotations
