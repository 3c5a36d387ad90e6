"""Page records through their templates. The only place that knows jinja, and that calls text markup."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

_HERE = Path(__file__).parent.parent
TEMPLATES = next(folder for folder in (_HERE / "templates", _HERE.parent / "templates") if folder.is_dir())
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
        self._environment.filters.update(drawing=_trusted, story=_trusted, data=_trusted)

    def render(self, page: object) -> str:
        """The HTML of a page record: `EpisodePage` goes through `episode.html`."""
        name = _PAGE.sub("-", type(page).__name__.removesuffix("Page")).lower()
        return self._environment.get_template(f"{name}.html").render(page=page)


def _trusted(markup: str) -> Markup:
    """Markup that was made here and escaped where it was made: drawings, stories that have been cleaned,
    and data whose angle brackets are escaped.
    """
    return Markup(markup)  # noqa: S704  # the one function that trusts markup; see above


def asset(name: str) -> bytes:
    """A file that is published as it is: style and scripts."""
    content = (TEMPLATES / name).read_bytes()
    return _lean(content) if name.endswith(".css") else content


def _lean(style: bytes) -> bytes:
    """A style sheet without its comments, blank lines and indents: readers of a page need none of them."""
    bare = re.sub(r"/\*.*?\*/", "", style.decode(), flags=re.DOTALL)
    lines = (line.strip() for line in bare.splitlines())
    return ("\n".join(line for line in lines if line) + "\n").encode()
