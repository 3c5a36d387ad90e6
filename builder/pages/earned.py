"""Earned value for those who want it, and one plain sentence for those who do not."""

from __future__ import annotations

from fractions import Fraction

from builder.figures.account import Account
from builder.figures.figure import Bound, bound_of
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.wording import Words
from builder.plan.cost_records import EarnedValue


def earned_sentence(account: Account, words: Words) -> str:
    """At this rate the whole build comes to about X, Y over the plan; "" where nobody can tell, or nothing is left."""
    value = account.earned.build
    if account.finished is not None or account.outlook.forecast is None:
        return ""
    if value is None or value.at_this_rate is None or value.budget <= 0:
        return ""
    bound = bound_of(account.sums.whole, "job_cost")
    comes_to = value.at_this_rate.at_completion
    return words.say(
        "At this rate the whole build comes to about {amount}. Against the plan: {verdict}."
        if bound is Bound.EXACT
        else "At this rate the whole build comes to {amount}. Against the plan: {verdict}.",
        amount=words.money(comes_to, bound),
        verdict=words.over_or_under(comes_to - value.budget, bound),
    )


def earned_table(account: Account, words: Words) -> Table | None:
    """Every figure of earned value by phase and for the build; None without a budget."""
    values, whole = account.earned.phases, account.earned.build
    if whole is None:
        return None
    labels = (
        (words.say("Budget (BAC)"), True),
        (words.say("Earned (EV)"), True),
        (words.say("Actual (AC)"), True),
        (words.say("Cost variance (CV)"), True),
        (words.say("Cost index (CPI)"), False),
        (words.say("At completion, at this rate (EAC)"), True),
        (words.say("At completion, rest as planned (EAC)"), True),
        (words.say("To complete, at this rate (ETC)"), True),
        (words.say("Variance at completion (VAC)"), True),
        (words.say("Index needed for the budget (TCPI)"), False),
    )
    columns = (
        Column(label=words.say("Phase"), role="what"),
        *(Column(label=label, role="part", sums=True) for label, _ in labels),
    )
    rows = tuple(
        _row(words, account.phase_name(phase.key) or "", value, unpriced=bool(phase.unpriced))
        for phase, value in values
    )
    caption = words.say(
        "Earned value, in {currency}; here a variance above zero and an index above 1 are favourable",
        currency=account.ledger.currency.code,
    )
    told = account.outlook.forecast is not None  # a phase without a plan is earned by nothing, and may cost anything
    unpriced = bool(account.sums.whole.unpriced)
    foot = (_row(words, words.say("The whole build"), whole, unpriced=unpriced),) if told else ()
    table = Table(
        caption=caption,
        columns=columns,
        rows=rows,
        foot=foot,
        label=caption,
    )
    return without_empty(table)


def _row(words: Words, name: str, value: EarnedValue, *, unpriced: bool) -> Row:
    rate, rest = value.at_this_rate, value.rest_as_planned
    least, most = (Bound.AT_LEAST, Bound.AT_MOST) if unpriced else (Bound.EXACT, Bound.EXACT)
    texts = (
        words.bare(value.budget),
        _amount(words, value.earned),
        _amount(words, value.actual, least),
        _amount(words, value.cost_variance, most),
        _index(words, value.cost_index, most),
        _amount(words, rate.at_completion if rate else None, least),
        _amount(words, rest.at_completion if rest else None, least),
        _amount(words, rate.to_complete if rate else None, least),
        _amount(words, rate.variance if rate else None, most),
        _index(words, value.performance_for_budget, least),
    )
    return Row(cells=(Cell(text=name), *(Cell(text=text) for text in texts)))


def _amount(words: Words, minor: int | None, bound: Bound = Bound.EXACT) -> str:
    return "" if minor is None else words.bounded(words.bare(minor), bound)


def _index(words: Words, index: Fraction | None, bound: Bound) -> str:
    return "" if index is None else words.bounded(words.decimal(index), bound)
