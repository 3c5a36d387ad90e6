"""The last two steps: lay out, write. A journal without mistakes becomes a folder of plain files, or is served."""

from __future__ import annotations

import datetime
import json
import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from builder import __version__
from builder.app import Worked, show, work_out
from builder.figures.account import Account, Moved
from builder.journal.check import shown_pictures
from builder.pages.data_files import data_files
from builder.pages.home import share_card
from builder.pages.layout import lay_out
from builder.pages.site import Material
from builder.pages.wording import Words
from builder.plan.moving import forecasts_after
from builder.plan.timing import time_plan
from builder.publish.assemble import site_files
from builder.publish.card import draw_card
from builder.publish.folder import Changed, Copy, publish_folder
from builder.publish.folder_errors import SiteError
from builder.publish.pictures import PhotoError, prepare_photos
from builder.publish.preview import Built, serve
from builder.store.place import cache_folder
from builder.store.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How publishing went: whether the site stands, and what to tell."""

    done: bool
    says: str


def publish_site(worked: Worked, to: Path) -> Outcome:
    """Write the site of a journal without mistakes; what stood there stays if that cannot be done."""
    if worked.account is None or worked.files is None:
        return Outcome(done=False, says="there is no journal to publish")
    before = _spent_before(to)
    try:
        cache = cache_folder(os.environ, Path.home())
        with Store(cache) as store:
            changed = publish_folder(
                to,
                built_site(worked, store),
                version=__version__,
                journal=worked.files.folder,
                spare=cache / "spare" if cache is not None else None,
            )
    except (SiteError, PhotoError) as error:
        return Outcome(done=False, says=str(error))
    return Outcome(done=True, says=_told(changed, to, worked.account, before))


def built_site(worked: Worked, store: Store) -> dict[str, bytes | Copy]:
    """Every file of the site by path; the journal has no mistakes. `store` keeps what is slow to make."""
    if worked.account is None or worked.files is None:
        return {}
    account = replace(worked.account, moved=_moved(worked.account))
    words = Words(account.journal.settings.language, account.ledger.currency)
    prepared = prepare_photos(shown_pictures(account.journal), worked.files.folder, store.remember)
    material = Material(account=account, words=words, photos=prepared.photos, remember=store.remember)
    card = {"share.png": draw_card(share_card(material))} if account.journal.settings.address else {}
    return {**dict(site_files(lay_out(material), data_files(material), words)), **prepared.files, **card}


def _in_memory(files: Mapping[str, bytes | Copy]) -> dict[str, bytes]:
    return {path: content if isinstance(content, bytes) else content.read() for path, content in files.items()}


def show_site(folder: Path, as_of: datetime.date | None, port: int, tell: Callable[[str], None]) -> None:
    """Serve a journal's site until interrupted, made anew whenever it is saved."""
    store = Store(None)

    def rebuild() -> Built:
        worked = work_out(folder, as_of)
        told = show(worked, folder.as_posix(), worked.mistakes)
        if worked.mistakes:
            return Built(files=None, told=told)
        try:
            return Built(files=_in_memory(built_site(worked, store)), told="")
        except PhotoError as error:
            return Built(files=None, told=str(error))

    serve(folder, rebuild, tell, port)


def _spent_before(to: Path) -> str | None:
    """What the site that stands there says was spent; None where none stands."""
    try:
        told = json.loads((to / "figures.json").read_text(encoding="utf-8"))["totals"]["spent"]
    except (OSError, ValueError, KeyError, TypeError):
        return None
    return told if isinstance(told, str) else None


def _told(changed: Changed, to: Path, account: Account, before: str | None) -> str:
    """What changed since the last time, and what to do next."""
    pages = [path for path in (*changed.added, *changed.changed) if path.endswith(".html")]
    if not (changed.added or changed.changed or changed.removed):
        return f"Nothing has changed. Open {to / 'index.html'}"
    counts = [
        f"{len(paths)} {word}"
        for paths, word in ((changed.added, "new"), (changed.changed, "changed"), (changed.removed, "gone"))
        if paths
    ]
    spent = account.ledger.currency.major(account.sums.whole.spent)
    least = "at least " if account.sums.whole.unpriced else ""
    was = f", {before} the last time" if before is not None and before != spent else ""
    edited = [f"{path} had been changed by hand; it was written again." for path in changed.edited]
    left = [f"{path} could not be put away; the next publish tries again." for path in changed.left]
    return "\n".join(
        [
            *edited,
            *left,
            f"{', '.join(counts)} of the site's files, {len(pages)} of them pages.",
            f"Spent so far: {least}{spent} {account.ledger.currency.code}{was}.",
            f"To put it on the web, copy the folder {to} to any host. Open {to / 'index.html'}",
        ]
    )


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
