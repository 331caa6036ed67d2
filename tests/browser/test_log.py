"""The log: two taps, judged at once, on disk before it is answered, never erased."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route

from tests.browser.conftest import PHONE
from tests.browser.days import mark, open_page, read, remark, stored, tick_ahead
from tests.browser.host import Host
from tests.browser.test_accessibility import axe_finds_nothing
from tests.browser.watching import READY, Noises, until

STRIP = "document.querySelector('.strip')?.innerText ?? ''"


@pytest.mark.parametrize("apart", [120, 250])
def test_a_second_tap_in_haste_does_nothing(phone: BrowserContext, shared_host: Host, apart: int) -> None:
    """Where the first tap lets something else come to lie under the finger."""
    page = open_page(phone, shared_host.address + "log/")
    page.evaluate("window.heard = []; addEventListener('click', (event) => heard.push(event.target.className), true)")
    tub = page.locator("[data-reading=tub_reading]")
    tub.tap()
    quick = page.locator(".sheet-over .quick .key").nth(2)
    quick.wait_for()
    page.wait_for_timeout(500)
    middle = quick.bounding_box()
    assert middle
    for _ in range(2):
        page.touchscreen.tap(middle["x"] + middle["width"] / 2, middle["y"] + middle["height"] / 2)
        page.wait_for_timeout(apart)
    page.wait_for_timeout(500)
    assert page.evaluate("heard.slice(-2)") == ["key", "tap-guard"]
    assert page.url.endswith("log/")
    assert page.locator(".sheet-over, .tap-guard").count() == 0
    assert len([each for each in stored(page) if each["kind"] == "reading"]) == 1


def test_a_second_tap_in_haste_answers_no_question(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    page.locator("[data-reading=scald_reading_taken]").click()
    for digit in "170":
        page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
    keep = page.locator(".sheet-over").get_by_role("button", name="Keep").bounding_box()
    assert keep
    for _ in range(2):
        page.touchscreen.tap(keep["x"] + keep["width"] / 2, keep["y"] + keep["height"] / 2)
        page.wait_for_timeout(120)
    until(page, "document.querySelector('.sheet-over [role=alert]')?.innerText.includes('TOO HIGH')")
    page.wait_for_timeout(500)
    assert page.locator(".sheet-over").count() == 1
    assert not [each for each in stored(page) if each["kind"] == "action"]


@pytest.mark.parametrize(("width", "height"), [(390, 844), (360, 640), (740, 360)])
def test_keep_and_what_is_typed_are_in_sight(browser: Browser, shared_host: Host, width: int, height: int) -> None:
    context = browser.new_context(viewport={"width": width, "height": height}, has_touch=True, service_workers="block")
    page = open_page(context, shared_host.address + "log/")
    mark(page, "lot_begins")
    for reading in ("breast_reading", "dead_on_arrival", "scald_reading_taken"):
        page.locator(f"[data-reading={reading}]").first.click()
        sheet = page.locator(".sheet-over")
        keep = sheet.get_by_role("button", name="Keep")
        keep.wait_for()
        for part in (keep, sheet.locator(".keypad__shown")):
            box = part.bounding_box()
            assert box
            assert box["y"] + box["height"] <= height, reading
            assert box["x"] + box["width"] <= width, reading
        sheet.get_by_role("button", name="Back").click()
    context.close()


def test_a_reading_takes_two_taps_and_is_judged_at_once(
    phone: BrowserContext, shared_host: Host, noises: Noises
) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    page.locator("[data-reading=scald_reading_taken]").click()
    page.locator(".sheet-over .quick .key").nth(2).click()
    until(page, f"({STRIP}).includes('inside the limits')")
    kept = [each for each in stored(page) if each["kind"] == "reading"]
    assert [each["written"] for each in kept] == ["145 °F"]
    assert kept[0]["value"] == pytest.approx(335.928, abs=0.001)  # (145 - 32) / 1.8 + 273.15
    assert kept[0]["limit"]["low"] < kept[0]["value"] < kept[0]["limit"]["high"]
    frozen = [each for each in stored(page) if each["kind"] == "plan"]
    assert len(frozen) == 1
    assert frozen[0]["values"]["scald_hottest"] == kept[0]["limit"]["high"]
    assert noises == Noises()


def test_a_tap_is_heard_before_everything_is_there(phone: BrowserContext, shared_host: Host) -> None:
    held: list[Route] = []
    phone.route("**/phone/reading_buttons.js", lambda route: held.append(route))
    page = phone.new_page()
    page.goto(shared_host.address + "work/scald/")
    while not held:
        page.wait_for_timeout(20)
    page.locator("[data-reading=scald_reading_taken]").click()
    until(page, "document.querySelector('.sheet-over[open] .quick .key') !== null")


def test_outside_the_limits_it_says_what_to_do_and_keeps_what_was_done(
    phone: BrowserContext, shared_host: Host
) -> None:
    page = open_page(phone, shared_host.address + "log/")
    read(page, "scald_reading_taken", "170")
    sheet = page.locator(".sheet-over")
    until(page, "document.querySelector('.sheet-over [role=alert]')?.innerText.includes('TOO HIGH 170')")
    assert "flame down" in sheet.inner_text()
    sheet.get_by_role("button", name="Later").click()
    until(page, f"({STRIP}).includes('nothing done yet: Scald water, 170')")
    page.get_by_role("button", name="What to do").click()
    page.locator(".sheet-over").get_by_role("button", name="Turned the flame down and added cold water.").click()
    until(page, f"!({STRIP}).includes('nothing done yet')")
    by_kind = {each["kind"]: each for each in stored(page)}
    assert by_kind["action"]["answers"] == by_kind["reading"]["id"]
    assert by_kind["action"]["reason"] == "cooled"


def test_a_correction_keeps_both(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    read(page, "birds_in", "60")
    until(page, f"({STRIP}).includes('60')")
    page.locator(".entry", has_text="Birds brought in").get_by_role("button").click()
    page.locator(".sheet-over").get_by_role("button", name="Correct").click()
    for digit in "58":
        page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
    page.locator(".sheet-over").get_by_role("button", name="Keep").click()
    until(page, "document.querySelector('.entry')?.innerText.includes('instead of 60')")
    counts = [each for each in stored(page) if each["kind"] == "count"]
    assert sorted(each["value"] for each in counts) == [58, 60]
    assert counts[1]["corrects"] == counts[0]["id"] or counts[0]["corrects"] == counts[1]["id"]
    page = open_page(phone, shared_host.address + "record/")
    until(page, "document.body.innerText.includes('Corrected or taken back')")
    sums = page.locator("[aria-label='Counts and sums'] tbody").inner_text()
    assert "58" in sums
    assert "60" not in sums


def test_a_correction_keeps_the_time_of_measurement(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    page.goto(shared_host.address + "log/")
    until(page, READY)
    read(page, "tub_reading", "35")
    page.clock.run_for(1000)
    until(page, "document.querySelectorAll('.entry').length === 1")
    page.clock.fast_forward("20:00")
    page.locator(".entry").get_by_role("button").click()
    page.locator(".sheet-over").get_by_role("button", name="Correct").click()
    page.clock.run_for(500)
    page.locator(".sheet-over .keypad").wait_for()
    for digit in "36":
        page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
    page.locator(".sheet-over").get_by_role("button", name="Keep").click()
    page.clock.run_for(500)
    until(page, "document.querySelector('.entry')?.innerText.includes('corrected at')")
    wrong, right = sorted((each for each in stored(page) if each["kind"] == "reading"), key=lambda each: "made" in each)
    assert right["at"] == wrong["at"]
    assert right["made"] - wrong["at"] >= 20 * 60_000
    page.goto(shared_host.address + "record/")
    until(page, "document.body.innerText.includes('Readings and limits')")
    rows = page.locator("[aria-label='Readings and limits'] tbody").inner_text()
    assert "corrected at" in rows
    assert "36" in rows


def _clocked(phone: BrowserContext, address: str) -> Page:
    page = phone.new_page()
    page.clock.install(time="2026-07-18T10:00:00")
    page.goto(address)
    until(page, READY)
    return page


def test_a_mark_written_late_moves_the_limit_back(phone: BrowserContext, shared_host: Host) -> None:
    """And where it is corrected, readings that it judged take the new limit with it."""
    page = _clocked(phone, shared_host.address + "log/")
    page.locator("[data-reading=lot_begins]").first.click()
    page.locator(".sheet-over").get_by_role("button", name="30 min ago, 9:30").click()
    page.clock.run_for(1000)
    until(page, "document.querySelector('.entry')?.innerText.includes('written down at 10:00')")
    (mark_kept,) = [each for each in stored(page) if each["kind"] == "mark"]
    # The page's clock goes on, and is moved on above, between the tap and the writing.
    assert 30 * 60_000 <= mark_kept["made"] - mark_kept["at"] < 31 * 60_000
    read(page, "breast_reading", "70")
    page.clock.run_for(1000)
    allowed = next(each for each in stored(page) if each["kind"] == "plan")["values"]["chill_limit_time"] * 1000
    (reading,) = [each for each in stored(page) if each["kind"] == "reading"]
    assert reading["limit"]["by"] == pytest.approx(mark_kept["at"] + allowed, abs=1)
    page.locator(".entry", has_text="Lot begins").get_by_role("button").click()
    page.locator(".sheet-over").get_by_role("button", name="Correct").click()
    page.clock.run_for(500)
    page.locator("#mark-time").fill("12:00")
    page.locator(".sheet__other").get_by_role("button").click()
    until(page, "document.querySelector('.sheet__refused')?.innerText.includes('has come already')")
    page.locator("#mark-time").fill("09:10")
    page.locator(".sheet__other").get_by_role("button").click()
    page.clock.run_for(1000)
    until(page, "[...document.querySelectorAll('.entry')].some((row) => row.innerText.includes('9:10'))")
    again = [each for each in stored(page) if each["kind"] == "reading" and "corrects" in each]
    assert [each["at"] for each in again] == [reading["at"]]
    assert again[0]["limit"]["by"] == pytest.approx(reading["limit"]["by"] - 20 * 60_000, abs=10_000)


def test_a_warm_bird_of_a_lot_nobody_began_is_not_judged(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    page.locator("[data-reading=breast_reading]").first.click()
    sheet = page.locator(".sheet-over")
    until(page, "document.querySelector('.sheet__act')?.innerText.startsWith('Write down first: Lot begins')")
    assert sheet.locator(".keypad").count() == 0
    sheet.get_by_role("button", name="Lot begins").click()
    page.locator(".sheet-over").get_by_role("button", name="Now").click()
    page.locator(".sheet-over .keypad").wait_for()
    for digit in "80":
        page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
    page.locator(".sheet-over").get_by_role("button", name="Keep").click()
    until(page, f"({STRIP}).includes('on the way')")


def test_finishing_lists_what_is_open(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    said: list[str] = []
    page.on("dialog", lambda dialog: (said.append(dialog.message), dialog.dismiss()))
    mark(page, "work_ends")
    page.locator("#log-sign").fill("Ana")
    page.locator("[data-log-close] button").click()
    mark(page, "lot_begins")
    read(page, "scald_reading_taken", "170")
    page.locator(".sheet-over").get_by_role("button", name="Later").click()
    page.locator("[data-log-close] button").click()
    page.wait_for_timeout(300)
    assert len(said) == 2
    assert said[0].startswith("Finish the day?")
    assert said[1].startswith("Still open:")
    assert "nothing done yet: Scald water, 170" in said[1]
    assert "Not written down: Lot released, Lot 1" in said[1]
    assert page.locator(".entry button").count() > 0


def test_the_next_morning_is_asked_about_and_can_be_begun_anywhere(phone: BrowserContext, shared_host: Host) -> None:
    page = _clocked(phone, shared_host.address + "log/")
    mark(page, "lot_begins")
    page.clock.set_system_time("2026-07-19T06:00:00")
    asked: list[str] = []
    page.on("dialog", lambda dialog: (asked.append(dialog.message), dialog.dismiss()))
    page.goto(shared_host.address + "work/scald/")
    until(page, READY)
    notice = page.locator("h1 + [data-stale]")
    assert "18" in notice.inner_text()
    page.clock.set_system_time("2026-07-18T23:00:00")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(page, "document.querySelector('[data-stale]').hidden")
    page.clock.set_system_time("2026-07-19T06:00:00")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(page, "!document.querySelector('[data-stale]').hidden")
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page.locator(".step__tick").nth(1).click()
    until(page, "document.querySelectorAll('.step--done').length === 2")
    assert len(asked) == 1, "one question is enough for one date"
    notice.get_by_role("button", name="Start a new day").click()
    until(page, "document.querySelectorAll('.step--done').length === 0")
    assert not notice.is_visible()
    assert {each["run"] for each in stored(page) if each["kind"] == "plan"} == {"2026-07-18-1", "2026-07-19-1"}


def test_who_signs_does_not_become_the_holder_of_the_phone(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "signing/")
    page.locator("[data-sign-for]").fill("Ben")
    page.locator("[data-sign-by]").fill("Ana")
    page.locator("[data-sign]").first.click()
    until(page, "document.querySelector('[data-sign-words]').textContent.startsWith('Signed:')")
    assert [each["who"] for each in stored(page) if each["kind"] == "sign"] == ["Ana"]
    assert stored(page, "setting/who") == []


def test_what_was_signed_before_the_day_goes_out_with_its_record(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "record/")
    assert page.locator("[data-record-none] a").is_visible()
    assert not page.locator("[data-record-print]").is_visible()
    page = open_page(phone, shared_host.address + "signing/")
    page.locator("[data-sign-for]").fill("Ben")
    page.locator("[data-sign-by]").fill("Ana")
    page.locator("[data-sign]").first.click()
    until(page, "document.querySelector('[data-sign-words]').textContent.startsWith('Signed:')")
    page = open_page(phone, shared_host.address + "log/")
    mark(page, "lot_begins")
    until(page, "document.querySelector('[data-exchange-state]').textContent.startsWith('3 of 3')")
    with page.expect_download() as saved:
        page.locator("[data-exchange-file]").click()
    file = json.loads(Path(saved.value.path()).read_text("utf-8"))
    assert {each["kind"] for each in file["entries"]} == {"plan", "mark", "sign"}
    page = open_page(phone, shared_host.address + "record/")
    until(page, "document.querySelector('[aria-label=\"Remarks and signatures\"]')?.innerText.includes('Signed: Ana')")


def test_what_cannot_be_is_refused(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    read(page, "scald_reading_taken", "900")
    until(page, "document.querySelector('.sheet__refused')?.innerText.startsWith('900')")
    assert not [each for each in stored(page) if each["kind"] == "reading"]


def test_things_that_are_counted_are_whole_and_tiles_show_their_sum(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    read(page, "birds_in", "1.5")
    until(page, "document.querySelector('.sheet__refused')?.innerText.startsWith('1.5 birds cannot be. Only whole')")
    page.locator(".sheet-over").get_by_role("button", name="Back").click()
    for digits in ("60", "4"):
        read(page, "birds_in", digits)
        until(page, "document.querySelector('.sheet-over') === null")
    until(page, "document.querySelector('[data-reading=birds_in]').innerText.includes('64\u00a0birds in all')")
    assert [each["value"] for each in stored(page) if each["kind"] == "count"] == [60, 4]


def test_more_than_were_brought_in_is_asked_about(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    asked: list[str] = []
    page.on("dialog", lambda dialog: (asked.append(dialog.message), dialog.dismiss()))
    read(page, "birds_killed", "60")
    until(page, "document.querySelectorAll('.entry').length === 1")
    read(page, "birds_in", "64")
    until(page, "document.querySelectorAll('.entry').length === 2")
    read(page, "birds_killed", "4")
    until(page, "document.querySelectorAll('.entry').length === 3")
    assert asked == []
    read(page, "birds_killed", "1")
    page.wait_for_timeout(300)
    told = [words.replace("\u00a0", " ") for words in asked]
    assert told == ["Birds killed: 65 birds. Birds brought in: only 64 birds. Keep it all the same?"]
    assert page.locator(".entry").count() == 3


def test_another_reason_is_told_in_ones_own_words(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    page.locator("[data-reading=birds_condemned]").click()
    sheet = page.locator(".sheet-over")
    field = sheet.get_by_label("Which reason")
    sheet.get_by_role("button", name="Thin", exact=False).first.wait_for()
    assert not field.is_visible()
    sheet.get_by_role("button", name="Another reason").click()
    sheet.locator(".quick .key").first.click()
    until(page, "document.querySelector('.sheet__refused').innerText === 'Write the reason first.'")
    field.fill("Broken wing, old")
    sheet.locator(".quick .key").first.click()
    until(page, "document.querySelectorAll('.entry').length === 2")
    (told,) = [each for each in stored(page) if each["kind"] == "remark"]
    assert told["text"] == "Condemned, 1 bird: Broken wing, old"


def test_a_finished_day_still_shows_what_was_read(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    page.on("dialog", lambda dialog: dialog.accept())
    read(page, "birds_in", "60")
    until(page, "document.querySelectorAll('.entry').length === 1")
    _close(page)
    until(page, "document.querySelector('[data-reading=birds_in]').innerText.includes('60\u00a0birds in all')")


def test_the_record_calls_lists_by_their_titles(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "bring/")
    tick_ahead(page)
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page = open_page(phone, shared_host.address + "shop/")
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page = open_page(phone, shared_host.address + "record/")
    until(page, "document.querySelector('[aria-label=Lists] tbody') !== null")
    titles = [cell.inner_text() for cell in page.locator("[aria-label=Lists] tbody td:first-child").all()]
    assert titles[0].startswith("Bring list: ")
    assert titles[1] == "Shopping list"


def test_not_saved_is_said_in_red_where_the_phone_keeps_nothing(phone: BrowserContext, shared_host: Host) -> None:
    phone.add_init_script("""
      IDBObjectStore.prototype.put = () => { throw new DOMException('no room', 'QuotaExceededError'); };
    """)
    page = open_page(phone, shared_host.address + "log/")
    read(page, "birds_in", "60")
    until(page, "document.querySelector('.sheet__unsaved')?.innerText.startsWith('NOT SAVED')")
    until(page, f"({STRIP}).includes('NOT SAVED')")


def test_readings_come_due_on_the_plans_rhythm(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    page.goto(shared_host.address + "log/")
    until(page, READY)
    mark(page, "lot_begins")
    page.clock.fast_forward("31:00")
    until(page, f"({STRIP}).includes('due since')")
    page.goto(shared_host.address + "plan/")
    until(page, READY)
    page.clock.run_for(2000)
    until(page, f"({STRIP}).includes('due since')")
    page.locator(".strip").get_by_role("button", name="Read").click()
    page.locator(".sheet-over").wait_for()


def test_cooling_is_drawn_and_foretold(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    page.goto(shared_host.address + "log/")
    until(page, READY)
    mark(page, "lot_begins")
    read(page, "tub_reading", "34")
    for degrees in ("100", "80", "62"):
        read(page, "breast_reading", degrees)
        page.clock.run_for(500)
        until(page, "document.querySelector('.sheet-over') === null")
        page.clock.fast_forward("20:00")
    until(page, "document.querySelectorAll('[data-log-curves] circle').length === 3")
    assert page.locator("[data-log-curves] .drawn__limit").count() == 1
    assert "comes to 40.0\u00a0°F at" in page.locator("[data-log-curves] figcaption").inner_text()


TOO_SLOW = "document.querySelector('.strip__row--bad')?.innerText.includes('Too slow, nothing done yet: Deepest')"


def _cools_too_slowly(phone: BrowserContext, host: Host) -> Page:
    """66 °F, and half an hour later 62 °F, in water at 34 °F: at that pace 40 °F is six hours off."""
    page = _clocked(phone, host.address + "log/")
    page.locator("[data-reading=lot_begins]").first.click()
    page.locator("#mark-time").fill("07:10")
    page.locator(".sheet__other").get_by_role("button").click()
    page.clock.run_for(1000)
    read(page, "tub_reading", "34")
    page.clock.run_for(1000)
    read(page, "breast_reading", "66")
    page.clock.run_for(1000)
    page.clock.fast_forward("30:00")
    read(page, "breast_reading", "62")
    page.clock.run_for(1000)
    until(page, "document.querySelector('.sheet-over [role=alert]')?.innerText.startsWith('TOO SLOW 62')")
    return page


def test_a_bird_that_will_be_late_is_told_with_what_still_helps(phone: BrowserContext, shared_host: Host) -> None:
    page = _cools_too_slowly(phone, shared_host)
    sheet = page.locator(".sheet-over")
    assert "That is too late" in sheet.inner_text()
    assert "There is still time." in sheet.inner_text()
    offered = [button.inner_text() for button in sheet.locator(".button--large").all()]
    assert offered[0] == "Added ice and stirred.", "in the order in which they are tried"
    assert "Condemned the birds." not in offered


def test_a_bird_that_will_be_late_stays_red_until_something_is_done(phone: BrowserContext, shared_host: Host) -> None:
    page = _cools_too_slowly(phone, shared_host)
    page.locator(".sheet-over").get_by_role("button", name="Later").click()
    page.clock.run_for(60_000)
    until(page, TOO_SLOW)
    until(page, "document.querySelector('[data-reading=breast_reading]').dataset.verdict === 'high'")
    page.goto(shared_host.address)
    until(page, READY)
    page.clock.run_for(1000)
    until(page, TOO_SLOW)
    page.get_by_role("button", name="What to do").click()
    page.clock.run_for(1000)
    page.locator(".sheet-over").get_by_role("button", name="Added ice and stirred.").click()
    page.clock.run_for(1000)
    until(page, "document.querySelector('.strip__row--bad') === null")
    page.goto(shared_host.address + "record/")
    until(page, "document.querySelector('[aria-label=\"Outside the limits, and what was done\"]') !== null")
    assert "Added ice and stirred." in page.locator("[aria-label='Outside the limits, and what was done']").inner_text()


def test_advice_knows_which_way_a_reading_is_off(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    for degrees, verdict, offered in (
        ("156", "TOO HIGH", "Turned the flame down and added cold water."),
        ("120", "TOO LOW", "Turned the flame up and waited."),
    ):
        read(page, "scald_reading_taken", degrees)
        until(page, f"document.querySelector('.sheet-over [role=alert]')?.innerText.startsWith('{verdict}')")
        large = [button.inner_text() for button in page.locator(".sheet-over .button--large").all()]
        assert large == [offered, "Stopped the line until it read right."]
        page.locator(".sheet-over").get_by_role("button", name="Later").click()


def test_water_far_too_hot_while_it_heats_is_told(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    read(page, "heat_up_reading", "195")
    until(page, "document.querySelector('.sheet-over [role=alert]')?.innerText.startsWith('TOO HIGH 195')")
    assert "Flame off, and no bird in it." in page.locator(".sheet-over").inner_text()


def test_three_tubs_are_read_by_name(phone: BrowserContext, shared_host: Host) -> None:
    """Each has its own time; the tile shows the last, and is red while one of them is too warm."""
    page = _clocked(phone, shared_host.address + "log/")
    mark(page, "lot_begins")
    for tub, degrees in (("1", "55"), ("2", "34")):
        page.locator("[data-reading=tub_reading]").first.click()
        page.locator(".sheet-over .chips[aria-label='Which tub']").get_by_role("button", name=tub, exact=True).click()
        for digit in degrees:
            page.locator(".sheet-over .keypad .key", has_text=digit).first.click()
        page.locator(".sheet-over").get_by_role("button", name="Keep").click()
        page.clock.run_for(1000)
        later = page.locator(".sheet-over").get_by_role("button", name="Later")
        if degrees == "55":
            later.click()
            page.clock.run_for(1000)
    until(page, "document.querySelector('[data-reading=tub_reading]').innerText.includes('Tub 2: 34')")
    assert page.locator("[data-reading=tub_reading]").first.get_attribute("data-verdict") == "high"
    due = page.locator("[data-log-due]").inner_text()
    assert "Tub 1, Lot 1" in due
    assert "Tub 2, Lot 1" in due


def test_nothing_behind_an_open_sheet_is_reached_and_the_finger_comes_back_to_where_it_was(
    phone: BrowserContext, shared_host: Host
) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    page.locator("[data-reading=scald_reading_taken]").click()
    page.locator(".sheet-over").wait_for()
    until(page, "document.querySelector('.tap-guard') === null")
    page.touchscreen.tap(195, 20)  # on the shade, where the page's head is
    until(page, "[...document.body.children].every((it) => it.inert || it.matches('dialog, .sheet-shade, .tap-guard'))")
    assert page.locator(".sheet-over").get_attribute("aria-modal") == "true"
    page.keyboard.press("Escape")
    until(page, "document.activeElement.dataset.reading === 'scald_reading_taken'")
    until(page, "document.querySelector('.sheet-over, .sheet-shade, .tap-guard, [inert]') === null")
    assert page.url.endswith("work/scald/")


def test_rounds_of_a_list_keep_their_own_ticks(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "work/scald/")
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page.get_by_role("button", name="On to Load 2").click()
    until(page, "document.querySelectorAll('.step--done').length === 0")
    page.wait_for_timeout(700)  # a second tap in haste does not count
    page.locator(".step__tick").first.click()
    until(page, "document.querySelectorAll('.step--done').length === 1")
    assert {each["lot"] for each in stored(page) if each["kind"] == "tick"} == {"Load 1", "Load 2"}


def test_a_finished_day_is_signed_read_only_and_asks_to_be_sent(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    page.on("dialog", lambda dialog: dialog.accept())
    assert remark(page, "Rain at nine.")
    page.locator("#log-sign").fill("Ana")
    page.locator("[data-log-close] button").click()
    until(page, "document.querySelector('[data-log-day]').innerText.includes('finished at')")
    assert page.locator(".entry button").count() == 0
    assert any(each["kind"] == "sign" and each["who"] == "Ana" for each in stored(page))
    until(page, f"({STRIP}).includes('is only on this phone')")
    with page.expect_download() as saved:
        page.locator("[data-exchange-file]").click()
    file = json.loads(Path(saved.value.path()).read_text("utf-8"))
    assert {each["kind"] for each in file["entries"]} == {"plan", "remark", "sign"}
    until(page, f"!({STRIP}).includes('is only on this phone')")


def _lot(page: Page) -> str:
    return str(page.locator("[data-log-lot]").input_value())


def _close(page: Page) -> None:
    page.locator("#log-sign").fill("Ana")
    page.locator("[data-log-close] button").click()
    until(page, "document.querySelector('[data-log-day]').innerText.includes('finished at')")


def _answer_dialogs(page: Page, answers: list[str]) -> None:
    page.on("dialog", lambda dialog: dialog.accept(answers.pop(0) if dialog.type == "prompt" else ""))


def test_a_lot_chosen_before_the_day_begins_is_the_days(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    _answer_dialogs(page, ["7", "9"])
    page.locator("[data-log-lot]").select_option("\n")
    mark(page, "lot_begins")
    until(page, "document.querySelectorAll('.entry').length === 1")
    assert _lot(page) == "7"
    _close(page)
    until(page, "document.querySelector('[data-log-lot]').value === '1'")
    page.locator("[data-log-lot]").select_option("\n")
    page.reload()
    until(page, READY)
    until(page, "document.querySelector('[data-log-lot]').value === '9'")
    mark(page, "lot_begins")
    until(page, "document.querySelectorAll('.entry').length === 1")
    assert _lot(page) == "9"
    assert [each["lot"] for each in stored(page) if each["kind"] == "mark"] == ["7", "9"]
    _close(page)
    mark(page, "lot_begins")
    until(page, "!document.querySelector('[data-log-day]').innerText.includes('finished at')")
    assert _lot(page) == "1", "a lot is chosen for one day"


def test_a_closed_day_offers_nothing_to_the_next(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "log/")
    _answer_dialogs(page, ["7"])
    page.locator("[data-log-lot]").select_option("\n")
    read(page, "tub_reading", "36")
    until(page, "document.querySelectorAll('.entry').length === 1")
    _close(page)
    until(page, "document.querySelector('[data-reading=tub_reading]').dataset.verdict === 'none'")
    page.locator("[data-reading=tub_reading]").click()
    sheet = page.locator(".sheet-over")
    sheet.wait_for()
    assert "36" not in sheet.locator(".quick .key").all_inner_texts()
    assert "7" not in sheet.locator(".chip").all_inner_texts()


def test_pasted_text_comes_without_hidden_characters(phone: BrowserContext, shared_host: Host) -> None:
    """Every other phone would refuse the entry for them."""
    page = open_page(phone, shared_host.address + "log/")
    page.locator("[data-reading=breast_reading]").first.click()
    page.locator(".sheet-over").get_by_role("button", name="Go on without it").click()
    sheet = page.locator(".sheet-over")
    sheet.locator("input[type=text]").fill("\u200eby the door\u200e")
    for digit in "62":
        sheet.locator(".keypad .key", has_text=digit).first.click()
    sheet.get_by_role("button", name="Keep").click()
    sheet.locator("#done-other").fill("\u202e \u200e")
    sheet.locator(".sheet__other button").click()
    sheet.locator("#done-other").fill("Put on\u200e ice")
    sheet.locator(".sheet__other button").click()
    sheet.wait_for(state="detached")
    assert [each["name"] for each in stored(page) if "name" in each] == ["by the door"]
    assert [each["text"] for each in stored(page) if each["kind"] == "action"] == ["Put on ice"]


@pytest.mark.parametrize("address", ["record/#50%", "drills/#50%", "record/#%E0%A4%A"])
def test_an_address_with_a_broken_mark_shows_its_page(phone: BrowserContext, shared_host: Host, address: str) -> None:
    page = open_page(phone, shared_host.address + "log/")
    mark(page, "lot_begins")
    page = open_page(phone, shared_host.address + address)
    until(page, "document.querySelector('[data-record-shown] h2, .drill__answer') !== null")


def test_names_of_people_are_whole_and_those_who_left_are_gone(phone: BrowserContext, shared_host: Host) -> None:
    page = open_page(phone, shared_host.address + "crew/")
    for name in ("Ana/Ben", "Cleo"):
        page.locator("[data-people-add] input").first.fill(name)
        page.locator("[data-people-add] button").first.click()
    written = page.locator("[data-person]").first.get_attribute("data-person")
    for name in ("Cleo", written):
        page.locator(f"[data-person='{name}'] [data-leave]").first.click()
        until(page, f"document.querySelector(\"[data-person='{name}']\") === null")
    page = open_page(phone, shared_host.address + "log/")
    until(page, "document.querySelectorAll('[data-log-who] option').length > 2")
    names = {"Ana/Ben", "Cleo", written}
    assert names & set(page.locator("[data-log-who] option").all_inner_texts()) == {"Ana/Ben"}
    page = open_page(phone, shared_host.address + "signing/")
    page.locator("[data-sign-names] option").first.wait_for(state="attached")
    listed = {each.get_attribute("value") for each in page.locator("[data-sign-names] option").all()}
    assert names & listed == {"Ana/Ben"}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(browser: Browser, shared_host: Host, scheme: str) -> None:
    context = browser.new_context(**PHONE, color_scheme=scheme, service_workers="block")  # type: ignore[arg-type]
    page = open_page(context, shared_host.address + "log/")
    mark(page, "lot_begins")
    page.locator("[data-reading=breast_reading]").first.click()
    page.locator(".sheet-over .keypad").wait_for()
    for where in ("sheet", "outside", "log/", "record/"):
        if where == "outside":
            page.locator(".sheet-over").get_by_role("button", name="Back").click()
            read(page, "scald_reading_taken", "170")
            page.locator(".sheet-over .verdict--outside").wait_for()
        elif where.endswith("/"):
            page = open_page(context, shared_host.address + where)
            page.wait_for_timeout(300)
        axe_finds_nothing(page, where)
    context.close()
