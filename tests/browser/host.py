"""A static host on loopback, as a farm would rent one, that can be cut off, slowed and tampered with."""

from __future__ import annotations

import gzip
import mimetypes
import socket
import threading
import time
from contextlib import suppress
from functools import lru_cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

mimetypes.add_type("text/javascript", ".js")
mimetypes.add_type("application/manifest+json", ".webmanifest")
mimetypes.add_type("font/woff2", ".woff2")
_PIECE = 1 << 16
COMPRESSED = {".html", ".js", ".css", ".json", ".xml", ".svg", ".webmanifest", ".txt"}


class Host:
    """Serves `folder` below `path`. `asked` lists what was asked for; `instead` maps a path to other bytes, or to None.

    `cut()` closes the listening socket and every open connection, so that nothing answers; `restore()` undoes it.
    """

    def __init__(self, folder: Path, path: str = "/cone-to-cooler/") -> None:
        self.folder = folder
        self.path = path
        self.asked: list[str] = []
        self.pause = 0.0
        """Seconds after each piece of an answer, as on a slow line."""
        self.sent: dict[str, int] = {}
        """Bytes of each answer's body as sent, by path below the site."""
        self.instead: dict[str, bytes | None] = {}
        self._connections: set[socket.socket] = set()
        self._port = 0
        self._server: ThreadingHTTPServer | None = None
        self.restore()

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self._port}{self.path}"

    @property
    def origin(self) -> str:
        return f"http://127.0.0.1:{self._port}"

    def restore(self) -> None:
        if self._server is None:
            self._server = _Server(("127.0.0.1", self._port), self)
            self._port = self._server.server_port
            threading.Thread(target=self._server.serve_forever, args=(0.02,), daemon=True).start()

    def cut(self) -> None:
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server = None
        for connection in tuple(self._connections):
            with suppress(OSError):
                connection.shutdown(socket.SHUT_RDWR)
            connection.close()
        self._connections.clear()

    def find(self, path: str) -> tuple[bytes, str] | str | None:
        """The bytes and type at a path of the origin; a path to go on to; None where there is nothing."""
        if not path.startswith(self.path):
            return None
        name = unquote(path.removeprefix(self.path))
        if name in self.instead:
            content = self.instead[name]
            return None if content is None else (content, _type(Path(name or "index.html")))
        file = self.folder / name
        if file.is_dir():
            if name and not name.endswith("/"):
                return f"{path}/"
            file /= "index.html"
        return (file.read_bytes(), _type(file)) if file.is_file() else None

    def join(self, connection: socket.socket) -> None:
        self._connections.add(connection)


class _Server(ThreadingHTTPServer):
    daemon_threads = True
    allow_reuse_address = True
    request_queue_size = 64

    def __init__(self, address: tuple[str, int], host: Host) -> None:
        self.host = host
        super().__init__(address, _Answer)

    def process_request(self, request: socket.socket, client_address: object) -> None:  # type: ignore[override]
        self.host.join(request)
        super().process_request(request, client_address)  # type: ignore[arg-type]

    def handle_error(self, request: object, client_address: object) -> None:
        """A connection that was cut on purpose is no error."""


class _Answer(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # head and body go apart: each answer would wait 40 ms for the other side
    server: _Server

    def do_GET(self) -> None:
        host, path = self.server.host, urlsplit(self.path).path
        host.asked.append(path)
        found = host.find(path)
        if isinstance(found, str):
            self._send(301, b"", "text/plain", location=found)
        elif found is None:
            missing = host.folder / "404.html"
            self._send(404, missing.read_bytes() if missing.is_file() else b"", "text/html; charset=utf-8")
        else:
            self._send(200, *found)

    def _send(self, status: int, content: bytes, kind: str, location: str = "") -> None:
        host, path = self.server.host, urlsplit(self.path).path
        self.send_response(status)
        if "gzip" in self.headers.get("Accept-Encoding", "") and kind.split(";")[0] in _COMPRESSED_TYPES:
            content = _compressed(content)
            self.send_header("Content-Encoding", "gzip")
        for name, value in (("Content-Type", kind), ("Cache-Control", "no-cache"), ("Location", location)):
            if value:
                self.send_header(name, value)
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        for start in range(0, len(content), _PIECE):
            self.wfile.write(content[start : start + _PIECE])
            time.sleep(host.pause)
        host.sent[path.removeprefix(host.path)] = len(content)

    def log_message(self, format: str, *details: object) -> None:
        """Quiet."""


def _type(file: Path) -> str:
    kind = mimetypes.guess_type(file.name)[0] or "application/octet-stream"
    return f"{kind}; charset=utf-8" if kind.startswith("text/") else kind


@lru_cache(maxsize=1000)
def _compressed(content: bytes) -> bytes:
    """Each phone of each test asks for the same files."""
    return gzip.compress(content, 6, mtime=0)


_COMPRESSED_TYPES = {_type(Path(f"x{ending}")).split(";")[0] for ending in COMPRESSED}
