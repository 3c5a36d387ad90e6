"""Every figure has a name, and every name leads to one figure."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest

from builder.app import figures_text, tally_text, work_out
from builder.figures.account import Account
from builder.figures.figure import Bound, CountFigure, DateFigure, MoneyFigure, QuantityFigure
from builder.figures.names import NoFigure, all_names, look_up
from tests.app.journal_folder import write


@pytest.fixture
def account(tmp_path: Path) -> Account:
    """The small journal, worked out."""
    worked = work_out(write(tmp_path))
    assert worked.account is not None
    assert not worked.mistakes
    return worked.account


@pytest.mark.parametrize(
    ("name", "episode", "minor"),
    [
        # Worked by hand: pegs 18.50, stone 260.00 of which 55 % = 143.00 stay and 117.00 go elsewhere;
        # mix 58 x 5.95 = 345.10, of which 54/58 = 321.30 go in and 23.80 stay in stock;
        # boards 80.00, a quarter used up = 20.00.
        ("spent", 1, 16150),
        ("spent", 2, 42510),
        ("spent to date", 1, 16150),
        ("spent to date", 2, 58660),
        ("paid of the build", None, 70360),
        ("job cost of ground", 2, 16150),
        ("job cost of Foundation", 2, 34130),
        ("in stock", 2, 2380),
        ("reusable of foundation", None, 6000),
        ("elsewhere", None, 11700),
        ("planned of ground", None, 22000),
        ("planned", None, 22000 + 56 * 600 + 2000),
        ("contingency", None, 5760),
        ("own work", 2, 13 * 1800),
    ],
)
def test_a_name_gives_its_figure(account: Account, name: str, episode: int | None, minor: int) -> None:
    """Amounts by episode, to date, by phase and for the build."""
    figure = look_up(name, account, episode)
    assert isinstance(figure, MoneyFigure)
    assert figure.minor == minor


def test_a_rate_is_rounded_once(account: Account) -> None:
    """Job cost 502.80 over 140 ft2 is 3.59 a square foot, over 20 years 25.14, over 20 hours 25.14."""
    per_area, per_year = look_up("job cost per ft2", account), look_up("job cost per year", account)
    assert isinstance(per_area, MoneyFigure)
    assert isinstance(per_year, MoneyFigure)
    assert (per_area.minor, per_area.per) == (359, "ft2")
    assert (per_year.minor, per_year.per) == (2514, "year")


def test_quantities_have_names(account: Account) -> None:
    """Of take-offs and of planned lines."""
    bags, used = look_up("footing.bags", account, 2), look_up("bags used of mix", account, 2)
    assert isinstance(bags, QuantityFigure)
    assert isinstance(used, QuantityFigure)
    assert str(bags.quantity) == "56 bag"
    assert str(used.quantity) == "54 bag"
    assert isinstance(look_up("pallets used of mix", account, 2), NoFigure)


def test_days_and_counts_have_names(account: Account) -> None:
    """The promise, the likely day, and what is not valued."""
    ready, likely, unvalued = (look_up(name, account) for name in ("ready by", "likely date", "unvalued"))
    assert isinstance(ready, DateFigure)
    assert isinstance(likely, DateFigure)
    assert isinstance(unvalued, CountFigure)
    assert unvalued.count == 1


def test_every_name_on_the_list_leads_somewhere(account: Account) -> None:
    """What `inspect --figures` lists can be written into a story."""
    names = list(all_names(account, 2))
    assert len(names) > 60
    assert [name for name in names if isinstance(look_up(name, account, 2), NoFigure)] == []


def test_a_slip_is_met_with_a_guess(account: Account) -> None:
    """A name that is none says what was perhaps meant."""
    figure = look_up("job cots of ground", account, 1)
    assert figure == NoFigure(name="job cots of ground", near="job cost of ground")


def test_an_unknown_price_says_at_least(tmp_path: Path) -> None:
    """Every total above a line without a price, and none beside it."""
    text = "---\ntitle: A\ndate: 2026-05-03\nphase: foundation\nitems:\n  - Bolts, unknown\n  - Nails, 2.00\n---\n"
    worked = work_out(write(tmp_path, **{"episodes/03-third.md": text}))
    assert worked.account is not None
    bounds = {
        name: figure.bound
        for name in ("spent", "spent to date", "job cost of foundation", "job cost of ground", "own work")
        if isinstance(figure := look_up(name, worked.account, 3), MoneyFigure)
    }
    assert bounds == {
        "spent": Bound.AT_LEAST,
        "spent to date": Bound.AT_LEAST,
        "job cost of foundation": Bound.AT_LEAST,
        "job cost of ground": Bound.EXACT,
        "own work": Bound.EXACT,
    }


def test_the_data_add_up_at_every_level(account: Account) -> None:
    """figures.json: lines, episodes and phases each add up to the totals; running totals end there."""
    data = json.loads(figures_text(account))
    for key in ("paid", "job_cost", "in_stock", "reusable", "elsewhere", "brought_in", "replacement_cost", "saved"):
        whole = Fraction(data["totals"][key])
        for rows in ("items", "episodes", "phases"):
            assert sum(Fraction(row[key]) for row in data[rows]) == whole, (key, rows)
        assert Fraction(data["episodes"][-1]["running"][key]) == whole
    assert data["takeoff"]["footing"]["results"]["volume"] == {"value": "1.166666667", "unit": "yd3"}


def test_the_tally_says_what_the_data_say(account: Account) -> None:
    """The same figures, in a table for the terminal."""
    text = tally_text(account)
    lines = {line.split("  ")[0]: line for line in text.splitlines()}
    assert "586.60" in text
    assert lines["Foundation"].split()[1:3] == ["under", "way"]
    assert "not valued: 1 line whose replacement cost nobody knows" in text
