"""Ticks: on disk before anything can happen to them, and never mixed up."""

import os
import signal
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.browser.days import stored
from tests.browser.host import Host
from tests.browser.watching import READY, until

STATION = "work/scald/"


def _kill(profile: Path) -> None:
    """Kills this test's own browser, told by its profile folder, as a dead battery would."""
    for file in Path("/proc").glob("[0-9]*/cmdline"):
        try:
            command = file.read_bytes().split(b"\0")
        except OSError:
            continue
        if f"--user-data-dir={profile}".encode() in command and not any(
            each.startswith(b"--type=") for each in command
        ):
            os.kill(int(file.parent.name), signal.SIGKILL)
    for lock in profile.glob("Singleton*"):  # what a phone does not have
        lock.unlink()


@pytest.mark.skipif(sys.platform != "linux", reason="processes are looked up in /proc")
def test_ticks_outlive_a_killed_browser(persistent: Callable[[], BrowserContext], host: Host, tmp_path: Path) -> None:
    for count in (1, 2, 3):
        page = persistent().new_page()
        page.goto(host.address + STATION)
        until(page, READY)
        assert page.locator(".step--done").count() == count - 1
        page.locator(".step:not([hidden]) .step__tick").nth(count - 1).click()
        until(page, f"document.querySelectorAll('.step--done').length === {count}")
        _kill(tmp_path / "profile")


def test_two_windows_agree(phone: BrowserContext, shared_host: Host) -> None:
    one, other = phone.new_page(), phone.new_page()
    for page in (one, other):
        page.goto(shared_host.address + STATION)
        until(page, READY)
    one.locator(".step__tick").first.click()
    until(other, "document.querySelector('.step').classList.contains('step--done')")
    other.locator(".step__tick").first.click()
    until(one, "!document.querySelector('.step').classList.contains('step--done')")


