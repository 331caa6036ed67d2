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


STUCK = """
  const { open } = IDBFactory.prototype;
  const { transaction } = IDBDatabase.prototype;
  const silent = { objectStore: () => silent, put() {}, delete() {}, commit() {} };
  IDBFactory.prototype.open = function (...about) { return window.closed_ears ? {} : open.apply(this, about); };
  IDBDatabase.prototype.transaction = function (names, mode, ...about) {
    return window.stuck && mode === 'readwrite' ? silent : transaction.call(this, names, mode, ...about);
  };
"""
"""A database that never answers, as on iPhones now and then (WebKit's bug 315804)."""
SAVED = "!document.querySelector('.strip').innerText.includes('NOT SAVED')"


def test_a_disk_that_never_answers_is_told_and_tried_again(phone: BrowserContext, shared_host: Host) -> None:
    phone.add_init_script(STUCK)
    page = phone.new_page()
    page.clock.install()
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    page.locator(".step__tick").first.click()
    page.clock.run_for(1000)
    until(page, f"{SAVED} && document.querySelectorAll('.step--done').length === 1")
    page.evaluate("window.stuck = true")
    page.locator(".step__tick").nth(1).click()
    until(page, f"!({SAVED})", on_each=lambda: page.clock.run_for(1000), seconds=20)
    page.evaluate("window.stuck = false")
    until(page, SAVED, on_each=lambda: page.clock.run_for(1000), seconds=20)
    page.reload()
    until(page, READY)
    assert page.locator(".step--done").count() == 2


def test_a_disk_that_does_not_open_keeps_no_program_waiting(phone: BrowserContext, shared_host: Host) -> None:
    phone.add_init_script(STUCK + "window.closed_ears = sessionStorage.getItem('closed');")
    page = open_page(phone, shared_host.address + "work/scald/")
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page.wait_for_timeout(300)
    page.evaluate("sessionStorage.setItem('closed', 'yes')")
    page.clock.install()
    page.reload()
    until(page, READY, on_each=lambda: page.clock.run_for(1000), seconds=20)
    page.evaluate("window.closed_ears = ''")
    until(page, "document.querySelector('.step--done')", on_each=lambda: page.clock.run_for(1000), seconds=20)


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
