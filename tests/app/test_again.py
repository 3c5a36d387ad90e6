"""Publishing again: what comes of it is what a clean publish makes, whatever was changed, kept or spoilt between."""

from __future__ import annotations

import datetime
import random
from collections.abc import Callable
from unicodedata import normalize

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.again import without_story
from builder.publish.templates import Templates
from tests.app.desk import Desk, again, desk, published

__all__ = ["desk"]  # a fixture: tests ask for it by its name

LATER = datetime.date(2026, 11, 1)


Act = Callable[[Desk, random.Random], None]


def a_word(desk: Desk, chance: random.Random) -> None:
    """In a story."""
    desk.edit(chance.choice(desk.episodes), "## Part 4", f"## Turn {chance.randrange(3)}\n\n## Part 4")


def how_it_begins(desk: Desk, chance: random.Random) -> None:
    """An episode without a summary is described by that."""
    desk.edit(chance.choice(desk.episodes), "## Part 1\n", f"It began at {chance.randrange(3)}.\n\n## Part 1\n")


def a_caption(desk: Desk, chance: random.Random) -> None:
    """Which lists of episodes show as well."""
    desk.edit(desk.episodes[0], "![The slope", f"![The slope {chance.randrange(3)}")


def a_figure(desk: Desk, chance: random.Random) -> None:
    """Named in a story that named none there."""
    name = chance.choice(["paid to date", "job cost of ground", "footing.bags"])  # and again, once it is named
    desk.edit(chance.choice(desk.episodes), "## Part 4", f"It took {{= {name} =}}.\n\n## Part 4")


def a_price(desk: Desk, chance: random.Random) -> None:
    """Of the first episode, so that every running total moves."""
    desk.edit(desk.episodes[0], "unit_cost: ", f"unit_cost: {chance.randrange(1, 9)}")


def another_name(desk: Desk, chance: random.Random) -> None:
    """Of an episode's file."""
    file = chance.choice(desk.episodes)
    file.rename(file.with_name(f"{file.name[:5]}-called-{chance.randrange(9)}.md"))


def one_less(desk: Desk, chance: random.Random) -> None:
    """An episode goes, unless it is the last that there is."""
    if len(desk.episodes) > 1:
        chance.choice(desk.episodes).unlink()


def another_photo(desk: Desk, chance: random.Random) -> None:
    """Under the same name."""
    desk.photo("a.png", chance.randrange(2, 5))


def settings_too(desk: Desk, chance: random.Random) -> None:
    """The language of every page, or the rate of the author's hours."""
    old, new = chance.choice([("language: en-US", "language: de"), ("labour_rate: 18", "labour_rate: 21")])
    desk.edit(desk.journal / "journal.yaml", old, new)


def as_at_first(desk: Desk, chance: random.Random) -> None:
    """What was published before is published again, over something else."""
    del chance
    desk.put_back()


def a_page_spoilt(desk: Desk, chance: random.Random) -> None:
    """Somebody wrote into the site, or took a file out of it."""
    file = desk.site / chance.choice(["index.html", "figures.json", "ledger/index.html"])
    if file.exists():
        chance.choice([lambda: file.write_text("mine", "utf-8"), file.unlink])()


def nothing(desk: Desk, chance: random.Random) -> None:
    """It is only published again."""
    del desk, chance


ACTS: list[Act] = [
    a_word, how_it_begins, a_caption, a_figure, a_price, another_name, one_less, another_photo, settings_too,
    as_at_first, a_page_spoilt, nothing,
]  # fmt: skip


@settings(max_examples=4)
@given(st.lists(st.tuples(st.sampled_from(ACTS), st.integers(0, 99)), min_size=3, max_size=5))
def test_publishing_again_gives_what_a_clean_publish_gives(
    tmp_path_factory: pytest.TempPathFactory, acts: list[tuple[Act, int]]
) -> None:
    """Byte for byte, after every change."""
    desk = Desk(tmp_path_factory.mktemp("again"))
    with pytest.MonkeyPatch.context() as patch:
        published(desk, desk.site, patch, str(desk.cache))
        for number, (act, seed) in enumerate(acts):
            act(desk, random.Random(seed))
            again = published(desk, desk.site, patch, str(desk.cache))
            assert again == published(desk, desk.journal.parent / f"clean-{number}", patch, "none")


