"""French, as it is written in France: the reader is `vous`, the builder `je`."""

from __future__ import annotations

from builder.pages.languages import Catalogue, together
from builder.pages.languages.fr_cautions import CAUTIONS
from builder.pages.languages.fr_costs import COSTS
from builder.pages.languages.fr_pages import PAGES
from builder.pages.languages.fr_plan import PLAN
from builder.pages.languages.fr_sources import SOURCES
from builder.pages.languages.fr_takeoff import TAKEOFF
from builder.pages.languages.fr_units import UNITS

# French sets a narrow space before these signs and inside its quotation marks, and no line breaks there.
_HELD = {f" {sign}": f"\u202f{sign}" for sign in ":;?!»"} | {"« ": "«\u202f", " %": "\u00a0%"}

CATALOGUE: Catalogue = together(PAGES, COSTS, PLAN, UNITS, TAKEOFF, CAUTIONS, SOURCES, unbroken=_HELD)
