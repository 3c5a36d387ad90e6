"""Reading what the author wrote: text to placed values to records, every mistake with its place."""

from __future__ import annotations
