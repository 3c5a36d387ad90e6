"""From what the author wrote to the values a method works with."""

from __future__ import annotations
