"""An episode's page: the story, this weekend's cost table, the running total, hours, snags, lessons."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.figures.figure import Bound, bound_of
from builder.journal.records.episode import Episode
from builder.ledger.parts import Parts
from builder.pages.costs import cost_table
from builder.pages.frame import Fact, Frame, Link, Share, Term
from builder.pages.hazards import answered, hazards_of
from builder.pages.paths import EPISODE_PAGE, phase_path, root_of
from builder.pages.prose import Photo, tell
from builder.pages.saying import say_figure, told_summary
from builder.pages.signs import part_fact, spent_told
from builder.pages.site import Material, frame
from builder.pages.stated import stated_words
from builder.pages.table import Table
from builder.pages.terms import terms


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """An episode in a list."""

    number: str
    title: str
    href: str
    date: str
    day: str
    spent: str
    running: str
    cover: Photo | None
    cover_alt: str
    phase: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A chapter of the video: its time, the same as a duration ("" if it is none), its name."""

    time: str
    duration: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Snag:
    """A snag opened here, or one closed here with the episode it came from."""

    text: str
    fixed: bool = False
    small: str = ""
    href: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """The running total: before, this episode, after; labels carry "at least"."""

    rows: tuple[tuple[str, str], ...]
    after: tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class EpisodePage:
    """episodes/NAME/."""

    frame: Frame
    kicker: str
    phase: Link | None
    date: str
    day: str
    facts: tuple[Fact, ...]
    story: str
    video: str
    poster: Photo | None
    chapters: tuple[Chapter, ...]
    costs: Table | None
    balance: str
    terms: tuple[Term, ...]
    running: Running
    stated: tuple[str, ...]
    snags: tuple[Snag, ...]
    lessons: tuple[str, ...]
    hazards: tuple[str, ...]
    before: Link | None
    next: Link | None


def entry(material: Material, episode: Episode, root: str) -> Entry:
    """An episode as lists show it."""
    words, sums = material.words, material.account.sums
    own, running = sums.by_episode[episode.number], sums.running[episode.number]
    cover = episode.cover.path if episode.cover else next((one.path for one in episode.prose.pictures), "")
    alt = next((one.alt for one in episode.prose.pictures if one.path == cover), "")
    return Entry(
        number=words.whole(episode.number),
        title=episode.title,
        href=root + EPISODE_PAGE.format(name=episode.name),
        date=words.span(episode.dates),
        day=episode.date.isoformat(),
        spent=spent_told(own, words),
        running=spent_told(running, words),
        cover=material.photos.get(cover),
        cover_alt=alt,
        phase=material.account.phase_name(episode.phase) or "",
    )


def episode_page(material: Material, at: int) -> EpisodePage:
    """Lay out the page of the episode at an index, in order of date."""
    account, words = material.account, material.words
    episodes = account.journal.episodes
    episode = episodes[at]
    path = EPISODE_PAGE.format(name=episode.name)
    root = root_of(path)
    story = tell(
        episode.prose,
        root,
        material.photos,
        lambda name: say_figure(name, account, words, episode.number, root),
        material.remember,
    )
    lines = account.lines_of_episode(episode.number)
    own = account.sums.by_episode[episode.number]
    cover = episode.cover.path if episode.cover else ""
    return EpisodePage(
        frame=frame(
            material,
            path,
            episode.title,
            told_summary(episode, account, words) or story.opening,
            share=Share(
                kind="article",
                picture="share.png",
                published=episode.date.isoformat(),
                data=_article(material, episode),
            ),
        ),
        kicker=words.say("Episode {number}", number=episode.number),
        phase=_phase(material, episode, root),
        date=words.span(episode.dates),
        day=episode.date.isoformat(),
        facts=tuple(_facts(material, episode, own)),
        story=story.html,
        video=episode.video or "",
        poster=material.photos.get(cover),
        chapters=tuple(_chapters(episode)),
        costs=cost_table(material.view(path), lines, _caption(material), words.say("This episode")) if lines else None,
        balance=_balance(material, own),
        terms=terms(words, *_explained(own)) if lines else (),
        running=_running(material, episode),
        stated=tuple(stated_words(material, episode)),
        snags=tuple(_snags(material, at, root)),
        lessons=tuple(told.text for told in episode.lessons),
        hazards=hazards_of(account, words, lines, answered(account, lines)),
        before=_turn(episodes[at - 1], root) if at else None,
        next=_turn(episodes[at + 1], root) if at + 1 < len(episodes) else None,
    )


