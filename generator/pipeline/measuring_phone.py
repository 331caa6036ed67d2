"""How long a phone takes to answer, on a processor slowed down six times. The machine must be quiet."""

from __future__ import annotations

import json
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from generator.publishing.serving import SiteServer
from generator.rendering.manifest import FILE

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

SLOWER = 6
FEW, MANY = 4, 5000
SETTLED = 1500
"""Milliseconds after which a page has fetched what it wants."""
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome", "chromium-headless-shell")
PAGES = ("", "plan/", "shop/", "crew/", "day/", "numbers/")
HEARD = """
heard = [];
BroadcastChannel = class extends BroadcastChannel { constructor(name) { super(name); heard.push(this); } };
"""
"""Lets a page be told what another window changed."""
SCRIPT = Path(__file__).with_suffix(".js").read_text(encoding="utf-8")
TAPS = {
    "nothing": "Anything at all comes to disk",
    "ticked": "A step is ticked",
    "opened": "A reading is opened",
    "kept": "A reading is kept",
}

Figures = dict[str, float]


def measure_phone(site: Path) -> Figures:
    """Milliseconds of taps and changes on the finished site, with what the same phone takes for nothing but the like.

    Nothing where the browser's driver, which only the tests need, is missing.
    """
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        return {}
    with _served(site) as address, sync_playwright() as driver:
        executable = next(filter(None, map(shutil.which, BROWSERS)), None)
        browser = driver.chromium.launch(executable_path=executable, args=["--no-sandbox", "--disable-gpu"])
        figures = _changes(browser, address, site) | _taps(browser, address, site)
        browser.close()
    return figures


def _changes(browser: Browser, address: str, site: Path) -> Figures:
    """A changed plan, on the slowest of a few pages, and one word changed there; then a step in a field of the plan."""
    page = _open(browser)
    page.add_init_script(HEARD)
    _slow_down(page)
    found = []
    for name in (*PAGES, *_numbers(site), *filter(None, [_working(site)])):
        page.goto(address + name)
        page.wait_for_timeout(SETTLED)
        found.append(_run(page, "repaint", address))
    page.goto(f"{address}plan/")
    page.wait_for_timeout(SETTLED)
    stepped = _run(page, "steps")
    page.context.close()
    slowest = max(found, key=lambda each: float(each["plan"]["seen"]))
    first, others = stepped["first"], stepped["others"]
    return {
        "A changed plan is computed and written, ms": round(max(each["plan"]["written"] for each in found), 1),
        "A changed plan is laid out, ms": round(slowest["plan"]["seen"], 1),
        "A changed plan is painted, ms": round(slowest["plan"]["whole"], 1),
        "One word changed on the same page is painted, ms": round(slowest["word"]["whole"], 1),
        "A piece of what is off the screen, a moment later, ms": round(max(each["plan"]["rest"] for each in found), 1),
        "A step in a field of the plan is computed and written, ms": round(others["written"], 1),
        "A step in a field of the plan is laid out, ms": round(others["seen"], 1),
        "A step in a field of the plan is painted, ms": round(others["whole"], 1),
        "The first step after the page opened is computed and written, ms": round(first["written"], 1),
        "The first step after the page opened is laid out, ms": round(first["seen"], 1),
    }


def _taps(browser: Browser, address: str, site: Path) -> Figures:
    """Taps on the largest page on which steps are ticked and something is read, in a young and in an old record."""
    name = _working(site)
    if not name:
        return {}
    figures: Figures = {}
    for entries in (FEW, MANY):
        page = _open(browser)
        page.goto(address + name)
        _run(page, "fill", entries)
        page.reload()
        page.wait_for_timeout(SETTLED)
        _slow_down(page)
        taken = _run(page, "taps")
        figures |= {f"{TAPS[what]}, {entries} entries, ms": round(time, 1) for what, time in taken.items()}
        page.context.close()
    return figures


def _run(page: Page, name: str, *given: object) -> Any:  # noqa: ANN401 - figures, or nothing
    """What a function of the script gives in the page."""
    return page.evaluate(f"(given) => {SCRIPT.strip()}.{name}(...given)", given)


def _open(browser: Browser) -> Page:
    return browser.new_context(viewport={"width": 390, "height": 844}, service_workers="block").new_page()


def _slow_down(page: Page) -> None:
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


@contextmanager
def _served(site: Path) -> Iterator[str]:
    path = json.loads((site / FILE).read_text(encoding="utf-8"))["id"]
    server = SiteServer(site, path, 8700)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield server.address
    finally:
        server.shutdown()
        server.server_close()


def _numbers(site: Path) -> list[str]:
    """The page of numbers with the most to repaint."""
    pages = sorted((site / "numbers").glob("*/index.html"), key=lambda file: file.stat().st_size)
    return [f"numbers/{pages[-1].parent.name}/"] if pages else []


def _working(site: Path) -> str | None:
    pages = sorted((site / "work").glob("*/index.html"), key=lambda file: -file.stat().st_size)
    texts = ((file, file.read_text(encoding="utf-8")) for file in pages)
    return next(
        (f"work/{file.parent.name}/" for file, text in texts if "data-list=" in text and "data-reading=" in text), None
    )
