"""The take-offs as text for the terminal: formula, numbers put in, result, sources, cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from builder.takeoff.records import Takeoff
from builder.words.money import Currency
from builder.words.quantity import Quantity
from builder.words.rounding import half_up


def workings_text(takeoffs: Sequence[Takeoff], currency: Currency, *, brief: bool = False) -> str:
    """Every working; `brief` leaves steps, sources and cautions out."""
    return "\n\n".join("\n".join(_one(takeoff, currency, brief=brief)) for takeoff in takeoffs) + "\n"


def _one(takeoff: Takeoff, currency: Currency, *, brief: bool) -> Iterator[str]:
    yield f"{takeoff.name}: {takeoff.title}"
    yield "  put in: " + ", ".join(f"{given.key.replace('_', ' ')} {given.written}" for given in takeoff.inputs)
    if not brief:
        for step in takeoff.steps:
            yield f"  {step.name} = {step.formula}"
            yield f"    = {step.with_numbers} = {step.result}"
    for result in takeoff.results:
        yield f"  {result.key.replace('_', ' ')}: {_said(result.quantity, currency)}"
    if takeoff.proven is not None:
        bound = f"; nothing can be better than {takeoff.bound.quantity}" if takeoff.bound else ""
        yield "  proven: nothing better exists" if takeoff.proven else f"  the search stopped early{bound}"
    if not brief:
        yield from (f"  {one.key.replace('_', ' ')} {one.value}: {one.source}" for one in takeoff.coefficients)
        yield from (f"  caution: {one.text} ({one.source})" for one in takeoff.cautions)


def _said(quantity: Quantity, currency: Currency) -> str:
    """A result; money (the cost of a cutting plan) with all its decimals and its code."""
    if quantity.unit.symbol != "currency":
        return str(quantity)
    return f"{currency.major(half_up(quantity.value * 10**currency.digits))} {currency.code}"
