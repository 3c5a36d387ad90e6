"""The marker: a small hidden file in a site that says that we made the folder, and what we wrote in it."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from builder.publish.folder_errors import Refused
from builder.publish.folder_paths import MARKER

_DIGEST = re.compile(r"[0-9a-f]{64}")


@dataclass(frozen=True, slots=True)
class Marker:
    """The version that wrote the site, and the SHA-256 of every file it wrote, by path."""

    version: str
    files: Mapping[str, str]

    def to_bytes(self) -> bytes:
        """The same files and version give the same bytes."""
        said = {"made_by": "barrowbook", "version": self.version, "files": dict(sorted(self.files.items()))}
        return (json.dumps(said, indent=1) + "\n").encode("ascii")

    @property
    def digest(self) -> str:
        """SHA-256 of its bytes: of the version, and of every path and all that is in its file."""
        return hashlib.sha256(self.to_bytes()).hexdigest()


def read_marker(folder: Path) -> Marker | None:
    """What we wrote in a folder; None if we did not make it. Refused if the marker is damaged."""
    try:
        raw = (folder / MARKER).read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except IsADirectoryError:
        raise _damaged(folder) from None
    try:
        said = json.loads(raw)
        version, files = said["version"], said["files"]
        sound = isinstance(version, str) and said["made_by"] == "barrowbook"
        sound = sound and all(_DIGEST.fullmatch(digest) for digest in files.values())
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise _damaged(folder) from None
    if not sound:
        raise _damaged(folder)
    return Marker(version, files)


def _damaged(folder: Path) -> Refused:
    return Refused(
        f"{folder / MARKER}, which says what we wrote there, is damaged",
        "the file as publish wrote it",
        "publish to a new folder, or empty this one yourself",
    )
