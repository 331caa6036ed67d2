"""The heart of the site in WebKit and Firefox: half of a crew carries phones on which Chromium does not run."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from generator.pipeline.order import Order
from generator.publishing.loaded import loaded_by_all
from tests.browser.host import Host
from tests.browser.test_offline import addresses
from tests.browser.test_updates import OFFERED, publish
from tests.engines.conftest import IN_CHARGE, Engine, keep_offline, until, visit
from tests.engines.webkit import WebKit
from tests.product import product_workbook

STATION = "work/scald/"
DONE = "document.querySelectorAll('.step--done').length"
BOUND = "!document.querySelector('form[data-plan]:not([data-bound])')"
READINGS = """new Promise((done) => {
  indexedDB.open('day /cone-to-cooler/').onsuccess = ({ target }) => {
    const rows = target.result.transaction('facts').objectStore('facts').getAll();
    rows.onsuccess = () => done(rows.result.filter((it) => it.kind === 'reading').map((it) => it.written));
  };
})"""


def test_pages_of_every_kind_start_and_fit(engine: Engine, host: Host, demo: Order) -> None:
    """Chromium looks at every page; here the first two of each folder stand for the rest."""
    folders: dict[str, list[str]] = {}
    for address in addresses(demo.site):
        folders.setdefault(address.rstrip("/").rpartition("/")[0], []).append(address)
    assert len(folders[""]) > 15
    pages = [address for folder, found in folders.items() for address in (found if folder == "" else found[:2])]
    for address in pages:
        visit(engine, host.address + address)
        assert engine.run("document.querySelectorAll('h1').length") == 1, address
        wide = engine.run("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide == 0, f"{address} is {wide} px too wide"


def test_ticks_stay_and_lists_open_with_the_host_dead(engine: Engine, host: Host) -> None:
    keep_offline(engine, host)
    visit(engine, host.address + STATION)
    engine.click(".step__tick")
    until(engine, f"{DONE} === 1")
    visit(engine, host.address + STATION)
    until(engine, f"{DONE} === 1")
    engine.run("void (window.stillHere = true)")
    engine.click(".bar a[aria-label^='Next']")
    until(engine, "!location.pathname.includes('/scald/') && document.querySelector('[data-list]') !== null")
    assert engine.run("window.stillHere"), "the theme loaded the page whole"
    visit(engine, host.address + "about/")
    until(engine, "document.querySelector('[data-offline-state]').innerText.startsWith('Yes')")


def test_what_a_page_has_loaded_comes_once(engine: Engine, host: Host) -> None:
    if isinstance(engine, WebKit):
        pytest.skip("WebKit's driver starts it without a store on disk, so its worker asks the host again")
    keep_offline(engine, host)
    assert {host.asked.count(host.path + name) for name in loaded_by_all(host.folder)} == {1}


def test_the_plan_is_changed_without_signal_and_every_page_follows(engine: Engine, host: Host) -> None:
    workbook = product_workbook()
    values = workbook.compute(workbook.settler.settle(workbook.plan, {"birds": 104.0})).values
    keep_offline(engine, host)
    visit(engine, host.address + "plan/")
    until(engine, BOUND)
    engine.run("document.querySelectorAll('details').forEach((it) => { it.open = true; })")
    until(engine, "document.querySelector('template[data-held]') === null")
    engine.type("#field-birds", "104")
    engine.run("document.activeElement.blur()")
    until(engine, "!document.querySelector('#birds [data-changed]').hidden")
    visit(engine, host.address + "shop/")
    until(engine, f"document.querySelector('[data-quantity=ice_bags]')?.textContent === '{values['ice_bags']:.0f}'")
    visit(engine, host.address + "numbers/chill/")
    until(engine, "document.querySelector('math mn')?.getBoundingClientRect().width > 0")


def test_a_reading_is_judged_and_written_to_disk(engine: Engine, host: Host) -> None:
    visit(engine, host.address + STATION)
    engine.click("[data-reading=scald_reading_taken]")
    until(engine, "document.querySelector('.sheet-over[open] .quick .key') !== null")
    until(engine, "document.querySelector('.tap-guard') === null")
    engine.click(".sheet-over .quick .key:nth-child(3)")
    until(engine, "document.querySelector('.strip')?.innerText.includes('inside the limits')")
    assert engine.run(READINGS) == ["145 °F"]


def test_a_timer_rings_on_the_screen(engine: Engine, host: Host) -> None:
    visit(engine, host.address + STATION)
    engine.run("void (document.querySelector('[data-timer]').dataset.seconds = '1')")
    engine.click("[data-timer]")
    until(engine, "document.querySelector('.alarm').open")
    time.sleep(0.8)  # a tap that was under way is no answer
    engine.click(".alarm button")
    until(engine, "!document.querySelector('.alarm').open")


def test_search_finds_without_signal(engine: Engine, host: Host) -> None:
    keep_offline(engine, host)
    visit(engine, host.address)
    engine.click("[data-search-open]")
    until(engine, "document.querySelector('.finder[open] input') !== null")
    engine.type(".finder input", "gizz")
    until(engine, "document.querySelectorAll('.finder li').length > 0")
    assert "gizz" in engine.run("document.querySelector('.finder li strong').innerText").lower()


def test_a_plan_goes_out_as_a_code(engine: Engine, host: Host) -> None:
    visit(engine, host.address + "pass/")
    width = until(engine, "document.querySelector('[data-code] svg')?.getBoundingClientRect().width")
    assert width >= 200


def test_a_new_version_is_taken_on_a_tap(engine: Engine, host: Host) -> None:
    visit(engine, host.address)
    until(engine, IN_CHARGE, 40)
    publish(host, "second")
    engine.run("navigator.serviceWorker.getRegistration().then((it) => void it.update())")
    until(engine, OFFERED)
    engine.run("[...document.querySelectorAll('.strip__row button')].find((it) => it.innerText === 'Update').click()")
    until(engine, "caches.keys().then((names) => names.length === 1 && names[0].endsWith('second'))")
    host.cut()
    visit(engine, host.address + "about/")
    assert engine.run("document.querySelector('h1').innerText").endswith("second")


def test_the_kill_switch_frees_the_phone(engine: Engine, host: Host) -> None:
    visit(engine, host.address)
    until(engine, IN_CHARGE, 40)
    host.instead["worker.js"] = Path(host.folder, "worker_off.js").read_bytes()
    engine.run("navigator.serviceWorker.getRegistration().then((it) => void it.update())")
    until(engine, "caches.keys().then((names) => names.length === 0)")
    until(engine, "navigator.serviceWorker.getRegistration().then((it) => !it)")
