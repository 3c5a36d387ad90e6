"""The keys of an episode's front matter, as data."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.item_keys import LINES
from builder.journal.keys import Group, Key
from builder.journal.kinds import DATE, HEADS, PHASE_NAMED, RATE, TEXT, Anything, Listed, Placed, Table, judged
from builder.journal.records.written import Node
from builder.words.judged import Judged

TITLE = Key(
    name="title",
    also=("name", "headline"),
    kind=TEXT,
    meaning="name of the episode",
    example="Pegging out",
    required=True,
)
DATE_OF = Key(name="date", also=("day", "when"), kind=DATE, meaning="the day, where it was one", example="2026-04-18")
FROM = Key(name="from", also=("start", "begin"), kind=DATE, meaning="the first day, with to", example="2026-04-18")
TO = Key(
    name="to",
    also=("end", "until"),
    kind=DATE,
    meaning="the last day, which the episode counts by",
    example="2026-04-19",
)
PHASE = Key(name="phase", also=("stage",), kind=PHASE_NAMED, meaning="the phase it belongs to", example="foundation")
SUMMARY = Key(
    name="summary",
    also=("description", "excerpt", "intro"),
    kind=TEXT,
    meaning="a sentence for lists and the feed",
    example="We dug.",
)
HOURS: Key[Node] = Key(
    name="hours",
    also=("time", "hours_worked", "work"),
    kind=Anything(
        "a number of hours such as 7, or hours by phase such as {ground: 2, foundation: 5}",
        {"anyOf": [{"type": ["number", "string"]}, {"type": "object"}]},
    ),
    meaning="the author's own hours, in all or by phase",
    example="{ground: 9, foundation: 21}",
)
PEOPLE = Key(name="people", also=("helpers", "crew", "workers"), kind=HEADS, meaning="how many worked", example="2")
WEATHER = Key(name="weather", kind=TEXT, meaning="what it was like", example="dry, cold wind")
COVER = Key(
    name="cover",
    also=("image", "photo", "picture", "thumbnail"),
    kind=TEXT,
    meaning="the picture for lists",
    example="photos/pegs.png",
)
VIDEO = Key(name="video", kind=TEXT, meaning="address of the video", example="https://example.org/one")
CHAPTERS: Key[tuple[tuple[Placed[str], str], ...]] = Key(
    name="chapters",
    kind=Table(TEXT, "a time such as 0:00"),
    meaning="chapters of the video",
    example='{"0:00": Intro}',
)
PROGRESS: Key[tuple[tuple[Placed[str], Judged[Fraction]], ...]] = Key(
    name="progress",
    kind=Table(judged(RATE), "a phase", "write {foundation: 60%}, for instance"),
    meaning="how far a phase is after this episode",
    example="{foundation: 60%}",
)
DONE = Key(
    name="done",
    kind=Listed(PHASE_NAMED, lone=True),
    meaning="phases that are finished with this episode",
    example="[ground]",
)
ITEMS: Key[Node] = Key(
    name="items",
    also=("costs", "expenses", "purchases", "lines", "materials", "bought"),
    kind=LINES,
    meaning="the line items",
    example='["Galvanised nails, 36.90"]',
)
RECEIPTS: Key[Node] = Key(
    name="receipts",
    also=("receipt", "bills", "invoices"),
    kind=Anything("receipts by key", {"type": "object", "additionalProperties": {"$ref": "#/$defs/receipt"}}),
    meaning="receipts, each under a key of its own",
    example="{yard: {tax: 7%, total: 457.49}}",
)
STATED: Key[Node] = Key(
    name="stated",
    kind=Anything("figures by name", {"type": "object"}),
    meaning="figures said aloud, checked at the digits written; about only warns; {says, differs} is printed",
    example="{spent: 1204, spent to date: about 3300}",
)
SNAGS = Key(
    name="snags",
    also=("problems", "issues", "todo", "to_do"),
    kind=Listed(TEXT, lone=True),
    meaning="what was forgotten or went wrong and is still to do",
    example="[The north corner is still soft]",
)
FIXED = Key(
    name="fixed",
    kind=Listed(TEXT, lone=True),
    meaning="earlier snags that are done, by their words",
    example="[The north corner is still soft]",
)
LESSONS = Key(
    name="lessons",
    also=("learned", "learnt", "lesson"),
    kind=Listed(TEXT, lone=True),
    meaning="what was learnt",
    example="[Order the stone by weight]",
)
EPISODE = Group(
    name="front matter",
    keys=(
        TITLE,
        DATE_OF,
        FROM,
        TO,
        PHASE,
        SUMMARY,
        HOURS,
        PEOPLE,
        WEATHER,
        COVER,
        VIDEO,
        CHAPTERS,
        PROGRESS,
        DONE,
        ITEMS,
        RECEIPTS,
        STATED,
        SNAGS,
        FIXED,
        LESSONS,
    ),
)
SAYS = Key(name="says", kind=TEXT, meaning="the figure that was said", example="1180", required=True)
DIFFERS = Key(
    name="differs",
    kind=TEXT,
    meaning="why the ledger says another; printed",
    example="I forgot the second receipt",
)
SAID = Group(name="a stated figure", keys=(SAYS, DIFFERS))
