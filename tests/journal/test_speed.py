"""No text is so awkward that reading it takes long: time grows with its length and not with its square.

Each text is as long as may be, or nearly. Read in straight order they take well under a second of the processor;
where every character is looked at again for every other, minutes.
"""

from __future__ import annotations

import time
import tracemalloc

import pytest

from tests.journal.samples import DATED, SETTINGS, read

LENGTH = 190_000
MOST_SECONDS = 10.0  # of the processor, on any machine that runs the other tests


def filled(piece: str, before: str = "", after: str = "") -> str:
    """A text of about the longest length, of one piece again and again."""
    return before + piece * (LENGTH // len(piece)) + after


STORIES = {
    "figures": filled("{= spent =}\n"),
    "figures that never end": filled("{="),
    "one figure of spaces": filled(" ", "{="),
    "figures over lines": filled("{=\n"),
    "pictures on one line": filled("![a](x.png)"),
    "pictures on their lines": filled("![a](x.png)\n"),
    "pictures that never begin": filled("!["),
    "pictures that never end": filled("![]("),
    "brackets in brackets": filled("[", "!"),
    "round brackets in a picture": filled("(", "![a]("),
    "spaces before a picture's title": filled(" ", "![a](x", '")'),
    "tags that never end": filled("<img "),
    "a tag of one attribute": filled("src ", "<img ", ">"),
    "addresses": filled("[a]: b\n"),
}
OTHERS = {
    "tabs between two days": filled("\t", "away: 2026-07-04", "x\n"),
    "spaces between two days": filled(" ", "away: '2026-07-04", "x'\n"),
    "tabs before a unit": filled("\t", "floor_area: 1", "x\n"),
    "tabs in a rate": filled("\t", "travel_rate: 1", "a\n"),
    "tabs in a week": filled("\t", "work_week: {saturday: 1", "x}\n"),
}
# Each of these once took two hundred bytes and more for every character of the story.
ROOMY = {
    "a path": filled(".", "![a](../", ")"),
    "a path of % signs": filled("%", "![a](../", ")"),
    "a name of a picture": filled("a", "![", "](a.png)"),
    "a name of a figure": filled("a", "{= ", " =}"),
}
MOST_BYTES = 40 * LENGTH
FRONTS = {
    "keys nobody knows": "".join(f"k{number}: {number}\n" for number in range(LENGTH // 14)),
    "one key": filled("weather: a\n"),
    "short lines": filled("  - a, 1\n", "items:\n"),
    "lines that are none": filled("  - {x: 1, y: 2}\n", "items:\n"),
    "commas in a short line": filled("a,", "items:\n  - ", "\n"),
    "amounts in a short line": filled(", 1.00", "items:\n  - a", "\n"),
    "spaces in a short line": filled(" ", "items:\n  - 'a", "b'\n"),
    "snags that never were": "fixed:\n" + "".join(f"  - a{number}\n" for number in range(LENGTH // 12)),
    "a number": filled("9", "hours: ", "\n"),
    "zeros": filled("0", "hours: ", "1\n"),
    "a quantity of many parts": filled("1 ft ", "items:\n  - {material: a, cost: 1, quantity: '", "'}\n"),
    "a size of many sides": filled("1 x ", "items:\n  - {material: a, cost: 1, size: '", "'}\n"),
    "a guess of spaces": filled(" ", "hours: '1", "ish'\n"),
    "a date of dashes": filled("1-", "from: ", "\n"),
    "quotes": filled('"', "summary: ", "\n"),
    "colons": filled("a: ", "summary: ", "\n"),
    "spaces before a colon": filled(" ", "summary: a", "b: c\n"),
    "braces of many keys": "stated: {" + "".join(f"a{at}: 1, b{at}, " for at in range(LENGTH // 22)) + "}\n",
    "chapters on one line": "chapters: {" + "".join(f"'{at}': a, " for at in range(LENGTH // 14)) + "}\n",
    "open brackets": filled("[", "summary: "),
    "indents": "".join(" " * depth + "a:\n" for depth in range(600)),
    "tabs": filled("\t"),
    "names for values": filled("a: &x\n"),
    "numbers behind signs": filled("  - a #1\n", "snags:\n"),
}


@pytest.mark.parametrize("story", STORIES.values(), ids=STORIES)
def test_no_story_takes_long(story: str) -> None:
    """Whatever stands in it."""
    begun = time.process_time()
    read(DATED, story=story)
    assert time.process_time() - begun < MOST_SECONDS


@pytest.mark.parametrize("front", FRONTS.values(), ids=FRONTS)
def test_no_front_matter_takes_long(front: str) -> None:
    """Also when it is a mistake from end to end; each mistake stays short."""
    begun = time.process_time()
    result = read(DATED + front)
    assert time.process_time() - begun < MOST_SECONDS
    assert len(result.problems) <= 1001
    assert all(len(problem.one_line()) < 1200 for problem in result.problems)


@pytest.mark.parametrize("settings", OTHERS.values(), ids=OTHERS)
def test_no_settings_take_long(settings: str) -> None:
    """However far apart two words stand."""
    begun = time.process_time()
    result = read(DATED, settings=SETTINGS + settings)
    assert time.process_time() - begun < MOST_SECONDS
    assert len(result.problems) == 1


@pytest.mark.parametrize("story", ROOMY.values(), ids=ROOMY)
def test_no_story_takes_much_room(story: str) -> None:
    """A few times its own length, while it is read."""
    tracemalloc.start()
    try:
        read(DATED, story=story)
        assert tracemalloc.get_traced_memory()[1] < MOST_BYTES
    finally:
        tracemalloc.stop()
