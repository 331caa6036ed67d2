"""Titles to be found, beside what Python's own `html.parser` (the HTML standard) sees in the same pages."""

from __future__ import annotations

import json
import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

from generator.pipeline.order import Order
from generator.publishing.searching import FILE, titles_in, write_titles
from tests.product import product_library, product_workbook

PAGE = """<h1 id="top"><span class="badge">7</span> Tea</h1>
<h2 id="steps">Not to be found</h2>
<li id="step-boil"><label>
<span class="step__action" data-find>Boil &amp; wait <b data-quantity="time">3 min</b>.</span></label></li>
<li id="stop-cold"><strong data-find>It is cold.</strong> Throw it <strong>away</strong>.</li>
"""
VOID = ("area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr")


class Marked(HTMLParser):
    """What is marked to be found, with the nearest id around it, and the first heading.

    What stands in none, as other words for a title do, goes with the title before it.
    """

    def __init__(self, address: str, page: str) -> None:
        super().__init__()
        self.found: list[tuple[str, str]] = []
        self._address = address
        self._open: list[tuple[str, str | None, bool]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in VOID:
            return
        given = dict(attrs)
        wanted = tag == "h1" or "data-find" in given
        self._open.append((tag, given.get("id"), wanted))
        if wanted:
            around = next((name for _, name, _ in reversed(self._open) if name), None)
            to = f"{self._address}#{around}" if around else self.found[-1][0] if self.found else ""
            self.found.append((self._address if tag == "h1" else to, ""))

    def handle_endtag(self, tag: str) -> None:
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        if any(wanted for _, _, wanted in self._open):
            to, text = self.found[-1]
            self.found[-1] = (to, text + data)


class Words(HTMLParser):
    """The text of a piece of HTML."""

    def __init__(self, piece: str) -> None:
        super().__init__()
        self.text = ""
        self.feed(piece)
        self.close()

    def handle_data(self, data: str) -> None:
        self.text += data


def test_a_page_comes_before_what_is_marked_on_it() -> None:
    assert list(titles_in("work/tea/", PAGE)) == [
        ("work/tea/", '<span class="badge">7</span> Tea'),
        ("work/tea/#step-boil", 'Boil &amp; wait <b data-quantity="time">3 min</b>.'),
        ("work/tea/#stop-cold", "It is cold."),
    ]


def test_other_words_for_a_thing_lead_where_its_title_does() -> None:
    page = '<p id="skip">x</p>\n<h1 id="top">Tea</h1>\n<p hidden><span data-find>how hot</span></p>\n'
    assert list(titles_in("tea/", page)) == [("tea/", "Tea"), ("tea/", "how hot")]


def test_titles_are_written_as_javascript_writes_them(tmp_path: Path) -> None:
    (tmp_path / "b").mkdir()
    (tmp_path / "b/index.html").write_text("<h1>Zwölf / \\ \u2028½</h1>", encoding="utf-8")
    (tmp_path / "index.html").write_text("<h1>A</h1>")
    write_titles(tmp_path)
    # ECMA-262, JSON.stringify: no spaces, and only quotes, backslashes and control characters are escaped.
    assert (tmp_path / FILE).read_text(encoding="utf-8") == '[["","A"],["b/","Zwölf / \\\\ \u2028½"]]'


def test_every_marked_title_of_the_site_leads_to_the_id_around_it(demo: Order) -> None:
    written = [(to, Words(title).text) for to, title in json.loads((demo.site / FILE).read_text(encoding="utf-8"))]
    expected = []
    for page in sorted(demo.site.rglob("index.html"), key=lambda page: address_of(demo.site, page)):
        expected += Marked(address_of(demo.site, page), page.read_text(encoding="utf-8")).found
    assert written == expected


def test_no_page_has_an_id_twice(demo: Order) -> None:
    for page in demo.site.rglob("*.html"):
        ids = re.findall(r'<[^>]* id="([^"]+)"', page.read_text(encoding="utf-8"))
        assert [name for name, times in Counter(ids).items() if times > 1] == [], page


def test_all_that_content_names_can_be_found(demo: Order) -> None:
    found = {to for to, _ in json.loads((demo.site / FILE).read_text(encoding="utf-8"))}
    library = product_library()
    for name, procedure in library.procedures.items():
        page = f"work/{name}/"
        assert page in found
        for kind, entries in (
            ("step", procedure.steps),
            ("caution", procedure.cautions),
            ("stop", procedure.stops),
            ("fault", procedure.faults),
        ):
            assert {f"{page}#{kind}-{entry}" for entry in entries} <= found
    assert {f"glossary/#{term}" for term in library.terms} <= found
    assert {f"bring/#step-{supply}" for supply in library.supplies} <= found
    assert {f"numbers/methods/#{name}" for name in (*library.functions, *library.tables)} <= found
    quantities = {to.partition("#")[2] for to in found if re.match(r"numbers/(?!methods/)\w+/#", to)}
    workbook = product_workbook()
    assert quantities == {*workbook.givens.inputs, *workbook.givens.constants, *workbook.results}
    for name in ("species", "rule_set"):
        assert {f"choices/{name}/#{option}" for option in library.choices[name].options} <= found
    for name, prose in library.pages.items():
        assert {f"{name}/#{section}" for section in prose.sections} <= found


def address_of(site: Path, page: Path) -> str:
    """The address at which a page answers."""
    folder = page.parent.relative_to(site).as_posix()
    return "" if folder == "." else f"{folder}/"
