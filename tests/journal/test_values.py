"""What a line, a receipt, an episode and a plan say when they are written right: the readings of design section 4."""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest

from builder.journal.records.item import Item, Kind, Source, TaxTold, Told
from builder.journal.records.settings import Settings
from builder.words.money import Currency, Money
from builder.words.quantity import Quantity
from builder.words.span import Span
from builder.words.units import MEASURED
from tests.journal.samples import DATED, SETTINGS, episode, item, read, told, whole

USD = Currency.named("USD")


def dollars(text: str) -> Money:
    """An amount of the sample journal."""
    return Money(int(Fraction(text) * 100), USD)


class TestLines:
    """The keys of a line item."""

    def test_the_short_form_is_a_material_bought(self) -> None:
        """The amount stands after the last comma; commas before it belong to the name."""
        line = item("Concrete mix, 80 lb, 36.90")
        assert (line.kind, line.source, line.what) == (Kind.MATERIAL, Source.BOUGHT, "Concrete mix, 80 lb")
        assert (line.cost, line.quantity, line.judged) == (dollars("36.90"), None, False)

    @pytest.mark.parametrize(
        ("written", "cost", "judged"),
        [
            ("Nails, unknown", Told.UNKNOWN, False),
            ("Nails, about 36", dollars("36"), True),
            ("Nails, About 36.90", dollars("36.90"), True),
            ("Nails, 0", dollars("0"), False),
            ("Nails,5", dollars("5"), False),
            ("Timber 2x4,36.90", dollars("36.90"), False),
            ("'Nails: 3\", 5'", dollars("5"), False),
        ],
    )
    def test_the_short_form_may_say_that_it_is_not_sure(self, written: str, cost: object, judged: bool) -> None:
        """Unknown is not zero, and about is kept."""
        line = item(written)
        assert (line.cost, line.judged) == (cost, judged)

    @pytest.mark.parametrize(
        ("lines", "source"),
        [
            (("material: M", "cost: 5"), Source.BOUGHT),
            (("labour: Help",), Source.UNPAID),
            (("labour: Electrician", "cost: 300"), Source.PAID),
            (("labour: Electrician", "quantity: 4 hour", "unit_cost: 75"), Source.PAID),
            (("travel: Two trips", "quantity: 30 mi"), Source.UNPAID),
            (("travel: Van", "cost: 30"), Source.PAID),
            (("travel: Van", "cost: unknown"), Source.PAID),
            (("fee: Permit", "cost: 75"), Source.PAID),
            (("equipment: Cutter", "source: hired", "cost: 64"), Source.HIRED),
        ],
    )
    def test_a_source_that_is_not_said_is_the_usual_one(self, lines: tuple[str, ...], source: Source) -> None:
        """Work that cost something was paid for."""
        assert item(*lines).source is source

    def test_a_machine_of_owned_yaml_is_owned(self) -> None:
        """In an episode and in the plan, by its key."""
        front = "title: T\ndate: 2026-04-18\nphase: ground\nitems:\n  - equipment: saw\n    quantity: 3 hour\n"
        plan = "phases:\n  - key: ground\n    planned:\n      - equipment: saw\n        quantity: 3 hour\n"
        journal = whole(
            read(front, plan=plan, owned="equipment: {saw: {name: Table saw, replacement_cost: about 9}}\n")
        )
        planned = journal.plan.phases[0].planned
        assert isinstance(planned, tuple)
        assert [line.source for line in (journal.episodes[0].items[0], planned[0].item)] == [Source.OWNED] * 2
        assert journal.owned.equipment[0].replacement_cost == 9

    def test_numbers_are_exact(self) -> None:
        """A unit cost has any digits, a quantity any fraction, a rate is a fraction."""
        line = item("material: M", "quantity: 9 ft 8 in", "unit_cost: 6.1049", "used: 80%", "reusable_share: 0.25")
        assert line.quantity == Quantity.of(Fraction(29, 3), "ft")
        assert line.unit_cost == Fraction("6.1049")
        assert (line.used, line.reusable) == (Fraction(4, 5), Fraction(1, 4))

    @pytest.mark.parametrize(("uses", "reusable"), [(1, Fraction(0)), (2, Fraction(1, 2)), (4, Fraction(3, 4))])
    def test_uses_make_a_reusable_share(self, uses: int, reusable: Fraction) -> None:
        """Four uses mean that three quarters will serve again."""
        line = item("material: Boards", "cost: 88", f"uses: {uses}")
        assert (line.reusable, line.uses) == (reusable, uses)

    @pytest.mark.parametrize("share", ["55%", "0.55"])
    def test_a_share_with_its_sign_is_a_rate(self, share: str) -> None:
        """Where an amount is allowed, a number without its % is one."""
        wanted: object = Fraction(11, 20) if share.endswith("%") else dollars("0.55")
        assert item("material: M", "cost: 260", f"share: {share}").share == wanted

    def test_a_known_part_of_an_unknown_load(self) -> None:
        """The share is an amount and the cost is unknown."""
        line = item("material: Stone", "cost: unknown", "share: 150")
        assert (line.cost, line.share) == (Told.UNKNOWN, dollars("150"))

    @pytest.mark.parametrize(
        "key",
        ["quantity: about 3 bag", "cost: about 5", "used: about 2 bag", "replacement_cost: about 4", "estimated: yes"],
    )
    def test_about_any_number_makes_the_line_a_judgement(self, key: str) -> None:
        """And so does saying so."""
        plain = ["material: M", "quantity: 3 bag", "cost: 5"]
        others = [line for line in plain if not key.startswith(line.partition(":")[0])]
        assert item(*others, key).judged
        assert not item(*plain).judged

    @pytest.mark.parametrize("key", ["tax: about 7%", "delivery: about 35", "discount: about 5"])
    def test_about_on_a_receipt_makes_each_of_its_lines_a_judgement(self, key: str) -> None:
        """Wherever they stand: what they cost rests on it. Lines of other receipts do not."""
        front = f"receipts:\n  yard:\n    {key}\n    items: ['Nails, 9']\n  mill: {{tax: 7%, items: ['Oak, 80']}}\n"
        lines = episode(f"{front}items:\n  - {{material: Bolts, cost: 40, receipt: yard}}\n  - Glue, 3\n").items
        assert [(line.what, line.judged) for line in lines] == [
            ("Nails", True),
            ("Oak", False),
            ("Bolts", True),
            ("Glue", False),
        ]

    def test_a_guessed_deposit_is_no_judgement_of_what_the_line_cost(self) -> None:
        """It is owed back, and outside what was paid."""
        line = item("equipment: Cutter", "source: hired", "cost: 64", "deposit: about 100")
        assert (line.deposit, line.judged) == (dollars("100"), False)

    def test_about_so_many_people_is_so_many(self) -> None:
        """No figure rests on how many worked."""
        assert episode("people: about 4\n").people == 4

    @pytest.mark.parametrize("written", ["55", "55.00"])
    def test_a_share_with_its_cents_is_meant_as_an_amount(self, written: str) -> None:
        """Only the bare number is asked about."""
        lines = f"items:\n  - material: Stone\n    cost: 260\n    share: {written}\n"
        assert len(read(DATED + lines).problems) == (written == "55")

    def test_a_size_without_a_unit_is_offered_in_the_unit_of_its_readers(self) -> None:
        """Centimetres where they measure in metres, inches in a land of feet."""
        front = f"{DATED}items:\n  - {{material: Window, cost: 9, size: 60x90}}\n"
        metric = "title: A\nlanguage: de-DE\ncurrency: EUR\n"
        assert told(read(front, settings=metric)) == [
            (
                "episodes/01-a.md:5:39: mistake: size: 60x90 has no unit for its width; expected a width and a height "
                "such as 60 cm x 120 cm; write 60 cm x 90 cm, or in"
            )
        ]
        assert told(read(front)) == [
            (
                "episodes/01-a.md:5:39: mistake: size: 60x90 has no unit for its width; expected a width and a height "
                "such as 24 in x 48 in; write 60 in x 90 in, or cm"
            )
        ]

    @pytest.mark.parametrize(("written", "taxed"), [("no", False), ("No", False), ("yes", True), ("true", True)])
    def test_no_is_no(self, written: str, taxed: bool) -> None:
        """In any case; a line is taxed unless it says otherwise."""
        assert item("material: M", "cost: 5", f"taxed: {written}").taxed is taxed

    @pytest.mark.parametrize(
        ("written", "width", "height"),
        [
            ("24 in x 48 in", "24", "48"),
            ("24 in × 48 in", "24", "48"),
            ('24" x 48"', "24", "48"),
            ('24"x48"', "24", "48"),
            ("2 ft x 4 ft 0-1/2 in", "24", "97/2"),
        ],
    )
    def test_a_size_is_two_lengths(self, written: str, width: str, height: str) -> None:
        """With any cross between them, and kept as it was written."""
        size = item("material: Window", "cost: 5", f"size: {written}").size
        assert size is not None
        assert (size.width.in_unit("in"), size.height.in_unit("in")) == (Fraction(width), Fraction(height))
        assert size.text == written

    def test_every_key_keeps_its_place(self) -> None:
        """For the mistakes that show only when lines are put together."""
        line = item("material: M", "cost: 5", "note: two")
        assert str(line.place) == "episodes/01-a.md:5:5"
        assert str(line.at("note")) == "episodes/01-a.md:7:11"
        assert line.at("used") == line.place

    def test_lines_stand_in_the_order_written(self) -> None:
        """Those inside a receipt among the others, by line."""
        front = "items:\n  - A, 1\nreceipts:\n  yard:\n    items:\n      - B, 2\n"
        assert [line.what for line in episode(front).items] == ["A", "B"]
        turned = "receipts:\n  yard:\n    items:\n      - B, 2\nitems:\n  - A, 1\n"
        assert [line.what for line in episode(turned).items] == ["B", "A"]


