"""Making many files with two processes, where the system can divide one into two and has a processor for each.

Both take the next file from one list, so that neither waits for the other. What the second made comes back when the
list is at its end. What does not come back, because it was killed or failed, the first makes itself: a mistake shows
there as it would have without the other.
"""

from __future__ import annotations

import gc
import os
import pickle
import signal
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from typing import Protocol

from builder.words.telling import Tell, quiet

ENOUGH = 60  # files: with fewer, dividing costs about what it saves
_NUMBER, _AT_MOST = 4, 1000  # bytes, numbers

Make = Callable[[], bytes]


class Kept(Protocol):
    """What is kept between runs: the part that this process made and that is written nowhere yet."""

    def fresh(self) -> Mapping[bytes, bytes]: ...
    def take(self, pieces: Mapping[bytes, bytes]) -> None: ...


def all_made(makers: Mapping[str, Make], kept: Kept, tell: Tell = quiet) -> dict[str, bytes]:
    """Every file by its path. They are begun in the order of `makers`; `tell` hears how many were."""
    paths = list(makers)
    if sys.platform != "linux" or len(paths) < ENOUGH or len(os.sched_getaffinity(0)) < 2:
        return dict(_made(paths, makers, iter(range(len(paths))), tell))
    return _by_two(paths, makers, kept, tell)


def _made(
    paths: Sequence[str], makers: Mapping[str, Make], numbers: Iterator[int], tell: Tell
) -> Iterator[tuple[str, bytes]]:
    for number in numbers:
        tell(number, len(paths), "files")
        yield paths[number], makers[paths[number]]()


if sys.platform == "linux":

    def _by_two(paths: Sequence[str], makers: Mapping[str, Make], kept: Kept, tell: Tell) -> dict[str, bytes]:
        """The same, with a second process; without one where the system has none to give."""
        numbers = _listed(len(paths))
        back, forth = os.pipe()
        first = os.getpid()
        gc.freeze()  # else looking for what is not needed any more would copy all that both have in common
        second = _divided()
        if second == 0:
            try:
                os.close(back)  # else it would wait for ever to be read when the first process was killed
                mine = _while_of(first, _next(numbers, len(paths)))
                _send(_made(paths, makers, mine, quiet), kept, forth)
            finally:
                os._exit(0)  # without a word: what it could not do is done again, where a mistake is told
        os.close(forth)
        try:
            files = dict(_made(paths, makers, _next(numbers, len(paths)), tell))
            files |= _brought(back, kept)
        finally:
            os.close(back)
            os.close(numbers)
            gc.unfreeze()
            if second is not None:
                os.kill(second, signal.SIGKILL)  # it has nothing left to do, or nobody to do it for
                os.waitpid(second, 0)
        missing = (number for number, path in enumerate(paths) if path not in files)
        return files | dict(_made(paths, makers, missing, tell))

    def _divided() -> int | None:
        """The second process as the first knows it, 0 in the second itself, None where there may be no more."""
        try:
            return os.fork()
        except OSError:
            return None

    def _listed(count: int) -> int:
        """A pipe that holds the numbers below, a few at a time as the smallest pipe has 4,096 bytes. Whoever reads
        from it gets numbers that nobody else gets.
        """
        numbers, into = os.pipe()
        step = -(-count // _AT_MOST)
        os.write(into, b"".join(number.to_bytes(_NUMBER, "big") for number in range(0, count, step)))
        os.close(into)
        return numbers

    def _next(numbers: int, count: int) -> Iterator[int]:
        step = -(-count // _AT_MOST)
        while first := os.read(numbers, _NUMBER):
            number = int.from_bytes(first, "big")
            yield from range(number, min(number + step, count))

    def _while_of(first: int, numbers: Iterator[int]) -> Iterator[int]:
        """The numbers, while the process that began this one is there."""
        return (number for number in numbers if os.getppid() == first)

    def _send(made: Iterator[tuple[str, bytes]], kept: Kept, forth: int) -> None:
        """Make files, then send them and what is to be kept."""
        before = set(kept.fresh())
        files = dict(made)
        pieces = {key: piece for key, piece in kept.fresh().items() if key not in before}
        with os.fdopen(forth, "wb") as to:
            pickle.dump((files, pieces), to)

    def _brought(back: int, kept: Kept) -> dict[str, bytes]:
        """What the second process made; nothing where it did not come to its end."""
        with os.fdopen(os.dup(back), "rb") as file, suppress(EOFError, pickle.UnpicklingError):
            files, pieces = pickle.load(file)  # noqa: S301 - from this very program
            kept.take(pieces)
            return dict(files)
        return {}
