"""Where the links lead. The site is a folder: it has to work from a disk, a stick and under any address."""

from __future__ import annotations

from pathlib import Path

from tests.site.folder import (
    CSS_ADDRESS,
    Reference,
    listed,
    named,
    pages,
    places,
    references,
    target,
)


def what_is_wrong_with(site: Path, page: Path, reference: Reference) -> str:
    """Why an address inside the site leads nowhere; empty if it leads somewhere."""
    if reference.address.startswith("/"):
        return "starts at the root of a host, which a folder has not"
    path, place = target(page, reference.address)
    if site not in path.parents:
        return "leads out of the folder"
    if not path.is_file():
        return "leads to a folder, which lists its files" if path.is_dir() else "leads to no file"
    if place and path.suffix == ".html" and place not in places(path):
        return f"has no place called {place}"
    return ""


def test_every_address_leads_to_a_file_and_a_place_in_it(demo_site: Path) -> None:
    """Links, pictures, styles and scripts all resolve inside the folder, opened from a disk."""
    wrong = [
        f"{named(demo_site, page)}: {reference.address} {why}"
        for page in pages(demo_site)
        for reference in references(page)
        if reference.scheme == ""
        if (why := what_is_wrong_with(demo_site, page, reference))
    ]
    assert not wrong, listed(wrong)


def test_only_a_link_may_leave_the_site(demo_site: Path) -> None:
    """Nothing loads from anybody else's server. A link may lead there, and waits until it is followed."""
    wrong = [
        f"{named(demo_site, page)}: <{reference.element.tag}> {reference.address}"
        for page in pages(demo_site)
        for reference in references(page)
        if reference.scheme not in {"", "data"} and not reference.is_link
    ]
    assert not wrong, listed(wrong)


def test_a_link_out_is_a_web_address_or_a_mail_address(demo_site: Path) -> None:
    """No script, file or other surprise behind a link."""
    wrong = [
        f"{named(demo_site, page)}: {reference.address}"
        for page in pages(demo_site)
        for reference in references(page)
        if reference.is_link and reference.scheme not in {"", "https", "http", "mailto"}
    ]
    assert not wrong, listed(wrong)


def test_style_sheets_load_only_files_of_the_site(demo_site: Path) -> None:
    """Typefaces and pictures named in a style sheet stand beside it."""
    wrong = [
        f"{named(demo_site, sheet)}: {address}"
        for sheet in sorted(demo_site.rglob("*.css"))
        for address in CSS_ADDRESS.findall(sheet.read_text(encoding="utf-8"))
        if not address.startswith(("data:", "#")) and not target(sheet, address)[0].is_file()
    ]
    assert not wrong, listed(wrong)


def test_every_page_can_be_reached_from_the_first(demo_site: Path) -> None:
    """A page no link leads to is a page nobody reads."""
    left = set(pages(demo_site)) - {demo_site / "404.html"}
    ahead = {demo_site / "index.html"}
    while ahead:
        left -= ahead
        links = [target(page, link.address)[0] for page in ahead for link in references(page) if not link.scheme]
        ahead = left.intersection(links)
    assert not left, listed([named(demo_site, page) for page in left])


def test_no_page_gives_one_name_to_two_places(demo_site: Path) -> None:
    """An anchor leads to one place."""
    wrong = [
        f"{named(demo_site, page)}: #{name}"
        for page in pages(demo_site)
        for name, times in places(page).items()
        if times > 1
    ]
    assert not wrong, listed(wrong)
