"""Where the store lies."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.store.place import cache_folder

HOME = Path("/house")


@pytest.mark.parametrize(
    ("environment", "home", "folder"),
    [
        # XDG Base Directory Specification 0.8, "Environment variables"
        ({}, HOME, "/house/.cache/barrowbook"),
        ({"XDG_CACHE_HOME": "/disk/cache"}, HOME, "/disk/cache/barrowbook"),
        ({"XDG_CACHE_HOME": ""}, HOME, "/house/.cache/barrowbook"),
        ({"XDG_CACHE_HOME": "cache"}, HOME, "/house/.cache/barrowbook"),  # "must be absolute", else ignored
        ({}, None, None),
        # our own switch
        ({"BARROWBOOK_CACHE": "/else/where", "XDG_CACHE_HOME": "/disk/cache"}, HOME, "/else/where"),
        ({"BARROWBOOK_CACHE": "here"}, HOME, "here"),
        ({"BARROWBOOK_CACHE": "none", "XDG_CACHE_HOME": "/disk/cache"}, HOME, None),
        ({"BARROWBOOK_CACHE": ""}, HOME, "/house/.cache/barrowbook"),
    ],
)
def test_the_cache_folder(environment: dict[str, str], home: Path | None, folder: str | None) -> None:
    """The user's cache folder by the XDG rules, unless our own switch says another place or none."""
    assert cache_folder(environment, home) == (Path(folder) if folder else None)
