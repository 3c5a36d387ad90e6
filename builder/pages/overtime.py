"""Job cost as a stepped line over the dates, against the plan, with the forecast at its end."""

from __future__ import annotations

import datetime

from builder.figures.account import Account
from builder.figures.figure import Bound, bound_of
from builder.pages.steps import Point, Rule, Steps, draw_steps
from builder.pages.svg import round_steps
from builder.pages.timewords import months_between, years_among
from builder.pages.wording import Words
from builder.plan.time_records import Finish


def cost_over_time(account: Account, words: Words) -> str:
    """The drawing; "" where there are not two episodes, or nothing was used up in any."""
    episodes = account.journal.episodes
    if len(episodes) < 2 or not any(account.sums.running[episode.number].job_cost for episode in episodes):
        return ""
    start = _start(account)
    points = tuple(
        Point(day=(episode.date - start).days, amount=account.sums.running[episode.number].job_cost)
        for episode in episodes
    )
    planned, ready_by = account.outlook.planned, account.journal.settings.ready_by
    plan = _plan(planned, start, ready_by, episodes[-1].date)
    end = _end(account, start)
    bound = bound_of(account.sums.whole, "job_cost")
    so_far = words.say(
        "job cost so far, {amount}" if account.finished is None else "job cost, {amount}",
        amount=words.money(points[-1].amount, bound),
    )
    top = max([point.amount for point in points] + [point.amount for point in plan] + ([end.amount] if end else []))
    last = max([point.day for point in points] + [point.day for point in plan] + ([end.day] if end else []))
    months = months_between(start, start + datetime.timedelta(days=last))
    years = years_among(months)
    unit = 10**account.ledger.currency.digits
    return draw_steps(
        Steps(
            key="over-time",
            title=words.say("Job cost over the dates, against the plan"),
            description=_described(account, words, bound),
            so_far=points,
            so_far_label=so_far,
            plan=plan,
            plan_label=_plan_label(planned, ready_by, words, year=bool(years)),
            forecast=end,
            forecast_label=words.say("forecast, {amount}", amount=words.money(end.amount, bound)) if end else "",
            amounts=tuple(
                Rule(at=amount, label=words.whole(amount // unit)) for amount in round_steps(top) if amount % unit == 0
            ),
            dates=tuple(Rule(at=(month - start).days, label=words.month(month)) for month in months),
            years=tuple(Rule(at=(month - start).days, label=words.year(month)) for month in years),
        )
    )


def _start(account: Account) -> datetime.date:
    return account.journal.settings.begun or account.journal.episodes[0].dates.first


def over_time_note(account: Account, words: Words) -> str:
    """What stands under the drawing: a ring is spoken of only where there is one."""
    if _end(account, _start(account)) is None:
        return words.say("Each step is an episode.")
    return words.say("Each step is an episode. The ring is where the build is forecast to end.")


def _plan(
    planned: int | None, start: datetime.date, ready_by: datetime.date | None, last: datetime.date
) -> tuple[Point, ...]:
    """The plan stands level: nothing says on which day its money was to be spent."""
    if planned is None:
        return ()
    end = max(ready_by or last, last)
    return Point(day=0, amount=planned), Point(day=(end - start).days, amount=planned)


def _plan_label(planned: int | None, ready_by: datetime.date | None, words: Words, *, year: bool) -> str:
    if planned is None:
        return ""
    if ready_by is None:
        return words.say("plan, {amount}", amount=words.money(planned))
    date = words.date(ready_by, "medium") if year else words.month_day(ready_by)
    return words.say("plan, {amount} by {date}", amount=words.money(planned), date=date)


def _end(account: Account, start: datetime.date) -> Point | None:
    forecast, timing = account.outlook.forecast, account.timing
    if forecast is None or account.finished is not None:
        return None
    if timing is not None and isinstance(timing.finish, Finish):
        day = timing.finish.p50
    elif account.journal.settings.ready_by is not None:
        day = account.journal.settings.ready_by
    else:
        return None
    return Point(day=max((day - start).days, 0), amount=forecast)


def _described(account: Account, words: Words, bound: Bound) -> str:
    whole, planned, forecast = account.sums.whole, account.outlook.planned, account.outlook.forecast
    last = account.journal.episodes[-1].date
    said = [
        words.say(
            "Job cost rose to {amount} by {date}.",
            amount=words.money(whole.job_cost, bound),
            date=words.date(last),
        )
    ]
    if planned is not None:
        said.append(words.say("The plan is {amount}.", amount=words.money(planned)))
    if forecast is not None and account.finished is None:
        said.append(words.say("The forecast is {amount}.", amount=words.money(forecast, bound)))
    return " ".join(said)