class TestReceipts:
    """What the paper says besides the lines."""

    def lines(self, more: str) -> tuple[Item, ...]:
        """The lines of a receipt with these keys."""
        return episode(f"receipts:\n  yard:\n    items:\n      - Nails, 5\n{more}").items

    def test_lines_inside_a_receipt_stand_on_it(self) -> None:
        """And so do those that name it."""
        lines = self.lines("items:\n  - material: Bolts\n    cost: 4\n    receipt: yard\n")
        assert [line.receipt for line in lines] == ["yard", "yard"]

    @pytest.mark.parametrize(
        ("written", "tax"),
        [("8.25%", Fraction(33, 400)), ("4.12", dollars("4.12")), ("included", TaxTold.INCLUDED), ("0", dollars("0"))],
    )
    def test_tax_is_a_rate_an_amount_or_included(self, written: str, tax: object) -> None:
        """Told apart by the % sign."""
        (receipt,) = episode(f'receipts: {{yard: {{tax: {written}, items: ["Nails, 5"]}}}}\n').receipts
        assert receipt.tax == tax

    def test_the_rest_takes_what_is_left(self) -> None:
        """Allowed only there."""
        (line,) = episode('receipts: {yard: {total: 9, items: ["Nails, rest"]}}\n').items
        assert line.cost is Told.REST


