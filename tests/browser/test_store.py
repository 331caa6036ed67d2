"""Facts in memory and on disk: nothing newer gives way to something older, and a disk that opens late is read."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page

from tests.browser.days import open_page, remark, stored
from tests.browser.host import Host
from tests.browser.watching import READY, until

BETWEEN = """async () => {
  const { openStore } = await import(`${location.pathname}phone/store.js`);
  const store = await openStore('trial');
  const told = [];
  store.watch((key, keys) => told.push(...keys.filter(Boolean)));
  await store.put('timer/one', 1);
  told.length = 0;
  const kept = store.keep([['timer/one', 2], ['timer/two', 2]]);
  await store.remove('timer/one');
  const first = await kept;
  const other = store.keep([['plan/birds', 1]]);
  const later = store.keep([['plan/birds', 2]]);
  await Promise.all([other, later]);
  const anew = await openStore('trial');
  return { first, told, now: Object.fromEntries(store.entries('timer/')), birds: store.get('plan/birds'),
    after: Object.fromEntries(anew.entries('timer/')), later: anew.get('plan/birds') };
}"""
EARLY = """async () => {
  const { openStore } = await import(`${location.pathname}phone/store.js`);
  const other = new BroadcastChannel('trial');
  const { getAll } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.getAll = function (...about) {
    const end = performance.now() + 200;
    const readOn = () => { if (performance.now() < end) this.count().onsuccess = readOn; };
    readOn();
    other.postMessage([['timer/early', 1]]);
    return getAll.apply(this, about);
  };
  const store = await openStore('trial');
  IDBObjectStore.prototype.getAll = getAll;
  return store.get('timer/early');
}"""
SHUT = """
  const { open } = IDBFactory.prototype;
  window.shut = sessionStorage.getItem('shut');
  IDBFactory.prototype.open = function (...about) {
    if (window.shut) throw new DOMException('not now', 'UnknownError');
    return open.apply(this, about);
  };
  const { getAll } = IDBObjectStore.prototype;
  window.rotten = sessionStorage.getItem('rotten');
  IDBObjectStore.prototype.getAll = function (...about) {
    if (window.rotten) throw new DOMException('not now', 'DataError');
    return getAll.apply(this, about);
  };
"""


def test_what_was_changed_while_the_disk_was_written_stays(page: Page, shared_host: Host) -> None:
    page.goto(shared_host.address)
    until(page, READY)
    found = page.evaluate(BETWEEN)
    assert found["now"] == found["after"] == {"timer/two": 2}
    assert found["birds"] == found["later"] == 2
    assert found["first"] is True
    assert found["told"] == ["timer/one", "timer/two", "plan/birds"]


def test_what_another_window_changes_while_the_disk_is_read_is_heard(page: Page, shared_host: Host) -> None:
    page.goto(shared_host.address)
    until(page, READY)
    assert page.evaluate(EARLY) == 1


def test_a_disk_that_opens_late_is_read(phone: BrowserContext, shared_host: Host) -> None:
    for how in ("shut", "rotten"):
        page = open_page(phone, shared_host.address + "log/")
        assert remark(page, f"Before it was {how}.")
        phone.add_init_script(SHUT)
        page.evaluate(f"sessionStorage.setItem('{how}', 'yes')")
        page.reload()
        until(page, READY)
        until(page, "document.querySelector('[data-log-day]').textContent !== ''")
        assert page.locator(".entry").count() == 0
        page.evaluate(f"() => {{ sessionStorage.clear(); window.{how} = null; }}")
        until(page, f"document.querySelector('.entry')?.innerText.includes('Before it was {how}.')")


def test_a_day_begun_beside_a_shut_disk_joins_the_one_that_is_there(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    assert remark(page, "Before.")
    [[name], [run]] = stored(page, "setting/phone"), stored(page, "run/")
    phone.add_init_script(SHUT)
    page.evaluate("sessionStorage.setItem('shut', 'yes')")
    page.reload()
    until(page, READY)
    page.locator("#log-remark").fill("Meanwhile.")
    page.locator("[data-log-remark] button").click()
    until(page, "document.querySelector('[data-log-remark-kept]').textContent.startsWith('NOT SAVED')")
    page.evaluate("() => { sessionStorage.clear(); window.shut = null; }")
    until(page, "document.querySelectorAll('.entry').length === 2")
    page.locator("#log-remark").fill("")
    assert remark(page, "After.")
    assert (stored(page, "setting/phone"), stored(page, "run/")) == ([name], [run])
    page.reload()
    until(page, "document.querySelectorAll('.entry').length === 3")
    assert {each["text"] for each in stored(page) if each["kind"] == "remark"} == {"Before.", "Meanwhile.", "After."}
