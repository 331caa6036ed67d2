"""Content that someone wrote wrongly, or in bad faith: read or refused, at once, and never markup on a page."""

from __future__ import annotations

import contextlib
import json
import re
import shutil
from functools import partial
from html.parser import HTMLParser
from pathlib import Path
from random import Random

import markdown
import pytest
import yaml

from generator.pipeline.order import HERE
from generator.problems import ProblemsFound
from generator.reading.composer import compose
from generator.reading.files import KINDS
from generator.reading.shape import give_shape
from generator.rendering import render_site
from tests.fuzz.budget import mutate, no_hang, rounds
from tests.rendering.conftest import make_edition

FILES = [file for file in sorted((HERE / "content").rglob("*.yml")) if file.stat().st_size < 20_000]
PIECES = ["\n", "  ", ": ", "- ", "[", "]", "{", "}", '"', "'", "|\n", "#", "\t", "&a ", "*a", "!!x ", "? ", "---\n",
          "~remove", "1e999", "\u2028", "\ufeff", "\x00", "null", "{{", "}}", "0x1F", "<<: ", "😀", "\\"]  # fmt: skip
HUGE = {
    "open brackets": "a: " + "[" * 20_000,
    "nested lists": "- " * 10_000,
    "nested mappings": "{a: " * 5_000 + "1" + "}" * 5_000,
    "indented ever deeper": "\n".join(" " * depth + "a:" for depth in range(2_000)),
    "a long text": "a: " + "x" * 500_000,
    "a long number": "a: " + "9" * 100_000,
    "many keys": "\n".join(f"a{number}: 1" for number in range(2_500)),
    "one key many times": "a: 1\n" * 3_000,
    "names for names": "a: &a [x, x]\n" + "\n".join(f"b{n}: &b{n} [*a, *a]" for n in range(200)),
    "escapes": 'a: "' + "\\u0041" * 20_000 + '"',
    "comments": "#" * 300_000,
}


def _read(text: str, kind: str) -> None:
    with contextlib.suppress(ProblemsFound):
        tree = compose(text, "a.yml", "shared")
        if tree is not None and isinstance(tree.value, dict):
            entries = {each: tree.value if each == kind else {} for each in KINDS}
            give_shape(entries, entries)


def test_mutated_files_are_read_or_refused() -> None:
    for chance in rounds(least=20):
        file = chance.choice(FILES)
        kind = file.parent.name if file.parent.name in KINDS else chance.choice(KINDS)
        text = mutate(chance, file.read_text(encoding="utf-8"), PIECES)
        with no_hang():
            _read(text, kind)


@pytest.mark.parametrize("text", HUGE.values(), ids=HUGE)
def test_huge_files_do_not_hang(text: str) -> None:
    with no_hang():
        _read(text, "terms")


HOSTILE = [
    "<zqz onx=1>", '"onx=1 zqz="', "'onx=1 zqz='", "[a](javascript:zqz)", "![a](javascript:zqz)", "</script><zqz>",
    "<!--zqz", "]]><zqz>", "&lt;zqz&gt;&#60;zqz&#62;", "`<zqz>`", "\n\n<zqz>\n\n", "<javascript:zqz>",
    "[a]: javascript:zqz", "</b></p></li><zqz>", "&#x3c;zqz&#x3e;", "---\nzqz: 1\n---", "# zqz",
    "<a href=javascript:zqz>",
]  # fmt: skip
"""`zqz` is a word that no page has: where it turns up as markup, something got through."""
TEXTS = re.compile(
    r"^(?P<key> +(?:title|says|help|action|why|note|term|otherwise|reads|place): )(?P<text>[^|>\[\n][^|>\n]*)$", re.M
)


class _Markup(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        leads = [value or "" for name, value in attributes if name in {"href", "src", "action", "formaction"}]
        names = [name for name, _ in attributes]
        if "zqz" in tag or any(name.startswith("on") or "zqz" in name for name in names):
            self.found.append(self.get_starttag_text() or tag)
        self.found += [lead for lead in leads if re.match(r"\s*javascript:", lead, re.IGNORECASE)]

    def handle_comment(self, data: str) -> None:
        self.found += [data] if "zqz" in data else []


def markup_in(page: str) -> list[str]:
    """What of the hostile texts has become markup of a page."""
    reader = _Markup()
    reader.feed(page)
    return reader.found


def test_the_reader_of_markup_sees_what_it_should() -> None:
    made = markdown.markdown("\n\n".join(HOSTILE))
    assert {"<zqz onx=1>", "javascript:zqz"} <= set(markup_in(made))


def test_texts_never_become_markup(bakery_content: Path, tmp_path: Path) -> None:
    rendered = 0
    for number, chance in enumerate(rounds(least=2)):
        content = Path(shutil.copytree(bakery_content, tmp_path / str(number)))
        for file in sorted(content.rglob("*.yml")):
            file.write_text(TEXTS.sub(partial(_spoil, chance), file.read_text(encoding="utf-8")), encoding="utf-8")
        try:
            files = render_site(make_edition(content)).files
        except ProblemsFound:
            continue
        rendered += 1
        assert any("zqz" in text for text in files.values())
        for name, text in files.items():
            if name.endswith(".md"):
                _, front, body = text.split("---\n", 2)
                assert set(yaml.safe_load(front)).isdisjoint({"zqz"}), name
                page = markdown.markdown(body, extensions=["attr_list", "tables", "toc"])
                assert markup_in(page) == [], name
            elif name.endswith(".json"):
                json.loads(text)
        shutil.rmtree(content)
    assert rendered


def _spoil(chance: Random, found: re.Match[str]) -> str:
    if chance.random() < 0.6 or "{" in found["text"]:
        return found[0]
    return found["key"] + json.dumps(f"{chance.choice(HOSTILE)} {chance.choice(HOSTILE)}", ensure_ascii=False)
