"""Timers keep only their end, so nothing that happens in between can hurt them."""

from collections.abc import Callable
from typing import Any

from playwright.sync_api import BrowserContext, Page

from tests.browser.days import stored
from tests.browser.host import Host
from tests.browser.watching import READY, until

STATION = "work/scald/"
TAPPED_AT_ONCE = """
  const alarm = document.querySelector('.alarm');
  let seen = '';
  const tap = () => {
    const title = alarm.querySelector('.alarm__title').innerText;
    if (!alarm.open || title === seen) return;
    seen = title;
    alarm.dataset.tapped = Number(alarm.dataset.tapped ?? 0) + 1;
    for (const it of alarm.querySelectorAll('button, a')) it.click();
  };
  new MutationObserver(tap).observe(alarm, { attributes: true, attributeFilter: ['open'] });
  new MutationObserver(tap).observe(alarm.querySelector('.alarm__title'), { childList: true });
"""
"""A tap as soon as an alarm opens, and as soon as another takes its place."""
LEFT = "document.querySelector('.strip__row .left')?.innerText ?? ''"


def test_a_timer_is_seen_on_every_page_and_after_a_restart(
    persistent: Callable[[], BrowserContext], host: Host
) -> None:
    phone = persistent()
    page = phone.new_page()
    page.goto(host.address + STATION)
    until(page, READY)
    button = page.locator("[data-timer]").first
    seconds = float(button.get_attribute("data-seconds") or 0)
    button.click()
    until(page, LEFT)
    page.goto(host.address + "plan/")
    until(page, LEFT)
    phone.close()
    page = persistent().new_page()
    page.goto(host.address)
    minutes, rest = str(until(page, LEFT)).split(":")
    assert 0 < int(minutes) * 60 + int(rest) < seconds


def test_a_timer_that_ended_while_the_page_slept_rings_at_once(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.clock.install()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    button = page.locator("[data-timer]").first
    label, seconds = button.get_attribute("data-label"), float(button.get_attribute("data-seconds") or 0)
    button.click()
    page.clock.fast_forward(int(seconds * 1000) + 32_000)
    until(page, "document.querySelector('.alarm').open")
    assert page.locator(".alarm__title").inner_text() == label
    assert page.locator(".alarm__ago").inner_text() == "0:32 ago"
    page.clock.run_for(1000)
    page.locator(".alarm button").click()
    page.clock.run_for(1000)
    until(page, "!document.querySelector('.alarm').open")
    until(page, f"({LEFT}) === ''")


def test_a_tap_that_was_under_way_does_not_stop_the_alarm(phone: BrowserContext, shared_host: Host) -> None:
    """Nor does the second of two taps stop the alarm that comes next."""
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    button = page.locator("[data-timer]").first
    button.evaluate("(it) => { it.dataset.seconds = '1'; }")
    button.click()
    page.wait_for_timeout(650)
    button.click()
    page.evaluate(TAPPED_AT_ONCE)
    for left in (2, 1):
        until(page, f"document.querySelector('.alarm').dataset.tapped === '{3 - left}'")
        page.wait_for_timeout(800)
        assert page.evaluate("document.querySelector('.alarm').open")
        page.locator(".alarm button").click()
    until(page, "!document.querySelector('.alarm').open")


def test_several_at_once_the_next_first(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    for button in page.locator("[data-timer]").all() * 2:
        button.click()
        page.wait_for_timeout(650)
    until(page, "document.querySelectorAll('.strip__row .left').length >= 2")
    ends = page.locator(".strip__row .left").all_inner_texts()
    seconds = [int(end.split(":")[0]) * 60 + int(end.split(":")[1]) for end in ends if end]
    assert seconds == sorted(seconds)


SOUND = """
  const Real = window.AudioContext;
  window.tones = 0;
  window.made = [];
  window.AudioContext = class extends Real {
    constructor() { super(); window.made.push(this); window.audio = this; }
    createOscillator() { window.tones += 1; return super.createOscillator(); }
    get state() { return this.isCutOff ? 'interrupted' : super.state; }
  };
  navigator.audioSession = { type: 'auto' };
"""


def _with_a_short_timer(phone: BrowserContext, host: Host) -> Page:
    """A page that tells what it makes of sound, its first timer set to a second and not yet started."""
    phone.add_init_script(SOUND)
    page = phone.new_page()
    page.goto(host.address + STATION)
    until(page, READY)
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '1'; }")
    return page


def test_what_a_call_cut_off_is_made_anew_by_the_next_tap(phone: BrowserContext, shared_host: Host) -> None:
    """As the Web Audio API's state `interrupted` has it, which iPhones alone come to. A finger that only goes down
    may not unlock sound there; one that is lifted may."""
    phone.add_init_script(SOUND)
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    page.locator("[data-timer]").first.click()
    until(page, f"({LEFT}) && window.audio.state === 'running'")
    page.evaluate("window.made.forEach((audio) => { audio.isCutOff = true; })")
    made = page.evaluate("window.made.length")
    page.locator("h1").tap()
    until(page, f"window.made.length > {made} && window.audio.state === 'running'")


def test_an_alarm_asks_to_be_heard_in_spite_of_a_silent_switch(phone: BrowserContext, shared_host: Host) -> None:
    """`playback` is the type of the Audio Session API (W3C) that a silent switch does not turn off."""
    page = _with_a_short_timer(phone, shared_host)
    assert page.evaluate("navigator.audioSession.type") == "auto"
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.alarm').open && navigator.audioSession.type === 'playback'")
    page.wait_for_timeout(800)
    page.locator(".alarm button").click()
    until(page, "!document.querySelector('.alarm').open && navigator.audioSession.type === 'auto'")


def test_a_new_timer_sounds_because_the_tap_unlocked_it(phone: BrowserContext, shared_host: Host) -> None:
    page = _with_a_short_timer(phone, shared_host)
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.alarm').open")
    until(page, "window.tones > 0")
    assert page.evaluate("window.audio.state") == "running"


def test_two_quick_taps_start_one_timer_and_end_one(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + STATION)
    until(page, READY)
    button = page.locator("[data-timer]").first
    button.dblclick(delay=90)
    until(page, LEFT)
    page.wait_for_timeout(650)
    assert len(stored(page, "timer/")) == 1
    button.click()
    page.wait_for_timeout(650)
    assert len(stored(page, "timer/")) == 2
    page.locator(".strip__row button").first.dblclick(delay=90)
    page.wait_for_timeout(650)
    assert len(stored(page, "timer/")) == 1


def one_that_was_ended(phone: BrowserContext, host: Host) -> tuple[Page, list[dict[str, Any]]]:
    """A page whose clock the test moves, and what was stored of the timer before it was ended there."""
    page = phone.new_page()
    page.clock.install()
    page.goto(host.address + STATION)
    until(page, READY)
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '21600'; }")
    page.locator("[data-timer]").first.click()
    until(page, LEFT)
    before = stored(page, "timer/")
    page.locator(".strip").get_by_role("button", name="End").click()
    page.clock.run_for(650)
    return page, before


