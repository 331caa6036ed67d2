"""Passing plans on, the crew, the pictures, the questions and the printed sheet, in Chromium."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
import segno
from playwright.sync_api import Browser, BrowserContext, Page

from generator.telling.certainty import tell_certainty
from generator.telling.figures import Figures
from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import READY, Noises, listen, offline_ready, unfold_all, until
from tests.product import product_edition, product_workbook

BOUND = "!document.querySelector('form[data-plan]:not([data-bound])')"
ANSWER = "document.querySelector('[data-question=birds_by_the_clock] [data-answer] b')"
CHANGES = """() => new Promise((done) => {
  indexedDB.open('day /cone-to-cooler/').onsuccess = ({ target }) => {
    const keys = target.result.transaction('facts').objectStore('facts').getAllKeys();
    keys.onsuccess = () => done(keys.result.filter((key) => key.startsWith('plan/today/')).length);
  };
})"""
SEEN = """(() => {
  const told = document.querySelector('[data-receive-refused]');
  const { top, bottom } = told.getBoundingClientRect();
  const bar = document.querySelector('header').getBoundingClientRect().bottom;
  return document.activeElement === told && top >= bar && bottom < innerHeight / 2;
})()"""
BIRDS = "[...document.querySelectorAll('[data-quantity=birds]')].every((it) => it.textContent.startsWith('%s'))"


def _open(page: Page, host: Host, address: str) -> Page:
    page.goto(host.address + address)
    until(page, READY)
    until(page, BOUND)
    return page


def _plan(page: Page, host: Host, **texts: str) -> None:
    _open(page, host, "plan/")
    unfold_all(page)
    for field, text in texts.items():
        box = page.locator(f"#field-{field}")
        box.fill(text)
        box.evaluate("(it) => { it.dispatchEvent(new Event('change', { bubbles: true })); it.blur(); }")
        assert page.locator(f"#{field} [data-changed]").is_visible()


def _drawn(page: Page) -> list[list[int]]:
    """The modules of the code on the screen, without the margin, read off its path."""
    box, path = (
        page.locator("[data-code] svg").get_attribute("viewBox"),
        page.locator("[data-code] path").get_attribute("d"),
    )
    size = int(str(box).split()[2]) - 8
    rows = [[0] * size for _ in range(size)]
    for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)", str(path)):
        for place in range(int(length)):
            rows[int(y) - 4][int(x) - 4 + place] = 1
    return rows


def _is_code_of(text: str, rows: list[list[int]], monkeypatch: pytest.MonkeyPatch) -> bool:
    monkeypatch.setattr(
        "segno.encoder.write_padding_bits", lambda buffer, _, length: buffer.extend([0] * (-length % 8))
    )
    version = (len(rows) - 17) // 4
    codes = (
        segno.make(text, version=version, error=level, mode="byte", mask=mask, boost_error=False, micro=False)
        for level in ("l", "m")
        for mask in range(8)
        if level == "l" or _fits(text, version)
    )
    return any([list(row) for row in code.matrix] == rows for code in codes)


def _fits(text: str, version: int) -> bool:
    try:
        segno.make(text, version=version, error="m", mode="byte", boost_error=False, micro=False)
    except segno.DataOverflowError:
        return False
    return True


@pytest.fixture
def other_phone(browser: Browser, noises: Noises) -> Any:
    context = browser.new_context(**PHONE)  # type: ignore[arg-type]
    listen(context, noises)
    yield context
    context.close()


def test_a_plan_goes_to_another_phone_by_code(
    phone: BrowserContext, other_phone: BrowserContext, host: Host, noises: Noises, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Both phones have the site and no signal. What the code says is opened by the other, which asks first."""
    one, other = phone.new_page(), other_phone.new_page()
    for page in (one, other):
        page.goto(host.address)
        offline_ready(page)
    host.cut()
    _plan(one, host, birds="104", tap_temperature="9 °C", ice_on_hand="370 lb")
    _open(one, host, "pass/")
    until(one, "document.querySelector('[data-pass]').dataset.painted !== undefined")
    link = one.locator("[data-link]").input_value()
    assert _is_code_of(link, _drawn(one), monkeypatch)
    _open(other, host, link.removeprefix(host.address))
    until(other, "!document.querySelector('[data-arrived]').hidden")
    rows = [row.replace("\u00a0", " ") for row in other.locator("[data-arrived-table] tbody tr").all_inner_texts()]
    assert [row.split("\t") for row in rows] == [
        ["Birds today", "60 birds", "104 birds"],
        ["Ice on hand", "400 lb", "370 lb"],
        ["Water as it comes", "60 °F", "48 °F"],
    ]
    assert other.evaluate(CHANGES) == 0
    other.locator("[data-arrived-take]").click()
    until(other, "!document.querySelector('[data-taken]').hidden && location.hash === ''")
    _open(other, host, "")
    until(other, BIRDS % "104")
    _open(other, host, "pass/")
    until(other, f"document.querySelector('[data-link]').value === {json.dumps(link)}")


