"""Figures that the author said aloud and that the ledger has otherwise: why the video says another figure."""

from __future__ import annotations

from collections.abc import Iterator

from builder.figures.figure import DateFigure, MoneyFigure, ShareFigure, UntoldFigure
from builder.figures.names import NoFigure, look_up
from builder.journal.records.episode import Episode
from builder.pages.saying import named, worded
from builder.pages.site import Material
from builder.words.rounding import half_up


def stated_words(material: Material, episode: Episode) -> Iterator[str]:
    """A sentence for each stated figure that differs and says why."""
    account, words = material.account, material.words
    for stated in episode.stated:
        figure = look_up(stated.name, account, episode.number)
        if stated.differs is None or isinstance(figure, NoFigure | DateFigure | ShareFigure | UntoldFigure):
            continue
        if isinstance(figure, MoneyFigure):
            said = words.money(half_up(stated.value * 10**account.ledger.currency.digits))
        else:
            said = words.decimal(stated.value)
        yield words.say(
            "I said {said} for “{name}”; the ledger has {ledger}. {why}",
            said=said,
            name=named(stated.name, words),
            ledger=worded(figure, words),
            why=stated.differs,
        )
