"""Many fixed-point numbers side by side in one whole number, so that Python works on all of them at once.

A vector v is the sum of v[k] << (WIDTH * k), signs included. Adding vectors and multiplying by a whole number are
then single operations on big whole numbers; only rounding has to keep the places apart. A number that outgrows
its place spoils its neighbours: the caller may lean on these numbers to find its way, never to prove anything.
"""

from __future__ import annotations

from collections.abc import Sequence

SHIFT = 44
ONE = 1 << SHIFT
WIDTH = 128
_BYTES = WIDTH // 8
_HALF = 1 << (WIDTH - 1)
_PLACE = (1 << WIDTH) - 1


class Places:
    """The arithmetic of vectors of `size` numbers, each a whole multiple of 1/ONE."""

    def __init__(self, size: int) -> None:
        every = sum(1 << (WIDTH * place) for place in range(size))
        self._size = size
        self._raised = every * _HALF
        self._kept = every * ((1 << (WIDTH - SHIFT)) - 1)
        self._lowered = every * (_HALF >> SHIFT)

    def pack(self, numbers: Sequence[int]) -> int:
        return sum(number << (WIDTH * place) for place, number in enumerate(numbers))

    def unpack(self, vector: int) -> list[int]:
        laid = (vector + self._raised).to_bytes(self._size * _BYTES + 1, "little")
        return [
            int.from_bytes(laid[start : start + _BYTES], "little") - _HALF
            for start in range(0, self._size * _BYTES, _BYTES)
        ]

    def at(self, vector: int, place: int) -> int:
        """One number of a vector."""
        return ((vector + self._raised >> (WIDTH * place)) & _PLACE) - _HALF

    def scaled(self, vector: int, factor: int) -> int:
        """Every number times `factor`, itself a multiple of 1/ONE, rounded down."""
        return (((vector * factor + self._raised) >> SHIFT) & self._kept) - self._lowered
