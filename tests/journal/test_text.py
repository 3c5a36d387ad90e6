"""Bytes to text, and an episode's text to front matter and story."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.journal.report import Report
from builder.journal.text import LARGEST, MOST_KEYS, Parts, Source, decode, divide, shown_lines
from tests.journal.samples import DATED, EPISODE, read, told, whole


def decoded(raw: bytes) -> tuple[Source | None, list[str]]:
    """The text of some bytes, and what was reported."""
    report = Report()
    source = decode("a.md", raw, report)
    return source, [problem.one_line() for problem in report.problems]


def divided(text: str) -> tuple[Parts | None, list[str]]:
    """Front matter and story, and what was reported."""
    report = Report()
    parts = divide(Source(file="a.md", text=text), report)
    return parts, [problem.one_line() for problem in report.problems]


class TestDecoding:
    """UTF-8 with or without a byte order mark, any line ends."""

    @pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
    @pytest.mark.parametrize("mark", ["", "\ufeff"])
    def test_line_ends_and_the_mark_at_the_start_make_no_difference(self, end: str, mark: str) -> None:
        """The same journal from any computer."""
        text = f"{mark}---\ntitle: Café\ndate: 2026-04-18\n---\n\nOne.\n\nTwo.\n".replace("\n", end)
        journal = whole(read(more={EPISODE: text.encode()}))
        assert journal.episodes[0].title == "Café"
        assert journal.episodes[0].prose.text == "\nOne.\n\nTwo.\n"

    @pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
    def test_a_mistake_is_on_its_line_whatever_the_line_ends(self, end: str) -> None:
        """Line 4, column 7."""
        text = "---\ntitle: T\nhours: 7\ndate: x\n---\n".replace("\n", end)
        (line,) = told(read(more={EPISODE: text.encode()}))
        assert line.startswith("episodes/01-a.md:4:7: ")

    @pytest.mark.parametrize("unseen", ["\x85", "\u2028", "\u2029"])
    def test_a_line_end_that_no_editor_shows_moves_no_line(self, unseen: str) -> None:
        """Copied from a web page into a sentence; YAML would count it as a line."""
        text = f"---\ntitle: T\nsummary: one{unseen}two\ndate: x\n---\n"
        (line,) = told(read(more={EPISODE: text.encode()}))
        assert line.startswith("episodes/01-a.md:4:7: ")

    @pytest.mark.parametrize(
        ("raw", "at"),
        [
            (b"title: caf" + b"\xe9\n", "1:11"),
            ("é\r\néé caf".encode() + b"\xe9", "2:7"),
            ("é\réé".encode() + b"\xe9", "2:3"),
            ("\ufeffcaf".encode() + b"\xe9", "1:4"),
            (b"\xff", "1:1"),
        ],
    )
    def test_other_encodings_are_refused_at_the_character(self, raw: bytes, at: str) -> None:
        """Latin-1 from an old editor: the column counts characters, as the editor does."""
        source, problems = decoded(raw)
        assert source is None
        byte = "0xff" if raw == b"\xff" else "0xe9"
        assert problems == [
            (
                f"a.md:{at}: mistake: the byte {byte} is not UTF-8 text; expected a file saved as UTF-8; "
                "save it again with the encoding UTF-8 (in most editors under Save as)"
            )
        ]

    @pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
    def test_utf_16_is_named(self, encoding: str) -> None:
        """What an old Windows editor calls Unicode."""
        source, problems = decoded("---\ntitle: T\n---\n".encode(encoding))
        assert source is None
        assert problems == [
            (
                "a.md:1:1: mistake: the file is saved as UTF-16; expected a file saved as UTF-8; "
                "save it again with the encoding UTF-8 (in most editors under Save as)"
            )
        ]

    def test_a_character_that_no_page_can_hold_is_refused_in_the_story_too(self) -> None:
        """The feed is XML, which has no place for it."""
        _, problems = decoded("---\n---\né vertical\x0btab".encode())
        assert [line.partition(";")[0] for line in problems] == [
            "a.md:3:11: mistake: there is a character that cannot be printed (U+000B)"
        ]

    TOO_LARGE = (
        "expected what a person writes; split it, and keep pictures in photos/; "
        "look for something that was pasted by mistake"
    )

    def test_a_file_of_five_megabytes_is_refused_before_it_is_read_through(self) -> None:
        """Somebody pasted a picture into it."""
        source, problems = decoded(b"---\nnote: " + b"x" * 5_000_000)
        assert source is None
        assert problems == [f"a.md:1:1: mistake: the file has more than {LARGEST:,} bytes; {self.TOO_LARGE}"]

    def test_keys_are_fewer_than_words(self) -> None:
        """Front matter, settings and plan have a limit of their own, so that none takes long to read."""
        much = "x" * MOST_KEYS
        (line,) = told(read(f"{DATED}summary: {much}\n"))
        assert line == (
            f"episodes/01-a.md:2:1: mistake: the front matter has more than {MOST_KEYS:,} bytes; {self.TOO_LARGE}"
        )
        for name in ("journal.yaml", "plan.yaml", "owned.yaml"):
            assert told(read(more={name: f"title: {much}\n"})) == [
                f"{name}:1:1: mistake: the file has more than {MOST_KEYS:,} bytes; {self.TOO_LARGE}"
            ]

    def test_the_largest_file_reads(self) -> None:
        """Up to the last byte."""
        assert decoded(b"x" * LARGEST)[1] == []

    @given(raw=st.binary(max_size=200))
    def test_any_bytes_are_a_text_or_one_mistake(self, raw: bytes) -> None:
        """And can be shown, line by line, beside the mistake."""
        source, problems = decoded(raw)
        assert (source is None) == (len(problems) == 1)
        lines = shown_lines(raw)
        if source is not None:
            assert lines == source.lines
        for line in problems:
            assert 1 <= int(line.split(":")[1]) <= len(lines)


class TestDividing:
    """Front matter between two lines of ---, then the story."""

    def test_the_parts_know_where_they_begin(self) -> None:
        """Front matter on line 2, the story behind the second line of ---."""
        parts, problems = divided("---\ntitle: T\n---\n\nStory.\n")
        assert problems == []
        assert parts is not None
        assert (parts.front.text, parts.prose, parts.prose_line) == ("title: T\n", "\nStory.\n", 4)

    def test_spaces_behind_the_dashes_do_not_matter(self) -> None:
        """Nobody sees them."""
        parts, _ = divided("--- \ntitle: T\n---\t\nStory.\n")
        assert parts is not None
        assert parts.prose == "Story.\n"

    def test_a_line_in_the_story_is_the_story_s(self) -> None:
        """A third --- draws a line on the page."""
        parts, _ = divided("---\na: b\n---\nOne.\n\n---\n\nTwo.\n")
        assert parts is not None
        assert parts.prose == "One.\n\n---\n\nTwo.\n"

    EXPECTED = "expected front matter between two lines of ---, then the story"

    @pytest.mark.parametrize(
        ("text", "found", "fix"),
        [
            ("", "the episode does not begin with ---",
             "begin the file with a line of ---, then title: and date:, then a line of ---"),
            ("# The footing\n\nWe dug.\n", "the episode does not begin with ---",
             "begin the file with a line of ---, then title: and date:, then a line of ---"),
            ("title: T\n---\n", "the episode does not begin with ---",
             "begin the file with a line of ---, then title: and date:, then a line of ---"),
            ("\n\n---\ntitle: T\n---\n", "there is something before the first ---",
             "begin the file with the line of ---"),
            (" ---\ntitle: T\n---\n", "there is something before the first ---",
             "begin the file with the line of ---"),
            ("—\ntitle: T\n—\n", "the episode begins with —, which is not ---", "write three hyphens: ---"),
            ("----\ntitle: T\n----\n", "the episode begins with ----, which is not ---", "write three hyphens: ---"),
        ],
    )  # fmt: skip
    def test_an_episode_that_does_not_begin_right_is_told_how(self, text: str, found: str, fix: str) -> None:
        """Three hyphens become a long dash under many hands."""
        parts, problems = divided(text)
        assert parts is None
        assert problems == [f"a.md:1:1: mistake: {found}; {self.EXPECTED}; {fix}"]

    def test_front_matter_without_an_end_is_told_so(self) -> None:
        """At the line it begins on."""
        parts, problems = divided("---\ntitle: T\n\nWe dug.\n")
        assert parts is None
        assert problems == [
            (
                "a.md:1:1: mistake: the front matter that begins here has no end; expected a second line of --- "
                "between the front matter and the story; put a line of --- before the first line of the story"
            )
        ]