def test_a_taken_plan_can_be_given_back(page: Page, shared_host: Host) -> None:
    _plan(page, shared_host, birds="50")
    _open(page, shared_host, "pass/")
    until(page, "document.querySelector('[data-pass]').dataset.painted !== undefined")
    link = page.locator("[data-link]").input_value()
    _plan(page, shared_host, birds="70")
    _open(page, shared_host, "pass/")
    until(page, "document.querySelector('[data-pass]').dataset.painted !== undefined")
    page.locator("#plan-paste").fill(f"look at this: {link}")
    page.locator("[data-receive] button").click()
    page.locator("[data-arrived-take]").click()
    until(page, "!document.querySelector('[data-taken]').hidden")
    page.locator("[data-taken] button").click()
    _open(page, shared_host, "")
    until(page, BIRDS % "70")


@pytest.mark.parametrize(
    "mark",
    [
        "#plan=",
        "#plan=%",
        "#plan=%E0%A4%A",
        "#plan=1~aaaaaa~bbbb~x~birds:5",
        "#plan=<img src=x onerror=alert(1)>",
        "#plan=\"']",
        "#plan=9~x",
        "#plan=" + "1~" * 9000,
    ],
)
def test_a_hostile_link_is_refused_with_a_sentence(page: Page, shared_host: Host, mark: str, noises: Noises) -> None:
    _open(page, shared_host, f"pass/{mark}")
    until(page, "!document.querySelector('[data-receive-refused]').hidden")
    assert (
        page.locator("[data-receive-refused]").inner_text().startswith("This plan ")
        or "no plan" in page.locator("[data-receive-refused]").inner_text()
    )
    assert page.locator("[data-arrived]").is_hidden()
    until(page, "document.querySelector('[data-code] svg') !== null")
    assert page.evaluate(SEEN), "not where it is looked for"
    assert noises.errors == []


def test_a_pasted_link_is_refused_where_plans_arrive(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "pass/")
    until(page, "document.querySelector('[data-code] svg') !== null")
    page.locator("#plan-paste").fill("#plan=1~torn")
    page.locator("[data-receive] button").click()
    until(page, SEEN)


def test_a_plan_goes_by_file(page: Page, shared_host: Host, tmp_path: Path) -> None:
    _plan(page, shared_host, birds="104")
    _open(page, shared_host, "pass/")
    until(page, "document.querySelector('[data-pass]').dataset.painted !== undefined")
    with page.expect_download() as started:
        page.locator("[data-file]").click()
    started.value.save_as(tmp_path / "plan.json")
    assert json.loads((tmp_path / "plan.json").read_text())["changes"] == {"birds": 104}
    (tmp_path / "other.json").write_text((tmp_path / "plan.json").read_text().replace("104", "88"))
    (tmp_path / "wrong.json").write_text('{"plan_file": 1, "name": "x", "changes": {"birds": 1e9}}')
    page.locator("[data-open]").set_input_files(tmp_path / "wrong.json")
    until(page, "document.querySelector('[data-receive-refused]').textContent.includes('Birds today')")
    page.locator("[data-open]").set_input_files(tmp_path / "other.json")
    page.locator("[data-arrived-take]").click()
    _open(page, shared_host, "")
    until(page, BIRDS % "88")


