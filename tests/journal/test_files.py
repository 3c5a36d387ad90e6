"""A journal's folder: which files are read, which pictures are its own, and what leads out of it."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.journal.files import Files, find_files, inside
from builder.journal.read import read_journal
from builder.journal.report import Report
from builder.journal.text import LARGEST
from tests.journal.samples import SETTINGS

FOLDER = "expected the folder of a journal"
EPISODE = "---\ntitle: T\ndate: 2026-04-18\n---\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A journal of one episode and one photo."""
    journal = tmp_path / "journal"
    (journal / "episodes").mkdir(parents=True)
    (journal / "photos").mkdir()
    (journal / "journal.yaml").write_text(SETTINGS)
    (journal / "episodes" / "01-a.md").write_text(EPISODE)
    (journal / "photos" / "pegs.png").write_bytes(b"picture")
    return journal


def found(folder: Path) -> tuple[Files | None, list[str]]:
    """What lies in a folder, and what is reported of it."""
    report = Report()
    files = find_files(folder, report)
    return files, [problem.one_line() for problem in report.problems]


def names(folder: Path) -> list[str]:
    """The files that would be read, without a problem."""
    files, problems = found(folder)
    assert problems == []
    assert files is not None
    return [name for name, _ in files.texts]


class TestTheFolder:
    """Settings, plan, what is owned, episodes by name; and pictures anywhere."""

    def test_files_are_read_in_their_order(self, folder: Path) -> None:
        """Whatever order the disk has them in."""
        for name in ("episodes/03-c.md", "episodes/02-b.md"):
            (folder / name).write_text(EPISODE)
        (folder / "plan.yaml").touch()
        (folder / "owned.yaml").touch()
        assert names(folder) == [
            "journal.yaml", "plan.yaml", "owned.yaml", "episodes/01-a.md", "episodes/02-b.md", "episodes/03-c.md",
        ]  # fmt: skip

    def test_other_files_are_left_alone(self, folder: Path) -> None:
        """Notes, hidden files and an editor's copies are nobody's business."""
        for name in ("notes.txt", "episodes/.01-a.md.swp", "episodes/01-a.md~", "episodes/plan.ods", ".hidden.png"):
            (folder / name).write_text("x")
        (folder / "episodes" / "drafts").mkdir()
        assert names(folder) == ["journal.yaml", "episodes/01-a.md"]

    def test_a_journal_without_episodes_is_one(self, folder: Path) -> None:
        """The folder need not be there yet."""
        (folder / "episodes" / "01-a.md").unlink()
        (folder / "episodes").rmdir()
        assert names(folder) == ["journal.yaml"]

    def test_pictures_are_found_in_any_folder_but_hidden_ones(self, folder: Path) -> None:
        """By their path in the journal, with forward slashes."""
        for name in ("a.JPG", "photos/day one/b.webp", "photos/.cache/c.png", "photos/d.svg", "episodes/e.gif"):
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(b"x")
        files, _ = found(folder)
        assert files is not None
        assert files.pictures == {"a.JPG", "photos/day one/b.webp", "photos/pegs.png", "episodes/e.gif"}


