"""A day on two phones without a signal, their browsers killed again and again, their records brought together.

`KILLS=100 python3 run.py test tests/browser/test_two_phones.py` kills as often as that.
"""

from __future__ import annotations

import json
import os
import random
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Page, Playwright

from tests.browser.conftest import FLAGS, PHONE
from tests.browser.days import kill, open_page, remark, stored
from tests.browser.host import Host
from tests.browser.watching import READY, offline_ready, until
from tests.records.samples import entry, file_of

KILLS = int(os.environ.get("KILLS", "4"))
Start = Callable[[str], BrowserContext]
IN_PROC = pytest.mark.skipif(sys.platform != "linux", reason="processes are looked up in /proc")


@pytest.fixture
def start(playwright: Playwright, executable: str | None, tmp_path: Path) -> Iterator[Start]:
    """Starts the phone of a name, with what it kept."""
    started: list[BrowserContext] = []

    def start_one(name: str) -> BrowserContext:
        folder = str(tmp_path / name)
        context = playwright.chromium.launch_persistent_context(folder, executable_path=executable, args=FLAGS, **PHONE)
        started.append(context)
        return context

    yield start_one
    for context in started:
        with suppress(Error):  # killed on purpose
            context.close()


def _work_until_killed(page: Page, phone: str, place: int, chance: random.Random, profile: Path) -> list[str]:
    """Writes remarks down, is killed while one is on its way, and returns those that were acknowledged."""
    kept = []
    for number in range(chance.randrange(3)):
        text = f"{phone} {place} {number}"
        assert remark(page, text)
        kept.append(text)
    page.evaluate("() => document.querySelector('[data-log-remark-kept]').replaceChildren()")
    page.locator("#log-remark").fill(f"{phone} {place} last")
    page.locator("[data-log-remark] button").click(no_wait_after=True)
    time.sleep(chance.random() * 0.05)
    with suppress(Error):
        said = page.evaluate("document.querySelector('[data-log-remark-kept]').textContent")
        kept += [f"{phone} {place} last"] if said.startswith("Kept at") else []
    kill(profile)
    return kept


def _export(page: Page, folder: Path, name: str) -> Path:
    with page.expect_download() as saved:
        page.locator("[data-exchange-file]").click()
    path = folder / f"{name}.json"
    saved.value.save_as(path)
    return path


def _show(page: Page, file: Path) -> None:
    until(page, "document.querySelector('[data-exchange-state]').textContent")
    page.locator("[data-exchange-open]").set_input_files(file)


def _take(page: Page, file: Path) -> str:
    _show(page, file)
    until(page, "document.querySelector('.exchange__file') !== null")
    words = page.locator(".exchange__file").inner_text()
    button = page.locator(".exchange__file button")
    if button.count():
        button.click()
        until(page, "document.querySelector('.exchange__file').innerText.includes('Taken in')")
    return words


@IN_PROC
def test_whatever_was_acknowledged_is_there_once(start: Start, host: Host, tmp_path: Path) -> None:
    chance = random.Random(5)
    for phone in ("one", "two"):
        context = start(phone)
        page = open_page(context, host.address + "log/")
        offline_ready(page)
        context.close()
    host.cut()
    acknowledged = []
    for place in range(KILLS):
        phone = ("one", "two")[place % 2]
        page = open_page(start(phone), host.address + "log/")
        acknowledged += _work_until_killed(page, phone, place, chance, tmp_path / phone)
    pages = {phone: open_page(start(phone), host.address + "log/") for phone in ("one", "two")}
    _take(pages["two"], _export(pages["one"], tmp_path, "one"))
    _take(pages["one"], _export(pages["two"], tmp_path, "two"))
    found = {phone: stored(page) for phone, page in pages.items()}
    for entries in found.values():
        remarks = Counter(entry["text"] for entry in entries if entry["kind"] == "remark")
        assert set(acknowledged) <= set(remarks)
        assert set(remarks.values()) == {1}
        assert len({entry["id"] for entry in entries}) == len(entries)
    texts = [{entry["text"] for entry in entries if entry["kind"] == "remark"} for entries in found.values()]
    assert texts[0] == texts[1]
    assert len({entry["run"] for entry in found["one"]}) == 1
    pages["one"].reload()
    words = _take(pages["one"], tmp_path / "two.json")
    assert "are here already" in words
    assert len(stored(pages["one"])) == len(found["one"])
    assert [entry["taken"] > 0 for entry in found["one"] if entry["kind"] == "merge"] == [True, True]


