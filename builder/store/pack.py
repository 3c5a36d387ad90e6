"""A pack: one file that holds many pieces of bytes, written once and never changed.

    magic       16 bytes
    index's     length (8 bytes) and SHA-256 (32 bytes)
    index       for each piece: SHA-256 of its key, SHA-256 of its bytes, where it begins, how long it is
    bytes       one piece after the other; they begin where the index ends

A pack gets its name only when it is whole, so whoever finds one may read it while others write theirs.
Nothing in it is believed: the index and every piece are held against their digests.
"""

from __future__ import annotations

import hashlib
import os
import re
import struct
import sys
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from threading import get_ident
from typing import NamedTuple

SUFFIX, HALF = ".bbpack", ".bbhalf"
ABANDONED_NS = 3600 * 10**9  # a half-written pack so much older than a new one is nobody's any more

# Others may keep files in the folder that the user names, so only names such as we give count.
_PACK = re.compile(rf"[0-9a-f]{{32}}{re.escape(SUFFIX)}")
_HALF = re.compile(rf"[0-9a-f]{{32}}\.\d+-\d+{re.escape(HALF)}")

_MAGIC = b"barrowbook pk 1\n"
_HEAD = struct.Struct(">16sQ32s")
_ENTRY = struct.Struct(">32s32sQQ")
ENTRY_SIZE = _ENTRY.size  # bytes that a piece takes besides its own
_LARGEST_INDEX = 64 << 20  # more than any limit leaves room for; a damaged length is not worth the memory

# Reading opens a pack as bytes on every system.
_READ = os.O_RDONLY | getattr(os, "O_BINARY", 0)


class Piece(NamedTuple):
    """Where a piece lies in its pack, in bytes from its begin, and its SHA-256. A tuple, as there are thousands."""

    digest: bytes
    begin: int
    length: int


class Pack:
    """An open pack. It stays readable if its file is deleted meanwhile, where the system has that."""

    def __init__(self, path: Path) -> None:
        """OSError if the file cannot be read, ValueError if it is no pack or its index is damaged."""
        self.path = path
        self._handle = os.open(path, _READ)
        try:
            facts = os.fstat(self._handle)
            self.size, self.used_ns = facts.st_size, facts.st_mtime_ns
            self.pieces = self._index()
        except BaseException:
            self.close()
            raise

    def _index(self) -> Mapping[bytes, Piece]:
        head = _read_at(self._handle, 0, _HEAD.size)
        magic, length, digest = _HEAD.unpack(head) if len(head) == _HEAD.size else (b"", 0, b"")
        if magic != _MAGIC or length > min(self.size, _LARGEST_INDEX) or length % _ENTRY.size:
            raise ValueError("this is no pack")
        raw = _read_at(self._handle, _HEAD.size, length)
        if hashlib.sha256(raw).digest() != digest:
            raise ValueError("the index is damaged")
        start = _HEAD.size + length
        return {key: Piece(told, start + at, size) for key, told, at, size in _ENTRY.iter_unpack(raw)}

    def read(self, key: bytes) -> bytes | None:
        """The bytes of a key that is in the index; None if they are damaged, or not there."""
        piece = self.pieces[key]
        if piece.begin + piece.length > self.size:
            return None
        with suppress(OSError):
            data = _read_at(self._handle, piece.begin, piece.length)
            if hashlib.sha256(data).digest() == piece.digest:
                return data
        return None

    def close(self) -> None:
        """Let go of the file."""
        os.close(self._handle)


def _read_at(handle: int, begin: int, length: int) -> bytes:
    """So many bytes from there, or as many as there are. Without moving, so that two may read at once."""
    if sys.platform == "win32":
        os.lseek(handle, begin, os.SEEK_SET)
        return os.read(handle, length)
    return os.pread(handle, length, begin)


@dataclass(frozen=True, slots=True)
class Stored:
    """A piece in a pack that is open, to be copied into another one without holding all of them at once."""

    pack: Pack
    key: bytes

    @property
    def digest(self) -> bytes:
        """SHA-256 of the bytes, as the pack says."""
        return self.pack.pieces[self.key].digest

    def __len__(self) -> int:
        return self.pack.pieces[self.key].length


def write_pack(folder: Path, pieces: Mapping[bytes, bytes | Stored]) -> Path:
    """Write a pack of these bytes by key. The same pieces get the same file. OSError leaves nothing behind."""
    entries, at = [], 0
    for key, piece in pieces.items():
        digest = piece.digest if isinstance(piece, Stored) else hashlib.sha256(piece).digest()
        entries.append(_ENTRY.pack(key, digest, at, len(piece)))
        at += len(piece)
    index = b"".join(entries)
    digest = hashlib.sha256(index).digest()
    path = folder / f"{digest.hex()[:32]}{SUFFIX}"
    half = path.with_suffix(f".{os.getpid()}-{get_ident()}{HALF}")
    try:
        with half.open("wb") as file:
            file.write(_HEAD.pack(_MAGIC, len(index), digest))
            file.write(index)
            file.writelines(map(_bytes, pieces.values()))
        half.replace(path)
    except BaseException:
        with suppress(OSError):
            half.unlink()
        raise
    return path


def _bytes(piece: bytes | Stored) -> bytes:
    data = piece.pack.read(piece.key) if isinstance(piece, Stored) else piece
    if data is None:
        raise OSError("the piece was damaged meanwhile")
    return data


def packs_in(folder: Path) -> list[Path]:
    """The packs in a folder, the one used longest ago first; none if there is no folder."""
    return [path for _, path in _dated(folder, _PACK)]


def clear_half_written(folder: Path) -> None:
    """Remove what killed runs left, an hour later: the disk's own dates say so, whatever the clock here says."""
    latest = max((date for date, _ in _dated(folder, _PACK)), default=0)
    for date, path in _dated(folder, _HALF):
        if date < latest - ABANDONED_NS:
            remove(path)


def _dated(folder: Path, names: re.Pattern[str]) -> list[tuple[int, Path]]:
    found = []
    with suppress(OSError):
        for path in folder.iterdir():
            if names.fullmatch(path.name):
                with suppress(OSError):
                    found.append((path.stat().st_mtime_ns, path))
    return sorted(found)


def remove(path: Path) -> None:
    """Delete a file, if that can be."""
    with suppress(OSError):
        path.unlink()
