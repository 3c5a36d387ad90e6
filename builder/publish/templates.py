"""Page records through their templates. The only place that knows jinja, and that calls text markup."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from builder.publish.assets import TEMPLATES

_PAGE = re.compile(r"(?<!^)(?=[A-Z])")


class Templates:
    """The templates of a site in one language; `say` gives the fixed words of a page."""

    def __init__(self, say: Callable[..., str], count: Callable[..., str], folder: Path = TEMPLATES) -> None:
        self._environment = Environment(
            loader=FileSystemLoader(folder),
            undefined=StrictUndefined,
            autoescape=True,
            trim_blocks=True,
            lstrip_blocks=True,
            auto_reload=False,
        )
        self._environment.globals.update(say=say, count=count)
        self._environment.filters.update(drawing=_Trusted, story=_Trusted, data=_Trusted)

    def render(self, page: object) -> str:
        """The HTML of a page record: `EpisodePage` goes through `episode.html`."""
        name = _PAGE.sub("-", type(page).__name__.removesuffix("Page")).lower()
        return self._environment.get_template(f"{name}.html").render(page=page)


class _Trusted(str):
    """Markup that was made here and escaped where it was made: drawings, stories that have been cleaned, data
    whose angle brackets are escaped. The one place that calls text markup.
    """

    __slots__ = ()

    def __html__(self) -> str:
        return self