def _article(material: Material, episode: Episode) -> str:
    """The episode as schema.org Article, for programs; `<` escaped, since it stands inside a page."""
    settings = material.account.journal.settings
    told = {
        "@context": "https://schema.org",
        "@type": "Article",
        "headline": episode.title,
        "datePublished": episode.dates.first.isoformat(),
        "dateModified": episode.date.isoformat(),
        "inLanguage": settings.language,
        "isPartOf": {"@type": "CreativeWork", "name": settings.title},
    }
    told |= {"author": {"@type": "Person", "name": settings.author}} if settings.author else {}
    summary = told_summary(episode, material.account, material.words)
    told |= {"description": summary} if summary else {}
    return json.dumps(told, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")


def _caption(material: Material) -> str:
    currency = material.account.ledger.currency.code
    return material.words.say("What this episode took, in {currency}, with tax and delivery", currency=currency)


def _turn(episode: Episode, root: str) -> Link:
    return Link(text=episode.title, href=root + EPISODE_PAGE.format(name=episode.name))


def _phase(material: Material, episode: Episode, root: str) -> Link | None:
    if episode.phase is None:
        return None
    has_page = any(one.key == episode.phase for one in material.account.phases)
    href = root + phase_path(episode.phase) if has_page else ""
    return Link(text=material.account.phase_name(episode.phase) or "", href=href)


def _facts(material: Material, episode: Episode, own: Parts) -> Iterator[Fact]:
    account, words = material.account, material.words
    why = words.count(own.unpriced, "{n} price is not known", "{n} prices are not known") if own.unpriced else ""
    took = part_fact("spent", own, words, words.say("This episode took"))
    yield replace(took, small=why, small_href="#costs")
    hours = sum((told.hours for told in episode.hours), Fraction(0))
    if hours:
        people = words.count(episode.people, "{n} person", "{n} people") if episode.people else ""
        yield Fact(name=words.say("Hours"), value=words.decimal(hours), small=people)
    if own.hours > hours:
        yield Fact(name=words.say("Helpers"), value=words.hours(own.hours - hours))
    if episode.weather:
        yield Fact(name=words.say("Weather"), value=episode.weather)
    for progress in episode.progress:
        name = account.phase_name(progress.phase) or progress.phase
        yield Fact(name=name, value=words.say("{part} done", part=words.percent(progress.part)))
    for told in episode.done:
        yield Fact(name=account.phase_name(told.text) or told.text, value=words.say("done"))


def _chapters(episode: Episode) -> Iterator[Chapter]:
    for time, name in episode.chapters:
        yield Chapter(time=time, duration=_duration(time), name=name)


def _duration(time: str) -> str:
    """`3:40` as a duration (PT3M40S): without it a page would mean twenty to four."""
    units = ("H", "M", "S")
    parts = time.split(":")[-3:]
    if not all(part.isdigit() for part in parts):
        return ""
    return "PT" + "".join(f"{int(part)}{unit}" for part, unit in zip(parts, units[-len(parts) :], strict=True))


def _balance(material: Material, own: Parts) -> str:
    """The law, in the reader's words, with this episode's figures."""
    words = material.words
    if not any((own.in_stock, own.reusable, own.elsewhere, own.brought_in)):
        return ""
    return words.say(
        "Paid and brought in, {in_all}, are as much as job cost, in stock, reusable and elsewhere together.",
        in_all=words.bounded(words.bare(own.paid + own.brought_in), bound_of(own, "paid")),
    )


def _explained(own: Parts) -> list[str]:
    parts = [key for key in ("in_stock", "reusable", "elsewhere", "brought_in") if getattr(own, key)]
    return ["job_cost", *parts, "running_total"]


def _running(material: Material, episode: Episode) -> Running:
    words, sums = material.words, material.account.sums
    before, own = sums.before[episode.number], sums.by_episode[episode.number]
    after = sums.running[episode.number]
    return Running(
        rows=(
            (_label(material, words.say("Spent before"), before), words.money(before.spent)),
            (_label(material, words.say("This episode"), own), words.money(own.spent)),
        ),
        after=(_label(material, words.say("Spent so far"), after), words.money(after.spent)),
    )


def _label(material: Material, name: str, parts: Parts) -> str:
    if bound_of(parts, "spent") is Bound.AT_LEAST:
        return material.words.say("{name}, at least", name=name)
    return name


def _snags(material: Material, at: int, root: str) -> Iterator[Snag]:
    words, episodes = material.words, material.account.journal.episodes
    episode = episodes[at]
    for told in episode.snags:
        closed = _closed_in(told.text, episodes[at + 1 :])
        if closed is None:
            yield Snag(text=told.text)
        else:
            yield Snag(
                text=told.text,
                small=words.say("done in episode {number}", number=closed.number),
                href=root + EPISODE_PAGE.format(name=closed.name),
            )
    for told in episode.fixed:
        opened = next((one for one in episodes[:at] if any(told.means(snag.text) for snag in one.snags)), None)
        if opened is not None:
            yield Snag(
                text=told.text,
                fixed=True,
                small=words.say("from episode {number}", number=opened.number),
                href=root + EPISODE_PAGE.format(name=opened.name),
            )


def _closed_in(text: str, later: tuple[Episode, ...]) -> Episode | None:
    return next((one for one in later if any(told.means(text) for told in one.fixed)), None)
