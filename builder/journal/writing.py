"""Writing a file of the journal whole or not at all, and never over somebody else's words."""

from __future__ import annotations

import os
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path


@dataclass(eq=False)  # each raising is its own; with eq it would have no hash, which tracebacks want
class NotDone(Exception):
    """A command that could not do what it was asked; nothing was written."""

    found: str
    fix: str = ""

    def __str__(self) -> str:
        return f"{self.found}{'; ' if self.fix else ''}{self.fix}"


def write_new(path: Path, text: str) -> None:
    """Write a file that is not there yet; NotDone if it is. A killed run leaves it whole or not there."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside = _beside(path)
        try:
            _write(beside, text.encode())
            if os.path.lexists(path):
                raise FileExistsError
            beside.rename(path)
        finally:
            tidy(path)
    except FileExistsError:
        raise NotDone(f"{path} is there already", "nothing was written over it") from None
    except OSError as error:
        raise NotDone(f"{path} cannot be written ({error.strerror})", "check the folder") from None


def write_over(path: Path, text: bytes, expected: bytes) -> None:
    """Put new text in a file's place in one step; NotDone if somebody changed it meanwhile."""
    if path.read_bytes() != expected:
        raise NotDone(f"{path} was changed meanwhile", "save it in the editor, then try again")
    beside = _beside(path)
    try:
        _write(beside, text)
        beside.chmod(path.stat().st_mode)
        beside.replace(path)
    except OSError as error:
        raise NotDone(f"{path} could not be written ({error.strerror})", "the file is as it was") from None
    finally:
        tidy(path)


def tidy(path: Path) -> None:
    """Put away what a killed run may have left beside a file."""
    with suppress(OSError):
        _beside(path).unlink(missing_ok=True)


def _beside(path: Path) -> Path:
    """Where a file is made before it takes its place: always the same, so that a killed run leaves at most this."""
    return path.with_name(f".{sha256(path.name.encode('utf-8', 'surrogateescape')).hexdigest()[:16]}.new")


def _write(path: Path, text: bytes) -> None:
    with path.open("wb") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
