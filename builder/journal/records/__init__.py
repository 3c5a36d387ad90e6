"""What the author wrote, as frozen records. Nouns only: the doing stands in the folder above."""

from __future__ import annotations
