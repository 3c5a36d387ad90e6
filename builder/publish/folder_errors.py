"""Why a site could not be published. Whatever is raised, the site that stood there stands as it was.

SiteError                 found, expected, fix: three clauses to show to a person
├── Refused               this is no folder to publish to: name another one
├── Unfit                 a path of the new site cannot be the path of a file: rename what it comes from
├── InTheWay              something that is not ours stands where the site has to write: move it away
├── InUse                 another publish is at work on this site: wait for it
└── NotWritten            the disk said no: make room, or get the permission
"""

from __future__ import annotations

import errno
from dataclasses import dataclass
from pathlib import Path

_FULL = {errno.ENOSPC, errno.EDQUOT}
_FORBIDDEN = {errno.EACCES, errno.EPERM, errno.EROFS}


@dataclass(eq=False)  # each raising is its own
class SiteError(Exception):
    """Nothing was published. `found` is a clause, `expected` names what would do, `fix` may be empty."""

    found: str
    expected: str
    fix: str = ""

    def __str__(self) -> str:
        return f"{self.found}; expected {self.expected}" + (f"; {self.fix}" if self.fix else "")


class Refused(SiteError):
    """The folder is not one to publish to."""


class Unfit(SiteError):
    """A path of the new site is not one that a file can have everywhere."""


class InTheWay(SiteError):
    """Something we did not write stands where the site has to write."""


class InUse(SiteError):
    """Another publish is at work on the same site."""


class NotWritten(SiteError):
    """The disk or the system said no."""

    @classmethod
    def because(cls, error: OSError, site: Path) -> NotWritten:
        """What the system said, in words, with what to do about it."""
        if error.errno in _FULL:
            return cls(
                f"the disk is full: the new site does not fit beside the old one at {site}",
                "room for both until the new one is whole",
                "make room and publish again; the site is as it was",
            )
        if error.errno in _FORBIDDEN:
            return cls(
                f"{_where(error, site)} may not be written ({error.strerror})",
                f"a site in a folder where you may write, as the whole of {site.name} is swapped there",
                "publish into a folder of yours, or get the permission; the site is as it was",
            )
        return cls(
            f"{_where(error, site)} could not be written ({error.strerror or error})",
            "a disk that takes files",
            "the site is as it was; publish again, or to another disk",
        )


def _where(error: OSError, site: Path) -> str:
    return str(error.filename2 or error.filename or site)
