"""A small server for dist/: the right media types and the security headers, on 127.0.0.1 only."""

import http.server
import io
import os
import re
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache, partial
from pathlib import Path
from typing import BinaryIO

from making.paths import DIST
from making.policy import (
    ANCESTORS,
    ASK_FIRST,
    EMBEDDED,
    FOR_EVER,
    HASHED,
    HEADERS,
    NOT_FOUND,
    PAGE_POLICY,
    PERMISSIONS,
    POLICY,
    permissions,
)  # fmt: skip
from making.progress import BuildError, say

MEDIA_TYPES = {
    "": "application/octet-stream",
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".zip": "application/zip",
}


@lru_cache(maxsize=8)
def framing_of(folder: Path) -> str:
    """Who may frame the pages for embedding of a built site, as its `_headers` say; "" if it has none."""
    rules = folder / "_headers"
    text = rules.read_text("utf-8") if rules.exists() else ""
    found = re.search(rf"^/{EMBEDDED}.*\n(?:  .*\n)*?  {POLICY}: {ANCESTORS} (.+)$", text, re.MULTILINE)
    return found[1] if found else ""


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves files with the headers that `_headers` asks of a host; lists no folder and logs nothing."""

    protocol_version = "HTTP/1.1"
    extensions_map = MEDIA_TYPES
    disable_nagle_algorithm = True
    """Or else a body waits until its headers are acknowledged: 40 ms for every file of a connection but the first."""

    def end_headers(self) -> None:
        """Add the security headers to every response, errors included."""
        framed = framing_of(Path(self.directory)) if self.path.startswith(f"/{EMBEDDED}") else ""
        folder = self.path.partition("?")[0].strip("/")
        for name, value in {**HEADERS, PERMISSIONS: permissions(folder)}.items():
            self.send_header(name, f"{PAGE_POLICY}; {ANCESTORS} {framed}" if framed and name == POLICY else value)
        hashed = self.path.lstrip("/").startswith(tuple(f"{folder}/" for folder in HASHED))
        self.send_header("Cache-Control", FOR_EVER if hashed else ASK_FIRST)
        super().end_headers()

    def send_head(self) -> io.BytesIO | BinaryIO | None:
        """Send the compressed copy beside a file, if there is one and the browser takes it."""
        packed = self._packed()
        if packed is None:
            return super().send_head()
        path, encoding = packed
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path.with_suffix(""))))
        self.send_header("Content-Encoding", encoding)
        self.send_header("Content-Length", str(path.stat().st_size))
        self.send_header("Vary", "Accept-Encoding")
        self.end_headers()
        return path.open("rb")

    def _packed(self) -> tuple[Path, str] | None:
        """The compressed copy to send and its encoding; None when the file goes as it is."""
        path = Path(self.translate_path(self.path))
        if path.is_dir():
            if not self.path.partition("?")[0].endswith("/"):
                return None  # the address is put right first
            path /= "index.html"
        taken = {coding.partition(";")[0].strip() for coding in self.headers.get("Accept-Encoding", "").split(",")}
        for ending, encoding in ((".br", "br"), (".gz", "gzip")):
            copy = path.with_name(path.name + ending)
            if encoding in taken and copy.is_file():
                return copy, encoding
        return None

    def copyfile(self, source: BinaryIO, outputfile: BinaryIO) -> None:  # type: ignore[override]
        """Let the server send a file: one of them is slow on purpose."""
        assert isinstance(self.server, Server)
        self.server.send(source, outputfile)

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Send the site's own page for an address that has none, as hosts do."""
        page = Path(self.directory) / NOT_FOUND
        if code != http.HTTPStatus.NOT_FOUND or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", MEDIA_TYPES[".html"])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def list_directory(self, path: str | os.PathLike[str]) -> None:
        """Refuse: a folder without index.html is not a page."""
        self.send_error(404, "There is no page at this address")

    def log_request(self, code: object = "-", size: object = "-") -> None:
        """Let the server note the request, instead of writing it to the terminal."""
        if isinstance(self.server, Server):
            self.server.note(self.path)

    def log_message(self, format: str, *args: object) -> None:
        """Stay quiet: the terminal shows the address, and no requests."""


class Server(http.server.ThreadingHTTPServer):
    """One thread for each request, ended with the process."""

    daemon_threads = True

    def note(self, path: str) -> None:
        """Hear of one request; this server keeps no record."""

    def send(self, source: BinaryIO, target: BinaryIO) -> None:
        """Send a file's contents."""
        shutil.copyfileobj(source, target)

    def handle_error(self, request: object, client_address: object) -> None:
        """Ignore a browser that goes away in the middle of a response."""


def make_server(folder: Path, port: int = 0, kind: type[Server] = Server) -> Server:
    """A server for `folder` on 127.0.0.1; port 0 takes a free one, to be read from `server_port`.

    Raises BuildError when the port is taken.
    """
    try:
        return kind(("127.0.0.1", port), partial(Handler, directory=str(folder)))
    except OSError as error:
        raise BuildError(f"port {port} cannot be used ({error.strerror}): choose another with --port.") from error


@contextmanager
def serving(folder: Path, kind: type[Server] = Server) -> Iterator[str]:
    """Serve `folder` on a free port while the block runs; gives the address, ending in a slash."""
    server = make_server(folder, kind=kind)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def serve_until_stopped(port: int) -> int:
    """Serve dist/ until Ctrl+C; gives the exit code."""
    with make_server(DIST, port) as server:
        say(f"Phasor Folio is at http://127.0.0.1:{server.server_port}/ (Ctrl+C stops it)")
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            say("stopped")
    return 0
