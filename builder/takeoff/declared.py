"""What a method takes and gives, as data: reading, messages, the format page and the JSON Schema use it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from builder.takeoff.records import Caution, Suggestion
from builder.takeoff.text import Text


class Kind(Enum):
    """What an input is; the value completes "a length where ... is due"."""

    LENGTH = "a length"
    AREA = "an area"
    VOLUME = "a volume"
    WEIGHT = "a weight"
    DENSITY = "a density"
    COUNT = "a whole number"
    NUMBER = "a number"
    RATE = "a part"
    RISE = "a rise"
    SLOPE = "a slope"
    SIDE_SLOPE = "a side slope"
    COVERAGE = "a coverage"
    WEIGHT_OF_LENGTH = "a weight of a length"
    PRICE = "a price"
    YES_NO = "yes or no"
    BAR = "a bar size"
    LENGTHS = "a list of lengths"
    SIZES = "a list of sizes"
    ROWS = "a list"


# What each kind looks like, to complete "expected ..." in a message.
EXAMPLES = {
    Kind.LENGTH: "a length such as 9 ft 8 in or 2.4 m",
    Kind.AREA: "an area such as 120 ft2, 11 m2 or 10 ft x 12 ft",
    Kind.VOLUME: "a volume such as 0.6 ft3, 5 yd3 or 17 L",
    Kind.WEIGHT: "a weight such as 80 lb or 25 kg",
    Kind.DENSITY: "a density such as 2700 lb/yd3 or 1600 kg/m3",
    Kind.COUNT: "a whole number such as 4",
    Kind.NUMBER: "a number such as 40 or 2.5",
    Kind.RATE: "a part such as 10% or 0.1",
    Kind.RISE: "the rise in 12 in of run, such as 7 in, or a slope such as 1:2 or 30 deg",
    Kind.SLOPE: "a slope such as 2%, 1:48 or 1/4 in per ft",
    Kind.SIDE_SLOPE: "how far the side leans out for 1 down, such as 1.5 or 3/4",
    Kind.COVERAGE: "what one unit covers, such as 350 ft2 per gal or 10 m2 per L",
    Kind.WEIGHT_OF_LENGTH: "a weight of a length such as 0.668 lb/ft or 0.994 kg/m",
    Kind.PRICE: "a price such as 6.10",
    Kind.YES_NO: "yes or no",
    Kind.BAR: 'a bar size such as "#4" or no. 4',
    Kind.LENGTHS: "a list of lengths such as [12 ft, 9 ft 8 in]",
    Kind.SIZES: "a list of widths and heights such as [[3 ft, 7 ft], [24 in, 48 in]]",
}


@dataclass(frozen=True, slots=True)
class Default:
    """What an input is when nobody gives it, as it would be written, and where that comes from.

    `when` is another input and what it has to be for this default to hold: (`bag`, `60 lb`).
    """

    written: str
    source: Text
    when: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One key of a method. `coefficient` marks numbers that are not dimensions of the build.

    `may_be_zero` lets zero stand; `columns` are the keys of a row of ROWS; `words` may stand instead of a value.
    """

    key: str
    kind: Kind
    meaning: str
    example: str
    required: bool = False
    coefficient: bool = False
    defaults: tuple[Default, ...] = ()
    may_be_zero: bool = False
    columns: tuple[Input, ...] = ()
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Output:
    """One key of the results. `when` says in words when it is there; "" is always."""

    key: str
    meaning: str
    when: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodDoc:
    """A method as data: its word in plan.yaml, what it works out, what it takes, gives, and warns of.

    `no_waste` says, where the method takes no `waste`, what stands in its place.
    """

    word: str
    title: Text
    about: str
    source: Text
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    cautions: tuple[Caution, ...]
    suggestions: tuple[Suggestion, ...] = ()
    no_waste: str = ""
