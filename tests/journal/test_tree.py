"""The YAML tree: every value as it was written, each with its place; nothing is taken for something else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.journal.quoting import in_quotes, quoted
from builder.journal.records.written import Mapping, Node, Scalar, Sequence
from builder.journal.report import Report
from builder.journal.text import Source
from builder.journal.tree import DEEPEST, read_tree


def tree(text: str, first_line: int = 1) -> tuple[Node | None, list[str]]:
    """The tree of a text, and what was reported."""
    report = Report()
    node = read_tree(Source(file="a.yaml", text=text), report, first_line)
    return node, [problem.one_line() for problem in report.problems]


def value(text: str) -> Scalar:
    """The one value of a text that is a single key, without a problem."""
    node, problems = tree(text)
    assert problems == []
    assert isinstance(node, Mapping)
    (entry,) = node.entries
    assert isinstance(entry.value, Scalar)
    return entry.value


class TestNothingIsResolved:
    """YAML 1.1 would make False of no, 750 of 12:30 and 8 of 010. Here they stay as they were written."""

    @pytest.mark.parametrize(
        "written",
        ["no", "No", "yes", "on", "off", "true", "12:30", "1:30:00", "010", "0o10", "0x1F", "1e3", "1_000", ".5",
         ".inf", ".nan", "2026-04-18", "2026-02-30", "1,250", "25%", "12.10", "=", "-5", "+5", "NULL", "Null"],
    )  # fmt: skip
    def test_a_value_keeps_its_characters(self, written: str) -> None:
        """All of them, in the same order."""
        assert value(f"key: {written}\n").text == written
        assert value(f"key: '{written}'\n").text == written

    @pytest.mark.parametrize("written", ["", "~", "null", " # a remark"])
    def test_what_says_nothing_is_empty(self, written: str) -> None:
        """And not the word None."""
        assert value(f"key: {written}\n").empty

    def test_an_empty_text_in_quotes_is_not_nothing(self) -> None:
        """Somebody wrote two quotes."""
        assert not value('key: ""\n').empty

    def test_quotes_are_kept_apart(self) -> None:
        """A no in quotes is a word."""
        assert value('key: "no"\n').quoted
        assert not value("key: no\n").quoted

    def test_what_stands_behind_an_empty_value_is_kept(self) -> None:
        """`bar: #4` is a mistake that only the reader of the key can tell from a remark."""
        assert value("bar: #4\n").comment == "#4"
        assert value("bar: 5 # five\n").comment == ""

    @pytest.mark.parametrize("text", ["", "\n\n", "# only a remark\n", "---\n", "---\n...\n", "~\n"])
    def test_a_text_that_says_nothing_is_an_empty_mapping(self, text: str) -> None:
        """Without a problem: what is missing is for its reader to say."""
        node, problems = tree(text)
        assert isinstance(node, Mapping)
        assert node.entries == ()
        assert problems == []


class TestQuoting:
    """Text that the program writes into a journal, or tells somebody to write, reads back as itself."""

    @given(words=st.lists(st.text(st.sampled_from(list("abé #:-'\"\\{}[],&*!|>%@`=?~0no")), min_size=1), min_size=1))
    def test_what_is_written_is_read(self, words: list[str]) -> None:
        """Plain where that is safe, in quotes where not; spaces are single ones either way."""
        text = " ".join(" ".join(words).split())
        assert value(f"key: {quoted(text)}\n").text == text
        assert value(f"key: {in_quotes(text)}\n").text == text
        node, problems = tree(f"[{quoted(text)}, {{key: {in_quotes(text)}}}]\n")
        assert isinstance(node, Sequence)
        assert problems == []
        assert isinstance(node.items[0], Scalar)
        assert node.items[0].text == text


class TestPlaces:
    """Every value carries file, line, column and key path from its first character."""

    TEXT = """title: T
items:
  - material: Stone
    cost: 1,250
  - Nails, 5
hours: {ground: 9}
note: |
  two
  lines
