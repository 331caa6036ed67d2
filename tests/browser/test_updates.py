"""A new version waits until nobody is in the middle of something, and is taken only when asked for."""

import re
from pathlib import Path

from playwright.sync_api import BrowserContext, Page

from tests.browser.host import Host
from tests.browser.watching import READY, offline_ready, until

STATION = "work/scald/"
OFFERED = "[...document.querySelectorAll('.strip__row button')].some((it) => it.innerText === 'Update')"


def publish(host: Host, mark: str) -> None:
    """A new version: one page says something else, and the worker's list has its new hash."""
    from generator.publishing.keeping import kept_files

    page = Path(host.folder, "about/index.html")
    old = kept_files(host.folder)["about/"]
    page.write_text(page.read_text().replace("</h1>", f" {mark}</h1>", 1))
    worker = Path(host.folder, "worker.js")
    text = worker.read_text().replace(old, kept_files(host.folder)["about/"])
    worker.write_text(re.sub(r'const version = "\w+"', f'const version = "{mark}"', text))


def _look_for_updates(page: Page) -> None:
    page.evaluate("navigator.serviceWorker.getRegistration().then((it) => void it.update())")
    until(page, "navigator.serviceWorker.getRegistration().then((it) => Boolean(it.waiting))", 20)


def test_an_update_waits_for_a_running_list_and_is_taken_on_a_tap(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address + STATION)
    offline_ready(page)
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    publish(host, "second")
    _look_for_updates(page)
    page.wait_for_timeout(2500)
    assert not page.evaluate(OFFERED)

    page.locator(".step__tick").first.click()
    until(page, OFFERED)
    with page.expect_navigation():
        page.locator(".strip__row button", has_text="Update").click()
    host.cut()
    page.goto(host.address + "about/")
    assert page.locator("h1").inner_text().endswith("second")


def test_an_update_waits_for_a_running_timer(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address + STATION)
    offline_ready(page)
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.strip__row .left').innerText !== ''")
    publish(host, "second")
    _look_for_updates(page)
    page.wait_for_timeout(2500)
    assert not page.evaluate(OFFERED)
    page.locator(".strip__row button", has_text="End").click()
    until(page, OFFERED)


def test_half_of_an_upload_leaves_the_version_that_is_whole(phone: BrowserContext, host: Host) -> None:
    """The new worker is on the host, and the page that it lists is still the old one."""
    page = phone.new_page()
    page.goto(host.address + STATION)
    offline_ready(page)
    old = Path(host.folder, "about/index.html").read_bytes()
    publish(host, "second")
    host.instead["about/"] = old
    asked = "navigator.serviceWorker.getRegistration().then((it) => it.update()).then(() => 'yes', () => 'no')"
    page.evaluate(asked)
    none_waits = "navigator.serviceWorker.getRegistration().then((it) => !it.installing && !it.waiting)"
    until(page, none_waits, 20)
    assert not page.evaluate(OFFERED)
    host.cut()
    page.goto(host.address + "about/")
    until(page, "document.querySelector('[data-offline-state]').innerText.startsWith('Yes')")
    assert not page.locator("h1").inner_text().endswith("second")
    host.restore()
    del host.instead["about/"]
    _look_for_updates(page)
    until(page, OFFERED)


def test_only_what_changed_is_fetched_again(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    publish(host, "second")
    host.asked.clear()
    _look_for_updates(page)
    asked = {path.removeprefix(host.path) for path in host.asked}
    assert asked - {"worker.js", "unpacking.js"} == {"about/"}


def test_another_window_loads_its_next_page_whole(phone: BrowserContext, host: Host) -> None:
    one, other = phone.new_page(), phone.new_page()
    for page in (one, other):
        page.goto(host.address)
        offline_ready(page)
        page.goto(host.address)
    publish(host, "second")
    _look_for_updates(one)
    until(one, OFFERED)
    other.evaluate("window.stillHere = true")
    with one.expect_navigation():
        one.locator(".strip__row button", has_text="Update").click()
    assert other.evaluate("window.stillHere")
    with other.expect_navigation():
        other.locator(".stop__link").first.click()
    until(other, READY)
    assert not other.evaluate("Boolean(window.stillHere)")


def _links_turn(page: Page) -> bool:
    """Whether the next link takes in its page, instead of loading it whole."""
    page.evaluate("window.stillHere = true")
    page.locator(".bar a, .stop__link").last.click()
    until(page, f"location.pathname !== '/cone-to-cooler/' && {READY}")
    return bool(page.evaluate("Boolean(window.stillHere)"))


def test_a_window_that_asked_for_the_first_copy_hears_of_a_later_one(phone: BrowserContext, host: Host) -> None:
    one, other = phone.new_page(), phone.new_page()
    one.goto(host.address)
    offline_ready(one)
    assert _links_turn(one), "the first copy is of the version of the page that asked for it"
    one.locator(".md-header__title, .bar a").first.click()
    other.goto(host.address)
    publish(host, "second")
    _look_for_updates(other)
    until(other, OFFERED)
    with other.expect_navigation():
        other.locator(".strip__row button", has_text="Update").click()
    until(one, READY)
    assert not _links_turn(one)


def _break_off(page: Page, host: Host) -> None:
    """The first copy breaks off and leaves some files."""
    host.instead |= {"look/teaching.css": b"cut of", "kept.lzma": b"cut of"}
    page.goto(host.address)
    until(page, "caches.keys().then((names) => names.length > 0)", 20)
    until(page, "navigator.serviceWorker.getRegistration().then((it) => !it || (!it.installing && !it.active))", 20)
    assert page.evaluate("caches.keys().then((names) => names.length)") == 1
    host.instead.clear()


def test_after_a_copy_that_broke_off_the_next_version_keeps_the_page_at_once(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    _break_off(page, host)
    publish(host, "second")
    page.reload()
    offline_ready(page)
    assert page.evaluate("caches.keys().then((names) => names.length)") == 1
    assert _links_turn(page)


def test_a_window_of_the_version_that_broke_off_does_not_mix_it_with_the_next(
    phone: BrowserContext, host: Host
) -> None:
    old, new = phone.new_page(), phone.new_page()
    _break_off(old, host)
    publish(host, "second")
    new.goto(host.address)
    offline_ready(new)
    offline_ready(old)
    assert not _links_turn(old)
    assert _links_turn(new)
