"""Plan links and record files in bad faith, in a real page: told in words or refused, never markup, never a script."""

from __future__ import annotations

import json
import time
from pathlib import Path
from urllib.parse import quote

from playwright.sync_api import BrowserContext, Page

from tests.browser.days import open_page
from tests.browser.host import Host
from tests.browser.watching import READY, Noises, until
from tests.fuzz.budget import mutate, rounds

MARKUP = [
    "<img src=x onerror=window.hurt=1>",
    "<svg onload=window.hurt=1>",
    "<script>window.hurt=1</script>",
    "<a href=javascript:window.hurt=1>zqz</a>",
    "\"><iframe srcdoc='<script>parent.hurt=1</script>'>",
]
GOT_IN = "document.querySelectorAll('img[src=x], svg[onload], iframe, a[href^=javascript]').length + (window.hurt ?? 0)"
LINK = """async ([name, changes]) => {
  const { writePlan } = await import(`${location.pathname.replace('pass/', '')}phone/plan_codes.js`);
  const formulas = await import(`${location.pathname.replace('pass/', '')}phone/formulas.js`);
  return writePlan(name, changes, formulas);
}"""
ARRIVE = """(code) => {
  document.querySelector('#plan-paste').value = `#plan=${code}`;
  document.querySelector("#plan-paste").form.requestSubmit();
}"""


def test_links_of_plans(phone: BrowserContext, shared_host: Host, noises: Noises) -> None:
    page = open_page(phone, shared_host.address + "pass/")
    until(page, "document.querySelector('[data-code] svg') !== null")
    for chance in rounds(least=5):
        code = page.evaluate(LINK, [f"{chance.choice(MARKUP)}", {"birds": chance.randrange(1, 400)}])
        if chance.random() < 0.5:
            code = mutate(chance, code, [quote(text) for text in MARKUP] + MARKUP)
        page.evaluate(ARRIVE, code)
        assert page.evaluate(GOT_IN) == 0, code
    page.goto(f"{shared_host.address}pass/#plan=1~abcdef~{MARKUP[0]}")
    page.reload()
    until(page, READY)
    assert page.evaluate(GOT_IN) == 0
    assert noises == Noises()


def test_record_files(phone: BrowserContext, host: Host, tmp_path: Path, noises: Noises) -> None:
    """Every text of every kind of entry is markup; what is taken shows on the pages of the log and of the record."""
    about = {"run": time.strftime("%Y-%m-%d") + "-1", "at": int(time.time() * 1000), "zone": 0}
    texts = ("text", "written", "reason", "lot", "of", "by", "step")
    kinds = ("remark", "reading", "count", "timer", "action", "tick", "sign", "plan")
    entries = [
        {"id": f"phonebbb-{place}-abcdef", "kind": kind, **about, field: MARKUP[place % len(MARKUP)], "value": 1}
        for place, (kind, field) in enumerate(((kind, field) for kind in kinds for field in texts), 1)
    ]
    sound = [
        {"id": f"phonebbb-{900 + place}-abcdef", "kind": "remark", **about, "text": text}
        for place, text in enumerate(MARKUP)
    ]
    file = tmp_path / f"{MARKUP[0].replace('/', '')}.json"
    head = {"format": "day-record", "version": 1, "phone": "phonebbb", "clock": about["at"]}
    file.write_text(json.dumps({**head, "entries": entries + sound}))
    page = open_page(phone, host.address + "log/")
    _take(page, file)
    until(page, "document.querySelector('[data-log-entries]').innerText.includes('<script>')")
    for address in ("log/", "record/", "day/", ""):
        page = open_page(phone, host.address + address)
        assert page.evaluate(GOT_IN) == 0, address
    assert noises == Noises()


def _take(page: Page, file: Path) -> None:
    page.evaluate("document.querySelectorAll('details').forEach((it) => { it.open = true; })")
    until(page, "document.querySelector('[data-exchange-state]').textContent !== ''")
    page.locator("[data-exchange-open]").set_input_files(file)
    page.locator(".exchange__file button").click()
    until(page, "document.querySelector('.exchange__file button') === null")
