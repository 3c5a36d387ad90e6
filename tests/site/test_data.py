"""The files beside the pages, read as another program would read them."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any, NoReturn

import pytest

from tests.site.folder import listed

# RFC 4180, section 2, its grammar: a file of records ended by CRLF, a record of fields between commas,
# a field with or without quotes. Its TEXTDATA is ASCII; our file is UTF-8, so it is anything but , " CR LF.
FIELD = r'(?:"(?:[^"]|"")*"|[^",\r\n]*)'
RFC_4180 = re.compile(rf"{FIELD}(?:,{FIELD})*(?:\r\n{FIELD}(?:,{FIELD})*)*(?:\r\n)?")

# The figures that are amounts of money, wherever they stand in figures.json.
AMOUNTS = {
    "brought_in", "contingency", "delivery", "deposits_out", "discount", "elsewhere", "estimated",
    "forecast", "goods", "in_stock", "job_cost", "own_work", "paid", "planned", "price_variance",
    "quantity_variance", "replacement_cost", "reusable", "rework", "saved", "spent", "tax", "total",
    "total_variance", "travel_worth",
}  # fmt: skip

# The figures that lines, episodes and phases must agree on.
SUMS = ["paid", "brought_in", "elsewhere", "spent", "job_cost", "in_stock", "reusable", "replacement_cost"]
SUMS += ["estimated", "rework"]


def no_float(digits: str) -> NoReturn:
    """Refuse a number with a point."""
    pytest.fail(f"figures.json holds the number {digits}, which a reader would round: it should be text")


@pytest.fixture(scope="module")
def figures(demo_site: Path) -> dict[str, Any]:
    """figures.json, read so that a number with a point is a failure."""
    text = (demo_site / "figures.json").read_text(encoding="utf-8")
    read: dict[str, Any] = json.loads(text, parse_float=no_float, parse_constant=no_float)
    return read


def rows(demo_site: Path) -> list[list[str]]:
    """The rows of ledger.csv, its heading first."""
    text = (demo_site / "ledger.csv").read_bytes().decode("utf-8")
    return list(csv.reader(io.StringIO(text, newline=""), strict=True))


def every_amount(node: object, path: str = "") -> Iterator[tuple[str, object]]:
    """Every amount in a tree of JSON, with the way to it."""
    if isinstance(node, dict):
        for key, value in node.items():
            if key in AMOUNTS and not isinstance(value, dict | list):
                yield f"{path}.{key}", value
            yield from every_amount(value, f"{path}.{key}")
    if isinstance(node, list):
        for index, value in enumerate(node):
            yield from every_amount(value, f"{path}[{index}]")


def added(rows_of: list[dict[str, Any]], key: str) -> Decimal:
    """The sum of one figure over rows; an unknown one is counted elsewhere, not added."""
    return sum((Decimal(row[key]) for row in rows_of if row[key] is not None), Decimal(0))


def test_the_ledger_is_a_csv_file_as_rfc_4180_has_it(demo_site: Path) -> None:
    """Quotes are doubled, lines end in CRLF, nothing else is special."""
    assert RFC_4180.fullmatch((demo_site / "ledger.csv").read_bytes().decode("utf-8"))


def test_every_row_of_the_ledger_has_as_many_fields_as_its_heading(demo_site: Path) -> None:
    """RFC 4180, section 2, rule 4; and no two columns share a name."""
    heading, *lines = rows(demo_site)
    assert {len(line) for line in lines} == {len(heading)}
    assert len(set(heading)) == len(heading)


def test_the_ledger_has_one_row_a_line_item(demo_site: Path, figures: dict[str, Any]) -> None:
    """The two files tell of the same lines."""
    assert len(rows(demo_site)) - 1 == len(figures["items"]) > 0


def test_every_amount_is_decimal_text(figures: dict[str, Any]) -> None:
    """Major units, as many digits as the currency has, so that no reader's floats can touch it."""
    digits = figures["minor_units"]
    amount = re.compile(rf"-?\d+\.\d{{{digits}}}" if digits else r"-?\d+")
    found = list(every_amount(figures))
    wrong = [f"{path}: {value!r}" for path, value in found if value is not None and not _is(amount, value)]
    assert found
    assert not wrong, listed(wrong)


def _is(pattern: re.Pattern[str], value: object) -> bool:
    return isinstance(value, str) and pattern.fullmatch(value) is not None


@pytest.mark.parametrize("key", SUMS)
def test_lines_episodes_and_phases_add_up_to_the_project(figures: dict[str, Any], key: str) -> None:
    """Design, law 5: whoever adds up a printed column gets the figure below it."""
    whole = Decimal(figures["totals"][key] or 0)
    assert added(figures["items"], key) == whole
    assert added(figures["episodes"], key) == whole
    assert added(figures["phases"], key) == whole


@pytest.mark.parametrize("rows_of", ["items", "episodes", "phases"])
def test_what_came_in_is_somewhere(figures: dict[str, Any], rows_of: str) -> None:
    """Design, law 4: paid + brought in = job cost + in stock + reusable + elsewhere, on every row."""
    for row in figures[rows_of]:
        came = sum(Decimal(row[key]) for key in ("paid", "brought_in"))
        went = sum(Decimal(row[key]) for key in ("job_cost", "in_stock", "reusable", "elsewhere"))
        assert came == went, row


def test_the_last_running_total_is_the_total(figures: dict[str, Any]) -> None:
    """Episode by episode the figures grow into those of the project."""
    totals = figures["totals"]
    sofar = dict.fromkeys(SUMS, Decimal(0))
    for episode in figures["episodes"]:
        sofar = {key: sofar[key] + Decimal(episode[key] or 0) for key in SUMS}
        assert {key: Decimal(episode["running"][key] or 0) for key in SUMS} == sofar
    assert sofar == {key: Decimal(totals[key] or 0) for key in SUMS}
