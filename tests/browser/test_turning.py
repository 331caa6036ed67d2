"""One page takes the place of another, and the reader notices nothing but that it is fast."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page, Route

from tests.browser.days import open_page
from tests.browser.host import Host
from tests.browser.watching import READY, Noises, until

STAYED = "window.stillHere === true"
FOLDED = ".fold--group:not([open]) > :not(summary)"
"""What only the sheet of plan pages hides."""


def stay(page: Page) -> None:
    page.evaluate("window.stillHere = true")


def test_back_leads_to_the_place_that_was_read(phone: BrowserContext, shared_host: Host, noises: Noises) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    stay(page)
    page.mouse.wheel(0, 1500)
    until(page, "history.state?.height === 1500")
    page.locator(".bar a[aria-label^=Next]").click()
    until(page, "document.querySelector('h1').innerText.endsWith('Pluck') && window.scrollY === 0")
    assert page.title().startswith("Pluck")
    assert page.evaluate("document.activeElement.tagName") == "H1"
    page.go_back()
    until(page, "document.querySelector('h1').innerText.endsWith('Scald') && window.scrollY === 1500")
    page.go_forward()
    until(page, "document.querySelector('h1').innerText.endsWith('Pluck')")
    assert page.evaluate(STAYED)
    assert noises == Noises()


def test_links_lead_from_every_depth(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "numbers/chill/")
    stay(page)
    page.locator(".md-header a[aria-label=Menu]").click()
    until(page, "location.pathname.endsWith('/menu/')")
    page.locator(".md-header a[aria-label=Menu]").click()
    until(page, "location.pathname === '/cone-to-cooler/menu/'")
    page.locator(".bar a", has_text="Today").click()
    until(page, "location.pathname === '/cone-to-cooler/'")
    page.locator("a.stop__link").first.click()
    until(page, "location.pathname.startsWith('/cone-to-cooler/work/')")
    assert page.evaluate(STAYED)


def test_a_link_into_a_page_leads_to_the_place_in_it(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    stay(page)
    page.evaluate("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
    link = page.locator("a[href*='sources/#']").first
    mark = (link.get_attribute("href") or "").partition("#")[2]
    link.click()
    until(page, f"document.querySelector(':target')?.id === '{mark}'")
    until(page, "Math.abs(document.querySelector(':target').getBoundingClientRect().top) < innerHeight")
    assert page.evaluate(STAYED)


def test_a_page_with_looks_of_its_own_wears_them(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address)
    stay(page)
    page.locator(".md-header a[aria-label=Menu]").click()
    page.locator("a[href$='plan/']").first.click()
    until(page, "[...document.styleSheets].some((sheet) => sheet.href?.endsWith('/look/plan_pages.css'))")
    assert page.evaluate(STAYED)


def test_looks_inside_a_page_stay_when_it_is_turned_and_are_not_fetched(phone: BrowserContext, host: Host) -> None:
    page = open_page(phone, host.address + "plan/")
    stay(page)
    page.locator(".md-header a[aria-label=Menu]").click()
    until(page, "location.pathname.endsWith('/menu/')")
    page.locator("main a[href$='plan/']").first.click()
    until(page, "location.pathname.endsWith('/plan/')")
    assert page.evaluate(STAYED)
    assert page.evaluate(f"getComputedStyle(document.querySelector('{FOLDED}')).display") == "none"
    links = page.evaluate("[...document.querySelectorAll('link[rel=stylesheet]')].map((it) => it.href)")
    assert links == [host.address + "look/all.css"]
    assert page.evaluate("document.querySelectorAll('style[data-sheet]').length") == 1


def test_of_two_quick_taps_the_second_counts(phone: BrowserContext, shared_host: Host) -> None:
    """The first leads to a page whose looks are long in coming."""
    page = open_page(phone, shared_host.address + "menu/")
    stay(page)
    held: list[Route] = []
    phone.route("**/look/plan_pages.css", lambda route: held.append(route))
    page.evaluate("document.querySelector(\"main a[href$='plan/']\").click()")
    until(page, "document.querySelector('head link[href$=\"/look/plan_pages.css\"]') !== null")
    page.evaluate("document.querySelector(\"main a[href$='about/']\").click()")
    until(page, "location.pathname.endsWith('/about/')")
    title = page.locator("h1").inner_text()
    for route in held:
        route.continue_()
    until(page, "[...document.styleSheets].some((sheet) => sheet.href?.endsWith('/look/plan_pages.css'))")
    page.wait_for_timeout(200)
    assert held
    assert page.url.endswith("/about/")
    assert page.locator("h1").inner_text() == title
    page.go_back()
    until(page, "location.pathname.endsWith('/menu/')")
    assert page.evaluate(STAYED)


def test_what_is_no_page_of_the_site_is_loaded_whole(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address)
    stay(page)
    page.evaluate("document.querySelector('a.stop__link').setAttribute('href', 'help/nowhere/')")
    page.locator("a.stop__link").first.click()
    until(page, "location.pathname.endsWith('/help/nowhere/') && document.readyState === 'complete'")
    assert not page.evaluate(STAYED)


def test_light_or_dark_is_as_the_phone_has_it_until_somebody_chooses(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address)
    scheme = "document.body.dataset.mdColorScheme"
    assert page.evaluate(scheme) == "default"
    page.emulate_media(color_scheme="dark")
    until(page, f"{scheme} === 'slate'")
    page.locator("[data-daylight]").click()
    assert page.evaluate(scheme) == "default"
    page.reload()
    until(page, READY)
    assert page.evaluate(scheme) == "default"


def test_folds_are_open_on_paper_and_closed_after(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    closed = "document.querySelectorAll('details:not([open])').length"
    before = page.evaluate(closed)
    assert before > 0
    page.evaluate("void dispatchEvent(new Event('beforeprint'))")
    assert page.evaluate(closed) == 0
    page.evaluate("void dispatchEvent(new Event('afterprint'))")
    assert page.evaluate(closed) == before
