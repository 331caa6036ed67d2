"""What goes wrong on farms: sign-in pages, storage that is full, gone or rotten, clocks that are set. Nothing lies."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.browser.host import Host
from tests.browser.watching import READY, offline_ready, until

STATION = "work/scald/"
BAD = "document.querySelector('.strip__row--bad')?.innerText ?? ''"
STATE = "document.querySelector('[data-offline-state]').innerText"
SIGN_IN = b'<!doctype html><meta charset="utf-8"><title>Guests</title><form>Sign in to the hotel</form>'
SPOIL = """async () => {
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      if (!request.url.includes('/help/?')) continue;
      await cache.put(request, new Response('rotten', {headers: {'Content-Type': 'text/html'}}));
    }
  }
}"""


class _Portal(BaseHTTPRequestHandler):
    """Answers everything with its own page, as the network of a hotel or a fairground does."""

    redirects = False

    def do_GET(self) -> None:
        self.send_response(302 if self.redirects and self.path != "/portal" else 200)
        for name, value in (
            ("Location", "/portal"),
            ("Content-Type", "text/html"),
            ("Content-Length", str(len(SIGN_IN))),
        ):
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(SIGN_IN)

    def log_message(self, format: str, *details: object) -> None:
        """Quiet."""


@pytest.fixture(params=[False, True], ids=["its own page", "sends elsewhere"])
def portal(request: pytest.FixtureRequest, host: Host) -> Iterator[Callable[[], None]]:
    """Called, it lets a stranger answer at the host's address."""
    servers: list[ThreadingHTTPServer] = []

    def take_over() -> None:
        port = int(host.origin.rpartition(":")[2])
        host.cut()
        handler = type("Portal", (_Portal,), {"redirects": request.param})
        server = ThreadingHTTPServer(("127.0.0.1", port), handler)
        threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
        servers.append(server)

    yield take_over
    for server in servers:
        server.shutdown()
        server.server_close()


def _open(page: Page, address: str) -> Page:
    page.goto(address)
    until(page, READY)
    return page


def _tick(page: Page, count: int) -> None:
    page.locator(".step__tick").nth(count - 1).click()
    until(page, f"document.querySelectorAll('.step--done').length === {count}")


def test_a_sign_in_page_never_takes_the_sites_place(
    phone: BrowserContext, host: Host, portal: Callable[[], None]
) -> None:
    page = _open(phone.new_page(), host.address)
    offline_ready(page)
    portal()
    updating = (
        "navigator.serviceWorker.getRegistration().then((it) => it.update()).then(() => 'taken', () => 'refused')"
    )
    assert page.evaluate(updating) == "refused"
    for address in (STATION, "plan/", "about/"):
        _open(page, host.address + address)
        assert "hotel" not in page.content()
    until(page, f"{STATE}.startsWith('Yes')")


def test_a_rotten_file_is_found_and_fetched_again(phone: BrowserContext, host: Host) -> None:
    page = _open(phone.new_page(), host.address)
    offline_ready(page)
    page.evaluate(SPOIL)
    page.goto(host.address + "help/")
    assert page.locator("body").inner_text() == "rotten"
    _open(page, host.address + "about/")
    until(page, f"{STATE}.startsWith('Yes')")
    page.goto(host.address + "help/")
    assert page.locator("h1").count() == 1


def test_without_signal_a_rotten_file_is_told(phone: BrowserContext, host: Host) -> None:
    page = _open(phone.new_page(), host.address)
    offline_ready(page)
    page.evaluate(SPOIL)
    host.cut()
    _open(page, host.address + "about/")
    until(page, f"{STATE}.startsWith('No: 1 of')")


def test_a_copy_that_the_phone_threw_out_comes_back_with_the_signal(phone: BrowserContext, host: Host) -> None:
    page = _open(phone.new_page(), host.address)
    offline_ready(page)
    page.evaluate("caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))")
    _open(page, host.address + "about/")
    until(page, f"{STATE}.startsWith('Yes')", 30)
    host.cut()
    _open(page, host.address + STATION)


def test_a_full_phone_says_that_nothing_is_kept_and_keeps_it_once_there_is_room(
    phone: BrowserContext, shared_host: Host
) -> None:
    page = _open(phone.new_page(), shared_host.address + STATION)
    session = phone.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": shared_host.origin, "quotaSize": 1})
    _tick(page, 1)
    until(page, f"({BAD}).startsWith('NOT SAVED')")
    session.send("Storage.overrideQuotaForOrigin", {"origin": shared_host.origin})
    _tick(page, 2)
    until(page, f"({BAD}) === ''")
    page.reload()
    until(page, READY)
    assert page.locator(".step--done").count() == 2


