"""What is done on the evening before stands with the day that it is for, on every phone."""

from playwright.sync_api import BrowserContext, Page

from tests.browser.days import keys_stored, stored, taps_count
from tests.browser.host import Host
from tests.browser.watching import READY, until

EVENING, MORNING = "2026-07-13T22:00:00", "2026-07-14T06:30:00"
BEFORE, ON_THE_DAY = "work/the_day_before/", "work/scald/"
ONE_DONE = "document.querySelectorAll('.step--done').length === 1"


def at(phone: BrowserContext, time: str, address: str) -> Page:
    page = phone.new_page()
    page.clock.install(time=time)
    page.goto(address)
    until(page, READY)
    page.on("dialog", lambda dialog: (_ for _ in ()).throw(AssertionError(dialog.message)))
    return page


def tick_first(page: Page) -> None:
    page.locator(".step:not([hidden]) .step__tick").first.click()


def runs(page: Page) -> list[str]:
    return keys_stored(page, "run/")


def test_ticks_of_the_evening_before_are_there_in_the_morning(phone: BrowserContext, shared_host: Host) -> None:
    evening = at(phone, EVENING, shared_host.address + BEFORE)
    tick_first(evening)
    sheet = evening.locator(".sheet-over")
    sheet.wait_for()
    assert "Which day is this for?" in sheet.inner_text()
    assert sheet.locator(".button--large").first.inner_text().startswith("Tomorrow, ")
    assert evening.locator(".step--done").count() == 0, "shown when it is kept, not before"
    evening.clock.run_for(1000)
    taps_count(evening)
    sheet.locator(".button--large").first.click()
    until(evening, ONE_DONE)
    assert runs(evening) == ["run/2026-07-14-1"]
    evening.close()

    morning = at(phone, MORNING, shared_host.address + ON_THE_DAY)
    tick_first(morning)
    until(morning, ONE_DONE)
    assert runs(morning) == ["run/2026-07-14-1"]
    morning.goto(shared_host.address + BEFORE)
    until(morning, ONE_DONE)
    morning.goto(shared_host.address)
    until(morning, "document.querySelector('[data-run-words]').innerText.includes('July 14')")
    assert "started at Mon, July 13, 22:00" in morning.locator("[data-run-words]").inner_text()


def test_who_chooses_no_day_has_ticked_nothing(phone: BrowserContext, shared_host: Host) -> None:
    evening = at(phone, EVENING, shared_host.address + BEFORE)
    for _ in range(2):
        evening.clock.run_for(1000)
        taps_count(evening)
        tick_first(evening)
        evening.locator(".sheet-over").wait_for()
        evening.clock.run_for(1000)
        taps_count(evening)
        evening.locator(".sheet-over .sheet__top button").click()
        evening.locator(".sheet-over").wait_for(state="detached")
    assert evening.locator(".step--done").count() == 0
    assert runs(evening) == []


def test_before_noon_it_is_most_likely_today(phone: BrowserContext, shared_host: Host) -> None:
    page = at(phone, MORNING, shared_host.address + BEFORE)
    tick_first(page)
    page.locator(".sheet-over").wait_for()
    assert page.locator(".sheet-over .button--large").first.inner_text().startswith("Today, ")
    page.clock.run_for(1000)
    taps_count(page)
    page.locator("#which-day").fill("2026-07-18")
    page.locator(".sheet-over form button").click()
    until(page, ONE_DONE)
    assert runs(page) == ["run/2026-07-18-1"]


def test_what_is_read_on_the_evening_before_is_asked_about_too(phone: BrowserContext, shared_host: Host) -> None:
    evening = at(phone, EVENING, shared_host.address + BEFORE)
    evening.locator("[data-reading=feed_lifted]").click()
    evening.locator(".sheet-over").wait_for()
    evening.clock.run_for(1000)
    taps_count(evening)
    evening.locator(".sheet-over .button--large").first.click()  # now
    evening.locator(".sheet-over", has_text="Which day is this for?").wait_for()
    evening.clock.run_for(1000)
    taps_count(evening)
    evening.get_by_role("button", name="Tomorrow").click()
    evening.clock.run_for(1000)
    until(evening, "document.querySelector('.sheet-over') === null")
    assert runs(evening) == ["run/2026-07-14-1"]
    (mark,) = [each for each in stored(evening) if each["kind"] == "mark"]
    assert (mark["of"], mark["run"]) == ("feed_lifted", "2026-07-14-1")


def test_on_a_later_day_the_front_page_offers_a_new_one_at_its_top(phone: BrowserContext, shared_host: Host) -> None:
    page = at(phone, MORNING, shared_host.address + ON_THE_DAY)
    tick_first(page)
    until(page, ONE_DONE)
    page.close()
    later = at(phone, "2026-07-18T06:00:00", shared_host.address)
    notice = later.locator("h1 + [data-stale]")
    assert "July 14" in notice.inner_text()
    notice.get_by_role("button", name="Start a new day").click()
    until(later, "document.querySelector('[data-stale]').hidden")
    assert runs(later) == ["run/2026-07-14-1", "run/2026-07-18-1"]


def test_a_day_that_is_put_off_gets_a_list_of_its_own(phone: BrowserContext, shared_host: Host) -> None:
    """What was lifted, counted and laid out for one day is done again for another, and nothing hides that."""
    evening = at(phone, EVENING, shared_host.address + BEFORE)
    tick_first(evening)
    choose(evening, "Tomorrow")
    until(evening, ONE_DONE)
    assert evening.locator(".step__time").inner_text() == "Done at 22:00"
    assert not evening.locator("[data-stale]").is_visible()
    evening.close()

    next_evening = at(phone, "2026-07-14T19:00:00", shared_host.address + BEFORE)
    until(next_evening, ONE_DONE)
    assert next_evening.locator(".step__time").inner_text() == "Done at Mon, July 13, 22:00"
    notice = next_evening.locator("h1 + [data-stale]")
    assert "is for the day of Tue, July 14. Was it put off?" in notice.inner_text()
    notice.get_by_role("button", name="Start a new day").click()
    choose(next_evening, "Today")
    assert runs(next_evening) == ["run/2026-07-14-1"], "it is that day's already"
    next_evening.clock.run_for(1000)
    notice.get_by_role("button", name="Start a new day").click()
    choose(next_evening, "Tomorrow")
    until(next_evening, "document.querySelectorAll('.step--done').length === 0")
    until(next_evening, "document.querySelector('[data-stale]').hidden")
    assert runs(next_evening) == ["run/2026-07-14-1", "run/2026-07-15-1"]


def test_before_a_list_of_the_evening_before_a_new_day_is_asked_for(phone: BrowserContext, shared_host: Host) -> None:
    morning = at(phone, MORNING, shared_host.address + ON_THE_DAY)
    tick_first(morning)
    until(morning, ONE_DONE)
    morning.close()
    evening = at(phone, "2026-07-17T20:00:00", shared_host.address + BEFORE)
    evening.locator("h1 + [data-stale]").get_by_role("button", name="Start a new day").click()
    choose(evening, "Tomorrow")
    until(evening, "document.querySelector('[data-stale]').hidden")
    assert runs(evening) == ["run/2026-07-14-1", "run/2026-07-18-1"]


def choose(page: Page, day: str) -> None:
    page.locator(".sheet-over").wait_for()
    page.clock.run_for(1000)
    taps_count(page)
    page.locator(".sheet-over").get_by_role("button", name=day).click()
    page.locator(".sheet-over").wait_for(state="detached")
