"""A tax or a discount whose % may have been forgotten: asked about, unless the printed total tells what was meant."""

from __future__ import annotations

from textwrap import indent

import pytest

from tests.ledger.journals import keep


def told(head: str, *lines: str, settings: str = "", currency: str = "CHF") -> list[str]:
    """All that is said of one receipt, its keys in `head`."""
    items = "\n".join(f"- {line}" for line in lines)
    front = f"receipts:\n  shop:\n{indent(head, '    ')}\n    items:\n{indent(items, '      ')}"
    return keep(front, settings=settings, currency=currency).messages


def test_the_question_says_what_to_write_for_either() -> None:
    """The rate with its %, the amount with all its decimals."""
    [tax], [discount] = told("tax: 8.1", "Timber, 30"), told("discount: about 3", "Timber, 30")
    assert tax == (
        "episodes/01-day.md:6:10: warning: tax: 8.1 has no % sign, so it counts as an amount; expected a part with "
        "its % sign, or an amount with its decimals; write 8.1% if the rate was meant, 8.10 if an amount was"
    )
    assert discount == (
        "episodes/01-day.md:6:15: warning: discount: 3 has no % sign, so it counts as an amount; expected a part with "
        "its % sign, or an amount with its decimals; write 3% if the rate was meant, 3.00 if an amount was"
    )


@pytest.mark.parametrize(
    ("head", "asked"),
    [
        ("tax: 19", 1),
        ("tax: 30", 1),
        ("tax: 8.1", 1),
        ("tax: 19.00", 0),
        ("tax: 8.10", 0),
        ("tax: 19%", 0),
        ("tax: included", 0),
        ("tax: 31", 0),
        ("tax: 0", 0),
        ("discount: 3", 1),
        ("discount: 3.5", 1),
        ("discount: 3.50", 0),
        ("discount: 31", 0),
        ("tax: 19\ndiscount: 3", 2),
        ("tax: 19\ntotal: 119", 0),
        ("discount: 3\ntotal: 97", 0),
    ],
)
def test_a_small_number_with_few_decimals_is_asked_about_where_no_total_settles_it(head: str, asked: int) -> None:
    """A till's amounts have cents, a rate mostly none; with its cents, or a total that agrees, it is no question."""
    found = told(head, "Nails, 100")
    assert [": warning: " in one and "has no % sign" in one for one in found] == [True] * asked


def test_a_total_that_cannot_be_checked_settles_nothing() -> None:
    """The rest agrees with whatever the tax is, and an unknown line with anything."""
    assert len(told("tax: 8.1\ntotal: 60", "Nails, 10", "{material: Gravel, cost: rest}")) == 1
    for lines in (["Nails, unknown"], ["Nails, unknown", "Ply, 18"]):
        assert [": warning: tax: 8.1 has no % sign" in one for one in told("tax: 8.1\ntotal: 60", *lines)] == [
            False,  # that the total cannot be checked
            True,
        ]


def test_a_tax_inside_the_prices_is_in_no_total_that_could_settle_it() -> None:
    """The discount is."""
    found = told("tax: 8.1\ndiscount: 3\ntotal: 97", "Nails, 100", settings="prices_include_tax: yes")
    assert [one.partition("warning: ")[2].partition(" has")[0] for one in found] == ["tax: 8.1"]


def test_where_money_has_no_cents_a_whole_number_is_not_asked_about() -> None:
    """Every amount of yen is whole."""
    assert told("tax: 8\ndiscount: 3", "Nails, 100", currency="JPY") == []


@pytest.mark.parametrize(
    ("head", "fix"),
    [
        ("tax: 8.1\ntotal: 216.20", "write tax: 8.1%"),
        ("tax: 8.10\ntotal: 216.20", "write tax: 8.1%"),
        ("discount: 3\ntotal: 194", "write discount: 3%"),
        ("tax: 5\ndiscount: 3\ntotal: 199", "write discount: 3%"),
        ("tax: 8.1\ndiscount: 3\ntotal: 209.71", "write tax: 8.1% and discount: 3%"),
        ("tax: 8.1\ntotal: 250", "compare each line with the paper"),
        ("tax: 100\ntotal: 400", "write tax: 100%"),
        ("tax: 150\ntotal: 500", "compare each line with the paper"),
    ],
)
def test_a_total_that_disagrees_shows_where_the_rate_was_meant(head: str, fix: str) -> None:
    """8.1 % of 194.00 is 15.714, so 15.71, and 209.71 in all; 200.00 less 3 % and plus 5.00 is 199.00. A rate of
    more than the whole is never meant.
    """
    [mistake] = told(head, "Nails, 200")
    assert ": mistake: the receipt shop says" in mistake
    assert mistake.endswith(f"; {fix}")
