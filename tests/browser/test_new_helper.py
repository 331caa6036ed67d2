"""A new helper with a phone and no signal: from the way in, over questions and the station, to the sign-off."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.test_accessibility import SMALL_TARGETS, SMALL_TEXT
from tests.browser.watching import READY, Noises, offline_ready, until
from tests.product import product_library

LIBRARY = product_library()


def go(page: Page, host: Host, address: str) -> None:
    page.goto(host.address + address)
    until(page, READY)


def answer(page: Page, *, rightly: bool) -> str:
    """Answers the question on the page; gives its id. Questions are told by their answers, as content has them."""
    page.wait_for_selector(".drill__answer")
    shown = {button.get_attribute("data-answer") for button in page.locator(".drill__answer").all()}
    asked = page.locator(".drill__asks").inner_text()
    found = [
        name
        for name, drill in LIBRARY.drills.items()
        if shown == set(drill.answers or drill.arrange) and asked.startswith(drill.asks.split("{")[0].rstrip())
    ]
    drill = LIBRARY.drills[found[0]]
    if drill.arrange:
        order = list(drill.arrange) if rightly else list(reversed(drill.arrange))
        for step in order:
            page.locator(f"[data-answer={step}]").click()
    else:
        right = next(name for name, each in drill.answers.items() if each.right)
        wrong = next(name for name, each in drill.answers.items() if not each.right)
        page.locator(f"[data-answer={right if rightly else wrong}]").click()
    until(page, "document.querySelector('[data-onward]') !== null")
    return found[0]


def read_the_way_in(page: Page, host: Host) -> None:
    go(page, host, "learn/new_here/")
    legs = page.locator("[data-leg]")
    for leg in range(legs.count()):
        legs.nth(leg).check()
    until(page, "!document.querySelector('[data-path-whole]').hidden")


def answer_all(page: Page) -> None:
    page.locator(".leg a.button--large").first.click()
    until(page, "document.querySelector('.drill__answer') !== null")
    deck = LIBRARY.paths["new_here"].legs["questions"].drills
    met = []
    for _ in deck:
        met.append(answer(page, rightly=True))
        assert page.locator(".drill__right").count() == 1
        page.locator("[data-onward]").click()
    assert sorted(met) == sorted(deck)
    until(page, "document.querySelector('.all-clear') !== null")
    assert page.locator("[data-drill-progress]").inner_text() == f"{len(deck)} of {len(deck)} known"


QUESTION_STANDS = """(() => {
  const title = document.querySelector('[data-drill-card]').firstElementChild;
  const { top, bottom } = title.getBoundingClientRect();
  const above = document.querySelector('header').getBoundingClientRect().bottom;
  const below = document.querySelector('.foot').getBoundingClientRect().top;
  return document.activeElement === title && top >= above && bottom < below;
})()"""


@pytest.mark.parametrize("motion", ["no-preference", "reduce"])
def test_the_next_question_stands_below_the_bar(phone: BrowserContext, shared_host: Host, motion: Any) -> None:
    """Answers and what is told of them are longer than the screen; the button is at their end."""
    page = phone.new_page()
    page.set_viewport_size({"width": 360, "height": 560})
    page.emulate_media(reduced_motion=motion)
    go(page, shared_host, "drills/#new_here")
    until(page, "document.querySelector('.drill__answer') !== null")
    for _ in range(6):
        answer(page, rightly=False)
        page.locator("[data-onward]").tap()
        until(page, "document.querySelector('[data-onward]') === null")
        until(page, QUESTION_STANDS, 3)


def learn_at_the_station(page: Page, host: Host) -> None:
    go(page, host, "work/kill_and_bleed/")
    page.locator("[data-teach=learner]").click()
    page.locator("[data-hide]").click()
    until(page, "document.querySelectorAll('.gap').length > 5")
    page.locator("[data-teach=trainer]").click()
    page.locator(".teach__tick").first.click()
    until(page, "document.querySelector('.teach__tick input').checked")


def stand_at_a_place(page: Page, host: Host) -> None:
    go(page, host, "crew/")
    until(page, "document.querySelector('[data-person]') !== null")  # the form is listened to by then
    page.locator("[data-people-add] input").fill("Noor")
    page.locator("[data-people-add] button").click()
    page.locator("[data-person=Noor] select").first.select_option("scald_pluck")
    until(page, "document.querySelector('.person__lacks')?.textContent.includes('Plucker')")
    page.locator("[data-person=Noor] select").first.select_option("kill")
    until(page, "document.querySelector('.person__lacks')?.textContent.includes('Killing knife')")


def be_signed_off(page: Page, host: Host) -> None:
    go(page, host, "signing/")
    page.locator("#sign-for").fill("Noor")
    page.locator("#sign-by").fill("noor")
    page.locator("[data-skill=killing_knife] [data-sign]").click()
    page.locator("[data-sign-words]", has_text="themselves").wait_for()
    page.locator("#sign-by").fill("Ana")
    for skill in ("calm_birds", "signs_of_death", "killing_knife"):
        page.locator(f"[data-skill={skill}] [data-sign]").click()
        until(page, f"document.querySelector('[data-skill={skill}]').classList.contains('skill--signed')")
    page.locator("[data-skill=killing_knife] [data-sign-state]", has_text="Signed by Ana").wait_for()


def test_from_the_way_in_to_the_sign_off_without_a_signal(phone: BrowserContext, host: Host, noises: Noises) -> None:
    page = phone.new_page()
    go(page, host, "")
    offline_ready(page)
    host.cut()
    read_the_way_in(page, host)
    answer_all(page)
    learn_at_the_station(page, host)
    stand_at_a_place(page, host)
    be_signed_off(page, host)
    go(page, host, "crew/")
    until(page, "document.querySelector('[data-person=Noor]') !== null")
    until(page, "document.querySelector('.person__lacks') === null")
    assert noises == Noises()


def test_the_front_page_leads_a_new_helper_on(page: Page, shared_host: Host) -> None:
    go(page, shared_host, "")
    page.get_by_role("link", name="New here?").click()
    until(page, "location.pathname.endsWith('/learn/')")


def test_signatures_go_to_another_phone(browser: Browser, shared_host: Host, tmp_path: Path) -> None:
    phones = [browser.new_context(**PHONE, service_workers="block") for _ in range(2)]  # type: ignore[arg-type]
    mine, theirs = (phone.new_page() for phone in phones)
    be_signed_off(mine, shared_host)
    with mine.expect_download() as saved:
        mine.locator("[data-sign-send]").click()
    file = tmp_path / saved.value.suggested_filename
    saved.value.save_as(file)
    go(theirs, shared_host, "log/")
    until(theirs, "document.querySelector('[data-exchange-state]').textContent")
    theirs.locator("[data-exchange-open]").set_input_files(file)
    theirs.locator(".exchange__file button").click()
    until(theirs, "document.querySelector('.exchange__file').innerText.includes('Taken in')")
    go(theirs, shared_host, "signing/")
    theirs.locator("#sign-for").fill("Noor")
    theirs.locator("[data-skill=killing_knife] [data-sign-state]", has_text="Signed by Ana").wait_for()
    for phone in phones:
        phone.close()


def test_a_wrong_answer_says_why_and_is_not_counted(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    go(page, shared_host, "drills/#gutting")
    name = answer(page, rightly=False)
    drill = LIBRARY.drills[name]
    told = page.locator(".drill__told").inner_text()
    assert told.startswith("Not quite.")
    assert page.locator(".drill__answer--right").count() >= (0 if drill.arrange else 1)
    assert page.locator(".drill__told a").get_attribute("href").endswith(f"#{drill.written.part}-{drill.written.id}")
    page.locator("[data-onward]").click()
    deck = {each for leg in LIBRARY.paths["gutting"].legs.values() for each in leg.drills}
    assert page.locator("[data-drill-progress]").inner_text() == f"0 of {len(deck)} known"


def test_a_link_to_a_reading_opens_what_it_may_be(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    go(page, shared_host, "faults/#for-tub_reading")
    until(page, "document.getElementById('for-tub_reading').closest('details').open")
    page.locator("#for-tub_reading + dd a").first.click()
    until(page, "location.hash === '#chilling-tub_warms'")
    until(page, "document.getElementById('chilling-tub_warms').open")


@pytest.mark.parametrize("address", ["learn/", "learn/cones/", "drills/", "drills/#of-scald", "signing/", "faults/"])
def test_what_is_tapped_and_read_is_large(page: Page, shared_host: Host, address: str) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    go(page, shared_host, address)
    if address.startswith("drills"):
        page.wait_for_selector(".drill__answer")
    small = [found for found in page.evaluate(SMALL_TARGETS) if "bar__place" not in found and "data-leg" not in found]
    assert small == []
    rows = page.locator(".leg__done").all()
    assert all((row.bounding_box() or {"height": 0})["height"] >= 48 for row in rows)
    assert page.evaluate(SMALL_TEXT) == []
    assert page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth") == 0
