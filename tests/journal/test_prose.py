"""What is read of a story: the figures it names and the pictures it shows, each at its place."""

from __future__ import annotations

import unicodedata
from typing import Literal

import pytest

from builder.words.misread import clipped
from tests.journal.samples import DATED, episode, read, told, whole

Form = Literal["NFC", "NFD"]
PHOTOS = ("photos/pegs.png", "photos/my photo.jpg", "photos/photo (1).jpg", "top.png")
FIRST = DATED.count("\n") + 3  # the line of the file on which the story begins


def shown(story: str, pictures: tuple[str, ...] = PHOTOS) -> list[str]:
    """The pictures of a story by path, which must all be there."""
    result = read(DATED, story=story, pictures=pictures)
    assert [line for line in told(result) if "no words for those" not in line] == []
    assert result.journal is not None
    return [picture.path for picture in result.journal.episodes[0].prose.pictures]


class TestFigures:
    """`{= spent to date =}` prints a figure."""

    @pytest.mark.parametrize(
        ("story", "name"),
        [
            ("Spent {= spent =}.", "spent"),
            ("{=spent=}", "spent"),
            ("{=  job   cost of\tfoundation =}", "job cost of foundation"),
            ("# So far {= spent to date =}", "spent to date"),
            ("![a {= spent =}](top.png)", "spent"),
            ("It came to {= spent\nto date =} by then.", "spent to date"),
            ("{= footing.bags =}", "footing.bags"),
        ],
    )
    def test_a_figure_is_found_by_its_name(self, story: str, name: str) -> None:
        """In a heading, a caption, or over the end of a line."""
        (mark,) = read(DATED, story=story, pictures=PHOTOS).journal.episodes[0].prose.marks  # type: ignore[union-attr]
        assert mark.name == name
        assert story[mark.start : mark.end].startswith("{=")
        assert story[mark.start : mark.end].endswith("=}")

    def test_its_place_is_that_in_the_file(self) -> None:
        """Below the front matter, with a mark as long as itself."""
        story = "One.\n\nÉtée {= spent =} and {= paid =}.\n"
        marks = episode("", story).prose.marks
        assert [str(mark.place) for mark in marks] == [
            f"episodes/01-a.md:{FIRST + 2}:6",
            f"episodes/01-a.md:{FIRST + 2}:22",
        ]
        assert [mark.place.width for mark in marks] == [11, 10]

    @pytest.mark.parametrize(
        ("story", "found", "at"),
        [
            ("So {= spent to date.\n", "a figure begins with {= here and does not end with =}", f"{FIRST}:4"),
            ("So {= spent }.\n", "a figure begins with {= here and does not end with =}", f"{FIRST}:4"),
            ("So {= spent\n\n=}.\n", "a figure begins with {= here and does not end with =}", f"{FIRST}:4"),
            ("\n{= {= spent =}\n", "a figure begins with {= here and does not end with =}", f"{FIRST + 1}:1"),
            ("So {= =}.\n", "no figure is named between {= and =}", f"{FIRST}:4"),
            ("So {==}.\n", "no figure is named between {= and =}", f"{FIRST}:4"),
        ],
    )
    def test_a_figure_that_is_not_closed_would_stand_on_the_page(self, story: str, found: str, at: str) -> None:
        """So it is a mistake."""
        assert told(read(DATED, story=story)) == [
            (
                f"episodes/01-a.md:{at}: mistake: {found}; expected {{=, the name of a figure and =}}; "
                "write {= spent to date =}, for instance"
            )
        ]

    def test_braces_of_other_kinds_are_text(self) -> None:
        """Nobody is told off for them."""
        assert episode("", "{spent}, { = x = }, =} and {% x %}\n").prose.marks == ()


