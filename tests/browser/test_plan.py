"""The plan through its own fields: every page follows, as Python computes it; nothing typed wrongly gets through."""

import os
import random
import signal
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from generator.computing import Workbook
from generator.model.measure import Measure
from generator.units.showing import show
from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import READY, Noises, offline_ready, unfold_all, until
from tests.product import product_workbook
from tests.repeating import TIMES

PLANS = 25 * TIMES
GROUPS = ("clock", "chill", "line", "gas")
BOUND = "!document.querySelector('form[data-plan]:not([data-bound])')"
FOLLOWING = (
    "['birds', 'ice_bags', 'ice_total'].flatMap((id) => [...document.querySelectorAll(`[data-quantity=${id}]`)])"
)
STANDS = {"birds": "60 birds", "first_kill_time": "7:00"}
TYPE_ALL = """(texts) => {
  for (const reset of document.querySelectorAll('[data-input] [data-reset]')) if (!reset.hidden) reset.click();
  for (const [id, text] of Object.entries(texts)) {
    const box = document.getElementById(`field-${id}`);
    box.focus();
    box.value = text;
    box.dispatchEvent(new Event('input', { bubbles: true }));
    box.dispatchEvent(new Event('change', { bubbles: true }));
    box.blur();
  }
  return [...document.querySelectorAll('.plan [data-refused]:not([hidden])')].map((it) => it.textContent);
}"""
SET_BACK = """() => {
  for (const field of document.querySelectorAll('[data-input]')) {
    const touched = field.querySelector('[aria-invalid=true], [data-changed]:not([hidden])');
    if (touched) field.querySelector('[data-reset]').click();
  }
}"""
SHOWN = """() => Object.fromEntries([...document.querySelectorAll('.number [data-quantity][data-show=first]')]
  .map((it) => [it.dataset.quantity, it.textContent]))"""


@pytest.fixture(scope="module")
def workbook() -> Workbook:
    return product_workbook()


@pytest.fixture(scope="module")
def fields(browser: Browser, shared_host: Host) -> Iterator[Page]:
    """The page of the plan, opened once for all that only type."""
    context = browser.new_context(**PHONE, service_workers="block")  # type: ignore[arg-type]
    yield _open(context.new_page(), shared_host)
    context.close()


@pytest.fixture
def as_the_farm_has_it(fields: Page) -> Page:
    """The same with nothing changed."""
    fields.evaluate(SET_BACK)
    until(fields, "[...document.querySelectorAll('[data-changed], .plan [data-refused]')].every((it) => it.hidden)")
    return fields


def _open(page: Page, host: Host, address: str = "plan/") -> Page:
    page.goto(host.address + address)
    until(page, READY)
    until(page, BOUND)
    unfold_all(page)
    return page


def _type(page: Page, field: str, text: str) -> None:
    box = page.locator(f"#field-{field}")
    box.fill(text)
    box.evaluate("(it) => { it.dispatchEvent(new Event('change', { bubbles: true })); it.blur(); }")


def _refusal(page: Page, field: str) -> str:
    place = page.locator(f"#{field} [data-refused]")
    return _plain(place.inner_text()) if place.is_visible() else ""


def _plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def _chosen(workbook: Workbook, chance: random.Random) -> dict[str, tuple[str, float]]:
    """Some inputs with texts to type in US units, and what they are in SI."""
    chosen = {}
    for name in chance.sample(list(workbook.givens.inputs), chance.randrange(1, 6)):
        given, measure = workbook.givens.inputs[name], workbook.items[name].measure
        value = chance.choice([given.default, chance.uniform(given.low, given.high)])
        text = _text(value, measure, given.whole, workbook)
        if given.low <= text[1] <= given.high:
            chosen[name] = text
    return chosen


def _text(value: float, measure: Measure, whole: bool, workbook: Workbook) -> tuple[str, float]:
    if measure.form == "clock":
        minutes = round(value / 60)
        return f"{minutes // 60}:{minutes % 60:02}", minutes * 60.0
    if measure.form == "duration":
        seconds = round(value)
        return f"{seconds} s", float(seconds)
    number = round(workbook.book.from_si(value, measure.us.unit), 0 if whole else 3)
    text = f"{number:.0f}" if whole else f"{number:.3f}"
    return text, workbook.book.to_si(float(text), measure.us.unit)


