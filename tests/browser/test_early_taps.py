"""What is tapped while the programs are still on their way is done when they have come."""

from urllib.request import urlopen

from playwright.sync_api import BrowserContext, Page, Route

from tests.browser.host import Host
from tests.browser.watching import READY, until

STATION = "work/scald/"
TICKS = ".step:not([hidden]) .step__tick"


def opened_without_programs(phone: BrowserContext, host: Host) -> tuple[Page, list[Route]]:
    """A station's page whose main program the line holds back, and what is held."""
    held: list[Route] = []
    page = phone.new_page()
    page.route("**/phone/main.js", lambda route: held.append(route))
    page.goto(host.address + STATION, wait_until="commit")
    page.locator(TICKS).first.wait_for()
    return page, held


def let_come(page: Page, held: list[Route]) -> None:
    while not held:
        page.wait_for_timeout(20)
    held[0].continue_()
    until(page, READY)
    page.unroute("**/phone/main.js")


def test_ticks_and_timers_tapped_early_are_kept(phone: BrowserContext, shared_host: Host) -> None:
    page, held = opened_without_programs(phone, shared_host)
    for row in range(3):
        page.locator(TICKS).nth(row).click()
    page.locator(TICKS).nth(1).click()  # and back
    page.locator("[data-timer]").first.click()
    let_come(page, held)
    until(page, "document.querySelectorAll('.step--done').length === 2")
    until(page, "document.querySelector('.strip__row .left')?.innerText")
    page.goto(shared_host.address + STATION)
    until(page, READY)
    assert page.locator(".step--done").count() == 2
    assert page.locator(".strip__row .left:not(:empty)").count() == 1


TAPPED_AS_PROGRAMS_START = """document.addEventListener("DOMContentLoaded", () => {
  const tap = (what) => document.querySelector(what).click();
  const watch = new MutationObserver(() => {
    if (!document.querySelector(".strip")) return;
    watch.disconnect();
    tap(".step:not([hidden]) .step__tick");
    tap("[data-timer]");
    tap("[data-daylight]");
  });
  watch.observe(document.body, { childList: true, subtree: true });
});"""


def test_a_tap_while_programs_start_is_done_once(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.add_init_script(TAPPED_AS_PROGRAMS_START)
    page.goto(shared_host.address + STATION)
    until(page, READY)
    until(page, "document.querySelectorAll('.step--done').length === 1")
    until(page, "document.querySelector('.strip__row .left')?.innerText")
    assert page.locator(".strip__row .left:not(:empty)").count() == 1
    assert page.evaluate("document.body.dataset.mdColorScheme") == "slate"


def test_a_tick_that_stands_is_not_taken_back_by_an_early_tap(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    page.locator(TICKS).first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    other, held = opened_without_programs(phone, shared_host)
    other.locator(TICKS).first.click()
    let_come(other, held)
    assert other.locator(".step--done").count() == 1


def test_nothing_is_done_that_the_page_said_is_not_kept(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    held: list[Route] = []
    page.route("**/phone/main.js", lambda route: held.append(route))
    page.goto(shared_host.address + STATION, wait_until="commit")
    page.locator(TICKS).first.click()
    page.clock.run_for(11_000)
    page.get_by_text("Nothing you tap is kept here.").wait_for()
    let_come(page, held)
    assert page.locator(".step--done").count() == 0
    assert not page.locator(TICKS).first.is_checked()


def test_programs_manifest_and_icon_leave_the_line_to_what_is_painted(phone: BrowserContext, shared_host: Host) -> None:
    """Of a page that comes from the host; where nothing was painted for a second the programs do not wait on."""
    page = phone.new_page()
    page.goto(shared_host.address + "plan/")
    until(page, READY)
    began, painted = page.evaluate(
        """[performance.getEntriesByName(new URL("../phone/main.js", location.href).href)[0].startTime,
            performance.getEntriesByName("first-contentful-paint")[0].startTime]"""
    )
    assert began > min(painted, 1000)
    assert b'<link rel="icon" href="data:,"' in urlopen(page.url).read()
    icon = page.locator("link[rel=icon]").get_attribute("href")
    assert icon == shared_host.address + "icons/48.png"
    assert urlopen(icon).headers["content-type"] == "image/png"
    until(page, "document.querySelector('link[rel=manifest]')")
    found = phone.new_cdp_session(page).send("Page.getAppManifest")
    assert found["url"] == shared_host.address + "manifest.webmanifest"
    assert found["errors"] == []
