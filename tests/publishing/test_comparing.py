import shutil
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest

from generator.problems import ProblemsFound
from generator.publishing.comparing import compare_with_host
from generator.publishing.serving import TYPES, SiteServer


@pytest.fixture
def built(tmp_path: Path) -> Path:
    for name in ("index.html", "deep page/index.html", "worker.js"):
        path = tmp_path / "built" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(name)
    return tmp_path / "built"


@pytest.fixture
def published(built: Path) -> Path:
    return Path(shutil.copytree(built, built.parent / "published"))


@pytest.fixture
def address(published: Path) -> Iterator[str]:
    with SiteServer(published, "/day/", 18000) as server:
        Thread(target=server.serve_forever, args=(0.01,), daemon=True).start()
        yield server.address
        server.shutdown()


def findings(site: Path, address: str) -> list[str]:
    with pytest.raises(ProblemsFound) as found:
        compare_with_host(site, address)
    return [f"{problem.place}: {problem.fault}" for problem in found.value.problems]


def test_a_true_copy_passes(built: Path, address: str) -> None:
    assert compare_with_host(built, address) == 3
    assert compare_with_host(built, address.rstrip("/")) == 3


def test_each_difference_is_named(built: Path, published: Path, address: str) -> None:
    (published / "worker.js").write_text("old")
    (published / "deep page/index.html").unlink()
    assert findings(built, address) == [
        f"{address}deep%20page/: answers 404",
        f"{address}worker.js: differs from what was built",
    ]


def test_a_wrong_type_is_named(built: Path, address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(TYPES, ".js", "text/plain")
    assert findings(built, address) == [f"{address}worker.js: is declared as `text/plain`"]


@pytest.mark.parametrize(("own", "said"), [("/day/", ""), ("/night/", "the site was built to stand at `/night/`")])
def test_it_stands_where_it_was_built_for(built: Path, published: Path, address: str, own: str, said: str) -> None:
    for folder in (built, published):
        (folder / "manifest.webmanifest").write_text(f'{{"id": "{own}"}}')
    if said:
        assert findings(built, address) == [f"{address}: {said}"]
    else:
        assert compare_with_host(built, address) == 4


@pytest.mark.parametrize(
    ("written", "fault"),
    [
        ("http://farm.example/", "without https no phone keeps the site offline"),
        ("farm.example", "is not the address of a site"),
        ("ftp://farm.example/", "is not the address of a site"),
        ("https://[x/", "is not the address of a site"),
        ("https://my farm/", "is not the address of a site"),
        ("https://farm.example:abc/", "is not the address of a site"),
        ("https://farm.example:99999/", "is not the address of a site"),
        ("https://farm.example/h\u00f6fe/", "is not the address of a site"),
        ("https://farm.example/\n", "is not the address of a site"),
    ],
)
def test_addresses_that_cannot_be_right(built: Path, written: str, fault: str) -> None:
    assert findings(built, written) == [f"{written}: {fault}"]


def test_a_host_that_does_not_answer(built: Path) -> None:
    """One line says so, not one for each file."""
    (said,) = findings(built, "http://127.0.0.1:9/")
    assert said.startswith("http://127.0.0.1:9/: cannot be reached: ")


class Broken(BaseHTTPRequestHandler):
    """Announces more bytes than it sends, or sends on to where nobody can go."""

    def do_GET(self) -> None:
        if "worker" in self.path:
            self.send_response(302)
            self.send_header("Location", "https://[x/")
        else:
            self.send_response(200)
            self.send_header("Content-Length", "1000")
        self.end_headers()
        self.wfile.write(b"half")

    def log_message(self, *_: object) -> None:
        pass


def test_answers_that_cannot_be_read_are_named(built: Path) -> None:
    with ThreadingHTTPServer(("127.0.0.1", 0), Broken) as server:
        Thread(target=server.serve_forever, args=(0.01,), daemon=True).start()
        base = f"http://127.0.0.1:{server.server_port}/"
        said = findings(built, base)
        server.shutdown()
    assert said == [
        f"{base}: answers what cannot be read: IncompleteRead(4 bytes read, 996 more expected)",
        f"{base}deep%20page/: answers what cannot be read: IncompleteRead(4 bytes read, 996 more expected)",
        f"{base}worker.js: answers what cannot be read: Invalid IPv6 URL",
    ]


class Tidy(BaseHTTPRequestHandler):
    """A host that likes its addresses without endings, and one that knows files but no folders."""

    knows_folders = True

    def do_GET(self) -> None:
        self.close_connection = True
        shorter = {"/404.html": "/404", "/index.html": "/"}.get(self.path)
        there = {"/": "front", "/404": "missing", "/plan/": "plan"}.get(self.path)
        if not self.knows_folders and self.path.endswith("/"):
            there = None
        self.send_response(308 if shorter else 200 if there else 403)
        self.send_header("Location" if shorter else "Content-Type", shorter or "text/html")
        self.end_headers()
        self.wfile.write((there or "").encode())

    def log_message(self, *_: object) -> None:
        pass


@pytest.mark.parametrize(
    ("knows_folders", "faults"),
    [
        (True, ["{base}404.html: sends on to {base}404"]),
        (False, ["{base}: answers 403", "{base}404.html: sends on to {base}404", "{base}plan/: answers 403"]),
    ],
)
def test_addresses_are_asked_for_as_phones_do(tmp_path: Path, knows_folders: bool, faults: list[str]) -> None:
    """Which refuse what was sent on, and ask for a page by its folder."""
    for name, text in (("index.html", "front"), ("404.html", "missing"), ("plan/index.html", "plan")):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text)
    handler = type("Host", (Tidy,), {"knows_folders": knows_folders})
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        Thread(target=server.serve_forever, args=(0.01,), daemon=True).start()
        base = f"http://127.0.0.1:{server.server_port}/"
        said = findings(tmp_path, base)
        server.shutdown()
    assert said == [fault.format(base=base) for fault in faults]


def test_without_a_build_it_says_what_to_do(tmp_path: Path) -> None:
    assert findings(tmp_path, "https://farm.example/") == [f"{tmp_path}: holds no site"]
