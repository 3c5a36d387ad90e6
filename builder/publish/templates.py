"""Page records through their templates. The only place that knows jinja, and that calls text markup."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Hashable
from typing import Protocol

from jinja2 import BytecodeCache, Environment, FileSystemLoader, StrictUndefined
from jinja2 import __version__ as jinja2_version
from jinja2.bccache import Bucket

from builder.publish.assets import TEMPLATES

_PAGE = re.compile(r"(?<!^)(?=[A-Z])")


class Kept(Hashable, Protocol):
    """What is kept between runs, by key."""

    def find(self, key: str) -> bytes | None: ...
    def keep(self, key: str, data: bytes) -> None: ...


class Templates:
    """The templates of a site in one language; `say` gives the fixed words of a page.

    `kept` spares reading and compiling a template that has not changed.
    """

    def __init__(self, say: Callable[..., str], count: Callable[..., str], kept: Kept | None = None) -> None:
        self._environment = Environment(
            loader=FileSystemLoader(TEMPLATES),
            undefined=StrictUndefined,
            autoescape=True,
            trim_blocks=True,
            lstrip_blocks=True,
            auto_reload=False,
            bytecode_cache=_Compiled(kept) if kept else None,
        )
        self._environment.globals.update(say=say, count=count)
        self._environment.filters.update(drawing=_Trusted, story=_Trusted, data=_Trusted)

    def render(self, page: object) -> str:
        """The HTML of a page record: `EpisodePage` goes through `episode.html`."""
        name = _PAGE.sub("-", type(page).__name__.removesuffix("Page")).lower()
        return self._environment.get_template(f"{name}.html").render(page=page)


class _Compiled(BytecodeCache):
    """Templates as the interpreter runs them, by their text and the versions of all that made them so."""

    def __init__(self, kept: Kept) -> None:
        self._kept = kept

    def load_bytecode(self, bucket: Bucket) -> None:
        found = self._kept.find(self._key(bucket))
        if found is not None:
            bucket.bytecode_from_string(found)

    def dump_bytecode(self, bucket: Bucket) -> None:
        self._kept.keep(self._key(bucket), bucket.bytecode_to_string())

    def _key(self, bucket: Bucket) -> str:
        return f"template {jinja2_version} {sys.version} {bucket.key} {bucket.checksum}"


class _Trusted(str):
    """Markup that was made here and escaped where it was made: drawings, stories that have been cleaned, data
    whose angle brackets are escaped. The one place that calls text markup.
    """

    __slots__ = ()

    def __html__(self) -> str:
        return self
