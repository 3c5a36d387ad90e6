"""What pages are made from: the account, the words, the photos, and the frame around every page."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from builder.figures.account import Account, Moved
from builder.pages.costs import View
from builder.pages.frame import Frame, Link, Share
from builder.pages.paths import HOME, LEDGER, PLAN, SOURCES, WORKINGS, YOURS, root_of
from builder.pages.prose import Photo, Remember, make_anew
from builder.pages.wording import Words
from builder.plan.budget_records import Status


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """The account, how it is worded, and the prepared photos by path in the journal.

    `history` works out how the forecast moved: only one page asks, so only that page waits for it.
    """

    account: Account
    words: Words
    photos: Mapping[str, Photo]
    history: Callable[[], tuple[Moved, ...]] = tuple
    remember: Remember = make_anew

    def view(self, path: str) -> View:
        """The account as seen from a page."""
        return View(account=self.account, words=self.words, root=root_of(path))

    @property
    def has_plan(self) -> bool:
        """Whether there is a plan to compare with."""
        return bool(self.account.journal.plan.phases)

    @property
    def is_done(self) -> bool:
        """Whether every phase is done, so that the whole build can be told."""
        phases = [phase for phase in self.account.phases if phase.key is not None]
        return bool(phases) and all(phase.status is Status.DONE for phase in phases)

    @property
    def has_lines(self) -> bool:
        """Whether anything has been entered."""
        return bool(self.account.ledger.lines)


def frame(
    material: Material,
    path: str,
    title: str,
    description: str,
    *,
    share: Share | None = None,
    scripts: tuple[str, ...] = (),
) -> Frame:
    """The frame of a page."""
    settings, words = material.account.journal.settings, material.words
    root = root_of(path)
    address = settings.address
    told = share or Share()
    return Frame(
        path=path,
        root=root,
        title=title,
        build=settings.title,
        description=description,
        language=settings.language,
        direction=words.direction,
        nav=tuple(_nav(material, path, root)),
        downloads=(
            Link(text=words.say("Figures as data"), href=f"{root}figures.json"),
            Link(text=words.say("Ledger as a table"), href=f"{root}ledger.csv"),
            Link(text=words.say("Feed"), href=f"{root}feed.xml"),
        ),
        foot=foot_words(material),
        share=Share(
            kind=told.kind,
            address=f"{address}/{_clean(path)}" if address else "",
            picture=f"{address}/{told.picture}" if address and told.picture else "",
            published=told.published,
            data=told.data,
        ),
        scripts=tuple(f"{root}{script}" for script in scripts),
    )


def _clean(path: str) -> str:
    return path.removesuffix("index.html")


def _nav(material: Material, path: str, root: str) -> list[Link]:
    words = material.words
    pages = [(HOME, words.say("Home"))]
    if material.has_lines:
        pages.append((LEDGER, words.say("Ledger")))
    if material.has_plan:
        pages.append((PLAN, words.say("Plan")))
    if material.has_lines:
        pages.append((SOURCES, words.say("Sources")))
        pages.append((YOURS, words.say("Yours")))
    pages.append((WORKINGS, words.say("Workings")))
    return [Link(text=text, href=root + to, here=to == path) for to, text in pages]


def foot_words(material: Material) -> str:
    """When prices were paid and in which currency; that this is an account and not advice."""
    words = material.words
    caution = words.say(
        "This is an account of how one person built it, not a design and not advice: check your local code and "
        "permits, and ask a licensed professional before you dig, pour, wire or climb."
    )
    when = _paid_when(material)
    return f"{when} {caution}" if when else caution


def _paid_when(material: Material) -> str:
    """Over which days prices were paid, as the episodes have them that paid any; "" where none did."""
    account, words = material.account, material.words
    episodes, by_episode = account.journal.episodes, account.sums.by_episode
    begun = next((one for one in episodes if by_episode[one.number].paid), None)
    ended = next((one for one in reversed(episodes) if by_episode[one.number].paid), None)
    if begun is None or ended is None:
        return ""
    first, last = begun.dates.first, ended.date
    currency = account.ledger.currency.code
    if first == last:
        return words.say(
            "Prices were paid on {day}, in {currency}, with tax and delivery.", day=words.date(first), currency=currency
        )
    return words.say(
        "Prices were paid from {first} to {last}, in {currency}, with tax and delivery.",
        first=words.date(first),
        last=words.date(last),
        currency=currency,
    )
