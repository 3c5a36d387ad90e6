"""The laws of the design, section 3, over whole journals that are made up. One class a law, the law quoted."""

from __future__ import annotations

import random
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.journal.records.item import Source, Told
from builder.ledger.parts import Parts, together
from builder.ledger.records import Ledger, Line
from tests.ledger.journals import Kept, keep_files, value_of
from tests.ledger.whole_journals import Written, largest_remainder, rounded, whole_journals

SIDES = ("paid", "brought_in", "job_cost", "in_stock", "reusable", "elsewhere")
MONEY = tuple(name for name in Parts._fields if name not in ("unpriced", "unvalued", "hours"))
# A whole journal is worth many small examples; a longer search tries more of them.
some = settings(max_examples=settings().max_examples // 6)


def kept_of(written: Written) -> Kept:
    """The ledger of a made-up journal, in which there is nothing to find."""
    kept = keep_files(written.fronts, owned=written.owned, settings=written.settings, currency=written.currency)
    assert kept.messages == []
    return kept


def told(ledger: Ledger) -> list[tuple[object, ...]]:
    """All that a ledger says of its lines, without where they stand."""
    return [(line.ref, line.date, line.phase, line.parts, line.used, line.bought, line.draws) for line in ledger.lines]


class TestTheJournals:
    """What the other laws are tried on."""

    @some
    @given(whole_journals())
    def test_every_journal_holds_all_that_can_happen(self, written: Written) -> None:
        """No law is shown by a journal in which nothing happens."""
        ledger = kept_of(written).ledger
        items = [line.item for line in ledger.lines]
        sources = {item.source for item in items}
        assert {Source.STOCK, Source.SOLD, Source.SPOILED, Source.RETURNED, Source.HIRED} <= sources
        assert any(receipt.delivery and receipt.discount is not None for receipt in ledger.receipts)
        assert any(item.share is not None for item in items)
        assert any(item.used is not None for item in items)
        assert any(item.returned is not None for item in items)
        assert any(item.uses is not None for item in items)
        assert any(item.cost is Told.UNKNOWN for item in items)
        draws = [
            (line.item.lot, draw) for line in ledger.lines for draw in line.draws if line.item.source is Source.STOCK
        ]
        assert any(draw.reusable for _, draw in draws)
        assert any(lot is None for lot, _ in draws)
        assert any(lot is not None for lot, _ in draws)
        assert any(draw.ref == "fabric" for _, draw in draws)
        assert any(len(line.draws) > 1 for line in ledger.lines)


class TestMoneyIsWhole:
    """Law 1. "Money is a whole number of the currency's minor units, always. No float touches money. An amount in a
    file is read from its digits (`12.10` is exactly 12.10)."
    """

    @some
    @given(whole_journals())
    def test_every_amount_is_a_whole_number(self, written: Written) -> None:
        """Whole, and not by accident: no fraction and no truth value either."""
        ledger = kept_of(written).ledger
        amounts = [getattr(line.parts, name) for line in ledger.lines for name in MONEY]
        amounts += [one.parts.own_work for one in ledger.hours]
        amounts += [left.value for left in (*ledger.stock, *ledger.reusable, *ledger.from_earlier)]
        amounts += [draw.value for line in ledger.lines for draw in line.draws]
        for receipt in ledger.receipts:
            amounts += [receipt.goods, receipt.discount, receipt.delivery, receipt.total, receipt.tax or 0]
        assert {type(amount) for amount in amounts} == {int}

    @given(st.integers(0, 10**14), st.sampled_from([("JPY", 0), ("USD", 2), ("KWD", 3)]))
    def test_an_amount_is_its_digits(self, minor: int, currency: tuple[str, int]) -> None:
        """Up to twelve digits before the point, whatever binary fractions make of them."""
        code, digits = currency
        minor %= 10 ** (12 + digits)
        written = {
            "episodes/01-day.md": f"title: Day\ndate: 2026-04-01\nitems: ['Thing, {Decimal(minor).scaleb(-digits):f}']"
        }
        assert keep_files(written, currency=code).whole.paid == minor


class TestRoundedOnce:
    """Law 2. "`quantity x unit cost` is rounded once, half up, to the minor unit, as a till does"."""

    @some
    @given(whole_journals())
    def test_in_whole_journals(self, written: Written) -> None:
        """Every line whose price is a product."""
        kept = kept_of(written)
        for line in kept.ledger.lines:
            item = line.item
            if item.cost is None and item.unit_cost is not None and line.priced is not None and item.quantity:
                exact = item.quantity.value * item.unit_cost * 10**kept.ledger.currency.digits
                assert abs(line.priced.goods - exact) <= Fraction(1, 2)
                assert line.priced.goods - exact != Fraction(-1, 2)

    @given(
        st.decimals(0, 9999, places=3, allow_nan=False).filter(bool),
        st.decimals(0, 9999, places=6, allow_nan=False),
        st.sampled_from([("JPY", 0), ("USD", 2), ("KWD", 3)]),
    )
    def test_against_decimal_arithmetic(self, quantity: Decimal, price: Decimal, currency: tuple[str, int]) -> None:
        """Python's own decimal numbers, rounding half up."""
        code, digits = currency
        line = f"{{material: Thing, quantity: {quantity:f} m, unit_cost: {price:f}}}"
        kept = keep_files({"episodes/01-day.md": f"title: Day\ndate: 2026-04-01\nitems: [{line}]"}, currency=code)
        assert kept.whole.paid == rounded((quantity * price).scaleb(digits))


class TestSplittingLosesNothing:
    """Law 3. "Splitting never loses a cent: tax, delivery and discounts over a receipt's lines use largest remainder,
    ties to the earlier line; a line's parts are split two ways at a time, in the order of section 4, half a cent to
    the part that stays with the build."
    """

    @some
    @given(whole_journals())
    def test_a_receipt_s_lines_add_up_to_it(self, written: Written) -> None:
        """Goods, discount, tax and delivery, and so the total; the discount and the delivery by largest remainder."""
        ledger = kept_of(written).ledger
        for receipt in ledger.receipts:
            lines = on(ledger, receipt.episode, receipt.key)
            prices = [line.priced for line in lines if line.priced is not None]
            goods = [price.goods for price in prices]
            after = [price.goods - price.discount for price in prices]
            brought = [price.delivery for price in prices]
            assert sum(goods) == receipt.goods
            assert [price.discount for price in prices] == largest_remainder(receipt.discount, goods)
            assert brought == largest_remainder(sum(brought), after)
            assert sum(price.whole for price in prices) == receipt.total
            if not receipt.tax_inside:
                added = sum(price.tax for price in prices) + sum(brought) - receipt.delivery
                assert added == receipt.tax

    @some
    @given(whole_journals())
    def test_a_line_is_split_two_ways_at_a_time(self, written: Written) -> None:
        """What came back apart: elsewhere is what the share leaves, reusable what the uses leave, and so on."""
        for line in kept_of(written).ledger.lines:
            item, parts = line.item, line.parts
            if item.source not in (Source.BOUGHT, Source.GIFT) or item.returned is not None or line.priced is None:
                continue
            whole = Decimal(line.priced.whole)
            here = rounded(whole * decimal(item.share)) if isinstance(item.share, Fraction) else None
            if here is not None:
                assert (parts.job_cost, parts.elsewhere) == (here, int(whole) - here)
            if item.uses is not None:
                used_up = rounded(whole / item.uses)
                assert (parts.job_cost, parts.reusable) == (used_up, int(whole) - used_up)
            if isinstance(item.used, Fraction):
                went_in = rounded(whole * decimal(item.used))
                assert (parts.job_cost, parts.in_stock) == (went_in, int(whole) - went_in)


def decimal(rate: Fraction) -> Decimal:
    """A rate of few digits."""
    return Decimal(rate.numerator) / Decimal(rate.denominator)


def on(ledger: Ledger, episode: int, receipt: str) -> list[Line]:
    """The lines of a receipt."""
    return [line for line in ledger.lines if (line.episode, line.item.receipt) == (episode, receipt)]


class TestItBalances:
    """Law 4. "For every line, episode, phase and the project: paid + brought in = job cost + in stock + reusable +
    elsewhere. On a line these are movements on its date."
    """

    @some
    @given(whole_journals())
    def test_for_every_line_episode_phase_and_the_project(self, written: Written) -> None:
        """Written out, and not as the program has it."""
        ledger = kept_of(written).ledger
        groups = [[line] for line in ledger.lines]
        groups += [
            [line for line in ledger.lines if line.episode == one] for one in {line.episode for line in ledger.lines}
        ]
        groups += [
            [line for line in ledger.lines if line.phase == one] for one in {line.phase for line in ledger.lines}
        ]
        for lines in (*groups, list(ledger.lines)):
            one = together(line.parts for line in lines)
            assert one.paid + one.brought_in == one.job_cost + one.in_stock + one.reusable + one.elsewhere
            assert one.unbalanced == 0

    @some
    @given(whole_journals(), st.sampled_from(SIDES), st.integers(-1000, 1000).filter(bool))
    def test_any_one_part_of_any_line_spoilt_is_noticed(self, written: Written, part: str, by: int) -> None:
        """The law is no empty one: whatever line, whichever part, however little."""
        ledger = kept_of(written).ledger
        for number, line in enumerate(ledger.lines):
            spoilt = line.parts._replace(**{part: getattr(line.parts, part) + by})
            lines = [*ledger.lines[:number], replace(line, parts=spoilt), *ledger.lines[number + 1 :]]
            assert spoilt.unbalanced != 0
            assert together(one.parts for one in lines).unbalanced != 0

    @some
    @given(whole_journals())
    def test_a_draw_moves_what_it_carries(self, written: Written) -> None:
        """Out of stock or out of what is reusable, at the value that is told with the draw."""
        for line in kept_of(written).ledger.lines:
            if line.item.source is Source.STOCK and line.item.reusable is None:
                carried = sum(draw.value for draw in line.draws)
                assert line.parts.brought_in - line.parts.in_stock - line.parts.reusable == carried
                assert line.parts.job_cost == carried + line.parts.paid


class TestEverySumAgrees:
    """Law 5. "Sum of lines = sum of episodes = sum of phases = project, for these parts, replacement cost, saved,
    estimated, rework and the counts. A line has a phase: its own (it may lie ahead), else its episode's, else the row
    "no phase"."
    """

    @some
    @given(whole_journals())
    def test_every_written_line_is_in_one_episode_and_one_phase(self, written: Written) -> None:
        """Nothing is left out and nothing counted twice, so any way of grouping has the same sum."""
        kept = kept_of(written)
        episodes = {episode.number: episode for episode in kept.journal.episodes}
        items = [item for episode in episodes.values() for item in episode.items]
        assert sorted(map(id, items)) == sorted(id(line.item) for line in kept.ledger.lines)
        assert len({line.ref for line in kept.ledger.lines}) == len(items)
        for line in kept.ledger.lines:
            assert line.item in episodes[line.episode].items
            assert line.phase == (line.item.phase or episodes[line.episode].phase)
        for hours in kept.ledger.hours:
            assert hours.phase in {one.phase or episodes[hours.episode].phase for one in episodes[hours.episode].hours}

    @some
    @given(whole_journals())
    def test_by_episode_by_phase_and_running(self, written: Written) -> None:
        """All columns, hours included."""
        kept = kept_of(written)
        all_parts = [(one.episode, one.phase, one.parts) for one in (*kept.ledger.lines, *kept.ledger.hours)]
        for key in (0, 1):
            groups = {row[key] for row in all_parts}
            sums = [together(row[2] for row in all_parts if row[key] == group) for group in groups]
            assert together(sums) == kept.whole
        running = Parts()
        for episode in kept.journal.episodes:
            running = running.plus(together(row[2] for row in all_parts if row[0] == episode.number))
        assert running == kept.whole

    @some
    @given(whole_journals())
    def test_what_lies_there_is_what_the_lines_say(self, written: Written) -> None:
        """The lists of stock and of reusable things add up to their parts; deposits are all back."""
        kept = kept_of(written)
        assert value_of(kept.ledger.stock) == kept.whole.in_stock
        assert value_of(kept.ledger.reusable) == kept.whole.reusable
        assert kept.whole.deposits_out == 0

    @some
    @given(whole_journals())
    def test_saved_is_what_the_columns_say(self, written: Written) -> None:
        """Replacement cost - job cost - reusable, over the lines whose replacement cost is known; nothing else."""
        for line in kept_of(written).ledger.lines:
            parts = line.parts
            assert parts.saved in (parts.replacement_cost - parts.job_cost - parts.reusable, 0)
            assert not (parts.unvalued and (parts.saved or parts.replacement_cost))
            assert parts.spent == parts.paid + parts.brought_in - parts.elsewhere


class TestOrder:
    """Law 6. "Everything is in order of date (`to` of a range), then episode number, then line; the names of files
    change nothing." And law 9, as far as it shows here: "Same journal, same bytes."
    """

    @some
    @given(whole_journals())
    def test_lines_are_in_order(self, written: Written) -> None:
        """The date an episode counts by is its last."""
        kept = kept_of(written)
        order = [(line.date, line.episode, line.item.place.line, line.item.place.column) for line in kept.ledger.lines]
        assert order == sorted(order)
        dates = {episode.number: episode.dates.last for episode in kept.journal.episodes}
        assert all(line.date == dates[line.episode] for line in kept.ledger.lines)

    @some
    @given(whole_journals(), st.randoms(use_true_random=False))
    def test_the_names_and_the_order_of_files_change_nothing(self, written: Written, chance: random.Random) -> None:
        """Other words after the number, and found in another order."""
        fronts = [
            (name.replace("-day-", f"-{chance.choice(['a', 'zebra'])}-"), front)
            for name, front in written.fronts.items()
        ]
        chance.shuffle(fronts)
        first, second = kept_of(written).ledger, kept_of(replace(written, fronts=dict(fronts))).ledger
        assert told(first) == told(second)
        assert (first.receipts, first.stock, first.reusable, first.from_earlier, first.hours) == (
            second.receipts, second.stock, second.reusable, second.from_earlier, second.hours,
        )  # fmt: skip

    @some
    @given(whole_journals())
    def test_the_same_journal_has_the_same_ledger(self, written: Written) -> None:
        """To the last field."""
        assert kept_of(written).ledger == kept_of(written).ledger


class TestUnknownIsNotZero:
    """Law 7. "Unknown is not zero. A line of unknown cost is counted (`unpriced`), not summed, and every figure above
    it says "at least"; unknown replacement is counted apart (`unvalued`). Estimates are summed and shown apart."
    """

    @some
    @given(whole_journals(), st.integers(0, 90_000))
    def test_the_real_figure_is_at_least_what_is_said(self, written: Written, cost: int) -> None:
        """Whatever the gravel did cost: no line would have cost less. So "at least" is true."""
        unknown = kept_of(written)
        digits = unknown.ledger.currency.digits
        shares = [
            line.item.share.minor
            for line in unknown.ledger.lines
            if line.item.cost is Told.UNKNOWN and hasattr(line.item.share, "minor")
        ]
        price = f"{Decimal(cost + sum(shares)).scaleb(-digits):f}"
        fronts = {name: front.replace("cost: unknown", f"cost: {price}") for name, front in written.fronts.items()}
        known = kept_of(
            replace(written, fronts=fronts, owned=written.owned.replace("unit_cost: unknown", "unit_cost: 3"))
        )
        for before, after in zip(unknown.ledger.lines, known.ledger.lines, strict=True):
            assert after.parts.paid >= before.parts.paid
            assert after.parts.spent >= before.parts.spent
            if before.item.source is not Source.SOLD:
                assert after.parts.job_cost >= before.parts.job_cost
            assert after.parts.unpriced == 0
            if not before.parts.unpriced:
                assert after.parts == before.parts

    @some
    @given(whole_journals())
    def test_unpriced_are_the_unknown_lines_and_what_was_taken_from_them(self, written: Written) -> None:
        """The line itself, and every line that took from its lot or from an owned lot nobody could price."""
        ledger = kept_of(written).ledger
        lots = {line.ref for line in ledger.lines if line.item.cost is Told.UNKNOWN}
        lots |= {"fabric"} if "unit_cost: unknown" in written.owned else set()
        for line in ledger.lines:
            took = any(draw.ref in lots for draw in line.draws)
            assert line.parts.unpriced == int(took or line.item.cost is Told.UNKNOWN)

    @some
    @given(whole_journals())
    def test_estimates_and_rework_are_the_job_cost_of_their_lines(self, written: Written) -> None:
        """Summed apart, and in job cost as well."""
        for line in kept_of(written).ledger.lines:
            assert line.parts.estimated == (line.parts.job_cost if line.item.judged else 0)
            assert line.parts.rework == (line.parts.job_cost if line.item.rework else 0)


class TestStock:
    """Law 8. "Stock cannot go negative. Drawing all of it leaves exactly zero value"."""

    @some
    @given(whole_journals())
    def test_it_never_goes_below_zero(self, written: Written) -> None:
        """Not after any line, in value; and in the end in quantity neither."""
        ledger = kept_of(written).ledger
        stock = reusable = 0
        for line in ledger.lines:
            stock, reusable = stock + line.parts.in_stock, reusable + line.parts.reusable
            assert (stock >= 0, reusable >= 0) == (True, True)
        for left in (*ledger.stock, *ledger.reusable, *ledger.from_earlier):
            assert left.value >= 0
            assert left.quantity is None or left.quantity >= 0

    @some
    @given(whole_journals())
    def test_drawing_all_of_it_leaves_nothing(self, written: Written) -> None:
        """One more day, on which every material that is left goes in."""
        before = kept_of(written)
        materials = {left.material.casefold() for left in before.ledger.stock}
        lines = "".join(f"\n  - {{material: {name}, source: stock}}" for name in sorted(materials))
        last = f"title: The last of it\ndate: 2027-01-01\nitems:{lines or ' []'}"
        after = kept_of(replace(written, fronts={**written.fronts, "episodes/99-last.md": last}))
        assert after.ledger.stock == ()
        assert after.whole.in_stock == 0
        drawn = sum(line.parts.in_stock for line in after.ledger.lines if line.episode == 99)
        assert drawn == -before.whole.in_stock


@pytest.mark.parametrize("part", SIDES)
def test_one_cent_in_any_part_is_out_of_balance(part: str) -> None:
    """The identity has six members and each of them counts once."""
    balanced = Parts(paid=70, brought_in=30, job_cost=40, in_stock=30, reusable=20, elsewhere=10)
    assert balanced.unbalanced == 0
    assert abs(balanced._replace(**{part: getattr(balanced, part) + 1}).unbalanced) == 1
