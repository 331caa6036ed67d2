"""The page of papers: what the phone keeps of it, and where a file leads that it does not keep."""

from playwright.sync_api import BrowserContext

from tests.browser.host import Host
from tests.browser.watching import Noises, offline_ready, until

WHOLE_COPY = 1_400_000
"""Bytes as they were sent for everything that a phone keeps, papers too."""
SINGLE, OTHER_SIZE = "papers/en/us-letter/station_scald.pdf", "papers/en/a4/pack.pdf"


def test_a_phone_keeps_one_pack_and_no_more_of_the_papers(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    kept = [path for path in host.sent if path.startswith("papers/")]
    assert kept == ["papers/en/us-letter/pack.pdf"]
    assert sum(host.sent.values()) < WHOLE_COPY


def test_a_single_file_needs_a_signal_and_without_one_leads_to_its_page_in_the_pack(
    phone: BrowserContext, host: Host, noises: Noises
) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    page.goto(host.address + "papers/")
    fetch = "address => fetch(address).then(answer => [answer.status, answer.headers.get('content-type')])"
    assert page.evaluate(fetch, f"{host.address}{SINGLE}") == [200, "application/pdf"]
    host.cut()
    page.goto(host.address + SINGLE)
    assert page.url == f"{host.address}papers/#station_scald"
    until(page, "document.querySelector(':target') !== null")
    assert "In the pack on page" in page.locator(":target").inner_text()
    assert page.evaluate(fetch, page.locator(":target a[href*='#page=']").get_attribute("href"))[0] == 200
    page.goto(host.address + OTHER_SIZE)
    assert page.url == f"{host.address}papers/#pack"
    assert noises == Noises()


def test_pictures_that_are_not_kept_leave_no_empty_frames(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address + "papers/")
    offline_ready(page)
    assert page.locator("article img").count() > 60
    host.cut()
    page.goto(host.address + "papers/")
    page.evaluate("document.querySelectorAll('article img').forEach((it) => { it.loading = 'eager'; })")
    until(page, "document.querySelectorAll('article img').length === 0")
    assert page.locator("#station_scald").is_visible()


def test_a_click_on_a_single_file_opens_it_with_a_signal(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    page.goto(host.address + "papers/")
    before = host.sent.get(SINGLE, 0)
    page.locator("#station_scald a[href$='us-letter/station_scald.pdf']").click()
    page.wait_for_timeout(1000)
    assert host.sent.get(SINGLE, 0) > before
