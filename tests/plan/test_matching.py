"""Which real lines answer to which planned ones, how much of each has come, and what is still lacking."""

from __future__ import annotations

import pytest

from builder.plan.cost_records import CostVariance
from tests.plan.planned import footing, of, planned, worked

MIX = "key: mix, material: Mix, quantity: 10 bag, unit_cost: 4"
LUMP = "key: small, material: Small things, cost: 50"
ROOF = "  - key: roof\n    planned:\n      - {key: lid, material: Mix, quantity: 2 bag, unit_cost: 9}\n"


class TestWhoAnswers:
    @pytest.mark.parametrize(
        "line",
        [
            "material: Mix, quantity: 4 bag, cost: 20",
            "material: '  MIX ', quantity: 4 bag, cost: 20",
            "material: Readymade, quantity: 4 bag, cost: 20, against: mix",
            "material: Readymade, quantity: 4 bag, cost: 20, against: mix, phase: roof",
        ],
    )
    def test_a_line_answers_by_its_material_in_the_phase_or_by_against(self, line: str) -> None:
        """Whatever the case and the spaces; `against` from any phase."""
        found = planned(footing(MIX) + ROOF, worked(line))
        assert [(match.key, match.refs) for match in found.matches] == [("mix", ("1.1",)), ("lid", ())]

    @pytest.mark.parametrize(
        "line",
        [
            "material: Mixer, quantity: 4 bag, cost: 20",
            "material: Mix, quantity: 4 bag, cost: 20, phase: roof",
            "material: Mix, quantity: 4 bag, cost: 20, against: lid",
        ],
    )
    def test_nothing_else_answers(self, line: str) -> None:
        """Not another name, not another phase, not what answers to something else by `against`."""
        found = planned(footing(MIX) + ROOF, worked(line))
        assert found.matches[0].refs == ()

    def test_planned_lines_that_share_a_real_one_stand_together(self) -> None:
        """In the place of the first of them; the others keep theirs."""
        plan = footing(LUMP, MIX, "key: sand, material: Sand, quantity: 2 bag, unit_cost: 3")
        found = planned(plan, worked("material: All of it, cost: 60, against: [sand, small]"))
        assert [(match.key, match.refs) for match in found.matches] == [("small + sand", ("1.1",)), ("mix", ())]
        assert (found.matches[0].planned_cost, found.matches[0].job_cost) == (5600, 6000)

    def test_two_planned_lines_of_one_material_stand_together(self) -> None:
        """Nobody can say which of them a bag was for."""
        found = planned(footing(MIX, "key: more, material: mix, quantity: 5 bag, unit_cost: 6"),
                        worked("material: Mix, quantity: 12 bag, unit_cost: 5"))  # fmt: skip
        assert (found.match.key, found.match.planned_quantity, found.match.quantity) == (
            "mix + more",
            of("15 bag"),
            of("12 bag"),
        )
        assert (found.match.planned_cost, found.match.job_cost, found.match.lacking) == (7000, 6000, 1400)

    def test_groups_grow_by_every_line_that_joins_them(self) -> None:
        """The first joins a and b, the second b and c."""
        plan = footing(*(f"key: {key}, material: {key.upper()}, cost: 10" for key in "abcd"))
        found = planned(
            plan,
            worked("material: One, cost: 5, against: [a, b]", "material: Two, cost: 7, against: [b, c]"),
        )
        assert [(match.key, match.refs) for match in found.matches] == [("a + b + c", ("1.1", "1.2")), ("d", ())]


