"""Where a system's own colours are worn (CSS Color Adjustment 1, chapter 3), what fills say elsewhere is still said."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.browser.host import Host
from tests.browser.watching import READY, until

STATION = "work/scald/"
UNSEEN = """() => {
  const canvas = getComputedStyle(document.body).backgroundColor;
  const seen = (it) => it.checkVisibility({ visibilityProperty: true });
  return [...document.querySelectorAll('.symbol')].filter((it) => seen(it) && !it.closest('.alarm'))
    .filter((it) => getComputedStyle(it).backgroundColor === canvas).map((it) => it.className);
}"""
FILL = "(it) => getComputedStyle(it).backgroundColor"


@pytest.fixture(params=["light", "dark"])
def forced(request: pytest.FixtureRequest, phone: BrowserContext) -> Page:
    page = phone.new_page()
    page.emulate_media(forced_colors="active", color_scheme=request.param)
    return page


def go(page: Page, address: str) -> None:
    page.goto(address)
    until(page, READY)


def test_every_symbol_can_be_seen(forced: Page, shared_host: Host) -> None:
    for address in ("", STATION, "plan/", "help/", "cautions/"):
        go(forced, shared_host.address + address)
        assert forced.locator(".symbol:visible").count() > 3
        assert forced.evaluate(UNSEEN) == [], address


def test_a_box_shows_a_tick_only_when_it_is_ticked(forced: Page, shared_host: Host) -> None:
    go(forced, shared_host.address + STATION)
    ticks = forced.locator(".step__tick .symbol--tick:visible")
    assert ticks.count() == 0
    forced.locator(".step__tick").first.click()
    until(forced, "document.querySelector('.step--done') !== null")
    assert ticks.count() == 1


def test_what_is_chosen_looks_otherwise(forced: Page, shared_host: Host) -> None:
    go(forced, shared_host.address + "plan/")
    chosen = forced.locator(".units input:checked + span")
    assert chosen.evaluate(FILL) != forced.locator("body").evaluate(FILL)


def test_a_word_to_be_remembered_is_hidden_until_it_is_asked_for(forced: Page, shared_host: Host) -> None:
    go(forced, shared_host.address + STATION)
    forced.locator("[data-teach=learner]").click()
    forced.locator("[data-hide]").click()
    until(forced, "document.querySelectorAll('.gap').length > 5")
    gap, colour = forced.locator(".gap").first, "(it) => getComputedStyle(it).color"
    until(forced, "getComputedStyle(document.querySelector('.gap')).borderBottomStyle === 'solid'")
    assert gap.evaluate(colour) == "rgba(0, 0, 0, 0)"
    gap.click()
    assert gap.evaluate(colour) != "rgba(0, 0, 0, 0)"
