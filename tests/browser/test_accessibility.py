"""Pages for everyone: axe finds nothing, targets are large enough for wet fingers, text is large enough for sun."""

from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from generator.pipeline.order import Order
from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.test_offline import addresses
from tests.browser.watching import READY, until

PAGES = (
    "",
    "plan/",
    "menu/",
    "bring/",
    "shop/",
    "crew/",
    "day/",
    "questions/",
    "pass/",
    "sheet/",
    "help/",
    "cautions/",
    "numbers/",
    "numbers/chill/",
    "numbers/methods/",
    "choices/rule_set/",
    "choices/species/",
    "glossary/",
    "sources/",
    "about/",
    "local_rule/",
    "coverage/",
    "papers/",
    "log/",
    "record/",
    "learn/",
    "learn/new_here/",
    "drills/",
    "faults/",
    "signing/",
    "work/scald/",
    "work/chilling/",
    "no/such/page/",
)
STRICT = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
COLOURS = ["color-contrast-enhanced", "link-in-text-block"]
"""All that the scheme can change."""
SURPASSED = {"color-contrast": {"enabled": False}, "target-size": {"enabled": False}}
"""The first asks for 4.5 to 1 where its enhanced sister asks for 7 to 1, and takes as long. The other asks for 24 px
where `SMALL_TARGETS` has 48; to it what is half behind the foot is too small, where a finger moves the page."""
BRIEF = {"resultTypes": ["violations"]}
"""Of what passes, one example is enough."""
SCHEME = "getComputedStyle(document.body).backgroundColor"
SHEETS = {"light": "rgb(255, 255, 255)", "dark": "rgb(18, 18, 18)"}
SIZES = ({"width": 390, "height": 844}, {"width": 360, "height": 740}, {"width": 320, "height": 640})
TWICE = "document.documentElement.style.fontSize = '40px'"
"""The theme makes a rem 125 % of the 16 px that browsers begin with."""
OPEN_SOME = "document.querySelectorAll('details').forEach((it, at) => { it.open = at < 2; })"
"""The others have more of the same."""
ALIKE = """() => {
  const most = (it) => it.matches('li, tr, dt, dd, details, section, article') ? 4 : 12;
  for (const parent of document.querySelectorAll('main, main :not(math, math *)')) {
    const met = {};
    for (const it of [...parent.children]) {
      const kind = `${it.tagName} ${it.className}`;
      met[kind] = (met[kind] ?? 0) + 1;
      if (met[kind] > most(it)) it.remove();
    }
  }
  [...document.querySelectorAll('math')].slice(12).forEach((it) => it.remove());
}"""
"""Takes most of what stands in one row and looks alike out of the page: axe is slow, and finds the same in each."""
SMALL_TARGETS = """() => [...document.querySelectorAll(
    'a, button, select, input, textarea, summary, label, [role=button]'
  )].filter((it) => {
    const box = it.getBoundingClientRect();
    if (!box.width || !it.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return false;
    const said = (part) => part.textContent.trim();
    const flows = it.matches('a') && getComputedStyle(it).display === 'inline';
    const inSentence = flows && said(it) !== said(it.parentElement);
    const pressedByItsLabel = it.matches('label *, .away') || (it.matches('label') && !it.querySelector('input'));
    return !inSentence && !pressedByItsLabel && (box.width < 47.9 || box.height < 47.9);
  }).map((it) => `${it.outerHTML.slice(0, 120)} ${JSON.stringify(it.getBoundingClientRect())}`)"""
"""Anything that is tapped. A link in a sentence is as high as its line (WCAG 2.2, 2.5.8)."""
CLIPPED = """() => [...document.querySelectorAll(
    'input:not(.away, [type=checkbox], [type=radio], [readonly], #plan-paste, [type=search])'
  )]
  .filter((it) => it.checkVisibility() && it.scrollWidth > it.clientWidth + 1 && !/\\w\\/[(\\w]/.test(it.value))
  .map((it) => `${it.id}: ${it.value}`)"""
"""Fields that are too narrow for what stands in them; units made of several are told below the field too."""
OFF_SCREEN = """() => [...document.querySelectorAll('body *')].filter((it) => {
  const box = it.getBoundingClientRect();
  const shown = box.width && it.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  const over = box.left < -1 || box.right > document.documentElement.clientWidth + 1;
  return over && shown && !it.closest('svg, math, table, .md-dialog');
}).map((it) => it.outerHTML.slice(0, 120))"""
SQUEEZED = """() => [...document.querySelectorAll('main *')].filter((it) => {
  const own = [...it.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim().length > 5);
  const [{ width }, size] = [it.getBoundingClientRect(), parseFloat(getComputedStyle(it).fontSize)];
  const set = getComputedStyle(it).display !== 'inline' && !it.closest('svg, math, table, .away');
  return own && set && width && width < 2.5 * size && it.checkVisibility();
}).map((it) => it.outerHTML.slice(0, 120))"""
"""A few letters beside each other, so that words stand on end."""
SMALL_TEXT = """() => [...document.querySelectorAll('body *')].filter((it) => {
    const own = [...it.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
    const box = it.getBoundingClientRect();
    const set = !it.closest('math, sup, sub, svg');
    return own && set && box.width && box.height && parseFloat(getComputedStyle(it).fontSize) < 17.9;
  }).map((it) => it.outerHTML.slice(0, 120) + ' ' + getComputedStyle(it).fontSize)"""


