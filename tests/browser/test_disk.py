"""The zip for a machine without a network, unpacked and opened as files in a real browser."""

from __future__ import annotations

import re
import zipfile
from pathlib import Path

from playwright.sync_api import BrowserContext, Page

from generator.pipeline.order import Order
from generator.publishing.disk import copy_to_disk, pack
from tests.browser.days import tick_ahead
from tests.browser.test_offline import addresses, one_of_each_kind
from tests.browser.watching import READY, unfold_all, until
from tests.product import product_workbook


def _unpacked(demo: Order, folder: Path) -> Path:
    copy_to_disk(demo.site, folder / "day")
    pack(folder / "day", folder / "one.zip")
    pack(folder / "day", folder / "other.zip")
    assert (folder / "one.zip").read_bytes() == (folder / "other.zip").read_bytes()
    with zipfile.ZipFile(folder / "one.zip") as packed:
        packed.extractall(folder / "stick")
    return folder / "stick" / "day"


def _open(page: Page, file: Path) -> None:
    page.goto(file.as_uri())
    until(page, READY)


def test_it_works_from_a_stick(phone: BrowserContext, demo: Order, tmp_path: Path) -> None:
    site, page, errors = _unpacked(demo, tmp_path), phone.new_page(), list[str]()
    page.on("console", lambda line: errors.append(line.text) if line.type == "error" else None)
    page.on("pageerror", lambda fault: errors.append(str(fault)))
    _open(page, site / "index.html")
    page.locator(".stop__link").nth(3).click()
    until(page, READY)
    assert page.url.endswith("/index.html")
    tick_ahead(page)
    until(page, "document.querySelectorAll('.step--done').length === 1")
    page.reload()
    until(page, "document.querySelectorAll('.step--done').length === 1")

    workbook = product_workbook()
    values = workbook.compute(workbook.settler.settle(workbook.plan, {"birds": 104.0})).values
    _open(page, site / "plan/index.html")
    until(page, "document.querySelector('form[data-plan][data-bound]') !== null")
    unfold_all(page)
    page.locator("#field-birds").fill("104")
    page.locator("#field-birds").press("Tab")
    until(page, "!document.querySelector('#birds [data-changed]').hidden")
    _open(page, site / "shop/index.html")
    until(page, f"document.querySelector('[data-quantity=ice_bags]').textContent === '{values['ice_bags']:.0f}'")

    _open(page, site / "about/index.html")
    page.locator("[data-offline-state]", has_text="Yes: this copy runs from a disk").wait_for()

    page.locator("[data-search-open]").click()
    page.locator(".finder input").fill("gizz")
    until(page, "document.querySelectorAll('.finder li a').length > 0")
    page.locator(".finder li a").first.click()
    until(page, "location.pathname.endsWith('/index.html') && location.hash !== ''")
    assert errors == []


def test_every_kind_of_page_starts_from_a_stick(phone: BrowserContext, demo: Order, tmp_path: Path) -> None:
    """Quietly, and wearing what it has inside: a fold's content is hidden by the sheet of plan pages alone."""
    site, page, errors = _unpacked(demo, tmp_path), phone.new_page(), list[str]()
    page.on("console", lambda line: errors.append(line.text) if line.type == "error" else None)
    page.on("pageerror", lambda fault: errors.append(str(fault)))
    page.on("requestfailed", lambda request: errors.append(request.url))
    for address in one_of_each_kind(addresses(demo.site)):
        _open(page, site / address / "index.html")
        assert page.locator("h1").count() == 1, address
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide == 0, address
    _open(page, site / "plan/index.html")
    hidden = page.locator(".fold--group:not([open]) > :not(summary)").first
    assert hidden.evaluate("(it) => getComputedStyle(it).display") == "none"
    assert errors == []


def test_every_link_leads_to_a_file(demo: Order, tmp_path: Path) -> None:
    copy_to_disk(demo.site, tmp_path / "day")
    for page in (tmp_path / "day").rglob("*.html"):
        for link in re.findall(r'\b(?:href|src)="(?!\w+:|#)([^"#?]*)', page.read_text(encoding="utf-8")):
            assert (page.parent / link).is_file(), f"{page}: {link}"
