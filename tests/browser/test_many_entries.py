"""Five thousand entries on a slow phone, and a phone that stood still."""

from __future__ import annotations

import os
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser.conftest import PHONE
from tests.browser.days import open_page, stored
from tests.browser.host import Host
from tests.browser.watching import until

MANY = 5000

FILL = """async (many) => {
  const open = indexedDB.open('day /cone-to-cooler/', 1);
  const base = await new Promise((done) => { open.onsuccess = () => done(open.result); });
  const table = base.transaction('facts', 'readwrite').objectStore('facts');
  const day = new Date(), two = (n) => String(n).padStart(2, '0');
  const run = `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}-1`;
  const start = Math.max(Date.now() - many * 2000, day.setHours(0, 0, 0, 0)); // not yesterday
  const [each, zone] = [(Date.now() - start) / many * 0.95, -day.getTimezoneOffset()];
  const kinds = [
    { kind: 'tick', of: 'scald', step: 'read_water' },
    { kind: 'reading', of: 'scald_reading_taken', value: 335, written: '143 °F', limit: { low: 333, high: 339 } },
    { kind: 'count', of: 'birds_killed', value: 1, written: '1', lot: '1' },
    { kind: 'remark', text: 'so it was' },
  ];
  table.put({ begun: start }, `run/${run}`);
  table.put(run, 'state/run');
  for (let place = 1; place <= many; place += 1) {
    const phone = place % 2 ? 'phoneaaa' : 'phonebbb';
    const at = Math.round(start + place * each);
    const entry = { id: `${phone}-${place}-abcdef`, run, at, zone, ...kinds[place % 4] };
    if (entry.kind === 'tick') entry.lot = `Load ${place}`;
    table.put(entry, `log/${run}/${entry.id}/x`);
  }
  await new Promise((done) => { table.transaction.oncomplete = done; });
  base.close();
}"""

COUNTED = """async ([tap, answered]) => {
  const look = new Function(`return ${answered}`);
  const counts = { changed: 0, asked: 0 };
  let last = 0;
  const watcher = new MutationObserver((changes) => {
    counts.changed += changes.length;
    last = performance.now();
  });
  const all = { subtree: true, childList: true, attributes: true, characterData: true };
  watcher.observe(document.querySelector('[data-md-component=content]'), all);
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (...about) { counts.asked += 1; return transaction.apply(this, about); };
  document.querySelector(tap).click();
  while (!look()) await new Promise((done) => setTimeout(done, 5));
  do await new Promise((done) => setTimeout(done, 400)); while (performance.now() - last < 400);
  watcher.disconnect();
  IDBDatabase.prototype.transaction = transaction;
  return counts;
}"""
"""What a tap changes in the page, and how often it asks for the disk, until everything has come to rest."""


def _tapped(page: Page, tap: str, answered: str) -> dict[str, int]:
    counts: dict[str, int] = page.evaluate(COUNTED, [tap, answered])
    return counts


def _taps(context: BrowserContext, host: Host) -> list[dict[str, int]]:
    """Some ticks, an opened sheet and a kept reading, twice."""
    page = open_page(context, host.address + "work/scald/")
    until(page, "document.querySelector('[data-reading=scald_reading_taken]').dataset.verdict")
    page.wait_for_timeout(500)
    done = int(page.evaluate("document.querySelectorAll('.step--done').length"))
    counts = [
        _tapped(
            page, f".step:nth-child({row}) input", f"document.querySelectorAll('.step--done').length === {done + row}"
        )
        for row in range(1, 5)
    ]
    opened, kept = "document.querySelector('.sheet-over .quick .key')", "!document.querySelector('.sheet-over')"
    for _ in range(2):
        counts.append(_tapped(page, "[data-reading=scald_reading_taken]", opened))
        counts.append(_tapped(page, ".sheet-over .quick .key", kept))
    return counts


def test_a_tap_is_the_same_work_among_five_thousand_entries(browser: Browser, shared_host: Host) -> None:
    """What it takes in time, `python3 run.py bench` prints; how often entries are looked at, tests/phone counts."""
    counted = {}
    for many in (4, MANY):
        context = browser.new_context(**PHONE, service_workers="block")  # type: ignore[arg-type]
        page = open_page(context, shared_host.address + "about/")
        page.evaluate(FILL, many)
        counted[many] = _taps(context, shared_host)
        entries = stored(context.pages[0])
        assert len(entries) == many + 7  # four ticks, the list as it stood, two readings
        assert len({each["id"] for each in entries}) == many + 7
        context.close()
    assert counted[MANY] == counted[4]
    assert [each["asked"] for each in counted[4]] == [1, 1, 1, 1, 0, 1, 0, 1]


def _processes(profile: Path) -> list[int]:
    found = {}
    for status in Path("/proc").glob("[0-9]*/stat"):
        try:
            fields = status.read_text().rsplit(")", 1)[1].split()
            command = (status.parent / "cmdline").read_bytes()
        except OSError:
            continue
        found[int(status.parent.name)] = (int(fields[1]), f"--user-data-dir={profile}".encode() in command)
    mine = {pid for pid, (_, is_mine) in found.items() if is_mine}
    while more := {pid for pid, (parent, _) in found.items() if parent in mine} - mine:
        mine |= more
    return sorted(mine)


@pytest.mark.skipif(sys.platform != "linux", reason="processes are looked up in /proc")
def test_a_timer_is_right_after_the_phone_stood_still(
    persistent: Callable[[], BrowserContext], host: Host, tmp_path: Path
) -> None:
    page = open_page(persistent(), host.address + "work/scald/")
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '2'; }")
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.strip__row .left')?.innerText")
    stopped = _processes(tmp_path / "profile")
    assert stopped
    for pid in stopped:
        os.kill(pid, signal.SIGSTOP)
    time.sleep(5)
    for pid in reversed(stopped):
        os.kill(pid, signal.SIGCONT)
    until(page, "document.querySelector('.alarm').open", 5)
    minutes, seconds = page.locator(".alarm__ago").inner_text().removesuffix(" ago").split(":")
    assert 2 <= int(minutes) * 60 + int(seconds) <= 7
    assert page.locator(".alarm__says").inner_text().startswith("Pull a large wing feather.")
