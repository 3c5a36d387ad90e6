"""An episode without a date or a title that could be read: all else that is wrong with it is told in the same run."""

from __future__ import annotations

from tests.journal.samples import read, told
from tests.journal.test_messages import as_told
from tests.journal.test_together import PLAN, places

FRONT = """title: T
date: 11/21/2026
summary: Now at {= spent
phase: fundation
receipts:
  yard: {tax: 7%}
items:
  - {material: Stone, cost: 9, receipt: yadr, against: mixx}
"""
STORY = "\nIt took {= spent so far.\n\n![Pegs](photos/pegs.png)\n"
ALL = """episodes/01-a.md:3:7: mistake: date: 11/21/2026 is not a date
expected a date such as 2026-04-18 (year, month, day)
so write 2026-11-21

episodes/01-a.md:12:9: mistake: a figure begins with {= here and does not end with =}
expected {=, the name of a figure and =}
so write {= spent to date =}, for instance

episodes/01-a.md:4:10: mistake: a figure begins with {= here and does not end with =}
expected {=, the name of a figure and =}
so write {= spent to date =}, for instance

episodes/01-a.md:5:8: mistake: fundation is no phase of the plan
expected ground or foundation
so did you mean foundation?

episodes/01-a.md:9:56: mistake: against: mixx is no planned line
expected mix
so did you mean mix?

episodes/01-a.md:9:41: mistake: receipt: yadr is no receipt of this episode
expected yard
so did you mean yard?

episodes/01-a.md:7:3: mistake: no line stands on the receipt yard
expected at least one line on each receipt
so put lines under its items:, or write receipt: on them

episodes/01-a.md:14:1: mistake: there is no picture photos/pegs.png in the journal
expected a picture (png, jpg, webp or gif) that is there
so put the file there, or correct the name"""


def test_an_episode_without_a_date_is_read_to_its_end() -> None:
    """What its lines and its story name is looked up: nothing waits until the date is mended."""
    assert as_told(read(FRONT, story=STORY, plan=PLAN).problems) == ALL


def test_so_is_one_without_a_title() -> None:
    """All the same mistakes, but for the first."""
    front = FRONT.replace("title: T\ndate: 11/21/2026\n", "date: 2026-11-21\n\n")
    first, *others = as_told(read(front, story=STORY, plan=PLAN).problems).split("\n\n")
    assert first == (
        "episodes/01-a.md:2:1: mistake: front matter has no title\nexpected text\nso add title: Pegging out"
    )
    assert others == ALL.split("\n\n")[1:]


def test_a_story_is_read_though_its_front_matter_is_none() -> None:
    """Its mistakes are told beside the one that keeps the keys from being read."""
    result = read("title: [\n", story="\nIt took {= spent so far.\n")
    assert places(told(result)) == ["episodes/01-a.md:3", "episodes/01-a.md:5"]


def test_an_episode_without_a_date_stands_in_no_order() -> None:
    """Nobody knows what came before it: nothing is said of progress that goes back, or of work that was done."""
    first = "title: T\ndate: soon\nphase: ground\nprogress: {ground: 30%}\nhours: 3\n"
    third = "---\ntitle: T\ndate: 2026-04-25\nphase: ground\ndone: [ground]\nprogress: {ground: 90%}\n---\n"
    result = read(first, plan=PLAN, more={"episodes/03-c.md": third})
    assert places(told(result)) == ["episodes/01-a.md:3"]
    assert result.journal is not None
    assert [episode.number for episode in result.journal.episodes] == [3]
    assert not result.whole
