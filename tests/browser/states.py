"""The states a page comes to while it is used, each brought about as a person would."""

from __future__ import annotations

import json
import time
from collections.abc import Callable

from playwright.sync_api import Page

from tests.browser.days import mark, read, remark, taps_count
from tests.browser.watching import READY, until

STATION = "work/scald/"
NO_ROOM = "IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError'); };"
State = Callable[[Page, str], None]


def _open(page: Page, address: str) -> None:
    page.goto(address)
    until(page, READY, 20)


def _type(page: Page, field: str, text: str) -> None:
    page.locator(f"#field-{field}").fill(text)
    page.locator(f"#field-{field}").press("Tab")


def _plan(page: Page, site: str) -> None:
    _open(page, site + "plan/")
    until(page, "!document.querySelector('form[data-plan]:not([data-bound])')")
    page.evaluate("document.querySelectorAll('details').forEach((it) => { it.open = true; })")
    until(page, "document.querySelector('template[data-held]') === null")


def keypad(page: Page, site: str) -> None:
    _open(page, site + STATION)
    page.locator("[data-reading=scald_reading_taken]").first.click()
    page.locator(".sheet-over .keypad").wait_for()


def mark_asked(page: Page, site: str) -> None:
    _open(page, site + "log/")
    page.locator("[data-reading=lot_begins]").first.click()
    page.locator(".sheet-over .button--large").first.wait_for()


def outside_the_limits(page: Page, site: str) -> None:
    _open(page, site + "log/")
    read(page, "scald_reading_taken", "170")
    page.locator(".sheet-over .verdict--outside").wait_for()


def nothing_done_yet(page: Page, site: str) -> None:
    outside_the_limits(page, site)
    taps_count(page)
    page.locator(".sheet-over").get_by_role("button", name="Later").click()
    page.locator(".strip__row--bad", has_text="nothing done yet").wait_for()


def inside_the_limits(page: Page, site: str) -> None:
    _open(page, site + "log/")
    read(page, "scald_reading_taken", "145")
    page.locator(".strip__row", has_text="inside the limits").wait_for()


def correcting(page: Page, site: str) -> None:
    _open(page, site + "log/")
    read(page, "birds_in", "60")
    page.locator(".entry", has_text="Birds brought in").get_by_role("button").click()
    page.locator(".sheet-over").get_by_role("button", name="Correct").wait_for()


def corrected(page: Page, site: str) -> None:
    correcting(page, site)
    taps_count(page)
    page.locator(".sheet-over").get_by_role("button", name="Correct").click()
    page.locator(".sheet-over .keypad").wait_for()
    taps_count(page)
    page.locator(".sheet-over .keypad .key", has_text="5").first.click()
    page.locator(".sheet-over").get_by_role("button", name="Keep").click()
    until(page, "document.querySelector('.entry')?.innerText.includes('instead of 60')")


def day_asked(page: Page, site: str) -> None:
    _open(page, site + "work/the_day_before/")
    page.locator(".step__tick").first.click()
    page.locator(".sheet-over #which-day").wait_for()


def day_finished(page: Page, site: str) -> None:
    page.on("dialog", lambda dialog: dialog.accept())
    _open(page, site + "log/")
    mark(page, "lot_begins")
    page.locator("#log-sign").fill("Ana")
    page.locator("[data-log-close] button").click()
    until(page, "document.querySelector('.entry button') === null")


def day_is_of_another_date(page: Page, site: str) -> None:
    page.clock.install(time="2026-07-13T10:00:00")
    _open(page, site + STATION)
    page.locator(".step:not([hidden]) .step__tick").first.click()
    until(page, "document.querySelector('.step--done') !== null")
    page.clock.set_system_time("2026-07-18T06:00:00")
    _open(page, site + "")
    page.locator("h1 + [data-stale]").wait_for()


def search(page: Page, site: str) -> None:
    _open(page, site + STATION)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("water")
    until(page, "document.querySelectorAll('.finder li').length > 3")


def search_in_vain(page: Page, site: str) -> None:
    _open(page, site + STATION)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("qqqq")
    until(page, "document.querySelector('.finder__count')?.textContent")


def drill_asked(page: Page, site: str) -> None:
    _open(page, site + "drills/#new_here")
    page.locator(".drill__answer").first.wait_for()


def drill_answered(page: Page, site: str) -> None:
    drill_asked(page, site)
    while not page.locator("[data-onward]").count():
        page.locator(".drill__answer:not([disabled])").first.click()
        page.wait_for_timeout(50)


def crew_with_one_who_may_not(page: Page, site: str) -> None:
    _open(page, site + "crew/")
    until(page, "document.querySelector('[data-person]') !== null")
    page.locator("[data-people-add] input").fill("Noor")
    page.locator("[data-people-add] button").click()
    page.locator("[data-person=Noor] select").first.select_option("kill")
    until(page, "document.querySelector('.person__lacks')?.textContent.includes('Killing knife')")
    page.locator("[data-person=Finn] [data-leave]").click()
    page.locator("[data-left] button").wait_for()


def signed(page: Page, site: str) -> None:
    _open(page, site + "signing/")
    page.locator("[data-sign-for]").fill("Ben")
    page.locator("[data-sign-by]").fill("Ana")
    page.locator("[data-sign]").first.click()
    until(page, "document.querySelector('[data-sign-words]').textContent.startsWith('Signed:')")


def not_saved(page: Page, site: str) -> None:
    page.add_init_script(NO_ROOM)
    _open(page, site + "log/")
    read(page, "birds_in", "60")
    until(page, "document.querySelector('.sheet__unsaved')?.innerText.startsWith('NOT SAVED')")


