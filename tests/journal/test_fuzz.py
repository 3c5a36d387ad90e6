"""Whatever a file holds, reading it gives a journal and mistakes with their places, and never anything else.

The texts are the awkward files of corpus/, what is made out of them by cutting and mixing, and what is put together
from the pieces that keys and values are made of. The same ones in every run; HYPOTHESIS_PROFILE=search looks for
new ones.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.journal.episode_keys import EPISODE as EPISODE_KEYS
from builder.journal.files import Files
from builder.journal.item_keys import ITEM, RECEIPT
from builder.journal.plan_reader import PHASE, PLAN
from builder.journal.read import Read, read_journal
from builder.journal.report import Report
from builder.journal.settings_reader import SETTINGS as SETTINGS_KEYS
from builder.journal.text import Source
from builder.journal.tree import read_tree
from builder.words.numbers import Unreadable
from builder.words.quantity import read_quantity
from tests.journal.samples import DATED, EPISODE, SETTINGS
from tests.journal.sound import check_read

CORPUS = Path(__file__).with_name("corpus")
FINE = sorted((CORPUS / "fine").iterdir())
WRONG = sorted((CORPUS / "wrong").iterdir())
PHASES = "phases:\n  - key: ground\n  - key: foundation\n"
ROLES = ("journal.yaml", "plan.yaml", "owned.yaml", EPISODE)


def read_as(role: str, raw: bytes, plan: str = "") -> Read:
    """A journal in which one file holds these bytes; everything that is said of it is held to be sound."""
    texts = {"journal.yaml": SETTINGS.encode(), "plan.yaml": plan.encode(), role: raw}
    files = Files(folder=Path(), texts=tuple(texts.items()), pictures=frozenset({"photos/pegs.png"}))
    result = read_journal(files)
    check_read(result, texts)
    return result


class TestTheCorpus:
    """Files kept byte for byte."""

    @pytest.mark.parametrize("path", FINE, ids=lambda path: path.name)
    def test_what_is_fine_reads_without_a_word(self, path: Path) -> None:
        """As an episode."""
        assert [problem.one_line() for problem in read_as(EPISODE, path.read_bytes()).problems] == []

    @pytest.mark.parametrize("path", WRONG, ids=lambda path: path.name)
    def test_of_what_is_wrong_something_is_said(self, path: Path) -> None:
        """As the kind of file its name says."""
        role = EPISODE if path.suffix == ".episode" else "journal.yaml"
        assert any(problem.is_mistake for problem in read_as(role, path.read_bytes()).problems)

    @pytest.mark.parametrize("role", ROLES)
    @pytest.mark.parametrize("path", [*FINE, *WRONG], ids=lambda path: path.name)
    def test_any_file_may_stand_anywhere(self, path: Path, role: str) -> None:
        """Renamed by mistake, it is told of and nothing breaks."""
        read_as(role, path.read_bytes(), PHASES if role != "plan.yaml" else "")


raws = st.sampled_from([path.read_bytes() for path in [*FINE, *WRONG]])
roles = st.sampled_from(ROLES)


@st.composite
def mixed(draw: st.DrawFn) -> bytes:
    """A file of the corpus with a piece of another in some place of it, or with a piece cut out."""
    one, other = draw(raws), draw(raws)
    first, last = sorted((draw(st.integers(0, len(one))), draw(st.integers(0, len(one)))))
    begin = draw(st.integers(0, len(other)))
    return one[:first] + other[begin : begin + draw(st.integers(0, 60))] + one[last:]


@given(raw=mixed(), role=roles)
def test_files_that_were_cut_and_mixed_are_read_or_told_of(raw: bytes, role: str) -> None:
    """As a disk that was full leaves them, or an editor with two windows."""
    read_as(role, raw)


@given(raw=st.binary(max_size=300), role=roles)
def test_any_bytes_are_read_or_told_of(raw: bytes, role: str) -> None:
    """Whatever they are."""
    read_as(role, raw)


# The characters that mean something to YAML, to quantities, to amounts or to a story.
MARKS = st.text(
    st.sampled_from(list(":{}[],&*#?|-<>=!%@`'\"\\ \t\n~.0123456789aeé½²½٣\u2028\ufeff😀/()^$€")), max_size=60
)
KEYS = sorted({key.name for group in (EPISODE_KEYS, ITEM, RECEIPT, PLAN, PHASE, SETTINGS_KEYS) for key in group.keys})
VALUES = st.one_of(
    MARKS.map(lambda text: text.replace("\n", " ")),
    st.sampled_from(
        ["5", "about 5", "5%", "5 bag", "9 ft 8 in", "unknown", "rest", "yes", "no", "2026-04-18", "[a, b]", "{a: 5}",
         "ground", "{= spent =}", "#4", "1,250", "-3", "", "bought", "stock", "returned", "saw", "[]", "{}", "5 USD",
         "24 in x 3 ft", "- a, 5", "8.25%", "included", "0:00", "{ground: 5}", "[1, 2, 3]", "0", "1/2", "a: b: c",
         "'", '"']
    ),
)  # fmt: skip


@st.composite
def keyed(draw: st.DrawFn) -> str:
    """Lines of keys and values at any indent, with and without dashes."""
    lines = draw(
        st.lists(
            st.tuples(st.sampled_from([0, 0, 0, 2, 4, 6, 1]), st.booleans(), st.sampled_from(KEYS), VALUES),
            max_size=12,
        )
    )
    return "".join(f"{' ' * indent}{'- ' * dash}{key}: {value}\n" for indent, dash, key, value in lines)


@given(front=keyed(), role=roles)
def test_any_keys_with_any_values_are_read_or_told_of(front: str, role: str) -> None:
    """Whatever stands together."""
    text = f"---\n{DATED}{front}---\n" if role == EPISODE else front
    read_as(role, text.encode(), PHASES if role != "plan.yaml" else "")


# Lines of an item, of which any may stand together: what one line may say is looked at from every side.
ITEM_KEYS = st.sampled_from([key.name for key in ITEM.keys])
ITEM_LINES = st.lists(st.tuples(ITEM_KEYS, VALUES), max_size=8, unique_by=lambda one: one[0])


@given(lines=ITEM_LINES, what=st.sampled_from(["material: a", "equipment: saw", "labour: a", "travel: a", "fee: a"]))
def test_any_line_is_read_or_told_of(lines: list[tuple[str, str]], what: str) -> None:
    """And what is read of it can be costed: a price, or a source that needs none."""
    text = f"---\n{DATED}items:\n  - {what}\n" + "".join(f"    {key}: {value}\n" for key, value in lines) + "---\n"
    read_as(EPISODE, text.encode())


@pytest.mark.parametrize(
    "method", ["a\n\n      b", "|\n      a\n      b\n", ">\n      a\n\n      b\n", '"a\\nb"', '"a\\L\\tb"']
)
def test_a_value_of_several_lines_is_told_on_one(method: str) -> None:
    """However it came by them: messages are read line by line."""
    plan = f"takeoff:\n  pad:\n    method: {method}\n"
    read = read_as("plan.yaml", plan.encode())
    assert read.journal is not None
    assert read.journal.plan.takeoffs[0].method.strip() == "a b"


@given(text=MARKS)
def test_any_marks_are_a_tree_or_one_mistake(text: str) -> None:
    """For the reader of keys alone."""
    report = Report()
    node = read_tree(Source(file="a.yaml", text=text), report)
    assert node is not None or any(problem.is_mistake for problem in report.problems)


@given(text=st.text(max_size=100) | MARKS)
def test_any_text_is_a_quantity_or_unreadable(text: str) -> None:
    """And what reads is printed and read again."""
    try:
        quantity = read_quantity(text)
    except Unreadable:
        return
    assert quantity.value >= 0
    assert read_quantity(f"{quantity.value} {quantity.unit.symbol}").value == quantity.value


@given(story=MARKS | st.text(max_size=200))
def test_any_story_is_read_or_told_of(story: str) -> None:
    """Also with half of a picture, or of a figure."""
    raw = f"---\n{DATED}---\n{story}".encode("utf-8", "surrogatepass")
    read_as(EPISODE, raw)
