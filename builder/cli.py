"""The commands. Each reads its words, calls the app, prints, and says with its exit code how it went.

0 done, 1 the journal has mistakes, 2 the command does, 130 stopped by Ctrl-C. Nothing heavy is imported before a
command is known, so that help comes at once.
"""

from __future__ import annotations

import argparse
import datetime
import gc
import io
import json
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from builder import __version__
from builder.terminal import along, asks, completion_text

if TYPE_CHECKING:
    from builder.app import Worked

DONE, JOURNAL_WRONG, COMMAND_WRONG, STOPPED = 0, 1, 2, 130


def main(words: Sequence[str] | None = None) -> int:
    """Run one command; the exit code."""
    parser = _parser()
    told = parser.parse_args(words)
    command: Callable[[argparse.Namespace], int] | None = getattr(told, "command", None)
    if command is None:
        parser.print_help()
        return DONE
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    try:
        return _run(command, told)
    except KeyboardInterrupt as stopped:
        said = f"; {stopped}" if str(stopped) else ""
        print(f"\nStopped{said}.", file=sys.stderr)
        return STOPPED
    except BrokenPipeError:
        sys.stderr.close()
        return DONE
    except OSError as error:
        print(f"barrowbook: {error.strerror or error}", file=sys.stderr)
        return COMMAND_WRONG


def _run(command: Callable[[argparse.Namespace], int], told: argparse.Namespace) -> int:
    """A command with its output written out, so that a full disk is noticed here and not at the very end."""
    gc.set_threshold(50_000, 20, 50)  # records are many and stay: looking through them often takes a fifth of the time
    from builder.journal.writing import NotDone  # after the command is known: see the module

    try:
        code = command(told)
    except NotDone as error:
        print(f"barrowbook {told.name}: {error}", file=sys.stderr)
        return COMMAND_WRONG
    sys.stdout.flush()
    return code


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
    _takeoff(commands)
    _begin(commands)
    _episode(commands)
    _spend(commands)
    _preview(commands)
    _completion(commands)
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
    parser.set_defaults(command=run, name=name)
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
    from builder.again import Asked, as_before, look  # after the command is known: see the module
    from builder.store.store import usual_store

    asked = Asked(journal=told.journal, to=told.to, as_of=told.as_of, today=_today())
    with usual_store() as store:
        files = look(asked)
        spared = as_before(asked, files, store) if files else None
        if files and spared is None:
            from builder.retold import retold  # not needed where nothing has changed

            spared = retold(asked, files, store)
        if spared is not None:
            print(spared.warnings, end="", file=sys.stderr)
            print(spared.says)
            return DONE
        from builder.site import publish_site  # not needed where no figure changed

        worked = _worked(told, asked.today)
        if not _tell(worked, told.journal):
            return JOURNAL_WRONG
        with along(sys.stderr) as tell:
            outcome = publish_site(worked, asked, store, tell)
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
    from builder.app import figure_names, problems_data  # after the command is known: see the module

    worked = _worked(told)
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
        counts = (len(account.journal.episodes), "episode"), (len(account.ledger.lines), "line")
        said = ", ".join(f"{number} {word}{'' if number == 1 else 's'}" for number, word in counts)
        print(f"{told.journal}: {said}, no mistakes")
    return DONE