def test_a_reading_outside_its_limits_is_not_forgotten_over_many_ticks(
    phone: BrowserContext, shared_host: Host, tmp_path: Path
) -> None:
    day, now = time.strftime("%Y-%m-%d"), int(time.time() * 1000) - 3_600_000
    about = {"of": "scald_reading_taken", "value": 345, "written": "161 °F", "limit": {"high": 336}}
    hot = entry(1, "phonebbb", run=f"{day}-1", at=now, **about)
    ticks = [
        entry(n, "phonebbb", kind="tick", of="scald", step=f"step_{n}", run=f"{day}-1", at=now + n * 1000)
        for n in range(2, 212)
    ]
    file = tmp_path / "record.json"
    file.write_text(file_of(hot, *ticks))
    page = open_page(phone, shared_host.address + "log/")
    _take(page, file)
    page.goto(shared_host.address + "plan/")
    until(page, "document.querySelector('.strip')?.innerText.includes('161 °F')")


@pytest.mark.parametrize(("today", "joins"), [("2026-07-18", True), ("2026-07-17", False)])
def test_a_phone_that_is_left_in_an_earlier_day_joins_the_one_that_comes(
    phone: BrowserContext, shared_host: Host, tmp_path: Path, today: str, joins: bool
) -> None:
    """Else what it writes next would begin a second day of the same date. In a day of today it stays."""
    page = phone.new_page()
    page.clock.install(time="2026-07-17T12:00:00Z")
    page.goto(shared_host.address + "log/")
    until(page, READY)
    page.locator("#log-remark").fill("Yesterday.")
    page.locator("[data-log-remark] button").click()
    until(page, "document.querySelector('.entry')", on_each=lambda: page.clock.run_for(500))
    page.clock.set_system_time(f"{today}T12:00:00Z")
    file = tmp_path / "record.json"
    file.write_text(file_of(entry(1, "phonebbb", kind="remark", text="Here.", run=f"{today}-2")))
    _show(page, file)
    page.locator(".exchange__file button").click()
    until(
        page,
        "document.querySelector('.exchange__file').innerText.includes('Taken in')",
        on_each=lambda: page.clock.run_for(500),
    )
    assert stored(page, "state/run") == [f"{today}-2" if joins else "2026-07-17-1"]


def test_nothing_in_a_file_is_executed_and_what_is_refused_is_named(
    phone: BrowserContext, host: Host, tmp_path: Path
) -> None:
    now = int(time.time() * 1000)
    day = time.strftime("%Y-%m-%d")
    about = {"run": f"{day}-1", "at": now, "zone": 0}
    script = "<img src=x onerror=window.hurt=1><script>window.hurt=1</script>"
    entries = [
        {"id": "phonebbb-1-abcdef", "kind": "remark", "text": script, **about},
        {
            "id": "phonebbb-2-abcdef",
            "kind": "reading",
            "of": "scald_reading_taken",
            "value": 9000,
            "written": "9",
            **about,
        },
        {"id": "phonebbb-3-abcdef", "kind": "remark", "text": "=1+1", **about},
    ]
    head = {"format": "day-record", "version": 1, "phone": "phonebbb", "clock": now + 300_000}
    (tmp_path / "theirs.json").write_text(json.dumps({**head, "entries": entries}))
    page = open_page(phone, host.address + "log/")
    words = _take(page, tmp_path / "theirs.json")
    assert "Entries that were not taken: 1" in words
    assert "Entry 2: The reading cannot be" in words
    assert "clock of phone phonebbb is ahead of this one by 4:5" in words or "by 5:00" in words
    until(page, "document.querySelector('[data-log-entries]').innerText.includes('<script>')")
    page = open_page(phone, host.address + "record/")
    until(page, "document.body.innerText.includes('<script>')")
    assert page.evaluate("window.hurt") is None
    for text in ("", "{", "[]", '{"format": "day-record", "version": 99}', json.dumps(head)):
        (tmp_path / "bad.json").write_text(text)
        page = open_page(phone, host.address + "log/")
        _show(page, tmp_path / "bad.json")
        until(page, "document.querySelector('.exchange__file [role=alert]')?.innerText.startsWith('bad.json: ')")
        assert page.locator(".exchange__file button").count() == 0


