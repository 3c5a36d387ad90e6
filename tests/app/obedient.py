"""Somebody who does what a message says, to the letter, and knows nothing else of the format."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

# Words that come after what is to be written, and are said to a person only.
_AFTERTHOUGHT = re.compile(r"(?:, or |; or |; |: the currency |, for instance|, where | instead$| in quotes).*")


def obey(folder: Path, problem: Mapping[str, object]) -> bool:
    """Change the file as the message says: write, add, remove, rename. False where it says nothing that can be done."""
    path, fix = folder / str(problem["file"]), str(problem["fix"])
    lines = path.read_text(encoding="utf-8").split("\n")
    doing, said = fix.partition(" ")[0], _AFTERTHOUGHT.sub("", fix.partition(" ")[2])
    said = said.replace("with what was paid", "9")  # which they know, and nobody else
    at, start = int(str(problem["line"])) - 1, int(str(problem["column"])) - 1
    if fix.startswith("did you mean "):
        lines[at] = _put_name(lines[at], start, fix.removeprefix("did you mean ").removesuffix("?"))
    elif doing == "write":
        lines[at] = _put(lines[at], start, said)
    elif doing == "add" and re.match(r"\w+: \S", said):
        lines.insert(at + 1, " " * start + said)
    elif doing == "remove":
        del lines[at]
    elif fix.startswith("put two spaces for each tab"):
        lines[at] = lines[at].replace("\t", "  ")
    else:
        return False
    path.write_text("\n".join(lines), encoding="utf-8", newline="\n")
    return True


def _put(line: str, start: int, said: str) -> str:
    """What is said in place of what is marked, which goes to the end of the line, or of what stands in brackets."""
    before, after = line[:start], line[start:]
    key = re.match(r"[\w-]+(?=:(?: |$))", said)
    if key is not None and re.search(rf"(?:^|[ -]){key[0]}:\s*$", before):
        return before[: before.rindex(key[0])] + said
    inside = before.count("{") > before.count("}") or before.count("[") > before.count("]")
    end = re.search(r"[,}\]]", after) if inside and after[:1] not in ("{", "[") else None
    return before + said + (after[end.start() :] if end else "")


def _put_name(line: str, start: int, name: str) -> str:
    """A name in place of the one that is marked; a key's colon and value stay."""
    inside = "{" in line[:start] or "[" in line[:start]
    marked = re.compile(r"[^,:}\]]+" if inside else r"[A-Za-z_][\w-]*(?=:)|.+").match(line, start)
    return line[:start] + name + (line[marked.end() :] if marked else "")
