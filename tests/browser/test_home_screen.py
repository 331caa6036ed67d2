"""Pages on an iPhone's home screen, told by `navigator.standalone`; what they cannot do is known from print alone."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.browser.conftest import PHONE
from tests.browser.days import open_page, remark, stored
from tests.browser.host import Host
from tests.browser.watching import READY, until

ON_HOME_SCREEN = """
  Object.defineProperty(navigator, 'standalone', { value: true });
  window.shared = [];
  navigator.canShare = () => true;
  navigator.share = ({ files: [file] }) => file.text().then((text) => {
    window.shared.push(`${file.name} ${text.length}`);
    if (window.refused) throw new DOMException('not now', 'AbortError');
  });
"""
IPHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS {} like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Mobile/15E148"
LEFT_ALL = "document.querySelector('[data-exchange-state]').textContent.startsWith('All')"


@pytest.mark.parametrize(("version", "warned"), [("17_7", True), ("18_3_2", True), ("18_4", False), ("26_1", False)])
def test_a_screen_that_goes_dark_all_the_same_is_told(
    browser: Browser, shared_host: Host, version: str, warned: bool
) -> None:
    """WebKit's bug 254545: until iOS 18.4 the lock was given there and did nothing (browser-compat-data, WakeLock)."""
    context = browser.new_context(**PHONE, user_agent=IPHONE.format(version), service_workers="block")  # type: ignore[arg-type]
    context.add_init_script(ON_HOME_SCREEN)
    page = open_page(context, shared_host.address + "work/scald/")
    page.evaluate("navigator.wakeLock.request = async () => ({ released: false, release() {} })")
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.strip__row .left')?.innerText")
    page.wait_for_timeout(600)
    assert page.get_by_text("Keep the screen on").is_visible() == warned
    context.close()


def test_a_record_leaves_by_the_share_sheet_and_counts_as_sent_only_then(
    phone: BrowserContext, shared_host: Host
) -> None:
    phone.add_init_script(ON_HOME_SCREEN)
    page = open_page(phone, shared_host.address + "log/")
    assert remark(page, "Both scales agree.")
    page.evaluate("window.refused = true")
    page.locator("[data-exchange-file]").click()
    until(page, "window.shared.length === 1")
    page.wait_for_timeout(300)
    assert stored(page, "sent/") == []
    page.evaluate("window.refused = false")
    page.locator("[data-exchange-file]").click()
    until(page, LEFT_ALL)
    page.locator("[data-exchange-table]").click()
    until(page, "window.shared.length === 3")
    names = [str(each).split()[0] for each in page.evaluate("window.shared")]
    assert [name.rpartition(".")[2] for name in names] == ["json", "json", "csv"]
    assert page.url.endswith("/log/")


def test_a_plan_leaves_by_the_share_sheet(phone: BrowserContext, shared_host: Host) -> None:
    phone.add_init_script(ON_HOME_SCREEN)
    page = open_page(phone, shared_host.address + "pass/")
    page.locator("[data-file]").click()
    until(page, "window.shared[0]?.startsWith('plan.json ')")


def test_that_a_paper_has_no_way_back_is_said_there_alone(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + "papers/")
    until(page, READY)
    assert page.locator(".papers__back").text_content()
    assert not page.locator(".papers__back").is_visible()