def test_random_plans_come_out_as_in_python(phone: BrowserContext, shared_host: Host, workbook: Workbook) -> None:
    """Plans typed in one window; others show pages of numbers and follow."""
    fields = _open(phone.new_page(), shared_host)
    followers = [_open(phone.new_page(), shared_host, f"numbers/{group}/") for group in GROUPS]
    chance = random.Random(20)
    for _ in range(PLANS):
        chosen = _chosen(workbook, chance)
        refused = fields.evaluate(TYPE_ALL, {name: text for name, (text, _) in chosen.items()})
        assert refused == [], chosen
        changes: dict[str, float | str] = {name: value for name, (_, value) in chosen.items()}
        day = workbook.compute(workbook.settler.settle(workbook.plan, changes))
        for numbers in followers:
            _agrees(numbers, workbook, day.values, chosen)


def _reset(page: Page) -> None:
    page.evaluate(TYPE_ALL, {})


def _agrees(page: Page, workbook: Workbook, values: Any, chosen: object) -> None:
    shown: dict[str, str] = {}

    def expected(name: str) -> str:
        value, item = values.get(name), workbook.items[name]
        if value is None:
            return "–"
        if isinstance(value, str):
            return str(shown[name])
        return show(value, item.measure, "us", workbook.book, item.quantity.digits)

    for _ in range(200):
        shown = page.evaluate(SHOWN)
        different = {name: (text, expected(name)) for name, text in shown.items() if text != expected(name)}
        if not different:
            return
        page.wait_for_timeout(25)
    assert not different, f"{chosen}: {different}"


def test_every_page_follows_without_signal(
    phone: BrowserContext, host: Host, workbook: Workbook, noises: Noises
) -> None:
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    host.cut()
    _open(page, host)
    _type(page, "birds", "104")
    settings = workbook.settler.settle(workbook.plan, {"birds": 104.0})
    values = workbook.compute(settings).values
    for address in ("", "shop/", "crew/", "day/", "questions/", "pass/", "sheet/", "numbers/chill/", "work/chilling/"):
        page.goto(host.address + address)
        until(page, READY)
        until(page, f"{FOLLOWING}.every((it) => !/^(60\\sbirds|262\\slb.*|14)$/.test(it.textContent))")
    page.goto(host.address + "shop/")
    until(page, f"document.querySelector('[data-quantity=ice_bags]').textContent === '{values['ice_bags']:.0f}'")
    assert [each for each in noises.errors if "ERR_" not in each and "Failed to load" not in each] == []


@pytest.mark.parametrize(
    ("field", "text", "kept"),
    [
        ("birds", "104", "104 birds"),
        ("birds", " 104 birds ", "104 birds"),
        ("tap_temperature", "9 °C", "48 °F"),
        ("tap_temperature", "9c", "48 °F"),
        ("tap_temperature", "48,7", "49 °F"),
        ("tap_temperature", "48.7 F", "49 °F"),
        ("ice_on_hand", "150 kg", "331 lb"),
        ("first_kill_time", "6.30", "6:30"),
        ("first_kill_time", "0630", "6:30"),
        ("break_time", "1 h 10 min", "70 min"),
        ("ice_temperature", "-4", "−4 °F"),
        ("ice_temperature", "−4 °F", "−4 °F"),
    ],
)
def test_takes_what_people_type(as_the_farm_has_it: Page, field: str, text: str, kept: str) -> None:
    page = as_the_farm_has_it
    _type(page, field, text)
    assert _refusal(page, field) == ""
    assert page.locator(f"#field-{field}").input_value() == kept
    assert page.locator(f"#{field} [data-changed]").is_visible()


@pytest.mark.parametrize(
    ("field", "text", "says"),
    [
        ("birds", "", "Write a number."),
        ("birds", "many", "“many” is not a number."),
        ("birds", "1,000", "can be read two ways"),
        ("birds", "-5", "Too low: at least 1 bird."),
        ("birds", "100000", "Too high: at most 1000 birds."),
        ("birds", "60.5", "A whole number, please."),
        ("birds", "60 kg", "“kg” is not a unit for this"),
        ("birds", "6e1", "“e1” is not a unit for this"),
        ("first_kill_time", "25:00", "Write a time such as 7:30."),
        ("birds", "<b>60</b>", "is not a number"),
        ("birds", "60\u202e", "is not a unit for this"),
    ],
)
def test_refuses_at_the_field_and_keeps_the_plan(as_the_farm_has_it: Page, field: str, text: str, says: str) -> None:
    page = as_the_farm_has_it
    _type(page, field, text)
    assert says in _refusal(page, field) and _refusal(page, field).endswith(f" Still {STANDS[field]}.")
    assert page.locator(f"#field-{field}").get_attribute("aria-invalid") == "true"
    assert page.locator(f"#{field} [data-changed]").is_hidden()
    assert _plain(page.locator(".day__plan [data-quantity=birds]").inner_text()) == "60 birds"


