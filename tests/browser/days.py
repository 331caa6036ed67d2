"""Works a day on a phone as a person would, and remembers what the phone acknowledged."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page

from tests.browser.watching import READY, until

STORED = """(prefix) => new Promise((done) => {
  const ask = indexedDB.open('day /cone-to-cooler/', 1);
  ask.onsuccess = () => {
    const table = ask.result.transaction('facts').objectStore('facts');
    const rows = table.getAll(IDBKeyRange.bound(prefix, prefix + '\\uffff'));
    rows.onsuccess = () => { ask.result.close(); done(rows.result); };
  };
})"""

Started = Callable[[], BrowserContext]


def open_page(context: BrowserContext, address: str) -> Page:
    page = context.pages[0] if context.pages else context.new_page()
    page.goto(address)
    until(page, READY, 20)
    return page


def stored(page: Page, prefix: str = "log/") -> list[dict[str, Any]]:
    """What is on disk, read past the page's own programs."""
    found: list[dict[str, Any]] = page.evaluate(STORED, prefix)
    return found


def keys_stored(page: Page, prefix: str) -> list[str]:
    """Under which keys something is on disk."""
    found: list[str] = page.evaluate(STORED.replace("getAll(", "getAllKeys("), prefix)
    return found


def read(page: Page, reading: str, digits: str) -> None:
    """Opens a reading, types it and keeps it; returns when the phone has answered."""
    _open_sheet(page, reading)
    sheet = page.locator(".sheet-over")
    for digit in digits:
        sheet.locator(".keypad .key", has_text=digit).first.click()
    sheet.get_by_role("button", name="Keep").click()


def _open_sheet(page: Page, reading: str) -> None:
    taps_count(page)
    page.locator(f"[data-reading={reading}]").first.click()
    page.locator(".sheet-over").wait_for()
    taps_count(page)


def taps_count(page: Page) -> None:
    """Waits until a tap is no longer taken for the second of two; Playwright itself would look ever more seldom."""
    until(page, "document.querySelector('.tap-guard') === null")


def tick_ahead(page: Page) -> None:
    """The first tick of a list that is worked through before its day, which is asked for."""
    page.locator(".step__tick").first.click()
    page.locator(".sheet-over").wait_for()
    taps_count(page)
    page.locator(".sheet-over .button--large").first.click()


def mark(page: Page, reading: str) -> None:
    _open_sheet(page, reading)
    page.locator(".sheet-over .button--large").first.click()
    page.locator(".sheet-over").wait_for(state="detached")


def remark(page: Page, text: str) -> bool:
    """Writes a remark down; whether the phone said that it is kept."""
    page.locator("#log-remark").fill(text)
    page.locator("[data-log-remark] button").click()
    return bool(until(page, "document.querySelector('[data-log-remark-kept]').textContent.startsWith('Kept at')"))


def kill(profile: Path) -> None:
    """Kills the browser of a profile folder, this test's own, as a dead battery would."""
    for file in Path("/proc").glob("[0-9]*/cmdline"):
        try:
            command = file.read_bytes().split(b"\0")
        except OSError:
            continue
        is_first = not any(each.startswith(b"--type=") for each in command)
        if is_first and f"--user-data-dir={profile}".encode() in command:
            os.kill(int(file.parent.name), signal.SIGKILL)
    for lock in profile.glob("Singleton*"):  # what a phone does not have
        lock.unlink()