def test_a_full_phone_never_calls_half_a_site_whole(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    session = phone.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": host.origin, "quotaSize": 100_000})
    _open(page, host.address + "about/")
    until(page, "navigator.serviceWorker.getRegistration().then((it) => !it || (!it.installing && !it.active))", 30)
    assert page.evaluate("navigator.serviceWorker.controller") is None
    assert page.evaluate(STATE).startswith("No.")
    session.send("Storage.overrideQuotaForOrigin", {"origin": host.origin})
    page.reload()
    offline_ready(page)


BROKE_OFF = "document.querySelector('.strip').innerText.includes('broke off')"


def test_a_first_copy_that_breaks_off_says_so_and_is_tried_again(phone: BrowserContext, host: Host) -> None:
    host.instead = {"kept.lzma": None, "work/pluck/": None}
    page = _open(phone.new_page(), host.address)
    until(page, BROKE_OFF, 30)
    host.instead = {}
    page.locator(".strip").get_by_role("button", name="Try again").click()
    offline_ready(page)
    until(page, f"!({BROKE_OFF})")
    host.cut()
    _open(page, host.address + "work/pluck/")


def test_a_first_copy_goes_on_when_the_signal_is_back(phone: BrowserContext, host: Host) -> None:
    host.instead = {"worker.js": None}
    page = _open(phone.new_page(), host.address)
    until(page, BROKE_OFF, 30)
    phone.set_offline(True)
    host.instead = {}
    phone.set_offline(False)
    offline_ready(page)


def _left(page: Page) -> int:
    minutes, seconds = str(until(page, "document.querySelector('.strip__row .left')?.innerText")).split(":")
    return int(minutes) * 60 + int(seconds)


def test_a_clock_set_back_does_not_make_a_timer_longer(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install(time="2026-07-18T10:00:00Z")
    _open(page, shared_host.address + STATION)
    page.locator("[data-timer]").first.click()
    before = _left(page)
    page.clock.set_system_time("2026-07-18T09:00:00Z")
    page.clock.run_for(2000)
    until(page, "document.querySelector('.strip').innerText.includes('clock was set back')")
    assert before - 5 <= _left(page) <= before


def test_a_clock_set_back_while_the_page_is_hidden_is_seen_to_once(phone: BrowserContext, shared_host: Host) -> None:
    """As in a phone's settings, behind which the page lies hidden. Of two pages one sees to it."""
    phone.add_init_script(
        "Object.defineProperty(document, 'visibilityState', { get: () => window.away ? 'hidden' : 'visible' });"
    )
    pages = [phone.new_page(), phone.new_page()]
    for page in pages:
        page.clock.install(time="2026-07-18T10:00:00Z")
        _open(page, shared_host.address + STATION)
    pages[0].locator("[data-timer]").first.click()
    before = _left(pages[0])
    until(
        pages[1], "document.querySelector('.strip__row .left')?.innerText", on_each=lambda: pages[1].clock.run_for(500)
    )
    for page in pages:
        page.evaluate("window.away = true")
        page.clock.set_system_time("2026-07-18T09:00:00Z")
        page.clock.run_for(2000)
    for page in pages:
        page.evaluate("window.away = false")
        page.clock.run_for(1000)
        page.wait_for_timeout(300)
    for page in pages:
        page.clock.run_for(1000)
        assert before - 15 <= _left(page) <= before


def test_a_clock_set_forward_rings_early_rather_than_late(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install(time="2026-07-18T10:00:00Z")
    _open(page, shared_host.address + STATION)
    page.locator("[data-timer]").first.click()
    _left(page)
    page.clock.set_system_time("2026-07-18T11:00:00Z")
    page.clock.run_for(1000)
    until(page, "document.querySelector('.alarm').open")


def test_a_clock_set_back_a_day_keeps_the_day_and_its_ticks(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install(time="2026-07-18T10:00:00Z")
    _open(page, shared_host.address + STATION)
    _tick(page, 1)
    page.clock.set_system_time("2026-07-17T10:00:00Z")
    _tick(page, 2)
    page.reload()
    until(page, READY)
    assert page.locator(".step--done").count() == 2
