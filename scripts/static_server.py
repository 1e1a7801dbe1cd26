"""A small static server on the loopback address, with the types and replies of a plain web host."""

from __future__ import annotations

import errno
import hashlib
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import NamedTuple
from urllib.parse import quote, unquote, urlsplit

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".ics": "text/calendar; charset=utf-8",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".map": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".webp": "image/webp",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
    ".zip": "application/zip",
}


class Reply(NamedTuple):
    status: HTTPStatus
    headers: dict[str, str]
    body: bytes


class Site:
    """A folder of finished pages."""

    def __init__(self, folder: Path, cache: str = "no-cache") -> None:
        self.folder = folder.resolve()
        self.cache = cache

    def reply(self, path: str, known: str | None) -> Reply:
        """What a host answers for an address path; `known` is the tag the browser holds."""
        inner = unquote(path).strip("/")
        if "\0" in inner:
            return self._missing()
        file = (self.folder / inner).resolve()
        if not file.is_relative_to(self.folder):
            return self._missing()
        if file.is_dir():
            if not path.endswith("/"):
                headers = {"Location": quote(f"/{inner}/")}
                return Reply(HTTPStatus.MOVED_PERMANENTLY, headers, b"")
            file /= "index.html"
        elif path.endswith("/"):
            return self._missing()
        if not file.is_file():
            return self._missing()
        body = file.read_bytes()
        tag = '"' + hashlib.sha256(body).hexdigest()[:20] + '"'
        headers = {"ETag": tag, "Cache-Control": self.cache, "Content-Type": type_of(file)}
        if known == tag:
            return Reply(HTTPStatus.NOT_MODIFIED, headers, b"")
        return Reply(HTTPStatus.OK, headers, body)

    def _missing(self) -> Reply:
        page = self.folder / "404.html"
        body = page.read_bytes() if page.is_file() else b"Not found\n"
        headers = {"Content-Type": TYPES[".html" if page.is_file() else ".txt"]}
        return Reply(HTTPStatus.NOT_FOUND, headers, body)


def type_of(file: Path) -> str:
    if file.name == "manifest.json":
        return TYPES[".webmanifest"]
    return TYPES.get(file.suffix, "application/octet-stream")


class Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    server: Server

    def do_GET(self) -> None:
        self.send(self.shape(self.find()), self.deliver)

    def do_HEAD(self) -> None:
        self.send(self.shape(self.find()), lambda body: None)

    def find(self) -> Reply:
        return self.server.site.reply(urlsplit(self.path).path, self.headers["If-None-Match"])

    def shape(self, reply: Reply) -> Reply:
        """The reply as it crosses the wire."""
        return reply

    def send(self, reply: Reply, deliver: Callable[[bytes], None]) -> None:
        self.send_response(reply.status)
        for name, value in reply.headers.items():
            self.send_header(name, value)
        if reply.status != HTTPStatus.NOT_MODIFIED:
            self.send_header("Content-Length", str(len(reply.body)))
        self.end_headers()
        deliver(reply.body)

    def deliver(self, body: bytes) -> None:
        self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Quiet: the terminal is for the address."""


class Server(ThreadingHTTPServer):
    daemon_threads = True

    def __init__(self, site: Site, port: int, handler: type[Handler] = Handler) -> None:
        self.site = site
        super().__init__(("127.0.0.1", port), handler)

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.server_port}/"

    def handle_error(self, request: object, client_address: object) -> None:
        """Quiet: a browser that goes away early is no error."""


def listen(site: Site, port: int) -> Server:
    """A server on this port or, if it is taken, on any free one."""
    try:
        return Server(site, port)
    except OSError as problem:
        if problem.errno != errno.EADDRINUSE:
            raise
        return Server(site, 0)


@contextmanager
def running[S: Server](server: S) -> Iterator[S]:
    """The server answers in the background until the block ends."""
    threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
    try:
        yield server
    finally:
        server.shutdown()
        server.server_close()
