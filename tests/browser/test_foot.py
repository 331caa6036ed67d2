"""The foot of every page: its bar and the strip above it leave the page its room, however large the text."""

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import READY, until

OUT_OF_REACH = """() => [...document.querySelectorAll('.foot a, .foot button')].filter((it) => {
  const box = it.getBoundingClientRect();
  if (!box.width) return false;
  it.scrollIntoView({ block: 'nearest' });
  const now = it.getBoundingClientRect();
  const met = document.elementFromPoint(now.x + now.width / 2, now.y + now.height / 2);
  return now.left < 0 || now.right > document.documentElement.clientWidth || !it.contains(met);
}).map((it) => it.textContent || it.getAttribute('aria-label'))"""
"""What a finger cannot reach, or what is cut off. The strip may be scrolled to it."""
ROOM = """() => (document.querySelector('.foot').getBoundingClientRect().top
  - document.querySelector('.md-header').getBoundingClientRect().bottom) / innerHeight"""
LAST = """() => document.querySelector('main').getBoundingClientRect().bottom
  <= document.querySelector('.foot').getBoundingClientRect().top + 1"""
SIZES = [
    ((390, 844), 20, 0.5),
    ((360, 740), 20, 0.5),
    ((740, 360), 20, 0.4),
    ((360, 740), 40, 0.25),
    ((740, 360), 40, 0.25),
]
"""Width and height, the size of a rem (20 px as it comes), and which part of the screen is the page's own at least."""


@pytest.mark.parametrize("timers", [0, 2, 3])
@pytest.mark.parametrize(("size", "rem", "least"), SIZES)
def test_the_foot_leaves_the_page_its_room(
    browser: Browser, shared_host: Host, size: tuple[int, int], rem: int, least: float, timers: int
) -> None:
    own = {**PHONE, "viewport": {"width": size[0], "height": size[1]}, "is_mobile": False}
    context = browser.new_context(service_workers="block", **own)
    page = context.new_page()
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    _start(page, timers)
    page.goto(shared_host.address + "help/")
    until(page, READY)
    page.evaluate("(size) => { document.documentElement.style.fontSize = `${size}px`; }", rem)
    assert page.evaluate(ROOM) >= least
    assert page.evaluate(OUT_OF_REACH) == []
    page.evaluate("scrollTo({ top: 1e6, behavior: 'instant' })")
    until(page, f"({LAST})()")
    context.close()


def _start(page: Page, timers: int) -> None:
    """A tap at once after another counts for the same one, so there is a pause after each."""
    for _ in range(timers):
        page.locator("[data-timer]").first.click()
        page.wait_for_timeout(700)
    if timers:
        until(page, "document.querySelector('.strip__row .left')?.innerText")


CUT_OFF = """() => [...document.querySelectorAll('.sheet-over, .sheet-over *')].filter((it) => {
  const box = it.getBoundingClientRect();
  return box.width && (box.left < -1 || box.right > document.documentElement.clientWidth + 1);
}).map((it) => it.textContent)"""


@pytest.mark.parametrize("width", [390, 320])
def test_with_large_text_keys_are_on_the_screen_and_what_is_grave_is_told_first(
    phone: BrowserContext, shared_host: Host, width: int
) -> None:
    """A rem of 40 px, two timers: all digits can be tapped, and 156 °F stands first in the strip."""
    page = phone.new_page()
    page.set_viewport_size({"width": width, "height": 844})
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    page.evaluate("document.documentElement.style.fontSize = '40px'")
    _start(page, 2)
    page.locator("[data-reading=scald_reading_taken]").first.click()
    page.locator(".sheet-over").wait_for()
    assert page.evaluate(CUT_OFF) == []
    page.wait_for_timeout(500)
    for digit in "156":
        page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
    assert page.evaluate(CUT_OFF) == []
    page.locator(".sheet-over").get_by_role("button", name="Keep").click()
    page.locator(".sheet-over .verdict--outside").wait_for()
    page.wait_for_timeout(500)
    page.locator(".sheet__top .button").click()
    row = page.locator(".strip__row--bad", has_text="156")
    row.wait_for()
    box, strip = row.bounding_box(), page.locator(".strip").bounding_box()
    assert box and strip and strip["y"] <= box["y"] <= strip["y"] + 10
    assert page.locator(".strip__row .left:not(:empty)").count() == 1, "the next timer only; the others are on the log"


NOT_KEPT = "Nothing you tap is kept here. Use the paper cards."


def test_without_programs_a_page_says_that_nothing_is_kept(browser: Browser, shared_host: Host) -> None:
    context = browser.new_context(java_script_enabled=False, **PHONE)  # type: ignore[arg-type]
    page = context.new_page()
    for address in ("", "work/scald/"):
        page.goto(shared_host.address + address)
        assert page.get_by_text(NOT_KEPT).is_visible()
    context.close()


def test_so_does_one_whose_programs_do_not_come(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    phone.route("**/phone/main.js", lambda route: route.abort())
    page.goto(shared_host.address + "work/scald/")
    line = page.get_by_text(NOT_KEPT)
    assert line.is_hidden()
    page.clock.run_for(11_000)
    line.wait_for()
    phone.unroute("**/phone/main.js")
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    page.clock.run_for(11_000)
    assert line.is_hidden()
