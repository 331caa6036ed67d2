import socket
from collections.abc import Iterator
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from threading import Thread

import pytest

from generator.problems import ProblemsFound
from generator.publishing import serving
from generator.publishing.serving import SiteServer


@pytest.fixture
def site(tmp_path: Path) -> Path:
    for name, text in {"index.html": "front", "work/index.html": "work", "a.js": "1", "404.html": "lost"}.items():
        path = tmp_path / "site" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    (tmp_path / "site" / "bare").mkdir()
    (tmp_path / "secret").write_text("secret")
    return tmp_path / "site"


@pytest.fixture
def served(site: Path) -> Iterator[SiteServer]:
    with SiteServer(site, "/day/", free_port()) as server:
        Thread(target=server.serve_forever, args=(0.01,), daemon=True).start()
        yield server
        server.shutdown()


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def ask(server: SiteServer, path: str, method: str = "GET") -> tuple[HTTPResponse, bytes]:
    connection = HTTPConnection("127.0.0.1", server.server_port, timeout=5)
    connection.request(method, path)
    answer = connection.getresponse()
    content = answer.read()
    connection.close()
    return answer, content


@pytest.mark.parametrize(
    ("path", "status", "content"),
    [
        ("/day/", 200, b"front"),
        ("/day/work/?week=3", 200, b"work"),
        ("/day/a.js", 200, b"1"),
        ("/day/nothing", 404, b"lost"),
        ("/day/bare/", 404, b"lost"),
        ("/day/../../secret", 404, b"lost"),
        ("/day/%2e%2e/secret", 404, b"lost"),
    ],
)
def test_what_each_path_gives(served: SiteServer, path: str, status: int, content: bytes) -> None:
    answer, got = ask(served, path)
    assert (answer.status, got) == (status, content)


@pytest.mark.parametrize(("path", "leads_to"), [("/", "/day/"), ("/other/", "/day/"), ("/day/work", "/day/work/")])
def test_where_each_path_leads(served: SiteServer, path: str, leads_to: str) -> None:
    answer, _ = ask(served, path)
    assert answer.status in (301, 302)
    assert answer.headers["Location"] == leads_to


def test_a_program_has_the_type_that_browsers_ask_for(served: SiteServer) -> None:
    assert ask(served, "/day/a.js")[0].headers["Content-Type"] == "text/javascript; charset=utf-8"


def test_head_has_no_body(served: SiteServer) -> None:
    answer, content = ask(served, "/day/nothing", "HEAD")
    assert (answer.status, content, answer.headers["Content-Length"]) == (404, b"", "4")


def test_only_this_machine_is_served(served: SiteServer) -> None:
    assert served.server_address[0] == "127.0.0.1"


def test_a_taken_port_moves_on_to_the_next(site: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with SiteServer(site, "/", port) as server:
            assert server.server_port > port
            assert server.address == f"http://127.0.0.1:{server.server_port}/"


def test_when_all_ports_are_taken_one_line_says_so(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(serving, "PORTS_TO_TRY", 1)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(ProblemsFound) as found:
            SiteServer(site, "/", port)
    (problem,) = found.value.problems
    assert problem.fault == f"no port from {port} to {port} can be had: Address already in use"
    assert problem.hint == "name a free one with `--port`"
