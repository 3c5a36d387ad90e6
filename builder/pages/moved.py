"""How the forecast moved: after each episode, what the build was to cost and when it was to be ready."""

from __future__ import annotations

from collections.abc import Sequence

from builder.figures.account import Account, Moved
from builder.figures.figure import Bound, bound_of
from builder.pages.paths import EPISODE_PAGE, PLAN, root_of
from builder.pages.steps import Point, Rule, Steps, all_named, draw_steps
from builder.pages.svg import round_steps
from builder.pages.table import Cell, Column, Row, Table, without_empty
from builder.pages.timewords import chance_words
from builder.pages.wording import Words
from builder.plan.time_records import Finish


def moved_drawing(account: Account, moved: Sequence[Moved], words: Words) -> tuple[str, str]:
    """The forecast cost over the episodes, against the plan, and what stands under it; "" where there are not two."""
    steps = _steps(account, moved, words)
    if steps is None:
        return "", ""
    note = words.say("The numbers under the line are episodes.")
    if not all_named(steps):
        note = f"{note} {words.say('A mark without a number is an episode too.')}"
    return draw_steps(steps), note


def _steps(account: Account, moved: Sequence[Moved], words: Words) -> Steps | None:
    told = [(one, one.forecast) for one in moved if one.forecast is not None]
    planned = account.outlook.planned
    if len(told) < 2 or planned is None:
        return None
    episodes = [account.episode(one.episode) for one, _ in told]
    start = episodes[0].date
    points = tuple(
        Point(day=(episode.date - start).days, amount=amount)
        for episode, (_, amount) in zip(episodes, told, strict=True)
    )
    digits = account.ledger.currency.digits
    return Steps(
        key="moved",
        title=words.say("The forecast after each episode"),
        description=words.say(
            "The forecast cost went from {first} to {last}; the plan is {plan}.",
            first=words.money(points[0].amount, _bound(account, told[0][0])),
            last=words.money(points[-1].amount, _bound(account, told[-1][0])),
            plan=words.money(planned),
        ),
        so_far=points,
        so_far_label=words.say(
            "forecast, {amount}", amount=words.money(points[-1].amount, _bound(account, told[-1][0]))
        ),
        plan=(Point(day=0, amount=planned), Point(day=points[-1].day, amount=planned)),
        plan_label=words.say("plan, {amount}", amount=words.money(planned)),
        amounts=tuple(
            Rule(at=amount, label=words.whole(amount // 10**digits))
            for amount in round_steps(max(planned, *(point.amount for point in points)))
            if amount % 10**digits == 0
        ),
        dates=tuple(
            Rule(at=point.day, label=words.whole(episode.number))
            for point, episode in zip(points, episodes, strict=True)
        ),
    )


def _bound(account: Account, one: Moved) -> Bound:
    """Whether unpriced lines stood below the forecast of that day."""
    return bound_of(account.sums.running[one.episode], "job_cost")


def moved_table(account: Account, moved: Sequence[Moved], words: Words) -> Table | None:
    """The same as a table, with the dates and the chance; None where nothing was ever forecast."""
    if len(moved) < 2 or not any(one.forecast is not None or _finish(one) for one in moved):
        return None
    return without_empty(
        Table(
            caption=words.say("How the forecast moved, in {currency}", currency=account.ledger.currency.code),
            columns=(
                Column(label=words.say("After"), role="what"),
                Column(label=words.say("Forecast"), role="lead", sums=True),
                Column(label=words.say("Likely"), role="part"),
                Column(label=words.say("Safe"), role="part"),
                Column(label=words.say("Chance of the promised date"), role="part"),
            ),
            rows=tuple(_row(account, one, words) for one in moved),
        ),
        keep=("what",),
    )


def _finish(one: Moved) -> Finish | None:
    return one.timing.finish if one.timing and isinstance(one.timing.finish, Finish) else None


def _row(account: Account, one: Moved, words: Words) -> Row:
    episode = account.episode(one.episode)
    finish = _finish(one)
    ahead = finish is not None and bool(finish.phases)
    over = finish is not None and not ahead and one.timing is not None and finish.p50 <= one.timing.as_of
    return Row(
        cells=(
            Cell(
                text=words.say("Episode {number}", number=episode.number),
                href=root_of(PLAN) + EPISODE_PAGE.format(name=episode.name),
                small=words.month_day(episode.date),
            ),
            Cell(
                text=words.bounded(words.bare(one.forecast), _bound(account, one)) if one.forecast is not None else ""
            ),
            Cell(
                text=words.date(finish.p50, "medium") if finish else "",
                small=words.say("finished") if over else "",
            ),
            Cell(text=words.date(finish.p80, "medium") if finish and ahead else ""),
            Cell(text=chance_words(one.timing, words) if one.timing and ahead else ""),
        )
    )
