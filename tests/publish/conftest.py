"""What the tests of the site folder share."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.publish import folder_system

MEMORY = Path("/dev/shm")  # where Linux has a disk in memory


@pytest.fixture
def tmp_path() -> Iterator[Path]:
    """A folder of one's own, with nothing beside it, in memory where that can be: these tests publish thousands of
    times.
    """
    with tempfile.TemporaryDirectory(dir=MEMORY if os.access(MEMORY, os.W_OK) else None) as folder:
        here = Path(folder).resolve() / "here"
        here.mkdir()
        yield here


@pytest.fixture
def never_waiting(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing waits for the disk, which only a power cut could tell: most tests are about other things."""
    monkeypatch.setattr(folder_system, "_syncfs", lambda _handle: 0)
    monkeypatch.setattr(os, "fsync", lambda _handle: None)
