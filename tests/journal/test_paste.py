"""Tables of spreadsheets and banks become lines for editing, whatever their cells hold."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.journal.add_line import NewLine
from builder.journal.paste import Columns, NotATable, pasted_lines
from builder.journal.text import LARGEST
from builder.journal.writing import NotDone
from builder.spending import from_table
from tests.journal.samples import DATED, read, told

COLUMNS = Columns(what="What", amount="Amount")


def test_a_cell_of_several_lines_becomes_one() -> None:
    """Spreadsheets write them in quotes; in a journal, a name or a comment stands on one line."""
    table = 'What,Amount\n"Nails,\n40 mm",3.50\n"Sand\nand lime",\n"Two\nlines","3\n.5"\n'
    assert list(pasted_lines(table, COLUMNS)) == [
        '- material: "Nails, 40 mm"',
        "  cost: 3.50",
        "# row 3: nothing is written here: Sand and lime ",
        "- Two lines, 3.5",
    ]


def test_a_heading_of_several_lines_is_found_and_told_as_one() -> None:
    """By the same name on one line."""
    table = '"What\nit was",Amount\nNails,3\n'
    assert list(pasted_lines(table, Columns(what="what it was", amount="Amount"))) == ["- Nails, 3"]
    with pytest.raises(NotATable) as error:
        list(pasted_lines(table, COLUMNS))
    assert str(error.value) == "the table has no column What; its columns are: What it was, Amount"


def test_a_quote_that_is_never_closed_is_told() -> None:
    """It makes one cell of all that follows, which may be more than Python takes."""
    table = 'What,Amount\n"Nails,3\n' + "Sand and lime,4.50\n" * 10_000
    with pytest.raises(NotATable) as error:
        list(pasted_lines(table, COLUMNS))
    assert str(error.value) == (
        "the table cannot be read as CSV (field larger than field limit (131072)); look for a quote that is not closed"
    )


def test_a_cost_with_a_comma_is_not_taken_for_part_of_the_name() -> None:
    """`spend Sand "3 bags, 12"` is a mistake, and not 12 for Sand, 3 bags."""
    new = NewLine(kind="material", what="Sand", values=(("cost", "3 bags, 12"),))
    assert new.written() == ["- material: Sand", "  cost: 3 bags, 12"]
    assert told(read(DATED + "items:\n  " + "\n  ".join(new.written()) + "\n")) == [
        (
            "episodes/01-a.md:6:11: mistake: cost: 3 bags, 12 has words after the number; "
            "expected an amount such as 1250 or 1250.50; write 3"
        )
    ]


def test_a_file_that_is_no_table_is_not_read_to_its_end(tmp_path: Path) -> None:
    """A film, or a disk's image, named by mistake."""
    large = tmp_path / "film.csv"
    large.write_text("What,Amount\n" + "Nails,3\n" * (LARGEST // 8), "utf-8")
    with pytest.raises(NotDone) as error:
        from_table(large, "What", "Amount", ".")
    assert f"{error.value}" == f"{large} has more than 1,000,000 characters; split the table; it may be another file"


def lines(amount: str, decimal: str) -> list[str]:
    """What becomes of one amount."""
    return list(pasted_lines(f"What;Amount\nSand;{amount}\n", Columns(what="What", amount="Amount", decimal=decimal)))


@pytest.mark.parametrize(
    ("amount", "decimal", "plain"),
    [
        ("1,045.50", ".", "1045.50"),
        ("1.045,50", ",", "1045.50"),
        ("1,045,000", ".", "1045000"),
        ("1.045.000", ",", "1045000"),
        ("1 045.50", ".", "1045.50"),
        ("1\N{NO-BREAK SPACE}045,50", ",", "1045.50"),
        ("1045.50", ".", "1045.50"),
        ("-12,90", ",", "12.90"),
        ("\N{MINUS SIGN} 1.045,5", ",", "1045.5"),
    ],
)
def test_an_amount_is_read_with_the_mark_that_was_told(amount: str, decimal: str, plain: str) -> None:
    """Thousands may have the other mark, or a space, between each three digits."""
    assert lines(amount, decimal) == [f"- Sand, {plain}"]


@pytest.mark.parametrize(
    ("amount", "decimal", "other"),
    [
        ("1.045,50", ".", ","),
        ("1,045.50", ",", "."),
        ("-12,90", ".", ","),
        ("12.90", ",", "."),
        ("1.045.000", ".", ","),
        ("1,045,000", ",", "."),
        ("0,125", ".", ","),
        ("1 045,50", ".", ","),
    ],
)
def test_an_amount_with_the_other_mark_is_refused_with_what_to_tell(amount: str, decimal: str, other: str) -> None:
    """1.045,50 is no 1.0455: a comma after the point marks no thousands."""
    assert lines(amount, decimal) == [
        f"# row 2: {amount} is no amount with {decimal} before the cents; use --decimal {other}: Sand {amount}"
    ]


@pytest.mark.parametrize("amount", ["1.04,550", "1,04.5", "1.045.50", "12,345,67", "3 50", "1.234 567,8", "5."])
def test_an_amount_that_is_none_with_either_mark_is_refused(amount: str) -> None:
    """Whichever mark was told."""
    for decimal in ".,":
        assert lines(amount, decimal) == [
            f"# row 2: {amount} is no amount with {decimal} before the cents: Sand {amount}"
        ]


@pytest.mark.parametrize(("amount", "decimal", "other"), [("1.045", ".", ","), ("-1,045", ",", ".")])
def test_an_amount_that_reads_in_two_ways_is_told(amount: str, decimal: str, other: str) -> None:
    """A thousand and some, or one and some thousandths: the line stands, and says so."""
    assert lines(amount, decimal) == [
        f"# row 2: {amount} has three digits after its mark; if they are thousands, use --decimal {other}",
        "- Sand, 1.045",
    ]
    assert lines("0.045", ".") == ["- Sand, 0.045"]


def test_what_a_cell_holds_besides_its_amount_is_told_with_what_to_write() -> None:
    """As in a journal."""
    assert lines("12.50 EUR", ".") == [
        "# row 2: 12.50 EUR has a currency mark; write 12.50: the currency stands in journal.yaml: Sand 12.50 EUR"
    ]


def test_an_amount_with_the_other_sign_than_most_is_told() -> None:
    """A bank writes what was paid below zero, so what stands above came back; a list of costs the other way round."""
    told = "has the other sign than most: if money came back, write a return or a sale"
    table = "What;Amount\nSand;-3\nNails;-4\nBank;none\nStone back;5\n"
    assert list(pasted_lines(table, COLUMNS)) == [
        "- Sand, 3",
        "- Nails, 4",
        "# row 4: none is not a number: Bank none",
        f"# row 5 {told}",
        "- Stone back, 5",
    ]
    table = "What;Amount\nSand;3\nNails;4\nStone back;-5\n"
    assert list(pasted_lines(table, COLUMNS)) == ["- Sand, 3", "- Nails, 4", f"# row 4 {told}", "- Stone back, 5"]
    assert not any(line.startswith("#") for line in pasted_lines(table.replace("-", ""), COLUMNS))
