"""Fields of the plan typed key by key, as a person does; `fill` brings a whole text at once and hides what is between."""

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
