"""All mistakes of a run together: none hides another, and none is told twice because of another."""

from __future__ import annotations

import pytest

from tests.journal.samples import DATED, SETTINGS, read, told

PLAN = """
phases:
  - key: ground
  - key: foundation
    planned:
      - {key: mix, material: Concrete mix, cost: 219.60}
"""


def places(lines: list[str]) -> list[str]:
    """File and line of each."""
    return [":".join(line.split(":")[:2]) for line in lines]


class TestAllOfThem:
    """One run tells everything there is to mend."""

    def test_every_file_is_read_though_others_have_mistakes(self) -> None:
        """Settings, plan, what is owned and two episodes, one mistake in each."""
        result = read(
            "title: T\ndate: 2026-02-30\n",
            settings=SETTINGS + "begun: soon\n",
            plan="contingency: ten\n",
            owned="tools: {}\n",
            more={"episodes/02-b.md": "no front matter\n"},
        )
        assert places(told(result)) == [
            "journal.yaml:4",
            "owned.yaml:1",
            "plan.yaml:1",
            "episodes/01-a.md:3",
            "episodes/02-b.md:1",
        ]
        assert result.journal is not None
        assert not result.whole

    def test_every_line_of_a_list_is_read_though_others_have_mistakes(self) -> None:
        """And every key of a line."""
        front = f"""{DATED}hours: x
items:
  - Nails
  - material: Stone
    quantity: -3 bag
    cost: 1,250
    taxed: perhaps
  - Bolts, $5
receipts:
  yard:
    tax: 8,25%
    items:
      - Screws, five
"""
        assert places(told(read(front))) == [f"episodes/01-a.md:{line}" for line in (14, 16, 6, 8, 9, 10, 11, 4)]

    def test_a_mistake_in_one_value_is_told_once(self) -> None:
        """A price that cannot be read is not said to be missing as well."""
        for line, count in (
            ("cost: 1,250", 1),
            ("cost:", 1),
            ("price: 5", 1),
            ("kost: 5", 1),
            ("cost: x\n    unit_cost: y", 2),
        ):
            assert len(told(read(f"{DATED}items:\n  - material: Stone\n    {line}\n"))) == count

    @pytest.mark.parametrize(
        "line",
        [
            "returned: four\n    refund: 20\n    quantity: 9 bag",
            "source: bougt\n    from: mix",
            "quantity: 9,5 bag\n    used: 4 bag",
            "quantity: 9 bag\n    used: 4 ft\n    returned: 8 bag",
            "receipt: my yard\n    source: bought",
        ],
    )
    def test_nothing_is_said_that_rests_on_what_could_not_be_read(self, line: str) -> None:
        """The other half of a pair may well be right."""
        assert len(told(read(f"{DATED}items:\n  - material: Stone\n    cost: 5\n    {line}\n"))) == 1

    def test_of_thousands_the_first_are_told_and_how_many_there_are(self) -> None:
        """A pasted file makes a mistake of each of its lines; nobody reads them all."""
        lines = told(read(DATED + "items:\n" + "  - Nails\n" * 1500))
        assert len(lines) == 1001
        assert lines[-1] == (
            "episodes/01-a.md:1004:5: mistake: there are 500 more mistakes after this one; expected fewer; "
            "mend the first ones and look again; it may be one slip all along"
        )