"""

    def places(self, node: Node, found: dict[str, str]) -> dict[str, str]:
        """Key path to line:column+width, for every node below."""
        place = node.place
        found[place.key] = f"{place.line}:{place.column}+{place.width}"
        if isinstance(node, Mapping):
            for entry in node.entries:
                self.places(entry.value, found)
        if isinstance(node, Sequence):
            for one in node.items:
                self.places(one, found)
        return found

    def test_every_node_has_its_own_place(self) -> None:
        """In blocks, lists, braces and texts of several lines."""
        node, _ = tree(self.TEXT)
        assert node is not None
        assert self.places(node, {}) == {
            "": "1:1+1",
            "title": "1:8+1",
            "items": "3:3+1",
            "items[1]": "3:5+1",
            "items[1].material": "3:15+5",
            "items[1].cost": "4:11+5",
            "items[2]": "5:5+8",
            "hours": "6:8+1",
            "hours.ground": "6:17+1",
            "note": "7:7+1",
        }

    def test_front_matter_counts_from_the_file(self) -> None:
        """The line of --- is the first."""
        node, _ = tree(self.TEXT, first_line=2)
        assert node is not None
        assert self.places(node, {})["items[1].cost"] == "5:11+5"

    @pytest.mark.parametrize("before", ["é", "😀", "漢字", "e\u0301"])
    def test_a_column_counts_characters_and_not_bytes(self, before: str) -> None:
        """As editors do."""
        node, _ = tree(f"{{{before}: 5, key: 6}}\n")
        assert isinstance(node, Mapping)
        assert node.entries[1].value.place.column == len(f"{{{before}: 5, key: ") + 1


class TestRefused:
    """What the journal has no use for, and what people do not see they wrote."""

    @pytest.mark.parametrize(
        ("text", "line"),
        [
            (
                "a: 1\nb: 2\na: 3\n",
                ("a.yaml:3:1: mistake: the key a stands twice, first on line 1; expected each key once; "
                "remove one of the two"),
            ),
            (
                "a: &x [1]\nb: [*x, *x]\n",
                ("a.yaml:1:4: mistake: a value begins with & or *; expected text that begins with & or * in quotes; "
                "put the whole value in quotes"),
            ),
            (
                "a: !!python/object:os.system x\n",
                ("a.yaml:1:4: mistake: a value begins with !; expected text that begins with ! in quotes; "
                "put the whole value in quotes"),
            ),
            (
                "a: 1\n---\nb: 2\n",
                ("a.yaml:2:1: mistake: a second set of keys begins here; expected one set; "
                "remove the line of --- or ..."),
            ),
            (
                "? [a, b]\n: 1\n",
                ("a.yaml:1:3: mistake: a list or a group of keys stands where a key is due; "
                "expected a word, then a colon; remove the ?"),
            ),
            (
                "a: Rebar #4, 36.90\n",
                ("a.yaml:1:4: mistake: #4, 36.90 is taken for a comment and left out, as # begins one; "
                'expected a # before a number in quotes; a comment has a space after its #; write "Rebar #4, 36.90"'),
            ),
            (
                "{cost: 1,250}\n",
                ("a.yaml:1:8: mistake: cost: 1,250 is cut in two at its comma; expected inside { }, a value that holds "
                "a comma in quotes, and numbers without commas; write 1250"),
            ),
            (
                "{material: Mix, 80 lb, cost: 5}\n",
                ("a.yaml:1:12: mistake: material: Mix, 80 lb is cut in two at its comma; expected inside { }, a value "
                'that holds a comma in quotes, and numbers without commas; write "Mix, 80 lb"'),
            ),
            (
                "a: b\x07c\n",
                ("a.yaml:1:5: mistake: there is a character that cannot be printed (U+0007); expected letters, digits "
                "and signs; delete it; it may be invisible, so delete from the letter before to the letter after"),
            ),
        ],
    )  # fmt: skip
    def test_it_is_said_at_its_place(self, text: str, line: str) -> None:
        """The whole message."""
        assert tree(text)[1] == [line]

    def test_a_key_that_stands_twice_keeps_the_first_value(self) -> None:
        """And both are not silently one."""
        node, problems = tree("a: 1\na: 2\n")
        assert isinstance(node, Mapping)
        assert next(entry.value for entry in node.entries if isinstance(entry.value, Scalar)).text == "1"
        assert len(problems) == 1

    def test_an_alias_bomb_is_refused_at_its_first_name(self) -> None:
        """Ten lines that would become ten thousand million values."""
        bomb = "a0: &a0 [x, x]\n" + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]\n" for n in range(1, 10))
        node, problems = tree(bomb)
        assert node is None
        assert [line.split(":")[1] for line in problems] == ["1"]

    @pytest.mark.parametrize("opener", ["[", "{a: ", "- ", "? "])
    def test_deep_nesting_is_refused_and_not_followed(self, opener: str) -> None:
        """A hundred thousand brackets are no reason to run out of stack."""
        node, problems = tree(opener * 100_000)
        assert node is None
        assert len(problems) == 1
        node, problems = tree(opener * 20 + "x\n")
        assert node is None
        assert f"lists or keys stand more than {DEEPEST} deep here" in problems[0]

    def test_the_format_s_own_depth_reads(self) -> None:
        """A list against a planned line, on a line of a receipt, and some to spare."""
        node, problems = tree("a: {b: {c: [{d: [e]}]}}\n")
        assert isinstance(node, Mapping)
        assert problems == []

    def test_a_remark_with_a_space_is_a_remark(self) -> None:
        """Nothing is said of it."""
        assert value("cost: 5 # two receipts\n").text == "5"


# What is no YAML: the text, where the slip is, what is said of it and what to write.
SLIPS = [
    ("title: Footings: second pour\n", "1:8", "title has a second colon in its value",
     'write title: "Footings: second pour"'),
    ('title: He said: "no"\n', "1:8", "title has a second colon in its value",
     "write title: 'He said: \"no\"'"),
    ("- material: Bolts: M10\n", "1:13", "material has a second colon in its value",
     'write - material: "Bolts: M10"'),
    ("title: {= spent =} so far\n", "1:8", "a value begins with {=", 'write title: "{= spent =} so far"'),
    ("- {= spent =} so far\n", "1:3", "a value begins with {=", 'write - "{= spent =} so far"'),
    ("items:\n\t- Nails, 5\n", "2:1", "a tab stands here", "put two spaces for each tab"),
    ("items:\n  - a: 1\n \tb: 2\n", "3:2", "a tab stands here", "put two spaces for each tab"),
    ('title: "Footings\ndate: 2026-04-18\n', "1:8", 'a quote (") is opened here and not closed',
     'put a " where the text ends'),
    ("title: 'It's done'\n", "1:8", "the text goes on after its closing quote", 'write title: "It\'s done"'),
    ('title: "Big" pour\n', "1:8", "the text goes on after its closing quote", "write title: '\"Big\" pour'"),
    ("done: [ground, frame\ndate: 2026-04-18\n", "1:7",
     "the [ that stands here is not closed, or a comma is missing behind it",
     "put the ] or the comma in; text that begins with [ stands in quotes"),
    ("hours: {ground: 9 frame: 2}\n", "1:8",
     "the { that stands here is not closed, or a comma is missing behind it",
     "put the } or the comma in; text that begins with { stands in quotes"),
    ("title: [x] done\n", "1:8", "a value begins with [", 'write title: "[x] done"'),
    ("title: *Important*\n", "1:8", "a value begins with *", 'write title: "*Important*"'),
    ("title: @home\n", "1:8", "a value begins with @", 'write title: "@home"'),
    ("title: `code`\n", "1:8", "a value begins with `", 'write title: "`code`"'),
    ("title: %age\n", "1:8", "a value begins with %", 'write title: "%age"'),
    ("title: > 5 in\n", "1:8", "a value begins with >", 'write title: "> 5 in"'),
    ("title: T\ncost:5\nnote: x\n", "2:1", "there is no space after the colon", "write cost: 5"),
    ("items:\n- Nails, 5\n-Bolts, 7\nhours: 7\n", "3:1", "there is no space after the dash", "write - Bolts, 7"),
    ("title: T\nsome words\ndate: x\n", "2:1", "there is no key and colon before some words",
     "add the key, or begin the line further in if it goes on with the one before"),
    ("- material: S\n  quantity: 1 load\n   cost: 5\n", "3:4",
     "this line begins further in than the one before it, and fits under no line above",
     "begin it in the same column as the line it belongs with"),
    ("- material: S\n cost: 5\n", "2:2",
     "this line begins further in than the one before it, and fits under no line above",
     "begin it in the same column as the line it belongs with"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "at", "found", "fix"), SLIPS)
def test_a_slip_is_named_where_it_is(text: str, at: str, found: str, fix: str) -> None:
    """Not where the reader gave up, and in words of the trade."""
    node, problems = tree(text)
    assert node is None
    (line,) = problems
    assert line.startswith(f"a.yaml:{at}: mistake: {found}; expected ")
    assert line.endswith(f"; {fix}")


@pytest.mark.parametrize(("text", "fix"), [(text, fix) for text, _, _, fix in SLIPS if fix.startswith("write ")])
def test_following_the_fix_is_the_end_of_it(text: str, fix: str) -> None:
    """The line, written as the message says, reads."""
    lines = text.split("\n")
    written = fix.removeprefix("write ")
    fixed = next(at for at, line in enumerate(lines) if written.strip("-\"' ")[:3] in line or written[:4] in line)
    indent = lines[fixed][: len(lines[fixed]) - len(lines[fixed].lstrip())]
    lines[fixed] = indent + written
    assert tree("\n".join(lines))[1] == []


def test_no_jargon_of_the_yaml_reader_reaches_the_author() -> None:
    """Its words are for people who know YAML."""
    for text, *_ in SLIPS:
        for line in tree(text)[1]:
            assert not any(word in line for word in ("mapping", "scalar", "token", "block", "parsing", "YAML", "node"))
