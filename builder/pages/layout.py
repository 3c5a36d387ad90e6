"""The fourth step: every page of the site, one record after the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial

from builder.pages.episode import EpisodePage, episode_page
from builder.pages.home import HomePage, home_page
from builder.pages.ledger import LedgerPage, ledger_page
from builder.pages.missing import MISSING, MissingPage, missing_page
from builder.pages.paths import EPISODE_PAGE, HOME, LEDGER, PLAN, SOURCES, WHOLE, WORKINGS, YOURS, phase_path
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


Make = Callable[[], Page]


def page_makers(material: Material) -> Mapping[str, Make]:
    """What makes each page, by where it lies, home first. Each alone, so that one page need not wait for others."""
    return dict(_makers(material))


def page_paths(material: Material) -> list[str]:
    """Where every page lies, but for the one that is shown when there is none."""
    return [path for path, _ in _makers(material) if path != MISSING]


def _makers(material: Material) -> Iterator[tuple[str, Make]]:
    episodes = material.account.journal.episodes
    yield HOME, partial(home_page, material)
    for at, episode in enumerate(episodes):
        yield EPISODE_PAGE.format(name=episode.name), partial(episode_page, material, at)
    for phase in material.account.phases:
        yield phase_path(phase.key), partial(phase_page, material, phase)
    if material.has_lines:
        yield LEDGER, partial(ledger_page, material)
        yield SOURCES, partial(sources_page, material)
        yield YOURS, partial(yours_page, material)
    if material.has_plan:
        yield PLAN, partial(plan_page, material)
    if material.is_done and episodes:
        yield WHOLE, partial(whole_page, material)
    yield WORKINGS, partial(workings_page, material)
    yield MISSING, partial(missing_page, material)
