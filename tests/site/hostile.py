"""Text that means harm, and a journal in which every key that takes text says it.

The strings are of the kinds that lists of attacks on web pages, feeds and spreadsheets hold (from memory). Where
they go is read off the declared keys: a key that is added takes part without being named here.
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from PIL import Image

from builder.journal.episode_keys import EPISODE, SAID
from builder.journal.item_keys import ITEM, RECEIPT, WHAT
from builder.journal.keys import Group, Key
from builder.journal.kinds import LABEL, Anything
from builder.journal.owned_reader import EQUIPMENT, OWNED, STOCK
from builder.journal.plan_reader import PHASE, PLAN
from builder.journal.reading import Reading
from builder.journal.report import Report
from builder.journal.settings_reader import SETTINGS
from builder.journal.text import Source
from builder.journal.tree import read_tree

GROUPS = (SETTINGS, PLAN, PHASE, OWNED, EQUIPMENT, STOCK, EPISODE, SAID, ITEM, RECEIPT)

# Ways of writing an address that a browser would run, or load from elsewhere.
ADDRESSES = (
    "javascript:alert(1)", "JaVaScRiPt:alert(1)", " javascript:alert(1)", "java\tscript:alert(1)",
    "javascript&colon;alert(1)", "&#106;avascript:alert(1)", "&#x6a;&#x61vascript:alert(1)",
    "jav&#x09;ascript:alert(1)", "javascript\\:alert(1)",
    "data:text/html,<script>alert(1)</script>", "data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==",
    "vbscript:msgbox(1)", "feed:javascript:alert(1)", "view-source:javascript:alert(1)", "blob:https://evil.example/1",
)  # fmt: skip
MARKUP = (
    "<script>alert(1)</script>",
    "</script><script>alert(1)</script><!--",
    "</title></head><body onload=alert(1)>",
    "<img src=x onerror=alert(1)>",
    "<img alt='a>b' src='https://evil.example/x.png' srcset='//evil.example/x.png 2x'>",
    "<svg/onload=alert(1)><animate onbegin=alert(1)>",
    "</text></svg><foreignObject><iframe srcdoc='<script>alert(1)</script>'></iframe>",
    '" onmouseover="alert(1)" style="position:fixed',
    "' autofocus onfocus='alert(1)",
    "x onpointerover=alert(1) y=",
    '"><iframe src="javascript:alert(1)"></iframe>',
    "`onload=alert(1)`",
    "<object data='data:text/html,x'><embed src='//evil.example/x'>",
    "<form action='javascript:alert(1)'><button formaction='javascript:alert(1)'>go</button>",
    "<meta http-equiv=refresh content='0;url=javascript:alert(1)'><base href='//evil.example/'>",
    "<link rel=stylesheet href=//evil.example/x.css><style>@import '//evil.example';</style>",
    "<details open ontoggle=alert(1)><summary>x</summary></details>",
    "<math><mtext><table><mglyph><style><!--</style><img title='--&gt;&lt;img src=1 onerror=alert(1)&gt;'>",
    "<noscript><p title='</noscript><img src=x onerror=alert(1)>'>",
    "<!--><img src=x onerror=alert(1)>--!><b>",
    "]]><script>alert(1)</script><![CDATA[",
    "<?xml version='1.0'?><!DOCTYPE a [<!ENTITY e SYSTEM 'file:///secret'>]>&e;",
    "&lt;script&gt;alert(1)&lt;/script&gt; &amp;quot; &#0; &nosuch; &#x110000;",
    "{{ 7*7 }} {% include 'frame.html' %} {# gone #} ${7*7} <%= 7*7 %>",
    "%s %(name)s {0.__class__} {name} {amount:>99}",
    '\\u003cscript\\u003e \\x3cscript\\x3e \\" \\',
    "<scr<script>ipt>alert(1)</scr</script>ipt>",
    "a\u202etxt.exe\u2066 \u2069 \u200f",
    "one\u2028two\u2029three\x85four\nfive\rsix\tseven",
    *(f"<a href='{one}'>x</a> [x]({one})" for one in ADDRESSES),
)
FORMULAS = (
    "=1+1", '=HYPERLINK("https://evil.example","x")', "=cmd|' /C calc'!A0", "+1+1", "-1+1", "@SUM(1)", "\t=1+1",
    "\r=1+1", "\n=1+1", " =1+1", "\u00a0=1+1", "\ufeff=1+1", "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff20SUM(1)",
)  # fmt: skip
LONG = "Observatory" * 300
ATTACKS = (*MARKUP, *FORMULAS, LONG)

# Keys of text that another rule narrows: what is tried on them instead, by group and name.
NARROWED: dict[tuple[str, str], Callable[[str], object]] = {
    (SETTINGS.name, "address"): lambda _: "https://evil.example/a'b&c;d={{7+7}}(javascript:alert)//x",
    (EPISODE.name, "video"): lambda text: "https://evil.example/" + "".join(text.split())[:500],
    (EPISODE.name, "cover"): lambda _: WRITTEN,
    (SAID.name, "says"): lambda _: "1",
    (EPISODE.name, "fixed"): lambda _: [],  # names a snag of an earlier episode: `episode` puts one in
}
# Structures, which a reader of their own reads: each stands in the journal below.
STRUCTURES = {"hours", "items", "receipts", "stated", "planned", "phases", "takeoff", "equipment", "stock"}
PICTURE = "photos/a' onerror='alert(1)' & {{x}} #1 100%.png"
PLAIN = "photos/plain.png"
WRITTEN = PICTURE.replace("%", "%25")  # as a story writes it
PROBE = 'Probe <b> & "quoted"'


@cache
def every_text_key() -> tuple[tuple[Group, Key[Any], Callable[[str], object]], ...]:
    """Every key that takes any text, and how a text is put into it: as it is, in a list, or in a table.

    Not those that name a phase by its plain word: any other word is a mistake, though not of its reader.
    """
    keys = [(group, key) for group in GROUPS for key in group.keys if not isinstance(key.kind, Anything)]
    keys = [(group, key) for group, key in keys if LABEL.expects not in key.kind.expects]
    shapes = [(group, key, _shape(key)) for group, key in keys]
    return tuple((group, key, NARROWED.get((group.name, key.name), shape)) for group, key, shape in shapes if shape)


def _shape(key: Key[Any]) -> Callable[[str], object] | None:
    shapes: tuple[Callable[[str], object], ...] = (lambda text: text, lambda text: [text], lambda text: {"0:00": text})
    return next((shape for shape in shapes if _reads(key, shape(PROBE))), None)


def _reads(key: Key[Any], value: object) -> bool:
    report = Report()
    node = read_tree(Source(file="a.yaml", text=json.dumps(value)), report)
    assert node is not None
    return bool(key.kind.read(node, key.name, Reading(report=report))) and not report.count


Say = Callable[[str, str], str]


def texts(group: Group, say: Say, without: Iterable[str] = ()) -> dict[str, object]:
    """Every key of a group that takes text, with what `say` has for it."""
    return {
        key.name: put(say(group.name, key.name))
        for of, key, put in every_text_key()
        if of is group and key.name not in set(without)
    }


_KINDS = {key.name for key in WHAT.values()}
_PRICED = {"material": {"quantity": "2 bag", "source": "salvaged", "size": "24 in x 48 in", "replacement_cost": "9"}}


def lines(say: Say) -> Iterator[dict[str, object]]:
    """A line of each kind, with every other key that takes text."""
    for kind in sorted(_KINDS):
        words = texts(ITEM, say, without=_KINDS - {kind})
        yield words | _PRICED.get(kind, {"cost": "10"} | ({"source": "hired"} if kind == "equipment" else {}))


def episode(number: int, say: Say, snag: str | None, story: str) -> str:
    """An episode that says it everywhere."""
    first, *others = lines(say)
    machines = (owned_key(number, say), f"m{number}")
    own = [{"equipment": key, "source": "owned", "quantity": "1 hour"} for key in machines]
    day = datetime.date(2026, 1, 1) + datetime.timedelta(days=number)
    front = texts(EPISODE, say) | {
        "date": day.isoformat(),
        "phase": f"p{number}",
        "items": [*others, *own],
        "receipts": {"yard": texts(RECEIPT, say) | {"tax": "7%", "items": [first]}},
        "stated": {"spent to date": {"says": "1"} | texts(SAID, say)},
        "hours": {f"p{number}": "3"},
        "fixed": [snag] if snag else [],
    }
    return f"---\n{json.dumps(front)}\n---\n{story}\n"


def plan(says: list[Say]) -> str:
    """A phase for each, with a planned line of each kind."""
    phases = [
        texts(PHASE, say)
        | {"key": f"p{number}", "planned": [line | {"key": f"k{number}-{at}"} for at, line in enumerate(lines(say))]}
        for number, say in enumerate(says, 1)
    ]
    glass = {"method": "openings", "walls": [{"clear_length": "12 ft"}], "units": "salvaged", "post": "4 in"}
    return json.dumps(texts(PLAN, says[0]) | {"phases": phases, "takeoff": {"glass": glass}})


def owned_key(number: int, say: Say) -> str:
    """The author's own word for a machine; YAML takes no long ones between quotes."""
    return f"{say('owned.yaml', 'key')[:90].strip()} {number}"


