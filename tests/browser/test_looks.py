"""The one sheet for all pages holds each rule of the theme that the browser finds something for on any page.

A rule that does no more than name values which no rule reads is none.
"""

from __future__ import annotations

from pathlib import Path

import material
from playwright.sync_api import BrowserContext

from generator.pipeline.order import Order
from tests.browser.host import Host
from tests.browser.test_offline import addresses

THEME = next((Path(material.__file__).parent / "templates/assets/stylesheets").glob("main.*.min.css"))
MISSED = """async ([theme, addresses]) => {
  const each = (list) => list.split(/,(?![^(]*\\))/).map((selector) => selector.trim());
  const inner = (rule) => rule.cssRules && !rule.name ? selectors(rule.cssRules) : [];
  const read = new Set([...document.styleSheets].flatMap((sheet) => [...sheet.cssRules])
    .flatMap((rule) => [...rule.cssText.matchAll(/var\\(\\s*(--[\\w-]+)/g)].map((found) => found[1])));
  const says = (rule) => [...rule.style].some((name) => !name.startsWith("--") || read.has(name));
  const own = (rule) => says(rule) ? each(rule.selectorText) : [];
  const selectors = (rules) => [...rules].flatMap((rule) => rule.selectorText ? own(rule) : inner(rule));
  const whole = new CSSStyleSheet();
  whole.replaceSync(theme);
  const kept = new Set([...document.styleSheets].flatMap((sheet) => selectors(sheet.cssRules)));
  const elements = /::(before|after|marker|-?[a-z-]+)/g;
  const states = /:(hover|focus-visible|focus-within|focus|active|checked|target|-[a-z-]+)/g;
  const plain = (selector) => selector.replace(elements, ":is(*)").replace(states, ":is(*)");
  const left = selectors(whole.cssRules).filter((selector) => !kept.has(selector));
  const missed = [];
  for (const address of addresses) {
    const text = await (await fetch(address)).text();
    const page = new DOMParser().parseFromString(text, "text/html");
    missed.push(...left.filter((it) => page.querySelector(plain(it))).map((it) => `${address}: ${it}`));
  }
  return [left.length, missed];
}"""


def test_nothing_that_a_page_wears_was_left_out(phone: BrowserContext, shared_host: Host, demo: Order) -> None:
    page = phone.new_page()
    theme = THEME.read_text(encoding="utf-8")
    page.goto(shared_host.address)
    left, missed = page.evaluate(MISSED, [theme, addresses(demo.site)])
    assert left > 500, "the theme has rules for much that this site does not have"
    assert missed == []


def test_lists_in_columns_are_in_columns(phone: BrowserContext, shared_host: Host) -> None:
    """The theme's rule for lists is a strong one: ours has been lost to it before."""
    page = phone.new_page()
    for address, name in (("", "clock"), ("learn/", "cards"), ("papers/", "papers")):
        page.goto(shared_host.address + address)
        assert page.evaluate(f"getComputedStyle(document.querySelector('.{name}')).display") == "grid", address


IN_COLUMNS = """() => [...document.querySelectorAll(".md-main [data-quantity]")]
  .filter((number) => /flex|grid/.test(getComputedStyle(number.parentElement).display))
  .filter((number) => number.nextSibling?.nodeType === Node.TEXT_NODE && number.nextSibling.data.trim())
  .map((number) => number.parentElement.textContent.trim())"""


def test_no_sentence_falls_into_columns_at_its_number(phone: BrowserContext, shared_host: Host) -> None:
    """`A thermometer does not show | 32 °F | .`, where what holds it lays its parts side by side."""
    page = phone.new_page()
    for address in ("faults/", "work/the_day_before/", "work/chill_readings/"):
        page.goto(shared_host.address + address)
        assert page.locator("summary [data-quantity]").count() > 0
        assert page.evaluate(IN_COLUMNS) == [], address
