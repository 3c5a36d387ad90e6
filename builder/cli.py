"""The commands. Each reads its words, calls the app, prints, and says with its exit code how it went.

0 done, 1 the journal has mistakes, 2 the command does. Nothing heavy is imported before a command is known,
so that help comes at once.
"""

from __future__ import annotations

import argparse
import datetime
import json
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from builder import __version__

if TYPE_CHECKING:
    from builder.app import Worked

DONE, JOURNAL_WRONG, COMMAND_WRONG = 0, 1, 2


def main(words: Sequence[str] | None = None) -> int:
    """Run one command; the exit code."""
    parser = _parser()
    told = parser.parse_args(words)
    command: Callable[[argparse.Namespace], int] | None = getattr(told, "command", None)
    if command is None:
        parser.print_help()
        return DONE
    try:
        return command(told)
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="barrowbook",
        description="A folder of weekend write-ups becomes a build journal with a cost ledger, as a plain website.",
        epilog="Try it on the demo: barrowbook publish content --to site_demo",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"barrowbook {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    _publish(commands)
    _inspect(commands)
    _tally(commands)
    return parser


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser],
    name: str,
    run: Callable[[argparse.Namespace], int],
    says: str,
    example: str,
) -> argparse.ArgumentParser:
    parser: argparse.ArgumentParser = commands.add_parser(
        name,
        help=says,
        description=f"{says[0].upper()}{says[1:]}.",
        epilog=f"For example: barrowbook {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.set_defaults(command=run)
    return parser


def _journal(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "journal",
        nargs="?",
        default="content",
        type=Path,
        metavar="JOURNAL",
        help="the journal's folder (content)",
    )
    parser.add_argument(
        "--as-of", type=_day, metavar="DATE", help="forecast as of this day, not that of the last episode"
    )


def _day(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text} is no date; write it as 2026-04-18") from None


def _publish(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(commands, "publish", publish, "make the site from the journal", "publish content --to site_demo")
    _journal(parser)
    parser.add_argument("--to", type=Path, required=True, metavar="SITE", help="the folder to put the site in")


def publish(told: argparse.Namespace) -> int:
    """Make the site, unless the journal has mistakes."""
    from builder.app import publish_site, work_out  # after the command is known: see the module

    worked = work_out(told.journal, told.as_of)
    if not _tell(worked, told.journal):
        return JOURNAL_WRONG
    outcome = publish_site(worked, told.to)
    print(outcome.says, file=sys.stdout if outcome.done else sys.stderr)
    return DONE if outcome.done else COMMAND_WRONG


def _inspect(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands, "inspect", inspect, "look for mistakes in the journal; write nothing", "inspect content"
    )
    _journal(parser)
    parser.add_argument("--json", action="store_true", help="the problems as JSON on standard output")
    parser.add_argument("--lines", action="store_true", help="one line a problem: file:line:column: message")
    parser.add_argument("--figures", action="store_true", help="list every figure that can be named")


def inspect(told: argparse.Namespace) -> int:
    """Look for mistakes and warnings."""
    from builder.app import (
        figure_names,
        problems_data,
        work_out,
    )  # after the command is known: see the module

    worked = work_out(told.journal, told.as_of)
    if told.json:
        print(json.dumps(problems_data(worked), ensure_ascii=False, indent=1))
        return JOURNAL_WRONG if worked.mistakes else DONE
    if told.lines:
        for problem in worked.problems:
            print(f"{told.journal.as_posix()}/{problem.one_line()}")
        return JOURNAL_WRONG if worked.mistakes else DONE
    if not _tell(worked, told.journal):
        return JOURNAL_WRONG
    if told.figures:
        print("\n".join(figure_names(worked)))
        return DONE
    account = worked.account
    if account is not None:
        print(
            f"{told.journal}: {len(account.journal.episodes)} episodes, {len(account.ledger.lines)} lines, no mistakes"
        )
    return DONE


def _tally(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(commands, "tally", tally, "print the totals by phase", "tally content")
    _journal(parser)
    parser.add_argument("--json", action="store_true", help="everything, the same as figures.json")


def tally(told: argparse.Namespace) -> int:
    """Print the totals."""
    from builder.app import figures_text, tally_text, work_out  # after the command is known: see the module

    worked = work_out(told.journal, told.as_of)
    if not _tell(worked, told.journal) or worked.account is None:
        return JOURNAL_WRONG
    sys.stdout.write(figures_text(worked.account) if told.json else tally_text(worked.account))
    return DONE


def _tell(worked: Worked, journal: Path) -> bool:
    """Show what is wrong on standard error; whether the journal can be published."""
    from builder.app import show  # after the command is known: see the module

    if worked.problems:
        print(show(worked, journal.as_posix(), worked.problems), file=sys.stderr)
    mistakes, warnings = len(worked.mistakes), len(worked.warnings)
    if mistakes:
        print(
            f"\n{_count(mistakes, 'mistake')}, {_count(warnings, 'warning')}. Nothing was published.",
            file=sys.stderr,
        )
    elif warnings:
        print(f"\n{_count(warnings, 'warning')}, no mistakes.\n", file=sys.stderr)
    return not mistakes


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
