"""Tables whose figures or words need more room than a phone has."""

from __future__ import annotations

import pytest

from builder.pages.table import Cell, Column, Row, Table, cells, without_empty

COLUMNS = (
    Column(label="What", role="what"),
    Column(label="Where from", role="side"),
    Column(label="Paid", role="lead", sums=True),
    Column(label="Begun", role="lead"),
)


def table(what: str, side: str, paid: str, begun: str = "") -> Table:
    """A table of one row."""
    return Table(caption="Costs", columns=COLUMNS, rows=(Row(cells=cells(what, side, paid, begun)),))


@pytest.mark.parametrize("paid", ["123,456.789", "at least 12,345.60", "12 345,60"])
def test_figures_that_fit_stand_side_by_side(paid: str) -> None:
    """Eleven letters in a row; words before a figure may break from it."""
    one = table("Sand", "bought", paid)
    assert one.columns == COLUMNS
    assert (one.kind, one.label) == ("folds", "")


def test_figures_that_do_not_fit_stand_under_each_other_with_their_names() -> None:
    """All of a table, since a column that is added up by eye stays one; and what may scroll has a name."""
    one = table("Sand", "bought", "148,500,000.00")
    assert [column.role for column in one.columns] == ["what", "side", "part main", "part main"]
    assert one.columns[2].labelled
    assert (one.kind, one.label) == ("folds long", "Costs")


def test_dates_break_between_their_words() -> None:
    """Where they can."""
    assert table("Sand", "bought", "1.00", "13. Dezember 2026").kind == "folds"
    assert table("Sand", "bought", "1.00", "13.\u00a0Dezember\u00a02026").kind == "folds long"


@pytest.mark.parametrize("long", ["Regenwassersammelbehälteranschluss", "ein Regenwassersammelbehälter"])
def test_words_that_fit_no_column_break(long: str) -> None:
    """Names and what goes with them, not the figures."""
    assert table(long, "bought", "1.00").kind == "folds wordy"
    assert table("Sand", long, "1.00").kind == "folds wordy"
    assert table(long, long, "148,500,000.00").kind == "folds long wordy"


def test_many_short_words_are_no_long_one() -> None:
    """They break between each other anyway."""
    assert table("a name of a great many rather short words", "bought", "1.00").kind == "folds"


def test_a_long_name_of_a_phase_gets_room() -> None:
    """So that a ledger's rows do not grow to five lines for it."""
    phase = (COLUMNS[0], Column(label="Phase", role="side", key="phase"))
    for name, kind in (("Getting permission and clearing", "folds named"), ("Ground", "folds")):
        row = Row(cells=cells("Sand from the old pit in the woods", name))
        assert Table(caption="Costs", columns=phase, rows=(row,)).kind == kind


def test_it_stays_so_when_columns_are_left_out() -> None:
    """And is said once."""
    one = without_empty(table("Regenwassersammelbehälter", "", "148,500,000.00"))
    assert [column.label for column in one.columns] == ["What", "Paid", "Begun"]
    assert one.kind == "folds long wordy"


def test_a_column_of_drawings_is_not_empty() -> None:
    """Nor one of small words: only where there is nothing at all a column goes."""
    columns = (Column(label="What", role="what"), Column(label="Level", role="reads"), Column(label="Note"))
    row = Row(cells=(Cell(text="Ground"), Cell(drawing="<svg/>"), Cell()))
    left = without_empty(Table(caption="Phases", columns=columns, rows=(row,)))
    assert [column.label for column in left.columns] == ["What", "Level"]


def test_long_figures_count_wherever_they_stand() -> None:
    """Also in a column that folds anyway; words in one do not."""
    for sums, kind in ((True, "folds long"), (False, "folds")):
        columns = (COLUMNS[0], Column(label="Earned", sums=sums))
        row = Row(cells=cells("Ground", "1,148,500,000.00"))
        assert Table(caption="Earned", columns=columns, rows=(row,)).kind == kind