def test_a_timer_that_was_ended_can_be_brought_back_for_a_while(phone: BrowserContext, shared_host: Host) -> None:
    page, before = one_that_was_ended(phone, shared_host)
    assert stored(page, "timer/") == []
    page.locator(".strip").get_by_role("button", name="Undo").click()
    page.clock.run_for(650)
    assert stored(page, "timer/") == before
    page.locator(".strip").get_by_role("button", name="End").click()
    page.clock.run_for(9000)
    assert "Undo" not in str(page.evaluate("document.querySelector('.strip').innerText"))
    assert stored(page, "timer/") == []


def test_it_can_be_brought_back_on_a_page_that_is_loaded_anew_and_is_then_forgotten(
    phone: BrowserContext, shared_host: Host
) -> None:
    page, before = one_that_was_ended(phone, shared_host)
    page.reload()
    until(page, READY)
    page.locator(".strip").get_by_role("button", name="Undo").click()
    page.clock.run_for(650)
    assert stored(page, "timer/") == before
    assert stored(page, "ended/") == []
    page.locator(".strip").get_by_role("button", name="End").click()
    page.clock.run_for(650)
    assert len(stored(page, "ended/")) == 1
    page.clock.run_for(9000)
    assert stored(page, "ended/") == []
    assert "Undo" not in page.locator(".strip").inner_text()


def test_an_alarm_that_may_not_flash_still_fills_the_screen(phone: BrowserContext, shared_host: Host) -> None:
    """Where less motion is asked for it stands in the colour that nothing else fills the screen with."""
    page = phone.new_page()
    page.emulate_media(reduced_motion="reduce")
    page.goto(shared_host.address + STATION)
    until(page, READY)
    page.locator("[data-timer]").first.evaluate("(it) => { it.dataset.seconds = '0'; }")
    page.locator("[data-timer]").first.click()
    until(page, "document.querySelector('.alarm').open")
    assert page.evaluate("document.getAnimations().length") == 0
    alarm = page.locator(".alarm")
    assert alarm.evaluate("(it) => getComputedStyle(it).backgroundColor") == "rgb(255, 212, 0)"
    assert alarm.bounding_box() == {"x": 0, "y": 0, "width": 390, "height": 844}
