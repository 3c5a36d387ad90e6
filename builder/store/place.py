"""Where the store lies: in the user's cache, or where the user says, or nowhere."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

SWITCH = "BARROWBOOK_CACHE"
NONE = "none"


def cache_folder(environment: Mapping[str, str], home: Path | None) -> Path | None:
    """The folder for what is stored between runs; None for no store.

    `BARROWBOOK_CACHE` names another folder, or is `none`. Else it is `barrowbook` in XDG_CACHE_HOME, which
    must be absolute to count, or in `.cache` of the home folder (XDG Base Directory Specification 0.8).
    """
    said = environment.get(SWITCH, "")
    if said:
        return None if said == NONE else Path(said)
    base = Path(environment.get("XDG_CACHE_HOME", ""))
    if base.is_absolute():
        return base / "barrowbook"
    return home / ".cache" / "barrowbook" if home else None
