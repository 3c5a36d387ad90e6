"""What the plan says in money, and how the ledger stands to it. Amounts are whole minor units."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from builder.journal.records.item import Item
from builder.journal.records.plan import TakeoffRef
from builder.plan.cost_records import CostVariance
from builder.words.quantity import Quantity


class Status(Enum):
    """How far a phase is."""

    DONE = "done"
    UNDER_WAY = "under way"
    NOT_BEGUN = "not begun"


@dataclass(frozen=True, slots=True, kw_only=True)
class Budgeted:
    """A planned line, costed as a real one would be: `job_cost` is what the plan counts, `spend` what it
    would pay. `quantity` is how much to buy, `needed` the part of it for this build, `used` how much of that goes in.
    None where it is not known.
    """

    key: str
    named: bool
    phase: str
    item: Item
    quantity: Quantity | None
    needed: Quantity | None
    used: Quantity | None
    spend: int
    job_cost: int
    takeoff: TakeoffRef | None
    to_find: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseBudget:
    """A phase's budget; `planned` is None when nothing was planned, `lines` empty when it is one number."""

    key: str
    planned: int | None
    lines: tuple[Budgeted, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """Planned lines and the real ones that answer to them. `refs` is empty when nothing answers yet.

    Quantities are None unless all of one side have one and they are in one unit. `wanted` is how much the plan
    says to buy, `needed` the part of it for this build, `missing` how much of what is wanted has not come (None where
    that is not counted in one unit). `lacking` is the job cost that the planned lines still lack: by `missing`, else by
    what is left of the money.
    """

    key: str
    phase: str
    planned: tuple[Budgeted, ...]
    refs: tuple[str, ...]
    planned_quantity: Quantity | None
    quantity: Quantity | None
    wanted: Quantity | None
    needed: Quantity | None
    bought: Quantity | None
    missing: Quantity | None
    planned_cost: int
    job_cost: int
    variance: CostVariance
    lacking: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseOutlook:
    """How a phase stands: its budget, job cost so far, forecast (None when unknown), and its lines.

    `key` None is the row "no phase". `not_planned` are refs of real lines that answer to no planned line.
    """

    key: str | None
    status: Status
    planned: int | None
    job_cost: int
    forecast: int | None
    unpriced: int
    matches: tuple[Match, ...]
    not_planned: tuple[str, ...]

    @property
    def overrun(self) -> int:
        """How far the forecast is over the plan; nothing where it is not, or where one is unknown.

        Cost outside every phase was planned nowhere, so all of it is over.
        """
        if self.forecast is None or (self.planned is None and self.key is not None):
            return 0
        return max(self.forecast - (self.planned or 0), 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """The build against its plan. `planned` and `forecast` are None when a phase's is unknown.

    `contingency` stands outside both; `taken` is what the overruns have taken of it.
    """

    phases: tuple[PhaseOutlook, ...]
    planned: int | None
    forecast: int | None
    contingency: int | None
    taken: int

    @property
    def left(self) -> int | None:
        """Contingency not taken; below zero when the overruns are more than it was."""
        return None if self.contingency is None else self.contingency - self.taken
