"""What comes over a page or changes it while it is used is for everyone too, in both schemes and at every size."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.states import STATES, State
from tests.browser.test_accessibility import (
    ALIKE,
    COLOURS,
    SCHEME,
    SHEETS,
    axe_finds_nothing,
    nothing_is_small_or_lost,
)
from tests.browser.test_updates import OFFERED, publish
from tests.browser.watching import offline_ready, until

TOGETHER = 6
GROUPS = [STATES[start : start + TOGETHER] for start in range(0, len(STATES), TOGETHER)]


def looked_at(page: Page, where: str) -> None:
    page.wait_for_timeout(450)  # until nothing takes taps away any more
    nothing_is_small_or_lost(page, where)
    page.set_viewport_size(PHONE["viewport"])  # type: ignore[arg-type]
    page.evaluate(ALIKE)
    axe_finds_nothing(page, f"{where} light")
    page.evaluate("document.body.dataset.mdColorScheme = 'slate'")
    until(page, f"{SCHEME} === '{SHEETS['dark']}'")
    axe_finds_nothing(page, f"{where} dark", COLOURS)


@pytest.mark.parametrize("states", GROUPS, ids=[group[0].__name__ for group in GROUPS])
def test_every_state_is_for_everyone(browser: Browser, shared_host: Host, states: list[State]) -> None:
    for bring_about in states:
        context = browser.new_context(**PHONE, reduced_motion="reduce", service_workers="block")  # type: ignore[arg-type]
        page = context.new_page()
        bring_about(page, shared_host.address)
        looked_at(page, bring_about.__name__)
        context.close()


def row_with(text: str) -> str:
    return f"document.querySelector('.strip')?.innerText.includes('{text}')"


def test_so_is_what_is_told_of_the_copy_on_the_phone(phone: BrowserContext, host: Host) -> None:
    host.instead = {"worker.js": None}
    page = phone.new_page()
    page.emulate_media(reduced_motion="reduce")
    page.goto(host.address + "about/")
    until(page, row_with("broke off"), 30)
    looked_at(page, "a copy that broke off")
    host.instead = {}
    page.reload()
    offline_ready(page)
    publish(host, "second")
    page.goto(host.address + "about/")
    page.evaluate("navigator.serviceWorker.getRegistration().then((it) => void it.update())")
    until(page, OFFERED, 20)
    looked_at(page, "a new version")