def owned(says: list[Say]) -> str:
    """A machine and a leftover for each; their keys are words of the author too."""
    each = [(owned_key(number, say), say) for number, say in enumerate(says, 1)]
    machines = {key: {"replacement_cost": "9"} for key, _ in each}  # called by its key, for want of a name
    machines |= {f"m{number}": texts(EQUIPMENT, say) | machines[key] for number, (key, say) in enumerate(each, 1)}
    stock = {key: texts(STOCK, say) | {"quantity": "3 bag", "unit_cost": "2"} for key, say in each}
    return json.dumps(texts(OWNED, says[0]) | {"equipment": machines, "stock": stock})


# A picture that is not there is a mistake, and nothing is published.
_PICTURE_GONE = re.compile(r"\bsrc=[x1]\b")


def story(text: str) -> str:
    """The text in every place of Markdown that takes some, and raw."""
    text = _PICTURE_GONE.sub(f"src=../{PLAIN}", text)
    line = " ".join(text.split())
    double, single = line.replace('"', "'"), line.replace("'", '"')  # a caption ends at the quote it begins with
    return f"""{text}

# {line}

![{line}](../{WRITTEN.replace(" ", "%20")} "{double}")

![{line}](<../{WRITTEN}> '{single}')

<img src="../{WRITTEN}" alt="{line}" title='{line}' onerror=alert(1)>

[{line}]({line}) [{line}](https://evil.example/ "{line}") [ref][1] <{line}> `{line}` **{line}**[^1]

{"".join(f"[x]({one}) <a href='{one}'>x</a> <{one}> ![x](<{WRITTEN}> '{one}')" for one in ADDRESSES[:4])}

[1]: {line} "{line}"
[^1]: {line}
*[HTML]: {line}

HTML {{= spent to date =}} [{{= spent =}}](#{{= spent =}} "{{= spent =}} > {line}")

| {line} | b |
|---|---|
| {line} | {{= spent =}} |

```{line}
{text}
```

{line}
: {line}

> <div class="figure" style="x" onclick="alert(1)" id="main">{line}</div>
"""


def settings(say: Say) -> str:
    """journal.yaml that says it everywhere."""
    return json.dumps(texts(SETTINGS, say) | {"language": "en-US", "currency": "USD", "ready_by": "2027-01-01"})


def write(folder: Path, say_settings: Say, says: list[Say], stories: list[str]) -> Path:
    """A journal with an episode, a phase, a machine and a leftover for each of `says`."""
    (folder / "episodes").mkdir(parents=True)
    (folder / "photos").mkdir()
    for name in (PICTURE, PLAIN):
        Image.new("RGB", (20, 10), "white").save(folder / name)
    files: dict[str, str] = {"journal.yaml": settings(say_settings), "plan.yaml": plan(says), "owned.yaml": owned(says)}
    snag: str | None = None
    for number, (say, told) in enumerate(zip(says, stories, strict=True), 1):
        name = f"episodes/{number:02d}-it's & {{{{7+7}}}} #1 50%3C =x.md"
        files[name] = episode(number, say, snag, told)
        snag = say(EPISODE.name, "snags")
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def saying(text: str) -> Say:
    """The same text for every key."""
    return lambda group, key: text


def by_name(told: Mapping[tuple[str, str], str]) -> Say:
    """A text of its own for every key."""
    return lambda group, key: told[group, key]
