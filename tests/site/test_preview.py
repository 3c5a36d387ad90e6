"""The preview: a saved change shows in the open page, mistakes stand over the last good one, nobody else may ask."""

from __future__ import annotations

import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from http.client import HTTPConnection
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.bench.journals import write_journal

LONG = 60_000  # milliseconds, on a machine that is busy with other tests
EPISODE = "episodes/02-weekend-2/"


@dataclass(frozen=True, slots=True)
class Shown:
    """A preview that runs: the journal it watches, its process, and where it listens."""

    journal: Path
    process: subprocess.Popen[str]
    port: int

    @property
    def file(self) -> Path:
        """An episode of the journal."""
        return self.journal / "episodes" / "00002-weekend-2.md"

    def edit(self, old: str, new: str) -> None:
        """Change a text in the episode and save it."""
        text = self.file.read_text(encoding="utf-8")
        assert old in text
        self.file.write_text(text.replace(old, new), encoding="utf-8")

    def ask(self, path: str, host: str | None = None) -> tuple[int, str]:
        """Status and text of what it answers to a raw request."""
        connection = HTTPConnection("127.0.0.1", self.port, timeout=60)
        connection.putrequest("GET", path, skip_host=True)
        connection.putheader("Host", host or f"127.0.0.1:{self.port}")
        connection.endheaders()
        answer = connection.getresponse()
        text = answer.read().decode()
        connection.close()
        return answer.status, text


def start(journal: Path, cache: Path) -> Shown:
    """Run the command and wait until it says where the site is."""
    process = subprocess.Popen(
        [sys.executable, "-m", "builder", "preview", str(journal)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "XDG_CACHE_HOME": str(cache), "PYTHONUTF8": "1"},
    )
    assert process.stdout is not None
    for line in process.stdout:
        if found := re.search(r"http://127\.0\.0\.1:(\d+)/", line):
            return Shown(journal, process, int(found[1]))
    raise AssertionError(f"the preview never said where it is: {process.communicate()}")


@pytest.fixture
def shown(tmp_path: Path) -> Iterator[Shown]:
    """The preview of a journal of a few episodes."""
    write_journal(tmp_path / "journal", 3)
    preview = start(tmp_path / "journal", tmp_path / "cache")
    yield preview
    preview.process.kill()
    preview.process.communicate()


@pytest.fixture
def page(browser: Browser, shown: Shown) -> Iterator[Page]:
    """An episode's page, open in a small window."""
    context = browser.new_context(viewport={"width": 390, "height": 500})
    window = context.new_page()
    window.goto(f"http://localhost:{shown.port}/{EPISODE}")
    yield window
    context.close()


@pytest.mark.browser
def test_a_saved_word_and_a_saved_price_show_in_the_open_page_where_it_was_read(shown: Shown, page: Page) -> None:
    """The page is not at its top again, and what was computed is computed anew."""
    page.evaluate("window.scrollTo(0, 900)")
    shown.edit("## Part 4", "## The rails are level")
    expect(page.get_by_role("heading", name="The rails are level")).to_be_attached(timeout=LONG)
    page.wait_for_function("window.scrollY > 800", timeout=LONG)
    shown.edit("- Nails 0, ", "- Nails 0, 1")
    expect(page.get_by_role("heading", name="The rails are level")).to_be_attached(timeout=LONG)
    before = page.locator("main").inner_text()
    shown.edit("- Nails 0, 1", "- Nails 0, 2")
    page.wait_for_function("text => document.querySelector('main').innerText !== text", arg=before, timeout=LONG)


@pytest.mark.browser
def test_a_mistake_stands_over_the_last_good_page_until_it_is_mended(shown: Shown, page: Page) -> None:
    """With its file and line; the story below stays."""
    shown.edit("hours: 8", "hors: 8")
    told = page.get_by_role("alert")
    expect(told).to_contain_text("episodes/00002-weekend-2.md:5:1", timeout=LONG)
    expect(told).to_contain_text("hours")
    expect(page.get_by_role("heading", name="Part 4")).to_be_attached()
    shown.edit("hors: 8", "hours: 8")
    expect(told).not_to_be_attached(timeout=LONG)


def test_only_this_machine_may_ask(shown: Shown) -> None:
    """A page of another host that found the port gets nothing, and there is no way out of the site."""
    assert shown.ask("/")[0] == 200
    for host in ("example.org", f"example.org:{shown.port}", "127.0.0.1", f"[::1]:{shown.port}"):
        assert shown.ask("/", host) == (403, "Only this machine may ask.")
    for path in ("/../journal/journal.yaml", "/%2e%2e/journal/journal.yaml", "//etc/passwd", "/episodes/../../x"):
        status, text = shown.ask(path)
        assert status == 404
        assert "currency:" not in text


def test_it_listens_on_this_machine_only(shown: Shown) -> None:
    """Nothing answers on another address of this machine."""
    others = {str(found[4][0]) for found in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)}
    for address in (others | {"127.0.0.2"}) - {"127.0.0.1"}:
        with socket.socket() as asker:
            asker.settimeout(2)
            assert asker.connect_ex((address, shown.port)) != 0


def test_slow_visitors_keep_nobody_waiting(shown: Shown) -> None:
    """Forty that never finish their question, and forty that wait for news, while one wants a page."""
    slow = [socket.create_connection(("127.0.0.1", shown.port)) for _ in range(80)]
    for number, one in enumerate(slow):
        host = f"Host: 127.0.0.1:{shown.port}\r\n\r\n"
        one.sendall(b"GET / HTTP/1.1\r\nHo" if number % 2 else f"GET /.preview/changes HTTP/1.1\r\n{host}".encode())
    try:
        assert shown.ask("/")[0] == 200
    finally:
        for one in slow:
            one.close()


def test_it_ends_cleanly_while_a_page_is_open(shown: Shown) -> None:
    """Ctrl-C: no traceback, and the port is free."""
    with socket.create_connection(("127.0.0.1", shown.port)) as waiting:
        waiting.sendall(f"GET /.preview/changes HTTP/1.1\r\nHost: localhost:{shown.port}\r\n\r\n".encode())
        assert waiting.recv(100).startswith(b"HTTP/1.1 200")
        shown.process.send_signal(signal.SIGINT)
        _, told = shown.process.communicate(timeout=60)
    assert "Traceback" not in told
    assert shown.process.returncode in (0, 130)
    with socket.socket() as asker:
        assert asker.connect_ex(("127.0.0.1", shown.port)) != 0


def test_a_journal_that_goes_away_and_comes_back_is_shown_again(shown: Shown, tmp_path: Path) -> None:
    """As when a disk is taken out, or a program saves by renaming."""
    shown.file.rename(tmp_path / "away.md")
    shutil.copy(tmp_path / "away.md", shown.file)
    shown.edit("## Part 4", "## Back again")
    for _ in range(600):
        if "Back again" in shown.ask(f"/{EPISODE}")[1]:
            return
        time.sleep(0.1)
    raise AssertionError("the change never showed")
