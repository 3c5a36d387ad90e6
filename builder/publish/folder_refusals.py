"""Which folders a site may be published to, told before anything is written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path

from builder.publish.folder_errors import InTheWay, Refused
from builder.publish.folder_marker import Marker, read_marker
from builder.publish.folder_paths import MARKER, folders_of
from builder.publish.folder_tree import Survey

NEW_FOLDER = "a new or empty folder, or a site that publish made"


def site_at(target: Path, journal: Path | None) -> Path:
    """The real path of a folder that may be published to; Refused otherwise. What is in it is not asked."""
    try:
        site = target.resolve()
    except (OSError, RuntimeError) as error:
        raise Refused(f"{target} is a link that leads nowhere", NEW_FOLDER, "name another folder") from error
    if fault := _fault(site, journal.resolve() if journal else None):
        fix = f"name a folder of its own, such as {_suggestion(site, journal)}"
        raise Refused(f"{target} is {fault}", NEW_FOLDER, fix)
    return site


def _fault(site: Path, journal: Path | None) -> str:
    if site.is_symlink():  # still, after links were followed
        return "a link that leads nowhere"
    if site == Path(site.anchor):
        return "the root of the file system"
    if site == _home():
        return "your home folder"
    if journal and site == journal:
        return "the journal itself"
    if journal and journal.is_relative_to(site):
        return "a folder that holds the journal"
    if site.is_mount():
        return "the root of a disk"
    if site.exists() and not site.is_dir():
        return "a file"
    return ""


def _home() -> Path | None:
    with suppress(OSError, RuntimeError):
        return Path.home().resolve()
    return None


def _suggestion(site: Path, journal: Path | None) -> str:
    if journal and site in (journal.resolve(), *journal.resolve().parents):
        return str(journal.resolve().with_name("site"))
    return str(site.with_name(f"{site.name}-site") if site.is_file() else site / "site")


def wrote(site: Path) -> Marker | None:
    """What we wrote in the folder; None if it is new or empty. Refused if others made it."""
    marker = read_marker(site)
    if marker is None and (site / ".git").exists():
        raise Refused(f"{site} is a repository", NEW_FOLDER, f"name a folder in it, such as {site / 'site'}")
    if marker is None and site.exists() and any(site.iterdir()):
        raise Refused(
            f"{site} has things in it and no file {MARKER}, so publish did not make it",
            NEW_FOLDER,
            "name another folder, or empty this one yourself",
        )
    return marker


def check_room(found: Survey, ours: Mapping[str, str], wanted: Iterable[str]) -> None:
    """InTheWay if something we did not write stands where a file or a folder of the new site has to."""
    foreign = (found.files | found.others) - ours.keys() - {MARKER}
    held = folders_of(foreign) | (found.folders.keys() - folders_of(ours))
    for path in wanted:
        if path in foreign or path in held:
            raise _in_the_way(path)
    for folder in sorted(folders_of(wanted) & foreign):
        raise _in_the_way(folder)


def _in_the_way(path: str) -> InTheWay:
    return InTheWay(
        f"{path} in the site's folder was put there by somebody, and the new site has one of its own",
        "no file of others under that name",
        "move it away, or rename what the journal makes of it, and publish again",
    )
