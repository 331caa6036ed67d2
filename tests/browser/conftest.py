"""Chromium over the finished site, from a host on loopback that can be cut off. Playwright's sync interface.

`evaluate` counts as a touch, and `wait_for_function` needs eval, which the site forbids: use watching.until.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Page, Playwright, sync_playwright

from generator.pipeline.order import Order
from tests.browser.host import Host
from tests.browser.watching import Noises, listen

NAMES = (
    "chromium-headless-shell",
    "chromium",
    "chromium-browser",
    "google-chrome",
    "microsoft-edge",
    "msedge",
    "chrome",
)
INSTALLED = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    "$PROGRAMFILES/Google/Chrome/Application/chrome.exe",
    "${PROGRAMFILES(X86)}/Microsoft/Edge/Application/msedge.exe",
)
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2}


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def executable(playwright: Playwright) -> str:
    """What the variable CHROMIUM names, else one on the path, else Playwright's, else an installed Chrome or Edge."""
    asked = shutil.which(os.environ.get("CHROMIUM", ""))
    own = playwright.chromium.executable_path
    places = (*filter(None, (asked, *map(shutil.which, NAMES))), own, *map(os.path.expandvars, INSTALLED))
    found = next((place for place in places if Path(place).exists()), None)
    return found or pytest.fail("install Chrome, Edge or Chromium for these tests")


@pytest.fixture(scope="session")
def browser(playwright: Playwright, executable: str) -> Iterator[Browser]:
    running = playwright.chromium.launch(executable_path=executable, args=FLAGS)
    yield running
    running.close()


@pytest.fixture(scope="session")
def shared_host(demo: Order) -> Iterator[Host]:
    """One host for all tests that only read. Never cut it."""
    host = Host(demo.site)
    yield host
    host.cut()


@pytest.fixture
def host(demo: Order, tmp_path: Path) -> Iterator[Host]:
    """A host and a copy of the site of a test's own, to cut off and to change."""
    folder = Path(shutil.copytree(demo.site, tmp_path / "site"))
    host = Host(folder)
    yield host
    host.cut()


@pytest.fixture
def noises() -> Noises:
    return Noises()


@pytest.fixture
def phone(request: pytest.FixtureRequest, browser: Browser, noises: Noises) -> Iterator[BrowserContext]:
    """A phone of 390 by 844, fresh, in which foreign requests and page errors are written down.

    It takes a copy of the whole site only from a host of the test's own: that takes seconds, and has a use where a
    host can be cut.
    """
    workers = "allow" if "host" in request.fixturenames else "block"
    context = browser.new_context(**PHONE, service_workers=workers)  # type: ignore[arg-type]
    listen(context, noises)
    yield context
    context.close()


@pytest.fixture
def page(phone: BrowserContext) -> Page:
    return phone.new_page()


@pytest.fixture
def persistent(playwright: Playwright, executable: str, tmp_path: Path) -> Iterator[Callable[[], BrowserContext]]:
    """Starts a phone that keeps its storage from one start to the next, as a real one does."""
    started: list[BrowserContext] = []

    def start() -> BrowserContext:
        folder = str(tmp_path / "profile")
        context = playwright.chromium.launch_persistent_context(folder, executable_path=executable, args=FLAGS, **PHONE)
        started.append(context)
        return context

    yield start
    for context in started:
        with suppress(Error):  # a test may have killed it
            context.close()
