"""Writing down a working: every step computes with the expression that it prints."""

from __future__ import annotations

from fractions import Fraction

from builder.takeoff.declared import Input, MethodDoc
from builder.takeoff.expression import Applied, Constant, Expression, Named, Rule, Total
from builder.takeoff.measures import NUMBER, Habit
from builder.takeoff.records import Coefficient, Drawing, Result, Step
from builder.takeoff.text import Text
from builder.takeoff.values import Lot, Values
from builder.words.quantity import Quantity
from builder.words.units import Unit

GIVEN = Text("given in plan.yaml")
WHOLE = Text("rounded up: only whole ones are sold")
IN_YARDS, YARDS = Text("{volume} in cubic yards"), Text("27 ft3 to the cubic yard")


def words(key: str) -> Text:
    """The name of an input or a result: `footing_width` is called footing width."""
    return Text(key.replace("_", " "))


def many(number: int) -> Constant:
    """A plain number in a formula."""
    return Constant(Quantity(Fraction(number), NUMBER))


def lot_of(lot: Lot) -> Expression:
    """`42 ft`, or `2 × 42 ft`."""
    length = Constant(lot.length)
    return length if lot.count == 1 else many(lot.count) * length


class Working:
    """The steps, coefficients and results of one take-off as they come about."""

    def __init__(self, doc: MethodDoc, values: Values, habit: Habit) -> None:
        self.values, self.habit = values, habit
        self._inputs = {kept.key: kept for kept in doc.inputs}
        self.steps: list[Step] = []
        self.results: list[Result] = []
        self.coefficients: list[Coefficient] = []
        self.proven: bool | None = None
        self.bound: Result | None = None
        self.drawing: Drawing | None = None

    def input(self, key: str) -> Named:
        """An input by its name; one that is a coefficient is noted with its source."""
        kept, value = self._inputs[key], self.values.quantity(key)
        if kept.coefficient:
            self._note(kept, value)
        return Named(words(key), value)

    def _note(self, kept: Input, value: Quantity) -> None:
        source = self.values.sources.get(kept.key, GIVEN)
        noted = Coefficient(key=kept.key, value=value, source=source, given=self.values.given(kept.key))
        if noted not in self.coefficients:
            self.coefficients.append(noted)

    def step(self, name: Text, expression: Expression, unit: Unit, note: Text | None = None) -> Named:
        """Work out `expression` in `unit`; the result under `name` is for the steps after it."""
        result = expression.worth().of(unit)
        self.steps.append(Step(name=name, expression=expression, result=result, note=note))
        return Named(name, result)

    def result(
        self, key: str, expression: Expression, unit: Unit, note: Text | None = None, name: Text | None = None
    ) -> Named:
        """A step that is a result."""
        named = self.step(name or words(key), expression, unit, note)
        self.results.append(Result(key, named.quantity))
        return named

    def whole(self, key: str, exact: Expression, unit: Unit, note: Text = WHOLE) -> Named:
        """A step that rounds up to whole ones, as a result."""
        return self.result(key, Applied(Rule.ROUND_UP, (exact,)), unit, note)

    def lengths(self, key: str) -> Total:
        """The sum of a list of lengths."""
        return Total(words(key), tuple(lot_of(lot) for lot in self.values.lots(key)), self.habit.length)

    def with_waste(self, key: str, net: Named) -> Named:
        """The result `key` with waste on it, beside it."""
        waste = self.input("waste")
        return self.result(f"{key}_with_waste", net * (1 + waste), net.quantity.unit)

    def volume(self, key: str, expression: Expression, note: Text | None = None) -> Named:
        """A volume of concrete, earth or stone as a result: worked out in feet, given in yards; or in metres."""
        small, large = self.habit.small_volume, self.habit.volume
        if small == large:
            return self.result(key, expression, large, note)
        feet = self.step(words(key), expression, small, note)
        self.result(key, feet, large, YARDS, IN_YARDS.put(volume=str(words(key))))
        return Named(words(key), feet.quantity.to(large))