class TestOneMatch:
    def test_price_and_quantity_are_told_apart(self) -> None:
        """10 bags at 4 planned, 12 at 5 bought and used: 8.00 for two more bags, 12.00 for their price."""
        match = planned(footing(MIX), worked("material: Mix, quantity: 12 bag, unit_cost: 5")).match
        assert match.variance == CostVariance(price=1200, quantity=800, total=2000)
        assert (match.phase, match.planned_quantity, match.quantity) == ("footing", of("10 bag"), of("12 bag"))
        assert (match.planned_cost, match.job_cost, match.lacking) == (4000, 6000, 0)

    def test_quantities_are_told_in_the_units_of_the_plan(self) -> None:
        """30 ft at 2 planned; 12 yd are 36 ft."""
        plan = footing("key: pipe, material: Pipe, quantity: 30 ft, unit_cost: 2")
        match = planned(plan, worked("material: Pipe, quantity: 12 yd, cost: 72")).match
        assert (match.variance, match.lacking) == (CostVariance(price=0, quantity=1200, total=1200), 0)

    @pytest.mark.parametrize("line", ["material: Mix, quantity: 400 kg, cost: 20", "material: Mix, cost: 20"])
    def test_what_cannot_be_counted_together_is_told_in_money_alone(self, line: str) -> None:
        """Kilograms against bags, or nothing said: of 40.00, 20.00 is left."""
        match = planned(footing(MIX), worked(line)).match
        assert match.variance == CostVariance(price=None, quantity=None, total=-2000)
        assert (match.quantity, match.planned_quantity, match.lacking) == (None, of("10 bag"), 2000)

    def test_one_line_without_a_quantity_leaves_the_whole_uncounted(self) -> None:
        """8 bags, and who knows how many."""
        match = planned(
            footing(MIX), worked("material: Mix, quantity: 8 bag, cost: 32", "material: Mix, cost: 5")
        ).match
        assert (match.quantity, match.bought, match.lacking) == (None, None, 300)

    def test_a_lump_sum_keeps_its_quantity_of_what_came(self) -> None:
        """Nothing is planned to compare 3 boxes with, so 30.00 is left of the 50.00."""
        match = planned(footing(LUMP), worked("material: Small things, quantity: 3 box, cost: 20")).match
        assert (match.planned_quantity, match.quantity, match.bought) == (None, of("3 box"), of("3 box"))
        assert (match.variance, match.lacking) == (CostVariance(price=None, quantity=None, total=-3000), 3000)

    @pytest.mark.parametrize(("cost", "lacking"), [("50", 0), ("70", 0), ("49.99", 1)])
    def test_nothing_is_lacking_below_zero(self, cost: str, lacking: int) -> None:
        """Money that was saved or overspent on one line pays for no other."""
        match = planned(footing(LUMP), worked(f"material: Small things, cost: {cost}")).match
        assert match.lacking == lacking

    def test_what_is_lacking_is_rounded_once_half_up(self) -> None:
        """Half of 0.25 is 0.125, which is 0.13."""
        plan = footing("key: mix, material: Mix, quantity: 2 bag, cost: 0.25")
        match = planned(plan, worked("material: Mix, quantity: 1 bag, cost: 9")).match
        assert match.lacking == 13

    def test_a_planned_line_that_nothing_answers_lacks_all_of_it(self) -> None:
        """And has no quantity yet."""
        match = planned(footing(MIX), worked()).match
        assert (match.refs, match.quantity, match.bought, match.job_cost, match.lacking) == ((), None, None, 0, 4000)
        assert (match.wanted, match.missing) == (of("10 bag"), of("10 bag"))

    @pytest.mark.parametrize(
        ("line", "missing"),
        [
            ("quantity: 4 bag, cost: 20", "6 bag"),
            ("quantity: 12 bag, cost: 50", "0 bag"),
            ("quantity: 400 kg, cost: 20", None),
            ("cost: 20", None),
        ],
    )
    def test_what_is_missing_is_counted_where_both_are(self, line: str, missing: str | None) -> None:
        """Of ten bags; more than ten leave none to come, and kilograms leave nobody knows how many."""
        match = planned(footing(MIX), worked(f"material: Mix, {line}")).match
        assert match.missing == (of(missing) if missing else None)

    def test_of_a_lump_sum_nothing_is_missing_by_count(self) -> None:
        """However much came."""
        for lines in ([], ["material: Small things, quantity: 3 box, cost: 20"]):
            match = planned(footing(LUMP), worked(*lines)).match
            assert (match.wanted, match.missing) == (None, None)