def not_saved_at_a_station(page: Page, site: str) -> None:
    page.add_init_script(NO_ROOM)
    _open(page, site + STATION)
    page.locator(".step__tick").first.click()
    page.locator(".strip__row--bad", has_text="NOT SAVED").wait_for()


def stop_at_the_edge(page: Page, site: str) -> None:
    _plan(page, site)
    _type(page, "birds", "140")
    page.locator(".strip__row", has_text="STOP:").first.wait_for()


def refused(page: Page, site: str) -> None:
    _plan(page, site)
    _type(page, "birds", "many")
    _type(page, "chill_water_temperature", "45 °F")
    page.locator("#chill_water_temperature [data-refusal]:not([hidden])").first.wait_for()


def plan_arrived(page: Page, site: str) -> None:
    _plan(page, site)
    _type(page, "birds", "50")
    _open(page, site + "pass/")
    until(page, "document.querySelector('[data-pass]').dataset.painted !== undefined")
    link = page.locator("[data-link]").input_value()
    _plan(page, site)
    _type(page, "birds", "70")
    _open(page, site + "pass/")
    page.locator("#plan-paste").fill(link)
    page.locator("[data-receive] button").click()
    page.locator("[data-arrived-take]").wait_for()


def plan_refused(page: Page, site: str) -> None:
    _open(page, site + "pass/")
    until(page, "document.querySelector('[data-code] svg') !== null")
    page.locator("#plan-paste").fill("#plan=1~torn")
    page.locator("[data-receive] button").click()
    page.locator("[data-receive-refused]").wait_for()


def question_answered(page: Page, site: str) -> None:
    _open(page, site + "questions/")
    ask = page.locator("[data-question=birds_by_the_clock]")
    ask.locator("input").fill("12:00")
    ask.locator("input").blur()
    ask.locator("[data-take]").wait_for()


def timers_run(page: Page, site: str) -> None:
    _open(page, site + STATION)
    for _ in range(2):
        page.locator("[data-timer]").first.click()
        page.wait_for_timeout(700)
    until(page, "document.querySelector('.strip__row .left')?.innerText")


def timer_ended(page: Page, site: str) -> None:
    timers_run(page, site)
    page.locator(".strip").get_by_role("button", name="End").first.click()
    page.wait_for_timeout(300)


def alarm(page: Page, site: str) -> None:
    _open(page, site + STATION)
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '0'; }")
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.alarm').open")


def reading_due(page: Page, site: str) -> None:
    page.clock.install()
    _open(page, site + "log/")
    mark(page, "lot_begins")
    page.clock.fast_forward("31:00")
    page.locator(".strip__row", has_text="due since").first.wait_for()


def file_shown(page: Page, site: str) -> None:
    now = int(time.time() * 1000)
    about = {"run": time.strftime("%Y-%m-%d") + "-1", "at": now, "zone": 0}
    entries = [
        {"id": "phonebbb-1-abcdef", "kind": "remark", "text": "Rain.", **about},
        {"id": "phonebbb-2-abcdef", "kind": "reading", "of": "scald_reading_taken", "value": 9000, **about},
    ]
    head = {"format": "day-record", "version": 1, "phone": "phonebbb", "clock": now + 300_000}
    _open(page, site + "log/")
    page.evaluate("document.querySelectorAll('details').forEach((it) => { it.open = true; })")
    until(page, "document.querySelector('[data-exchange-state]').textContent !== ''")
    content = json.dumps({**head, "entries": entries}).encode()
    page.locator("[data-exchange-open]").set_input_files(
        {"name": "b.json", "mimeType": "application/json", "buffer": content}
    )
    page.locator(".exchange__file button").wait_for()


def day_written_down(page: Page, site: str) -> None:
    _open(page, site + "log/")
    mark(page, "lot_begins")
    read(page, "birds_in", "60")
    read(page, "scald_reading_taken", "145")
    assert remark(page, "Rain.")
    _open(page, site + "record/")
    until(page, "document.querySelector('[data-record-shown] h2') !== null")


def learner_asked(page: Page, site: str) -> None:
    _open(page, site + "work/kill_and_bleed/")
    page.locator("[data-teach=learner]").click()
    page.locator("[data-hide]").click()
    until(page, "document.querySelectorAll('.gap').length > 5")


def trainer(page: Page, site: str) -> None:
    _open(page, site + "work/kill_and_bleed/")
    page.locator("[data-teach=trainer]").click()
    page.locator(".teach__tick").first.click()
    until(page, "document.querySelector('.teach__tick input').checked")


def list_done(page: Page, site: str) -> None:
    _open(page, site + STATION)
    for box in page.locator(".step:not([hidden]) .step__tick").all():
        box.click()
        page.wait_for_timeout(30)
    until(page, "document.querySelectorAll('.step--done').length > 1")


def unknown_page(page: Page, site: str) -> None:
    _open(page, site + "no/such/page/")


def without_programs(page: Page, site: str) -> None:
    page.clock.install()
    page.route("**/phone/main.js", lambda route: route.abort())
    page.goto(site + STATION)
    page.clock.run_for(11_000)
    page.get_by_text("Nothing you tap is kept here.").wait_for()


STATES = [
    keypad, mark_asked, outside_the_limits, nothing_done_yet, inside_the_limits, correcting, corrected, day_asked,
    day_finished, day_is_of_another_date, search, search_in_vain, drill_asked, drill_answered,
    crew_with_one_who_may_not, signed, not_saved, not_saved_at_a_station, stop_at_the_edge, refused, plan_arrived,
    plan_refused, question_answered,
    timers_run, timer_ended, alarm, reading_due, file_shown, day_written_down, learner_asked, trainer, list_done,
    unknown_page, without_programs,
]  # fmt: skip
