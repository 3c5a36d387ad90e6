"""Whether what episodes call a phase is one: of the plan, or, without a plan, of those that other episodes name."""

from __future__ import annotations

import difflib
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from unicodedata import normalize

from builder.journal.kinds import LABEL
from builder.journal.reading import Reading
from builder.journal.records.episode import Episode
from builder.journal.records.journal import Journal
from builder.journal.records.plan import Phase
from builder.journal.report import Lost, Report, one_of
from builder.words.misread import LONGEST_SHOWN, clipped
from builder.words.numbers import Unreadable
from builder.words.place import Place


def check_phases(journal: Journal, report: Report) -> None:
    """Report names of no phase, and two names that seem to be one."""
    known = [phase.key for phase in journal.plan.phases]
    if not known:
        if not report.lost(Lost.PHASE):
            _plain_phases(journal, report)
        return
    _apart(journal.plan.phases, report)
    for episode in journal.episodes:
        if episode.phase is None and not episode.phase_told:
            report.mistake(
                episode.place, "the episode has no phase", f"phase: {one_of(known)}", f"add phase: {known[0]}"
            )
        for one in _names(episode):
            if one.name not in known and not report.lost(Lost.PHASE):
                found, fix = f"{clipped(one.name)} is no phase of the plan", phase_meant(one.name, journal, report)
                report.mistake(one.place, found, one_of(known), fix)


def phase_meant(name: str, journal: Journal, report: Report) -> str:
    """What to write for a name that is no phase: the key of the phase that the pages call so, or one that is near."""
    phases = journal.plan.phases
    called = {" ".join(phase.name.casefold().split()): phase.key for phase in phases}
    if (key := called.get(" ".join(name.casefold().split()))) is not None:
        return f"write {key}"
    near = report.nearest(name, [*called, *(phase.key for phase in phases)])
    return f"did you mean {called.get(near, near)}?" if near else ""


@dataclass(frozen=True, slots=True)
class _Named:
    """A phase named in an episode, under a key, at a place."""

    key: str
    name: str
    place: Place


def _names(episode: Episode) -> Iterator[_Named]:
    if episode.phase is not None:
        yield _Named("phase", episode.phase, episode.phase_place or episode.place)
    yield from (_Named("progress", one.phase, one.place) for one in episode.progress)
    yield from (_Named("done", one.text, one.place) for one in episode.done)
    yield from (_Named("hours", one.phase, one.place) for one in episode.hours if one.phase is not None)
    yield from (_Named("phase", item.phase, item.at("phase")) for item in episode.items if item.phase is not None)


def _plain_phases(journal: Journal, report: Report) -> None:
    """Without a plan any plain word names a phase."""
    names = [one for episode in journal.episodes for one in _names(episode) if _is_plain(one, report)]
    often = Counter(one.name for one in names)
    usual: dict[str, str] = {}  # the spelling used most, or first, of those that some disks take for one
    for name, _ in often.most_common():
        usual.setdefault(_on_disk(name), name)
    for one in names:
        if (meant := usual[_on_disk(one.name)]) != one.name:
            report.mistake(one.place, _one_on_disk(one.name, meant), _ONE_SPELLING, f"write {meant}")
    first = {one.name: one for one in reversed(names)}
    for name, near in _slips(list(usual.values())[:_MOST_COMPARED]):
        expected = "one spelling for a phase; two that are meant to be two stand in plan.yaml"
        found = f"{clipped(name)} is a phase of its own, beside {clipped(near)}"
        report.warning(first[name].place, found, expected, f"did you mean {near}?")


def _is_plain(one: _Named, report: Report) -> bool:
    try:
        LABEL.parse(one.name, Reading(report=report))
    except Unreadable as error:
        report.unreadable(one.place, one.key, error)
        return False
    return True


_MOST_COMPARED = 100  # names, each with all others; nobody builds in more phases
_ONE_SPELLING = "one spelling for a phase: its page is a folder, and many disks keep only one of the two"


def _one_on_disk(name: str, other: str) -> str:
    accents = normalize("NFC", name) == normalize("NFC", other)
    by = "in how their accents are written" if accents else "in capital letters"
    return f"the phases {clipped(name)} and {clipped(other)} differ only {by}"


def _on_disk(name: str) -> str:
    """The name as a disk keeps it that knows no capitals and only one way to write an accent."""
    return normalize("NFC", name).casefold()


def _apart(phases: Iterable[Phase], report: Report) -> None:
    """Report each phase of the plan whose folder some disks would take for that of one before."""
    before: dict[str, str] = {}
    for phase in phases:
        key = before.setdefault(_on_disk(phase.key), phase.key)
        if key != phase.key:
            report.mistake(phase.place, _one_on_disk(phase.key, key), "keys that every disk keeps apart", "rename one")


def _slips(names: list[str]) -> Iterator[tuple[str, str]]:
    """Each name that seems to be another one before it, misspelt. The names come by how often they are used."""
    for at, name in enumerate(names):
        near = next((other for other in names[:at] if _is_slip(name, other)), None)
        if near is not None:
            yield name, near


def _is_slip(name: str, other: str) -> bool:
    """Whether two names differ by their dashes or a letter or two; not by a number or a whole word of theirs."""
    words, others = (re.split("[-_]", _on_disk(one)) for one in (name, other))
    if len(words) != len(others):
        words, others = ["".join(words)], ["".join(others)]
    return all(one == two or _is_misspelt(one, two) for one, two in zip(words, others, strict=True))


def _is_misspelt(word: str, other: str) -> bool:
    numbers = [re.sub(r"\D", "", one) for one in (word, other)]
    if numbers[0] != numbers[1] or min(len(word), len(other)) < 3 or max(len(word), len(other)) > LONGEST_SHOWN:
        return False
    return bool(difflib.get_close_matches(word, [other], cutoff=0.8))