class TestHowMuchHasCome:
    """10 bags at 4 are planned."""

    @pytest.mark.parametrize(
        ("lines", "used", "bought", "lacking"),
        [
            # 8 bought, 6 of them used: the two in stock have come all the same
            (["material: Mix, quantity: 8 bag, cost: 32, used: 6 bag"], "6 bag", "8 bag", 800),
            # what is drawn later was bought once
            (
                [
                    "material: Mix, quantity: 8 bag, cost: 32, used: 6 bag",
                    "material: Mix, source: stock, quantity: 2 bag",
                ],
                "8 bag",
                "8 bag",
                800,
            ),
            # what goes back has not come
            (
                ["material: Mix, quantity: 8 bag, cost: 32", "material: Mix, source: returned, quantity: 3 bag"],
                "5 bag",
                "5 bag",
                2000,
            ),
            # what is sold or spoilt had come
            (
                ["material: Mix, quantity: 8 bag, cost: 32", "material: Mix, source: spoiled, quantity: 3 bag"],
                "5 bag",
                "8 bag",
                800,
            ),
            (
                ["material: Mix, quantity: 8 bag, cost: 32", "material: Mix, source: sold, quantity: 3 bag, cost: 1"],
                "5 bag",
                "8 bag",
                800,
            ),
        ],
    )
    def test_what_came_counts_once(self, lines: list[str], used: str, bought: str, lacking: int) -> None:
        """By what was bought, not by what went in."""
        match = planned(footing(MIX), worked(*lines)).match
        assert (match.quantity, match.bought, match.lacking) == (of(used), of(bought), lacking)

    def test_what_is_drawn_from_a_line_that_answers_to_something_else_comes_with_the_draw(self) -> None:
        """7 bags bought for the roof, 3 of them for the footing after all."""
        found = planned(
            footing(MIX) + ROOF,
            worked("material: Mix, quantity: 7 bag, cost: 28, used: 2 bag, phase: roof"),
            worked("material: Mix, source: stock, quantity: 3 bag"),
        )
        mix = found.matches[0]
        assert (mix.refs, mix.quantity, mix.bought, mix.lacking) == (("2.1",), of("3 bag"), of("3 bag"), 2800)

    def test_a_draw_from_both_counts_what_did_not_come_with_the_plan(self) -> None:
        """Of 5 drawn, 2 were left of the line that answers, and 3 of the other phase's."""
        found = planned(
            footing(MIX) + ROOF,
            worked("material: Mix, quantity: 4 bag, cost: 16, used: 2 bag"),
            worked("material: Mix, quantity: 7 bag, cost: 28, used: 2 bag, phase: roof"),
            worked("material: Mix, source: stock, quantity: 5 bag"),
        )
        mix = found.matches[0]
        assert (mix.refs, mix.quantity, mix.bought, mix.lacking) == (("1.1", "3.1"), of("7 bag"), of("7 bag"), 1200)

    def test_what_was_never_counted_is_not_counted_when_it_is_drawn(self) -> None:
        """A box of screws, a fifth of it left over: of 50.00, 10.00 is left."""
        found = planned(
            footing("key: screws, material: Screws, quantity: 100 screw, cost: 50"),
            worked("material: Screws, cost: 40, used: 80%"),
            worked("material: Screws, source: stock"),
        )
        assert (found.match.refs, found.match.quantity, found.match.bought) == (("1.1", "2.1"), None, None)
        assert (found.match.job_cost, found.match.lacking) == (4000, 1000)

    def test_a_deposit_kept_needs_no_quantity(self) -> None:
        """2 days of the mixer stay 2 days."""
        plan = footing("key: mixer, equipment: Mixer, source: hired, quantity: 2 day, unit_cost: 30")
        found = planned(
            plan,
            worked("equipment: Mixer, source: hired, quantity: 2 day, cost: 60, deposit: 50, id: mixer"),
            worked("equipment: Mixer, from: mixer, deposit_back: 45"),
        )
        assert (found.match.refs, found.match.quantity, found.match.bought) == (
            ("mixer", "2.1"),
            of("2 day"),
            of("2 day"),
        )
        assert (found.match.job_cost, found.match.lacking) == (6500, 0)


class TestNearMisses:
    def test_a_line_that_sounds_like_a_planned_one_is_told(self) -> None:
        """With what to write."""
        plan = footing("key: stone, material: Crushed stone, cost: 9")
        found = planned(plan, worked("material: Crush stone, cost: 8"))
        assert found.near == [
            (
                "episodes/01-day.md:6:5: warning: Crush stone answers to no planned line, and Crushed stone has none "
                "to answer it; expected against: on lines that answer to a planned one by another name or phase; "
                "write against: stone if that is what it is"
            )
        ]

    def test_a_planned_line_without_a_key_is_given_one_first(self) -> None:
        """There is nothing to write after against: yet."""
        found = planned(footing("material: Crushed stone, cost: 9"), worked("material: Crush stone, cost: 8"))
        assert [one.split("; ")[-1] for one in found.near] == ["give the planned line a key"]

    def test_the_same_thing_in_another_phase_is_told(self) -> None:
        """With the phase it was planned in."""
        found = planned(footing("key: stone, material: Stone, cost: 9") + "  - {key: roof, planned: 5}\n",
                        "phase: roof\nitems:\n  - stone, 8\n")  # fmt: skip
        assert [one.split("; ")[0] for one in found.near] == [
            (
                "episodes/01-day.md:6:5: warning: stone answers to no planned line, "
                "and Stone in footing has none to answer it"
            )
        ]

    @pytest.mark.parametrize(
        "lines",
        [
            ["material: Gravel, cost: 8"],  # nothing sounds like it
            ["material: Crush stone, cost: 8, against: stone"],  # it answers
            ["material: Crushed stone, cost: 8", "material: Crush stone, cost: 8"],  # another answers already
        ],
    )
    def test_nothing_is_told_where_nothing_waits_or_sounds_like_it(self, lines: list[str]) -> None:
        """A wrong guess at every line would be noise."""
        assert planned(footing("key: stone, material: Crushed stone, cost: 9"), worked(*lines)).near == []

    def test_a_similar_name_in_another_phase_is_not_told(self) -> None:
        """Only the very same words are."""
        found = planned(footing("key: stone, material: Crushed stone, cost: 9") + "  - {key: roof, planned: 5}\n",
                        "phase: roof\nitems:\n  - Crush stone, 8\n")  # fmt: skip
        assert found.near == []

    def test_what_leaves_answers_to_no_plan(self) -> None:
        """Selling the crush stone is not buying crushed stone."""
        found = planned(
            footing("key: stone, material: Crushed stone, cost: 9") + "  - {key: roof, planned: 5}\n",
            "phase: roof\nitems:\n  - {material: Crush stone, quantity: 2 ton, cost: 8}\n",
            worked("material: Crush stone, source: sold, quantity: 1 ton, cost: 2"),
        )
        assert found.near == []
