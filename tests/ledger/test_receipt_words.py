"""What is told about a receipt: where a mistake about its rest stands, and how near a guess has to be."""

from __future__ import annotations

import pytest

from tests.ledger.journals import keep

TAX_ON_IT, NO_TAX_ON_IT = (
    f"that is just the tax on the delivery: {fix}" for fix in ("write delivery_taxed: yes", "leave out delivery_taxed")
)


# 4.00 and 18.00 with 10 % tax and a delivery of 8.00, whose tax would be 0.80.
@pytest.mark.parametrize(
    ("taxed", "total", "guess"),
    [
        ("", "32.99", TAX_ON_IT), ("", "33.01", TAX_ON_IT),
        ("", "32.98", "compare each line with the paper"), ("", "33.02", "compare each line with the paper"),
        (", delivery_taxed: yes", "32.19", NO_TAX_ON_IT), (", delivery_taxed: yes", "32.21", NO_TAX_ON_IT),
        (", delivery_taxed: yes", "32.18", "compare each line with the paper"),
        (", delivery_taxed: yes", "32.22", "compare each line with the paper"),
    ],
)  # fmt: skip
def test_the_tax_on_a_delivery_is_guessed_to_a_cent(taxed: str, total: str, guess: str) -> None:
    """A cent is a rounding, two are something else."""
    receipt = f"shop: {{total: {total}, tax: 10%, delivery: 8{taxed}, items: ['Nails, 4', 'Ply, 18']}}"
    (message,) = keep(f"receipts:\n  {receipt}").messages
    assert message.endswith(f"; {guess}")


@pytest.mark.parametrize(
    ("receipt", "items", "at", "found"),
    [
        (
            "total: 20, ",
            ["{material: Nails, cost: rest}", "{material: Ply, cost: rest}"],
            "Ply, cost: ",
            "two lines of one receipt take the rest",
        ),
        ("", ["{material: Nails, cost: rest}", "'Ply, 18'"], "Nails, cost: ", "the receipt shop has no total to take"),
        (
            "total: 20, ",
            ["{material: Nails, cost: rest}", "'Ply, unknown'"],
            "Nails, cost: ",
            "the receipt shop has a line of unknown cost",
        ),
        ("total: 9, ", ["{material: Nails, cost: rest}", "'Ply, 18'"], "Nails, cost: ", "no cost of this line brings"),
    ],
)
def test_a_mistake_about_the_rest_is_told_at_the_word(receipt: str, items: list[str], at: str, found: str) -> None:
    """Line and column of `rest` itself, under the date and the title that stand before it."""
    line = f"  shop: {{{receipt}items: [{', '.join(items)}]}}"
    (message,) = keep(f"receipts:\n{line}").messages
    column = line.index(at) + len(at) + 1
    assert message.startswith(f"episodes/01-day.md:5:{column}: mistake: {found}")


def test_a_receipt_without_a_line_does_not_hide_the_next() -> None:
    """The empty one is a mistake; the other has its tax and is checked against its total all the same."""
    kept = keep("receipts:\n  empty: {tax: 10%}\n  shop: {tax: 10%, total: 23, items: ['Nails, 20']}")
    assert [message.split("mistake: ")[1].split(";")[0] for message in kept.messages] == [
        "no line stands on the receipt empty",
        "the receipt shop says 23.00, and its lines with tax and delivery come to 22.00, 1.00 less than the paper",
    ]
    assert kept.moved("1.1")["paid"] == 2200
    assert [one.key for one in kept.ledger.receipts] == ["shop"]


COMPARE = "compare each line with the paper"
LINE_BY_LINE = "that is a rounding: tax worked out line by line? Give tax: as the amount that is printed"


@pytest.mark.parametrize(
    ("head", "lines", "guess"),
    [
        # 2.20 off 22.00, of which 0.40 off the nails
        (
            "total: 16.20, discount: 10%",
            "'Nails, 4', 'Ply, 18'",
            "that is just what Nails costs: is it on this receipt at all?",
        ),
        ("total: 18.02", "'Nail, 0.01', 'Ply, 18'", "that is just what Nail costs: is it on the paper twice?"),
        # a cent a line may be lost where each is rounded: 7 % of 4.00 and 18.00 are 1.54
        ("total: 23.56, tax: 7%", "'Nails, 4', 'Ply, 18'", LINE_BY_LINE),
        ("total: 23.57, tax: 7%", "'Nails, 4', 'Ply, 18'", COMPARE),
        # no tax at all is no tax to be rounded, or to be inside
        ("total: 21.99, tax: 0%", "'Nails, 4', 'Ply, 18'", COMPARE),
        ("total: 22.01, tax: 0%", "'Nails, 4', 'Ply, 18'", COMPARE),
        # 7 x 0.333 is 2.331, and the line says itself what was printed
        ("total: 20.34", "{material: Nails, quantity: 7, unit_cost: 0.333, cost: 2.33}, 'Ply, 18'", COMPARE),
    ],
)
def test_a_guess_needs_what_it_says(head: str, lines: str, guess: str) -> None:
    """Nothing is offered as the reason that cannot be one."""
    (message,) = keep(f"receipts:\n  shop: {{{head}, items: [{lines}]}}").messages
    assert message.endswith(f"; {guess}")


def test_a_tax_inside_the_prices_is_not_worked_out_line_by_line() -> None:
    """It is in no sum, so no cent of a sum is lost by it."""
    receipt = "receipts:\n  shop: {total: 22.01, tax: 7%, items: ['Nails, 4', 'Ply, 18']}"
    (message,) = keep(receipt, settings="prices_include_tax: yes").messages
    assert message.endswith(f"; {COMPARE}")


def test_all_of_the_goods_may_be_a_discount() -> None:
    """A voucher for 22.00 is no mistake, a cent more is."""
    receipt = "receipts:\n  shop: {{discount: {}, items: ['Nails, 4', 'Ply, 18']}}"
    assert keep(receipt.format("22.00")).messages == []
    (message,) = keep(receipt.format("22.01")).messages
    assert "the discount of 22.01 is more than the goods, 22.00" in message
