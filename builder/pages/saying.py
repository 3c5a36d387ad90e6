"""A named figure as words, and the place on the site where it comes from."""

from __future__ import annotations

from builder.figures.account import Account
from builder.figures.figure import CountFigure, DateFigure, Figure, MoneyFigure, QuantityFigure, UntoldFigure
from builder.figures.names import NoFigure, look_up
from builder.journal.records.episode import Episode
from builder.pages.paths import HOME, LEDGER, PLAN, WORKINGS, line_anchor, phase_path
from builder.pages.prose import Said
from builder.pages.wording import Words


def say_figure(name: str, account: Account, words: Words, episode: int | None, root: str) -> Said:
    """The figure of a name as an episode's story shows it. An unknown name stays as it was written."""
    figure = look_up(name, account, episode)
    if isinstance(figure, NoFigure):
        return Said(text=name, href="#")
    return Said(text=worded(figure, words), href=origin(figure.name, account, episode, root))


def told_summary(episode: Episode, account: Account, words: Words) -> str:
    """An episode's summary with the figures that it names, as plain text; "" where it has none."""
    pieces, at, summary = [], 0, episode.summary or ""
    for mark in episode.summary_marks:
        pieces += [summary[at : mark.start], say_figure(mark.name, account, words, episode.number, "").text]
        at = mark.end
    return "".join([*pieces, summary[at:]])


def worded(figure: Figure, words: Words) -> str:
    """A figure in the language of the page."""
    if isinstance(figure, MoneyFigure):
        amount = words.money(figure.minor, figure.bound)
        if figure.per is None:
            return amount
        return words.say("{amount} per {unit}", amount=amount, unit=words.unit_sign(figure.per))
    if isinstance(figure, CountFigure):
        return words.whole(figure.count)
    if isinstance(figure, QuantityFigure):
        return words.bounded(words.quantity(figure.quantity), figure.bound)
    if isinstance(figure, UntoldFigure):
        return words.say("cannot be told")
    return words.date(figure.day) if isinstance(figure, DateFigure) else words.percent(figure.share)


_USED = {
    "used": "{unit} used of {line}",
    "bought": "{unit} bought of {line}",
    "planned": "{unit} planned of {line}",
}


def named(name: str, words: Words) -> str:
    """The name of a figure, as its author wrote it, in the language of the page: `spent to date`."""
    before, of, scope = name.partition(" of ")
    unit, _, verb = before.rpartition(" ")
    if of and verb in _USED and unit:
        return words.say(_USED[verb], unit=words.known(unit), line=scope)
    if scope.endswith("the build"):
        return words.say("{figure} of the whole build", figure=words.known(before))
    if of:
        return words.say("{figure} of {scope}", figure=words.known(before), scope=scope)
    figure, per, unit = name.partition(" per ")
    if per:
        return words.say("{figure} per {unit}", figure=words.known(figure), unit=words.known(unit))
    if name.endswith(" to date"):
        return words.say("{figure} to date", figure=words.known(name.removesuffix(" to date")))
    return words.known(name)


def origin(name: str, account: Account, episode: int | None, root: str) -> str:
    """Where a figure comes from: the lines it sums, the working, the plan."""
    if "." in name and " " not in name:
        return f"{root}{WORKINGS}#takeoff-{name.partition('.')[0]}"
    _, of, scope = name.partition(" of ")
    if of:
        return root + _scope(scope, account)
    of_plan = any(word in name for word in ("planned", "forecast", "contingency", "date", "chance", "ready"))
    if of_plan and not name.endswith(" to date"):
        return f"{root}{PLAN if account.journal.plan.phases else HOME}"
    if episode is None or name.endswith(" to date") or " per " in name:
        return f"{root}{LEDGER}"
    return "#costs"


def _scope(scope: str, account: Account) -> str:
    for phase in account.phases:
        names = (phase.key or "", account.phase_name(phase.key) or "")
        if scope.casefold() in [name.casefold() for name in names if name]:
            return phase_path(phase.key)
        for match in phase.matches:
            if match.key.casefold() == scope:
                return f"{phase_path(phase.key)}#line-by-line"
    line = next((line for line in account.ledger.lines if line.ref.casefold() == scope), None)
    return f"{LEDGER}#{line_anchor(line.ref)}" if line else LEDGER
