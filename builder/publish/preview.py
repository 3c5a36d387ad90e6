"""The preview: the site on this machine only, made anew when a file of the journal is saved.

Pages are served from memory. A page that is open hears of a new version and reloads itself, keeping its place;
while the journal has mistakes it shows them over the last good version.
"""

from __future__ import annotations

import mimetypes
import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from html import escape
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

from builder.publish.assets import asset

OWN = "/.preview/"
_BEAT = 15.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """A run: the site's files by path, or None where it has mistakes; what to tell about it, "" for nothing."""

    files: Mapping[str, bytes] | None
    told: str


Rebuild = Callable[[], Built]


@dataclass(slots=True)
class Shown:
    """What is served now. `version` grows with every run; waiting pages are woken by it."""

    files: Mapping[str, bytes] = field(default_factory=dict)
    told: str = ""
    version: int = 0
    closed: bool = False
    changed: threading.Condition = field(default_factory=threading.Condition)

    def take(self, built: Built) -> None:
        """Show a new run; without files the last good ones stay."""
        with self.changed:
            self.files = built.files if built.files is not None else self.files
            self.told = built.told
            self.version += 1
            self.changed.notify_all()

    def close(self) -> None:
        """Let every waiting page go."""
        with self.changed:
            self.closed = True
            self.changed.notify_all()

    def wait(self, seen: int, seconds: float) -> int:
        """The version after `seen`, or `seen` itself when nothing came in that time."""
        with self.changed:
            self.changed.wait_for(lambda: self.version != seen or self.closed, seconds)
            return self.version


class Server(ThreadingHTTPServer):
    """Listens on the loopback address only; threads end with it."""

    daemon_threads = True
    request_queue_size = 128

    def __init__(self, shown: Shown, port: int = 0) -> None:
        super().__init__(("127.0.0.1", port), _Answer)
        self.shown = shown

    @property
    def port(self) -> int:
        """Where it listens."""
        return int(self.server_address[1])

    @property
    def hosts(self) -> frozenset[str]:
        """The names under which this machine may ask; anything else is another host's page and refused."""
        return frozenset({f"127.0.0.1:{self.port}", f"localhost:{self.port}"})


class _Answer(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    timeout = 30
    server: Server

    def do_GET(self) -> None:
        """Answer one request."""
        if self.headers.get("Host", "") not in self.server.hosts:
            self._send(HTTPStatus.FORBIDDEN, "text/plain; charset=utf-8", b"Only this machine may ask.")
            return
        path = unquote(urlsplit(self.path).path)
        if path == f"{OWN}changes":
            self._changes()
        elif path == f"{OWN}preview.js":
            self._send(HTTPStatus.OK, "text/javascript; charset=utf-8", asset("preview.js"))
        elif path == f"{OWN}preview.css":
            self._send(HTTPStatus.OK, "text/css; charset=utf-8", asset("preview.css"))
        else:
            self._file(path)

    def _file(self, path: str) -> None:
        """A file of the site, by its name in the run and never from the disk."""
        name = path.removeprefix("/") + ("index.html" if path.endswith("/") else "")
        files = self.server.shown.files
        if name not in files and f"{name}/index.html" in files:
            self.send_response(HTTPStatus.FOUND)
            self.send_header("Location", f"{path}/")
            self.send_header("Content-Length", "0")
            self.end_headers()
            return
        body = files.get(name)
        status = HTTPStatus.OK if body is not None else HTTPStatus.NOT_FOUND
        kind = mimetypes.guess_type(name)[0] or "text/html"
        if body is None:
            body, kind = files.get("404.html", _EMPTY), "text/html"
        if kind == "text/html":
            body = self._watched(body)
        charset = "; charset=utf-8" if kind.startswith("text/") else ""
        self._send(status, kind + charset, body)

    def _watched(self, body: bytes) -> bytes:
        """A page with what tells it of changes, and with the mistakes of the last run."""
        shown = self.server.shown
        told = f'<pre class="preview-told" role="alert">{escape(shown.told)}</pre>' if shown.told else ""
        added = (
            f'{told}<link rel="stylesheet" href="{OWN}preview.css">'
            f'<script src="{OWN}preview.js" data-version="{shown.version}" defer></script></body>'
        )
        return body.replace(b"</body>", added.encode(), 1)

    def _changes(self) -> None:
        """Tell of every new version until the page goes away."""
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream")
        self.send_header("Cache-Control", "no-store")
        self.send_header("Connection", "close")
        self.end_headers()
        self.close_connection = True
        seen = -1
        try:
            while not self.server.shown.closed:
                version = self.server.shown.wait(seen, _BEAT)
                self.wfile.write(f"data: {version}\n\n".encode() if version != seen else b": still here\n\n")
                self.wfile.flush()
                seen = version
        except OSError:
            return

    def _send(self, status: HTTPStatus, kind: str, body: bytes) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  # the library's own name
        """Say nothing: the terminal is for the journal's mistakes."""


_EMPTY = b"<!doctype html><title>Nothing yet</title><body><p>Nothing has been made yet.</p></body>"


def serve(journal: Path, rebuild: Rebuild, tell: Callable[[str], None], port: int = 0) -> None:
    """Serve until interrupted; `tell` is told the address, and what each run had to say."""
    from watchfiles import watch  # only the preview needs it

    shown = Shown()
    # The first turn says that watching has begun: what is saved from then on is seen, however early.
    saves = watch(journal, debounce=30, step=10, rust_timeout=200, yield_on_timeout=True, raise_interrupt=True)
    next(saves)
    built = rebuild()
    shown.take(built)
    server = Server(shown, port)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True)
    thread.start()
    tell(built.told)
    tell(f"The site is at http://127.0.0.1:{server.port}/ as long as this runs. Stop with Ctrl-C.")
    try:
        with suppress(KeyboardInterrupt):  # the way to end it
            for saved in saves:
                if saved:
                    built = rebuild()
                    shown.take(built)
                    tell(built.told)
    finally:
        shown.close()
        server.shutdown()
        server.server_close()