class TestEpisodes:
    """The other keys of front matter."""

    def test_a_weekend_counts_by_its_last_day(self) -> None:
        """From and to; one day has both the same."""
        (one,) = whole(read("title: T\nfrom: 2026-04-18\nto: 2026-04-19\n")).episodes
        assert one.dates == Span(datetime.date(2026, 4, 18), datetime.date(2026, 4, 19))
        assert one.date == datetime.date(2026, 4, 19)

    @pytest.mark.parametrize(
        ("written", "hours"), [("7", "7"), ("6.5", "6.5"), ("7 hours", "7"), ("7.5 h", "7.5"), ("12hrs", "12")]
    )
    def test_hours_are_a_number_with_or_without_the_word(self, written: str, hours: str) -> None:
        """For no phase in particular."""
        (told,) = episode(f"hours: {written}\n").hours
        assert (told.phase, told.hours, told.about) == (None, Fraction(hours), False)

    def test_hours_by_phase(self) -> None:
        """Each with the word for its phase; about is kept."""
        told = episode("hours: {ground: 9, foundation: about 21}\n").hours
        assert [(one.phase, one.hours, one.about) for one in told] == [("ground", 9, False), ("foundation", 21, True)]

    @pytest.mark.parametrize(
        ("written", "part", "about"), [("60%", "0.6", False), ("0.6", "0.6", False), ("about 60%", "0.6", True)]
    )
    def test_progress_is_a_part(self, written: str, part: str, about: bool) -> None:
        """With its sign or as a number between nothing and one."""
        (one,) = episode(f"progress: {{ground: {written}}}\n").progress
        assert (one.phase, one.part, one.about) == ("ground", Fraction(part), about)

    @pytest.mark.parametrize("written", ["ground", "[ground]", "\n  - ground"])
    def test_a_lone_word_is_a_list_of_one(self, written: str) -> None:
        """For what is finished, and for snags and lessons."""
        assert [one.text for one in episode(f"done: {written}\n").done] == ["ground"]

    @pytest.mark.parametrize(
        "key", ["items", "receipts", "snags", "fixed", "lessons", "done", "progress", "chapters", "stated"]
    )
    def test_a_list_that_is_still_empty_is_no_mistake(self, key: str) -> None:
        """A new episode has its keys before it has its lines."""
        episode(f"{key}:\n")
        episode(f"{key}:   # nothing yet\n")

    def test_stated_figures_keep_the_digits_they_were_said_with(self) -> None:
        """1204 is checked to the dollar, 3310.50 to the cent."""
        said = episode("stated: {spent: 1204, spent to date: about 3310.50, paid: {says: 1180, differs: why}}\n").stated
        assert [(one.name, one.value, one.decimals, one.about, one.differs) for one in said] == [
            ("spent", 1204, 0, False, None),
            ("spent to date", Fraction("3310.5"), 2, True, None),
            ("paid", 1180, 0, False, "why"),
        ]

    def test_chapters_are_times_and_names(self) -> None:
        """In quotes or not."""
        assert episode('chapters: {"0:00": Intro, 1:02:30: Pour}\n').chapters == (
            ("0:00", "Intro"),
            ("1:02:30", "Pour"),
        )

    def test_number_and_slug_are_the_file_s(self) -> None:
        """And what the pages' folder is called."""
        (one,) = whole(read(more={"episodes/7-the footing.md": "---\ntitle: T\ndate: 2026-04-18\n---\n"})).episodes
        assert (one.number, one.slug, one.name) == (7, "the footing", "07-the footing")

    def test_a_snag_and_its_mending_have_the_same_words(self) -> None:
        """Whatever the case, the spaces and the full stop; both keep what was written."""
        one = episode("snags: [The gate  sticks.]\nlessons: [the GATE sticks]\n")
        assert one.snags[0].bare == one.lessons[0].bare
        assert one.snags[0].text == "The gate  sticks."

    def test_episodes_stand_in_order_of_date_then_number(self) -> None:
        """The names of files change nothing."""
        dates = {"03-a": "2026-04-18", "01-c": "2026-05-02", "02-b": "2026-04-18"}
        files = {f"episodes/{name}.md": f"---\ntitle: T\ndate: {date}\n---\n" for name, date in dates.items()}
        assert [one.slug for one in whole(read(more=files)).episodes] == ["b", "a", "c"]