def test_each_copy_of_a_plan_has_a_name_of_its_own(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "plan/")
    unfold_all(page)
    name = "Forty letters are as many as a name has."
    assert len(name) == 40
    page.locator("#keep-name").fill(name)
    page.locator("[data-keep] button").click()
    row = page.locator("[data-kept-list] > *", has=page.locator(f"[data-name]:text-is('{name}')"))
    for count in (2, 3):
        row.locator("[data-copy]").click()
        until(page, f"document.querySelectorAll('[data-kept-list] [data-copy]').length === {count}")
    names = page.locator("[data-kept-list] > *:has([data-copy]) [data-name]").all_inner_texts()
    assert len(set(names)) == 3
    assert {len(each) for each in names} == {40}
    assert sorted(each.rpartition(",")[2] for each in names if each != name) == [" copy", " copy 2"]


def test_the_best_split_in_one_tap(page: Page, shared_host: Host) -> None:
    """Two are taken from the slowest place: the tap brings back the rate, and undo takes it."""
    _open(page, shared_host, "crew/")
    until(page, "document.querySelector('[data-place=evisceration] [data-rate]').textContent !== ''")
    box = page.locator("#field-helpers_evisceration")
    box.fill("1")
    box.blur()
    rate = page.locator("[data-place=evisceration] [data-rate]")
    until(page, "document.querySelector('[data-place=evisceration] [data-rate]').textContent.startsWith('21')")
    assert page.locator("[data-slowest]:visible").count() == 1
    page.locator("[data-best]").click()
    until(page, "document.querySelector('#field-helpers_evisceration').value === '3'")
    assert rate.inner_text().startswith("62")
    page.locator("[data-best-undo]").click()
    until(page, "document.querySelector('#field-helpers_evisceration').value === '1'")


@pytest.mark.parametrize(("rates", "slow"), [([2, 3, 3], ["a"]), ([2, 2, 3], ["a", "b"]), ([2, 2, 2], [])])
def test_nobody_holds_up_the_rest_where_all_are_as_fast(
    page: Page, shared_host: Host, rates: list[int], slow: list[str]
) -> None:
    _open(page, shared_host, "crew/")
    asked = """async (rates) => {
      const { slowestOf } = await import('../phone/crew_page.js');
      return [...slowestOf({ places: { a: {}, b: {}, c: {} } }, rates)];
    }"""
    found = page.evaluate(asked, dict(zip("abc", rates, strict=True)))
    assert found == slow


def test_names_stay_where_they_were_put(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "crew/")
    page.locator("#person-day_crew").fill("  Gil <b> ")
    page.locator("[data-people-add] button").click()
    for name, place in (("Ana", "kill"), ("Gil <b>", "wash")):
        page.locator(".person").filter(has_text=name).locator("select").first.select_option(place)
    page.locator(".person").filter(has_text="Finn").locator("[data-leave]").click()
    page.wait_for_timeout(200)
    _open(page, shared_host, "crew/")
    until(page, "document.querySelector('[data-place=wash] [data-names]').textContent === 'Gil <b>'")
    assert page.locator(".person [data-name]").all_inner_texts() == ["Ana", "Ben", "Cora", "Dov", "Edie", "Gil <b>"]
    page.locator("[data-count-names]").click()
    until(page, "document.querySelector('#field-helpers_wash').value === '1'")
    _open(page, shared_host, "sheet/")
    until(page, "document.querySelector('[data-names-of=kill]').textContent === 'Ana'")


