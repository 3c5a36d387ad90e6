"""What is stored between runs: bytes by key, so that nothing is made twice.

A key says everything the bytes depend on (content, version, settings), so what is found is right whenever
it was made. The store is a convenience: deleted, damaged, full or forbidden, it only makes a run slower.

Pieces lie in a few packs, as opening a thousand files costs more than reading one. A run appends a pack of
what it made. When there are many small ones they become one; when all take more than the limit, the packs
that no run used for longest go, and then what this run did not use.
"""

from __future__ import annotations

import hashlib
import os
import time
from collections import OrderedDict
from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from threading import Lock
from types import TracebackType
from typing import Self

from builder.store.pack import ENTRY_SIZE, Pack, Stored, clear_half_written, packs_in, remove, write_pack
from builder.store.place import cache_folder

DEFAULT_LIMIT = 512 << 20
MOST_SMALL = 8  # packs
SMALL = 4 << 20  # bytes of a pack that may be merged with others
FULL = 8 << 20  # bytes made in a run before they are written, so that a killed run loses little
IN_MEMORY = 64 << 20  # bytes kept when there is no folder


def usual_store() -> Store:
    """The store in the user's cache, or where the user says."""
    return Store(cache_folder(os.environ, Path.home()))


def _name(key: str) -> bytes:
    return hashlib.sha256(key.encode("utf-8", "surrogatepass")).digest()


class Store:
    """Bytes by key, kept in `folder` and no more than `limit_bytes`; without a folder, some for this run.

    Threads may share a store. Processes have one each, on the same folder if they like. What a run made
    is on the disk after `close`, or the end of a `with`.
    """

    def __init__(self, folder: Path | None, limit_bytes: int = DEFAULT_LIMIT) -> None:
        self.folder = folder
        self._limit = limit_bytes if folder else min(limit_bytes, IN_MEMORY)
        self._lock = Lock()
        self._fresh: OrderedDict[bytes, bytes] = OrderedDict()  # from whose beginning any number goes quickly
        self._fresh_size = 0
        self._packs: list[Pack] = []
        self._where: dict[bytes, Pack] = {}
        self._used: dict[bytes, Pack] = {}
        if folder is not None:
            self._open(packs_in(folder))

    def remember(self, key: str, make: Callable[[], bytes]) -> bytes:
        """The bytes of this key: those stored, if they are sound; else made now, and stored."""
        found = self.find(key)
        if found is None:
            found = make()
            self.keep(key, found)
        return found

    def find(self, key: str) -> bytes | None:
        """The bytes of this key, if they are stored and sound."""
        with self._lock:
            return self._find(_name(key))

    def keep(self, key: str, data: bytes) -> None:
        """Store the bytes of this key. Any that were ever stored under it have to do as well."""
        with self._lock:
            self._keep(_name(key), data)

    def fresh(self) -> Mapping[bytes, bytes]:
        """The pieces that this run made and that are written nowhere yet."""
        with self._lock:
            return dict(self._fresh)

    def take(self, pieces: Mapping[bytes, bytes]) -> None:
        """Store fresh pieces of another process that this one was divided into."""
        with self._lock:
            for name, data in pieces.items():
                self._keep(name, data)

    def close(self) -> None:
        """Write what this run made, tidy up, and let go of the files. Never fails."""
        with self._lock:
            if self.folder is not None:
                self._flush(self.folder)
                with suppress(OSError):
                    self._tidy(self.folder)
            for pack in self._packs:
                pack.close()
            self._packs, self._where, self._used = [], {}, {}

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, raised: BaseException | None, at: TracebackType | None
    ) -> None:
        self.close()

    def _open(self, paths: Iterable[Path]) -> None:
        for path in paths:
            try:
                pack = Pack(path)
            except OSError:
                continue
            except ValueError:
                remove(path)
                continue
            self._packs.append(pack)
            self._where.update(dict.fromkeys(pack.pieces, pack))

    def _find(self, name: bytes) -> bytes | None:
        if (fresh := self._fresh.get(name)) is not None:
            return fresh
        if (pack := self._where.get(name)) is None:
            return None
        data = pack.read(name)
        if data is None:
            self._forget(pack)
        else:
            self._used[name] = pack
        return data

    def _forget(self, pack: Pack) -> None:
        """A pack with a damaged piece is not asked again; what is sound in it moves to the next one."""
        remove(pack.path)
        names = [name for name, where in self._where.items() if where is pack]
        for name in names:
            del self._where[name]
            self._used.pop(name, None)
        for name in names:
            if (data := pack.read(name)) is not None:
                self._keep(name, data)

    def _keep(self, name: bytes, data: bytes) -> None:
        if len(data) > self._limit:
            return
        self._fresh_size += len(data) - len(self._fresh.pop(name, b""))
        self._fresh[name] = data
        if self.folder is not None and self._fresh_size >= min(FULL, self._limit):
            self._flush(self.folder)
        while self._fresh_size > self._limit:
            self._fresh_size -= len(self._fresh.popitem(last=False)[1])

    def _flush(self, folder: Path) -> None:
        """Fresh pieces into a pack. Where that fails they are forgotten: they can be made again."""
        if not self._fresh:
            return
        with suppress(OSError):
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            self._add(write_pack(folder, self._fresh), self._fresh)
            self._fit(folder)
        self._fresh, self._fresh_size = OrderedDict(), 0

    def _add(self, path: Path, used: Iterable[bytes]) -> None:
        with suppress(ValueError):
            pack = Pack(path)
            self._packs.append(pack)
            self._where.update(dict.fromkeys(pack.pieces, pack))
            self._used.update(dict.fromkeys(used, pack))

    def _tidy(self, folder: Path) -> None:
        used, now = set(self._used.values()), time.time_ns()
        for number, pack in enumerate(self._packs):  # each a little later than the one before: the newest stays last
            if pack in used:
                with suppress(OSError):
                    os.utime(pack.path, ns=(now + number, now + number))
        clear_half_written(folder)
        small = [pack for pack in self._there() if pack.size < SMALL]
        if len(small) > MOST_SMALL:
            self._merge(folder, small, lambda _name: True)
        self._fit(folder)

    def _there(self) -> list[Pack]:
        """The packs that are still files, the one used longest ago first."""
        return sorted((pack for pack in self._packs if pack.path.exists()), key=lambda pack: pack.used_ns)

    def _fit(self, folder: Path) -> None:
        """Bring all packs together under the limit, unused ones first."""
        total = sum(pack.size for pack in self._there())
        used = set(self._used.values())
        for pack in self._there():
            if total > self._limit and pack not in used:
                remove(pack.path)
                total -= pack.size
        if total > self._limit:
            self._merge(folder, self._there(), lambda name: name in self._used)

    def _merge(self, folder: Path, packs: list[Pack], wanted: Callable[[bytes], bool]) -> None:
        """One pack of what is wanted from several, as far as half the limit reaches, the newest first."""
        merged: dict[bytes, bytes | Stored] = {}
        left = self._limit // 2
        for pack in reversed(packs):
            for name, piece in pack.pieces.items():
                size = piece.length + ENTRY_SIZE
                if name not in merged and wanted(name) and size <= left and pack.read(name) is not None:
                    merged[name] = Stored(pack, name)
                    left -= size
        path = write_pack(folder, merged) if merged else None
        for pack in packs:
            if pack.path != path:
                remove(pack.path)
        if path:
            self._add(path, [name for name in merged if name in self._used])
