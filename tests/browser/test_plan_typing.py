"""The plan typed key by key, as a person does: `fill` brings a whole text at once and hides what is between."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.host import Host
from tests.browser.watching import unfold_all, until

BOUND = "document.querySelector('form[data-plan][data-bound]') !== null"


@pytest.fixture
def plan(page: Page, shared_host: Host) -> Page:
    page.goto(shared_host.address + "plan/")
    until(page, BOUND)
    unfold_all(page)
    return page


def _keys(page: Page, field: str, text: str) -> None:
    """Comes to the field, which is marked whole, and types; does not leave it."""
    page.locator(f"#field-{field}").focus()
    page.keyboard.type(text)


def _leave(page: Page) -> None:
    page.keyboard.press("Tab")


def _shown(page: Page, field: str) -> str:
    return page.locator(f"#field-{field}").input_value()


@pytest.mark.parametrize(
    ("field", "stands", "texts"),
    [
        ("feed_off_hours", "9 h 00 min", {"10": "10 h 00 min", "12": "12 h 00 min"}),
        ("clean_down_time", "60 min", {"15": "15 min", "45": "45 min"}),
        ("break_time", "20 min", {"15": "15 min"}),
        ("bleed_time", "90 s", {"120": "2 min"}),
    ],
)
def test_a_bare_number_is_in_the_unit_that_stood_there(
    plan: Page, field: str, stands: str, texts: dict[str, str]
) -> None:
    """Hours stay hours though the first digit alone is few of them."""
    assert _shown(plan, field) == stands
    for text, kept in texts.items():
        _keys(plan, field, text)
        _leave(plan)
        assert _shown(plan, field) == kept
        assert plan.locator(f"#{field} [data-refused]").is_hidden()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("1O1", "“O1” is not a unit for this"),
        ("1001", "Too high: at most "),
        ("39,55,1", "“39,55,1” can be read two ways"),
        ("39.5", "A whole number, please."),
        ("1e2", "“e2” is not a unit for this"),
        ("0", "Too low: at least 1 bird."),
        ("12 ducks", "“ducks” is not a unit for this"),
    ],
)
def test_what_is_refused_leaves_nothing_of_itself_in_the_plan(plan: Page, text: str, says: str) -> None:
    """Not its first digits either, while it is typed or afterwards; nor where the plan was changed before."""
    for stood in ("60 birds", "42 birds"):
        _keys(plan, "birds", text)
        _stands(plan, stood)
        assert plan.locator("#birds [data-refused]").is_hidden(), "told off before it was done"
        _leave(plan)
        said = plan.locator("#birds [data-refused]").inner_text().replace("\u00a0", " ")
        assert says in said and said.endswith(f" Still {stood}.")
        assert _shown(plan, "birds") == text
        _stands(plan, stood)
        plan.reload()
        until(plan, BOUND)
        _stands(plan, stood)
        _keys(plan, "birds", "42")
        _leave(plan)


def test_a_field_that_is_emptied_keeps_the_plan(plan: Page) -> None:
    _keys(plan, "birds", "40")
    plan.keyboard.press("Backspace")
    plan.keyboard.press("Backspace")
    _stands(plan, "60 birds")
    plan.keyboard.type("45")
    _stands(plan, "45 birds")
    plan.keyboard.press("Enter")
    plan.keyboard.type("x")
    _leave(plan)
    assert plan.locator("#birds [data-refused]").inner_text().replace("\u00a0", " ").endswith(" Still 45 birds.")
    _stands(plan, "45 birds")


def test_beginnings_of_words_and_times_are_not_told_off(plan: Page) -> None:
    for field, text, kept in (
        ("break_time", "1 h 10 min", "70 min"),
        ("first_kill_time", "6:30", "6:30"),
        ("tap_temperature", "9 °C", "48 °F"),
    ):
        plan.locator(f"#field-{field}").focus()
        for key in text:
            plan.keyboard.type(key)
            assert plan.locator(f"#{field} [data-refused]").is_hidden(), (field, text, key)
        _leave(plan)
        assert _shown(plan, field) == kept


def _stands(page: Page, words: str) -> None:
    """The line about the plan at the head of the page follows the plan itself."""
    said = "document.querySelector('.day__plan [data-quantity=birds]').textContent.replace('\\u00a0', ' ')"
    until(page, f"{said} === '{words}'")
