"""The words of the ledger, explained where they stand, and how each is worked out."""

from __future__ import annotations

from builder.pages.frame import Term
from builder.pages.wording import Words

_SAYS = {
    "spent": (
        "Spent",
        (
            "What this build has taken so far: what was paid, and leftovers of earlier jobs at what they cost then, "
            "less what went into something else. What is on the shelf or will be used again is still in it."
        ),
    ),
    "paid": (
        "Paid",
        (
            "Money that left the pocket: the price with its share of the receipt's tax and delivery, less discounts "
            "and refunds."
        ),
    ),
    "job_cost": (
        "Job cost",
        (
            "The part of what was spent that this build used up. Leftovers on the shelf and things that will serve "
            "again are not in it, because they are not gone. The plan is on the same footing."
        ),
    ),
    "in_stock": (
        "In stock",
        (
            "Leftovers still on the shelf, at what they cost with tax and delivery. They become job cost on the day "
            "they are used."
        ),
    ),
    "reusable": (
        "Reusable",
        "The part that will serve other jobs, or this one again: form boards, props, a ladder.",
    ),
    "elsewhere": ("Elsewhere", "The part of a shared purchase that went into something else."),
    "brought_in": (
        "Brought in",
        "Leftovers of an earlier job, at what they cost then, on the day this build draws them.",
    ),
    "replacement_cost": (
        "Replacement cost",
        "What the same things would cost somebody who has to buy them new, or hire them.",
    ),
    "saved": (
        "Saved",
        "Replacement cost less job cost and what is reusable, over the lines whose replacement cost is known.",
    ),
    "rework": ("Rework", "Job cost of doing something twice."),
    "estimated": ("Estimated", "Job cost of the lines whose figures are a judgement and not on a paper."),
    "planned": ("Planned", "The budget, with tax inside, on the same footing as job cost."),
    "forecast": (
        "Forecast",
        (
            "Job cost expected at the end. A phase that is done counts what it cost; one not begun, what was planned; "
            "one under way, what it cost so far and what its planned lines still lack."
        ),
    ),
    "own_work": (
        "Own work",
        "Unpaid hours at the journal's rate for an hour. It is in no total.",
    ),
    "travel_worth": ("Travel", "Journeys at the journal's rate. It is in no total."),
    "deposits_out": ("Deposits out", "Paid out and owed back. Outside what was paid while they are out."),
    "running_total": (
        "Running total",
        "The sum over all episodes up to and including this one, in order of date.",
    ),
    "contingency": (
        "Contingency",
        "Kept apart for overruns and never inside a phase. What the overruns of all phases take of it is shown.",
    ),
}


def term(key: str, words: Words) -> Term:
    """A word of the ledger and what it says."""
    name, says = _SAYS[key]
    return Term(name=words.say(name), says=words.say(says))


def terms(words: Words, *keys: str) -> tuple[Term, ...]:
    """Several of them; all, when none is named."""
    return tuple(term(key, words) for key in keys or _SAYS)


def name_of(key: str, words: Words) -> str:
    """A word of the ledger in the page's language."""
    return words.say(_SAYS[key][0])