def test_who_is_not_here_can_be_brought_back_and_is_not_counted(page: Page, shared_host: Host) -> None:
    """Six have names. One leaves: five are planned with, and only what is no longer as the farm has it is changed."""
    _open(page, shared_host, "crew/")
    places = (
        ("Ana", "kill"),
        ("Ben", "scald_pluck"),
        ("Cora", "evisceration"),
        ("Dov", "evisceration"),
        ("Edie", "wash"),
    )
    for name, place in places:
        page.locator(".person").filter(has_text=name).locator("select").first.select_option(place)
    for _ in range(2):
        page.locator(".person").filter(has_text="Finn").locator("[data-leave]").click()
        until(page, "document.querySelectorAll('.person').length === 5")
        assert page.locator("[data-left] span").inner_text() == "Finn is not here"
        page.locator("[data-left] button").click()
        until(page, "document.querySelectorAll('.person').length === 6")
    page.locator(".person").filter(has_text="Ben").locator("[data-leave]").click()
    until(page, "document.querySelector('[data-place=scald_pluck] [data-names]').textContent === 'No name yet'")
    page.locator("[data-left] button").click()
    until(page, "document.querySelector('[data-place=scald_pluck] [data-names]').textContent === 'Ben'")
    page.locator(".person").filter(has_text="Finn").locator("[data-leave]").click()
    page.locator("[data-count-names]").click()
    until(page, "document.querySelector('#field-crew').value === '5'")
    assert page.locator("[data-crew-sum]").inner_text() == "All 5 people have a place."
    changed = page.locator(".field--changed").evaluate_all("(all) => all.map((it) => it.id)")
    assert changed == ["crew", "helpers_evisceration"]


def test_who_stands_on_the_line_can_pack_later(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "crew/")
    row = page.locator(".person").filter(has_text="Ana")
    row.locator("select").first.select_option("kill")
    row.get_by_label("Later in the day").select_option("pack")
    until(page, "document.querySelector('[data-place=pack] [data-names]').textContent === 'Ana'")
    _open(page, shared_host, "sheet/")
    for place in ("kill", "pack"):
        until(page, f"document.querySelector('[data-names-of={place}]').textContent === 'Ana'")


def test_pictures_have_words_and_follow_the_plan(phone: BrowserContext, shared_host: Host) -> None:
    page, plan = _open(phone.new_page(), shared_host, "day/"), phone.new_page()
    until(page, "document.querySelectorAll('.drawn').length === document.querySelectorAll('[data-view]').length")
    before = page.locator("[data-view] svg").evaluate_all("(all) => all.map((it) => it.innerHTML)")
    for picture in page.locator(".drawn").all():
        assert picture.locator("title").text_content() and picture.locator("desc").text_content()
    wide = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    assert page.evaluate(wide) == 0
    _plan(
        plan,
        shared_host,
        birds="120",
        chill_water_temperature="35 °F",
        scald_set_temperature="140 °F",
        helpers_wash="2",
    )
    until(
        page,
        "document.querySelector('[data-view=stations_through_the_day] svg').textContent.includes('Kill 7:00–9:')",
    )
    after = page.locator("[data-view] svg").evaluate_all("(all) => all.map((it) => it.innerHTML)")
    assert all(one != other for one, other in zip(before, after, strict=True))


def test_questions_are_answered_without_changing_the_plan(page: Page, shared_host: Host) -> None:
    """The farm's content turns the same arithmetic round by hand in `birds_most_clock`; that is the number to find."""
    workbook = product_workbook()
    noon = {**workbook.settler.settle(workbook.plan, {}), "dark_time": 12 * 3600.0}
    most = workbook.compute(noon).values["birds_most_clock"]
    _open(page, shared_host, "questions/")
    ask = page.locator("[data-question=birds_by_the_clock]")
    until(page, f"{ANSWER} !== null")
    box = ask.locator("input")
    for typed in ("10:09", "10:10"):
        box.fill(typed)
        box.blur()
    until(
        page,
        f"/^(60|61)\\sbirds$/.test({ANSWER}.textContent)",
    )
    box.fill("noon")
    box.blur()
    assert ask.locator("[data-refused]").is_visible() and ask.locator("[data-answer]").inner_text() == ""
    box.fill("12:00")
    box.blur()
    until(
        page,
        f"{ANSWER}?.textContent.startsWith('{most:.0f}')",
    )
    ask.locator("[data-take]").click()
    _open(page, shared_host, "numbers/clock/")
    until(page, "/^(11:5\\d|12:00)$/.test(document.querySelector('.number [data-quantity=day_end_time]').textContent)")