def axe_finds_nothing(page: Page, where: str, rules: list[str] = STRICT) -> None:
    found: dict[str, Any] = Axe().run(page, options={"runOnly": rules, "rules": SURPASSED, **BRIEF}).response
    violations = [
        f"{where}: {one['id']} ({one['help']}): {[node['html'][:150] for node in one['nodes'][:3]]}"
        for one in found["violations"]
    ]
    assert violations == []


def nothing_is_small_or_lost(page: Page, where: str) -> None:
    for size in SIZES:
        page.set_viewport_size(size)
        assert page.evaluate(SMALL_TARGETS) == [], (where, size)
        assert page.evaluate(SMALL_TEXT) == [], (where, size)
        assert page.evaluate(CLIPPED) == [], (where, size)
    for width in (390, 320):
        page.set_viewport_size({"width": width, "height": 640})
        page.evaluate(TWICE)
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide <= 0, f"{where} is {wide} px too wide"
        assert page.evaluate(CLIPPED) == [], where
        assert page.evaluate(OFF_SCREEN) == [], where
        assert page.evaluate(SQUEEZED) == [], where
        page.evaluate("document.documentElement.style.fontSize = ''")


def test_no_kind_of_page_is_left_out(demo: Order) -> None:
    kinds = {address.split("/")[0] for address in addresses(demo.site)}
    assert kinds <= {address.split("/")[0] for address in PAGES}


@pytest.mark.parametrize("pages", [PAGES[::3], PAGES[1::3], PAGES[2::3]], ids=["one third", "another", "the rest"])
def test_pages_of_every_kind(browser: Browser, shared_host: Host, pages: tuple[str, ...]) -> None:
    """Axe finds nothing, targets and text are large, and at 320 px twice the text size loses nothing."""
    context = browser.new_context(**PHONE, color_scheme="light", service_workers="block")  # type: ignore[arg-type]
    page = context.new_page()
    for address in pages:
        page.goto(shared_host.address + address)
        until(page, READY)
        page.evaluate(OPEN_SOME)
        nothing_is_small_or_lost(page, address)
        page.evaluate(ALIKE)
        for scheme, size, rules in (("light", SIZES[0], STRICT), ("dark", SIZES[1], COLOURS)):
            page.set_viewport_size(size)
            page.emulate_media(color_scheme=scheme)
            until(page, f"{SCHEME} === '{SHEETS[scheme]}'")
            axe_finds_nothing(page, f"{address} {scheme} {size['width']}", rules)
        page.emulate_media(color_scheme="light")
    context.close()


def test_axe_finds_nothing_in_search_alarm_and_strip(page: Page, shared_host: Host) -> None:
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("water")
    until(page, "document.querySelectorAll('.finder li').length > 3")
    axe_finds_nothing(page, "search")
    page.locator(".finder__close").click()
    page.locator(".step__tick").first.click()
    page.locator("[data-timer]").first.click()
    until(page, "!document.querySelector('.strip').hidden")
    page.evaluate("scrollTo(0, 0)")
    until(page, "getComputedStyle(document.querySelector('.md-header__topic')).opacity === '1'")
    axe_finds_nothing(page, "strip")
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '0'; }")
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.alarm').open")
    axe_finds_nothing(page, "alarm")


def test_rows_are_named_by_what_is_to_be_done(page: Page, shared_host: Host) -> None:
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    row = page.locator(".step").first
    action = " ".join(row.locator(".step__action").inner_text().split())
    box = page.get_by_role("checkbox", name=action, exact=True)
    box.focus()
    page.keyboard.press("Space")
    until(page, "document.querySelector('.step').classList.contains('step--done')")


def test_the_bar_stands_in_one_row_on_a_narrow_phone(browser: Browser, shared_host: Host) -> None:
    context = browser.new_context(service_workers="block", **{**PHONE, "viewport": {"width": 360, "height": 740}})
    page = context.new_page()
    page.goto(shared_host.address + "work/scald/")
    rows = page.evaluate("[...document.querySelectorAll('.bar > *')].map((it) => it.getBoundingClientRect().top)")
    assert len(rows) >= 4
    assert len(set(rows)) == 1
    context.close()
