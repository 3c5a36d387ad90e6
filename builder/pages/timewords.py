"""The forecast of the finish in words."""

from __future__ import annotations

from fractions import Fraction

from builder.pages.wording import Words
from builder.plan.time_records import Finish, NoFinish, Why
from builder.plan.timing import Timing

_WHY = {
    Why.NO_PHASES: "the plan has no phases",
    Why.FLAWED: "phases wait for each other",
    Why.NO_HOURS: "the plan gives no hours for {phases}",
    Why.NO_TIME: "there are no hours to work in",
    Why.TOO_FAR: "it is too far away to be told",
}


def ready_small(timing: Timing | None, words: Words) -> str:
    """Likely and safe date, briefly; "" where there is no forecast."""
    if timing is None or not isinstance(timing.finish, Finish):
        return ""
    return words.say(
        "likely {likely}, safe {safe}",
        likely=words.month_day(timing.finish.p50),
        safe=words.month_day(timing.finish.p80),
    )


def chance_words(timing: Timing, words: Words) -> str:
    """The chance of being ready by the promised date, in per cent."""
    told = timing.chance_told
    return "" if told is None else words.percent(Fraction(told))


def why_not(finish: NoFinish, names: list[str], words: Words) -> str:
    """Why no date can be told."""
    return words.say(_WHY[finish.why], phases=words.listing(names))
