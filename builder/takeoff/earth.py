"""What digging has in common: earth swells as it is dug, and goes away in loads."""

from __future__ import annotations

from builder.takeoff.asking import coefficient, may_have
from builder.takeoff.declared import Default, Kind, Output
from builder.takeoff.expression import Named
from builder.takeoff.measures import unit
from builder.takeoff.text import Text
from builder.takeoff.working import Working

_SWELL = Text(
    "common practice for common earth, no source; a handbook's examples have 15% for sand and gravel and 30% for"
    " dense clay (S. Peterson and F. Dagostino, Estimating in Building Construction, Ex. 9-2 and 9-3)"
)
_LOADS = Text("loads before rounding")
_WHOLE_LOADS = Text("rounded up: the last load is a load")
NO_WASTE = "leave waste out: swell is what digging adds"

HAUL_INPUTS = (
    coefficient("swell", Kind.RATE, "how much more room the earth takes once dug", "25%", Default("25%", _SWELL)),
    may_have("truck", Kind.VOLUME, "how much one load carries", "5 yd3"),
)
HAULED = (
    Output("loose_volume", "the same earth once dug"),
    Output("loads", "whole loads", "where truck is given"),
)


def haul(working: Working, bank: Named) -> None:
    """From the volume in the ground to the loose volume, and to loads where there is a truck."""
    loose = working.result("loose_volume", bank * (1 + working.input("swell")), bank.quantity.unit)
    if working.values.has("truck"):
        exact = working.step(_LOADS, loose / working.input("truck"), unit("load"))
        working.whole("loads", exact, unit("load"), _WHOLE_LOADS)
