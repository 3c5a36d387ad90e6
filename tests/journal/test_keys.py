"""Keys are declared once, as data: each has a meaning, and an example that reads."""

from __future__ import annotations

from collections import Counter
from typing import Any

import pytest

from builder.journal.episode_keys import EPISODE, SAID
from builder.journal.item_keys import ITEM, RECEIPT, WHAT
from builder.journal.keys import Group, Key
from builder.journal.owned_reader import EQUIPMENT, OWNED, STOCK
from builder.journal.plan_reader import PHASE, PLAN
from builder.journal.reading import Reading
from builder.journal.records.written import Mapping
from builder.journal.report import Report
from builder.journal.settings_reader import SETTINGS as SETTINGS_KEYS
from builder.journal.text import Source
from builder.journal.tree import read_tree
from builder.words.place import Place
from tests.journal.samples import DATED, SETTINGS, read, told

GROUPS = (SETTINGS_KEYS, EPISODE, SAID, ITEM, RECEIPT, PLAN, PHASE, OWNED, EQUIPMENT, STOCK)
KEYS = [pytest.param(group, key, id=f"{group.name}-{key.name}") for group in GROUPS for key in group.keys]


def read_alone(key: Key[Any]) -> tuple[object, list[str]]:
    """The example of a key, read through its kind."""
    report = Report()
    node = read_tree(Source(file="example", text=f"{key.name}: {key.example}\n"), report)
    assert isinstance(node, Mapping)
    value = key.kind.read(node.entries[0].value, key.name, Reading(report=report))
    return value, [problem.one_line() for problem in report.problems]


@pytest.mark.parametrize(("group", "key"), KEYS)
def test_every_key_says_what_it_is(group: Group, key: Key[Any]) -> None:
    """A meaning in words, what is expected, and a schema: the format page is made of them."""
    assert group.name
    assert len(key.meaning) > 5
    assert key.meaning[0].islower() or key.meaning[0].isupper()
    assert key.kind.expects
    assert key.kind.schema


@pytest.mark.parametrize(("group", "key"), KEYS)
def test_every_example_reads_through_its_kind(group: Group, key: Key[Any]) -> None:
    """What the page and the messages show as an example is one."""
    value, problems = read_alone(key)
    assert problems == []
    assert value is not None
    assert group.meant(key.name) is key


@pytest.mark.parametrize("group", GROUPS, ids=lambda group: group.name)
def test_no_word_means_two_keys(group: Group) -> None:
    """Neither a name nor another word for it stands twice in a group."""
    words = Counter(word for key in group.keys for word in (key.name, *key.also))
    assert [word for word, times in words.items() if times > 1] == []


# What each example needs beside it to be read in its place.
BESIDE = {
    "journal.yaml": "",
    "front matter": DATED,
    "a line item": "material: Concrete mix\n    quantity: 36 bag\n    cost: 219.60\n",
}
# The other halves of examples that do not stand alone.
WITH = {
    "from": "from: mix\n    source: stock\n    material: Concrete mix\n",
    "refund": "refund: 24.40\n    returned: 4 bag\n    material: Mix\n    quantity: 36 bag\n    cost: 219.60\n",
    "fuel": "fuel: 12.40\n    equipment: saw\n",
    "deposit": "deposit: 100\n    equipment: saw\n    source: hired\n    cost: 5\n",
    "deposit_back": "deposit_back: 100\n    equipment: saw\n    from: mix\n",
    "replacement_cost": "replacement_cost: 14.50\n    material: Mix\n    source: gift\n    quantity: 2 bag\n",
}
PLAN_FOR = """
phases:
  - {key: ground}
  - key: foundation
    planned:
      - {key: mix, material: Mix, cost: 5}
  - key: frame
"""
OWNED_FOR = "equipment: {saw: {name: Saw}}\n"


def as_line(key: Key[Any]) -> str:
    """A line item of its own that has this key as in its example."""
    if key.name in WITH:
        return WITH[key.name]
    if key in WHAT.values():
        return f"{key.name}: {key.example}\n    cost: 5\n" + "    source: hired\n" * (key.name == "equipment")
    beside = [line for line in BESIDE["a line item"].split("\n    ") if not line.startswith(f"{key.name}:")]
    if key.name == "unit_cost":
        beside.remove("cost: 219.60\n")
    return f"{key.name}: {key.example}\n    " + "\n    ".join(line.rstrip("\n") for line in beside) + "\n"


@pytest.mark.parametrize("key", ITEM.keys, ids=lambda key: key.name)
def test_every_example_of_a_line_stands_on_a_line(key: Key[Any]) -> None:
    """With what it needs beside it, it has no problem."""
    front = f"""{DATED}phase: ground
receipts: {{yard: {{items: ["Nails, 5"]}}}}
items:
  - {{material: Mix, quantity: 99 bag, cost: 5, id: mix}}
  - {as_line(key)}"""
    assert told(read(front, plan=PLAN_FOR, owned=OWNED_FOR)) == []