@pytest.mark.parametrize(
    ("text", "says", "kept"),
    [
        ("\t104\u00a0birds \r\n", "", "104 birds"),
        ("birds: 104", "“birds: 104” is not a number.", "birds: 104"),
        ("104\n105", "Too high: at most 1000 birds.", "104 105"),  # a space stands between thousands
    ],
)
def test_takes_what_is_pasted(
    phone: BrowserContext, shared_host: Host, noises: Noises, text: str, says: str, kept: str
) -> None:
    phone.grant_permissions(["clipboard-read", "clipboard-write"])
    page = _open(phone.new_page(), shared_host)
    page.evaluate("(text) => navigator.clipboard.writeText(text)", text)
    page.locator("#field-birds").focus()
    page.keyboard.press("Control+A")
    page.keyboard.press("Control+V")
    page.keyboard.press("Tab")
    assert _refusal(page, "birds") == (f"{says} Still {STANDS['birds']}." if says else "")
    assert page.locator("#field-birds").input_value() == kept
    assert noises.errors == []


def test_a_refused_field_shows_the_plan_again_once_it_is_set_back(page: Page, shared_host: Host) -> None:
    """Though the plan itself has not changed in between."""
    _open(page, shared_host)
    _type(page, "birds", "many")
    page.locator("#birds [data-more]").click()
    assert (_refusal(page, "birds"), page.locator("#field-birds").input_value()) == ("", "65 birds")
    _type(page, "birds", "many")
    page.locator("#birds [data-reset]").click()
    until(page, "document.querySelector('#field-birds').value === '60 birds'")
    assert _refusal(page, "birds") == ""


def test_a_refusal_stands_at_its_input_and_leaves_no_stale_number(page: Page, shared_host: Host) -> None:
    _open(page, shared_host)
    _type(page, "chill_water_temperature", "45 °F")
    until(page, "document.querySelector('#chill_water_temperature [data-refusal]:not([hidden])') !== null")
    page.locator("[data-refusals]", has_text="no colder than the target").wait_for()
    for address in ("", "sheet/", "day/", "work/chilling/"):
        page.goto(shared_host.address + address)
        until(page, READY)
        until(
            page,
            "[...document.querySelectorAll('[data-quantity=chill_time], [data-quantity=last_chill_out_time]')]"
            ".every((it) => it.textContent === '–' || it.textContent === '')",
        )
    _open(page, shared_host)
    page.locator("#chill_water_temperature [data-reset]").click()
    until(page, "document.querySelector('[data-refusals]').hidden")


def test_a_stop_is_told_at_the_edge_of_the_screen_and_a_tap_leads_to_it(page: Page, shared_host: Host) -> None:
    """Ice on hand is for 90 birds."""
    _open(page, shared_host)
    row = page.locator(".strip__row", has_text="Ice gone before the birds are packed")
    assert row.count() == 0
    _type(page, "birds", "140")
    row.wait_for()
    assert row.locator("span").first.inner_text() == "STOP: Ice gone before the birds are packed"
    row.get_by_role("link", name="See it").click()
    until(page, "document.querySelector('#watch-ice_gone_early').getBoundingClientRect().bottom < innerHeight")
    box, head = page.locator("#watch-ice_gone_early").bounding_box(), page.locator("header").bounding_box()
    assert box and head and box["y"] >= head["y"] + head["height"]
    page.locator(".bar a", has_text="Today").click()
    until(page, "document.querySelector('[data-procedure]') !== null")
    row.wait_for(state="detached")
    _open(page, shared_host)
    row.wait_for()
    _type(page, "birds", "60")
    row.wait_for(state="detached")
    _type(page, "scald_set_temperature", "155 °F")
    until(page, "document.querySelector('.strip').innerText.includes('Warning: Scald set too hot')")


def test_units_change_in_one_tap_and_are_remembered(page: Page, shared_host: Host) -> None:
    _open(page, shared_host)
    page.locator("[data-units][value=metric]").check(force=True)
    until(page, "document.querySelector('#field-tap_temperature').value === '16 °C'")
    _open(page, shared_host)
    assert page.locator("#field-tap_temperature").input_value() == "16 °C"
    assert _plain(page.locator("#tap_temperature [data-other]").inner_text()) == "60 °F"