def test_nothing_changed_is_found_out_without_computing_anything(
    desk: Desk, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """No page is made and no file is written; the warnings are told all the same."""
    capsys.readouterr()
    first = again(desk), *capsys.readouterr()

    def never(*_: object, **__: object) -> None:
        raise AssertionError("it was computed again")

    monkeypatch.setattr("builder.app.work_out", never)
    before = {path: path.stat() for path in desk.site.rglob("*")}
    assert (again(desk), *capsys.readouterr()) == first
    assert {path: path.stat() for path in desk.site.rglob("*")} == before
    assert first[0] == 0
    assert f"Nothing has changed. Open {desk.site / 'index.html'}" in first[1]
    assert "3 warnings, no mistakes." in first[2]


def test_a_word_in_one_story_makes_one_page(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """And no other page is even laid out, unless the site has lost it. (The page does not name this figure yet, so
    what is noted of it does not do: see test_retold.)
    """
    made: list[str] = []
    rendered = Templates.render
    monkeypatch.setattr(Templates, "render", lambda self, page: made.append(page.frame.path) or rendered(self, page))
    desk.edit(desk.episodes[1], "## Part 4", "## The rails are level {= footing.bags =}")
    again(desk)
    assert made == ["episodes/02-weekend-2/index.html"]
    assert "The rails are level" in (desk.site / made.pop()).read_text("utf-8")
    (desk.site / "plan/index.html").unlink()
    desk.edit(desk.episodes[0], "## Part 4", "## Rain {= footing.bags =}")
    again(desk)
    assert sorted(made) == ["episodes/01-weekend-1/index.html", "plan/index.html"]


@pytest.mark.parametrize(
    ("raw", "kept"),
    [
        (b"---\ntitle: A\n---\nOnce\n---\nmore", b"---\ntitle: A\n---"),
        (b"--- \r\ntitle: A\r\n---\r\nOnce", b"--- \r\ntitle: A\r\n---\r"),
        (b"---\ntitle: A\n--- no end\nOnce", b"---\ntitle: A\n--- no end\nOnce"),
        (b"\xef\xbb\xbf---\ntitle: A\n---\nOnce", b"\xef\xbb\xbf---\ntitle: A\n---\nOnce"),
        (b"", b""),
    ],
)
def test_what_is_not_surely_a_story_counts_as_front_matter(raw: bytes, kept: bytes) -> None:
    """Better to make a page too many."""
    assert without_story(raw) == kept


@pytest.mark.parametrize("act", [a_word, another_photo, settings_too, a_page_spoilt])
def test_a_change_is_never_overlooked(desk: Desk, act: Act, capsys: pytest.CaptureFixture[str]) -> None:
    """Not a word, not a photo under the same name, not a setting, not a page that somebody touched."""
    act(desk, random.Random(3))
    capsys.readouterr()
    assert again(desk) == 0
    assert "Nothing has changed" not in capsys.readouterr().out


def test_a_photo_whose_accents_are_written_the_other_way_is_looked_at_all_the_same(
    desk: Desk, capsys: pytest.CaptureFixture[str]
) -> None:
    """The story says `é` as one character, the file's name as two; then the picture is another."""
    desk.edit(desk.episodes[0], "photos/a.png", f"photos/{normalize('NFC', 'é')}.png")
    for seed in (1, 4):
        desk.photo(f"{normalize('NFD', 'é')}.png", seed)
        capsys.readouterr()
        assert again(desk) == 0
        assert "Nothing has changed" not in capsys.readouterr().out


def test_another_day_of_the_forecast_is_another_site(desk: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    """The option counts among what a site is made from."""
    capsys.readouterr()
    assert again(desk, "--as-of", LATER.isoformat()) == 0
    assert "Nothing has changed" not in capsys.readouterr().out


def test_a_mistake_is_told_though_the_site_still_stands(desk: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    """And told again, as often as it is asked."""
    desk.edit(desk.episodes[0], "hours: 8", "hors: 8")
    for _ in range(2):
        capsys.readouterr()
        assert again(desk) == 1
        assert "Nothing was published." in capsys.readouterr().err


def test_a_cache_that_was_spoilt_costs_time_and_nothing_else(desk: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    """Every byte of it overwritten, after some publishes of which each used what the one before had kept."""
    for word in ("Sand", "Stone", "Clay"):
        desk.edit(desk.episodes[0], "Part", f"{word} Part")
        assert again(desk) == 0
    for file in desk.cache.rglob("*"):
        if file.is_file():
            file.write_bytes(b"\0" * file.stat().st_size)
    capsys.readouterr()
    assert again(desk) == 0
    assert "Nothing has changed." in capsys.readouterr().out
