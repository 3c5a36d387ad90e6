"""Ordinary mistakes of a tired evening: each message alone leads to its repair.

Somebody obedient does what the message says and nothing else (obedient.py); the journal is then without a mistake.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

import pytest

from builder.cli import DONE, JOURNAL_WRONG, main
from tests.app.journal_folder import FILES, write
from tests.app.obedient import obey


@dataclass(frozen=True, slots=True)
class Slip:
    """What was written in the front matter of a third episode, what is said of it, and how it reads in the end."""

    wrong: str
    found: str
    fix: str
    right: str


LINE = "items:\n  - material: Stone\n    "
ORDINARY = {
    "no date": Slip("phase: foundation", "the episode has no date", "add date: 2026-04-18", "date: 2026-04-18"),
    "a date as it is said": Slip(
        "date: 3 May 2026", "date: 3 May 2026 is not a date", "write 2026-05-03", "date: 2026-05-03"
    ),
    "a misspelt key": Slip("wether: dry", "wether is no key of front matter", "did you mean weather?", "weather: dry"),
    "a misspelt phase": Slip(
        "phase: fundation", "fundation is no phase of the plan", "did you mean foundation?", "phase: foundation"
    ),
    "a phase by the name that the pages give it": Slip(
        "phase: Foundation", "Foundation is no phase of the plan", "write foundation", "phase: foundation"
    ),
    "hours with a comma, and stated": Slip(
        "hours: 13,5\nstated: {hours: 13.5}", "hours: 13,5 has a decimal comma", "write 13.5", "hours: 13.5"
    ),
    "a colon in a lesson": Slip(
        "lessons:\n  - Merke: erst messen",
        "lessons: a value holds a colon",
        'write "Merke: erst messen"',
        '  - "Merke: erst messen"',
    ),
    "a colon in curly quotes": Slip(
        "summary: “Footings: second pour”",
        "summary has a second colon in its value",
        'write summary: "Footings: second pour"',
        'summary: "Footings: second pour"',
    ),
    "a dash for the cents": Slip(
        "items:\n  - Nails, 35.-",
        "Nails, 35.-: 35.- has a dash for its cents",
        "write Nails, 35",
        "  - Nails, 35",
    ),
    "what it was in another currency": Slip(
        f"{LINE}cost: 9\n    was: 41,20 EUR",
        "was: 41,20 has a decimal comma",
        "write 41.20 EUR",
        "    was: 41.20 EUR",
    ),
    "no in another language": Slip(
        f"{LINE}cost: 9\n    taxed: nein", "taxed: nein is neither yes nor no", "write no", "    taxed: no"
    ),
    "no phase": Slip("date: 2026-05-03", "the episode has no phase", "add phase: ground", "phase: ground"),
    "hours as a clock": Slip("hours: 7:30", "hours: 7:30 is written as on a clock", "write 7.5", "hours: 7.5"),
    "no space after a colon": Slip("hours:7", "there is no space after the colon", "write hours: 7", "hours: 7"),
    "a second colon": Slip(
        "summary: Footings: second pour",
        "summary has a second colon in its value",
        'write summary: "Footings: second pour"',
        'summary: "Footings: second pour"',
    ),
    "a figure without quotes": Slip(
        "summary: {= spent =}", "summary: a value begins with {=", 'write "{= spent =}"', 'summary: "{= spent =}"'
    ),
    "progress without its sign": Slip(
        "progress: {foundation: 60}", "foundation: 60 has no % sign", "write 60%", "progress: {foundation: 60%}"
    ),
    "an address without its beginning": Slip(
        "video: video.example/one",
        "video is video.example/one",
        "write https://video.example/one",
        "video: https://video.example/one",
    ),
    "a snag in nearly its words": Slip(
        "fixed: [The north corner was soft]",
        "fixed names no earlier snag: The north corner was soft",
        "did you mean The north corner is soft?",
        "fixed: [The north corner is soft]",
    ),
    "a stated figure that is none": Slip("stated: {spnt: 0}", "spnt is no figure", "did you mean spent?", "{spent: 0}"),
    "no comma before the amount": Slip(
        "items:\n  - Nails 36.90",
        "Nails 36.90 has no amount after a comma",
        "write Nails, 36.90",
        "  - Nails, 36.90",
    ),
    "a colon before the amount": Slip(
        "items:\n  - Nails: 36.90", "Nails is no key of a line item", "write Nails, 36.90", "  - Nails, 36.90"
    ),
    "the currency's sign": Slip(
        "items:\n  - Nails, $36.90",
        "Nails, $36.90: $36.90 has a currency mark",
        "write Nails, 36.90: the currency stands in journal.yaml",
        "  - Nails, 36.90",
    ),
    "a decimal comma": Slip(
        "items:\n  - Nails, 12,50", "Nails, 12,50 has a decimal comma", "write Nails, 12.50", "  - Nails, 12.50"
    ),
    "a number sign": Slip(
        "items:\n  - Rebar #4, 36.90",
        "#4, 36.90 is taken for a comment and left out, as # begins one",
        'write "Rebar #4, 36.90"',
        '  - "Rebar #4, 36.90"',
    ),
    "a tab": Slip("items:\n\t- Nails, 3.00", "a tab stands here", "put two spaces for each tab", "  - Nails, 3.00"),
    "no space after a dash": Slip(
        "items:\n  -Nails, 3.00", "there is no space after the dash", "write - Nails, 3.00", "  - Nails, 3.00"
    ),
    "a thousands comma": Slip(
        f"{LINE}cost: 1,250", "cost: 1,250 has a thousands comma", "write 1250", "    cost: 1250"
    ),
    "no price": Slip(
        "items:\n  - material: Stone",
        "Stone is bought and has no price",
        "add cost: with what was paid, or cost: unknown",
        "    cost: 9",
    ),
    "a guess in other words": Slip(f"{LINE}cost: ~150", "cost: ~150 is a guess", "write about 150", "cost: about 150"),
    "a price each in half cents": Slip(
        f"{LINE}unit_price: 0.125", "unit_price is no key of a line item", "did you mean unit_cost?", "unit_cost: 0.125"
    ),
    "percent in words": Slip(
        f"{LINE}cost: 9\n    share: 55 percent",
        "share: 55 percent has no % sign",
        "write 55%",
        "    share: 55%",
    ),
    "where from in another word": Slip(
        f"{LINE}source: found\n    quantity: 1", "source: found is not known here", "write salvaged", "source: salvaged"
    ),
    "a machine of nobody": Slip(
        "items:\n  - equipment: Turf cutter\n    cost: 64",
        "Turf cutter has no source, and owned.yaml does not list it",
        "add source: hired, for instance",
        "    source: hired",
    ),
    "used in no unit": Slip(
        f"{LINE}cost: 9\n    quantity: 36 bag\n    used: 30",
        "used is 30 and quantity is 36 bag, which is something else",
        "write used: 30 bag",
        "    used: 30 bag",
    ),
    "both uses and a reusable share": Slip(
        f"{LINE}cost: 9\n    reusable_share: 75%\n    uses: 4",
        "both reusable_share and uses stand on one line",
        "remove one",
        "    reusable_share: 75%",
    ),
    "yes in another word": Slip(
        f"{LINE}cost: 9\n    rework: x", "rework: x is neither yes nor no", "write yes", "    rework: yes"
    ),
    "a planned line that is none": Slip(
        f"{LINE}cost: 9\n    against: bords",
        "against: bords is no planned line",
        "did you mean boards?",
        "    against: boards",
    ),
}


def third_episode(wrong: str) -> str:
    """An episode with these lines, and with date and phase where they are not what is wrong."""
    lines = [] if "date:" in wrong or wrong == "phase: foundation" else ["date: 2026-05-03"]
    lines += [] if "phase:" in wrong or wrong == "date: 2026-05-03" else ["phase: foundation"]
    return "\n".join(["---", "title: Third", *lines, *wrong.split("\n"), "---", "", "It rained.", ""])


def mistakes(journal: Path, capsys: pytest.CaptureFixture[str]) -> list[dict[str, object]]:
    """What `inspect --json` says, without warnings; its exit code agrees."""
    capsys.readouterr()
    code = main(["inspect", str(journal), "--json"])
    found = [one for one in json.loads(capsys.readouterr().out) if one["weight"] == "mistake"]
    assert code == (JOURNAL_WRONG if found else DONE)
    return found


@pytest.mark.parametrize("name", ORDINARY)
def test_an_ordinary_mistake_leads_to_its_own_repair(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    """One message; doing what it says leaves none."""
    slip = ORDINARY[name]
    journal = write(tmp_path, **{"episodes/03-third.md": third_episode(slip.wrong)})
    found = mistakes(journal, capsys)
    assert [(one["file"], one["found"], one["fix"]) for one in found] == [
        ("episodes/03-third.md", slip.found, slip.fix)
    ]
    assert obey(journal, found[0])
    assert slip.right in (journal / "episodes/03-third.md").read_text(encoding="utf-8")
    assert mistakes(journal, capsys) == []


OTHER = {
    "a currency in small letters": ("journal.yaml", "currency: USD", "currency: usd"),
    "a language in words": ("journal.yaml", "language: en-US", "language: english"),
    "an area without its unit": ("journal.yaml", "floor_area: 10 ft x 14 ft", "floor_area: 140"),
    "a life without years": ("journal.yaml", "service_life: 20 years", "service_life: 20"),
    "a misspelt weekday": ("journal.yaml", "{saturday: 6", "{saterday: 6"),
    "a weekday in another language": ("journal.yaml", "{saturday: 6", "{Samstag: 6"),
    "a currency in words": ("journal.yaml", "currency: USD", "currency: Euro"),
    "a phase after one by its name": ("plan.yaml", "after: [ground]", "after: [Ground]"),
    "a phase after none": ("plan.yaml", "after: [ground]", "after: [grund]"),
    "hours out of order": ("plan.yaml", "hours: [8, 14, 24]", "hours: [24, 14, 8]"),
    "a take-off that is none": ("plan.yaml", "{takeoff: footing.bags}", "{takeoff: foting.bags}"),
    "a method that is none": ("plan.yaml", "method: strip_footing", "method: strip_foting"),
    "a worth in another word": ("owned.yaml", "replacement_cost: 9", "worth: 9"),
}


@pytest.mark.parametrize("name", OTHER)
def test_so_does_one_in_the_settings_the_plan_and_what_is_owned(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    """The first message, done, takes the mistake away; so it goes on until none is left."""
    file, right, wrong = OTHER[name]
    assert FILES[file].count(right) == 1
    journal = write(tmp_path)
    (journal / file).write_text(FILES[file].replace(right, wrong), encoding="utf-8")
    found = mistakes(journal, capsys)
    assert found
    for _ in found:
        if still := mistakes(journal, capsys):
            assert obey(journal, still[0]), still[0]["fix"]
    assert mistakes(journal, capsys) == []


def test_there_are_more_than_twenty() -> None:
    """As many as were asked for, and some."""
    assert len(ORDINARY) + len(OTHER) > 40