def test_a_new_day_begins_anew_and_keeps_the_old(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    page.locator(".step__tick").first.click()
    until(page, "document.querySelector('.step').classList.contains('step--done')")
    page.goto(shared_host.address)
    until(page, "document.querySelector('[data-run-words]').innerText.startsWith('Day of')")
    until(page, READY)
    page.on("dialog", lambda dialog: dialog.accept())
    page.locator("[data-new-run]").click()
    until(page, "!document.querySelector('[data-old-runs]').hidden")
    assert "1 ticks" in page.locator("[data-old-run-list]").text_content()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    assert page.locator(".step--done").count() == 0


def test_the_front_page_shows_how_far_each_station_is(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    rows = page.locator(".step:not([hidden]) .step__tick")
    all_rows = rows.count()
    for row in range(all_rows):
        rows.nth(row).click()
    until(page, f"document.querySelectorAll('.step--done').length === {all_rows}")
    page.goto(shared_host.address)
    stop = page.locator("[data-procedure=scald]")
    until(page, "document.querySelector('[data-procedure=scald]').classList.contains('stop--done')")
    assert stop.locator("[data-progress]").inner_text() == "Done"
    until(page, "!document.querySelector('[data-go-on]').hidden")


def test_the_front_page_leads_to_where_the_crew_is(phone: BrowserContext, shared_host: Host) -> None:
    """To what was ticked last, then to what follows it; a new day does not begin with the weeks before."""
    page = phone.new_page()
    page.on("dialog", lambda dialog: dialog.accept())
    home = shared_host.address
    _tick(page, home, "brief_the_crew")
    _goes_on_to(page, home, "Brief the crew")
    _tick(page, home, "scald")
    _goes_on_to(page, home, "Scald")
    _tick(page, home, "brief_the_crew")
    _goes_on_to(page, home, "Brief the crew")
    _tick(page, home, "scald", every=True)
    _goes_on_to(page, home, "Pluck")
    until(page, READY)
    page.locator("[data-new-run]").click()
    until(page, "!document.querySelector('[data-old-runs]').hidden")
    _goes_on_to(page, home, "Site and water")


def test_nobody_is_sent_to_what_is_done_only_when_needed(phone: BrowserContext, shared_host: Host) -> None:
    """Who turned to it goes on with it."""
    page, home = phone.new_page(), shared_host.address
    sick = page.locator("[data-procedure=kill_a_sick_or_hurt_bird] [data-progress]")
    _tick(page, home, "kill_and_bleed", every=True)
    _goes_on_to(page, home, "Scald")
    assert sick.inner_text() == "If needed"
    _tick(page, home, "kill_a_sick_or_hurt_bird")
    _goes_on_to(page, home, "Kill a sick or hurt bird")
    assert sick.inner_text().startswith("1 of ")


def _goes_on_to(page: Page, home: str, title: str) -> None:
    page.goto(home)
    until(page, f"document.querySelector('[data-go-on]').textContent === 'Go on: {title}'")


def _tick(page: Page, home: str, station: str, *, every: bool = False) -> None:
    page.goto(f"{home}work/{station}/")
    until(page, READY)
    rows = page.locator(".step:not([hidden]):not(.step--done) .step__tick")
    count = rows.count() if every else 1
    done = page.locator(".step--done").count()
    for more in range(1, count + 1):
        rows.first.click()
        until(page, f"document.querySelectorAll('.step--done').length === {done + more}")


def test_cleared_site_data_under_an_open_page_is_written_again(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    page.locator(".step__tick").nth(0).click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    session = phone.new_cdp_session(page)
    session.send("Storage.clearDataForOrigin", {"origin": shared_host.origin, "storageTypes": "indexeddb"})
    page.locator(".step__tick").nth(1).click()
    until(page, "document.querySelectorAll('.step--done').length === 2")
    until(page, "document.querySelector('.strip__row--bad') === null")
    page.reload()
    until(page, READY)
    assert page.locator(".step--done").count() == 2


NO_ROOM = "indexedDB.open = () => { throw new DOMException('no room', 'QuotaExceededError'); };"
FORBIDDEN = """
  const refuse = () => { throw new DOMException('The operation is insecure.', 'SecurityError'); };
  window.BroadcastChannel = function () { refuse(); };
  for (const name of ['indexedDB', 'localStorage']) Object.defineProperty(window, name, { get: refuse });
"""
"""As Firefox does where the keeping of site data is blocked."""


@pytest.mark.parametrize("refused", [NO_ROOM, FORBIDDEN])
def test_where_nothing_can_be_kept_the_page_says_so(phone: BrowserContext, shared_host: Host, refused: str) -> None:
    phone.add_init_script(refused)
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    assert page.locator(".strip__row--bad").inner_text().startswith("NOT SAVED"), "before anything is tapped"
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page.goto(shared_host.address + "log/")
    until(page, READY)
    assert page.locator(".strip__row--bad").inner_text().startswith("NOT SAVED"), "on the next page"


TWICE = """(between) => new Promise((done) => {
  const tick = document.querySelector('.step__tick');
  tick.click();
  setTimeout(() => done(tick.click()), between);
})"""


@pytest.mark.parametrize("between", [90, 300])
def test_two_quick_taps_are_one_and_a_later_one_takes_it_back(
    phone: BrowserContext, shared_host: Host, between: int
) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    tick = page.locator(".step__tick").first
    page.evaluate(TWICE, between)
    page.wait_for_timeout(650)
    assert page.locator(".step--done").count() == 1
    assert sum(entry["kind"] == "tick" for entry in stored(page)) == 1
    tick.click()
    until(page, "document.querySelectorAll('.step--done').length === 0")


def test_the_next_round_looks_out_of_reach_until_something_is_ticked(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    on = page.locator("[data-rounds] .button:not([hidden])")
    assert on.is_disabled()
    assert on.evaluate("(it) => getComputedStyle(it).borderStyle") == "dashed"
    assert on.inner_text() == "Tick, then Load 2"
    row = "document.querySelector('[data-rounds]').offsetHeight"
    before = page.evaluate(row)
    page.locator(".step__tick").first.click()
    until(page, "!document.querySelector('[data-rounds] .button:not([hidden])').disabled")
    assert on.evaluate("(it) => getComputedStyle(it).borderStyle") == "solid"
    assert on.inner_text() == "On to Load 2"
    assert page.evaluate(row) == before, "the list stays where fingers are"
