"""The host that the other tests rely on: what cannot be cut off proves nothing about being offline."""

import gzip
from http.client import HTTPConnection
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import pytest

from tests.browser.host import Host


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "work").mkdir()
    (tmp_path / "work/index.html").write_text("a page, a page, a page")
    (tmp_path / "404.html").write_text("lost")
    return tmp_path


def test_what_it_serves(folder: Path) -> None:
    host = Host(folder)
    with urlopen(host.address + "work") as answer:
        assert answer.url == host.address + "work/"
        assert answer.read() == b"a page, a page, a page"
    with urlopen(Request(host.address + "work/", headers={"Accept-Encoding": "gzip"})) as answer:
        assert gzip.decompress(answer.read()) == b"a page, a page, a page"
    with pytest.raises(HTTPError, match="404") as missing:
        urlopen(host.address + "nothing")
    missing.value.close()
    host.cut()


def test_a_cut_ends_open_connections_too_and_is_undone(folder: Path) -> None:
    host = Host(folder)
    address = host.address
    kept_open = HTTPConnection("127.0.0.1", int(address.split(":")[2].split("/")[0]), timeout=5)
    kept_open.request("GET", "/cone-to-cooler/work/")
    assert kept_open.getresponse().read() == b"a page, a page, a page"
    host.cut()
    with pytest.raises(OSError):
        kept_open.request("GET", "/cone-to-cooler/work/")
        kept_open.getresponse()
    kept_open.close()
    with pytest.raises(OSError):
        urlopen(address + "work/", timeout=5)
    host.restore()
    assert host.address == address
    with urlopen(address + "work/") as answer:
        assert answer.status == 200
    host.cut()


def test_it_can_be_tampered_with(folder: Path) -> None:
    host = Host(folder)
    host.instead = {"work/": b"another", "gone": None}
    with urlopen(host.address + "work/") as answer:
        assert answer.read() == b"another"
    with pytest.raises(HTTPError) as missing:
        urlopen(host.address + "gone")
    missing.value.close()
    assert host.asked == ["/cone-to-cooler/work/", "/cone-to-cooler/gone"]
    host.cut()
