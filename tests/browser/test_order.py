"""What keys reach and what a screen reader says, in order, read from the browser's own tree of accessibility."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.browser import states
from tests.browser.days import open_page, taps_count
from tests.browser.host import Host
from tests.browser.watching import READY, until

LANDMARKS = {"navigation", "main", "region", "dialog", "contentinfo", "banner"}
TAPPED = {"link", "button", "checkbox", "radio", "textbox", "combobox", "searchbox", "spinbutton", "DisclosureTriangle"}
FOCUSED = """() => {
  const it = document.activeElement;
  if (it === document.body) return null;
  const box = it.getBoundingClientRect();
  const at = (y) => document.elementFromPoint(box.x + box.width / 2, y);
  const seen = [box.y + 3, box.y + box.height / 2, box.bottom - 3].map(at);
  const labels = [it, ...(it.labels ?? [])];
  const isSeen = seen.some((met) => met && labels.some((one) => one.contains(met) || met.contains(one)));
  it.dataset.walked ??= document.querySelectorAll('[data-walked]').length;
  const [html, sheet] = [it.outerHTML.slice(0, 90), it.closest('dialog') !== null];
  return { place: Number(it.dataset.walked), html, isSeen, sheet };
}"""


def spoken(page: Page) -> list[tuple[str, str]]:
    """Role and name of all that is not skipped, as the tree has them."""
    nodes: list[dict[str, Any]] = page.context.new_cdp_session(page).send("Accessibility.getFullAXTree")["nodes"]
    by_id = {node["nodeId"]: node for node in nodes}
    told: list[tuple[str, str]] = []

    def walk(node: dict[str, Any]) -> None:
        if not node.get("ignored"):
            told.append((node["role"]["value"], node.get("name", {}).get("value", "")))
        for child in node.get("childIds", []):
            if child in by_id:
                walk(by_id[child])

    walk(nodes[0])
    return told


def walked_by_keys(page: Page, most: int = 400) -> list[dict[str, Any]]:
    """What Tab leads to until it comes round."""
    found: list[dict[str, Any]] = []
    for _ in range(most):
        page.keyboard.press("Tab")
        now = page.evaluate(FOCUSED)
        if now is None or (found and now["place"] == found[0]["place"]):
            return found
        found.append(now)
    raise AssertionError("it never comes round")


def tab_to(page: Page, what: str, most: int = 100) -> None:
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate("(what) => document.activeElement.closest(what) !== null", what):
            return
    raise AssertionError(f"keys do not lead to {what}")


def test_a_station_is_read_from_its_head_to_its_foot(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + states.STATION)
    told = spoken(page)
    heard = [each for each in told if each[0] in {*LANDMARKS, *TAPPED, "heading"} and each[1]]
    assert [name for _, name in heard[:6]] == [
        "Skip to content", "Top of the page", "Menu", "Cone to Cooler", "Light or dark", "Search",
    ]  # fmt: skip
    headings = [name for role, name in told if role == "heading"]
    assert headings[0].endswith("Scald")
    marks = [role for role, _ in told if role in LANDMARKS]
    assert marks.index("main") > 0
    assert marks.count("main") == 1
    assert next(name for role, name in told if role == "checkbox").startswith("Read after a stir to the bottom")
    last = [name.split(":")[0] for role, name in heard if role == "link"][-5:]
    assert last == ["Before", "Today", "Log", "Emergency", "Next"]
    assert [each for each in told if each[0] in TAPPED and not each[1].strip()] == []


@pytest.mark.parametrize("address", ["", states.STATION, "help/", "log/", "crew/", "pass/", "drills/", "signing/"])
def test_keys_reach_everything_once_in_the_order_it_is_read(
    phone: BrowserContext, shared_host: Host, address: str
) -> None:
    page = open_page(phone, shared_host.address + address)
    page.emulate_media(reduced_motion="reduce")
    walked = walked_by_keys(page)
    reached = page.evaluate(
        """[...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')]
          .filter((it) => it.checkVisibility({ visibilityProperty: true }) && !it.disabled && it.tabIndex >= 0)
          .filter((it) => !it.matches('[type=radio]:not(:checked)'))
          .map((it) => it.dataset.walked ?? it.outerHTML.slice(0, 90))"""
    )
    assert reached == [str(place) for place in range(len(walked))], "in the order of the page, none left out"
    assert len(walked) > 8
    assert [each["html"] for each in walked if not each["isSeen"]] == []


@pytest.mark.parametrize("state", [states.keypad, states.day_asked, states.outside_the_limits])
def test_a_sheet_keeps_the_keys_until_it_is_closed(
    phone: BrowserContext, shared_host: Host, state: states.State
) -> None:
    page = phone.new_page()
    state(page, shared_host.address)
    taps_count(page)
    told = spoken(page)
    assert [name for role, name in told if role == "dialog"] == [page.locator(".sheet-over h2").inner_text()]
    assert "main" not in {role for role, _ in told}, "the page behind is asleep"
    walked = walked_by_keys(page)
    assert len(walked) > 2
    assert all(each["sheet"] for each in walked)
    page.keyboard.press("Escape")
    page.locator(".sheet-over").wait_for(state="detached")
    page.wait_for_timeout(200)
    assert "main" in {role for role, _ in spoken(page)}
    assert page.evaluate("document.activeElement !== document.body"), "back where it was opened"


def test_a_strip_that_comes_does_not_cover_what_keys_have_led_to(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.emulate_media(reduced_motion="reduce")
    page.add_init_script(states.NO_ROOM)
    page.goto(shared_host.address + states.STATION)
    until(page, READY)
    until(page, "document.querySelector('.strip').checkVisibility()")
    tab_to(page, ".step__tick")
    strip = "document.querySelector('.strip').getBoundingClientRect()"
    page.evaluate(f"scrollBy(0, document.activeElement.getBoundingClientRect().bottom - {strip}.top + 1)")
    assert page.evaluate(f"({FOCUSED})().isSeen")
    page.keyboard.press("Space")
    until(page, "document.querySelector('.strip').innerText.includes('NOT SAVED')")
    until(page, f"({FOCUSED})().isSeen", 2)
