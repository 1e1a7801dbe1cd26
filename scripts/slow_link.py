"""A static server behind one narrow link that all replies share, gzipped as web hosts do."""

from __future__ import annotations

import gzip
import threading
import time
from functools import lru_cache
from typing import NamedTuple

from static_server import Handler, Reply, Server, Site

CHUNK = 2048  # bytes; small, so that replies sent at the same time share the link
GZIP_LEVEL = 6
GZIPPED = ("text/", "application/wasm", "application/json", "application/manifest", "image/svg")


class Link(NamedTuple):
    kbit_s: int
    delay_s: float  # before each reply


LINKS = {"slow": Link(1600, 0.150), "fast": Link(10_000, 0.050)}


class Sent(NamedTuple):
    """One reply: when its request came (seconds since 1970), and the bytes of its body."""

    begun: float
    path: str
    size: int


class SlowServer(Server):
    """Serves `site` through `link`; `link = None` lifts the limits."""

    def __init__(self, site: Site, link: Link | None, port: int = 0) -> None:
        self.link = link
        self.sent: list[Sent] = []
        self._lock = threading.Lock()
        self._free_at = 0.0
        super().__init__(site, port, SlowHandler)

    def wait(self) -> None:
        if self.link:
            time.sleep(self.link.delay_s)

    def cross(self, size: int) -> None:
        """Wait until `size` bytes have crossed the link, behind all that were there before."""
        if not self.link:
            return
        with self._lock:
            now = time.monotonic()
            self._free_at = max(self._free_at, now) + size * 8 / (self.link.kbit_s * 1000)
            left = self._free_at - now
        time.sleep(left)


class SlowHandler(Handler):
    server: SlowServer

    def shape(self, reply: Reply) -> Reply:
        begun = time.time()
        self.server.wait()
        kind = reply.headers.get("Content-Type", "")
        takes = "gzip" in (self.headers["Accept-Encoding"] or "")
        if takes and reply.body and kind.startswith(GZIPPED):
            headers = reply.headers | {"Content-Encoding": "gzip", "Vary": "Accept-Encoding"}
            reply = reply._replace(headers=headers, body=gzipped(reply.body))
        self.server.sent.append(Sent(begun, self.path, len(reply.body)))
        return reply

    def deliver(self, body: bytes) -> None:
        for at in range(0, len(body), CHUNK):
            chunk = body[at : at + CHUNK]
            self.server.cross(len(chunk))
            self.wfile.write(chunk)


@lru_cache(maxsize=256)
def gzipped(body: bytes) -> bytes:
    return gzip.compress(body, GZIP_LEVEL)