class TestSettings:
    """journal.yaml."""

    def settings(self, text: str, language: str = "en-US") -> Settings:
        """The settings with these lines more."""
        return whole(read(settings=SETTINGS.replace("en-US", language) + text)).settings

    @pytest.mark.parametrize(
        ("written", "area"),
        [("140 ft2", "140"), ("10 ft x 14 ft", "140"), ("10 ft 6 in x 14 ft", "147"), ("120 in x 168 in", "140")],
    )
    def test_an_area_is_given_or_multiplied(self, written: str, area: str) -> None:
        """Exactly, feet and inches included."""
        told = self.settings(f"floor_area: {written}\n").floor_area
        assert told is not None
        assert told.in_unit("ft2") == Fraction(area)

    def test_metres_multiply_to_square_metres(self) -> None:
        """And the unit follows what was written."""
        told = self.settings("floor_area: 3 m x 4.5 m\n").floor_area
        assert told == Quantity(Fraction("13.5"), MEASURED["m2"])

    @pytest.mark.parametrize(
        ("language", "written", "per"),
        [("en-US", "0.55", "mi"), ("en", "0.55", "mi"), ("en-GB", "0.55", "km"), ("de-DE", "0.55", "km"),
         ("de-DE", "0.55 per mile", "mi"), ("en-US", "0.55/km", "km"), ("en-US", "about 0.55 a mile", "mi")],
    )  # fmt: skip
    def test_travel_is_worth_so_much_a_mile_or_a_kilometre(self, language: str, written: str, per: str) -> None:
        """A bare number is per mile where people measure in feet."""
        told = self.settings(f"travel_rate: {written}\n", language).travel_rate
        assert told is not None
        assert (told.rate, told.per.symbol) == (Fraction("0.55"), per)

    def test_a_work_week_begins_on_monday(self) -> None:
        """Days that are not named have no hours."""
        assert self.settings("work_week: {sunday: 5, saturday: 7 hours}\n").work_week == (0, 0, 0, 0, 0, 7, 5)
        assert self.settings("").work_week is None

    @pytest.mark.parametrize(
        "written", ["2026-07-04/2026-07-12", "[2026-07-04/2026-07-12]", "2026-07-04 to 2026-07-12"]
    )
    def test_away_is_a_stretch_of_days(self, written: str) -> None:
        """In a list or alone."""
        wanted = Span(datetime.date(2026, 7, 4), datetime.date(2026, 7, 12))
        assert self.settings(f"away: {written}\n").away == (wanted,)

    def test_prices_may_include_the_tax(self) -> None:
        """Yes in any case; otherwise no."""
        assert self.settings("prices_include_tax: Yes\n").prices_include_tax
        assert not self.settings("").prices_include_tax

    @pytest.mark.parametrize(
        ("code", "written", "minor"), [("JPY", "1250", 1250), ("KWD", "1.234", 1234), ("USD", "12.1", 1210)]
    )
    def test_an_amount_has_the_decimals_of_the_currency(self, code: str, written: str, minor: int) -> None:
        """No more; fewer are zeros."""
        front = f"title: T\ndate: 2026-04-18\nitems:\n  - Nails, {written}\n"
        journal = whole(read(front, settings=SETTINGS.replace("USD", code)))
        assert journal.episodes[0].items[0].cost == Money(minor, Currency.named(code))


