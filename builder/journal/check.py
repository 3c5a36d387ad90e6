"""What the parts of a journal say of each other: names that must exist, and orders that must hold."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from unicodedata import normalize

from builder.journal.phases import check_phases, phase_meant
from builder.journal.records.episode import Episode
from builder.journal.records.item import Item, Kind, Source
from builder.journal.records.journal import Journal
from builder.journal.records.plan import OwnedEquipment
from builder.journal.records.prose import Picture
from builder.journal.report import Lost, Report, one_of
from builder.words.misread import clipped
from builder.words.place import Place
from builder.words.rounding import significant_text


def check_journal(journal: Journal, unplaced: tuple[Episode, ...], pictures: frozenset[str], report: Report) -> None:
    """Report every name that leads nowhere, everything that stands twice, and orders broken.

    `unplaced` are episodes without a date or a title: what they name is looked up, and they stand in no order.
    A name is not said to lead nowhere where what it names may be among what could not be read.
    """
    every = replace(journal, episodes=(*journal.episodes, *unplaced))
    _numbers(every, report)
    check_phases(every, report)
    _ids(every, report)
    _plan(every, report)
    _progress(journal, report)
    _snags(journal, report)
    for episode in every.episodes:
        _receipts(episode, report)
        _pictures(episode, pictures, report)
    for item in all_items(every):
        _owned(item, journal, report)
    planned = (phase.planned for phase in journal.plan.phases if isinstance(phase.planned, tuple))
    for item in (*all_items(every), *(line.item for lines in planned for line in lines)):
        _machine(item, journal, report)


def all_items(journal: Journal) -> Iterator[Item]:
    """Every line item, in order of date, episode number and line."""
    for episode in journal.episodes:
        yield from episode.items


def _numbers(journal: Journal, report: Report) -> None:
    seen: dict[int, str] = {}
    for episode in sorted(journal.episodes, key=lambda one: one.file):
        first = seen.setdefault(episode.number, episode.file)
        if first != episode.file:
            report.mistake(
                episode.place,
                f"{episode.file} has the number {episode.number}, and so has {first}",
                "a number of its own for each episode",
                "rename one of the two files",
            )


def _ids(journal: Journal, report: Report) -> None:
    seen: dict[str, Place] = {one.key: one.place for one in journal.owned.stock}
    for item in all_items(journal):
        if item.id is None:
            continue
        if item.id in seen:
            first = seen[item.id]
            report.mistake(
                item.at("id"),
                f"the id {item.id} stands twice, first at {first.file}:{first.line}",
                "ids that are one per journal",
                "rename one of the two",
            )
            report.lose(Lost.ID)  # it may stand in the place of another, which lines draw from
        seen.setdefault(item.id, item.place)
    if not report.lost(Lost.EPISODE, Lost.LINE, Lost.ID, Lost.RECEIPT, Lost.OWNED):
        _lots(journal, seen, report)


def _lots(journal: Journal, seen: dict[str, Place], report: Report) -> None:
    for item in all_items(journal):
        if item.lot is not None and item.lot not in seen:
            report.mistake(
                item.at("from"),
                f"from: {item.lot} is no id of a line and no stock of owned.yaml",
                "the id of an earlier line" if seen else "an id; no line has one yet",
                report.hint(item.lot, seen) or "give the line it comes from an id",
            )


def _plan(journal: Journal, report: Report) -> None:
    phases: dict[str, Place] = {}
    lines: dict[str, Place] = {}
    for phase in journal.plan.phases:
        _once(phase.key, phase.place, phases, "phase", report)
        for line in phase.planned if isinstance(phase.planned, tuple) else ():
            if line.key is not None:
                _once(line.key, line.item.place, lines, "planned line", report)
    for phase in journal.plan.phases:
        for name, place in zip(phase.after, phase.after_places, strict=True):
            if name not in phases and not report.lost(Lost.PHASE):
                found, fix = f"after: {clipped(name)} is no phase", phase_meant(name, journal, report)
                report.mistake(place, found, one_of(list(phases)), fix)
    if not report.lost(Lost.PLANNED_LINE):
        _against(journal, lines, report)


def _against(journal: Journal, lines: dict[str, Place], report: Report) -> None:
    for item in all_items(journal):
        for key in item.against:
            if key not in lines:
                report.mistake(
                    item.at("against"),
                    f"against: {key} is no planned line",
                    one_of(list(lines)) if lines else "the key of a planned line; the plan has none",
                    report.hint(key, lines) or "remove it: the line then counts as not planned",
                )


def _once(key: str, place: Place, seen: dict[str, Place], what: str, report: Report) -> None:
    if key in seen:
        report.mistake(
            place,
            f"the {what} {key} stands twice, first on line {seen[key].line}",
            f"one {what} of a key",
            "rename one of the two",
        )
    seen.setdefault(key, place)


def _progress(journal: Journal, report: Report) -> None:
    reached: dict[str, Fraction] = {}
    done: dict[str, Episode] = {}
    for episode in journal.episodes:
        _after_done(episode, done, report)
        for one in episode.progress:
            before = reached.get(one.phase, Fraction(0))
            if one.part < before:
                report.mistake(
                    one.place,
                    f"progress of {one.phase} goes back from {_percent(before)} to {_percent(one.part)}",
                    f"{_percent(before)} or more",
                    "correct one of the two episodes",
                )
            reached[one.phase] = max(before, one.part)
        for told in episode.done:
            done.setdefault(told.text, episode)


def _after_done(episode: Episode, done: dict[str, Episode], report: Report) -> None:
    worked = [(one.phase or episode.phase, one.place) for one in episode.hours if one.hours]
    worked += [(one.phase, one.place) for one in episode.progress]
    told: set[str] = set()
    for phase, place in worked:
        if phase in done and phase not in told:
            told.add(phase)
            report.mistake(
                place,
                f"there is work on {phase}, which episode {done[phase].number} called done",
                "work in a phase that is not done; late bills and returns may stand in any",
                f"take {phase} out of done: there, or give this episode another phase",
            )


def _percent(part: Fraction) -> str:
    return f"{significant_text(part * 100)}%"


def _snags(journal: Journal, report: Report) -> None:
    if report.lost(Lost.EPISODE, Lost.SNAG):
        return
    earlier: dict[str, str] = {}
    for episode in journal.episodes:
        for told in episode.fixed:
            if told.bare not in earlier:
                report.mistake(
                    told.place,
                    f"fixed names no earlier snag: {told.text}",
                    "the words of a snag of an earlier episode",
                    report.hint(told.text, earlier.values()) or "copy the snag's words",
                )
        earlier.update((told.bare, told.text) for told in episode.snags)


def _receipts(episode: Episode, report: Report) -> None:
    keys = {receipt.key: receipt for receipt in episode.receipts}
    named = {item.receipt for item in episode.items if item.receipt is not None}
    for item in episode.items:
        if item.receipt is not None and item.receipt not in keys and not report.lost(Lost.RECEIPT):
            report.mistake(
                item.at("receipt"),
                f"receipt: {item.receipt} is no receipt of this episode",
                one_of(list(keys)) if keys else "a receipt; the episode has none",
                report.hint(item.receipt, keys) or "add it under receipts:",
            )
    for receipt in episode.receipts:
        if receipt.key not in named and not report.lost(Lost.LINE):
            report.mistake(
                receipt.place,
                f"no line stands on the receipt {receipt.key}",
                "at least one line on each receipt",
                "put lines under its items:, or write receipt: on them",
            )


def _pictures(episode: Episode, pictures: frozenset[str], report: Report) -> None:
    shown: list[Picture] = [*episode.prose.pictures, *([episode.cover] if episode.cover else [])]
    known = Counter(normalize("NFC", one) for one in pictures)
    for one in shown:
        if known[one.path] > 1:
            report.mistake(
                one.place,
                f"two pictures are named {clipped(one.path)}, with their accents written in two ways",
                "one picture of a name",
                "remove one of the two files, or rename it without accents",
            )
        if one.path not in known:
            report.mistake(
                one.place,
                f"there is no picture {clipped(one.path)} in the journal",
                "a picture (png, jpg, webp or gif) that is there",
                _picture_meant(one.path, pictures, report),
            )
    for one in episode.prose.pictures:
        if not one.alt:
            report.warning(
                one.place,
                f"the picture {one.path} has no words for those who cannot see it",
                "![what it shows](path)",
                "say in a few words what it shows",
            )


def _picture_meant(path: str, pictures: frozenset[str], report: Report) -> str:
    """What to do: the picture is in another folder, its name is near, or it is in another format."""
    name = path.rpartition("/")[2]
    same = sorted(one for one in pictures if one.rpartition("/")[2].lower() == name.lower())
    if same:
        return f"did you mean {same[0]}?"
    if not name.lower().endswith((".png", ".jpg", ".jpeg", ".webp", ".gif")):
        return "save it as a jpg or png, and write that name"
    by_name = {one.rpartition("/")[2]: one for one in sorted(pictures)}
    near = report.nearest(name, by_name)
    return f"did you mean {by_name[near]}?" if near else "put the file there, or correct the name"


def shown_pictures(journal: Journal) -> tuple[str, ...]:
    """Every picture that a story or a cover shows, by path with composed accents, each once, in order."""
    pictures = (
        one.path
        for episode in journal.episodes
        for one in (*([episode.cover] if episode.cover else []), *episode.prose.pictures)
    )
    return tuple(dict.fromkeys(pictures))


def _owned(item: Item, journal: Journal, report: Report) -> None:
    if item.kind is not Kind.EQUIPMENT or item.source is not Source.OWNED:
        return
    machine = owned_machine(item, journal)
    hourly = item.replacement_cost is not None
    if item.quantity is None and hourly:
        report.mistake(
            item.at("replacement_cost"),
            f"{item.what} has an hourly worth and no hours",
            "quantity: with the hours it ran",
            "add quantity: 3 hour, or remove replacement_cost and it is listed, not priced",
        )
    if item.quantity is None or hourly or item.quantity.unit.symbol == "hour":
        return
    if machine is not None and machine.replacement_cost is not None:
        report.mistake(
            item.at("quantity"),
            f"{item.what} has an hourly worth, and its quantity is in {item.quantity.unit.symbol}",
            "hours",
            "write quantity: 3 hour, for instance",
        )


def _machine(item: Item, journal: Journal, report: Report) -> None:
    """An own tool need not stand in owned.yaml; one that nearly does was meant to."""
    if item.kind is not Kind.EQUIPMENT or item.source is not Source.OWNED or report.lost(Lost.OWNED):
        return
    if fix := machine_meant(item.what, journal, report):
        found = f"{clipped(item.what)} is no machine of owned.yaml"
        report.warning(item.at("equipment"), found, "its key there, which gives it its name and its worth", fix)


def machine_meant(word: str, journal: Journal, report: Report) -> str:
    """What to write for a word that is the name of a machine of owned.yaml or nearly its key; "" for any other."""
    keys = [one.key for one in journal.owned.equipment]
    if not keys or word in keys:
        return ""
    called = {one.name.casefold(): one.key for one in journal.owned.equipment}
    if (key := called.get(word.casefold())) is not None:
        return f"write {key}"
    near = report.nearest(word, keys, hardly=True)  # a jigsaw is no saw
    return f"did you mean {near}?" if near else ""


def owned_machine(item: Item, journal: Journal) -> OwnedEquipment | None:
    """The entry of owned.yaml that an equipment line names by its key."""
    return next((one for one in journal.owned.equipment if one.key == item.what), None)
