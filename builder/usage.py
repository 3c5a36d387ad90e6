"""What each command takes: its words and options, with their help. What it does is in `builder.cli`."""

from __future__ import annotations

import argparse
import datetime
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TypeAlias

from builder import __version__

Run: TypeAlias = Callable[[argparse.Namespace], int]


class Parser:
    """The commands with their words, each with what runs it; or, as all take a while, with the words of `only` one."""

    def __init__(self, runs: Mapping[str, Run], only: str | None = None) -> None:
        self.whole = argparse.ArgumentParser(
            prog="barrowbook",
            description="A folder of weekend write-ups becomes a build journal with a cost ledger, as a plain website.",
            epilog="Try it on the demo: barrowbook publish content --to site_demo",
            formatter_class=argparse.RawDescriptionHelpFormatter,
        )
        self.whole.add_argument("--version", action="version", version=f"barrowbook {__version__}")
        self._commands = self.whole.add_subparsers(title="commands", metavar="COMMAND")
        for name, run in runs.items():
            self._add(name, run, worded=only in (None, name))

    @property
    def commands(self) -> Mapping[str, argparse.ArgumentParser]:
        """What parses the words of each command, by its name."""
        return self._commands.choices

    def _add(self, name: str, run: Run, *, worded: bool) -> None:
        says, example, words = _COMMANDS[name]
        parser = self._commands.add_parser(
            name,
            help=says,
            description=f"{says[0].upper()}{says[1:]}.",
            epilog=f"For example: barrowbook {example}",
            formatter_class=argparse.RawDescriptionHelpFormatter,
        )
        parser.set_defaults(command=run, name=name)
        if worded:
            words(parser)


def _journal(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "journal",
        nargs="?",
        default=_usual(),
        type=Path,
        metavar="JOURNAL",
        help="the journal's folder (content, or where you are if that is a journal)",
    )
    parser.add_argument(
        "--as-of", type=_day, metavar="DATE", help="forecast as of this day, not that of the last episode"
    )


def _inside(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--in",
        dest="journal",
        type=Path,
        default=_usual(),
        metavar="JOURNAL",
        help="the journal's folder (content, or where you are if that is a journal)",
    )


def _usual() -> Path:
    """The folder `content`; where that is no journal, and the folder one stands in is, that one."""
    content, here = Path("content"), Path()
    return here if (here / _MARK).is_file() and not (content / _MARK).is_file() else content


_MARK = "journal.yaml"


def _day(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text} is no date; write it as 2026-04-18") from None


def _publish(parser: argparse.ArgumentParser) -> None:
    _journal(parser)
    parser.add_argument("--to", type=Path, required=True, metavar="SITE", help="the folder to put the site in")


def _inspect(parser: argparse.ArgumentParser) -> None:
    _journal(parser)
    parser.add_argument("--json", action="store_true", help="the problems as JSON on standard output")
    parser.add_argument("--lines", action="store_true", help="one line a problem: file:line:column: message")
    parser.add_argument("--figures", action="store_true", help="list every figure that can be named")


def _tally(parser: argparse.ArgumentParser) -> None:
    _journal(parser)
    parser.add_argument("--json", action="store_true", help="everything, the same as figures.json")


def _takeoff(parser: argparse.ArgumentParser) -> None:
    _journal(parser)
    parser.add_argument("--brief", action="store_true", help="results only")


def _begin(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the folder to make")
    parser.add_argument("--title", help="name of the build")
    parser.add_argument("--language", help="language of the pages, such as en-US or de-DE")
    parser.add_argument("--currency", help="currency, such as USD or EUR")
    parser.add_argument("--ready-by", metavar="DATE", help="the date it is promised for, or none")
    parser.add_argument("--phases", help="stages of the build in order, with commas between")
    parser.add_argument("--after", type=Path, metavar="OLD", help="a finished journal whose leftovers come along")


def _episode(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("title", metavar="TITLE", help="name of the episode, in quotes")
    _inside(parser)


def _spend(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("what", nargs="?", metavar="WHAT", help="what it was, in quotes")
    parser.add_argument("cost", nargs="?", metavar="COST", help="what it cost, about 150, or unknown")
    for option, metavar, says in _OF_A_LINE:
        parser.add_argument(f"--{option}", metavar=metavar, help=says)
    table = parser.add_argument_group(
        "from a table", "print lines for editing from a CSV file of a spreadsheet or a bank; nothing is written"
    )
    table.add_argument("--table", type=Path, metavar="FILE", help="the file")
    table.add_argument("--what", dest="what_column", metavar="COLUMN", default="What", help="the column that names it")
    table.add_argument("--amount", metavar="COLUMN", default="Amount", help="the column with what it cost")
    table.add_argument("--decimal", choices=(".", ","), default=".", help="the mark before the cents")
    _inside(parser)


_OF_A_LINE = (
    ("kind", "WORD", "material (the usual), equipment, labour, travel or fee; equipment where it is owned or hired"),
    ("quantity", "N UNIT", 'how many, such as "36 bag"'),
    ("unit-cost", "PRICE", "price of one, instead of COST"),
    ("source", "WORD", "where from: secondhand, salvaged, gift, stock, owned, borrowed, hired ..."),
    ("receipt", "KEY", "the receipt of the episode it stands on"),
    ("used", "N UNIT", "how much of it went in; the rest is stock"),
    ("share", "PART", "the part that went into this build; the rest is elsewhere"),
    ("uses", "N", "how often it serves"),
    ("replacement-cost", "PRICE", "what one would cost new, or to hire"),
    ("against", "KEY", "the planned line it answers to"),
    ("phase", "KEY", "its own phase, if not the episode's"),
    ("note", "SENTENCE", "printed under the line"),
)


def _preview(parser: argparse.ArgumentParser) -> None:
    _journal(parser)
    parser.add_argument("--port", type=int, default=0, help="where to listen; any free port unless told")


def _nothing(parser: argparse.ArgumentParser) -> None:
    """A command that takes no words."""


# What each command is for, how it is called for example, and its words.
_COMMANDS: Mapping[str, tuple[str, str, Callable[[argparse.ArgumentParser], None]]] = {
    "publish": ("make the site from the journal", "publish content --to site_demo", _publish),
    "inspect": ("look for mistakes in the journal; write nothing", "inspect content", _inspect),
    "tally": ("print the totals by phase", "tally content", _tally),
    "takeoff": ("print how much to buy, with the working", "takeoff content", _takeoff),
    "begin": (
        "make a new journal; asks for what is not told",
        'begin observatory --title "The shed" --phases "Ground, Frame, Roof"',
        _begin,
    ),
    "episode": ("make the next episode's file", 'episode "The roof goes on" --in content', _episode),
    "spend": (
        "add one line item to the newest episode; asks for what is not told",
        'spend "Galvanised nails" 36.90 --in content',
        _spend,
    ),
    "preview": ("show the site in the browser, made anew at every save", "preview content", _preview),
    "completion": ("print what completes commands and options in bash", "completion", _nothing),
}