class TestPlan:
    """plan.yaml."""

    def test_a_budget_is_lines_or_one_amount_or_nothing(self) -> None:
        """A guess or not: all of a plan is one."""
        text = """
phases:
  - {key: a, planned: about 500}
  - {key: b, planned: ["Pegs, 20"]}
  - {key: c}
  - key: d
    planned:
"""
        phases = whole(read(plan=text)).plan.phases
        assert phases[0].planned == dollars("500")
        assert isinstance(phases[1].planned, tuple)
        assert (phases[1].planned[0].item.what, phases[1].planned[0].key) == ("Pegs", None)
        assert [phase.planned for phase in phases[2:]] == [None, ()]

    def test_a_quantity_may_come_from_a_take_off(self) -> None:
        """By the name of the take-off and of its result; the place is kept."""
        text = (
            "phases:\n  - key: a\n    planned:\n      - key: mix\n        material: Mix\n"
            "        quantity: {takeoff: footing.bags}\n        unit_cost: 6.10\n"
        )
        (phase,) = whole(read(plan=text)).plan.phases
        assert isinstance(phase.planned, tuple)
        (line,) = phase.planned
        assert line.quantity_from is not None
        assert (line.key, line.quantity_from.name, line.quantity_from.result) == ("mix", "footing", "bags")
        assert str(line.quantity_from.place) == "plan.yaml:6:29"
        assert line.item.quantity is None

    def test_a_phase_is_found_by_its_key(self) -> None:
        """Named after it where the plan gives no name."""
        journal = whole(read(plan="phases:\n  - {key: ground}\n  - {key: frame, name: The frame}\n"))
        assert [journal.phase(key).name for key in ("ground", "frame")] == ["Ground", "The frame"]  # type: ignore[union-attr]
        assert journal.phase("roof") is None

    @pytest.mark.parametrize(("written", "days"), [("7 days", "7"), ("3 hours", "1/8"), ("2 weeks", "14")])
    def test_a_wait_is_days_on_the_calendar(self, written: str, days: str) -> None:
        """Hours are parts of a day."""
        (phase,) = whole(read(plan=f"phases:\n  - {{key: a, wait: {written}}}\n")).plan.phases
        assert phase.wait == Fraction(days)

    def test_a_take_off_keeps_what_was_written(self) -> None:
        """Its method knows what it needs; here everything is text with a place."""
        (entry,) = whole(read(plan="takeoff:\n  pad: {method: slab, length: 10 ft}\n")).plan.takeoffs
        assert (entry.name, entry.method) == ("pad", "slab")
        assert [(one.key.text, str(one.value.place)) for one in entry.inputs] == [("length", "plan.yaml:2:31")]


class TestWhereItEnds:
    """An empty journal publishes, and so does a weekend that cost nothing."""

    def test_a_journal_without_episodes_is_fine(self) -> None:
        """Three lines are enough."""
        journal = whole(read())
        assert (journal.episodes, journal.planned) == ((), False)

    def test_an_episode_without_items_is_fine(self) -> None:
        """A title and a date."""
        assert episode("").items == ()

    def test_a_plan_that_says_nothing_is_a_plan(self) -> None:
        """A file that is there and empty."""
        assert whole(read(plan="# to be written\n")).planned
