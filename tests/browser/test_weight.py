"""What a first visit costs, and that it asks nobody else for anything."""

import pytest
from playwright.sync_api import BrowserContext

from generator.publishing.loaded import loaded_by_all
from tests.browser.host import Host
from tests.browser.test_offline import addresses
from tests.browser.watching import READY, Noises, offline_ready, until

FIRST_VISIT = 60_000
PER_PAGE = 4_500
"""Bytes of the offline copy for each page: it grows with the content, so it is measured against it."""
PAPERS = "papers/"


def test_a_first_visit_to_a_station_is_light(phone: BrowserContext, host: Host, noises: Noises) -> None:
    phone.add_init_script("Object.defineProperty(navigator, 'serviceWorker', {value: undefined})")
    page = phone.new_page()
    page.goto(host.address + "work/scald/")
    until(page, READY)
    page.wait_for_timeout(500)
    assert sum(host.sent.values()) < FIRST_VISIT, host.sent
    assert not any("formulas" in path for path in host.sent)
    assert noises == Noises()


def test_the_whole_copy_is_in_proportion_and_comes_in_one_piece(phone: BrowserContext, host: Host) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    sent = {path: size for path, size in host.sent.items() if not path.startswith(PAPERS)}
    assert "kept.lzma" in sent
    assert len(sent) < 100, "the front page with its programs, the pack, and what does not pack"
    assert not any(path.startswith(("work/", "numbers/")) for path in sent)
    pages = len(addresses(host.folder))
    assert pages > 100
    assert sum(sent.values()) < pages * PER_PAGE


@pytest.mark.parametrize("address", ["", "work/scald/"])
def test_what_a_page_has_loaded_comes_once(phone: BrowserContext, host: Host, address: str) -> None:
    page = phone.new_page()
    page.goto(host.address + address)
    offline_ready(page)
    assert {host.asked.count(host.path + name) for name in loaded_by_all(host.folder)} == {1}
    host.cut()
    page.reload()
    until(page, READY)


@pytest.mark.parametrize("width", [360, 412])
def test_nothing_moves_while_a_page_loads(phone: BrowserContext, host: Host, width: int) -> None:
    """Not while the first copy comes either, of which the strip tells."""
    phone.add_init_script("""
      window.moved = 0;
      new PerformanceObserver((list) => { for (const it of list.getEntries()) window.moved += it.value; })
        .observe({ type: "layout-shift", buffered: true });
    """)
    page = phone.new_page()
    page.set_viewport_size({"width": width, "height": 823})
    for address in (
        "plan/",
        "",
        "work/scald/",
        "numbers/chill/",
        "log/",
        "sheet/",
        "pass/",
        "questions/",
        "shop/",
        "learn/",
    ):
        page.goto(host.address + address)
        until(page, READY)
        offline_ready(page)
        page.wait_for_timeout(500)
        assert page.evaluate("window.moved") == 0, address
