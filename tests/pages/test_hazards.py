"""Cautions stand where the hazard is: on the pages of the episode and the phase whose lines and take-offs have it."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pages.episode import episode_page
from builder.pages.hazards import HAZARDS, Hazard
from builder.pages.phase import phase_page
from builder.pages.site import Material
from builder.pages.wording import CATALOGUES, Words
from builder.pages.workings import workings_page
from builder.words.money import Currency
from tests.pages.weekend import weekend

WET, DUST, TRENCH, OLD, GLASS = (Hazard.WET, Hazard.DUST, Hazard.TRENCH, Hazard.OLD_PAINT, Hazard.GLASS)
TREATED, ELECTRIC, HEIGHT = Hazard.TREATED, Hazard.ELECTRIC, Hazard.HEIGHT

PLAN = """phases:
  - {key: base, name: Base, planned: [{key: mix, material: Bags, quantity: {takeoff: strip.bags}, unit_cost: 6}]}
  - {key: roof, name: Roof}
  - {key: end, name: Paint}
takeoff:
  strip: {method: strip_footing, length: 4 m, width: 3 m, footing_width: 40 cm, thickness: 25 cm, bag: 80 lb}
"""


def on_episode(told: Material) -> list[Hazard]:
    """The cautions of the one episode, as hazards."""
    return [Hazard(text) for text in episode_page(told, 0).hazards]


def on_phase(told: Material, key: str) -> list[Hazard]:
    """The cautions of a phase."""
    (phase,) = [one for one in told.account.phases if one.key == key]
    return [Hazard(text) for text in phase_page(told, phase).hazards]


@pytest.mark.parametrize(
    ("line", "hazards"),
    [
        ("{material: 'Concrete mix, 80 lb', cost: 6}", [WET, DUST]),
        ("{material: Half block, cost: 6}", [DUST]),
        ("{equipment: Mini excavator, source: hired, cost: 200}", [TRENCH]),
        ("{material: Old window, source: salvaged}", [OLD, GLASS]),
        ("{material: Window, cost: 90}", [GLASS]),
        ("{material: Corrugated sheets, source: gift}", [OLD]),
        ("{material: Corrugated sheets, cost: 90}", []),
        ("{material: Railway sleepers, source: salvaged}", [TREATED]),
        ("{material: 'Treated posts, 6x6', cost: 90}", [TREATED]),
        ("{labour: Licensed electrician, source: paid, cost: 90}", [ELECTRIC]),
        ("{equipment: Electric breaker, source: hired, cost: 58}", []),
        ("{equipment: Scaffold tower, source: hired, cost: 90}", [HEIGHT]),
        ("{material: Nails, cost: 3}", []),
        ("{material: Tie wire, cost: 3}", []),
        ("{material: Glass fibre tape, cost: 3}", []),
        ("{material: 'Glasspaper, fine', cost: 3}", []),
        ("{material: Cable ties, cost: 3}", []),
        ("{material: Concrete screws, cost: 3}", [DUST]),
    ],
)
def test_a_line_brings_its_own_cautions_and_no_others(tmp_path: Path, line: str, hazards: list[Hazard]) -> None:
    """By what it is called, and by whether it was found or is new."""
    assert on_episode(weekend(tmp_path, line)) == hazards


@pytest.mark.parametrize(
    ("language", "line", "hazards"),
    [
        ("de-DE", "{material: Trockenbeton, cost: 6}", [WET, DUST]),
        ("de-CH", "{material: Alte Sprossenfenster, source: salvaged}", [OLD, GLASS]),
        ("de-DE", "{material: Eisenbahnschwellen, source: salvaged}", [TREATED]),
        ("de-DE", "{material: Glasfasertapete, cost: 6}", []),
        ("fr-FR", "{equipment: Échafaudage, source: hired, cost: 6}", [HEIGHT]),
        ("fr-FR", "{labour: Électricien agréé, source: paid, cost: 6}", [ELECTRIC]),
        ("es-ES", "{material: Hormigón seco, cost: 6}", [WET, DUST]),
        ("es-ES", "{material: Zanja del desagüe, cost: 6}", [TRENCH]),
        ("it-IT", "{material: Concrete, cost: 6}", [WET, DUST]),
    ],
)
def test_it_knows_the_things_of_the_journals_language(
    tmp_path: Path, language: str, line: str, hazards: list[Hazard]
) -> None:
    """And says the caution in it; a language without words of its own has the English ones."""
    told = weekend(tmp_path, line, speaks=language, pays="EUR")
    assert episode_page(told, 0).hazards == tuple(told.words.say(hazard.value) for hazard in hazards)


def test_a_take_off_brings_what_it_warns_of(tmp_path: Path) -> None:
    """Nothing is called concrete here, but a footing is worked out: wet concrete, its dust, and digging."""
    told = weekend(
        tmp_path, "{material: Bags, quantity: 40 bag, cost: 240, against: mix}", plan=PLAN, more="phase: base"
    )
    assert on_episode(told) == on_phase(told, "base") == [WET, DUST, TRENCH]


def test_a_phase_brings_what_its_name_says(tmp_path: Path) -> None:
    """Steel panels name no height; the roof they lie on does."""
    told = weekend(tmp_path, "{material: Steel panels, cost: 240}", plan=PLAN, more="phase: roof")
    assert on_phase(told, "roof") == [HEIGHT]
    assert on_phase(told, "end") == []


def test_what_only_goes_back_brings_none(tmp_path: Path) -> None:
    """A bag that is taken back to the shop is not opened."""
    lines = (
        "{id: mix, material: Cement, quantity: 2 bag, cost: 12, used: 1 bag, phase: base}",
        "{material: Cement, from: mix, quantity: 1 bag, source: returned, cost: 6, phase: roof}",
    )
    assert WET not in on_phase(weekend(tmp_path, *lines, plan=PLAN, more="phase: base"), "roof")


def test_the_workings_have_them_all(tmp_path: Path) -> None:
    """Whatever the lines are called."""
    assert workings_page(weekend(tmp_path)).hazards == HAZARDS


@pytest.mark.parametrize("language", CATALOGUES)
def test_every_caution_is_told_in_every_language(language: str) -> None:
    """None stays in English."""
    words = Words(language, Currency.named("EUR"))
    assert not {words.say(hazard) for hazard in HAZARDS} & set(HAZARDS)
