"""Only stories changed: their pages get them, nothing is computed, and where that would not do it is not done."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.app.desk import Desk, again, desk, published

__all__ = ["desk"]  # a fixture: tests ask for it by its name

Change = Callable[[Desk], object]


class Reckoned:
    """How often everything was worked out."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        from builder import app

        self.times, real = 0, app.reckon

        def counted(*words: object, **named: object) -> object:
            self.times += 1
            return real(*words, **named)  # type: ignore[arg-type]

        patch.setattr(app, "reckon", counted)


@pytest.fixture
def reckoned(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> Reckoned:
    """Counts from now on, after the first publish."""
    del desk
    return Reckoned(monkeypatch)


def clean(desk: Desk, patch: pytest.MonkeyPatch) -> dict[str, bytes]:
    """What a publish makes that knows of no other."""
    return published(desk, desk.journal.parent / "clean", patch, "none")


def site(desk: Desk) -> dict[str, bytes]:
    """Every file that stands."""
    return {str(path.relative_to(desk.site)): path.read_bytes() for path in desk.site.rglob("*") if path.is_file()}


STORIES: dict[str, Change] = {
    "a heading": lambda desk: desk.edit(desk.episodes[1], "## Part 4", "## The rails are level"),
    "beside a photo": lambda desk: desk.edit(desk.episodes[0], "## Part 4", "## Rain"),
    "markup": lambda desk: desk.edit(
        desk.episodes[1], "## Part 4", "<section>&amp; <b>so</b> | a\n\n</div>\n\n## Part 4"
    ),
    "two stories": lambda desk: [desk.edit(one, "## Part 4", "## Once more") for one in desk.episodes[:2]],
    "nothing but an empty line": lambda desk: desk.edit(desk.episodes[2], "## Part 4", "\n## Part 4"),
}


@pytest.mark.parametrize("change", STORIES.values(), ids=list(STORIES))
def test_a_story_told_anew_is_on_its_page_without_any_reckoning(
    desk: Desk, reckoned: Reckoned, change: Change, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Byte for byte what a clean publish makes; the next run finds nothing to do; and back it goes as well."""
    first = site(desk)
    change(desk)
    assert again(desk) == 0
    assert reckoned.times == 0
    told = site(desk)
    stands = {path: path.stat() for path in desk.site.rglob("*")}
    assert again(desk) == 0
    assert {path: path.stat() for path in desk.site.rglob("*")} == stands
    assert reckoned.times == 0
    desk.put_back()
    assert again(desk) == 0
    assert reckoned.times == 0
    assert site(desk) == first
    change(desk)
    assert clean(desk, monkeypatch) == told


def test_a_figure_that_the_page_names_already_may_be_named_elsewhere_in_it(
    desk: Desk, reckoned: Reckoned, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it comes to is known; a figure that is new there has to be looked up, once."""
    desk.edit(desk.episodes[1], "## Part 4", "It took {= footing.bags =}.\n\n## Part 4")
    assert again(desk) == 0
    assert reckoned.times == 1
    desk.edit(
        desk.episodes[1], "It took {= footing.bags =}.", "## We poured {= footing.bags =}\n\nAll {= footing.bags =}!"
    )
    assert again(desk) == 0
    assert reckoned.times == 1
    assert site(desk) == clean(desk, monkeypatch)


MORE: dict[str, Change] = {
    "the first words, which describe the page": lambda desk: desk.edit(
        desk.episodes[1], "## Part 1\n", "We began late.\n\n## Part 1\n"
    ),
    "a caption, which lists show": lambda desk: desk.edit(desk.episodes[0], "![The slope]", "![The slope, in rain]"),
    "another photo": lambda desk: desk.edit(desk.episodes[1], "## Part 4", "![It](../photos/a.png)\n\n## Part 4"),
    "a photo swapped under its name": lambda desk: (
        desk.photo("a.png", 3), desk.edit(desk.episodes[1], "## Part 4", "## Part four")
    ),
    "a price": lambda desk: desk.edit(desk.episodes[0], "unit_cost: ", "unit_cost: 1"),
    "a title": lambda desk: desk.edit(desk.episodes[0], "title: Weekend 1", "title: Weekend one"),
    "the plan": lambda desk: (
        desk.edit(desk.journal / "plan.yaml", "unit_cost: 11", "unit_cost: 12"),
        desk.edit(desk.episodes[1], "## Part 4", "## Part four"),
    ),
    "a new episode": lambda desk: (desk.journal / "episodes/00004-more.md").write_text(
        "---\ntitle: More\ndate: 2000-03-01\nphase: ground\n---\nMore.\n", "utf-8"
    ),
    "a page that somebody edited": lambda desk: (
        (desk.site / "plan/index.html").write_text("mine", "utf-8"),
        desk.edit(desk.episodes[1], "## Part 4", "## Part four"),
    ),
    "the very page that somebody edited": lambda desk: (
        (desk.site / "episodes/02-weekend-2/index.html").write_text("mine", "utf-8"),
        desk.edit(desk.episodes[1], "## Part 4", "## Part four"),
    ),
    "the cache is gone": lambda desk: (
        [file.unlink() for file in desk.cache.rglob("*.bbpack")],
        desk.edit(desk.episodes[1], "## Part 4", "## Part four"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("change", MORE.values(), ids=list(MORE))
def test_what_asks_for_more_than_a_story_gets_more(
    desk: Desk, reckoned: Reckoned, change: Change, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Everything is worked out, and the site is what a clean publish makes."""
    change(desk)
    assert again(desk) == 0
    assert reckoned.times == 1
    assert site(desk) == clean(desk, monkeypatch)


def test_a_mistake_in_a_story_is_told(desk: Desk, reckoned: Reckoned, capsys: pytest.CaptureFixture[str]) -> None:
    """A figure left open, and one that there is not."""
    before = site(desk)
    for mistake, said in (("{= spent", "write {= spent to date =}, for"), ("{= spend of ruof =}", "is no figure")):
        desk.edit(desk.episodes[1], "## Part 4", f"{mistake}\n\n## Part 4")
        capsys.readouterr()
        assert again(desk) == 1
        assert said in capsys.readouterr().err
        desk.put_back()
    assert site(desk) == before
    assert reckoned.times == 2


def test_warnings_in_a_story_keep_their_lines(
    desk: Desk, reckoned: Reckoned, capsys: pytest.CaptureFixture[str]
) -> None:
    """A picture without words is warned about on the line where it stands now."""
    desk.edit(desk.episodes[0], "![The slope]", "![]")
    again(desk)
    lines = desk.episodes[0].read_text("utf-8").splitlines()
    at = next(number for number, line in enumerate(lines, 1) if line.startswith("![]"))
    assert f":{at}:" in capsys.readouterr().err
    desk.edit(desk.episodes[0], "![]", "Rain, rain, rain.\n\n![]")
    again(desk)
    assert f":{at + 2}:" in capsys.readouterr().err
    desk.edit(desk.episodes[1], "## Part 4", "## Part four")
    again(desk)
    assert f":{at + 2}:" in capsys.readouterr().err
    assert reckoned.times == 2


def test_what_is_said_is_what_working_everything_out_says(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The same words with and without what was noted."""
    told = []
    for cache in (str(desk.cache), str(tmp_path / "another")):
        desk.put_back()
        again(desk)
        desk.edit(desk.episodes[1], "## Part 4", "## Part four")
        monkeypatch.setenv("BARROWBOOK_CACHE", cache)
        capsys.readouterr()
        assert again(desk) == 0
        told.append(capsys.readouterr())
    assert told[0] == told[1]
    assert "1 changed of the site's files, 1 of them pages." in told[0].out


def test_many_stories_at_once_are_worked_out(desk: Desk, monkeypatch: pytest.MonkeyPatch, reckoned: Reckoned) -> None:
    """One by one would take longer."""
    monkeypatch.setattr("builder.retold.MOST", 1)
    STORIES["two stories"](desk)
    assert again(desk) == 0
    assert reckoned.times == 1