class TestPictures:
    """A picture lies in the journal's folder, and is written as it is found from the episode or from the top."""

    @pytest.mark.parametrize(
        ("story", "path"),
        [
            ("![Pegs](../photos/pegs.png)", "photos/pegs.png"),
            ("![Pegs](photos/pegs.png)", "photos/pegs.png"),
            ("![Pegs](./photos/pegs.png)", "photos/pegs.png"),
            ('![Pegs](../photos/pegs.png "In the rain")', "photos/pegs.png"),
            ("![Pegs](../photos/pegs.png 'In the rain')", "photos/pegs.png"),
            ("![Pegs](<../photos/my photo.jpg>)", "photos/my photo.jpg"),
            ("![Pegs](../photos/my photo.jpg)", "photos/my photo.jpg"),
            ("![Pegs](../photos/my%20photo.jpg)", "photos/my photo.jpg"),
            ("![Pegs](../photos/photo (1).jpg)", "photos/photo (1).jpg"),
            ("![The [north] pegs](top.png)", "top.png"),
            ("![Pegs][p]\n\n[p]: ../photos/pegs.png\n", "photos/pegs.png"),
            ("![P][]\n\n[p]: <../photos/pegs.png>\n", "photos/pegs.png"),
            ('<img src="../photos/pegs.png" alt="Pegs">', "photos/pegs.png"),
            ("<IMG alt='Pegs' SRC='../photos/my photo.jpg' />", "photos/my photo.jpg"),
            ("<img src=top.png alt=''>", "top.png"),
            ("[![Pegs](top.png)](https://example.org)", "top.png"),
        ],
    )
    def test_a_picture_is_found_however_it_is_written(self, story: str, path: str) -> None:
        """Spaces and brackets in names are what cameras and downloads make."""
        assert shown(story) == [path]

    def test_pictures_stand_in_the_order_of_the_story(self) -> None:
        """Whatever way each is written."""
        assert shown("<img src='top.png' alt='x'> ![a](photos/pegs.png) ![b](top.png)") == [
            "top.png", "photos/pegs.png", "top.png",
        ]  # fmt: skip

    def test_a_link_is_no_picture(self) -> None:
        """It leads where it likes."""
        assert shown("[the yard](https://example.org/a.png) and `![x]` and ![ not one\n") == []

    INSIDE = "expected a picture in the journal's folder, such as ../photos/pegs.png"

    @pytest.mark.parametrize(
        ("path", "found", "fix"),
        [
            ("../../album/party.png", "lies outside the journal", "move the file into photos/"),
            ("../photos/../../x.png", "lies outside the journal", "move the file into photos/"),
            ("photos//pegs.png", "lies outside the journal", "move the file into photos/"),
            ("%2e%2e/%2e%2e/x.png", "lies outside the journal", "move the file into photos/"),
            ("/etc/passwd", "is a place on your own computer", "copy the file into photos/"),
            ("~/x.png", "is a place on your own computer", "copy the file into photos/"),
            ("C:/Pictures/x.png", "is a place on your own computer", "copy the file into photos/"),
            ("C:\\x.png", "is a place on your own computer", "copy the file into photos/"),
            ("file:///etc/passwd", "is a place on your own computer", "copy the file into photos/"),
            ("javascript:alert(1)", "is a place on your own computer", "copy the file into photos/"),
            ("..\\photos\\pegs.png", "is written with \\", "write ../photos/pegs.png"),
        ],
    )
    @pytest.mark.parametrize("way", ["![x]({})", "<img alt='x' src='{}'>", "cover"])
    def test_a_picture_outside_is_refused(self, path: str, found: str, fix: str, way: str) -> None:
        """In the story and as the cover, whatever way it is written."""
        front, story = (f"cover: '{path}'\n", "") if way == "cover" else ("", way.format(path) + "\n")
        at = "4:8" if way == "cover" else f"{FIRST}:1"
        assert told(read(DATED + front, story=story, pictures=PHOTOS)) == [
            f"episodes/01-a.md:{at}: mistake: the picture {path} {found}; {self.INSIDE}; {fix}"
        ]

    @pytest.mark.parametrize("path", ["https://example.org/a.png", "http://example.org/a.png", "//example.org/a.png"])
    def test_a_picture_of_another_host_is_refused(self, path: str) -> None:
        """No page asks another host for anything."""
        (line,) = told(read(DATED, story=f"![x]({path})\n"))
        assert line == (
            f"episodes/01-a.md:{FIRST}:1: mistake: the picture {path} is on another host; expected a picture in "
            "photos/, so that no page asks another host for anything; "
            "put the file into photos/ and write ../photos/ and its name"
        )

    def test_a_picture_whose_path_never_ends_is_told_short(self) -> None:
        """A bracket that was left open makes one of all that follows."""
        (line,) = told(read(DATED, story=f"![x](../{'photos%2f' * 1000})\n"))
        assert line == (
            f"episodes/01-a.md:{FIRST}:1: mistake: the picture ../{'photos%2f' * 6}... has a path of 9,003 characters; "
            f"{self.INSIDE}; look for a bracket left open"
        )

    def test_a_picture_in_the_text_itself_is_not_printed_in_the_message(self) -> None:
        """It may be as long as a photo."""
        (line,) = told(read(DATED, story=f"![x](data:image/png;base64,{'A' * 5000})\n"))
        assert "the picture is written into the story itself" in line
        assert len(line) < 300

    @pytest.mark.parametrize(
        ("path", "fix"),
        [
            ("pegs.png", "did you mean photos/pegs.png?"),
            ("photos/Pegs.PNG", "did you mean photos/pegs.png?"),
            ("photos/peg.png", "did you mean photos/pegs.png?"),
            ("photos/house.jpg", "put the file there, or correct the name"),
            ("photos/pegs.heic", "save it as a jpg or png, and write that name"),
            ("photos/plan.pdf", "save it as a jpg or png, and write that name"),
        ],
    )
    def test_a_picture_that_is_not_there(self, path: str, fix: str) -> None:
        """With the one that is."""
        (line,) = told(read(DATED, story=f"![x](../{path})\n", pictures=("photos/pegs.png",)))
        assert line == (
            f"episodes/01-a.md:{FIRST}:1: mistake: there is no picture {path} in the journal; "
            f"expected a picture (png, jpg, webp or gif) that is there; {fix}"
        )

    @pytest.mark.parametrize(("here", "there"), [("NFC", "NFD"), ("NFD", "NFC"), ("NFD", "NFD")])
    def test_accents_may_be_composed_in_the_story_and_not_on_the_disk(self, here: Form, there: Form) -> None:
        """Both look the same, and a keyboard and a file system do not ask which is wanted."""
        name = "photos/café.png"
        story = f"![x]({unicodedata.normalize(here, name)})\n"
        journal = whole(read(DATED, story=story, pictures=(unicodedata.normalize(there, name),)))
        assert journal.episodes[0].prose.pictures[0].path == name

    def test_two_files_that_differ_only_in_how_accents_are_written_are_told(self) -> None:
        """Nobody can see which one is meant."""
        both = tuple(unicodedata.normalize(form, "photos/café.png") for form in ("NFC", "NFD"))
        (line,) = told(read(DATED, story="![x](photos/café.png)\n", pictures=both))
        assert line == (
            f"episodes/01-a.md:{FIRST}:1: mistake: two pictures are named photos/café.png, with their accents written "
            "in two ways; expected one picture of a name; remove one of the two files, or rename it without accents"
        )

    def test_a_picture_without_words_is_a_warning(self) -> None:
        """Said once for each."""
        (line,) = told(read(DATED, story="![](top.png)\n", pictures=PHOTOS))
        assert line == (
            f"episodes/01-a.md:{FIRST}:1: warning: the picture top.png has no words for those who cannot see it; "
            "expected ![what it shows](path); say in a few words what it shows"
        )

    def test_a_long_path_is_shown_in_part(self) -> None:
        """The beginning is enough to find it."""
        path = "photos/" + "x" * 300 + ".png"
        (line,) = told(read(DATED, story=f"![x]({path})\n"))
        assert f"there is no picture {clipped(path)} in the journal" in line
