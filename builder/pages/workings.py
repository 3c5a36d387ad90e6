"""The workings: every take-off with its formula, how each figure on the site is defined, and the cautions."""

from __future__ import annotations

from dataclasses import dataclass

from builder.pages.frame import Frame, Term
from builder.pages.hazards import HAZARDS
from builder.pages.paths import WORKINGS, root_of
from builder.pages.site import Material, frame
from builder.pages.takeoffs import Working, sources_once, working
from builder.pages.terms import terms


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingsPage:
    """workings/."""

    frame: Frame
    workings: tuple[Working, ...]
    terms: tuple[Term, ...]
    hazards: tuple[str, ...]


def workings_page(material: Material) -> WorkingsPage:
    """Lay the workings out."""
    words = material.words
    shown = sources_once([working(material, takeoff, root_of(WORKINGS)) for takeoff in material.account.takeoffs])
    return WorkingsPage(
        frame=frame(
            material,
            WORKINGS,
            words.say("Workings"),
            words.say("How every figure on this site is worked out"),
        ),
        workings=shown,
        terms=terms(words),
        hazards=tuple(words.say(hazard) for hazard in HAZARDS),
    )