def test_an_offer_names_the_stop_that_the_plan_would_have(page: Page, shared_host: Host) -> None:
    """Ice on hand is for 90 birds: more are offered only with that word."""
    _open(page, shared_host, "questions/")
    said = "The plan would then have a stop: Ice gone before the birds are packed."
    ask = page.locator("[data-question=birds_by_the_clock]")
    until(page, f"{ANSWER} !== null")
    assert said in ask.inner_text()
    assert "stop" not in page.locator("[data-question=birds_for_ice]").inner_text()
    ask.locator("[data-take]").click()
    page.locator(".strip__row", has_text="STOP: Ice gone before the birds are packed").wait_for()


def test_what_matters_is_what_the_computer_says(page: Page, shared_host: Host) -> None:
    """The same likely range and the same three strongest as `numbers --why`, each with its two ends."""
    edition = product_edition()
    _open(page, shared_host, "questions/")
    for result in ("ice_total", "chill_time"):
        sure = tell_certainty(edition, Figures(edition), result)
        assert sure
        page.locator("[data-matters-of]").select_option(result)
        until(page, "document.querySelectorAll('[data-matters] li').length >= 5")
        titles = page.locator("[data-matters] li strong").all_inner_texts()
        assert tuple(titles[:3]) == sure.moved_by
        said = page.locator("[data-matters-sure]").inner_text()
        assert [each.split(" (")[0] in said for each in (sure.low, sure.high)] == [True, True], said
    assert page.locator("[data-matters] li .matters__line").count() == 2 * len(titles)


def test_the_sheet_prints_on_one_page(page: Page, shared_host: Host, tmp_path: Path) -> None:
    _plan(page, shared_host, birds="104", ice_on_hand="100 lb", tap_temperature="9 °C")
    _open(page, shared_host, "sheet/")
    until(page, "!document.querySelector('[data-sheet-changes]').hidden")
    pdfplumber = pytest.importorskip("pdfplumber")
    for paper in ("Letter", "A4"):
        page.pdf(path=tmp_path / "sheet.pdf", format=paper)
        with pdfplumber.open(tmp_path / "sheet.pdf") as file:
            assert len(file.pages) == 1
            text = file.pages[0].extract_text()
        assert "104 birds" in text and "Ice on hand is short" not in text and "Print" not in text.split()


def test_the_sheet_has_the_date_of_the_day_and_none_before_it_begins(phone: BrowserContext, shared_host: Host) -> None:
    """Printed the evening before, it must not carry that evening's date."""
    page = phone.new_page()
    page.clock.install(time="2026-07-17T15:00:00Z")
    _open(page, shared_host, "sheet/")
    until(page, "document.querySelector('[data-sheet-changes]')")
    assert page.locator("[data-sheet-date]").inner_text() == ""
    assert page.locator(".sheet__head").inner_text().strip().endswith("Date:")
    page.clock.set_system_time("2026-07-18T15:00:00Z")
    _open(page, shared_host, "")
    page.locator("[data-new-run]").click()
    until(page, "document.querySelector('[data-run-words]').textContent.includes('started at')")
    page.clock.set_system_time("2026-07-19T15:00:00Z")
    _open(page, shared_host, "sheet/")
    until(page, "document.querySelector('[data-sheet-date]').textContent.includes('18')")