class TestNoJournal:
    """A folder that is none says what to do, with the name that was given."""

    def test_no_such_folder(self, tmp_path: Path) -> None:
        """A mistyped name."""
        nowhere = tmp_path / "nowhere"
        assert found(nowhere) == (
            None,
            [
                (
                    f"journal.yaml:1:1: mistake: there is no folder {nowhere}; expected the folder of a journal; "
                    "check the name"
                )
            ],
        )

    @pytest.mark.parametrize(
        ("name", "kind"), [("journal.yaml", "file"), ("episodes", "folder"), ("episodes/01-a.md", "file")]
    )
    def test_a_file_of_a_journal(self, folder: Path, name: str, kind: str) -> None:
        """The journal is named that it lies in, however deep."""
        (folder / "episodes").mkdir(exist_ok=True)
        (folder / "episodes/01-a.md").write_text("", encoding="utf-8")
        _, problems = found(folder / name)
        assert problems == [
            (
                f"journal.yaml:1:1: mistake: {folder / name} is a {kind} of a journal; "
                f"expected the folder of a journal; name the journal's own folder, {folder}"
            )
        ]

    def test_a_file_for_a_folder(self, tmp_path: Path) -> None:
        """Of no journal at all."""
        file = tmp_path / "notes.txt"
        file.write_text("", encoding="utf-8")
        _, problems = found(file)
        assert problems == [f"journal.yaml:1:1: mistake: {file} is a file; {FOLDER}; name the folder of the journal"]

    @pytest.mark.parametrize(("inside", "named"), [(".", "."), ("episodes", "..")])
    def test_no_such_folder_beside_the_journal_that_one_is_in(
        self, folder: Path, monkeypatch: pytest.MonkeyPatch, inside: str, named: str
    ) -> None:
        """Which may well be the one that was meant."""
        (folder / "episodes").mkdir(exist_ok=True)
        monkeypatch.chdir(folder / inside)
        assert found(Path("nowhere"))[1] == [
            (
                "journal.yaml:1:1: mistake: there is no folder nowhere; expected the folder of a journal; "
                f"check the name, or name the journal that you are in, {named}"
            )
        ]

    def test_a_folder_of_something_else(self, tmp_path: Path) -> None:
        """And how to make a journal of it."""
        _, problems = found(tmp_path)
        assert problems == [
            (
                f"journal.yaml:1:1: mistake: the folder {tmp_path} has no journal.yaml; {FOLDER}; "
                f"name the right folder, or make one with: barrowbook begin {tmp_path}"
            )
        ]

    def test_settings_with_the_short_ending(self, folder: Path) -> None:
        """Half the world writes .yml."""
        (folder / "journal.yaml").rename(folder / "journal.yml")
        _, problems = found(folder)
        assert problems == [
            (
                f"journal.yaml:1:1: mistake: the folder {folder} has journal.yml and no journal.yaml; "
                "expected the folder of a journal; rename it to journal.yaml"
            )
        ]

    @pytest.mark.parametrize("name", ["x" * 5000, "a/" * 3000])
    def test_a_name_that_no_disk_can_hold(self, tmp_path: Path, name: str) -> None:
        """Never an error of Python's own."""
        files, problems = found(tmp_path / name)
        assert files is None
        assert len(problems) == 1


class TestNamesOfEpisodes:
    """A number, a dash and a few words; the pages' folders are named after them."""

    @pytest.mark.parametrize(
        "name",
        ["1-a.md", "007-the-footing.md", "02-the footing.md", "03-café & co.md", "04-日記.md", "05-it's.md",
         "06-a.b.md", "07-" + "x" * 240 + ".md"],
    )  # fmt: skip
    def test_a_name_that_every_computer_can_hold_is_fine(self, folder: Path, name: str) -> None:
        """Spaces, accents and apostrophes too."""
        (folder / "episodes" / name).write_text(EPISODE)
        assert f"episodes/{name}" in names(folder)

    EXPECTED = "expected a number, a dash and a few words, such as 03-the-footing.md"

    @pytest.mark.parametrize(
        ("name", "found_is", "fix"),
        [
            ("footing.md", "the file's name does not say which episode it is",
             "rename it, or move it out of episodes/"),
            ("README.md", "the file's name does not say which episode it is",
             "rename it, or move it out of episodes/"),
            ("03 footing.md", "the file's name does not say which episode it is",
             "rename it, or move it out of episodes/"),
            ("03-footing.md.txt", "the file's name does not end in .md", "rename it so that it ends in .md"),
            ("03-footing.MD", "the file's name does not end in .md", "rename it so that it ends in .md"),
            ("03-footing.markdown", "the file's name does not end in .md", "rename it so that it ends in .md"),
            ("03-what now?.md", "the file's name holds a character that not every computer can",
             "rename it with letters, digits and dashes"),
            ("03-a\\b.md", "the file's name holds a character that not every computer can",
             "rename it with letters, digits and dashes"),
            ("03- .md", "the file's name holds a character that not every computer can",
             "rename it with letters, digits and dashes"),
            ("03-...md", "the file's name holds a character that not every computer can",
             "rename it with letters, digits and dashes"),
        ],
    )  # fmt: skip
    def test_another_name_is_told_what_to_become(self, folder: Path, name: str, found_is: str, fix: str) -> None:
        """It would otherwise be left out silently."""
        (folder / "episodes" / name).write_text(EPISODE)
        files, problems = found(folder)
        assert problems == [f"episodes/{name}:1:1: mistake: {found_is}; {self.EXPECTED}; {fix}"]
        assert files is not None
        assert files.unread == (f"episodes/{name}",)

    @pytest.mark.parametrize("name", [b"03-\xff.md", b"03-a\nb.md", b"03-\x1b[31m.md"])
    def test_a_name_that_is_no_text_is_shown_with_its_codes(self, folder: Path, name: bytes) -> None:
        """The message can be printed anywhere, and on one line."""
        Path(os.fsdecode(os.fsencode(folder / "episodes") + b"/" + name)).write_text(EPISODE)
        _, problems = found(folder)
        (line,) = problems
        assert line.isprintable()
        line.encode()
        assert "holds a character that not every computer can" in line


