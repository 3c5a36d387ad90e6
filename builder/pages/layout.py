"""The fourth step: every page of the site, one record after the other."""

from __future__ import annotations

from collections.abc import Iterator

from builder.pages.episode import EpisodePage, episode_page
from builder.pages.frame import EPISODE_PAGE, LEDGER, PLAN, SOURCES, WHOLE, WORKINGS, YOURS, phase_path
from builder.pages.home import HomePage, home_page
from builder.pages.ledger import LedgerPage, ledger_page
from builder.pages.missing import MissingPage, missing_page
from builder.pages.phase import PhasePage, phase_page
from builder.pages.plan import PlanPage, plan_page
from builder.pages.site import Material
from builder.pages.sources import SourcesPage, sources_page
from builder.pages.whole import WholePage, whole_page
from builder.pages.workings import WorkingsPage, workings_page
from builder.pages.yours import YoursPage, yours_page

Page = (
    HomePage
    | EpisodePage
    | PhasePage
    | LedgerPage
    | PlanPage
    | SourcesPage
    | WorkingsPage
    | YoursPage
    | MissingPage
    | WholePage
)


def page_paths(material: Material) -> list[str]:
    """Where every page lies, but for the one that is shown when there is none."""
    account = material.account
    paths = ["index.html"]
    paths += [EPISODE_PAGE.format(name=episode.name) for episode in account.journal.episodes]
    paths += [phase_path(phase.key) for phase in account.phases]
    paths += [LEDGER, SOURCES, YOURS] if material.has_lines else []
    paths += [PLAN] if material.has_plan else []
    paths += [WHOLE] if material.is_done and account.journal.episodes else []
    return [*paths, WORKINGS]


def lay_out(material: Material) -> Iterator[Page]:
    """Every page, home first. Made one at a time, so that a long journal need not be held whole."""
    yield home_page(material)
    for at in range(len(material.account.journal.episodes)):
        yield episode_page(material, at)
    for phase in material.account.phases:
        yield phase_page(material, phase)
    if material.has_lines:
        yield ledger_page(material)
        yield sources_page(material)
        yield yours_page(material)
    if material.has_plan:
        yield plan_page(material)
    if material.is_done and material.account.journal.episodes:
        yield whole_page(material)
    yield workings_page(material)
    yield missing_page(material)
