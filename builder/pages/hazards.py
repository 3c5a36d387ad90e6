"""What can hurt where: the cautions that belong to the lines and take-offs of a page.

They are found by the words of the journal's language that name a thing, and by what a take-off warns of. A thing
that no word names is not found: the workings page has all cautions.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cache, lru_cache

from builder.figures.account import Account
from builder.journal.records.item import Source
from builder.ledger.records import Line
from builder.pages.wording import Words
from builder.plan.budget_records import Match
from builder.takeoff.cautions import ASBESTOS, CALL, GLAZING, HEIGHT, SILICA, TRENCH_WALLS, WET_CONCRETE
from builder.takeoff.records import Caution, Takeoff


class Hazard(Enum):
    """A hazard and its caution, in the order of the pages."""

    WET = (
        "Wet concrete and mortar burn skin, slowly and without hurting at first: gloves, boots, eyes covered, water by."
    )
    DUST = (
        "Dust of cut concrete, stone and block harms the lungs for good: cut wet, and wear a mask that is made for it."
    )
    TRENCH = "The walls of a trench can fall in without a sign. Ask before you dig where pipes and cables lie."
    OLD_PAINT = (
        "Old paint may hold lead, old boards and sheets asbestos: have them looked at before you sand or break them."
    )
    GLASS = "Glass near a door, near the floor or in a large pane has to be safety glass in most places."
    TREATED = "Treated timber is never burnt. Its dust is not breathed."
    ELECTRIC = "Electricity: what goes into the ground or a wall is a licensed electrician's work."
    HEIGHT = "Working at height: a ladder that cannot slip, somebody on the ground, and nobody up there in wind."


HAZARDS = tuple(hazard.value for hazard in Hazard)

# What a take-off warns of. Its words on timber warn of paint and treatment whatever the timber, so those do not count.
_WARNED: tuple[tuple[Caution, Hazard], ...] = (
    (WET_CONCRETE, Hazard.WET),
    (SILICA, Hazard.DUST),
    (CALL, Hazard.TRENCH),
    (TRENCH_WALLS, Hazard.TRENCH),
    (ASBESTOS, Hazard.OLD_PAINT),
    (GLAZING, Hazard.GLASS),
    (HEIGHT, Hazard.HEIGHT),
)

_FOUND = frozenset({Source.SECONDHAND, Source.SALVAGED, Source.GIFT})


@dataclass(frozen=True, slots=True)
class _Named:
    """Words that name a hazard; `found` are those that do only of what was found and is not new."""

    hazard: Hazard
    words: str
    found: str = ""


# Beginnings of words, but in German, which puts words together, anywhere in one. None that common things share.
_NAMED: dict[str, tuple[_Named, ...]] = {
    "en": (
        _Named(Hazard.WET, r"concrete(?! screw| anchor| nail| drill)|cement|mortar|grout|screed"),
        _Named(Hazard.DUST, r"concrete|cement|mortar|bricks?\b|blocks?\b|pavers?\b|flagstone|kerbstone|slate"),
        _Named(Hazard.TRENCH, r"trench|excavator|digger|call-before-dig|auger|drain pipe|earth.?moving"),
        _Named(
            Hazard.OLD_PAINT,
            r"lead (paint|test)|asbestos|old (painted |\w+ )?(window|sash|door|board|sheet)",
            r"windows?\b|sash|doors?\b|boards?\b|sheets?\b|panel|cladding|siding|pipe lagging",
        ),
        _Named(Hazard.GLASS, r"glass(?!paper|es\b|.?fib(?:re|er)| wool)|glazing|windows?\b|sash|pane\b|panes\b"),
        _Named(Hazard.TREATED, r"(pressure.)?treated|sleepers?\b|railroad tie|railway tie|creosote|utility pole"),
        _Named(
            Hazard.ELECTRIC,
            r"electrician|electrical|electricity|wiring|(copper|mains|armou?red) (wire|cable)|cables?\b(?! tie)|conduit"
            r"|receptacle|(small |breaker )panel\b|(?<!electric )breakers?\b(?=,| box|$)|fuse.?box|consumer unit",
        ),
        _Named(Hazard.HEIGHT, r"scaffold|ladder|roof|rafter|purlin|ridge|gutter|(safety )?harness|chain hoist"),
    ),
    "de": (
        _Named(Hazard.WET, "beton|zement|mörtel|estrich"),
        _Named(Hazard.DUST, "beton|zement|mörtel|ziegelstein|klinker|mauerstein|pflasterstein|kalksandstein|gehweg"),
        _Named(Hazard.TRENCH, "graben|gräben|bagger|aushub|erdbohrer|drainage|dränage|drainrohr|dränrohr"),
        _Named(
            Hazard.OLD_PAINT,
            r"bleifarbe|bleitest|asbest|\balte[sn]? (\w+)?(fenster|tür|brett|platte)",
            r"fenster|tür(?!band)|brett|bretter|platte|verkleidung",
        ),
        _Named(Hazard.GLASS, r"glas(?!faser|wolle)|fenster|scheibe(?!nwischer)"),
        _Named(Hazard.TREATED, r"imprägniert|kesseldruck|bahnschwelle|eisenbahnschwelle|karbolineum"),
        _Named(Hazard.ELECTRIC, r"elektriker|elektroinst|kabel(?!binder)|steckdose|sicherungskasten|erdungs|leerrohr"),
        _Named(Hazard.HEIGHT, r"gerüst|\bleiter|dach|sparren|pfette|\bfirst|regenrinne|auffanggurt"),
    ),
    "fr": (
        _Named(Hazard.WET, "béton|ciment|mortier|chape"),
        _Named(Hazard.DUST, "béton|ciment|mortier|brique|parpaing|pavé|dalle|ardoise"),
        _Named(Hazard.TRENCH, r"tranchée|(mini-?)?pelleteuse|mini-?pelle|pelle mécanique|tarière|terrassement|drain"),
        _Named(
            Hazard.OLD_PAINT,
            r"peinture au plomb|amiante|vieilles? (fenêtre|porte|planche|plaque)|(fenêtre|porte)s? anciennes?",
            r"fenêtre|porte|planche|plaque|tôle|bardage",
        ),
        _Named(Hazard.GLASS, r"verre|vitre|vitrage|fenêtre|carreau de verre"),
        _Named(Hazard.TREATED, r"traitée?s?\b|autoclave|traverse|créosote"),
        _Named(Hazard.ELECTRIC, r"électricien|électricité|câble|prises?\b|disjoncteur|gaine|tableau électrique"),
        _Named(Hazard.HEIGHT, r"échafaud|échelle|toit|chevron|panne|faîtage|gouttière|harnais"),
    ),
    "es": (
        _Named(Hazard.WET, "hormigón|concreto|cemento|mortero|solera"),
        _Named(Hazard.DUST, "hormigón|concreto|cemento|mortero|ladrillo|bloque|adoquín|losa|pizarra"),
        _Named(Hazard.TRENCH, r"zanja|(mini)?excavadora|retroexcavadora|excavación|ahoyador|dren"),
        _Named(
            Hazard.OLD_PAINT,
            r"pintura con plomo|amianto|asbesto|(ventana|puerta|tabla|placa)s? viejas?|viejas? (ventana|puerta|tabla)",
            r"ventana|puerta|tabla|placa|chapa",
        ),
        _Named(Hazard.GLASS, r"vidrio(?! celular)|cristal|ventana"),
        _Named(Hazard.TREATED, r"tratad[ao]s?\b|autoclave|traviesa|durmiente|creosota"),
        _Named(Hazard.ELECTRIC, r"electricista|electricidad|cables?\b|enchufe|conducto eléctrico|cuadro eléctrico"),
        _Named(Hazard.HEIGHT, r"andamio|escalera|tejado|techo|cubierta|cumbrera|canalón|arnés"),
    ),
}


def hazards_of(
    account: Account, words: Words, lines: Sequence[Line], planned: Iterable[Match], phase: str = ""
) -> tuple[str, ...]:
    """The cautions for these lines, the take-offs of these planned ones and a phase of this name, each once, in the
    page's language. What only leaves the build hurts nobody there.
    """
    language = words.locale.language if words.locale.language in _NAMED else "en"
    found = {hazard for takeoff in _takeoffs(account, planned) for hazard in _warned(takeoff)}
    found.update(_named(phase, False, language))
    for line in lines:
        if not line.item.source.leaves:
            found.update(_named(account.called(line.item), line.item.source in _FOUND, language))
    return tuple(words.say(hazard.value) for hazard in Hazard if hazard in found)


def answered(account: Account, lines: Sequence[Line]) -> Iterator[Match]:
    """The planned lines that these lines answer to, of those that rest on a take-off."""
    refs = {line.ref for line in lines if not line.item.source.leaves}
    worked_out = (
        match for phase in account.phases for match in phase.matches if any(one.takeoff for one in match.planned)
    )
    return (match for match in worked_out if not refs.isdisjoint(match.refs))


def _takeoffs(account: Account, planned: Iterable[Match]) -> Iterator[Takeoff]:
    names = {one.takeoff.name for match in planned for one in match.planned if one.takeoff is not None}
    return (takeoff for takeoff in account.takeoffs if takeoff.name in names)


def _warned(takeoff: Takeoff) -> Iterator[Hazard]:
    return (hazard for caution, hazard in _WARNED if caution in takeoff.cautions)


@lru_cache(maxsize=100_000)
def _named(what: str, found: bool, language: str) -> frozenset[Hazard]:
    """The hazards that a name has. The same for the same name: a long journal asks for it twice a line."""
    low, known = what.lower(), _patterns(language)
    if not known.any.search(low):
        return frozenset()
    return frozenset(
        hazard
        for hazard, anyway, where_found in known.each
        if anyway.search(low) or (found and where_found is not None and where_found.search(low))
    )


@dataclass(frozen=True, slots=True)
class _Patterns:
    """Each hazard with its words and those for what was found; and all words at once, as most names have none."""

    any: re.Pattern[str]
    each: tuple[tuple[Hazard, re.Pattern[str], re.Pattern[str] | None], ...]


@cache
def _patterns(language: str) -> _Patterns:
    start = "" if language == "de" else r"\b"

    def pattern(words: str) -> re.Pattern[str]:
        return re.compile(f"{start}(?:{words})")

    named = _NAMED[language]
    return _Patterns(
        any=pattern("|".join(words for one in named for words in (one.words, one.found) if words)),
        each=tuple((one.hazard, pattern(one.words), pattern(one.found) if one.found else None) for one in named),
    )
