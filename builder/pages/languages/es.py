"""Spanish, as it is written in Spain: the reader is `tú`, the builder `yo`."""

from __future__ import annotations

from builder.pages.languages import Catalogue, together
from builder.pages.languages.es_cautions import CAUTIONS
from builder.pages.languages.es_costs import COSTS
from builder.pages.languages.es_pages import PAGES
from builder.pages.languages.es_plan import PLAN
from builder.pages.languages.es_sources import SOURCES
from builder.pages.languages.es_takeoff import TAKEOFF
from builder.pages.languages.es_units import UNITS

CATALOGUE: Catalogue = together(PAGES, COSTS, PLAN, UNITS, TAKEOFF, CAUTIONS, SOURCES, unbroken={" %": "\u00a0%"})
