"""What scripts add: sorting and sifting the ledger, repricing the build. The figures are the program's own."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from builder.app import work_out
from builder.figures.yours import FOUND, Choice, YoursLine, machines, yours, yours_lines
from builder.journal.records.item import Source
from tests.conftest import ROOT, barrowbook
from tests.site.folder import document

pytestmark = pytest.mark.browser


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A window of its own, closed afterwards."""
    window = browser.new_page(viewport={"width": 1280, "height": 900})
    yield window
    window.close()


def names(page: Page) -> list[str]:
    """What the ledger shows, from top to bottom."""
    rows = page.locator("table.sortable tbody tr:visible th")
    return [text.split("\n")[0] for text in rows.all_inner_texts()]


def test_the_ledger_sorts_by_amount_and_back(page: Page, demo_site: Path) -> None:
    """By what was paid, smallest first, then largest first."""
    page.goto((demo_site / "ledger/index.html").as_uri())
    column = page.locator("th[data-key=paid]")
    at = column.evaluate("cell => cell.cellIndex")
    paid = f"table.sortable tbody tr > :nth-child({at + 1})"

    def amounts() -> list[float]:
        texts = page.locator(paid).all_inner_texts()
        return [
            float(text.replace(",", "") or 0)
            for text in texts
            if text.replace(",", "").lstrip("-").replace(".", "").isdigit()
        ]

    column.locator("button").click()
    assert column.get_attribute("aria-sort") == "ascending"
    rising = amounts()
    assert rising == sorted(rising)
    assert len(rising) > 50
    column.locator("button").click()
    assert column.get_attribute("aria-sort") == "descending"
    assert amounts() == sorted(rising, reverse=True)


def test_the_ledger_sifts_by_words_phase_and_source(page: Page, demo_site: Path) -> None:
    """And says how many lines are left of how many."""
    page.goto((demo_site / "ledger/index.html").as_uri())
    everything = names(page)
    page.get_by_role("searchbox").fill("concrete")
    some = names(page)
    assert 0 < len(some) < len(everything)
    assert page.locator("form.sieve [role=status]").inner_text() == f"{len(some)} / {len(everything)}"
    page.get_by_role("searchbox").fill("")
    for choice, at in (("source", 3), ("phase", 5)):
        told = page.locator(f"table.sortable tbody td:nth-child({at})").all_inner_texts()
        offered = [text for text in page.locator(f"[name={choice}] option").all_inner_texts()[1:] if text]
        assert sorted(offered) == sorted(set(told)), f"{choice}: what stands in the column can be chosen"
        for text in offered:
            page.locator(f"[name={choice}]").select_option(text)
            assert len(names(page)) == told.count(text), text
        page.locator(f"[name={choice}]").select_option("")


def test_every_line_leads_to_its_episode_however_it_is_sorted(page: Page, demo_site: Path) -> None:
    """Without a script the first line of each does; then the lines stand in the order of the episodes."""
    ledger = (demo_site / "ledger/index.html").as_uri()
    rows = document(demo_site / "ledger/index.html").xpath("//table[contains(@class, 'sortable')]/tbody/tr")
    plain = [(row.xpath("string(td[3])"), row.xpath("td[3]/a/@href")) for row in rows]
    firsts = {number: ways[0] for number, ways in plain if ways}
    assert [number for number, ways in plain if ways] == list(dict.fromkeys(number for number, _ in plain))
    page.goto(ledger)
    page.locator("th[data-key=paid] button").click()
    links = page.locator("table.sortable tbody td:nth-child(4) a")
    assert links.count() == len(rows)
    assert {(one.inner_text(), one.get_attribute("href")) for one in links.all()} == set(firsts.items())


def test_without_scripts_the_sieve_is_not_shown(browser: Browser, demo_site: Path) -> None:
    """What cannot work is not there."""
    context = browser.new_context(java_script_enabled=False)
    window = context.new_page()
    window.goto((demo_site / "ledger/index.html").as_uri())
    assert not window.locator("form.sieve").is_visible()
    assert window.locator("table.sortable tbody tr").count() > 70
    context.close()


