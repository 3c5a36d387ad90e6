"""What programs follow: the Atom feed (RFC 4287), the sitemap, and show notes to paste beside a video."""

from __future__ import annotations

import datetime
import uuid
from collections.abc import Iterator
from html import escape

from builder.figures.account import Account
from builder.figures.figure import bound_of
from builder.journal.records.episode import Episode
from builder.ledger.parts import Parts
from builder.ledger.records import Line
from builder.pages.costs import came_from
from builder.pages.paths import EPISODE_PAGE
from builder.pages.saying import told_summary
from builder.pages.signs import spent_told
from builder.pages.site import Material
from builder.pages.wording import Words

_EPOCH = datetime.date(1970, 1, 1)


def feed(material: Material) -> str:
    """feed.xml: the newest twenty episodes, newest first. Without an address its links are relative."""
    settings = material.account.journal.settings
    episodes = list(reversed(material.account.journal.episodes))[:20]
    updated = episodes[0].date if episodes else settings.begun or _EPOCH
    address = settings.address or ""
    lines = [
        '<?xml version="1.0" encoding="utf-8"?>',
        f'<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="{escape(settings.language)}">',
        f"<title>{escape(settings.title)}</title>",
        f"<subtitle>{escape(settings.summary)}</subtitle>" if settings.summary else "",
        f"<id>{_id(material, '')}</id>",
        f"<updated>{_moment(updated)}</updated>",
        f"<author><name>{escape(settings.author or settings.title)}</name></author>",
        _link("alternate", "text/html", f"{address}/" if address else "index.html"),
        _link("self", "application/atom+xml", f"{address}/feed.xml" if address else "feed.xml"),
        *(line for episode in episodes for line in _entry(material, episode, address)),
        "</feed>",
    ]
    return "\n".join(line for line in lines if line) + "\n"


def _entry(material: Material, episode: Episode, address: str) -> Iterator[str]:
    words, sums = material.words, material.account.sums
    own, running = sums.by_episode[episode.number], sums.running[episode.number]
    page = EPISODE_PAGE.format(name=episode.name)
    told = words.say(
        "{own} this episode, {running} so far.",
        own=spent_told(own, words),
        running=spent_told(running, words),
    )
    summary = f"{told_summary(episode, material.account, words)} {told}".lstrip()
    yield "<entry>"
    yield f"<title>{escape(episode.title)}</title>"
    yield f"<id>{_id(material, episode.name)}</id>"
    yield f"<published>{_moment(episode.dates.first)}</published>"
    yield f"<updated>{_moment(episode.date)}</updated>"
    link = f"{address}/{page.removesuffix('index.html')}" if address else page
    yield _link("alternate", "text/html", link)
    yield f"<summary>{escape(summary)}</summary>"
    yield "</entry>"


def _link(relation: str, kind: str, href: str) -> str:
    return f'<link rel="{relation}" type="{kind}" href="{escape(href)}"/>'


def _id(material: Material, name: str) -> str:
    """An id that stays when the site moves: made from the title, the day begun and the episode's name."""
    settings = material.account.journal.settings
    return f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, f'{settings.title}|{settings.begun}|{name}')}"


def _moment(day: datetime.date) -> str:
    return f"{day.isoformat()}T00:00:00Z"


def sitemap(material: Material, paths: list[str]) -> str:
    """sitemap.xml of the pages; only where the journal says where the site will stand."""
    address = material.account.journal.settings.address
    addresses = (f"{address}/{path.removesuffix('index.html')}" for path in paths)
    urls = "".join(f"<url><loc>{escape(one)}</loc></url>\n" for one in addresses)
    return (
        '<?xml version="1.0" encoding="utf-8"?>\n'
        f'<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n{urls}</urlset>\n'
    )


def show_notes(material: Material, episode: Episode) -> str:
    """Text to paste beside the video: summary, chapters, the episode's costs, the running total, the link."""
    account, words = material.account, material.words
    own, running = account.sums.by_episode[episode.number], account.sums.running[episode.number]
    lines = [episode.title, words.span(episode.dates), ""]
    lines += [told_summary(episode, account, words), ""] if episode.summary else []
    lines += [f"{time} {name}" for time, name in episode.chapters]
    lines += [""] if episode.chapters else []
    lines += list(_costs(material, episode))
    lines += [
        _total(material, words.say("This episode"), own),
        _total(material, words.say("Spent so far"), running),
        "",
    ]
    address = account.journal.settings.address
    if address:
        lines += [f"{address}/{EPISODE_PAGE.format(name=episode.name).removesuffix('index.html')}", ""]
    lines.append(words.say("An account of how one person built it, not advice."))
    return "\n".join(lines) + "\n"


def _costs(material: Material, episode: Episode) -> Iterator[str]:
    account, words = material.account, material.words
    for line in account.lines_of_episode(episode.number):
        name, quantity = account.called(line.item), words.quantity(line.item.quantity)
        counted = f"{name}, {quantity}" if quantity else name
        named = f"{counted} ({came_from(line, words)})"
        yield f"- {words.say('{name}: {value}', name=named, value=_spent_on(line, account, words))}"


def _spent_on(line: Line, account: Account, words: Words) -> str:
    """What a line spent, so that whoever adds the lines comes to the episode's total.

    What came off a shelf of this build stands in an earlier episode's notes.
    """
    parts = line.parts
    if parts.unpriced and not parts.spent:
        return words.say("not priced")
    if not parts.spent and any(account.line(draw.ref) for draw in line.draws):
        return words.say("paid for before")
    amount = words.money(parts.spent, bound_of(parts, "spent"))
    if not parts.elsewhere:
        return amount
    return words.say("{amount}, the rest of {paid} went elsewhere", amount=amount, paid=words.money(parts.paid))


def _total(material: Material, name: str, parts: Parts) -> str:
    words = material.words
    return words.say("{name}: {value}", name=name, value=words.money(parts.spent, bound_of(parts, "spent")))
