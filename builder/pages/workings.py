"""The workings: every take-off with its formula, how each figure on the site is defined, and the cautions."""

from __future__ import annotations

from dataclasses import dataclass

from builder.pages.frame import Frame, Term
from builder.pages.paths import WORKINGS, root_of
from builder.pages.site import Material, frame
from builder.pages.takeoffs import Working, sources_once, working
from builder.pages.terms import terms

_HAZARDS = (
    "Wet concrete and mortar burn skin, slowly and without hurting at first: gloves, boots, eyes covered, water by.",
    "Dust of cut concrete, stone and block harms the lungs for good: cut wet, and wear a mask that is made for it.",
    "The walls of a trench can fall in without a sign. Ask before you dig where pipes and cables lie.",
    "Old paint may hold lead, old boards and sheets asbestos: have them looked at before you sand or break them.",
    "Glass near a door, near the floor or in a large pane has to be safety glass in most places.",
    "Treated timber is never burnt. Its dust is not breathed.",
    "Electricity: what goes into the ground or a wall is a licensed electrician's work.",
    "Working at height: a ladder that cannot slip, somebody on the ground, and nobody up there in wind.",
)


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
        hazards=tuple(words.say(hazard) for hazard in _HAZARDS),
    )
