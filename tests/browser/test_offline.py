"""The copy on the phone: complete after one visit, and enough for everything from then on."""

from collections.abc import Callable
from itertools import groupby
from pathlib import Path
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser, BrowserContext

from generator.pipeline.order import Order
from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import READY, Noises, listen, offline_ready, until

STANDS_AT = "https://example.org/cone-to-cooler/"
MISSING = """async (pages) => {
  const answers = await Promise.all(pages.map((page) => fetch(page).then((it) => it.ok && it.text()).catch(() => '')));
  return pages.filter((_, at) => !answers[at] || !answers[at].includes('<h1'));
}"""
WIDTHS = """[...document.querySelectorAll('iframe')].map(({ contentDocument: page }) => (
  page.querySelector('h1') ? page.documentElement.scrollWidth : 'no title'))"""


def addresses(site: Path) -> list[str]:
    """The address of each page below the site, as the site map has it."""
    places = [place.text or "" for place in ElementTree.parse(site / "sitemap.xml").iter() if place.tag.endswith("loc")]
    return [place.removeprefix(STANDS_AT) for place in places]


def one_of_each_kind(pages: list[str]) -> list[str]:
    """Pages below one folder come from one template."""
    folders = groupby(sorted(pages), key=lambda address: address.split("/")[0])
    return [next(alike) for _, alike in folders]


def test_a_cold_start_without_signal_has_every_page(
    persistent: Callable[[], BrowserContext], host: Host, demo: Order, noises: Noises
) -> None:
    """All are there, and those of every kind start quietly."""
    phone = persistent()
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    phone.close()
    host.cut()

    phone = persistent()
    listen(phone, noises)
    page = phone.new_page()
    pages = addresses(demo.site)
    for address in one_of_each_kind(pages):
        answer = page.goto(host.address + address)
        assert answer is not None
        assert answer.status == 200, address
        assert page.locator("h1").count() == 1, address
    missing = page.evaluate(MISSING, [host.address + address for address in pages])
    assert missing == []
    assert len(pages) > 100
    assert noises == Noises()


def test_no_page_is_wider_than_the_screen(browser: Browser, shared_host: Host, demo: Order) -> None:
    """All pages side by side in frames of 360 px, as they come."""
    pages = addresses(demo.site)
    frames = (f'<iframe width="360" height="740" src="{address or "index.html"}"></iframe>' for address in pages)
    shared_host.instead["frames.html"] = f"<!doctype html>{''.join(frames)}".encode()
    context = browser.new_context(**PHONE, java_script_enabled=False)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(f"{shared_host.address}frames.html")
    widths = page.evaluate(WIDTHS)
    assert len(widths) == len(pages)
    assert {page: width for page, width in zip(pages, widths, strict=True) if width != 360} == {}
    context.close()


def test_pages_follow_each_other_without_signal_and_keep_the_program_running(
    phone: BrowserContext, host: Host, noises: Noises
) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    page.goto(host.address)  # from here on the worker answers, and the site map names this place
    host.cut()
    page.evaluate("window.stillHere = true")
    page.locator(".stop__link").nth(3).click()
    until(page, "document.querySelector('[data-list]') !== null")
    title = page.locator("h1").inner_text()
    page.locator(".bar a[aria-label^='Next']").click()
    until(page, f"!document.querySelector('h1').innerText.includes({title.split(maxsplit=1)[-1]!r})")
    assert page.evaluate("window.stillHere")
    assert page.evaluate("document.activeElement.tagName") == "H1"
    assert noises == Noises()