class TestPlanAndOwned:
    """The optional files."""

    @pytest.mark.parametrize("name", ["plan", "owned"])
    def test_the_short_ending_is_not_passed_over(self, folder: Path, name: str) -> None:
        """A plan that is not read would look like no plan."""
        (folder / f"{name}.yml").touch()
        _, problems = found(folder)
        assert problems == [
            (
                f"{name}.yml:1:1: mistake: the file is named {name}.yml, and is not read; expected {name}.yaml; "
                f"rename it to {name}.yaml"
            )
        ]


class TestLinks:
    """Nothing outside the journal is read, and nothing outside is published."""

    @pytest.fixture
    def outside(self, tmp_path: Path) -> Path:
        """A file and a picture that are nobody's business."""
        (tmp_path / "secret.md").write_text(EPISODE)
        (tmp_path / "secret.png").write_bytes(b"x")
        (tmp_path / "album").mkdir()
        (tmp_path / "album" / "party.png").write_bytes(b"x")
        return tmp_path

    @pytest.mark.parametrize("name", ["episodes/02-b.md", "plan.yaml", "owned.yaml"])
    def test_a_file_that_is_a_link_out_is_refused(self, folder: Path, outside: Path, name: str) -> None:
        """And said to be one."""
        (folder / name).symlink_to(outside / "secret.md")
        files, problems = found(folder)
        assert problems == [
            (
                f"{name}:1:1: mistake: the file is a link that leads out of the journal; expected a file of its own; "
                "copy the file here"
            )
        ]
        assert files is not None
        assert files.text(name) is None
        assert files.unread == (name,)

    def test_what_was_not_read_is_not_missed(self, folder: Path, outside: Path) -> None:
        """Its phases are not said to lead nowhere."""
        (folder / "plan.yaml").symlink_to(outside / "secret.md")
        (folder / "episodes" / "01-a.md").write_text(
            "---\ntitle: T\ndate: 2026-04-18\nphase: ground\nitems: [{material: M, cost: 5, against: mix}]\n---\n"
        )
        files, _ = found(folder)
        assert files is not None
        result = read_journal(files)
        assert result.problems == ()
        assert not result.whole

    def test_a_picture_that_is_a_link_out_is_no_picture(self, folder: Path, outside: Path) -> None:
        """Alone or with its whole folder."""
        (folder / "photos" / "secret.png").symlink_to(outside / "secret.png")
        (folder / "photos" / "up.png").symlink_to(Path("../../secret.png"))
        (folder / "photos" / "album").symlink_to(outside / "album")
        files, problems = found(folder)
        assert files is not None
        assert files.pictures == {"photos/pegs.png"}
        assert problems == []

    def test_a_link_inside_is_a_picture(self, folder: Path) -> None:
        """One photo under two names."""
        (folder / "photos" / "again.png").symlink_to("pegs.png")
        files, _ = found(folder)
        assert files is not None
        assert files.pictures == {"photos/pegs.png", "photos/again.png"}

    def test_a_link_to_nothing_and_a_link_to_itself_are_no_pictures(self, folder: Path) -> None:
        """Neither may end the run."""
        (folder / "photos" / "gone.png").symlink_to("nothing.png")
        (folder / "photos" / "loop.png").symlink_to("loop.png")
        (folder / "episodes" / "02-b.md").symlink_to("02-b.md")
        files, problems = found(folder)
        assert files is not None
        assert files.pictures == {"photos/pegs.png"}
        assert problems == []

    def test_what_is_no_file_is_not_opened(self, folder: Path) -> None:
        """A pipe would be waited for till morning; a folder may have any name."""
        os.mkfifo(folder / "photos" / "pipe.png")
        os.mkfifo(folder / "episodes" / "02-pipe.md")
        (folder / "photos" / "folder.png").mkdir()
        (folder / "episodes" / "03-folder.md").mkdir()
        files, problems = found(folder)
        assert files is not None
        assert files.pictures == {"photos/pegs.png"}
        assert problems == []

    def test_inside_follows_links(self, folder: Path, outside: Path) -> None:
        """What counts is where a path leads."""
        (folder / "out").symlink_to(outside / "album")
        assert inside(folder, folder / "photos" / "pegs.png")
        assert inside(folder, folder / "photos" / ".." / "journal.yaml")
        assert not inside(folder, folder / "out" / "party.png")
        assert not inside(folder, folder / ".." / "secret.png")
        (folder / "loop").symlink_to("loop")
        assert not inside(folder, folder / "loop")