def _tally(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(commands, "tally", tally, "print the totals by phase", "tally content")
    _journal(parser)
    parser.add_argument("--json", action="store_true", help="everything, the same as figures.json")


def tally(told: argparse.Namespace) -> int:
    """Print the totals."""
    from builder.app import figures_text, tally_text  # after the command is known: see the module

    worked = _worked(told)
    if not _tell(worked, told.journal) or worked.account is None:
        return JOURNAL_WRONG
    sys.stdout.write(figures_text(worked.account) if told.json else tally_text(worked.account))
    return DONE


def _takeoff(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(commands, "takeoff", takeoff, "print how much to buy, with the working", "takeoff content")
    _journal(parser)
    parser.add_argument("--brief", action="store_true", help="results only")


def takeoff(told: argparse.Namespace) -> int:
    """Print every take-off of the plan, whatever is wrong elsewhere."""
    from builder.app import takeoff_text  # after the command is known: see the module

    worked = _worked(told)
    right = _tell(worked, told.journal)
    if worked.account is not None and worked.planned:
        print(takeoff_text(worked.account, brief=told.brief), end="")
    return DONE if right else JOURNAL_WRONG


def _begin(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands,
        "begin",
        begin,
        "make a new journal; asks for what is not told",
        'begin observatory --title "The shed" --phases "Ground, Frame, Roof"',
    )
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the folder to make")
    parser.add_argument("--title", help="name of the build")
    parser.add_argument("--language", help="language of the pages, such as en-US or de-DE")
    parser.add_argument("--currency", help="currency, such as USD or EUR")
    parser.add_argument("--ready-by", metavar="DATE", help="the date it is promised for, or none")
    parser.add_argument("--phases", help="stages of the build in order, with commas between")
    parser.add_argument("--after", type=Path, metavar="OLD", help="a finished journal whose leftovers come along")


def begin(told: argparse.Namespace) -> int:
    """Make a new journal."""
    from builder.evening import answers, check_free  # after the command is known: see the module
    from builder.evening import begin as make

    check_free(told.folder)
    answered = answers(vars(told), asks(), _today())
    with along(sys.stderr) as tell:
        files = make(told.folder, answered, told.after, tell)
    print("\n".join(f"made {file}" for file in files))
    print(f'Next: barrowbook episode "What we did first" --in {told.folder}')
    return DONE


def _episode(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands, "episode", episode, "make the next episode's file", 'episode "The roof goes on" --in content'
    )
    parser.add_argument("title", metavar="TITLE", help="name of the episode")
    _inside(parser)


def _inside(parser: argparse.ArgumentParser) -> None:
    folder = Path("content")
    parser.add_argument(
        "--in", dest="journal", type=Path, default=folder, metavar="JOURNAL", help=f"the journal's folder ({folder})"
    )


def episode(told: argparse.Namespace) -> int:
    """Make the next episode's file."""
    from builder.evening import new_episode  # after the command is known: see the module

    with along(sys.stderr) as tell:
        path = new_episode(told.journal, told.title, _today(), tell)
    print(f"made {path}\nWrite the story under the second ---, then: barrowbook spend --in {told.journal}")
    return DONE


def _spend(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands,
        "spend",
        spend,
        "add one line item to the newest episode; asks for what is not told",
        'spend "Galvanised nails" 36.90 --in content',
    )
    parser.add_argument("what", nargs="?", metavar="WHAT", help="what it was")
    parser.add_argument("cost", nargs="?", metavar="COST", help="what it cost, about 150, or unknown")
    parser.add_argument(
        "--kind",
        choices=("material", "equipment", "labour", "travel", "fee"),
        help="what it is; a material, or equipment where its source is owned, borrowed or hired",
    )
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
    ("quantity", "N UNIT", 'how many, such as "36 bag"'),
    ("unit-cost", "PRICE", "price of one, instead of COST"),
    ("source", "WORD", "where from: secondhand, salvaged, gift, stock, owned, hired ..."),
    ("receipt", "KEY", "the receipt of the episode it stands on"),
    ("used", "N UNIT", "how much of it went in; the rest is stock"),
    ("share", "PART", "the part that went into this build; the rest is elsewhere"),
    ("uses", "N", "how often it serves"),
    ("replacement-cost", "PRICE", "what one would cost new, or to hire"),
    ("against", "KEY", "the planned line it answers to"),
    ("phase", "KEY", "its own phase, if not the episode's"),
    ("note", "SENTENCE", "printed under the line"),
)


def spend(told: argparse.Namespace) -> int:
    """Add one line item."""
    from builder.spending import from_table, line_told, ready_to_spend  # after the command is known: see the module
    from builder.spending import spend as add

    if told.table is not None:
        print("\n".join(from_table(told.table, told.what_column, told.amount, told.decimal)))
        return DONE
    with along(sys.stderr) as tell:
        account = ready_to_spend(told.journal, tell)
    new = line_told(vars(told), asks(), account)
    with along(sys.stderr) as tell:
        spent = add(told.journal, account, new, tell)
    print(f"added to {spent.file}:\n" + "\n".join(f"  {line}" for line in spent.written))
    for sentence in spent.noticed:
        print(f"note: {sentence}")
    return DONE


def _preview(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands, "preview", preview, "show the site in the browser, made anew at every save", "preview content"
    )
    _journal(parser)
    parser.add_argument("--port", type=int, default=0, help="where to listen; any free port unless told")


def preview(told: argparse.Namespace) -> int:
    """Serve the site on this machine until interrupted."""
    from builder.site import show_site  # after the command is known: see the module

    if not (told.journal / "journal.yaml").is_file():
        print(f"barrowbook preview: {told.journal} has no journal.yaml", file=sys.stderr)
        return JOURNAL_WRONG
    show_site(told.journal, told.as_of, told.port, lambda text: print(text, flush=True) if text else None)
    return DONE


def _completion(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    parser = _command(
        commands, "completion", completion, "print what completes commands and options in bash", "completion"
    )
    parser.set_defaults(parsers=commands.choices)


def completion(told: argparse.Namespace) -> int:
    """Print a completion for bash, made from the commands themselves."""
    usages = {name: parser.format_usage() for name, parser in told.parsers.items()}
    print(completion_text(usages))
    return DONE


def _worked(told: argparse.Namespace, today: datetime.date | None = None) -> Worked:
    """The journal that a command was told, worked out; on a terminal with a bar where that takes long."""
    from builder.app import work_out  # after the command is known: see the module

    with along(sys.stderr) as tell:
        return work_out(told.journal, told.as_of, today or _today(), tell)


def _today() -> datetime.date:
    """The day, from the only clock that the program looks at."""
    return datetime.datetime.now().astimezone().date()


def _tell(worked: Worked, journal: Path) -> bool:
    """Show what is wrong on standard error; whether the journal can be published."""
    from builder.app import told_whole  # after the command is known: see the module

    print(told_whole(worked, journal.as_posix()), end="", file=sys.stderr)
    return not worked.mistakes
