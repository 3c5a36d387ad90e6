"""Only stories changed: their pages get them, nothing is computed, and where that would not do it is not done."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.publish.folder import publish_folder
from builder.publish.folder_errors import InUse
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


def clean(desk: Desk) -> dict[str, bytes]:
    """What a publish makes that knows of no other."""
    with pytest.MonkeyPatch.context() as patch:  # and what comes after knows again
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
def test_a_story_told_anew_is_on_its_page_without_any_reckoning(desk: Desk, reckoned: Reckoned, change: Change) -> None:
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
    assert clean(desk) == told


def test_a_figure_that_the_page_names_already_may_be_named_elsewhere_in_it(desk: Desk, reckoned: Reckoned) -> None:
    """What it comes to is known; a figure that is new there has to be looked up, once."""
    desk.edit(desk.episodes[1], "## Part 4", "It took {= footing.bags =}.\n\n## Part 4")
    assert again(desk) == 0
    assert reckoned.times == 1
    desk.edit(
        desk.episodes[1], "It took {= footing.bags =}.", "## We poured {= footing.bags =}\n\nAll {= footing.bags =}!"
    )
    assert again(desk) == 0
    assert reckoned.times == 1
    assert site(desk) == clean(desk)


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
def test_what_asks_for_more_than_a_story_gets_more(desk: Desk, reckoned: Reckoned, change: Change) -> None:
    """Everything is worked out, and the site is what a clean publish makes."""
    change(desk)
    assert again(desk) == 0
    assert reckoned.times == 1
    assert site(desk) == clean(desk)


SO, HIDDEN = "\nSo it went.\n", "\nSo it went<!-- ![The form](../photos/b.png) -->.\n"  # the latter counts as shown


def told_in_turn(desk: Desk, *endings: str) -> None:
    """Publish the first story with each ending in turn; the last time it has to be what a clean publish makes."""
    first = desk.first[desk.episodes[0]]
    for ending in endings:
        desk.episodes[0].write_bytes(first.rstrip() + ending.encode())
        assert again(desk) == 0
    assert site(desk) == clean(desk)


def test_stories_that_come_to_one_page_are_kept_apart(desk: Desk) -> None:
    """What they show differs in lists only: the words of a picture, or a picture in a comment."""
    desk.photo("b.png", 5)
    desk.first[desk.episodes[0]] = desk.episodes[0].read_bytes().replace(b"![The slope](../photos/a.png)\n\n", b"")
    told_in_turn(desk, HIDDEN, SO, f"{HIDDEN}\nMore.\n")
    plain, escaped = "\n![It_is so](../photos/b.png)\n", "\n![It\\_is so](../photos/b.png)\n"
    told_in_turn(desk, escaped, plain, f"{escaped}\nMore.\n")


def test_a_photo_that_only_a_comment_named_is_what_it_is_now(desk: Desk) -> None:
    """It was another when it was first noted."""
    desk.photo("b.png", 2)
    told_in_turn(desk, HIDDEN)
    desk.photo("b.png", 4)
    told_in_turn(desk, HIDDEN, HIDDEN.replace("<!-- ", "").replace(" -->", ""))


@pytest.mark.parametrize("times", range(3))
def test_a_warning_of_a_story_is_told_when_the_story_comes_back(
    desk: Desk, capsys: pytest.CaptureFixture[str], times: int
) -> None:
    """Though the same page stood there without it, too."""
    wordless = f"{HIDDEN.replace('The form', '')}\n{times}\n"
    desk.photo("b.png", 2)
    told_in_turn(desk, wordless, f"{SO}\n{times}\n")
    capsys.readouterr()
    desk.episodes[0].write_bytes(desk.first[desk.episodes[0]].rstrip() + f"{wordless}\nMore.\n".encode())
    assert again(desk) == 0
    assert "has no words for those who cannot see it" in capsys.readouterr().err


def test_a_photo_saved_while_a_publish_is_at_work_is_not_overlooked(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is noted is what was read, not what lies there at the end."""

    def saved_meanwhile(*words: object, **named: object) -> object:
        done = publish_folder(*words, **named)  # type: ignore[arg-type]
        desk.photo("a.png", 3)
        return done

    desk.photo("a.png", 2)
    with monkeypatch.context() as patch:
        patch.setattr("builder.site.publish_folder", saved_meanwhile)
        assert again(desk) == 0
    assert again(desk) == 0
    assert site(desk) == clean(desk)


def test_a_pipe_in_the_place_of_a_page_is_not_read(desk: Desk, reckoned: Reckoned) -> None:
    """It would never come to an end. What others put there is in the way, and told so or written over as ever."""
    page = desk.site / "episodes/02-weekend-2/index.html"
    page.unlink()
    os.mkfifo(page)
    STORIES["two stories"](desk)
    again(desk)
    assert reckoned.times == 1


def test_a_warning_about_the_settings_does_not_stand_in_the_way(
    desk: Desk, reckoned: Reckoned, capsys: pytest.CaptureFixture[str]
) -> None:
    """It has nothing to do with a story, and is told again."""
    desk.edit(desk.journal / "journal.yaml", "language: en-US", "language: ar-EG")
    again(desk)
    first = capsys.readouterr().err
    assert "ar-EG" in first
    STORIES["a heading"](desk)
    again(desk)
    assert capsys.readouterr().err == first
    assert reckoned.times == 1


def test_another_publish_at_work_is_waited_for_once(desk: Desk, reckoned: Reckoned) -> None:
    """By whoever makes everything, not before."""
    asked: list[object] = []

    def busy(*_: object, **named: object) -> object:
        asked.append(named["wait"])
        raise InUse("another publish is at work", "", "")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("builder.retold.publish_folder", busy)
        STORIES["a heading"](desk)
        assert again(desk) == 0
    assert asked == [0]
    assert reckoned.times == 1


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
    desk.edit(desk.episodes[0], "![]", "\n\n![]")
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
