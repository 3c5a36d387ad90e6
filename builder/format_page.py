"""The tables of the format page, made from the declared keys, so that page and reading cannot drift apart.

`python -m builder.format_page README.md` writes them between their markers.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

from builder.journal.episode_keys import EPISODE, SAID
from builder.journal.item_keys import ITEM, RECEIPT
from builder.journal.keys import Group
from builder.journal.owned_reader import EQUIPMENT, OWNED, STOCK
from builder.journal.plan_reader import PHASE, PLAN
from builder.journal.settings_reader import SETTINGS
from builder.takeoff.declared import Input
from builder.takeoff.registry import methods

GROUPS: dict[str, Group] = {
    "journal.yaml": SETTINGS,
    "plan.yaml": PLAN,
    "phase": PHASE,
    "owned.yaml": OWNED,
    "owned equipment": EQUIPMENT,
    "owned stock": STOCK,
    "front matter": EPISODE,
    "line item": ITEM,
    "receipt": RECEIPT,
    "stated figure": SAID,
}
METHODS = "take-off methods"
_SECTION = re.compile(r"(<!-- keys: (?P<name>[^>]+?) -->\n).*?(<!-- end -->)", re.DOTALL)


def table(group: Group) -> str:
    """The keys of a group as a Markdown table: key, what it is, an example."""
    rows = ["| key | what it is | for example |", "|---|---|---|"]
    for key in group.keys:
        needed = " (needed)" if key.required else ""
        rows.append(f"| `{key.name}` | {key.meaning}{needed} | `{key.example}` |")
    return "\n".join(rows) + "\n"


def methods_table() -> str:
    """The take-off methods: what each is for, what it takes (what may be left out in brackets), what it gives."""
    rows = ["| method | for | takes | gives |", "|---|---|---|---|"]
    for method in methods():
        takes = ", ".join(_input(one) for one in method.inputs)
        gives = ", ".join(f"`{one.key}`" for one in method.outputs)
        rows.append(f"| `{method.word}` | {method.about} | {takes} | {gives} |")
    return "\n".join(rows) + "\n"


def _input(one: Input) -> str:
    shown = f"`{one.key}: {one.example}`"
    return shown if one.required else f"({shown})"


def with_tables(page: str) -> str:
    """A page with every table between its markers made anew; KeyError for a marker that names no group."""

    def made(found: re.Match[str]) -> str:
        text = methods_table() if found["name"] == METHODS else table(GROUPS[found["name"]])
        return f"{found[1]}{text}{found[3]}"

    return _SECTION.sub(made, page)


def main(files: list[str]) -> None:
    """Rewrite the tables of the pages named."""
    for name in files:
        path = Path(name)
        path.write_text(with_tables(path.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