def test_an_unknown_address_and_one_without_its_slash(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    host.cut()
    missing = page.goto(host.address + "no/such/page")
    assert missing is not None
    assert missing.status == 404
    page.goto(host.address + "plan")
    assert page.url == host.address + "plan/"


def test_what_the_browser_dropped_is_fetched_again_and_checked(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    drop = """(async () => {
      for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) if (request.url.includes("teaching")) await cache.delete(request);
      }
    })()"""
    page.evaluate(drop)
    host.instead["look/teaching.css"] = b"/* Sign in to the hotel */"
    kept = "caches.match(location.origin + '/cone-to-cooler/look/teaching.css', {ignoreSearch: true}).then(Boolean)"
    page.goto(host.address + "about/")
    until(page, "document.querySelector('[data-offline-state]').innerText.startsWith('No: 1 of')")
    assert not page.evaluate(kept)
    del host.instead["look/teaching.css"]
    page.goto(host.address + "about/")
    until(page, kept)
    page.goto(host.address + "about/")
    until(page, "document.querySelector('[data-offline-state]').innerText.startsWith('Yes')")


def test_a_half_finished_upload_is_not_kept(phone: BrowserContext, host: Host) -> None:
    host.instead |= {"look/teaching.css": b"cut of", "kept.lzma": b"cut of"}
    page = phone.new_page()
    page.goto(host.address)
    until(page, "performance.getEntriesByType('resource').length > 10")
    until(page, "navigator.serviceWorker.getRegistration().then((it) => !it || (!it.installing && !it.active))", 20)
    assert page.evaluate("navigator.serviceWorker.controller") is None
    host.instead.clear()
    page.reload()
    offline_ready(page)


@pytest.mark.parametrize("pack", [None, b"cut of", b"\x5d\0\0\x40\0" + b"\xff" * 40])
def test_without_the_pack_all_comes_one_by_one(phone: BrowserContext, host: Host, pack: bytes | None) -> None:
    host.instead["kept.lzma"] = pack
    page = phone.new_page()
    page.goto(host.address + "about/")
    offline_ready(page)
    assert host.path + "work/scald/" in host.asked
    page.reload()
    until(page, "document.querySelector('[data-offline-state]').innerText.startsWith('Yes')")


def test_the_strip_tells_how_much_of_the_first_copy_has_come(phone: BrowserContext, host: Host) -> None:
    phone.add_init_script("""
      window.told = [];
      new MutationObserver(() => {
        const text = document.querySelector(".strip__row span")?.innerText ?? "";
        if (text !== told.at(-1)) told.push(text);
      }).observe(document, { subtree: true, childList: true, characterData: true });
    """)
    page = phone.new_page()
    host.pause = 0.05  # a page that is busy misses what comes all at once
    page.goto(host.address + "about/")
    until(page, "told.some((text) => text.startsWith('Saved:'))", 30)
    shares = [int(text.split()[-1].removesuffix("%")) for text in page.evaluate("told") if text.startswith("Saving")]
    assert shares == sorted(set(shares))
    assert len(shares) > 3, "while the pack and the papers come, not only when they are there"
    assert shares[-1] > 90, "the last may be overtaken by the word that all is saved"


def test_the_kill_switch_frees_the_phone_and_keeps_what_was_ticked(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address + "work/scald/")
    offline_ready(page)
    page.locator(".step__tick").first.click()
    until(page, "document.querySelector('.step--done') !== null")
    host.instead["worker.js"] = Path(host.folder, "worker_off.js").read_bytes()
    page.evaluate("window.before = true")
    page.evaluate("navigator.serviceWorker.getRegistration().then((it) => void it.update())")
    until(page, "!window.before && document.readyState === 'complete'", 20)
    until(page, "caches.keys().then((names) => names.length === 0)", 20)
    until(page, "navigator.serviceWorker.getRegistration().then((it) => !it)", 20)
    page.evaluate("window.stays = true")
    page.wait_for_timeout(1500)
    assert page.evaluate("window.stays"), "a page that is free is not loaded again and again"
    del host.instead["worker.js"]
    page.goto(host.address + "work/scald/")
    until(page, "document.querySelector('.step--done') !== null")


@pytest.mark.parametrize(("stands_alone", "shown"), [("false", True), ("true", False), (None, False)])
def test_an_iphones_browser_is_told_to_use_the_home_screen(
    phone: BrowserContext, shared_host: Host, stands_alone: str | None, shown: bool
) -> None:
    if stands_alone:
        phone.add_init_script(f"Object.defineProperty(navigator, 'standalone', {{value: {stands_alone}}})")
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    assert page.locator("[data-install-hint]").is_visible() == shown


@pytest.mark.parametrize(
    "broken",
    [
        "Object.defineProperty(navigator, 'serviceWorker', {value: undefined})",
        "navigator.serviceWorker.register = () => Promise.reject(new DOMException('forbidden', 'SecurityError'))",
    ],
    ids=["there are no workers, as over plain http", "workers are forbidden"],
)
def test_a_phone_that_cannot_keep_the_site_is_told(phone: BrowserContext, host: Host, broken: str) -> None:
    phone.add_init_script(broken)
    page = phone.new_page()
    page.goto(host.address)
    until(page, READY)
    row = page.locator(".strip__row", has_text="This phone cannot keep the site: it needs a signal.")
    row.wait_for()
    page.goto(host.address + "about/")
    row.wait_for()
    row.get_by_role("button", name="Seen").click()
    row.wait_for(state="hidden")
