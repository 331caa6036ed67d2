"""A change of the plan is there in the frame in which it was made, and touches nothing that stays as it is."""

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import READY, until

HEARD = """
heard = [];
BroadcastChannel = class extends BroadcastChannel { constructor(name) { super(name); heard.push(this); } };
"""
"""Lets a page be told what another window changed."""
TELL = "(birds) => heard[0].onmessage({ data: [['plan/today/birds', birds]] })"
TOUCHED = """(birds) => new Promise((done) => requestAnimationFrame(() => {
  const records = [];
  const watcher = new MutationObserver((found) => records.push(...found));
  watcher.observe(document, { subtree: true, childList: true, attributes: true, characterData: true,
    attributeOldValue: true, characterDataOldValue: true });
  const field = document.querySelector('[data-input=birds] [data-more]');
  if (field) field.click();
  else heard[0].onmessage({ data: [['plan/today/birds', birds]] });
  const wordsOf = (nodes) => [...nodes].map((it) => it.textContent).join('');
  const before = ({ type, oldValue, removedNodes }) => (type === 'childList' ? wordsOf(removedNodes) : oldValue);
  const now = ({ type, target, attributeName }) => (
    type === 'attributes' ? target.getAttribute(attributeName) : target.data ?? target.textContent);
  setTimeout(() => {
    const alike = (one, other) => one.target === other.target && one.attributeName === other.attributeName;
    const first = records.filter((it, place) => !records.slice(0, place).some((other) => alike(it, other)));
    const idle = first.filter((it) => before(it) === now(it));
    const named = ({ type, attributeName, target }) => `${attributeName ?? type} ${target.outerHTML ?? target.data}`;
    done({ touched: records.length, idle: idle.map(named) });
  });
}))"""
IN_FRAME = """(birds) => new Promise((done) => requestAnimationFrame(() => {
  heard[0].onmessage({ data: [['plan/today/birds', birds]] });
  const channel = new MessageChannel();
  channel.port1.onmessage = () => done(document.querySelector('.day__plan [data-quantity=birds]').textContent);
  channel.port2.postMessage('comes to its turn after the frame');
}))"""
KEPT = """new Promise((done) => {
  const opened = indexedDB.open('day /cone-to-cooler/', 1);
  opened.onsuccess = () => {
    const asked = opened.result.transaction('facts').objectStore('facts').get('plan/today/birds');
    asked.onsuccess = () => done(asked.result === 65);
  };
})"""
SCROLLED_TO = """(birds) => new Promise((done) => requestAnimationFrame(() => {
  const place = document.querySelector('[data-quantity=bags_needed]');
  const [far, before] = [place.getBoundingClientRect().top, place.textContent];
  heard[0].onmessage({ data: [['plan/today/birds', birds]] });
  place.scrollIntoView();
  const seen = () => done({ far, before, seen: place.textContent });
  requestAnimationFrame(() => requestAnimationFrame(seen));
}))"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A phone's page that can be told of changes; the first of them is yet to come."""
    context = browser.new_context(**PHONE, service_workers="block")  # type: ignore[arg-type]
    context.add_init_script(HEARD)
    yield context.new_page()
    context.close()


def _open(page: Page, host: Host, address: str) -> None:
    """A page that has fetched what it needs to follow, and has followed twice."""
    page.goto(host.address + address)
    until(page, READY)
    for birds in (61, 62):
        page.evaluate(TELL, birds)
        page.wait_for_timeout(400)


@pytest.mark.parametrize("address", ["", "plan/", "crew/", "shop/", "work/chilling/"])
def test_nothing_is_touched_that_stays_as_it_is(page: Page, shared_host: Host, address: str) -> None:
    _open(page, shared_host, address)
    found: dict[str, Any] = page.evaluate(TOUCHED, 90)
    assert found["idle"] == []
    assert found["touched"] > 0 or address == "crew/"  # where people stand does not depend on this input


def test_a_change_is_there_in_its_own_frame(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "")
    assert str(page.evaluate(IN_FRAME, 77)).replace("\u00a0", " ") == "77 birds"


def test_what_is_far_off_has_followed_before_it_is_seen(page: Page, shared_host: Host) -> None:
    """Scrolled to at once, it shows the new number, though its turn would have come later."""
    _open(page, shared_host, "bring/")
    found = page.evaluate(SCROLLED_TO, 150)
    assert found["far"] > PHONE["viewport"]["height"] * 2  # type: ignore[index]
    assert found["seen"] != found["before"]
    page.wait_for_timeout(500)
    assert page.locator("[data-quantity=bags_needed]").first.text_content() == found["seen"]


def test_a_change_outlives_a_page_that_is_left_in_the_same_moment(page: Page, shared_host: Host) -> None:
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('form[data-plan][data-bound]') !== null")
    page.evaluate("() => { document.querySelector('#birds [data-more]').click(); location.href = '../crew/'; }")
    page.wait_for_url("**/crew/")
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('#field-birds').value === '65 birds'")


def test_what_the_disk_did_not_take_goes_on_to_the_next_page(page: Page, shared_host: Host) -> None:
    """As when a browser ends a write that was begun while the page was left."""
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('form[data-plan][data-bound]') !== null")
    page.evaluate("""() => {
      IDBDatabase.prototype.transaction = () => { throw new Error('too late'); };
      document.querySelector('#birds [data-more]').click();
    }""")
    page.goto(f"{shared_host.address}crew/")
    until(page, READY)
    until(page, KEPT)
    page.evaluate("localStorage.clear()")
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('#field-birds').value === '65 birds'")


def test_what_was_left_never_takes_the_place_of_what_came_to_disk_since(page: Page, shared_host: Host) -> None:
    """As when one window is left, another goes on, and a third is opened."""
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('form[data-plan][data-bound]') !== null")
    page.evaluate("""() => {
      const left = [['plan/today/birds', 99], ['plan/today/air_temperature', 300]];
      localStorage.setItem('day /cone-to-cooler/', JSON.stringify(left));
      document.querySelector('#birds [data-more]').click();
    }""")
    until(page, """localStorage.getItem('day /cone-to-cooler/') === '[["plan/today/air_temperature",300]]'""")
    page.goto(f"{shared_host.address}plan/")
    until(page, "document.querySelector('#field-birds').value === '65 birds'")
    until(page, "localStorage.getItem('day /cone-to-cooler/') === null")
