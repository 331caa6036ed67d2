"""Search finds things by words, shows the plan's numbers, and leads to them."""

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.browser.host import Host
from tests.browser.watching import READY, Noises, offline_ready, until


def test_search_loads_its_list_only_when_asked_and_leads_to_what_was_found(
    phone: BrowserContext, host: Host, noises: Noises
) -> None:
    phone.add_init_script("Object.defineProperty(navigator, 'serviceWorker', {value: undefined})")
    page = phone.new_page()
    page.goto(host.address)
    until(page, READY)
    assert not any(path.endswith("search.json") for path in host.asked)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("GIZZ")
    until(page, "document.querySelectorAll('.finder li').length > 0")
    for title in page.locator(".finder li strong").all_inner_texts()[:3]:
        assert "gizz" in title.lower()
    page.locator(".finder li a").first.click()
    until(page, "location.hash !== ''")
    until(page, "document.querySelector('.finder[open]') === null")
    until(page, "document.getElementById(location.hash.slice(1)) !== null")
    assert noises == Noises()


def test_what_is_found_shows_the_numbers_of_the_plan(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address + "plan/")
    until(page, READY)
    until(page, "document.querySelector('form[data-bound]') !== null")
    page.evaluate("document.querySelectorAll('.fold--group').forEach((it) => { it.open = true; })")
    page.locator("#field-scald_batch").fill("3")
    page.locator("#field-scald_batch").press("Tab")
    until(page, "document.querySelectorAll('.field--changed').length === 1")
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("hang the birds by the feet")
    until(page, "document.querySelectorAll('.finder li').length > 0")
    assert "3 birds" in page.locator(".finder li strong").first.inner_text().replace("\u00a0", " ")


def test_markup_in_a_query_stays_text(phone: BrowserContext, shared_host: Host, noises: Noises) -> None:
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    page.locator("[data-search-open]").click()
    for query in ("<img src=x onerror=alert(1)>", "((((", "\\", "a" * 5000, "."):
        page.locator(".finder input").fill(query)
        until(page, "document.querySelector('.finder p') !== null")
    assert page.locator(".finder img").count() == 0
    assert noises == Noises()


def test_a_kept_site_makes_the_list_of_titles_itself(phone: BrowserContext, host: Host) -> None:
    """What it makes is kept only if its hash is that of the host's list."""
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    assert not any(path.endswith("search.json") for path in host.asked)
    host.cut()
    page.goto(host.address + "plan/")
    until(page, READY)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("hang the birds by the feet")
    until(page, "document.querySelectorAll('.finder li').length > 0")
    first = page.locator(".finder li").first.inner_text().replace("\u00a0", " ")
    assert "Hang the birds by the feet, arm stopped, 4 birds at most." in first
    assert "22 Scald" in first


def test_a_list_of_titles_that_is_not_the_hosts_is_fetched(phone: BrowserContext, host: Host) -> None:
    worker = host.folder / "worker.js"
    spoiled = worker.read_text(encoding="utf-8").replace(" data-find>", " data-found>")
    worker.write_text(spoiled, encoding="utf-8")
    page = phone.new_page()
    page.goto(host.address)
    offline_ready(page)
    assert any(path.endswith("search.json") for path in host.asked)
    page.goto(host.address + "about/")
    until(page, "document.querySelector('[data-offline-state]').innerText.startsWith('Yes')")


def test_titles_that_begin_with_the_words_come_first_and_numbers_of_cards_are_found(
    phone: BrowserContext, shared_host: Host
) -> None:
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    page.locator("[data-search-open]").click()
    for query, first in (
        ("burn", "Burn or scald"),
        ("BÜRN scald", "Burn or scald"),
        ("22", "22 Scald"),
        ("scald", "22 Scald"),
    ):
        page.locator(".finder input").fill(query)
        until(page, f"document.querySelector('.finder li strong')?.innerText === {first!r}")


def test_work_comes_before_numbers_that_are_called_alike(phone: BrowserContext, shared_host: Host) -> None:
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("time")
    until(page, "document.querySelectorAll('.finder li').length === 40")
    links = page.evaluate(
        "[...document.querySelectorAll('.finder a')].map((it) => new URL(it.href).pathname.split('/')[2])"
    )
    for title in ("work", "numbers"):
        assert title in links
    places = {kind: [place for place, name in enumerate(links) if name == kind] for kind in ("work", "numbers")}
    assert len(places["work"]) > len(places["numbers"])


def _find(page: Page, query: str) -> list[str]:
    """What is found, the first first, with figures and the page it stands on."""
    page.locator(".finder input").fill(query)
    until(page, f"document.querySelector('.finder input').value === {query!r}")
    page.wait_for_timeout(200)
    return [text.replace("\u00a0", " ") for text in page.locator(".finder li").all_inner_texts()]


@pytest.mark.parametrize(
    ("query", "first"),
    [
        ("how much ice", "Ice for the day"),
        ("how much ice do we need?", "Ice for the day"),
        ("how hot is the water", "Thermostat of the scalder"),
        ("how hot", "Thermostat of the scalder"),
        ("water temperature", "Thermostat of the scalder"),
        ("how long do they chill", "A bird chills to the target in"),
        ("burned hand", "Burn or scald"),
        ("my hand is burnt", "Burn or scald"),
        ("cut finger", "Deep cut or bleeding"),
        ("someone fainted", "Faint, heat illness or collapse"),
        ("sick birds", "Birds that may have bird flu"),
        ("propane tank", "cylinder"),
        ("temprature of the water", "Thermostat of the scalder"),
        ("wattr temperature", "Thermostat of the scalder"),
        ("burrn scald", "Burn or scald"),
        ("scald burn", "Burn or scald"),
    ],
)
def test_plain_questions_find_what_is_meant(phone: BrowserContext, shared_host: Host, query: str, first: str) -> None:
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    page.locator("[data-search-open]").click()
    found = _find(page, query)
    assert found and found[0].startswith(first)


def test_a_number_that_is_found_shows_what_it_is_today(phone: BrowserContext, shared_host: Host) -> None:
    """As the farm's plan has it: the thermostat at 145 °F, 60 birds."""
    page = phone.new_page()
    page.goto(shared_host.address)
    until(page, READY)
    page.locator("[data-search-open]").click()
    _find(page, "thermostat")
    until(page, "document.querySelector('.finder li').innerText.includes('145')")
    assert "145 °F (63 °C)" in page.locator(".finder li").first.inner_text().replace("\u00a0", " ")
    assert _find(page, "xqzt") == []
