"""What the same things would cost somebody who has to buy them new, or hire them.

"Things bought new or hired at `paid` less elsewhere (whole packs and form boards included, what is still in stock
too), or quantity x `replacement_cost` where given; salvaged, gift, secondhand, stock from earlier, owned and
borrowed at quantity x `replacement_cost`, else unvalued; plus fuel unless the worth's basis says it includes it.
Own work and travel are apart: `own_work` and `travel_worth`, in neither replacement cost nor saved."

Amounts are in minor units, worked out by hand.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.ledger.journals import Moved, moved, sound

OWNED = """
    equipment:
      saw: {name: Table saw, replacement_cost: 9, basis: day hire over eight hours}
      tractor: {name: Tractor, replacement_cost: 30, basis: hourly hire with fuel}
      digger: {name: Digger, replacement_cost: 40, basis: a quote, fuel_included: yes}
      pump: {name: Pump, replacement_cost: 5, basis: 'hourly hire, including fuel', fuel_included: no}
      level: {name: Level and squares}
    """


def worth(text: str) -> Moved:
    """What the only line of a journal moves, with the machines above at hand."""
    return sound(f"items:\n  - {text}", owned=OWNED).moved("1.1")


NEW: list[tuple[str, str, int, int]] = [
    ("bought new, at what was paid", "Nails, 36.90", 3690, 0),
    ("less what went elsewhere", "{material: Stone, cost: 260, share: 55%}", 14300, 0),
    (
        "whole packs, also what is still in stock",
        "{material: Mix, quantity: 10 bag, cost: 61, used: 4 bag}",
        6100,
        3660,
    ),
    ("whole form boards", "{material: Boards, cost: 80, uses: 4}", 8000, 0),
    ("hired", "{equipment: Cutter, source: hired, quantity: 1 day, unit_cost: 64}", 6400, 0),
    ("hired, with its fuel", "{equipment: Cutter, source: hired, cost: 64, fuel: 6}", 7000, 0),
    ("a tool bought for the build", "{equipment: Drill, source: bought, cost: 120, reusable_share: 90%}", 12000, 0),
    ("fees", "{fee: Permit, cost: 85}", 8500, 0),
    ("paid work", "{labour: Electrician, source: paid, cost: 300}", 30000, 0),
    # bought in a sale: 4 x 15.00 new, 40.00 paid
    ("or quantity x replacement_cost", "{material: Vent, quantity: 4, cost: 40, replacement_cost: 15}", 6000, 2000),
    (
        "of the part that went into this build",
        "{material: Vent, quantity: 4, cost: 40, share: 50%, replacement_cost: 15}",
        3000,
        1000,
    ),
    (
        # 20.00 of 4 x 10.00
        "of the part that went into this build, where it is an amount",
        "{material: Vent, quantity: 4, unit_cost: 10, share: 20.00, replacement_cost: 15}",
        3000,
        1000,
    ),
    (
        "less what went back",
        "{material: Vent, quantity: 4, cost: 40, returned: 1, replacement_cost: 15}",
        4500,
        1500,
    ),
    (
        # a friend's price for a week; the yard asks 90.00, and the fuel is the same
        "hired below the usual rate",
        "{equipment: Mixer, source: hired, quantity: 1 week, cost: 50, fuel: 6, replacement_cost: 90}",
        9600,
        4000,
    ),
    ("one, where no quantity was said", "{material: Door, cost: 20, replacement_cost: 180}", 18000, 16000),
    ("a price of half a cent goes up", "{material: Peg, quantity: 3, cost: 0, replacement_cost: 0.125}", 38, 38),
]


@pytest.mark.parametrize(("text", "replacement", "saved"), [row[1:] for row in NEW], ids=[r[0] for r in NEW])
def test_things_bought_new_or_hired(text: str, replacement: int, saved: int) -> None:
    """At paid less elsewhere, or quantity x replacement_cost where given."""
    line = worth(text)
    assert (line["replacement_cost"], line.get("saved", 0), "unvalued" in line) == (replacement, saved, False)


OTHERS: list[tuple[str, str, Moved]] = [
    (
        "salvaged",
        "{material: Beam, source: salvaged, quantity: 3, replacement_cost: 45}",
        {"replacement_cost": 13500, "saved": 13500},
    ),
    ("salvaged, and nobody valued it", "{material: Beam, source: salvaged, quantity: 3}", {"unvalued": 1}),
    (
        "a gift with a carriage charge",
        "{material: Door, source: gift, cost: 12, replacement_cost: 90}",
        {"paid": 1200, "job_cost": 1200, "replacement_cost": 9000, "saved": 7800},
    ),
    (
        "secondhand",
        "{material: Window, source: secondhand, quantity: 2, cost: 70, replacement_cost: 140}",
        {"paid": 7000, "job_cost": 7000, "replacement_cost": 28000, "saved": 21000},
    ),
    (
        # nothing can be said to be saved on what nobody knows the worth of
        "secondhand, and nobody valued it",
        "{material: Window, source: secondhand, cost: 70}",
        {"paid": 7000, "job_cost": 7000, "unvalued": 1},
    ),
    (
        "owned, at its hourly worth",
        "{equipment: saw, quantity: 3 hour}",
        {"replacement_cost": 2700, "saved": 2700},
    ),
    (
        # 2 x 9.00 and the fuel, which is paid here too
        "owned, plus fuel",
        "{equipment: saw, quantity: 2 hour, fuel: 4}",
        {"paid": 400, "job_cost": 400, "replacement_cost": 2200, "saved": 1800},
    ),
    (
        # 2 x 30.00 with fuel in it
        "owned, at a worth whose basis includes the fuel",
        "{equipment: tractor, quantity: 2 hour, fuel: 11}",
        {"paid": 1100, "job_cost": 1100, "replacement_cost": 6000, "saved": 4900},
    ),
    (
        "owned, at a worth that is said to include the fuel",
        "{equipment: digger, quantity: 2 hour, fuel: 11}",
        {"paid": 1100, "job_cost": 1100, "replacement_cost": 8000, "saved": 6900},
    ),
    (
        "owned, at a worth that is said not to",
        "{equipment: pump, quantity: 2 hour, fuel: 1}",
        {"paid": 100, "job_cost": 100, "replacement_cost": 1100, "saved": 1000},
    ),
    (
        # the line's own worth has not the basis of the other
        "owned, at a worth of the line's own",
        "{equipment: tractor, quantity: 2 hour, fuel: 11, replacement_cost: 25}",
        {"paid": 1100, "job_cost": 1100, "replacement_cost": 6100, "saved": 5000},
    ),
    ("owned, without hours: listed, not priced", "{equipment: saw}", {"unvalued": 1}),
    ("owned, without worth: listed, not priced", "{equipment: level, quantity: 6 hour}", {"unvalued": 1}),
    (
        "borrowed",
        "{equipment: Mixer, source: borrowed, quantity: 5 hour, replacement_cost: 7, fuel: 3}",
        {"paid": 300, "job_cost": 300, "replacement_cost": 3800, "saved": 3500},
    ),
    (
        "borrowed, and nobody valued it",
        "{equipment: Mixer, source: borrowed, fuel: 3}",
        {"paid": 300, "job_cost": 300, "unvalued": 1},
    ),
]


@pytest.mark.parametrize(("text", "expected"), [row[1:] for row in OTHERS], ids=[row[0] for row in OTHERS])
def test_all_else_at_its_worth_or_unvalued(text: str, expected: Moved) -> None:
    """Salvaged, gift, secondhand, owned and borrowed at quantity x replacement_cost, else unvalued."""
    assert worth(text) == expected


def test_the_basis_of_a_worth_is_told() -> None:
    """Where the hourly worth comes from, unless the line has a worth of its own."""
    kept = sound(
        "items: [{equipment: saw, quantity: 1 hour}, {equipment: saw, quantity: 1 hour, replacement_cost: 8}]",
        owned=OWNED,
    )
    assert [line.worth_basis for line in kept.ledger.lines] == ["day hire over eight hours", None]


def test_saved_is_over_lines_that_are_valued() -> None:
    """Of the beam 45.00; of the window nothing, though 70.00 were paid for it."""
    kept = sound(
        "items: [{material: Beam, source: salvaged, replacement_cost: 45}, "
        "{material: Window, source: secondhand, cost: 70}, 'Nails, 4']"
    )
    assert moved(kept.whole) == {
        "paid": 7400,
        "job_cost": 7400,
        "replacement_cost": 4900,
        "saved": 4500,
        "unvalued": 1,
    }


class TestOwnWork:
    """Own work is hours x `labour_rate`: apart, and in neither replacement cost nor saved."""

    RATE = "labour_rate: 18.33"

    def test_the_hours_of_an_episode(self) -> None:
        """2.5 x 18.33 is 45.825."""
        kept = sound("phase: ground\nhours: 2.5\npeople: 3", settings=self.RATE)
        (hours,) = kept.ledger.hours
        assert (hours.phase, hours.parts.hours, hours.parts.own_work) == ("ground", Fraction(5, 2), 4583)
        assert moved(kept.whole) == {"own_work": 4583}

    def test_the_hours_by_phase(self) -> None:
        """9 for the ground, 21 for the foundation."""
        kept = sound("phase: ground\nhours: {ground: 9, foundation: 21}", settings="labour_rate: 18")
        assert [(one.phase, one.parts.own_work) for one in kept.ledger.hours] == [
            ("ground", 16200),
            ("foundation", 37800),
        ]

    def test_helpers_are_counted_with_them(self) -> None:
        """Unpaid work on a line: no money, and no replacement cost."""
        kept = sound("hours: 7\nitems: [{labour: June, quantity: 3 hour}]", settings="labour_rate: 18")
        assert kept.moved("1.1") == {"own_work": 5400}
        assert (kept.whole.hours, kept.whole.own_work) == (10, 18000)

    def test_half_of_it_may_have_been_for_something_else(self) -> None:
        """A share of the hours."""
        kept = sound("items: [{labour: June, quantity: 3 hour, share: 50%}]", settings="labour_rate: 18")
        assert (kept.whole.hours, kept.whole.own_work) == (Fraction(3, 2), 2700)

    def test_without_a_rate_the_hours_are_counted_all_the_same(self) -> None:
        """And are worth nothing that anybody said."""
        kept = sound("hours: 7")
        assert (kept.whole.hours, kept.whole.own_work) == (7, 0)

    def test_paid_work_is_job_cost_and_no_own_hours(self) -> None:
        """Six hours at 45.00."""
        kept = sound(
            "items: [{labour: Mason, source: paid, quantity: 6 hour, unit_cost: 45}]", settings="labour_rate: 18"
        )
        assert kept.moved("1.1") == {"paid": 27000, "job_cost": 27000, "replacement_cost": 27000}
        assert kept.whole.hours == 0


class TestTravel:
    """Travel at `travel_rate` is apart too; what it cost is paid and job cost."""

    def test_miles_at_the_rate(self) -> None:
        """41 x 0.55 is 22.55."""
        kept = sound("items: [{travel: To the yard, quantity: 41 mi}]", settings="travel_rate: 0.55")
        assert kept.moved("1.1") == {"travel_worth": 2255}

    def test_kilometres_at_a_rate_per_mile(self) -> None:
        """100 km are 62.137119 miles; x 0.55 is 34.175."""
        kept = sound("items: [{travel: To the yard, quantity: 100 km}]", settings="travel_rate: 0.55 per mile")
        assert kept.moved("1.1") == {"travel_worth": 3418}

    def test_what_it_cost_is_paid(self) -> None:
        """The van was hired for 30.00; that is no replacement cost of anything that was built."""
        kept = sound("items: [{travel: Van, quantity: 20 mi, cost: 30}]", settings="travel_rate: 0.50")
        assert kept.moved("1.1") == {"paid": 3000, "job_cost": 3000, "travel_worth": 1000}

    def test_half_of_the_way_may_have_been_for_something_else(self) -> None:
        """A share of the journey."""
        kept = sound("items: [{travel: To town, quantity: 20 mi, share: 50%}]", settings="travel_rate: 0.50")
        assert kept.moved("1.1") == {"travel_worth": 500}

    @pytest.mark.parametrize("quantity", ["2", "2 trip", "2 hour"])
    def test_what_is_no_distance_has_no_worth(self, quantity: str) -> None:
        """Nobody knows how far two trips are."""
        kept = sound(f"items: [{{travel: Trips, quantity: {quantity}}}]", settings="travel_rate: 0.50")
        assert kept.moved("1.1") == {}


class TestEstimated:
    """The rule: "Estimated = job cost of the lines marked, with their tax and delivery"."""

    @pytest.mark.parametrize(
        "text",
        [
            "{material: Mix, quantity: 10 bag, cost: about 50, used: 4 bag}",
            "{material: Mix, quantity: 10 bag, unit_cost: about 5, used: 4 bag}",
            "{material: Mix, quantity: about 10 bag, cost: 50, used: 4 bag}",
            "{material: Mix, quantity: 10 bag, cost: 50, used: about 4 bag}",
            "{material: Mix, cost: 50, share: about 40%}",
            "{material: Mix, cost: 50, share: about 20.00}",
            "{material: Mix, cost: 50, reusable_share: about 60%}",
            "{material: Mix, cost: 40, uses: about 2}",
            "{material: Mix, cost: 20, replacement_cost: about 30}",
            "{equipment: Mixer, source: hired, cost: 15, fuel: about 5}",
            "{material: Mix, quantity: 10 bag, cost: 50, returned: about 6 bag}",
            "{material: Mix, quantity: 10 bag, cost: 50, returned: 6 bag, refund: about 30}",
            "{material: Mix, cost: 20, estimated: yes}",
            "Mix, about 20",
        ],
    )
    def test_about_before_any_number_marks_the_whole_line(self, text: str) -> None:
        """20.00 of job cost in each; what is elsewhere, in stock or reusable is no estimate of job cost."""
        assert worth(text)["estimated"] == 2000

    def test_with_its_tax_and_delivery(self) -> None:
        """50.00, 5.00 tax and 5.00 of the delivery."""
        kept = sound("receipts: {shop: {tax: 10%, delivery: 10, items: ['Mix, about 50', 'Nails, 50']}}")
        assert (kept.whole.estimated, kept.whole.job_cost) == (6000, 12000)

    def test_lines_that_are_not_marked_are_not(self) -> None:
        """A price is a price."""
        assert "estimated" not in worth("{material: Mix, cost: 20}")

    def test_a_draw_may_be_a_judgement(self) -> None:
        """About three of the bags."""
        kept = sound(
            "items: [{material: Mix, quantity: 10 bag, cost: 50, used: 4 bag}]",
            "items: [{material: Mix, source: stock, quantity: about 3 bag}]",
        )
        assert [line.parts.estimated for line in kept.ledger.lines] == [0, 1500]


class TestRework:
    """Rework is the job cost of doing something twice."""

    def test_it_is_the_job_cost_of_the_lines_that_say_so(self) -> None:
        """The second pier: 30.00 bought, of which 10.00 are left, and 12.00 from stock."""
        kept = sound(
            "items: [{material: Mix, quantity: 10 bag, cost: 60, used: 8 bag}]",
            "items: [{material: Tube, quantity: 3, cost: 30, used: 2, rework: yes}, "
            "{material: Mix, source: stock, quantity: 2 bag, rework: yes}, 'Nails, 5']",
        )
        assert kept.whole.rework == 3200
