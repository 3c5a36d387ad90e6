"""Somebody at a terminal: the real command in a pseudo-terminal, its questions read and answered."""

from __future__ import annotations

import codecs
import errno
import fcntl
import os
import pty
import re
import select
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from tests.conftest import ROOT

PATIENCE = 60.0  # seconds for an answer, on a machine that is busy with other tests
# A command started as a shell would: the terminal is its own, so that Ctrl-C reaches it.
_OWN = "import fcntl, termios; fcntl.ioctl(0, termios.TIOCSCTTY, 0)"
_RUN = "import runpy; runpy.run_module('builder', run_name='__main__')"


class Seat:
    """A terminal with a command running in it. `seen` is everything that stood on the screen, in order."""

    def __init__(self, master: int, process: subprocess.Popen[bytes]) -> None:
        self._master, self._process = master, process
        self._text = codecs.getincrementaldecoder("utf-8")("replace")
        self._at = 0
        self.seen = ""

    def until(self, text: str) -> None:
        """Read until `text` has come after what was waited for last; fail when the command ends before."""
        while text not in self.seen[self._at :]:
            if not self._read():
                raise AssertionError(f"{text!r} did not come; the screen says:\n{self.seen}")
        self._at = self.seen.index(text, self._at) + len(text)

    def types(self, *lines: str) -> None:
        """Type lines, each with Enter."""
        for line in lines:
            os.write(self._master, f"{line}\n".encode())

    def answers(self, *pairs: tuple[str, str]) -> None:
        """Wait for each question, then type its answer."""
        for question, answer in pairs:
            self.until(question)
            self.types(answer)

    def presses_control_c(self) -> None:
        """As the key does: the terminal sends the signal.

        Nobody is as quick as the moment between a question's last letter and the waiting for its answer, in which
        Python notes the signal and goes on waiting.
        """
        time.sleep(0.5)
        os.write(self._master, b"\x03")

    def presses_control_d(self) -> None:
        """As the key does: nothing more comes. As quick as Ctrl-C."""
        time.sleep(0.5)
        os.write(self._master, b"\x04")

    def kills(self) -> None:
        """As when the battery is empty."""
        self._process.kill()

    def ends(self) -> int:
        """Read to the end; the exit code."""
        more = True
        while more:
            more = self._read()
        return self._process.wait(PATIENCE)

    @property
    def screen(self) -> str:
        """What was seen, as lines, with what was drawn over left out."""
        lines = self.seen.replace("\r\n", "\n").split("\n")
        return "\n".join(re.sub(r"^.*\r", "", line) for line in lines)

    def _read(self) -> bool:
        """Take what comes within the time; False at the end."""
        ready, _, _ = select.select([self._master], [], [], PATIENCE)
        if not ready:
            raise AssertionError(f"nothing came for {PATIENCE} s; the screen says:\n{self.seen}")
        try:
            came = os.read(self._master, 65536)
        except OSError as error:
            if error.errno != errno.EIO:  # how Linux says that the other side is closed
                raise
            return False
        self.seen += self._text.decode(came)
        return bool(came)


@contextmanager
def seat(*words: str, folder: Path, before: str = "", columns: int = 80) -> Iterator[Seat]:
    """A command at a terminal of so many columns, in a folder; `before` is run before it. Ended after the test."""
    master, slave = pty.openpty()
    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    process = subprocess.Popen(
        command(words, f"{_OWN}; {before or 'pass'}"),
        cwd=folder,
        env=environment(folder / "cache"),
        stdin=slave,
        stdout=slave,
        stderr=slave,
        start_new_session=True,
    )
    os.close(slave)
    try:
        yield Seat(master, process)
    finally:
        process.kill()
        process.wait()
        os.close(master)


def command(words: Sequence[str], before: str) -> list[str]:
    """The command line, with something done before."""
    return [sys.executable, "-W", "error", "-c", f"{before}\n{_RUN}", *words]


def environment(cache: Path) -> dict[str, str]:
    """The tests' own, with a cache folder that nobody else uses."""
    path = os.pathsep.join(filter(None, (str(ROOT), os.environ.get("PYTHONPATH", ""))))
    return {**os.environ, "XDG_CACHE_HOME": str(cache), "PYTHONUTF8": "1", "PYTHONPATH": path}
