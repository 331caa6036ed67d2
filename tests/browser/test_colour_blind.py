"""Signals as those see them who lack a kind of cone, or all of them: read as well, and told apart by word and shape.

The matrices are those of Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision
Deficiency" (IEEE Transactions on Visualization and Computer Graphics 15, 2009), for a whole lack, on linear light.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Browser, Page

from tests.browser import states
from tests.browser.conftest import PHONE
from tests.browser.days import open_page
from tests.browser.host import Host

Colour = tuple[float, float, float]
LACKS: dict[str, tuple[Colour, Colour, Colour]] = {
    "red": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "green": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "blue": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
    "all": ((0.2126, 0.7152, 0.0722), (0.2126, 0.7152, 0.0722), (0.2126, 0.7152, 0.0722)),
}
INKS = """() => {
  const parts = (colour) => colour.match(/[\\d.]+/g).map(Number);
  const paper = (it) => {
    for (; it; it = it.parentElement) {
      const found = parts(getComputedStyle(it).backgroundColor);
      if ((found[3] ?? 1) === 1) return found.slice(0, 3);
    }
    return [255, 255, 255];
  };
  const own = (it) => [...it.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
  const meant = (it) => !it.matches(':disabled, .gap, svg *, .md-skip');
  const shown = (it) => meant(it) && it.checkVisibility({ visibilityProperty: true });
  const below = (it) => (it.previousElementSibling?.matches('input') ? it.previousElementSibling : it.parentElement);
  const pairs = [...document.querySelectorAll('body *')].filter((it) => shown(it) && (own(it) || it.matches('.symbol')))
    .map((it) => [parts(getComputedStyle(it).color).slice(0, 3), paper(it.matches('.symbol') ? below(it) : it)]);
  return [...new Set(pairs.map((each) => JSON.stringify(each)))].map((each) => JSON.parse(each));
}"""


def linear(colour: Colour) -> Colour:
    """Light of an sRGB colour (IEC 61966-2-1)."""
    shares = [part / 255 for part in colour]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in shares)
    return red, green, blue


def brightness(colour: Colour, lack: str) -> float:
    light = linear(colour)
    seen = [sum(a * b for a, b in zip(row, light, strict=True)) for row in LACKS[lack]]
    red, green, blue = (min(1.0, max(0.0, part)) for part in seen)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(ink: Colour, paper: Colour, lack: str) -> float:
    """WCAG 2.2, of the colours as they are seen."""
    darker, lighter = sorted((brightness(ink, lack), brightness(paper, lack)))
    return (lighter + 0.05) / (darker + 0.05)


def test_red_on_green_of_one_brightness_is_found() -> None:
    """To one who lacks the green cone #a85b00 on #6b7a00 is nearly one colour; black on white is 21 to 1 to all."""
    assert contrast((168, 91, 0), (107, 122, 0), "green") < 1.3
    assert all(contrast((0, 0, 0), (255, 255, 255), lack) == pytest.approx(21, abs=0.01) for lack in LACKS)


def _cautions(page: Page, site: str) -> None:
    open_page(page.context, site + "work/scald/")
    page.evaluate("document.querySelectorAll('details').forEach((it) => { it.open = true; })")


SIGNALS: list[Callable[[Page, str], None]] = [
    _cautions, states.outside_the_limits, states.nothing_done_yet, states.stop_at_the_edge, states.refused,
    states.drill_answered, states.list_done, states.alarm, states.not_saved, states.crew_with_one_who_may_not,
]  # fmt: skip


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_signal_can_be_read(browser: Browser, shared_host: Host, scheme: str) -> None:
    for bring_about in SIGNALS:
        own = {**PHONE, "color_scheme": scheme, "reduced_motion": "reduce", "service_workers": "block"}
        context = browser.new_context(**own)
        page = context.new_page()
        bring_about(page, shared_host.address)
        pairs = page.evaluate(INKS)
        assert len(pairs) > 2
        faint = [
            (bring_about.__name__, lack, ink, paper)
            for ink, paper in pairs
            for lack in LACKS
            if contrast(tuple(ink), tuple(paper), lack) < 4.5
        ]
        assert faint == []
        context.close()


def test_signals_differ_by_word_and_shape(page: Page, shared_host: Host) -> None:
    """Nobody has to know a colour."""
    found: dict[str, set[tuple[str, str]]] = {}
    for address in ("work/scald/", "work/gas_and_burner/", "help/", "work/chilling/"):
        page.goto(shared_host.address + address)
        for kind, word, shape in page.evaluate(
            """[...document.querySelectorAll('.signal')].map((it) => [
              it.className.match(/signal--(\\w+)/)[1],
              it.querySelector('.signal__word').textContent.trim().toUpperCase(),
              it.querySelector('.signal__word .symbol')?.className ?? ''])"""
        ):
            found.setdefault(kind, set()).add((word, shape))
    assert {kind: {word for word, _ in said} for kind, said in found.items()} == {
        "danger": {"DANGER"}, "warning": {"WARNING"}, "caution": {"CAUTION"}, "notice": {"NOTICE"},
    }  # fmt: skip
    assert all(shape for said in found.values() for _, shape in said)
    states.stop_at_the_edge(page, shared_host.address)
    assert page.locator(".strip__row--bad").first.inner_text().startswith("STOP:")
