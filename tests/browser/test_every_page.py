"""Every page of the finished site on a phone: whole, quiet, and within its width."""

from pathlib import Path
from xml.etree import ElementTree

from playwright.sync_api import BrowserContext

from generator.pipeline.order import Order
from tests.browser.host import Host
from tests.browser.watching import Noises


def addresses(site: Path, stands_at: str) -> list[str]:
    """The address of each page below the site, as the site map has it."""
    places = [place.text or "" for place in ElementTree.parse(site / "sitemap.xml").iter() if place.tag.endswith("loc")]
    return [place.removeprefix(stands_at) for place in places]


def test_every_page_is_quiet_and_fits(phone: BrowserContext, shared_host: Host, demo: Order, noises: Noises) -> None:
    pages = addresses(demo.site, "https://example.org/cone-to-cooler/")
    assert len(pages) > 20
    page = phone.new_page()
    for address in pages:
        page.goto(shared_host.address + address)
        assert page.locator("h1").count() == 1, address
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide == 0, f"{address} is {wide} px too wide"
    assert noises == Noises()
