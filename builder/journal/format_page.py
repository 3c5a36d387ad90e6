"""The tables of the format page, made from the declared keys, so that page and reading cannot drift apart.

`python -m builder.journal.format_page README.md` writes them between their markers.
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
_SECTION = re.compile(r"(<!-- keys: (?P<name>[^>]+?) -->\n).*?(<!-- end -->)", re.DOTALL)


def table(group: Group) -> str:
    """The keys of a group as a Markdown table: key, what it is, an example."""
    rows = ["| key | what it is | for example |", "|---|---|---|"]
    for key in group.keys:
        needed = " (needed)" if key.required else ""
        rows.append(f"| `{key.name}` | {key.meaning}{needed} | `{key.example}` |")
    return "\n".join(rows) + "\n"


def with_tables(page: str) -> str:
    """A page with every table between its markers made anew; KeyError for a marker that names no group."""
    return _SECTION.sub(lambda found: f"{found[1]}{table(GROUPS[found['name']])}{found[3]}", page)


def main(files: list[str]) -> None:
    """Rewrite the tables of the pages named."""
    for name in files:
        path = Path(name)
        path.write_text(with_tables(path.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
