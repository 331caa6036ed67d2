"""The finished site in the engines of other phones. Each test's host has a port of its own, and so an empty storage.

Where an engine is not installed its tests are skipped and say what to install.
"""

from __future__ import annotations

import json
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Protocol

import pytest

from generator.pipeline.order import Order
from tests.browser.host import Host
from tests.browser.watching import READY
from tests.engines import firefox, webkit

IN_CHARGE = "navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null)"


class Engine(Protocol):
    """A window that a test drives. `run` gives the value of an expression, or what its promise comes to."""

    def open(self, address: str) -> None: ...
    def run(self, expression: str) -> Any: ...
    def click(self, selector: str) -> None: ...
    def type(self, selector: str, text: str) -> None: ...


@pytest.fixture(scope="module", params=["webkit", "firefox"])
def engine(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    missing = {"webkit": webkit.MISSING, "firefox": firefox.MISSING}[request.param]
    if missing:
        pytest.skip(f"{request.param}: {missing}")
    profile = tmp_path_factory.mktemp("firefox") / "profile"
    window = webkit.WebKit() if request.param == "webkit" else firefox.Firefox(profile)
    yield window
    window.close()


@pytest.fixture
def host(demo: Order, tmp_path: Path) -> Iterator[Host]:
    host = Host(Path(shutil.copytree(demo.site, tmp_path / "site")))
    yield host
    host.cut()


def until(engine: Engine, expression: str, seconds: float = 20) -> Any:
    """The first truthy value of an expression of the page; fails after `seconds`."""
    end = time.monotonic() + seconds
    while not (answer := engine.run(expression)):
        assert time.monotonic() < end, f"never true: {expression}"
        time.sleep(0.05)
    return answer


def visit(engine: Engine, address: str) -> None:
    engine.open(address)
    until(engine, f"location.href === {json.dumps(address)} && {READY}")


def keep_offline(engine: Engine, host: Host) -> None:
    """A first visit, until the worker has everything and answers for the host; which then goes away."""
    visit(engine, host.address)
    until(engine, IN_CHARGE, 40)
    host.cut()