class TestWhatCannotBeOpened:
    """Permissions, a disk that is gone, a file that another program holds: told, and the rest is read."""

    @pytest.fixture
    def forbidden(self, monkeypatch: pytest.MonkeyPatch) -> Callable[[str, str], None]:
        """Makes one way of looking fail for one name, as the system would for somebody who may not."""

        def forbid(method: str, name: str) -> None:
            owner = Path if method == "is_file" else os
            real = getattr(owner, method)

            def refusing(path: str | Path, *words: object, **more: object) -> object:
                if Path(path).name == name:
                    raise PermissionError(13, "Permission denied")
                return real(path, *words, **more)

            monkeypatch.setattr(owner, method, refusing)

        return forbid

    def test_a_file_that_may_not_be_opened(self, folder: Path, forbidden: Callable[[str, str], None]) -> None:
        """The others are read all the same."""
        forbidden("open", "01-a.md")
        files, problems = found(folder)
        assert problems == [
            (
                "episodes/01-a.md:1:1: mistake: the file cannot be read (Permission denied); expected a file that "
                "you may open; check its permissions, or that no other program holds it"
            )
        ]
        assert files is not None
        assert files.unread == ("episodes/01-a.md",)
        assert [name for name, _ in files.texts] == ["journal.yaml"]

    def test_a_folder_that_may_not_be_opened(self, folder: Path, forbidden: Callable[[str, str], None]) -> None:
        """There is nothing to read then."""
        forbidden("scandir", "episodes")
        assert found(folder) == (
            None,
            [
                (
                    f"journal.yaml:1:1: mistake: the folder {folder} cannot be read (Permission denied); {FOLDER}; "
                    "check the name, and that you may open it"
                )
            ],
        )

    def test_a_picture_that_may_not_be_looked_at(self, folder: Path, forbidden: Callable[[str, str], None]) -> None:
        """It is as good as not there."""
        forbidden("is_file", "pegs.png")
        files, problems = found(folder)
        assert problems == []
        assert files is not None
        assert files.pictures == frozenset()


def test_a_file_of_a_gigabyte_is_not_read_through(folder: Path) -> None:
    """One byte more than may be is enough to say so."""
    with (folder / "episodes" / "02-b.md").open("wb") as file:
        file.truncate(1 << 30)
    files, _ = found(folder)
    assert files is not None
    raw = files.text("episodes/02-b.md")
    assert raw is not None
    assert len(raw) == LARGEST + 1
    assert [problem.found for problem in read_journal(files).problems] == [f"the file has more than {LARGEST:,} bytes"]
