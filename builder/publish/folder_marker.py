"""The marker: a small hidden file in a site that says that we made the folder, and what we wrote in it."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

from builder.publish.folder_errors import Refused
from builder.publish.folder_paths import MARKER

_DIGEST = re.compile(r"[0-9a-f]{64}")
_quoted = json.encoder.encode_basestring_ascii


@dataclass(frozen=True, slots=True)
class Marker:
    """The version that wrote the site, and the SHA-256 of every file it wrote, by path."""

    version: str
    files: Mapping[str, str]

    def to_bytes(self) -> bytes:
        """The same files and version give the same bytes: JSON with a line for each file.

        Laid out by hand, as Python's own layout takes five times as long.
        """
        lines = (f"{_quoted(path)}: {_quoted(digest)}" for path, digest in sorted(self.files.items()))
        files = ",\n  ".join(lines)
        inside = f"{{\n  {files}\n }}" if files else "{}"
        said = f'{{\n "made_by": "barrowbook",\n "version": {_quoted(self.version)},\n "files": {inside}\n}}\n'
        return said.encode("ascii")

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
    marker = _marker(raw)
    if marker is None:
        raise _damaged(folder)
    return marker


@lru_cache(maxsize=2)  # a publish reads it before it has the lock and after
def _marker(raw: bytes) -> Marker | None:
    """What a marker's bytes say; None if they are damaged."""
    try:
        said = json.loads(raw)
        version, files = said["version"], said["files"]
        sound = isinstance(version, str) and said["made_by"] == "barrowbook"
        sound = sound and all(_DIGEST.fullmatch(digest) for digest in files.values())
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None
    return Marker(version, MappingProxyType(files)) if sound else None


def _damaged(folder: Path) -> Refused:
    return Refused(
        f"{folder / MARKER}, which says what we wrote there, is damaged",
        "the file as publish wrote it",
        "publish to a new folder, or empty this one yourself",
    )
