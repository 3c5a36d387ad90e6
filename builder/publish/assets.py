"""Where the templates lie, and what lies beside them that is published as it is: style and scripts."""

from __future__ import annotations

import re
from pathlib import Path

_HERE = Path(__file__).parent.parent
TEMPLATES = next(folder for folder in (_HERE / "templates", _HERE.parent / "templates") if folder.is_dir())


def asset(name: str) -> bytes:
    """A file that is published as it is."""
    content = (TEMPLATES / name).read_bytes()
    return _lean(content) if name.endswith(".css") else content


def _lean(style: bytes) -> bytes:
    """A style sheet without its comments and spaces between its parts: readers of a page need none of them."""
    bare = re.sub(r"/\*.*?\*/", "", style.decode(), flags=re.DOTALL)
    tight = re.sub(r"\s*([{};])\s*", r"\1", " ".join(bare.split()))
    tight = re.sub(r"([:,]) ", r"\1", tight)  # a space before a colon may be a selector's
    return (tight.replace(";}", "}") + "\n").encode()