def chosen(lines: tuple[YoursLine, ...], chance: random.Random) -> Choice:
    """Any choice a reader can make on the page."""
    known = [name for name, _ in machines(lines)]
    found = [source for source in FOUND if source not in (Source.OWNED, Source.BORROWED)]
    return Choice(
        luck={source: chance.choice([0, 50, 100]) for source in found},
        owns=frozenset(name for name in known if chance.random() < 0.5),
        reuse=chance.random() < 0.5,
        price=chance.randrange(50, 201, 5),
        size=chance.randrange(50, 201, 5),
        hour=chance.choice([0, 1800, 2150]),
    )


def test_three_hundred_choices_come_to_what_the_program_says(page: Page, demo_site: Path) -> None:
    """The script's whole numbers against Python's, through the address that keeps a choice."""
    account = work_out(ROOT / "content").account
    assert account is not None
    lines, hours = yours_lines(account), account.sums.whole.hours
    known = [name for name, _ in machines(lines)]
    chance = random.Random(7)  # the same choices in every run
    page.goto((demo_site / "yours/index.html").as_uri())
    offered = {control.get_attribute("data-source") for control in page.locator("[name=luck]").all()}
    choices = [chosen(lines, chance) for _ in range(300)]
    addresses = [kept_in(choice, known) for choice in choices]
    shown = page.evaluate(ANSWERS, addresses)
    assert len(set(shown)) > 250  # the page does answer: not one figure for all
    for choice, kept, said in zip(choices, addresses, shown, strict=True):
        cents = int("".join(digit for digit in said if digit.isdigit()))
        luck = {source: part for source, part in choice.luck.items() if source.value in offered}
        assert cents == yours(lines, replace(choice, luck=luck), Fraction(hours)), kept


# The page's answer to each address in turn, as it takes it when the reader follows a link to itself.
ANSWERS = """addresses => addresses.map(kept => {
    history.replaceState(null, '', '#' + kept);
    dispatchEvent(new HashChangeEvent('hashchange'));
    return document.querySelector('form.yours output').innerText;
})"""


def kept_in(choice: Choice, known: Sequence[str]) -> str:
    """A choice as the address of the page keeps it."""
    return "&".join(
        [
            f"own={'.'.join(str(at) for at, name in enumerate(known) if name in choice.owns)}",
            *(f"{source.value}={luck}" for source, luck in choice.luck.items()),
            *(["reuse=1"] if choice.reuse else []),
            f"price={choice.price}&size={choice.size}&hour={choice.hour / 100}",
        ]
    )


def test_a_choice_is_kept_in_the_address(page: Page, demo_site: Path) -> None:
    """So that an answer can be shared."""
    page.goto((demo_site / "yours/index.html").as_uri())
    page.locator("[name=luck]").first.select_option("0")
    answer, address = page.locator("form.yours output").inner_text(), page.url
    assert "#" in address
    page.goto("about:blank")
    page.goto(address)
    assert page.locator("form.yours output").inner_text() == answer


FOUND_THINGS = """---
title: One
date: 2026-05-02
items:
  - {material: Nails, cost: 12}
  - {material: Beam, source: salvaged}
  - {material: Door, source: salvaged, replacement_cost: 90}
  - {equipment: Saw, source: borrowed, fuel: 4}
---
"""


def test_an_answer_says_at_least_only_where_it_rests_on_what_nobody_knows(page: Page, tmp_path: Path) -> None:
    """As I did it is 12 and 4 of fuel; without luck the door is 90 more, and the beam nobody knows what."""
    journal = tmp_path / "journal"
    (journal / "episodes").mkdir(parents=True)
    (journal / "journal.yaml").write_text("title: Shed\nlanguage: en-US\ncurrency: USD\n", "utf-8")
    (journal / "episodes" / "01-one.md").write_text(FOUND_THINGS, "utf-8")
    run = barrowbook("publish", str(journal), "--to", str(tmp_path / "site"), cache=tmp_path / "cache")
    assert run.returncode == 0, run.stderr
    page.goto((tmp_path / "site/yours/index.html").as_uri())
    answer = page.locator("form.yours output")
    assert answer.inner_text() == "$16.00"
    page.locator("[name=luck]").select_option("0")
    assert answer.inner_text() == "at least $106.00"
    page.locator("[name=luck]").select_option("100")
    page.get_by_role("checkbox", name="Saw").uncheck()
    assert answer.inner_text() == "at least $16.00"