def test_steppers_stop_at_the_ends(page: Page, shared_host: Host) -> None:
    _open(page, shared_host)
    _type(page, "cones", "39")
    for _ in range(3):
        page.locator("#cones [data-more]").click()
    assert page.locator("#field-cones").input_value() == "40"
    assert page.locator("#cones [data-more]").bounding_box()["height"] >= 48  # type: ignore[index]


def test_an_option_brings_its_defaults(page: Page, shared_host: Host, workbook: Workbook) -> None:
    _open(page, shared_host)
    page.locator("#field-species").select_option("turkey")
    brought = workbook.settler.settle(workbook.plan, {"species": "turkey"})
    item = workbook.items["live_mass"]
    said = show(float(brought["live_mass"]), item.measure, "us", workbook.book, item.quantity.digits)
    until(page, f"document.querySelector('#field-live_mass').value === {said.replace(chr(160), ' ')!r}")
    page.on("dialog", lambda dialog: dialog.accept())
    page.locator("[data-reset-all]").click()
    until(page, "document.querySelector('#field-species').value === 'broiler'")


def test_plans_are_kept_copied_renamed_and_deleted_with_undo(page: Page, shared_host: Host) -> None:
    answers = ["Wet day"]
    page.on("dialog", lambda dialog: dialog.accept(answers[0]))
    _open(page, shared_host)
    _type(page, "birds", "104")
    page.locator("#keep-name").fill("Monday")
    page.locator("[data-keep] button").click()
    row = page.locator(".kept__row").filter(has_text="kept on")
    row.filter(has_text="Monday").locator("[data-copy]").click()
    until(page, "document.querySelectorAll('.kept__row').length >= 3")
    assert row.locator("[data-name]").all_inner_texts() == ["Monday", "Monday, copy"]
    row.nth(1).locator("[data-rename]").click()
    until(page, "[...document.querySelectorAll('.kept__row [data-name]')].some((it) => it.textContent === 'Wet day')")
    row.filter(has_text="Monday").locator("[data-delete]").click()
    assert row.locator("[data-name]").all_inner_texts() == ["Wet day"]
    page.locator("[data-kept-undo] button").click()
    assert row.locator("[data-name]").all_inner_texts() == ["Monday", "Wet day"]
    _reset(page)
    until(page, "document.querySelector('#field-birds').value === '60 birds'")
    row.filter(has_text="Wet day").locator("[data-use]").click()
    until(page, "document.querySelector('#field-birds').value === '104 birds'")
    page.locator("[data-kept-undo] button").click()
    until(page, "document.querySelector('#field-birds').value === '60 birds'")


def test_a_plan_of_the_farm_is_that_plan(page: Page, shared_host: Host, workbook: Workbook) -> None:
    _open(page, shared_host)
    page.locator(".kept__row").filter(has_text="A first day with twelve birds").locator("[data-use]").click()
    until(page, "document.querySelector('#field-birds').value === '12 birds'")
    page.goto(shared_host.address + "numbers/clock/")
    day = workbook.compute(workbook.settle(workbook.library.plans["first_day"].values, {}))
    _agrees(page, workbook, day.values, "first_day")


def test_two_windows_agree_on_the_plan(phone: BrowserContext, shared_host: Host) -> None:
    one, other = _open(phone.new_page(), shared_host), _open(phone.new_page(), shared_host)
    _type(one, "birds", "77")
    until(other, "document.querySelector('#field-birds').value === '77 birds'")
    other.locator("#birds [data-reset]").click()
    until(one, "document.querySelector('#field-birds').value === '60 birds'")


def test_two_windows_change_two_things_at_once(phone: BrowserContext, shared_host: Host) -> None:
    one, other = _open(phone.new_page(), shared_host), _open(phone.new_page(), shared_host)
    other.locator("#field-ice_on_hand").focus()
    _type(one, "birds", "77")
    _type(other, "ice_on_hand", "150 kg")
    both = "['birds', 'ice_on_hand'].map((id) => document.querySelector(`#field-${id}`).value).join()"
    for page in (one, other):
        until(page, f"{both} === '77 birds,331 lb'")
    one.locator("[data-reset-all]").wait_for()


