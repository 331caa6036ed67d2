"""On paper: black on white, even when the screen is dark, and nothing that can only be tapped."""

from playwright.sync_api import Browser

from tests.browser.conftest import PHONE
from tests.browser.host import Host
from tests.browser.watching import until


def test_dark_pages_print_black_on_white(browser: Browser, shared_host: Host) -> None:
    context = browser.new_context(**{**PHONE, "color_scheme": "dark", "service_workers": "block"})  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(shared_host.address + "work/scald/")
    until(page, "document.body.dataset.mdColorScheme === 'slate'")
    page.emulate_media(media="print", color_scheme="dark")
    colours = page.evaluate("""['body', '.step', 'h1', '.step__action', '.signal'].map((name) => {
      const style = getComputedStyle(document.querySelector(name));
      return [style.color, style.backgroundColor];
    })""")
    for ink, paper in colours:
        assert ink == "rgb(0, 0, 0)"
        assert paper in {"rgb(255, 255, 255)", "rgba(0, 0, 0, 0)"}
    for name in (".md-header", ".bar", ".timer"):
        assert not page.locator(name).first.is_visible()
    context.close()
