"""German: the reader is `du`, the builder `ich`."""

from __future__ import annotations

from builder.pages.languages import Catalogue, together
from builder.pages.languages.de_cautions import CAUTIONS
from builder.pages.languages.de_costs import COSTS
from builder.pages.languages.de_pages import PAGES
from builder.pages.languages.de_plan import PLAN
from builder.pages.languages.de_sources import SOURCES
from builder.pages.languages.de_takeoff import TAKEOFF
from builder.pages.languages.de_units import UNITS

CATALOGUE: Catalogue = together(PAGES, COSTS, PLAN, UNITS, TAKEOFF, CAUTIONS, SOURCES, unbroken={" %": "\u00a0%"})
