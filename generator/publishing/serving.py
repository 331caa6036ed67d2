"""Serves a finished site to the browsers of this machine, as a plain host would."""

from __future__ import annotations

import os
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from io import BytesIO
from pathlib import Path
from typing import Any, BinaryIO
from urllib.parse import urlsplit

from generator.problems import Place, Problem, ProblemsFound

PORTS_TO_TRY = 20


TYPES = {
    "": "application/octet-stream",
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
}
"""Given in full, because the table of a machine may be wrong and browsers refuse a worker of a wrong type."""


class SiteServer(ThreadingHTTPServer):
    """Serves `folder` below `path` (begins and ends with `/`) on loopback, at `port` or the next free one.

    Raises ProblemsFound when none of the ports can be had.
    """

    allow_reuse_address = os.name != "nt"  # there it would share the port; elsewhere it spares a wait for an old socket
    daemon_threads = True

    def __init__(self, folder: Path, path: str, port: int) -> None:
        handler = partial(_Pages, directory=str(folder), below=path)
        last = min(port + PORTS_TO_TRY, 65536) - 1
        for candidate in range(port, last + 1):
            try:
                super().__init__(("127.0.0.1", candidate), handler)
            except OSError as fault:
                why = fault.strerror
            else:
                self.address = f"http://127.0.0.1:{self.server_port}{path}"
                return
        fault_line = f"no port from {port} to {last} can be had: {why}"
        raise ProblemsFound([Problem(Place("serve"), fault_line, "name a free one with `--port`")])


class _Pages(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # head and body go apart: each answer would wait 40 ms for the other side
    extensions_map = TYPES

    def __init__(self, *details: Any, below: str, **named: Any) -> None:  # noqa: ANN401 - handed on as they come
        self.below = below
        super().__init__(*details, **named)

    def send_head(self) -> BytesIO | BinaryIO | None:
        """The site stands below the path of its address; other paths lead there."""
        path = urlsplit(self.path).path
        if not path.startswith(self.below):
            return self._lead_to(HTTPStatus.FOUND, self.below)
        self.path = "/" + path.removeprefix(self.below).lstrip("/")
        found = Path(self.translate_path(self.path))
        if found.is_dir() and not path.endswith("/"):
            return self._lead_to(HTTPStatus.MOVED_PERMANENTLY, f"{path}/")
        return super().send_head() if (found / "index.html" if found.is_dir() else found).is_file() else self._missing()

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def log_message(self, format: str, *details: object) -> None:
        """Says nothing: who serves a site wants to read its address, not each request."""

    def _lead_to(self, status: HTTPStatus, path: str) -> BytesIO:
        self.send_response(status)
        self.send_header("Location", path)
        self.send_header("Content-Length", "0")
        self.end_headers()
        return BytesIO()

    def _missing(self) -> BytesIO:
        page = Path(self.directory) / "404.html"
        content = page.read_bytes() if page.is_file() else b"There is no such page."
        self.send_response(HTTPStatus.NOT_FOUND)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        return BytesIO(content)
