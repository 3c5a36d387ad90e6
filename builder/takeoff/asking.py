"""Declaring inputs in a line: what a method needs, what it may have, and its coefficients."""

from __future__ import annotations

from builder.takeoff.declared import Default, Input, Kind
from builder.takeoff.text import Text

_UNLESS_GIVEN = Text("unless it is given")
_NO_WASTE = Text("none is added unless waste is given")


def needs(key: str, kind: Kind, meaning: str, example: str) -> Input:
    """An input without which nothing can be worked out."""
    return Input(key=key, kind=kind, meaning=meaning, example=example, required=True)


def may_have(
    key: str, kind: Kind, meaning: str, example: str, default: str = "", *, may_be_zero: bool = False
) -> Input:
    """An input that may be left out."""
    defaults = (Default(default, _UNLESS_GIVEN),) if default else ()
    return Input(key=key, kind=kind, meaning=meaning, example=example, defaults=defaults, may_be_zero=may_be_zero)


def coefficient(
    key: str, kind: Kind, meaning: str, example: str, *defaults: Default, may_be_zero: bool = False
) -> Input:
    """A number that is not a dimension of the build, with where its defaults come from."""
    return Input(
        key=key,
        kind=kind,
        meaning=meaning,
        example=example,
        coefficient=True,
        defaults=defaults,
        may_be_zero=may_be_zero,
    )


def waste() -> Input:
    """The input `waste`: none unless it is given."""
    meaning = "what is spilt, broken or cut off, as a part of the net quantity"
    return coefficient("waste", Kind.RATE, meaning, "5%", Default("0%", _NO_WASTE), may_be_zero=True)
