"""The last two steps: lay out, write. A journal without mistakes becomes a folder of plain files, or is served."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType

from builder import __version__
from builder.again import Asked, Done, Made, StoryPage, made_before, note, note_made, spare_of, what_changed
from builder.app import Memory, Worked, show, told_whole, work_out
from builder.figures.account import Account, Moved
from builder.journal.check import shown_pictures
from builder.pages.data_files import text_makers
from builder.pages.home import share_card
from builder.pages.layout import page_makers
from builder.pages.paths import EPISODE_PAGE, LEDGER, root_of
from builder.pages.prose import Photo
from builder.pages.saying import say_figure
from builder.pages.site import Material
from builder.pages.wording import Words
from builder.plan.moving import forecasts_after
from builder.plan.timing import time_plan
from builder.publish.assemble import OnDemand, file_makers
from builder.publish.card import draw_card
from builder.publish.folder import Copy, digest_of, publish_folder
from builder.publish.folder_errors import SiteError
from builder.publish.hands import Make, all_made
from builder.publish.pictures import Album, PhotoError, Prepared, prepare_photos
from builder.publish.preview import Built, serve
from builder.retold import Site, Telling, note_site
from builder.store.store import Store, usual_store
from builder.words.telling import Tell, quiet


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How publishing went: whether the site stands, and what to tell."""

    done: bool
    says: str


def publish_site(worked: Worked, asked: Asked, store: Store, tell: Tell = quiet) -> Outcome:
    """Write the site of a journal without mistakes; what stood there stays if that cannot be done.

    `store` keeps what is slow to make.
    """
    if worked.account is None or worked.files is None:
        return Outcome(done=False, says="there is no journal to publish")
    to, before = asked.to, _spent_before(asked.to)
    try:
        prepared = _pictures(worked.account, worked.files.folder, store, tell)
        photos = {path: photo.sha256 for path, photo in prepared.files.items()}
        from_these = (asked, worked.files, _told_by(worked.account), photos, store)
        files = _files(worked.account, prepared, store, tell, made_before(*from_these))
        changed = publish_folder(
            to,
            files,
            version=__version__,
            journal=worked.files.folder,
            spare=spare_of(store),
        )
    except (SiteError, PhotoError) as error:
        return Outcome(done=False, says=str(error))
    done = Done(
        pictures=prepared.digests,
        standing=changed.standing,
        warnings=told_whole(worked, asked.journal.as_posix()),
        notes=prepared.notes,
    )
    note(asked, worked.files, done, store)
    made = {path: digest_of(content) for path, content in files.items()}
    note_made(*from_these, made)
    spent = _spent(worked.account)
    site = Site(done=done, spent=spent, warned=frozenset(problem.place.file for problem in worked.problems))
    tellings = ((told, made[told.page]) for told in _tellings(worked.account, prepared.photos))
    note_site(asked, worked.files, site, tellings, store)
    says = what_changed(changed, to, spent + _was(worked.account, before), prepared.notes)
    return Outcome(done=True, says=says)


def _tellings(account: Account, photos: Mapping[str, Photo]) -> Iterator[Telling]:
    """Each episode with what its page shows of it beside the words of its story."""
    words = Words(account.journal.settings.language, account.ledger.currency)
    for episode in account.journal.episodes:
        page = EPISODE_PAGE.format(name=episode.name)
        names = {mark.name for mark in episode.prose.marks}
        yield Telling(
            file=episode.file,
            page=page,
            figures={name: say_figure(name, account, words, episode.number, root_of(page)) for name in names},
            photos={one.path: photos[one.path] for one in episode.prose.pictures if one.path in photos},
            pictures=tuple((one.path, one.alt) for one in episode.prose.pictures),
            video=episode.video is not None,
            summary=bool(episode.summary),
        )


def built_site(worked: Worked, store: Store, tell: Tell = quiet) -> dict[str, bytes | Copy]:
    """Every file of the site by path; the journal has no mistakes. `store` keeps what is slow to make."""
    if worked.account is None or worked.files is None:
        return {}
    prepared = _pictures(worked.account, worked.files.folder, store, tell)
    return _files(worked.account, prepared, store, tell)


def _pictures(account: Account, folder: Path, store: Store, tell: Tell) -> Prepared:
    return prepare_photos(shown_pictures(account.journal), folder, store.remember, tell)


