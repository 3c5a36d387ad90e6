"""What a page may load and how much: a content security policy in the page, and its weight."""

from __future__ import annotations

from pathlib import Path

from tests.site.folder import document, listed, named, pages, scripts, style_sheets

KB = 1000
MOST_READ = 60 * KB  # HTML and CSS of one page
MOST_RUN = 15 * KB  # script of one page

# Blocks of data: the browser does not run them, so the policy does not stop them.
DATA = {"application/json", "application/ld+json"}


def policy(page: Path) -> dict[str, list[str]]:
    """The page's policy (W3C Content Security Policy Level 3, section 2.2): directive to sources."""
    found = document(page).xpath("//meta[@http-equiv='Content-Security-Policy']/@content")
    assert len(found) == 1, f"{page.name} has {len(found)} policies"
    directives = [part.split() for part in str(found[0]).split(";") if part.strip()]
    return {name.lower(): sources for name, *sources in directives}


def test_a_page_loads_nothing_that_its_policy_does_not_name(demo_site: Path) -> None:
    """Where the policy is silent, nothing loads; and it names no host and nothing unsafe."""
    wrong = []
    for page in pages(demo_site):
        rules = policy(page)
        sources = {source for listed_sources in rules.values() for source in listed_sources}
        if rules.get("default-src") != ["'none'"]:
            wrong.append(f"{named(demo_site, page)}: default-src is {rules.get('default-src')}")
        if beyond := {source for source in sources if source not in {"'none'", "'self'", "data:"}}:
            wrong.append(f"{named(demo_site, page)}: allows {', '.join(sorted(beyond))}")
    assert not wrong, listed(wrong)


def test_the_policy_stands_before_anything_it_rules(demo_site: Path) -> None:
    """A policy in a page says nothing about what comes before it (the same, section 3.3)."""
    wrong = [
        named(demo_site, page)
        for page in pages(demo_site)
        if document(page).xpath(
            "//meta[@http-equiv='Content-Security-Policy'][preceding::script or preceding::style or preceding::link]"
        )
    ]
    assert not wrong, listed(wrong)


def test_no_page_holds_a_style_or_a_script_of_its_own(demo_site: Path) -> None:
    """What the policy forbids is not there: no style attribute, no handler, no script in the page."""
    wrong = [
        f"{named(demo_site, page)}: <{element.tag}> line {element.sourceline}"
        for page in pages(demo_site)
        for element in document(page).iter("*")
        if "style" in element.attrib
        or element.tag == "style"
        or any(str(name).startswith("on") for name in element.attrib)
        or (element.tag == "script" and "src" not in element.attrib and element.get("type") not in DATA)
    ]
    assert not wrong, listed(wrong)


def too_heavy(site: Path, weights: dict[Path, int], most: int) -> list[str]:
    """The pages that weigh more than they may."""
    return [f"{named(site, page)}: {weight:,} bytes" for page, weight in weights.items() if weight > most]


def test_every_page_is_light(demo_site: Path) -> None:
    """60 KB of HTML and CSS, photos apart: a second on a slow phone."""
    weights = {page: sum(path.stat().st_size for path in [page, *style_sheets(page)]) for page in pages(demo_site)}
    assert not (wrong := too_heavy(demo_site, weights, MOST_READ)), listed(wrong)


def test_every_page_runs_little(demo_site: Path) -> None:
    """15 KB of script on a page."""
    weights = {page: sum(path.stat().st_size for path in scripts(page)) for page in pages(demo_site)}
    assert not (wrong := too_heavy(demo_site, weights, MOST_RUN)), listed(wrong)
