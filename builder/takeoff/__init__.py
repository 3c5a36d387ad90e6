"""Take-off: from dimensions to what to buy. The steps that compute are the ones that print."""

from __future__ import annotations
