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
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from builder.terminal import along, asks, completion_text
from builder.usage import Parser, Run

if TYPE_CHECKING:
    from builder.app import Worked

DONE, JOURNAL_WRONG, COMMAND_WRONG, STOPPED = 0, 1, 2, 130


def main(words: Sequence[str] | None = None) -> int:
    """Run one command; the exit code."""
    told = _told(sys.argv[1:] if words is None else list(words))
    if told is None:
        return DONE
    command: Run = told.command
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


def _told(words: list[str]) -> argparse.Namespace | None:
    """The words as their command takes them; None where there are none, and help was printed. Others end it here."""
    first = next((word for word in words if not word.startswith("-")), None)
    runs: dict[str, Run] = {
        "publish": publish,
        "inspect": inspect,
        "tally": tally,
        "takeoff": takeoff,
        "begin": begin,
        "episode": episode,
        "spend": spend,
        "preview": preview,
        "completion": completion,
    }
    parser = Parser(runs, only=first if first != "completion" else None)
    if first is not None and first not in parser.commands:
        from builder.unread import no_command  # not needed where all is well

        parser.whole.error(no_command(first, list(parser.commands)))
    if first is None:
        parser.whole.parse_args(words)
        parser.whole.print_help()
        return None
    told, unknown = parser.whole.parse_known_args(words)
    if unknown:
        from builder.unread import unread  # the same

        of = parser.commands[told.name]
        of.error(unread(unknown, told, words, of.format_usage()))
    told.parsers = parser.commands
    return told


def _run(command: Run, told: argparse.Namespace) -> int:
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


def tally(told: argparse.Namespace) -> int:
    """Print the totals."""
    from builder.app import figures_text, tally_text  # after the command is known: see the module

    worked = _worked(told)
    if not _tell(worked, told.journal) or worked.account is None:
        return JOURNAL_WRONG
    sys.stdout.write(figures_text(worked.account) if told.json else tally_text(worked.account))
    return DONE


def takeoff(told: argparse.Namespace) -> int:
    """Print every take-off of the plan, whatever is wrong elsewhere."""
    from builder.app import takeoff_text  # after the command is known: see the module

    worked = _worked(told)
    right = _tell(worked, told.journal)
    if worked.account is not None and worked.planned:
        print(takeoff_text(worked.account, brief=told.brief), end="")
    return DONE if right else JOURNAL_WRONG


def begin(told: argparse.Namespace) -> int:
    """Make a new journal."""
    from builder.beginning import answers, check_free  # after the command is known: see the module
    from builder.beginning import begin as make

    check_free(told.folder)
    answered = answers(vars(told), asks(), _today())
    with along(sys.stderr) as tell:
        files = make(told.folder, answered, told.after, tell)
    print("\n".join(f"made {file}" for file in files))
    print(f'Next: barrowbook episode "What we did first" --in {told.folder}')
    return DONE


def episode(told: argparse.Namespace) -> int:
    """Make the next episode's file."""
    from builder.evening import new_episode  # after the command is known: see the module

    with along(sys.stderr) as tell:
        path = new_episode(told.journal, told.title, _today(), tell)
    print(f"made {path}\nWrite the story under the second ---, then: barrowbook spend --in {told.journal}")
    return DONE


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


def preview(told: argparse.Namespace) -> int:
    """Serve the site on this machine until interrupted."""
    from builder.site import show_site  # after the command is known: see the module

    if not (told.journal / "journal.yaml").is_file():
        print(f"barrowbook preview: {told.journal} has no journal.yaml", file=sys.stderr)
        return JOURNAL_WRONG
    show_site(told.journal, told.as_of, told.port, lambda text: print(text, flush=True) if text else None)
    return DONE


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