@pytest.mark.skipif(sys.platform != "linux", reason="processes are looked up in /proc")
def test_the_plan_outlives_a_killed_browser(
    persistent: Callable[[], BrowserContext], host: Host, tmp_path: Path
) -> None:
    page = _open(persistent().new_page(), host)
    _type(page, "birds", "91")
    until(page, "document.querySelector('.day__plan [data-quantity=birds]').textContent.startsWith('91')")
    page.wait_for_timeout(150)
    _kill(tmp_path / "profile")
    assert _open(persistent().new_page(), host).locator("#field-birds").input_value() == "91 birds"


def _kill(profile: Path) -> None:
    """Kills this test's own browser, told by its profile folder."""
    for file in Path("/proc").glob("[0-9]*/cmdline"):
        try:
            command = file.read_bytes().split(b"\0")
        except OSError:
            continue
        own = f"--user-data-dir={profile}".encode() in command
        if own and not any(each.startswith(b"--type=") for each in command):
            os.kill(int(file.parent.name), signal.SIGKILL)
    for lock in profile.glob("Singleton*"):
        lock.unlink()


def test_a_group_brought_out_later_shows_the_plan_as_it_is_by_then(page: Page, shared_host: Host) -> None:
    """Its fields in the units chosen, what was changed marked, and its numbers follow from then on."""
    page.goto(shared_host.address + "plan/")
    until(page, READY)
    until(page, BOUND)
    assert page.locator("#field-air_temperature").count() == 0
    page.locator("[data-units][value=metric]").evaluate("(it) => it.click()")
    page.goto(shared_host.address + "plan/#air_temperature")
    until(page, BOUND)
    box = page.locator("#field-air_temperature")
    assert box.is_visible()
    until(page, "document.querySelector('#field-air_temperature').value.endsWith('°C')")
    _type(page, "air_temperature", "30")
    page.goto(shared_host.address + "plan/")
    until(page, BOUND)
    group = page.locator("details", has=page.locator("template[data-held]"), has_text="Weather and water")
    assert "1 changed" in _plain(group.locator("summary").inner_text())
    group.locator("summary").click()
    until(page, "document.querySelector('#field-air_temperature')?.value === '30 °C'")
    assert page.locator("#air_temperature [data-changed]").is_visible()
    until(page, "/^86\\s°F$/.test(document.querySelector('#air_temperature [data-other]').textContent.trim())")
    _type(page, "air_temperature", "20")
    until(page, "/^68\\s°F$/.test(document.querySelector('#air_temperature [data-other]').textContent.trim())")


def test_a_printed_plan_has_all_its_groups(page: Page, shared_host: Host) -> None:
    page.goto(shared_host.address + "plan/")
    until(page, BOUND)
    assert page.locator("template[data-held]").count() > 5
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.locator("template[data-held]").count() == 0
    assert page.locator("#field-air_temperature").is_visible()


def test_a_plan_kept_under_a_name_that_is_taken_can_be_had_back(page: Page, shared_host: Host) -> None:
    _open(page, shared_host)
    row = page.locator(".kept__row").filter(has_text="Kept on")
    for birds in ("40", "90"):
        _type(page, "birds", birds)
        page.locator("#keep-name").fill("Monday")
        page.locator("[data-keep] button").click()
        until(
            page, f"document.querySelector('[data-kept-list] [data-about]').textContent.includes('{birds}\u00a0birds')"
        )
        assert page.locator("[data-kept-undo]").is_visible() == (birds == "90")
    assert row.count() == 1
    page.locator("[data-kept-undo] button").click()
    about = _plain(row.locator("[data-about]").inner_text())
    assert about.startswith("Broiler day: 40 birds, first at 7:00, crew of 6. Kept on ")
    assert about.endswith("; numbers changed: 1.")
    row.locator("[data-use]").click()
    until(page, "document.querySelector('#field-birds').value === '40 birds'")


def test_what_a_plan_of_the_farm_is_is_said(page: Page, shared_host: Host) -> None:
    """And a plan that is changed meanwhile does not change what is kept."""
    _open(page, shared_host)
    first_day = page.locator(".kept__row").filter(has_text="A first day with twelve birds").locator("[data-about]")
    until(page, "document.querySelectorAll('[data-kept-list] > *').length > 0")
    said = first_day.inner_text()
    assert _plain(said).startswith("Broiler day: 12 birds") and said.endswith(" Written by the farm.")
    _type(page, "birds", "90")
    assert first_day.inner_text() == said