def _told_by(account: Account) -> tuple[StoryPage, ...]:
    """Every episode with its page and what others show of its story."""
    return tuple(
        StoryPage(
            file=episode.file,
            page=EPISODE_PAGE.format(name=episode.name),
            pictures=tuple((one.path, one.alt) for one in episode.prose.pictures),
        )
        for episode in account.journal.episodes
    )


def _files(
    account: Account, prepared: Prepared, store: Store, tell: Tell, before: Made = MappingProxyType({})
) -> dict[str, bytes | Copy]:
    """Every file. What is `before` is known by its digest, and made only if the site has lost it."""
    words = Words(account.journal.settings.language, account.ledger.currency)
    makers = site_makers(account, words, prepared.photos, store)
    in_turn = sorted(makers, key=lambda path: (path not in _LARGE, path.startswith(_MANY)))
    made = all_made({path: makers[path] for path in in_turn if path not in before}, store, tell)
    files = {path: Copy(before[path], makers[path]) if path in before else made[path] for path in makers}
    return {**files, **prepared.files}


# Those that hold every line are made first, while little else is held: the most memory is taken by making them.
_LARGE = frozenset({LEDGER, "figures.json"})
# And those that are many and small are made last, so that two processes come to their end at once.
_MANY = ("episodes/", "show-notes/")


def site_makers(account: Account, words: Words, photos: Mapping[str, Photo], store: Store) -> dict[str, Make]:
    """What makes each file of the site, but for the photos."""
    material = Material(
        account=account, words=words, photos=photos, history=lambda: _moved(account), remember=store.remember
    )
    makers = file_makers(page_makers(material), text_makers(material), words, store)
    if account.journal.settings.address:
        makers["share.png"] = lambda: draw_card(share_card(material))
    return makers


def show_site(folder: Path, as_of: datetime.date | None, port: int, tell: Callable[[str], None]) -> None:
    """Serve a journal's site until interrupted: read again whenever it is saved, each page made when asked for."""
    memory, album, store, words_of = Memory(), Album(), usual_store(), cache(Words)

    def rebuild() -> Built:
        worked = work_out(folder, as_of, memory=memory)
        told = show(worked, folder.as_posix(), worked.mistakes)
        if worked.mistakes or worked.account is None:
            return Built(files=None, told=told)
        try:
            prepared = prepare_photos(shown_pictures(worked.account.journal), folder, store.remember, album=album)
        except PhotoError as error:
            return Built(files=None, told=str(error))
        words = words_of(worked.account.journal.settings.language, worked.account.ledger.currency)
        makers = site_makers(worked.account, words, prepared.photos, store)
        return Built(files=OnDemand({**makers, **{path: one.read for path, one in prepared.files.items()}}), told="")

    with store:
        serve(folder, rebuild, tell, port)


def _spent_before(to: Path) -> str | None:
    """What the site that stands there says was spent; None where none stands."""
    try:
        told = json.loads((to / "figures.json").read_text(encoding="utf-8"))["totals"]["spent"]
    except (OSError, ValueError, KeyError, TypeError):
        return None
    return told if isinstance(told, str) else None


def _spent(account: Account) -> str:
    """What was spent so far, as a publish tells it at its end."""
    least = "at least " if account.sums.whole.unpriced else ""
    return f"{least}{account.ledger.currency.major(account.sums.whole.spent)} {account.ledger.currency.code}"


def _was(account: Account, before: str | None) -> str:
    """What it was the last time, where that is something else."""
    spent = account.ledger.currency.major(account.sums.whole.spent)
    return f", {before} the last time" if before is not None and before != spent else ""


MOST_TIMINGS = 20


def _moved(account: Account) -> tuple[Moved, ...]:
    """Where the forecast stood after each episode; of a long journal, after evenly chosen ones and the last."""
    episodes = account.journal.episodes
    if len(episodes) < 2 or not account.journal.plan.phases:
        return ()
    forecasts = forecasts_after(account.journal, account.ledger, account.outlook)
    count = min(len(episodes), MOST_TIMINGS)
    chosen = sorted({(at + 1) * len(episodes) // count - 1 for at in range(count)})
    return tuple(
        Moved(
            episode=episodes[at].number,
            forecast=forecasts.get(episodes[at].number),
            timing=time_plan(account.journal, None, at + 1),
        )
        for at in chosen
    )