def _day_of_another_plan(browser: Browser, host: Host) -> Page:
    """A phone with a plan of 70 birds, on which a day has begun."""
    page = open_page(browser.new_context(**PHONE, service_workers="block"), host.address + "plan/#birds")  # type: ignore[arg-type]
    until(page, "document.querySelector('#field-birds').checkVisibility()")
    page.locator("#field-birds").fill("70")
    page.locator("#field-birds").press("Enter")
    until(page, "document.querySelector('#birds [data-changed]').checkVisibility()")
    open_page(page.context, host.address + "log/")
    assert remark(page, "Rain at nine.")
    return page


def test_a_day_finished_there_is_finished_here(
    browser: Browser, phone: BrowserContext, shared_host: Host, tmp_path: Path
) -> None:
    """And no plan was changed, though the day had another than this phone."""
    lead = _day_of_another_plan(browser, shared_host)
    lead.on("dialog", lambda dialog: dialog.accept())
    lead.locator("#log-sign").fill("Ana")
    lead.locator("[data-log-close] button").click()
    until(lead, "document.querySelector('[data-log-day]').innerText.includes('finished at')")
    page = open_page(phone, shared_host.address + "log/")
    _show(page, _export(lead, tmp_path, "lead"))
    until(page, "document.activeElement.closest('.exchange__file') !== null")
    button = page.locator(".exchange__file button").bounding_box()
    assert button
    foot = page.evaluate("document.querySelector('.foot').getBoundingClientRect().top")
    assert 0 < button["y"] < foot - button["height"]
    page.keyboard.press("Enter")
    until(page, "document.querySelector('.exchange__file').innerText.includes('so it is finished here too')")
    until(page, "document.querySelector('[data-log-day]').innerText.includes('finished at')")
    assert page.locator(".entry", has_text="Signed: Ana").count() == 1
    assert page.locator(".entry button").count() == 0
    assert not page.locator("[data-plan-of-the-day]").is_visible()
    assert "is only on this phone" not in page.locator(".strip").inner_text(), "the other phone has it"
    lead.context.close()


def test_a_day_that_goes_on_there_goes_on_here_and_its_plan_can_be_taken(
    browser: Browser, phone: BrowserContext, shared_host: Host, tmp_path: Path
) -> None:
    lead = _day_of_another_plan(browser, shared_host)
    page = open_page(phone, shared_host.address + "log/")
    _take(page, _export(lead, tmp_path, "lead"))
    until(page, "document.querySelector('[data-log-day]').innerText.includes('started at')")
    notice = page.locator("[data-plan-of-the-day]")
    until(page, "document.querySelector('[data-plan-of-the-day]').innerText.startsWith('This phone has another plan')")
    notice.get_by_role("button", name="Use the plan of the day").click()
    until(page, "document.querySelector('[data-plan-of-the-day]').hidden")
    assert [each for each in stored(page, "plan/today/")] == [70]
    lead.context.close()
