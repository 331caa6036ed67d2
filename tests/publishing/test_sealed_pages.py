"""What every page of the finished site has, whatever its kind, and what none has."""

from __future__ import annotations

import base64
import hashlib
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from generator.pipeline.order import Order

CSP = '<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="'


class Page(HTMLParser):
    """The inline scripts and styles of a page, what it links, and what the policy would not let work."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.inline: dict[str, list[str]] = {"script": [], "style": []}
        self.links: list[str] = []
        self.forbidden: list[str] = []
        self._within = ""
        self.feed(text)

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        named = {name: value or "" for name, value in attributes}
        runs = [name for name in named if name.startswith("on") or name == "style"]
        runs += [value for value in named.values() if value.strip().lower().startswith("javascript:")]
        fetched = [named.get("src", ""), named.get("href", "") if tag == "link" else ""]
        elsewhere = filter(re.compile(r"(?!data:,$)\w+:|//").match, fetched)
        self.forbidden += [f"{tag}: {each}" for each in [*runs, *elsewhere]]
        self.links += [named["rel"]] if tag == "link" else []
        if tag in self.inline and "src" not in named and named.get("type") != "application/json":
            self._within = tag
            self.inline[tag].append("")

    def handle_data(self, data: str) -> None:
        if self._within:
            self.inline[self._within][-1] += data

    def handle_endtag(self, tag: str) -> None:
        self._within = "" if tag == self._within else self._within


@pytest.fixture(scope="module")
def texts(demo: Order) -> dict[str, str]:
    found = {page.relative_to(demo.site).as_posix(): page.read_text("utf-8") for page in demo.site.rglob("*.html")}
    assert len(found) > 100
    assert "404.html" in found
    return found


def named(content: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(content.encode()).digest()).decode()}'"


def test_one_policy_stands_first_in_all_and_names_all_that_is_inside(texts: dict[str, str]) -> None:
    policies = set()
    for name, text in texts.items():
        assert text.count(CSP) == 1, name
        assert text.index(CSP) < min(text.index(each) for each in ("<script", "<link", "<title")), name
        policies.add(text.partition(CSP)[2].partition('"')[0])
    (policy,) = policies
    allowed = dict(part.split(" ", 1) for part in policy.split("; "))
    assert allowed["default-src"] == allowed["base-uri"] == allowed["form-action"] == "'none'"
    assert not re.search(r"unsafe|https?:|\*", policy)
    for name, text in texts.items():
        page = Page(text)
        for tag, kind in (("script", "script-src"), ("style", "style-src")):
            for content in page.inline[tag]:
                assert named(content) in allowed[kind], f"{name}: {content[:60]}"
        assert page.forbidden == [], name
        assert len(page.inline["script"]) == 1, f"{name}: the script that runs first"


def test_only_the_front_page_names_the_manifest_by_itself(texts: dict[str, str]) -> None:
    assert [name for name, text in texts.items() if "manifest" in Page(text).links] == ["index.html"]


def test_no_file_is_one_that_hosts_keep_back(demo: Order) -> None:
    """actions/upload-pages-artifact leaves out hidden files since 4.0.0 (its README), others do likewise."""
    assert [path for path in demo.site.rglob(".*")] == []


def test_a_copy_for_a_disk_loads_nothing_from_elsewhere_either(demo: Order, tmp_path: Path) -> None:
    from generator.publishing.disk import copy_to_disk

    copy_to_disk(demo.site, tmp_path / "day")
    for page in (tmp_path / "day").rglob("*.html"):
        found = Page(page.read_text("utf-8"))
        assert found.forbidden == [], page
        assert "manifest" not in found.links
        assert 'src="' in page.read_text("utf-8").partition("phone/whole.js")[0]
