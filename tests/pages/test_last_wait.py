"""While the last wait of a build goes on it is done, and nowhere finished yet."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from builder.app import tally_text
from builder.figures.account import Account
from builder.pages.episode import episode_page
from builder.pages.home import home_page
from builder.pages.site import Material
from tests.pages.planned_pages import ENGLISH, build
from tests.pages.weekend import weekend

# Done on 4 April, and ready 60 days later, on 3 June.
PLAN = "phases:\n  - {key: base, name: Base, planned: 100, hours: [8, 14, 24], wait: 60 days}\n"
DONE = "phase: base\nhours: 8\nitems:\n  - Pegs, 90\ndone: [base]\n"


def material(account: Account) -> Material:
    """As the pages get it."""
    return Material(account=account, words=ENGLISH, photos={})


@pytest.mark.parametrize("week", ["", "work_week: {saturday: 6}\n"])
@pytest.mark.parametrize(
    ("as_of", "over"), [(None, False), (datetime.date(2026, 6, 2), False), (datetime.date(2026, 6, 3), True)]
)
def test_it_is_finished_when_the_wait_is_over(
    tmp_path: Path, week: str, as_of: datetime.date | None, over: bool
) -> None:
    """On the home page and in the tally, whether or not there are hours to forecast by."""
    account = build(tmp_path, PLAN, DONE, settings=week, as_of=as_of)
    assert account.finished == datetime.date(2026, 6, 3)
    assert ("Finished" in [fact.name for fact in home_page(material(account)).facts]) is over
    assert ("finished: 2026-06-03" in tally_text(account)) is over


def test_an_episode_leads_to_no_phase_that_has_no_page(tmp_path: Path) -> None:
    """Without a plan a phase has one when it has a line or hours."""
    told = weekend(tmp_path, "{material: Pegs, cost: 3, phase: ground}", more="phase: roof")
    phase = episode_page(told, 0).phase
    assert phase is not None
    assert (phase.text, phase.href) == ("Roof", "")
