"""A value that its author may have called a judgement (`about 150`)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

T_co = TypeVar("T_co", covariant=True)


@dataclass(frozen=True, slots=True)
class Judged(Generic[T_co]):
    """`about` is true when the author wrote "about" before the value."""

    value: T_co
    about: bool = False
