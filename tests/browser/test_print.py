"""On paper: black on white, even when the screen is dark, and nothing that can only be tapped."""

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.test_accessibility import PAGES
from tests.browser.watching import READY, until


def test_dark_pages_print_black_on_white(browser: Browser, shared_host: Host) -> None:
    context = browser.new_context(**{**PHONE, "color_scheme": "dark", "service_workers": "block"})  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(shared_host.address + "work/scald/")
    until(page, "document.body.dataset.mdColorScheme === 'slate'")
    page.emulate_media(media="print", color_scheme="dark")
    colours = page.evaluate("""['body', '.step', 'h1', '.step__action', '.signal'].map((name) => {
      const style = getComputedStyle(document.querySelector(name));
      return [style.color, style.backgroundColor];
    })""")
    for ink, paper in colours:
        assert ink == "rgb(0, 0, 0)"
        assert paper in {"rgb(255, 255, 255)", "rgba(0, 0, 0, 0)"}
    for name in (".md-header", ".bar", ".timer"):
        assert not page.locator(name).first.is_visible()
    context.close()


FAINT = """() => [...document.querySelectorAll('body *')].filter((it) => {
  const own = [...it.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
  if (!it.checkVisibility({ visibilityProperty: true }) || it.closest('svg, select, .away')) return false;
  const [red, green, blue] = getComputedStyle(it).color.match(/[\\d.]+/g).map(Number);
  const [r, g, b, a = 1] = getComputedStyle(it).backgroundColor.match(/[\\d.]+/g).map(Number);
  const bright = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  return a > 0.5 && 0.2126 * r + 0.7152 * g + 0.0722 * b < 90 && getComputedStyle(it).printColorAdjust !== 'exact'
    || own && bright > 140 && getComputedStyle(it).printColorAdjust !== 'exact';
}).map((it) => `${it.outerHTML.slice(0, 100)} ${getComputedStyle(it).color}`)"""
"""Ink too light for paper, and dark fills, which printers leave out or drown in."""
TAPPED = """() => [...document.querySelectorAll(
    'button:not(.reading, .drill__answer), .button, .foot, .md-header, dialog'
  )].filter((it) => it.checkVisibility({ visibilityProperty: true })).map((it) => it.outerHTML.slice(0, 100))"""


@pytest.mark.parametrize("pages", [PAGES[::2], PAGES[1::2]], ids=["one half", "other half"])
def test_every_kind_of_page_prints_in_ink_and_within_the_sheet(
    browser: Browser, shared_host: Host, pages: tuple[str, ...]
) -> None:
    """A4 less 12 mm on each side is 186 mm wide, 703 px."""
    context = browser.new_context(viewport={"width": 703, "height": 1000}, color_scheme="dark", service_workers="block")
    page = context.new_page()
    for address in pages:
        page.emulate_media(media="screen", color_scheme="dark")
        page.goto(shared_host.address + address)
        until(page, READY)
        page.emulate_media(media="print", color_scheme="dark")
        page.evaluate("void dispatchEvent(new Event('beforeprint'))")
        assert page.evaluate(FAINT) == [], address
        assert page.evaluate(TAPPED) == [], address
        assert page.evaluate("document.documentElement.scrollWidth") <= 703, address
    context.close()


def test_what_is_printed_before_the_programs_come_is_whole(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    phone.route("**/phone/main.js", lambda route: None)
    for address, name in (("", ".clock"), ("work/scald/", "details li")):
        page.emulate_media(media="screen")
        page.goto(shared_host.address + address, wait_until="commit")
        page.locator(".bar").wait_for()
        page.emulate_media(media="print")
        assert page.locator(name).last.is_visible(), address