class TestNoEchoes:
    """What cannot be read is reported once, and names that lead to it are not said to lead nowhere."""

    def test_a_line_that_cannot_be_read_keeps_its_id(self) -> None:
        """The deposit that comes back a week later is not a second mistake."""
        front = DATED + "items:\n  - {equipment: Cutter, source: hired, cost: $64, id: cutter}\n"
        later = (
            "---\ntitle: U\ndate: 2026-04-25\nitems:\n  - {equipment: Cutter, from: cutter, deposit_back: 100}\n---\n"
        )
        assert places(told(read(front, more={"episodes/02-b.md": later}))) == ["episodes/01-a.md:5"]

    def test_an_episode_that_cannot_be_read_keeps_its_snags(self) -> None:
        """And its ids."""
        broken = "title: T: x\ndate: 2026-04-18\nsnags: [The gate]\n"
        later = "---\ntitle: U\ndate: 2026-04-25\nfixed: [The gate]\n---\n"
        assert places(told(read(broken, more={"episodes/02-b.md": later}))) == ["episodes/01-a.md:2"]

    def test_a_plan_that_cannot_be_read_keeps_its_phases_and_lines(self) -> None:
        """The episodes that name them are right."""
        front = DATED + "phase: foundation\nprogress: {ground: 20%}\nitems:\n  - {material: M, cost: 5, against: mix}\n"
        assert told(read(front, plan=PLAN)) == []
        broken = PLAN.replace("key: foundation", "key:foundation")
        assert places(told(read(front, plan=broken))) == ["plan.yaml:5"]
        by_name = front.replace("phase: foundation", "phase: Footing & slab")  # which may be the name of one
        assert places(told(read(by_name, plan="phases: ground\n"))) == ["plan.yaml:1"]
        assert places(told(read(front, plan=PLAN.replace("key: mix", "key: my mix")))) == ["plan.yaml:6"]
        assert places(told(read(front, plan=PLAN.replace("219.60", "219,60")))) == ["plan.yaml:6"]

    def test_what_is_owned_and_cannot_be_read_is_still_owned(self) -> None:
        """A machine without a source is not then said to be unlisted."""
        front = (
            DATED + "items:\n  - {equipment: saw, quantity: 3 hour}\n  - {material: F, source: stock, from: fabric}\n"
        )
        assert places(told(read(front, owned="equipment:\n\tsaw: x\n"))) == ["owned.yaml:2"]

    def test_a_receipt_whose_only_line_cannot_be_read_has_a_line(self) -> None:
        """And a receipt that cannot be read is still there for its lines."""
        assert places(told(read(DATED + "receipts: {yard: {items: [Nails]}}\n"))) == ["episodes/01-a.md:4"]
        front = DATED + "receipts: {my yard: {total: 5}}\nitems:\n  - {material: M, cost: 5, receipt: yard}\n"
        assert places(told(read(front))) == ["episodes/01-a.md:4"]

    def test_a_phase_that_cannot_be_read_is_a_phase(self) -> None:
        """The episode does not also lack one."""
        assert places(told(read(DATED + "phase: my phase\n", plan=PLAN))) == ["episodes/01-a.md:4"]

    def test_an_id_typed_over_another_is_the_only_mistake(self) -> None:
        """The lines that draw from the other are right, and will be so again."""
        front = (
            DATED + "items:\n  - {material: M, cost: 5, quantity: 4 m, used: 1 m, id: mix}\n"
            "  - {material: N, cost: 5, quantity: 4 m, used: 1 m, id: mix}\n"
            "  - {material: N, source: stock, quantity: 1 m, from: stone}\n"
        )
        result = read(front)
        assert places(told(result)) == ["episodes/01-a.md:6"]
        assert not result.whole  # the ledger would say that nothing is left to draw

    def test_a_snag_that_cannot_be_read_is_a_snag(self) -> None:
        """What a later episode calls fixed is right, in whichever way the snag was written."""
        later = "---\ntitle: U\ndate: 2026-04-25\nfixed: ['Gate: it sags']\n---\n"
        for snags in ("[Gate: it sags]", "{Gate: it sags}", "{Gate: it sags, Roof: it leaks}"):
            result = read(f"{DATED}snags: {snags}\n", more={"episodes/02-b.md": later})
            assert places(told(result)) == ["episodes/01-a.md:4"]
            assert result.whole  # it costs nothing

    def test_a_date_that_cannot_be_read_is_a_date(self) -> None:
        """The episode does not also lack one."""
        assert len(told(read("title: T\ndate: tomorrow\n"))) == 1
        assert len(told(read("title: T\nfrom: 2026-04-18\nto: tomorrow\n"))) == 1

    def test_settings_that_cannot_be_read_do_not_lack_every_key(self) -> None:
        """One slip, one message."""
        assert len(told(read(settings="title: A: b\nlanguage: en\ncurrency: USD\n"))) == 1
        assert len(told(read(more={"journal.yaml": b"title: caf\xe9\n"}))) == 1

    def test_a_journal_that_reads_is_whole(self) -> None:
        """Warnings and all."""
        front = DATED + "items:\n  - {material: M, quantity: 2, unit_cost: 4, cost: 9}\n"
        result = read(front)
        assert len(told(result)) == 1
        assert result.whole