@pytest.mark.parametrize("key", [key for key in EPISODE.keys if key.name != "receipts"], ids=lambda key: key.name)
def test_every_example_of_the_front_matter_stands_there(key: Key[Any]) -> None:
    """With a title, a date and a phase beside it."""
    dates = "" if key.name in ("date", "from", "to") else "date: 2026-04-18\n"
    other = {"from": "to: 2026-04-19\n", "to": "from: 2026-04-18\n"}.get(key.name, "")
    rest = "" if key.name == "title" else "title: T\n"
    rest += "" if key.name == "phase" else "phase: ground\n"
    before = "---\ntitle: Before\ndate: 2026-04-01\nphase: ground\nsnags: [The north corner is still soft]\n---\n"
    result = read(
        f"{key.name}: {key.example}\n{dates}{other}{rest}",
        plan=PLAN_FOR,
        pictures=("photos/pegs.png",),
        more={"episodes/00-before.md": before},
    )
    assert told(result) == []


def test_the_examples_of_the_settings_stand_in_one_file() -> None:
    """All of them together."""
    text = "".join(f"{key.name}: {key.example}\n" for key in SETTINGS_KEYS.keys)
    assert told(read(settings=text)) == []


def test_the_examples_of_plan_and_owned_stand_in_their_files() -> None:
    """All keys of each, together."""
    phase = "".join(f"    {key.name}: {key.example}\n" for key in PHASE.keys if key.name != "key")
    plan = f"phases:\n  - key: ground\n  - key: foundation\n{phase}" + "".join(
        f"{key.name}: {key.example}\n" for key in PLAN.keys if key.name != "phases"
    )
    owned = "".join(
        f"{kind}:\n  one:\n" + "".join(f"    {key.name}: {key.example}\n" for key in group.keys)
        for kind, group in (("equipment", EQUIPMENT), ("stock", STOCK))
    )
    assert told(read(plan=plan, owned=owned)) == []
    for group, name in ((PLAN, "plan"), (OWNED, "owned")):
        text = "".join(f"{key.name}: {key.example}\n" for key in group.keys)
        assert told(read(**{name: text})) == []  # type: ignore[arg-type]


def test_the_examples_of_a_receipt_stand_on_one() -> None:
    """Whether its total is right is for the ledger to say."""
    text = "".join(f"    {key.name}: {key.example}\n" for key in RECEIPT.keys)
    assert told(read(f"{DATED}receipts:\n  yard:\n{text}")) == []


def test_a_said_figure_may_differ() -> None:
    """With its reason."""
    said = ", ".join(f"{key.name}: {key.example}" for key in SAID.keys)
    assert told(read(f"{DATED}stated: {{spent: {{{said}}}}}\n")) == []


class TestUnknownKeys:
    """A word that is no key is a mistake: it would be left out silently."""

    def test_a_misspelt_key_is_named_with_its_likely_name(self) -> None:
        """And all the keys there are, as the guess may be wrong."""
        (line,) = told(read(settings=SETTINGS + "sumary: x\n"))
        names = [key.name for key in SETTINGS_KEYS.keys]
        assert line == (
            "journal.yaml:4:1: mistake: sumary is no key of journal.yaml; expected "
            f"{', '.join(names[:-1])} or {names[-1]}; did you mean summary?"
        )

    def test_another_word_for_a_key_is_known(self) -> None:
        """What people call it elsewhere; and it is not said as well that there is no price."""
        (line,) = told(read(f"{DATED}items:\n  - material: Stone\n    price: 5\n"))
        assert line == (
            "episodes/01-a.md:6:5: mistake: price is no key of a line item; expected cost, as in cost: 219.60; "
            "did you mean cost?"
        )

    @pytest.mark.parametrize(
        ("word", "key"),
        [("Quantity", "quantity"), ("unit cost", "unit_cost"), ("unit-cost", "unit_cost"), ("qty", "quantity"),
         ("labor", "labour"), ("shop", None), ("reciept", None)],
    )  # fmt: skip
    def test_case_spaces_and_dashes_do_not_hide_a_key(self, word: str, key: str | None) -> None:
        """They are recognised in the message, not read."""
        meant = ITEM.meant(word)
        assert (meant.name if meant else None) == key

    def test_a_thousand_unknown_keys_are_all_told(self) -> None:
        """With a likely name for the first of them only, so that it takes no minutes."""
        front = DATED + "".join(f"titel{at}: x\n" for at in range(1000))
        lines = told(read(front))
        assert len(lines) == 1000
        assert lines[0].endswith("did you mean title?")
        assert not lines[-1].endswith("?")

    def test_the_place_of_nothing_is_that_of_its_group(self) -> None:
        """A key that is missing is missing from where the keys begin."""
        report = Report()
        fields = SAID.read(Mapping(Place(file="a", line=3, column=9), ()), Reading(report=report), Place(file="a"))
        assert fields is not None
        assert [str(problem.place) for problem in report.problems] == ["a:3:9"]
        assert not fields.wrote(SAID.keys[0])
