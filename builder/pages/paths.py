"""Where each page lies in the site, and the way from one to another."""

from __future__ import annotations

HOME = "index.html"
EPISODE_PAGE = "episodes/{name}/index.html"
PHASE_PAGE = "phases/{key}/index.html"
LEDGER, PLAN, SOURCES, YOURS, WORKINGS = (
    f"{name}/index.html" for name in ("ledger", "plan", "sources", "yours", "workings")
)
WHOLE = "build/index.html"
NO_PHASE = "no-phase"


def root_of(path: str) -> str:
    """The way from a page back to the top of the site."""
    return "../" * path.count("/")


def line_anchor(ref: str) -> str:
    """The anchor of a line on the ledger page: `line-3.2`."""
    return f"line-{ref}"


def phase_path(key: str | None) -> str:
    """The page of a phase; the lines of no phase have one too."""
    return PHASE_PAGE.format(key=key or NO_PHASE)