class TestNamesThatLeadNowhere:
    """What the parts of a journal say of each other."""

    def test_two_episodes_of_one_number(self) -> None:
        """Both files are named."""
        other = "---\ntitle: U\ndate: 2026-04-25\n---\n"
        assert told(read(DATED, more={"episodes/1-b.md": other})) == [
            (
                "episodes/1-b.md:1:1: mistake: episodes/1-b.md has the number 1, and so has episodes/01-a.md; "
                "expected a number of its own for each episode; rename one of the two files"
            )
        ]

    def test_an_unknown_phase_wherever_it_is_named(self) -> None:
        """As the episode's, a line's, in hours, in progress and in done."""
        front = (
            DATED + "phase: fondation\nhours: {frame: 4}\nprogress: {roof: 20%}\ndone: [wiring]\n"
            "items:\n  - {material: M, cost: 5, phase: grund}\n"
        )
        lines = told(read(front, plan=PLAN))
        assert sorted(places(lines)) == [f"episodes/01-a.md:{line}" for line in (4, 5, 6, 7, 9)]
        assert (
            "episodes/01-a.md:4:8: mistake: fondation is no phase of the plan; expected ground or foundation; "
            "did you mean foundation?"
        ) in lines

    def test_a_phase_named_as_the_pages_call_it_wherever_it_is_named(self) -> None:
        """The key is told at once: the name cannot stand there, with its spaces and signs."""
        plan = "phases:\n  - {key: rahmen, name: Rahmen & Dach}\n  - {key: boden, after: [rahmen  & dach]}\n"
        front = (
            DATED + "phase: Rahmen & Dach\nhours: {Rahmen & Dach: 4}\nprogress: {Rahmen & Dach: 20%}\n"
            "done: [Rahmen & Dach]\nitems:\n  - {material: M, cost: 5, phase: Rahmen & Dach}\n"
        )
        lines = told(read(front, plan=plan))
        assert sorted(places(lines)) == [*(f"episodes/01-a.md:{line}" for line in (4, 5, 6, 7, 9)), "plan.yaml:3"]
        assert all(line.endswith("; write rahmen") for line in lines)
        (line,) = told(read(f"{DATED}phase: ''\n", plan=plan.replace("rahmen  & dach", "rahmen")))
        assert ":4:8: mistake: phase: nothing stands between the quotes" in line
        assert lines[0] == (
            "episodes/01-a.md:4:8: mistake: Rahmen & Dach is no phase of the plan; expected rahmen or boden; "
            "write rahmen"
        )

    def test_a_phase_named_nearly_as_the_pages_call_it(self) -> None:
        """The key is what is offered, though the name is what is near."""
        plan = "phases:\n  - {key: p2, name: Rahmen & Dach}\n  - {key: p1, name: Boden}\n"
        (line,) = told(read(f"{DATED}phase: Rahmen und Dach\n", plan=plan))
        assert line.endswith(": Rahmen und Dach is no phase of the plan; expected p2 or p1; did you mean p2?")

    def test_an_episode_without_a_phase_where_the_plan_has_some(self) -> None:
        """Where it has none, none is due."""
        assert told(read(DATED, plan=PLAN)) == [
            (
                "episodes/01-a.md:1:1: mistake: the episode has no phase; expected phase: ground or foundation; "
                "add phase: ground"
            )
        ]
        assert told(read(DATED, plan="contingency: 10%\n")) == []

    def test_an_id_that_stands_twice(self) -> None:
        """Both places are named; one may be in another episode or in owned.yaml."""
        front = DATED + "items:\n  - {material: M, cost: 5, id: mix}\n  - {material: N, cost: 5, id: mix}\n"
        assert told(read(front)) == [
            (
                "episodes/01-a.md:6:32: mistake: the id mix stands twice, first at episodes/01-a.md:5; "
                "expected ids that are one per journal; rename one of the two"
            )
        ]
        owned = "stock: {mix: {material: M, quantity: 2 bag}}\n"
        (line,) = told(read(DATED + "items:\n  - {material: M, cost: 5, id: mix}\n", owned=owned))
        assert "stands twice, first at owned.yaml:1;" in line

    def test_a_line_that_comes_from_nowhere(self) -> None:
        """With the id that is near, or with what to do where there is none."""
        front = DATED + "items:\n  - {material: M, cost: 5, id: mix}\n  - {material: M, source: stock, from: mx}\n"
        assert told(read(front)) == [
            (
                "episodes/01-a.md:6:40: mistake: from: mx is no id of a line and no stock of owned.yaml; "
                "expected the id of an earlier line; did you mean mix?"
            )
        ]
        (line,) = told(read(front.replace(", id: mix", "")))
        assert line.endswith("; expected an id; no line has one yet; give the line it comes from an id")

    def test_a_planned_line_that_is_not_there(self) -> None:
        """The nearest is offered."""
        front = DATED + "phase: ground\nitems:\n  - {material: M, cost: 5, against: [mix, mx]}\n"
        (line,) = told(read(front, plan=PLAN))
        assert line == (
            "episodes/01-a.md:6:37: mistake: against: mx is no planned line; expected mix; did you mean mix?"
        )

    def test_progress_may_stand_still(self) -> None:
        """It rained."""
        later = "---\ntitle: U\ndate: 2026-04-25\nphase: ground\nprogress: {ground: 60%}\n---\n"
        front = DATED + "phase: ground\nprogress: {ground: 60%}\n"
        assert told(read(front, plan=PLAN, more={"episodes/02-b.md": later})) == []

    def test_progress_that_goes_back(self) -> None:
        """In words of percent."""
        later = "---\ntitle: U\ndate: 2026-04-25\nphase: ground\nprogress: {ground: 37.5%}\n---\n"
        front = DATED + "phase: ground\nprogress: {ground: 60%}\n"
        assert told(read(front, plan=PLAN, more={"episodes/02-b.md": later})) == [
            (
                "episodes/02-b.md:5:12: mistake: progress of ground goes back from 60% to 37.5%; expected 60% or more; "
                "correct one of the two episodes"
            )
        ]

    def test_work_in_a_phase_that_is_done(self) -> None:
        """Late bills may stand there, hours may not."""
        front = DATED + "phase: ground\ndone: ground\n"
        later = '---\ntitle: U\ndate: 2026-04-25\nphase: ground\nhours: {}\nitems: ["Late bill, 5"]\n---\n'
        bill = later.replace("hours: {}\n", "")
        assert told(read(front, plan=PLAN, more={"episodes/02-b.md": bill})) == []
        (line,) = told(read(front, plan=PLAN, more={"episodes/02-b.md": bill.replace("items", "hours: 4\nitems")}))
        assert "there is work on ground, which episode 1 called done" in line

    def test_a_snag_is_fixed_by_its_words(self) -> None:
        """Whatever the case and the full stop."""
        later = "---\ntitle: U\ndate: 2026-04-25\nfixed: [the NORTH corner is soft]\n---\n"
        front = DATED + "snags: [The north  corner is soft.]\n"
        assert told(read(front, more={"episodes/02-b.md": later})) == []
        (line,) = told(read(front, more={"episodes/02-b.md": later.replace("soft", "softe")}))
        assert line.endswith("; did you mean The north  corner is soft.?")

    def test_a_machine_with_an_hourly_worth_needs_hours(self) -> None:
        """A day of it is no number of hours; without hours it is listed without a price."""
        owned = "equipment: {saw: {name: Saw, replacement_cost: 9}}\n"
        front = DATED + "items:\n  - {equipment: saw, quantity: 3 hours}\n"
        assert told(read(front, owned=owned)) == []
        assert told(read(front.replace(", quantity: 3 hours", ""), owned=owned)) == []
        for quantity in ("3 day", "3"):
            (line,) = told(read(front.replace("3 hours", quantity), owned=owned))
            assert line.startswith("episodes/01-a.md:5:32: mistake: saw has an hourly worth, and its quantity is in ")
        (line,) = told(read(DATED + "items:\n  - {equipment: drill, source: owned, replacement_cost: 2}\n"))
        assert "drill has an hourly worth and no hours" in line

    def test_an_own_machine_named_nearly_by_its_key_or_by_its_name(self) -> None:
        """It would go without its name and its worth; the line stands all the same."""
        owned = "equipment:\n  ruettler: {name: Rüttelplatte, replacement_cost: 9}\n  saw: {name: Table saw}\n"
        front = DATED + "items:\n  - {equipment: ruetler, source: owned, quantity: 3 hour}\n"
        result = read(front, owned=owned)
        assert told(result) == [
            (
                "episodes/01-a.md:5:17: warning: ruetler is no machine of owned.yaml; expected its key there, which "
                "gives it its name and its worth; did you mean ruettler?"
            )
        ]
        assert result.whole
        (line,) = told(read(front.replace("ruetler", "rüttelplatte"), owned=owned))
        assert line.endswith("; write ruettler")
        planned = "phases: [{key: a, planned: [{equipment: ruetler, source: owned, quantity: 3 hour}]}]\n"
        (line,) = told(read(owned=owned, plan=planned))
        assert line.startswith("plan.yaml:1:")

    @pytest.mark.parametrize("tool", ["saw", "Jigsaw", "Hammer", "Old table saw", "mixer"])
    def test_an_own_tool_that_resembles_nothing_there_may_be_any(self, tool: str) -> None:
        """Nobody lists every spanner."""
        owned = "equipment:\n  ruettler: {name: Rüttelplatte}\n  saw: {name: Table saw}\n"
        front = f"{DATED}items:\n  - {{equipment: {tool}, source: owned, quantity: 3 hour}}\n"
        assert told(read(front, owned=owned)) == []
        assert told(read(front)) == []

    def test_a_machine_of_a_file_that_cannot_be_read_is_not_compared(self) -> None:
        """It may be listed there."""
        front = f"{DATED}items:\n  - {{equipment: ruetler, source: owned, quantity: 3 hour}}\n"
        assert places(told(read(front, owned="equipment:\n  ruettler: {}\n  ruetler: Plate\n"))) == ["owned.yaml:3"]
