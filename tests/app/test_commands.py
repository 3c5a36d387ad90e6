"""The commands as a person runs them: what they print, how they end, and what stays untouched."""

from __future__ import annotations

import json
import re
from pathlib import Path
from unicodedata import normalize

import pytest
from PIL import Image

from builder.cli import COMMAND_WRONG, DONE, JOURNAL_WRONG, main
from tests.app.journal_folder import FILES, write


def tree(folder: Path) -> dict[str, bytes]:
    """Every file under a folder."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()
    }


def test_publish_makes_a_site_and_says_which_file_to_open(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The main job."""
    site = tmp_path / "site"
    assert main(["publish", str(write(tmp_path / "journal")), "--to", str(site)]) == DONE
    assert capsys.readouterr().out.endswith(f"Open {site / 'index.html'}\n")
    page = (site / "episodes/02-second/index.html").read_text(encoding="utf-8")
    assert "54 bags" in page
    assert "$586.60" in page


def test_publish_tells_what_is_not_shown_of_a_picture(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Before anything else it says."""
    text = "---\ntitle: Rain\ndate: 2026-05-03\nphase: foundation\n---\n\n![The puddle](photos/puddle.gif)\n"
    journal = write(tmp_path / "journal", **{"episodes/03-rain.md": text})
    (journal / "photos").mkdir()
    frames = [Image.new("RGB", (40, 20), colour) for colour in ("red", "blue")]
    frames[0].save(journal / "photos/puddle.gif", save_all=True, append_images=frames[1:])
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    assert capsys.readouterr().out.startswith(
        "photos/puddle.gif: the GIF picture moves; the site shows its first frame; link to a film instead.\n"
    )


def test_the_same_journal_gives_the_same_bytes(tmp_path: Path) -> None:
    """Whatever the files are called by, and however often."""
    journal = write(tmp_path / "journal")
    for name in ("one", "two"):
        assert main(["publish", str(journal), "--to", str(tmp_path / name)]) == DONE
    assert tree(tmp_path / "one") == tree(tmp_path / "two")


def test_an_empty_journal_publishes(tmp_path: Path) -> None:
    """Settings alone are a journal."""
    journal = tmp_path / "journal"
    journal.mkdir()
    (journal / "journal.yaml").write_text("title: New\nlanguage: en-US\ncurrency: USD\n", encoding="utf-8")
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    page = (tmp_path / "site/index.html").read_text(encoding="utf-8")
    assert "No episode has been written yet." in page
    assert not (tmp_path / "site/plan").exists()


def test_an_episode_without_items_publishes(tmp_path: Path) -> None:
    """No cost at all is a fair weekend."""
    text = "---\ntitle: Rain\ndate: 2026-05-03\nphase: foundation\n---\n\nWe watched it.\n"
    journal = write(tmp_path / "journal", **{"episodes/03-rain.md": text})
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    assert "This episode cost nothing." in (tmp_path / "site/episodes/03-rain/index.html").read_text(encoding="utf-8")


def test_without_a_plan_there_is_no_plan_page_and_nothing_breaks(tmp_path: Path) -> None:
    """Phases are then those that episodes name."""
    journal = write(tmp_path / "journal")
    (journal / "plan.yaml").unlink()
    episode = (
        FILES["episodes/02-second.md"].replace("of {= footing.bags =}", "").replace("{= bags used of mix =}", "54")
    )
    (journal / "episodes/02-second.md").write_text(episode, encoding="utf-8")
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    assert (tmp_path / "site/phases/ground/index.html").is_file()
    assert not (tmp_path / "site/plan").exists()


BAD = {
    "no front matter": ("episodes/03-x.md", "Just a story.\n", "the episode does not begin with ---"),
    "one number twice": ("episodes/02-other.md", FILES["episodes/01-first.md"], "has the number 2, and so has"),
    "no price": ("episodes/03-x.md", "items:\n  - material: Nails", "Nails is bought and has no price"),
    "thousands comma": ("episodes/03-x.md", "items:\n  - material: N\n    cost: 1,250", "1,250 has a thousands comma"),
    "second colon": ("episodes/03-x.md", "summary: Footings: second pour", "colon"),
    "begins with a figure": ("episodes/03-x.md", "summary: {= spent =}", "begins with {="),
    "used and share": (
        "episodes/03-x.md",
        "items:\n  - {material: N, quantity: 4, cost: 2, used: 3, share: 50%}",
        "both used and share stand on one line",
    ),
    "a share above all": ("episodes/03-x.md", "items:\n  - {material: N, cost: 2, share: 140%}", "140% is more than"),
    "negative": ("episodes/03-x.md", "items:\n  - {material: N, quantity: -3 bag, cost: 2}", "-3 bag is negative"),
    "used above quantity": (
        "episodes/03-x.md",
        "items:\n  - {material: N, quantity: 3 bag, used: 4 bag, cost: 2}",
        "used is 4 bag, more than the quantity of 3 bag",
    ),
    "feet and bags": (
        "episodes/03-x.md",
        "items:\n  - {material: N, quantity: 3 bag, used: 4 ft, cost: 2}",
        "used is 4 ft and",
    ),
    "unknown phase": ("episodes/03-x.md", "phase: fundation", "fundation is no phase of the plan"),
    "a day that is none": (
        "episodes/03-x.md",
        "from: 2026-02-30\nto: 2026-03-01",
        "2026-02-30 is a day that no calendar has",
    ),
    "a tab": ("episodes/03-x.md", "items:\n\t- Nails, 3.00", "tab"),
    "a picture that is not there": (
        "episodes/03-x.md",
        "cover: photos/none.png",
        "there is no picture photos/none.png",
    ),
    "an unknown figure": ("episodes/03-x.md", "stated: {spnt: 3}", "spnt is no figure"),
}


def bad_episode(text: str) -> str:
    """A third episode with these lines in its front matter, where they are only lines."""
    if text.startswith(("---", "Just")):
        return text
    lines = [] if "from:" in text else ["date: 2026-05-03"]
    lines += [] if "phase:" in text else ["phase: foundation"]
    return "\n".join(["---", "title: A", *lines, text, "---", ""])


@pytest.mark.parametrize("case", BAD)
def test_a_mistake_is_told_and_the_last_good_site_stays(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], case: str
) -> None:
    """File, line, what was found, what was expected; exit 1; not a byte of the site changes."""
    journal, site = write(tmp_path / "journal"), tmp_path / "site"
    assert main(["publish", str(journal), "--to", str(site)]) == DONE
    before = tree(site)
    capsys.readouterr()
    name, text, found = BAD[case]
    (journal / name).write_text(bad_episode(text), encoding="utf-8")
    assert main(["publish", str(journal), "--to", str(site)]) == JOURNAL_WRONG
    told = capsys.readouterr().err
    assert f"{journal.as_posix()}/episodes/0" in told
    assert name in told
    assert found in told
    assert "expected:" in told
    assert "Nothing was published." in told
    assert tree(site) == before


def test_all_mistakes_of_a_run_are_told_together_in_file_order(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Settings before the plan, the plan before episodes, episodes by name."""
    journal = write(
        tmp_path,
        journal=FILES["journal.yaml"] + "colour: red\n",
        plan=FILES["plan.yaml"] + "budget: 5\n",
        **{"01_first": FILES["episodes/01-first.md"].replace("cost: 260", "cost: 1,260")},
    )
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    files = [line.split(":")[0].rpartition("/")[2] for line in capsys.readouterr().out.splitlines()]
    assert files == ["journal.yaml", "plan.yaml", "01-first.md"]


def test_a_folder_that_is_no_journal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Says how to make one."""
    assert main(["inspect", str(tmp_path)]) == JOURNAL_WRONG
    assert f"barrowbook begin {tmp_path}" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("written", "there"),
    [
        ("my%20photo.png", "my photo.png"),
        ("café.png", normalize("NFD", "café.png")),
        (normalize("NFD", "café.png"), "café.png"),
    ],
)
def test_a_photo_is_shown_however_its_name_is_written(tmp_path: Path, written: str, there: str) -> None:
    """Spaces as addresses write them; accents composed, or decomposed as some file systems keep them."""
    story = FILES["episodes/02-second.md"] + f"\n![The bags](../photos/{written})\n"
    journal = write(tmp_path / "journal", **{"02_second": story})
    (journal / "photos").mkdir()
    Image.new("RGB", (64, 48), "teal").save(journal / "photos" / there)
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    page = (tmp_path / "site/episodes/02-second/index.html").read_text(encoding="utf-8")
    (shown,) = re.findall(r'<img[^>]* src="([^"]+)"', page)
    assert (tmp_path / "site/episodes/02-second" / shown).is_file()


def test_a_name_too_long_for_its_show_notes_is_told_by_how_much(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """255 bytes are a file's name; with .txt for .md they would be one more."""
    journal = write(tmp_path / "journal")
    for letters, code in ((248, DONE), (249, JOURNAL_WRONG)):
        name = f"03-{'x' * letters}.md"
        (journal / "episodes" / name).write_text(bad_episode("hours: 3"), encoding="utf-8")
        assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == code
        (journal / "episodes" / name).unlink()
    told = capsys.readouterr().err
    assert "the file's name is too long by 1 for its show notes, which would be named 03-xxx" in told
    assert "so: rename it with at least 1 letter less" in told


def test_latin_1_bytes_are_told_with_their_place(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Line and column of the byte."""
    journal = write(tmp_path)
    (journal / "episodes/03-x.md").write_bytes("---\ntitle: Gr\u00fcn\n---\n".encode("latin-1"))
    assert main(["inspect", str(journal)]) == JOURNAL_WRONG
    assert "episodes/03-x.md:2:10: mistake: the byte 0xfc is not UTF-8 text" in capsys.readouterr().err


def test_five_megabytes_of_front_matter_are_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """At once, with a sentence."""
    journal = write(tmp_path)
    (journal / "episodes/03-x.md").write_bytes(b"---\n" + b"a: b\n" * 1_000_000 + b"---\n")
    assert main(["inspect", str(journal)]) == JOURNAL_WRONG
    assert "the file has more than 1" in capsys.readouterr().err


def test_tally_json_is_only_json_and_the_same_as_figures_json(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One set of figures."""
    journal = write(tmp_path / "journal")
    assert main(["publish", str(journal), "--to", str(tmp_path / "site")]) == DONE
    capsys.readouterr()
    assert main(["tally", str(journal), "--json"]) == DONE
    assert json.loads(capsys.readouterr().out) == json.loads(
        (tmp_path / "site/figures.json").read_text(encoding="utf-8")
    )


def test_inspect_json_is_for_programs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A list of problems with their places."""
    journal = write(tmp_path, journal=FILES["journal.yaml"] + "colour: red\n")
    assert main(["inspect", str(journal), "--json"]) == JOURNAL_WRONG
    [problem] = json.loads(capsys.readouterr().out)
    assert (problem["file"], problem["line"], problem["weight"]) == ("journal.yaml", 11, "mistake")


def test_publish_refuses_a_folder_it_did_not_make(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """And leaves it alone."""
    journal, other = write(tmp_path / "journal"), tmp_path / "other"
    other.mkdir()
    (other / "letter.txt").write_text("mine", encoding="utf-8")
    assert main(["publish", str(journal), "--to", str(other)]) == COMMAND_WRONG
    assert tree(other) == {"letter.txt": b"mine"}
    assert capsys.readouterr().err


def test_help_shows_an_example_for_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    """`barrowbook COMMAND --help` ends with one."""
    for command in ("publish", "inspect", "tally", "takeoff", "begin", "episode", "spend", "preview"):
        with pytest.raises(SystemExit) as ended:
            main([command, "--help"])
        assert ended.value.code == DONE
        assert f"For example: barrowbook {command}" in capsys.readouterr().out


def test_takeoff_prints_the_working(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Formula, numbers, result."""
    assert main(["takeoff", str(write(tmp_path))]) == DONE
    out = capsys.readouterr().out
    assert "bags: 56 bag" in out
    assert "caution:" in out


def test_takeoff_prints_its_results_whatever_is_wrong_with_an_episode(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What to buy rests on the settings and the plan; the mistakes are told, and the exit code says so."""
    assert main(["takeoff", str(write(tmp_path / "right"))]) == DONE
    right = capsys.readouterr().out
    broken = {"episodes/03-third.md": "---\ntitle: [\n---\n", "owned": "equipment: saw\n"}
    assert main(["takeoff", str(write(tmp_path / "wrong", **broken))]) == JOURNAL_WRONG
    told = capsys.readouterr()
    assert told.out == right
    assert "03-third.md:" in told.err
    assert "2 mistakes" in told.err


@pytest.mark.parametrize("file", ["journal.yaml", "plan.yaml"])
def test_takeoff_prints_nothing_where_the_settings_or_the_plan_are_wrong(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], file: str
) -> None:
    """The results might be other ones."""
    assert main(["takeoff", str(write(tmp_path, **{file: FILES[file] + "colour: red\n"}))]) == JOURNAL_WRONG
    told = capsys.readouterr()
    assert told.out == ""
    assert f"{file}:" in told.err


def test_an_episode_of_the_future_is_told_beside_the_mistakes_it_makes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With a year of 9062 nothing can be forecast, and the date named in the story cannot be told."""
    third = "---\ntitle: Third\ndate: 9062-05-03\nphase: foundation\n---\n\nBy {= likely date =}, {= spnt =}.\n"
    assert main(["inspect", str(write(tmp_path, **{"episodes/03-third.md": third})), "--lines"]) == JOURNAL_WRONG
    year, date, mistake = capsys.readouterr().out.splitlines()
    assert "03-third.md:1:1: warning: the episode is dated 9062-05-03, which is still to come" in year
    assert "03-third.md:7:4: warning: likely date cannot be told: it is too far away" in date
    assert "03-third.md:7:23: mistake: spnt is no figure" in mistake


def test_names_that_are_no_figure_are_told_beside_a_date_that_is_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In the same run; not those that are one once the date is mended, nor a stated one that the ledger contradicts."""
    third = (
        "---\ntitle: Third\ndate: 11/21/2026\nphase: foundation\nstated: {spent: 9, spnt: 3}\n"
        'items: ["Nails, 5"]\n---\n\n'
        "{= spend =}, {= job cost of foundation =}, {= likely date =}, {= spent to\n"
    )
    journal = write(tmp_path, **{"episodes/03-third.md": third})
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    told = [line.partition("03-third.md:")[2] for line in capsys.readouterr().out.splitlines()]
    assert [line.partition(";")[0] for line in told] == [
        "3:7: mistake: date: 11/21/2026 is not a date",
        "5:20: mistake: spnt is no figure",
        "9:1: mistake: spend is no figure",
        "9:63: mistake: a figure begins with {= here and does not end with =}",
    ]
    write(tmp_path, **{"episodes/03-third.md": third.replace('"Nails, 5"', "Nails")})
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    assert "no figure" not in capsys.readouterr().out  # a line is lost too, and names may hang on it


def test_a_stated_figure_is_held_against_what_could_be_read_only(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Hours, progress or a worth that are mended first may be all that is missing; a name that is none is told."""
    third = "---\ntitle: Third\ndate: 2026-05-03\nphase: foundation\nhours: 13,5\nstated: {hours: 13.5, spnt: 3}\n---\n"
    journal = write(tmp_path, **{"episodes/03-third.md": third})
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    comma, name = capsys.readouterr().out.splitlines()
    assert "03-third.md:5:8: mistake: hours: 13,5 has a decimal comma" in comma
    assert "03-third.md:6:23: mistake: spnt is no figure" in name
    write(tmp_path, **{"episodes/03-third.md": third.replace("13,5", "12.5").replace(", spnt: 3", "")})
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    assert "hours is stated as 13.5, and the ledger has 12.50" in capsys.readouterr().out


def test_a_summary_names_figures_wherever_it_is_told(tmp_path: Path) -> None:
    """On the home page, in the head of its own, in the feed and in the show notes; each as plain text."""
    third = (
        "---\ntitle: Rain\ndate: 2026-05-03\nphase: foundation\nsummary: Now at {= spent to date =}.\n---\n\nRain.\n"
    )
    journal, site = write(tmp_path / "journal", **{"episodes/03-rain.md": third}), tmp_path / "site"
    assert main(["publish", str(journal), "--to", str(site)]) == DONE
    tallied = json.loads((site / "figures.json").read_text("utf-8"))["totals"]["spent"]
    for path in ("index.html", "episodes/03-rain/index.html", "feed.xml", "show-notes/03-rain.txt"):
        text = (site / path).read_text(encoding="utf-8")
        assert f"Now at ${tallied}." in text, path
        assert "{=" not in text, path


def test_a_summary_that_names_no_figure_is_a_mistake(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With the place of the summary."""
    third = '---\ntitle: Rain\ndate: 2026-05-03\nphase: foundation\nsummary: "At {= spnt to date =}."\n---\n\nRain.\n'
    journal = write(tmp_path, **{"episodes/03-rain.md": third})
    assert main(["inspect", str(journal), "--lines"]) == JOURNAL_WRONG
    told = capsys.readouterr().out
    assert "03-rain.md:5:10: mistake: spnt to date is no figure" in told
    assert "did you mean spent to date?" in told


def test_a_figure_that_is_left_open_in_a_summary_is_a_mistake(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It would stand in the feed as it is."""
    third = "---\ntitle: Rain\ndate: 2026-05-03\nphase: foundation\nsummary: At {= spent to date.\n---\n\nRain.\n"
    assert main(["inspect", str(write(tmp_path, **{"episodes/03-rain.md": third})), "--lines"]) == JOURNAL_WRONG
    told = capsys.readouterr().out
    assert "03-rain.md:5:10: mistake: a figure begins with {= here and does not end with =}" in told
    assert "write {= spent to date =}, for instance" in told