def test_papers_say_at_the_top_when_the_phone_has_another_plan(page: Page, shared_host: Host) -> None:
    _open(page, shared_host, "papers/")
    told = page.locator("[data-changed-plan]")
    assert not told.is_visible()
    _plan(page, shared_host, birds="70")
    _open(page, shared_host, "papers/")
    until(page, "document.querySelector('[data-changed-plan]').checkVisibility()")
    assert "The plan on this phone is not the plan of these papers." in told.inner_text()
    theirs = page.locator(".phase-help").inner_text().replace("\u00a0", " ")
    assert "60 birds" in theirs and "70 birds" not in theirs
    assert told.bounding_box()["y"] < page.locator("ul.papers__packs").bounding_box()["y"]  # type: ignore[index]


def test_a_search_that_ends_where_the_plan_does_says_so(page: Page, shared_host: Host) -> None:
    """With ice past measure the most birds are all that the plan takes, whatever that is."""
    most = int(product_workbook().givens.inputs["birds"].high)
    _open(page, shared_host, "questions/")
    ask = page.locator("[data-question=birds_for_ice]")
    until(page, "document.querySelector('[data-question=birds_for_ice] [data-answer] b') !== null")
    ask.locator("input").fill("40000 lb")
    ask.locator("input").blur()
    until(page, "document.querySelector('[data-question=birds_for_ice] [data-answer]').textContent.includes('hold')")
    said = " ".join(ask.locator("[data-answer]").inner_text().replace("\u00a0", " ").split())
    answer, _, stops = said.partition(" The plan would then have a stop: ")
    assert answer == f"Birds today: at least {most} birds the most a plan can hold"
    assert "Yearly limit reached" in stops


def test_a_time_of_day_reads_as_in_the_plan(page: Page, shared_host: Host) -> None:
    """7:00, not 07:00; what is logged then is told in the same form."""
    _open(page, shared_host, "")
    said = "(hour) => import(`${location.origin}/cone-to-cooler/phone/words_said.js`)"
    said += ".then(({ clock }) => clock(new Date(2026, 10, 26, hour, 5).getTime()))"
    assert [page.evaluate(said, hour) for hour in (0, 4, 12, 23)] == ["0:05", "4:05", "12:05", "23:05"]


def test_stations_say_when_the_day_goes_by_another_plan(phone: BrowserContext, shared_host: Host) -> None:
    """Until the new plan is taken; and only then does the front page say that all numbers follow it."""
    page = phone.new_page()
    _plan(page, shared_host, birds="70")
    shown = "!document.querySelector('[data-plan-of-the-day]').hidden"
    follows = "document.querySelector('[data-changed-plan]').checkVisibility()"
    _open(page, shared_host, "")
    until(page, f"{follows} && !({shown})")
    page.locator("[data-new-run]").click()
    until(page, "document.querySelector('[data-run-words]').textContent.includes('started at')")
    assert not page.evaluate(shown)
    _plan(page, shared_host, scald_set_temperature="135 °F")
    for address in ("work/scald/", "log/", ""):
        _open(page, shared_host, address)
        until(page, shown)
    assert not page.evaluate(follows)
    _open(page, shared_host, "work/scald/")
    until(page, shown)
    page.locator("[data-plan-of-the-day] button").click()
    until(page, f"!({shown})")
    page.locator("[data-reading=scald_reading_taken]").click()
    limit = page.locator(".sheet__limit").inner_text().replace("\u00a0", " ")
    assert limit == "130 °F to 140 °F"  # 135 °F, and the swing of 5 °F to either side
    _open(page, shared_host, "")
    until(page, f"{follows} && !({shown})")


def test_one_is_counted_as_well_as_many(page: Page, shared_host: Host) -> None:
    """No "1 changes"."""
    _plan(page, shared_host, crew="5")
    _open(page, shared_host, "pass/")
    until(page, "document.querySelector('[data-code-words]').textContent.endsWith(' that this code changes: 1.')")
    link = page.locator("[data-link]").input_value()
    page.goto("about:blank")
    _plan(page, shared_host, crew="6")
    _open(page, shared_host, "pass/" + link[link.index("#") :])
    until(page, "document.querySelector('[data-arrived-words]').textContent.includes('Numbers that differ: 1.')")
