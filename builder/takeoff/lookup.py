"""Finding a result by its name in a planned line or in the prose: `footing.bags`."""

from __future__ import annotations

from collections.abc import Sequence

from builder.takeoff.reading.nodes import did_you_mean
from builder.takeoff.records import Takeoff
from builder.words.misread import clipped
from builder.words.numbers import Unreadable
from builder.words.quantity import Quantity


def result_named(takeoffs: Sequence[Takeoff], name: str, result: str) -> Quantity:
    """The result `result` of the take-off `name`; Unreadable, with the likely name, if there is none."""
    takeoff = next((each for each in takeoffs if each.name == name), None)
    if takeoff is None:
        names = [each.name for each in takeoffs]
        raise Unreadable(
            f"there is no take-off {clipped(name)}",
            f"one of {', '.join(names)}" if names else "a take-off in plan.yaml",
            did_you_mean(name, names),
        )
    found = takeoff.get(result)
    if found is None:
        keys = [each.key for each in takeoff.results]
        raise Unreadable(
            f"the take-off {name} has no {clipped(result)}", f"one of {', '.join(keys)}", did_you_mean(result, keys)
        )
    return found
