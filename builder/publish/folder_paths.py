"""The paths of a site's files: inside the site, with forward slashes, as any file system takes them."""

from __future__ import annotations

import re
from collections.abc import Iterable

from builder.publish.folder_errors import Unfit

MARKER = ".barrowbook"
LONGEST_NAME = 255  # bytes, on every file system that people use

_PATH = re.compile(r"(?:[^/\\\x00-\x1f\x7f]+/)*[^/\\\x00-\x1f\x7f]+")


def check_paths(paths: Iterable[str]) -> None:
    """Unfit for the first path that leads out of the site, or that no file system takes."""
    known = dict.fromkeys(paths)
    for path in known:
        if fault := _fault(path):
            raise Unfit(f"{path!r} {fault}", "a path inside the site, such as phases/ground/index.html")
    for folder in sorted(folders_of(known)):
        if folder in known:
            raise Unfit(f"{folder!r} is both a file and a folder", "one of the two", "rename the other")


def _fault(path: str) -> str:
    if path == MARKER:
        return "is the name of the file that says what we wrote"
    if not _PATH.fullmatch(path) or not {".", ".."}.isdisjoint(path.split("/")):
        return "is not a plain path with forward slashes"
    try:
        names = path.encode().split(b"/")
    except UnicodeEncodeError:
        return "has a character that is none"
    long = max(map(len, names)) > LONGEST_NAME
    return f"has a name of more than {LONGEST_NAME} bytes" if long else ""


def folders_of(paths: Iterable[str]) -> set[str]:
    """Every folder that these paths stand in, without the site itself: `a/b/c` gives `a` and `a/b`."""
    found: set[str] = set()
    for path in paths:
        folder = path.rpartition("/")[0]
        while folder and folder not in found:
            found.add(folder)
            folder = folder.rpartition("/")[0]
    return found
